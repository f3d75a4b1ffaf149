/**
 * The pages of a site, from sheets and layouts. Nothing is written: the files are returned with their output paths.
 *
 * Eleventy runs on virtual templates, one for all sheets, one for the index and one for the style sheet, over the
 * built-in layouts with the guide's own laid over them file by file.
 */
import { lstat, mkdir, mkdtemp, readFile, readdir, realpath, rm, stat, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { hostname, tmpdir } from 'node:os';
import path from 'node:path';
import Eleventy, { type EleventyConfig } from '@11ty/eleventy';
import { headerFaults, layoutFault, type Layouts } from './layout-fault.ts';
import { indexData, sheetData } from './page-data.ts';
import type { Site, SiteOptions } from './site-model.ts';

/**
 * Renders the given sheets, the index, the style sheet, and the fonts with their licences. Equal input gives equal
 * bytes. A fault in a layout is returned as a diagnostic, with no files.
 */
export async function renderSite(options: SiteOptions): Promise<Site> {
  const layouts = await mergedLayouts(options.fallbackLayoutsFolder, options.layoutsFolder);
  const diagnostics = headerFaults(layouts);
  if (diagnostics.length > 0) return { files: new Map(), diagnostics };
  const folder = await temporaryFolder();
  try {
    await writeLayouts(path.join(folder, '_includes'), layouts);
    const pages = await runEleventy(folder, options);
    return { files: new Map<string, string | Uint8Array>([...pages, ...(await fonts())]), diagnostics: [] };
  } catch (error) {
    const fault = layoutFault(error, layouts);
    if (!fault) throw error;
    return { files: new Map(), diagnostics: [fault] };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function runEleventy(folder: string, options: SiteOptions): Promise<readonly [string, string][]> {
  const output = path.join(folder, 'out');
  const eleventy = new Eleventy(folder, output, {
    configPath: null,
    quietMode: true,
    config: (config) => {
      configure(config, options);
    },
  });
  eleventy.disableLogger();
  const pages = await eleventy.toJSON();
  return pages
    .map((page): [string, string] => [
      path.relative(output, path.resolve(page.outputPath)).split(path.sep).join('/'),
      page.content,
    ])
    .sort(([a], [b]) => (a < b ? -1 : 1));
}

function configure(config: EleventyConfig, { documents, index, design }: SiteOptions): void {
  const { pdfFacts } = index.words;
  config.setUseGitIgnore(false);
  config.setNunjucksEnvironmentOptions({ throwOnUndefined: true, trimBlocks: true, lstripBlocks: true });
  config.addGlobalData('design', design);
  config.addGlobalData('index', indexData(index));
  config.addGlobalData(
    'sheets',
    documents.map((page) => sheetData(page, pdfFacts, design.type.text.sizePt)),
  );
  config.addTemplate('sheets.njk', '{{ sheet.blocks | safe }}', {
    pagination: { data: 'sheets', size: 1, alias: 'sheet' },
    permalink: '{{ sheet.path }}',
    layout: 'sheet.njk',
  });
  config.addTemplate('index.njk', '', { permalink: 'index.html', layout: 'index.njk' });
  config.addTemplate('style.njk', '{% include "style.css.njk" %}', { permalink: 'assets/style.css' });
}

/** Built-in layouts, each replaced by the guide's own layout of the same name if there is one. */
async function mergedLayouts(fallbackFolder: string, ownFolder: string): Promise<Layouts> {
  return new Map([...(await readLayouts(fallbackFolder)), ...(await readLayouts(ownFolder))]);
}

/**
 * The layouts of a folder, which need not exist. Links are followed within the folder that it stands in, each folder
 * once; the faults of links, and of texts that are no text, are told when the records are checked.
 */
async function readLayouts(folder: string): Promise<readonly [string, string][]> {
  const found: [string, string][] = [];
  const home = await realpath(path.dirname(folder)).catch(() => undefined);
  const seen = new Set<string>();
  const visit = async (name: string): Promise<void> => {
    const real = await realpath(path.join(folder, name)).catch(() => undefined);
    if (home === undefined || real === undefined || !real.startsWith(home + path.sep) || seen.has(real))
      return;
    if (!(await stat(real)).isDirectory()) {
      // The folder itself has no name; it may be a file, and then there are no layouts.
      if (name.endsWith('.njk')) found.push([name, await readFile(real, 'utf8')]);
      return;
    }
    seen.add(real);
    const names = (await readdir(real)).filter((each) => !each.startsWith('.')).sort();
    for (const each of names) await visit(name === '' ? each : `${name}/${each}`);
  };
  await visit('');
  return found;
}

async function writeLayouts(folder: string, layouts: Layouts): Promise<void> {
  for (const [name, body] of layouts) {
    const file = path.join(folder, name);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, body);
  }
}

const folderPrefix = 'groundsheet-';

/** The file that says which process made a temporary folder. */
const markName = 'made-by-groundsheet.json';

/** Processes of another container may not be seen from here; no page maker needs a folder for so long. */
const leftForGoodMs = 3_600_000;

/** Makes a folder for the page maker, and clears away those of processes that were killed before they could. */
async function temporaryFolder(): Promise<string> {
  const place = await realpath(tmpdir());
  await clearLeftFolders(place).catch(() => undefined);
  const folder = await mkdtemp(path.join(place, folderPrefix));
  await writeFile(path.join(folder, markName), JSON.stringify({ host: hostname(), pid: process.pid }));
  return folder;
}

async function clearLeftFolders(place: string): Promise<void> {
  for (const name of (await readdir(place)).filter((each) => each.startsWith(folderPrefix))) {
    const folder = path.join(place, name);
    if (await isLeft(folder).catch(() => false))
      await rm(folder, { recursive: true, force: true }).catch(() => undefined);
  }
}

/** True for a folder that bears the mark of a process on this computer which runs no more. */
async function isLeft(folder: string): Promise<boolean> {
  const status = await lstat(folder);
  const mark = path.join(folder, markName);
  const isMarked = status.isDirectory() && (await lstat(mark)).isFile();
  if (!isMarked || Date.now() - (await lstat(mark)).mtimeMs < leftForGoodMs) return false;
  const { host, pid } = JSON.parse(await readFile(mark, 'utf8')) as { host?: unknown; pid?: unknown };
  return host === hostname() && typeof pid === 'number' && pid > 0 && !isRunning(pid);
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // A process of another user may not be signalled, but it runs.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Whole, unchanged font files, as their licence asks for under their reserved name, each with its licence. */
const fontFiles = [
  { from: 'source-sans/WOFF2/TTF/SourceSans3-Regular.ttf.woff2', to: 'SourceSans3-Regular.woff2' },
  { from: 'source-sans/WOFF2/TTF/SourceSans3-It.ttf.woff2', to: 'SourceSans3-It.woff2' },
  { from: 'source-sans/WOFF2/TTF/SourceSans3-Semibold.ttf.woff2', to: 'SourceSans3-Semibold.woff2' },
  { from: 'source-sans/LICENSE.md', to: 'LICENSE-SourceSans3.md' },
  { from: 'source-serif/WOFF2/TTF/SourceSerif4-Semibold.ttf.woff2', to: 'SourceSerif4-Semibold.woff2' },
  { from: 'source-serif/LICENSE.md', to: 'LICENSE-SourceSerif4.md' },
] as const;

async function fonts(): Promise<readonly [string, Uint8Array][]> {
  const { resolve } = createRequire(import.meta.url);
  return Promise.all(
    fontFiles.map(async ({ from, to }): Promise<[string, Uint8Array]> => [
      `assets/fonts/${to}`,
      await readFile(resolve(from)),
    ]),
  );
}
