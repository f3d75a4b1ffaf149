import { array, assert, constantFrom, integer, option, property } from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayNumber, monthDay } from '../../scripts/climate/calendar.ts';
import { freezeDataFault, freezeDates, freezeFreeSeason } from '../../scripts/climate/freeze.ts';
import type { DailyMinimum, DailyStation, FreezeData } from '../../scripts/climate/freeze-data.ts';
import { freezeDays, usableSeasons } from '../../scripts/climate/freeze-seasons.ts';
import type { DateFinding, FindingValue } from '../../scripts/findings/finding.ts';
import { toHeld } from '../../scripts/quantities/units.ts';
import { seasonsRecord, type SeasonsOptions } from './seasons-record.ts';

const north = { thresholdC: 0, latitudeDeg: 45 };
const chances = [10, 20, 30, 40, 50, 60, 70, 80, 90] as const;

const daily = (options: SeasonsOptions): FreezeData => ({
  kind: 'daily',
  station: seasonsRecord(options),
  source: 'test',
});
const dayOf = (finding: DateFinding | undefined): number | string =>
  finding?.value.kind === 'date' ? finding.value.day : (finding?.value.reason ?? 'absent');

describe('from daily minima', () => {
  // Mean 100, sample deviation sqrt(10 × 100 / 9) = 10.541: dates 100 + 10.541 × z of each chance.
  const tenAndTen = [90, 110, 90, 110, 90, 110, 90, 110, 90, 110];

  test('a record with a known answer, last freeze', () => {
    const { last } = freezeDates(daily({ last: tenAndTen }), north);
    expect(chances.map((chance) => dayOf(last[chance]))).toEqual([114, 109, 106, 103, 100, 97, 94, 91, 86]);
  });

  test('a record with a known answer, first freeze', () => {
    const { first } = freezeDates(daily({ first: tenAndTen.map((day) => day + 180) }), north);
    expect(chances.map((chance) => dayOf(first[chance]))).toEqual([
      266, 271, 274, 277, 280, 283, 286, 289, 294,
    ]);
  });

  test('a finding carries its method, what went in, and its sources', () => {
    const finding = freezeDates(daily({ last: tenAndTen }), north).last[10]!;
    expect(finding).toMatchObject({
      id: 'freeze.last.32f.10',
      method: 'freeze.mixed-normal',
      sources: ['test', 'koss-1988-cug20'],
    });
    const inputs = Object.fromEntries(finding.inputs.map(({ name, value }) => [name, numberOf(value)]));
    expect(inputs).toEqual({
      'freeze-threshold': 0,
      'chance-percent': 10,
      seasons: 10,
      'seasons-with-freeze': 10,
      'mean-date': 100,
      'standard-deviation': Math.sqrt(1000 / 9),
    });
  });

  test('it freezes in 8 seasons of 10: a chance of 80 % is not reached, and the others are plain risk', () => {
    const { last } = freezeDates(daily({ last: [...tenAndTen.slice(0, 8), null, null] }), north);
    expect(dayOf(last[80])).toBe('freeze-not-this-likely');
    expect(dayOf(last[90])).toBe('freeze-not-this-likely');
    // 40 % of all seasons are half of those that freeze: the mean date.
    expect(dayOf(last[40])).toBe(100);
  });

  test('it never freezes', () => {
    const data = daily({ last: Array.from({ length: 12 }, () => null) });
    const dates = freezeDates(data, north);
    expect(chances.map((chance) => dayOf(dates.last[chance]))).toEqual(chances.map(() => 'freeze-never'));
    expect(freezeFreeSeason(dates).value).toEqual({ kind: 'none', reason: 'freeze-never' });
  });

  test('a fitted date beyond the twelve months searched is no date', () => {
    const { last } = freezeDates(daily({ last: [0, 210, 0, 210, 0, 210, 0, 210, 0, 210] }), north);
    expect(dayOf(last[10])).toBe('freeze-outside-season');
    expect(dayOf(last[50])).toBe(105);
  });

  test('nine seasons are too few, and ten are enough', () => {
    const thin = daily({ last: tenAndTen.slice(0, 9) });
    expect(freezeDataFault(thin, north)).toEqual({
      fault: 'too-few-seasons',
      edge: 'last',
      usable: 9,
      needed: 10,
    });
    expect(dayOf(freezeDates(thin, north).last[50])).toBe('too-few-seasons');
    expect(dayOf(freezeDates(daily({ last: tenAndTen }), north).last[50])).toBe(100);
    expect(freezeDataFault(daily({ last: tenAndTen }), north)).toBeUndefined();
  });
});

