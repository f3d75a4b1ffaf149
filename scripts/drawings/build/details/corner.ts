/** Where the screws of a corner sit on its two faces, and how the corner looks from above with string and hole. */
import { dimension, type LengthWords } from '../../dimension.ts';
import { circle, path, polyline, rectangle, segment, type Point } from '../../path.ts';
import type { Scene, SceneItem } from '../../scene.ts';
import { balloon, callout } from '../../symbols.ts';
import { panelScene, type Panel } from './panels.ts';

export interface CornerOptions {
  readonly id: string;
  readonly alternative: string;
  readonly boardThicknessMm: number;
  readonly boardWidthMm: number;
  readonly postMm: number;
  readonly holeFromStringMm: number;
  /** Of one board on each face: from its upper edge down, and off the middle of the post. */
  readonly screws: Readonly<
    Record<CornerFace, readonly { readonly downMm: number; readonly asideMm: number }[]>
  >;
  readonly letters: { readonly board: string; readonly post: string; readonly string: string };
  readonly words: {
    readonly end: string;
    readonly side: string;
    readonly above: string;
    /** From the upper edge to the first screw of each face, from screw to screw, and from the string to the hole. */
    readonly first: Readonly<Record<CornerFace, LengthWords>>;
    readonly pitch: LengthWords;
    readonly hole: LengthWords;
  };
  readonly widthMm: number;
}

export type CornerFace = 'end' | 'side';

const faceMm = { width: 46, height: 62 } as const;
const largestScale = 0.2;

/** The upper board on each face, and the corner from above; all three to one scale. */
export function cornerDrawing(options: CornerOptions): Scene {
  const { id, alternative, words, widthMm } = options;
  const scale = scaleOf(options);
  return panelScene({
    id,
    alternative,
    widthMm,
    panels: [
      {
        title: words.end,
        widthMm: faceMm.width,
        heightMm: faceMm.height,
        items: face(options, 'end', scale),
      },
      {
        title: words.side,
        widthMm: faceMm.width,
        heightMm: faceMm.height,
        items: face(options, 'side', scale),
      },
      above(options, scale),
    ],
  });
}

function scaleOf({ boardWidthMm, postMm, boardThicknessMm }: CornerOptions): number {
  return Math.min(largestScale, 42 / (1.3 * boardWidthMm), 26 / (postMm + boardThicknessMm));
}

/**
 * One face of the corner, the corner at the right: on the end face the end of the side board stands there. The post behind is
 * dashed; screws of this face are crossed, those of the other face are dashed circles beside the post.
 */
function face(options: CornerOptions, name: CornerFace, scale: number): readonly SceneItem[] {
  const { boardThicknessMm, boardWidthMm, postMm, screws, words, letters } = options;
  const right = faceMm.width - 1;
  const top = 6;
  const size = (mm: number): number => mm * scale;
  const thick = size(boardThicknessMm);
  const high = size(boardWidthMm);
  const boardEnds = name === 'end' ? right - thick : right;
  const post = { left: right - thick - size(postMm), right: right - thick };
  const middle = (post.left + post.right) / 2;
  const left = post.left - 6;
  const below = top + high * 1.28;
  const at = (down: number, aside: number): Point => ({ x: middle + size(aside), y: top + size(down) });
  const other = screws[name === 'end' ? 'side' : 'end'];
  return [
    ...board(left, boardEnds, top, top + high),
    ...board(left, boardEnds, top + high, below, 'open'),
    ...(name === 'end'
      ? [path(rectangle(boardEnds, top, thick, below - top), { stroke: 'cut', fill: 'shade' })]
      : []),
    path(
      [
        ...segment({ x: post.left, y: top }, { x: post.left, y: below + 4 }),
        ...segment({ x: post.right, y: top }, { x: post.right, y: below + 4 }),
      ],
      { stroke: 'hidden' },
    ),
    path(segment({ x: middle, y: top - 1.5 }, { x: middle, y: below + 4 }), {
      stroke: 'hidden',
      hue: 'green',
    }),
    ...other.map(({ downMm }) =>
      circle({ x: post.right - 1.7, y: top + size(downMm) }, 0.9, { stroke: 'thin' }),
    ),
    ...screws[name].flatMap(({ downMm, asideMm }) => screw(at(downMm, asideMm))),
    ...screwMeasures(options, name, {
      x: left,
      at: (mm) => top + size(mm),
      to: (aside) => middle + size(aside),
    }),
    ...balloon({ x: left + 3.4, y: top + high - 4 }, letters.board),
    ...balloon({ x: middle, y: below + 7 }, letters.post),
  ];
  function board(from: number, to: number, y: number, foot: number, end?: 'open'): readonly SceneItem[] {
    return [
      path(rectangle(from, y, to - from, foot - y), { fill: 'tint' }),
      path(
        end === 'open'
          ? [...segment({ x: from, y }, { x: to, y }), ...segment({ x: to, y }, { x: to, y: foot })]
          : polyline([
              { x: from, y },
              { x: to, y },
              { x: to, y: foot },
              { x: from, y: foot },
            ]),
        { stroke: 'seen' },
      ),
    ];
  }
  function screwMeasures(
    { screws: all }: CornerOptions,
    which: CornerFace,
    place: {
      readonly x: number;
      readonly at: (mm: number) => number;
      readonly to: (aside: number) => number;
    },
  ): readonly SceneItem[] {
    const [first, second] = all[which];
    const x = place.x - 1;
    // Beside a short line there is room for one system only; the steps tell both.
    const line = (from: number, to: number, value: LengthWords): readonly SceneItem[] => {
      const [high, low] = [place.at(from), place.at(to)];
      return dimension({
        from: { x, y: high },
        to: { x, y: low },
        toward: { x: -1, y: 0 },
        words: low - high < wordsMm ? { first: value.first } : value,
      });
    };
    return [
      ...(first ? line(0, first.downMm, words.first[which]) : []),
      ...(first && second ? line(first.downMm, second.downMm, words.pitch) : []),
    ];
  }
}

