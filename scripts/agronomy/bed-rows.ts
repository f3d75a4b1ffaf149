/**
 * Rows across a bed: parallel to its long side, east to west, the tallest crop on the poleward side so that it
 * shades nothing (north in the northern hemisphere, south in the southern).
 */
import type { Crop } from '../records/schemas/crop.ts';
import type { BedLayoutKind } from '../records/schemas/projects/sow.ts';
import { closestRows, linesAcross, spreadRows, type RowField, type RowGap } from './row-places.ts';

/**
 * A row keeps this far from a wall: room for a hand, and soil that a wall does not dry or chill. Common practice.
 */
export const edgeMm = 101.6;

/** How far apart the rows of an offset layout lie, by the distance of the plants: the height of a triangle. */
export const offsetRowShare = Math.sqrt(3) / 2;

/** Of the room that is left over, either edge gets half of what the distance between two rows gets. */
const edgeShare = 0.5;

export interface WantedRows {
  readonly crop: Crop;
  readonly rows: number;
  /** `rows` where it is not given. */
  readonly layout?: BedLayoutKind;
  /** Wanted on the sunny side whatever its height. */
  readonly side?: 'equator';
}

/** Drip lines that lie evenly over the depth of a bed; a row keeps at least `offsetMm` from each. */
export interface BedLines {
  readonly count: number;
  readonly offsetMm: number;
}

export interface BedRow {
  readonly crop: Crop;
  /** From the poleward wall to the middle of the row. */
  readonly fromPolewardMm: number;
  /** True for the tallest crop of the bed, if it is taller than another. */
  readonly tall: boolean;
  readonly layout: BedLayoutKind;
  /** True for every second row of an offset layout: its plants stand half a space further along. */
  readonly moved: boolean;
}

export type BedLayout =
  | { readonly kind: 'rows'; readonly rows: readonly BedRow[] }
  | {
      readonly kind: 'too-narrow';
      readonly neededMm: number;
      readonly depthMm: number;
      readonly fits: number;
    };

type PlainRow = Omit<BedRow, 'fromPolewardMm' | 'tall'>;

/**
 * Lays rows out over the depth of a bed. Two neighbouring rows stand half the sum of their distances apart: the narrowest
 * published row spacing of a crop in rows, the widest in-row spacing of one in squares, 0.866 of it for one in offset
 * rows. What is left over is shared out evenly between rows and edges; squares and offset rows of one crop keep their distance.
 * Rows keep off drip lines. Too many rows are refused, with how many rows in all would fit.
 */
export function layOutRows(
  wanted: readonly WantedRows[],
  depthMm: number,
  { lines }: { readonly lines?: BedLines | undefined } = {},
): BedLayout {
  const order = inOrder(wanted);
  const gaps = gapsOf(order);
  const field = fieldOf(order, depthMm, lines);
  const places = spreadRows(field, gaps, { edgeShare });
  if (!places) {
    const closest = closestRows(field, gaps);
    const neededMm = closest.at(-1)! + depthMm - field.to;
    return { kind: 'too-narrow', neededMm, depthMm, fits: fitting(order, depthMm, lines) };
  }
  const heights = order.map(({ crop }) => crop.height.value.high);
  const [tallest, lowest] = [Math.max(...heights), Math.min(...heights)];
  return {
    kind: 'rows',
    rows: order.map((row, index) => ({
      ...row,
      fromPolewardMm: places[index]!,
      tall: lowest < tallest && row.crop === order[heights.indexOf(tallest)]!.crop,
    })),
  };
}

/**
 * Places of the plants of a row along the bed, from its west end: as many as whole spacings fit, the row in the middle of the
 * length, each plant half a space or more from either end; one plant in the middle where not even one space fits. A moved
 * row has its plants between those of its neighbours.
 */
export function plantsAlongRow(row: {
  readonly lengthMm: number;
  /** Above 0, or a RangeError. */
  readonly spacingMm: number;
  readonly moved?: boolean;
}): readonly number[] {
  const { lengthMm, spacingMm, moved = false } = row;
  if (!(spacingMm > 0)) throw new RangeError(`no such plant spacing: ${spacingMm} mm`);
  const number = Math.max(1, Math.floor(lengthMm / spacingMm + 1e-6));
  const first = (lengthMm - (number - 1) * spacingMm) / 2;
  const straight = Array.from({ length: number }, (_, index) => first + index * spacingMm);
  if (!moved) return straight;
  const between = straight.map((place) => place + spacingMm / 2);
  const inside = between.filter((place) => place <= lengthMm - spacingMm / 2 + 1e-6);
  return inside.length > 0 ? inside : straight;
}

/** Where the plants of a row of a bed stand, at the widest published in-row spacing. */
export function plantsOfRow({ crop, moved }: PlainRow, lengthMm: number): readonly number[] {
  return plantsAlongRow({ lengthMm, spacingMm: crop.spacing.inRow.value.high, moved });
}

/** The tallest first, from the poleward side; what is wanted on the sunny side comes last. */
function inOrder(wanted: readonly WantedRows[]): readonly PlainRow[] {
  const tallestFirst = [...wanted].sort((a, b) => b.crop.height.value.high - a.crop.height.value.high);
  return [
    ...tallestFirst.filter(({ side }) => side === undefined),
    ...tallestFirst.filter(({ side }) => side === 'equator'),
  ].flatMap(({ crop, rows, layout = 'rows' }) =>
    Array.from({ length: rows }, (_, index) => ({
      crop,
      layout,
      moved: layout === 'offset' && index % 2 === 1,
    })),
  );
}

function fieldOf(order: readonly PlainRow[], depthMm: number, lines: BedLines | undefined): RowField {
  return {
    from: edgeOf(order[0]!),
    to: depthMm - edgeOf(order.at(-1)!),
    linesMm: linesAcross(depthMm, lines?.count ?? 0),
    offsetMm: lines?.offsetMm ?? 0,
  };
}

/** Squares and offset rows begin half a space from the edge, like their plants at the ends. */
function edgeOf({ crop, layout }: PlainRow): number {
  return layout === 'rows' ? edgeMm : crop.spacing.inRow.value.high / 2;
}

function gapsOf(order: readonly PlainRow[]): readonly RowGap[] {
  return order.slice(1).map((row, index) => {
    const before = order[index]!;
    const stretches = row.crop !== before.crop || row.layout === 'rows';
    return { leastMm: (apartMm(before) + apartMm(row)) / 2, stretches };
  });
}

function apartMm({ crop, layout }: PlainRow): number {
  const { inRow, betweenRows } = crop.spacing;
  if (layout === 'rows') return betweenRows.value.low;
  return inRow.value.high * (layout === 'offset' ? offsetRowShare : 1);
}

function fitting(order: readonly PlainRow[], depthMm: number, lines: BedLines | undefined): number {
  for (let rows = order.length; rows > 0; rows -= 1) {
    const some = order.slice(0, rows);
    if (spreadRows(fieldOf(some, depthMm, lines), gapsOf(some))) return rows;
  }
  return 0;
}
