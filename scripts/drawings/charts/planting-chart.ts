/**
 * The planting chart: a year along the top, a row for each crop, a bar for each act, and the chance of a freeze above
 * them all. Geometry only; every word comes in ready to print.
 */
import type { Scene, SceneItem } from '../scene.ts';
import { actBar, plantingActs, type PlantingAct } from './acts.ts';
import { dayScale, daysInYear, monthStart, type DayScale, type DayWindow } from './day-scale.ts';
import { freezeRisk } from './freeze-risk.ts';
import type { FreezeDates } from './freeze-rows.ts';
import { inLanes, type Lanes, type PlantingBar } from './lanes.ts';
import { innerMonthEdges, monthAxis, monthAxisMm, monthEdges, monthRules } from './month-axis.ts';
import { level, lightRules, lines, textLines, upright, type Line } from './shapes.ts';
import { estimateTextWidthMm, lineMm, wrapText } from './text-width.ts';

/** The freeze dates with the name of the band: "Chance of a freeze". */
export interface FreezeRisk extends FreezeDates {
  readonly label: string;
}

export interface PlantingRow {
  readonly label: string;
  readonly bars: readonly PlantingBar[];
}

export interface PlantingGroup {
  readonly label: string;
  readonly rows: readonly PlantingRow[];
}

/** `from` and `to` are the days shown: 1 to 365 for a calendar year, 182 to 546 for July to June. */
export interface PlantingChartOptions extends DayWindow {
  readonly id: string;
  /** At least 90 mm. */
  readonly widthMm: number;
  /** Twelve names, January first. */
  readonly monthLabels: readonly string[];
  readonly groups: readonly PlantingGroup[];
  /** Absent where no freeze date is known. */
  readonly freeze?: FreezeRisk;
  /** What each act is called; only the acts that the chart uses are printed. */
  readonly key: Readonly<Record<PlantingAct, string>>;
  readonly alternative: string;
}

/** The height follows from the rows: about 6.5 mm a crop, and more where three acts meet in time. */
export function plantingChart(options: PlantingChartOptions): Scene {
  const panel = drawPanel(options, { topMm: 0, namesMm: namesColumnMm(options) });
  const key = drawKey(options, panel.footMm + 2.2);
  return sceneOf(options, [...panel.items, ...key.items], key.footMm);
}

/**
 * The same chart for a narrow screen: two half years one under the other, each with the crops that have something to
 * do in it. The key stands at the top, where someone who scrolls meets it first.
 */
export function plantingChartNarrow(options: PlantingChartOptions): Scene {
  const key = drawKey(options, 0);
  const namesMm = namesColumnMm(options);
  const items: SceneItem[] = [...key.items];
  let footMm = key.footMm;
  for (const half of halves(options)) {
    const panel = drawPanel(
      { ...options, ...half, groups: groupsIn(options.groups, half) },
      { topMm: footMm + 4, namesMm },
    );
    items.push(...panel.items);
    footMm = panel.footMm;
  }
  return sceneOf(options, items, footMm + 0.6);
}

function sceneOf(
  { id, widthMm, alternative }: PlantingChartOptions,
  items: readonly SceneItem[],
  heightMm: number,
): Scene {
  return { id, widthMm, heightMm, alternative, items };
}

interface Part {
  readonly items: readonly SceneItem[];
  readonly footMm: number;
}

/** Month names, freeze band and rows of one window of days. */
function drawPanel(options: PlantingChartOptions, place: { topMm: number; namesMm: number }): Part {
  const { from, to, widthMm, monthLabels, groups, freeze } = options;
  const { topMm, namesMm } = place;
  const scale = dayScale({ from, to, leftMm: namesMm, widthMm: widthMm - namesMm - edgeMm });
  const bandTop = topMm + monthAxisMm;
  const band = freeze ? drawBand(freeze, scale, bandTop) : { items: [], footMm: bandTop, evenChance: [] };
  const blocks = drawGroups(groups, scale, band.footMm);
  const spans = blocks.map(({ ruledFromMm, footMm }) => [ruledFromMm, footMm] as const);
  const footMm = blocks.at(-1)?.footMm ?? band.footMm;
  const isTall = footMm - topMm > 110;
  return {
    items: [
      ...monthAxis({ scale, monthLabels, topMm, names: 'above' }),
      ...monthRules(innerMonthEdges(scale), bandTop, band.footMm),
      ...spans.flatMap(([top, bottom]) => monthRules(monthEdges(scale), top, bottom)),
      ...evenChanceLines(band.evenChance, spans, band.footMm),
      ...band.items,
      ...blocks.flatMap(({ items }) => items),
      ...lines(groupTicks(scale, blocks), 'thin'),
      ...(isTall
        ? monthAxis({ scale, monthLabels, topMm: footMm, names: 'below' })
        : footRule(scale, footMm)),
    ],
    footMm: isTall ? footMm + monthAxisMm : footMm,
  };
}

