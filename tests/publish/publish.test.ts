import {
  chmod,
  lstat,
  mkdir,
  readFile,
  readlink,
  rename,
  rm,
  stat,
  symlink,
  writeFile,
} from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Checkpoint } from '../../scripts/publish/checkpoint.ts';
import { publish } from '../../scripts/publish/publish.ts';
import { beside, put, snapshot } from './folders.ts';
import {
  afterSecondBuild,
  firstBuild,
  foreignThings,
  options,
  secondBuild,
  setUp,
  textAt,
  withoutManifest,
} from './scenario.ts';
import { tempGuide } from './temp-guide.ts';

describe('publishing', () => {
  it('makes a folder that is not there, and the folders above it', async () => {
    const { guide } = await tempGuide();
    const out = join(guide, 'for/the/web');
    expect(await publish({ ...options(guide, firstBuild), out })).toEqual({ diagnostics: [] });
    expect(await withoutManifest(out)).toEqual(firstBuild);
    expect(await beside(out)).toEqual([]);
  });

  it('takes a folder that holds only what systems put everywhere', async () => {
    const { guide, out } = await tempGuide();
    await put(out, { '.DS_Store': 'finder' });
    expect(await publish(options(guide, firstBuild))).toEqual({ diagnostics: [] });
    expect(await withoutManifest(out)).toEqual({ '.DS_Store': 'finder', ...firstBuild });
  });

  it('removes a page that is no longer made, and its folder', async () => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    expect(await publish(options(guide, secondBuild))).toEqual({ diagnostics: [] });
    expect(await withoutManifest(out)).toEqual(Object.fromEntries(Object.entries(secondBuild).sort()));
    expect(await stat(join(out, 'en/tarn')).catch(() => 'gone')).toBe('gone');
  });

  it('carries over all that it did not make, and keeps changed pages under another name', async () => {
    const { guide, out } = await tempGuide();
    await setUp(guide);
    const { diagnostics } = await publish(options(guide, secondBuild));
    expect(
      diagnostics.map(({ code, severity, message }) => [code, severity, message.replaceAll(guide, '')]),
    ).toEqual([
      [
        'output-edited',
        'warning',
        'en/marlow/card.html in /dist was changed by hand; your copy is now en/marlow/card.yours-1.html.',
      ],
      [
        'output-edited',
        'warning',
        'en/tarn/chart.html in /dist was changed by hand; your copy is now en/tarn/chart.yours-1.html.',
      ],
    ]);
    expect(await withoutManifest(out)).toEqual(afterSecondBuild);
    expect(await beside(out)).toEqual([]);
    expect(await publish(options(guide, secondBuild))).toEqual({ diagnostics: [] });
    expect(await withoutManifest(out)).toEqual(afterSecondBuild);
  });

  it('numbers a second change of the same page, and keeps one copy of equal changes', async () => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    for (const note of ['one', 'two', 'one']) {
      await put(out, { 'index.html': note });
      await publish(options(guide, firstBuild));
    }
    expect(await withoutManifest(out)).toEqual({
      ...firstBuild,
      'index.yours-1.html': 'one',
      'index.yours-2.html': 'two',
    });
  });

  it.each([
    ['the change is what the build now makes', secondBuild['index.html']],
    ['the file was emptied, as a power failure does', ''],
  ])('keeps no copy when %s', async (_, content) => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    await put(out, { 'index.html': content });
    expect(await publish(options(guide, secondBuild))).toEqual({ diagnostics: [] });
    expect(await withoutManifest(out)).toEqual(Object.fromEntries(Object.entries(secondBuild).sort()));
  });

  it('makes a page again that was deleted by hand', async () => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    await rm(join(out, 'en'), { recursive: true });
    await publish(options(guide, firstBuild));
    expect(await withoutManifest(out)).toEqual(firstBuild);
  });

  it('writes nothing at all when nothing has changed', async () => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    await put(out, foreignThings);
    const before = await lstat(out);
    const said: string[] = [];
    const passed: Checkpoint[] = [];
    await publish({
      ...options(guide, firstBuild),
      say: (line) => said.push(line),
      checkpoint: (name) => void passed.push(name),
    });
    expect(said).toEqual([`Nothing has changed in ${out}.`]);
    expect(passed).toEqual(['locked', 'repaired', 'surveyed']);
    expect((await lstat(out)).ino).toBe(before.ino);
  });

  it('leaves the date of a page that has not changed', async () => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    const before = await stat(join(out, 'style.css'));
    await publish(options(guide, secondBuild));
    const after = await stat(join(out, 'style.css'));
    expect([after.mtimeMs, after.nlink]).toEqual([before.mtimeMs, 1]);
  });

  it('keeps a link to a folder a link', async () => {
    const { guide, out } = await tempGuide();
    await mkdir(join(guide, 'web/site'), { recursive: true });
    await symlink('web/site', out);
    await publish(options(guide, firstBuild));
    await publish(options(guide, secondBuild));
    expect(await readlink(out)).toBe('web/site');
    expect(await withoutManifest(join(guide, 'web/site'))).toEqual(
      Object.fromEntries(Object.entries(secondBuild).sort()),
    );
    expect(await beside(join(guide, 'web/site'))).toEqual([]);
  });

  it('keeps the rights of the folder and of a foreign folder in it', async () => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    await put(out, { 'private/list.txt': 'names' });
    await chmod(out, 0o750);
    await chmod(join(out, 'private'), 0o700);
    await publish(options(guide, secondBuild));
    const rights = await Promise.all(
      [out, join(out, 'private')].map(async (path) => (await stat(path)).mode & 0o777),
    );
    expect(rights).toEqual([0o750, 0o700]);
  });

  it('writes text and bytes as they are', async () => {
    const { guide, out } = await tempGuide();
    const bytes = Uint8Array.from([0, 255, 13, 10]);
    const files = new Map<string, Uint8Array | string>([
      ['a.bin', bytes],
      ['b.txt', '45° N, “½ in”\r\n'],
    ]);
    await publish({ out, guide, files, entries: [] });
    expect(new Uint8Array(await readFile(join(out, 'a.bin')))).toEqual(bytes);
    expect(await readFile(join(out, 'b.txt'), 'utf8')).toBe('45° N, “½ in”\r\n');
  });

  it('says in a sentence what it did', async () => {
    const { guide, out } = await tempGuide();
    const said: string[] = [];
    const say = (line: string): void => void said.push(line);
    await publish({ ...options(guide, firstBuild), say });
    await publish({ ...options(guide, secondBuild), say });
    expect(said).toEqual([`6 files in ${out}.`, `6 files in ${out}, 1 of the last build removed.`]);
  });
});

