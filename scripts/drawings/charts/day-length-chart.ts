/**
 * The length of the day through a year, with the ranges of day length that matter to a crop as level bands, and the
 * dates on which the curve crosses them.
 */
import type { DayNumber } from '../../findings/finding.ts';
import { circle, path, polyline, text, type Point } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';
import { dayInWindow, dayScale, type DayScale, type DayWindow } from './day-scale.ts';
import { placeInRows, placeLabels, type LabelledMark, type PlacedLabel } from './label-placement.ts';
import { innerMonthEdges, monthAxis, monthAxisMm } from './month-axis.ts';
import { box, level, lightRules, lines, textLines, upright, type Line } from './shapes.ts';
import { spread } from './spread.ts';
import { baselineDropMm, estimateTextWidthMm, lineMm, textBox, wrapText, type Box } from './text-width.ts';

export interface DayLength {
  readonly day: DayNumber;
  /** 0 to 24 */
  readonly hours: number;
}

export interface DayLengthBand {
  readonly fromHours: number;
  readonly toHours: number;
  /** What the range is: "Intermediate, 12 to 14 h". */
  readonly label: string;
  /** When the day is that long: "Mar 20 to May 3"; empty for no second line. */
  readonly dates: string;
}

/** `from` and `to` are the days shown, as in the planting chart. */
export interface DayLengthChartOptions extends DayWindow {
  readonly id: string;
  /** At least 90 mm. */
  readonly widthMm: number;
  /** The least height; the chart grows where the labels of its bands need more. */
  readonly heightMm: number;
  readonly points: readonly DayLength[];
  readonly bands: readonly DayLengthBand[];
  readonly marks: readonly (DayLength & { readonly label: string })[];
  /** Twelve names, January first. */
  readonly monthLabels: readonly string[];
  /** Over the hour axis: "Hours of daylight". */
  readonly hoursLabel: string;
  /** A whole hour as the axis prints it. */
  readonly hourText: (hours: number) => string;
  readonly alternative: string;
}

export function dayLengthChart(options: DayLengthChartOptions): Scene {
  const frame = frameOf(options, 0);
  const inPlot = placeMarks(options, frame);
  const homeless = inPlot.filter((place) => place === undefined).length;
  return homeless === 0 ? draw(options, frame, definedOnly(inPlot)) : drawWithRows(options, homeless);
}

/** Marks without a free place in the plot get a row each above it; a lower plot may leave more of them without. */
function drawWithRows(options: DayLengthChartOptions, rows: number): Scene {
  const frame = frameOf(options, rows);
  const inPlot = placeMarks(options, frame);
  const marks = labelledMarks(options, frame);
  const homeless = marks.filter((_, index) => inPlot[index] === undefined);
  if (homeless.length > rows) return drawWithRows(options, homeless.length);
  const inRows = placeInRows(homeless, { left: 0, right: frame.right }, frame.rowsTop);
  return draw(options, frame, [...definedOnly(inPlot), ...inRows]);
}

interface Frame {
  readonly scale: DayScale;
  readonly y: (hours: number) => number;
  readonly lowestHour: number;
  readonly highestHour: number;
  readonly left: number;
  readonly right: number;
  readonly rowsTop: number;
  readonly top: number;
  readonly foot: number;
  readonly bandLabels: readonly BandLabel[];
}

interface BandLabel {
  readonly band: DayLengthBand;
  readonly name: readonly string[];
  readonly dates: readonly string[];
  readonly heightMm: number;
}

function frameOf(options: DayLengthChartOptions, rows: number): Frame {
  const { from, to, widthMm, heightMm, points, bands, hourText, hoursLabel } = options;
  if (points.length < 2) throw new RangeError('a curve of day length needs at least two points');
  const hours = [...points, ...options.marks].map((point) => point.hours);
  const lowestHour = Math.floor(Math.min(...hours, ...bands.map(({ fromHours }) => fromHours)));
  const highestHour = Math.max(
    lowestHour + 1,
    Math.ceil(Math.max(...hours, ...bands.map(({ toHours }) => toHours))),
  );
  const allHours = Array.from({ length: highestHour - lowestHour + 1 }, (_, index) => lowestHour + index);
  const left = Math.max(...allHours.map((hour) => estimateTextWidthMm(hourText(hour), 'label'))) + 2.2;
  const labelsMm = bands.length === 0 ? edgeMm : bandColumnMm(options) + bandGapMm;
  const right = widthMm - labelsMm;
  const bandLabels = bands.map((band) => bandLabel(band, labelsMm - bandGapMm));
  const rowsTop = hoursLabel === '' ? 1.5 : wrapText(hoursLabel, 'strong', widthMm).length * lineMm + 2.4;
  const top = rowsTop + rows * lineMm + (rows > 0 ? 1.8 : 0);
  const neededMm = bandLabels.reduce((sum, label) => sum + label.heightMm + 1, 0);
  const foot = Math.max(heightMm - monthAxisMm, top + Math.max(neededMm, minimumPlotMm));
  const y = (hour: number): number =>
    foot - ((hour - lowestHour) / (highestHour - lowestHour)) * (foot - top);
  const scale = dayScale({ from, to, leftMm: left, widthMm: right - left });
  return { scale, y, lowestHour, highestHour, left, right, rowsTop, top, foot, bandLabels };
}

