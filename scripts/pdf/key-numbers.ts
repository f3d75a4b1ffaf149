import type { Block } from '../document/document.ts';
import { piece, shifted, stacked, withBefore, type Item } from './items.ts';
import type { Context, Measured } from './measure.ts';
import { horizontalRule } from './rules.ts';
import { inRows, type Cell } from './side-by-side.ts';
import { setText, typeStyle } from './text.ts';
import { inlineText, wholeWidth } from './inline.ts';
import { list, tag, type Tag } from './tags.ts';

type KeyNumbers = Extract<Block, { kind: 'key-numbers' }>;
type KeyNumber = KeyNumbers['items'][number];

const ruleGapPt = 4;

/** Big values, each under a rule and over its label: in a row where there is room, otherwise one below the other. */
export function measureKeyNumbers(block: KeyNumbers, context: Context): Measured {
  const tags: Tag[] = [];
  const rows = inRows(block.items, cellsAcross(block, context), context, (item, cellContext) => {
    const { cell, li } = measureKeyNumber(item, cellContext);
    tags.push(li);
    return cell;
  });
  const gap = context.design.grid.baselinePt * 0.8;
  const items = rows.map((row, index): Item =>
    piece(row.height, row.marks, { before: index === 0 ? 0 : gap }),
  );
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

/** As many in a row as keep every value on one line, four at most. */
function cellsAcross(block: KeyNumbers, context: Context): number {
  const style = typeStyle(context, { style: 'keyNumber' });
  const widest = Math.max(
    ...block.items.map(({ value }) => {
      const { runs } = inlineText(value, { ...style, findings: 'plain' }, context.fonts, 'P');
      return wholeWidth(runs, style.sizePt, context.fonts);
    }),
  );
  const gutter = context.design.grid.gutterPt;
  const room = Math.floor((context.width + gutter) / (Math.max(widest, leastCellPt) + gutter));
  return Math.max(1, Math.min(room, block.items.length, 4));
}

/** A label needs about this much for its words. */
const leastCellPt = 88;
