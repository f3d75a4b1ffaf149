/** The curve through monthly normals of a real station (Lebanon, NH, 1991-2020; see lebanon.ts). */
import { describe, expect, test } from 'vitest';
import { monthlyMeansOf, temperatureYear } from '../../scripts/climate/temperature-curve.ts';
import { meanOn } from '../../scripts/climate/temperature-year.ts';
import { fromHeld } from '../../scripts/quantities/units.ts';
import { monthlyMeans1991To2020 } from './lebanon.ts';

const year = temperatureYear(monthlyMeans1991To2020);

test.each(['minimumC', 'maximumC'] as const)('the monthly means of %s are the printed ones', (key) => {
  for (const [month, mean] of monthlyMeansOf(year[key]).entries()) {
    // 0.01 C is asked for; the curve is exact to rounding.
    expect(Math.abs(mean - monthlyMeans1991To2020[key][month]!)).toBeLessThan(1e-9);
  }
});

describe('the mean of the days, against MLY-TAVG-NORMAL', () => {
  // prettier-ignore
  const printedF = [19.8, 22.4, 31.9, 44.3, 56.7, 65.1, 70.3, 68.6, 60.7, 48.6, 37.2, 26.8];
  test.each(printedF.map((value, month) => [month + 1, value] as const))(
    'month %d, %d F',
    (month, printed) => {
      const days = Array.from({ length: 365 }, (_, index) => meanOn(year, index + 1));
      // 0.06 F: minimum, maximum and mean are printed to a tenth, each rounded by itself.
      expect(Math.abs(fromHeld(monthlyMeansOf(days)[month - 1]!, 'F') - printed)).toBeLessThan(0.06 + 1e-9);
    },
  );
});

test('the coldest and warmest days lie where those of a northern inland climate do, and are little beyond the months', () => {
  const coldest = Math.min(...year.minimumC);
  const warmest = Math.max(...year.maximumC);
  expect(year.minimumC.indexOf(coldest) + 1).toBeGreaterThan(15);
  expect(year.minimumC.indexOf(coldest) + 1).toBeLessThan(40);
  expect(year.maximumC.indexOf(warmest) + 1).toBeGreaterThan(191);
  expect(year.maximumC.indexOf(warmest) + 1).toBeLessThan(212);
  // One degree: the height of a smooth wave of this size above the mean of its highest month.
  expect(Math.min(...monthlyMeans1991To2020.minimumC) - coldest).toBeLessThan(1);
  expect(warmest - Math.max(...monthlyMeans1991To2020.maximumC)).toBeLessThan(1);
});
