import { abbreviation, inline, noteId, plainText } from '../document/build.ts';
import type { Block, Inline, TableColumn, TableRow } from '../document/document.ts';
import type { TypeStyleName } from '../document/design.ts';
import { inlineText, longestUnit, wholeWidth } from './inline.ts';
import {
  asArtifacts,
  group,
  naturalHeight,
  piece,
  shifted,
  stacked,
  withBefore,
  type Piece,
} from './items.ts';
import { inside, type Context, type Measured } from './measure.ts';
import { horizontalRule } from './rules.ts';
import { plainLine, plainWidth, setText, shortened, typeStyle } from './text.ts';
import { tag, type Tag } from './tags.ts';
import { sharedWidths } from './widths.ts';

type Table = Extract<Block, { kind: 'table' }>;

const leastRowPt = 20;
/** Above and below the words of a cell; more where cells have several lines, so that rows stay apart. */
const cellPaddingPt = { oneLine: 2.5, severalLines: 4 };
const headPaddingPt = 4;

/** What all rows of a table share. */
interface Frame {
  /** Running text if its longest words fit, otherwise small type. */
  readonly style: TypeStyleName;
  readonly cells: readonly Cell[];
  readonly paddingPt: number;
  readonly context: Context;
}

/** A column: text starts at its left edge, numbers end at its right edge. */
interface Cell {
  readonly context: Context;
  readonly align: 'left' | 'right' | 'centre';
}

/**
 * A table with its caption above and its notes below. Rows are never broken; the head stands again at the top
 * of every later page, with the caption and the word for "continued".
 */
export function measureTable(block: Table, context: Context): Measured {
  const frame = measureFrame(block, context);
  const caption = setText(block.caption, context, { style: 'heading4', owner: 'Caption' });
  const head = measureHead(block.columns, frame);
  const body = block.groups.map((rows) => measureGroup(rows, head.cells, frame));
  const notes = block.notes.map((note) => setText(note, context, { style: 'small', owner: 'P' }));

  const rows = closed(
    body.flatMap(({ items }) => items),
    { hasNotes: notes.length > 0 },
    context,
  );
  const items = [
    ...caption.pieces.map((line) => ({ ...line, keepWithNext: true })),
    head.item,
    ...rows,
    ...notes.flatMap((note, index) => withBefore(note.pieces.map(asNote), index === 0 ? 5 : 1)),
  ];
  const together = naturalHeight(items) < context.pageHeight / 2;
  return {
    items: [
      group(items, {
        together,
        yields: true,
        floats: together,
        repeatedHead: repeatedHead(block, head.item, context),
      }),
    ],
    tags: [
      tag('Table', [
        tag('Caption', caption.kids),
        tag('THead', [head.tr]),
        ...body.map(({ tbody }) => tbody),
      ]),
      ...notes.map((note, index) => tag('Note', [tag('P', note.kids)], { id: noteId(block.id, index + 1) })),
    ],
  };
}

const asNote = (line: Piece): Piece => ({ ...line, withoutHead: true });

/** The rows with a rule under the last, which is held to the one before it and to the notes. */
function closed(
  rows: readonly Piece[],
  { hasNotes }: { hasNotes: boolean },
  context: Context,
): readonly Piece[] {
  return rows.map((row, index) => {
    if (index === rows.length - 2) return { ...row, keepWithNext: true };
    if (index < rows.length - 1) return row;
    const rule = horizontalRule(context.x, row.height, context.width, context, { weight: 'seenPt' });
    return { ...row, marks: [...row.marks, rule], keepWithNext: hasNotes };
  });
}

function repeatedHead(block: Table, head: Piece, context: Context): Piece {
  const style = typeStyle(context, { style: 'small', face: 'italic' });
  const continued = ` (${context.furniture.continued})`;
  const room = context.width - plainWidth(continued, context, style);
  const text = shortened(plainText(block.caption), room, context, style) + continued;
  const line = plainLine(text, { x: context.x, top: 0, width: context.width }, context, {
    style: 'small',
    face: 'italic',
    place: 'pagination',
  });
  const top = context.design.type.small.leadingPt;
  return piece(top + head.height, [...line, ...shifted(asArtifacts(head.marks), top)]);
}

