import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { successionSowings, sumOf } from '../../scripts/agronomy/succession.ts';
import { none, type DateFinding } from '../../scripts/findings/finding.ts';
import { cropLike } from './crop.ts';
import { degreeDaysOf, windowOf, type Swing } from './years.ts';

const inland: Swing = { meanF: 51, halfRangeF: 26 };
const crop = cropLike({ id: 'carrot' });
const days = (found: readonly DateFinding[]): number[] =>
  found.map(({ value }) => (value.kind === 'date' ? value.day : NaN));
const harvestOf = (finding: DateFinding): number => {
  const input = finding.inputs.find(({ name }) => name === 'harvest-day');
  return input?.value.kind === 'date' ? input.value.day : NaN;
};
const gaps = (values: readonly number[]): number[] =>
  values.slice(1).map((value, index) => value - values[index]!);

test('under steady warmth sowings are as far apart as harvests', () => {
  const found = successionSowings({
    crop,
    window: windowOf(100, 150),
    degreeDaysOn: () => 10,
    everyDays: 14,
  });
  expect(found.map(({ id }) => id)).toEqual([1, 2, 3, 4].map((n) => `carrot.succession.${n}`));
  expect(days(found)).toEqual([100, 114, 128, 142]);
  expect(found.map(harvestOf)).toEqual([165, 179, 193, 207]);
});

test('in spring the gap between sowings is wider than between harvests, in late summer narrower', () => {
  const degreeDaysOn = degreeDaysOf(inland, 40);
  const spring = days(successionSowings({ crop, window: windowOf(90, 150), degreeDaysOn, everyDays: 10 }));
  expect(gaps(spring)[0]).toBeGreaterThan(10);
  const late = days(successionSowings({ crop, window: windowOf(200, 225), degreeDaysOn, everyDays: 10 }));
  expect(gaps(late)[0]).toBeLessThan(10);
});

describe('what cannot be', () => {
  test('no window, with its reason', () => {
    const window = { ...windowOf(1, 2), value: none('no-last-freeze') };
    const found = successionSowings({ crop, window, degreeDaysOn: () => 10, everyDays: 14 });
    expect(found.map(({ id, value }) => [id, value])).toEqual([
      ['carrot.succession.1', none('no-last-freeze')],
    ]);
  });
  test('a year too cold to grow in', () => {
    const found = successionSowings({ crop, window: windowOf(1, 60), degreeDaysOn: () => 0, everyDays: 14 });
    expect(found[0]!.value).toEqual(none('no-growth-in-window'));
  });
  test.each([0, -7, NaN, 181])('an interval of %s days', (everyDays) => {
    expect(() =>
      successionSowings({ crop, window: windowOf(1, 60), degreeDaysOn: () => 1, everyDays }),
    ).toThrow(RangeError);
  });
});

test('harvests stand the wished days apart, and each sowing has its degree days by then, to within one day', () => {
  const arbitrary = fc.record({
    meanF: fc.integer({ min: 40, max: 70 }),
    halfRangeF: fc.integer({ min: 5, max: 30 }),
    from: fc.integer({ min: 60, max: 180 }),
    length: fc.integer({ min: 10, max: 80 }),
    everyDays: fc.integer({ min: 5, max: 30 }),
  });
  fc.assert(
    fc.property(arbitrary, ({ meanF, halfRangeF, from, length, everyDays }) => {
      const degreeDaysOn = degreeDaysOf({ meanF, halfRangeF }, 40);
      const found = successionSowings({
        crop,
        window: windowOf(from, from + length),
        degreeDaysOn,
        everyDays,
      });
      if (found[0]!.value.kind === 'none') return;
      const sown = days(found);
      expect(sown[0]).toBe(from);
      const needed = sumOf(degreeDaysOn, from, harvestOf(found[0]!));
      found.forEach((finding, index) => {
        const [day, harvest] = [sown[index]!, harvestOf(finding)];
        expect((harvest - harvestOf(found[0]!)) % everyDays).toBe(0);
        expect(day).toBeLessThanOrEqual(from + length);
        if (index > 0) expect(day).toBeGreaterThan(sown[index - 1]!);
        expect(sumOf(degreeDaysOn, day, harvest)).toBeGreaterThanOrEqual(needed - 1e-6);
        expect(sumOf(degreeDaysOn, day + 1, harvest)).toBeLessThanOrEqual(needed + 1e-6);
      });
    }),
  );
});
