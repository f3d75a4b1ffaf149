import { spawnSync } from 'node:child_process';
import { mkdir, mkdtemp, readdir, rm, symlink, utimes, writeFile } from 'node:fs/promises';
import { hostname, tmpdir } from 'node:os';
import path from 'node:path';
import { HtmlValidate } from 'html-validate';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { relativeAddress } from '../../scripts/html/page-data.ts';
import type { Site } from '../../scripts/html/site-model.ts';
import { renderSite } from '../../scripts/html/site.ts';
import { attributes, headingLevelsOf, tags, wordsOfPage } from './reading.ts';
import { awkwardPage, layoutsFolder, showcasePath, siteOptions } from './sample-site.ts';

vi.setConfig({ testTimeout: 30_000 });

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'layouts-test-'));
});
afterEach(async () => {
  await rm(folder, { recursive: true });
});

/** Renders with one layout of the guide's own. */
async function siteWith(name: string, body: string): Promise<Site> {
  const file = path.join(folder, name);
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(file, body);
  return renderSite(siteOptions({ layoutsFolder: folder }));
}

function textOf({ files, diagnostics }: Site, name: string): string {
  expect(diagnostics).toEqual([]);
  const file = files.get(name);
  if (typeof file !== 'string') throw new Error(`no page ${name}`);
  return file;
}

