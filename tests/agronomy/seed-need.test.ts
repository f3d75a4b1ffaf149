import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bundlesToBuy, seedToBuy } from '../../scripts/agronomy/seed-need.ts';
import { expectedYield } from '../../scripts/agronomy/yield.ts';
import { choice, count, none, quantity, type Finding } from '../../scripts/findings/finding.ts';
import type { Crop } from '../../scripts/records/schemas/crop.ts';
import { cropLike } from './crop.ts';

const sources = ['a-source'];
const plants = (number: number): Finding => ({
  id: 'bed.plants',
  value: count(number),
  method: 'given',
  inputs: [],
  sources: [],
});
const crop = cropLike({
  germination: { percent: 50, sources: ['seed-law'] },
  seedsPerOunce: { low: 800, high: 1000, sources: ['seed-chart'] },
});
const ounce = 28.349523125;

describe('seed for 100 plants, by hand', () => {
  test('half comes up and four in five live: 250 seeds', () => {
    const need = seedToBuy({ crop, plants: plants(100), packet: { seeds: 100 } });
    expect(need.seeds.value).toEqual(count(250));
    expect(need.mass.value).toMatchObject({ kind: 'range', low: 0.25 * ounce, high: 0.3125 * ounce });
    expect(need.packets.value).toEqual(count(3));
    expect(need.seeds.sources).toEqual(['seed-law', 'common-practice-gardening']);
  });
  test('four to a place and thinned: 400, for 2.5 would have been enough', () => {
    expect(seedToBuy({ crop, plants: plants(100), sownPerPlace: 4 }).seeds.value).toEqual(count(400));
    expect(seedToBuy({ crop, plants: plants(100), sownPerPlace: 2 }).seeds.value).toEqual(count(250));
  });
  test('a tenth to spare', () => {
    expect(seedToBuy({ crop, plants: plants(100), sparePercent: 10 }).seeds.value).toEqual(count(275));
  });
  test('a packet by weight counts on the heaviest seed', () => {
    expect(seedToBuy({ crop, plants: plants(100), packet: { massG: 0.25 * ounce } }).packets.value).toEqual(
      count(2),
    );
  });
});

describe('what is not known', () => {
  test('germination', () => {
    const need = seedToBuy({ crop: cropLike(), plants: plants(10) });
    expect([need.seeds.value, need.mass.value, need.packets.value]).toEqual(
      Array(3).fill(none('no-germination-figure')),
    );
    expect(seedToBuy({ crop: cropLike(), plants: plants(10), germinationPercent: 80 }).mass.value).toEqual(
      none('no-seed-count'),
    );
  });
  test('the packet, and the plants', () => {
    expect(seedToBuy({ crop, plants: plants(10) }).packets.value).toEqual(none('no-packet-size'));
    const none10 = { ...plants(1), value: none('bed-too-small') };
    expect(seedToBuy({ crop, plants: none10 }).seeds.value).toEqual(none('bed-too-small'));
  });
  test('nothing that lives is refused', () => {
    expect(() => seedToBuy({ crop, plants: plants(1), survivalPercent: 0 })).toThrow(RangeError);
  });
});

test('bundles: 60 plants of which nine in ten live are 67, two bundles of 60', () => {
  const bought = bundlesToBuy({ crop, plants: plants(60), bundle: { low: 60, high: 75, sources } });
  expect([bought.number.value, bought.bundles.value]).toEqual([count(67), count(2)]);
});

test('more plants, poorer seed or more thinning never need less', () => {
  const need = (number: number, germinationPercent: number, sownPerPlace: number): number => {
    const { value } = seedToBuy({ crop, plants: plants(number), germinationPercent, sownPerPlace }).seeds;
    return value.kind === 'count' ? value.value : NaN;
  };
  const arbitrary = fc.tuple(
    fc.integer({ min: 1, max: 2000 }),
    fc.integer({ min: 5, max: 99 }),
    fc.integer({ min: 1, max: 6 }),
  );
  fc.assert(
    fc.property(arbitrary, ([number, percent, places]) => {
      const base = need(number, percent, places);
      expect(base).toBeGreaterThanOrEqual(number);
      expect(need(number + 1, percent, places)).toBeGreaterThanOrEqual(base);
      expect(need(number, percent + 1, places)).toBeLessThanOrEqual(base);
      expect(need(number, percent, places + 1)).toBeGreaterThanOrEqual(base);
    }),
  );
});

describe('yield of 50 ft of row', () => {
  const rowLengthMm = 50 * 304.8;
  const rowLength: Finding = {
    id: 'bed.row',
    value: quantity('length', rowLengthMm),
    method: 'given',
    inputs: [],
    sources: [],
  };
  const give = (unit: NonNullable<Crop['yieldPer100Ft']>['unit']) =>
    expectedYield(cropLike({ yieldPer100Ft: { low: 20, high: 80, unit, sources } }), {
      rowLength,
      rowLengthMm,
    });
  test.each([
    ['lb', 'yield-whole'],
    ['lb-pods', 'yield-pods'],
    ['lb-shelled', 'yield-shelled'],
  ] as const)('%s is a weight, with its unit', (unit, words) => {
    expect(give(unit).value).toEqual({ kind: 'range', dimension: 'mass', low: 4535.9237, high: 18143.6948 });
    expect(give(unit).inputs).toContainEqual({ name: 'yield-unit', value: choice(words) });
  });
  test.each([
    ['dozen-ears', 120, 480],
    ['heads', 10, 40],
    ['bunches', 10, 40],
  ] as const)('%s is a count', (unit, low, high) => {
    expect(give(unit).value).toEqual({ kind: 'count-range', low, high });
  });
  test('no figure', () => {
    expect(expectedYield(cropLike(), { rowLength, rowLengthMm }).value).toEqual(none('no-yield-figure'));
  });
});
