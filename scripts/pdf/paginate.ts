import {
  itemHeight,
  naturalHeight,
  type Break,
  type Columns,
  type Group,
  type Item,
  type Piece,
} from './items.ts';

/** Height in points that a page has for content. */
export interface PageHeights {
  readonly first: number;
  readonly later: number;
}

export interface Placement {
  /** Counts from 0. */
  readonly page: number;
  /** From the top of the content area. */
  readonly top: number;
  readonly piece: Piece;
  /** A table head that stands here again. */
  readonly repeated: boolean;
}

export interface Pagination {
  /** In reading order; pieces of one page are in reading order too. */
  readonly placements: readonly Placement[];
  readonly pages: number;
  /** Pieces taller than a page, placed at the top of one and running past its end. */
  readonly overflowing: readonly Piece[];
}

/**
 * Gives every piece a page and a place. A page is turned before a piece that does not fit; a piece that is kept
 * with the next takes its followers along as far as they fit on one page.
 */
export function paginate(items: readonly Item[], heights: PageHeights): Pagination {
  const placer = new Placer(heights);
  placer.placeAll(items, { page: 0, y: 0, fresh: true, turn: false }, () => []);
  const pages = Math.max(0, ...placer.placements.map(({ page }) => page)) + 1;
  return { placements: placer.placements, pages, overflowing: placer.overflowing };
}

/** Where the next item goes. */
interface Cursor {
  readonly page: number;
  readonly y: number;
  /** Nothing but a repeated head stands above on this page. */
  readonly fresh: boolean;
  /** A page break was asked for; it happens when something follows. */
  readonly turn: boolean;
}

type Heads = readonly Piece[];

/** Rounding of sums must not turn a page. */
const tolerance = 1e-6;

class Placer {
  readonly placements: Placement[] = [];
  readonly overflowing: Piece[] = [];

  constructor(private readonly heights: PageHeights) {}

  /** `headsFor` gives the heads to repeat if a page is turned before the item at an index. */
  placeAll(items: readonly Item[], start: Cursor, headsFor: (index: number) => Heads): Cursor {
    return items.reduce<Cursor>((cursor, item, index) => {
      if (item.kind === 'break') return { ...cursor, turn: true };
      const heads = headsFor(index);
      return this.place(item, this.withRoom(items, index, cursor, heads), heads);
    }, start);
  }

  /** The cursor itself, or the top of the next page if the item at `index` belongs there. */
  private withRoom(items: readonly Item[], index: number, cursor: Cursor, heads: Heads): Cursor {
    const item = items[index];
    if (cursor.fresh || !item || item.kind === 'break') return { ...cursor, turn: false };
    if (cursor.turn) return this.turned(cursor, item, heads);
    const room = this.limit(cursor.page) - cursor.y - item.before + tolerance;
    if (this.chainHeight(items, index, 'whole') <= room) return cursor;
    const page = this.heights.later - headHeight(item, heads) + tolerance;
    if (!isKeptToPrevious(items, index) && this.chainHeight(items, index, 'whole') <= page) {
      return this.turned(cursor, item, heads);
    }
    const least = this.chainHeight(items, index, 'broken');
    if (least <= room) return cursor;
    const isBetterLater = least <= page || this.startHeight(item, 'broken') > room;
    return isBetterLater ? this.turned(cursor, item, heads) : cursor;
  }

  private place(item: Exclude<Item, Break>, cursor: Cursor, heads: Heads): Cursor {
    const start = { ...cursor, y: cursor.fresh ? cursor.y : cursor.y + item.before };
    switch (item.kind) {
      case 'piece':
        return this.placePiece(item, start);
      case 'group':
        return this.placeGroup(item, start, heads);
      case 'columns':
        return this.placeColumns(item, start, heads);
    }
  }

  private placePiece(item: Piece, { page, y }: Cursor): Cursor {
    this.placements.push({ page, top: y, piece: item, repeated: false });
    if (y + item.height > this.limit(page) + tolerance) this.overflowing.push(item);
    return { page, y: y + item.height, fresh: false, turn: false };
  }

  private placeGroup(item: Group, start: Cursor, heads: Heads): Cursor {
    const inner = item.repeatedHead ? [...heads, item.repeatedHead] : heads;
    return this.placeAll(item.items, start, (index) => (index === 0 ? heads : inner));
  }

  private placeColumns(item: Columns, start: Cursor, heads: Heads): Cursor {
    const ends = item.columns.map((flow) => this.placeAll(flow, start, () => heads));
    return ends.reduce((a, b) => (b.page > a.page || (b.page === a.page && b.y > a.y) ? b : a), start);
  }

  private turned(cursor: Cursor, item: Exclude<Item, Break>, heads: Heads): Cursor {
    const page = cursor.page + 1;
    let y = 0;
    for (const head of headsAbove(item, heads)) {
      this.placements.push({ page, top: y, piece: head, repeated: true });
      y += head.height;
    }
    return { page, y, fresh: true, turn: false };
  }

  private limit(page: number): number {
    return page === 0 ? this.heights.first : this.heights.later;
  }

  /** Height from an item to the first place where a page may end. */
  private chainHeight(items: readonly Item[], index: number, groups: GroupRule): number {
    const item = items[index];
    if (!item || item.kind === 'break') return 0;
    const next = items[index + 1];
    if (!item.keepWithNext || !next || next.kind === 'break') return this.startHeight(item, groups);
    return itemHeight(item) + next.before + this.chainHeight(items, index + 1, groups);
  }

  /** Least height that must stand on the page where an item starts. */
  private startHeight(item: Exclude<Item, Break>, groups: GroupRule): number {
    switch (item.kind) {
      case 'piece':
        return item.height;
      case 'group': {
        const whole = naturalHeight(item.items);
        const isWhole = groups === 'whole' && item.together && whole <= this.heights.later + tolerance;
        return isWhole ? whole : this.chainHeight(item.items, 0, groups);
      }
      case 'columns':
        return Math.max(0, ...item.columns.map((flow) => this.chainHeight(flow, 0, groups)));
    }
  }
}

/**
 * Whether groups that belong together count as a whole. They do, unless a heading and the group under it fit on no
 * page; then the group is broken rather than the heading left alone.
 */
type GroupRule = 'whole' | 'broken';

function isKeptToPrevious(items: readonly Item[], index: number): boolean {
  const previous = items[index - 1];
  return previous !== undefined && previous.kind !== 'break' && previous.keepWithNext;
}

const headsAbove = (item: Item, heads: Heads): Heads =>
  item.kind === 'piece' && item.withoutHead ? [] : heads;

const headHeight = (item: Item, heads: Heads): number =>
  headsAbove(item, heads).reduce((sum, head) => sum + head.height, 0);