describe('thresholds as a record of tenths of a degree has them', () => {
  test.each([
    ['28 F is kept as -2.2 C, above the exact -2.22', 28, -2.2, true],
    ['-2.1 C is warmer than 28 F', 28, -2.1, false],
    ['20 F is kept as -6.7 C', 20, -6.7, true],
    ['16 F is kept as -8.9 C', 16, -8.9, true],
    ['36 F is kept as 2.2 C', 36, 2.2, true],
    ['2.3 C is warmer than 36 F', 36, 2.3, false],
    ['32 F is 0 C', 32, 0, true],
    ['0.1 C is warmer than 32 F', 32, 0.1, false],
  ])('%s', (_, thresholdF, minimumC, counts) => {
    const station = seasonsRecord({ last: Array.from({ length: 10 }, () => 100), freezeC: minimumC });
    const days = freezeDays(station, 'last', { thresholdC: toHeld(thresholdF, 'F'), latitudeDeg: 45 });
    expect(days).toEqual(Array.from({ length: 10 }, () => (counts ? 100 : null)));
  });
});

describe('which seasons count', () => {
  const station = seasonsRecord({ last: Array.from({ length: 3 }, () => 100) });

  test.each([
    ['10 days of the spring half', [100, 109], true],
    ['11 days of the spring half', [100, 110], false],
    ['30 days of the winter half', [-100, -71], true],
    ['31 days of the winter half', [-100, -70], false],
  ] as const)('a spring without %s', (_, [from, to], counts) => {
    const gappy = without(station, (day) => day.year === yearOfDay(1992, from) && isBetween(day, from, to));
    expect(usableSeasons(gappy, north).last).toEqual(counts ? [1991, 1992, 1993] : [1991, 1993]);
  });

  test('a missing value counts as a missing day', () => {
    const days = station.days.map((day) =>
      day.year === 1992 && isBetween(day, 100, 110) ? { ...day, minimumC: null } : day,
    );
    expect(usableSeasons({ ...station, days }, north).last).toEqual([1991, 1993]);
  });

  test('years of January to December lose the seasons that the record cuts through', () => {
    const wholeYears = without(
      seasonsRecord({ last: Array.from({ length: 6 }, () => 100) }),
      (day) => day.year === 1990,
    );
    expect(usableSeasons(wholeYears, north)).toEqual({
      last: [1992, 1993, 1994, 1995, 1996],
      first: [1991, 1992, 1993, 1994, 1995],
    });
  });

  test('an empty record has none', () => {
    expect(usableSeasons({ ...station, days: [] }, north)).toEqual({ last: [], first: [] });
  });
});

test('of several freezes in a winter the last one and the first one are taken', () => {
  const quiet = seasonsRecord({ last: Array.from({ length: 3 }, () => null) });
  const freezes = ['1991-10-20', '1991-11-30', '1992-01-15', '1992-04-28', '1992-05-03'];
  const days = quiet.days.map((day) => ({
    ...day,
    minimumC: freezes.includes(`${day.year}-${twoDigits(day.month)}-${twoDigits(day.day)}`) ? -1 : 10,
  }));
  expect(freezeDays({ ...quiet, days }, 'last', north)).toEqual([
    null,
    dayNumber({ month: 5, day: 3 }),
    null,
  ]);
  expect(freezeDays({ ...quiet, days }, 'first', north)).toEqual([
    null,
    dayNumber({ month: 10, day: 20 }),
    null,
  ]);
});

describe('leap years', () => {
  test('a freeze on February 29 counts as one on February 28', () => {
    const record = seasonsRecord({ last: Array.from({ length: 10 }, () => null) });
    const leapDay: DailyMinimum = { year: 1996, month: 2, day: 29, minimumC: -5 };
    const days = [...record.days, leapDay];
    const found = freezeDays({ ...record, days: sorted(days) }, 'last', north);
    expect(found.filter((day) => day !== null)).toEqual([59]);
  });

  test('the same date has the same number before and after it', () => {
    expect(dayNumber({ month: 3, day: 1 }) - dayNumber({ month: 2, day: 29 })).toBe(1);
  });
});

