import type { Block, DoerKind } from '../document/document.ts';
import type { PathCommand } from '../drawings/scene.ts';
import { keptWithNext, withMarksOnFirst, type Mark } from './items.ts';
import { colour, inside, type Context, type Measured } from './measure.ts';
import { filledBox } from './rules.ts';
import { baseline, setText, typeStyle } from './text.ts';
import { tag } from './tags.ts';

const radiusPt = 3.6;
const adultPt = { width: 7.2, height: 11 };
const betweenPt = 3;
const beforeWordsPt = 7;

/** Who does it, in words, with a small round for a child and a tall square for an adult before them. */
export function measureDoer(block: Extract<Block, { kind: 'doer' }>, context: Context): Measured {
  const { marks, width } = shapes(block.who, context);
  const indent = width + beforeWordsPt;
  const text = setText(block.content, inside(context, context.x + indent, context.width - indent), {
    style: 'text',
    face: 'semibold',
    owner: 'P',
  });
  return { items: keptWithNext(withMarksOnFirst(text.pieces, marks)), tags: [tag('P', text.kids)] };
}

/** Decoration: the words say the same. All of them stand on the baseline of the first line. */
function shapes(who: DoerKind, context: Context): { marks: readonly Mark[]; width: number } {
  const { x } = context;
  const ink = colour(context, 'ink');
  const foot = baseline(context, typeStyle(context, { style: 'text' })) + 1;
  const child: Mark = {
    kind: 'path',
    place: 'layout',
    commands: round(x + radiusPt, foot - radiusPt, radiusPt),
    fill: ink,
  };
  const adultAt = (left: number): Mark =>
    filledBox(left, foot - adultPt.height, adultPt.width, adultPt.height, ink);
  switch (who) {
    case 'child':
      return { marks: [child], width: 2 * radiusPt };
    case 'adult':
      return { marks: [adultAt(x)], width: adultPt.width };
    case 'child-with-adult': {
      const left = 2 * radiusPt + betweenPt;
      return { marks: [child, adultAt(x + left)], width: left + adultPt.width };
    }
  }
}

/** How far the handles of a quarter of a circle lie from its ends, for a radius of 1. */
const handle = 0.5523;

function round(x: number, y: number, radius: number): PathCommand[] {
  const h = radius * handle;
  return [
    ['M', x + radius, y],
    ['C', x + radius, y + h, x + h, y + radius, x, y + radius],
    ['C', x - h, y + radius, x - radius, y + h, x - radius, y],
    ['C', x - radius, y - h, x - h, y - radius, x, y - radius],
    ['C', x + h, y - radius, x + radius, y - h, x + radius, y],
    ['Z'],
  ];
}
