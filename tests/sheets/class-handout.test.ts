/** The class handout: who does what at which age, what is asked and answered, and what keeps it from being handed out. */
import { beforeAll, describe, expect, test } from 'vitest';
import { plainText } from '../../scripts/document/build.ts';
import type { Block } from '../../scripts/document/document.ts';
import { printSheet } from '../../scripts/document/print.ts';
import type { Guide, ProjectRecord, SheetRecord } from '../../scripts/records/guide.ts';
import { readGuide } from '../../scripts/records/read-guide.ts';
import { parseInlineProse } from '../../scripts/prose/parse.ts';
import { composeSheet, type ComposedSheet } from '../../scripts/sheets/compose.ts';
import { wordedFor } from '../../scripts/safety/worded.ts';
import { regionFacts } from '../../scripts/sheets/facts.ts';
import { wordingOf } from '../../scripts/sheets/sheet-context.ts';
import { repository } from '../demo/demo-guide.ts';

let guide: Guide;
beforeAll(async () => {
  ({ guide } = await readGuide({ root: repository, builtInRoot: repository }));
});

interface Change {
  readonly sheet?: (sheet: SheetRecord) => object;
  readonly project?: (project: ProjectRecord) => object;
  readonly region?: string;
  readonly of?: 'cold-frame-class' | 'tepee-class';
}

function composed({
  sheet,
  project,
  region: regionId = 'larkwether',
  of = 'cold-frame-class',
}: Change = {}): ComposedSheet {
  const base = guide.sheets.find(({ id }) => id === of)!;
  const changed = { ...base, ...sheet?.(base) };
  const projects = guide.projects.map((each) =>
    each.id === base.project && project ? { ...each, ...project(each) } : each,
  );
  const region = guide.regions.find(({ id }) => id === regionId)!;
  const facts = regionFacts(region, { crops: guide.crops, year: guide.publisher.year });
  const other = { ...guide, projects };
  return composeSheet({
    guide: other,
    sheet: changed,
    facts,
    wording: wordingOf(guide),
    suggest: (name) => name,
  });
}

/** The place of the step with a drawing, from 0: other steps may come and go. */
const at = (drawing: string): number =>
  guide.projects
    .find(({ id }) => id === 'straw-bale-cold-frame')!
    .steps.findIndex((step) => step.drawing === drawing);

const atAge = (age: number, change: Change = {}): ComposedSheet =>
  composed({ ...change, sheet: (sheet) => ({ ...change.sheet?.(sheet), age }) });

/** Blocks of a kind, however deep. */
function blocksOf<K extends Block['kind']>(sheet: ComposedSheet, kind: K): Extract<Block, { kind: K }>[] {
  const within = (blocks: readonly Block[]): readonly Block[] =>
    blocks.flatMap((block) => [
      block,
      ...(block.kind === 'wide' || block.kind === 'together' ? within(block.content) : []),
      ...(block.kind === 'steps' ? within(block.items.flatMap(({ body }) => body)) : []),
    ]);
  return within(sheet.document.blocks).filter((block) => block.kind === kind) as Extract<
    Block,
    { kind: K }
  >[];
}

const doers = (sheet: ComposedSheet): string[] => blocksOf(sheet, 'doer').map(({ who }) => who);
const told = ({ diagnostics }: ComposedSheet): string[] =>
  diagnostics.map(({ severity, code, message }) => `${severity} ${code}: ${message}`);
const inlineOf = (text: string) =>
  parseInlineProse(text, () => ({ file: 'a.md', line: 1, column: 1 })).content;

