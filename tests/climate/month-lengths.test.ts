/** What is worked out by the month knows how long each month is, February of a leap year too. */
import { describe, expect, test } from 'vitest';
import { monthlyDegreeDays } from '../../scripts/climate/degree-days.ts';
import type { DailyMinimum } from '../../scripts/climate/freeze-data.ts';
import { stationMonthlyMeans } from '../../scripts/climate/station-months.ts';
import type { TemperatureYear } from '../../scripts/climate/temperature-year.ts';

test('a year without seasons has degree days by the length of each month', () => {
  const level: TemperatureYear = {
    minimumC: Array.from({ length: 365 }, () => 15),
    maximumC: Array.from({ length: 365 }, () => 25),
    sources: [],
  };
  // Ten degrees Celsius above the base are eighteen Fahrenheit degree days a day.
  const days = monthlyDegreeDays(level, { baseC: 10 }).map(({ value }) =>
    value.kind === 'count' ? value.value / 18 : NaN,
  );
  expect(days).toEqual([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]);
});

describe('February of a leap year has twenty-nine days, of which ten may be missing', () => {
  const station = (missing: (day: DailyMinimum) => boolean) => ({
    station: 'X',
    name: 'X',
    days: Array.from({ length: 10 * 365 + 3 }, (_, index): DailyMinimum => {
      const date = new Date(Date.UTC(1996, 0, 1 + index));
      const day = { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
      return { ...day, minimumC: day.month };
    }).filter((day) => !missing(day)),
  });
  /** Every other day up to the 20th, and the 29th. */
  const tenAndTheLast = (year: number) => (day: DailyMinimum) =>
    day.year === year && day.month === 2 && ((day.day <= 20 && day.day % 2 === 0) || day.day === 29);

  test.each([
    ['ten and the leap day are too many', 1996, false],
    ['ten in a common year, which has no leap day, are borne', 1997, true],
  ])('%s', (_, year, enough) => {
    expect(stationMonthlyMeans(station(tenAndTheLast(year))).minimumC !== undefined).toBe(enough);
  });

  test('the leap day counts in the mean of its month', () => {
    const { days, ...rest } = station(() => false);
    const warm = days.map((day) => (day.month === 2 && day.day === 29 ? { ...day, minimumC: 31 } : day));
    // Three leap Februaries of ten, in each of which one day of twenty-nine is twenty-nine degrees warmer: three tenths of one degree.
    expect(stationMonthlyMeans({ ...rest, days: warm }).minimumC![1]).toBeCloseTo(2.3, 9);
  });
});
