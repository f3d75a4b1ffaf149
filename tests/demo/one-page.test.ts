/** A sheet whose header asks for one page: the build tells by how much it is too long, where it was asked for. */
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { build } from '../../scripts/pipeline.ts';
import { repository } from './demo-guide.ts';

let folder: string;
let root: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'groundsheet-one-page-'));
  root = join(folder, 'guide');
  await cp(join(repository, 'tests/faults/base'), root, { recursive: true });
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const sheet = (): string => join(root, 'content/sheets/chart.md');

test('a sheet too long for its one page is made, and told of at the key that asks for it', async () => {
  const before = await readFile(sheet(), 'utf8');
  const header = before.replace(/^---\n/, '---\nfit: one-page\n');
  await writeFile(sheet(), `${header}\n${'Water in the morning, and water the soil.\n\n'.repeat(60)}`);
  const { diagnostics, made } = await build({ root, builtInRoot: repository, out: join(folder, 'dist') });
  expect(made?.sheets).toBe(1);
  expect(diagnostics.filter(({ code }) => code === 'past-one-page')).toMatchObject([
    { severity: 'warning', place: { line: 2, column: 6 } },
  ]);
});

test('another word than one-page is a fault', async () => {
  const text = await readFile(sheet(), 'utf8');
  await writeFile(sheet(), text.replace('fit: one-page', 'fit: two-pages'));
  const { diagnostics, made } = await build({ root, builtInRoot: repository, out: join(folder, 'dist') });
  expect(made).toBeUndefined();
  expect(diagnostics).toMatchObject([{ code: 'wrong-value', severity: 'error', place: { line: 2 } }]);
});
