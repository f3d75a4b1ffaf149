/**
 * How far the freeze dates of a place spread, one lane for each temperature: a shape whose height is the chance, from
 * the date that a freeze nearly always passes to the date that it hardly ever passes, with the even chance marked.
 */
import type { DayNumber } from '../../findings/finding.ts';
import { path, polygon, text, type Point } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';
import { uprightAround } from './clear-rules.ts';
import { curvePieces, placeOfDay, type CurveKind } from './curves.ts';
import { dayScale, daysInYear, modulo, type DayScale, type DayWindow } from './day-scale.ts';
import { innerMonthEdges, monthAxis, monthAxisMm } from './month-axis.ts';
import { level, lightRules, lines, textLines, upright, type Line } from './shapes.ts';
import { spread } from './spread.ts';
import {
  baselineDropMm,
  estimateTextWidthMm,
  lineMm,
  overlaps,
  textBox,
  wrapText,
  type Box,
  type TextItem,
} from './text-width.ts';

export interface FreezeChance {
  /** Percent, over 0 and under 100: of a freeze after the day (last), or before it (first). */
  readonly chance: number;
  readonly day: DayNumber;
}

export interface FreezeCurveRow {
  /** The temperature as it is printed: "32 °F". */
  readonly threshold: string;
  /** Last freeze before the growing season: the smaller the chance, the later the day. Any order. */
  readonly last: readonly FreezeChance[];
  /** First freeze after it: the smaller the chance, the earlier the day. Any order. */
  readonly first: readonly FreezeChance[];
  /** What is said in a lane that lacks dates: "No freeze in most years". A lane without dates and note is left out. */
  readonly note?: string;
}

/** `from` and `to` are the days shown, as in the planting chart. Dates that they leave out are not written. */
export interface FreezeCurveOptions extends DayWindow {
  readonly id: string;
  /** At least 90 mm. */
  readonly widthMm: number;
  /** Twelve names, January first. */
  readonly monthLabels: readonly string[];
  /** At most six. */
  readonly rows: readonly FreezeCurveRow[];
  /** Over the spring and the fall shapes: "Last freeze in spring"; empty for none. */
  readonly lastHeading: string;
  readonly firstHeading: string;
  /** Beside the shape that serves as key: "Height: chance of a freeze after that day in spring, before it in fall". */
  readonly chanceLabel: string;
  /** A chance as the key prints it: "50 %". */
  readonly chanceText: (chance: number) => string;
  /** A day as it is written at the even chance and at one in ten: "Apr 14". */
  readonly dateText: (day: DayNumber) => string;
  readonly alternative: string;
}

/** Throws a `RangeError` for more than six rows. */
export function freezeCurve(options: FreezeCurveOptions): Scene {
  const { id, from, to, widthMm, rows, monthLabels, alternative } = options;
  if (rows.length > mostRows) throw new RangeError(`at most ${mostRows} lanes fit, not ${rows.length}`);
  const shown = rows.filter(({ last, first, note }) => last.length + first.length > 0 || note !== undefined);
  const names = shown.map(({ threshold }) => estimateTextWidthMm(threshold, 'strong'));
  const left = Math.max(edgeMm, ...names.map((width) => width + 2));
  const scale = dayScale({ from, to, leftMm: left, widthMm: widthMm - edgeMm - left });
  const headings = headingLines(options, shown, scale);
  const axisTop = headings.heightMm;
  const lanes = laneLayout(shown, scale, options, axisTop + monthAxisMm);
  const foot = lanes.at(-1)?.foot ?? axisTop + monthAxisMm;
  const key = keyItems(options, foot + 2.2);
  const words = lanes.flatMap(({ dates, note }) => [...dates, ...note].map(textBox));
  const edges = [scale.leftMm, ...innerMonthEdges(scale), scale.leftMm + scale.widthMm];
  return {
    id,
    widthMm,
    heightMm: key.foot,
    alternative,
    items: [
      ...headings.items,
      ...monthAxis({ scale, monthLabels, topMm: axisTop, names: 'above' }),
      ...lightRules(edges.flatMap((x) => uprightAround(x, axisTop + monthAxisMm, foot, words))),
      ...lanes.flatMap((lane) => laneItems(lane, scale)),
      ...key.items,
    ],
  };
}

/** The even chance and the tail of a season: the dates that are written. */
interface WrittenDate {
  readonly x: number;
  readonly label: string;
}

interface SeasonShape {
  /** Which way the thin end points. */
  readonly tailSide: 'left' | 'right';
  /** Points with the chance as height, cut at the edges of the scale. */
  readonly pieces: readonly (readonly { readonly x: number; readonly chance: number }[])[];
  readonly even: WrittenDate | undefined;
  readonly tail: WrittenDate | undefined;
}

