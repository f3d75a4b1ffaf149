import { describe, expect, test } from 'vitest';
import { monthDay } from '../../scripts/climate/calendar.ts';
import type { DailyStation, FreezeData } from '../../scripts/climate/freeze-data.ts';
import { freezesAllYear } from '../../scripts/climate/freeze-seasons.ts';
import { freezeDates } from '../../scripts/climate/freeze.ts';

/** Fifteen years of minima by the day of the year. */
function daily(minimumC: (day: number) => number): FreezeData {
  const days = [];
  for (let time = Date.UTC(2001, 0, 1); time <= Date.UTC(2015, 11, 31); time += 86_400_000) {
    const date = new Date(time);
    const [year, month, day] = [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()];
    days.push({ year, month, day, minimumC: minimumC((time - Date.UTC(year, 0, 1)) / 86_400_000 + 1) });
  }
  return { kind: 'daily', source: 'a-station', station: { station: 'X', name: 'TEST', days } };
}

/** Coldest around January 20, by the degrees given on either side of 5 C. */
const seasons = (swingC: number) => (day: number) => 5 - swingC * Math.cos((2 * Math.PI * (day - 20)) / 365);

describe('dates that would be the edges of the months searched are not told', () => {
  const cases: [string, FreezeData, number][] = [
    ['it freezes every night', daily(() => -5), 45],
    ['a northern record read at a southern latitude', daily(seasons(15)), -45],
  ];
  test.each(cases)('%s', (_, data, latitudeDeg) => {
    const { last, first } = freezeDates(data, { thresholdC: 0, latitudeDeg });
    for (const edge of [last, first])
      expect(edge[50]?.value).toEqual({ kind: 'none', reason: 'freeze-all-year' });
  });
});

test('a record with a warm summer keeps its dates', () => {
  const { last, first } = freezeDates(daily(seasons(15)), { thresholdC: 0, latitudeDeg: 45 });
  expect([last[50]?.value.kind, first[50]?.value.kind]).toEqual(['date', 'date']);
});

describe('the shortest growing season is thirty days', () => {
  /** Twelve years that freeze every day but for those between the two days named. */
  const summerBetween = (last: number, first: number): DailyStation => ({
    station: 'X',
    name: 'X',
    days: Array.from({ length: 12 }, (_, index) => 1991 + index).flatMap((year) =>
      Array.from({ length: 365 }, (_, index) => {
        const day = index + 1;
        return { year, ...monthDay(day), minimumC: day > last && day < first ? 8 : -5 };
      }),
    ),
  });

  test.each([
    ['thirty days from freeze to freeze are a season', 200, 230, false],
    ['twenty-nine are not', 200, 229, true],
  ])('%s', (_, last, first, allYear) => {
    const options = { thresholdC: 0, latitudeDeg: 60 };
    expect(freezesAllYear(summerBetween(last, first), options)).toBe(allYear);
  });
});
