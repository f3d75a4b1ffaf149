/**
 * The whole of Groundsheet, in the order things happen: records in, sheets out. Each stage takes only what the
 * one before it made; nothing is written until every stage has succeeded.
 */
import { hasErrors, type Diagnostic } from './diagnostics/diagnostic.ts';
import type { SheetDocument } from './document/document.ts';
import type { SitePage } from './html/site-model.ts';
import { renderSite } from './html/site.ts';
import { openFonts } from './pdf/fonts.ts';
import { renderPdf } from './pdf/render-pdf.ts';
import type { ManifestEntry } from './publish/manifest.ts';
import { publish } from './publish/publish.ts';
import { readFontFiles } from './records/font-files.ts';
import type { Guide, RegionRecord, SheetRecord } from './records/guide.ts';
import { readGuide } from './records/read-guide.ts';
import { suggestion } from './records/suggest.ts';
import { checkGuide } from './sheets/check.ts';
import { composeSheet, type ComposedSheet } from './sheets/compose.ts';
import { regionFacts, type RegionFacts } from './sheets/facts.ts';
import { wordingOf } from './sheets/sheet-context.ts';
import { siteIndex } from './site-index.ts';

export interface BuildOptions {
  /** The guide folder, with content/ and crops/. */
  readonly root: string;
  /** The folder of Groundsheet itself, whose phrases, cautions and layouts stand under the guide's own. */
  readonly builtInRoot: string;
  /** The output folder. */
  readonly out: string;
  /** Only this region, or only this sheet, by id. */
  readonly region?: string | undefined;
  readonly sheet?: string | undefined;
  /** Replaces the issue date of the publisher's record, as yyyy-mm-dd. */
  readonly issued?: string | undefined;
  /** Told what is being done, for someone who waits. */
  readonly progress?: (line: string) => void;
}

export interface BuildResult {
  readonly diagnostics: readonly Diagnostic[];
  /** What was made; absent when there were faults and nothing was written. */
  readonly made?: { readonly sheets: number; readonly regions: number; readonly pages: number };
}

/** Reads and checks every record, and composes every sheet, without rendering or writing anything. */
export async function check(options: Omit<BuildOptions, 'out'>): Promise<{ sheets: readonly RegionSheet[]; guide?: Guide; diagnostics: readonly Diagnostic[] }> {
  const reading = await readGuide(options);
  if (!reading.guide) return { sheets: [], diagnostics: reading.diagnostics };
  const guide = dated(reading.guide, options.issued);
  const wanted = select(guide, options);
  const sheets = composeAll(guide, wanted);
  return {
    sheets,
    guide,
    diagnostics: distinct([
      ...reading.diagnostics,
      ...checkGuide(guide),
      ...wanted.diagnostics,
      ...sheets.flatMap(({ composed }) => composed.diagnostics),
    ]),
  };
}

/** Makes every sheet as HTML and PDF and publishes them, or publishes nothing and says why. */
export async function build(options: BuildOptions): Promise<BuildResult> {
  const { progress = () => undefined } = options;
  progress('Reading and checking the records');
  const { sheets, guide, diagnostics } = await check(options);
  if (!guide || hasErrors(diagnostics)) return { diagnostics };

  const fonts = openFonts(await readFontFiles());
  const pages: SitePage[] = [];
  const files = new Map<string, Uint8Array | string>();
  const entries: ManifestEntry[] = [];
  const rendering: Diagnostic[] = [...diagnostics];
  for (const [at, sheet] of sheets.entries()) {
    const { region, composed } = sheet;
    progress(`Setting sheet ${at + 1} of ${sheets.length}: ${region.name}, ${composed.document.title}`);
    const pdf = await renderPdf(composed.document, { design: guide.design, fonts });
    const path = sheetPath(composed.document, region);
    rendering.push(...pdf.diagnostics);
    files.set(`${path}.pdf`, pdf.bytes);
    entries.push(...manifestEntries(path, sheet, pdf.pages));
    pages.push({
      path: `${path}.html`,
      pdf: { path: `${path}.pdf`, pages: pdf.pages, bytes: pdf.bytes.length },
      region: region.name,
      document: composed.document,
    });
  }

  progress('Making the pages');
  const site = await renderSite({
    documents: pages,
    index: siteIndex(guide, sheets.map((sheet, at) => ({ ...indexed(sheet), page: pages[at]! }))),
    design: guide.design,
    layoutsFolder: `${options.root}/layouts`,
    fallbackLayoutsFolder: `${options.builtInRoot}/layouts`,
  });
  rendering.push(...site.diagnostics);
  if (hasErrors(rendering)) return { diagnostics: distinct(rendering) };
  for (const [path, content] of site.files) files.set(path, content);
  entries.push({ path: 'index.html', kind: 'page-index', language: guide.publisher.language, findings: [] });

  progress('Publishing');
  const published = await publish({ out: options.out, guide: options.root, files, entries });
  const all = distinct([...rendering, ...published.diagnostics]);
  if (hasErrors(all)) return { diagnostics: all };
  return {
    diagnostics: all,
    made: {
      sheets: sheets.length,
      regions: new Set(sheets.map(({ region }) => region.id)).size,
      pages: pages.reduce((sum, page) => sum + page.pdf.pages, 0),
    },
  };
}

