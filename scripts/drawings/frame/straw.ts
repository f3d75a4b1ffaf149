/** Straw as scattered short strokes: enough to tell straw from wood, sparse enough to stay clean at small size. */
import type { Point } from '../path.ts';
import type { PathCommand } from '../scene.ts';

/**
 * Strokes on a four-cornered face of the page, along its first edge with a little unrest, about one to each
 * `areaMm2`. The same face always gets the same strokes. A face of three corners counts its last corner twice.
 */
export function strawStrokes(
  face: readonly Point[],
  areaMm2: number,
  lengthMm = 1.7,
): readonly PathCommand[] {
  const [a, b, c] = [face[0]!, face[1]!, face[2]!];
  const d = face[3] ?? c;
  const number = Math.floor(areaOf(face) / areaMm2);
  return Array.from({ length: number }, (_, index): readonly PathCommand[] => {
    const [across, up] = [fraction(0.5 + index * 0.7548776662), fraction(0.5 + index * 0.569840291)];
    const [share, height] = [0.08 + across * 0.84, 0.12 + up * 0.76];
    const middle = inside(a, b, c, d, share, height);
    const ahead = inside(a, b, c, d, share + 0.01, height);
    const slope =
      Math.atan2(ahead.y - middle.y, ahead.x - middle.x) + (fraction(index * 0.6180339887) - 0.5) * 0.34;
    const half = (lengthMm / 2) * (0.6 + 0.4 * fraction(index * 0.4142135623));
    const [x, y] = [Math.cos(slope) * half, Math.sin(slope) * half];
    return [
      ['M', middle.x - x, middle.y - y],
      ['L', middle.x + x, middle.y + y],
    ];
  }).flat();
}

function inside(a: Point, b: Point, c: Point, d: Point, share: number, height: number): Point {
  const low = { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
  const high = { x: d.x + (c.x - d.x) * share, y: d.y + (c.y - d.y) * share };
  return { x: low.x + (high.x - low.x) * height, y: low.y + (high.y - low.y) * height };
}

function areaOf(face: readonly Point[]): number {
  const twice = face.reduce((sum, corner, index) => {
    const next = face[(index + 1) % face.length]!;
    return sum + corner.x * next.y - next.x * corner.y;
  }, 0);
  return Math.abs(twice) / 2;
}

function fraction(value: number): number {
  return value - Math.floor(value);
}