interface Lane {
  readonly threshold: string;
  readonly shapes: readonly SeasonShape[];
  readonly top: number;
  /** The line on which the shapes stand. */
  readonly base: number;
  readonly foot: number;
  readonly dates: readonly TextItem[];
  readonly pointers: readonly Line[];
  readonly note: readonly TextItem[];
}

function seasonShape(
  chances: readonly FreezeChance[],
  season: 'last' | 'first',
  scale: DayScale,
  dateText: FreezeCurveOptions['dateText'],
): SeasonShape {
  const inOrder = [...chances].sort((a, b) =>
    season === 'last' ? b.chance - a.chance : a.chance - b.chance,
  );
  const days = inOneSeason(inOrder.map(({ day }) => day));
  const points = inOrder.map(({ chance }, index) => ({ day: days[index]!, value: chance }));
  const written = (chance: number): WrittenDate | undefined => {
    const found = chances.find((date) => date.chance === chance);
    const x = found && placeOfDay(scale, found.day);
    return found && x !== undefined ? { x, label: dateText(found.day) } : undefined;
  };
  return {
    tailSide: season === 'last' ? 'right' : 'left',
    pieces: curvePieces(points, scale, oneSeason).map((piece) =>
      piece.map(({ day, value }) => ({ x: scale.x(day), chance: value })),
    ),
    even: written(50),
    tail: written(10),
  };
}

/** Days counted from the same year, so that December 31 and January 10 are ten days apart. */
function inOneSeason(days: readonly DayNumber[]): readonly DayNumber[] {
  const [reference = 1] = days;
  const halfYear = 182;
  return days.map((day) => reference - halfYear + modulo(day - reference + halfYear, daysInYear));
}

/**
 * Each lane has a line for the dates of the even chance, and the shapes under it. The dates of the thin ends stand
 * beside them where there is room, else on a line of their own below.
 */
function laneLayout(
  rows: readonly FreezeCurveRow[],
  scale: DayScale,
  { dateText }: FreezeCurveOptions,
  topMm: number,
): readonly Lane[] {
  const shapes = rows.map(({ last, first }) => [
    ...(last.length > 0 ? [seasonShape(last, 'last', scale, dateText)] : []),
    ...(first.length > 0 ? [seasonShape(first, 'first', scale, dateText)] : []),
  ]);
  const lanes: Lane[] = [];
  rows.forEach((row, index) => {
    const top = lanes.at(-1)?.foot ?? topMm;
    lanes.push(laneOf(row, shapes[index]!, scale, top));
  });
  return lanes;
}

function laneOf(
  { threshold, note }: FreezeCurveRow,
  shapes: readonly SeasonShape[],
  scale: DayScale,
  top: number,
): Lane {
  const tailsBeside = tailsFit(shapes, scale);
  const evenFoot = top + padMm + lineMm;
  const base = shapes.length === 0 ? evenFoot : evenFoot + gapMm + shapeMm;
  const evens = shapes.flatMap(({ even }) => (even ? [even] : []));
  const tails = shapes.flatMap(({ tail }) => (tail ? [tail] : []));
  const over = spreadDates(evens, scale, evenFoot - lineMm / 2);
  const besides = shapes.flatMap((shape) => tailBeside(shape, base));
  const under = tailsBeside ? [] : spreadDates(tails, scale, base + gapMm + lineMm / 2);
  const dates = [...over, ...(tailsBeside ? besides : under)];
  const shapeFoot = base + (tailsBeside || tails.length === 0 ? 0 : gapMm + lineMm);
  const taken = [...dates.map(textBox), ...shapes.flatMap((shape) => shapeBoxes(shape, base))];
  const noteItem =
    note === undefined ? undefined : notePlace(note, scale, taken, [evenFoot, base], shapeFoot);
  return {
    threshold,
    shapes,
    top,
    base,
    foot: Math.max(shapeFoot, noteItem?.foot ?? 0) + padMm,
    dates,
    pointers: [
      ...evens.map((date, index) => pointer(date.x, base, over[index]!, 'above')),
      ...(tailsBeside ? [] : tails.map((date, index) => pointer(date.x, base, under[index]!, 'below'))),
    ],
    note: noteItem?.items ?? [],
  };
}

/** From the line of the lane to the nearest end of a date over or under it. */
function pointer(x: number, base: number, date: TextItem, where: 'above' | 'below'): Line {
  const { left, right, top, bottom } = textBox(date);
  const reach = Math.min(Math.max(x, left + 0.8), right - 0.8);
  if (where === 'below')
    return [
      { x, y: base },
      { x: reach, y: top + 0.5 },
    ];
  const crest = base - shapeMm;
  return [
    { x, y: base },
    { x, y: crest },
    { x: reach, y: bottom },
  ];
}

