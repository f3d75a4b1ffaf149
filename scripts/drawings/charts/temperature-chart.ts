/**
 * Temperature through an average year: the band between daily minimum and maximum, curves over it (the soil at some
 * depths), the levels that matter, and the dates that are read off them.
 */
import type { DayNumber } from '../../findings/finding.ts';
import { circle, path, polygon, type Point } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';
import { levelAround, uprightAround } from './clear-rules.ts';
import { highestPoint, placeNames, type NamedCurve } from './curve-labels.ts';
import { curveItems, type CurveStyle } from './curve-style.ts';
import { boxesAlong, curvePieces, placeOfDay, type CurveKind, type CurvePoint } from './curves.ts';
import type { DayWindow } from './day-scale.ts';
import { placeInRows, type LabelledMark, type PlacedLabel } from './label-placement.ts';
import { monthAxis } from './month-axis.ts';
import { level, lines, type Line } from './shapes.ts';
import { lineMm, textBox, type Box } from './text-width.ts';
import {
  sideLabelItems,
  valueAxis,
  valuePlot,
  valueRules,
  type ValuePlot,
  type ValueTick,
} from './value-plot.ts';

export interface TemperatureDay {
  readonly day: DayNumber;
  readonly low: number;
  readonly high: number;
}

export interface TemperatureLine {
  readonly label: string;
  readonly style: CurveStyle;
  readonly points: readonly CurvePoint[];
}

export interface TemperatureLevel {
  readonly value: number;
  readonly label: string;
}

/**
 * All temperatures are in the one unit to be drawn. `from` and `to` are the days shown, as in the planting chart. Band
 * and lines come again every year: their last point is joined to their first. Points more than 45 days apart are not
 * joined.
 */
export interface TemperatureChartOptions extends DayWindow {
  readonly id: string;
  /** At least 90 mm. */
  readonly widthMm: number;
  /** The least height; the chart grows where its labels need more. */
  readonly heightMm: number;
  /** Twelve names, January first. */
  readonly monthLabels: readonly string[];
  /** Daily minimum and maximum, in any order of days; empty for no band. */
  readonly band: readonly TemperatureDay[];
  /** Names of the two edges of the band, written along them; without them the edges have no names. */
  readonly bandLabels?: { readonly high: string; readonly low: string };
  readonly lines: readonly TemperatureLine[];
  /** Dates worth a word, on their curve. One that the window does not show is left out. */
  readonly marks: readonly (CurvePoint & { readonly label: string })[];
  readonly levels: readonly TemperatureLevel[];
  readonly tick: ValueTick;
  /** Over the axis: "Temperature, °F". */
  readonly axisLabel: string;
  readonly alternative: string;
}

/** Throws a `RangeError` when there is nothing to draw. */
export function temperatureChart(options: TemperatureChartOptions): Scene {
  for (const extraMm of growthMm) {
    const taller = { ...options, heightMm: options.heightMm + extraMm };
    const plot = plotOf(taller, 0);
    const { placed, homeless } = placeAll(taller, plot);
    if (homeless.length === 0) return draw(taller, plot, placed);
  }
  return drawWithRows(options, 1);
}

/** Labels without a free place in the plot get a row each above it; the plot keeps its height. */
function drawWithRows(options: TemperatureChartOptions, rows: number): Scene {
  const plot = plotOf({ ...options, heightMm: options.heightMm + rows * lineMm + 1.8 }, rows);
  const { placed, homeless } = placeAll(options, plot);
  if (homeless.length > rows) return drawWithRows(options, homeless.length);
  const inRows = placeInRows(homeless, { left: 0, right: options.widthMm }, plot.rowsTop);
  return draw(options, plot, [...placed, ...inRows]);
}

function plotOf(options: TemperatureChartOptions, rows: number): ValuePlot {
  const { from, to, widthMm, heightMm, band, levels, marks, tick, axisLabel } = options;
  const curveValues = options.lines.flatMap(({ points }) => points.map(({ value }) => value));
  const values = [
    ...band.flatMap(({ low, high }) => [low, high]),
    ...curveValues,
    ...[...levels, ...marks].map(({ value }) => value),
  ];
  if (band.length === 0 && curveValues.length === 0)
    throw new RangeError('a chart of temperatures needs a band or a line');
  return valuePlot({
    window: { from, to },
    widthMm,
    heightMm,
    values,
    tick,
    axisLabel,
    headroomMm: headroomOf(options),
    rows,
    sideLabels: levels.map(({ label }) => label),
  });
}

/** The name of the upper edge may lie over its peak, which the axis does not reach far beyond. */
const headroomOf = ({ bandLabels }: TemperatureChartOptions): number => (bandLabels ? 3 : 0);

interface Placement {
  readonly placed: readonly PlacedLabel[];
  readonly homeless: readonly LabelledMark[];
}

function placeAll(options: TemperatureChartOptions, plot: ValuePlot): Placement {
  const { left, right, top, foot, y } = plot;
  const marks = shownMarks(options, plot);
  const drawn = drawnCurves(options, plot);
  const curves = namedCurves(options, drawn);
  const named = new Set(curves.flatMap(({ pieces }) => pieces));
  const levels = options.levels.flatMap(({ value }) => boxesAlong(level(y(value), left, right), 0.1));
  const uprights = marks.map(({ x, y: from }) => ({
    left: x - 0.5,
    right: x + 0.5,
    top: from,
    bottom: foot,
  }));
  const places = placeNames({
    marks,
    curves,
    otherCurves: [...drawn.highs, ...drawn.lows, ...drawn.lines.flat()].filter((piece) => !named.has(piece)),
    bounds: { left: left + 0.5, right: right - 0.5, top: top - headroomOf(options), bottom: foot },
    avoided: [...levels, ...uprights],
  });
  return {
    placed: [...places.marks, ...places.curves].filter((place) => place !== undefined),
    homeless: [
      ...marks.filter((_, index) => places.marks[index] === undefined),
      ...curves.filter((_, index) => places.curves[index] === undefined).flatMap(markAtPeak),
    ],
  };
}

