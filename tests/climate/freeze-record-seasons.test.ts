/** Which seasons of a record count, and which are told as left out. */
import { describe, expect, test } from 'vitest';
import { monthDay } from '../../scripts/climate/calendar.ts';
import type { DailyMinimum, DailyStation } from '../../scripts/climate/freeze-data.ts';
import { recordSeasons } from '../../scripts/climate/freeze-record.ts';
import { usableSeasons } from '../../scripts/climate/freeze-seasons.ts';

const [north, south] = [{ latitudeDeg: 45 }, { latitudeDeg: -45 }];

/** Twelve calendar years from 1991 without the days (1 to 365 of a year) that are named as missing. */
function record(missing: readonly { year: number; from: number; days: number }[] = []): DailyStation {
  const isMissing = (year: number, day: number): boolean =>
    missing.some((gap) => gap.year === year && day >= gap.from && day < gap.from + gap.days);
  const days = Array.from({ length: 12 }, (_, index) => 1991 + index).flatMap((year) =>
    Array.from({ length: 365 }, (_, index) => index + 1)
      .filter((day) => !isMissing(year, day))
      .map((day): DailyMinimum => ({ year, ...monthDay(day), minimumC: 10 })),
  );
  return { station: 'X', name: 'X', days };
}

const leftOut = (station: DailyStation, options: { latitudeDeg: number }) =>
  recordSeasons({ station, source: 'test' }, options).leftOut;

describe('a record from January to December', () => {
  test.each([
    ['north: its first spring has no winter before it, its last fall none after it', north, [1991], [2002]],
    ['south: its last spring and its last fall lack the January after them', south, [2002], [2002]],
  ])('%s', (_, options, last, first) => {
    expect(leftOut(record(), options)).toEqual({ last, first });
  });

  test('what counts and what is left out are never the same season', () => {
    const used = usableSeasons(record(), north);
    expect(used.last).toEqual([1992, 1993, 1994, 1995, 1996, 1997, 1998, 1999, 2000, 2001, 2002]);
    expect(used.first).not.toContain(2002);
  });
});

describe('days missing in the north', () => {
  // Day 100 lies in the half of a spring, and in the other half of the fall before it; day 250 the other way round.
  test.each([
    ['ten days of spring', 100, 10, [], []],
    ['eleven days of spring leave the spring out', 100, 11, [1995], []],
    ['thirty-one days of spring leave the fall before it out as well', 100, 31, [1995], [1994]],
    ['ten days of fall', 250, 10, [], []],
    ['eleven days of fall leave the fall out', 250, 11, [], [1995]],
    ['thirty-one days of fall leave the spring after it out as well', 250, 31, [1996], [1995]],
  ] as const)('%s', (_, from, days, last, first) => {
    const found = leftOut(record([{ year: 1995, from, days }]), north);
    expect(found.last.filter((year) => year !== 1991)).toEqual(last);
    expect(found.first.filter((year) => year !== 2002)).toEqual(first);
  });

  test('a season of which the record holds less than half is none of its seasons', () => {
    const found = leftOut(record([{ year: 1995, from: 32, days: 130 }]), north);
    expect(found.last).not.toContain(1995);
  });
});

test('the findings carry the rule and the years', () => {
  const { last, first, notUsed } = recordSeasons(
    { station: record([{ year: 1995, from: 100, days: 11 }]), source: 'test' },
    north,
  );
  expect([last.value, first.value, notUsed.value]).toEqual([
    { kind: 'count', value: 10 },
    { kind: 'count', value: 11 },
    { kind: 'count', value: 3 },
  ]);
  expect(last.inputs.map(({ name, value }) => [name, value.kind === 'count' ? value.value : NaN])).toEqual([
    ['missing-near-half', 10],
    ['missing-far-half', 30],
    ['year-left-out', 1991],
    ['year-left-out', 1995],
  ]);
  expect(last.method).toBe('freeze.record-seasons');
});
