import type { Block, WorkingsItem } from '../document/document.ts';
import { columnText, firstColumn } from './column-text.ts';
import { group, piece, stacked, withBefore, type Item } from './items.ts';
import { isFullWidth, type Context, type Measured } from './measure.ts';
import { setText } from './text.ts';
import { list, tag, type Tag } from './tags.ts';

type Workings = Extract<Block, { kind: 'workings' }>;

/** An entry of so many lines or fewer stays in one piece. */
const shortEntryLines = 12;

/**
 * How each number was worked out: term and value, then the explanation, all in small type. Two columns of text where
 * there is room for them.
 */
export function measureWorkings(block: Workings, context: Context): Measured {
  const across = isFullWidth(context) ? 2 : 1;
  const column = firstColumn(context, across);
  const entries = block.items.map((item) => measureEntry(item, column));
  const gap = context.design.grid.baselinePt * 0.6;
  const items = entries.flatMap(({ item }, index) => withBefore([item], index === 0 ? 0 : gap));
  return {
    items: items.length === 0 ? [] : [columnText(items, context, { across })],
    tags: [
      list(
        'None',
        entries.map(({ li }) => li),
      ),
    ],
  };
}

function measureEntry(item: WorkingsItem, context: Context): { item: Item; li: Tag } {
  const term = setText(item.term, context, { style: 'small', owner: 'Lbl', face: 'semibold' });
  const value = setText(item.value, context, { style: 'small', owner: 'P' });
  const explanation = setText(item.explanation, context, { style: 'small', owner: 'P' });
  const head = [...term.pieces, ...value.pieces].map((line) => ({ ...line, keepWithNext: true }));
  const lines = [...head, ...explanation.pieces];
  return {
    item: lines.length > shortEntryLines ? group(lines) : unbroken(lines),
    li: tag('LI', [tag('Lbl', term.kids), tag('LBody', [tag('P', value.kids), tag('P', explanation.kids)])]),
  };
}

function unbroken(lines: readonly Item[]): Item {
  const { height, marks } = stacked(lines);
  return piece(height, marks);
}
