import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airReaches, crossingDay } from '../../scripts/climate/air-temperature.ts';
import {
  soilReaches,
  soilTemperatureYear,
  type SoilForTemperature,
} from '../../scripts/climate/soil-temperature.ts';
import { meanOn } from '../../scripts/climate/temperature-year.ts';
import { none, type DateFinding } from '../../scripts/findings/finding.ts';
import { soilTextures } from '../../scripts/records/schemas/region.ts';
import { climate, inland, polar, southern, tropical } from './climates.ts';

const loam: SoilForTemperature = { texture: 'loam', moisture: 'moist', source: 'test-soil' };
const soilOf = (air: typeof inland, soil = loam) => soilTemperatureYear(air, soil);
const dayOf = ({ value }: DateFinding): number => (value.kind === 'date' ? value.day : NaN);
const textures = fc.constantFrom(...soilTextures);
const moistures = fc.constantFrom('dry' as const, 'moist' as const, 'wet' as const);

describe('any soil', () => {
  test('at the surface it follows the daily mean of the air', () => {
    for (let day = 1; day <= 365; day += 7) {
      expect(Math.abs(soilOf(inland).at(day, 0) - meanOn(inland, day))).toBeLessThan(0.05);
    }
  });

  test('the deeper, the smaller the swing of the year, and the same mean', () => {
    fc.assert(
      fc.property(textures, moistures, fc.integer({ min: 0, max: 800 }), (texture, moisture, depthMm) => {
        const soil = soilOf(inland, { texture, moisture, source: 'test' });
        const yearAt = (depth: number): number[] =>
          Array.from({ length: 365 }, (_, index) => soil.at(index + 1, depth));
        const swing = (values: number[]): number => Math.max(...values) - Math.min(...values);
        const mean = (values: number[]): number => values.reduce((sum, value) => sum + value, 0) / 365;
        expect(swing(yearAt(depthMm + 200))).toBeLessThan(swing(yearAt(depthMm)));
        expect(mean(yearAt(depthMm))).toBeCloseTo(mean(yearAt(0)), 6);
      }),
      { numRuns: 20 },
    );
  });

  test('spring comes later the deeper it has to go, fall too', () => {
    for (const direction of ['rising', 'falling'] as const) {
      const days = [12, 100, 300, 600].map((depthMm) =>
        dayOf(soilReaches({ soil: soilOf(inland), depthMm, temperatureC: 10, from: 1, direction })),
      );
      expect(days).toEqual([...days].sort((a, b) => a - b));
    }
  });

  test('days run on over New Year', () => {
    const soil = soilOf(inland);
    expect(soil.at(366, 25)).toBe(soil.at(1, 25));
    expect(soil.at(-4, 25)).toBe(soil.at(361, 25));
  });

  test('a depth above the ground is refused', () => {
    expect(() => soilOf(inland).at(1, -1)).toThrow(RangeError);
  });
});

