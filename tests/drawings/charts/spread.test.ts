import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spread } from '../../../scripts/drawings/charts/spread.ts';

describe('labels moved apart along a line', () => {
  it.each([
    ['that have room stay where they are', [10, 30, 50], [10, 30, 50]],
    ['at the same place stand side by side', [30, 30, 30], [10, 20, 30]],
    ['beyond the start come in', [-5, 40], [5, 40]],
    ['beyond the end come in', [20, 100], [20, 55]],
    ['out of order keep their places', [50, 10, 30], [50, 10, 30]],
  ])('%s', (_, middles, expected) => {
    expect(
      spread(
        middles.map((middle) => ({ middle, size: 10 })),
        0,
        60,
      ),
    ).toEqual(expected);
  });

  it('never overlap, and stay on a line that is long enough', () => {
    const wish = fc.record({
      middle: fc.integer({ min: -50, max: 150 }),
      size: fc.integer({ min: 1, max: 20 }),
    });
    fc.assert(
      fc.property(fc.array(wish, { maxLength: 5 }), (wishes) => {
        const placed = spread(wishes, 0, 100).map((middle, index) => ({ middle, size: wishes[index]!.size }));
        placed.sort((a, b) => a.middle - b.middle);
        placed.forEach(({ middle, size }, index) => {
          expect(middle - size / 2).toBeGreaterThanOrEqual(0);
          expect(middle + size / 2).toBeLessThanOrEqual(100);
          const next = placed[index + 1];
          if (next) expect(next.middle - next.size / 2).toBeGreaterThanOrEqual(middle + size / 2);
        });
      }),
    );
  });
});
