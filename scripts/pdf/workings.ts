import type { Block, WorkingsItem } from '../document/document.ts';
import { stacked } from './items.ts';
import { isFullWidth, type Context, type Measured } from './measure.ts';
import { equalWidths, inRows, rowPieces, type Cell } from './side-by-side.ts';
import { setText } from './text.ts';
import { list, tag, type Tag } from './tags.ts';

type Workings = Extract<Block, { kind: 'workings' }>;

/** How each number was worked out: term and value, then the explanation in small type; two columns where there is room. */
export function measureWorkings(block: Workings, context: Context): Measured {
  const tags: Tag[] = [];
  const across = isFullWidth(context) ? 2 : 1;
  const rows = inRows(block.items, equalWidths(across, context), context, (item, cellContext) => {
    const { cell, li } = measureEntry(item, cellContext);
    tags.push(li);
    return cell;
  });
  return { items: rowPieces(rows, context.design.grid.baselinePt * 0.6), tags: [list('None', tags)] };
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
