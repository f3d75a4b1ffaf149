import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../scripts/findings/finding.ts';
import { fromHeld, toHeld } from '../../scripts/quantities/units.ts';
import { tepeeStructure } from '../../scripts/structures/pole-tepee.ts';
import { layTepee, pushN, tepeeInWind, weightForGustG } from '../../scripts/structures/tepee-layout.ts';
import {
  deepestLegMm,
  depthNeededMm,
  stands,
  tepeeWindFindings,
} from '../../scripts/structures/tepee-wind.ts';
import { regionWind } from '../../scripts/structures/wind/velocity-pressure.ts';
import { tepeeWith, type TepeeChoices } from './keyhole-project.ts';
import { quantityIn } from './project.ts';

function inGust(mph: number | undefined, choices: TepeeChoices = {}): ReadonlyMap<string, Finding> {
  const project = tepeeWith(choices);
  const built = tepeeStructure(project, { hemisphere: 'north' });
  if (built.kind === 'faults') throw new Error(JSON.stringify(built.faults));
  const { findings } = built.structure;
  const wind = regionWind(
    mph === undefined ? undefined : { gust: quantityIn('speed', 'mph', mph), source: 'a-map' },
  );
  const made = tepeeWindFindings(project, {
    wind,
    given: (id) => findings.find((finding) => finding.id === id)!,
  });
  return new Map([...findings, ...made].map((finding) => [finding.id, finding]));
}

function held(findings: ReadonlyMap<string, Finding>, id: string): number {
  const value = findings.get(`tepee.${id}`)?.value;
  if (value?.kind !== 'quantity') throw new Error(`${id} is ${value?.kind}`);
  return value.value;
}

/** What becomes of a finding without a number. */
function word(findings: ReadonlyMap<string, Finding>, id: string): string {
  const value = findings.get(`tepee.${id}`)!.value;
  return value.kind === 'choice' ? value.value : value.kind === 'none' ? value.reason : value.kind;
}

describe('six poles of eight feet, a foot in the ground, by hand', () => {
  // It stands 46.26 mph (pole-tepee.test.ts). Sail 12.0185 ft²; at 55 mph 0.00256·3025 = 7.744 psf, times 1.2: 111.69 lb.
  test('the push of 55 mph', () => {
    expect(fromHeld(held(inGust(55), 'wind-push'), 'lbf')).toBeCloseTo(111.69, 1);
  });

  test.each([
    ['less than it stands', 45, 'tepee-stands'],
    ['a little less than it stands', 46.2, 'tepee-stands'],
    ['a little more than it stands', 46.3, 'tepee-tips'],
    ['more than it stands', 55, 'tepee-tips'],
  ])('a gust of %s', (_, mph, verdict) => {
    expect(word(inGust(mph), 'stands')).toBe(verdict);
  });

  // 15 in: leg 73, height √(5329 − 576) = 68.942, in the ground 15·68.942/73 = 14.166, hold 250·(14.166/36)² = 38.71 lb.
  // 38.71·103.923 + 249.4 = 4272 in lb over 22.981 in and 1.2·11.490 ft²: 13.48 psf, 72.57 mph, over √1.5 59.25 mph.
  // 14 in: leg 74, height 70.0, in the ground 13.243, hold 33.83: 3765 in lb over 23.333 and 1.2·11.667: 11.53, 67.1, 54.8.
  test.each([
    ['54 mph', 54, 14],
    ['55 mph', 55, 15],
    ['59 mph', 59, 15],
    ['60 mph', 60, 16],
  ])('legs for %s', (_, mph, inches) => {
    expect(fromHeld(held(inGust(mph), 'buried-needed'), 'in')).toBeCloseTo(inches, 6);
  });

  // 1.5·111.69 lb at 24.037 in = 4027 in lb, less 2848.3 that it has: 1178.8, over 24·cos 30° = 20.785 in: 56.7 lb.
  test('the weight for 55 mph', () => {
    expect(fromHeld(held(inGust(55), 'weight-needed'), 'lb')).toBeCloseTo(56.7, 0);
  });

  test('where it stands, it needs nothing more', () => {
    expect(word(inGust(45), 'buried-needed')).toBe('tepee-needs-nothing');
    expect(word(inGust(45), 'weight-needed')).toBe('tepee-needs-nothing');
  });

  test('in a hurricane no hole is deep enough', () => {
    expect(word(inGust(150), 'buried-needed')).toBe('tepee-too-windy');
  });

  test('a region without a gust is judged by none', () => {
    for (const id of ['gust', 'wind-push', 'stands', 'buried-needed', 'weight-needed'])
      expect(word(inGust(undefined), id), id).toBe('wind-not-given');
  });

  test('the gust names its source, and so does what follows from it', () => {
    const findings = inGust(55);
    expect(findings.get('tepee.gust')!.sources).toEqual(['a-map']);
    expect(findings.get('tepee.stands')!.sources).toContain('a-map');
  });
});

describe('of any size', () => {
  const sizes = fc.record({
    number: fc.integer({ min: 3, max: 12 }),
    spread: fc.integer({ min: 30, max: 70 }),
    buried: fc.integer({ min: 12, max: 18 }),
    mph: fc.integer({ min: 30, max: 90 }),
  });

  test('the depth that it needs is enough, and an inch less is not', () => {
    fc.assert(
      fc.property(sizes, ({ number, spread, buried, mph }) => {
        const gust = toHeld(mph, 'mph');
        const standsWith = (inches: number): boolean => {
          const project = tepeeWith({ number, spread, buried: inches, gust: 10, spacing: 4 });
          return stands(tepeeInWind(project, layTepee(project)).standsMps, gust);
        };
        const mm = depthNeededMm(tepeeWith({ number, spread, buried, gust: 10, spacing: 4 }), gust);
        if (mm === undefined) return !standsWith(fromHeld(deepestLegMm, 'in'));
        const inches = Math.round(fromHeld(mm, 'in'));
        return standsWith(inches) && (inches === buried || !standsWith(inches - 1));
      }),
      { numRuns: 60, seed: 5 },
    );
  });

  test('the weight makes up exactly what is missing', () => {
    fc.assert(
      fc.property(sizes, ({ number, spread, buried, mph }) => {
        const project = tepeeWith({ number, spread, buried, gust: 10, spacing: 4 });
        const of = tepeeInWind(project, layTepee(project));
        const gust = toHeld(mph, 'mph');
        const grams = weightForGustG(of, gust);
        const withIt = of.rightingNm + (grams / 1000) * 9.80665 * of.edgeM;
        const wanted = 1.5 * pushN(of, gust) * of.armM;
        expect(withIt).toBeGreaterThanOrEqual(wanted * (1 - 1e-9));
        if (grams > 0) expect(withIt).toBeCloseTo(wanted, 6);
      }),
      { numRuns: 60, seed: 6 },
    );
  });
});
