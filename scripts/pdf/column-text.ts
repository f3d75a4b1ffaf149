import type { ColumnText, Item, Mark, Piece } from './items.ts';
import { inside, type Context } from './measure.ts';
import { evenHeight } from './paginate.ts';

/** Shorter columns than this at the foot of a page are no text to read down. */
const leastStartLines = 6;

export interface ColumnTextOptions {
  readonly across: number;
  readonly leastStart?: number;
  readonly backing?: (height: number) => readonly Mark[];
  readonly groupHead?: Piece;
}

/** The place of the first of a number of equal columns; what goes into any of them is set there. */
export function firstColumn(context: Context, across: number): Context {
  return inside(context, context.x, columnWidth(context, across));
}

/** Items set in the first column, to run through all of them. */
export function columnText(items: readonly Item[], context: Context, options: ColumnTextOptions): ColumnText {
  const { across, leastStart = leastStartLines * context.design.type.small.leadingPt, ...rest } = options;
  const step = columnWidth(context, across) + context.design.grid.gutterPt * gutters;
  return {
    kind: 'column-text',
    before: 0,
    keepWithNext: false,
    items,
    shifts: Array.from({ length: across }, (_, column) => column * step),
    height: evenHeight(items, across),
    leastStart,
    ...rest,
  };
}

/** Columns of text lie further apart than those of a table: a line of one must not be read on in the next. */
const gutters = 1.5;

function columnWidth(context: Context, across: number): number {
  return (context.width - context.design.grid.gutterPt * gutters * (across - 1)) / across;
}
