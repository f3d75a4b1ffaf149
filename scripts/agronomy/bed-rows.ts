/**
 * Rows across a bed: parallel to its long side, east to west, the tallest crop on the poleward side so that it
 * shades nothing (north in the northern hemisphere, south in the southern).
 */
import type { Crop } from '../records/schemas/crop.ts';

/**
 * A row keeps this far from a wall: room for a hand, and soil that a wall does not dry or chill. Common practice.
 */
export const edgeMm = 101.6;

export interface BedRow {
  readonly crop: Crop;
  /** From the poleward wall to the middle of the row. */
  readonly fromPolewardMm: number;
  /** True for the tallest crop of the bed, if it is taller than another. */
  readonly tall: boolean;
}

export type BedLayout =
  | { readonly kind: 'rows'; readonly rows: readonly BedRow[] }
  | {
      readonly kind: 'too-narrow';
      readonly neededMm: number;
      readonly depthMm: number;
      readonly fits: number;
    };

/**
 * Lays rows out over the depth of a bed. Two neighbouring rows stand half the sum of their (narrowest published)
 * row spacings apart; what is left over is shared out evenly between them. Too many rows are refused, with
 * how many rows in all would fit.
 */
export function layOutRows(
  wanted: readonly { readonly crop: Crop; readonly rows: number }[],
  depthMm: number,
): BedLayout {
  const tallestFirst = [...wanted].sort((a, b) => b.crop.height.value.high - a.crop.height.value.high);
  const order = tallestFirst.flatMap(({ crop, rows }) => Array.from({ length: rows }, () => crop));
  const tallest = tallestFirst[0]!.crop;
  const mixed = tallestFirst.some(({ crop }) => crop.height.value.high < tallest.height.value.high);
  const gaps = gapsOf(order);
  const needed = 2 * edgeMm + sum(gaps);
  if (needed > depthMm + 1e-6)
    return { kind: 'too-narrow', neededMm: needed, depthMm, fits: fitting(order, depthMm) };
  const share = gaps.length === 0 ? 0 : (depthMm - needed) / gaps.length;
  let at = gaps.length === 0 ? depthMm / 2 : edgeMm;
  const rows = order.map((crop, index): BedRow => {
    if (index > 0) at += gaps[index - 1]! + share;
    return { crop, fromPolewardMm: at, tall: mixed && crop === tallest };
  });
  return { kind: 'rows', rows };
}

function gapsOf(order: readonly Crop[]): number[] {
  return order.slice(1).map((crop, index) => {
    const before = order[index]!;
    return (before.spacing.betweenRows.value.low + crop.spacing.betweenRows.value.low) / 2;
  });
}

function fitting(order: readonly Crop[], depthMm: number): number {
  for (let rows = order.length; rows > 0; rows -= 1) {
    if (2 * edgeMm + sum(gapsOf(order.slice(0, rows))) <= depthMm + 1e-6) return rows;
  }
  return 0;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
