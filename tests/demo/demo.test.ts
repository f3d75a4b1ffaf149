/** The demonstration guide, built as a user builds it: everything it promises is there, and reads back. */
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { HtmlValidate } from 'html-validate';
import { chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { formatReport } from '../../scripts/diagnostics/diagnostic.ts';
import { readPdf, tagsOf } from '../pdf/read-pdf.ts';
import { buildGuide, filesIn, type BuiltGuide } from './demo-guide.ts';

const regions = ['gullhammock', 'hollowmarl', 'larkwether'];
const sheets = [
  'carrots',
  'climate',
  'cold-frame-class',
  'cold-frame-segment',
  'keyhole-bed',
  'lumber-cold-frame',
  'onion-segment',
  'onions',
  'planting-chart',
  'pole-tepee',
  'raised-bed',
  'snap-peas',
  'straw-bale-cold-frame',
  'tepee-class',
];
const each = regions.flatMap((region) => sheets.map((sheet) => `en/${region}/${sheet}`));

let guide: BuiltGuide;
let files: ReadonlyMap<string, Buffer>;

beforeAll(async () => {
  guide = await buildGuide();
  files = await filesIn(guide.out);
});
afterAll(() => guide.remove());

test('builds without a fault and without a warning', () => {
  expect(formatReport(guide.result.diagnostics)).toBe('');
  expect(guide.result.made).toMatchObject({ sheets: each.length, regions: 3 });
});

test('every sheet is there for every region, as a page and as a PDF', () => {
  const made = [...files.keys()].filter((path) => path.startsWith('en/'));
  expect(made).toEqual(each.flatMap((path) => [`${path}.html`, `${path}.pdf`]).sort());
  expect([...files.keys()]).toEqual(
    expect.arrayContaining(['index.html', 'manifest.json', 'assets/style.css']),
  );
});

test('the manifest lists every other file with its checksum, and the findings of each sheet', () => {
  const manifest = JSON.parse(files.get('manifest.json')!.toString()) as {
    files: {
      path: string;
      sha256: string;
      bytes: number;
      kind: string;
      findings?: string[];
      pages?: number;
    }[];
  };
  expect(manifest.files.map(({ path }) => path).sort()).toEqual(
    [...files.keys()].filter((path) => path !== 'manifest.json').sort(),
  );
  for (const { path, sha256, bytes } of manifest.files) {
    const content = files.get(path)!;
    expect([path, bytes]).toEqual([path, content.length]);
    expect(sha256).toBe(createHash('sha256').update(content).digest('hex'));
  }
  const chart = manifest.files.find(({ path }) => path === 'en/larkwether/planting-chart.pdf')!;
  expect(chart.kind).toBe('planting-chart');
  expect(chart.pages).toBeGreaterThan(1);
  expect(chart.findings).toEqual(
    expect.arrayContaining(['freeze.last.32f.50', 'carrot.direct-sow.spring', 'tomato.depth']),
  );
});

test('the same records give the same bytes', async () => {
  const again = await buildGuide();
  try {
    const second = await filesIn(again.out);
    expect([...second.keys()]).toEqual([...files.keys()]);
    const changed = [...files]
      .filter(([path, bytes]) => !bytes.equals(second.get(path)!))
      .map(([path]) => path);
    expect(changed).toEqual([]);
  } finally {
    await again.remove();
  }
});

test('no output carries a path of the machine or the day it was made', () => {
  const today = new Date().toISOString().slice(0, 10);
  for (const [path, bytes] of files) {
    if (!/\.(html|json|css)$/.test(path)) continue;
    const text = bytes.toString();
    expect(text, path).not.toContain(process.cwd());
    if (today !== '2026-11-15') expect(text, path).not.toContain(today);
  }
});

test('every page is valid HTML', async () => {
  const validator = new HtmlValidate({
    extends: ['html-validate:standard'],
    rules: { 'long-title': 'off', 'no-trailing-whitespace': 'off' },
  });
  for (const [path, bytes] of files) {
    if (!path.endsWith('.html')) continue;
    const report = await validator.validateString(bytes.toString());
    const messages = report.results.flatMap(({ messages: found }) =>
      found.map(({ line, ruleId, message }) => `${path}:${line} ${ruleId} ${message}`),
    );
    expect(messages).toEqual([]);
  }
});

describe.each(each)('%s.pdf read back', (path) => {
  test('is tagged, titled, complete, and its figures and links have words', async () => {
    const pdf = await readPdf(new Uint8Array(files.get(`${path}.pdf`)!));
    expect(pdf.stray).toEqual([]);
    expect(tagsOf(pdf, 'H1')).toHaveLength(1);
    expect(tagsOf(pdf, 'Figure').every(({ alternative }) => (alternative ?? '').length > 20)).toBe(true);
    expect(pdf.links.every(({ contents }) => contents.trim() !== '')).toBe(true);
    expect(pdf.outline.length).toBeGreaterThan(0);
    expect(pdf.metadata).toContain('pdfuaid');
  });
});

const chromiumPath = process.env['CHROMIUM'] ?? '/usr/bin/chromium';

describe.skipIf(!existsSync(chromiumPath))('in Chromium (skipped where it is not installed)', () => {
  test('the index leads to a sheet, and a number leads to how it was worked out', async () => {
    const browser = await chromium.launch({
      executablePath: chromiumPath,
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--disable-quic',
      ],
    });
    try {
      const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
      const failed: string[] = [];
      page.on('requestfailed', (request) => failed.push(request.url()));
      page.on('request', (request) => {
        if (!request.url().startsWith('file:')) failed.push(request.url());
      });
      await page.goto(pathToFileURL(`${guide.out}/index.html`).href);
      await page
        .getByRole('link', { name: /onions in Larkwether/ })
        .first()
        .click();
      expect(await page.getByRole('heading', { level: 1 }).innerText()).toContain(
        'onions in Larkwether County',
      );
      await page.locator('a.finding').first().click();
      expect(await page.locator(':target').count()).toBe(1);
      expect(failed).toEqual([]);
    } finally {
      await browser.close();
    }
  });
});