/** One sheet for one region. */
export interface RegionSheet {
  readonly region: RegionRecord;
  readonly facts: RegionFacts;
  readonly sheet: SheetRecord;
  readonly composed: ComposedSheet;
}

interface Selection {
  readonly regions: readonly RegionRecord[];
  readonly sheets: readonly SheetRecord[];
  readonly diagnostics: readonly Diagnostic[];
}

/** Narrows the guide to the region and sheet asked for; a name that nothing has is a fault. */
function select(guide: Guide, { region, sheet }: Pick<BuildOptions, 'region' | 'sheet'>): Selection {
  const diagnostics: Diagnostic[] = [];
  const narrow = <T extends { readonly id: string }>(kind: string, list: readonly T[], id: string | undefined): readonly T[] => {
    if (id === undefined) return list;
    const found = list.filter((item) => item.id === id);
    if (found.length === 0 && !guide.spoilt.has(id)) {
      diagnostics.push({
        code: 'nothing-selected',
        severity: 'error',
        message: `There is no ${kind} “${id}” in this guide.`,
        hint: suggestion(id, list.map((item) => item.id), `Name the file of a ${kind} without its ending.`),
      });
    }
    return found;
  };
  return { regions: narrow('region', guide.regions, region), sheets: narrow('sheet', guide.sheets, sheet), diagnostics };
}

function composeAll(guide: Guide, { regions, sheets }: Selection): readonly RegionSheet[] {
  const wording = wordingOf(guide);
  return regions.flatMap((region) => {
    const facts = regionFacts(region, { crops: guide.crops, year: guide.publisher.year });
    return sheets
      .filter((sheet) => sheet.regions?.includes(region.id) ?? true)
      .filter((sheet) => isWhole(guide, sheet))
      .map((sheet) => ({
        region,
        facts,
        sheet,
        composed: composeSheet({
          guide,
          sheet,
          facts,
          wording,
          suggest: (name, known) => suggestion(name, known, 'The names of a sheet are listed in DEVELOPERS.md.'),
        }),
      }));
  });
}

function indexed({ region, facts }: RegionSheet) {
  const at32 = facts.freeze.get(32)!;
  return { region, freeze: { last: at32.last[50], first: at32.first[50] } };
}

/** A sheet whose crop or project is at fault cannot be composed; the fault itself is told already. */
function isWhole(guide: Guide, sheet: SheetRecord): boolean {
  const has = (list: readonly { readonly id: string }[], id: string | undefined): boolean => id === undefined || list.some((item) => item.id === id);
  return has(guide.crops, sheet.crop) && has(guide.projects, sheet.project);
}

function dated(guide: Guide, issued: string | undefined): Guide {
  return issued === undefined ? guide : { ...guide, publisher: { ...guide.publisher, issued } };
}

/** `en/marlow-county/planting-chart` */
export function sheetPath(document: SheetDocument, region: RegionRecord): string {
  return `${document.language}/${region.id}/${document.id}`;
}

function manifestEntries(path: string, { region, composed }: RegionSheet, pages: number): ManifestEntry[] {
  const { document, findings } = composed;
  const entry = { kind: document.kind, title: document.title, region: region.id, language: document.language, findings };
  return [
    { ...entry, path: `${path}.html` },
    { ...entry, path: `${path}.pdf`, pages },
  ];
}

/** The same fault met for every region is told once. */
function distinct(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  const seen = new Set<string>();
  return diagnostics.filter(({ code, message, place }) => {
    const key = `${code}\n${message}\n${place?.file}:${place?.line}:${place?.column}`;
    return !seen.has(key) && seen.add(key);
  });
}
