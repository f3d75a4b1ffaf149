import type { Block, WorkingsItem } from '../document/document.ts';
import { piece, stacked } from './items.ts';
import { isFullWidth, type Context, type Measured } from './measure.ts';
import { inRows, type Cell } from './side-by-side.ts';
import { setText } from './text.ts';
import { list, tag, type Tag } from './tags.ts';

type Workings = Extract<Block, { kind: 'workings' }>;

/** How each number was worked out: term and value, then the explanation in small type; two columns where there is room. */
export function measureWorkings(block: Workings, context: Context): Measured {
  const tags: Tag[] = [];
  const across = isFullWidth(context) ? 2 : 1;
  const rows = inRows(block.items, across, context, (item, cellContext) => {
    const { cell, li } = measureEntry(item, cellContext);
    tags.push(li);
    return cell;
  });
  const gap = context.design.grid.baselinePt * 0.6;
  return {
    items: rows.map((row, index) =>
      piece(row.height, row.marks, { before: index === 0 ? 0 : gap, baseline: row.baseline }),
    ),
    tags: [list('None', tags)],
  };
}

function measureEntry(item: WorkingsItem, context: Context): { cell: Cell; li: Tag } {
  const term = setText(item.term, context, { style: 'small', owner: 'Lbl', face: 'semibold' });
  const value = setText(item.value, context, { style: 'small', owner: 'P' });
  const explanation = setText(item.explanation, context, { style: 'small', owner: 'P' });
  return {
    cell: stacked([...term.pieces, ...value.pieces, ...explanation.pieces]),
    li: tag('LI', [tag('Lbl', term.kids), tag('LBody', [tag('P', value.kids), tag('P', explanation.kids)])]),
  };
}
