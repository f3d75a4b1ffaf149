import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Design } from '../document/design.ts';
import type { SheetDocument } from '../document/document.ts';
import { headingLevels } from '../document/outline.ts';
import { measureBlocks } from './blocks.ts';
import { drawMarks } from './draw.ts';
import type { FontSet } from './fonts.ts';
import { withBefore } from './items.ts';
import { inside, pageGrid, type Context, type FitNotice, type Measured } from './measure.ts';
import { foot, runningHead, runningHeadPt } from './page-furniture.ts';
import { paginate, type PageHeights, type Pagination } from './paginate.ts';
import { leaf, tag, type Leaf } from './tags.ts';
import { measureTitleBand } from './title-band.ts';
import { createPdfWriter, type PdfWriter } from './writer.ts';

export interface PdfOptions {
  readonly design: Design;
  readonly fonts: FontSet;
  /** `none` leaves streams readable, for tests that look into them. */
  readonly compression?: 'deflate' | 'none';
  /** Told at the end of each stage, for measuring how long it took. */
  readonly onStage?: (stage: PdfStage) => void;
}

/** `write` embeds the fonts, joins the tag tree to what was drawn and packs the streams. */
export const pdfStages = ['measure', 'paginate', 'draw', 'write'] as const;
export type PdfStage = (typeof pdfStages)[number];

export interface RenderedPdf {
  readonly bytes: Uint8Array;
  readonly pages: number;
  /** Characters that no font has, and content that does not fit as it was meant. */
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Makes the PDF of a sheet: measures the blocks, gives every piece a page and a place, draws. The same document,
 * design and fonts give the same bytes, whatever was rendered before.
 */
export async function renderPdf(document: SheetDocument, options: PdfOptions): Promise<RenderedPdf> {
  const { design } = options;
  const notices: FitNotice[] = [];
  const missing = new Set<string>();
  const context = pageContext(document, design, noting(options.fonts, missing), notices);

  const measured = measureSheet(document, context);
  options.onStage?.('measure');
  const pagination = paginate(measured.items, pageHeights(document, design));
  options.onStage?.('paginate');
  const bytes = await drawSheet(document, measured, pagination, context, options);

  const diagnostics = [
    ...missingGlyphs(missing, document),
    ...notices.map((notice) => doesNotFit(notice, document)),
    ...pagination.overflowing.map(() => tooTall(document)),
  ];
  return { bytes, pages: pagination.pages, diagnostics };
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

async function drawSheet(
  document: SheetDocument,
  measured: Measured,
  pagination: Pagination,
  context: Context,
  options: PdfOptions,
): Promise<Uint8Array> {
  const writer = createPdfWriter(
    {
      id: document.id,
      title: document.title,
      author: document.office,
      subject: document.description,
      language: document.language,
      issued: document.issued,
      ...context.design.paper[document.paper],
      compression: options.compression ?? 'deflate',
    },
    options.fonts,
  );
  const colophon = leaf('P');
  for (let page = 0; page < pagination.pages; page += 1)
    drawPage(page, document, pagination, colophon, context, writer);
  options.onStage?.('draw');
  const bytes = await writer.finish(tag('Document', [...measured.tags, tag('P', [colophon])]));
  options.onStage?.('write');
  return bytes;
}

/** The foot of the last page is content, so that a listener learns once who publishes the sheet. */
function drawPage(
  page: number,
  document: SheetDocument,
  pagination: Pagination,
  colophon: Leaf,
  context: Context,
  writer: PdfWriter,
): void {
  writer.startPage();
  if (page > 0) drawMarks(runningHead(document, context), 0, writer);
  for (const { top, piece } of pagination.placements.filter((placement) => placement.page === page)) {
    drawMarks(piece.marks, contentTop(page, context.design) + top, writer);
  }
  const isLast = page === pagination.pages - 1;
  const numbers = { number: page + 1, of: pagination.pages };
  drawMarks(foot(document, numbers, isLast ? colophon : undefined, context), 0, writer);
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
    report: (notice) => notices.push(notice),
    measure: measureBlocks,
  };
}

const contentTop = (page: number, design: Design): number =>
  design.margin.topPt + (page === 0 ? 0 : runningHeadPt);

function pageHeights({ paper }: SheetDocument, { paper: sizes, margin }: Design): PageHeights {
  const first = sizes[paper].heightPt - margin.topPt - margin.bottomPt;
  return { first, later: first - runningHeadPt };
}

/** The same fonts, noting every character that was asked for and is in none of them. */
function noting(fonts: FontSet, missing: Set<string>): FontSet {
  return {
    ...fonts,
    faceFor: (face, character) => {
      const found = fonts.faceFor(face, character);
      if (found === undefined) missing.add(character);
      return found;
    },
  };
}

function missingGlyphs(missing: ReadonlySet<string>, document: SheetDocument): Diagnostic[] {
  return [...missing].map((character) => {
    const code = character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
    return {
      code: 'missing-glyph',
      severity: 'error',
      message: `The sheet "${document.title}" uses the character ${character} (U+${code}), which no font of the sheets has; a box is printed instead.`,
      hint: 'Write it another way, or spell it out in words.',
    };
  });
}

function doesNotFit(notice: FitNotice, document: SheetDocument): Diagnostic {
  return {
    code: 'does-not-fit',
    severity: 'warning',
    message: `In the sheet "${document.title}" the ${notice.what} ${notice.id} has too little room: ${notice.detail}.`,
    hint: `Give the ${notice.what} the full width of the page, or make it narrower.`,
  };
}

function tooTall(document: SheetDocument): Diagnostic {
  return {
    code: 'does-not-fit',
    severity: 'error',
    message: `In the sheet "${document.title}" something that cannot be broken is taller than a page and runs past its end.`,
    hint: 'Shorten the longest caution, table row or label, or divide it in two.',
  };
}
