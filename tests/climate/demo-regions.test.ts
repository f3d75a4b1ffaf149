/** The three demonstration regions: invented, consistent, and as their generators make them. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { dayAtChance } from '../../scripts/climate/mixed-normal.ts';
import { freezeDataFault, freezeDates, type FreezeDates } from '../../scripts/climate/freeze.ts';
import type { FreezeData } from '../../scripts/climate/freeze-data.ts';
import { stationMonthlyMeans } from '../../scripts/climate/station-months.ts';
import { demoMonthlyCsv } from '../../scripts/make-demo-monthly.ts';
import { demoNormalsCsv } from '../../scripts/make-demo-normals.ts';
import { demoStationCsv } from '../../scripts/make-demo-station.ts';
import { fromHeld, toHeld } from '../../scripts/quantities/units.ts';
import { calendarDayNumber } from '../../scripts/records/dates.ts';
import { readMonthlyNormalsCsv } from '../../scripts/records/monthly-normals-csv.ts';
import { readNormalsCsv } from '../../scripts/records/normals-csv.ts';
import { readStationCsv } from '../../scripts/records/station-csv.ts';

const folder = new URL('../../content/regions/', import.meta.url);
const textOf = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
const chances = [10, 20, 30, 40, 50, 60, 70, 80, 90] as const;

interface WrittenRow {
  threshold: string;
  last: Record<string, string>;
  first: Record<string, string>;
}

const station = readStationCsv('larkwether-daily.csv', textOf('larkwether-daily.csv'));
const normals = readNormalsCsv('gullhammock-normals.csv', textOf('gullhammock-normals.csv'));
const table = (parse(textOf('hollowmarl.yaml')) as { freeze: { table: WrittenRow[] } }).freeze.table.map(
  (row) => ({
    thresholdC: toHeld(Number(row.threshold.replace(' F', '')), 'F'),
    last: daysOf(row.last),
    first: daysOf(row.first),
  }),
);

const regions: Record<string, { data: FreezeData; latitudeDeg: number }> = {
  larkwether: { data: { kind: 'daily', station: station.station!, source: 'x' }, latitudeDeg: 45.2 },
  hollowmarl: { data: { kind: 'table', rows: table, source: 'x' }, latitudeDeg: 37.3 },
  gullhammock: { data: { kind: 'normals', normals: normals.normals!, source: 'x' }, latitudeDeg: 30.3 },
};

test.each(['larkwether', 'hollowmarl', 'gullhammock'])('%s says that it is invented', (name) => {
  expect(parse(textOf(`${name}.yaml`))).toMatchObject({ id: name, invented: true });
});

test('the data files are what their generators make', () => {
  expect(textOf('larkwether-daily.csv') === demoStationCsv()).toBe(true);
  expect(textOf('gullhammock-normals.csv') === demoNormalsCsv()).toBe(true);
  expect(textOf('gullhammock-monthly.csv') === demoMonthlyCsv()).toBe(true);
});

test('the monthly file is read without a fault, rain with it', () => {
  const monthly = readMonthlyNormalsCsv('gullhammock-monthly.csv', textOf('gullhammock-monthly.csv'));
  expect(monthly.diagnostics).toEqual([]);
  expect(monthly.normals!.rainMm).toHaveLength(12);
});

test('the typed mean minima of Larkwether are those of its daily file', () => {
  const typed = (parse(textOf('larkwether.yaml')) as { temperatures: { minimum: string[] } }).temperatures
    .minimum;
  const means = stationMonthlyMeans(station.station!).minimumC!;
  expect(means.map((mean) => `${fromHeld(mean, 'F').toFixed(1)} F`)).toEqual(typed);
});

test('the three gardens have three textures, one of them shallow and full of stones', () => {
  const soils = Object.keys(regions).map(
    (name) => (parse(textOf(`${name}.yaml`)) as { soil: { texture: string; stones: string } }).soil,
  );
  expect(new Set(soils.map(({ texture }) => texture)).size).toBe(3);
  expect(soils.filter(({ stones }) => stones === 'many')).toHaveLength(1);
});

test('the data files are read without a fault and have years enough', () => {
  expect([...station.diagnostics, ...normals.diagnostics]).toEqual([]);
  expect(freezeDataFault(regions['larkwether']!.data, regions['larkwether']!)).toBeUndefined();
});

describe.each(Object.keys(regions))('%s', (name) => {
  const { data, latitudeDeg } = regions[name]!;
  const at = (thresholdF: number): FreezeDates =>
    freezeDates(data, { thresholdC: toHeld(thresholdF, 'F'), latitudeDeg });

  test.each(['last', 'first'] as const)(
    'the colder the threshold, the farther from summer the %s freeze',
    (edge) => {
      const days = [36, 32, 28, 24].map((thresholdF) => at(thresholdF)[edge][30]!.value);
      const numbers = days.map((value) => (value.kind === 'date' ? value.day : NaN));
      expect(numbers).toEqual([...numbers].sort((a, b) => (edge === 'last' ? b - a : a - b)));
    },
  );
});

test('the three climates differ plainly: weeks lie between their last freezes', () => {
  const medians = Object.values(regions).map(({ data, latitudeDeg }) => {
    const { value } = freezeDates(data, { thresholdC: 0, latitudeDeg }).last[50]!;
    return value.kind === 'date' ? value.day : NaN;
  });
  expect(medians[0]! - medians[1]!).toBeGreaterThan(20);
  expect(medians[1]! - medians[2]!).toBeGreaterThan(40);
});

test('the mild coast has winters without a hard freeze, and says so', () => {
  const { data, latitudeDeg } = regions['gullhammock']!;
  const { last } = freezeDates(data, { thresholdC: toHeld(20, 'F'), latitudeDeg });
  expect(last[10]!.value.kind).toBe('date');
  expect(last[50]!.value).toEqual({ kind: 'none', reason: 'freeze-not-this-likely' });
});

test('the typed table runs as printed tables do: each row along one normal curve', () => {
  for (const row of table) {
    for (const edge of ['last', 'first'] as const) {
      const dates = row[edge];
      const sdDays = Math.abs(dates[10]! - dates[90]!) / (2 * 1.2816);
      for (const chance of chances) {
        const day = dayAtChance({ freezeShare: 1, meanDay: dates[50]!, sdDays }, edge, chance / 100)!;
        expect(Math.abs(day - dates[chance]!)).toBeLessThanOrEqual(1);
      }
    }
  }
});

function daysOf(dates: Record<string, string>): Record<number, number> {
  return Object.fromEntries(
    Object.entries(dates).map(([chance, text]) => [Number(chance), calendarDayNumber(text)!]),
  );
}
