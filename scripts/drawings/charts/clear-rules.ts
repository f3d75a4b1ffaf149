/** Upright and level lines that leave out what stands in their way, so that no rule runs through a word. */
import { level, upright, type Line } from './shapes.ts';
import type { Box } from './text-width.ts';

/** The parts of an upright line that no box covers. */
export function uprightAround(x: number, top: number, foot: number, boxes: readonly Box[]): readonly Line[] {
  const gaps = boxes
    .filter(({ left, right }) => left - clearMm < x && x < right + clearMm)
    .map((box): Gap => [box.top, box.bottom]);
  return openParts(top, foot, gaps).map(([from, to]) => upright(x, from, to));
}

/** The parts of a level line that no box covers. */
export function levelAround(y: number, left: number, right: number, boxes: readonly Box[]): readonly Line[] {
  const gaps = boxes
    .filter(({ top, bottom }) => top < y && y < bottom)
    .map((box): Gap => [box.left - clearMm, box.right + clearMm]);
  return openParts(left, right, gaps).map(([from, to]) => level(y, from, to));
}

type Gap = readonly [from: number, to: number];

function openParts(start: number, end: number, gaps: readonly Gap[]): readonly Gap[] {
  const parts: Gap[] = [];
  let from = start;
  for (const gap of [...gaps].sort((a, b) => a[0] - b[0])) {
    if (gap[0] > from) parts.push([from, Math.min(gap[0], end)]);
    from = Math.max(from, gap[1]);
    if (from >= end) return parts;
  }
  if (from < end) parts.push([from, end]);
  return parts;
}

const clearMm = 0.5;
