/**
 * A folder per case: the files of a case are laid over a small guide that is right, and the report of the whole run
 * must be the one beside them (`report.txt`; `vitest -u` writes it anew). A fault that is not expected fails the case.
 */
import { cp, mkdtemp, readdir, rm, symlink } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { formatReport } from '../../scripts/diagnostics/diagnostic.ts';
import { check } from '../../scripts/pipeline.ts';

const here = fileURLToPath(new URL('.', import.meta.url));
const builtInRoot = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');
const made: string[] = [];

afterAll(async () => {
  await Promise.all(made.map((folder) => rm(folder, { recursive: true, force: true })));
});

async function guideWith(name?: string): Promise<string> {
  const root = await mkdtemp(join(tmpdir(), 'groundsheet-fault-'));
  made.push(root);
  await cp(join(here, 'base'), root, { recursive: true });
  if (name)
    await cp(join(here, 'cases', name), root, {
      recursive: true,
      filter: (path) => !path.endsWith('report.txt'),
    });
  return root;
}

for (const name of (await readdir(join(here, 'cases'))).sort()) {
  test(name.replaceAll('-', ' '), async () => {
    const { diagnostics } = await check({ root: await guideWith(name), builtInRoot });
    await expect(formatReport(diagnostics) || 'no faults\n').toMatchFileSnapshot(
      join(here, 'cases', name, 'report.txt'),
    );
  });
}

test('a link that leads out of the guide folder is not followed', async () => {
  const root = await guideWith();
  await symlink('/etc', join(root, 'content', 'regions', 'away'));
  const { diagnostics } = await check({ root, builtInRoot });
  expect(diagnostics.map(({ code, place }) => [code, place?.file])).toEqual([
    ['link-leaves-guide', 'content/regions/away'],
  ]);
});

test('a link within the guide folder is followed once', async () => {
  const root = await guideWith();
  await symlink('.', join(root, 'content', 'regions', 'again'));
  const { diagnostics, sheets } = await check({ root, builtInRoot });
  expect(formatReport(diagnostics)).toBe('');
  expect(sheets).toHaveLength(1);
});

test('a folder that is no guide is told so', async () => {
  const root = await mkdtemp(join(tmpdir(), 'groundsheet-empty-'));
  made.push(root);
  const { diagnostics } = await check({ root, builtInRoot });
  expect(diagnostics.map(({ code }) => code)).toContain('folder-missing');
});

test('a region or sheet that does not exist is a fault with a suggestion', async () => {
  const { diagnostics } = await check({ root: await guideWith(), builtInRoot, region: 'nroth' });
  expect(diagnostics.map(({ code, hint }) => [code, hint])).toEqual([
    ['nothing-selected', 'Did you mean “north”?'],
  ]);
});
