/**
 * Makes scene items from points. Everything is in millimetres of the page, y down; nothing here knows what is drawn.
 */
import type { Fill, Hue, PathCommand, SceneItem, Stroke } from './scene.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** How an item is drawn. Without a stroke only the fill is seen, and the reverse. */
export interface Look {
  readonly stroke?: Stroke;
  readonly fill?: Fill;
  readonly hue?: Hue;
}

export type TextStyle = 'label' | 'strong' | 'large';
export type TextAnchor = 'start' | 'middle' | 'end';

/** One path item. An empty path is a mistake of the program. */
export function path(commands: readonly PathCommand[], look: Look): SceneItem {
  if (commands.length === 0) throw new TypeError('path without commands');
  return { kind: 'path', commands, ...look };
}

export function circle(centre: Point, radius: number, look: Look): SceneItem {
  return { kind: 'circle', x: centre.x, y: centre.y, radius, ...look };
}

/** Text on one line; `at` is the anchor point on the baseline. */
export function text(
  at: Point,
  words: string,
  options: { anchor?: TextAnchor; style?: TextStyle; hue?: Hue } = {},
): SceneItem {
  const { anchor = 'start', style = 'label', hue } = options;
  return { kind: 'text', x: at.x, y: at.y, text: words, anchor, style, ...(hue ? { hue } : {}) };
}

/** The points joined by straight lines, open. */
export function polyline(points: readonly Point[]): readonly PathCommand[] {
  return points.map(({ x, y }, index): PathCommand => [index === 0 ? 'M' : 'L', x, y]);
}

/** The points joined by straight lines, closed. */
export function polygon(points: readonly Point[]): readonly PathCommand[] {
  return [...polyline(points), ['Z']];
}

export function segment(from: Point, to: Point): readonly PathCommand[] {
  return polyline([from, to]);
}

/** A rectangle by its top left corner. */
export function rectangle(x: number, y: number, width: number, height: number): readonly PathCommand[] {
  return polygon(rectanglePoints(x, y, width, height));
}

export function rectanglePoints(x: number, y: number, width: number, height: number): readonly Point[] {
  return [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
}

/** A line with a filled head at `to`. The line ends inside the head, so that its tip stays sharp. */
export function arrow(from: Point, to: Point, look: Look & { headMm?: number }): readonly SceneItem[] {
  const { headMm = 2.4, stroke = 'seen', hue } = look;
  const direction = unit(subtract(to, from));
  const neck = along(to, direction, -headMm * 0.8);
  return [
    path(segment(from, neck), { stroke, ...(hue ? { hue } : {}) }),
    arrowHead(to, direction, headMm, hue),
  ];
}

/** A filled head with its tip at `tip`, pointing along `direction`. */
export function arrowHead(tip: Point, direction: Point, headMm: number, hue?: Hue): SceneItem {
  const forward = unit(direction);
  const base = along(tip, forward, -headMm);
  const side = { x: -forward.y, y: forward.x };
  const half = headMm * 0.36;
  return path(polygon([tip, along(base, side, half), along(base, side, -half)]), {
    fill: 'ink',
    ...(hue ? { hue } : {}),
  });
}

/** The same commands moved by `shift` after being scaled about the origin. */
export function placed(
  commands: readonly PathCommand[],
  shift: Point,
  scaleX = 1,
  scaleY = scaleX,
): readonly PathCommand[] {
  const x = (value: number): number => value * scaleX + shift.x;
  const y = (value: number): number => value * scaleY + shift.y;
  return commands.map((command): PathCommand => {
    switch (command[0]) {
      case 'M':
      case 'L':
        return [command[0], x(command[1]), y(command[2])];
      case 'C':
        return [
          'C',
          x(command[1]),
          y(command[2]),
          x(command[3]),
          y(command[4]),
          x(command[5]),
          y(command[6]),
        ];
      case 'Z':
        return command;
    }
  });
}

export function subtract(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

/** The point `distance` from `start` in the given direction (of length 1). */
export function along(start: Point, direction: Point, distance: number): Point {
  return { x: start.x + direction.x * distance, y: start.y + direction.y * distance };
}

/** The point a share of the way from `a` to `b`: 0 is `a`, 1 is `b`. */
export function between(a: Point, b: Point, share: number): Point {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}

export function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** The vector with length 1; a vector of no length has no direction and points right. */
export function unit(vector: Point): Point {
  const length = Math.hypot(vector.x, vector.y);
  return length === 0 ? { x: 1, y: 0 } : { x: vector.x / length, y: vector.y / length };
}

/** Size of scene text in millimetres: 9.5 pt for `label` and `strong`, 11 pt for `large`. */
export const textSizeMm: Readonly<Record<TextStyle, number>> = {
  label: (9.5 * 25.4) / 72,
  strong: (9.5 * 25.4) / 72,
  large: (11 * 25.4) / 72,
};
