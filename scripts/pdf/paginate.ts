import {
  itemHeight,
  naturalHeight,
  piece,
  type Break,
  type Columns,
  type ColumnText,
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
  /** How far it is moved to the right of where it was set: into a later column. */
  readonly left: number;
  readonly piece: Piece;
  /** A table head that stands here again, or the sides of a box: no content of the sheet. */
  readonly repeated: boolean;
}

export interface Pagination {
  /** In reading order, but for what rises over a drawing; pieces of one page are in reading order too. */
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
  const placer = new Placer(pageRoom(heights));
  placer.placeAll(items, topOfFirst, () => []);
  const pages = Math.max(0, ...placer.placements.map(({ page }) => page)) + 1;
  return { placements: placer.placements, pages, overflowing: placer.overflowing };
}

/** By how many points of height the items are too much for one page; 0 where one page holds them. */
export function overrun(items: readonly Item[], heights: PageHeights): number {
  if (paginate(items, heights).pages === 1) return 0;
  const endless = paginate(items, { first: endlessPt, later: endlessPt });
  const ends = Array.from({ length: endless.pages }, (_, page) => bottomOf(endless.placements, page));
  return Math.max(0, ends.reduce((sum, end) => sum + end, 0) - heights.first);
}

/** Height of text in even columns that no page breaks. */
export function evenHeight(items: readonly Item[], across: number): number {
  const room = { limit: () => endlessPt, usual: endlessPt };
  const text = { items, shifts: new Array<number>(across).fill(0), height: 0, leastStart: 0 };
  const placer = new Placer(room);
  placer.placeColumnText({ kind: 'column-text', before: 0, keepWithNext: false, ...text }, topOfFirst, []);
  return bottomOf(placer.placements, 0);
}

const endlessPt = 1e7;

const bottomOf = (placements: readonly Placement[], page: number): number =>
  Math.max(
    0,
    ...placements.filter((each) => each.page === page).map(({ top, piece: { height } }) => top + height),
  );

/** Where the next item goes. */
interface Cursor {
  readonly page: number;
  readonly y: number;
  /** Nothing but a repeated head stands above on this page. */
  readonly fresh: boolean;
  /** A page break was asked for; it happens when something follows. */
  readonly turn: boolean;
}

const topOfFirst: Cursor = { page: 0, y: 0, fresh: true, turn: false };

type Heads = readonly Piece[];

/** What pages, or the columns of text in columns, have room for. */
interface Room {
  readonly limit: (page: number) => number;
  /** Of most pages: what does not fit here fits nowhere. */
  readonly usual: number;
}

const pageRoom = ({ first, later }: PageHeights): Room => ({
  limit: (page) => (page === 0 ? first : later),
  usual: later,
});

/** Rounding of sums must not turn a page. */
const tolerance = 1e-6;

/** A page is not left emptier than this for the sake of a table that may be broken. */
const wastedShare = 1 / 3;

/** Even columns are found to this height; lines are taller by far. */
const evenToPt = 0.5;

class Placer {
  readonly placements: Placement[] = [];
  readonly overflowing: Piece[] = [];

  constructor(private readonly room: Room) {}

  /** `headsFor` gives the heads to repeat if a page is turned before the item at an index. */
  placeAll(items: readonly Item[], start: Cursor, headsFor: (index: number) => Heads): Cursor {
    let cursor = start;
    for (let index = 0; index < items.length; index += 1) {
      const item = items[index]!;
      if (item.kind === 'break') {
        cursor = { ...cursor, turn: true };
        continue;
      }
      const rising = this.rising(items, index, cursor);
      if (rising > 0) {
        cursor = this.placeAfterRisen(items, index, rising, { cursor, heads: headsFor(index) });
        index += rising;
      } else {
        const heads = headsFor(index);
        cursor = this.place(item, this.withRoom(items, index, cursor, heads), heads);
      }
    }
    return cursor;
  }

