/**
 * Last and first freeze dates of each season of a daily record, and which seasons are complete enough to count.
 */
import type { DayNumber } from '../findings/finding.ts';
import { dayNumber, daysInYear, growingSeason, type FreezeSeason } from './calendar.ts';
import type { DailyStation } from './freeze-data.ts';

/** The freeze before the growing season, or the one after it. */
export type FreezeEdge = 'last' | 'first';

/**
 * Fewer usable seasons than this are refused. Ten is the fewest years behind a provisional value of the NOAA normals
 * 1991-2020 (completeness flag P, readme of the by-station files).
 */
export const fewestSeasons = 10;

/**
 * The most days that may be missing from the half season that holds most of the dates looked for (February to July
 * for a last freeze in the north, August to January for a first one), and from the other half. The numbers are
 * our own judgement: ten days cannot often hide the date, and midsummer or midwinter gaps matter less. The rule
 * looks at the calendar only, never at the temperatures, so that it cannot favour cold or warm seasons.
 */
export const mostMissingDays = { nearHalf: 10, farHalf: 30 } as const;

/** Seasons are named by the year in which the growing season begins: that of its January 1. */
export interface UsableSeasons {
  readonly last: readonly number[];
  readonly first: readonly number[];
}

/** The years whose spring, and those whose fall, have daily values enough to count. */
export function usableSeasons(station: DailyStation, options: { latitudeDeg: number }): UsableSeasons {
  const minima = minimaByFixedDay(station);
  const years = yearsOf(station);
  const seasons = growingSeason(options.latitudeDeg);
  return {
    last: years.filter((year) => isComplete(minima, year, seasons.last, 'last')),
    first: years.filter((year) => isComplete(minima, year, seasons.first, 'first')),
  };
}

/**
 * The years whose spring, and those whose fall, the record reaches into but with too many days missing to count. A year is told
 * when at least half of the days are known in the half season that holds most of the dates looked for.
 */
export function seasonsLeftOut(station: DailyStation, options: { latitudeDeg: number }): UsableSeasons {
  const minima = minimaByFixedDay(station);
  const seasons = growingSeason(options.latitudeDeg);
  const usable = usableSeasons(station, options);
  const leftOut = (edge: FreezeEdge): number[] => {
    const { from, middle, to } = seasons[edge];
    const near = edge === 'last' ? { from: middle, to } : { from, to: middle - 1 };
    const days = daysOf(near);
    const known = (year: number): number => days.filter((day) => minima.has(fixedDay(year, day))).length;
    return yearsOf(station).filter((year) => !usable[edge].includes(year) && known(year) * 2 >= days.length);
  };
  return { last: leftOut('last'), first: leftOut('first') };
}

/**
 * For every usable season the day of its last (or first) minimum at or below the threshold, in the day numbers of
 * the season's year; `null` for a season without one.
 */
export function freezeDays(
  station: DailyStation,
  edge: FreezeEdge,
  options: { thresholdC: number; latitudeDeg: number },
): readonly (DayNumber | null)[] {
  return [...freezeDaysByYear(station, edge, options).values()];
}

/** The same by the year of each usable season, in order of years. */
export function freezeDaysByYear(
  station: DailyStation,
  edge: FreezeEdge,
  options: { thresholdC: number; latitudeDeg: number },
): ReadonlyMap<number, DayNumber | null> {
  const minima = minimaByFixedDay(station);
  const season = growingSeason(options.latitudeDeg)[edge];
  const limit = observedThreshold(options.thresholdC);
  const freezeOf = (year: number): DayNumber | null => {
    const days = daysOf(season).filter((day) => (minima.get(fixedDay(year, day)) ?? Infinity) <= limit);
    return (edge === 'last' ? days.at(-1) : days[0]) ?? null;
  };
  return new Map(usableSeasons(station, options)[edge].map((year) => [year, freezeOf(year)]));
}

/** A shorter time between two freezes is no growing season; our own judgement. */
export const shortestSeasonDays = 30;

/**
 * Days between the last and the first freeze of each growing season whose both ends are complete enough; `null` for one that
 * lacks a freeze at either end.
 */
export function seasonLengthsOnRecord(
  station: DailyStation,
  options: { thresholdC: number; latitudeDeg: number },
): readonly (number | null)[] {
  const last = freezeDaysByYear(station, 'last', options);
  const first = freezeDaysByYear(station, 'first', options);
  return [...last].flatMap(([year, from]) => {
    const to = first.get(year);
    if (to === undefined) return [];
    return [from === null || to === null ? null : to - from];
  });
}

/**
 * Whether there is no season between two freezes: in half of the years or more fewer than `shortestSeasonDays` days lie between them.
 * The dates found are then only the edges of the months searched.
 */
export function freezesAllYear(
  station: DailyStation,
  options: { thresholdC: number; latitudeDeg: number },
): boolean {
  const lengths = seasonLengthsOnRecord(station, options);
  const short = lengths.filter((length) => length !== null && length < shortestSeasonDays).length;
  return lengths.length > 0 && short * 2 >= lengths.length;
}

/**
 * The threshold as it stands in a record of tenths of a degree Celsius: observers' 28 F (-2.222 C) is kept as
 * -2.2, so -2.2 must count as 28 F or lower. The hair above it absorbs binary fractions.
 */
function observedThreshold(thresholdC: number): number {
  return Math.round(thresholdC * 10) / 10 + 1e-6;
}

/** A record is asked about at many thresholds; what depends on it alone is worked out once. */
const minimaOf = new WeakMap<DailyStation, ReadonlyMap<number, number>>();

/** Minima by one running count of 365-day years; of February 28 and 29 the colder one. Missing values are left out. */
function minimaByFixedDay(station: DailyStation): ReadonlyMap<number, number> {
  const known = minimaOf.get(station);
  if (known) return known;
  const minima = new Map<number, number>();
  for (const { year, minimumC, ...date } of station.days) {
    if (minimumC === null) continue;
    const key = fixedDay(year, dayNumber(date));
    minima.set(key, Math.min(minimumC, minima.get(key) ?? Infinity));
  }
  minimaOf.set(station, minima);
  return minima;
}

function fixedDay(year: number, day: DayNumber): number {
  return year * daysInYear + day;
}

/** Every year that a season could be named by: the years of the record and the two around them. */
function yearsOf(station: DailyStation): number[] {
  const first = station.days[0]?.year;
  const last = station.days.at(-1)?.year;
  if (first === undefined || last === undefined) return [];
  return Array.from({ length: last - first + 3 }, (_, index) => first - 1 + index);
}

function isComplete(
  minima: ReadonlyMap<number, number>,
  year: number,
  season: FreezeSeason,
  edge: FreezeEdge,
): boolean {
  const missing = daysOf(season).filter((day) => !minima.has(fixedDay(year, day)));
  const early = missing.filter((day) => day < season.middle).length;
  const late = missing.length - early;
  const [near, far] = edge === 'last' ? [late, early] : [early, late];
  return near <= mostMissingDays.nearHalf && far <= mostMissingDays.farHalf;
}

function daysOf({ from, to }: Pick<FreezeSeason, 'from' | 'to'>): DayNumber[] {
  return Array.from({ length: to - from + 1 }, (_, index) => from + index);
}
