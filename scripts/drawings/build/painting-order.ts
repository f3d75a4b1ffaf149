/**
 * The order in which to paint bodies, what is behind first. Of two bodies that overlap on the page the one is in front that is
 * nearer to the viewer in the middle of what they share: of convex bodies that do not run into each other this holds for all
 * of it. Sheets and cords are bodies without thickness. Three or more that overlap in a ring have no order, and bodies that run
 * into each other may have none either; then what is wrong is kept as small on the page as it can be.
 */
import type { Solid } from '../../structures/assembly.ts';
import type { Spot } from '../../structures/geometry.ts';
import { project, type Camera } from '../axonometric.ts';
import { along, distance, subtract, unit, type Point } from '../path.ts';
import { areaOf, middleOf, overlapOf } from './clearances.ts';
import { boundsOf, hullOf } from '../outline.ts';
import { add, axisOf, dot, facesOf, mean, mix, times, type Face } from './solids.ts';
import { axesOf, type Axes } from './view.ts';

export function paintingOrder<T extends { readonly solid: Solid }>(
  bodies: readonly T[],
  camera: Camera,
): readonly T[] {
  const axes = axesOf(camera);
  const seen = bodies.map((body) => asPainted(body, camera, axes)).sort((a, b) => a.meanDepth - b.meanDepth);
  const behind = seen.map(() => new Map<number, number>());
  seen.forEach((one, i) => {
    seen.slice(i + 1).forEach((other, offset) => {
      const { nearer, weight } = compare(one, other, camera, axes);
      if (nearer > 0) behind[i]!.set(i + 1 + offset, weight);
      if (nearer < 0) behind[i + 1 + offset]!.set(i, weight);
    });
  });
  return inOrder(behind).map((index) => seen[index]!.body);
}

interface Painted<T> {
  readonly body: T;
  readonly faces: readonly Face[];
  readonly outline: readonly Point[];
  readonly box: ReturnType<typeof boundsOf>;
  readonly axis: readonly [Spot, Spot];
  readonly meanDepth: number;
}

function asPainted<T extends { readonly solid: Solid }>(body: T, camera: Camera, axes: Axes): Painted<T> {
  const { solid } = body;
  const outline = outlineWithBody(hullOf(solid.faces.flat().map((spot) => project(camera, spot))));
  return {
    body,
    faces: facesOf(solid),
    outline,
    box: boundsOf(outline),
    axis: axisOf(solid),
    meanDepth: dot(mean(solid.faces.flat()), axes.toward),
  };
}

/** How far a line on the page is widened, so that there is something to overlap, and what overlap counts. */
const halfLineMm = 0.2;
const leastSharedMm2 = 0.01;

/** The outline of something seen edge-on, or of a cord, given a little breadth. */
function outlineWithBody(outline: readonly Point[]): readonly Point[] {
  if (outline.length > 2 && areaOf(outline) > leastSharedMm2) return outline;
  const from = outline[0] ?? { x: 0, y: 0 };
  const to = outline.reduce(
    (far, point) => (distance(from, point) > distance(from, far) ? point : far),
    from,
  );
  const ahead = unit(subtract(to, from));
  const side = { x: -ahead.y, y: ahead.x };
  return [
    along(from, side, -halfLineMm),
    along(to, side, -halfLineMm),
    along(to, side, halfLineMm),
    along(from, side, halfLineMm),
  ];
}

interface Comparison {
  /** Greater than 0 when `one` is nearer to the viewer than `other`, 0 when they do not meet. */
  readonly nearer: number;
  /** How much of the page would be wrong in the other order; of bodies that run into each other little can be told. */
  readonly weight: number;
}

const apart: Comparison = { nearer: 0, weight: 0 };

function compare(one: Painted<unknown>, other: Painted<unknown>, camera: Camera, axes: Axes): Comparison {
  if (
    one.box.right <= other.box.left ||
    other.box.right <= one.box.left ||
    one.box.bottom <= other.box.top ||
    other.box.bottom <= one.box.top
  )
    return apart;
  const shared = overlapOf(one.outline, other.outline);
  const area = shared.length < 3 ? 0 : areaOf(shared);
  if (area < leastSharedMm2) return apart;
  const middle = middleOf(shared);
  const [a, b] = [one, other].map((body) => reachAt(body, middle, camera, axes)) as [Reach, Reach];
  const mixed = Math.min(a.near, b.near) - Math.max(a.far, b.far) > 1;
  return { nearer: a.near + a.far - b.near - b.far, weight: mixed ? area * 0.05 : area };
}

/** From where to where a body reaches toward the viewer along one line of sight. */
interface Reach {
  readonly far: number;
  readonly near: number;
}

function reachAt({ faces, axis }: Painted<unknown>, point: Point, camera: Camera, axes: Axes): Reach {
  const base = add(
    times(axes.right, (point.x - camera.origin.x) / camera.scale),
    times(axes.up, (camera.origin.y - point.y) / camera.scale),
  );
  let [far, near] = [-Infinity, Infinity];
  for (const { corners, normal } of faces) {
    const facing = dot(normal, axes.toward);
    if (Math.abs(facing) < 1e-9) continue;
    const reach = (dot(normal, corners[0]!) - dot(normal, base)) / facing;
    if (faces.length === 1) return { far: reach, near: reach };
    if (facing > 0) near = Math.min(near, reach);
    else far = Math.max(far, reach);
  }
  if (Number.isFinite(far) && Number.isFinite(near) && near > far - 1) return { far, near };
  const onAxis = dot(nearestOnAxis(axis, point, camera), axes.toward);
  return { far: onAxis, near: onAxis };
}

function nearestOnAxis([from, to]: readonly [Spot, Spot], point: Point, camera: Camera): Spot {
  const [a, b] = [project(camera, from), project(camera, to)];
  const edge = subtract(b, a);
  const square = edge.x ** 2 + edge.y ** 2;
  const share = square === 0 ? 0.5 : ((point.x - a.x) * edge.x + (point.y - a.y) * edge.y) / square;
  return mix(from, to, Math.min(1, Math.max(0, share)));
}

/**
 * Every index once, those behind it before it; the furthest first where there is a choice. Where all that are left are in
 * front of each other, the one comes next that this wrongs least.
 */
function inOrder(behind: readonly Map<number, number>[]): readonly number[] {
  const left = new Set(behind.keys());
  const order: number[] = [];
  while (left.size > 0) {
    const next = [...left].find((index) => behind[index]!.size === 0) ?? leastWronged(left, behind);
    left.delete(next);
    order.push(next);
    for (const index of left) behind[index]!.delete(next);
  }
  return order;
}

function leastWronged(left: ReadonlySet<number>, behind: readonly Map<number, number>[]): number {
  const wrong = (index: number): number =>
    [...behind[index]!.values()].reduce((sum, weight) => sum + weight, 0);
  return [...left].reduce((best, index) => (wrong(index) < wrong(best) ? index : best));
}
