/**
 * Planting depth: the rule of two and a half seed diameters against published depths.
 *
 * Sources: seed counts and depths of the Olds Seed garden seed chart (reprinted by Huebner's Lawn and Garden), depths of
 * the University of Maine, University of Missouri (G6201) and Colorado State University charts. Diameters are not
 * published: they are worked out from the counts with an assumed density of 1.2 g/cm3, so the diameters below test the
 * arithmetic (to 0.05 mm, as printed to a tenth), and the published depths test the rule.
 * Tolerance: the rule is no equality. It orders seed by size (rank correlation 0.92 with the middle of the published
 * depths, tied ranks shared; 0.03 for rounding) and is a lower bound: no published range of the list ends below it.
 */
import { describe, expect, test } from 'vitest';
import { ruleDiameters, seedDiameterMm } from '../../scripts/agronomy/depth-advice.ts';

const inch = 25.4;
/** Crop, seeds an ounce, diameter worked out from it, and the published depths in inches. */
const crops: [string, number, number, number, number][] = [
  ['snap bean', 100, 7.7, 1, 1],
  ['pea', 120, 7.2, 1, 2],
  ['sweet corn', 175, 6.4, 1, 1],
  ['summer squash', 220, 5.9, 1, 1],
  ['cucumber', 1000, 3.6, 0.75, 1],
  ['beet', 1500, 3.1, 0.5, 1],
  ['radish', 2500, 2.6, 0.5, 0.5],
  ['spinach', 2800, 2.5, 0.25, 0.5],
  ['onion', 8000, 1.8, 0.5, 0.5],
  ['kale', 8700, 1.7, 0.25, 0.5],
  ['tomato', 11000, 1.6, 0.25, 0.25],
  ['carrot', 25000, 1.2, 0.25, 0.5],
  ['lettuce', 25000, 1.2, 0.25, 0.5],
];

describe.each(crops)('%s', (_, perOunce, diameter, shallow, deep) => {
  test('diameter', () => {
    expect(Math.abs(seedDiameterMm(perOunce) - diameter)).toBeLessThanOrEqual(0.05 + 1e-9);
  });
  test('the rule is no deeper than published', () => {
    expect((ruleDiameters * seedDiameterMm(perOunce)) / inch).toBeLessThanOrEqual(deep);
  });
  test('published depth is 3 to 8 diameters, by its middle', () => {
    const times = (((shallow + deep) / 2) * inch) / seedDiameterMm(perOunce);
    expect(times).toBeGreaterThanOrEqual(3);
    expect(times).toBeLessThanOrEqual(8.1);
  });
});

test('bigger seed goes deeper: rank correlation with the published depths', () => {
  const rule = crops.map(([, perOunce]) => seedDiameterMm(perOunce));
  const published = crops.map(([, , , shallow, deep]) => (shallow + deep) / 2);
  expect(Math.abs(correlation(ranks(rule), ranks(published)) - 0.92)).toBeLessThanOrEqual(0.03);
});

/** Ranks from 1; equals share the middle of theirs. */
function ranks(values: readonly number[]): number[] {
  return values.map((value) => {
    const below = values.filter((other) => other < value - 1e-9).length;
    const equal = values.filter((other) => Math.abs(other - value) <= 1e-9).length;
    return below + (equal + 1) / 2;
  });
}

function correlation(a: readonly number[], b: readonly number[]): number {
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  const [meanA, meanB] = [mean(a), mean(b)];
  const product = (x: readonly number[], y: readonly number[], mx: number, my: number): number =>
    x.reduce((sum, value, index) => sum + (value - mx) * (y[index]! - my), 0);
  return product(a, b, meanA, meanB) / Math.sqrt(product(a, a, meanA, meanA) * product(b, b, meanB, meanB));
}
