/** Lengths of the freeze-free season against NOAA's printed ones (Lebanon, NH; see lebanon.ts). */
import { describe, expect, test } from 'vitest';
import { seasonLengths } from '../../scripts/climate/freeze-free-season.ts';
import { freezeDates, freezeFreeSeason } from '../../scripts/climate/freeze.ts';
import { normalQuantile } from '../../scripts/climate/normal-distribution.ts';
import { toHeld } from '../../scripts/quantities/units.ts';
import { readNormalsCsv } from '../../scripts/records/normals-csv.ts';
import { freeze1981To2010, freeze1991To2020, olderFile } from './lebanon.ts';

const chances = [10, 20, 30, 40, 50, 60, 70, 80, 90] as const;
const { normals } = readNormalsCsv('content/regions/x.csv', olderFile(freeze1981To2010));
const data = { kind: 'normals', normals: normals!, source: 'noaa-normals-1981-2010' } as const;
const optionsAt = (thresholdF: number) => ({ thresholdC: toHeld(thresholdF, 'F'), latitudeDeg: 43.6264 });

describe('PRBGSL columns: the chance is that of a longer season', () => {
  test.each(freeze1981To2010)('$thresholdF F, every column', ({ thresholdF, season }) => {
    const lengths = seasonLengths(data, optionsAt(thresholdF));
    // Exact: every year freezes, so the printed chance is the plain one.
    expect(chances.map((chance) => lengths[chance].value)).toEqual(
      season.map((days) => ({ kind: 'quantity', dimension: 'duration', value: days })),
    );
    expect(lengths[50].method).toBe('freeze.season-normals');
    expect(lengths[10].id).toBe(`freeze.free-days.${thresholdF}f.10`);
  });

  test.each(freeze1981To2010)(
    '$thresholdF F: the difference of the 50 %% dates is near the 50 %% length',
    ({ thresholdF, season }) => {
      const { value } = freezeFreeSeason(freezeDates(data, optionsAt(thresholdF)));
      // Four days: NOAA's season is the longest stretch of a year, and medians do not subtract.
      const days = value.kind === 'quantity' ? value.value : NaN;
      expect(Math.abs(days - season[4]!)).toBeLessThanOrEqual(4);
    },
  );
});

describe.each([
  ['1991-2020', freeze1991To2020],
  ['1981-2010', freeze1981To2010],
])('%s: lengths follow a normal curve, as the form for daily minima takes them to', (_, rows) => {
  test.each(rows)('$thresholdF F', ({ season }) => {
    const z = chances.map((chance) => normalQuantile(1 - chance / 100));
    const mean = season.reduce((sum, days) => sum + days, 0) / season.length;
    const sd =
      z.reduce((sum, value, index) => sum + value * season[index]!, 0) /
      z.reduce((sum, value) => sum + value ** 2, 0);
    for (const [index, days] of season.entries()) {
      // Two days: whole days, and quantiles that scatter (the largest difference is 1.1 days).
      expect(Math.abs(mean + sd * z[index]! - days), `${chances[index]} %`).toBeLessThanOrEqual(2);
    }
  });
});
