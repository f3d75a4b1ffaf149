import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inline, link, strong } from '../../scripts/document/build.ts';
import { printable } from '../../scripts/pdf/fonts.ts';
import { breakLines, inlineText, type Line } from '../../scripts/pdf/inline.ts';
import { fonts } from './sheets.ts';

const style = { face: 'regular', sizePt: 11, findings: 'plain' } as const;
const lineText = (line: Line): string => line.fragments.map(({ text }) => text).join('');
const lines = (text: string, width: number): Line[] =>
  breakLines(inlineText(inline(text), style, fonts, 'P').runs, width, style.sizePt, fonts);

describe('line breaking', () => {
  /** Each text on a measure that has room for all but its last word. */
  const cases: readonly { name: string; text: string; unbroken: string }[] = [
    { name: 'before an en dash', text: 'sow Apr 14 – Jul 20', unbroken: '14 –' },
    { name: 'at a no-break space', text: 'wait until April\u00a029 for peas', unbroken: 'April\u00a029' },
    { name: 'around a times sign', text: 'a board of 2 × 6 inches', unbroken: '2 × 6' },
    { name: 'after the hyphen of a number', text: 'a hoe with a 6-inch blade', unbroken: '6-inch' },
    {
      name: 'inside a fraction',
      text: 'plane it to 1\u00a015⁄16\u00a0in thick',
      unbroken: '1\u00a015⁄16\u00a0in',
    },
  ];
  it.each(cases)('never happens $name', ({ text, unbroken }) => {
    const words = fonts.width('regular', text, 11);
    for (let width = fonts.width('regular', unbroken, 11) + 1; width < words; width += 3) {
      expect(lines(text, width).some((line) => lineText(line).includes(unbroken))).toBe(true);
    }
  });

  it('may happen after the hyphen of a long compound', () => {
    expect(lines('north-facing', fonts.width('regular', 'north-fa', 11)).map(lineText)).toEqual([
      'north-',
      'facing',
    ]);
  });

  it('leaves no short word alone on the last line where another break is as good', () => {
    const text =
      'Sow the hardy crops as soon as the soil crumbles in the hand, and wait with tender ones until it is warm.';
    const width = fonts.width('regular', text.slice(0, text.length - 5), 11) / 2 + 4;
    expect(lineText(lines(text, width).at(-1)!)).not.toBe('warm.');
  });

  it('keeps the words and their spaces and never passes the measure', () => {
    const word = fc.stringMatching(/^[a-z½–×\u00a0-]{1,14}$/);
    fc.assert(
      fc.property(
        fc.array(word, { minLength: 1, maxLength: 40 }),
        fc.integer({ min: 30, max: 300 }),
        (words, width) => {
          const text = words.join(' ').trim();
          const set = lines(text, width);
          expect(set.map(lineText).join('')).toBe(printable(text));
          for (const line of set)
            if (lineText(line).length > 2) expect(line.width).toBeLessThanOrEqual(width + 0.1);
        },
      ),
    );
  });

  it('ends every line but the last with the space between the words', () => {
    const set = lines('one two three four five six', 60);
    expect(set.length).toBeGreaterThan(1);
    for (const line of set.slice(0, -1)) expect(lineText(line)).toMatch(/ $/);
  });
});

describe('inline text', () => {
  it('gives a link a tag of its own among the leaves of the text', () => {
    const { kids, runs } = inlineText(
      inline(['See ', link('https://guides.example.org', ['the ', strong('table')]), ' first.']),
      style,
      fonts,
      'P',
    );
    expect(kids.map((kid) => ('type' in kid ? kid.type : kid.owner))).toEqual(['P', 'Link', 'P']);
    expect(runs.map(({ text, face }) => [text, face])).toEqual([
      ['See ', 'regular'],
      ['the ', 'regular'],
      ['table', 'semibold'],
      [' first.', 'regular'],
    ]);
  });

  it('borrows a face for a character that the title face lacks', () => {
    const { runs } = inlineText(inline('Bed □ ready'), { ...style, face: 'title' }, fonts, 'H1');
    expect(runs.map(({ text, face }) => [text, face])).toEqual([
      ['Bed ', 'title'],
      ['□', 'semibold'],
      [' ready', 'title'],
    ]);
  });
});

describe('printable text', () => {
  const cases: readonly { name: string; text: string; expected: string }[] = [
    { name: 'a tab becomes a space', text: 'a\tb', expected: 'a b' },
    { name: 'a line break becomes a space', text: 'a\nb', expected: 'a b' },
    { name: 'a soft hyphen disappears', text: 'out\u00addoors', expected: 'outdoors' },
    { name: 'a zero-width space disappears', text: 'a\u200bb', expected: 'ab' },
    { name: 'a letter and its accent become one', text: 'n\u0303', expected: 'ñ' },
    { name: 'a ligature becomes its letters', text: 'o\ufb00', expected: 'off' },
    { name: 'a no-break space stays', text: '2\u00a0in', expected: '2\u00a0in' },
  ];
  it.each(cases)('$name', ({ text, expected }) => {
    expect(printable(text)).toBe(expected);
  });
});
