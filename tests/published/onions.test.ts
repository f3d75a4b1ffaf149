/**
 * Day-length classes of onions by latitude.
 *
 * Sources: Dixondale Farms, Onion Plant Daylength Guide (hours: short-day 10-12, intermediate 12-14, long-day 14-16);
 * latitude bands of seedsmen's maps, from memory (short-day 25-35, intermediate 32-42, long-day 37 and north).
 * Tolerance: class bounds by latitude 2 degrees, as published bands differ by that; dates 2 days, what 0.05 h of
 * day length amounts to in spring.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { bulbingDates, lightAfterPlanting, onionClasses } from '../../scripts/agronomy/onion.ts';
import { decode } from '../../scripts/records/decode.ts';
import { CropSchema } from '../../scripts/records/schemas/crop.ts';

const onion = decode(
  CropSchema,
  parse(readFileSync(new URL('../../crops/onion.yaml', import.meta.url), 'utf8')),
);
const at = (latitudeDeg: number) => ({ latitudeDeg, year: 2025 });

describe('class by latitude', () => {
  const cases: [string, number, string, string | undefined][] = [
    ['south Texas', 27, 'short-day', undefined],
    ['the same in the south', -27, 'short-day', undefined],
    ['where short-day and intermediate meet', 33.5, 'short-day', 'intermediate'],
    ['the middle latitudes', 36, 'intermediate', undefined],
    ['where intermediate and long-day meet', 40, 'intermediate', 'long-day'],
    ['the northern states', 45, 'long-day', undefined],
    ['nearer the equator than any published band', 15, 'short-day', undefined],
  ];
  test.each(cases)('%s (%f)', (_, latitude, main, also) => {
    const classes = onionClasses(onion, at(latitude));
    expect(classes.main.value).toEqual({ kind: 'choice', value: main });
    if (also) expect(classes.also.value).toEqual({ kind: 'choice', value: also });
    else expect(classes.also.value.kind).toBe('none');
  });
});

/** Mean daylight hours at mid-month: J. Doorenbos and W. O. Pruitt, FAO Irrigation and Drainage Paper 24, 1977 (from memory). */
describe('when the day is long enough', () => {
  const day = (finding: { value: { kind: string } }): number | string =>
    finding.value.kind === 'date'
      ? (finding.value as unknown as { day: number }).day
      : (finding.value as unknown as { reason: string }).reason;

  test('44 N reaches 14 h between 13.4 h at mid-April and 14.7 h at mid-May, and never 16 h', () => {
    // A straight line between the two published values gives day 119; the curve bends up before it: 4 days.
    const { starts, full } = bulbingDates(onion, 'long-day', at(44));
    expect(Math.abs(Number(day(starts)) - 119)).toBeLessThanOrEqual(4);
    expect(day(full)).toBe('day-never-that-long');
  });
  test('30 N has more than 10 h all year, 12 h a few days before the equinox, 14 h in June', () => {
    const { starts, full } = bulbingDates(onion, 'short-day', at(30));
    expect(day(starts)).toBe('day-always-longer');
    expect(Math.abs(Number(day(full)) - 75)).toBeLessThanOrEqual(3);
    expect(Number(day(bulbingDates(onion, 'long-day', at(30)).starts))).toBeGreaterThan(152);
  });
  test('south of the equator the same lengths come half a year later', () => {
    const { starts } = bulbingDates(onion, 'long-day', at(-45));
    expect(Number(day(starts))).toBeGreaterThan(120 + 170);
    expect(Number(day(starts))).toBeLessThan(120 + 195);
  });
});

describe('what the light does after planting', () => {
  const light = (name: 'short-day' | 'intermediate' | 'long-day', latitudeDeg: number, plantDay: number) => {
    const { value } = lightAfterPlanting(onion, name, { place: at(latitudeDeg), plantDay });
    return value.kind === 'choice' ? value.value : value.kind;
  };
  test.each([
    ['short-day in Minnesota in April: long enough already', 'short-day', 45, 103, 'light-at-planting'],
    ['long-day in Minnesota in April: for the earliest', 'long-day', 45, 103, 'light-soon'],
    ['long-day in Kentucky in March: leaves first', 'long-day', 37.5, 65, 'light-in-season'],
    ['short-day on the Gulf in January: for the earliest', 'short-day', 30, 15, 'light-soon'],
    ['intermediate on the Gulf in January: leaves first', 'intermediate', 30, 15, 'light-in-season'],
    ['long-day on the Gulf: only about midsummer', 'long-day', 30, 15, 'light-barely'],
    ['long-day in the tropics: never', 'long-day', 15, 15, 'light-never'],
    ['long-day in Tasmania in September: leaves first', 'long-day', -42, 250, 'light-in-season'],
    ['long-day at 30 S: only about midsummer', 'long-day', -30, 200, 'light-barely'],
  ] as const)('%s', (_, name, latitude, plantDay, expected) => {
    expect(light(name, latitude, plantDay)).toBe(expected);
  });
});