/** Dates over their days on one line, moved apart and inside the scale as far as needed. */
function spreadDates(dates: readonly WrittenDate[], scale: DayScale, middleMm: number): readonly TextItem[] {
  const sizes = dates.map(({ label }) => estimateTextWidthMm(label, 'label') + 2 * dateGapMm);
  const middles = spread(
    dates.map(({ x }, index) => ({ middle: x, size: sizes[index]! })),
    scale.leftMm - dateGapMm,
    scale.leftMm + scale.widthMm + dateGapMm,
  );
  return dates.map(({ label }, index) => words(middles[index]!, middleMm + baselineDropMm, label, 'middle'));
}

function tailBeside({ tail, tailSide }: SeasonShape, base: number): readonly TextItem[] {
  if (!tail) return [];
  const y = base - 1.1;
  return tailSide === 'right'
    ? [words(tail.x + dateGapMm, y, tail.label, 'start')]
    : [words(tail.x - dateGapMm, y, tail.label, 'end')];
}

/** The dates of the thin ends stand inside the scale, off every shape of the lane and off each other. */
function tailsFit(shapes: readonly SeasonShape[], { leftMm, widthMm }: DayScale): boolean {
  const boxes = shapes.flatMap((shape) => tailBeside(shape, 0).map(textBox));
  const taken = shapes.flatMap((shape) => shapeBoxes(shape, 0));
  return boxes.every(
    (box, index) =>
      box.left >= leftMm &&
      box.right <= leftMm + widthMm &&
      ![...taken, ...boxes.slice(index + 1)].some((other) => overlaps(widened(box), other)),
  );
}

/** The room of a shape, its marks included, a hair narrower than it is, so that a date beside it does not touch it. */
function shapeBoxes({ pieces, even, tail }: SeasonShape, base: number): readonly Box[] {
  const stretches = [
    ...pieces.map((piece) => [piece[0]!.x, piece.at(-1)!.x] as const),
    ...[even, tail].flatMap((date) => (date ? [[date.x, date.x] as const] : [])),
  ];
  return stretches.map(([left, right]) => ({
    left: left - 0.1,
    right: right + 0.1,
    top: base - shapeMm - gapMm,
    bottom: base + 0.1,
  }));
}

const widened = (box: Box): Box => ({ ...box, left: box.left - 0.8, right: box.right + 0.8 });

/** The note on the first line of the lane where it is free, else on lines of its own under the shapes. */
function notePlace(
  note: string,
  scale: DayScale,
  taken: readonly Box[],
  lineFeet: readonly number[],
  footMm: number,
): { readonly items: readonly TextItem[]; readonly foot: number } {
  const middle = scale.leftMm + scale.widthMm / 2;
  const width = estimateTextWidthMm(note, 'label');
  const right = scale.leftMm + scale.widthMm;
  const xs = [middle, right - width / 2 - 1, scale.leftMm + width / 2 + 1];
  for (const lineFoot of lineFeet) {
    for (const x of xs) {
      const item = words(x, lineFoot - 1.1, note, 'middle');
      const box = textBox(item);
      const isInside = box.left >= scale.leftMm && box.right <= right;
      if (isInside && !taken.some((other) => overlaps(widened(box), other)))
        return { items: [item], foot: lineFoot };
    }
  }
  const wrapped = wrapText(note, 'label', scale.widthMm);
  return {
    items: wrapped.map((part, index) => words(middle, footMm + gapMm + index * lineMm + 3.2, part, 'middle')),
    foot: footMm + gapMm + wrapped.length * lineMm,
  };
}

const words = (x: number, y: number, label: string, anchor: TextItem['anchor']): TextItem => ({
  kind: 'text',
  x,
  y,
  text: label,
  anchor,
  style: 'label',
});

function laneItems(lane: Lane, scale: DayScale): readonly SceneItem[] {
  const { threshold, shapes, base, top, foot, dates, pointers, note } = lane;
  const right = scale.leftMm + scale.widthMm;
  const nameMiddle = shapes.length === 0 ? (top + foot) / 2 : base - shapeMm / 2;
  return [
    ...shapes.flatMap((shape) => shapeItems(shape, base)),
    ...lines(shapes.length === 0 ? [] : [level(base, scale.leftMm, right)], 'thin'),
    ...lines(
      shapes.flatMap(({ even }) => (even ? [upright(even.x, base - shapeMm, base)] : [])),
      'cut',
      'clay',
    ),
    ...lines(pointers, 'thin', 'clay'),
    ...dates,
    ...note,
    ...textLines(0, nameMiddle, [threshold], { style: 'strong' }),
  ];
}

