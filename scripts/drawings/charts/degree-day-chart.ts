/** Degree days as they add up through a season, for one to three bases, each named at its end. */
import type { DayNumber } from '../../findings/finding.ts';
import type { Scene } from '../scene.ts';
import { curveItems, type CurveStyle } from './curve-style.ts';
import { curvePieces, type CurveKind } from './curves.ts';
import type { DayWindow } from './day-scale.ts';
import { monthAxis } from './month-axis.ts';
import type { Line } from './shapes.ts';
import { sideLabelItems, valueAxis, valuePlot, valueRules, type ValueTick } from './value-plot.ts';

export interface DegreeDaySum {
  readonly day: DayNumber;
  /** Degree days from the start of the season to this day, in the unit to be drawn; 0 or more. */
  readonly sum: number;
}

export interface DegreeDayLine {
  /** What is added up: "Base 50 °F: 3,120 by Oct 31". */
  readonly label: string;
  readonly points: readonly DegreeDaySum[];
}

/** `from` and `to` are the days shown, as in the planting chart. */
export interface DegreeDayChartOptions extends DayWindow {
  readonly id: string;
  /** At least 90 mm. */
  readonly widthMm: number;
  /** The least height; the chart grows where the labels of its lines need more. */
  readonly heightMm: number;
  /** Twelve names, January first. */
  readonly monthLabels: readonly string[];
  /**
   * One to three, told apart by weight and dashes in the order given. Points are joined in order of days, never over
   * the end of their season; one that the window does not show at all is left out with its label.
   */
  readonly lines: readonly DegreeDayLine[];
  readonly tick: ValueTick;
  /** Over the axis: "Degree days, °F". */
  readonly axisLabel: string;
  readonly alternative: string;
}

/** Throws a `RangeError` unless there are one to three lines, and for a season that is longer than a year. */
export function degreeDayChart(options: DegreeDayChartOptions): Scene {
  const { id, from, to, widthMm, heightMm, monthLabels, tick, axisLabel, alternative } = options;
  if (options.lines.length < 1 || options.lines.length > styles.length)
    throw new RangeError(`a chart of degree days has one to three lines, not ${options.lines.length}`);
  const shown = options.lines.flatMap(({ label, points }, index) => {
    const season = points.map(({ day, sum }) => ({ day, value: sum }));
    const pieces = curvePieces(season, { from, to }, oneSeason);
    return pieces.length === 0 ? [] : [{ label, style: styles[index]!, pieces }];
  });
  const plot = valuePlot({
    window: { from, to },
    widthMm,
    heightMm,
    values: [0, ...shown.flatMap(({ pieces }) => pieces.flat().map(({ value }) => value))],
    tick,
    axisLabel,
    headroomMm: 0,
    rows: 0,
    sideLabels: shown.map(({ label }) => label),
  });
  const curves = shown.map(({ pieces }) =>
    pieces.map((piece): Line => piece.map(({ day, value }) => ({ x: plot.scale.x(day), y: plot.y(value) }))),
  );
  return {
    id,
    widthMm,
    heightMm: plot.heightMm,
    alternative,
    items: [
      ...valueRules(plot, []),
      ...valueAxis(plot, tick),
      ...monthAxis({ scale: plot.scale, monthLabels, topMm: plot.foot, names: 'below' }),
      ...shown.flatMap(({ style }, index) => curveItems(curves[index]!, style)),
      ...sideLabelItems(
        plot,
        curves.map((pieces) => pieces.at(-1)!.at(-1)!),
      ),
    ],
  };
}

const styles: readonly CurveStyle[] = ['heavy', 'seen', 'dashed'];
const oneSeason: CurveKind = { of: 'season', joinDays: 45 };
