/**
 * Bodies in space seen from one side and above, without perspective: equal lengths stay equal, parallels stay parallel.
 * Space is in millimetres with x to the right, y away from the viewer and z up; the page is in millimetres, y down.
 */
import { boundsOf, hullOf } from './outline.ts';
import { path, polygon, segment, type Look, type Point } from './path.ts';
import type { Fill, SceneItem, Stroke } from './scene.ts';

export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export interface Camera {
  /** How far the viewer has walked round to the right: 0 sees the front alone, 45 front and right end alike. 0 to 90. */
  readonly turnDeg: number;
  /** How far the viewer looks down: 0 is level, 90 straight down. */
  readonly tiltDeg: number;
  /** Millimetres of the page for a millimetre in space. */
  readonly scale: number;
  /** Where the origin of space lands on the page. */
  readonly origin: Point;
}

/** A convex body by its faces, each a flat polygon of corners in order. */
export interface Solid {
  readonly faces: readonly (readonly Spot[])[];
}

export function project({ turnDeg, tiltDeg, scale, origin }: Camera, { x, y, z }: Spot): Point {
  const turn = (turnDeg * Math.PI) / 180;
  const tilt = (tiltDeg * Math.PI) / 180;
  const right = x * Math.cos(turn) + y * Math.sin(turn);
  const away = y * Math.cos(turn) - x * Math.sin(turn);
  return { x: origin.x + scale * right, y: origin.y - scale * (away * Math.sin(tilt) + z * Math.cos(tilt)) };
}

/**
 * A camera that shows all of `spots` inside a frame of the page, as large as fits, resting on the frame's lower edge and
 * centred across it.
 */
export function cameraFor(
  spots: readonly Spot[],
  view: { readonly turnDeg: number; readonly tiltDeg: number },
  frame: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): Camera {
  const flat = spots.map((spot) => project({ ...view, scale: 1, origin: { x: 0, y: 0 } }, spot));
  const { left, right, top, bottom } = boundsOf(flat);
  const scale = Math.min(frame.width / (right - left), frame.height / (bottom - top));
  const spareX = frame.width - scale * (right - left);
  const origin = { x: frame.x + spareX / 2 - scale * left, y: frame.y + frame.height - scale * bottom };
  return { ...view, scale, origin };
}

/** An upright box between two opposite corners. */
export function boxSolid(from: Spot, to: Spot): Solid {
  return prism(
    [
      { x: from.x, z: from.z },
      { x: to.x, z: from.z },
      { x: to.x, z: to.z },
      { x: from.x, z: to.z },
    ].map(({ x, z }) => ({ x, y: from.y, z })),
    { x: 0, y: to.y - from.y, z: 0 },
  );
}

/** The body that a flat convex polygon sweeps when it is moved by `sweep`. */
export function prism(base: readonly Spot[], sweep: Spot): Solid {
  const far = base.map((spot) => add(spot, sweep));
  const sides = base.map((spot, index) => {
    const next = (index + 1) % base.length;
    return [spot, base[next]!, far[next]!, far[index]!];
  });
  return { faces: [base, far, ...sides] };
}

export type FaceSide = 'top' | 'front' | 'end';

export interface VisibleFace {
  readonly corners: readonly Spot[];
  /** `top` faces up, `front` the side that the viewer stands on, `end` the right. */
  readonly side: FaceSide;
}

/** The faces that the viewer sees; the others are hidden by the body itself. */
export function visibleFaces(solid: Solid, camera: Camera): readonly VisibleFace[] {
  const viewer = towardViewer(camera);
  return solid.faces.flatMap((corners): VisibleFace[] => {
    const normal = outward(corners, solid);
    if (dot(normal, viewer) <= 1e-6) return [];
    const side = normal.z > 0.7 ? 'top' : Math.abs(normal.y) >= Math.abs(normal.x) ? 'front' : 'end';
    return [{ corners, side }];
  });
}

/** The outline of a body on the page. */
export function silhouette(solid: Solid, camera: Camera): readonly Point[] {
  return hullOf(solid.faces.flat().map((spot) => project(camera, spot)));
}

export interface SolidLook {
  /** What each face is filled with; a face without a fill is not painted. */
  readonly fill: Readonly<Partial<Record<FaceSide, Fill>>>;
  readonly edge: Stroke;
  readonly outline: Stroke;
}

/** Faces, then the edges between them, then the outline round the whole. */
export function drawSolid(solid: Solid, camera: Camera, look: SolidLook): readonly SceneItem[] {
  const faces = visibleFaces(solid, camera);
  return [
    ...faces.map(({ corners, side }) => facePath(corners, camera, { fill: look.fill[side] ?? 'paper' })),
    ...innerEdges(faces).map(([a, b]) =>
      path(segment(project(camera, a), project(camera, b)), { stroke: look.edge }),
    ),
    path(polygon(silhouette(solid, camera)), { stroke: look.outline }),
  ];
}

