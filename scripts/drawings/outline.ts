/** Outlines of points on the page: the convex one, its turns and its bounds. */
import type { Point } from './path.ts';

export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The corners of the smallest convex outline round all points, in order. */
export function hullOf(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (list: readonly Point[]): Point[] => {
    const hull: Point[] = [];
    for (const point of list) {
      while (hull.length > 1 && turn(hull.at(-2)!, hull.at(-1)!, point) <= 1e-9) hull.pop();
      hull.push(point);
    }
    return hull.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}

/** Greater than 0 when the way from `a` over `b` to `c` turns one way, less when it turns the other. */
export function turn(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

export function boundsOf(points: readonly Point[]): Bounds {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}
