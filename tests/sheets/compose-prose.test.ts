import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { table, column } from '../../scripts/document/build.ts';
import type { Block } from '../../scripts/document/document.ts';
import { choice, count, none, type Finding } from '../../scripts/findings/finding.ts';
import { check } from '../../scripts/pipeline.ts';
import { parseProse } from '../../scripts/prose/parse.ts';
import { composeProse, type ComposedProse } from '../../scripts/sheets/compose-prose.ts';
import { conditionValue, conditionValues, type Exhibit, type NameScope } from '../../scripts/sheets/names.ts';
import { Printer } from '../../scripts/sheets/printer.ts';
import { dateWords } from '../../scripts/wording/dates.ts';
import { measuresFor } from '../../scripts/wording/measures.ts';

const say = (key: string): string => key;
const printer = new Printer(
  { say, measures: measuresFor({ language: 'en', order: 'customary-first', say }), dates: dateWords('en') },
  { sources: new Map(), crops: [] },
);

const finding = (id: string, value: Finding['value'], method = 'published'): [string, Finding] => [
  id,
  { id, value, method, inputs: [], sources: [] },
];

const tableOf = (id: string): Exhibit => ({
  wide: true,
  blocks: () => [
    table({
      id,
      caption: 'A table',
      columns: [column('Head')],
      groups: [{ rows: [{ cells: [[{ kind: 'text', text: 'cell' }]] }] }],
    }),
  ],
});

const scope: NameScope = {
  facts: new Map([['region', 'North']]),
  findings: new Map([
    finding('carrot.depth', count(2)),
    finding('onion.class', choice('long-day'), 'onion.class-by-latitude'),
    finding('onion.class-also', none('one-class-only'), 'onion.class-by-latitude'),
    finding('onion.other', choice('blue'), 'a-method-that-is-new'),
  ]),
  exhibits: new Map([
    ['dates', tableOf('planting-dates')],
    ['dates-again', tableOf('planting-dates')],
  ]),
};

function composed(text: string): ComposedProse {
  const { blocks, diagnostics } = parseProse(text, (_, line) => ({
    file: 'x.md',
    line: line + 1,
    column: 1,
  }));
  expect(diagnostics).toEqual([]);
  return composeProse(blocks, { scope, printer, suggest: (name, known) => `${name}: ${known.join(', ')}` });
}

const kinds = (blocks: readonly Block[]): string[] => blocks.map(({ kind }) => kind);

test.each([
  ['names that are not known', '{{foo}} {{bar}}'],
  ['a name alone', '{{foo}}'],
  ['bold', '**{{foo}}**'],
  ['emphasis', '*{{foo}}*'],
  ['a list item', '- {{foo}}'],
  ['a heading', '## {{foo}}'],
  ['a link', '[{{foo}}](https://example.org)'],
  ['an exhibit in a heading', '## {{dates}}'],
  ['an aside', '::: aside\n{{foo}}\n:::'],
])('%s that come to nothing are left out', (_, text) => {
  const { blocks, diagnostics } = composed(text);
  expect(blocks).toEqual([]);
  expect(new Set(diagnostics.map(({ code }) => code))).toEqual(new Set(['unresolved-name']));
});

test('a link without words leaves the words beside it', () => {
  expect(composed('[{{foo}}](https://example.org) words').blocks).toMatchObject([
    { kind: 'paragraph', content: [{ kind: 'text', text: ' words' }] },
  ]);
});

test('a list item that a condition empties is left out, and the list with its last item', () => {
  const item = '- ::: when carrot.depth is none\n  x\n  :::\n';
  expect(composed(item)).toEqual({ blocks: [], diagnostics: [] });
  expect(composed(`- a\n${item}- b\n`)).toMatchObject({ blocks: [{ items: [[{}], [{}]] }], diagnostics: [] });
});

test.each([
  ['a slip of the pen', 'carrot.depth', 'knwon', 'knwon: known, none'],
  ['a choice of a finding that is a number', 'carrot.depth', 'long-day', 'long-day: known, none'],
  ['known, of a choice', 'onion.class', 'known', 'known: short-day, intermediate, long-day, none'],
  ['a slip where this region has no choice', 'onion.class-also', 'longday', undefined],
])('a condition that holds nowhere: %s', (_, name, value, hint) => {
  const { blocks, diagnostics } = composed(`::: when ${name} is ${value}\nx\n:::`);
  expect(blocks).toEqual([]);
  expect(diagnostics).toMatchObject([{ code: 'bad-prose', ...(hint === undefined ? {} : { hint }) }]);
});

test.each([
  ['carrot.depth', 'known or none', 1],
  ['onion.class', 'short-day or intermediate', 0],
  ['onion.class', 'long-day', 1],
  ['onion.class-also', 'long-day', 0],
  ['onion.class-also', 'none', 1],
  ['onion.other', 'red', 0],
])('a condition that holds somewhere: %s is %s', (name, values, blocks) => {
  const made = composed(`::: when ${name} is ${values}\nx\n:::`);
  expect(made.diagnostics).toEqual([]);
  expect(made.blocks).toHaveLength(blocks);
});

test('a condition on a fact is told as such, and one on nothing known is given the findings', () => {
  const { diagnostics } = composed('::: when region is north\nx\n:::\n\n::: when depth is known\nx\n:::');
  expect(diagnostics.map(({ message }) => message)).toEqual([
    '“region” is no finding, and a condition can only ask about a finding.',
    'This sheet has no finding called “depth”.',
  ]);
  expect(diagnostics[1]!.hint).not.toContain('region');
});

test('no heading takes the id of a closing section, a table, a box or another heading', () => {
  const { blocks } = composed(
    '## Sources\n\n## How we worked this out\n\n## Before you start\n\n## Planting dates\n\n## A\n\n## A\n\n## A 2\n\n' +
      '## S one\n\n- ## A\n\n{{dates}}\n',
  );
  const ids = blocks
    .flatMap((block) => (block.kind === 'list' ? block.items.flat() : [block]))
    .flatMap((block) => (block.kind === 'heading' ? [block.id] : []));
  expect(ids).toEqual([
    'sources-2',
    'how-we-worked-this-out-2',
    'before-you-start-2',
    'planting-dates-2',
    'a',
    'a-2',
    'a-2-2',
    'section-s-one',
    'a-3',
  ]);
});

test.each([
  ['under its own name', '{{dates}}\n\n{{dates}}'],
  ['under another name', '{{dates}}\n\n{{dates-again}}'],
])('an exhibit stands once: %s', (_, text) => {
  const { blocks, diagnostics } = composed(text);
  expect(kinds(blocks)).toEqual(['wide']);
  expect(diagnostics).toMatchObject([{ code: 'bad-prose', place: { line: 3 } }]);
});

test('every choice that the demonstration comes to is one that a condition may ask for', async () => {
  const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');
  const { sheets } = await check({ root, builtInRoot: root });
  expect(sheets.length).toBeGreaterThan(0);
  const missing = sheets.flatMap(({ facts }) =>
    [...facts.findings.keys()].filter((id) => {
      const inRegion = { facts: new Map(), findings: facts.findings, exhibits: new Map() };
      const isChoice = facts.findings.get(id)!.value.kind === 'choice';
      return isChoice && !conditionValues(id, inRegion)?.includes(conditionValue(id, inRegion)!);
    }),
  );
  expect(missing).toEqual([]);
});
