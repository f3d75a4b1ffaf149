/** Finds a free place for the label of each mark in a plot: beside its mark if it can, further off with a leader if not. */
import type { Point } from '../path.ts';
import { estimateTextWidthMm, overlaps, textBox, lineMm, type Box, type TextItem } from './text-width.ts';

export interface LabelledMark extends Point {
  readonly label: string;
  /** The side on which its label stands best. */
  readonly side: Side;
}

type Side = 'left' | 'right';

export interface PlacedLabel {
  readonly item: TextItem;
  /** From the mark to its label; absent where the label stands beside its mark. */
  readonly leader?: readonly [Point, Point];
}

/**
 * A place for every mark, in the order given, inside `bounds`, off the obstacles and off each other; `undefined` for a
 * mark that has none. A mark that finds no place clear of the `avoided` boxes may stand on those.
 */
export function placeLabels(
  marks: readonly LabelledMark[],
  bounds: Box,
  { obstacles, avoided }: { obstacles: readonly Box[]; avoided: readonly Box[] },
): readonly (PlacedLabel | undefined)[] {
  const taken: Box[] = [...obstacles, ...marks.map(({ x, y }) => around({ x, y }, markReachMm))];
  return marks.map((mark) => {
    const places = candidates(mark);
    const place =
      places.find((candidate) => isFree(candidate, bounds, [...taken, ...avoided])) ??
      places.find((candidate) => isFree(candidate, bounds, taken));
    if (place) taken.push(textBox(place.item), ...leaderBoxes(place));
    return place;
  });
}

/**
 * Places in rows above a plot, one mark a row at worst, each with an upright leader. `topMm` is the top of the first
 * row; the row of a mark is its place in the list that is returned.
 */
export function placeInRows(
  marks: readonly LabelledMark[],
  bounds: Pick<Box, 'left' | 'right'>,
  topMm: number,
): readonly PlacedLabel[] {
  return marks.map(({ x, y, label }, row) => {
    const width = estimateTextWidthMm(label, 'label');
    const left = Math.max(bounds.left, Math.min(x - width / 2, bounds.right - width));
    const baseline = topMm + row * lineMm + 0.75 * lineMm;
    const item = labelText({ x: left, y: baseline }, label, 'start');
    const foot = { x: Math.min(Math.max(x, left), left + width), y: textBox(item).bottom };
    return { item, leader: [{ x, y }, foot] as const };
  });
}

/** Beside the mark, over and under its height, on the better side first; then further off. */
function candidates({ x, y, label, side }: LabelledMark): readonly PlacedLabel[] {
  const over = y - 1.2;
  const under = y + 3;
  const near = bothSides(side).flatMap((to) =>
    [over, under].map((baseline): PlacedLabel => ({ item: besideMark(x, baseline, label, to, nearMm) })),
  );
  const far = farMm.flatMap((distance) =>
    bothSides(side).flatMap((to) =>
      [-distance, distance, -distance / 2, distance / 2].map((rise): PlacedLabel => {
        const item = besideMark(x, y + rise + 1.05, label, to, distance);
        const end = { x: item.x + (to === 'left' ? 0.6 : -0.6), y: y + rise };
        return { item, leader: [{ x, y }, end] };
      }),
    ),
  );
  return [...near, ...far];
}

const bothSides = (first: Side): readonly Side[] =>
  first === 'left' ? ['left', 'right'] : ['right', 'left'];

function besideMark(x: number, y: number, label: string, side: Side, distance: number): TextItem {
  return side === 'left'
    ? labelText({ x: x - distance, y }, label, 'end')
    : labelText({ x: x + distance, y }, label, 'start');
}

const labelText = ({ x, y }: Point, label: string, anchor: TextItem['anchor']): TextItem => ({
  kind: 'text',
  x,
  y,
  text: label,
  anchor,
  style: 'label',
});

function isFree(place: PlacedLabel, bounds: Box, taken: readonly Box[]): boolean {
  const box = textBox(place.item);
  const inside =
    box.left >= bounds.left &&
    box.right <= bounds.right &&
    box.top >= bounds.top &&
    box.bottom <= bounds.bottom;
  if (!inside || taken.some((other) => overlaps(box, other))) return false;
  const [start] = place.leader ?? [];
  return leaderBoxes(place).every(
    (part) => start === undefined || !taken.some((other) => !holds(other, start) && overlaps(part, other)),
  );
}

/** A leader as a chain of small boxes, so that slanting ones are judged fairly. */
function leaderBoxes({ leader }: PlacedLabel): readonly Box[] {
  if (!leader) return [];
  const [from, to] = leader;
  const steps = 8;
  return Array.from({ length: steps - 1 }, (_, index) => {
    const share = (index + 1) / steps;
    return around({ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }, 0.2);
  });
}

const around = ({ x, y }: Point, reach: number): Box => ({
  left: x - reach,
  right: x + reach,
  top: y - reach,
  bottom: y + reach,
});

const holds = (box: Box, { x, y }: Point): boolean =>
  box.left <= x && x <= box.right && box.top <= y && y <= box.bottom;

const markReachMm = 1;
const nearMm = 1.9;
const farMm = [5, 9, 14] as const;
