/** Who touches whom on the page: points, lines, boxes and convex outlines. */
import type { Box } from '../charts/text-width.ts';
import { turn } from '../outline.ts';
import type { Point } from '../path.ts';

export type Segment = readonly [Point, Point];

export function grown({ left, right, top, bottom }: Box, by: number): Box {
  return { left: left - by, right: right + by, top: top - by, bottom: bottom + by };
}

export function areaOf(outline: readonly Point[]): number {
  const twice = outline.reduce((sum, corner, index) => {
    const next = outline[(index + 1) % outline.length]!;
    return sum + corner.x * next.y - next.x * corner.y;
  }, 0);
  return Math.abs(twice) / 2;
}

export function middleOf(points: readonly Point[]): Point {
  const sum = points.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }), { x: 0, y: 0 });
  return { x: sum.x / points.length, y: sum.y / points.length };
}

/** What two convex outlines share; fewer than three corners when nothing. */
export function overlapOf(a: readonly Point[], b: readonly Point[]): readonly Point[] {
  const middle = middleOf(b);
  return b.reduce<readonly Point[]>((kept, corner, index) => {
    const next = b[(index + 1) % b.length]!;
    const inward = Math.sign(turn(corner, next, middle)) || 1;
    const inside = (point: Point): number => inward * turn(corner, next, point);
    return kept.flatMap((point, place) => {
      const following = kept[(place + 1) % kept.length]!;
      const [here, there] = [inside(point), inside(following)];
      const own = here >= 0 ? [point] : [];
      if (here >= 0 === there >= 0) return own;
      const share = here / (here - there);
      return [
        ...own,
        { x: point.x + (following.x - point.x) * share, y: point.y + (following.y - point.y) * share },
      ];
    });
  }, a);
}

// What follows is asked for every free place of a page, so it is written as loops.

export function isInside(outline: readonly Point[], point: Point): boolean {
  let side = 0;
  for (let index = 0; index < outline.length; index += 1) {
    const own = Math.sign(turn(outline[index]!, outline[(index + 1) % outline.length]!, point));
    if (own === 0 || own === -side) return false;
    side = own;
  }
  return side !== 0;
}

export function distanceToSegment([a, b]: Segment, point: Point): number {
  return Math.sqrt(squareTo(a, b, point));
}

function squareTo(a: Point, b: Point, { x, y }: Point): number {
  const [overX, overY] = [b.x - a.x, b.y - a.y];
  const square = overX * overX + overY * overY;
  const share = square === 0 ? 0 : ((x - a.x) * overX + (y - a.y) * overY) / square;
  const nearest = share < 0 ? 0 : share > 1 ? 1 : share;
  const [offX, offY] = [x - a.x - overX * nearest, y - a.y - overY * nearest];
  return offX * offX + offY * offY;
}

/** 0 for a point inside. */
export function distanceToOutline(outline: readonly Point[], point: Point): number {
  return isInside(outline, point) ? 0 : distanceToEdge(outline, point);
}

/** How far a point lies from the line round a figure, inside or outside. */
export function distanceToEdge(outline: readonly Point[], point: Point): number {
  let least = Infinity;
  for (let index = 0; index < outline.length; index += 1)
    least = Math.min(least, squareTo(outline[index]!, outline[(index + 1) % outline.length]!, point));
  return Math.sqrt(least);
}

export function segmentsMeet([a, b]: Segment, [c, d]: Segment): boolean {
  return turn(a, b, c) * turn(a, b, d) <= 0 && turn(c, d, a) * turn(c, d, b) <= 0 && !apart([a, b], [c, d]);
}

function apart([a, b]: Segment, [c, d]: Segment): boolean {
  return (
    Math.max(a.x, b.x) < Math.min(c.x, d.x) ||
    Math.max(c.x, d.x) < Math.min(a.x, b.x) ||
    Math.max(a.y, b.y) < Math.min(c.y, d.y) ||
    Math.max(c.y, d.y) < Math.min(a.y, b.y)
  );
}

export function segmentMeetsBox(segment: Segment, box: Box): boolean {
  return outlineMeetsBox(segment, box);
}

/** Whether a convex outline (or a line, as one of two corners) and a box share a point. */
export function outlineMeetsBox(outline: readonly Point[], box: Box): boolean {
  if (isApart(outline, 1, 0, box) || isApart(outline, 0, 1, box)) return false;
  for (let index = 0; index < outline.length; index += 1) {
    const [corner, next] = [outline[index]!, outline[(index + 1) % outline.length]!];
    if (isApart(outline, next.y - corner.y, corner.x - next.x, box)) return false;
  }
  return true;
}

/** Whether a line square to the given direction runs between them. */
function isApart(
  outline: readonly Point[],
  x: number,
  y: number,
  { left, right, top, bottom }: Box,
): boolean {
  let [low, high] = [Infinity, -Infinity];
  for (const corner of outline) {
    const reach = corner.x * x + corner.y * y;
    if (reach < low) low = reach;
    if (reach > high) high = reach;
  }
  const [across, down] = [Math.min(left * x, right * x), Math.min(top * y, bottom * y)];
  const [farAcross, farDown] = [Math.max(left * x, right * x), Math.max(top * y, bottom * y)];
  return high < across + down || low > farAcross + farDown;
}
