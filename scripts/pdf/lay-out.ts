import type { Design } from '../document/design.ts';
import type { SheetDocument } from '../document/document.ts';
import { headingLevels } from '../document/outline.ts';
import { measureBlocks } from './blocks.ts';
import type { FontSet } from './fonts.ts';
import { tightened, withBefore, type Item } from './items.ts';
import { enlargedDrawings } from './enlarge.ts';
import { inside, pageGrid, type Context, type FitNotice, type Measured } from './measure.ts';
import { runningHeadPt } from './page-furniture.ts';
import { overrun, paginate, type PageHeights, type Pagination } from './paginate.ts';
import { measureTitleBand } from './title-band.ts';

/** A sheet with every piece in its place, before anything is drawn. */
export interface LaidOut {
  readonly context: Context;
  readonly measured: Measured;
  readonly pagination: Pagination;
  readonly notices: readonly FitNotice[];
  /** By how many points of height a sheet meant for one page is too long; 0 where it is not, and for other sheets. */
  readonly overrunPt: number;
}

export interface LayOutOptions {
  readonly design: Design;
  readonly fonts: FontSet;
  /** Told when everything is measured, for measuring how long it took. */
  readonly onMeasured?: () => void;
}

/** Measures a document and gives every piece a page and a place: the two pure steps before drawing. */
export function layOut(document: SheetDocument, { design, fonts, onMeasured }: LayOutOptions): LaidOut {
  const notices: FitNotice[] = [];
  const context = pageContext(document, design, fonts, notices);
  const heights = pageHeights(document, design);
  const asSmall = measureSheet(document, context);
  onMeasured?.();
  const { share, placed, pagination: small } = withoutShortLastPage(asSmall.items, heights);
  const { measured, pagination } = withLargeDrawings(document, context, heights, {
    measured: asSmall,
    pagination: small,
    placed,
    share,
  });
  return {
    context,
    measured,
    pagination,
    notices: uniqueNotices(notices),
    overrunPt: document.fit === 'one-page' ? overrun(measured.items, heights) : 0,
  };
}

/** Where the content of a page begins, from the top of the paper. */
export const contentTop = (page: number, design: Design): number =>
  design.margin.topPt + (page === 0 ? 0 : runningHeadPt);

export function pageHeights({ paper }: SheetDocument, { paper: sizes, margin }: Design): PageHeights {
  const first = sizes[paper].heightPt - margin.topPt - margin.bottomPt;
  return { first, later: first - runningHeadPt };
}

/** A last page emptier than this is saved, if a little less space between the blocks of all pages can do it. */
const shortPageShare = 1 / 6;
/** Share of the space between blocks that stays. */
const tightening = [0.9, 0.8] as const;

/**
 * A page for a few lines is paper for nothing: the space between blocks gives way a little where that saves it. Type and
 * drawings keep their size.
 */
function withoutShortLastPage(
  items: readonly Item[],
  heights: PageHeights,
): { readonly pagination: Pagination; readonly placed: readonly Item[]; readonly share: number } {
  const pagination = paginate(items, heights);
  const plain = { pagination, placed: items, share: 1 };
  const last = pagination.pages - 1;
  const ends = pagination.placements
    .filter(({ page }) => page === last)
    .map(({ top, piece }) => top + piece.height);
  if (last === 0 || Math.max(...ends) > heights.later * shortPageShare) return plain;
  for (const share of tightening) {
    const placed = tightened(items, share);
    const tight = paginate(placed, heights);
    if (tight.pages < pagination.pages && tight.overflowing.length <= pagination.overflowing.length)
      return { pagination: tight, placed, share };
  }
  return plain;
}

/**
 * Where a page has room left, the drawings of its steps are drawn larger, under their words. No page is added for that: a
 * table or text that would have filled the room, had it been there, keeps it, and then the last pages stay as they are.
 */
function withLargeDrawings(
  document: SheetDocument,
  context: Context,
  heights: PageHeights,
  small: Pick<LaidOut, 'measured' | 'pagination'> & {
    readonly share: number;
    readonly placed: readonly Item[];
  },
): Pick<LaidOut, 'measured' | 'pagination'> {
  const byPage = enlargedDrawings(small.placed, small.pagination.placements, heights);
  for (let pages = byPage.length; pages > 0; pages -= 1) {
    const drawnLarge = new Map(byPage.slice(0, pages).flatMap((sizes) => [...sizes]));
    const measured = measureSheet(document, { ...context, drawnLarge });
    const pagination = paginate(tightened(measured.items, small.share), heights);
    if (pagination.pages <= small.pagination.pages) return { measured, pagination };
  }
  return small;
}

/** A sheet that is measured again has told of some things twice. */
function uniqueNotices(notices: readonly FitNotice[]): FitNotice[] {
  const told = notices.map((notice) => JSON.stringify(notice));
  return notices.filter((_, index) => told.indexOf(told[index]!) === index);
}

function measureSheet(document: SheetDocument, context: Context): Measured {
  const grid = pageGrid(context.design, document.paper);
  const band = measureTitleBand(document, inside(context, grid.left, grid.fullWidth));
  const blocks = measureBlocks(document.blocks, context);
  return {
    items: [...band.items, ...withBefore(blocks.items, context.design.grid.baselinePt * 1.2)],
    tags: [...band.tags, ...blocks.tags],
  };
}

function pageContext(document: SheetDocument, design: Design, fonts: FontSet, notices: FitNotice[]): Context {
  const grid = pageGrid(design, document.paper);
  return {
    design,
    fonts,
    paper: document.paper,
    language: document.language,
    furniture: document.furniture,
    levels: headingLevels(document.blocks),
    x: grid.left,
    width: grid.textWidth,
    freeWidth: grid.fullWidth,
    pageHeight: pageHeights(document, design).later,
    listDepth: 0,
    drawnLarge: new Map(),
    measuredBefore: new WeakMap(),
    report: (notice) => notices.push(notice),
    measure: measureBlocks,
  };
}
