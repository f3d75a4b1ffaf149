/** How high the sun stands at noon, which decides how far shade reaches and how a sloped glass faces it. */
import { count, date, none, quantity, type DayNumber, type Finding } from '../findings/finding.ts';
import { monthDay } from './calendar.ts';
import { dayLengthSource, type PlaceInYear } from './day-length.ts';
import { noonDeclinationDeg } from './sun.ts';

/**
 * The height of the sun's centre over a level horizon when it is highest, in degrees, refraction left out (it lifts the sun
 * by less than 0.1 degree above 10 degrees of height). 90 is overhead; negative in polar night.
 */
export function noonAltitudeDeg(when: PlaceInYear & { readonly day: DayNumber }): number {
  if (!(Math.abs(when.latitudeDeg) <= 90)) throw new RangeError(`no such latitude: ${when.latitudeDeg}`);
  return 90 - Math.abs(when.latitudeDeg - noonDeclinationDeg(when));
}

/**
 * The same as finding `sun.noon-altitude.6-21`, named by month and day. `none('sun-below-horizon')` where the sun does not
 * come up.
 */
export function noonAltitude(when: PlaceInYear & { readonly day: DayNumber }): Finding {
  const altitudeDeg = noonAltitudeDeg(when);
  const { month, day } = monthDay(when.day);
  return {
    id: `sun.noon-altitude.${month}-${day}`,
    value: altitudeDeg <= 0 ? none('sun-below-horizon') : quantity('angle', altitudeDeg),
    method: 'sun.noon-altitude',
    inputs: [
      { name: 'latitude', value: quantity('angle', when.latitudeDeg) },
      { name: 'year', value: count(when.year) },
      { name: 'date', value: date(when.day) },
    ],
    sources: [dayLengthSource],
  };
}
