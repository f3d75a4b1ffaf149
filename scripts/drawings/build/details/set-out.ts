/** A young plant before and after it is set out: up to its lowest leaves, with a stake behind it outside the boards. */
import { dimension, type LengthWords } from '../../dimension.ts';
import { arrow, circle, path, polygon, rectangle, segment, type Point } from '../../path.ts';
import type { PathCommand, Scene, SceneItem } from '../../scene.ts';
import { callout } from '../../symbols.ts';
import { panelScene } from './panels.ts';

export interface SetOutOptions {
  readonly id: string;
  readonly alternative: string;
  readonly letters: { readonly plant: string; readonly stake: string; readonly board: string };
  readonly words: {
    readonly before: string;
    readonly after: string;
    readonly inGround: LengthWords;
    readonly stake: LengthWords;
  };
  readonly widthMm: number;
}

const heightMm = 66;

/** Two sketches; not to scale. */
export function setOutDrawing({ id, alternative, letters, words, widthMm }: SetOutOptions): Scene {
  return panelScene({
    id,
    alternative,
    widthMm,
    panels: [
      { title: words.before, widthMm: 40, heightMm, items: inPot(letters.plant) },
      { title: words.after, widthMm: 78, heightMm, items: setOut(letters, words) },
    ],
  });
}

/** The two lowest leaves are taken off where they would be under the soil. */
function inPot(letter: string): readonly SceneItem[] {
  const [x, rim, foot] = [16, 46, 60];
  return [
    path(
      polygon([
        { x: x - 7, y: rim },
        { x: x + 7, y: rim },
        { x: x + 5, y: foot },
        { x: x - 5, y: foot },
      ]),
      { stroke: 'seen', fill: 'tint' },
    ),
    ...roots({ x, y: rim + 2 }, 9),
    ...stem(x, rim, 8),
    ...leafPair({ x, y: 35 }, 8, 'hidden'),
    ...leafPair({ x, y: 24 }, 9),
    ...leafPair({ x, y: 15 }, 8),
    ...leafPair({ x, y: 9 }, 5),
    path(segment({ x: 2, y: 29 }, { x: 34, y: 29 }), { stroke: 'hidden', hue: 'clay' }),
    ...arrow({ x: 35, y: 41 }, { x: 35, y: 30 }, { hue: 'clay' }),
    ...callout({ x: x + 5.5, y: 21 }, { x: 9, y: -9 }, letter),
  ];
}

function setOut(letters: SetOutOptions['letters'], words: SetOutOptions['words']): readonly SceneItem[] {
  const [x, soil, ground, foot, rim] = [18, 31, 43, 58, 29];
  const board = { left: 31, right: 35 };
  const stake = { left: 37, right: 39.4, top: 2, foot: 56 };
  return [
    path(rectangle(1, soil, board.left - 1, ground - soil), { fill: 'tint' }),
    path(rectangle(1, ground, 56, foot - ground), { fill: 'shade' }),
    path(segment({ x: 1, y: soil }, { x: board.left, y: soil }), { stroke: 'seen' }),
    path(segment({ x: 1, y: ground }, { x: 57, y: ground }), { stroke: 'seen' }),
    path(rectangle(board.left, rim, board.right - board.left, ground - rim), {
      stroke: 'cut',
      fill: 'paper',
    }),
    path(segment({ x: board.left, y: (rim + ground) / 2 }, { x: board.right, y: (rim + ground) / 2 }), {
      stroke: 'seen',
    }),
    path(
      polygon([
        { x: stake.left, y: stake.top },
        { x: stake.right, y: stake.top },
        { x: stake.right, y: stake.foot - 3 },
        { x: (stake.left + stake.right) / 2, y: stake.foot },
        { x: stake.left, y: stake.foot - 3 },
      ]),
      { stroke: 'cut', fill: 'paper' },
    ),
    ...roots({ x, y: 36 }, 6),
    ...roots({ x, y: 33 }, 4),
    ...stem(x, 41, 8),
    ...leafPair({ x, y: 27 }, 9),
    ...leafPair({ x, y: 17 }, 8),
    ...leafPair({ x, y: 10 }, 5),
    path(
      [
        ['M', x, 15],
        ['C', x + 6, 12, stake.left - 5, 17, stake.left - 0.4, 13.4],
        ['M', x, 15],
        ['C', x + 6, 16, stake.left - 5, 12, stake.left - 0.4, 14.6],
      ],
      { stroke: 'seen' },
    ),
    ...measure({ x: 47, y: stake.top }, { x: 47, y: stake.foot }, words.stake, [stake.right, stake.right]),
    ...measure({ x: 60, y: ground }, { x: 60, y: stake.foot }, words.inGround, [57, stake.right]),
    ...callout({ x: x - 5, y: 17 }, { x: -8, y: -8 }, letters.plant),
    ...callout({ x: 38.2, y: 22 }, { x: -7, y: -15 }, letters.stake),
    ...callout({ x: 33, y: 40 }, { x: -6, y: 12 }, letters.board),
  ];
}

function measure(
  from: Point,
  to: Point,
  words: LengthWords,
  [firstX, secondX]: readonly [number, number],
): readonly SceneItem[] {
  return dimension({
    from,
    to,
    corners: [
      { x: firstX, y: from.y },
      { x: secondX, y: to.y },
    ],
    toward: { x: 1, y: 0 },
    words,
  });
}

function stem(x: number, from: number, to: number): readonly SceneItem[] {
  return [path(rectangle(x - 0.55, to, 1.1, from - to), { stroke: 'thin', fill: 'paper' })];
}

/** A leaf to each side of the stem; dashed where it is taken off. */
function leafPair({ x, y }: Point, long: number, stroke: 'seen' | 'hidden' = 'seen'): readonly SceneItem[] {
  const leaf = (side: 1 | -1): readonly PathCommand[] => [
    ['M', x, y],
    [
      'C',
      x + side * long * 0.3,
      y - long * 0.55,
      x + side * long * 0.8,
      y - long * 0.5,
      x + side * long,
      y - long * 0.1,
    ],
    ['C', x + side * long * 0.75, y + long * 0.15, x + side * long * 0.3, y + long * 0.2, x, y],
    ['Z'],
  ];
  return [path([...leaf(1), ...leaf(-1)], { stroke, fill: 'paper' })];
}

function roots({ x, y }: Point, deep: number): readonly SceneItem[] {
  const root = (side: number): readonly PathCommand[] => [
    ['M', x, y],
    ['C', x + side * 0.4, y + deep * 0.4, x + side, y + deep * 0.5, x + side * 1.1, y + deep],
  ];
  return [
    path([-4.2, -1.8, 1.8, 4.2].flatMap(root), { stroke: 'thin' }),
    circle({ x, y }, 0.5, { fill: 'ink' }),
  ];
}
