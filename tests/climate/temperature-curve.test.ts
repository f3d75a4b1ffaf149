import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { monthDay } from '../../scripts/climate/calendar.ts';
import type { DailyMinimum } from '../../scripts/climate/freeze-data.ts';
import {
  dailyCurve,
  monthLengths,
  monthlyMeansOf,
  temperatureYear,
  temperatureYearFromStation,
} from '../../scripts/climate/temperature-curve.ts';
import { maximumOn, meanOn, minimumOn } from '../../scripts/climate/temperature-year.ts';

const twelve = (value: fc.Arbitrary<number>) => fc.array(value, { minLength: 12, maxLength: 12 });
const degrees = fc.double({ min: -50, max: 50, noNaN: true });

describe('any twelve means', () => {
  test('come back from the curve to a hundredth of a degree', () => {
    fc.assert(
      fc.property(twelve(degrees), (means) => {
        for (const [month, mean] of monthlyMeansOf(dailyCurve(means)).entries()) {
          expect(Math.abs(mean - means[month]!)).toBeLessThan(0.01);
        }
      }),
    );
  });

  test('swing beyond a month and its neighbours by less than half of the range of the year', () => {
    // The worst that means without any order can do is a third; a climate does far less, as the next test says.
    fc.assert(
      fc.property(twelve(degrees), (means) => {
        const range = Math.max(...means) - Math.min(...means);
        expect(furthestBeyondNeighbours(means)).toBeLessThanOrEqual(range / 2 + 1e-9);
      }),
    );
  });

  test('shifted by a number or stretched by a factor give the curve shifted or stretched', () => {
    fc.assert(
      fc.property(twelve(degrees), degrees, (means, number) => {
        const curve = dailyCurve(means);
        const changed = dailyCurve(means.map((mean) => 2 * mean + number));
        for (const [day, value] of curve.entries()) expect(changed[day]).toBeCloseTo(2 * value + number, 6);
      }),
      { numRuns: 20 },
    );
  });
});

test('the climate of a smooth year stays within a twelfth of its range of the months around', () => {
  const climate = fc.record({
    mean: fc.double({ min: -15, max: 28, noNaN: true }),
    half: fc.double({ min: 0, max: 25, noNaN: true }),
    coldest: fc.double({ min: 1, max: 365, noNaN: true }),
    second: fc.double({ min: 0, max: 0.15, noNaN: true }),
  });
  fc.assert(
    fc.property(climate, ({ mean, half, coldest, second }) => {
      const means = Array.from({ length: 12 }, (_, month) => {
        const angle = (2 * Math.PI * (month * 30.4 + 15 - coldest)) / 365;
        return mean - half * Math.cos(angle) + half * second * Math.cos(2 * angle);
      });
      expect(furthestBeyondNeighbours(means)).toBeLessThanOrEqual((2 * half) / 12 + 1e-9);
    }),
  );
});

test('December runs into January without a step, and no day is far from the one before', () => {
  const curve = dailyCurve([-12, -9, -2, 7, 14, 19, 22, 21, 16, 9, 1, -8]);
  const steps = curve.map((value, day) => Math.abs(value - curve[(day + 364) % 365]!));
  expect(Math.max(...steps)).toBeLessThan(0.4);
});

test('a place without seasons has a level curve', () => {
  for (const value of dailyCurve(Array.from({ length: 12 }, () => 26.5))) expect(value).toBeCloseTo(26.5, 9);
});

test('days run on over New Year, and the mean is half of both', () => {
  const year = temperatureYear({
    minimumC: [-10, -8, -2, 4, 9, 14, 17, 16, 12, 6, 0, -7],
    maximumC: [0, 2, 9, 16, 21, 26, 29, 28, 24, 17, 9, 2],
    sources: ['test'],
  });
  expect(minimumOn(year, 366)).toBe(minimumOn(year, 1));
  expect(maximumOn(year, 0)).toBe(maximumOn(year, 365));
  expect(meanOn(year, 200)).toBeCloseTo((minimumOn(year, 200) + maximumOn(year, 200)) / 2, 9);
  expect(year.sources).toEqual(['test', 'boneva-1971-histospline']);
});

test.each([
  ['eleven months', Array.from({ length: 11 }, () => 1)],
  ['a month that is no number', [1, 2, 3, 4, 5, 6, NaN, 8, 9, 10, 11, 12]],
])('%s are refused', (_, means) => {
  expect(() => dailyCurve(means)).toThrow(RangeError);
});

test('a mean maximum below the mean minimum is refused', () => {
  const level = Array.from({ length: 12 }, () => 10);
  expect(() => temperatureYear({ minimumC: level, maximumC: level.with(4, 9), sources: [] })).toThrow(
    /month 5/,
  );
});

describe('from a station of its own', () => {
  const years = (count: number, change: (day: DailyMinimum) => DailyMinimum = (day) => day): DailyMinimum[] =>
    Array.from({ length: count }, (_, index) => 2001 + index).flatMap((year) =>
      Array.from({ length: 365 }, (_, index) => {
        const { month, day } = monthDay(index + 1);
        return change({ year, month, day, minimumC: month, maximumC: month + 10 });
      }),
    );
  const yearOf = (days: readonly DailyMinimum[]) =>
    temperatureYearFromStation({ station: 'X', name: 'X', days }, { source: 'test' });

  test('ten whole years give their monthly means', () => {
    const year = yearOf(years(10))!;
    for (const [month, mean] of monthlyMeansOf(year.minimumC).entries())
      expect(mean).toBeCloseTo(month + 1, 6);
    for (const [month, mean] of monthlyMeansOf(year.maximumC).entries())
      expect(mean).toBeCloseTo(month + 11, 6);
  });

  test.each<[string, readonly DailyMinimum[]]>([
    ['nine years', years(9)],
    [
      'ten years without maxima',
      years(10, ({ year, month, day, minimumC }) => ({ year, month, day, minimumC })),
    ],
    [
      'a July with five days missing in a row',
      years(10, (day) =>
        day.year === 2003 && day.month === 7 && day.day > 10 && day.day <= 15
          ? { ...day, minimumC: null }
          : day,
      ),
    ],
    [
      'a July with eleven days missing here and there',
      years(10, (day) =>
        day.year === 2003 && day.month === 7 && day.day % 2 === 0 && day.day <= 22
          ? { ...day, minimumC: null }
          : day,
      ),
    ],
  ])('%s are too few', (_, days) => {
    expect(yearOf(days)).toBeUndefined();
  });

  test('four days missing in a row are borne', () => {
    const days = years(10, (day) =>
      day.year === 2003 && day.month === 7 && day.day > 10 && day.day <= 14
        ? { ...day, minimumC: null }
        : day,
    );
    expect(yearOf(days)).toBeDefined();
  });
});

/** How far the curve goes beyond the highest and lowest of each month and the two beside it. */
function furthestBeyondNeighbours(means: readonly number[]): number {
  const curve = dailyCurve(means);
  let day = 0;
  let furthest = 0;
  monthLengths.forEach((length, month) => {
    const around = [means[(month + 11) % 12]!, means[month]!, means[(month + 1) % 12]!];
    for (const value of curve.slice(day, (day += length))) {
      furthest = Math.max(furthest, value - Math.max(...around), Math.min(...around) - value);
    }
  });
  return furthest;
}
