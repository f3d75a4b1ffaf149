/** The ground as a line with short strokes that say earth below it, from edge to edge of the page. */
import { hatchLines } from '../hatch.ts';
import { path, segment, text, type Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import type { Sign } from './flat-drawing.ts';

const bandMm = 1.8;
const insetMm = 3;

export function groundBand(y: number, widthMm: number): readonly Point[] {
  return [
    { x: insetMm, y },
    { x: widthMm - insetMm, y },
    { x: widthMm - insetMm, y: y + bandMm },
    { x: insetMm, y: y + bandMm },
  ];
}

export function groundLine(y: number, widthMm: number): readonly SceneItem[] {
  const band = groundBand(y, widthMm);
  return [
    path(hatchLines(band, { angleDeg: 45, spacingMm: 1.5 }), { stroke: 'thin' }),
    path(segment(band[0]!, band[1]!), { stroke: 'cut' }),
  ];
}

/** The word for the ground, below one of its ends. */
export function groundWord(
  y: number,
  widthMm: number,
  word: string | undefined,
): readonly (readonly Sign[])[] {
  if (word === undefined) return [];
  const at = (x: number, anchor: 'start' | 'end', below: number): Sign => ({
    items: [text({ x, y: y + below }, word, { anchor })],
  });
  return [[6, 10.5].flatMap((below) => [at(insetMm, 'start', below), at(widthMm - insetMm, 'end', below)])];
}

/** What stands at the two ends of the ground line: above it, or below where something is measured there. */
export function groundEnds(
  y: number,
  widthMm: number,
  [left, right]: readonly [string, string],
): readonly (readonly Sign[])[] {
  const at = (x: number, word: string, anchor: 'start' | 'end'): readonly Sign[] =>
    [y - 1.6, y + 5.4, y - 6, y + 9.8, y - 12].map((baseline) => ({
      items: [text({ x, y: baseline }, word, { anchor, style: 'strong' })],
    }));
  return [at(insetMm, left, 'start'), at(widthMm - insetMm, right, 'end')];
}