describe('the southern hemisphere', () => {
  const latitudeDeg = -35;
  // Last freezes around September 20 (day 263), first freezes around April 25 of the next year (day 480).
  const spread = [-9, 9, -6, 6, -3, 3, 0, 0, -12, 12];

  test('the last freeze is in its spring, the first one in the next calendar year', () => {
    const last = freezeDates(daily({ last: spread.map((shift) => 263 + shift), latitudeDeg }), {
      thresholdC: 0,
      latitudeDeg,
    });
    const first = freezeDates(daily({ first: spread.map((shift) => 480 + shift), latitudeDeg }), {
      thresholdC: 0,
      latitudeDeg,
    });
    expect(dayOf(last.last[50])).toBe(263);
    expect(dayOf(first.first[50])).toBe(480);
    expect(monthDay(480)).toEqual({ month: 4, day: 25 });
    expect(freezeFreeSeason({ ...last, first: first.first }).value).toMatchObject({ value: 217 });
  });

  test('a typed table is placed in the same seasons', () => {
    const data: FreezeData = {
      kind: 'table',
      source: 'test',
      rows: [{ thresholdC: 0, last: { 50: 263 }, first: { 50: 115 } }],
    };
    const dates = freezeDates(data, { thresholdC: 0, latitudeDeg });
    expect([dayOf(dates.last[50]), dayOf(dates.first[50])]).toEqual([263, 480]);
  });
});

describe('from a typed table', () => {
  const data: FreezeData = {
    kind: 'table',
    source: 'printed-table',
    rows: [
      { thresholdC: toHeld(28, 'F'), last: { 10: 115, 50: 98, 90: 361 }, first: { 10: 283, 50: 300, 90: 6 } },
    ],
  };

  test('the printed chances and no others, in order over New Year', () => {
    const { last, first } = freezeDates(data, { thresholdC: toHeld(28, 'F'), latitudeDeg: 33 });
    expect(Object.entries(last).map(([chance, finding]) => [chance, dayOf(finding)])).toEqual([
      ['10', 115],
      ['50', 98],
      ['90', -4],
    ]);
    expect(dayOf(first[90])).toBe(371);
    expect(last[10]).toMatchObject({
      id: 'freeze.last.28f.10',
      method: 'freeze.typed-table',
      sources: ['printed-table'],
    });
  });

  test('a threshold that the table lacks', () => {
    const dates = freezeDates(data, north);
    expect(dayOf(dates.last[50])).toBe('freeze-threshold-not-given');
    expect(freezeFreeSeason(dates).value).toEqual({ kind: 'none', reason: 'freeze-threshold-not-given' });
  });

  test('the freeze-free season is the difference of the 50 % dates and names both', () => {
    const season = freezeFreeSeason(freezeDates(data, { thresholdC: toHeld(28, 'F'), latitudeDeg: 33 }));
    expect(season).toMatchObject({
      id: 'freeze.free-days.28f',
      value: { kind: 'quantity', value: 202 },
      sources: ['printed-table'],
    });
    expect(season.inputs.map((input) => input.finding)).toEqual([
      'freeze.last.28f.50',
      'freeze.first.28f.50',
    ]);
  });
});