/** Two lines of words take so much height, with room between them and the next. */
const wordsMm = 8;

/** The head of a screw with its cross. */
function screw({ x, y }: Point): readonly SceneItem[] {
  const r = 1.05;
  const c = r * 0.6;
  return [
    circle({ x, y }, r, { stroke: 'cut', fill: 'paper' }),
    path([...segment({ x: x - c, y }, { x: x + c, y }), ...segment({ x, y: y - c }, { x, y: y + c })], {
      stroke: 'thin',
    }),
  ];
}

/** The corner at the lower right: the string outside the boards, the post inside them, its hole round it. */
function above(options: CornerOptions, scale: number): Panel {
  const { boardThicknessMm: t, postMm, holeFromStringMm, words, letters } = options;
  const size = (mm: number): number => mm * scale;
  const [right, bottom] = [32, 44];
  const reach = 28;
  const hole = { x: right - size(holeFromStringMm), y: bottom - size(holeFromStringMm) };
  const items: readonly SceneItem[] = [
    circle(hole, size(postMm) * 0.75, { stroke: 'hidden', fill: 'shade' }),
    path(rectangle(hole.x - size(postMm) / 2, hole.y - size(postMm) / 2, size(postMm), size(postMm)), {
      stroke: 'cut',
      fill: 'paper',
    }),
    path(rectangle(right - reach, bottom - size(t), reach, size(t)), { stroke: 'seen', fill: 'tint' }),
    path(rectangle(right - size(t), bottom - reach, size(t), reach - size(t)), {
      stroke: 'seen',
      fill: 'tint',
    }),
    path(
      [
        ...segment({ x: right - reach, y: bottom + 0.9 }, { x: right + 4, y: bottom + 0.9 }),
        ...segment({ x: right + 0.9, y: bottom - reach }, { x: right + 0.9, y: bottom + 4 }),
      ],
      { stroke: 'hidden', hue: 'clay' },
    ),
    circle({ x: right + 0.9, y: bottom + 0.9 }, 0.9, { fill: 'ink' }),
    circle(hole, 0.5, { fill: 'ink' }),
    ...dimension({
      from: { x: hole.x, y: bottom + 5 },
      to: { x: right + 0.9, y: bottom + 5 },
      corners: [hole, { x: right + 0.9, y: bottom }],
      toward: { x: 0, y: 1 },
      words: words.hole,
    }),
    ...dimension({
      from: { x: right + 5, y: hole.y },
      to: { x: right + 5, y: bottom + 0.9 },
      corners: [hole, { x: right, y: bottom + 0.9 }],
      toward: { x: 1, y: 0 },
      words: words.hole,
    }),
    ...balloon(
      size(postMm) > 12
        ? { x: hole.x - size(postMm) * 0.24, y: hole.y - size(postMm) * 0.24 }
        : { x: hole.x, y: hole.y - size(postMm) * 0.75 - 3.5 },
      letters.post,
    ),
    ...callout({ x: right + 0.9, y: bottom - reach + 1.5 }, { x: 6, y: -5 }, letters.string),
  ];
  return { title: words.above, widthMm: 46, heightMm: 60, items };
}
