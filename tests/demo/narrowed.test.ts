/** A build of some sheets only: the others stay as they are, and the index lists them all. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { explain } from '../../scripts/explain.ts';
import { build, check } from '../../scripts/pipeline.ts';
import { buildGuide, filesIn, repository, type BuiltGuide } from './demo-guide.ts';

let guide: BuiltGuide;
beforeAll(async () => {
  guide = await buildGuide({ region: 'larkwether', sheet: 'onions' });
});
afterAll(() => guide.remove());

const pages = async (): Promise<string[]> =>
  [...(await filesIn(guide.out)).keys()].filter((path) => path.startsWith('en/'));

test('only what was asked for is made, and the index lists only that', async () => {
  expect(await pages()).toEqual(['en/larkwether/onions.html', 'en/larkwether/onions.pdf']);
  const index = await readFile(join(guide.out, 'index.html'), 'utf8');
  expect(index).toContain('en/larkwether/onions.html');
  expect(index).not.toContain('planting-chart.html');
});

test('a second one joins it, and the first stays to the byte', async () => {
  const before = await readFile(join(guide.out, 'en/larkwether/onions.pdf'));
  const options = { root: repository, builtInRoot: repository, out: guide.out };
  const { made } = await build({ ...options, region: 'hollowmarl', sheet: 'climate' });
  expect(made).toMatchObject({ sheets: 1, regions: 1 });
  expect(await pages()).toEqual([
    'en/hollowmarl/climate.html',
    'en/hollowmarl/climate.pdf',
    'en/larkwether/onions.html',
    'en/larkwether/onions.pdf',
  ]);
  expect(before.equals(await readFile(join(guide.out, 'en/larkwether/onions.pdf')))).toBe(true);
  const index = await readFile(join(guide.out, 'index.html'), 'utf8');
  expect(index).toContain('en/larkwether/onions.html');
  expect(index).toContain('en/hollowmarl/climate.html');
});

test('a name that nothing has makes nothing', async () => {
  const { diagnostics, made } = await build({
    root: repository,
    builtInRoot: repository,
    out: guide.out,
    sheet: 'onoins',
  });
  expect(made).toBeUndefined();
  expect(diagnostics.map(({ code, hint }) => [code, hint])).toEqual([
    ['nothing-selected', 'Did you mean “onions”?'],
  ]);
});

test('every number of a sheet is explained with its method and a source', async () => {
  const { sheets } = await check({ root: repository, builtInRoot: repository });
  const onions = sheets.find(({ region, sheet }) => region.id === 'larkwether' && sheet.id === 'onions')!;
  const text = explain(onions);
  expect(text).toContain(`${onions.composed.findings.length} figures`);
  expect(text).toMatch(/Onion: plant sets: .*\n {2}\(onion\.plant-sets\.spring\)\n/);
  for (const entry of text.split('\n\n').slice(1)) expect(entry.split('\n').length).toBeGreaterThan(2);
});
