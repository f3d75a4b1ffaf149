/**
 * The normal form of freeze dates against the quantiles of a real record of daily minima: those that NOAA worked out by
 * drawing 10,000 years from the days on record, which follow no fitted curve (Lebanon, NH; see lebanon.ts). No
 * daily file of ten years or more is at hand in a package of the npm registry, so the quantiles stand for it.
 */
import { describe, expect, test } from 'vitest';
import { dayNumber, growingSeason, placeInSeason } from '../../scripts/climate/calendar.ts';
import { freezeDates } from '../../scripts/climate/freeze.ts';
import { dayAtChance } from '../../scripts/climate/mixed-normal.ts';
import { normalQuantile } from '../../scripts/climate/normal-distribution.ts';
import { toHeld } from '../../scripts/quantities/units.ts';
import { readNormalsCsv } from '../../scripts/records/normals-csv.ts';
import { freeze1981To2010, freeze1991To2020, olderFile, type FreezeRow } from './lebanon.ts';

const chances = [10, 20, 30, 40, 50, 60, 70, 80, 90] as const;
const periods: [string, readonly FreezeRow[]][] = [
  ['1991-2020', freeze1991To2020],
  ['1981-2010', freeze1981To2010],
];

describe.each(periods)('%s: one normal curve fits the nine quantiles of a row', (_, rows) => {
  describe.each(['last', 'first'] as const)('%s freeze', (edge) => {
    test.each(rows)('$thresholdF F', (row) => {
      const days = row[edge].split(' ').map((text) => placedDay(text, edge));
      const fit = normalThrough(days, edge);
      for (const [index, chance] of chances.entries()) {
        // Three days: whole dates, and quantiles of thirty years that scatter by a few days (the largest difference here is
        // 1.9 days; five are allowed between a normal fit and the quantiles of one record).
        const difference = dayAtChance(fit, edge, chance / 100)! - days[index]!;
        expect(Math.abs(difference), `${chance} %`).toBeLessThanOrEqual(3);
      }
    });
  });
});

describe('the 1981-2010 form of the file', () => {
  const { normals, diagnostics } = readNormalsCsv('content/regions/x.csv', olderFile(freeze1981To2010));

  test('is read without a fault, and every year freezes (1000 tenths of a percent)', () => {
    expect(diagnostics).toEqual([]);
    expect(normals!.period).toBe('1981-2010');
    expect(normals!.rows.map(({ occurrencePercent }) => occurrencePercent)).toEqual(Array(6).fill(100));
  });

  test.each(freeze1981To2010)('$thresholdF F gives back its printed dates', ({ thresholdF, last, first }) => {
    const data = { kind: 'normals', normals: normals!, source: 'noaa-normals-1981-2010' } as const;
    const dates = freezeDates(data, { thresholdC: toHeld(thresholdF, 'F'), latitudeDeg: 43.6264 });
    const days = (edge: 'last' | 'first', texts: string) =>
      texts.split(' ').map((text) => placedDay(text, edge));
    const found = (edge: 'last' | 'first') => chances.map((chance) => dates[edge][chance]!.value);
    // Exact: nothing is computed between the printed date and this one.
    expect(found('last')).toEqual(days('last', last).map((day) => ({ kind: 'date', day })));
    expect(found('first')).toEqual(days('first', first).map((day) => ({ kind: 'date', day })));
  });
});

function placedDay(text: string, edge: 'last' | 'first'): number {
  const [month, day] = text.split('/').map(Number) as [number, number];
  return placeInSeason(dayNumber({ month, day }), growingSeason(43.6)[edge]);
}

/** Mean and spread by least squares on the normal quantiles, which are symmetric about the median. */
function normalThrough(days: readonly number[], edge: 'last' | 'first') {
  const z = chances.map((chance) => normalQuantile(edge === 'last' ? 1 - chance / 100 : chance / 100));
  const meanDay = days.reduce((sum, day) => sum + day, 0) / days.length;
  const sdDays =
    z.reduce((sum, value, index) => sum + value * days[index]!, 0) /
    z.reduce((sum, value) => sum + value ** 2, 0);
  return { freezeShare: 1, meanDay, sdDays };
}
