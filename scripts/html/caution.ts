import type { Block, Caution } from '../document/document.ts';
import type { RenderContext } from './context.ts';
import { renderInline } from './inline.ts';
import { anchor, element, onLines, text, type Markup } from './markup.ts';

/**
 * A caution: the signal word, one sentence of hazard and consequence, one of what to do. It is told as a note; the
 * triangle only repeats the signal word and is not told at all. A notice is about damage, not injury: no triangle.
 */
export function renderCaution(caution: Caution, context: RenderContext): Markup {
  return element('div', { class: cautionClass(caution), role: 'note' }, cautionLines(caution, context));
}

/** Every caution of a sheet, gathered at its top. */
export function renderCautionBox(
  block: Extract<Block, { kind: 'caution-box' }>,
  context: RenderContext,
): Markup {
  const id = anchor(block.id);
  const level = context.levels.get(block) ?? 2;
  const items = block.cautions.map((caution) =>
    element('li', { class: cautionClass(caution) }, cautionLines(caution, context)),
  );
  return element('section', { class: 'caution-box', 'aria-labelledby': id }, [
    element(`h${level}`, { id, class: 'caution-box-title' }, renderInline(block.title, context)),
    ...(items.length > 0 ? [element('ul', { class: 'cautions' }, onLines(items))] : []),
    element('p', { class: 'caution-box-closing' }, renderInline(block.closing, context)),
  ]);
}

/** A caution in the strict sense has the class once, not twice. */
function cautionClass({ signal }: Caution): string {
  return signal === 'caution' ? 'caution' : `caution ${signal}`;
}

function cautionLines(caution: Caution, context: RenderContext): readonly Markup[] {
  const signal = element('strong', {}, text(caution.signalText));
  return [
    element('p', { class: 'signal' }, caution.signal === 'notice' ? signal : [triangle(), signal]),
    element('p', { class: 'hazard' }, renderInline(caution.hazard, context)),
    element('p', { class: 'avoidance' }, renderInline(caution.avoidance, context)),
  ];
}

/** The safety alert symbol: a triangle with an exclamation mark. */
function triangle(): Markup {
  return element(
    'svg',
    { class: 'triangle', 'aria-hidden': 'true', viewBox: '0 0 24 22', width: '1.2em', height: '1.1em' },
    [
      element('path', { class: 'triangle-body', d: 'M12 1 23.2 21H.8Z' }),
      element('path', { class: 'triangle-mark', d: 'M10.6 7.5h2.8l-.5 7.2h-1.8Z' }),
      element('circle', { class: 'triangle-mark', cx: 12, cy: 17.6, r: 1.5 }),
    ],
  );
}
