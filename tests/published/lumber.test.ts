/**
 * Voluntary Product Standard PS 20-05, American Softwood Lumber Standard, U.S. Department of Commerce, 2005: minimum dressed dry
 * sizes in inches, read in the tables at sizes.com/materials/lumberSoftDimen_US.htm and in a reprint of the standard's
 * table for 1x4 to 2x12 and 4x4. A size is a definition, so the tolerance is none but that of floating point.
 *
 * The rule behind the table: nominal 5 and 6 in are half an inch less, 7 in and more three quarters less.
 */
import { describe, expect, test } from 'vitest';
import { dressedSize } from '../../scripts/structures/lumber.ts';
import { slopeOf } from '../../scripts/structures/lumber-frame-layout.ts';

const table: readonly (readonly [nominal: string, thickness: number, width: number])[] = [
  ['1x2', 0.75, 1.5],
  ['1x3', 0.75, 2.5],
  ['1x4', 0.75, 3.5],
  ['1x6', 0.75, 5.5],
  ['1x8', 0.75, 7.25],
  ['1x10', 0.75, 9.25],
  ['1x12', 0.75, 11.25],
  ['2x2', 1.5, 1.5],
  ['2x3', 1.5, 2.5],
  ['2x4', 1.5, 3.5],
  ['2x6', 1.5, 5.5],
  ['2x8', 1.5, 7.25],
  ['2x10', 1.5, 9.25],
  ['2x12', 1.5, 11.25],
  ['4x4', 3.5, 3.5],
  ['6x6', 5.5, 5.5],
];

describe('the dressed size of lumber by PS 20', () => {
  test.each(table)('%s is %d by %d in', (nominal, thickness, width) => {
    const size = dressedSize(nominal)!;
    expect(size.thicknessMm / 25.4).toBeCloseTo(thickness, 9);
    expect(size.widthMm / 25.4).toBeCloseTo(width, 9);
  });

  test.each(['5x5', '2x5', '4x2', '2x14', '3x6', 'x4', '2 x 4', ''])('“%s” is no size of it', (nominal) => {
    expect(dressedSize(nominal)).toBeUndefined();
  });
});

/**
 * 18 in at the back, 12 at the front, 6 ft deep (Kansas State extension advice, Leavenworth Times, 2013): a rise of 6 in over
 * 72 is 4.76 degrees, and 72.25 in down the slope. Tolerance 0.05 degree and 1/16 in, what a carpenter can lay out.
 */
test('the slope of the frame that extension advice gives', () => {
  const { slopeDeg, runMm } = slopeOf({ thicknessMm: 0, riseMm: 6 * 25.4, spanMm: 72.25 * 25.4 });
  expect(Math.abs(slopeDeg - 4.76)).toBeLessThan(0.05);
  expect(Math.abs(runMm / 25.4 - 72)).toBeLessThan(1 / 16);
});
