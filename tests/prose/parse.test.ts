import { expect, test } from 'vitest';
import { mostProse, parseInlineProse, parseProse } from '../../scripts/prose/parse.ts';
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
    { kind: 'when', name: 'onion.class', values: [{ value: 'short-day' }, { value: 'intermediate' }] },
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

/** Finds pieces as in a file, line by line. */
const within =
  (text: string) =>
  (piece: string, fromLine: number, occurrence: number): { file: string; line: number; column: number } => {
    const row = text.split('\n')[fromLine] ?? '';
    let column = row.indexOf(piece);
    for (let i = 0; i < occurrence; i += 1) column = row.indexOf(piece, column + 1);
    return { file: 'x.md', line: fromLine + 1, column: Math.max(column, 0) + 1 };
  };

test('each value of a condition has its place', () => {
  const text = '::: when a.known is known or none\nx\n:::\n';
  expect(parseProse(text, within(text)).blocks).toMatchObject([
    { place: { column: 10 }, values: [{ place: { column: 21 } }, { place: { column: 30 } }] },
  ]);
});

test.each([
  ['a picture alone', '![alt](x.png)', 'A sheet cannot show a picture from prose.'],
  ['code alone', '`x`', 'A sheet cannot show code between backquotes.'],
  ['struck-out words alone', '~~x~~', 'A sheet cannot show struck-out words.'],
  ['a soft hyphen alone', '\u00AD', 'This paragraph has no words.'],
  ['a heading without words', '##', 'This heading has no words.'],
  ['a link without words', '[](https://example.com) words', 'This link has no words.'],
  ['a list item without words', '- \n- a', 'This list item has no words.'],
  ['a number alone', '1.', 'This list item has no words.'],
  ['a picture as a list item', '- ![alt](x.png)', 'A sheet cannot show a picture from prose.'],
  ['an aside without words', '::: aside\n:::', 'This ::: block has no words.'],
  [
    'a list that goes on from 5',
    '5. a\n6. b',
    'This list starts with 5, but the lists of a sheet count from 1.',
  ],
  ['a list from 0', '0. a', 'This list starts with 0, but the lists of a sheet count from 1.'],
  [
    'a link that runs a program',
    '[x](javascript:alert(1))',
    'The link goes to “javascript:alert(1)”, which is no web address.',
  ],
  ['an element of HTML, told once', 'Some <b>bold</b> words', 'A sheet cannot show HTML.'],
  ['a block of HTML', '<div>\nx\n</div>', 'A sheet cannot show HTML.'],
  ['a comment of HTML', 'a\n\n<!-- x -->\n', 'A sheet cannot show HTML.'],
  [
    'a name in an address',
    '[x](https://example.org/{{region}})',
    'A name in braces stands in the address of a link, where nothing is put in its place.',
  ],
  ['an address with spaces', '[x](https://example.org/{{ region }})', 'This link cannot be read.'],
  ['an unknown fence, indented', 'a\n\n  ::: note\n  x\n  :::', '“::: note” opens nothing that is known.'],
  [
    'a fence within one as long',
    '::: when a.b is known\n::: aside\nx\n:::\ny\n:::',
    'This opens within another ::: of as few colons, so the next ::: would close both.',
  ],
  ['a fence that is not closed', '::: aside\nx', 'This ::: is not closed.'],
  ['a fence that closes nothing', 'x\n\n:::', 'This ::: closes nothing.'],
  ['colons within a line', 'x ::: y', 'Three colons stand here without opening or closing anything.'],
  [
    'words behind an aside',
    '::: aside x\ny\n:::',
    'Words stand behind “::: aside”, where nothing would print them.',
  ],
  [
    'far too many characters',
    'a'.repeat(mostProse.characters + 1),
    'The text is longer than any sheet can be.',
  ],
  ['far too many headings', '# a\n'.repeat(20_000), 'The text is longer than any sheet can be.'],
])('no sheet can show %s', (_, text, message) => {
  expect(parseProse(text, within(text)).diagnostics).toMatchObject([{ code: 'bad-prose', message }]);
});

const tooDeep = 'Things stand within things deeper than a sheet can show.';

test.each([
  ['lists', Array.from({ length: 150 }, (_, level) => `${'  '.repeat(level)}- a\n`).join('')],
  ['lists on one line', `${'- '.repeat(150)}a`],
  ['emphasis', `${'*'.repeat(3000)}a${'*'.repeat(3000)}`],
])('%s within each other too deep', (_, text) => {
  expect(parseProse(text, within(text)).diagnostics.map(({ message }) => message)).toContain(tooDeep);
});

test('a list in a list in a list within a condition and an aside is not too deep', () => {
  const text =
    ':::: when a.b is known\n::: aside\n- a\n  - b\n    - c, ***[words](https://example.org)***\n:::\n::::\n';
  expect(parseProse(text, within(text)).diagnostics).toEqual([]);
});

test('three thousand stars are words or a fault, never a crash', () => {
  expect(() => parseProse('*'.repeat(3000), nowhere)).not.toThrow();
});

test('names beyond all use are told once', () => {
  const { diagnostics } = parseProse('{{x}} '.repeat(mostProse.names + 5), nowhere);
  expect(diagnostics.map(({ message }) => message)).toEqual([
    'More than 1000 names in braces stand in this text.',
  ]);
  expect(parseProse('{{x}} '.repeat(mostProse.names), nowhere).diagnostics).toEqual([]);
});

test.each([
  ['nothing', ''],
  ['spaces', '  '],
  ['a soft hyphen', '\u00AD'],
])('a title of %s is a fault', (_, text) => {
  expect(parseInlineProse(text, nowhere).diagnostics.map(({ code }) => code)).toEqual(['bad-prose']);
});