  /** Text in columns: each column is placed like a page, and those of the last page are made even. */
  placeColumnText(item: ColumnText, start: Cursor, heads: Heads): Cursor {
    const across = item.shifts.length;
    const above = headHeight(item, heads);
    const roomOn = (page: number): number =>
      page === start.page ? this.room.limit(page) - start.y : this.room.limit(page) - above;
    const pageOf = (column: number): number => start.page + Math.floor(column / across);
    const run = (last?: { page: number; height: number }): { placer: Placer; lastPage: number } => {
      const limit = (column: number): number =>
        pageOf(column) === last?.page ? last.height : roomOn(pageOf(column));
      const placer = new Placer({ limit, usual: this.room.usual - above });
      const end = placer.placeAll(item.items, topOfFirst, () => []);
      return { placer, lastPage: pageOf(end.page) };
    };
    const full = run();
    const { lastPage } = full;
    let best = full.placer;
    let most = Math.min(roomOn(lastPage), naturalHeight(item.items));
    let least = 0;
    while (most - least > evenToPt) {
      const height = (most + least) / 2;
      const { placer, lastPage: page } = run({ page: lastPage, height });
      const fits = page <= lastPage && placer.overflowing.length <= full.placer.overflowing.length;
      if (fits) [best, most] = [placer, height];
      else least = height;
    }
    this.overflowing.push(...best.overflowing);
    return this.takeColumns(best.placements, item, { start, heads, lastPage, roomOn });
  }

  /** The columns of each page put side by side, over what lies behind them. */
  private takeColumns(
    placed: readonly Placement[],
    item: ColumnText,
    at: { start: Cursor; heads: Heads; lastPage: number; roomOn: (page: number) => number },
  ): Cursor {
    const across = item.shifts.length;
    let top = at.start.y;
    let used = 0;
    for (let { page } = at.start; page <= at.lastPage; page += 1) {
      if (page > at.start.page) top = this.repeatHeads(page, headsAbove(item, at.heads));
      const ofPage = placed.filter(
        ({ page: column }) => at.start.page + Math.floor(column / across) === page,
      );
      used = Math.max(0, ...ofPage.map((each) => each.top + each.piece.height));
      const height = page === at.lastPage ? used : at.roomOn(page);
      if (item.backing) {
        const backing = piece(height, item.backing(height));
        this.placements.push({ page, top, left: 0, piece: backing, repeated: true });
      }
      for (const each of ofPage) {
        const left = each.left + item.shifts[each.page % across]!;
        this.placements.push({ ...each, page, left, top: top + each.top });
      }
    }
    return { page: at.lastPage, y: top + used, fresh: false, turn: false };
  }

  /**
   * How many pieces of text and smaller drawings after a drawing or table go before it, because it does not fit on the page
   * and they do. Whole stretches that are kept together rise, and none that is held to something else.
   */
  private rising(items: readonly Item[], index: number, cursor: Cursor): number {
    const item = items[index]!;
    if (item.kind !== 'group' || !item.floats || cursor.fresh || cursor.turn) return 0;
    const limit = this.room.limit(cursor.page) + tolerance;
    if (cursor.y + item.before + this.chainHeight(items, index, 'whole') <= limit) return 0;
    if (item.keepWithNext || itemHeight(item) > this.room.usual + tolerance) return 0;
    let { y } = cursor;
    let count = 0;
    for (;;) {
      const chain = risingChain(items, index + 1 + count);
      const bottom = chain.reduce((sum, each) => sum + each.before + itemHeight(each), y);
      if (chain.length === 0 || bottom > limit) return count;
      y = bottom;
      count += chain.length;
    }
  }

  private placeAfterRisen(
    items: readonly Item[],
    index: number,
    count: number,
    { cursor: start, heads }: { cursor: Cursor; heads: Heads },
  ): Cursor {
    let cursor = start;
    for (const risen of items.slice(index + 1, index + 1 + count)) {
      if (risen.kind !== 'break') cursor = this.place(risen, cursor, heads);
    }
    const item = items[index] as Group;
    const end = this.place(item, this.turned(cursor, item, heads), heads);
    // The rest of a paragraph has no space above it; under the drawing it needs some.
    const next = items[index + 1 + count];
    const gap = next && next.kind !== 'break' ? Math.max(0, item.before - next.before) : 0;
    return { ...end, y: end.y + gap };
  }

