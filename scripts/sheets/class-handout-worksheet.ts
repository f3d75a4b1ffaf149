/** The word list, the worksheet, its graph and the answer key of a class handout. */
import {
  column,
  figure,
  heading,
  inline,
  list,
  pageBreak,
  paragraph,
  strong,
  table,
  together,
  wide,
  worksheet,
} from '../document/build.ts';
import type { AnswerRoom, Block, Inline } from '../document/document.ts';
import { graphPaper, tickDistance } from '../drawings/charts/graph-paper.ts';
import type { ProseInline } from '../prose/prose.ts';
import { fromHeld } from '../quantities/units.ts';
import type { ClassQuestion } from '../records/schemas/class-handout.ts';
import type { SheetRecord } from '../records/guide.ts';
import { adultAge } from '../safety/youth.ts';
import type { SheetContext } from './sheet-context.ts';

/** Puts words of a record into words of the sheet. */
export type Compose = (prose: readonly ProseInline[]) => readonly Inline[];

interface Asked {
  readonly question: ClassQuestion;
  readonly ask: readonly ProseInline[];
  readonly answer: readonly ProseInline[];
}

/** The questions that suit the age of the class. */
export function askedOf({ questions = [], askProse = [], age = adultAge }: SheetRecord): readonly Asked[] {
  return questions.flatMap((question, index) =>
    suits(question, age) ? [{ question, ...askProse[index]! }] : [],
  );
}

function suits(
  { fromAge = 0, toAge = adultAge }: { fromAge?: number; toAge?: number },
  age: number,
): boolean {
  return fromAge <= age && age <= toAge;
}

/** The words that suit the age of the class, each with its meaning. */
export function wordTable({ sheet, wording: { say } }: SheetContext, compose: Compose): readonly Block[] {
  const { words = [], meaningProse = [], age = adultAge } = sheet;
  const rows = words.flatMap((word, index) =>
    suits(word, age) ? [{ cells: [inline(word.word), compose(meaningProse[index]!)] }] : [],
  );
  if (rows.length === 0) return [];
  return [
    table({
      id: 'class-words',
      caption: say('class.words-caption'),
      columns: [column(say('class.word')), column(say('class.meaning'), { weight: 4 })],
      groups: [{ rows }],
    }),
  ];
}

/** A line for the name of the child, and the questions with room to answer them. */
export function questionSheet({ sheet, wording: { say } }: SheetContext, compose: Compose): readonly Block[] {
  const { age = adultAge } = sheet;
  const asked = askedOf(sheet);
  if (asked.length === 0) return [];
  return [
    worksheet(
      asked.map(({ question, ask }) => ({
        question: [strong(say(`class.question-${question.kind}`)), ' ', ...compose(ask)],
        room: roomFor(question, age),
      })),
      { opening: say('class.name-line') },
    ),
  ];
}

/** Below this age handwriting is large. */
const largeHandUntil = 10;
const usualLines = { count: 1, measure: 1, predict: 2, tell: 2, draw: 0 } as const;

function roomFor({ kind, lines, box }: ClassQuestion, age: number): AnswerRoom {
  if (box !== undefined) return { kind: 'box', size: box };
  const number = lines ?? usualLines[kind];
  if (number === 0) return { kind: 'box', size: 'medium' };
  return { kind: 'lines', count: number, ruling: age < largeHandUntil ? 'wide' : 'narrow' };
}

/** Values that the axis of a graph names at most. */
const mostTicks = 7;

/** What to do, and the graph to fill in, in the first of the publisher's two systems of units. */
export function graphBlock(context: SheetContext, compose: Compose): Block {
  const { sheet, guide, wording } = context;
  const { say, measures } = wording;
  const graph = sheet.graph!;
  const customary = guide.publisher.units === 'customary-first';
  const held = (graph.temperature ?? graph.length)!;
  const unit = graph.temperature ? (customary ? 'F' : 'C') : customary ? 'in' : 'cm';
  const [low, high] = [fromHeld(held.low, unit), fromHeld(held.high, unit)];
  const every = tickDistance(low, Math.max(high, low + 1), mostTicks);
  const up = say('class.graph-axis', { what: graph.up, unit: graph.temperature ? `°${unit}` : unit });
  const scene = graphPaper({
    id: 'class-graph',
    widthMm: 168,
    heightMm: 104,
    days: graph.days,
    dayLabel: say('class.graph-day'),
    axisLabel: up,
    lowest: Math.floor(low / every + 1e-6) * every,
    highest: Math.ceil(Math.max(high, low + 1) / every - 1e-6) * every,
    every,
    tickText: (value) => measures.number(value),
    lineLabels: graph.lines,
    alternative: say('class.graph-alternative', {
      days: graph.days,
      up,
      low: measures.number(low),
      high: measures.number(high),
      lines: new Intl.ListFormat(guide.publisher.language).format(graph.lines),
    }),
  });
  return together([running(compose(sheet.graphProse!.ask)), wide([figure(scene, { caption: graph.title })])]);
}

/** Running text of a record, which comes to nothing where it only names what is not known; that is told as a fault. */
const running = (content: readonly Inline[]): Block => ({ kind: 'paragraph', role: 'body', content });

/** On a page of its own: the answers in the order of the questions, and what to look for in the graph. */
export function answerKey({ sheet, wording: { say } }: SheetContext, compose: Compose): readonly Block[] {
  const asked = askedOf(sheet);
  const { graph, graphProse } = sheet;
  if (asked.length === 0) return [];
  return [
    pageBreak(),
    heading(2, 'class.answers', say('class.answers')),
    paragraph(say('class.answers-note')),
    list(
      true,
      asked.map(({ answer }) => [running(compose(answer))]),
    ),
    ...(graph && graphProse
      ? [heading(3, 'class.graph-answer', graph.title), running(compose(graphProse.answer))]
      : []),
    pageBreak(),
  ];
}
