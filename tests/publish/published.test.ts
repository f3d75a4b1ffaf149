import { symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sha256Of } from '../../scripts/publish/manifest.ts';
import { publish } from '../../scripts/publish/publish.ts';
import { publishedIn } from '../../scripts/publish/published.ts';
import { put } from './folders.ts';
import { tempGuide } from './temp-guide.ts';

const keep = 'keep this';
const item = {
  path: 'keep.html',
  kind: 'chart',
  bytes: keep.length,
  sha256: sha256Of(Buffer.from(keep)),
};

function manifestOf(files: unknown): string {
  return JSON.stringify({ files, format: 1, madeBy: 'Groundsheet' });
}

describe('what an earlier build published', () => {
  it('is each file as it lies there, with all that the manifest says of it', async () => {
    const { guide, out } = await tempGuide();
    const entry = {
      path: 'en/a.pdf',
      kind: 'chart',
      title: 'Carrot',
      region: 'marlow',
      language: 'en',
      pages: 2,
      findings: ['last-frost'],
    };
    await publish({ out, guide, files: new Map([['en/a.pdf', 'one']]), entries: [entry] });
    expect(await publishedIn(out)).toEqual(new Map([['en/a.pdf', { bytes: Buffer.from('one'), entry }]]));
    await put(out, { 'en/a.pdf': 'changed' });
    expect(await publishedIn(out)).toEqual(new Map());
  });

  it.each<[string, string]>([
    ['no JSON', 'manifest'],
    ['no object', 'null'],
    ['another form', JSON.stringify({ files: [item], format: 2, madeBy: 'Groundsheet' })],
    ['no list', manifestOf({ path: 'keep.html' })],
    ['an entry that is nothing', manifestOf([null, item])],
    ['an entry without a path', manifestOf([{}, item])],
    ['a path that is a number', manifestOf([{ ...item, path: 5 }])],
    ['a path above the folder', manifestOf([{ ...item, path: '../keep' }])],
    ['a path above the folder, further in', manifestOf([{ ...item, path: 'en/../../keep' }])],
    ['a path from the top of the disk', manifestOf([{ ...item, path: '/keep' }])],
    ['the manifest itself', manifestOf([{ ...item, path: 'manifest.json' }])],
    ['a path twice, but for case', manifestOf([item, { ...item, path: 'Keep.html' }])],
    ['a kind that is a list', manifestOf([{ ...item, kind: [] }])],
    ['a title that is a number', manifestOf([{ ...item, title: 5 }])],
    ['a number of pages that is a word', manifestOf([{ ...item, pages: 'two' }])],
    ['findings that are no list', manifestOf([{ ...item, findings: 'last-frost' }])],
    ['findings that are numbers', manifestOf([{ ...item, findings: [1] }])],
  ])('is nothing when the manifest has %s', async (_, manifest) => {
    const { guide, out } = await tempGuide();
    await put(guide, { keep, 'dist/keep.html': keep, 'dist/manifest.json': manifest });
    expect(await publishedIn(out)).toEqual(new Map());
  });

  it.skipIf(process.platform === 'win32')('is not what lies behind a link', async () => {
    const { guide, out } = await tempGuide();
    const behind = [
      { ...item, path: 'link.html' },
      { ...item, path: 'away/keep.html' },
    ];
    await put(guide, { 'outside/keep.html': keep, 'dist/keep.html': keep });
    await put(out, { 'manifest.json': manifestOf([item, ...behind]) });
    await symlink('../outside', join(out, 'away'));
    await symlink('../outside/keep.html', join(out, 'link.html'));
    expect([...(await publishedIn(out)).keys()]).toEqual(['keep.html']);
  });
});
