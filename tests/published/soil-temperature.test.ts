/** How fast heat goes into soil, against a printed table and the equation it solves. */
import { describe, expect, test } from 'vitest';
import {
  dampingDepthMm,
  soilTemperatureYear,
  thermalDiffusivity,
  type SoilMoisture,
} from '../../scripts/climate/soil-temperature.ts';
import { meanOn, type TemperatureYear } from '../../scripts/climate/temperature-year.ts';

/**
 * A. F. Moene and J. C. van Dam, Transport in the Atmosphere-Vegetation-Soil Continuum, Cambridge University Press, 2014, table
 * 2.2, after D. A. de Vries, 1963: conductivity λ in W/(m K) and heat capacity C in MJ/(m³ K), beside the diffusivity.
 */
describe('the diffusivities are conductivity over heat capacity of the same table', () => {
  test.each<[texture: 'sand' | 'clay', moisture: SoilMoisture, conductivity: number, capacity: number]>([
    ['sand', 'dry', 0.24, 1.28],
    ['sand', 'moist', 2.1, 2.12],
    ['sand', 'wet', 2.5, 2.96],
    ['clay', 'dry', 0.15, 1.43],
    ['clay', 'moist', 0.9, 2.27],
    ['clay', 'wet', 1.4, 3.1],
  ])('%s, %s', (texture, moisture, conductivity, capacity) => {
    // 0.006: the diffusivity is printed to two figures.
    expect(Math.abs(thermalDiffusivity({ texture, moisture }) - conductivity / capacity)).toBeLessThan(0.006);
  });

  /**
   * Percent of sand in the middle of each texture class: B. J. Cosby et al., Water Resources Research 20, 1984, table 2 (from
   * memory). Between clay and sand the program goes by it in a straight line; silt loam has less sand than clay.
   */
  test.each([
    ['sand', 92],
    ['sandy-loam', 58],
    ['loam', 43],
    ['clay-loam', 32],
    ['clay', 22],
    ['silt-loam', 17],
  ] as const)('%s, %d percent of sand', (texture, percentSand) => {
    const share = Math.max(0, (percentSand - 22) / (92 - 22));
    for (const [moisture, clay, sand] of [
      ['dry', 0.1, 0.19],
      ['moist', 0.4, 0.99],
      ['wet', 0.45, 0.85],
    ] as const) {
      // 0.006: the percent is whole, and the place between clay and sand is kept to two figures.
      const expected = clay + share * (sand - clay);
      expect(Math.abs(thermalDiffusivity({ texture, moisture }) - expected)).toBeLessThan(0.006);
    }
  });

  test('every loam lies between clay and sand, and the sandier one nearer to sand', () => {
    for (const moisture of ['dry', 'moist', 'wet'] as const) {
      const row = (['clay', 'silt-loam', 'clay-loam', 'loam', 'sandy-loam', 'sand'] as const).map((texture) =>
        thermalDiffusivity({ texture, moisture }),
      );
      expect(row).toEqual([...row].sort((a, b) => a - b));
    }
  });
});

test('damping depths: the yearly wave goes 19 times as deep as the daily one, some 2 to 3 m in moist soil', () => {
  // Square root of 365; the depths follow from d = sqrt(2 κ/ω) (D. Hillel, Introduction to Soil Physics, 1982).
  expect(dampingDepthMm(0.4) / dampingDepthMm(0.4, 365)).toBeCloseTo(Math.sqrt(365), 9);
  expect(dampingDepthMm(0.4)).toBeCloseTo(2004, 0);
  expect(dampingDepthMm(0.99)).toBeCloseTo(3152, 0);
});

const wave = (index: number): number => 10 - 12 * Math.cos((2 * Math.PI * (index + 1 - 20)) / 365);
const air: TemperatureYear = {
  minimumC: Array.from({ length: 365 }, (_, index) => wave(index) - 5),
  maximumC: Array.from({ length: 365 }, (_, index) => wave(index) + 5),
  sources: ['test'],
};

describe('one wave a year, in moist clay', () => {
  const soil = soilTemperatureYear(air, { texture: 'clay', moisture: 'moist', source: 'test' });

  test.each([0, 12, 25, 50, 100, 1000])('at %d mm it is weaker by exp(-z/d) and later by z/d', (depthMm) => {
    const down = depthMm / dampingDepthMm(0.4);
    for (let day = 1; day <= 365; day += 14) {
      const expected = 10 - 12 * Math.exp(-down) * Math.cos((2 * Math.PI * (day - 20)) / 365 - down);
      // Exact but for binary fractions.
      expect(soil.at(day, depthMm)).toBeCloseTo(expected, 9);
    }
  });

  test('the heat equation, solved step by step, gives the same', () => {
    const solved = solvedByDifferences({ diffusivityMm2PerS: 0.4, depthMm: 500 });
    for (let day = 1; day <= 365; day += 14) {
      // 0.1 C: what steps of 50 mm and an hour, and a bottom at 10 m, leave.
      expect(Math.abs(soil.at(day, 500) - solved[day - 1]!), `day ${day}`).toBeLessThan(0.1);
    }
  });
});

test('at seed depth a moist loam is within half a degree of the air’s daily mean, and 100 mm down of that two days before', () => {
  const soil = soilTemperatureYear(air, { texture: 'loam', moisture: 'moist', source: 'test' });
  for (let day = 1; day <= 365; day += 1) {
    expect(Math.abs(soil.at(day, 25) - meanOn(air, day))).toBeLessThan(0.5);
    expect(Math.abs(soil.at(day, 100) - meanOn(air, day - 2))).toBeLessThan(0.5);
  }
});

/** Daily means at a depth in the third year of heat going down from the surface, by explicit differences. */
function solvedByDifferences(soil: { diffusivityMm2PerS: number; depthMm: number }): readonly number[] {
  const [stepMm, layers, stepS] = [50, 200, 1800];
  const share = (soil.diffusivityMm2PerS * stepS) / stepMm ** 2;
  let column = Array.from({ length: layers + 1 }, () => 10);
  const days: number[] = [];
  const perDay = 86_400 / stepS;
  for (let step = 0; step < 3 * 365 * perDay; step += 1) {
    const day = Math.floor(step / perDay);
    const surface = wave((step / perDay - 0.5) % 365);
    column = column.map((value, at) => {
      if (at === 0) return surface;
      if (at === layers) return value;
      return value + share * (column[at - 1]! - 2 * value + column[at + 1]!);
    });
    if (step % perDay === perDay / 2) days[day] = column[soil.depthMm / stepMm]!;
  }
  return days.slice(-365);
}
