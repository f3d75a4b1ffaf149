/**
 * Builders: the only way to make document nodes. They check what types cannot and throw a `TypeError` on a
 * mistake of the program (never of a record: records are checked long before).
 */
import type { Scene } from '../drawings/scene.ts';
import type {
  AnswerRoom,
  Block,
  Caution,
  CautionGroup,
  DoerKind,
  Inline,
  SourceItem,
  Step,
  TableColumn,
  TableGroup,
  WorkingsItem,
} from './document.ts';

export type Words = string | Inline | readonly (string | Inline)[];

/** Turns strings and nodes into inline content; empty text disappears. */
export function inline(words: Words): readonly Inline[] {
  const list = Array.isArray(words) ? (words as readonly (string | Inline)[]) : [words as string | Inline];
  return list
    .map((word): Inline => (typeof word === 'string' ? { kind: 'text', text: realApostrophes(word) } : word))
    .filter((node) => node.kind !== 'text' || node.text !== '');
}

/** `sun's` is set as `sun’s`. */
function realApostrophes(text: string): string {
  return text.replace(/(?<=\p{L})'/gu, '’');
}

export const strong = (words: Words): Inline => ({ kind: 'strong', content: inline(words) });
export const emphasis = (words: Words): Inline => ({ kind: 'emphasis', content: inline(words) });
export const language = (tag: string, words: Words): Inline => ({
  kind: 'language',
  tag,
  content: inline(words),
});
export const abbreviation = (expansion: string, words: Words): Inline => ({
  kind: 'abbreviation',
  expansion,
  content: inline(words),
});
/** A mark that points at a note of the table with this id; `number` counts the notes from 1. */
export const mark = (at: { table: string; number: number }, meaning: string, words: Words): Inline => ({
  kind: 'mark',
  note: noteId(at.table, at.number),
  meaning,
  content: inline(words),
});
/** The id of a note under a table, counted from 1. */
export const noteId = (table: string, number: number): string => checkId(`${table}.note-${number}`);
export const findingWords = (target: string, words: Words): Inline => ({
  kind: 'finding',
  target: checkId(target),
  content: inline(words),
});

export function link(href: string, words: Words): Inline {
  if (!/^(https?:|mailto:)/.test(href)) throw new TypeError(`link address is not absolute: ${href}`);
  const content = inline(words);
  if (content.length === 0) throw new TypeError('link without words');
  return { kind: 'link', href, content };
}

export function heading(level: 2 | 3 | 4, id: string, words: Words): Block {
  return { kind: 'heading', level, id: checkId(id), content: nonEmpty(inline(words), 'heading') };
}

export function paragraph(words: Words, role: 'lead' | 'body' | 'small' = 'body'): Block {
  return { kind: 'paragraph', role, content: nonEmpty(inline(words), 'paragraph') };
}

export function list(ordered: boolean, items: readonly (readonly Block[])[]): Block {
  if (items.length === 0 || items.some((item) => item.length === 0))
    throw new TypeError('empty list or item');
  return { kind: 'list', ordered, items };
}

export function checklist(items: readonly Words[]): Block {
  if (items.length === 0) throw new TypeError('empty checklist');
  return { kind: 'checklist', items: items.map((item) => nonEmpty(inline(item), 'checklist item')) };
}

export interface TableOptions {
  readonly id: string;
  readonly caption: Words;
  readonly columns: readonly TableColumn[];
  readonly groups: readonly TableGroup[];
  readonly notes?: readonly Words[];
}

export function column(
  header: Words,
  options: { align?: TableColumn['align']; weight?: number; unit?: string; unitWords?: string } = {},
): TableColumn {
  const { align = 'text', weight = 1, unit, unitWords } = options;
  return {
    header: nonEmpty(inline(header), 'column header'),
    align,
    weight,
    ...(unit === undefined ? {} : { unit }),
    ...(unitWords === undefined ? {} : { unitWords }),
  };
}

export function table({ id, caption, columns, groups, notes = [] }: TableOptions): Block {
  if (columns.length === 0 || groups.every((group) => group.rows.length === 0)) {
    throw new TypeError(`table ${id} is empty`);
  }
  for (const group of groups) {
    for (const row of group.rows) {
      if (row.cells.length !== columns.length) throw new TypeError(`table ${id} has a ragged row`);
      if (row.cells[0]!.length === 0) throw new TypeError(`table ${id} has a row without a header`);
    }
  }
  const noted = new Set(notes.map((_, index) => noteId(id, index + 1)));
  const marks = groups.flatMap(({ rows }) => rows.flatMap(({ cells }) => cells.flatMap(marksIn)));
  const lost = marks.find((note) => !noted.has(note));
  if (lost !== undefined) throw new TypeError(`table ${id} has a mark without its note: ${lost}`);
  return {
    kind: 'table',
    id: checkId(id),
    caption: nonEmpty(inline(caption), 'table caption'),
    columns,
    groups,
    notes: notes.map(inline),
  };
}

/** A drawing cannot be made without words that tell what it shows. */
export function figure(scene: Scene, options: { narrow?: Scene; caption?: Words } = {}): Block {
  checkScene(scene);
  if (options.narrow) checkScene(options.narrow);
  return {
    kind: 'figure',
    scene,
    ...(options.narrow ? { narrow: options.narrow } : {}),
    ...(options.caption === undefined ? {} : { caption: inline(options.caption) }),
  };
}

export const caution = (item: Caution): Block => ({ kind: 'caution', caution: item });

export function cautionBox(options: {
  id: string;
  title: Words;
  groups: readonly CautionGroup[];
  closing: Words;
}): Block {
  if (options.groups.length === 0 || options.groups.some(({ items }) => items.length === 0)) {
    throw new TypeError(`caution box ${options.id} has nothing to say`);
  }
  return {
    kind: 'caution-box',
    id: checkId(options.id),
    title: nonEmpty(inline(options.title), 'caution box title'),
    groups: options.groups,
    closing: nonEmpty(inline(options.closing), 'caution box closing'),
  };
}

export function keyNumbers(items: readonly { value: Words; label: Words }[]): Block {
  if (items.length === 0) throw new TypeError('no key numbers');
  return {
    kind: 'key-numbers',
    items: items.map(({ value, label }) => ({
      value: nonEmpty(inline(value), 'key number'),
      label: nonEmpty(inline(label), 'key number label'),
    })),
  };
}

export function steps(items: readonly Step[]): Block {
  items.forEach((step, index) => {
    if (step.number !== index + 1) throw new TypeError(`step ${step.number} stands at place ${index + 1}`);
    if (step.drawing) checkScene(step.drawing);
  });
  return { kind: 'steps', items };
}

export const beside = (aside: readonly Block[], main: readonly Block[]): Block => {
  if (aside.length === 0 || main.length === 0) throw new TypeError('beside needs an aside and a main text');
  return { kind: 'beside', aside, main };
};
export const wide = (content: readonly Block[]): Block => ({ kind: 'wide', content });
export const together = (content: readonly Block[]): Block => ({ kind: 'together', content });
export const pageBreak = (): Block => ({ kind: 'page-break' });

export function labels(items: readonly { title: Words; lines: readonly Words[] }[]): Block {
  if (items.length === 0) throw new TypeError('no labels');
  return {
    kind: 'labels',
    items: items.map(({ title, lines }) => ({
      title: nonEmpty(inline(title), 'label'),
      lines: lines.map(inline),
    })),
  };
}

export function doer(who: DoerKind, words: Words): Block {
  return { kind: 'doer', who, content: nonEmpty(inline(words), 'doer') };
}

export function worksheet(
  items: readonly { question: Words; room: AnswerRoom }[],
  options: { opening?: Words } = {},
): Block {
  if (items.length === 0) throw new TypeError('worksheet without questions');
  return {
    kind: 'worksheet',
    ...(options.opening === undefined ? {} : { opening: nonEmpty(inline(options.opening), 'opening') }),
    items: items.map(({ question, room }) => {
      if (room.kind === 'lines' && !(Number.isInteger(room.count) && room.count > 0))
        throw new TypeError(`${room.count} lines to write on`);
      return { question: nonEmpty(inline(question), 'question'), room };
    }),
  };
}

export function workings(items: readonly WorkingsItem[]): Block {
  items.forEach((item) => checkId(item.id));
  return { kind: 'workings', items };
}

export function sources(items: readonly SourceItem[]): Block {
  items.forEach((item) => checkId(item.id));
  return { kind: 'sources', items };
}

/** The words of inline content, as someone hears them. */
export function plainText(content: readonly Inline[]): string {
  return content.map((node) => (node.kind === 'text' ? node.text : plainText(node.content))).join('');
}

/** The ids of the notes that marks point at. */
function marksIn(content: readonly Inline[]): string[] {
  return content.flatMap((node) => {
    if (node.kind === 'text') return [];
    return node.kind === 'mark' ? [node.note] : marksIn(node.content);
  });
}

function checkScene(scene: Scene): void {
  checkId(scene.id);
  if (scene.alternative.trim() === '') throw new TypeError(`drawing ${scene.id} has no alternative text`);
  if (!(scene.widthMm > 0 && scene.heightMm > 0)) throw new TypeError(`drawing ${scene.id} has no size`);
}

function checkId(id: string): string {
  if (!/^[a-z0-9]+(?:[-.][a-z0-9]+)*$/.test(id)) throw new TypeError(`not an id: ${id}`);
  return id;
}

function nonEmpty(content: readonly Inline[], what: string): readonly Inline[] {
  if (plainText(content).trim() === '') throw new TypeError(`${what} without words`);
  return content;
}
