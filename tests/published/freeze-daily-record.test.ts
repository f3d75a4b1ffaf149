/**
 * Freeze dates from real daily minima: Seattle-Tacoma airport (47.45 N), 2012 to 2015, as the npm package vega-datasets
 * carries them (data/seattle-weather.csv, from daily summaries of NOAA's National Centers for Environmental Information).
 * Four years are the longest real record of daily minima found in an npm package, and too few to publish dates
 * from; so they are tested to be refused, and then told four times over, so that the whole way from minima to
 * dates can be walked on real weather. Each expected date is counted here anew, by other means than those of the program.
 */
import { parse } from 'csv-parse/sync';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { DailyMinimum, FreezeData } from '../../scripts/climate/freeze-data.ts';
import { empiricalFreezeDates, freezeFitDifferences } from '../../scripts/climate/freeze-empirical.ts';
import { seasonLengths } from '../../scripts/climate/freeze-free-season.ts';
import { recordSeasons } from '../../scripts/climate/freeze-record.ts';
import { freezeDaysByYear, type FreezeEdge } from '../../scripts/climate/freeze-seasons.ts';
import { freezeDataFault, freezeDates } from '../../scripts/climate/freeze.ts';
import { toHeld } from '../../scripts/quantities/units.ts';

const folder = dirname(createRequire(import.meta.url).resolve('vega-datasets/package.json'));
const rows = parse<{ date: string; temp_min: string }>(
  readFileSync(join(folder, 'data/seattle-weather.csv'), 'utf8'),
  { columns: true },
);
const days = rows.map(({ date, temp_min }): DailyMinimum => {
  const [year, month, day] = date.split('/').map(Number) as [number, number, number];
  return { year, month, day, minimumC: Number(temp_min) };
});

const station = (record: readonly DailyMinimum[]): FreezeData & { kind: 'daily' } => ({
  kind: 'daily',
  source: 'noaa-daily-seattle',
  station: { station: 'USW00024233', name: 'SEATTLE TACOMA AIRPORT', days: record },
});
const latitudeDeg = 47.45;
const at = (thresholdF: number) => ({ thresholdC: toHeld(thresholdF, 'F'), latitudeDeg });
const thresholdsF = [36, 32, 28, 24] as const;
const chances = [10, 20, 30, 40, 50, 60, 70, 80, 90] as const;

test('the file is whole: every day of four years, with a coldest night of -7.1 C', () => {
  expect(days).toHaveLength(4 * 365 + 1);
  expect(Math.min(...days.map(({ minimumC }) => minimumC!))).toBe(-7.1);
});

describe('four years', () => {
  test('are refused, with the count of springs that are whole', () => {
    // The spring of 2012 lacks the half winter before it, and the fall of 2015 the one after it.
    expect(freezeDataFault(station(days), { latitudeDeg })).toEqual({
      fault: 'too-few-seasons',
      edge: 'last',
      usable: 3,
      needed: 10,
    });
    for (const edge of ['last', 'first'] as const)
      for (const dates of [freezeDates(station(days), at(32)), empiricalFreezeDates(station(days), at(32))])
        expect(dates[edge][50]!.value).toEqual({ kind: 'none', reason: 'too-few-seasons' });
  });

  test('name the seasons left out', () => {
    const { last, first, notUsed, leftOut } = recordSeasons(station(days), { latitudeDeg });
    expect([last, first, notUsed].map(({ value }) => value)).toEqual([
      { kind: 'count', value: 3 },
      { kind: 'count', value: 3 },
      { kind: 'count', value: 2 },
    ]);
    expect(leftOut).toEqual({ last: [2012], first: [2015] });
  });

  test.each(thresholdsF)('hold the freezes of %d F that a look through the file finds', (thresholdF) => {
    for (const edge of ['last', 'first'] as const) {
      const found = freezeDaysByYear(station(days).station, edge, at(thresholdF));
      const wanted = (edge === 'last' ? [2013, 2014, 2015] : [2012, 2013, 2014]).map((year) => [
        year,
        countedFreeze(edge, year, thresholdF),
      ]);
      expect([...found]).toEqual(wanted);
    }
  });
});

