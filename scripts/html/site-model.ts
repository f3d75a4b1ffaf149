import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Design } from '../document/design.ts';
import type { SheetDocument } from '../document/document.ts';

/** What a site is made from. Everything printed on a page is given in ready words. */
export interface SiteOptions {
  /** The sheets to render. The index may list more than these: sheets that did not change need not be rendered. */
  readonly documents: readonly SitePage[];
  readonly index: SiteIndex;
  readonly design: Design;
  /** The guide's own layouts; a file here takes the place of the built-in one of the same name. Need not exist. */
  readonly layoutsFolder: string;
  /** The built-in layouts. */
  readonly fallbackLayoutsFolder: string;
}

export interface SitePage {
  /** Output path of the page, with forward slashes: `en/marlow-county/planting-chart.html`. */
  readonly path: string;
  readonly pdf: PdfFile;
  /** Name of the region. */
  readonly region: string;
  readonly document: SheetDocument;
}

/** The printed form of a sheet, as far as a page tells about it. */
export interface PdfFile {
  /** Output path, with forward slashes. */
  readonly path: string;
  readonly pages: number;
  readonly bytes: number;
}

/** The page that lists every sheet. */
export interface SiteIndex {
  /** BCP 47 tag. */
  readonly language: string;
  readonly title: string;
  /** A sentence or two under the title; also for search results. */
  readonly description: string;
  readonly office: string;
  /** Short address without https://, if the publisher has one. */
  readonly address?: string;
  /** A line that must stand on every page, such as that the data is for demonstration. */
  readonly notice?: string;
  readonly words: IndexWords;
  readonly regions: readonly IndexRegion[];
}

export interface IndexWords {
  readonly skipToContent: string;
  /** "PDF, 2 pages, 180 KB" */
  readonly pdfFacts: (pages: number, bytes: number) => string;
}

export interface IndexRegion {
  /** Lower-case words and hyphens, unique on the page. */
  readonly id: string;
  readonly name: string;
  /** Latitude and the dates of last and first freeze, in words. */
  readonly line: string;
  readonly sheets: readonly IndexSheet[];
}

export interface IndexSheet {
  readonly path: string;
  readonly pdf: PdfFile;
  readonly title: string;
  readonly series: string;
  readonly number: string;
  /** One line on what the sheet is for. */
  readonly description: string;
}

export interface Site {
  /** Output paths and what stands in them. Empty when there are faults. */
  readonly files: ReadonlyMap<string, string | Uint8Array>;
  readonly diagnostics: readonly Diagnostic[];
}
