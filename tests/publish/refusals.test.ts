import { spawnSync } from 'node:child_process';
import { mkdir, symlink } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { publish } from '../../scripts/publish/publish.ts';
import { beside, put, snapshot, type Snapshot } from './folders.ts';
import { firstBuild, options, secondBuild } from './scenario.ts';
import { tempGuide } from './temp-guide.ts';

/** Publishes and expects one refusal; nothing in or beside the folder may have changed. */
async function expectRefusal(guide: string, out: string, message: RegExp): Promise<void> {
  const all = await snapshot(guide);
  const { diagnostics } = await publish({ ...options(guide, secondBuild), out });
  expect(diagnostics.map(({ code, severity }) => [code, severity])).toEqual([['output-not-ours', 'error']]);
  expect(diagnostics[0]!.message).toMatch(message);
  expect(await snapshot(guide)).toEqual(all);
}

describe('a folder that Groundsheet did not make', () => {
  it.each<[string, Snapshot]>([
    ['somebody’s documents', { 'letter.odt': 'Dear' }],
    ['a folder with only a folder in it', { empty: '(folder)' }],
    ['a checkout of a web site', { '.git/HEAD': 'ref: refs/heads/main', '.gitignore': '' }],
    ['a manifest of another program', { 'manifest.json': '{"name":"app"}' }],
    ['a manifest that is no JSON', { 'manifest.json': 'manifest' }],
    ['an earlier output without its manifest', firstBuild],
    ['a file among what systems put everywhere', { '.DS_Store': '', 'plan.txt': 'plan' }],
  ])('is refused: %s', async (_, things) => {
    const { guide, out } = await tempGuide();
    await put(out, things);
    await expectRefusal(guide, out, /holds files, and nothing shows that Groundsheet made it/);
  });

  it('is refused with another hint when the manifest is of a later form', async () => {
    const { guide, out } = await tempGuide();
    await put(out, { 'manifest.json': '{"files":[],"format":9,"madeBy":"Groundsheet"}' });
    await expectRefusal(guide, out, /cannot be read by this version/);
  });

  it('is refused when its manifest speaks of files outside', async () => {
    const { guide, out } = await tempGuide();
    const file = { path: '../crops.yaml', sha256: 'a'.repeat(64), bytes: 1 };
    await put(out, { 'manifest.json': JSON.stringify({ files: [file], format: 1, madeBy: 'Groundsheet' }) });
    await expectRefusal(guide, out, /cannot be read by this version/);
  });
});

describe('something foreign in the way', () => {
  it.each<[string, Snapshot, RegExp]>([
    [
      'a file where a page goes',
      { 'es/marlow/chart.html': 'mine' },
      /es\/marlow\/chart\.html stands where a sheet/,
    ],
    [
      'a file whose name differs in case alone',
      { 'ES/Marlow/Chart.html': 'mine' },
      /ES\/Marlow\/Chart\.html stands/,
    ],
    ['a file where a folder goes', { es: 'mine' }, /, es stands where/],
    ['a link where a folder goes', { es: '-> en' }, /, es stands where/],
    ['a folder where a page goes', { 'es/marlow/chart.html': '(folder)' }, /chart\.html stands/],
    [
      'a file in a folder where a page goes',
      { 'es/marlow/chart.html/mine.txt': 'mine' },
      /chart\.html\/mine\.txt stands/,
    ],
  ])('is refused: %s', async (_, things, message) => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    await put(out, things);
    await expectRefusal(guide, out, message);
  });

  it.skipIf(process.platform === 'win32')('is refused: a pipe, which cannot be carried over', async () => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    spawnSync('mkfifo', [join(out, 'pipe')]);
    const { diagnostics } = await publish(options(guide, secondBuild));
    expect(diagnostics.map(({ code }) => code)).toEqual(['output-not-ours']);
    expect(await beside(out)).toEqual([]);
  });

  it('is no refusal when it is beside the pages', async () => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    await put(out, { 'es/marlow/chart.txt': 'mine' });
    expect(await publish(options(guide, secondBuild))).toEqual({ diagnostics: [] });
  });
});

