import type { Block } from '../document/document.ts';
import type { RenderContext } from './context.ts';
import { renderInline } from './inline.ts';
import { element, onLines, text, type Markup } from './markup.ts';

/** Each value stands before what it is, as the eye takes it in; so this is a list, not a list of terms. */
export function renderKeyNumbers(
  block: Extract<Block, { kind: 'key-numbers' }>,
  context: RenderContext,
): Markup {
  const items = block.items.map(({ value, label }) =>
    element('li', {}, [
      element('span', { class: 'key-value' }, renderInline(value, context)),
      text(' '),
      element('span', { class: 'key-label' }, renderInline(label, context)),
    ]),
  );
  return element('ul', { class: 'key-numbers' }, onLines(items));
}
