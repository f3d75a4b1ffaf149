/** Monthly means of a daily record, and which months are complete enough to count. */
import type { DailyMinimum, DailyStation } from './freeze-data.ts';

/**
 * When a month of one year counts, and how many years a monthly mean needs. The limits on missing days are those of the
 * WMO Guidelines on the Calculation of Climate Normals (WMO-No. 1203, 2017), from memory; ten years is the fewest
 * behind a provisional NOAA normal 1991-2020, as for freeze dates.
 */
export const monthCompleteness = { mostMissing: 10, mostMissingInARow: 4, fewestYears: 10 } as const;

export interface StationMonthlyMeans {
  /** January first; undefined where some month has too few complete years. */
  readonly minimumC: readonly number[] | undefined;
  readonly maximumC: readonly number[] | undefined;
}

/** The mean over the years of each month's mean, for minima and for maxima. */
export function stationMonthlyMeans(station: DailyStation): StationMonthlyMeans {
  return {
    minimumC: monthlyMeans(station.days, (day) => day.minimumC),
    maximumC: monthlyMeans(station.days, (day) => day.maximumC ?? null),
  };
}

function monthlyMeans(
  days: readonly DailyMinimum[],
  valueOf: (day: DailyMinimum) => number | null,
): readonly number[] | undefined {
  const byMonth = new Map<string, Map<number, number>>();
  for (const day of days) {
    const value = valueOf(day);
    if (value === null) continue;
    const key = `${day.year}-${day.month}`;
    byMonth.set(key, (byMonth.get(key) ?? new Map<number, number>()).set(day.day, value));
  }
  const years = [...new Set(days.map(({ year }) => year))];
  const means = Array.from({ length: 12 }, (_, index) => {
    const complete = years.flatMap((year) => {
      const values = byMonth.get(`${year}-${index + 1}`);
      return values && isComplete(values, lengthOf(year, index + 1)) ? [mean([...values.values()])] : [];
    });
    return complete.length >= monthCompleteness.fewestYears ? mean(complete) : undefined;
  });
  const whole = means.filter((value) => value !== undefined);
  return whole.length === 12 ? whole : undefined;
}

function isComplete(values: ReadonlyMap<number, number>, length: number): boolean {
  let missing = 0;
  let inARow = 0;
  let longest = 0;
  for (let day = 1; day <= length; day += 1) {
    inARow = values.has(day) ? 0 : inARow + 1;
    missing += values.has(day) ? 0 : 1;
    longest = Math.max(longest, inARow);
  }
  return missing <= monthCompleteness.mostMissing && longest <= monthCompleteness.mostMissingInARow;
}

/** Days of a month of the Gregorian calendar. */
function lengthOf(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
