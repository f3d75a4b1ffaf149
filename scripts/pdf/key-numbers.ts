import type { Block } from '../document/document.ts';
import { shifted, stacked, withBefore } from './items.ts';
import type { Context, Measured } from './measure.ts';
import { horizontalRule } from './rules.ts';
import { equalWidths, inRows, rowPieces, type Cell } from './side-by-side.ts';
import { setText, typeStyle } from './text.ts';
import { inlineText, wholeWidth } from './inline.ts';
import { sharedWidths } from './widths.ts';
import { list, tag, type Tag } from './tags.ts';

type KeyNumbers = Extract<Block, { kind: 'key-numbers' }>;
type KeyNumber = KeyNumbers['items'][number];

const ruleGapPt = 4;

/** Big values, each under a rule and over its label: in a row where there is room, otherwise one below the other. */
export function measureKeyNumbers(block: KeyNumbers, context: Context): Measured {
  const tags: Tag[] = [];
  const rows = inRows(block.items, cellWidths(block, context), context, (item, cellContext) => {
    const { cell, li } = measureKeyNumber(item, cellContext);
    tags.push(li);
    return cell;
  });
  const items = rowPieces(rows, context.design.grid.baselinePt * 0.8);
  return { items, tags: [list('None', tags)] };
}

function measureKeyNumber(item: KeyNumber, context: Context): { cell: Cell; li: Tag } {
  const value = setText(item.value, context, { style: 'keyNumber', owner: 'P' });
  const label = setText(item.label, context, { style: 'small', owner: 'P' });
  const { height, marks } = stacked([...value.pieces, ...withBefore(label.pieces, 1)]);
  const rule = horizontalRule(context.x, 0, context.width, context, { weight: 'seenPt', hue: 'green' });
  return {
    cell: { height: height + ruleGapPt, marks: [rule, ...shifted(marks, ruleGapPt)] },
    li: tag('LI', [tag('LBody', [tag('P', value.kids), tag('P', label.kids)])]),
  };
}

/** A label needs about this much for its words. */
const leastCellPt = 88;
const mostAcross = 5;

/** One row if every value stays on one line in it, a wide value taking more; otherwise even rows of equal cells. */
function cellWidths(block: KeyNumbers, context: Context): number[] {
  const style = typeStyle(context, { style: 'keyNumber' });
  const needed = block.items.map(({ value }) => {
    const { runs } = inlineText(value, { ...style, findings: 'plain' }, context.fonts, 'P');
    return Math.max(leastCellPt, wholeWidth(runs, style.sizePt, context.fonts));
  });
  const count = needed.length;
  const gutter = context.design.grid.gutterPt;
  const room = context.width - gutter * (count - 1);
  if (count <= mostAcross && needed.reduce((sum, width) => sum + width, 0) <= room) {
    return sharedWidths(needed, new Array<number>(count).fill(1), room);
  }
  const fitting = Math.max(1, Math.floor((context.width + gutter) / (Math.max(...needed) + gutter)));
  const rows = Math.ceil(count / Math.min(fitting, mostAcross));
  return equalWidths(Math.ceil(count / rows), context);
}
