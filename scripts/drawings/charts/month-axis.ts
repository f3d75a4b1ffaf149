/** Month names along a day scale, with a tick where each month begins. */
import { text } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import { monthsIn, type DayScale } from './day-scale.ts';
import { level, lightRules, lines, upright } from './shapes.ts';
import { estimateTextWidthMm } from './text-width.ts';

/** Height of the axis, names and ticks together. */
export const monthAxisMm = 5.6;

export interface MonthAxisOptions {
  readonly scale: DayScale;
  /** Twelve names, January first. */
  readonly monthLabels: readonly string[];
  readonly topMm: number;
  /** On which side of the rule the names stand. */
  readonly names: 'above' | 'below';
}

/** The rule is at the foot of the axis when the names stand above it, at its top otherwise. */
export function monthAxis({ scale, monthLabels, topMm, names }: MonthAxisOptions): readonly SceneItem[] {
  const ruleY = names === 'above' ? topMm + monthAxisMm : topMm;
  const tick = names === 'above' ? -1.4 : 1.4;
  const baseline = names === 'above' ? ruleY - 1.7 : ruleY + 4.1;
  const ticks = monthEdges(scale).map((x) => upright(x, ruleY + tick, ruleY));
  return [
    ...lines([level(ruleY, scale.leftMm, scale.leftMm + scale.widthMm), ...ticks], 'thin'),
    ...namesOf(scale, monthLabels).map(({ x, name }) => text({ x, y: baseline }, name, { anchor: 'middle' })),
  ];
}

/** The light rules of the months behind a stretch of a chart. */
export function monthRules(edges: readonly number[], topMm: number, bottomMm: number): readonly SceneItem[] {
  return lightRules(edges.map((x) => upright(x, topMm, bottomMm)));
}

/** Where months begin inside the scale, and its two ends. */
export function monthEdges(scale: DayScale): readonly number[] {
  return [...monthsIn(scale).map(({ from }) => scale.x(from)), scale.leftMm + scale.widthMm];
}

/** Where months begin inside the scale, without its ends. */
export function innerMonthEdges(scale: DayScale): readonly number[] {
  return monthEdges(scale).slice(1, -1);
}

/**
 * Every month that has room for its name; when whole months have none, every second or third. The names stay inside
 * the scale. A month that the window cuts short keeps its tick and may lose its name.
 */
function namesOf(scale: DayScale, monthLabels: readonly string[]): readonly { x: number; name: string }[] {
  if (monthLabels.length !== 12)
    throw new RangeError(`twelve month names are needed, not ${monthLabels.length}`);
  const right = scale.leftMm + scale.widthMm;
  const cells = monthsIn(scale).map(({ month, from, to }) => {
    const name = monthLabels[month]!;
    const halfMm = estimateTextWidthMm(name, 'label') / 2;
    const cellMm = scale.x(to + 1) - scale.x(from);
    const middle = scale.x(from) + cellMm / 2;
    const x = Math.max(scale.leftMm + halfMm, Math.min(middle, right - halfMm));
    return { x, name, isWhole: to - from + 1 >= 28, over: (2 * halfMm + nameGapMm) / cellMm };
  });
  const widest = Math.max(0, ...cells.filter(({ isWhole }) => isWhole).map(({ over }) => over));
  // A name at the end of the scale is moved in by up to half of what it exceeds its month by.
  const every = Math.max(1, Math.ceil(1.5 * widest - 0.5));
  return cells.filter(({ isWhole, over }, index) => index % every === 0 && (isWhole || over <= 1));
}

const nameGapMm = 0.6;
