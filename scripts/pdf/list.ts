import type { Block } from '../document/document.ts';
import { stacked, withBefore, withMarksOnFirst, type Item, type Mark } from './items.ts';
import { colour, inside, isFullWidth, type Context, type Measured } from './measure.ts';
import { strokedBox } from './rules.ts';
import { equalWidths, inRows, rowPieces } from './side-by-side.ts';
import { baseline, plainLine, plainWidth, setText } from './text.ts';
import { leaf, list as listTag, tag, type Leaf, type Tag } from './tags.ts';

type BlockOf<K extends Block['kind']> = Extract<Block, { kind: K }>;

const bullets = ['•', '–'] as const;
const labelGapPt = 6;
const leastIndentPt = 15;

export function measureList(block: BlockOf<'list'>, context: Context): Measured {
  const labels = block.items.map((_, index) =>
    block.ordered ? `${index + 1}.` : bullets[context.listDepth % bullets.length]!,
  );
  const style = context.design.type.text;
  const widest = Math.max(...labels.map((label) => plainWidth(label, context, style)));
  const indent = Math.max(leastIndentPt, widest + labelGapPt);
  const inner = {
    ...inside(context, context.x + indent, context.width - indent),
    listDepth: context.listDepth + 1,
  };

  const items: Item[] = [];
  const tags: Tag[] = [];
  block.items.forEach((blocks, index) => {
    const body = context.measure(blocks, inner);
    const place = leaf('Lbl');
    const label = plainLine(
      labels[index]!,
      { x: context.x, top: 0, width: indent - labelGapPt, align: block.ordered ? 'right' : 'left' },
      context,
      { style: 'text', place },
    );
    const labelled = withMarksOnFirst(body.items, label);
    items.push(...withBefore(labelled, index === 0 ? 0 : context.design.grid.baselinePt / 4));
    tags.push(tag('LI', [tag('Lbl', [place]), tag('LBody', body.tags)]));
  });
  return { items, tags: [listTag(block.ordered ? 'Decimal' : 'Disc', tags)] };
}

const tickBoxPt = 11;
const tickGapPt = 8;

/** Things to tick off: a box big enough for a pencil before each; two columns where there is room. */
export function measureChecklist(block: BlockOf<'checklist'>, context: Context): Measured {
  const two = isFullWidth(context) && block.items.length > 3;
  const tags: Tag[] = [];
  const rows = inRows(block.items, equalWidths(two ? 2 : 1, context), context, (item, cellContext) => {
    const { items, kids } = tickItem(item, cellContext);
    tags.push(tag('LI', [tag('LBody', [tag('P', kids)])]));
    return stacked(items);
  });
  return { items: rowPieces(rows, context.design.grid.baselinePt / 3), tags: [listTag('None', tags)] };
}

function tickItem(
  item: BlockOf<'checklist'>['items'][number],
  context: Context,
): { items: readonly Item[]; kids: readonly (Tag | Leaf)[] } {
  const indent = tickBoxPt + tickGapPt;
  const text = setText(item, inside(context, context.x + indent, context.width - indent), {
    style: 'text',
    owner: 'P',
  });
  return { items: withMarksOnFirst(text.pieces, [tickBox(context)]), kids: text.kids };
}

/** An empty box that stands on the baseline, a little below it. */
function tickBox(context: Context): Mark {
  const style = context.design.type.text;
  const middle = baseline(context, style) - context.fonts.capHeight(style.face, style.sizePt) / 2;
  return {
    ...strokedBox(context.x + 0.5, middle - tickBoxPt / 2, tickBoxPt, tickBoxPt, context, {
      weight: 'seenPt',
    }),
    stroke: { colour: colour(context, 'ink'), widthPt: context.design.line.seenPt },
  } as Mark;
}
