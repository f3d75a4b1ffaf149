import type { Block } from '../document/document.ts';
import type { RenderContext } from './context.ts';
import { renderInline } from './inline.ts';
import { anchor, element, type Attributes, type Markup } from './markup.ts';
import { isBroad, renderDrawing } from './svg.ts';

type FigureBlock = Extract<Block, { kind: 'figure' }>;

/**
 * A drawing with its caption. Where the document has the drawing for narrow screens too, both are written and the
 * style sheet takes one of them away, for the eye and for the ear alike. A broad drawing without a narrow one may
 * be moved sideways on a small screen, by keyboard too, rather than shrink until its words cannot be read.
 */
export function renderFigure(block: FigureBlock, context: RenderContext): Markup {
  const { scene, caption = [] } = block;
  const id = anchor(scene.id, 'd-');
  return element('figure', { id }, [
    ...drawings(block, id, context),
    ...(caption.length > 0
      ? [element('figcaption', { id: `${id}-caption` }, renderInline(caption, context))]
      : []),
  ]);
}

function drawings(block: FigureBlock, id: string, context: RenderContext): readonly Markup[] {
  const { scene, narrow } = block;
  const drawing = renderDrawing(scene, context);
  if (narrow) {
    return [
      element('div', { class: 'for-wide' }, drawing),
      element('div', { class: 'for-narrow' }, renderDrawing(narrow, context)),
    ];
  }
  return [
    isBroad(scene)
      ? element('section', { class: 'scroll', tabindex: 0, ...name(block, id) }, drawing)
      : drawing,
  ];
}

/** A region needs a name: the caption, or else what the drawing tells. */
function name({ scene, caption = [] }: FigureBlock, id: string): Attributes {
  return caption.length > 0 ? { 'aria-labelledby': `${id}-caption` } : { 'aria-label': scene.alternative };
}
