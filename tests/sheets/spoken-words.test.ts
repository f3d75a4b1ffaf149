import { describe, expect, test } from 'vitest';
import {
  column,
  figure,
  findingWords,
  inline,
  paragraph,
  strong,
  table,
} from '../../scripts/document/build.ts';
import type { Block, Inline } from '../../scripts/document/document.ts';
import { shortFormsOf, withSpokenWords } from '../../scripts/sheets/spoken-words.ts';
import { phrasebook } from '../../scripts/wording/phrases.ts';
import { makeDocument } from '../document/showcase.ts';

const phrases = new Map([
  ['abbreviation.after-tied-number.in', '{count, plural, one {inch} other {inches}}'],
  ['abbreviation.after-number.ft', '{count, plural, one {foot} other {feet}}'],
  ['abbreviation.after-number.ft²', 'square feet'],
  ['abbreviation.after-number.km/h', 'kilometers per hour'],
  ['abbreviation.before-number.Mar', 'March'],
  ['abbreviation.alone.–', 'none'],
  ['abbreviation.line-to-write-on', 'a blank'],
]);
const crops = [{ latin: 'Daucus carota' }, { latin: 'Beta vulgaris (Conditiva Group)' }];
const forms = shortFormsOf({ phrases, crops: crops as never }, phrasebook(phrases, 'en'));
const marked = (block: Block): Block => withSpokenWords(makeDocument([block]), forms).blocks[0]!;

/** The words with what is told of them in brackets. */
const told = (content: readonly Inline[]): string =>
  content
    .map((node): string => {
      if (node.kind === 'text') return node.text.replaceAll('\u00A0', '~');
      const inner = told(node.content);
      if (node.kind === 'abbreviation') return `[${inner}=${node.expansion}]`;
      return node.kind === 'language' ? `[${inner}:${node.tag}]` : inner;
    })
    .join('');

describe('words as they are said', () => {
  const cases: readonly { name: string; words: string; expected: string }[] = [
    { name: 'one inch', words: '1~in deep', expected: '1~[in=inch] deep' },
    { name: 'half an inch', words: '½~in', expected: '½~[in=inch]' },
    { name: 'a sixteenth', words: '1⁄16~in', expected: '1⁄16~[in=inch]' },
    { name: 'more than one inch', words: '1~5⁄16~in', expected: '1~5⁄16~[in=inches]' },
    { name: 'a range that ends at an inch', words: '½–1~in', expected: '½–1~[in=inch]' },
    { name: 'no inch at all', words: '0~in', expected: '0~[in=inches]' },
    { name: 'feet and inches', words: '6~ft~7¾~in', expected: '6~[ft=feet]~7¾~[in=inches]' },
    { name: 'a space becomes one that ties', words: 'a row of 10 ft.', expected: 'a row of 10~[ft=feet].' },
    { name: 'a word that is no unit', words: 'plant 5 in each hill', expected: 'plant 5 in each hill' },
    {
      name: 'a longer unit',
      words: '12~ft² and 20~km/h',
      expected: '12~[ft²=square feet] and 20~[km/h=kilometers per hour]',
    },
    { name: 'a unit within a word', words: '3~fts', expected: '3~fts' },
    { name: 'a month before its day', words: 'Mar~14–28', expected: '[Mar=March]~14–28' },
    { name: 'a month in full', words: 'March~14, Mar is short', expected: 'March~14, Mar is short' },
    {
      name: 'a Latin name',
      words: 'the carrot, Daucus carota, and beets',
      expected: 'the carrot, [Daucus carota:la], and beets',
    },
    {
      name: 'a Latin name with brackets',
      words: 'Beta vulgaris (Conditiva Group)',
      expected: '[Beta vulgaris (Conditiva Group):la]',
    },
    { name: 'a line to write on', words: 'Sown on ______', expected: 'Sown on [______=a blank]' },
  ];
  test.each(cases)('$name', ({ words, expected }) => {
    const text = words.replaceAll('~', '\u00A0');
    const block = marked(paragraph(text));
    expect(block.kind === 'paragraph' && told(block.content)).toBe(expected);
    const inFinding = marked(paragraph(findingWords('a.b', strong(text))));
    expect(inFinding.kind === 'paragraph' && told(inFinding.content)).toBe(expected);
  });

  test('in a table: a dash alone in a cell, a month alone, a unit in the head', () => {
    const block = marked(
      table({
        id: 'months',
        caption: 'Months',
        columns: [column('Month'), column('Rain', { unit: 'in' })],
        groups: [
          { rows: [{ cells: [inline('Mar'), inline('–')] }, { cells: [inline('May – June'), inline('2')] }] },
        ],
      }),
    );
    if (block.kind !== 'table') throw new TypeError('not a table');
    expect(block.groups[0]!.rows.map(({ cells }) => cells.map(told))).toEqual([
      ['[Mar=March]', '[–=none]'],
      ['May – June', '2'],
    ]);
    expect(block.columns.map(({ unitWords }) => unitWords)).toEqual([undefined, 'inches']);
  });

  test('of a drawing are written out', () => {
    const scene = {
      id: 'a',
      widthMm: 10,
      heightMm: 10,
      alternative: 'A board, 6\u00A0ft by ½\u00A0in.',
      items: [],
    };
    const block = marked(figure(scene));
    expect(block.kind === 'figure' && block.scene.alternative.replaceAll('\u00A0', ' ')).toBe(
      'A board, 6 feet by ½ inch.',
    );
  });

  test('stay as they are in a language without short forms', () => {
    const none = shortFormsOf({ phrases: new Map(), crops: [] }, () => '');
    const block = paragraph('6\u00A0ft, Mar\u00A014, __ and 2 in');
    expect(withSpokenWords(makeDocument([block]), none).blocks).toEqual([block]);
  });
});
