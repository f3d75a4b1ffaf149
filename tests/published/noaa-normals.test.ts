/**
 * The published freeze dates of Lebanon Municipal Airport, NH (43.6264 N), through the reader and the risk computation.
 *
 * Source: NOAA National Centers for Environmental Information, U.S. Climate Normals 1991-2020, annual/seasonal normals,
 * station USW00094765. The file here has the form of NOAA's and none but the columns tested.
 */
import { describe, expect, test } from 'vitest';
import { dayNumber } from '../../scripts/climate/calendar.ts';
import { freezeDates, freezeFreeSeason } from '../../scripts/climate/freeze.ts';
import { toHeld } from '../../scripts/quantities/units.ts';
import { readNormalsCsv } from '../../scripts/records/normals-csv.ts';
import { normalsCsv } from '../records/normals-file.ts';

const chances = [10, 20, 30, 40, 50, 60, 70, 80, 90] as const;

const lebanon = [
  {
    thresholdF: 32,
    occurrence: '100.0',
    last: ['05/24', '05/20', '05/16', '05/12', '05/09', '05/06', '05/04', '05/01', '04/27'],
    first: ['09/23', '09/28', '10/01', '10/03', '10/06', '10/08', '10/11', '10/14', '10/19'],
  },
  {
    thresholdF: 16,
    occurrence: '100.0',
    last: ['04/08', '04/04', '04/02', '03/31', '03/29', '03/26', '03/22', '03/18', '03/14'],
    first: ['11/07', '11/11', '11/15', '11/18', '11/21', '11/25', '11/28', '12/01', '12/06'],
  },
];

describe('a station that freezes every year: the plain risk is the printed one', () => {
  const data = normalsOf(lebanon);

  test.each(lebanon)('$thresholdF F, every column', ({ thresholdF, last, first }) => {
    const dates = freezeDates(data, { thresholdC: toHeld(thresholdF, 'F'), latitudeDeg: 43.6264 });
    // Exact: nothing is computed between the printed date and this one.
    expect(chances.map((chance) => dates.last[chance]!.value)).toEqual(last.map(asDate));
    expect(chances.map((chance) => dates.first[chance]!.value)).toEqual(first.map(asDate));
  });

  test('the difference of the 50 % dates is near the printed season length of 148 days, and is not called by its name', () => {
    const season = freezeFreeSeason(freezeDates(data, { thresholdC: 0, latitudeDeg: 43.6264 }));
    expect(season.value).toEqual({ kind: 'quantity', dimension: 'duration', value: 150 });
    expect(season.method).toBe('freeze.difference-of-dates');
  });
});

describe('the same dates where only half of the years reach the threshold (occurrence invented)', () => {
  const [row] = lebanon;
  const data = normalsOf([{ ...row!, occurrence: '50.0' }]);
  const { last, first } = freezeDates(data, { thresholdC: 0, latitudeDeg: 43.6264 });

  test.each([
    [10, 20],
    [20, 40],
    [30, 60],
    [40, 80],
  ] as const)('the plain %d %% risk is the printed %d %% column', (plain, conditional) => {
    const column = chances.indexOf(conditional);
    expect(last[plain]!.value).toEqual(asDate(row!.last[column]!));
    expect(first[plain]!.value).toEqual(asDate(row!.first[column]!));
  });

  test.each([50, 60, 90] as const)('a risk of %d %% is never reached', (chance) => {
    expect(last[chance]!.value).toEqual({ kind: 'none', reason: 'freeze-not-this-likely' });
    expect(first[chance]!.value).toEqual({ kind: 'none', reason: 'freeze-not-this-likely' });
  });
});

test('a risk between two columns has a date between theirs, and one beyond the last column has none', () => {
  const [row] = lebanon;
  // Plain 10 % of years at 85 % occurrence is 11.8 % of the years that freeze: between May 24 (10 %) and May 20 (20 %).
  const data = normalsOf([{ ...row!, occurrence: '85.0' }]);
  const { last } = freezeDates(data, { thresholdC: 0, latitudeDeg: 43.6264 });
  expect(last[10]!.value).toEqual(asDate('05/23'));
  // 80 % of years is 94.1 % of those that freeze, beyond the last column.
  expect(last[80]!.value).toEqual({ kind: 'none', reason: 'freeze-chance-not-given' });
});

function normalsOf(rows: Parameters<typeof normalsCsv>[0]) {
  const { normals, diagnostics } = readNormalsCsv('content/regions/test.csv', normalsCsv(rows));
  expect(diagnostics).toEqual([]);
  return { kind: 'normals', normals: normals!, source: 'noaa-normals-1991-2020' } as const;
}

function asDate(slashed: string) {
  const [month, day] = slashed.split('/').map(Number) as [number, number];
  return { kind: 'date', day: dayNumber({ month, day }) };
}
