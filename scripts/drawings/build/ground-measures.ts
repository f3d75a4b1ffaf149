/** On the bare ground of a first step: how long and how deep the thing will be, so that its place can be marked. */
import type { Assembly, ShownMeasure } from '../../structures/assembly.ts';
import type { Spot } from '../../structures/geometry.ts';
import { project, type Camera } from '../axonometric.ts';
import { overlaps, type Box } from '../charts/text-width.ts';
import { dimension, type LengthWords } from '../dimension.ts';
import { distance, type Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import { grown, isInside, outlineMeetsBox } from './clearances.ts';
import { hullOf } from '../outline.ts';
import { extentOf } from './flat-drawing.ts';
import { wordBoxes } from './measures.ts';

export interface GroundMeasureOptions {
  readonly camera: Camera;
  readonly words: (findingId: string) => LengthWords;
  /** Where the thing will stand, on the ground. */
  readonly footprint: readonly Spot[];
  readonly page: Box;
  /** What is taken already. */
  readonly boxes: readonly Box[];
}

/** The longest measure of the plan each way that has room; none where nothing is measured or nothing fits. */
export function groundMeasures(assembly: Assembly, options: GroundMeasureOptions): readonly SceneItem[] {
  const plan = assembly.measures.filter((measure) => measure.in === 'plan');
  let { boxes } = options;
  return (['x', 'y'] as const).flatMap((axis) => {
    const measure = longestAlong(plan, axis);
    const items = measure ? firstFitting(measure, axis, { ...options, boxes }) : undefined;
    if (!items) return [];
    boxes = [...boxes, ...wordBoxes(items)];
    return items;
  });
}

function longestAlong(measures: readonly ShownMeasure[], axis: 'x' | 'y'): ShownMeasure | undefined {
  const other = axis === 'x' ? 'y' : 'x';
  return measures
    .filter(({ from, to }) => Math.abs(from[other] - to[other]) < 1)
    .reduce<ShownMeasure | undefined>(
      (best, measure) => (best && lengthOf(best) >= lengthOf(measure) ? best : measure),
      undefined,
    );
}

function lengthOf({ from, to }: ShownMeasure): number {
  return Math.hypot(from.x - to.x, from.y - to.y);
}

const shares = [0.5, 0.4, 0.6, 0.3, 0.2, 0.1] as const;
const offsMm = [5, 4, 3, 6.5] as const;

function firstFitting(
  measure: ShownMeasure,
  axis: 'x' | 'y',
  { camera, words, footprint, page, boxes }: GroundMeasureOptions,
): readonly SceneItem[] | undefined {
  const flat = footprint.map((spot) => project(camera, { ...spot, z: 0 }));
  const outline = hullOf(flat);
  const near = Math.min(...footprint.map(({ y }) => y));
  const right = Math.max(...footprint.map(({ x }) => x));
  const at = (x: number, y: number): Point => project(camera, { x, y, z: 0 });
  const edge = ({ x, y }: Spot): Point => {
    const out = axis === 'x' ? at(x, near) : at(right, y);
    return isNear(outline, out) ? out : at(x, y);
  };
  // A millimetre of the page, along the ground away from the thing.
  const paceMm = 1 / distance(at(0, 0), axis === 'x' ? at(0, 1) : at(1, 0));
  for (const off of offsMm) {
    const end = ({ x, y }: Spot): Point =>
      axis === 'x' ? at(x, near - off * paceMm) : at(right + off * paceMm, y);
    for (const share of shares) {
      const items = dimension({
        from: end(measure.from),
        to: end(measure.to),
        corners: [edge(measure.from), edge(measure.to)],
        words: words(measure.finding),
        toward: axis === 'x' ? { x: 0, y: 1 } : { x: 1, y: 1 },
        share,
      });
      const { left, right: far, top, bottom } = extentOf(items);
      const onPage = left > page.left && far < page.right && top > page.top && bottom < page.bottom;
      const free = wordBoxes(items).every(
        (box) =>
          boxes.every((other) => !overlaps(grown(box, 0.5), other)) &&
          !outlineMeetsBox(outline, grown(box, 0.5)),
      );
      if (onPage && free) return items;
    }
  }
  return undefined;
}

function isNear(outline: readonly Point[], point: Point): boolean {
  return isInside(outline, point) || outline.some((corner) => distance(corner, point) < 0.5);
}
