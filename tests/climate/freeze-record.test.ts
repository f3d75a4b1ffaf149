/** What else is said of a record of freezes: empirical dates, season lengths, occurrence, and the dates to plan by. */
import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { growingSeason, monthDay } from '../../scripts/climate/calendar.ts';
import type { DailyStation, FreezeData } from '../../scripts/climate/freeze-data.ts';
import {
  empiricalDate,
  empiricalFreezeDates,
  freezeFitDifferences,
} from '../../scripts/climate/freeze-empirical.ts';
import {
  freezeOccurrence,
  seasonLengths,
  seasonLengthsOnRecord,
} from '../../scripts/climate/freeze-free-season.ts';
import { freezeDates, freezeThresholdsF } from '../../scripts/climate/freeze.ts';
import { planningFreeze } from '../../scripts/climate/planning-freeze.ts';
import { date, none, type Finding } from '../../scripts/findings/finding.ts';
import { toHeld } from '../../scripts/quantities/units.ts';
import { freezeChances } from '../../scripts/records/schemas/region.ts';
import { readStationCsv } from '../../scripts/records/station-csv.ts';

const numberOf = ({ value }: Finding): number =>
  value.kind === 'date' ? value.day : value.kind === 'quantity' ? value.value : NaN;
const north = { thresholdC: 0, latitudeDeg: 45 };
const dailyData = (station: DailyStation): FreezeData & { kind: 'daily' } => ({
  kind: 'daily',
  station,
  source: 'test',
});

describe('empirical dates: the season in place r of n, most at risk first, stands for r/(n + 1)', () => {
  const nineteen = Array.from({ length: 19 }, (_, index) => 101 + index);

  // prettier-ignore
  test.each([
    ['the second latest of nineteen is the 10 % last freeze', nineteen, 'last', 0.1, date(118)],
    ['the tenth is the median', nineteen, 'last', 0.5, date(110)],
    ['the second earliest is the 10 % first freeze', nineteen, 'first', 0.1, date(102)],
    ['between two places the line is read', nineteen.slice(0, 10), 'last', 0.5, date(106)],
    ['seasons without a freeze take the last places', [...nineteen.slice(0, 9), ...Array<null>(10).fill(null)], 'last', 0.4, date(102)],
    ['and no date is that likely', [...nineteen.slice(0, 9), ...Array<null>(10).fill(null)], 'last', 0.5, none('freeze-not-this-likely')],
    ['no season with a freeze', Array<null>(19).fill(null), 'last', 0.1, none('freeze-never')],
    ['nine seasons', nineteen.slice(0, 9), 'last', 0.5, none('too-few-seasons')],
  ] as const)('%s', (_, days, edge, chance, value) => {
    expect(empiricalDate(days, edge, chance)).toEqual(value);
  });

  test('run one way with the chance, for any seasons', () => {
    const seasons = fc.array(fc.option(fc.integer({ min: -100, max: 200 }), { nil: null }), {
      minLength: 10,
      maxLength: 60,
    });
    fc.assert(
      fc.property(seasons, fc.constantFrom('last' as const, 'first' as const), (days, edge) => {
        const dates = freezeChances.flatMap((chance) => {
          const value = empiricalDate(days, edge, chance / 100);
          return value.kind === 'date' ? [value.day] : [];
        });
        expect(dates).toEqual([...dates].sort((a, b) => (edge === 'last' ? b - a : a - b)));
      }),
    );
  });
});

describe('thirty invented years of daily minima (Larkwether)', () => {
  const path = new URL('../../content/regions/larkwether-daily.csv', import.meta.url);
  const data = dailyData(readStationCsv('larkwether-daily.csv', readFileSync(path, 'utf8')).station!);

  test.each(freezeThresholdsF)(
    'at %d F the fitted and the empirical dates lie within five days',
    (thresholdF) => {
      const options = { thresholdC: toHeld(thresholdF, 'F'), latitudeDeg: 45.2 };
      const differences = freezeFitDifferences(
        freezeDates(data, options),
        empiricalFreezeDates(data, options),
      );
      expect(differences).toHaveLength(18);
      // Five days: thirty seasons scatter so far from any smooth curve.
      for (const finding of differences)
        expect(Math.abs(numberOf(finding)), finding.id).toBeLessThanOrEqual(5);
      expect(differences[0]).toMatchObject({
        id: `freeze.last.${thresholdF}f.10.fit-difference`,
        method: 'freeze.fit-difference',
      });
    },
  );

  test.each(freezeThresholdsF)(
    'at %d F the season is shorter the surer it is, and half are longer than the median',
    (thresholdF) => {
      const options = { thresholdC: toHeld(thresholdF, 'F'), latitudeDeg: 45.2 };
      const lengths = freezeChances.map((chance) => numberOf(seasonLengths(data, options)[chance]));
      expect(lengths).toEqual([...lengths].sort((a, b) => b - a));
      const onRecord = seasonLengthsOnRecord(data.station, options).filter((length) => length !== null);
      const longer = onRecord.filter((length) => length > lengths[4]!).length / onRecord.length;
      expect(Math.abs(longer - 0.5)).toBeLessThan(0.12);
      expect(freezeOccurrence(data, options).value).toEqual({ kind: 'choice', value: 'freeze-every-year' });
    },
  );
});

