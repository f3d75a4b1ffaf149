/** What can go wrong in the record of a build, told at its place; the demonstration guide with one slip each. */
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { check } from '../../scripts/pipeline.ts';
import { repository } from '../demo/demo-guide.ts';

const made: string[] = [];
afterAll(() => Promise.all(made.map((folder) => rm(folder, { recursive: true, force: true }))));

async function faultsAfter(path: string, from: string | RegExp, to: string): Promise<string[]> {
  const root = await mkdtemp(join(tmpdir(), 'groundsheet-card-'));
  made.push(root);
  for (const folder of ['content', 'crops'])
    await cp(join(repository, folder), join(root, folder), { recursive: true });
  const text = await readFile(join(root, path), 'utf8');
  const changed = text.replace(from, to);
  expect(changed).not.toBe(text);
  await writeFile(join(root, path), changed);
  const { diagnostics } = await check({ root, builtInRoot: repository });
  return diagnostics.map(({ code, place }) => `${place?.file}:${place?.line} ${code}`);
}

const project = 'content/projects/straw-bale-cold-frame.yaml';
const sheet = 'content/sheets/straw-bale-cold-frame.md';

test('a mistyped name in the text of a step is a fault at its place, once for all regions', async () => {
  const faults = await faultsAfter(project, '{{frame.soil-depth}}', '{{frame.soil-dpeth}}');
  expect(faults).toEqual([expect.stringMatching(/straw-bale-cold-frame\.yaml:\d+ unresolved-name/)]);
});

test('a card that leaves its steps out would lose cautions', async () => {
  expect(await faultsAfter(sheet, '{{steps}}', 'Do it.')).toEqual([`${sheet}:2 bad-prose`]);
});

test('rows that do not fit the bed are one fault, not a crash and not forty', async () => {
  const faults = await faultsAfter(project, 'crop: carrot, rows: 3', 'crop: carrot, rows: 20');
  expect(faults).toEqual([expect.stringMatching(/straw-bale-cold-frame\.yaml:\d+ structure/)]);
});

test('a frame that does not add up is told without blaming the sheet that shows it', async () => {
  const faults = await faultsAfter(project, /value: 3 in, sources/, 'value: 27 in, sources');
  expect(new Set(faults.map((fault) => fault.split(' ')[1]))).toEqual(new Set(['structure']));
});
