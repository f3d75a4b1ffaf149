/**
 * What measuring makes and pagination places: pieces that are never broken, with the rules that hold them
 * together. A piece carries its marks, in points from the left edge of the page and from its own top, y down.
 */
import type { FaceName } from '../document/design.ts';
import type { Step } from '../document/document.ts';
import type { PathCommand } from '../drawings/scene.ts';
import type { Leaf, Tag } from './tags.ts';

/** Content belongs to a leaf of the tag tree; everything else is an artifact of the layout or of the page. */
export type MarkPlace = Leaf | 'layout' | 'pagination';

export interface Ink {
  /** #rrggbb */
  readonly colour: string;
  readonly widthPt: number;
  readonly dashPt?: readonly number[];
}

export type Mark =
  | {
      readonly kind: 'text';
      readonly place: MarkPlace;
      readonly x: number;
      /** Alphabetic baseline. */
      readonly y: number;
      readonly text: string;
      readonly face: FaceName;
      readonly sizePt: number;
      readonly colour: string;
      /** What the text is short for. */
      readonly expansion?: string;
    }
  | {
      readonly kind: 'path';
      readonly place: MarkPlace;
      readonly commands: readonly PathCommand[];
      readonly stroke?: Ink;
      readonly fill?: string;
    }
  /** The area of a link, tied to its tag. */
  | {
      readonly kind: 'link';
      readonly tag: Tag;
      readonly href: string;
      readonly contents: string;
      readonly area: Area;
    }
  /** The area that a figure covers. */
  | { readonly kind: 'bounds'; readonly tag: Tag; readonly area: Area }
  /** An entry of the outline that leads to the top of its piece. */
  | { readonly kind: 'outline'; readonly level: number; readonly title: string };

export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Never broken. */
export interface Piece {
  readonly kind: 'piece';
  /** Space above, dropped at the top of a page. */
  readonly before: number;
  readonly height: number;
  readonly marks: readonly Mark[];
  /** No page may end with this piece. */
  readonly keepWithNext: boolean;
  /** First baseline from the top, for pieces that others align with. */
  readonly baseline?: number;
  /** At the top of a page it stands without the repeated head of its group: a note under a table. */
  readonly withoutHead?: boolean;
  /** At the top of a page this stands above it, under the repeated head: the heading of its group of rows. */
  readonly groupHead?: Piece;
  /** It may fill the foot of a page before a drawing or table that stands before it and has to wait for the next. */
  readonly rises?: true;
}

export interface Group {
  readonly kind: 'group';
  readonly before: number;
  readonly items: readonly Item[];
  /** Kept on one page if it fits on a page at all. */
  readonly together: boolean;
  /** Broken all the same where keeping it whole would leave much of a page empty. */
  readonly yields?: boolean;
  /** What comes after it may fill the page that it does not fit on, and it may fill a page so itself. */
  readonly floats?: boolean;
  readonly keepWithNext: boolean;
  /** Placed again at the top of every later page that the group runs over. */
  readonly repeatedHead?: Piece;
  /** What a step would be with its drawing under its words, where the page has room for that. */
  readonly enlarging?: Enlarging;
}

/** A step whose drawing can be larger than where it stands beside the words. */
export interface Enlarging {
  readonly step: Step;
  /** Of the step without its drawing, when that stands under the words; computed when asked for. */
  readonly wordsHeight: () => number;
  /** Of the drawing at its natural size, with the space above it left out. */
  readonly drawingHeight: number;
  readonly gap: number;
  /** How many times its natural size it has room for. */
  readonly most: number;
}

/** Flows that start side by side; what follows starts below the longest. */
export interface Columns {
  readonly kind: 'columns';
  readonly before: number;
  readonly columns: readonly (readonly Item[])[];
  readonly keepWithNext: boolean;
}

/**
 * Text that runs down one column and on to the next, and from the last column on to the next page. Where it ends, its
 * columns are of even length.
 */
export interface ColumnText {
  readonly kind: 'column-text';
  readonly before: number;
  readonly keepWithNext: boolean;
  /** Set for the first column. */
  readonly items: readonly Item[];
  /** How far to the right of the first each column lies. */
  readonly shifts: readonly number[];
  /** Height of even columns where no page breaks them. */
  readonly height: number;
  /** It does not start at the foot of a page with columns shorter than this. */
  readonly leastStart: number;
  /** What lies behind the columns of each page, given their height: the sides of a box. */
  readonly backing?: (height: number) => readonly Mark[];
  /** Stands above the columns of every later page, under the repeated head. */
  readonly groupHead?: Piece;
}

export interface Break {
  readonly kind: 'break';
}

export type Item = Piece | Group | Columns | ColumnText | Break;

export interface PieceOptions {
  readonly before?: number;
  readonly keepWithNext?: boolean;
  readonly baseline?: number;
  readonly withoutHead?: boolean;
  readonly groupHead?: Piece;
}

export function piece(height: number, marks: readonly Mark[], options: PieceOptions = {}): Piece {
  return { kind: 'piece', before: 0, keepWithNext: false, ...options, height, marks };
}

export function group(items: readonly Item[], options: Partial<Omit<Group, 'kind' | 'items'>> = {}): Group {
  return { kind: 'group', before: 0, together: false, keepWithNext: false, ...options, items };
}

