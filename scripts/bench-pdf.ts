/**
 * How fast PDFs are made: `npm run bench:pdf`. Renders the sheets of the demonstration guide on one core and on two, and
 * lets a headless Chromium print the pages of the same sheets in the same run. Machines differ and are shared, so that only
 * the ratios of one run mean anything.
 */
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { Worker } from 'node:worker_threads';
import { chromium } from 'playwright-core';
import { openFonts } from './pdf/fonts.ts';
import { pdfStages, renderPdf, type PdfStage } from './pdf/render-pdf.ts';
import { check, sheetPath } from './pipeline.ts';
import { readFontFiles } from './records/font-files.ts';

export interface BenchResult {
  readonly sheets: number;
  readonly pages: number;
  readonly bytes: number;
  readonly ms: number;
  readonly stages: Readonly<Record<PdfStage, number>>;
}

const builtInRoot = resolve(import.meta.dirname, '..');
const rounds = Number(process.argv[2] ?? 5);
const chromiumPath = process.env['CHROMIUM'] ?? '/usr/bin/chromium';

/** Renders every sheet of the demonstration guide `times` over, after one round that is not counted. */
export async function bench(times: number): Promise<BenchResult> {
  const { sheets, guide } = await check({ root: builtInRoot, builtInRoot });
  const fonts = openFonts(await readFontFiles());
  const documents = sheets.map(({ composed }) => composed.document);
  const stages: Record<PdfStage, number> = { measure: 0, paginate: 0, draw: 0, write: 0 };
  const total = { pages: 0, bytes: 0 };
  const renderAll = async (counted: boolean): Promise<void> => {
    for (const document of documents) {
      let last = performance.now();
      const onStage = (stage: PdfStage): void => {
        const now = performance.now();
        if (counted) stages[stage] += now - last;
        last = now;
      };
      const { bytes, pages } = await renderPdf(document, { design: guide.design, fonts, onStage });
      if (!counted) continue;
      total.pages += pages;
      total.bytes += bytes.length;
    }
  };
  await renderAll(false);
  const start = performance.now();
  for (let round = 0; round < times; round += 1) await renderAll(true);
  const ms = performance.now() - start;
  return { sheets: documents.length * times, ...total, ms, stages };
}

/** The same on two cores, each with its own worker; the time is that of the slower one. */
async function benchTwo(times: number): Promise<BenchResult> {
  const results = await Promise.all([inWorker(times), inWorker(times)]);
  const sum = (pick: (result: BenchResult) => number): number =>
    results.reduce((total, result) => total + pick(result), 0);
  return {
    sheets: sum(({ sheets }) => sheets),
    pages: sum(({ pages }) => pages),
    bytes: sum(({ bytes }) => bytes),
    ms: Math.max(...results.map(({ ms }) => ms)),
    stages: results[0].stages,
  };
}

function inWorker(times: number): Promise<BenchResult> {
  return new Promise((done, failed) => {
    // A worker does not inherit the loader of TypeScript on every version of Node, so it is registered first.
    const module = JSON.stringify(new URL('./bench-pdf-worker.ts', import.meta.url).href);
    const start = `import('tsx/esm/api').then(({ register }) => { register(); return import(${module}); });`;
    const worker = new Worker(start, { eval: true, workerData: times });
    worker.once('message', done);
    worker.once('error', failed);
  });
}

interface Printed {
  readonly pages: number;
  readonly ms: number;
}

/** Chromium prints the built pages of the same sheets; one browser, started beforehand. */
async function printWithChromium(dist: string): Promise<Printed | undefined> {
  if (!existsSync(chromiumPath) || !existsSync(dist)) return undefined;
  const { sheets } = await check({ root: builtInRoot, builtInRoot });
  const browser = await chromium.launch({
    executablePath: chromiumPath,
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
  try {
    const page = await browser.newPage();
    const addresses = sheets.map(
      ({ region, composed }) => `file://${dist}/${sheetPath(composed.document, region)}.html`,
    );
    const print = async (address: string): Promise<number> => {
      await page.goto(address);
      const bytes = await page.pdf({ preferCSSPageSize: true, tagged: true });
      return [...bytes.toString('latin1').matchAll(/\/Type\s*\/Page\b/g)].length;
    };
    await print(addresses[0]!);
    let pages = 0;
    const start = performance.now();
    for (const address of addresses) pages += await print(address);
    return { pages, ms: performance.now() - start };
  } finally {
    await browser.close();
  }
}

function report(one: BenchResult, two: BenchResult, printed: Printed | undefined): string {
  const perPage = one.ms / one.pages;
  const share = (stage: PdfStage): string => `${stage} ${Math.round((one.stages[stage] / one.ms) * 100)} %`;
  const lines = [
    `One core: ${perPage.toFixed(2)} ms a page, ${(2 * perPage).toFixed(1)} ms for two pages, ${(1000 / perPage).toFixed(0)} pages a second.`,
    `Of that: ${pdfStages.map(share).join(', ')}.`,
    `Two cores: ${((1000 * two.pages) / two.ms).toFixed(0)} pages a second.`,
    `Size: ${(one.bytes / one.sheets / 1000).toFixed(0)} kB a sheet of ${(one.pages / one.sheets).toFixed(1)} pages, ${((2 * one.bytes) / one.pages / 1000).toFixed(0)} kB for two pages.`,
  ];
  if (!printed) {
    lines.push(
      'Chromium or the built guide (npm run build) is missing, so there is nothing to compare with.',
    );
  } else {
    const chromiumPage = printed.ms / printed.pages;
    lines.push(
      `Chromium printing the same sheets: ${chromiumPage.toFixed(1)} ms a page; ${(chromiumPage / perPage).toFixed(1)} times as long.`,
    );
  }
  return lines.join('\n');
}

if (process.argv[1] === import.meta.filename) {
  const one = await bench(rounds);
  const two = await benchTwo(rounds);
  const printed = await printWithChromium(resolve(builtInRoot, 'dist'));
  process.stdout.write(`${report(one, two, printed)}\n`);
}
