import type { Block, Inline } from '../document/document.ts';
import type { RenderAll, RenderContext } from './context.ts';
import { renderInline } from './inline.ts';
import { element, onLines, type Markup } from './markup.ts';

export function renderList(
  block: Extract<Block, { kind: 'list' }>,
  context: RenderContext,
  all: RenderAll,
): Markup {
  const items = block.items.map((item) => {
    const words = soleParagraph(item);
    return element('li', {}, words ? renderInline(words, context) : all(item, context));
  });
  return element(block.ordered ? 'ol' : 'ul', {}, onLines(items));
}

/** Boxes to tick are drawn by the style sheet: they are for a pencil, so there is nothing to tell or to click. */
export function renderChecklist(
  block: Extract<Block, { kind: 'checklist' }>,
  context: RenderContext,
): Markup {
  const items = block.items.map((item) => element('li', {}, renderInline(item, context)));
  return element('ul', { class: 'checklist' }, onLines(items));
}

/** An item of one plain paragraph needs no paragraph inside it. */
function soleParagraph(item: readonly Block[]): readonly Inline[] | undefined {
  const [first, ...rest] = item;
  return first?.kind === 'paragraph' && first.role === 'body' && rest.length === 0
    ? first.content
    : undefined;
}
