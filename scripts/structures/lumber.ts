/**
 * What a board of a nominal size measures once it is dressed and dry. Source `ps-20-softwood`: Voluntary Product Standard
 * PS 20, American Softwood Lumber Standard, minimum dressed dry sizes; tests/published/lumber.test.ts holds the whole table.
 */
import { toHeld } from '../quantities/units.ts';
import { woodDensityGPerMm3 } from './practice.ts';

export const lumberSource = 'ps-20-softwood';

export interface DressedSize {
  readonly thicknessMm: number;
  readonly widthMm: number;
}

/** Dressed inches of each nominal inch: below 2 in it is the thickness of boards, up to 6 in of timbers. */
const thicknesses: Readonly<Record<number, number>> = { 1: 0.75, 2: 1.5, 4: 3.5, 6: 5.5 };
const widths: Readonly<Record<number, number>> = {
  2: 1.5,
  3: 2.5,
  4: 3.5,
  6: 5.5,
  8: 7.25,
  10: 9.25,
  12: 11.25,
};

/**
 * The dressed size of `1x2` to `1x12`, `2x2` to `2x12`, `4x4` and `6x6`, in millimetres; undefined for any other, since
 * thicker and wider timbers are not sold for garden work.
 */
export function dressedSize(nominal: string): DressedSize | undefined {
  const match = /^(\d+)x(\d+)$/.exec(nominal);
  if (!match) return undefined;
  const [thick, wide] = [Number(match[1]), Number(match[2])];
  const thickness = thicknesses[thick];
  const width = widths[wide];
  const sold = thick <= 2 ? wide >= 2 : thick === wide;
  if (thickness === undefined || width === undefined || !sold) return undefined;
  return { thicknessMm: toHeld(thickness, 'in'), widthMm: toHeld(width, 'in') };
}

/** The same for a size that the schema of a record allows; another is a mistake of the program. */
export function sizeOf(nominal: string): DressedSize {
  const size = dressedSize(nominal);
  if (!size) throw new TypeError(`${nominal} is no size of lumber`);
  return size;
}

/** Mass of air-dry softwood in grams, from the lightest to the heaviest that is usual. Source `softwood-density`. */
export function woodMassG(volumeMm3: number): { readonly low: number; readonly high: number } {
  return { low: volumeMm3 * woodDensityGPerMm3.low, high: volumeMm3 * woodDensityGPerMm3.high };
}
