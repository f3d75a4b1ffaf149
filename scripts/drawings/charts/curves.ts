/** Curves over the days of a year: the parts of them that a chart shows, joined over the turn of the year or not. */
import type { DayNumber } from '../../findings/finding.ts';
import type { Point } from '../path.ts';
import { daysInYear, modulo, type DayScale, type DayWindow } from './day-scale.ts';
import type { Line } from './shapes.ts';
import type { Box } from './text-width.ts';

export interface CurvePoint {
  readonly day: DayNumber;
  readonly value: number;
}

export interface CurveKind {
  /** A curve of the `year` comes again every year, its last point joined to its first; that of a `season` is not. */
  readonly of: 'year' | 'season';
  /** Points further apart than this many days are not joined: nothing is known between them. */
  readonly joinDays: number;
}

/**
 * The pieces of a curve inside a window, each in order of days and cut at the window's edges, where values are
 * interpolated. A point that nothing joins to another gives no piece. Throws a `RangeError` for a season that is
 * longer than a year.
 */
export function curvePieces(
  points: readonly CurvePoint[],
  window: DayWindow,
  { of, joinDays }: CurveKind,
): readonly (readonly CurvePoint[])[] {
  const runs = of === 'year' ? [threeYears(points, window)] : sameSeason(points, window);
  return runs
    .flatMap((run) => splitAtGaps(run, joinDays))
    .map((piece) => cut(piece, window.from, window.to + 1))
    .filter((piece) => piece.length > 1);
}

/** Where a day stands on the scale, a whole number of years away; `undefined` when the scale does not show it. */
export function placeOfDay(scale: DayScale, day: DayNumber): number | undefined {
  const shifted = scale.from + modulo(day - scale.from, daysInYear);
  return shifted < scale.to + 1 ? scale.x(shifted) : undefined;
}

/** Boxes that a line runs through, each about a millimetre broad, grown by `reachMm`. */
export function boxesAlong(line: Line, reachMm: number): readonly Box[] {
  const boxes: Box[] = [];
  let part: Point[] = [];
  line.forEach((point, index) => {
    part.push(point);
    if (index < line.length - 1 && Math.abs(point.x - part[0]!.x) < 1) return;
    if (part.length > 1) boxes.push(boxOver(part, reachMm));
    part = [point];
  });
  return boxes;
}

/** The least box that holds the points, grown by `reachMm` on every side. */
export function boxOver(points: readonly Point[], reachMm: number): Box {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return {
    left: Math.min(...xs) - reachMm,
    right: Math.max(...xs) + reachMm,
    top: Math.min(...ys) - reachMm,
    bottom: Math.max(...ys) + reachMm,
  };
}

const inOrder = (points: readonly CurvePoint[]): readonly CurvePoint[] =>
  [...points].sort((a, b) => a.day - b.day);

const later = (points: readonly CurvePoint[], years: number): readonly CurvePoint[] =>
  points.map(({ day, value }) => ({ day: day + years * daysInYear, value }));

/** The year of the window with the one before and the one after. */
function threeYears(points: readonly CurvePoint[], { from }: DayWindow): readonly CurvePoint[] {
  const year = inOrder(
    points.map(({ day, value }) => ({ day: from + modulo(day - from, daysInYear), value })),
  );
  return [-1, 0, 1].flatMap((years) => later(year, years));
}

/** The season as often as the window may meet it. */
function sameSeason(
  points: readonly CurvePoint[],
  { from, to }: DayWindow,
): readonly (readonly CurvePoint[])[] {
  const season = inOrder(points);
  if (season.length === 0) return [];
  const [first, last] = [season[0]!.day, season.at(-1)!.day];
  if (last - first > daysInYear) throw new RangeError(`a season of more than a year: ${first} to ${last}`);
  const runs: (readonly CurvePoint[])[] = [];
  for (let years = Math.ceil((from - last) / daysInYear); first + years * daysInYear < to + 1; years += 1)
    runs.push(later(season, years));
  return runs;
}

function splitAtGaps(run: readonly CurvePoint[], joinDays: number): readonly (readonly CurvePoint[])[] {
  const pieces: CurvePoint[][] = [];
  run.forEach((point, index) => {
    const before = run[index - 1];
    if (before && point.day - before.day <= joinDays) pieces.at(-1)!.push(point);
    else pieces.push([point]);
  });
  return pieces;
}

function cut(piece: readonly CurvePoint[], from: DayNumber, end: DayNumber): readonly CurvePoint[] {
  const inside = piece.filter(({ day }) => from < day && day < end);
  return [...pointAt(piece, from), ...inside, ...pointAt(piece, end)];
}

/** The point of a piece at a day, interpolated; none before and after it. */
function pointAt(piece: readonly CurvePoint[], day: DayNumber): readonly CurvePoint[] {
  const index = piece.findIndex((point) => point.day >= day);
  const after = piece[index];
  if (!after) return [];
  if (after.day === day) return [after];
  const before = piece[index - 1];
  if (!before) return [];
  const share = (day - before.day) / (after.day - before.day);
  return [{ day, value: before.value + (after.value - before.value) * share }];
}
