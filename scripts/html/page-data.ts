/**
 * What layouts are given: plain words and relative addresses, ready to print. This is the whole vocabulary of a
 * layout, so a designer needs to know nothing else of the program. A value that a sheet may lack is empty text.
 */
import { anchor } from './markup.ts';
import { renderBlocks } from './render.ts';
import type { IndexSheet, PdfFile, SiteIndex, SitePage } from './site-model.ts';

/** `sheet` in sheet.njk. */
export interface SheetData {
  readonly path: string;
  readonly language: string;
  /** For the browser's tab: the title, and the region unless the title names it. */
  readonly pageTitle: string;
  readonly title: string;
  readonly series: string;
  readonly number: string;
  readonly region: string;
  readonly datesFor: string;
  readonly description: string;
  readonly notice: string;
  readonly office: string;
  readonly issued: string;
  readonly issuedText: string;
  readonly reviewText: string;
  readonly address: string;
  readonly kind: string;
  readonly paper: string;
  readonly pdf: PdfData;
  /** Relative address of the top of the site, empty or ending in a slash. */
  readonly root: string;
  readonly words: {
    readonly skipToContent: string;
    readonly allGuides: string;
    readonly printVersion: string;
    readonly workedOut: string;
  };
  /** The sheet's blocks as HTML; a layout finds them as `content`. */
  readonly blocks: string;
}

export interface PdfData {
  readonly href: string;
  /** "PDF, 2 pages, 180 KB" */
  readonly facts: string;
}

/** `index` in index.njk. */
export interface IndexData extends Pick<SiteIndex, 'language' | 'title' | 'description' | 'office'> {
  readonly address: string;
  readonly notice: string;
  readonly root: '';
  readonly words: { readonly skipToContent: string };
  readonly regions: readonly {
    readonly anchor: string;
    readonly name: string;
    readonly line: string;
    readonly sheets: readonly IndexSheetData[];
  }[];
}

export interface IndexSheetData extends Pick<IndexSheet, 'title' | 'series' | 'number' | 'description'> {
  readonly anchor: string;
  readonly href: string;
  readonly pdf: PdfData;
}

export type PdfFacts = (pages: number, bytes: number) => string;

export function sheetData(page: SitePage, pdfFacts: PdfFacts, textSizePt: number): SheetData {
  const { document, path, pdf, region } = page;
  const { furniture, title } = document;
  return {
    path,
    language: document.language,
    pageTitle: title.includes(region) ? title : `${title}, ${region}`,
    title,
    series: document.series,
    number: document.number,
    region,
    datesFor: document.datesFor,
    description: document.description,
    notice: document.notice ?? '',
    office: document.office,
    issued: document.issued,
    issuedText: document.issuedText,
    reviewText: document.reviewText,
    address: document.address ?? '',
    kind: document.kind,
    paper: document.paper,
    pdf: pdfData(pdf, path, pdfFacts),
    root: '../'.repeat(path.split('/').length - 1),
    words: {
      skipToContent: furniture.skipToContent,
      allGuides: furniture.allGuides,
      printVersion: furniture.printVersion,
      workedOut: furniture.workedOut,
    },
    blocks: renderBlocks(document, { textSizePt }),
  };
}

export function indexData(index: SiteIndex): IndexData {
  return {
    language: index.language,
    title: index.title,
    description: index.description,
    office: index.office,
    address: index.address ?? '',
    notice: index.notice ?? '',
    root: '',
    words: { skipToContent: index.words.skipToContent },
    regions: index.regions.map((region) => ({
      anchor: anchor(region.id),
      name: region.name,
      line: region.line,
      sheets: region.sheets.map((sheet, place) => ({
        anchor: `${anchor(region.id)}_${place + 1}`,
        title: sheet.title,
        series: sheet.series,
        number: sheet.number,
        description: sheet.description,
        href: relativeAddress('index.html', sheet.path),
        pdf: pdfData(sheet.pdf, 'index.html', index.words.pdfFacts),
      })),
    })),
  };
}

function pdfData({ path, pages, bytes }: PdfFile, from: string, pdfFacts: PdfFacts): PdfData {
  return { href: relativeAddress(from, path), facts: pdfFacts(pages, bytes) };
}

/** The address of one output file as seen from another, so that a site works wherever it is put. */
export function relativeAddress(from: string, to: string): string {
  const fromFolders = from.split('/').slice(0, -1);
  const toSteps = to.split('/');
  let shared = 0;
  while (
    shared < fromFolders.length &&
    shared < toSteps.length - 1 &&
    fromFolders[shared] === toSteps[shared]
  ) {
    shared += 1;
  }
  const down = toSteps.slice(shared).map(encodeURIComponent);
  return '../'.repeat(fromFolders.length - shared) + down.join('/');
}
