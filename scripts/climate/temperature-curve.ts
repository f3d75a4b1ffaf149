/**
 * The temperatures of an average year, day by day, from twelve monthly means: the smooth periodic curve whose monthly
 * means are the given ones.
 *
 * Source of the method: L. I. Boneva, D. Kendall and I. Stefanov, Spline Transformations, Journal of the Royal
 * Statistical Society B 33, 1971 (the histospline: a cubic spline through the cumulated sums, and its slope
 * as the curve), from memory. That monthly and daily normals must agree is the demand of A. Arguez and
 * S. Applequist, A Harmonic Approach for Calculating Daily Temperature Normals Constrained by Homogenized Monthly
 * Temperature Normals, Journal of Atmospheric and Oceanic Technology 30 (7), 2013.
 */
import { daysInYear } from './calendar.ts';
import type { DailyStation } from './freeze-data.ts';
import { stationMonthlyMeans } from './station-months.ts';
import type { TemperatureYear } from './temperature-year.ts';

/** Twelve monthly means of the daily minimum and maximum, January first, in degrees Celsius. */
export interface MonthlyTemperatures {
  readonly minimumC: readonly number[];
  readonly maximumC: readonly number[];
  /** Ids of the sources of the monthly means. */
  readonly sources: readonly string[];
}

/**
 * The average year through monthly means. Every monthly mean of the result is the given one, to rounding error. Fewer or
 * more than twelve months, a value that is no number, or a mean maximum below the mean minimum throws a RangeError:
 * records are checked where they are read.
 */
export function temperatureYear({ minimumC, maximumC, sources }: MonthlyTemperatures): TemperatureYear {
  const crossed = minimumC.findIndex((minimum, month) => minimum > maximumC[month]!);
  if (crossed >= 0)
    throw new RangeError(`the mean maximum of month ${crossed + 1} is below its mean minimum`);
  return {
    minimumC: dailyCurve(minimumC),
    maximumC: dailyCurve(maximumC),
    sources: [...sources, curveSource],
  };
}

/** The source record of the curve, after those of the monthly means. */
const curveSource = 'boneva-1971-histospline';

/**
 * The average year of a station's own daily minima and maxima: the same curve through its monthly means (see
 * `stationMonthlyMeans` for what is complete enough). Undefined where minima or maxima of any month are too few.
 */
export function temperatureYearFromStation(
  station: DailyStation,
  options: { source: string },
): TemperatureYear | undefined {
  const { minimumC, maximumC } = stationMonthlyMeans(station);
  if (!minimumC || !maximumC) return undefined;
  return temperatureYear({ minimumC, maximumC, sources: [options.source] });
}

/** Days of each month of the 365-day year. */
export const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/**
 * One value for each day of the 365-day year, index 0 for January 1. The sum of the values up to the end of each month is
 * that of the monthly means, so their means are exact; between them the sum follows a cubic spline that closes
 * around the year, so that December runs smoothly into January.
 */
export function dailyCurve(monthlyMeans: readonly number[]): readonly number[] {
  if (monthlyMeans.length !== 12 || !monthlyMeans.every(Number.isFinite)) {
    throw new RangeError('twelve monthly means are needed');
  }
  const edges = valuesAtMonthStarts(monthlyMeans);
  return monthlyMeans.flatMap((mean, month) => {
    const length = monthLengths[month]!;
    const [start, end] = [edges[month]!, edges[(month + 1) % 12]!];
    const sumUpTo = (day: number): number => {
      const share = day / length;
      // The integral of the quadratic through both edges whose mean over the month is `mean`.
      const bend = 3 * (start + end - 2 * mean);
      return length * share * (start + share * ((end - start - bend) / 2 + (share * bend) / 3));
    };
    return Array.from({ length }, (_, day) => sumUpTo(day + 1) - sumUpTo(day));
  });
}

/** The means of each month of a daily curve of 365 values, January first. */
export function monthlyMeansOf(daily: readonly number[]): readonly number[] {
  if (daily.length !== daysInYear) throw new RangeError(`${daysInYear} daily values are needed`);
  let before = 0;
  return monthLengths.map((length) => {
    const days = daily.slice(before, (before += length));
    return days.reduce((sum, value) => sum + value, 0) / length;
  });
}

/**
 * The curve where one month meets the next: the slopes of the cubic spline through the cumulated sums. In every month the
 * curve is a quadratic, and its slope must be continuous where months meet: twelve equations that close around the
 * year, in each of which only three neighbouring edges stand.
 */
function valuesAtMonthStarts(means: readonly number[]): readonly number[] {
  const rows = means.map((mean, month) => {
    const before = (month + 11) % 12;
    const [shorter, longer] = [1 / monthLengths[before]!, 1 / monthLengths[month]!];
    const row = Array.from({ length: 13 }, () => 0);
    row[before] = shorter;
    row[month] = 2 * (shorter + longer);
    row[(month + 1) % 12] = longer;
    row[12] = 3 * (means[before]! * shorter + mean * longer);
    return row;
  });
  return solved(rows);
}

/** Gaussian elimination without exchange of rows, which the dominant diagonal of the equations makes safe. */
function solved(equations: readonly (readonly number[])[]): readonly number[] {
  const rows = equations.map((row) => [...row]);
  rows.forEach((pivot, at) => {
    for (const row of rows) {
      if (row === pivot) continue;
      const factor = row[at]! / pivot[at]!;
      row.forEach((value, column) => (row[column] = value - factor * pivot[column]!));
    }
  });
  return rows.map((row, at) => row[rows.length]! / row[at]!);
}
