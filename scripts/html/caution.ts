import type { Block, Caution, CautionGroup } from '../document/document.ts';
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
  const groups = block.groups.map((group) => renderGroup(group, context));
  return element('section', { class: 'caution-box', 'aria-labelledby': id }, [
    element(`h${level}`, { id, class: 'caution-box-title' }, renderInline(block.title, context)),
    onLines(groups),
    element('p', { class: 'caution-box-closing' }, renderInline(block.closing, context)),
  ]);
}

/** The signal word once, then everything that it stands over. */
function renderGroup(group: CautionGroup, context: RenderContext): Markup {
  const items = group.items.map((item) => element('li', {}, renderInline(item, context)));
  return element('div', { class: cautionClass(group) }, [
    signalLine(group),
    element('ul', { class: 'cautions' }, onLines(items)),
  ]);
}

/** A caution in the strict sense has the class once, not twice. */
function cautionClass({ signal }: Pick<Caution, 'signal'>): string {
  return signal === 'caution' ? 'caution' : `caution ${signal}`;
}

function cautionLines(caution: Caution, context: RenderContext): readonly Markup[] {
  return [
    signalLine(caution),
    element('p', { class: 'hazard' }, renderInline(caution.hazard, context)),
    element('p', { class: 'avoidance' }, renderInline(caution.avoidance, context)),
  ];
}

function signalLine({ signal, signalText }: Pick<Caution, 'signal' | 'signalText'>): Markup {
  const word = element('strong', {}, text(signalText));
  return element('p', { class: 'signal' }, signal === 'notice' ? word : [triangle(), word]);
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