/** Ticks in ink at the foot of each group, where the light rules of the months may be lost in a copy. */
function groupTicks(scale: DayScale, blocks: readonly GroupBlock[]): readonly Line[] {
  return blocks.flatMap(({ footMm }) =>
    monthEdges(scale).map((x) => upright(x, footMm - groupPadMm, footMm)),
  );
}

function footRule({ leftMm, widthMm }: DayScale, y: number): readonly SceneItem[] {
  return lines([level(y, leftMm, leftMm + widthMm)], 'thin');
}

interface Band extends Part {
  readonly evenChance: readonly { readonly x: number; readonly y: number }[];
}

/** The freeze band with its name in the column of crop names. */
function drawBand(freeze: FreezeRisk, scale: DayScale, topMm: number): Band {
  const { items, heightMm, evenChance } = freezeRisk({ dates: freeze, scale, topMm });
  if (heightMm === 0) return { items: [], footMm: topMm, evenChance: [] };
  const words = wrapText(freeze.label, 'strong', scale.leftMm - namesGapMm);
  const wordsMm = words.length * lineMm;
  const middle = topMm + Math.max(wordsMm, heightMm) / 2;
  return {
    items: [...items, ...textLines(0, middle, words, { style: 'strong', hue: 'clay' })],
    footMm: topMm + Math.max(heightMm, wordsMm),
    evenChance,
  };
}

/** The lines of the even chance run down through the rows, and leave the group headings alone. */
function evenChanceLines(
  starts: Band['evenChance'],
  spans: readonly (readonly [number, number])[],
  bandFootMm: number,
): readonly SceneItem[] {
  const runs = starts.flatMap(({ x, y }) =>
    [[y, bandFootMm] as const, ...spans]
      .filter(([top, bottom]) => bottom > top)
      .map(([top, bottom]) => upright(x, top, bottom)),
  );
  return lines(runs, 'hidden', 'clay');
}

interface GroupBlock extends Part {
  /** Top of the part that the month rules cross. */
  readonly ruledFromMm: number;
}

function drawGroups(groups: readonly PlantingGroup[], scale: DayScale, topMm: number): readonly GroupBlock[] {
  const blocks: GroupBlock[] = [];
  let top = topMm;
  for (const group of groups) {
    const block = drawGroup(group, scale, top);
    blocks.push(block);
    top = block.footMm;
  }
  return blocks;
}

/** The heading may run on over the chart, which is empty at its height. */
function drawGroup({ label, rows }: PlantingGroup, scale: DayScale, topMm: number): GroupBlock {
  const right = scale.leftMm + scale.widthMm;
  const words = wrapText(label, 'strong', right);
  const headingMm = words.length * lineMm + 3.2;
  const items: SceneItem[] = [
    ...lines([level(topMm, 0, right)], 'thin'),
    ...textLines(0, topMm + headingMm / 2 + 0.5, words, { style: 'strong', hue: 'green' }),
  ];
  let y = topMm + headingMm;
  rows.forEach((row, index) => {
    if (index > 0) items.push(...lightRules([level(y, 0, right)]));
    const drawn = drawRow(row, scale, y);
    items.push(...drawn.items);
    y = drawn.footMm;
  });
  return { items, footMm: y + groupPadMm, ruledFromMm: topMm + headingMm };
}

function drawRow({ label, bars }: PlantingRow, scale: DayScale, topMm: number): Part {
  const lanes = inLanes(bars, scale);
  const words = wrapText(label, 'label', scale.leftMm - namesGapMm);
  const heightMm = Math.max(rowMm, barsMm(lanes) + 1.1, words.length * lineMm + 2.1);
  const middle = topMm + heightMm / 2;
  return {
    items: [...textLines(0, middle, words), ...drawBars(lanes, scale, middle)],
    footMm: topMm + heightMm,
  };
}

