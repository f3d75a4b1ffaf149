/** A board on which sloped pieces are marked: two that lie head to tail, or one. */
import { dimension, type LengthWords } from '../dimension.ts';
import { hatchLines } from '../hatch.ts';
import { path, polygon, rectanglePoints, segment, text, type Point } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';

export interface SlopeCutOptions {
  readonly id: string;
  readonly alternative: string;
  readonly lengthMm: number;
  /** Of the board. */
  readonly widthMm: number;
  /** Heights of a piece at its ends. */
  readonly lowMm: number;
  readonly highMm: number;
  /** How many pieces come out of this board. */
  readonly pieces: 1 | 2;
  readonly words: {
    readonly length: LengthWords;
    readonly low: LengthWords;
    readonly high: LengthWords;
    /** In the middle of each piece. */
    readonly piece: string;
  };
  /** 80 to 175; default 150. */
  readonly pageMm?: number;
}

const marginMm = 27;
const topMm = 3;
const underMm = 16;

export function slopeCut(options: SlopeCutOptions): Scene {
  const { id, alternative, lengthMm, widthMm, lowMm, highMm, pieces, words, pageMm = 150 } = options;
  const scale = (pageMm - 2 * marginMm) / lengthMm;
  const [left, right] = [marginMm, pageMm - marginMm];
  const [top, bottom] = [topMm, topMm + widthMm * scale];
  const lower: Point[] = [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: bottom - highMm * scale },
    { x: left, y: bottom - lowMm * scale },
  ];
  const upper: Point[] = [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: top + lowMm * scale },
    { x: left, y: top + highMm * scale },
  ];
  const both = pieces === 2;
  const waste = both
    ? [upper[3]!, upper[2]!, lower[2]!, lower[3]!]
    : [upper[0]!, upper[1]!, lower[2]!, lower[3]!];
  const outline = rectanglePoints(left, top, right - left, bottom - top);
  const items: readonly SceneItem[] = [
    path(polygon(outline), { fill: 'paper' }),
    ...(both ? [piece(upper, words.piece)] : []).flat(),
    ...piece(lower, words.piece),
    ...hatched(waste),
    path(polygon(outline), { stroke: 'cut' }),
    ...(both ? [path(segment(upper[3]!, upper[2]!), { stroke: 'seen' })] : []),
    path(segment(lower[3]!, lower[2]!), { stroke: 'seen' }),
    ...upright(lower[3]!, lower[0]!, words.low, -1),
    ...upright(lower[2]!, lower[1]!, words.high, 1),
    ...(both
      ? [...upright(upper[0]!, upper[3]!, words.high, -1), ...upright(upper[1]!, upper[2]!, words.low, 1)]
      : []),
    ...dimension({
      from: { x: left, y: bottom + 5 },
      to: { x: right, y: bottom + 5 },
      words: words.length,
      toward: { x: 0, y: 1 },
      corners: [lower[0]!, lower[1]!],
    }),
  ];
  return { id, widthMm: pageMm, heightMm: bottom + underMm, alternative, items };
}

function piece(corners: readonly Point[], name: string): readonly SceneItem[] {
  const middle = {
    x: corners.reduce((sum, { x }) => sum + x, 0) / corners.length,
    y: corners.reduce((sum, { y }) => sum + y, 0) / corners.length,
  };
  return [
    path(polygon(corners), { fill: 'tint' }),
    text({ x: middle.x, y: middle.y + 1.2 }, name, { anchor: 'middle', style: 'label' }),
  ];
}

function hatched(corners: readonly Point[]): readonly SceneItem[] {
  const lines = hatchLines(corners, { spacingMm: 1.8, angleDeg: 45 });
  return lines.length === 0 ? [] : [path(lines, { stroke: 'thin' })];
}

/** A measure at one end of the board: `side` is -1 at the left and 1 at the right. */
function upright(from: Point, to: Point, words: LengthWords, side: -1 | 1): readonly SceneItem[] {
  const away = 5 * side;
  return dimension({
    from: { x: from.x + away, y: from.y },
    to: { x: to.x + away, y: to.y },
    words,
    toward: { x: side, y: 0 },
    corners: [from, to],
  });
}
