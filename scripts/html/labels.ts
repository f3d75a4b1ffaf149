import type { Block } from '../document/document.ts';
import type { RenderContext } from './context.ts';
import { renderInline } from './inline.ts';
import { element, onLines, type Markup } from './markup.ts';

/** Labels to cut out: the style sheet draws the dashed line. */
export function renderLabels(block: Extract<Block, { kind: 'labels' }>, context: RenderContext): Markup {
  const items = block.items.map(({ title, lines }) =>
    element('li', {}, [
      element('p', { class: 'label-title' }, renderInline(title, context)),
      ...lines.map((line) => element('p', {}, renderInline(line, context))),
    ]),
  );
  return element('ul', { class: 'labels' }, onLines(items));
}
