/**
 * One course of a keyhole bed from above, block by block and to scale, with the course below it dashed: what one lays by. The
 * first block is marked 1, and the numbers go on in the order of laying.
 */
import { circle, path, polygon, segment, text, type Point } from '../../path.ts';
import { baselineFor, dimension, type LengthWords } from '../../dimension.ts';
import type { Scene, SceneItem } from '../../scene.ts';
import { northArrow } from '../../symbols.ts';

/** A block as it lies, in millimetres from the middle of the ring; x runs east and y poleward. */
export interface LaidBlock {
  readonly outline: readonly Point[];
  readonly half: boolean;
}

export interface CoursePlanOptions {
  readonly id: string;
  readonly alternative: string;
  /** In the order of laying. */
  readonly blocks: readonly LaidBlock[];
  readonly below: readonly LaidBlock[];
  readonly radiusMm: number;
  readonly basketRadiusMm: number;
  /** Half the opening of the notch, in radians. */
  readonly notchAngle: number;
  readonly hemisphere: 'north' | 'south';
  readonly words: {
    readonly north: string;
    readonly across: LengthWords;
    readonly notch: LengthWords;
    readonly basket: LengthWords;
  };
  /** 80 to 175. */
  readonly widthMm: number;
}

const marginMm = { top: 10, bottom: 12, sides: 3 } as const;
const widestRingMm = 112;

export function coursePlan(options: CoursePlanOptions): Scene {
  const { id, alternative, blocks, below, radiusMm, basketRadiusMm, hemisphere, words, widthMm } = options;
  const ringMm = Math.min(widestRingMm, widthMm - 2 * marginMm.sides);
  const scale = ringMm / (2 * radiusMm);
  const middle = { x: widthMm / 2, y: marginMm.top + ringMm / 2 };
  // Seen from above with north at the top, poleward is up in the north and down in the south, where east stays right.
  const up = hemisphere === 'north' ? -1 : 1;
  const onPage = ({ x, y }: Point): Point => ({ x: middle.x + x * scale, y: middle.y + up * y * scale });
  const notchSide = -up;
  const [left, right] = [middle.x - ringMm / 2, middle.x + ringMm / 2];
  const acrossY = middle.y + up * (ringMm / 2 + 4);
  const mouth = radiusMm * Math.sin(options.notchAngle);
  const mouthDeep = radiusMm * Math.cos(options.notchAngle);
  const notchY = middle.y + notchSide * (ringMm / 2 + 4);
  const corner = (side: 1 | -1): Point => onPage({ x: side * mouth, y: -mouthDeep });
  const items: readonly SceneItem[] = [
    ...blocks.map(({ outline, half }) =>
      path(polygon(outline.map(onPage)), { stroke: 'cut', fill: half ? 'shade' : 'paper' }),
    ),
    ...below.map(({ outline }) => path(polygon(outline.map(onPage)), { stroke: 'hidden', hue: 'clay' })),
    ...blocks.flatMap((block, index) => numbered(block, index + 1, onPage)),
    circle(middle, basketRadiusMm * scale, { stroke: 'hidden' }),
    path(
      [
        ...segment({ x: middle.x - 2, y: middle.y }, { x: middle.x + 2, y: middle.y }),
        ...segment({ x: middle.x, y: middle.y - 2 }, { x: middle.x, y: middle.y + 2 }),
      ],
      { stroke: 'seen' },
    ),
    ...dimension({
      from: { x: left, y: acrossY },
      to: { x: right, y: acrossY },
      corners: [
        { x: left, y: middle.y },
        { x: right, y: middle.y },
      ],
      toward: { x: 0, y: up },
      words: oneLine(words.across),
    }),
    ...dimension({
      from: { x: corner(-1).x, y: notchY },
      to: { x: corner(1).x, y: notchY },
      corners: [corner(-1), corner(1)],
      toward: { x: 0, y: notchSide },
      words: oneLine(words.notch),
    }),
    ...dimension({
      from: { x: middle.x - basketRadiusMm * scale, y: middle.y + up * 6 },
      to: { x: middle.x + basketRadiusMm * scale, y: middle.y + up * 6 },
      toward: { x: 0, y: up },
      // In a small ring there is room for one line.
      words: basketRadiusMm * scale < 16 ? { first: words.basket.first } : words.basket,
    }),
    ...northArrow({ x: widthMm - 6, y: 9 }, { x: 0, y: -1 }, words.north),
  ];
  return { id, alternative, widthMm, heightMm: marginMm.top + ringMm + marginMm.bottom, items };
}

/** Both systems on one line, so that the words need little height. */
function oneLine({ first, second }: LengthWords): LengthWords {
  return { first: second === undefined ? first : `${first} (${second})` };
}

/** The number of a block, on a patch that keeps dashed lines off it. */
function numbered(
  { outline, half }: LaidBlock,
  number: number,
  onPage: (point: Point) => Point,
): readonly SceneItem[] {
  const corners = outline.map(onPage);
  const centre = {
    x: corners.reduce((sum, { x }) => sum + x, 0) / corners.length,
    y: corners.reduce((sum, { y }) => sum + y, 0) / corners.length,
  };
  return [
    circle(centre, 2.3, { fill: half ? 'shade' : 'paper' }),
    text({ x: centre.x, y: baselineFor(centre.y) }, String(number), { anchor: 'middle', style: 'strong' }),
  ];
}
