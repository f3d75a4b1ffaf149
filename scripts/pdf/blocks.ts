import type { Block } from '../document/document.ts';
import { measureCaution, measureCautionBox } from './caution.ts';
import { measureBeside, measurePageBreak, measureTogether, measureWide } from './containers.ts';
import { measureDoer } from './doer.ts';
import { measureFigure } from './figure.ts';
import { withBefore, type Item } from './items.ts';
import { measureKeyNumbers } from './key-numbers.ts';
import { measureLabels } from './labels.ts';
import { measureChecklist, measureList } from './list.ts';
import { measuredOnce, type Context, type Measured } from './measure.ts';
import { measureHeading, measureParagraph } from './prose.ts';
import { measureSources } from './sources.ts';
import { spaceBetween } from './spacing.ts';
import { measureSteps } from './steps.ts';
import { measureTable } from './table.ts';
import { measureWorkings } from './workings.ts';
import { measureWorksheet } from './worksheet.ts';
import type { Tag } from './tags.ts';

/** One handler for each kind of block; a new kind does not pass the type check until it has one. */
const handlers: {
  readonly [K in Block['kind']]: (block: Extract<Block, { kind: K }>, context: Context) => Measured;
} = {
  heading: measureHeading,
  paragraph: measureParagraph,
  list: measureList,
  checklist: measureChecklist,
  table: measureTable,
  figure: measureFigure,
  caution: measureCaution,
  'caution-box': measureCautionBox,
  'key-numbers': measureKeyNumbers,
  steps: measureSteps,
  beside: measureBeside,
  wide: measureWide,
  together: measureTogether,
  labels: measureLabels,
  doer: measureDoer,
  worksheet: measureWorksheet,
  workings: measureWorkings,
  sources: measureSources,
  'page-break': measurePageBreak,
};

/** Measures blocks that follow each other in one column, with the space between them. */
export function measureBlocks(blocks: readonly Block[], context: Context): Measured {
  const items: Item[] = [];
  const tags: Tag[] = [];
  blocks.forEach((block, index) => {
    const measured = measureBlock(block, context);
    items.push(
      ...withBefore(
        measured.items,
        spaceBetween(blocks[index - 1], block, context.design, context.listDepth),
      ),
    );
    tags.push(...measured.tags);
  });
  return { items, tags };
}

function measureBlock(block: Block, context: Context): Measured {
  const handler = handlers[block.kind] as (block: Block, context: Context) => Measured;
  if (hasSteps(block)) return handler(block, context);
  return measuredOnce(block, context, 'block', () => handler(block, context));
}

/** Steps remember for themselves what was measured: the size of their drawings changes. */
function hasSteps(block: Block): boolean {
  if (block.kind === 'steps') return true;
  if (block.kind === 'wide' || block.kind === 'together') return block.content.some(hasSteps);
  return block.kind === 'beside' && [...block.main, ...block.aside].some(hasSteps);
}
