/** What the operating system refuses is played by a stand-in: a test run as administrator may read everything. */
import type * as FilesOfNode from 'node:fs/promises';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { readTree } from '../../scripts/records/read-tree.ts';

vi.mock('node:fs/promises', async (original) => {
  const real = await original<typeof FilesOfNode>();
  const refuse = (path: unknown): void => {
    if (String(path).includes('locked'))
      throw Object.assign(new Error('permission denied'), { code: 'EACCES' });
  };
  return {
    ...real,
    readFile: (...args: Parameters<typeof real.readFile>) => {
      refuse(args[0]);
      return real.readFile(...args);
    },
    readdir: (path: string) => {
      refuse(path);
      return real.readdir(path);
    },
  };
});

let root = '';
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'groundsheet-tree-'));
});
afterEach(async () => {
  await rm(root, { recursive: true, force: true });
});

test('a file and a folder that may not be read are named, and the others are read', async () => {
  await mkdir(join(root, 'crops', 'locked-folder'), { recursive: true });
  for (const name of ['bean', 'locked', 'pea'])
    await writeFile(join(root, 'crops', `${name}.yaml`), 'a: 1\n');
  const { files, diagnostics } = await readTree(root, ['crops']);
  expect(files.map(({ path }) => path)).toEqual(['crops/bean.yaml', 'crops/pea.yaml']);
  expect(diagnostics.map(({ code, place }) => [code, place?.file])).toEqual([
    ['file-unreadable', 'crops/locked-folder'],
    ['file-unreadable', 'crops/locked.yaml'],
  ]);
});
