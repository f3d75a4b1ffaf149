import type { Block, DoerKind } from '../document/document.ts';
import type { RenderContext } from './context.ts';
import { renderInline } from './inline.ts';
import { element, type Markup } from './markup.ts';

/** Who does it: the words tell it, the shapes before them are for the eye and are not told. */
export function renderDoer(block: Extract<Block, { kind: 'doer' }>, context: RenderContext): Markup {
  return element('p', { class: 'doer' }, [
    shapes(block.who),
    element('span', {}, renderInline(block.content, context)),
  ]);
}

const child = element('circle', { cx: 5, cy: 9, r: 5 });

function shapes(who: DoerKind): Markup {
  const left = who === 'adult' ? 0 : 13;
  const adult = element('path', { d: `M${left} 0h10v14h-10Z` });
  const width = who === 'child-with-adult' ? 23 : 10;
  return element(
    'svg',
    {
      class: 'doer-mark',
      'aria-hidden': 'true',
      viewBox: `0 0 ${width} 14`,
      width: `${width / 16}em`,
      height: '0.875em',
    },
    who === 'child' ? child : who === 'adult' ? adult : [child, adult],
  );
}
