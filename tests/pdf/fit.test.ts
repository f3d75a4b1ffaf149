import { describe, expect, it } from 'vitest';
import { caution, column, figure, inline, paragraph, table, wide } from '../../scripts/document/build.ts';
import type { Block } from '../../scripts/document/document.ts';
import type { Scene } from '../../scripts/drawings/scene.ts';
import { sharedWidths } from '../../scripts/pdf/widths.ts';
import { makeDocument } from '../document/showcase.ts';
import { readPdf, wordsOfPdf } from './read-pdf.ts';
import { fileText, fonts, render } from './sheets.ts';

const scene = (widthMm: number, heightMm: number): Scene => ({
  id: 'frame',
  widthMm,
  heightMm,
  alternative: 'A frame.',
  items: [{ kind: 'text', x: 5, y: 10, text: 'Frame', anchor: 'start', style: 'label' }],
});

describe('a character that no font has', () => {
  it('is reported once, with its code, and printed as a box', async () => {
    const { bytes, diagnostics } = await render(makeDocument([paragraph('Rice 米 and more 米')]));
    expect(diagnostics).toMatchObject([{ code: 'missing-glyph', severity: 'error' }]);
    expect(diagnostics[0]?.message).toContain('米 (U+7C73)');
    expect(wordsOfPdf(await readPdf(bytes)).join(' ')).toContain('Rice □ and more □');
  });

  it('is reported for words in a drawing, in the title and in the foot too', async () => {
    const drawing: Scene = {
      ...scene(40, 20),
      items: [{ kind: 'text', x: 0, y: 9, text: '甲', anchor: 'start', style: 'strong' }],
    };
    const { diagnostics } = await render(
      makeDocument([figure(drawing)], { title: 'Tea 茶', office: 'Office 市' }),
    );
    expect(diagnostics.map(({ message }) => /character (.)/u.exec(message)?.[1])).toEqual(['茶', '甲', '市']);
  });

  it('is none of those that sheets need', () => {
    expect(fonts.missingCharacters('½¼¾⅓⅔⅛⅜⅝⅞⁄°′″×–—−÷áéíóúñÑü¿¡☐✓≥≤≈±µ•→←₂²€‑·…“”‘’')).toEqual([]);
    expect(fonts.missingCharacters('a米b米')).toEqual(['米']);
  });
});

describe('what does not fit', () => {
  const long = 'Long soil that has been walked on sets hard. '.repeat(120);
  const wideTable = (words: number): Block =>
    table({
      id: 'words',
      caption: 'Words',
      columns: Array.from({ length: words }, (_, index) => column(`Extraordinarily-${index}`)),
      groups: [{ rows: [{ cells: Array.from({ length: words }, () => inline('Incomprehensibilities')) }] }],
    });
  const cases: readonly { name: string; blocks: readonly Block[]; severity: string; names: string }[] = [
    {
      name: 'a drawing much wider than the page',
      blocks: [wide([figure(scene(240, 60))])],
      severity: 'warning',
      names: 'frame',
    },
    {
      name: 'a drawing much taller than the page',
      blocks: [figure(scene(100, 300))],
      severity: 'warning',
      names: 'frame',
    },
    { name: 'a table of long words', blocks: [wideTable(7)], severity: 'warning', names: 'words' },
    {
      name: 'a caution longer than a page',
      blocks: [
        caution({
          signal: 'warning',
          signalText: 'Warning',
          hazard: inline(long),
          avoidance: inline('Stop.'),
        }),
      ],
      severity: 'error',
      names: 'taller than a page',
    },
  ];
  it.each(cases)('$name is reported', async ({ blocks, severity, names }) => {
    const { diagnostics } = await render(makeDocument(blocks));
    expect(diagnostics).toMatchObject([{ code: 'does-not-fit', severity }]);
    expect(diagnostics[0]?.message).toContain(names);
  });

  const fitting: readonly { name: string; blocks: readonly Block[] }[] = [
    { name: 'a drawing as wide as the page that stands in the text', blocks: [figure(scene(175, 60))] },
    { name: 'a drawing that must shrink a little', blocks: [wide([figure(scene(200, 60))])] },
    { name: 'a table of long words that small type makes room for', blocks: [wide([wideTable(4)])] },
    { name: 'a long address', blocks: [paragraph(`See guides.example.org/${'folder/'.repeat(30)}`)] },
  ];
  it.each(fitting)('$name is no fault', async ({ blocks }) => {
    expect((await render(makeDocument(blocks))).diagnostics).toEqual([]);
  });
});

