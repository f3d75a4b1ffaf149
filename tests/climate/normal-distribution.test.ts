import { assert, double, property } from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalQuantile, normalShareBelow } from '../../scripts/climate/normal-distribution.ts';

describe('normal quantiles', () => {
  // 0.25, 0.001 and 1e-20 are the check values of AS 241 (Wichura 1988), from memory; the rest are table values.
  test.each([
    [0.25, -0.6744897501960817],
    [0.001, -3.090232306167814],
    [1e-20, -9.262340089798408],
    [0.5, 0],
    [0.9, 1.2815515655446004],
    [0.975, 1.959963984540054],
  ])('%d', (share, z) => {
    expect(normalQuantile(share)).toBeCloseTo(z, 14);
  });

  test('the ends of the range, and past them', () => {
    expect([0, 1, -0.1, 1.1, NaN].map(normalQuantile)).toEqual([-Infinity, Infinity, NaN, NaN, NaN]);
  });

  test('a share and its quantile belong together, tails included', () => {
    assert(
      property(double({ min: 1e-12, max: 1 - 1e-12, noNaN: true }), (share) => {
        expect(normalShareBelow(normalQuantile(share))).toBeCloseTo(share, 12);
      }),
    );
  });
});

describe('share below', () => {
  test.each([
    ['the middle', 0, 0.5],
    ['one deviation', 1, 0.8413447460685429],
    ['two below', -2, 0.022750131948179212],
    ['eight below, in the far tail', -8, 6.220960574271785e-16],
  ])('%s', (_, z, share) => {
    expect(Math.abs(normalShareBelow(z) / share - 1)).toBeLessThan(1e-7);
  });
});
