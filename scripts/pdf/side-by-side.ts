import { piece, shifted, type Mark, type Piece } from './items.ts';
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

/**
 * Sets things in columns of about equal height, down the first and on to the next, which is also the order of
 * reading. The columns are one piece and never break over pages.
 */
export function inColumns<T>(
  things: readonly T[],
  widths: readonly number[],
  context: Context,
  options: {
    readonly gap: number;
    readonly heightOf: (thing: T, context: Context) => number;
    readonly measureCell: (thing: T, context: Context) => Cell;
  },
): Cell {
  const { gap, heightOf, measureCell } = options;
  const gutter = context.design.grid.gutterPt;
  const lefts = widths.map((_, place) => sum(widths.slice(0, place)) + place * gutter);
  // Columns are equally wide, so a thing is as high in one as in another.
  const heights = things.map((thing) => heightOf(thing, inside(context, context.x, widths[0]!)) + gap);
  const columnOf = balanced(heights, widths.length);
  const tops = new Array<number>(widths.length).fill(0);
  const marks = things.flatMap((thing, index): readonly Mark[] => {
    const place = columnOf[index]!;
    const cell = measureCell(thing, inside(context, context.x + lefts[place]!, widths[place]!));
    const top = tops[place]!;
    tops[place] = top + cell.height + gap;
    return shifted(cell.marks, top);
  });
  return { height: Math.max(...tops) - gap, marks };
}

/** The column of each thing: a column is left when its share of the whole height is reached. */
function balanced(heights: readonly number[], columns: number): number[] {
  const share = sum(heights) / columns;
  let before = 0;
  return heights.map((height) => {
    const column = Math.min(columns - 1, Math.floor((before + height / 2) / share));
    before += height;
    return column;
  });
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
