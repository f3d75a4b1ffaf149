import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { daysToEmergence } from '../../scripts/agronomy/emergence.ts';
import {
  daysFromSowing,
  emergenceOn,
  emergencePoints,
  normalSeedlingsOn,
  percentNormalSeedlings,
} from '../../scripts/agronomy/emergence-on.ts';
import type { SoilTemperatureYear } from '../../scripts/climate/temperature-year.ts';
import { dateRange, none } from '../../scripts/findings/finding.ts';
import { toHeld } from '../../scripts/quantities/units.ts';
import { cropLike, q } from './crop.ts';

const sources = ['a-table'];
const at = (f: number, days: number) => ({ at: q(`${f} F`, 'temperature'), days });
const crop = cropLike({
  emergence: { points: [at(50, 20), at(68, 10), at(86, 5)], sources },
  normalSeedlings: {
    points: [50, 68, 86].map((f, index) => ({
      at: q(`${f} F`, 'temperature'),
      percent: [40, 90, 60][index]!,
    })),
    sources,
  },
});
const steady = (f: number): SoilTemperatureYear => ({ at: () => toHeld(f, 'F'), sources: ['a-model'] });
const sow = (soil: SoilTemperatureYear, of = crop) =>
  emergenceOn({ crop: of, sowDay: 100, soil, depthMm: 12 });

describe('in steady soil', () => {
  test.each([
    [50, 20, 117, 123],
    [68, 10, 109, 112],
    [86, 5, 104, 106],
  ])('%s F: the days of the table, 15 %% or a day either way', (f, days, from, to) => {
    expect(daysFromSowing(emergencePoints(crop), () => toHeld(f, 'F'), 100)).toBeCloseTo(days, 9);
    expect(sow(steady(f)).value).toEqual(dateRange(from, to));
  });
});

test('by hand: ten days at half the need in cool soil, then five in warm soil', () => {
  const turning = (day: number): number => toHeld(day < 110 ? 50 : 68, 'F');
  expect(daysFromSowing(emergencePoints(crop), turning, 100)).toBeCloseTo(15, 9);
});

test('never beyond the tested temperatures', () => {
  expect(sow(steady(49)).value).toEqual(none('soil-too-cold'));
  expect(sow(steady(87)).value).toEqual(none('soil-too-warm'));
  const turns: SoilTemperatureYear = { at: (day) => toHeld(day < 103 ? 60 : 90, 'F'), sources: [] };
  expect(sow(turns).value).toEqual(none('soil-too-warm'));
});

test('the soil is asked at the depth of the seed', () => {
  const layered: SoilTemperatureYear = {
    at: (_, depthMm) => toHeld(depthMm > 20 ? 50 : 86, 'F'),
    sources: [],
  };
  expect(emergenceOn({ crop, sowDay: 1, soil: layered, depthMm: 25 }).value).not.toEqual(
    emergenceOn({ crop, sowDay: 1, soil: layered, depthMm: 10 }).value,
  );
});

test('a crop without a table counts its published days; sets are not sown', () => {
  expect(sow(steady(60), cropLike()).value).toEqual(dateRange(106, 110));
  expect(sow(steady(60), cropLike({ emergence: { notSown: true } })).value).toEqual(none('not-sown'));
});

test('warmer soil below the optimum never comes up later, and the day lies between the days of its extremes', () => {
  const f = fc.double({ min: 50, max: 86, noNaN: true });
  fc.assert(
    fc.property(f, f, fc.integer({ min: 1, max: 19 }), (a, b, day) => {
      const points = emergencePoints(crop);
      const days = (from: number, to: number): number => {
        const taken = daysFromSowing(points, (at) => toHeld(at < 100 + day ? from : to, 'F'), 100);
        if (typeof taken === 'string') throw new TypeError(taken);
        return taken;
      };
      const [slow, quick] = [
        daysToEmergence(points, toHeld(Math.min(a, b), 'F'))!,
        daysToEmergence(points, toHeld(Math.max(a, b), 'F'))!,
      ];
      expect(quick).toBeLessThanOrEqual(slow + 1e-9);
      expect(days(a, b)).toBeGreaterThanOrEqual(quick - 1e-6);
      expect(days(a, b)).toBeLessThanOrEqual(slow + 1e-6);
    }),
  );
});

describe('normal seedlings', () => {
  const seedlings = (f: number, of = crop) =>
    normalSeedlingsOn({ crop: of, sowDay: 100, soil: steady(f), depthMm: 12 }).value;
  test('straight lines between the points', () => {
    expect(seedlings(59)).toEqual({ kind: 'count', value: 65 });
    expect(seedlings(77)).toEqual({ kind: 'count', value: 75 });
    expect(percentNormalSeedlings([{ temperatureC: 10, percent: 40 }], 10)).toBe(40);
  });
  test('never beyond them', () => {
    expect(seedlings(40)).toEqual(none('soil-too-cold'));
    expect(seedlings(90)).toEqual(none('soil-too-warm'));
    expect(seedlings(60, cropLike())).toEqual(none('no-seedling-table'));
  });
});
