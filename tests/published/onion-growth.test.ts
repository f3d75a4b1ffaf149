/**
 * Leaves, ripening and bolting of onions.
 *
 * Sources: Dixondale Farms, Heat Unit Accumulation in Onions (heat units above 45 F, with the printed example of a day of
 * 70 and 50 F; two weeks to root; 160 units a leaf for short-day, 200 for long-day onions), Bolting in Alliums (the fifth
 * leaf about four weeks after setting out; cold of two weeks below 50 F), Onion Plant Daylength Guide (short-day onions
 * 110 days in the south, 75 in the north), Proper Time to Harvest (thirteen leaves, seven leaves). Texas A&M AgriLife
 * text on bolting as quoted in 2007: plants thicker than a pencil in the cold flower.
 * Tolerance: the example exact; "about four weeks" 4 days, at spring means of 55 to 60 F, which are ours; days to
 * harvest: the printed figure lies inside the dates.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { boltingRisk, coldC, spellDays } from '../../scripts/agronomy/onion-buying.ts';
import {
  degreeDaysPerLeaf,
  onionBaseC,
  onionGrowth,
  onionSize,
  rootingDays,
} from '../../scripts/agronomy/onion-growth.ts';
import { fromHeld, toHeld } from '../../scripts/quantities/units.ts';
import { decode } from '../../scripts/records/decode.ts';
import { CropSchema, type DayLengthClass } from '../../scripts/records/schemas/crop.ts';
import { airYear } from '../agronomy/years.ts';

const onion = decode(
  CropSchema,
  parse(readFileSync(new URL('../../crops/onion.yaml', import.meta.url), 'utf8')),
);
const meanOf = (f: number) => (): number => Math.max(0, toHeld(f, 'F') - onionBaseC);

test('printed example: a day of 70 and 50 F adds 15 units', () => {
  expect(meanOf((70 + 50) / 2)() * 1.8).toBeCloseTo(15, 9);
});

test.each<[DayLengthClass, number]>([
  ['short-day', 160],
  ['long-day', 200],
])('%s: %i units a leaf', (name, units) => {
  expect(degreeDaysPerLeaf[name] * 1.8).toBeCloseTo(units, 9);
});

test.each<[DayLengthClass, number]>([
  ['short-day', 55],
  ['long-day', 60],
])('%s at %i F: the fifth leaf about four weeks after setting out', (name, f) => {
  const days = rootingDays + degreeDaysPerLeaf[name] / meanOf(f)();
  expect(Math.abs(days - 28)).toBeLessThanOrEqual(4);
});

test('thirteen leaves are an onion of full size, and from seven it is no longer small', () => {
  expect([onionSize(6), onionSize(7), onionSize(13)]).toEqual(['small', 'medium', 'large']);
});

describe('days from setting out to harvest of short-day onions', () => {
  test.each([
    ['in the south in winter', 28, 32, 110],
    ['in the north in late spring', 44, 130, 75],
  ])('%s', (_, latitudeDeg, plantDay, days) => {
    const { harvest } = onionGrowth({
      crop: onion,
      dayLengthClass: 'short-day',
      place: { latitudeDeg, year: 2026 },
      method: 'transplant',
      plantDay,
      degreeDaysOn: meanOf(60),
    });
    if (harvest.value.kind === 'none') throw new TypeError(harvest.value.reason);
    expect(plantDay + days).toBeGreaterThanOrEqual(harvest.value.from);
    expect(plantDay + days).toBeLessThanOrEqual(harvest.value.to);
  });
});

describe('bolting', () => {
  test('cold is two weeks below 50 F, or below 45 F', () => {
    expect(
      [fromHeld(coldC.cool, 'F'), fromHeld(coldC.cold, 'F'), spellDays.cool].map((value) =>
        Math.round(value),
      ),
    ).toEqual([50, 45, 14]);
  });
  const air = airYear({ meanF: 44, halfRangeF: 1 });
  const risk = (diameterIn: number) =>
    boltingRisk({ crop: onion, kind: 'transplant', diameterMm: toHeld(diameterIn, 'in'), plantDay: 60, air })
      .value;
  test('thicker than a pencil in the cold flowers; a small plant runs less risk', () => {
    expect(risk(0.5)).toMatchObject({ value: 'bolting-high' });
    expect(risk(0.2)).toMatchObject({ value: 'bolting-raised' });
  });
});