/** A third of the chart at most, and no more than the longest label needs. */
function bandColumnMm({ bands, widthMm }: DayLengthChartOptions): number {
  const longest = bands.flatMap(({ label, dates }) => [
    estimateTextWidthMm(label, 'strong'),
    estimateTextWidthMm(dates, 'label'),
  ]);
  return Math.min(Math.max(...longest) + 0.2, widthMm * 0.33);
}

function bandLabel(band: DayLengthBand, roomMm: number): BandLabel {
  const name = wrapText(band.label, 'strong', roomMm);
  const dates = band.dates === '' ? [] : wrapText(band.dates, 'label', roomMm);
  return { band, name, dates, heightMm: (name.length + dates.length) * lineMm };
}

function draw(options: DayLengthChartOptions, frame: Frame, labels: readonly PlacedLabel[]): Scene {
  const { id, widthMm, monthLabels, hoursLabel, alternative } = options;
  const { scale, foot } = frame;
  const words = hoursLabel === '' ? [] : wrapText(hoursLabel, 'strong', widthMm);
  const marks = labelledMarks(options, frame);
  const boxes = labels.map(({ item }) => textBox(item));
  return {
    id,
    widthMm,
    heightMm: foot + monthAxisMm,
    alternative,
    items: [
      ...textLines(0, (words.length * lineMm) / 2, words, { style: 'strong' }),
      ...strips(frame),
      ...rules(frame, boxes),
      ...stripEdges(frame),
      ...hourAxis(options, frame),
      ...monthAxis({ scale, monthLabels, topMm: foot, names: 'below' }),
      ...lines(
        marks.flatMap(({ x, y }) => uprightAround(x, y, foot, boxes)),
        'hidden',
      ),
      path(polyline(curve(options, frame)), { stroke: 'cut', hue: 'green' }),
      ...leaders(labels, boxes),
      ...marks.map((mark) => circle(mark, 0.95, { fill: 'paper', stroke: 'seen', hue: 'green' })),
      ...labels.map(({ item }) => item),
      ...bandWords(frame),
    ],
  };
}

/** The bands as strips of the two tints by turns. */
function strips({ bandLabels, y, left, right }: Frame): readonly SceneItem[] {
  return bandLabels.map(({ band: { fromHours, toHours } }, index) =>
    box(
      { x: left, y: y(toHours), width: right - left, height: y(fromHours) - y(toHours) },
      { fill: index % 2 === 0 ? 'tint' : 'shade' },
    ),
  );
}

/** The edges of the bands in ink, since a copy may lose the tints. */
function stripEdges({ bandLabels, y, left, right }: Frame): readonly SceneItem[] {
  const hours = new Set(bandLabels.flatMap(({ band }) => [band.fromHours, band.toHours]));
  return lines(
    [...hours].map((hour) => level(y(hour), left, right)),
    'thin',
  );
}

/** Light rules for months and hours; they stop short of the labels in the plot. */
function rules(frame: Frame, boxes: readonly Box[]): readonly SceneItem[] {
  const { scale, y, left, right, top, foot } = frame;
  const months = innerMonthEdges(scale).flatMap((x) => uprightAround(x, top, foot, boxes));
  const hours = wholeHours(frame).map((hour) => level(y(hour), left, right));
  const clearHours = hours.filter(
    (rule) => !boxes.some(({ top: a, bottom: b }) => a < rule[0]!.y && rule[0]!.y < b),
  );
  return lightRules([...months, ...clearHours]);
}

/** An upright line with gaps where boxes stand in its way. */
function uprightAround(x: number, top: number, foot: number, boxes: readonly Box[]): readonly Line[] {
  const result: Line[] = [];
  let from = top;
  const inTheWay = boxes
    .filter(({ left, right }) => left - 0.5 < x && x < right + 0.5)
    .sort((a, b) => a.top - b.top);
  for (const gap of inTheWay) {
    if (gap.top > from) result.push(upright(x, from, Math.min(gap.top, foot)));
    from = Math.max(from, gap.bottom);
  }
  if (from < foot) result.push(upright(x, from, foot));
  return result;
}

