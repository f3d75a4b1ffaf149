/**
 * The sheet's blocks as HTML, in the order of the data. One handler for each kind of block, in a table that the
 * compiler checks: a new kind does not pass the type check until it has a handler here.
 *
 * Nothing here knows a file, a page of paper, or what a sheet is about.
 */
import type { Block, SheetDocument } from '../document/document.ts';
import { renderCaution, renderCautionBox } from './caution.ts';
import type { RenderAll, RenderContext } from './context.ts';
import { renderDoer } from './doer.ts';
import { renderFigure } from './figure.ts';
import { renderInline } from './inline.ts';
import { renderKeyNumbers } from './key-numbers.ts';
import { renderLabels } from './labels.ts';
import { renderChecklist, renderList } from './list.ts';
import { anchor, element, onLines, type Markup } from './markup.ts';
import { headingLevels, innerBlocks } from '../document/outline.ts';
import { renderSources } from './sources.ts';
import { renderSteps } from './steps.ts';
import { renderTable } from './table.ts';
import { renderWorkings } from './workings.ts';
import { renderWorksheet } from './worksheet.ts';

export interface RenderOptions {
  /** Size of running text on paper; drawings keep their proportion to it. 11 when absent. */
  readonly textSizePt?: number;
}

/** The blocks of a sheet, without the title band and the foot, which belong to the layout. */
export function renderBlocks(document: SheetDocument, { textSizePt = 11 }: RenderOptions = {}): string {
  const context: RenderContext = {
    furniture: document.furniture,
    workings: new Set(workingsIds(document.blocks)),
    levels: headingLevels(document.blocks),
    textSizePt,
  };
  return renderAll(document.blocks, context);
}

const renderAll: RenderAll = (blocks, context) => onLines(blocks.map((block) => renderBlock(block, context)));

type BlockOf<Kind extends Block['kind']> = Extract<Block, { kind: Kind }>;
type Handlers = {
  readonly [Kind in Block['kind']]: (block: BlockOf<Kind>, context: RenderContext, all: RenderAll) => Markup;
};

const handlers: Handlers = {
  heading: (block, context) =>
    element(
      `h${context.levels.get(block) ?? block.level}`,
      { id: anchor(block.id), class: `heading${block.level}` },
      renderInline(block.content, context),
    ),
  paragraph: (block, context) =>
    element(
      'p',
      { class: block.role === 'body' ? undefined : block.role },
      renderInline(block.content, context),
    ),
  list: renderList,
  checklist: renderChecklist,
  table: renderTable,
  figure: renderFigure,
  caution: (block, context) => renderCaution(block.caution, context),
  'caution-box': renderCautionBox,
  'key-numbers': renderKeyNumbers,
  steps: renderSteps,
  beside: (block, context, all) =>
    element('div', { class: 'beside' }, [
      element('div', { class: 'beside-aside' }, all(block.aside, context)),
      element('div', { class: 'beside-main' }, all(block.main, context)),
    ]),
  wide: (block, context, all) => element('div', { class: 'wide' }, all(block.content, context)),
  together: (block, context, all) => element('div', { class: 'together' }, all(block.content, context)),
  labels: renderLabels,
  doer: renderDoer,
  worksheet: renderWorksheet,
  workings: renderWorkings,
  sources: renderSources,
  'page-break': () => element('div', { class: 'page-break' }),
};

function renderBlock<Kind extends Block['kind']>(block: BlockOf<Kind>, context: RenderContext): Markup {
  const handler = handlers[block.kind] as (
    block: BlockOf<Kind>,
    context: RenderContext,
    all: RenderAll,
  ) => Markup;
  return handler(block, context, renderAll);
}

function workingsIds(blocks: readonly Block[]): readonly string[] {
  return blocks.flatMap((block) =>
    block.kind === 'workings' ? block.items.map((item) => item.id) : workingsIds(innerBlocks(block)),
  );
}
