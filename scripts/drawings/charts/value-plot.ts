/** The frame of a chart of values over the days of a year: months along the foot, values up the left, words at the right. */
import { text } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import { levelAround, uprightAround } from './clear-rules.ts';
import { dayScale, type DayScale, type DayWindow } from './day-scale.ts';
import { innerMonthEdges, monthAxisMm } from './month-axis.ts';
import { lightRules, level, lines, textLines, upright, type Line } from './shapes.ts';
import { spread } from './spread.ts';
import { baselineDropMm, estimateTextWidthMm, lineMm, wrapText, type Box } from './text-width.ts';

/** The values that the axis names. */
export interface ValueTick {
  /** Distance between them, greater than 0, in the unit that is drawn. Where they have no room, fewer are named. */
  readonly every: number;
  /** A value as the axis prints it. */
  readonly text: (value: number) => string;
}

export interface ValuePlotOptions {
  readonly window: DayWindow;
  readonly widthMm: number;
  /** The least height; the plot grows where the words at its right need more. */
  readonly heightMm: number;
  /** All that must fit into the plot. At least one. */
  readonly values: readonly number[];
  readonly tick: ValueTick;
  /** Over the axis; empty for none. */
  readonly axisLabel: string;
  /** Room kept free over the plot for names that lie on its highest curve. */
  readonly headroomMm: number;
  /** Rows of words between the axis label and the plot. */
  readonly rows: number;
  /** Words beside the plot. */
  readonly sideLabels: readonly string[];
}

export interface ValuePlot {
  readonly scale: DayScale;
  readonly y: (value: number) => number;
  /** The values that the axis names, from the lowest. */
  readonly named: readonly number[];
  readonly axisWords: readonly string[];
  readonly rowsTop: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly foot: number;
  readonly heightMm: number;
  /** Each side label in lines. */
  readonly sideWords: readonly (readonly string[])[];
}

/** Throws a `RangeError` for a tick distance that is not above 0, or so small that it gives more than 1,000 ticks. */
export function valuePlot(options: ValuePlotOptions): ValuePlot {
  const { window, widthMm, heightMm, tick, axisLabel, rows, sideLabels } = options;
  const range = valueRange(options.values, tick);
  const widestTick = Math.max(...range.ticks.map((value) => estimateTextWidthMm(tick.text(value), 'label')));
  const left = widestTick + 2.2;
  const sideMm = sideLabels.length === 0 ? edgeMm : sideColumnMm(sideLabels, widthMm) + sideGapMm;
  const right = widthMm - sideMm;
  const sideWords = sideLabels.map((label) => wrapText(label, 'strong', sideMm - sideGapMm));
  const axisWords = axisLabel === '' ? [] : wrapText(axisLabel, 'strong', widthMm);
  const rowsTop = axisWords.length === 0 ? 1.5 : axisWords.length * lineMm + 2.4;
  const top = rowsTop + rows * lineMm + (rows > 0 ? 1.8 : 0) + options.headroomMm;
  const sideNeedMm = sideWords.reduce((sum, words) => sum + words.length * lineMm + sideApartMm, 0);
  const foot = Math.max(heightMm - monthAxisMm, top + Math.max(sideNeedMm, minimumPlotMm));
  const mmPerValue = (foot - top) / (range.highest - range.lowest);
  return {
    scale: dayScale({ ...window, leftMm: left, widthMm: right - left }),
    y: (value) => foot - (value - range.lowest) * mmPerValue,
    named: namedValues(range, Math.max(1, Math.ceil(lineMm / (mmPerValue * tick.every))), tick.every),
    axisWords,
    rowsTop,
    left,
    right,
    top,
    foot,
    heightMm: foot + monthAxisMm,
    sideWords,
  };
}

/** The words over the axis, the axis itself, its ticks and their numbers. */
export function valueAxis(
  { axisWords, named, y, left, top, foot }: ValuePlot,
  tick: ValueTick,
): readonly SceneItem[] {
  return [
    ...textLines(0, (axisWords.length * lineMm) / 2, axisWords, { style: 'strong' }),
    ...lines([upright(left, top, foot), ...named.map((value) => level(y(value), left - 1.2, left))], 'thin'),
    ...named.map((value) =>
      text({ x: left - 2, y: y(value) + baselineDropMm }, tick.text(value), { anchor: 'end' }),
    ),
  ];
}

/** Light rules for months and values; they leave out the words in the plot. */
export function valueRules({ scale, named, y, left, right, top, foot }: ValuePlot, words: readonly Box[]) {
  const months = innerMonthEdges(scale).flatMap((x) => uprightAround(x, top, foot, words));
  const values = named
    .map((value) => y(value))
    .filter((height) => height < foot - 0.01)
    .flatMap((height) => levelAround(height, left, right, words));
  return lightRules([...months, ...values]);
}

/** The side labels, each joined to its point in the plot, moved apart where the points are closer than the words. */
export function sideLabelItems(
  { sideWords, right, top, foot }: ValuePlot,
  points: readonly { readonly x: number; readonly y: number }[],
): readonly SceneItem[] {
  const wishes = points.map((point, index) => ({
    middle: point.y,
    size: sideWords[index]!.length * lineMm + sideApartMm,
  }));
  const middles = spread(wishes, top - sideOverMm - sideApartMm / 2, foot + sideApartMm / 2);
  const pointers = points.map((point, index): Line => [
    point,
    { x: Math.max(right, point.x) + sideGapMm - 0.8, y: middles[index]! },
  ]);
  return [
    ...lines(pointers, 'thin'),
    ...sideWords.flatMap((words, index) =>
      textLines(right + sideGapMm, middles[index]!, words, { style: 'strong' }),
    ),
  ];
}

interface ValueRange {
  readonly lowest: number;
  readonly highest: number;
  readonly ticks: readonly number[];
}

/** From the tick at or under the least value to the one at or over the greatest. */
function valueRange(values: readonly number[], { every }: ValueTick): ValueRange {
  const first = Math.floor(Math.min(...values) / every);
  const last = Math.max(first + 1, Math.ceil(Math.max(...values) / every));
  const count = last - first + 1;
  if (!(every > 0) || !(count <= 1000))
    throw new RangeError(`no axis can be drawn with a tick every ${every}`);
  return {
    lowest: first * every,
    highest: last * every,
    ticks: Array.from({ length: count }, (_, index) => (first + index) * every),
  };
}

/** Multiples of `nth` ticks, so that fewer numbers are rounder ones. */
function namedValues({ ticks }: ValueRange, nth: number, every: number): readonly number[] {
  return ticks.filter((value) => Math.round(value / every) % nth === 0);
}

/** A third of the chart at most unless one word is broader, and no more than the longest label needs. */
function sideColumnMm(labels: readonly string[], widthMm: number): number {
  const width = (words: string): number => estimateTextWidthMm(words, 'strong') + 0.2;
  const widestWord = Math.max(...labels.flatMap((label) => label.split(' ')).map(width));
  return Math.max(widestWord, Math.min(Math.max(...labels.map(width)), widthMm * 0.33));
}

const edgeMm = 0.4;
const sideGapMm = 4;
const sideApartMm = 1;
/** A side label may reach this far over the plot, so that it stands level with a line that ends at its top. */
const sideOverMm = 1.5;
const minimumPlotMm = 30;
