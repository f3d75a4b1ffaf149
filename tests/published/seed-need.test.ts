/**
 * Plants and seed for 100 ft of row.
 *
 * Sources: plants, by the arithmetic that charts print (1,200 over the inches in the row; 18 in. is printed as 66). Seed:
 * Olds Seed garden seed chart (reprint) and Missouri G6201 (reprint), seeds in an ounce and weight for 100 ft;
 * germination by the Federal Seed Act standards, 7 CFR 201.31.
 * Tolerance: plants exact. Seed a factor of 3: published rates for one crop differ by that much (carrot 0.25 to 1 oz).
 * Large seed is reckoned at one to a place. Fine seed is sown in a drill, three or four to the inch, and thinned to two
 * or three inches: eight to a place, common practice.
 * Lettuce is left out: its rates are for rows sown to be cut as leaves and hold no count of plants.
 */
import { describe, expect, test } from 'vitest';
import { plantPlaces } from '../../scripts/agronomy/bed-layout.ts';
import { seedToBuy } from '../../scripts/agronomy/seed-need.ts';
import { count, type Finding } from '../../scripts/findings/finding.ts';
import { fromHeld, toHeld } from '../../scripts/quantities/units.ts';
import { cropLike } from '../agronomy/crop.ts';

const row = (inRowIn: number): number =>
  plantPlaces({
    layout: 'rows',
    bedLengthMm: toHeld(100, 'ft'),
    bed: { bedWidthMm: 300, betweenRowsMm: 300 },
    inRowMm: toHeld(inRowIn, 'in'),
  }).length;

test.each([
  [3, 400],
  [18, 66],
  [24, 50],
])('%i in. apart: %i plants in 100 ft', (inches, plants) => {
  expect(row(inches)).toBe(plants);
});

/** Crop, in-row inches, germination percent, seeds an ounce, sown to a place, published ounces for 100 ft. */
const rates: [string, number, number, number, number, number][] = [
  ['snap bean, Olds', 2.5, 70, 100, 1, 8],
  ['pea, Olds', 2, 80, 120, 1, 16],
  ['sweet corn, Olds, three to a place', 12, 75, 175, 3, 4],
  ['beet, Olds', 2, 65, 1500, 1, 1],
  ['radish, Olds', 1, 75, 2500, 1, 1],
  ['spinach, Olds', 2, 60, 2800, 1, 1],
  ['carrot, Olds', 2, 55, 25000, 8, 0.5],
  ['carrot, Missouri', 3, 55, 25000, 8, 0.25],
  ['onion, Olds', 2, 70, 8000, 8, 1],
];

describe('ounces for 100 ft, within a factor of 3', () => {
  test.each(rates)('%s', (_, inRowIn, percent, perOunce, sownPerPlace, published) => {
    const plants: Finding = {
      id: 'row.plants',
      value: count(row(inRowIn)),
      method: 'given',
      inputs: [],
      sources: [],
    };
    const crop = cropLike({
      germination: { percent, sources: ['us-cfr-201-31'] },
      seedsPerOunce: { low: perOunce, high: perOunce, sources: ['olds-seed-chart'] },
    });
    const { value } = seedToBuy({ crop, plants, sownPerPlace }).mass;
    if (value.kind !== 'quantity') throw new TypeError('not one weight');
    const ratio = fromHeld(value.value, 'oz') / published;
    expect(ratio).toBeGreaterThanOrEqual(1 / 3);
    expect(ratio).toBeLessThanOrEqual(3);
  });
});