  /** The cursor itself, or the top of the next page if the item at `index` belongs there. */
  private withRoom(items: readonly Item[], index: number, cursor: Cursor, heads: Heads): Cursor {
    const item = items[index];
    if (!item || item.kind === 'break') return { ...cursor, turn: false };
    if (cursor.fresh) return { ...cursor, turn: false };
    const turned = (): Cursor => this.tallEnough(items, index, this.turned(cursor, item, heads), heads);
    if (cursor.turn) return turned();
    const { usual } = this.room;
    const room = this.room.limit(cursor.page) - cursor.y - item.before + tolerance;
    if (this.chainHeight(items, index, 'whole') <= room) return cursor;
    const page = usual - headHeight(item, heads) + tolerance;
    if (!isKeptToPrevious(items, index) && this.chainHeight(items, index, 'whole') <= page) {
      const wasteful = room > usual * wastedShare && this.chainHeight(items, index, 'yielding') <= room;
      return wasteful ? cursor : turned();
    }
    const least = this.chainHeight(items, index, 'broken');
    if (least <= room) return cursor;
    const isBetterLater = least <= page || this.startHeight(item, 'broken') > room;
    return isBetterLater ? turned() : cursor;
  }

  /** Columns may be shorter than others: what does not fit at the top of one goes on to one as tall as usual. */
  private tallEnough(items: readonly Item[], index: number, cursor: Cursor, heads: Heads): Cursor {
    const limit = this.room.limit(cursor.page);
    const item = items[index]!;
    if (item.kind === 'break' || limit >= this.room.usual) return cursor;
    if (this.chainHeight(items, index, 'broken') <= limit - cursor.y + tolerance) return cursor;
    return this.tallEnough(items, index, this.turned(cursor, item, heads), heads);
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
      case 'column-text':
        return this.placeColumnText(item, start, heads);
    }
  }

  private placePiece(item: Piece, { page, y }: Cursor): Cursor {
    this.placements.push({ page, top: y, left: 0, piece: item, repeated: false });
    if (y + item.height > this.room.limit(page) + tolerance) this.overflowing.push(item);
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
    return { page, y: this.repeatHeads(page, headsAbove(item, heads)), fresh: true, turn: false };
  }

  /** Places heads at the top of a page and gives the height that they take. */
  private repeatHeads(page: number, heads: Heads): number {
    let y = 0;
    for (const head of heads) {
      this.placements.push({ page, top: y, left: 0, piece: head, repeated: true });
      y += head.height;
    }
    return y;
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
        const isKept = groups === 'whole' || (groups === 'yielding' && item.yields !== true);
        const isWhole = isKept && item.together && whole <= this.room.usual + tolerance;
        return isWhole ? whole : this.chainHeight(item.items, 0, groups);
      }
      case 'columns':
        return Math.max(0, ...item.columns.map((flow) => this.chainHeight(flow, 0, groups)));
      case 'column-text':
        return Math.min(item.height, Math.max(item.leastStart, this.chainHeight(item.items, 0, groups)));
    }
  }
}

/**
 * Whether groups that belong together count as a whole. They do, unless a heading and the group under it fit on no
 * page; then the group is broken rather than the heading left alone. Where a page would be left much too empty, those
 * that yield are broken.
 */
type GroupRule = 'whole' | 'yielding' | 'broken';

function isKeptToPrevious(items: readonly Item[], index: number): boolean {
  const previous = items[index - 1];
  return previous !== undefined && previous.kind !== 'break' && previous.keepWithNext;
}

/** The pieces and drawings from an index on that are kept together, if all of them may rise; otherwise none. */
function risingChain(items: readonly Item[], index: number): readonly (Piece | Group)[] {
  const chain: (Piece | Group)[] = [];
  for (let at = index; at < items.length; at += 1) {
    const item = items[at]!;
    if (!mayRise(item)) return [];
    chain.push(item);
    if (!item.keepWithNext) return chain;
  }
  return [];
}

function mayRise(item: Item): item is Piece | Group {
  return (item.kind === 'piece' && item.rises === true) || (item.kind === 'group' && item.floats === true);
}

/** What stands again above an item at the top of a page. */
function headsAbove(item: Item, heads: Heads): Heads {
  if (item.kind !== 'piece' && item.kind !== 'column-text') return heads;
  if (item.kind === 'piece' && item.withoutHead) return [];
  return item.groupHead ? [...heads, item.groupHead] : heads;
}

const headHeight = (item: Item, heads: Heads): number =>
  headsAbove(item, heads).reduce((sum, head) => sum + head.height, 0);
