/**
 * The pages of a site, from sheets and layouts. Nothing is written: the files are returned with their output paths.
 *
 * Eleventy runs on virtual templates, one for all sheets, one for the index and one for the style sheet, over the
 * built-in layouts with the guide's own laid over them file by file.
 */
import { mkdir, mkdtemp, readFile, readdir, realpath, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import Eleventy, { type EleventyConfig } from '@11ty/eleventy';
import { layoutFault, type Layouts } from './layout-fault.ts';
import { indexData, sheetData } from './page-data.ts';
import type { Site, SiteOptions } from './site-model.ts';

/**
 * Renders the given sheets, the index, the style sheet, and the fonts with their licences. Equal input gives equal
 * bytes. A fault in a layout is returned as a diagnostic, with no files.
 */
export async function renderSite(options: SiteOptions): Promise<Site> {
  const layouts = await mergedLayouts(options.fallbackLayoutsFolder, options.layoutsFolder);
  const folder = await realpath(await mkdtemp(path.join(tmpdir(), 'groundsheet-')));
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

async function readLayouts(folder: string): Promise<readonly [string, string][]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch((error: unknown) => {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  });
  const files = entries
    .filter((entry) => entry.isFile() && entry.name.endsWith('.njk'))
    .map((entry) => path.join(entry.parentPath, entry.name))
    .sort();
  return Promise.all(
    files.map(async (file): Promise<[string, string]> => [
      path.relative(folder, file).split(path.sep).join('/'),
      await readFile(file, 'utf8'),
    ]),
  );
}

async function writeLayouts(folder: string, layouts: Layouts): Promise<void> {
  for (const [name, body] of layouts) {
    const file = path.join(folder, name);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, body);
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
