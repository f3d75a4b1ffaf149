/**
 * Days to emergence, seed 1/2 in deep, by soil temperature.
 *
 * Source: J. F. Harrington and P. A. Minges, Vegetable Seed Germination, California Agricultural Extension Mimeo
 * Leaflet, 1954, as printed in Knott's Handbook for Vegetable Growers (1997) and read in two reprints that agree.
 * Tolerance: exact at the temperatures of the table, since the records hold it; between two of them nothing is
 * published, so a value left out is predicted from its neighbours to within 1 day or 15 %, whichever is larger.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { daysToEmergence, type EmergencePoint } from '../../scripts/agronomy/emergence.ts';

const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

/** Columns 32, 41, 50, 59, 68, 77, 86, 95 F; a dash is not tested or no germination. */
const table: Readonly<Record<string, string>> = {
  carrot: '- 51 17 10 7 6 6 9',
  beet: '- 42 17 10 6 5 5 5',
  onion: '136 31 13 7 5 4 4 13',
  lettuce: '49 15 7 4 3 2 3 -',
  spinach: '63 23 12 7 6 5 6 -',
  'snap-pea': '- 36 14 9 8 6 6 -',
  'sweet-corn': '- - 22 12 7 4 4 3',
  tomato: '- - 43 14 8 6 6 9',
  cucumber: '- - - 13 6 4 3 3',
};
const columns = [32, 41, 50, 59, 68, 77, 86, 95];

function pointsOf(row: string): EmergencePoint[] {
  return row
    .split(' ')
    .map((days, index) => ({ temperatureC: celsius(columns[index]!), days: Number(days) }))
    .filter(({ days }) => Number.isFinite(days));
}

describe.each(Object.entries(table))('%s', (crop, row) => {
  const points = pointsOf(row);

  test('the record holds the published table', () => {
    const text = readFileSync(new URL(`../../crops/${crop}.yaml`, import.meta.url), 'utf8');
    const record = (parse(text) as { emergence: { points: { at: string; days: number }[] } }).emergence
      .points;
    const held = Object.fromEntries(record.map(({ at, days }) => [Number(at.replace(' F', '')), days]));
    for (const { temperatureC, days } of points) expect(held[Math.round(temperatureC * 1.8 + 32)]).toBe(days);
  });

  test.each(points)('at $temperatureC C: $days days', ({ temperatureC, days }) => {
    expect(daysToEmergence(points, temperatureC)).toBe(days);
  });

  test('nothing is said outside the tested temperatures', () => {
    expect(daysToEmergence(points, points[0]!.temperatureC - 1)).toBeUndefined();
    expect(daysToEmergence(points, points.at(-1)!.temperatureC + 1)).toBeUndefined();
  });

  test('between two temperatures the days lie between theirs', () => {
    points.slice(1).forEach((point, index) => {
      const before = points[index]!;
      const days = daysToEmergence(points, (before.temperatureC + point.temperatureC) / 2)!;
      expect(days).toBeGreaterThanOrEqual(Math.min(before.days, point.days));
      expect(days).toBeLessThanOrEqual(Math.max(before.days, point.days));
    });
  });
});

/**
 * Thermal time: days times degrees above the base are near constant below the optimum (carrot 37.4 F, onion 34.5 F,
 * as computed from the same table). Interpolating the rate keeps it so half-way between two temperatures; tolerance
 * 20 %, the spread of the published values themselves.
 */
describe.each([
  ['carrot', 37.4, 214],
  ['onion', 34.5, 170],
])('thermal time of %s', (crop, baseF, degreeDays) => {
  test.each([54.5, 63.5])('at %f F', (atF) => {
    const days = daysToEmergence(pointsOf(table[crop]!), celsius(atF))!;
    expect(Math.abs((days * (atF - baseF)) / degreeDays - 1)).toBeLessThan(0.2);
  });
});
