/**
 * Every demonstration sheet as its PDF is heard: the tag tree holds what a listener needs, tells the same words in the
 * same order as the page, and one sheet of each kind is kept as the text that was read from start to end.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { SheetDocument, SheetKind } from '../../scripts/document/document.ts';
import { renderBlocks } from '../../scripts/html/render.ts';
import { shortAddress } from '../../scripts/pdf/sources.ts';
import { check } from '../../scripts/pipeline.ts';
import { wordsOfPage } from '../html/reading.ts';
import { heard } from '../pdf/listen.ts';
import {
  isElement,
  isWords,
  readStructure,
  type PdfStructure,
  type StructureElement,
} from '../pdf/read-structure.ts';
import { structureFaults } from '../pdf/structure-rules.ts';
import { render } from '../pdf/sheets.ts';
import { repository } from './demo-guide.ts';

const { sheets } = await check({ root: repository, builtInRoot: repository });
const named = sheets.map(({ region, sheet, composed }) => ({
  name: `${region.id}/${sheet.id}`,
  document: composed.document,
}));

/** The sheet that is kept as text for each kind. */
const kept: Readonly<Record<SheetKind, string>> = {
  'planting-chart': 'larkwether/planting-chart',
  'build-card': 'larkwether/straw-bale-cold-frame',
  'fact-sheet': 'larkwether/onions',
  'climate-sheet': 'larkwether/climate',
  'class-handout': 'larkwether/cold-frame-class',
  'companion-sheet': 'larkwether/cold-frame-segment',
};

test('there is a sheet of every kind', () => {
  expect(named.map(({ name }) => name)).toEqual(expect.arrayContaining(Object.values(kept)));
});

describe.each(named)('$name', ({ name, document }) => {
  let pdf: PdfStructure | undefined;
  beforeAll(async () => {
    const rendered = await render(document);
    pdf = readStructure(rendered.bytes);
  });
  afterAll(() => {
    pdf = undefined;
  });

  test('can be followed by someone who only listens', () => {
    expect(structureFaults(pdf!)).toEqual([]);
  });

  test('has the words of the page in the order of the page', () => {
    const page = wordsOfPage(renderBlocks(document, { textSizePt: 11 }));
    expect(lowerCase(blockWords(pdf!, document))).toEqual(lowerCase(page));
  });

  if (Object.values(kept).includes(name))
    test('sounds as it was read', async () => {
      await expect(heard(pdf!)).toMatchFileSnapshot(`../pdf/golden/${document.kind}.heard.txt`);
    });
});

/** Signal words are printed in capitals. */
const lowerCase = (words: readonly string[]): string => words.map((word) => word.toLowerCase()).join(' ');

/** What paper adds to the words of the blocks: the band at the top, the foot, and addresses that cannot be clicked. */
function blockWords({ root }: PdfStructure, document: SheetDocument): readonly string[] {
  const band = document.notice === undefined ? 3 : 4;
  const blocks = root.kids.filter(isElement).slice(band, -1);
  return blocks
    .map(wordsIn)
    .join(' ')
    .split(/\s+/)
    .filter((word) => word !== '');
}

const runsAlong = new Set(['Link', 'Span', 'Reference']);

function wordsIn(element: StructureElement): string {
  if (element.standardRole === 'Figure') return ' ';
  const inner = element.kids
    .map((kid) => (isWords(kid) ? kid.text : isElement(kid) ? wordsIn(kid) : ''))
    .join('');
  if (element.standardRole === 'Lbl' && /^\s*(?:[•–]|\d+\.)\s*$/.test(inner)) return ' ';
  if (element.actualText !== undefined) return ` ${element.actualText} `;
  if (element.standardRole === 'Link' && isPrintedAddress(element, inner)) return ' ';
  return runsAlong.has(element.standardRole) ? inner : ` ${inner} `;
}

const isPrintedAddress = (link: StructureElement, words: string): boolean =>
  link.kids.some((kid) => 'href' in kid && shortAddress(kid.href) === words.replace(/\s/g, ''));