describe('a place where output cannot go', () => {
  it.each([
    ['the guide itself', '.', /is the folder of the guide, or holds it/],
    ['a folder that holds the guide', '..', /is the folder of the guide, or holds it/],
    ['the top of the disk', '/', /is the folder of the guide, or holds it/],
    ['the content of the guide', 'content', /lies in the content folder/],
    ['a folder deep in the content', 'content/sheets/web', /lies in the content folder/],
    ['the crops', 'crops/out', /lies in the crops folder/],
    ['the layouts', 'layouts/../layouts', /lies in the layouts folder/],
    ['a file', 'README.md', /is no folder/],
    ['a link to nothing', 'broken', /is a link that leads nowhere/],
    ['a link to a file', 'to-file', /leads to something that is no folder/],
    ['a link into the content', 'to-content', /lies in the content folder/],
    ['a folder behind a link into the content', 'to-content/web', /lies in the content folder/],
    ['a link to the guide', 'to-guide', /is the folder of the guide, or holds it/],
  ])('is refused: %s', async (_, out, message) => {
    const { guide } = await tempGuide();
    await mkdir(join(guide, 'content/sheets'), { recursive: true });
    await put(guide, {
      'README.md': 'read',
      'content/publisher.yaml': 'office: Tarn',
      'to-file': '-> README.md',
    });
    await put(guide, { broken: '-> nowhere', 'to-content': '-> content', 'to-guide': '-> .' });
    await expectRefusal(guide, join(guide, out), message);
  });

  it('is refused when the guide is reached through a link', async () => {
    const { guide } = await tempGuide();
    await mkdir(join(guide, 'real/content'), { recursive: true });
    await symlink('real', join(guide, 'linked'));
    const { diagnostics } = await publish({
      ...options(guide, secondBuild),
      guide: join(guide, 'linked'),
      out: join(guide, 'real/content/out'),
    });
    expect(diagnostics.map(({ code }) => code)).toEqual(['output-not-ours']);
  });

  it('is no refusal in a folder whose name only begins like content', async () => {
    const { guide } = await tempGuide();
    const out = join(guide, 'content-web');
    expect(await publish({ ...options(guide, firstBuild), out })).toEqual({ diagnostics: [] });
  });

  it('is told when the system refuses', async () => {
    const { guide } = await tempGuide();
    await put(guide, { shelf: 'a file' });
    const { diagnostics } = await publish({ ...options(guide, firstBuild), out: join(guide, 'shelf/dist') });
    expect(diagnostics.map(({ code, message }) => [code, message.replaceAll(guide, '')])).toEqual([
      [
        'output-unwritable',
        'The sheets could not be written to /shelf/dist: a file stands where a folder has to be.',
      ],
    ]);
  });
});

describe('after a swap that was cut short', () => {
  it('a folder that someone made meanwhile is not overwritten', async () => {
    const { guide, out } = await tempGuide();
    await put(guide, { '.dist.old/manifest.json': '{"files":[],"format":1,"madeBy":"Groundsheet"}' });
    await put(out, { 'mine.txt': 'mine' });
    await expectRefusal(guide, out, /left its sheets in \.dist\.old, but .* now holds other files/);
  });

  it('an empty folder that someone made meanwhile gives way', async () => {
    const { guide, out } = await tempGuide();
    await publish({ ...options(guide, firstBuild), out: join(guide, '.dist.old') });
    await put(out, { '.DS_Store': 'finder' });
    expect(await publish(options(guide, secondBuild))).toEqual({ diagnostics: [] });
    expect(await snapshot(out)).toMatchObject({ ...secondBuild, '.DS_Store': 'finder' });
    expect(await beside(out)).toEqual([]);
  });
});

describe('paths that the program should not have made', () => {
  it.each([
    ['absolute', ['/etc/passwd']],
    ['above the folder', ['../index.html']],
    ['above the folder, further in', ['en/../../index.html']],
    ['a dot as a part', ['en/./index.html']],
    ['an empty part', ['en//index.html']],
    ['empty', ['']],
    ['a folder', ['en/']],
    ['a backslash', ['en\\index.html']],
    ['a drive', ['C:/index.html']],
    ['a control character', ['in\u0000dex.html']],
    ['a name that Windows keeps', ['aux.html']],
    ['a dot at the end', ['index.']],
    ['twice, but for case', ['Index.html', 'index.html']],
    ['twice, but for how an accent is written', ['ma\u00f1ana.html', 'man\u0303ana.html']],
    ['a folder twice, but for case', ['en/a.html', 'EN/b.html']],
    ['a file that is a folder of another', ['en', 'en/index.html']],
    ['the manifest', ['manifest.json']],
    ['the manifest, but for case', ['Manifest.json']],
  ])('are refused before anything is touched: %s', async (_, paths) => {
    const { guide, out } = await tempGuide();
    const files = new Map(paths.map((path) => [path, 'x']));
    await expect(publish({ out, guide, files, entries: [] })).rejects.toThrow(/^"/);
    expect(await snapshot(dirname(out))).toEqual({});
  });
});
