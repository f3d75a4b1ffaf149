import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { soilFit, soilFits } from '../../scripts/agronomy/soil-fit.ts';
import type { SoilRecord } from '../../scripts/agronomy/depth-advice.ts';
import { none } from '../../scripts/findings/finding.ts';
import { cropLike, q } from './crop.ts';

const sources = ['a-source'];
const carrot = cropLike({
  soil: { ph: { low: 6, high: 6.8 }, looseDepth: q('10 to 12 in', 'length'), sources },
});
const leaf = cropLike({ soil: { ph: { low: 6, high: 7 }, sources } });
const good: SoilRecord = {
  texture: 'sandy-loam',
  moisture: 'moist',
  stones: 'none',
  depth: q('18 in', 'length'),
  ph: 6.4,
  source: 'a-survey',
};
const deep = (words: string) => q(words, 'length');

describe('a root crop', () => {
  test.each<[string, Partial<SoilRecord>, string, string]>([
    ['deep, loose, stone-free sandy loam', {}, 'soil-fits', 'soil-suits'],
    ['within what published ranges differ by', { ph: 5.7 }, 'soil-fits', 'soil-suits'],
    ['somewhat sour', { ph: 5.4 }, 'soil-fits-with-work', 'ph-too-low'],
    ['very limy', { ph: 8.2 }, 'soil-raised-bed', 'ph-too-high'],
    ['eight inches over rock', { depth: deep('8 in') }, 'soil-shorter-types', 'too-shallow'],
    ['five inches over rock', { depth: deep('5 in') }, 'soil-container', 'few-inches-of-soil'],
    ['some stones', { stones: 'some' }, 'soil-fits-with-work', 'some-stones'],
    ['many stones', { stones: 'many' }, 'soil-raised-bed', 'many-stones'],
    ['clay loam', { texture: 'clay-loam' }, 'soil-shorter-types', 'heavy-soil'],
    ['clay', { texture: 'clay' }, 'soil-raised-bed', 'clay-soil'],
    [
      'clay over rock, sour: the gravest comes first',
      { texture: 'clay', depth: deep('4 in'), ph: 5.2 },
      'soil-container',
      'few-inches-of-soil',
    ],
  ])('%s', (_, changes, fit, reason) => {
    const found = soilFit(carrot, { ...good, ...changes });
    expect(found.fit.value).toEqual({ kind: 'choice', value: fit });
    expect(found.reasons[0]!.reason).toBe(reason);
    expect(found.fit.inputs).toContainEqual({ name: 'because', value: { kind: 'choice', value: reason } });
  });
  test('a long root in less than half of its depth wants a raised bed', () => {
    const parsnip = cropLike({
      soil: { ph: { low: 6, high: 7 }, looseDepth: q('18 in', 'length'), sources },
    });
    expect(soilFit(parsnip, { ...good, depth: deep('8 in') }).fit.value).toMatchObject({
      value: 'soil-raised-bed',
    });
  });
});

test('a leaf crop does not mind stones, clay or rock', () => {
  const poor: SoilRecord = { ...good, texture: 'clay', stones: 'many', depth: deep('4 in') };
  expect(soilFit(leaf, poor).fit.value).toMatchObject({ value: 'soil-fits' });
});

test('what is not on record', () => {
  expect(soilFit(cropLike(), good).fit.value).toEqual(none('no-soil-needs'));
  expect(soilFit(carrot, undefined).fit.value).toEqual(none('no-soil-on-record'));
});

test('a worse soil never fits better', () => {
  const rank = (soil: SoilRecord): number => {
    const { value } = soilFit(carrot, soil).fit;
    return value.kind === 'choice'
      ? soilFits.indexOf(value.value.replace(/^soil-/, '') as (typeof soilFits)[number])
      : NaN;
  };
  const arbitrary = fc.record({
    inches: fc.integer({ min: 2, max: 30 }),
    ph: fc.double({ min: 4, max: 6.8, noNaN: true }),
    stones: fc.constantFrom('none', 'some', 'many' as const),
  });
  fc.assert(
    fc.property(arbitrary, ({ inches, ph, stones }) => {
      const soil: SoilRecord = { ...good, ph, stones, depth: deep(`${inches} in`) };
      expect(rank(soil)).toBeGreaterThanOrEqual(0);
      expect(rank({ ...soil, depth: deep(`${inches - 1} in`) })).toBeGreaterThanOrEqual(rank(soil));
      expect(rank({ ...soil, ph: ph - 0.5 })).toBeGreaterThanOrEqual(
        rank({ ...soil, ph: Math.min(ph, 6.8) }),
      );
      expect(rank({ ...soil, stones: 'many' })).toBeGreaterThanOrEqual(rank(soil));
      expect(rank({ ...soil, texture: 'clay' })).toBeGreaterThanOrEqual(rank(soil));
    }),
  );
});
