/**
 * Dimension lines with upright words that never touch the line. Words are ready-made: no unit is chosen here.
 */
import { estimateTextWidthMm } from './charts/text-width.ts';
import {
  along,
  between,
  path,
  segment,
  subtract,
  text,
  textSizeMm,
  unit,
  type Point,
  type TextStyle,
} from './path.ts';
import type { SceneItem } from './scene.ts';

/** A length in words: the first system stands out, the second is set below it in the lighter face. */
export interface LengthWords {
  /** What is measured, on a line of its own above. */
  readonly name?: string;
  readonly first: string;
  readonly second?: string;
}

/** Puts a length of the real thing into words. */
export type SayLength = (lengthMm: number) => LengthWords;

export interface Dimension {
  readonly from: Point;
  readonly to: Point;
  readonly words: LengthWords;
  /** Roughly the way from the line to its words; the words stand square to the line on that side. */
  readonly toward: Point;
  /** Corners of the thing measured; a thin line leads from each to the end of the dimension. */
  readonly corners?: readonly [Point, Point];
  /**
   * Where the words stand along the line: 0 is its start, 1 its end, 0.5 (the default) its middle; or past its end, for a line
   * that is shorter than its words.
   */
  readonly share?: number | 'past-end';
}

const lineHeightMm = 3.9;
const capHeightMm = 2.3;
const gapMm = 1.2;
const tickMm = 1.1;

export function dimension({
  from,
  to,
  words,
  toward,
  corners,
  share = 0.5,
}: Dimension): readonly SceneItem[] {
  const direction = unit(subtract(to, from));
  const side = sideOf(direction, toward);
  return [
    ...(corners ? [extension(corners[0], from), extension(corners[1], to)] : []),
    path(segment(from, to), { stroke: 'thin' }),
    tick(from, direction, side),
    tick(to, direction, side),
    ...(share === 'past-end'
      ? wordsBeside(to, direction, words)
      : wordsBeside(between(from, to, share), side, words)),
  ];
}

/** Words on one side of a point of a line, clear of the line whatever its slope. `side` has length 1. */
export function wordsBeside(point: Point, side: Point, words: LengthWords): readonly SceneItem[] {
  return wordsCentred(centreBeside(point, side, words), words);
}

/** How far to the right the words of a dimension reach, for keeping them on the page. */
export function rightEndOfWords({ from, to, words, toward, share = 0.5 }: Dimension): number {
  const direction = unit(subtract(to, from));
  const centre =
    share === 'past-end'
      ? centreBeside(to, direction, words)
      : centreBeside(between(from, to, share), sideOf(direction, toward), words);
  return centre.x + wordsSize(words).width / 2;
}

function centreBeside(point: Point, side: Point, words: LengthWords): Point {
  const { width, height } = wordsSize(words);
  return along(point, side, (Math.abs(side.x) * width) / 2 + (Math.abs(side.y) * height) / 2 + gapMm);
}

/** Words with their middle at a point, one line below the other. */
export function wordsCentred(centre: Point, words: LengthWords): readonly SceneItem[] {
  const top = centre.y - wordsSize(words).height / 2 + capHeightMm;
  return linesOf(words).map(({ line, style }, index) =>
    text({ x: centre.x, y: top + index * lineHeightMm }, line, { anchor: 'middle', style }),
  );
}

/** About how much room the words take: widths are estimates on the wide side. */
export function wordsSize(words: LengthWords): { readonly width: number; readonly height: number } {
  const lines = linesOf(words);
  return {
    width: Math.max(...lines.map(({ line, style }) => estimateTextWidthMm(line, style))),
    height: capHeightMm + (lines.length - 1) * lineHeightMm,
  };
}

function linesOf({
  name,
  first,
  second,
}: LengthWords): readonly { readonly line: string; readonly style: TextStyle }[] {
  return [
    ...(name === undefined ? [] : [{ line: name, style: 'label' } as const]),
    { line: first, style: 'strong' },
    ...(second === undefined ? [] : [{ line: second, style: 'label' } as const]),
  ];
}

/** The baseline that sets a line of small text with the middle of its capitals at `y`. */
export function baselineFor(y: number): number {
  return y + textSizeMm.label * 0.34;
}

/** From a little off the corner to a little past the dimension line. */
function extension(corner: Point, end: Point): SceneItem {
  const direction = unit(subtract(end, corner));
  return path(segment(along(corner, direction, 0.8), along(end, direction, 1)), { stroke: 'thin' });
}

/** A short oblique stroke through the end of a dimension line. */
function tick(at: Point, direction: Point, side: Point): SceneItem {
  const oblique = unit({ x: direction.x + side.x, y: direction.y + side.y });
  return path(segment(along(at, oblique, -tickMm), along(at, oblique, tickMm)), { stroke: 'seen' });
}

function sideOf(direction: Point, toward: Point): Point {
  const side = { x: -direction.y, y: direction.x };
  return side.x * toward.x + side.y * toward.y >= 0 ? side : { x: -side.x, y: -side.y };
}
