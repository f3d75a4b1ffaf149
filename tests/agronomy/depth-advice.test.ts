import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { depthAdvice, seedDiameterMm, type SoilRecord } from '../../scripts/agronomy/depth-advice.ts';
import { choice, none } from '../../scripts/findings/finding.ts';
import { soilTextures } from '../../scripts/records/schemas/region.ts';
import { cropLike, q } from './crop.ts';

const sources = ['a-source'];
const soil = (texture: SoilRecord['texture'], moisture: SoilRecord['moisture']): SoilRecord => ({
  texture,
  moisture,
  stones: 'none',
  depth: q('24 in', 'length'),
  ph: 6.5,
  source: 'a-survey',
});
const carrot = cropLike({
  depth: { value: q('1/4 to 1/2 in', 'length'), sources },
  seedsPerOunce: { low: 18000, high: 25000, sources: ['a-chart'] },
});
const [shallow, deep] = [6.35, 12.7];

describe('the end of the published range that suits the soil', () => {
  test.each([
    ['clay', 'moist', 'depth-shallow-heavy-soil', shallow, shallow],
    ['clay-loam', 'wet', 'depth-shallow-heavy-soil', shallow, shallow],
    ['loam', 'wet', 'depth-shallow-wet-soil', shallow, shallow],
    ['loam', 'moist', 'depth-published', shallow, deep],
    ['loam', 'dry', 'depth-deep-dry-soil', deep, deep],
    ['sand', 'moist', 'depth-deep-light-soil', deep, deep],
    ['sandy-loam', 'dry', 'depth-deep-light-soil', deep, deep],
    ['sand', 'wet', 'depth-published', shallow, deep],
    ['clay', 'dry', 'depth-published', shallow, deep],
  ] as const)('%s, %s: %s', (texture, moisture, why, from, to) => {
    const advice = depthAdvice(carrot, soil(texture, moisture));
    expect(advice.why.value).toEqual(choice(why));
    expect(advice.printed.value).toEqual(
      from === to
        ? { kind: 'quantity', dimension: 'length', value: from }
        : { kind: 'range', dimension: 'length', low: from, high: to },
    );
    expect(advice.printed.sources).toContain('a-survey');
  });
  test('one figure has no ends; no soil, no end', () => {
    expect(depthAdvice(cropLike(), soil('sand', 'dry')).why.value).toEqual(choice('depth-published-single'));
    expect(depthAdvice(carrot).why.value).toEqual(choice('depth-published'));
  });
});

describe('the rule beside it', () => {
  test('shallower than published for small seed, and the published figure is printed', () => {
    const advice = depthAdvice(carrot);
    expect(advice.ruleSays.value).toEqual(choice('rule-shallower'));
    expect(advice.rule.inputs.map(({ name }) => name)).toEqual(['seeds-per-ounce', 'seed-diameter']);
    expect(advice.printed.value).toEqual(advice.published.value);
  });
  test('agrees with, or is deeper than, a shallow figure', () => {
    const big = { ...carrot, seedsPerOunce: { low: 100, high: 100, sources } };
    expect(depthAdvice(big).ruleSays.value).toEqual(choice('rule-deeper'));
    const fit = { ...big, depth: { value: q('3/4 to 1 in', 'length'), sources } };
    expect(depthAdvice(fit).ruleSays.value).toEqual(choice('rule-agrees'));
  });
  test('without a seed count, and for sets, there is none', () => {
    expect(depthAdvice(cropLike()).rule.value).toEqual(none('no-seed-count'));
    expect(depthAdvice(cropLike()).ruleSays.value).toEqual(none('no-seed-count'));
    expect(depthAdvice({ ...carrot, emergence: { notSown: true } }).rule.value).toEqual(none('not-sown'));
  });
});

test('eight times the seeds in an ounce have half the diameter; no count is refused', () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 1e6, noNaN: true }), (count) => {
      expect(seedDiameterMm(8 * count) / seedDiameterMm(count)).toBeCloseTo(0.5, 9);
    }),
  );
  expect(() => seedDiameterMm(0)).toThrow(RangeError);
});

test('what is printed never leaves the published range', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...soilTextures),
      fc.constantFrom('dry', 'moist', 'wet' as const),
      (texture, moisture) => {
        const { value } = depthAdvice(carrot, soil(texture, moisture)).printed;
        const ends =
          value.kind === 'quantity' ? [value.value] : value.kind === 'range' ? [value.low, value.high] : [];
        expect(ends.length).toBeGreaterThan(0);
        for (const end of ends) expect([shallow, deep]).toContain(end);
      },
    ),
  );
});
