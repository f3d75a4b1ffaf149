import { piece, type Mark, type Piece } from './items.ts';
import { inside, type Context } from './measure.ts';
import { baseline } from './text.ts';

export interface Cell {
  readonly height: number;
  readonly marks: readonly Mark[];
}

export interface Row extends Cell {
  readonly baseline: number;
}

/** Equal widths for a number of cells with a gutter between them. */
export function equalWidths(count: number, context: Context): number[] {
  const gutter = context.design.grid.gutterPt;
  return new Array<number>(count).fill((context.width - gutter * (count - 1)) / count);
}

/**
 * Sets things in rows of cells, left to right and then down, which is also the order of reading. A row is as high
 * as its highest cell.
 */
export function inRows<T>(
  things: readonly T[],
  widths: readonly number[],
  context: Context,
  measureCell: (thing: T, context: Context) => Cell,
): Row[] {
  const gutter = context.design.grid.gutterPt;
  const lefts = widths.map((_, place) => sum(widths.slice(0, place)) + place * gutter);
  const rows: Row[] = [];
  for (let start = 0; start < things.length; start += widths.length) {
    const cells = things
      .slice(start, start + widths.length)
      .map((thing, place) => measureCell(thing, inside(context, context.x + lefts[place]!, widths[place]!)));
    rows.push({
      height: Math.max(...cells.map((cell) => cell.height)),
      marks: cells.flatMap((cell) => cell.marks),
      baseline: baseline(context, context.design.type.text),
    });
  }
  return rows;
}

/** Rows as pieces with space between them; no single row stays behind at either end. */
export function rowPieces(rows: readonly Row[], gap: number): Piece[] {
  return rows.map((row, index) =>
    piece(row.height, row.marks, {
      before: index === 0 ? 0 : gap,
      baseline: row.baseline,
      keepWithNext: rows.length > 1 && (index === 0 || index === rows.length - 2),
    }),
  );
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
