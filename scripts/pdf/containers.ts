import type { Block } from '../document/document.ts';
import { columns, firstBaseline, group, naturalHeight, withBefore, type Item } from './items.ts';
import { inside, pageGrid, type Context, type Measured } from './measure.ts';
import { tag } from './tags.ts';

type BlockOf<K extends Block['kind']> = Extract<Block, { kind: K }>;

/**
 * The aside stands in the outer columns at the top of its main text, first lines on one baseline. Where the
 * outer columns are not free it stands above the main text.
 */
export function measureBeside(block: BlockOf<'beside'>, context: Context): Measured {
  const grid = pageGrid(context.design, context.paper);
  const outerFree = context.freeWidth > context.width;
  if (!outerFree) return measureStacked(block, context);
  const main = context.measure(block.main, inside(context, context.x, context.width));
  const aside = context.measure(block.aside, inside(context, grid.outerLeft, grid.outerWidth));
  const drop = baselineDrop(aside.items, main.items);
  const asideItems = drop > 0 ? [spacer(drop), ...aside.items] : aside.items;
  // A long aside would not find room beside the heading of its main text.
  const together = naturalHeight(asideItems) < context.pageHeight / 2;
  const asideGroup = group(asideItems, { together });
  return {
    items: [columns([[asideGroup], main.items])],
    tags: [tag('Aside', aside.tags), ...main.tags],
  };
}

/** Content over the whole type area. */
export function measureWide(block: BlockOf<'wide'>, context: Context): Measured {
  return context.measure(block.content, inside(context, context.x, context.freeWidth));
}

export function measureTogether(block: BlockOf<'together'>, context: Context): Measured {
  const { items, tags } = context.measure(block.content, context);
  return { items: items.length === 0 ? [] : [group(items, { together: true })], tags };
}

export function measurePageBreak(): Measured {
  return { items: [{ kind: 'break' }], tags: [] };
}

function measureStacked(block: BlockOf<'beside'>, context: Context): Measured {
  const aside = context.measure(block.aside, context);
  const main = context.measure(block.main, context);
  return {
    items: [...aside.items, ...withBefore(main.items, context.design.grid.baselinePt)],
    tags: [tag('Aside', aside.tags), ...main.tags],
  };
}

function baselineDrop(aside: readonly Item[], main: readonly Item[]): number {
  const [left, right] = [firstBaseline(main), firstBaseline(aside)];
  return left === undefined || right === undefined ? 0 : Math.max(0, left - right);
}

const spacer = (height: number): Item => ({
  kind: 'piece',
  before: 0,
  height,
  marks: [],
  keepWithNext: true,
});
