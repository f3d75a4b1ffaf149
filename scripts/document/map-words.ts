import type { Block, Caution, Inline, SheetDocument } from './document.ts';
import type { Scene } from '../drawings/scene.ts';

/** What to make of the words of a document, wherever they stand. */
export interface WordMap {
  /** Running words: of headings, paragraphs, list items, notes. */
  readonly running: (content: readonly Inline[]) => readonly Inline[];
  /** The words of one cell of a table. */
  readonly cell: (content: readonly Inline[]) => readonly Inline[];
  /** What the unit of a column is short for, if anything. */
  readonly unit: (unit: string) => string | undefined;
  /** What is told of a drawing. */
  readonly alternative: (text: string) => string;
}

/** The same document with its words changed, and everything else as it was. */
export function mapWords(document: SheetDocument, map: WordMap): SheetDocument {
  return { ...document, blocks: document.blocks.map((block) => mapBlock(block, map)) };
}

function mapBlock(block: Block, map: WordMap): Block {
  const { running } = map;
  const blocks = (inner: readonly Block[]): readonly Block[] => inner.map((each) => mapBlock(each, map));
  switch (block.kind) {
    case 'heading':
    case 'paragraph':
    case 'doer':
      return { ...block, content: running(block.content) };
    case 'list':
      return { ...block, items: block.items.map(blocks) };
    case 'checklist':
      return { ...block, items: block.items.map(running) };
    case 'table':
      return mapTable(block, map);
    case 'figure':
      return {
        ...block,
        scene: mapScene(block.scene, map),
        ...(block.narrow ? { narrow: mapScene(block.narrow, map) } : {}),
        ...(block.caption ? { caption: running(block.caption) } : {}),
      };
    case 'caution':
      return { ...block, caution: mapCaution(block.caution, map) };
    case 'caution-box':
      return {
        ...block,
        title: running(block.title),
        groups: block.groups.map((group) => ({ ...group, items: group.items.map(running) })),
        closing: running(block.closing),
      };
    case 'key-numbers':
      return {
        ...block,
        items: block.items.map(({ value, label }) => ({ value: running(value), label: running(label) })),
      };
    case 'steps':
      return {
        ...block,
        items: block.items.map((step) => ({
          ...step,
          title: running(step.title),
          cautions: step.cautions.map((caution) => mapCaution(caution, map)),
          body: blocks(step.body),
          ...(step.drawing ? { drawing: mapScene(step.drawing, map) } : {}),
        })),
      };
    case 'beside':
      return { ...block, aside: blocks(block.aside), main: blocks(block.main) };
    case 'wide':
    case 'together':
      return { ...block, content: blocks(block.content) };
    case 'labels':
      return {
        ...block,
        items: block.items.map(({ title, lines }) => ({ title: running(title), lines: lines.map(running) })),
      };
    case 'worksheet':
      return {
        ...block,
        ...(block.opening ? { opening: running(block.opening) } : {}),
        items: block.items.map((item) => ({ ...item, question: running(item.question) })),
      };
    case 'workings':
      return {
        ...block,
        items: block.items.map((item) => ({
          ...item,
          term: running(item.term),
          value: running(item.value),
          explanation: running(item.explanation),
        })),
      };
    case 'sources':
      return { ...block, items: block.items.map((item) => ({ ...item, content: running(item.content) })) };
    case 'page-break':
      return block;
  }
}

function mapTable(block: Extract<Block, { kind: 'table' }>, map: WordMap): Block {
  const { running, cell } = map;
  return {
    ...block,
    caption: running(block.caption),
    columns: block.columns.map((column) => {
      const unitWords = column.unit === undefined ? undefined : map.unit(column.unit);
      return {
        ...column,
        header: running(column.header),
        ...(unitWords === undefined ? {} : { unitWords }),
      };
    }),
    groups: block.groups.map((group) => ({
      ...(group.header ? { header: running(group.header) } : {}),
      rows: group.rows.map((row) => ({ ...row, cells: row.cells.map(cell) })),
    })),
    notes: block.notes.map(running),
  };
}

const mapCaution = (caution: Caution, { running }: WordMap): Caution => ({
  ...caution,
  hazard: running(caution.hazard),
  avoidance: running(caution.avoidance),
});

const mapScene = (scene: Scene, { alternative }: WordMap): Scene => ({
  ...scene,
  alternative: alternative(scene.alternative),
});
