import type { Block } from '../document/document.ts';
import { group, piece, shifted, stacked, withBefore, type Item, type Mark } from './items.ts';
import { inside, type Context, type Measured } from './measure.ts';
import { horizontalRule, verticalRule, type RuleOptions } from './rules.ts';
import { setText } from './text.ts';
import { list, tag, type Tag } from './tags.ts';

type Labels = Extract<Block, { kind: 'labels' }>;
type Label = Labels['items'][number];

const paddingPt = { across: 14, down: 14 };
const cutLine: RuleOptions = { weight: 'thinPt', hue: 'ink', dashed: true };

/** Labels to cut out, two across, all of one height, sharing the dashed lines between them; on one page if that is no waste. */
export function measureLabels(block: Labels, context: Context): Measured {
  const width = context.width / 2;
  const cells = block.items.map((label, index) =>
    measureLabel(label, inside(context, context.x + (index % 2) * width, width)),
  );
  const height = Math.max(...cells.map((cell) => cell.height)) + 2 * paddingPt.down;
  const items: Item[] = [];
  for (let start = 0; start < cells.length; start += 2) {
    const row = cells.slice(start, start + 2);
    const words = row.flatMap((cell) => shifted(cell.marks, paddingPt.down));
    items.push(piece(height, [...cutLines(row.length, width, height, context), ...words]));
  }
  return {
    items: [group(items, { together: true, yields: true })],
    tags: [
      list(
        'None',
        cells.map(({ li }) => li),
      ),
    ],
  };
}

function measureLabel(label: Label, cell: Context): { height: number; marks: readonly Mark[]; li: Tag } {
  const content = inside(cell, cell.x + paddingPt.across, cell.width - 2 * paddingPt.across);
  const title = setText(label.title, content, { style: 'title', owner: 'P' });
  const lines = label.lines.map((line) => setText(line, content, { style: 'lead', owner: 'P' }));
  const { height, marks } = stacked([
    ...title.pieces,
    ...lines.flatMap((line, index) => withBefore(line.pieces, index === 0 ? 3 : 0)),
  ]);
  const words = [title, ...lines].map((text) => tag('P', text.kids));
  return { height, marks, li: tag('LI', [tag('LBody', words)]) };
}

/** Edges of a row. Neighbouring rows draw the line between them at the same place with the same dashes. */
function cutLines(count: number, width: number, height: number, context: Context): Mark[] {
  const { x } = context;
  const edges = Array.from({ length: count + 1 }, (_, index) =>
    verticalRule(x + index * width, 0, height, context, cutLine),
  );
  return [...[0, height].map((y) => horizontalRule(x, y, count * width, context, cutLine)), ...edges];
}