/** The spread as a shape of the darker tint with an edge in ink, since a copy may lose the tint. */
function shapeItems({ pieces }: Pick<SeasonShape, 'pieces'>, base: number): readonly SceneItem[] {
  return pieces.map((piece) => {
    const crest = piece.map(({ x, chance }): Point => ({ x, y: base - (chance / 100) * shapeMm }));
    const outline = [{ x: crest[0]!.x, y: base }, ...crest, { x: crest.at(-1)!.x, y: base }];
    return path(polygon(outline), { fill: 'shade', stroke: 'thin', hue: 'clay' });
  });
}

interface Block {
  readonly items: readonly SceneItem[];
  readonly foot: number;
}

/** The two headings over the middle of their shapes, on one line or, where that has no room, on two. */
function headingLines(
  { lastHeading, firstHeading, widthMm }: FreezeCurveOptions,
  rows: readonly FreezeCurveRow[],
  scale: DayScale,
): { readonly items: readonly SceneItem[]; readonly heightMm: number } {
  const wanted = [
    {
      heading: lastHeading,
      middle: meanPlace(
        rows.flatMap(({ last }) => last),
        scale,
      ),
    },
    {
      heading: firstHeading,
      middle: meanPlace(
        rows.flatMap(({ first }) => first),
        scale,
      ),
    },
  ].flatMap(({ heading, middle }) => (heading === '' || middle === undefined ? [] : [{ heading, middle }]));
  const wishes = wanted.map(({ heading, middle }) => ({
    middle,
    size: estimateTextWidthMm(heading, 'strong') + 3,
  }));
  const onOneLine = wishes.reduce((sum, { size }) => sum + size, 0) <= widthMm;
  const middles = onOneLine
    ? spread(wishes, 0, widthMm)
    : wishes.map((wish) => spread([wish], 0, widthMm)[0]!);
  const items = wanted.map(({ heading }, index) =>
    text({ x: middles[index]!, y: headingDropMm + (onOneLine ? 0 : index * lineMm) }, heading, {
      anchor: 'middle',
      style: 'strong',
      hue: 'clay',
    }),
  );
  const lineCount = onOneLine ? Math.min(1, items.length) : items.length;
  return { items, heightMm: lineCount * lineMm };
}

function meanPlace(dates: readonly FreezeChance[], scale: DayScale): number | undefined {
  const places = dates.map(({ day }) => placeOfDay(scale, day)).filter((x) => x !== undefined);
  return places.length === 0 ? undefined : places.reduce((sum, x) => sum + x, 0) / places.length;
}

/** A shape like those of the lanes, with chances where the lanes have dates, and the sentence that explains it. */
function keyItems({ chanceText, chanceLabel, widthMm }: FreezeCurveOptions, topMm: number): Block {
  const base = topMm + lineMm + gapMm + shapeMm;
  const [start, even, end] = [90, 50, 10].map(chanceText) as [string, string, string];
  const from = estimateTextWidthMm(start, 'label') + dateGapMm;
  const to = from + keyShapeMm;
  const at = (chance: number): number => from + ((90 - chance) / 80) * keyShapeMm;
  const points = [90, 70, 50, 30, 10].map((chance) => ({ x: at(chance), chance }));
  const evenText = words(
    Math.max(at(50), estimateTextWidthMm(even, 'label') / 2),
    base - shapeMm - gapMm - 1.1,
    even,
    'middle',
  );
  const textLeft = to + dateGapMm + estimateTextWidthMm(end, 'label') + 4;
  const sentence = chanceLabel === '' ? [] : wrapText(chanceLabel, 'label', widthMm - textLeft);
  const heightMm = Math.max(base - topMm, sentence.length * lineMm);
  return {
    items: [
      ...shapeItems({ pieces: [points] }, base),
      ...lines([level(base, from - 1, to + 1)], 'thin'),
      ...lines([upright(at(50), base - shapeMm, base)], 'cut', 'clay'),
      ...lines([pointer(at(50), base, evenText, 'above')], 'thin', 'clay'),
      words(from - dateGapMm, base - 1.1, start, 'end'),
      evenText,
      words(to + dateGapMm, base - 1.1, end, 'start'),
      ...textLines(textLeft, topMm + heightMm / 2, sentence),
    ],
    foot: topMm + heightMm + 0.6,
  };
}

const mostRows = 6;
const oneSeason: CurveKind = { of: 'season', joinDays: daysInYear };
const edgeMm = 0.4;
/** Height of a chance of 100 percent. */
const shapeMm = 5;
const padMm = 1;
const gapMm = 0.6;
const dateGapMm = 1.2;
const keyShapeMm = 16;
const headingDropMm = 3.2;
