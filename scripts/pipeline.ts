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
import { publish, repairOutput } from './publish/publish.ts';
import { publishedIn, type PublishedFile } from './publish/published.ts';
import { readFontFiles } from './records/font-files.ts';
import type { Guide, RegionRecord, SheetRecord } from './records/guide.ts';
import { readGuide } from './records/read-guide.ts';
import { suggestion } from './records/suggest.ts';
import { canBeBuilt } from './sheets/build-card.ts';
import { checkGuide } from './sheets/check.ts';
import { composeSheet, type ComposedSheet } from './sheets/compose.ts';
import { regionFacts, type RegionFacts } from './sheets/facts.ts';
import { wordingOf } from './sheets/sheet-context.ts';
import { siteIndex, type IndexedSheet } from './site-index.ts';

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

export interface CheckResult {
  /** Every sheet of the guide for every region that could be composed. */
  readonly sheets: readonly RegionSheet[];
  readonly guide: Guide;
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads and checks every record, and composes every sheet, without rendering or writing anything. */
export async function check(options: Omit<BuildOptions, 'out'>): Promise<CheckResult> {
  const reading = await readGuide(options);
  const guide = dated(reading.guide, options.issued);
  // Without its phrases nothing can be put into words; their own faults are told already.
  const speechless = reading.diagnostics.some(
    ({ severity, place }) => severity === 'error' && place?.file.startsWith('content/languages/') === true,
  );
  const sheets = speechless ? [] : composeAll(guide);
  return {
    sheets,
    guide,
    diagnostics: distinct([
      ...reading.diagnostics,
      ...checkGuide(guide),
      ...selectionFaults(guide, options),
      ...sheets.flatMap(({ composed }) => composed.diagnostics),
    ]),
  };
}

/** Makes the sheets as HTML and PDF and publishes them, or publishes nothing and says why. */
export async function build(options: BuildOptions): Promise<BuildResult> {
  const { progress = () => undefined } = options;
  const repaired = await repairOutput({ out: options.out, guide: options.root });
  progress('Reading and checking the records');
  const { sheets, guide, diagnostics } = await check(options);
  const told = [...repaired.diagnostics, ...diagnostics];
  if (hasErrors(told)) return { diagnostics: told };

  const kept = isNarrowed(options) ? await publishedIn(options.out) : new Map<string, PublishedFile>();
  const wanted = sheets.filter((sheet) => isSelected(sheet, options));
  if (wanted.length === 0) return { diagnostics: [...told, nothingSelected] };
  const rendered = await renderPdfs(wanted, guide, progress);
  progress('Making the pages');
  const pages = rendered.map(({ page }) => page);
  const site = await renderSite({
    documents: pages,
    index: siteIndex(guide, indexedSheets(sheets, pages, kept)),
    design: guide.design,
    layoutsFolder: `${options.root}/layouts`,
    fallbackLayoutsFolder: `${options.builtInRoot}/layouts`,
  });
  const made = distinct([...told, ...rendered.flatMap((sheet) => sheet.diagnostics), ...site.diagnostics]);
  if (hasErrors(made)) return { diagnostics: made };

  progress('Publishing');
  const output = outputOf(rendered, site.files, { kept, language: guide.publisher.language });
  const published = await publish({ out: options.out, guide: options.root, ...output });
  const all = distinct([...made, ...published.diagnostics]);
  if (hasErrors(all)) return { diagnostics: all };
  return {
    diagnostics: all,
    made: {
      sheets: wanted.length,
      regions: new Set(wanted.map(({ region }) => region.id)).size,
      pages: pages.reduce((sum, page) => sum + page.pdf.pages, 0),
    },
  };
}

interface RenderedSheet {
  readonly sheet: RegionSheet;
  readonly page: SitePage;
  readonly pdf: Uint8Array;
  readonly diagnostics: readonly Diagnostic[];
}

async function renderPdfs(
  sheets: readonly RegionSheet[],
  guide: Guide,
  progress: (line: string) => void,
): Promise<readonly RenderedSheet[]> {
  const fonts = openFonts(await readFontFiles());
  const rendered: RenderedSheet[] = [];
  for (const [at, sheet] of sheets.entries()) {
    const {
      region,
      composed: { document },
    } = sheet;
    progress(`Setting sheet ${at + 1} of ${sheets.length}: ${region.name}, ${document.title}`);
    const { bytes, pages, diagnostics } = await renderPdf(document, { design: guide.design, fonts });
    const path = sheetPath(document, region);
    const pdf = { path: `${path}.pdf`, pages, bytes: bytes.length };
    const place = guide.placeOf('sheet', sheet.sheet.id, '/fit');
    rendered.push({
      sheet,
      pdf: bytes,
      diagnostics: diagnostics.map((told) => (told.code === 'past-one-page' ? { ...told, place } : told)),
      page: { path: `${path}.html`, pdf, region: region.name, document },
    });
  }
  return rendered;
}

/** Every file to publish and what the manifest says of it; what an earlier build made is kept where this one did not. */
function outputOf(
  rendered: readonly RenderedSheet[],
  site: ReadonlyMap<string, string | Uint8Array>,
  { kept, language }: { kept: ReadonlyMap<string, PublishedFile>; language: string },
): { files: ReadonlyMap<string, string | Uint8Array>; entries: readonly ManifestEntry[] } {
  const pdfs = rendered.map(({ page, pdf }) => [page.pdf.path, pdf] as const);
  const fresh = new Map([...site, ...pdfs]);
  const older = [...kept].filter(([path]) => !fresh.has(path));
  return {
    files: new Map([...older.map(([path, { bytes }]) => [path, bytes] as const), ...fresh]),
    entries: [
      ...older.map(([, { entry }]) => entry),
      ...rendered.flatMap(manifestEntries),
      { path: 'index.html', kind: 'page-index', language, findings: [] },
    ],
  };
}

/** One sheet for one region. */
export interface RegionSheet {
  readonly region: RegionRecord;
  readonly facts: RegionFacts;
  readonly sheet: SheetRecord;
  readonly composed: ComposedSheet;
}

type Narrowing = Pick<BuildOptions, 'region' | 'sheet'>;

function isNarrowed({ region, sheet }: Narrowing): boolean {
  return region !== undefined || sheet !== undefined;
}

function isSelected({ region, sheet }: RegionSheet, wanted: Narrowing): boolean {
  return (wanted.region ?? region.id) === region.id && (wanted.sheet ?? sheet.id) === sheet.id;
}

const nothingSelected: Diagnostic = {
  code: 'nothing-selected',
  severity: 'error',
  message: 'No sheet is made for this region.',
  hint: 'Look at “regions:” in the header of the sheet, or leave --region or --sheet out.',
};

/** A region or sheet asked for that the guide does not have. */
function selectionFaults(guide: Guide, wanted: Narrowing): Diagnostic[] {
  const fault = (
    kind: string,
    list: readonly { readonly id: string }[],
    id: string | undefined,
  ): Diagnostic[] => {
    if (id === undefined || guide.spoilt.has(id) || list.some((item) => item.id === id)) return [];
    const hint = suggestion(
      id,
      list.map((item) => item.id),
      `Name the file of a ${kind} without its ending.`,
    );
    return [
      {
        code: 'nothing-selected',
        severity: 'error',
        message: `There is no ${kind} “${id}” in this guide.`,
        hint,
      },
    ];
  };
  return [...fault('region', guide.regions, wanted.region), ...fault('sheet', guide.sheets, wanted.sheet)];
}

function composeAll(guide: Guide): readonly RegionSheet[] {
  if (guide.crops.length === 0) return [];
  const wording = wordingOf(guide);
  const suggest = (name: string, known: readonly string[]): string =>
    suggestion(name, known, 'The names of a sheet are listed in DEVELOPERS.md.');
  return guide.regions.flatMap((region) => {
    const facts = regionFacts(region, { crops: guide.crops, year: guide.publisher.year });
    return guide.sheets
      .filter((sheet) => sheet.regions?.includes(region.id) ?? true)
      .filter((sheet) => isWhole(guide, sheet))
      .map((sheet) => ({
        region,
        facts,
        sheet,
        composed: composeSheet({ guide, sheet, facts, wording, suggest }),
      }));
  });
}

/** The sheets that the index lists: those just made, and those that an earlier build made and this one keeps. */
function indexedSheets(
  sheets: readonly RegionSheet[],
  pages: readonly SitePage[],
  kept: ReadonlyMap<string, PublishedFile>,
): readonly IndexedSheet[] {
  return sheets.flatMap(({ region, facts, composed: { document } }): IndexedSheet[] => {
    const path = sheetPath(document, region);
    const old = kept.get(`${path}.pdf`);
    const page =
      pages.find((made) => made.path === `${path}.html`) ??
      (old && kept.has(`${path}.html`)
        ? {
            path: `${path}.html`,
            pdf: { path: `${path}.pdf`, pages: old.entry.pages ?? 1, bytes: old.bytes.length },
            region: region.name,
            document,
          }
        : undefined);
    const at32 = facts.freeze.get(32)!;
    return page ? [{ region, freeze: { last: at32.last[50], first: at32.first[50] }, page }] : [];
  });
}

/** A sheet whose crop or project is at fault cannot be composed; the fault itself is told already. */
function isWhole(guide: Guide, sheet: SheetRecord): boolean {
  const has = (list: readonly { readonly id: string }[], id: string | undefined): boolean =>
    id === undefined || list.some((item) => item.id === id);
  const built = sheet.project === undefined || canBeBuilt(guide, sheet.project);
  return has(guide.crops, sheet.crop) && has(guide.projects, sheet.project) && built;
}

function dated(guide: Guide, issued: string | undefined): Guide {
  return issued === undefined ? guide : { ...guide, publisher: { ...guide.publisher, issued } };
}

/** `en/marlow-county/planting-chart` */
export function sheetPath(document: SheetDocument, region: RegionRecord): string {
  return `${document.language}/${region.id}/${document.id}`;
}

function manifestEntries({ page, sheet: { region, composed } }: RenderedSheet): ManifestEntry[] {
  const { document, findings } = composed;
  const entry = {
    kind: document.kind,
    title: document.title,
    region: region.id,
    language: document.language,
    findings,
  };
  return [
    { ...entry, path: page.path },
    { ...entry, path: page.pdf.path, pages: page.pdf.pages },
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