describe('the date a temperature is reached', () => {
  test('is the first day that has it after one that has not', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -200, max: 400 }),
        fc.double({ min: -5, max: 21, noNaN: true }),
        (from, temperatureC) => {
          const soil = soilOf(inland);
          const rising = dayOf(soilReaches({ soil, depthMm: 25, temperatureC, from, direction: 'rising' }));
          expect(soil.at(rising, 25)).toBeGreaterThanOrEqual(temperatureC);
          expect(soil.at(rising - 1, 25)).toBeLessThan(temperatureC);
          const falling = dayOf(soilReaches({ soil, depthMm: 25, temperatureC, from, direction: 'falling' }));
          expect(soil.at(falling, 25)).toBeLessThanOrEqual(temperatureC);
          expect(soil.at(falling - 1, 25)).toBeGreaterThan(temperatureC);
          expect(rising - from).toBeLessThan(365);
        },
      ),
    );
  });

  test('a warmer soil reaches it sooner in spring and loses it later in fall', () => {
    const warmth = fc.double({ min: 0, max: 6, noNaN: true });
    fc.assert(
      fc.property(warmth, fc.double({ min: 3, max: 15, noNaN: true }), (more, temperatureC) => {
        const [cool, warm] = [8, 8 + more].map((meanC) => soilOf(climate({ meanC, halfC: 15 })));
        const at = (soil: ReturnType<typeof soilOf>, direction: 'rising' | 'falling'): number =>
          dayOf(soilReaches({ soil, depthMm: 25, temperatureC, from: 20, direction }));
        expect(at(warm!, 'rising')).toBeLessThanOrEqual(at(cool!, 'rising'));
        expect(at(warm!, 'falling')).toBeGreaterThanOrEqual(at(cool!, 'falling'));
      }),
      { numRuns: 40 },
    );
  });

  test('rises later for a warmer wish', () => {
    const days = [4.4, 7.2, 10, 15.6, 18.3].map((temperatureC) =>
      dayOf(soilReaches({ soil: soilOf(inland), depthMm: 25, temperatureC, from: 1, direction: 'rising' })),
    );
    expect(days).toEqual([...days].sort((a, b) => a - b));
    expect(new Set(days).size).toBe(5);
  });

  test('in the south it comes half a year later', () => {
    const [north, south] = [inland, southern].map((air) =>
      dayOf(soilReaches({ soil: soilOf(air), depthMm: 25, temperatureC: 10, from: 20, direction: 'rising' })),
    );
    expect(Math.abs(south! - north! - 182.5)).toBeLessThan(4);
  });

  test.each([
    ['the tropics are always warmer', tropical, 'rising', 'soil-always-warmer'],
    ['the tropics never cool down to it', tropical, 'falling', 'soil-always-warmer'],
    ['polar ground never warms up to it', polar, 'rising', 'soil-always-cooler'],
    ['polar ground is always cooler', polar, 'falling', 'soil-always-cooler'],
  ] as const)('%s', (_, air, direction, reason) => {
    const finding = soilReaches({ soil: soilOf(air), depthMm: 25, temperatureC: 10, from: 1, direction });
    expect(finding.value).toEqual(none(reason));
  });

  test('the finding tells depth, temperature, soil and sources', () => {
    const finding = soilReaches({
      soil: soilOf(inland),
      depthMm: 25.4,
      temperatureC: 10,
      from: 1,
      direction: 'rising',
    });
    expect(finding).toMatchObject({ id: 'soil.rising.50f.25mm', method: 'soil.rising' });
    expect(finding.inputs.map(({ name }) => name)).toEqual([
      'soil-temperature',
      'soil-depth',
      'soil-texture',
      'soil-moisture',
    ]);
    expect(finding.sources).toEqual([
      'test',
      'boneva-1971-histospline',
      'test-soil',
      'hillel-1982-soil-temperature',
      'moene-van-dam-2014',
      'cosby-1984-textures',
    ]);
  });
});

describe('the air', () => {
  test('a heat limit is a date in early summer, and its end one in fall', () => {
    const at = (direction: 'rising' | 'falling') =>
      airReaches(inland, { measure: 'maximum', temperatureC: 24, from: 1, direction });
    expect(at('rising').id).toBe('air.maximum.rising.75-2f');
    expect(dayOf(at('rising'))).toBeLessThan(172);
    expect(dayOf(at('falling'))).toBeGreaterThan(230);
  });

  test('the tropics are always above it, polar places always below', () => {
    const wanted = { measure: 'mean', temperatureC: 15, from: 1, direction: 'rising' } as const;
    expect(airReaches(tropical, wanted).value).toEqual(none('air-always-warmer'));
    expect(airReaches(polar, wanted).value).toEqual(none('air-always-cooler'));
  });

  test('a curve that reaches a temperature for one day only is met going up and going down', () => {
    const peak = (day: number): number => (day === 200 ? 10 : 5);
    expect(crossingDay(peak, { temperatureC: 10, from: 1, direction: 'rising' })).toBe(200);
    expect(crossingDay(peak, { temperatureC: 9, from: 1, direction: 'falling' })).toBe(201);
    expect(crossingDay(peak, { temperatureC: 5, from: 1, direction: 'falling' })).toBe(201);
  });
});
