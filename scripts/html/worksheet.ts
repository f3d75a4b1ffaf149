import type { AnswerRoom, Block } from '../document/document.ts';
import type { RenderContext } from './context.ts';
import { renderInline } from './inline.ts';
import { element, onLines, type Markup } from './markup.ts';

/** Numbered questions with room to answer on paper: the room has no words, so a listener hears nothing of it. */
export function renderWorksheet(
  block: Extract<Block, { kind: 'worksheet' }>,
  context: RenderContext,
): Markup {
  const items = block.items.map(({ question, room }) =>
    element('li', {}, [element('p', {}, renderInline(question, context)), renderRoom(room)]),
  );
  return onLines([
    ...(block.opening
      ? [element('p', { class: 'worksheet-opening' }, renderInline(block.opening, context))]
      : []),
    element('ol', { class: 'worksheet' }, onLines(items)),
  ]);
}

function renderRoom(room: AnswerRoom): Markup {
  if (room.kind === 'box')
    return element('div', { class: `answer-box answer-box-${room.size}`, 'aria-hidden': 'true' });
  const line = element('span', { class: 'ruled-line' });
  return element(
    'div',
    { class: `ruled-${room.ruling}`, 'aria-hidden': 'true' },
    Array.from({ length: room.count }, () => line),
  );
}