describe('a site', () => {
  it('has the sheets, the index, the style sheet, and every font with its licence', async () => {
    const { files } = await renderSite(siteOptions());
    expect([...files.keys()].sort()).toEqual([
      'assets/fonts/LICENSE-SourceSans3.md',
      'assets/fonts/LICENSE-SourceSerif4.md',
      'assets/fonts/SourceSans3-It.woff2',
      'assets/fonts/SourceSans3-Regular.woff2',
      'assets/fonts/SourceSans3-Semibold.woff2',
      'assets/fonts/SourceSerif4-Semibold.woff2',
      'assets/style.css',
      showcasePath,
      'index.html',
    ]);
    expect(Buffer.from(files.get('assets/fonts/LICENSE-SourceSans3.md') as Uint8Array).toString()).toContain(
      'SIL OPEN FONT LICENSE',
    );
  });

  it('is the same to the byte when it is rendered again', async () => {
    const [first, second] = [await renderSite(siteOptions()), await renderSite(siteOptions())];
    expect([...first.files.keys()]).toEqual([...second.files.keys()]);
    for (const [name, body] of first.files) expect(second.files.get(name), name).toEqual(body);
  });

  it('tells neither where nor with what it was made', async () => {
    const { files } = await renderSite(siteOptions());
    for (const [name, body] of files) {
      if (typeof body !== 'string') continue;
      expect(body, name).not.toMatch(/eleventy|generator|_includes|node_modules|file:|undefined|\[object/i);
      for (const place of [tmpdir(), process.cwd()]) expect(body, name).not.toContain(place);
    }
  });

  it('loads nothing from elsewhere and runs no script', async () => {
    const site = await renderSite(siteOptions());
    for (const name of ['index.html', showcasePath]) {
      const page = textOf(site, name);
      expect(tags(page, 'script')).toEqual([]);
      const loaded = [...tags(page, 'link'), ...tags(page, 'img')].flatMap((tag) => [
        ...attributes(tag, 'href'),
        ...attributes(tag, 'src'),
      ]);
      expect(loaded.filter((address) => /^[a-z]+:|^\/\//.test(address))).toEqual([]);
    }
    expect(textOf(site, 'assets/style.css')).not.toMatch(/https?:|@import/);
  });

  it('can render the index without any sheet', async () => {
    const { files, diagnostics } = await renderSite(siteOptions({ documents: [] }));
    expect(diagnostics).toEqual([]);
    expect(files.has('index.html')).toBe(true);
    expect(files.has(showcasePath)).toBe(false);
  });

  it('leaves nothing behind in the folder for temporary files, with or without a fault', async () => {
    const temporary = await mkdtemp(path.join(folder, 'temporary-'));
    for (const name of ['TMPDIR', 'TEMP', 'TMP']) vi.stubEnv(name, temporary);
    await renderSite(siteOptions());
    const faulty = await siteWith('sheet.njk', '{{ sheet.titel }}');
    vi.unstubAllEnvs();
    expect(faulty.diagnostics).toHaveLength(1);
    expect(await readdir(temporary)).toEqual([]);
  });

  it('clears away the temporary folders of processes that were killed, and nothing else', async () => {
    const temporary = await mkdtemp(path.join(folder, 'temporary-'));
    const dead = spawnSync(process.execPath, ['--version']).pid;
    const hour = 3_600_000;
    const left = async (name: string, mark: unknown, age: number): Promise<void> => {
      const place = path.join(temporary, name);
      await mkdir(path.join(place, '_includes'), { recursive: true });
      if (mark === undefined) return;
      const file = path.join(place, 'made-by-groundsheet.json');
      await writeFile(file, typeof mark === 'string' ? mark : JSON.stringify(mark));
      await utimes(file, new Date(Date.now() - age), new Date(Date.now() - age));
    };
    const host = hostname();
    await left('groundsheet-killed', { host, pid: dead }, 2 * hour);
    await left('groundsheet-just-made', { host, pid: dead }, 0);
    await left('groundsheet-running', { host, pid: process.pid }, 2 * hour);
    await left('groundsheet-elsewhere', { host: 'another-computer', pid: dead }, 2 * hour);
    await left('groundsheet-of-a-person', undefined, 2 * hour);
    await left('groundsheet-with-a-note', 'a note', 2 * hour);
    await left('other-killed', { host, pid: dead }, 2 * hour);
    await writeFile(path.join(temporary, 'groundsheet-notes'), 'notes');
    const before = await readdir(temporary);
    for (const name of ['TMPDIR', 'TEMP', 'TMP']) vi.stubEnv(name, temporary);
    const { diagnostics } = await renderSite(siteOptions());
    vi.unstubAllEnvs();
    expect(diagnostics).toEqual([]);
    expect(await readdir(temporary)).toEqual(before.filter((name) => name !== 'groundsheet-killed'));
  });

  it('takes the words of a title for words, not for a template or markup', async () => {
    const page = textOf(await renderSite(siteOptions({ documents: [awkwardPage] })), awkwardPage.path);
    expect(page).toContain('<h1>Peas &amp; &lt;beans&gt; {{ sheet.title }} {% if %}</h1>');
  });
});

describe.each(['index.html', showcasePath])('%s', (name) => {
  it('is valid', async () => {
    const validator = new HtmlValidate({ root: true, extends: ['html-validate:recommended'] });
    const page = textOf(await renderSite(siteOptions()), name);
    const report = await validator.validateString(page, name);
    expect(
      report.results.flatMap((result) => result.messages).map(({ ruleId, message }) => ruleId + message),
    ).toEqual([]);
  });

  it('has one first heading, skips no level, and ids that are unique', async () => {
    const page = textOf(await renderSite(siteOptions()), name);
    const levels = headingLevelsOf(page);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    expect(levels[0]).toBe(1);
    expect(levels.filter((level, place) => place > 0 && level > levels[place - 1]! + 1)).toEqual([]);
    const ids = attributes(page, 'id');
    expect(ids.filter((id, place) => ids.indexOf(id) !== place)).toEqual([]);
  });

  it('leads to files of the site and to places on the page', async () => {
    const site = await renderSite(siteOptions());
    const page = textOf(site, name);
    const ids = new Set(attributes(page, 'id'));
    const known = new Set([
      ...site.files.keys(),
      'en/example-county/showcase.pdf',
      'en/example-county/planting-chart.html',
      'en/example-county/planting-chart.pdf',
    ]);
    const broken = attributes(page, 'href').filter((href) => {
      if (/^https?:/.test(href)) return false;
      if (href.startsWith('#')) return !ids.has(href.slice(1));
      return !known.has(path.posix.join(path.posix.dirname(name), href));
    });
    expect(broken).toEqual([]);
  });
});

describe('the title band and the foot', () => {
  it('say what, where, when and whose, in that order, and what is for demonstration', async () => {
    const words = wordsOfPage(textOf(await renderSite(siteOptions()), showcasePath)).join(' ');
    const band =
      'Skip to content All guides Print version (PDF, 3 pages, 180 KB) Fact sheet MX-000 Every part of a sheet ' +
      'Dates for Example County, 45.2° N, 2027 Demonstration data: this county and its figures are invented.';
    expect(words).toContain(band);
    expect(words).toContain(
      'Example County Office MX-000 Issued January 15, 2027 Review by January 2029 guides.example.org/mx-000',
    );
  });

  it('name the PDF of each sheet of the index by its sheet', async () => {
    const page = textOf(await renderSite(siteOptions()), 'index.html');
    const names = tags(page, 'a').flatMap((tag) => attributes(tag, 'aria-labelledby'));
    expect(names).toEqual(['example-county_1_pdf example-county_1', 'example-county_2_pdf example-county_2']);
  });
});

describe('a layout of the guide', () => {
  it('takes the place of the built-in one, alone', async () => {
    const site = await siteWith('sheet.njk', '<title>{{ sheet.title }}</title>{{ content | safe }}');
    expect(textOf(site, showcasePath)).toMatch(/^<title>Every part of a sheet<\/title><p class="lead">/);
    expect(textOf(site, 'index.html')).toContain('<h1>Garden guides</h1>');
  });

  it('can be a part of a page', async () => {
    const site = await siteWith('partials/sheet-foot.njk', '<footer>Ours</footer>');
    expect(textOf(site, showcasePath)).toContain('<footer>Ours</footer>');
  });

  it('can be the style sheet, with the values of the design', async () => {
    const site = await siteWith('style.css.njk', 'body { color: {{ design.colour.light.ink }} }');
    expect(textOf(site, 'assets/style.css')).toBe('body { color: #1b1c18 }');
  });

  it.skipIf(process.platform === 'win32')('can be a link within the guide, never one out of it', async () => {
    const [guide, elsewhere] = [path.join(folder, 'guide'), path.join(folder, 'elsewhere')];
    for (const place of [path.join(guide, 'layouts', 'partials'), path.join(guide, 'shared'), elsewhere])
      await mkdir(place, { recursive: true });
    await writeFile(path.join(guide, 'shared', 'foot.njk'), '<footer>Ours</footer>');
    await writeFile(path.join(elsewhere, 'style.css.njk'), 'body { color: theirs }');
    const layouts = path.join(guide, 'layouts');
    await symlink('../../shared/foot.njk', path.join(layouts, 'partials', 'sheet-foot.njk'));
    await symlink('../../elsewhere/style.css.njk', path.join(layouts, 'style.css.njk'));
    await symlink('..', path.join(layouts, 'partials', 'again'));
    const site = await renderSite(siteOptions({ layoutsFolder: layouts }));
    expect(textOf(site, showcasePath)).toContain('<footer>Ours</footer>');
    expect(textOf(site, 'assets/style.css')).not.toContain('theirs');
    await symlink('../elsewhere', path.join(guide, 'linked'));
    const away = await renderSite(siteOptions({ layoutsFolder: path.join(guide, 'linked') }));
    expect(textOf(away, 'assets/style.css')).not.toContain('theirs');
  });

  it('is none where the folder of layouts is a file', async () => {
    await writeFile(path.join(folder, 'layouts'), 'a file');
    const site = await renderSite(siteOptions({ layoutsFolder: path.join(folder, 'layouts') }));
    expect(textOf(site, 'index.html')).toContain('<h1>Garden guides</h1>');
  });

  const faults: readonly {
    name: string;
    file: string;
    body: string;
    message: RegExp;
    line: number;
    column?: number;
  }[] = [
    {
      name: 'prints what the page does not have',
      file: 'sheet.njk',
      body: '<h1>\n  {{ sheet.titel }}</h1>',
      message: /prints \{\{ sheet\.titel \}\}/,
      line: 2,
      column: 3,
    },
    {
      name: 'prints it after a part of the page is included',
      file: 'sheet.njk',
      body: '{% set pageTitle = "" %}{% set description = "" %}{% set root = "" %}\n{% include "partials/head.njk" %}\n\n{{ sheet.titel }}',
      message: /prints \{\{ sheet\.titel \}\}/,
      line: 4,
      column: 1,
    },
    {
      name: 'prints it in a part of the page',
      file: 'partials/sheet-foot.njk',
      body: '<footer>\n{{ sheet.ofice }}\n</footer>',
      message: /prints \{\{ sheet\.ofice \}\}/,
      line: 2,
      column: 1,
    },
    {
      name: 'has a tag that does not close',
      file: 'index.njk',
      body: 'a\n{% if %}',
      message: /unexpected/,
      line: 2,
    },
    {
      name: 'includes a file that is not there',
      file: 'index.njk',
      body: 'a\n{% include "partials/gone.njk" %}',
      message: /partials\/gone\.njk/,
      line: 2,
    },
    {
      name: 'uses a filter that is not there',
      file: 'style.css.njk',
      body: 'a\n\n{{ 1 | brighter }}',
      message: /brighter/,
      line: 3,
    },
    {
      name: 'has a header that cannot be read',
      file: 'sheet.njk',
      body: '---\n a: [\n---\nx',
      message: /starts with a header between hyphens/,
      line: 1,
    },
    {
      name: 'has a header with a layout that is not there',
      file: 'sheet.njk',
      body: '---\nlayout: nope.njk\n---\nx',
      message: /starts with a header between hyphens/,
      line: 1,
    },
    {
      name: 'has a header with itself as layout',
      file: 'sheet.njk',
      body: '---\nlayout: sheet.njk\n---\nx',
      message: /starts with a header between hyphens/,
      line: 1,
    },
    {
      name: 'has a header that is a program',
      file: 'sheet.njk',
      body: '---js\nthrow new Error("run")\n---\nx',
      message: /starts with a header between hyphens/,
      line: 1,
    },
    {
      name: 'has a header after a byte order mark',
      file: 'index.njk',
      body: '\uFEFF---\na: b\n---\nx',
      message: /starts with a header between hyphens/,
      line: 1,
    },
    {
      name: 'is a part and has a header',
      file: 'partials/head.njk',
      body: '---\na: b\n---\nx',
      message: /starts with a header between hyphens/,
      line: 1,
    },
    {
      name: 'includes itself',
      file: 'sheet.njk',
      body: '{% include "sheet.njk" %}',
      message: /includes itself/,
      line: 1,
    },
    {
      name: 'is a part and includes itself',
      file: 'partials/head.njk',
      body: '{% include "partials/head.njk" %}',
      message: /includes itself/,
      line: 1,
    },
    {
      name: 'gives a filter what it cannot take, without the place of a temporary file',
      file: 'sheet.njk',
      body: '{{ 1 | url }}',
      message: /Filter `url`\.$/,
      line: 1,
    },
  ];
  it.each(faults)('that $name is told with its place', async ({ file, body, message, line, column }) => {
    const { files, diagnostics } = await siteWith(file, body);
    expect(files.size).toBe(0);
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics[0]).toMatchObject({
      code: 'layout',
      severity: 'error',
      place: { file: `layouts/${file}`, line, ...(column === undefined ? {} : { column }) },
    });
    expect(diagnostics[0]!.message).toMatch(message);
    expect(diagnostics[0]!.message).not.toContain(folder);
  });

  it('is looked for before the built-in ones, which stand in for the rest', async () => {
    const { diagnostics } = await renderSite(
      siteOptions({ layoutsFolder, fallbackLayoutsFolder: layoutsFolder }),
    );
    expect(diagnostics).toEqual([]);
  });
});

describe('relative addresses', () => {
  it.each([
    { from: 'index.html', to: 'en/a/b.html', address: 'en/a/b.html' },
    { from: 'en/a/b.html', to: 'en/a/b.pdf', address: 'b.pdf' },
    { from: 'en/a/b.html', to: 'en/c/d.pdf', address: '../c/d.pdf' },
    { from: 'en/a/b.html', to: 'index.html', address: '../../index.html' },
    { from: 'en/a/b.html', to: 'en/a', address: '../a' },
    { from: 'a.html', to: 'wide row.pdf', address: 'wide%20row.pdf' },
  ])('from $from to $to', ({ from, to, address }) => {
    expect(relativeAddress(from, to)).toBe(address);
  });
});
