import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeManifest, readManifest } from '../../scripts/publish/manifest.ts';
import { publish, type ManifestEntry } from '../../scripts/publish/publish.ts';
import { tempGuide } from './temp-guide.ts';

const files = new Map([
  ['index.html', 'guides'],
  ['en/marlow/chart.pdf', 'chart'],
  ['style.css', ''],
]);
const entries: readonly ManifestEntry[] = [
  {
    path: 'en/marlow/chart.pdf',
    kind: 'planting-chart',
    title: 'Planting chart',
    region: 'marlow',
    language: 'en',
    pages: 2,
    findings: ['freeze.last.32f.50', 'carrot.sow-spring'],
  },
  { path: 'index.html', kind: 'page-index', language: 'en', findings: [] },
];

// Checksums from the sha256sum program.
const expected = `{
  "files": [
    {
      "bytes": 5,
      "findings": [
        "freeze.last.32f.50",
        "carrot.sow-spring"
      ],
      "kind": "planting-chart",
      "language": "en",
      "pages": 2,
      "path": "en/marlow/chart.pdf",
      "region": "marlow",
      "sha256": "cc57fc1903e444cf6a726490b43b27ee9f87facc037f86872201847c565b45fb",
      "title": "Planting chart"
    },
    {
      "bytes": 6,
      "kind": "page-index",
      "language": "en",
      "path": "index.html",
      "sha256": "9893ff995bf32a4fd2eba93151c93b612a5e4d573ed42a771d64767366f93c15"
    },
    {
      "bytes": 0,
      "kind": "asset",
      "path": "style.css",
      "sha256": "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"
    }
  ],
  "format": 1,
  "madeBy": "Groundsheet"
}
`;

describe('the manifest', () => {
  it('lists every file with all that is known of it, in order', async () => {
    const { guide, out } = await tempGuide();
    await publish({ out, guide, files, entries });
    expect(await readFile(join(out, 'manifest.json'), 'utf8')).toBe(expected);
  });

  it('has the same bytes whatever the order of files and entries, in any folder', async () => {
    const { guide } = await tempGuide();
    const orders = [
      { out: join(guide, 'one'), files, entries },
      { out: join(guide, 'two'), files: new Map([...files].reverse()), entries: [...entries].reverse() },
    ];
    for (const order of orders) await publish({ guide, ...order });
    for (const { out } of orders) expect(await readFile(join(out, 'manifest.json'), 'utf8')).toBe(expected);
  });

  it.each([
    ['an entry without a file', [{ path: 'gone.html', kind: 'page-index', findings: [] }], /no such file/],
    ['two entries of one file', [entries[1]!, entries[1]!], /two entries/],
  ])('refuses %s', async (_, wrong, message) => {
    const { guide, out } = await tempGuide();
    await expect(publish({ out, guide, files, entries: wrong })).rejects.toThrow(message);
  });

  it('is read back as it was made', () => {
    const reading = readManifest(makeManifest(new Map([['a.html', Buffer.from('a')]]), []));
    expect(reading).toEqual({
      state: 'ours',
      files: new Map([
        ['a.html', { bytes: 1, sha256: 'ca978112ca1bbdcafac231b39a23dc4da786eff8147c4e72b9807785afee48bb' }],
      ]),
    });
  });

  it.each([
    ['another program', '{"madeBy":"Another","format":1,"files":[]}', 'not-ours'],
    ['no object', '[]', 'not-ours'],
    ['cut short', expected.slice(0, 100), 'not-ours'],
    ['a later form', '{"madeBy":"Groundsheet","format":2,"files":[]}', 'other-format'],
    ['no list of files', '{"madeBy":"Groundsheet","format":1}', 'other-format'],
    [
      'a file without a checksum',
      '{"madeBy":"Groundsheet","format":1,"files":[{"path":"a","bytes":1}]}',
      'other-format',
    ],
  ])('of %s is judged', (_, text, state) => {
    expect(readManifest(text).state).toBe(state);
  });
});