/** Every whole hour that has room for its number. */
function wholeHours({ lowestHour, highestHour, top, foot }: Frame): readonly number[] {
  const hourMm = (foot - top) / (highestHour - lowestHour);
  const every = Math.max(1, Math.ceil(lineMm / hourMm));
  const count = Math.floor((highestHour - lowestHour) / every) + 1;
  return Array.from({ length: count }, (_, index) => lowestHour + index * every);
}

function hourAxis({ hourText }: DayLengthChartOptions, frame: Frame): readonly SceneItem[] {
  const { y, left, top, foot } = frame;
  const hours = wholeHours(frame);
  return [
    ...lines([upright(left, top, foot), ...hours.map((hour) => level(y(hour), left - 1.2, left))], 'thin'),
    ...hours.map((hour) =>
      text({ x: left - 2, y: y(hour) + baselineDropMm }, hourText(hour), { anchor: 'end' }),
    ),
  ];
}

function curve({ points }: DayLengthChartOptions, { scale, y }: Frame): readonly Point[] {
  return points
    .flatMap(({ day, hours }) => {
      const shown = dayInWindow(day, scale);
      return shown === undefined ? [] : [{ x: scale.x(shown), y: y(hours) }];
    })
    .sort((a, b) => a.x - b.x);
}

/** The marks that the window shows. Labels stand outside the curve: before it while the days grow longer. */
function labelledMarks(options: DayLengthChartOptions, frame: Frame): readonly LabelledMark[] {
  const line = curve(options, frame);
  return options.marks.flatMap(({ day, hours, label }) => {
    const shown = dayInWindow(day, frame.scale);
    if (shown === undefined) return [];
    const x = frame.scale.x(shown);
    const before = line.findLast((point) => point.x < x) ?? line[0]!;
    const after = line.find((point) => point.x > x) ?? line.at(-1)!;
    return [
      { x, y: frame.y(hours), label, side: after.y <= before.y ? ('left' as const) : ('right' as const) },
    ];
  });
}

function placeMarks(options: DayLengthChartOptions, frame: Frame): readonly (PlacedLabel | undefined)[] {
  const { left, right, top, foot, bandLabels, y } = frame;
  const marks = labelledMarks(options, frame);
  const line = curve(options, frame);
  const obstacles: Box[] = [
    ...line.slice(1).map((point, index) => boxAround(line[index]!, point, 0.4)),
    ...bandLabels.flatMap(({ band }) =>
      [band.fromHours, band.toHours].map((hour) =>
        boxAround({ x: left, y: y(hour) }, { x: right, y: y(hour) }, 0.1),
      ),
    ),
  ];
  const bounds = { left: left + 0.5, right: right - 0.5, top, bottom: foot };
  const avoided = marks.map((mark) => boxAround(mark, { x: mark.x, y: foot }, 0.4));
  return placeLabels(marks, bounds, { obstacles, avoided });
}

const boxAround = (a: Point, b: Point, reach: number): Box => ({
  left: Math.min(a.x, b.x) - reach,
  right: Math.max(a.x, b.x) + reach,
  top: Math.min(a.y, b.y) - reach,
  bottom: Math.max(a.y, b.y) + reach,
});

/** Upright leaders stop short of the labels they would cross; the others were laid clear of them. */
function leaders(labels: readonly PlacedLabel[], boxes: readonly Box[]): readonly SceneItem[] {
  const list = labels.flatMap(({ leader }): readonly Line[] => {
    if (!leader) return [];
    const [from, to] = leader;
    return from.x === to.x ? uprightAround(from.x, to.y, from.y, boxes) : [leader];
  });
  return lines(list, 'thin');
}

/** The names of the bands beside the plot, moved apart where their bands are thinner than the words. */
function bandWords(frame: Frame): readonly SceneItem[] {
  const { bandLabels, y, right, top, foot } = frame;
  const middles = bandLabels.map(({ band }) => y((band.fromHours + band.toHours) / 2));
  const placed = spread(
    bandLabels.map(({ heightMm }, index) => ({ middle: middles[index]!, size: heightMm + 1 })),
    top,
    foot,
  );
  const pointers = middles.map((middle, index): Line => [
    { x: right, y: middle },
    { x: right + bandGapMm - 0.8, y: placed[index]! },
  ]);
  const words = bandLabels.flatMap(({ name, dates, heightMm }, index) => {
    const x = right + bandGapMm;
    const start = placed[index]! - heightMm / 2;
    return [
      ...textLines(x, start + (name.length * lineMm) / 2, name, { style: 'strong' }),
      ...textLines(x, start + name.length * lineMm + (dates.length * lineMm) / 2, dates),
    ];
  });
  return [...lines(pointers, 'thin'), ...words];
}

function definedOnly(places: readonly (PlacedLabel | undefined)[]): readonly PlacedLabel[] {
  return places.filter((place) => place !== undefined);
}

const edgeMm = 0.4;
const bandGapMm = 4;
const minimumPlotMm = 24;
