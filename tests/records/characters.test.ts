import { describe, expect, test } from 'vitest';
import { openFonts, printable } from '../../scripts/pdf/fonts.ts';
import { missingCharacterFaults } from '../../scripts/records/characters.ts';
import { readFontCoverage, readFontFiles } from '../../scripts/records/font-files.ts';

const has = await readFontCoverage();
const fonts = openFonts(await readFontFiles());
const faultsIn = (path: string, text: string): string[] =>
  missingCharacterFaults([{ path, text }], has).map(
    ({ place, message, hint }) =>
      `${place!.line}:${place!.column} ${/U\+[0-9A-F]+/.exec(message)![0]} ${hint}`,
  );

describe('characters that no font has', () => {
  const cases: readonly { name: string; path: string; text: string; faults: string[] }[] = [
    {
      name: 'in a value, at its line and column',
      path: 'crops/a.yaml',
      text: 'id: a\nname: "Bed ☒ and ☒"\n',
      faults: [
        '2:12 U+2612 Write “✗” instead, or say it in words.',
        '2:18 U+2612 Write “✗” instead, or say it in words.',
      ],
    },
    {
      name: 'in a remark, where nobody prints them',
      path: 'crops/a.yaml',
      text: 'id: a # 人参\n',
      faults: [],
    },
    {
      name: 'on the second line of a folded value',
      path: 'content/sources.yaml',
      text: '- id: a\n  cite: >\n    One\n    two 人.\n',
      faults: ['4:9 U+4EBA Write the word in the Latin, Greek or Cyrillic alphabet.'],
    },
    {
      name: 'written by their number, at the start of the value',
      path: 'crops/a.yaml',
      text: 'name: "20 \\u2103"\n',
      faults: ['1:7 U+2103 Write “°C” instead, or say it in words.'],
    },
    {
      name: 'in the header and in the prose of a sheet',
      path: 'content/sheets/a.md',
      text: '---\ntitle: A ★\n---\n\nWarm ➔ cold\n',
      faults: [
        '2:10 U+2605 Write “*” instead, or say it in words.',
        '5:6 U+2794 Write “→” instead, or say it in words.',
      ],
    },
    {
      name: 'once where two characters make one picture',
      path: 'content/sheets/a.md',
      text: '---\ntitle: A\n---\n\n★️ 🥕️\n',
      faults: [
        '5:1 U+2605 Write “*” instead, or say it in words.',
        '5:4 U+1F955 Say in words what the picture shows.',
      ],
    },
    {
      name: 'in a station file, whose names are not words',
      path: 'content/a.csv',
      text: '人参\n',
      faults: [],
    },
    {
      name: 'not where a letter and its accent are written apart',
      path: 'a.md',
      text: 'jalapen\u0303o',
      faults: [],
    },
    {
      name: 'in a file whose syntax is at fault, which is told already',
      path: 'a.yaml',
      text: 'a: "☒\n',
      faults: [],
    },
  ];
  test.each(cases)('$name', ({ path, text, faults }) => {
    expect(faultsIn(path, text)).toEqual(faults);
  });

  test('are those that the PDF could not show, and no others', () => {
    const differing: string[] = [];
    for (let code = 0x20; code < 0x20000; code += 1) {
      if (code >= 0xd800 && code < 0xe000) continue;
      const character = String.fromCodePoint(code);
      const isTold = missingCharacterFaults([{ path: 'a.md', text: `a${character}` }], has).length > 0;
      const isShown = Array.from(printable(`a${character}`)).every(
        (each) => fonts.faceFor('regular', each) !== undefined,
      );
      if (isTold === isShown) differing.push(`U+${code.toString(16)}`);
    }
    expect(differing.filter((name) => !harmful.has(name))).toEqual([]);
  });
});

/** Told as a fault of another kind wherever they stand. */
const harmful = new Set(['U+fffe', 'U+ffff', 'U+1fffe', 'U+1ffff']);