describe('a sheet meant for one page', () => {
  const line = 'A line.';
  const lines = (count: number): readonly Block[] => Array.from({ length: count }, () => paragraph(line));
  const onePage = (count: number, fit: { fit?: 'one-page' } = { fit: 'one-page' }) =>
    render(makeDocument(lines(count), fit));

  it('is told by how much it is too long, in lines and in millimetres', async () => {
    // The band of the showcase takes 97 points of the 676.8, and 18 stand under it: 25 lines fit, each with 7.5 above it.
    expect((await onePage(25)).diagnostics).toEqual([]);
    const { diagnostics, pages } = await onePage(28);
    expect(pages).toBe(2);
    expect(diagnostics).toMatchObject([{ code: 'past-one-page', severity: 'warning' }]);
    expect(diagnostics[0]?.message).toMatch(/ by \d+ lines of text \(\d+ mm\)\./);
    const [told, more] = [diagnostics, (await onePage(38)).diagnostics].map((each) =>
      Number(/\((\d+) mm\)/.exec(each[0]!.message)![1]),
    );
    // Ten paragraphs of a line more, each of 22.5 points.
    expect(more! - told!).toBeCloseTo((10 * 22.5 * 25.4) / 72, -0.5);
  });

  it('is told nothing where any length is right', async () => {
    expect((await onePage(80, {})).diagnostics).toEqual([]);
  });

  it('is set as any other sheet', async () => {
    const [fitted, free] = await Promise.all([onePage(40), onePage(40, {})]);
    expect(Buffer.from(fitted.bytes).equals(Buffer.from(free.bytes))).toBe(true);
  });
});

describe('cells of a table', () => {
  it('stay on one line where the table has room for it, whatever the weights', async () => {
    const weight = '21–24 lb (9.5–10.7 kg)';
    const cells = ['X', '27 in', '3 in', weight];
    const block = table({
      id: 'sashes',
      caption: 'Sashes',
      columns: cells.map((_, index) => column(`Column ${index}`)),
      groups: [{ rows: [{ cells: cells.map((cell) => inline(cell)) }] }],
    });
    const { bytes } = await render(makeDocument([block]));
    expect(
      fileText(bytes)
        .match(/\/TD <<\/MCID \d+>> BDC\n(?:BT [^\n]*\n)+EMC/g)
        ?.map((cell) => cell.split('BT ').length - 1),
    ).toEqual([1, 1, 1]);
  });
});

describe('widths of columns', () => {
  const cases: readonly {
    name: string;
    least: number[];
    weights: number[];
    room: number;
    expected: number[];
  }[] = [
    {
      name: 'follow the weights where all words fit',
      least: [10, 10],
      weights: [3, 1],
      room: 100,
      expected: [75, 25],
    },
    {
      name: 'give a narrow column its longest word',
      least: [10, 40],
      weights: [3, 1],
      room: 100,
      expected: [60, 40],
    },
    {
      name: 'take the rest from the others by weight',
      least: [10, 10, 50],
      weights: [2, 1, 1],
      room: 110,
      expected: [40, 20, 50],
    },
    {
      name: 'share by need when there is too little',
      least: [100, 50],
      weights: [1, 1],
      room: 75,
      expected: [50, 25],
    },
  ];
  it.each(cases)('$name', ({ least, weights, room, expected }) => {
    expect(sharedWidths(least, weights, room)).toEqual(expected);
  });
});
