/** Where the dates of the freeze band are written, so that none touches another or the edge it does not belong to. */
import type { DayScale } from './day-scale.ts';
import type { ChanceRow, Edge } from './freeze-rows.ts';
import { estimateTextWidthMm, overlaps, textBox, type TextItem } from './text-width.ts';

export interface PlacedDate {
  readonly row: number;
  /** Line of text within the row. */
  readonly line: number;
  /** With its baseline at 0. */
  readonly item: TextItem;
}

export interface DatePlacement {
  readonly linesPerRow: 1 | 2;
  readonly dates: readonly PlacedDate[];
}

/**
 * Writes all dates of a season on the same side of their edges: on the shade if that goes for both seasons, else on the
 * open side, else each season on the side that goes. When spring and fall stand too close for one line, every row gets
 * two, the last freeze above the first.
 */
export function placeDates(rows: readonly ChanceRow[], scale: DayScale): DatePlacement {
  for (const sides of sidesInOrder) {
    const dates = rows.flatMap(({ edges }, row) =>
      edges.map((edge) => ({ row, line: 0, item: beside(edge, sides[edge.shadedSide]) })),
    );
    if (rows.every((row, index) => isClear(row, ofRow(dates, index), scale)))
      return { linesPerRow: 1, dates };
  }
  const dates = rows.flatMap(({ edges }, row) =>
    edges.map((edge) => ({
      row,
      line: edge.shadedSide === 'left' ? 0 : 1,
      item: aloneOnItsLine(edge, scale),
    })),
  );
  return { linesPerRow: 2, dates };
}

type Side = 'shaded' | 'open';

/** For the last freeze, whose shade lies to its left, and for the first. */
const sidesInOrder: readonly Readonly<Record<Edge['shadedSide'], Side>>[] = [
  { left: 'shaded', right: 'shaded' },
  { left: 'open', right: 'open' },
  { left: 'shaded', right: 'open' },
  { left: 'open', right: 'shaded' },
];

function beside({ x, label, shadedSide }: Edge, side: Side): TextItem {
  return (shadedSide === 'left') === (side === 'shaded')
    ? dateText(x - gapMm, label, 'end')
    : dateText(x + gapMm, label, 'start');
}

const dateText = (x: number, label: string, anchor: TextItem['anchor']): TextItem => ({
  kind: 'text',
  x,
  y: 0,
  text: label,
  anchor,
  style: 'label',
});

const ofRow = (dates: readonly PlacedDate[], row: number): readonly PlacedDate[] =>
  dates.filter((date) => date.row === row);

/** Inside the scale, off the edges of the row, and off each other. */
function isClear({ edges }: ChanceRow, dates: readonly PlacedDate[], scale: DayScale): boolean {
  const boxes = dates.map(({ item }) => textBox(item));
  return boxes.every(
    (box, index) =>
      isWithin(box, scale) &&
      edges.every(({ x }) => x < box.left || x > box.right) &&
      boxes.slice(index + 1).every((other) => !overlaps(widened(box), other)),
  );
}

const widened = <B extends { left: number; right: number }>(box: B): B => ({
  ...box,
  left: box.left - gapMm,
  right: box.right + gapMm,
});

function isWithin({ left, right }: { left: number; right: number }, { leftMm, widthMm }: DayScale): boolean {
  return left >= leftMm && right <= leftMm + widthMm;
}

/** Beside its edge if there is room on either side, else pushed in from the end of the scale. */
function aloneOnItsLine(edge: Edge, scale: DayScale): TextItem {
  const free = (['shaded', 'open'] as const)
    .map((side) => beside(edge, side))
    .find((item) => isWithin(textBox(item), scale));
  if (free) return free;
  const right = scale.leftMm + scale.widthMm;
  const furthest = Math.max(scale.leftMm, right - estimateTextWidthMm(edge.label, 'label'));
  return dateText(Math.min(Math.max(edge.x + gapMm, scale.leftMm), furthest), edge.label, 'start');
}

/** Between a date and its edge. */
const gapMm = 1.2;
