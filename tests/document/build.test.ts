import { describe, expect, test } from 'vitest';
import { heading, inline, link, list, paragraph, steps, table } from '../../scripts/document/build.ts';

describe('words given as strings', () => {
  test('an apostrophe after a letter is set as one', () => {
    expect(inline("the sun's makers'")).toEqual([{ kind: 'text', text: 'the sun’s makers’' }]);
  });
  test('a mark that stands for feet is left alone', () => {
    expect(inline("6' wide")).toEqual([{ kind: 'text', text: "6' wide" }]);
  });
  test('empty words disappear', () => {
    expect(inline(['', 'a', ''])).toEqual([{ kind: 'text', text: 'a' }]);
  });
});

describe('builders refuse what types cannot', () => {
  const cases: [string, () => unknown][] = [
    ['a heading without words', () => heading(2, 'x', ' ')],
    ['an id with capitals', () => heading(2, 'Not an id', 'x')],
    ['a paragraph without words', () => paragraph('')],
    ['a list without items', () => list(false, [])],
    ['a link to a script', () => link('javascript:alert(1)', 'x')],
    ['steps out of order', () => steps([{ number: 2, title: inline('x'), cautions: [], body: [] }])],
    ['a ragged table', () => table({ id: 't', caption: 'c', columns: [], groups: [] })],
  ];
  test.each(cases)('%s', (_, build) => {
    expect(build).toThrow(TypeError);
  });
});