describe('the four years told four times: fifteen seasons', () => {
  const told = [0, 4, 8, 12].flatMap((later) => days.map((day) => ({ ...day, year: day.year + later })));
  const data = station(told);
  // Between the tellings stands the turn from December 2015 to January 2012: a winter of real days.
  const seasons = (edge: FreezeEdge, thresholdF: number): (number | null)[] => [
    ...freezeDaysByYear(data.station, edge, at(thresholdF)).values(),
  ];

  test('are enough', () => {
    expect(freezeDataFault(data, { latitudeDeg })).toBeUndefined();
    expect(seasons('last', 32)).toHaveLength(15);
  });

  test.each([36, 32, 28] as const)('%d F: empirical dates are those of the sorted seasons', (thresholdF) => {
    const { last, first } = empiricalFreezeDates(data, at(thresholdF));
    for (const [edge, found] of [
      ['last', last],
      ['first', first],
    ] as const) {
      const dates = seasons(edge, thresholdF).filter((day) => day !== null);
      const sorted = [...dates].sort((a, b) => (edge === 'last' ? b - a : a - b));
      for (const chance of chances) {
        // Place chance × 16 of fifteen seasons, read between neighbours; whole days.
        const place = (chance / 100) * 16;
        const [low, high] = [sorted[Math.floor(place + 1e-9) - 1], sorted[Math.ceil(place - 1e-9) - 1]];
        const value = found[chance]!.value;
        if (low === undefined || high === undefined) expect(value.kind, `${edge} ${chance}`).toBe('none');
        else expect(value).toEqual({ kind: 'date', day: Math.round(low + (high - low) * (place % 1)) });
      }
    }
  });

  test('32 F: season lengths run along the normal curve of the lengths on record, long ones at small chances', () => {
    const last = [...freezeDaysByYear(data.station, 'last', at(32))];
    const first = freezeDaysByYear(data.station, 'first', at(32));
    const lengths = last.flatMap(([year, from]) => {
      const to = first.get(year);
      return from === null || to === undefined || to === null ? [] : [to - from];
    });
    expect(lengths).toHaveLength(14);
    const mean = lengths.reduce((sum, days) => sum + days, 0) / lengths.length;
    const sd = Math.sqrt(lengths.reduce((sum, days) => sum + (days - mean) ** 2, 0) / (lengths.length - 1));
    const found = seasonLengths(data, at(32));
    for (const [chance, z] of [
      [10, 1.2816],
      [30, 0.5244],
      [50, 0],
      [90, -1.2816],
    ] as const) {
      const days = Math.round(mean + z * sd);
      expect(found[chance].value).toEqual({ kind: 'quantity', dimension: 'duration', value: days });
    }
  });

  test('32 F: the fitted median is the mean of the dates, the spread that of a sample, and the difference is told', () => {
    const fitted = freezeDates(data, at(32));
    for (const edge of ['last', 'first'] as const) {
      const dates = seasons(edge, 32).map((day) => day!);
      const mean = dates.reduce((sum, day) => sum + day, 0) / dates.length;
      const sd = Math.sqrt(dates.reduce((sum, day) => sum + (day - mean) ** 2, 0) / (dates.length - 1));
      // 1.2816 and 0.5244: the normal quantiles of 90 and 70 percent, of any table.
      const sign = edge === 'last' ? 1 : -1;
      const expected = { 10: 1.2816, 30: 0.5244, 50: 0, 70: -0.5244, 90: -1.2816 } as const;
      for (const [chance, z] of Object.entries(expected)) {
        const value = fitted[edge][Number(chance) as 10]!.value;
        expect(value).toEqual({ kind: 'date', day: Math.round(mean + sign * z * sd) });
      }
    }
    const differences = freezeFitDifferences(fitted, empiricalFreezeDates(data, at(32)));
    expect(differences).toHaveLength(18);
    for (const { id, value, inputs } of differences) {
      const [fit, seen] = inputs.map((input) => (input.value.kind === 'date' ? input.value.day : NaN));
      expect(value.kind === 'quantity' ? value.value : NaN, id).toBe(fit! - seen!);
    }
  });
});

/** The last freeze up to July 31 of a year, or the first from August 1 on, by the calendar of the file; null for none. */
function countedFreeze(edge: FreezeEdge, year: number, thresholdF: number): number | null {
  const [from, to] =
    edge === 'last' ? [`${year - 1}/08/01`, `${year}/07/31`] : [`${year}/08/01`, `${year + 1}/07/31`];
  // The file keeps tenths of a degree, in which 28 F stands as -2.2.
  const limit = { 36: 2.2, 32: 0, 28: -2.2, 24: -4.4 }[thresholdF]!;
  const cold = rows.filter(({ date, temp_min }) => date >= from && date <= to && Number(temp_min) <= limit);
  const found = (edge === 'last' ? cold.at(-1) : cold[0])?.date;
  if (found === undefined) return null;
  const [foundYear, month, day] = found.split('/').map(Number) as [number, number, number];
  // Days since New Year of a year without a February 29, which 2013 is.
  const inYear = (Date.UTC(2013, month - 1, day) - Date.UTC(2013, 0, 0)) / 86_400_000;
  return inYear + 365 * (foundYear - year);
}