interface MeasuredRow {
  readonly item: Piece;
  readonly tr: Tag;
  /** The tags of its header cells, which the cells of other rows belong to. */
  readonly cells: readonly Tag[];
}

/** Names of the columns, each with its unit under it, all standing on the rule. */
function measureHead(columns: readonly TableColumn[], { cells, context }: Frame): MeasuredRow {
  const measured = columns.map((column, index) => measureHeadCell(column, cells[index]!));
  const inner = Math.max(...measured.map(({ stack }) => stack.height));
  const height = inner + 2 * headPaddingPt;
  const marks = measured.flatMap(({ stack }) => shifted(stack.marks, headPaddingPt + inner - stack.height));
  const rule = horizontalRule(context.x, height, context.width, context, { weight: 'seenPt', hue: 'ink' });
  const ths = measured.map(({ th }) => th);
  return {
    item: piece(height, [rule, ...marks], { keepWithNext: true }),
    tr: tag('TR', ths),
    cells: ths,
  };
}

function measureHeadCell(
  column: TableColumn,
  { context, align }: Cell,
): { stack: ReturnType<typeof stacked>; th: Tag } {
  const words = [
    setText(column.header, context, { style: 'small', owner: 'P', face: 'semibold', align }),
    ...(column.unit === undefined
      ? []
      : [setText(unitOf(column.unit, column), context, { style: 'small', owner: 'P', align })]),
  ];
  return {
    stack: stacked(words.flatMap(({ pieces }) => pieces)),
    th: tag(
      'TH',
      words.map(({ kids }) => tag('P', kids)),
      { attributes: { O: 'Table', Scope: 'Column' } },
    ),
  };
}

const unitOf = (unit: string, { unitWords }: TableColumn): readonly Inline[] =>
  inline(unitWords === undefined ? unit : abbreviation(unitWords, unit));

/** A heading over the rows of a group is a header of each of them, and stands again where they go on. */
function measureGroup(
  rows: Table['groups'][number],
  columns: readonly Tag[],
  frame: Frame,
): { items: readonly Piece[]; tbody: Tag } {
  const heading = rows.header && measureGroupHeader(rows.header, frame);
  const groupHead = heading && piece(heading.item.height, asArtifacts(heading.item.marks));
  const headers = { columns, group: heading?.cells ?? [] };
  const measured = [
    ...(heading ? [heading] : []),
    ...rows.rows.map((row) => {
      const { item, ...rest } = measureRow(row, headers, frame);
      return { ...rest, item: groupHead ? { ...item, groupHead } : item };
    }),
  ];
  // Two rows stay with the heading of their group.
  const firstRow = rows.header && rows.rows.length > 1 ? 1 : -1;
  return {
    items: measured.map(({ item }, index) => (index === firstRow ? { ...item, keepWithNext: true } : item)),
    tbody: tag(
      'TBody',
      measured.map(({ tr }) => tr),
    ),
  };
}

/** A heading row over the rows of a group, kept with the first of them. */
function measureGroupHeader(header: readonly Inline[], { cells, paddingPt, context }: Frame): MeasuredRow {
  const text = setText(header, context, { style: 'text', owner: 'TH', face: 'semibold' });
  const { height, marks } = stacked(text.pieces);
  const above = paddingPt * 2 + cellPaddingPt.oneLine;
  const rule = horizontalRule(context.x, 0, context.width, context, { weight: 'thinPt' });
  const th = tag('TH', text.kids, { attributes: { O: 'Table', Scope: 'Column', ColSpan: cells.length } });
  return {
    item: piece(height + above + cellPaddingPt.oneLine, [rule, ...shifted(marks, above)], {
      keepWithNext: true,
    }),
    tr: tag('TR', [th]),
    cells: [th],
  };
}

/** The header cells above a row. */
interface HeadersAbove {
  /** One for each column. */
  readonly columns: readonly Tag[];
  readonly group: readonly Tag[];
}