describe('from normals', () => {
  const normals = (occurrencePercent: number): FreezeData => ({
    kind: 'normals',
    source: 'test',
    normals: {
      station: 'S',
      name: 'N',
      period: '1991-2020',
      rows: [
        {
          thresholdC: 0,
          occurrencePercent,
          last: { 10: 144, 50: 129, 90: 117 },
          first: { 10: 266, 50: 279, 90: 292 },
        },
      ],
    },
  });

  test('between columns the date follows the normal curve, not a straight line', () => {
    // Plain 20 % at 80 % occurrence is 25 % of the years that freeze, z = 0.6745: 129 + 15 × 0.6745 / 1.2816 = 136.9.
    // A straight line through the chances would give 138.4.
    expect(dayOf(freezeDates(normals(80), north).last[20])).toBe(137);
  });

  test.each([
    ['never reached', 0, 10, 'freeze-never'],
    ['reached in fewer years than asked', 9, 10, 'freeze-not-this-likely'],
    ['reached in just as many years', 50, 50, 'freeze-not-this-likely'],
    ['asked beyond the last column', 95, 90, 'freeze-chance-not-given'],
    ['reached every year', 100, 90, 117],
  ] as const)('%s', (_, occurrence, chance, answer) => {
    expect(dayOf(freezeDates(normals(occurrence), north).last[chance])).toBe(answer);
  });

  test('the rarer the threshold, the earlier the last date at one plain chance and the later the first', () => {
    assert(
      property(integer({ min: 21, max: 99 }), (occurrence) => {
        const rare = freezeDates(normals(occurrence), north);
        const common = freezeDates(normals(occurrence + 1), north);
        expect(dayOf(rare.last[10])).toBeLessThanOrEqual(dayOf(common.last[10]) as number);
        expect(dayOf(rare.first[10])).toBeGreaterThanOrEqual(dayOf(common.first[10]) as number);
      }),
    );
  });
});

describe('for any record', () => {
  const anyDates = array(option(integer({ min: 60, max: 150 }), { freq: 6 }), {
    minLength: 10,
    maxLength: 14,
  });

  test('last dates go back and first dates go on as the chance rises', () => {
    assert(
      property(anyDates, constantFrom('last', 'first'), (dates, edge) => {
        const shifted = dates.map((day) => (day === null ? null : day + (edge === 'first' ? 180 : 0)));
        const found = freezeDates(daily({ [edge]: shifted }), north)[edge];
        const days = chances.map((chance) => dayOf(found[chance])).filter((day) => typeof day === 'number');
        const inOrder = [...days].sort((a, b) => (edge === 'last' ? b - a : a - b));
        expect(days).toEqual(inOrder);
      }),
      { numRuns: 40 },
    );
  });

  test('shifting every season by some days shifts every date by as many', () => {
    assert(
      property(anyDates, integer({ min: -20, max: 20 }), (dates, shift) => {
        const plain = freezeDates(daily({ last: dates }), north).last;
        const later = freezeDates(
          daily({ last: dates.map((day) => (day === null ? null : day + shift)) }),
          north,
        ).last;
        for (const chance of chances) {
          const [before, after] = [dayOf(plain[chance]), dayOf(later[chance])];
          if (typeof before === 'number' && typeof after === 'number') expect(after - before).toBe(shift);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('a colder threshold never has a later last freeze', () => {
    assert(
      property(anyDates, integer({ min: -80, max: 30 }), (dates, tenths) => {
        const station = seasonsRecord({ last: dates, freezeC: tenths / 10 });
        const at = (thresholdF: number) =>
          freezeDays(station, 'last', { thresholdC: toHeld(thresholdF, 'F'), latitudeDeg: 45 });
        const [cold, mild] = [at(28), at(32)];
        expect(cold.every((day, index) => day === null || day <= (mild[index] ?? -Infinity))).toBe(true);
      }),
      { numRuns: 40 },
    );
  });
});

function numberOf(value: FindingValue): unknown {
  return 'value' in value ? value.value : 'day' in value ? value.day : value;
}

function without(station: DailyStation, drop: (day: DailyMinimum) => boolean): DailyStation {
  return { ...station, days: station.days.filter((day) => !drop(day)) };
}

function isBetween(day: DailyMinimum, from: number, to: number): boolean {
  const number = dayNumber(day);
  const wrapped = from < 1 ? [from + 365, to + 365] : [from, to];
  return number >= wrapped[0]! && number <= wrapped[1]!;
}

function yearOfDay(year: number, day: number): number {
  return year + Math.floor((day - 1) / 365);
}

function sorted(days: readonly DailyMinimum[]): DailyMinimum[] {
  const key = (day: DailyMinimum): number => (day.year * 100 + day.month) * 100 + day.day;
  return [...days].sort((a, b) => key(a) - key(b));
}

function twoDigits(number: number): string {
  return String(number).padStart(2, '0');
}
