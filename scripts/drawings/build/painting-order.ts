/**
 * The order in which to paint bodies, what is behind first. Of two bodies that overlap on the page the one is in front that is
 * nearer to the viewer in the middle of what they share: of convex bodies that do not run into each other this holds for all
 * of it. Sheets and cords are bodies without thickness. Three or more that overlap in a ring have no order; then the
 * nearest on the whole comes last.
 */
import type { Solid } from '../../structures/assembly.ts';
import type { Spot } from '../../structures/geometry.ts';
import { project, type Camera } from '../axonometric.ts';
import { along, distance, subtract, unit, type Point } from '../path.ts';
import { areaOf, boundsOf, hullOf, middleOf, overlapOf } from './clearances.ts';
import { add, axisOf, dot, facesOf, mean, mix, times, type Face } from './solids.ts';
import { axesOf, type Axes } from './view.ts';

export function paintingOrder<T extends { readonly solid: Solid }>(
  bodies: readonly T[],
  camera: Camera,
): readonly T[] {
  const axes = axesOf(camera);
  const seen = bodies.map((body) => asPainted(body, camera, axes)).sort((a, b) => a.meanDepth - b.meanDepth);
  const behind = seen.map((): number[] => []);
  seen.forEach((one, i) => {
    seen.slice(i + 1).forEach((other, offset) => {
      const order = nearer(one, other, camera, axes);
      if (order > 0) behind[i]!.push(i + 1 + offset);
      if (order < 0) behind[i + 1 + offset]!.push(i);
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

/** Greater than 0 when `one` is nearer to the viewer than `other`, 0 when they do not meet. */
function nearer(one: Painted<unknown>, other: Painted<unknown>, camera: Camera, axes: Axes): number {
  if (
    one.box.right <= other.box.left ||
    other.box.right <= one.box.left ||
    one.box.bottom <= other.box.top ||
    other.box.bottom <= one.box.top
  )
    return 0;
  const shared = overlapOf(one.outline, other.outline);
  if (shared.length < 3 || areaOf(shared) < leastSharedMm2) return 0;
  const middle = middleOf(shared);
  return depthAt(one, middle, camera, axes) - depthAt(other, middle, camera, axes);
}

/** How near to the viewer the middle of a body is, along the line of sight through a point of the page. */
function depthAt({ faces, axis }: Painted<unknown>, point: Point, camera: Camera, axes: Axes): number {
  const base = add(
    times(axes.right, (point.x - camera.origin.x) / camera.scale),
    times(axes.up, (camera.origin.y - point.y) / camera.scale),
  );
  let [far, near] = [-Infinity, Infinity];
  for (const { corners, normal } of faces) {
    const facing = dot(normal, axes.toward);
    const ahead = dot(normal, corners[0]!) - dot(normal, base);
    if (Math.abs(facing) < 1e-9) continue;
    const reach = ahead / facing;
    if (faces.length === 1) return reach;
    if (facing > 0) near = Math.min(near, reach);
    else far = Math.max(far, reach);
  }
  if (Number.isFinite(far) && Number.isFinite(near) && near > far - 1) return (near + far) / 2;
  return dot(nearestOnAxis(axis, point, camera), axes.toward);
}

function nearestOnAxis([from, to]: readonly [Spot, Spot], point: Point, camera: Camera): Spot {
  const [a, b] = [project(camera, from), project(camera, to)];
  const edge = subtract(b, a);
  const square = edge.x ** 2 + edge.y ** 2;
  const share = square === 0 ? 0.5 : ((point.x - a.x) * edge.x + (point.y - a.y) * edge.y) / square;
  return mix(from, to, Math.min(1, Math.max(0, share)));
}

/** Every index once, those behind it before it. */
function inOrder(behind: readonly (readonly number[])[]): readonly number[] {
  const order: number[] = [];
  const entered = new Set<number>();
  const enter = (index: number): void => {
    if (entered.has(index)) return;
    entered.add(index);
    behind[index]!.forEach(enter);
    order.push(index);
  };
  behind.forEach((_, index) => {
    enter(index);
  });
  return order;
}