function drawBars(lanes: Lanes, scale: DayScale, middle: number): readonly SceneItem[] {
  const height = laneMm(lanes);
  const top = middle - barsMm(lanes) / 2;
  return lanes.bars.flatMap(({ act, from, to, lane, openStart, openEnd }) => {
    const x = scale.x(from);
    const width = scale.x(to + 1) - x;
    return actBar({ act, x, y: top + lane * (height + laneGapMm), width, height, openStart, openEnd });
  });
}

const laneMm = ({ count }: Lanes): number => (count === 1 ? 4 : 2.45);
const barsMm = (lanes: Lanes): number => lanes.count * (laneMm(lanes) + laneGapMm) - laneGapMm;

/** Samples of the acts that the chart uses: in one line if they fit, else in columns of one width. */
function drawKey({ groups, key, widthMm }: PlantingChartOptions, topMm: number): Part {
  const used = plantingActs.filter((act) => groups.some((group) => usesAct(group, act)));
  if (used.length === 0) return { items: [], footMm: topMm };
  const widths = used.map(
    (act) => swatch.width + swatchGapMm + estimateTextWidthMm(key[act], 'label') + keyGapMm,
  );
  const inOneLine = widths.reduce((sum, width) => sum + width, edgeMm - keyGapMm) <= widthMm;
  const columnMm = Math.max(...widths);
  const columns = inOneLine ? used.length : Math.max(1, Math.floor((widthMm - edgeMm + keyGapMm) / columnMm));
  const items = used.flatMap((act, index) => {
    const before = inOneLine
      ? widths.slice(0, index).reduce((sum, width) => sum + width, 0)
      : (index % columns) * columnMm;
    const middle = topMm + Math.floor(index / columns) * keyPitchMm + swatch.height / 2 + edgeMm;
    const x = edgeMm + before;
    return [
      ...actBar({ act, x, y: middle - swatch.height / 2, ...swatch }),
      ...textLines(x + swatch.width + swatchGapMm, middle, [key[act]]),
    ];
  });
  const lineCount = Math.ceil(used.length / columns);
  return { items, footMm: topMm + (lineCount - 1) * keyPitchMm + swatch.height + 2 * edgeMm };
}

function usesAct({ rows }: PlantingGroup, act: PlantingAct): boolean {
  return rows.some(({ bars }) => bars.some((bar) => bar.act === act));
}

/** Wide enough for the longest crop name, up to a third of the chart; longer names break. */
function namesColumnMm({ groups, freeze, widthMm }: PlantingChartOptions): number {
  const names = groups.flatMap(({ rows }) => rows.map(({ label }) => estimateTextWidthMm(label, 'label')));
  const freezeWords = (freeze?.label ?? '').split(' ').map((word) => estimateTextWidthMm(word, 'strong'));
  return Math.min(Math.max(18, ...names, ...freezeWords) + namesGapMm, widthMm * 0.32);
}

/** The two halves of a window, parted where the month nearest its middle begins. */
function halves({ from, to }: DayWindow): readonly DayWindow[] {
  if (to - from + 1 <= daysInYear / 2 + 2) return [{ from, to }];
  const middle = monthStart(Math.round((from + to + 1) / 2) + 15);
  return [
    { from, to: middle - 1 },
    { from: middle, to },
  ];
}

/** Groups and rows that have something to show in a window. */
function groupsIn(groups: readonly PlantingGroup[], window: DayWindow): readonly PlantingGroup[] {
  return groups
    .map((group) => ({
      ...group,
      rows: group.rows.filter(({ bars }) => inLanes(bars, window).bars.length > 0),
    }))
    .filter(({ rows }) => rows.length > 0);
}

/** Keeps half a heavy line inside the scene. */
const edgeMm = 0.4;
const namesGapMm = 3;
const rowMm = 6.5;
const groupPadMm = 1.2;
const laneGapMm = 0.4;
const swatch = { width: 11, height: 4 } as const;
const swatchGapMm = 1.8;
const keyGapMm = 6;
const keyPitchMm = 6.2;
