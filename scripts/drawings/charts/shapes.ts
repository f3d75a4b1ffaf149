/** The few shapes that charts are made of, as scene items. Nearly every line of a chart is upright or level. */
import { path, polyline, rectangle, text, type Look, type Point } from '../path.ts';
import type { Hue, SceneItem, Stroke } from '../scene.ts';
import { baselineDropMm, lineMm, type TextItem, type TextStyle } from './text-width.ts';

export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The points of an open line. */
export type Line = readonly Point[];

export const upright = (x: number, fromY: number, toY: number): Line => [
  { x, y: fromY },
  { x, y: toY },
];

export const level = (y: number, fromX: number, toX: number): Line => [
  { x: fromX, y },
  { x: toX, y },
];

/** Open lines as one item; no item at all when there is no line. */
export function lines(list: readonly Line[], stroke: Stroke, hue: Hue = 'ink'): readonly SceneItem[] {
  return list.length === 0 ? [] : [path(list.flatMap(polyline), { stroke, hue })];
}

export function box({ x, y, width, height }: Rectangle, look: Look): SceneItem {
  return path(rectangle(x, y, width, height), look);
}

/**
 * A rule so light that it guides the eye and no more: a strip of the darker tint. It carries nothing that is not also
 * shown in ink, since a photocopy may lose it.
 */
export function lightRules(list: readonly Line[]): readonly SceneItem[] {
  return list.map((points) => {
    const [from, to] = [points[0]!, points.at(-1)!];
    const across = from.x === to.x ? { x: half, y: 0 } : { x: 0, y: half };
    return box(
      {
        x: from.x - across.x,
        y: from.y - across.y,
        width: to.x - from.x + 2 * across.x,
        height: to.y - from.y + 2 * across.y,
      },
      { fill: 'shade' },
    );
  });
}

/** Lines of text one under the other, centred as a block on the height `middle`. */
export function textLines(
  x: number,
  middle: number,
  words: readonly string[],
  options: { anchor?: TextItem['anchor']; style?: TextStyle; hue?: Hue } = {},
): readonly SceneItem[] {
  const first = middle - ((words.length - 1) * lineMm) / 2 + baselineDropMm;
  return words.map((part, index) => text({ x, y: first + index * lineMm }, part, options));
}

/** Half the breadth of a light rule. */
const half = 0.09;