describe('what happens in the folder while a build runs', () => {
  /** The second build, with something done just before the trees are swapped. */
  async function buildWhile(guide: string, meanwhile: () => Promise<void>) {
    return publish({
      ...options(guide, secondBuild),
      checkpoint: (name) => (name === 'manifest-written' ? meanwhile() : undefined),
    });
  }

  it('a new file of someone else is kept', async () => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    await buildWhile(guide, () => put(out, { 'en/tarn/late.txt': 'late', 'late/too': '(folder)' }));
    expect(await snapshot(out)).toMatchObject({
      ...secondBuild,
      'en/tarn/late.txt': 'late',
      'late/too': '(folder)',
    });
    expect(await beside(out)).toEqual([]);
  });

  it('a new file at a path of ours is kept under another name, with a warning', async () => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    const { diagnostics } = await buildWhile(guide, () => put(out, { 'es/marlow/chart.html': 'mine' }));
    expect(diagnostics.map(({ code }) => code)).toEqual(['output-edited']);
    expect(await snapshot(out)).toMatchObject({ ...secondBuild, 'es/marlow/chart.yours-1.html': 'mine' });
  });

  it('a page that an editor saves is kept under another name', async () => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    await buildWhile(guide, async () => {
      await put(out, { 'saved.tmp': 'saved late' });
      await rename(join(out, 'saved.tmp'), join(out, 'style.css'));
    });
    expect(await snapshot(out)).toMatchObject({ ...secondBuild, 'style.yours-1.css': 'saved late' });
  });

  it('a foreign file that an editor saves is kept in both states', async () => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    await put(out, { 'notes.txt': 'early' });
    await buildWhile(guide, async () => {
      await put(out, { 'saved.tmp': 'late' });
      await rename(join(out, 'saved.tmp'), join(out, 'notes.txt'));
    });
    expect(await snapshot(out)).toMatchObject({ 'notes.txt': 'early', 'notes.yours-1.txt': 'late' });
  });

  it('a lock that another build took over ends this one before it swaps', async () => {
    const { guide, out } = await tempGuide();
    await setUp(guide);
    const before = await snapshot(out);
    const lock = join(guide, '.dist.lock');
    const { diagnostics } = await buildWhile(guide, () => writeFile(lock, '{"pid":1,"token":"another"}'));
    expect(diagnostics.map(({ code }) => code)).toEqual(['output-busy']);
    expect(await snapshot(out)).toEqual(before);
    expect(await textAt(lock)).toContain('another');
  });
});
