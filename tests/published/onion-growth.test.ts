/**
 * Leaves, ripening and bolting of onions.
 *
 * Sources: Dixondale Farms, Heat Unit Accumulation in Onions (heat units above 45 F, with the printed example of a day of
 * 70 and 50 F; two weeks to root; 160 units a leaf for short-day, 200 for long-day onions), Bolting in Alliums (the fifth
 * leaf about four weeks after setting out; cold of two weeks below 50 F), Onion Plant Daylength Guide (short-day onions
 * 110 days in the south, 75 in the north), Proper Time to Harvest (thirteen leaves, seven leaves). Texas A&M AgriLife
 * text on bolting as quoted in 2007: plants thicker than a pencil in the cold flower.
 * When bulbs start: T. Coolong, University of Kentucky, in The Springfield Sun (intermediate onions set out in late March
 * or early April start bulbs in mid-May and mature by early to mid-July); W. Shoemaker, University of Illinois, Market
 * Farming list, 2010 (in the north of Illinois in June); Vegetable Freak, southeast Minnesota, 2013 (not yet on June 25 of a
 * spring planted three weeks late, with 10 to 12 leaves; in usual years somewhat before). C. L. M. de Visser, ALCEPAS,
 * Journal of Horticultural Science 69, 1994, read in a reprogramming: long-day onions start bulbs at a sum of 104 of
 * (T - 6 C) x (hours - 12) / 12, or later where leaves do not yet shade each other.
 * Tolerance for them: a week, what "mid" leaves open; the leaves 2, what the garden's planting date and spring leave open.
 * The climates are means of the two places, from memory, to 2 F. Tolerance: the example exact; "about four weeks" 4 days, at spring means of 55 to 60 F, which are ours; days to
 * harvest: the printed figure lies inside the dates.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { dayLengthHours } from '../../scripts/climate/day-length.ts';
import type { DateRangeFinding } from '../../scripts/findings/finding.ts';
import { bulbingDates } from '../../scripts/agronomy/onion.ts';
import { boltingRisk, coldC, spellDays } from '../../scripts/agronomy/onion-buying.ts';
import {
  bulbingWarmth,
  degreeDaysPerLeaf,
  leavesBy,
  onionBaseC,
  onionGrowth,
  onionSize,
  rootingDays,
  type OnionPlanting,
} from '../../scripts/agronomy/onion-growth.ts';
import { fromHeld, toHeld } from '../../scripts/quantities/units.ts';
import { decode } from '../../scripts/records/decode.ts';
import { CropSchema, type DayLengthClass } from '../../scripts/records/schemas/crop.ts';
import { airYear, meanC, type Swing } from '../agronomy/years.ts';

const onion = decode(
  CropSchema,
  parse(readFileSync(new URL('../../crops/onion.yaml', import.meta.url), 'utf8')),
);
const meanOf = (f: number) => (): number => Math.max(0, toHeld(f, 'F') - onionBaseC);

test('printed example: a day of 70 and 50 F adds 15 units', () => {
  expect(meanOf((70 + 50) / 2)() * 1.8).toBeCloseTo(15, 9);
});

test('160 units a leaf', () => {
  expect(degreeDaysPerLeaf * 1.8).toBeCloseTo(160, 9);
});

test('bulbs need 600 degree days', () => {
  expect(bulbingWarmth.published).toBe(600);
  expect((bulbingWarmth.low + bulbingWarmth.high) / 2).toBe(600);
});

test('short-day onions at 55 F: the fifth leaf about four weeks after setting out', () => {
  const days = rootingDays + degreeDaysPerLeaf / (toHeld(55, 'F') - onionBaseC);
  expect(Math.abs(days - 28)).toBeLessThanOrEqual(4);
});

describe('when bulbs start', () => {
  const kentucky = { meanF: 56, halfRangeF: 21.5 };
  const minnesota = { meanF: 44, halfRangeF: 29.5 };
  const followed = (
    dayLengthClass: DayLengthClass,
    changes: { swing: Swing; latitudeDeg: number; plantDay: number; method?: 'sets' | 'transplant' },
  ): OnionPlanting => ({
    crop: onion,
    dayLengthClass,
    place: { latitudeDeg: changes.latitudeDeg, year: 2026 },
    method: changes.method ?? 'transplant',
    plantDay: changes.plantDay,
    degreeDaysOn: (day, baseC) => Math.max(0, meanC(changes.swing, day) - baseC),
  });
  const dates = ({ value }: DateRangeFinding): { from: number; to: number } => {
    if (value.kind === 'none') throw new TypeError(value.reason);
    return value;
  };

  test('Kentucky, intermediate, set out on April 1: mid-May, ready in the first half of July', () => {
    const { bulbing, harvest } = onionGrowth(
      followed('intermediate', { swing: kentucky, latitudeDeg: 37.8, plantDay: 91 }),
    );
    const { from, to } = dates(bulbing);
    expect(Math.abs(from - 135)).toBeLessThanOrEqual(7);
    expect(to).toBeGreaterThanOrEqual(135);
    expect(dates(harvest).from).toBeLessThanOrEqual(182 + 7);
    expect(dates(harvest).to).toBeGreaterThanOrEqual(196 - 7);
  });

  test.each([
    ['sets', 105],
    ['transplant', 115],
  ] as const)('Minnesota, long-day %s of late April: in June', (method, plantDay) => {
    const { from, to } = dates(
      onionGrowth(followed('long-day', { swing: minnesota, latitudeDeg: 44, plantDay, method })).bulbing,
    );
    expect(from).toBeGreaterThanOrEqual(152);
    expect(to).toBeLessThanOrEqual(181 + 7);
  });

  test('Minnesota, by the other model that is published for long-day onions: within two weeks', () => {
    const { from, to } = dates(
      onionGrowth(followed('long-day', { swing: minnesota, latitudeDeg: 44, plantDay: 110 })).bulbing,
    );
    let [sum, day] = [0, 110];
    while (sum < 104) {
      const hours = dayLengthHours({ latitudeDeg: 44, year: 2026, day });
      sum += (Math.max(0, meanC(minnesota, day) - 6) * Math.max(0, hours - 12)) / 12;
      day += 1;
    }
    expect(day).toBeGreaterThanOrEqual(from - 14);
    expect(day).toBeLessThanOrEqual(to + 14);
  });

  test('Minnesota, set out three weeks late: 10 to 12 leaves on June 25, and bulbs only starting', () => {
    const late = followed('long-day', { swing: minnesota, latitudeDeg: 44, plantDay: 135 });
    const leaves = leavesBy(late, 176);
    const most = leaves.kind === 'count' ? leaves.value : leaves.kind === 'count-range' ? leaves.high : NaN;
    expect(most).toBeGreaterThanOrEqual(10 - 2);
    expect(most).toBeLessThanOrEqual(12 + 2);
    expect(dates(onionGrowth(late).bulbing).to).toBeGreaterThanOrEqual(176);
  });

  test('the same by day length alone would be six weeks too early', () => {
    const { starts } = bulbingDates(onion, 'long-day', { latitudeDeg: 44, year: 2026 });
    expect(starts.value.kind === 'date' && starts.value.day).toBeLessThan(152 - 30);
  });
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
      degreeDaysOn: (_, baseC) => toHeld(60, 'F') - baseC,
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
