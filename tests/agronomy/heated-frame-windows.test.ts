import { describe, expect, test } from 'vitest';
import { coldFrameWindows, publishedFrameGain } from '../../scripts/agronomy/frame-windows.ts';
import { heatedFrameWindows, type HeatedFrame } from '../../scripts/agronomy/heated-frame-windows.ts';
import { plantingWindows, type WindowClimate } from '../../scripts/agronomy/windows.ts';
import { none, quantity, type Finding } from '../../scripts/findings/finding.ts';
import { cropLike, q } from './crop.ts';
import { given, soilYear } from './years.ts';

const sources = ['a-source'];
const climate: WindowClimate = { lastFreeze: given('last', 120), firstFreeze: () => given('first', 290) };
/** Opens two weeks before the last freeze: day 106. */
const crop = cropLike();
const windows = plantingWindows(crop, climate);

function gain(season: 'spring' | 'fall', value: Finding['value']): Finding {
  return { id: `frame-heat.gain.${season}`, value, method: 'a-model', inputs: [], sources: ['heat-source'] };
}

function frame(changes: Partial<HeatedFrame> = {}): HeatedFrame {
  return {
    gain: { spring: gain('spring', quantity('duration', 20)), fall: gain('fall', quantity('duration', 15)) },
    soil: soilYear({ meanF: 70, halfRangeF: 5 }),
    climate,
    published: publishedFrameGain,
    ...changes,
  };
}

const spring = (framed: HeatedFrame, of = crop, its = windows) =>
  heatedFrameWindows(of, its, framed).find(({ id }) => id.endsWith('.spring'))!;

describe('in spring', () => {
  test('the offset is counted from the last freeze moved by the gain, up to the day before the garden', () => {
    expect(spring(frame())).toMatchObject({
      id: 'testcrop.frame-sow.spring',
      value: { kind: 'date-range', from: 86, to: 105 },
      method: 'window.frame-spring-heat',
    });
  });

  test('the workings name the model and what is published beside it', () => {
    const { inputs, sources: cited } = spring(frame());
    expect(inputs.find(({ name }) => name === 'frame-gain')?.finding).toBe('frame-heat.gain.spring');
    expect(inputs.find(({ name }) => name === 'frame-gain-published')?.value).toEqual(
      quantity('duration', 28, 42),
    );
    expect(cited).toContain('heat-source');
  });

  test('soil inside that is too cold for the seed holds it back', () => {
    const cold = cropLike({
      soilTemperature: {
        minimum: q('50 F', 'temperature'),
        optimum: q('60-70 F', 'temperature'),
        maximum: q('90 F', 'temperature'),
        sources,
      },
    });
    // The swing about 50 F crosses it a quarter of a year after January 20: day 20 + 91.25.
    const framed = frame({ soil: soilYear({ meanF: 50, halfRangeF: 20 }) });
    const late = plantingWindows(cold, { ...climate, lastFreeze: given('last', 140) });
    const held = spring({ ...framed, climate: { ...climate, lastFreeze: given('last', 140) } }, cold, late);
    expect(held.value).toEqual({ kind: 'date-range', from: 112, to: 125 });
  });

  test.each([
    { name: 'a frame that gains no day', days: 0 },
    { name: 'a frame that is colder than the open', days: -3 },
  ])('$name has no window', ({ days }) => {
    const framed = frame({
      gain: {
        spring: gain('spring', quantity('duration', days)),
        fall: gain('fall', quantity('duration', days)),
      },
    });
    expect(heatedFrameWindows(crop, windows, framed).map(({ value }) => value)).toEqual([
      none('no-gain-in-frame'),
      none('no-gain-in-frame'),
    ]);
  });

  test('young plants wait for the nights that they do not stand, moved by the gain', () => {
    const plants = cropLike({
      plantings: [{ method: 'transplant', age: { value: q('4 weeks', 'duration'), sources }, fall: false }],
      figures: [{ id: 'cold-limit', temperature: q('32 F', 'temperature'), sources }],
    } as never);
    const cold: WindowClimate = { ...climate, lastFreezeAt: () => given('last', 120) };
    const its = plantingWindows(plants, cold);
    expect(its[0]!.plant.value).toMatchObject({ from: 120 });
    expect(spring(frame({ climate: cold }), plants, its).value).toEqual({
      kind: 'date-range',
      from: 100,
      to: 119,
    });
  });
});

test('in fall the last day in the garden is moved by the gain', () => {
  // 290 less 70 days and 14 for short days.
  expect(heatedFrameWindows(crop, windows, frame())[1]).toMatchObject({
    value: { kind: 'date-range', from: 207, to: 206 + 15 },
    method: 'window.frame-fall-heat',
  });
});

test('where the heat gives no days the published gain stands', () => {
  const never = { spring: gain('spring', none('freeze-never')), fall: gain('fall', none('freeze-never')) };
  expect(spring(frame({ gain: never }))).toMatchObject({
    value: { kind: 'date-range', from: 106 - 28, to: 105 },
    method: 'window.frame-spring',
  });
});

test('a window that the garden does not have is none, for the reason that any frame has', () => {
  const always: WindowClimate = {
    ...climate,
    lastFreeze: { ...climate.lastFreeze, value: none('freeze-all-year') },
  };
  const its = plantingWindows(crop, always);
  const found = spring(frame({ climate: always }), crop, its);
  expect(found.value.kind).toBe('none');
  expect(found).toEqual(coldFrameWindows(crop, its, publishedFrameGain)[0]);
});
