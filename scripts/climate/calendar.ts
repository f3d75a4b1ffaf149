/**
 * The fixed 365-day year that freeze tables are written in, and where the two freeze seasons of a growing
 * season begin. February 29 counts as February 28, so that a day number always stands for the same
 * date, and every year has the same length.
 */
import type { DayNumber } from '../findings/finding.ts';

export const daysInYear = 365;

/** True for a run of days that leaves out none of the year: with its first and last day, 365 or more. */
export function isWholeYear({ from, to }: { readonly from: DayNumber; readonly to: DayNumber }): boolean {
  return Math.round(to) - Math.round(from) + 1 >= daysInYear;
}

const daysBeforeMonth = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365] as const;

export interface MonthDay {
  /** 1 to 12 */
  readonly month: number;
  /** 1 to 31 */
  readonly day: number;
}

/**
 * The day of the year, 1 to 365. February 29 gives 59, the number of February 28.
 * A month or a day that no year has throws a RangeError: dates are checked where they are read.
 */
export function dayNumber({ month, day }: MonthDay): DayNumber {
  const before = daysBeforeMonth[month - 1];
  const next = daysBeforeMonth[month];
  const leapDay = month === 2 && day === 29;
  if (before === undefined || next === undefined || day < 1 || (day > next - before && !leapDay)) {
    throw new RangeError(`no such day: month ${month}, day ${day}`);
  }
  return before + (leapDay ? 28 : day);
}

/** The date of a day number. Days outside 1 to 365 are first brought into the year; fractions are rounded. */
export function monthDay(number: DayNumber): MonthDay {
  const day = dayOfYear(number);
  const month = daysBeforeMonth.findIndex((before) => before >= day);
  return { month, day: day - daysBeforeMonth[month - 1]! };
}

/** Brings a day number into 1 to 365 and rounds it: 366 gives 1, 0 gives 365, -4 gives 361. */
export function dayOfYear(number: DayNumber): DayNumber {
  const whole = Math.round(number);
  return ((((whole - 1) % daysInYear) + daysInYear) % daysInYear) + 1;
}

/**
 * The twelve months in which one last or one first freeze is looked for: they run from the middle of one
 * summer to the middle of the next, so that a winter is never cut in two.
 */
export interface FreezeSeason {
  readonly from: DayNumber;
  /** The first day of the second half, in the middle of winter. */
  readonly middle: DayNumber;
  /** The last day of the season. */
  readonly to: DayNumber;
}

export interface GrowingSeason {
  /** Where the last freeze before the growing season is looked for. */
  readonly last: FreezeSeason;
  /** Where the first freeze after the growing season is looked for. */
  readonly first: FreezeSeason;
}

/**
 * The freeze seasons on either side of one growing season. In the north the last freeze lies between
 * August 1 of the year before (day -152) and July 31, the first between August 1 (day 213) and the next
 * July 31. In the south everything is shifted by half a year: February 1 (32) to January 31, then February 1
 * of the next year (397) onward. Placed so, every last freeze comes before every first freeze. The equator
 * counts as north.
 *
 * Source of the August 1 to July 31 season: NOAA, supplemental normals 1981-2010 (Arguez et al. 2012).
 * The southern one is its mirror image.
 */
export function growingSeason(latitudeDeg: number): GrowingSeason {
  return latitudeDeg >= 0
    ? { last: { from: -152, middle: 32, to: 212 }, first: { from: 213, middle: 397, to: 577 } }
    : { last: { from: 32, middle: 213, to: 396 }, first: { from: 397, middle: 578, to: 761 } };
}

/** Moves a day by whole years until it lies in the season: December 27 in a northern spring season is day -4. */
export function placeInSeason(day: DayNumber, season: FreezeSeason): DayNumber {
  const years = Math.floor((day - season.from) / daysInYear);
  return day - years * daysInYear;
}