/** What is told of a cell: the heading of its group, its row, its column. */
function measureRow(
  row: TableRow,
  headers: HeadersAbove,
  { style, cells, paddingPt, context }: Frame,
): MeasuredRow {
  const texts = row.cells.map((content, index) => {
    const cell = cells[index]!;
    return setText(content, cell.context, { style, owner: index === 0 ? 'TH' : 'TD', align: cell.align });
  });
  const stacks = texts.map((text) => stacked(text.pieces));
  const inner = Math.max(...stacks.map(({ height }) => height));
  const above = Math.max(paddingPt, (leastRowPt - typeStyle(context, { style }).leadingPt) / 2);
  const marks = stacks.flatMap((stack) => shifted(stack.marks, above));
  const [first, ...others] = texts;
  const columnOf = (index: number): readonly Tag[] => headers.columns.slice(index, index + 1);
  const th = tag('TH', first?.kids ?? [], {
    attributes: { O: 'Table', Scope: 'Row', Headers: [...headers.group, ...columnOf(0)] },
  });
  const tds = others.map(({ kids }, index) =>
    tag('TD', kids, {
      attributes: { O: 'Table', Headers: [...headers.group, th, ...columnOf(index + 1)] },
    }),
  );
  return {
    item: piece(Math.max(leastRowPt, inner + 2 * above), marks),
    tr: tag('TR', [th, ...tds]),
    cells: [th],
  };
}

const alignments = { text: 'left', number: 'right', centre: 'centre' } as const;

function measureFrame(block: Table, context: Context): Frame {
  const gap = context.design.grid.gutterPt;
  const room = context.width - gap * (block.columns.length - 1);
  const style = sum(leastWidths(block, 'text', 'longest-word', context)) <= room ? 'text' : 'small';
  const least = leastWidths(block, style, 'longest-word', context);
  const oneLine = leastWidths(block, style, 'one-line', context);
  if (sum(least) > room + 0.01) {
    const detail = 'its longest words are wider than its columns, so that words are cut';
    context.report({ what: 'table', id: block.id, detail });
  }
  const weights = block.columns.map((column) => column.weight);
  let x = context.x;
  const cells = sharedWidths(sum(oneLine) <= room ? oneLine : least, weights, room).map(
    (width, index): Cell => {
      const cell = { context: inside(context, x, width), align: alignments[block.columns[index]!.align] };
      x += width + gap;
      return cell;
    },
  );
  const wraps = block.groups.some(({ rows }) => rows.some((row) => isWrapped(row, cells, style)));
  return { style, cells, paddingPt: wraps ? cellPaddingPt.severalLines : cellPaddingPt.oneLine, context };
}

const isWrapped = (row: TableRow, cells: readonly Cell[], style: TypeStyleName): boolean =>
  row.cells.some(
    (content, index) => setText(content, cells[index]!.context, { style, owner: 'TD' }).lines.length > 1,
  );

/**
 * For each column the width of its longest word, or of its longest cell on one line, in the head as in the rows.
 * Numbers are never broken.
 */
function leastWidths(
  block: Table,
  style: TypeStyleName,
  need: 'longest-word' | 'one-line',
  context: Context,
): number[] {
  const cellStyle = { ...typeStyle(context, { style }), findings: 'plain' } as const;
  const headStyle = {
    ...typeStyle(context, { style: 'small', face: 'semibold' }),
    findings: 'plain',
  } as const;
  const rows = block.groups.flatMap((rowGroup) => rowGroup.rows);
  return block.columns.map((column, index) => {
    const measure = column.align === 'number' || need === 'one-line' ? wholeWidth : longestUnit;
    const head = inlineText(column.header, headStyle, context.fonts, 'TH').runs;
    const cells = rows.map((row) =>
      measure(
        inlineText(row.cells[index]!, cellStyle, context.fonts, 'TD').runs,
        cellStyle.sizePt,
        context.fonts,
      ),
    );
    return Math.max(longestUnit(head, headStyle.sizePt, context.fonts), ...cells);
  });
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
