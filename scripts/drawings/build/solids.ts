/** Convex bodies and flat sheets taken apart: faces, parts on one side of a plane, cuts. */
import type { Solid } from '../../structures/assembly.ts';
import type { Spot } from '../../structures/geometry.ts';

export interface Face {
  readonly corners: readonly Spot[];
  /** Of length 1, out of the body; for a sheet to either side. */
  readonly normal: Spot;
}

export function facesOf({ faces }: Solid): readonly Face[] {
  const middle = mean(faces.flat());
  return faces
    .filter((corners) => corners.length > 2)
    .map((corners) => {
      const normal = normalOf(corners);
      const outward = dot(normal, minus(mean(corners), middle)) < 0 ? times(normal, -1) : normal;
      return { corners, normal: outward };
    });
}

export function isSheet({ faces }: Solid): boolean {
  return faces.length === 1;
}

export interface Plane {
  readonly normal: Spot;
  /** How far along the normal the plane lies from the origin. */
  readonly level: number;
}

/** The part of a body on the side that the normal points away from; undefined when there is none. */
export function partBelow(solid: Solid, plane: Plane): Solid | undefined {
  const over = (spot: Spot): number => dot(plane.normal, spot) - plane.level;
  const corners = solid.faces.flat();
  if (corners.every((spot) => over(spot) <= slackMm)) return solid;
  if (corners.every((spot) => over(spot) >= -slackMm)) return undefined;
  const faces = solid.faces.map((face) => clippedFace(face, over)).filter((face) => face.length > 1);
  const lid = inOrder(cutThrough(solid, plane), plane.normal);
  return { faces: isSheet(solid) || lid.length < 3 ? faces : [...faces, lid] };
}

/** The corners of the flat figure in which a plane cuts a body: none, two for a sheet, three or more in order. */
export function cutOf(solid: Solid, plane: Plane): readonly Spot[] {
  return inOrder(cutThrough(solid, plane), plane.normal);
}

/** How far two corners may lie apart and still be one. */
const slackMm = 0.01;

function clippedFace(corners: readonly Spot[], over: (spot: Spot) => number): readonly Spot[] {
  const kept = corners.flatMap((corner, index): readonly Spot[] => {
    const next = corners[(index + 1) % corners.length]!;
    const [here, there] = [over(corner), over(next)];
    const own = here <= 0 ? [corner] : [];
    return here < 0 === there < 0 || here === 0 || there === 0
      ? own
      : [...own, mix(corner, next, here / (here - there))];
  });
  return distinct(kept);
}

function cutThrough({ faces }: Solid, { normal, level }: Plane): readonly Spot[] {
  const crossings = faces.flatMap((corners) =>
    corners.flatMap((corner, index): readonly Spot[] => {
      const next = corners[(index + 1) % corners.length]!;
      const [here, there] = [dot(normal, corner) - level, dot(normal, next) - level];
      if (here === 0) return [corner];
      return here * there < 0 ? [mix(corner, next, here / (here - there))] : [];
    }),
  );
  return distinct(crossings);
}

function distinct(spots: readonly Spot[]): readonly Spot[] {
  return spots.filter(
    (spot, index) => !spots.slice(0, index).some((other) => length(minus(spot, other)) < slackMm),
  );
}

/** Corners of a convex figure in order round its middle, seen along its normal. */
function inOrder(spots: readonly Spot[], normal: Spot): readonly Spot[] {
  if (spots.length < 3) return spots;
  const middle = mean(spots);
  const first = minus(spots[0]!, middle);
  const second = cross(normal, first);
  const angle = (spot: Spot): number => {
    const arm = minus(spot, middle);
    return Math.atan2(dot(arm, second), dot(arm, first));
  };
  return [...spots].sort((a, b) => angle(a) - angle(b));
}

/** Normal of a flat polygon, whichever of its corners lie in one line; of no length when all do. */
function normalOf(corners: readonly Spot[]): Spot {
  const sum = corners
    .map((corner, index) =>
      cross(minus(corner, corners[0]!), minus(corners[(index + 1) % corners.length]!, corners[0]!)),
    )
    .reduce(add);
  const size = length(sum);
  return size === 0 ? sum : times(sum, 1 / size);
}

/** The two ends of something long and thin. */
export function axisOf(solid: Solid): readonly [Spot, Spot] {
  const corners = solid.faces.flat();
  const furthest = (from: Spot): Spot =>
    corners.reduce((best, spot) =>
      length(minus(spot, from)) > length(minus(best, from)) + slackMm ? spot : best,
    );
  const one = furthest(corners[0]!);
  const other = furthest(one);
  const nearOne = (spot: Spot): boolean => length(minus(spot, one)) < length(minus(spot, other));
  return [mean(corners.filter(nearOne)), mean(corners.filter((spot) => !nearOne(spot)))];
}

export function mean(spots: readonly Spot[]): Spot {
  return times(spots.reduce(add, { x: 0, y: 0, z: 0 }), 1 / Math.max(1, spots.length));
}

export function add(a: Spot, b: Spot): Spot {
  return { x: a.x + b.x, y: a.y + b.y, z: a.z + b.z };
}

export function minus(a: Spot, b: Spot): Spot {
  return { x: a.x - b.x, y: a.y - b.y, z: a.z - b.z };
}

export function times({ x, y, z }: Spot, factor: number): Spot {
  return { x: x * factor, y: y * factor, z: z * factor };
}

export function dot(a: Spot, b: Spot): number {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

export function mix(a: Spot, b: Spot, share: number): Spot {
  return add(a, times(minus(b, a), share));
}

export function length(spot: Spot): number {
  return Math.hypot(spot.x, spot.y, spot.z);
}

function cross(a: Spot, b: Spot): Spot {
  return { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
}
