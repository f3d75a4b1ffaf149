import { noteId, plainText } from '../document/build.ts';
import type { Block, Inline, TableColumn, TableGroup, TableRow } from '../document/document.ts';
import type { RenderContext } from './context.ts';
import { renderInline } from './inline.ts';
import { anchor, classes, element, inRow, onLines, text, type Markup } from './markup.ts';

type TableBlock = Extract<Block, { kind: 'table' }>;

/** A table with its caption and the small print under it. */
export function renderTable(block: TableBlock, context: RenderContext): Markup {
  const id = anchor(block.id);
  const captionId = `${id}-caption`;
  const table = element('table', { id }, [
    element('caption', { id: captionId }, element('span', {}, renderInline(block.caption, context))),
    element('thead', {}, element('tr', {}, inRow(block.columns.map((column) => head(column, context))))),
    ...block.groups.map((group) => renderGroup(group, block.columns, context)),
  ]);
  const notes = block.notes.map((note, index) =>
    element('p', { class: 'small', id: anchor(noteId(block.id, index + 1)) }, renderInline(note, context)),
  );
  return element('div', { class: 'table' }, [
    scrollable(block, captionId, table),
    ...(notes.length > 0 ? [element('div', { class: 'table-notes' }, onLines(notes))] : []),
  ]);
}

function head(column: TableColumn, context: RenderContext): Markup {
  const unit =
    column.unit === undefined
      ? []
      : [text(' '), element('span', { class: 'unit' }, unitOf(column.unit, column))];
  return element('th', { scope: 'col', class: alignment(column) }, [
    renderInline(column.header, context),
    ...unit,
  ]);
}

const unitOf = (unit: string, { unitWords }: TableColumn): Markup =>
  unitWords === undefined ? text(unit) : element('abbr', { title: unitWords }, text(unit));

function renderGroup(group: TableGroup, columns: readonly TableColumn[], context: RenderContext): Markup {
  const heading = group.header
    ? [
        element(
          'tr',
          { class: 'group' },
          element(
            'th',
            { scope: 'rowgroup', colspan: columns.length },
            element('span', {}, renderInline(group.header, context)),
          ),
        ),
      ]
    : [];
  const rows = group.rows.map((row) => renderRow(row, columns, context));
  return element('tbody', {}, onLines([...heading, ...rows]));
}

function renderRow(row: TableRow, columns: readonly TableColumn[], context: RenderContext): Markup {
  const cells = row.cells.map((cell, index) => {
    const align = alignment(columns[index]);
    const words = renderInline(cell, context, { insideTable: true });
    return index === 0
      ? element('th', { scope: 'row', class: align }, words)
      : element('td', { class: classes(align, isShort(cell) ? 'short' : undefined) }, words);
  });
  return element('tr', {}, inRow(cells));
}

function alignment(column: TableColumn | undefined): string | undefined {
  return classes(column && column.align !== 'text' ? column.align : undefined);
}

/**
 * A table that cannot fit a narrow phone is moved sideways inside a region of its own, which the keyboard can
 * reach; a table that fits needs no such stop on the way down the page.
 */
function scrollable(block: TableBlock, captionId: string, table: Markup): Markup {
  return leastWidthEm(block) <= phoneWidthEm
    ? element('div', { class: 'scroll' }, table)
    : element('section', { class: 'scroll', tabindex: 0, 'aria-labelledby': captionId }, table);
}

/** A screen of 320 px less its margins, in em of 18 px. */
const phoneWidthEm = 16;

/** What the longest words of each column need, at half an em for a character and one em for the cell's margins. */
function leastWidthEm({ columns, groups }: TableBlock): number {
  const rows = groups.flatMap((group) => group.rows);
  return columns
    .map((column, index) => {
      const cells = rows.map((row) => row.cells[index] ?? []);
      const parts = cells.map((cell) =>
        isShort(cell) ? plainText(cell).length : longestWord(plainText(cell)),
      );
      const heads = [plainText(column.header), column.unit ?? ''].map(longestWord);
      return Math.max(...parts, ...heads) * 0.5 + 1;
    })
    .reduce((sum, width) => sum + width, 0);
}

/** Such as "10–12 h", which must not break at its dash. A longer cell may break, so that every table fits on paper. */
function isShort(cell: readonly Inline[]): boolean {
  return plainText(cell).length <= 8;
}

/** No break happens at a non-breaking space. */
function longestWord(words: string): number {
  return Math.max(...words.split(/[ \n-]/).map((word) => word.length));
}
