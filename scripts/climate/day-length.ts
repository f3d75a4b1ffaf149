/**
 * Day length: the time any part of the sun is above a level horizon, refraction included. The centre of the sun
 * then stands 0.833 degrees below the horizon (34' of refraction and 16' of the sun's half width).
 *
 * Source: NOAA solar calculations, after J. Meeus, Astronomical Algorithms. Within two minutes of the
 * printed values it is tested against, at 35 to 45 degrees of latitude.
 */
import {
  date,
  none,
  quantity,
  count,
  type DateFinding,
  type DayNumber,
  type Finding,
  type FindingInput,
} from '../findings/finding.ts';
import { monthDay } from './calendar.ts';
import { noonDeclinationDeg } from './sun.ts';

export interface PlaceInYear {
  /** -90 to 90, north positive; anything else throws a RangeError. */
  readonly latitudeDeg: number;
  readonly year: number;
  /**
   * East positive, -180 to 180. Without it the sun's height is taken at noon of 90 degrees west, in the middle of North
   * America; on the far side of the earth the error stays below 3 minutes up to 50 degrees of latitude.
   */
  readonly longitudeDeg?: number | undefined;
}

/**
 * Day length in hours: 24 when the sun does not set, 0 when it does not rise. Days outside 1 to 365 belong to the
 * years around. The sun's declination is that of noon, though it moves a little between sunrise and sunset.
 */
export function dayLengthHours(when: PlaceInYear & { readonly day: DayNumber }): number {
  if (!(Math.abs(when.latitudeDeg) <= 90)) throw new RangeError(`no such latitude: ${when.latitudeDeg}`);
  const latitude = when.latitudeDeg * radians;
  const declination = noonDeclinationDeg(when) * radians;
  const cosHalfDay =
    (Math.sin(sunAltitudeDeg * radians) - Math.sin(latitude) * Math.sin(declination)) /
    (Math.cos(latitude) * Math.cos(declination));
  if (cosHalfDay >= 1) return 0;
  if (cosHalfDay <= -1) return 24;
  return (2 * Math.acos(cosHalfDay)) / radians / degreesPerHour;
}

/**
 * The day length at the summer solstice, as finding `day-length.longest`. Within a few degrees of the equator days
 * differ by seconds, and the solstices stand for the longest and shortest all the same.
 */
export function longestDay(place: PlaceInYear): Finding {
  const { longest } = turningDays(place);
  return dayLengthFinding('day-length.longest', place, longest);
}

/** The day length at the winter solstice, as finding `day-length.shortest`. */
export function shortestDay(place: PlaceInYear): Finding {
  const { shortest } = turningDays(place);
  return dayLengthFinding('day-length.shortest', place, shortest);
}

/** The day length on one day, as finding `day-length.on.6-21`, named by month and day. */
export function dayLengthOn({ day, ...place }: PlaceInYear & { readonly day: DayNumber }): Finding {
  const { month, day: ofMonth } = monthDay(day);
  return dayLengthFinding(`day-length.on.${month}-${ofMonth}`, place, day);
}

export interface WantedDayLength extends PlaceInYear {
  readonly hours: number;
  /** Lengthening days, from the shortest day to the longest, or shortening ones, from the longest to the next shortest. */
  readonly direction: 'rising' | 'falling';
}

/**
 * The first day that is at least that long while days lengthen, or at most that long while they shorten.
 * `none('day-never-that-long')` when even the longest day is shorter, `none('day-always-longer')` when even the
 * shortest is longer. Lengthening days start in December of the year before in the north (days below 1) and
 * in June in the south, where shortening days run on into the next year (days above 365).
 */
export function dateDayLengthReaches(wanted: WantedDayLength): DateFinding['value'] {
  const { shortest, longest, nextShortest } = turningDays(wanted);
  const lengthOn = (day: DayNumber): number => dayLengthHours({ ...wanted, day });
  if (lengthOn(longest) < wanted.hours) return none('day-never-that-long');
  const rising = wanted.direction === 'rising';
  const [from, to] = rising ? [shortest, longest] : [longest, nextShortest];
  if (lengthOn(rising ? from : to) > wanted.hours) return none('day-always-longer');
  for (let day = from; day < to; day += 1) {
    const length = lengthOn(day);
    if (rising ? length >= wanted.hours : length <= wanted.hours) return date(day);
  }
  return date(to);
}

/** `dateDayLengthReaches` as a finding, such as `day-length.rising.14h` or `day-length.falling.13-5h`. */
export function dayLengthReaches(wanted: WantedDayLength): DateFinding {
  return {
    id: `day-length.${wanted.direction}.${String(wanted.hours).replace('.', '-')}h`,
    value: dateDayLengthReaches(wanted),
    method,
    inputs: [...placeInputs(wanted), { name: 'day-length', value: quantity('day-length', wanted.hours) }],
    sources: [dayLengthSource],
  };
}

/** The source record every day-length finding refers to. */
export const dayLengthSource = 'noaa-solar-calculations';

const method = 'day-length.noaa';
const sunAltitudeDeg = -0.833;
const degreesPerHour = 15;
const radians = Math.PI / 180;

function dayLengthFinding(id: string, place: PlaceInYear, day: DayNumber): Finding {
  return {
    id,
    value: quantity('day-length', dayLengthHours({ ...place, day })),
    method,
    inputs: [...placeInputs(place), { name: 'date', value: date(day) }],
    sources: [dayLengthSource],
  };
}

function placeInputs(place: PlaceInYear): FindingInput[] {
  return [
    { name: 'latitude', value: quantity('angle', place.latitudeDeg) },
    { name: 'year', value: count(place.year) },
  ];
}

interface TurningDays {
  readonly shortest: DayNumber;
  readonly longest: DayNumber;
  readonly nextShortest: DayNumber;
}

/** The solstices that bound lengthening and shortening days, in order; the equator counts as north. */
function turningDays({ latitudeDeg, year }: PlaceInYear): TurningDays {
  return latitudeDeg >= 0
    ? { shortest: solstice(year, -10), longest: solstice(year, 172), nextShortest: solstice(year, 355) }
    : { shortest: solstice(year, 172), longest: solstice(year, 355), nextShortest: solstice(year, 537) };
}

/** The day near `around` on which the sun stands farthest from the celestial equator. */
function solstice(year: number, around: DayNumber): DayNumber {
  const days = [-3, -2, -1, 0, 1, 2, 3].map((shift) => around + shift);
  const distance = (day: DayNumber): number => Math.abs(noonDeclinationDeg({ year, day }));
  return days.reduce((farthest, day) => (distance(day) > distance(farthest) ? day : farthest));
}
