/** The onion sheet in regions that differ: where classes meet, where winter is mild, and where no temperatures are known. */
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { formatReport } from '../../scripts/diagnostics/diagnostic.ts';
import { printSheet } from '../../scripts/document/print.ts';
import { check, type CheckResult } from '../../scripts/pipeline.ts';
import { repository } from '../demo/demo-guide.ts';

let root: string;
let result: CheckResult;
let bare: CheckResult;

beforeAll(async () => {
  result = await check({ root: repository, builtInRoot: repository });
  root = await mkdtemp(join(tmpdir(), 'groundsheet-onions-'));
  await cp(join(repository, 'content'), join(root, 'content'), { recursive: true });
  await cp(join(repository, 'crops'), join(root, 'crops'), { recursive: true });
  const file = join(root, 'content/regions/larkwether.yaml');
  const region = await readFile(file, 'utf8');
  await writeFile(file, region.replace(/^temperatures:\n(?: {2}.*\n|#.*\n)+/m, ''));
  bare = await check({ root, builtInRoot: repository });
});
afterAll(() => rm(root, { recursive: true, force: true }));

function sheet(region: string, from: CheckResult = result): string {
  const found = from.sheets.find((one) => one.region.id === region && one.composed.document.id === 'onions');
  return printSheet(found!.composed.document);
}

describe('45 N', () => {
  test('bulbs of sets start in June, tops fall from July, and the first planting is not told to be small', () => {
    const text = sheet('larkwether');
    expect(text).toMatch(
      /Plant sets \| – \| Apr \d+–30 \| Jun \d+–(Jun|Jul) \d+ \| \d+–\d+ \| \d+–\d+ \| Jul \d+–Aug \d+/,
    );
    expect(text).toMatch(/Plants of the first day make medium/);
  });
  test('the classes of the south have their light at planting', () => {
    const text = sheet('larkwether');
    expect(text).toMatch(/Short-day \| .* \| has its light already/);
    expect(text).toMatch(/Intermediate \| .* \| has its light already/);
  });
});

test('37 N: two classes meet, both are in the table, and the shorter-day one ripens first', () => {
  const text = sheet('hollowmarl');
  expect(text).toContain('Intermediate onions');
  expect(text).toContain('Long-day onions');
  expect(text).toMatch(/Of the two classes \*{0,2}\[?intermediate/);
});

test('30 N: seed in fall, and long-day onions make leaves', () => {
  const text = sheet('gullhammock');
  expect(text).toMatch(/Sow outdoors in fall \| – \| Oct \d+–Nov \d+ \| Feb \d+–Mar \d+/);
  expect(text).toMatch(/Long-day \| .* \| leaves until/);
  expect(text).toContain('Seed sown in fall');
});

test('where no temperatures are known the sheet has its dates and leaves out what cannot be told', () => {
  expect(formatReport(bare.diagnostics)).toBe('');
  const text = sheet('larkwether', bare);
  expect(text).toContain('From planting to curing');
  expect(text).not.toContain('Risk of bolting, by size');
  expect(text).not.toContain('Count the leaves');
});