describe('season lengths from daily minima', () => {
  test('twenty seasons of given ends', () => {
    const ends = Array.from({ length: 20 }, (_, index): [number, number] => [100 + index, 280 - index]);
    const data = dailyData(record(ends));
    const lengths = seasonLengthsOnRecord(data.station, north);
    expect(lengths.slice(0, 3)).toEqual([180, 178, 176]);
    const median = seasonLengths(data, north)[50];
    expect(median).toMatchObject({ id: 'freeze.free-days.32f.50', method: 'freeze.season-normal' });
    expect(Math.abs(numberOf(median) - 161)).toBeLessThanOrEqual(1);
  });

  test('where three of four years pass without a freeze at either end, no more than a quarter are shorter than any length', () => {
    const ends = Array.from({ length: 20 }, (_, index): [number, number] | null =>
      index % 4 ? null : [40, 340],
    );
    const lengths = seasonLengths(dailyData(record(ends)), north);
    expect(lengths[10].value).toEqual(none('season-not-this-short'));
    expect(lengths[70].value).toEqual(none('season-not-this-short'));
    expect(numberOf(lengths[80])).toBe(300);
  });

  test('a frost-free place has no such season, and says that it never freezes', () => {
    const data = dailyData(record(Array<null>(20).fill(null)));
    expect(seasonLengths(data, north)[50].value).toEqual(none('freeze-never'));
    expect(freezeOccurrence(data, north).value).toEqual({ kind: 'choice', value: 'freeze-never' });
  });

  test('where it freezes in any month the seasons are a few days, and the place says so', () => {
    const data = dailyData({
      station: 'X',
      name: 'X',
      days: record(Array<null>(20).fill(null)).days.map((day) => ({ ...day, minimumC: -5 })),
    });
    expect(numberOf(seasonLengths(data, north)[50])).toBeLessThan(5);
    expect(freezeOccurrence(data, north).value).toEqual({ kind: 'choice', value: 'freeze-all-year' });
  });

  test('some winters freeze and others do not', () => {
    const data = dailyData(
      record(
        Array.from({ length: 20 }, (_, index): [number, number] | null => (index < 12 ? [40, 340] : null)),
      ),
    );
    expect(freezeOccurrence(data, north).value).toEqual({ kind: 'choice', value: 'freeze-some-years' });
  });

  test('the south has the same lengths half a year later', () => {
    const ends = Array.from({ length: 20 }, (_, index): [number, number] => [100 + index, 280 - index]);
    const south = { thresholdC: 0, latitudeDeg: -45 };
    const moved = ends.map(([last, first]): [number, number] => [last + 184, first + 184]);
    const [a, b] = [
      seasonLengths(dailyData(record(ends)), north),
      seasonLengths(dailyData(record(moved, { south: true })), south),
    ];
    expect(freezeChances.map((chance) => b[chance].value)).toEqual(
      freezeChances.map((chance) => a[chance].value),
    );
  });

  test('eight seasons are too few', () => {
    const data = dailyData(record(Array.from({ length: 8 }, (): [number, number] => [100, 280])));
    expect(seasonLengths(data, north)[50].value).toEqual(none('too-few-seasons'));
    expect(freezeOccurrence(data, north).value).toEqual(none('too-few-seasons'));
  });
});

