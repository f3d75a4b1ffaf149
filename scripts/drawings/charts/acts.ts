/**
 * The four acts of the planting year and how each is drawn. Pattern and edge differ together, so that the bars can be
 * told apart by shape alone, in a grey photocopy and in plain black and white:
 *
 * | act           | pattern              | edge                |
 * | ------------- | -------------------- | ------------------- |
 * | start indoors | dots on paper        | ordinary line       |
 * | direct sow    | solid                | none                |
 * | set out       | slanting lines       | heavy line          |
 * | harvest       | lines along the bar  | fine line           |
 */
import { hatchLines } from '../hatch.ts';
import { circle, path, rectanglePoints } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import { box, level, lines, upright, type Line, type Rectangle } from './shapes.ts';

export const plantingActs = ['start-indoors', 'direct-sow', 'set-out', 'harvest'] as const;
export type PlantingAct = (typeof plantingActs)[number];

export interface ActBar extends Rectangle {
  readonly act: PlantingAct;
  /** An open end has no edge: the bar goes on beyond the chart. */
  readonly openStart?: boolean;
  readonly openEnd?: boolean;
}

/** The first item is always the whole rectangle of the bar. */
export function actBar(bar: ActBar): readonly SceneItem[] {
  return drawn[bar.act](bar);
}

const drawn: Readonly<Record<PlantingAct, (bar: ActBar) => readonly SceneItem[]>> = {
  'start-indoors': (bar) => [box(bar, { fill: 'paper' }), ...dots(bar), ...edge(bar, 'seen')],
  'direct-sow': (bar) => [box(bar, { fill: 'ink', hue: 'green' })],
  'set-out': (bar) => [box(bar, { fill: 'paper' }), ...slants(bar), ...edge(bar, 'cut')],
  harvest: (bar) => [box(bar, { fill: 'shade' }), ...lines(lengthwise(bar), 'thin'), ...ends(bar)],
};

/** The outline, left away where the bar goes on beyond the chart. */
function edge(bar: ActBar, stroke: 'seen' | 'cut'): readonly SceneItem[] {
  const { x, y, width, height, openStart = false, openEnd = false } = bar;
  if (!openStart && !openEnd) return [box(bar, { stroke, hue: 'green' })];
  const top = level(y, x, x + width);
  const back = level(y + height, x + width, x);
  if (openStart && openEnd) return lines([top, back], stroke, 'green');
  return lines([openEnd ? [...back, ...top] : [...top, ...back]], stroke, 'green');
}

/** The two upright ends, where the chart shows them. */
function ends({ x, y, width, height, openStart = false, openEnd = false }: ActBar): readonly SceneItem[] {
  const list = [
    ...(openStart ? [] : [upright(x, y, y + height)]),
    ...(openEnd ? [] : [upright(x + width, y, y + height)]),
  ];
  return lines(list, 'seen');
}

/** Dots about the middle of the bar, by turns in an upper and a lower row where there is room for two. */
function dots({ x, y, width, height }: Rectangle): readonly SceneItem[] {
  const rise = height >= highMm ? 0.75 : 0;
  const step = rise > 0 ? 0.95 : 1.6;
  const room = width - 2 * (dotRadiusMm + 0.45);
  if (room < 0) return [];
  const gaps = Math.floor(room / step);
  const start = x + (width - gaps * step) / 2;
  return Array.from({ length: gaps + 1 }, (_, index) => {
    const centre = { x: start + index * step, y: y + height / 2 + (index % 2 === 0 ? -rise : rise) };
    return circle(centre, dotRadiusMm, { fill: 'ink', hue: 'green' });
  });
}

/** Lines that rise to the right, counted from the start of the bar, so that every bar begins alike. */
function slants({ x, y, width, height }: Rectangle): readonly SceneItem[] {
  const spacingMm = 1.1;
  const commands = hatchLines(rectanglePoints(x, y, width, height), {
    angleDeg: 45,
    spacingMm,
    offsetMm: (x + y) / Math.SQRT2 - spacingMm / 2,
  });
  return commands.length === 0 ? [] : [path(commands, { stroke: 'seen', hue: 'green' })];
}

/** Lines along the bar, the outer two at its top and its foot. */
function lengthwise({ x, y, width, height }: Rectangle): readonly Line[] {
  const spaces = height >= highMm ? 3 : 2;
  return Array.from({ length: spaces + 1 }, (_, index) => level(y + (height * index) / spaces, x, x + width));
}

const dotRadiusMm = 0.42;

/** From this height a bar has room for a second row of its pattern. */
const highMm = 3.2;
