import type { Block, Step } from '../document/document.ts';
import { renderCaution } from './caution.ts';
import type { RenderAll, RenderContext } from './context.ts';
import { renderInline } from './inline.ts';
import { element, onLines, text, type Markup } from './markup.ts';
import { renderDrawing } from './svg.ts';

/** Numbered steps: title, cautions, what to do, and the drawing, which a wide screen shows beside what to do. */
export function renderSteps(
  block: Extract<Block, { kind: 'steps' }>,
  context: RenderContext,
  all: RenderAll,
): Markup {
  const level = context.levels.get(block) ?? 3;
  const items = block.items.map((step) => renderStep(step, level, context, all));
  return items.length === 0 ? onLines([]) : element('ol', { class: 'steps' }, onLines(items));
}

function renderStep(step: Step, level: number, context: RenderContext, all: RenderAll): Markup {
  const words = onLines([
    element(`h${level}`, { class: 'step-title' }, [
      element('span', { class: 'step-number' }, text(context.furniture.step(step.number))),
      text(' '),
      renderInline(step.title, context),
    ]),
    ...step.cautions.map((caution) => renderCaution(caution, context)),
  ]);
  return element('li', { class: 'step' }, [
    element('div', { class: 'step-words' }, words),
    element('div', { class: 'step-act' }, all(step.body, context)),
    ...(step.drawing
      ? [element('figure', { class: 'step-drawing' }, renderDrawing(step.drawing, context))]
      : []),
  ]);
}