describe('from normals and from a typed table', () => {
  const row = { thresholdC: 0, last: { 10: 144, 50: 129, 90: 117 }, first: { 10: 266, 50: 279, 90: 292 } };
  const normals = (change: object): FreezeData => ({
    kind: 'normals',
    source: 'test',
    normals: {
      station: 'X',
      name: 'X',
      period: '1991-2020',
      rows: [{ ...row, occurrencePercent: 100, seasonDays: { 10: 167, 50: 148, 90: 128 }, ...change }],
    },
  });

  test('where half of the years freeze, the 60 % season is the 20 % one of those years', () => {
    const lengths = seasonLengths(normals({ occurrencePercent: 50 }), north);
    expect(lengths[50].value).toEqual(none('season-not-this-short'));
    // 60 % of all years are longer than: the 50 % that do not freeze and 20 % of those that do.
    expect(numberOf(lengths[60])).toBe(160);
    expect(lengths[90].value.kind).toBe('quantity');
  });

  test('without printed lengths the difference of the dates stands for the middle one alone', () => {
    for (const data of [
      normals({ seasonDays: undefined }),
      { kind: 'table', rows: [row], source: 'test' } as const,
    ]) {
      const lengths = seasonLengths(data, north);
      expect(lengths[50]).toMatchObject({
        id: 'freeze.free-days.32f.50',
        method: 'freeze.difference-of-dates',
      });
      expect(numberOf(lengths[50])).toBe(150);
      expect(lengths[10].value).toEqual(none('season-length-not-given'));
    }
  });

  test.each([
    ['risk all year', { allYear: true, last: {}, first: {} }, 'freeze-all-year', none('freeze-all-year')],
    ['no year', { occurrencePercent: 0, last: {}, first: {} }, 'freeze-never', none('freeze-never')],
  ] as const)('%s is said of dates, lengths and occurrence alike', (_, change, named, reason) => {
    const data = normals(change);
    expect(freezeDates(data, north).last[50]!.value).toEqual(reason);
    expect(seasonLengths(data, north)[50].value).toEqual(reason);
    expect(freezeOccurrence(data, north).value).toEqual({ kind: 'choice', value: named });
  });

  test('a typed table does not say how often it freezes', () => {
    const table = { kind: 'table', rows: [row], source: 'test' } as const;
    expect(freezeOccurrence(table, north).value).toEqual(none('freeze-occurrence-not-given'));
  });
});

describe('the dates to plan by', () => {
  const row = { thresholdC: 0, last: { 10: 144, 50: 129 }, first: { 10: 266, 50: 279 } };
  const dates = freezeDates({ kind: 'table', rows: [row], source: 'test' }, north);

  test('even odds when nothing is chosen', () => {
    const plan = planningFreeze(dates);
    expect(plan.chance).toBe(50);
    expect(plan.last).toMatchObject({ id: 'freeze.plan.last.32f', value: date(129), method: 'freeze.plan' });
    expect(plan.first).toMatchObject({ id: 'freeze.plan.first.32f', value: date(279) });
    expect(plan.last.inputs[1]).toMatchObject({ name: 'last-freeze', finding: 'freeze.last.32f.50' });
  });

  test('a careful gardener plants later in spring and is done earlier in fall', () => {
    const days = ([10, 20, 30, 40, 50] as const).map((chance) => planningFreeze(dates, chance));
    const last = days.map((plan) => numberOf(plan.last));
    const first = days.map((plan) => numberOf(plan.first));
    expect(last).toEqual([144, 139, 135, 132, 129]);
    expect(first).toEqual([266, 270, 274, 276, 279]);
    expect(days[1]!.last.method).toBe('freeze.plan-between');
    expect(days[1]!.last.inputs.map(({ finding }) => finding)).toEqual([
      undefined,
      'freeze.last.32f.10',
      'freeze.last.32f.50',
    ]);
  });

  test('nothing is read beyond the given chances', () => {
    expect(planningFreeze(dates, 60).last.value).toEqual(none('freeze-chance-not-given'));
  });

  test('a place that does not freeze so often keeps the reason', () => {
    const data = dailyData(record(Array<null>(20).fill(null)));
    expect(planningFreeze(freezeDates(data, north), 20).first.value).toEqual(none('freeze-never'));
  });
});

/** Daily minima of 10 C but for the last and the first freeze of each growing season from 1991 on; `null` has neither. */
function record(ends: readonly ([number, number] | null)[], options: { south?: boolean } = {}): DailyStation {
  const season = growingSeason(options.south ? -45 : 45);
  const freezing = new Set(
    ends.flatMap((pair, index) => (pair ?? []).map((day) => (1991 + index) * 365 + day)),
  );
  const from = 1991 * 365 + season.last.from;
  const to = (1990 + ends.length) * 365 + season.first.to;
  const days = Array.from({ length: to - from + 1 }, (_, index) => {
    const fixed = from + index;
    const year = Math.floor((fixed - 1) / 365);
    return { year, ...monthDay(fixed - year * 365), minimumC: freezing.has(fixed) ? -5 : 10 };
  });
  return { station: 'X', name: 'X', days };
}
