/** How low the noon sun gets while the crops of a bed grow, and how far a tall row throws its shadow then. */
import { noonAltitudeDeg } from '../climate/noon-altitude.ts';
import { dayLengthSource } from '../climate/day-length.ts';
import {
  count,
  dateRange,
  inputOf,
  none,
  quantity,
  type DayNumber,
  type Finding,
} from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import { shadowOf } from './bed-warnings.ts';
import { cropHeight } from './spacing.ts';

export interface GrowingDays {
  readonly from: DayNumber;
  /** Not before `from`. */
  readonly to: DayNumber;
}

/**
 * The lowest noon sun from the first planting to the last harvest, as `sun.noon-lowest`, in degrees over the horizon; a
 * shadow at noon is never longer than then. `none` where the sun does not come up on one of the days.
 */
export function lowestNoonSun(place: {
  readonly latitudeDeg: number;
  readonly year: number;
  readonly days: GrowingDays;
}): Finding {
  const { latitudeDeg, year, days } = place;
  if (days.to < days.from) throw new RangeError('the growing days end before they begin');
  const number = Math.floor(days.to - days.from) + 1;
  const lowest = Math.min(
    ...Array.from({ length: number }, (_, index) =>
      noonAltitudeDeg({ latitudeDeg, year, day: days.from + index }),
    ),
  );
  return {
    id: 'sun.noon-lowest',
    value: lowest <= 0 ? none('sun-below-horizon') : quantity('angle', lowest),
    method: 'sun.noon-lowest',
    inputs: [
      { name: 'latitude', value: quantity('angle', latitudeDeg) },
      { name: 'year', value: count(year) },
      { name: 'growing-days', value: dateRange(days.from, days.to) },
    ],
    sources: [dayLengthSource],
  };
}

/**
 * How far the noon shadow of a tall crop reaches poleward over a lower one, at the height of the lower one, as
 * `<tall crop>.noon-shadow`.
 */
export function noonShadow(crop: Crop, low: Crop, noonSun: Finding): Finding {
  const riseMm = crop.height.value.high - low.height.value.high;
  const { value } = noonSun;
  return {
    id: `${crop.id}.noon-shadow`,
    value:
      value.kind === 'quantity'
        ? quantity('length', shadowOf(riseMm, value.value))
        : none('sun-below-horizon'),
    method: 'sun.shadow',
    inputs: [
      inputOf('height', cropHeight(crop)),
      inputOf('lower-height', cropHeight(low)),
      inputOf('noon-sun', noonSun),
    ],
    sources: [...crop.height.sources],
  };
}