describe('who does each step of the cold frame', () => {
  const [alone, beside, adult] = ['child', 'child-with-adult', 'adult'] as const;
  const steps = [
    'ground',
    'poleward-wall',
    'side-walls',
    'equator-wall',
    'stakes',
    'gaps',
    'soil',
    'sow',
    'sashes',
    'vent',
  ];
  /** Who does the steps with these drawings, whatever other steps there are. */
  const doersByDrawing = (sheet: ComposedSheet): string[] => {
    const whoDoes = doers(sheet);
    return steps.map((drawing) => whoDoes[at(drawing)]!);
  };
  test.each([
    ['five years old', 5, [adult, adult, adult, adult, adult, adult, adult, adult, adult, adult]],
    ['eight years old', 8, [beside, adult, adult, adult, adult, adult, adult, beside, adult, adult]],
    ['fourteen years old', 14, [beside, beside, beside, beside, adult, beside, beside, beside, adult, adult]],
    ['sixteen years old', 16, [beside, beside, beside, beside, beside, beside, beside, beside, adult, adult]],
  ])('%s', (_, age, expected) => {
    expect(doersByDrawing(atAge(age))).toEqual(expected);
  });

  test('a child alone sows where nothing but seed and water is in the step', () => {
    const sheet = atAge(8, {
      project: ({ steps }) => ({
        steps: steps.map((step, index) =>
          index === at('sow') ? { ...step, materials: ['vegetable-seed'] } : step,
        ),
      }),
    });
    expect(doers(sheet)[at('sow')]).toBe(alone);
    expect(blocksOf(sheet, 'doer')[at('sow')]!.content).toEqual([
      { kind: 'text', text: 'You do this. An adult is near.' },
    ]);
  });

  test('the strictest reason stands with it', () => {
    const words = blocksOf(atAge(8), 'doer').map(({ content }) => plainText(content));
    expect(words[at('stakes')]).toBe('Adults only. Sledge hammer: for age 16 and up.');
    expect(words[at('sashes')]).toBe('Adults only. Old painted window sash: for adults.');
  });

  test('an adult’s step says what the children do, a child’s does not', () => {
    const steps = blocksOf(atAge(8), 'steps')[0]!.items.map(({ body }) =>
      body.some(
        (block) => block.kind === 'paragraph' && plainText(block.content).startsWith('You, meanwhile:'),
      ),
    );
    expect(steps).toEqual(doers(atAge(8)).map((who) => who === 'adult'));
  });

  test('every step keeps its drawing and its cautions, whoever does it', () => {
    const of = (age: number) => blocksOf(atAge(age), 'steps')[0]!.items;
    expect(of(5).map(({ cautions }) => cautions)).toEqual(of(16).map(({ cautions }) => cautions));
    expect(of(5).every(({ drawing }) => drawing !== undefined)).toBe(true);
    expect(of(5)[at('sashes')]!.cautions.length).toBeGreaterThan(0);
  });
});

test('a hazard that only children bring stands at its step and in the box, in the words for a class', () => {
  const sheet = composed();
  const cords = wordedFor(guide.hazards.cautions.get('cords-and-nets')!, 'class');
  const atSteps = blocksOf(sheet, 'steps')[0]!.items.flatMap(({ cautions }) =>
    cautions.map(({ hazard }) => plainText(hazard)),
  );
  expect(atSteps).toContain(cords.hazard);
  expect(JSON.stringify(blocksOf(sheet, 'caution-box')).toLowerCase()).toContain(cords.title.toLowerCase());
});

describe('the heat of the months in which the class works', () => {
  const doersIn = (months: readonly number[] | undefined): string[] =>
    doers(composed({ region: 'gullhammock', sheet: () => ({ age: 9, months }) }));
  test('spring is for children, July is for adults', () => {
    expect(doersIn([3])).toContain('child-with-adult');
    expect(new Set(doersIn([7]))).toEqual(new Set(['adult']));
    expect(doersIn([3, 7])).toEqual(doersIn([7]));
  });
  test('without months the hottest counts', () => {
    expect(doersIn(undefined)).toEqual(doersIn([7]));
  });
  test('the box tells of the heat of the whole year all the same', () => {
    const text = printSheet(composed({ region: 'gullhammock', sheet: () => ({ months: [3] }) }).document);
    expect(text).toMatch(/\bheat\b/i);
    const cautions = (months: number[]) =>
      blocksOf(composed({ region: 'gullhammock', sheet: () => ({ months }) }), 'caution-box');
    expect(cautions([3])).toEqual(cautions([7]));
  });
});