function draw(options: TemperatureChartOptions, plot: ValuePlot, labels: readonly PlacedLabel[]): Scene {
  const { id, widthMm, monthLabels, levels, tick, alternative } = options;
  const { scale, y, left, right, foot, heightMm } = plot;
  const boxes = labels.map(({ item }) => textBox(item));
  const marks = shownMarks(options, plot);
  const { highs, lows, lines: curves } = drawnCurves(options, plot);
  return {
    id,
    widthMm,
    heightMm,
    alternative,
    items: [
      ...highs.map((high, index) =>
        path(polygon([...high, ...[...lows[index]!].reverse()]), { fill: 'tint' }),
      ),
      ...valueRules(plot, boxes),
      ...lines([...highs, ...lows], 'thin'),
      ...lines(
        levels.flatMap(({ value }) => levelAround(y(value), left, right, boxes)),
        'hidden',
      ),
      ...valueAxis(plot, tick),
      ...monthAxis({ scale, monthLabels, topMm: foot, names: 'below' }),
      ...lines(
        marks.flatMap((mark) => uprightAround(mark.x, mark.y, foot, boxes)),
        'hidden',
      ),
      ...options.lines.flatMap(({ style }, index) => curveItems(curves[index]!, style)),
      ...leaders(labels, boxes),
      ...leaderFeet(labels, marks),
      ...marks.map((mark) => circle(mark, 0.95, { fill: 'paper', stroke: 'seen', hue: 'green' })),
      ...labels.map(({ item }) => item),
      ...sideLabelItems(
        plot,
        levels.map(({ value }) => ({ x: right, y: y(value) })),
      ),
    ],
  };
}

/** What is drawn as a line, in pieces; the upper and the lower edge of the band have pieces that answer to each other. */
interface DrawnCurves {
  readonly highs: readonly Line[];
  readonly lows: readonly Line[];
  readonly lines: readonly (readonly Line[])[];
}

function drawnCurves(options: TemperatureChartOptions, plot: ValuePlot): DrawnCurves {
  const edge = (which: 'high' | 'low'): readonly Line[] =>
    piecesOf(
      options.band.map((point) => ({ day: point.day, value: point[which] })),
      options,
      plot,
    );
  return {
    highs: edge('high'),
    lows: edge('low'),
    lines: options.lines.map(({ points }) => piecesOf(points, options, plot)),
  };
}

function piecesOf(
  points: readonly CurvePoint[],
  window: DayWindow,
  { scale, y }: ValuePlot,
): readonly Line[] {
  return curvePieces(points, window, everyYear).map((piece) =>
    piece.map(({ day, value }) => ({ x: scale.x(day), y: y(value) })),
  );
}

/** The lines before the edges of the band, which have most room. */
function namedCurves(
  { lines: options, bandLabels }: TemperatureChartOptions,
  { highs, lows, lines: pieces }: DrawnCurves,
): readonly NamedCurve[] {
  const named = options.map(({ label }, index): NamedCurve => ({
    label,
    pieces: pieces[index]!,
    side: 'either',
  }));
  const edges: readonly NamedCurve[] = bandLabels
    ? [
        { label: bandLabels.high, pieces: highs, side: 'above' },
        { label: bandLabels.low, pieces: lows, side: 'below' },
      ]
    : [];
  return [...named, ...edges].filter(({ label, pieces: parts }) => label !== '' && parts.length > 0);
}

/** Labels stand outside a curve that rises to summer: before it in spring, after it in fall. */
function shownMarks(
  options: TemperatureChartOptions,
  { scale, y, left, right }: ValuePlot,
): readonly LabelledMark[] {
  return options.marks.flatMap(({ day, value, label }) => {
    const x = placeOfDay(scale, day);
    if (x === undefined) return [];
    return [{ x, y: y(value), label, side: x < (left + right) / 2 ? ('left' as const) : ('right' as const) }];
  });
}

function markAtPeak({ label, pieces }: NamedCurve): readonly LabelledMark[] {
  const peak = highestPoint({ pieces });
  return peak ? [{ ...peak, label, side: 'right' }] : [];
}

/** Upright leaders stop short of the labels they would cross; the others were laid clear of them. */
function leaders(labels: readonly PlacedLabel[], boxes: readonly Box[]): readonly SceneItem[] {
  const list = labels.flatMap(({ leader }): readonly Line[] => {
    if (!leader) return [];
    const [from, to] = leader;
    return from.x === to.x
      ? uprightAround(from.x, Math.min(from.y, to.y), Math.max(from.y, to.y), boxes)
      : [leader];
  });
  return lines(list, 'thin');
}

/** A dot where a leader meets a curve, so that it is seen which of two it means. Marks have their circle there. */
function leaderFeet(labels: readonly PlacedLabel[], marks: readonly Point[]): readonly SceneItem[] {
  return labels.flatMap(({ leader }) => {
    if (!leader) return [];
    const [foot] = leader;
    const isMark = marks.some(({ x, y }) => x === foot.x && y === foot.y);
    return isMark ? [] : [circle(foot, 0.55, { fill: 'ink' })];
  });
}

/** A chart grows by this much before a label leaves the plot. */
const growthMm = [0, 5, 10, 15] as const;
const everyYear: CurveKind = { of: 'year', joinDays: 45 };
