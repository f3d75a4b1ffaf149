import { expect, test } from 'vitest';
import { parseInlineProse, parseProse } from '../../scripts/prose/parse.ts';
import { namesIn } from '../../scripts/prose/prose.ts';

const nowhere = (): { file: string; line: number; column: number } => ({ file: 'x.md', line: 1, column: 1 });

test('headings, paragraphs, lists and links', () => {
  const { blocks, diagnostics } = parseProse(
    '## Soil\n\nUse **loose** soil, *never* wet; see [a page](https://example.org).\n\n- one\n- two\n\n1. first\n',
    nowhere,
  );
  expect(diagnostics).toEqual([]);
  expect(blocks.map((block) => block.kind)).toEqual(['heading', 'paragraph', 'list', 'list']);
  expect(blocks[2]).toMatchObject({
    ordered: false,
    items: [[{ kind: 'paragraph' }], [{ kind: 'paragraph' }]],
  });
});

test('a name alone in its paragraph is an exhibit, a name in a sentence is not', () => {
  const { blocks } = parseProse('{{the-chart}}\n\nAfter {{freeze.last.32f.50}} it is warm.\n', nowhere);
  expect(blocks[0]).toMatchObject({ kind: 'exhibit', name: 'the-chart' });
  expect(blocks[1]).toMatchObject({
    kind: 'paragraph',
    content: [{ text: 'After ' }, { kind: 'name' }, { text: ' it is warm.' }],
  });
});

test('conditions and asides hold their own blocks, and their names are known', () => {
  const { blocks, diagnostics } = parseProse(
    '::: when onion.class is short-day or intermediate\nWords {{a.b}}.\n:::\n\n::: aside\n{{band}}\n:::\n',
    nowhere,
  );
  expect(diagnostics).toEqual([]);
  expect(blocks).toMatchObject([
    { kind: 'when', name: 'onion.class', values: ['short-day', 'intermediate'] },
    { kind: 'aside' },
  ]);
  expect(namesIn(blocks).map(({ name }) => name)).toEqual(['onion.class', 'a.b', 'band']);
});

test('straight quotes become real ones', () => {
  const { content } = parseInlineProse('"Frost" isn\'t it', nowhere);
  expect(content).toEqual([{ kind: 'text', text: '“Frost” isn’t it' }]);
});

test.each([
  ['one brace short, with a name after it', 'Deep {{parsnip.depth} and {{carrot.depth}}.'],
  ['one pair only', 'Sow {parsnip.depth} deep.'],
  ['never closed', 'Sow {{ parsnip.depth deep.'],
])('braces that would be printed: %s', (_, text) => {
  expect(parseProse(text, nowhere).diagnostics.map(({ code }) => code)).toEqual(['bad-prose']);
});

test('the letter of a part stays a letter', () => {
  const { content } = parseInlineProse('Lay the sash (C) on the wall (R) +- nothing...', nowhere);
  expect(content).toEqual([{ kind: 'text', text: 'Lay the sash (C) on the wall (R) +- nothing...' }]);
});

test('only running text may stand in a step', () => {
  expect(parseInlineProse('## A heading', nowhere).diagnostics.map(({ code }) => code)).toEqual([
    'bad-prose',
  ]);
});