export function facePath(corners: readonly Spot[], camera: Camera, look: Look): SceneItem {
  return path(polygon(corners.map((corner) => project(camera, corner))), look);
}

/**
 * Puts bodies in the order in which to paint them: what is behind comes first. Two bodies that do not meet on the page stand
 * in any order; two that meet are told apart by a face of one that has the other wholly on its outer side.
 */
export function backToFront<T extends { readonly solid: Solid }>(
  bodies: readonly T[],
  camera: Camera,
): readonly T[] {
  const outlines = bodies.map(({ solid }) => silhouette(solid, camera));
  const behind = bodies.map((front, i) =>
    bodies.flatMap((back, j) =>
      i !== j && outlinesMeet(outlines[i]!, outlines[j]!) && isBehind(back.solid, front.solid, camera)
        ? [j]
        : [],
    ),
  );
  const painted: number[] = [];
  const entered = new Set<number>();
  const paint = (index: number): void => {
    if (entered.has(index)) return;
    entered.add(index);
    behind[index]!.forEach(paint);
    painted.push(index);
  };
  bodies.forEach((_, index) => {
    paint(index);
  });
  return painted.map((index) => bodies[index]!);
}

/** Whether `back` must be painted before `front`. */
function isBehind(back: Solid, front: Solid, camera: Camera): boolean {
  const viewer = towardViewer(camera);
  const order = (base: Solid, other: Solid): number => {
    for (const corners of base.faces) {
      const normal = outward(corners, base);
      const facing = dot(normal, viewer);
      const outside = other.faces.flat().every((spot) => dot(normal, minus(spot, corners[0]!)) > -0.5);
      if (outside && Math.abs(facing) > 1e-6) return Math.sign(facing);
    }
    return 0;
  };
  return (order(back, front) || -order(front, back)) > 0;
}

/** Whether two convex outlines share more than an edge, by looking for a line between them. */
function outlinesMeet(a: readonly Point[], b: readonly Point[]): boolean {
  return ![a, b].some((outline) =>
    outline.some((corner, index) => {
      const next = outline[(index + 1) % outline.length]!;
      const normal = { x: next.y - corner.y, y: corner.x - next.x };
      const reach = (point: Point): number => point.x * normal.x + point.y * normal.y;
      const [lowA, highA] = [Math.min(...a.map(reach)), Math.max(...a.map(reach))];
      const [lowB, highB] = [Math.min(...b.map(reach)), Math.max(...b.map(reach))];
      const slack = 1e-6 * Math.hypot(normal.x, normal.y);
      return highA <= lowB + slack || highB <= lowA + slack;
    }),
  );
}

/** Edges that two visible faces share. */
function innerEdges(faces: readonly VisibleFace[]): readonly (readonly [Spot, Spot])[] {
  const edges = faces.map(({ corners }) =>
    corners.map((corner, index) => [corner, corners[(index + 1) % corners.length]!] as const),
  );
  return edges.flatMap((own, index) =>
    own.filter(([a, b]) =>
      edges
        .slice(index + 1)
        .some((others) => others.some(([c, d]) => (same(a, c) && same(b, d)) || (same(a, d) && same(b, c)))),
    ),
  );
}

/** From the body to the eye: the opposite of the direction of sight. */
function towardViewer({ turnDeg, tiltDeg }: Camera): Spot {
  const turn = (turnDeg * Math.PI) / 180;
  const tilt = (tiltDeg * Math.PI) / 180;
  return { x: Math.sin(turn) * Math.cos(tilt), y: -Math.cos(turn) * Math.cos(tilt), z: Math.sin(tilt) };
}

/** Normal of a face, of length 1, turned away from the middle of the body. */
function outward(corners: readonly Spot[], solid: Solid): Spot {
  const normal = cross(minus(corners[1]!, corners[0]!), minus(corners[2]!, corners[0]!));
  const length = Math.hypot(normal.x, normal.y, normal.z);
  const away = dot(normal, minus(corners[0]!, middleOf(solid))) < 0 ? -1 : 1;
  const factor = length === 0 ? 0 : away / length;
  return { x: normal.x * factor, y: normal.y * factor, z: normal.z * factor };
}

function middleOf(solid: Solid): Spot {
  const corners = solid.faces.flat();
  const total = corners.reduce(add);
  return { x: total.x / corners.length, y: total.y / corners.length, z: total.z / corners.length };
}

function add(a: Spot, b: Spot): Spot {
  return { x: a.x + b.x, y: a.y + b.y, z: a.z + b.z };
}

function minus(a: Spot, b: Spot): Spot {
  return { x: a.x - b.x, y: a.y - b.y, z: a.z - b.z };
}

function dot(a: Spot, b: Spot): number {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

function cross(a: Spot, b: Spot): Spot {
  return { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
}

function same(a: Spot, b: Spot): boolean {
  return Math.abs(a.x - b.x) < 1e-6 && Math.abs(a.y - b.y) < 1e-6 && Math.abs(a.z - b.z) < 1e-6;
}