describe('the worksheet and its key', () => {
  const questions = (sheet: ComposedSheet): number => blocksOf(sheet, 'worksheet')[0]!.items.length;

  test('asks what suits the age', () => {
    expect(questions(atAge(8))).toBeLessThan(questions(atAge(12)));
    expect(questions(atAge(12))).toBeLessThan(questions(atAge(15)));
  });

  test('leaves out what is for younger ones', () => {
    const forYounger = composed({
      sheet: ({ questions: all }) => ({
        questions: all!.map((one, index) => (index === 0 ? { ...one, toAge: 7 } : one)),
      }),
    });
    expect(questions(forYounger)).toBe(questions(composed()) - 1);
  });

  test('has as many answers as questions, on a page of their own', () => {
    for (const age of [8, 12, 15]) {
      const { blocks } = atAge(age).document;
      const at = blocks.findIndex((block) => block.kind === 'heading' && block.id === 'class.answers');
      expect(blocks[at - 1]!.kind).toBe('page-break');
      const key = blocks.slice(at).find((block) => block.kind === 'list');
      expect(key?.kind === 'list' && key.items.length).toBe(questions(atAge(age)));
      const end = blocks.slice(at).findIndex((block) => block.kind === 'page-break');
      expect(end).toBeGreaterThan(0);
      expect(blocks[at + end + 1]).toMatchObject({ kind: 'heading', id: 'local-rules' });
    }
  });

  test('answers with the findings, so another build has another key', () => {
    const key = (sheet: ComposedSheet): string => {
      const { blocks } = sheet.document;
      const list = blocks
        .slice(blocks.findIndex((b) => b.kind === 'heading' && b.id === 'class.answers'))
        .find((b) => b.kind === 'list');
      return list?.kind === 'list'
        ? list.items
            .flat()
            .map((b) => (b.kind === 'paragraph' ? plainText(b.content) : ''))
            .join(' ')
        : '';
    };
    expect(key(composed())).toContain('9 bales');
    const more = composed({
      project: (project) => ('stakes' in project ? { stakes: { ...project.stakes, perBale: 3 } } : {}),
    });
    expect(key(more)).toContain('26 stakes');
  });

  test('writes on lines far apart when hands are small', () => {
    const rulings = (age: number) =>
      blocksOf(atAge(age), 'worksheet')[0]!.items.flatMap(({ room }) =>
        room.kind === 'lines' ? room.ruling : [],
      );
    expect(new Set(rulings(9))).toEqual(new Set(['wide']));
    expect(new Set(rulings(10))).toEqual(new Set(['narrow']));
  });
});

describe('the teacher', () => {
  test('is told of every step who does it, why, from what age, and the source', () => {
    const table = blocksOf(composed(), 'table').find(({ id }) => id === 'class-who')!;
    const rows = table.groups[0]!.rows.map(({ cells }) => cells.map(plainText));
    expect(rows.length).toBeGreaterThanOrEqual(10);
    expect(rows[at('stakes')]!.slice(0, 4)).toEqual([
      '5. Stake every bale',
      'Adults only',
      expect.stringMatching(/^Sledge hammer \(16\), Drive a stake \(14\)/),
      '16',
    ]);
    expect(rows[at('sashes')]![3]).toBe('adults');
    expect(rows.every((row) => /\d/.test(row[4]!))).toBe(true);
  });

  test('is told the reading grade as a finding', () => {
    const sheet = composed();
    const grade = sheet.explanations.find(({ id }) => id === 'class.reading-grade');
    expect(grade?.method).toContain('0.39');
    expect(Number(grade?.value)).toBeLessThan(5);
  });
});

