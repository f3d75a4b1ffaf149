/** The looks of curves, told apart by weight and dashes, so that a copy in black and white loses nothing. */
import { path, polyline, type Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import { lines, type Line } from './shapes.ts';

/** `dashed` has the weight of `seen`, so that it is told from the thin dashes of a level. */
export type CurveStyle = 'heavy' | 'seen' | 'dashed';

/** A curve in the weight and the dashes of its style; the heavy one is green as well. */
export function curveItems(pieces: readonly Line[], style: CurveStyle): readonly SceneItem[] {
  switch (style) {
    case 'heavy':
      return pieces.map((piece) => path(polyline(piece), { stroke: 'cut', hue: 'green' }));
    case 'seen':
      return lines(pieces, 'seen');
    case 'dashed':
      return lines(
        pieces.flatMap((piece) => dashes(piece, { dashMm: 2.4, gapMm: 1.5 })),
        'seen',
      );
  }
}

/** A line as dashes of its own, for a dashed line that is heavier than a hidden one. */
function dashes(line: Line, { dashMm, gapMm }: { dashMm: number; gapMm: number }): readonly Line[] {
  const result: Point[][] = [];
  let left = dashMm;
  let current: Point[] | undefined = line.length > 0 ? [line[0]!] : undefined;
  line.slice(1).forEach((end, index) => {
    let start = line[index]!;
    let length = Math.hypot(end.x - start.x, end.y - start.y);
    while (length > left) {
      const share = left / length;
      start = { x: start.x + (end.x - start.x) * share, y: start.y + (end.y - start.y) * share };
      length -= left;
      if (current) result.push([...current, start]);
      left = current ? gapMm : dashMm;
      current = current ? undefined : [start];
    }
    left -= length;
    current?.push(end);
  });
  if (current && current.length > 1) result.push(current);
  return result;
}