export const columns = (flows: readonly (readonly Item[])[]): Columns => ({
  kind: 'columns',
  before: 0,
  columns: flows,
  keepWithNext: false,
});

/** The same items with another space above the first. */
export function withBefore(items: readonly Item[], before: number): readonly Item[] {
  const [first, ...rest] = items;
  if (!first || first.kind === 'break') return items;
  return [{ ...first, before }, ...rest];
}

/** The same items, the last kept with what follows. */
export function keptWithNext(items: readonly Item[]): readonly Item[] {
  const last = items.at(-1);
  if (!last || last.kind === 'break') return items;
  return [...items.slice(0, -1), { ...last, keepWithNext: true }];
}

/** Adds marks to the first piece, however deep it lies; a label that stands beside its item. */
export function withMarksOnFirst(items: readonly Item[], marks: readonly Mark[]): readonly Item[] {
  const [first, ...rest] = items;
  if (!first) return items;
  switch (first.kind) {
    case 'piece':
      return [{ ...first, marks: [...marks, ...first.marks] }, ...rest];
    case 'group':
    case 'column-text':
      return [{ ...first, items: withMarksOnFirst(first.items, marks) }, ...rest];
    case 'columns': {
      const [leading = [], ...others] = first.columns;
      return [{ ...first, columns: [withMarksOnFirst(leading, marks), ...others] }, ...rest];
    }
    case 'break':
      return [first, ...withMarksOnFirst(rest, marks)];
  }
}

/** The same items with a share of the space between them; what stands in boxes and cells keeps its own. */
export function tightened(items: readonly Item[], share: number): readonly Item[] {
  return items.map((item): Item => {
    if (item.kind === 'break') return item;
    const before = item.before * share;
    switch (item.kind) {
      case 'piece':
        return { ...item, before };
      case 'group':
      case 'column-text':
        return { ...item, before, items: tightened(item.items, share) };
      case 'columns':
        return { ...item, before, columns: item.columns.map((flow) => tightened(flow, share)) };
    }
  });
}

/** First baseline of the first piece, if it has one. */
export function firstBaseline(items: readonly Item[]): number | undefined {
  const first = items[0];
  if (!first || first.kind === 'break') return undefined;
  if (first.kind === 'piece') return first.baseline;
  return firstBaseline(first.kind === 'columns' ? (first.columns[0] ?? []) : first.items);
}

/** Height of items that no page breaks, space above the first left out. */
export function naturalHeight(items: readonly Item[]): number {
  return items.reduce((sum, item, index) => {
    if (item.kind === 'break') return sum;
    return sum + (index === 0 ? 0 : item.before) + itemHeight(item);
  }, 0);
}

/** Height of one item that no page breaks, without the space above it. */
export function itemHeight(item: Exclude<Item, Break>): number {
  switch (item.kind) {
    case 'piece':
      return item.height;
    case 'group':
      return naturalHeight(item.items);
    case 'columns':
      return Math.max(0, ...item.columns.map(naturalHeight));
    case 'column-text':
      return item.height;
  }
}

/**
 * Items set below each other as one block that nothing breaks: the inside of a cell. Cells are too narrow for text in
 * columns, which stays a single one here.
 */
export function stacked(items: readonly Item[]): {
  readonly height: number;
  readonly marks: readonly Mark[];
} {
  const marks: Mark[] = [];
  let y = 0;
  items.forEach((item, index) => {
    if (item.kind === 'break') return;
    if (index > 0) y += item.before;
    if (item.kind === 'piece') marks.push(...shifted(item.marks, y));
    if (item.kind === 'group') marks.push(...shifted(stacked(item.items).marks, y));
    if (item.kind === 'columns')
      item.columns.forEach((flow) => marks.push(...shifted(stacked(flow).marks, y)));
    if (item.kind === 'column-text') {
      const single = stacked(item.items);
      marks.push(...shifted(single.marks, y));
      y += single.height - item.height;
    }
    y += itemHeight(item);
  });
  return { height: y, marks };
}

/** Marks moved down and to the right. */
export function shifted(marks: readonly Mark[], dy: number, dx = 0): readonly Mark[] {
  if (dy === 0 && dx === 0) return marks;
  return marks.map((mark): Mark => {
    switch (mark.kind) {
      case 'text':
        return { ...mark, x: mark.x + dx, y: mark.y + dy };
      case 'path':
        return { ...mark, commands: mark.commands.map((command) => shiftedCommand(command, dx, dy)) };
      case 'link':
      case 'bounds':
        return { ...mark, area: { ...mark.area, x: mark.area.x + dx, y: mark.area.y + dy } };
      case 'outline':
        return mark;
    }
  });
}

/** The same marks as decoration, for a table head on a later page. */
export function asArtifacts(marks: readonly Mark[]): readonly Mark[] {
  return marks.flatMap((mark): Mark[] =>
    mark.kind === 'text' || mark.kind === 'path' ? [{ ...mark, place: 'pagination' }] : [],
  );
}

function shiftedCommand(command: PathCommand, dx: number, dy: number): PathCommand {
  switch (command[0]) {
    case 'M':
    case 'L':
      return [command[0], command[1] + dx, command[2] + dy];
    case 'C': {
      const [, x1, y1, x2, y2, x, y] = command;
      return ['C', x1 + dx, y1 + dy, x2 + dx, y2 + dy, x + dx, y + dy];
    }
    case 'Z':
      return command;
  }
}
