import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Design } from '../document/design.ts';
import type { SheetDocument } from '../document/document.ts';
import { drawMarks } from './draw.ts';
import type { FontSet } from './fonts.ts';
import { contentTop, layOut, type LaidOut } from './lay-out.ts';
import type { Context, FitNotice } from './measure.ts';
import { foot, runningHead } from './page-furniture.ts';
import type { Pagination } from './paginate.ts';
import { leaf, tag, type Leaf } from './tags.ts';
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
  const missing = new Set<string>();
  const laidOut = layOut(document, {
    design: options.design,
    fonts: noting(options.fonts, missing),
    onMeasured: () => options.onStage?.('measure'),
  });
  options.onStage?.('paginate');
  const { pagination, notices, overrunPt } = laidOut;
  const bytes = await drawSheet(document, laidOut, options);

  const diagnostics = [
    ...missingGlyphs(missing, document),
    ...notices.map((notice) => doesNotFit(notice, document)),
    ...pagination.overflowing.map(() => tooTall(document)),
    ...(overrunPt > 0 ? [pastOnePage(overrunPt, document, options.design)] : []),
  ];
  return { bytes, pages: pagination.pages, diagnostics };
}

async function drawSheet(
  document: SheetDocument,
  { measured, pagination, context }: LaidOut,
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
  for (const { top, left, piece } of pagination.placements.filter((placement) => placement.page === page)) {
    drawMarks(piece.marks, contentTop(page, context.design) + top, writer, left);
  }
  const isLast = page === pagination.pages - 1;
  const numbers = { number: page + 1, of: pagination.pages };
  drawMarks(foot(document, numbers, isLast ? colophon : undefined, context), 0, writer);
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

function pastOnePage(overrunPt: number, document: SheetDocument, design: Design): Diagnostic {
  const lines = Math.ceil(overrunPt / design.type.text.leadingPt);
  const mm = Math.ceil((overrunPt * 25.4) / 72);
  return {
    code: 'past-one-page',
    severity: 'warning',
    message: `The sheet “${document.title}” is meant for one page and is too long for it by ${lines} lines of text (${mm} mm).`,
    hint: 'Shorten it by that much, leave a table or drawing out, or remove “fit: one-page”.',
  };
}
