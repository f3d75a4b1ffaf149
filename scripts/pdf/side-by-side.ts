import type { Mark } from './items.ts';
import { inside, type Context } from './measure.ts';
import { baseline } from './text.ts';

export interface Cell {
  readonly height: number;
  readonly marks: readonly Mark[];
}

export interface Row extends Cell {
  readonly baseline: number;
}

/**
 * Sets things in rows of equal cells, left to right and then down, which is also the order of reading. A row is
 * as high as its highest cell.
 */
export function inRows<T>(
  things: readonly T[],
  count: number,
  context: Context,
  measureCell: (thing: T, context: Context, index: number) => Cell,
): Row[] {
  const gutter = context.design.grid.gutterPt;
  const width = (context.width - gutter * (count - 1)) / count;
  const rows: Row[] = [];
  for (let start = 0; start < things.length; start += count) {
    const cells = things
      .slice(start, start + count)
      .map((thing, place) =>
        measureCell(thing, inside(context, context.x + place * (width + gutter), width), start + place),
      );
    rows.push({
      height: Math.max(...cells.map((cell) => cell.height)),
      marks: cells.flatMap((cell) => cell.marks),
      baseline: baseline(context, context.design.type.text),
    });
  }
  return rows;
}
