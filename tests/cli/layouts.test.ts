/** What is wrong in a guide's folder of layouts, told when the records are checked. */
import { cp, mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { check } from '../../scripts/pipeline.ts';

const builtInRoot = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');

let folder: string;
let root: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'layout-files-'));
  root = join(folder, 'guide');
  await cp(join(builtInRoot, 'tests/faults/base'), root, { recursive: true });
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

async function put(path: string, content: string | Uint8Array): Promise<void> {
  await mkdir(dirname(join(root, path)), { recursive: true });
  await writeFile(join(root, path), content);
}

async function link(path: string, to: string): Promise<void> {
  await mkdir(dirname(join(root, path)), { recursive: true });
  await symlink(to, join(root, path));
}

async function folderAt(path: string): Promise<void> {
  await mkdir(join(root, path), { recursive: true });
}

async function faults(): Promise<readonly string[]> {
  const { diagnostics } = await check({ root, builtInRoot });
  return diagnostics.map(({ code, place }) => `${place?.file}:${place?.line}:${place?.column} ${code}`);
}

const latin1 = Buffer.from('<p>\n  a caf\u00e9</p>', 'latin1');

describe('a folder of layouts', () => {
  it.each<{ name: string; make: () => Promise<void>; told: readonly string[] }>([
    { name: 'is not there', make: () => Promise.resolve(), told: [] },
    { name: 'is empty', make: () => folderAt('layouts'), told: [] },
    {
      name: 'is a file',
      make: () => put('layouts', 'a file'),
      told: ['layouts:1:1 file-unreadable'],
    },
    {
      name: 'is a link out of the guide',
      make: async () => {
        await mkdir(join(folder, 'away'));
        await link('layouts', '../away');
      },
      told: ['layouts:1:1 link-leaves-guide'],
    },
    {
      name: 'has a design that is a link out of the guide',
      make: () => link('layouts/design.json', '/etc/passwd'),
      told: ['layouts/design.json:1:1 link-leaves-guide'],
    },
    {
      name: 'has a layout that is a link out of the guide',
      make: () => link('layouts/sheet.njk', '/etc/passwd'),
      told: ['layouts/sheet.njk:1:1 link-leaves-guide'],
    },
    {
      name: 'has a layout that is a link to nothing',
      make: () => link('layouts/sheet.njk', 'gone.njk'),
      told: ['layouts/sheet.njk:1:1 file-unreadable'],
    },
    {
      name: 'has a layout that is a link within the guide',
      make: async () => {
        await put('shared.njk', '<p>ours</p>');
        await link('layouts/sheet.njk', '../shared.njk');
      },
      told: [],
    },
    {
      name: 'has a design that is a folder',
      make: () => folderAt('layouts/design.json'),
      told: ['layouts/design.json:1:1 file-unreadable'],
    },
    {
      name: 'has a layout in another encoding',
      make: () => put('layouts/partials/head.njk', latin1),
      told: ['layouts/partials/head.njk:2:8 file-not-utf8'],
    },
    {
      name: 'has a design in another encoding',
      make: () => put('layouts/design.json', latin1),
      told: ['layouts/design.json:2:8 file-not-utf8'],
    },
    {
      name: 'has a layout that is larger than any layout',
      make: () => put('layouts/sheet.njk', 'x'.repeat(1_000_001)),
      told: ['layouts/sheet.njk:1:1 file-too-large'],
    },
  ])('that $name', async ({ make, told }) => {
    await make();
    expect(await faults()).toEqual(told);
  });
});
