/**
 * The pages in a real browser. Without Chromium these tests are skipped, and say so. The browser is /usr/bin/chromium
 * or the one that the environment variable CHROMIUM names; it is given files only, never the network.
 */
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { pointsPerMm } from '../../scripts/drawings/scene.ts';
import { renderSite } from '../../scripts/html/site.ts';
import { scenesOf } from './reading.ts';
import { showcase } from '../document/showcase.ts';
import { showcasePath, siteOptions } from './sample-site.ts';
import { contrast } from './contrast.ts';

const executablePath = process.env['CHROMIUM'] ?? '/usr/bin/chromium';
const missing = !existsSync(executablePath);

const quiet = [
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
];

/** A browser may take its time; nothing here is measured. */
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let folder: string;
let browser: Browser;

async function startBrowser(): Promise<void> {
  folder = await mkdtemp(path.join(tmpdir(), 'browser-test-'));
  const { files } = await renderSite(siteOptions());
  for (const [name, body] of files) {
    const file = path.join(folder, name);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, body);
  }
  browser = await chromium.launch({ executablePath, args: quiet });
}

async function open(
  name: string,
  { width, scheme = 'light' }: { width: number; scheme?: 'light' | 'dark' },
): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme: scheme });
  await page.goto(pathToFileURL(path.join(folder, name)).href);
  await page.evaluate(() => document.fonts.ready);
  return page;
}

const pages = ['index.html', showcasePath];
const reason = missing ? ` (skipped: no Chromium at ${executablePath}; set CHROMIUM)` : '';

describe.skipIf(missing)(`in a browser${reason}`, () => {
  beforeAll(startBrowser);
  afterAll(async () => {
    await browser.close();
    await rm(folder, { recursive: true });
  });

  describe.each(pages)('%s', (name) => {
    it.each([320, 390, 700, 1000, 1280])('fits a window %i px wide', async (width) => {
      const page = await open(name, { width });
      const broad = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(broad).toBe(width);
      await page.close();
    });

    it.each(['light', 'dark'] as const)(
      'has text with a contrast of 7 or more on a %s screen',
      async (scheme) => {
        const page = await open(name, { width: 1000, scheme });
        const colours = await page.evaluate(coloursOfText);
        expect(colours.length).toBeGreaterThan(10);
        const weak = colours.filter(({ text, behind }) => contrast(text, behind) < 7);
        expect(weak).toEqual([]);
        await page.close();
      },
    );

    it('is set in its own fonts', async () => {
      const page = await open(name, { width: 1000 });
      const loaded = await page.evaluate(() =>
        [...document.fonts]
          .filter((face) => face.status === 'loaded')
          .map((face) => `${face.family.replaceAll('"', '')} ${face.weight}`),
      );
      expect(loaded).toEqual(
        expect.arrayContaining(['Source Sans 3 400', 'Source Sans 3 600', 'Source Serif 4 600']),
      );
      await page.close();
    });
  });

  it('lets the keyboard reach the content first, with a focus that can be seen', async () => {
    const page = await open(showcasePath, { width: 1000 });
    await page.keyboard.press('Tab');
    const skip = page.locator('.skip');
    expect(await skip.evaluate((link) => link === document.activeElement)).toBe(true);
    expect((await skip.boundingBox())!.y).toBeGreaterThanOrEqual(0);
    expect(await skip.evaluate((link) => getComputedStyle(link).outlineStyle)).toBe('solid');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    const inMain = await page.evaluate(() => document.activeElement?.closest('main') !== null);
    expect(inMain).toBe(true);
    await page.close();
  });

  it.each([
    { width: 390, shown: 'for-narrow', hidden: 'for-wide' },
    { width: 1280, shown: 'for-wide', hidden: 'for-narrow' },
  ])('at $width px shows the drawing $shown and not the one $hidden', async ({ width, shown, hidden }) => {
    const page = await open(showcasePath, { width });
    expect(await page.locator(`.${shown}`).first().isVisible()).toBe(true);
    expect(await page.locator(`.${hidden}`).first().isVisible()).toBe(false);
    await page.close();
  });

  it.each([
    { width: 390, where: 'above' },
    { width: 1280, where: 'beside' },
  ])('at $width px the aside stands $where its main text', async ({ width, where }) => {
    const page = await open(showcasePath, { width });
    const aside = (await page.locator('.beside-aside').first().boundingBox())!;
    const main = (await page.locator('.beside-main').first().boundingBox())!;
    if (where === 'above') expect(aside.y + aside.height).toBeLessThanOrEqual(main.y);
    else expect(aside.x).toBeGreaterThan(main.x + main.width);
    await page.close();
  });

  it('prints drawings true to size when they fit, without the links of the screen', async () => {
    const page = await open(showcasePath, { width: 1000 });
    await page.emulateMedia({ media: 'print' });
    const scene = scenesOf(showcase.blocks)[0]!;
    const drawing = (await page.locator('.for-wide .drawing').first().boundingBox())!;
    // CSS has 96 px and 72 pt to the inch; half a pixel is what the browser rounds by.
    expect(Math.abs(drawing.width - scene.widthMm * pointsPerMm * (96 / 72))).toBeLessThan(0.5);
    expect(await page.locator('nav').isVisible()).toBe(false);
    await page.close();
  });

  it('prints on the paper of the sheet', async () => {
    const page = await open(showcasePath, { width: 1000 });
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    expect(pdf).toMatch(/\/MediaBox \[0 0 612 792\]/);
    await page.close();
  });
});

/** For every text that can be seen: its colour and that of the nearest ground behind it, as #rrggbb. */
function coloursOfText(): readonly { words: string; text: string; behind: string }[] {
  const hex = (colour: string): string =>
    `#${(colour.match(/\d+/g) ?? [])
      .slice(0, 3)
      .map((part) => Number(part).toString(16).padStart(2, '0'))
      .join('')}`;
  const behind = (element: Element | null): string => {
    if (!element) return '#ffffff';
    const colour = getComputedStyle(element).backgroundColor;
    return colour.startsWith('rgba') ? behind(element.parentElement) : hex(colour);
  };
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const found: { words: string; text: string; behind: string }[] = [];
  while (walker.nextNode()) {
    const element = walker.currentNode.parentElement!;
    const words = walker.currentNode.textContent!.trim();
    if (words === '' || !element.checkVisibility()) continue;
    const { color, fill } = getComputedStyle(element);
    found.push({ words, text: hex(element.closest('svg') ? fill : color), behind: behind(element) });
  }
  return found;
}
