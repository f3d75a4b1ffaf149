import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coldFrameWindows, publishedFrameGain } from '../../scripts/agronomy/frame-windows.ts';
import { plantingWindows, type WindowClimate } from '../../scripts/agronomy/windows.ts';
import { none } from '../../scripts/findings/finding.ts';
import { cropLike, q } from './crop.ts';
import { given } from './years.ts';

const sources = ['a-source'];
const climate: WindowClimate = {
  lastFreeze: given('last', 120),
  firstFreeze: () => given('first', 290),
};
const gain = {
  earlier: { low: 21, high: 35 },
  later: { low: 28, high: 42 },
  sources: ['frame-source'],
};

describe('a cold frame adds days to the garden', () => {
  const crop = cropLike({
    plantings: [
      { method: 'direct-sow', fall: true },
      { method: 'transplant', age: { value: q('4 weeks', 'duration'), sources }, fall: false },
      { method: 'sets', fall: false },
    ],
  });
  const windows = plantingWindows(crop, climate);
  const framed = coldFrameWindows(crop, windows, gain);
  test('for seed and plants, not for sets', () => {
    expect(framed.map(({ id }) => id)).toEqual([
      'testcrop.frame-sow.spring',
      'testcrop.frame-sow.fall',
      'testcrop.frame-set-out.spring',
    ]);
  });
  test('in spring before the window, by the gain that can be counted on', () => {
    expect(framed[0]).toMatchObject({
      value: { kind: 'date-range', from: 106 - 21, to: 105 },
      method: 'window.frame-spring',
    });
    expect(framed[0]!.sources).toEqual(expect.arrayContaining(['frame-source', 'a-table']));
    expect(framed[0]!.inputs.map(({ name }) => name)).toEqual(['garden-window', 'frame-gain']);
  });
  test('in fall after it', () => {
    // 290 less 70 days and 14 for short days is the last day in the garden.
    expect(framed[1]!.value).toEqual({ kind: 'date-range', from: 207, to: 206 + 28 });
  });
});

test('where no freeze sets the dates of the garden, the frame gains nothing', () => {
  const never = { ...climate, lastFreeze: given('last', undefined) };
  const crop = cropLike({ plantings: [{ method: 'direct-sow', fall: false }] });
  expect(coldFrameWindows(crop, plantingWindows(crop, never), gain)[0]!.value).toEqual(
    none('no-frame-needed'),
  );
});

test('a frame that gains nothing adds nothing', () => {
  const nothing = { ...gain, earlier: { low: 0, high: 7 } };
  const crop = cropLike({ plantings: [{ method: 'direct-sow', fall: false }] });
  expect(coldFrameWindows(crop, plantingWindows(crop, climate), nothing)).toEqual([]);
});

test('more gain never opens later in spring, nor closes sooner in fall', () => {
  const crop = cropLike();
  const windows = plantingWindows(crop, climate);
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 30 }), (low, more) => {
      const by = (days: number) =>
        coldFrameWindows(crop, windows, {
          ...gain,
          earlier: { low: days, high: days },
          later: { low: days, high: days },
        }).map(({ value }) => (value.kind === 'none' ? undefined : value));
      const [spring, fall] = by(low);
      const [earlier, later] = by(low + more);
      expect(earlier!.from).toBeLessThanOrEqual(spring!.from);
      expect(later!.to).toBeGreaterThanOrEqual(fall!.to);
    }),
  );
});

test('the published gain: a month that can be counted on, about 45 days at the most', () => {
  // Houseplants Guru: a month earlier; Cornell Ag Connection 2011: up to 45 days at each end. In whole weeks.
  expect(publishedFrameGain.earlier.low).toBeGreaterThanOrEqual(28);
  expect(publishedFrameGain.earlier.high).toBeLessThanOrEqual(45);
  expect(publishedFrameGain.later.high).toBeLessThanOrEqual(45);
});
