/** Growing degree days against NOAA's normals (Lebanon, NH; see lebanon.ts) and against hand-worked days. */
import { describe, expect, test } from 'vitest';
import {
  accumulate,
  annualDegreeDays,
  degreeDaysOfDay,
  monthlyDegreeDays,
  type DegreeDayMethod,
} from '../../scripts/climate/degree-days.ts';
import { temperatureYear } from '../../scripts/climate/temperature-curve.ts';
import { toHeld } from '../../scripts/quantities/units.ts';
import { monthlyMeans1991To2020 } from './lebanon.ts';

const year = temperatureYear(monthlyMeans1991To2020);
const annualF = (baseF: number, method: DegreeDayMethod, upperF?: number): number => {
  const upperC = upperF === undefined ? undefined : toHeld(upperF, 'F');
  return accumulate(year, 1, 365, { baseC: toHeld(baseF, 'F'), upperC, method }) * 1.8;
};

describe('annual growing degree days 1991-2020, ANN-GRDD-BASE40 to -BASE60', () => {
  // prettier-ignore
  test.each([
    [40, 4294.3],
    [45, 3263.4],
    [50, 2363.7],
    [55, 1584.3],
    [60, 944.3],
  ])('base %d F, printed %d', (baseF, printed) => {
    // Below the printed value, and by no more than 170 degree days: a curve of averages leaves out the days that are warmer
    // than the base while the average is not, some 140 to 165 degree days a year here at every base.
    const missing = printed - annualF(baseF, 'average');
    expect(missing).toBeGreaterThan(100);
    expect(missing).toBeLessThan(170);
  });

  test('base 50 and 86 F: the sum of the twelve monthly values, 2,743, not the annual column', () => {
    // MLY-GRDD-TB5086; the annual column prints 5991.6, which no sum of its months gives.
    const months = [2, 3.7, 27.4, 128.3, 320.3, 470.8, 614.2, 577.4, 383.6, 168, 41.5, 5.8];
    const printed = months.reduce((sum, month) => sum + month, 0);
    const missing = printed - annualF(50, 'clamped-average', 86);
    expect(printed).toBeCloseTo(2743, 0);
    expect(missing).toBeGreaterThan(100);
    expect(missing).toBeLessThan(180);
  });

  test('the months of base 40 F: close in summer, short at the edges of the season', () => {
    // MLY-GRDD-BASE40, May to September.
    const printed = [518, 754.4, 937.6, 888.1, 622.5];
    const months = monthlyDegreeDays(year, { baseC: toHeld(40, 'F') }).slice(4, 9);
    for (const [index, { value }] of months.entries()) {
      // 1 %: no summer day comes near the base, so that averages and real days agree.
      const share = value.kind === 'count' ? value.value / printed[index]! : NaN;
      expect(Math.abs(share - 1)).toBeLessThan(0.01);
    }
  });

  test('the finding counts Fahrenheit degree days and names its base', () => {
    expect(annualDegreeDays(year, { baseC: 10 })).toMatchObject({
      id: 'degree-days.annual.50f',
      value: { kind: 'count', value: Math.round(annualF(50, 'average')) },
      method: 'degree-days.average',
      inputs: [{ name: 'base-temperature', value: { kind: 'quantity', value: 10 } }],
    });
    expect(annualDegreeDays(year, { baseC: 10, upperC: 30, method: 'clamped-average' }).id).toBe(
      'degree-days.annual.50f-86f',
    );
  });
});

describe('days worked by hand: base 50 F and upper temperature 86 F, in Fahrenheit degree days', () => {
  // prettier-ignore
  test.each<[name: string, minimumF: number, maximumF: number, average: number, clamped: number, sine: number]>([
    ['all day below the base', 30, 48, 0, 0, 0],
    ['the maximum just at the base', 30, 50, 0, 0, 0],
    ['all day between', 55, 75, 15, 15, 15],
    ['all day above', 88, 96, 36, 36, 36],
    // The sine swings by 20 about its mean at the base: half of the day above it, 20/π on average.
    ['the mean at the base', 30, 70, 0, 10, 20 / Math.PI],
    // Mean 86 F, swing 10: half of the day is cut off, so that 10/π of the 36 are lost.
    ['the mean at the upper temperature', 76, 96, 36, (26 + 36) / 2, 36 - 10 / Math.PI],
    // Mean 60 F, swing 20, crossing at asin(-1/2) = -30 degrees: (10 (90 + 30)/180 π + 20 cos 30) / π.
    ['the base between minimum and mean', 40, 80, 10, 15, (10 * ((2 * Math.PI) / 3) + 20 * Math.cos(Math.PI / 6)) / Math.PI],
    ['a day without a swing', 60, 60, 10, 10, 10],
  ])('%s', (_, minimumF, maximumF, average, clamped, sine) => {
    const day = { minimumC: toHeld(minimumF, 'F'), maximumC: toHeld(maximumF, 'F') };
    const degreeDaysF = (method: DegreeDayMethod): number =>
      degreeDaysOfDay(day, { baseC: 10, upperC: 30, method }) * 1.8;
    // Exact but for binary fractions.
    expect(degreeDaysF('average')).toBeCloseTo(average, 9);
    expect(degreeDaysF('clamped-average')).toBeCloseTo(clamped, 9);
    expect(degreeDaysF('single-sine')).toBeCloseTo(sine, 9);
  });

  test('the sine agrees with a sum over ten thousand moments of the day', () => {
    const [minimumC, maximumC, baseC, upperC] = [4, 33, 10, 30];
    const moments = Array.from({ length: 10_000 }, (_, index) => {
      const temperatureC = 18.5 + 14.5 * Math.sin((2 * Math.PI * (index + 0.5)) / 10_000);
      return Math.min(Math.max(temperatureC, baseC), upperC) - baseC;
    });
    const summed = moments.reduce((sum, value) => sum + value, 0) / moments.length;
    const closed = degreeDaysOfDay({ minimumC, maximumC }, { baseC, upperC, method: 'single-sine' });
    // 1e-5: what ten thousand steps leave at the corners.
    expect(Math.abs(closed - summed)).toBeLessThan(1e-5);
  });
});
