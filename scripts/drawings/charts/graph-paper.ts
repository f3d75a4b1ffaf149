/** A graph to fill in with a pencil: days along the foot, values up the side, and what each line is to look like. */
import { circle, path, polygon, text, type Point } from '../path.ts';
import type { Scene, SceneItem, Stroke } from '../scene.ts';
import { level, lines, textLines, upright } from './shapes.ts';
import { baselineDropMm, estimateTextWidthMm, lineMm } from './text-width.ts';

export interface GraphPaperOptions {
  readonly id: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** How many days, at least 2. */
  readonly days: number;
  /** Under the days: `Day`. */
  readonly dayLabel: string;
  /** Over the axis of values. */
  readonly axisLabel: string;
  /** Multiples of `every` in the unit that is drawn; the highest is above the lowest. */
  readonly lowest: number;
  readonly highest: number;
  readonly every: number;
  readonly tickText: (value: number) => string;
  /** What the lines to be drawn are called: the first solid with dots, the second dashed with rings, the third heavy with triangles. */
  readonly lineLabels: readonly string[];
  readonly alternative: string;
}

/** Throws a `RangeError` for fewer than two days, or values that are out of order. */
export function graphPaper(options: GraphPaperOptions): Scene {
  const { widthMm, heightMm, days, lowest, highest, every } = options;
  if (days < 2 || !(highest > lowest) || !(every > 0))
    throw new RangeError('no graph of these days and values');
  const ticks = Array.from(
    { length: Math.round((highest - lowest) / every) + 1 },
    (_, n) => lowest + n * every,
  );
  const left = Math.max(...ticks.map((value) => estimateTextWidthMm(options.tickText(value), 'label'))) + 2.6;
  const top = 2 * lineMm + 3;
  const foot = heightMm - 2 * lineMm - 1;
  const right = widthMm - 2;
  const x = (day: number): number => left + ((day - 0.5) / days) * (right - left);
  const y = (value: number): number => foot - ((value - lowest) / (highest - lowest)) * (foot - top);
  const dayNumbers = Array.from({ length: days }, (_, index) => index + 1);
  const items: SceneItem[] = [
    ...textLines(0, lineMm / 2, [options.axisLabel], { style: 'strong' }),
    ...key(options.lineLabels, left, 1.6 * lineMm + 0.6),
    ...lines(
      [
        ...dayNumbers.map((day) => upright(x(day), top, foot)),
        ...ticks.map((value) => level(y(value), left, right)),
      ],
      'thin',
      'ink',
    ),
    ...lines([upright(left, top, foot), level(foot, left, right)], 'seen'),
    ...ticks.map((value) =>
      text({ x: left - 1.4, y: y(value) + baselineDropMm }, options.tickText(value), { anchor: 'end' }),
    ),
    ...dayNumbers.map((day) => text({ x: x(day), y: foot + lineMm }, String(day), { anchor: 'middle' })),
    text({ x: (left + right) / 2, y: foot + 2 * lineMm }, options.dayLabel, {
      anchor: 'middle',
      style: 'strong',
    }),
  ];
  return { id: options.id, widthMm, heightMm, alternative: options.alternative, items };
}

const sampleMm = 14;
const strokes: readonly Stroke[] = ['seen', 'hidden', 'cut'];

/** A sample of each line with its name after it, in a row over the graph. */
function key(labels: readonly string[], left: number, y: number): SceneItem[] {
  let x = left;
  return labels.flatMap((label, index): SceneItem[] => {
    const start = x;
    x += sampleMm + 2 + estimateTextWidthMm(label, 'label') + 8;
    return [
      ...lines([level(y, start, start + sampleMm)], strokes[index % strokes.length]!),
      point({ x: start + sampleMm / 2, y }, index),
      text({ x: start + sampleMm + 2, y: y + baselineDropMm }, label),
    ];
  });
}

/** The points of each line have a form of their own, for a grey copy. */
function point(at: Point, index: number): SceneItem {
  if (index % 3 === 0) return circle(at, 1, { fill: 'ink' });
  if (index % 3 === 1) return circle(at, 1.1, { fill: 'paper', stroke: 'seen' });
  const { x, y } = at;
  return path(
    polygon([
      { x, y: y - 1.3 },
      { x: x + 1.3, y: y + 1 },
      { x: x - 1.3, y: y + 1 },
    ]),
    { fill: 'ink' },
  );
}

/**
 * The distance between the named values, 1, 2 or 5 times a power of ten, so that there are at most `most` of them
 * between two values.
 */
export function tickDistance(low: number, high: number, most: number): number {
  const rough = (high - low) / most;
  const power = 10 ** Math.floor(Math.log10(rough));
  return [1, 2, 5, 10].map((step) => step * power).find((step) => step >= rough - 1e-9)!;
}
