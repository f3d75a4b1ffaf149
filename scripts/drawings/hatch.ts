/**
 * Hatching as lines and dots of the scene, clipped to a polygon. Rows are counted from the origin of the page, so that
 * the hatching of two shapes that touch runs on without a step, and the same shape always gets the same lines.
 */
import type { Point } from './path.ts';
import type { PathCommand } from './scene.ts';

export interface HatchOptions {
  /** Direction of the lines: 0 is level, 45 rises to the right. */
  readonly angleDeg: number;
  /** Distance between lines, greater than 0. */
  readonly spacingMm: number;
  /** Moves all lines across their direction. Default 0. */
  readonly offsetMm?: number;
}

/** Parallel lines inside a polygon of any shape, as one path; empty when no line meets it. */
export function hatchLines(
  outline: readonly Point[],
  { angleDeg, spacingMm, offsetMm = 0 }: HatchOptions,
): readonly PathCommand[] {
  if (!(spacingMm > 0)) throw new RangeError('hatching needs a spacing');
  const radians = (angleDeg * Math.PI) / 180;
  const forward = { x: Math.cos(radians), y: -Math.sin(radians) };
  const across = { x: -forward.y, y: forward.x };
  const reach = outline.map((corner) => corner.x * across.x + corner.y * across.y - offsetMm);
  const first = Math.ceil(Math.min(...reach) / spacingMm);
  const last = Math.floor(Math.max(...reach) / spacingMm);
  const commands: PathCommand[] = [];
  for (let row = first; row <= last; row += 1) {
    const level = row * spacingMm + offsetMm;
    const start = { x: across.x * level, y: across.y * level };
    for (const [from, to] of spansInside(outline, start, forward)) {
      commands.push(['M', start.x + forward.x * from, start.y + forward.y * from]);
      commands.push(['L', start.x + forward.x * to, start.y + forward.y * to]);
    }
  }
  return commands;
}

/** Points of a staggered grid that lie inside a polygon, at least `clearanceMm` from its edge. */
export function dotsInside(
  outline: readonly Point[],
  spacingMm: number,
  clearanceMm = spacingMm / 3,
): readonly Point[] {
  if (!(spacingMm > 0)) throw new RangeError('dots need a spacing');
  const rowMm = spacingMm * 0.75;
  const ys = outline.map((corner) => corner.y);
  const dots: Point[] = [];
  for (let row = Math.ceil(Math.min(...ys) / rowMm); row * rowMm <= Math.max(...ys); row += 1) {
    const y = row * rowMm;
    const shift = row % 2 === 0 ? 0 : spacingMm / 2;
    for (const [from, to] of spansInside(outline, { x: 0, y }, { x: 1, y: 0 })) {
      for (
        let column = Math.ceil((from - shift) / spacingMm);
        column * spacingMm + shift <= to;
        column += 1
      ) {
        const dot = { x: column * spacingMm + shift, y };
        if (clearance(outline, dot) >= clearanceMm) dots.push(dot);
      }
    }
  }
  return dots;
}

/** The parts of a line that lie inside a polygon, as distances from `start`, by the even-odd rule. */
function spansInside(
  outline: readonly Point[],
  start: Point,
  forward: Point,
): readonly (readonly [number, number])[] {
  const across = { x: -forward.y, y: forward.x };
  const side = (corner: Point): number => (corner.x - start.x) * across.x + (corner.y - start.y) * across.y;
  const reach = (corner: Point): number =>
    (corner.x - start.x) * forward.x + (corner.y - start.y) * forward.y;
  const crossings: number[] = [];
  outline.forEach((corner, index) => {
    const next = outline[(index + 1) % outline.length]!;
    const [a, b] = [side(corner), side(next)];
    if (a >= 0 === b >= 0) return;
    crossings.push(reach(corner) + ((reach(next) - reach(corner)) * a) / (a - b));
  });
  crossings.sort((a, b) => a - b);
  const spans: [number, number][] = [];
  for (let index = 0; index + 1 < crossings.length; index += 2)
    spans.push([crossings[index]!, crossings[index + 1]!]);
  return spans;
}

/** Distance from a point to the nearest edge of a polygon. */
function clearance(outline: readonly Point[], dot: Point): number {
  return Math.min(
    ...outline.map((corner, index) => {
      const next = outline[(index + 1) % outline.length]!;
      const edge = { x: next.x - corner.x, y: next.y - corner.y };
      const length = edge.x ** 2 + edge.y ** 2;
      const share = length === 0 ? 0 : ((dot.x - corner.x) * edge.x + (dot.y - corner.y) * edge.y) / length;
      const nearest = Math.min(1, Math.max(0, share));
      return Math.hypot(dot.x - corner.x - edge.x * nearest, dot.y - corner.y - edge.y * nearest);
    }),
  );
}
