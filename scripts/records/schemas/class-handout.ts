/** What the front matter of a class handout has beyond that of other sheets. */
import Type, { type Static } from 'typebox';
import { Prose, Words, oneOf, quantityOf, record } from './kit.ts';

const Age = Type.Integer({ minimum: 3, maximum: 18 });

/** Left out for a class that is younger than `fromAge`, or older than `toAge`. */
const forAges = { fromAge: Type.Optional(Age), toAge: Type.Optional(Age) };

/** What a child does to find the answer. What is counted or measured is answered by a finding. */
export const questionKinds = ['count', 'measure', 'predict', 'draw', 'tell'] as const;
export type QuestionKind = (typeof questionKinds)[number];

export const boxSizes = ['small', 'medium', 'large'] as const;

const Question = record({
  kind: oneOf(questionKinds),
  /** Inline Markdown, as is the answer; `{{name}}` prints a finding. */
  ask: Prose,
  answer: Prose,
  /** Ruled lines to write on; as many as the kind of question needs where neither these nor a box are given. */
  lines: Type.Optional(Type.Integer({ minimum: 1, maximum: 12 })),
  /** A box to draw in. */
  box: Type.Optional(oneOf(boxSizes)),
  ...forAges,
});

const ClassWord = record({
  word: Words,
  /** One line of inline Markdown. */
  meaning: Prose,
  ...forAges,
});

/** A graph to fill in: days along the foot, a temperature or a length up the side. */
const Graph = record({
  title: Words,
  /** What to do: how to measure and what to mark. Inline Markdown. */
  ask: Prose,
  /** How many days it has room for. */
  days: Type.Integer({ minimum: 2, maximum: 31 }),
  /** What is measured, over the axis: `Temperature in the morning`. */
  up: Words,
  /** One of the two: the lowest and the highest value that must fit, `20-80 F`. */
  temperature: Type.Optional(quantityOf('temperature', { example: '20-80 F', atLeast: -60, atMost: 100 })),
  length: Type.Optional(quantityOf('length', { example: '0-96 in', atMost: 10_000 })),
  /** What each line is to show; the second is dashed, the third dotted. */
  lines: Type.Array(Words, { minItems: 1, maxItems: 3 }),
  /** What the teacher looks for. Inline Markdown. */
  answer: Prose,
});

/** Only for a class handout. */
export const classFields = {
  /** The age of the class in years. */
  age: Type.Optional(Type.Integer({ minimum: 5, maximum: 17 })),
  /** The length of the lesson. */
  minutes: Type.Optional(Type.Integer({ minimum: 5, maximum: 600 })),
  /** The months in which the class works, by number; who may do what follows from their heat. All twelve when absent. */
  months: Type.Optional(Type.Array(Type.Integer({ minimum: 1, maximum: 12 }), { minItems: 1, maxItems: 12 })),
  words: Type.Optional(Type.Array(ClassWord, { minItems: 1, maxItems: 30 })),
  questions: Type.Optional(Type.Array(Question, { minItems: 1, maxItems: 20 })),
  graph: Type.Optional(Graph),
};

export type ClassQuestion = Static<typeof Question>;
export type ClassWord = Static<typeof ClassWord>;
export type ClassGraph = Static<typeof Graph>;
