import type { Block } from '../document/document.ts';
import type { RenderContext } from './context.ts';
import { renderInline, renderLink } from './inline.ts';
import { anchor, element, onLines, type Markup } from './markup.ts';

/** Numbered sources. One with an address is a link as a whole. */
export function renderSources(block: Extract<Block, { kind: 'sources' }>, context: RenderContext): Markup {
  const items = block.items.map(({ id, content, href }) =>
    element(
      'li',
      { id: anchor(id, 's-') },
      href === undefined ? renderInline(content, context) : renderLink(href, content, context),
    ),
  );
  return items.length === 0 ? onLines([]) : element('ol', { class: 'sources' }, onLines(items));
}