describe('a handout that cannot be handed out', () => {
  test('is none of the demonstration', () => {
    for (const of of ['cold-frame-class', 'tepee-class'] as const)
      for (const { id } of guide.regions) expect(told(composed({ of, region: id }))).toEqual([]);
  });

  test('an adult’s step without anything for the children is a fault at the step', () => {
    const without = composed({
      project: ({ classProse }) => ({
        classProse: classProse.map(({ text }, index) =>
          index === at('stakes') ? { ...(text ? { text } : {}) } : classProse[index]!,
        ),
      }),
    });
    expect(without.diagnostics).toHaveLength(1);
    expect(without.diagnostics[0]).toMatchObject({ code: 'class-step', severity: 'error' });
    expect(without.diagnostics[0]!.place).toEqual(
      guide.placeOf('project', 'straw-bale-cold-frame', `/steps/${at('stakes')}`),
    );
    expect(without.diagnostics[0]!.hint).toContain('meanwhile');
  });

  const asks = (answer: string, kind: 'count' | 'tell' = 'count'): Change => ({
    sheet: (sheet) => ({
      questions: [{ ...sheet.questions![0]!, kind }, ...sheet.questions!.slice(1)],
      askProse: [{ ask: sheet.askProse![0]!.ask, answer: inlineOf(answer) }, ...sheet.askProse!.slice(1)],
    }),
  });
  test.each([
    [
      'a count that is typed',
      asks('Nine bales.'),
      'error bad-prose: The answer to question 1 is counted, and yet it names no finding.',
    ],
    [
      'a figure beside a finding',
      asks('{{frame.bales}} less 1.'),
      'warning bad-prose: The answer to question 1 has a figure that is typed',
    ],
    [
      'a name that is not known',
      asks('{{frame.bails}}'),
      'error unresolved-name: This sheet has no finding or exhibit called “frame.bails”.',
    ],
    [
      'questions that are not shown',
      {
        sheet: ({ prose }: SheetRecord) => ({
          prose: prose.filter((b) => !(b.kind === 'exhibit' && b.name === 'worksheet')),
        }),
      },
      'error bad-prose: This class handout has “questions” and does not show them.',
    ],
    [
      'steps that are not shown',
      {
        sheet: ({ prose }: SheetRecord) => ({
          prose: prose.filter((b) => !(b.kind === 'exhibit' && b.name === 'steps')),
        }),
      },
      'error bad-prose: This class handout does not show its steps',
    ],
    [
      'no question for the age',
      {
        sheet: ({ questions }: SheetRecord) => ({
          questions: questions!.map((q, i) => ({ ...q, fromAge: 9 + (i % 2) })),
          age: 8,
        }),
      },
      'error bad-prose: No question is left for a class of age 8.',
    ],
  ])('%s', (_, change: Change, expected) => {
    const faults = told(composed(change));
    expect(faults.some((fault) => fault.startsWith(expected))).toBe(true);
  });

  test('words for the class that name another tool, and a pastime with a tool for older hands', () => {
    const says = (key: 'class' | 'meanwhile', text: string): Change => ({
      project: ({ steps }) => ({
        steps: steps.map((step, index) => (index === at('poleward-wall') ? { ...step, [key]: text } : step)),
      }),
    });
    expect(told(composed(says('class', 'Cut the bale with the handsaw.')))).toEqual([
      expect.stringMatching(/^error unlisted-hazard: Step 2 speaks of “handsaw”/),
    ]);
    expect(told(composed(says('meanwhile', 'Saw a stick with the handsaw.')))).toEqual([
      expect.stringMatching(/“Saw”/),
      expect.stringMatching(
        /^error unlisted-hazard: What the children do during step 2 speaks of “handsaw”, which is not for age 8/,
      ),
    ]);
    expect(told(composed(says('meanwhile', 'Look at the thermometer.')))).toEqual([]);
  });

  test('pages more than two grades above the class are a warning', () => {
    const long = inlineOf(
      'Whenever temperatures are unexpectedly unfavorable, agricultural communities traditionally accommodate vulnerable vegetation underneath sophisticated constructions of transparent materials, considerably accelerating development.',
    );
    const hard = composed({
      project: ({ classProse }) => ({ classProse: classProse.map((step) => ({ ...step, text: long })) }),
    });
    expect(told(hard)).toEqual([
      expect.stringMatching(/^warning hard-to-read: .* a class of age 8 is about grade 3\.$/),
    ]);
    expect(hard.diagnostics[0]!.place).toEqual(guide.placeOf('sheet', 'cold-frame-class', '/age'));
  });
});
