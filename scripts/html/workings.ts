import type { Block } from '../document/document.ts';
import type { RenderContext } from './context.ts';
import { renderInline } from './inline.ts';
import { anchor, element, onLines, type Markup } from './markup.ts';

/** How each number was worked out: what it is, its value, and how; each entry can be linked to. */
export function renderWorkings(block: Extract<Block, { kind: 'workings' }>, context: RenderContext): Markup {
  const entries = block.items.map((item) =>
    element('div', { id: anchor(item.id, 'w-') }, [
      element('dt', {}, renderInline(item.term, context)),
      element('dd', { class: 'worked-value' }, renderInline(item.value, context)),
      element('dd', {}, renderInline(item.explanation, context)),
    ]),
  );
  return entries.length === 0 ? onLines([]) : element('dl', { class: 'workings' }, onLines(entries));
}
