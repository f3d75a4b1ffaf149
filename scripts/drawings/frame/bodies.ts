/** Each thing that a cold frame is built of, as a body that knows how to draw itself. */
import type {
  FrameGeometry,
  PlacedBale,
  PlacedSash,
  PlacedStake,
  Spot,
  Wedge,
} from '../../structures/geometry.ts';
import {
  drawSolid,
  facePath,
  prism,
  project,
  visibleFaces,
  type Solid,
  type SolidLook,
} from '../axonometric.ts';
import { dotsInside } from '../hatch.ts';
import { along, circle, path, polygon, polyline, segment, subtract, unit, type Point } from '../path.ts';
import type { PathCommand, SceneItem } from '../scene.ts';
import { shoot } from './shoot.ts';
import { strawStrokes } from './straw.ts';
import type { View } from './view.ts';
import type { SownRow } from './words.ts';

/** What the step at hand adds is heavy and tinted; what stands already is light. */
export type Weight = 'added' | 'standing';

export interface Body {
  readonly solid: Solid;
  readonly items: readonly SceneItem[];
}

/** How thick a stake is drawn. */
const stakeMm = 45;

export function baleBody(bale: PlacedBale, view: View, weight: Weight): Body {
  const solid = view.box(bale.box);
  const items = [
    ...drawSolid(solid, view.camera, looks[weight]),
    ...(weight === 'added' ? [...strings(bale, view), ...strawOn(solid, view, 8)] : []),
  ];
  return { solid, items };
}

const looks: Readonly<Record<Weight, SolidLook>> = {
  added: { fill: { top: 'paper', front: 'tint', end: 'shade' }, edge: 'seen', outline: 'cut' },
  standing: { fill: {}, edge: 'thin', outline: 'thin' },
};

/**
 * The two strings of a bale run along its length and round its ends, on the widest faces: over the top when it lies
 * flat, along its sides when it stands on edge.
 */
function strings(bale: PlacedBale, view: View): readonly SceneItem[] {
  const { from, to } = bale.box;
  const runsEast = bale.wall === 'poleward' || bale.wall === 'equator';
  const loops = [0.25, 0.75].map((share): readonly PathCommand[] => {
    if (bale.lay === 'on-edge') {
      const z = from.z + (to.z - from.z) * share;
      const near = runsEast
        ? view.at(view.left(from.x, to.x), from.y, z)
        : view.at(view.right(from.x, to.x), to.y, z);
      const corner = view.at(view.right(from.x, to.x), from.y, z);
      const far = runsEast
        ? view.at(view.right(from.x, to.x), to.y, z)
        : view.at(view.left(from.x, to.x), from.y, z);
      return polyline([near, corner, far]);
    }
    if (runsEast) {
      const y = from.y + (to.y - from.y) * share;
      const right = view.right(from.x, to.x);
      return polyline([
        view.at(view.left(from.x, to.x), y, to.z),
        view.at(right, y, to.z),
        view.at(right, y, from.z),
      ]);
    }
    const x = from.x + (to.x - from.x) * share;
    return polyline([view.at(x, to.y, to.z), view.at(x, from.y, to.z), view.at(x, from.y, from.z)]);
  });
  return [path(loops.flat(), { stroke: 'thin' })];
}

/** Short strokes of straw on every face that is seen, about one to each `areaMm2` of the page. */
function strawOn(solid: Solid, view: View, areaMm2: number): readonly SceneItem[] {
  const strokes = visibleFaces(solid, view.camera).flatMap(({ corners }) => {
    const flat = corners.map((corner) => project(view.camera, corner));
    return strawStrokes(flat, areaMm2);
  });
  return strokes.length === 0 ? [] : [path(strokes, { stroke: 'thin' })];
}

/** Loose straw on a side wall, filling the room under the sashes. */
export function wedgeBody({ fromX, toX, depthMm, riseMm, baseMm }: Wedge, view: View, weight: Weight): Body {
  const base = [
    { x: fromX, y: 0, z: baseMm },
    { x: fromX, y: depthMm, z: baseMm },
    { x: fromX, y: depthMm, z: baseMm + riseMm },
  ].map(view.turned);
  const sweep = view.turned({ x: toX - fromX, y: 0, z: 0 });
  const solid = prism(base, sweep);
  const items = [
    ...drawSolid(solid, view.camera, looks[weight]),
    ...strawOn(solid, view, weight === 'added' ? 2.2 : 5),
  ];
  return { solid, items };
}

/** The planting mix inside, with its rows when it is sown. */
export function soilBody(
  geometry: FrameGeometry,
  view: View,
  weight: Weight,
  rows: { readonly list: readonly SownRow[]; readonly weight: Weight } | undefined,
): Body {
  const top = geometry.soilDepthMm;
  const to = { x: geometry.insideLengthMm, y: geometry.insideDepthMm, z: top };
  const solid = view.box({ from: { x: 0, y: 0, z: 0 }, to });
  const surface = [{ x: 0, y: 0, z: top }, { x: to.x, y: 0, z: top }, to, { x: 0, y: to.y, z: top }].map(
    view.turned,
  );
  const dots = rows
    ? []
    : dotsInside(
        surface.map((spot) => project(view.camera, spot)),
        weight === 'added' ? 2 : 3,
        0.6,
      );
  const fill = weight === 'added' ? 'shade' : 'paper';
  return {
    solid,
    items: [
      facePath(surface, view.camera, { fill, stroke: weight === 'added' ? 'cut' : 'thin' }),
      ...dots.map((dot) => circle(dot, 0.22, { fill: 'ink' })),
      ...(rows ? rows.list.flatMap((row) => sownRow(row, geometry, view, rows.weight)) : []),
    ],
  };
}

/** A row as a shallow furrow with a mark at every plant; marks are thinned where they would run together. */
function sownRow(row: SownRow, geometry: FrameGeometry, view: View, weight: Weight): readonly SceneItem[] {
  const y = geometry.insideDepthMm - row.distanceFromPolewardMm;
  const inset = Math.min(150, geometry.insideLengthMm / 10);
  const [from, to] = [inset, geometry.insideLengthMm - inset];
  const z = geometry.soilDepthMm;
  const line = path(segment(view.at(from, y, z), view.at(to, y, z)), {
    stroke: weight === 'added' ? 'seen' : 'thin',
  });
  if (weight === 'standing') return [line];
  const closestMm = (row.tall ? 3.2 : 1.5) / view.camera.scale;
  const spacing = Math.max(row.plantSpacingMm, (to - from) / Math.floor((to - from) / closestMm));
  const number = Math.floor((to - from) / spacing + 1e-9) + 1;
  const feet = Array.from({ length: number }, (_, index) => view.at(from + index * spacing, y, z));
  return [
    line,
    ...feet.flatMap((foot) => (row.tall ? shoot(foot, 2.8) : [circle(foot, 0.5, { fill: 'ink' })])),
  ];
}

/** The top of a stake, level with the straw or standing out of it by `outMm`. */
export function stakeBody({ x, y, topMm }: PlacedStake, view: View, weight: Weight, outMm = 0): Body {
  const half = stakeMm / 2;
  const from = { x: x - half, y: y - half, z: topMm };
  const solid = view.box({ from, to: { x: x + half, y: y + half, z: topMm + Math.max(outMm, 4) } });
  if (outMm > 0)
    return {
      solid,
      items: drawSolid(solid, view.camera, { fill: { end: 'shade' }, edge: 'thin', outline: 'seen' }),
    };
  const face = [
    from,
    { ...from, x: x + half },
    { x: x + half, y: y + half, z: topMm },
    { ...from, y: y + half },
  ].map(view.turned);
  return {
    solid,
    items: [
      facePath(
        face,
        view.camera,
        weight === 'added' ? { fill: 'ink', stroke: 'seen' } : { stroke: 'thin', fill: 'paper' },
      ),
    ],
  };
}

/** Where a sash is held: on the frame, lifted above it, or with its low end propped up. */
export interface SashPose {
  readonly liftMm?: number;
  readonly propMm?: number;
}

/** Corners of the underside of a sash, then the same for its upper side. */
export function sashCorners(
  sash: PlacedSash,
  { liftMm = 0, propMm = 0 }: SashPose,
): { under: Spot[]; over: Spot[] } {
  const upper = { y: sash.upper.y, z: sash.upper.z + liftMm };
  const rise = sash.upper.z - sash.lower.z - propMm;
  const run = Math.sqrt(sash.lengthMm ** 2 - rise ** 2);
  const lower = { y: sash.upper.y - run, z: upper.z - rise };
  const up = { y: -rise / sash.lengthMm, z: run / sash.lengthMm };
  const [west, east] = [sash.x, sash.x + sash.widthMm];
  const under = [
    { x: west, ...lower },
    { x: east, ...lower },
    { x: east, ...upper },
    { x: west, ...upper },
  ];
  const over = under.map(({ x, y, z }) => ({
    x,
    y: y + up.y * sash.thicknessMm,
    z: z + up.z * sash.thicknessMm,
  }));
  return { under, over };
}

export function sashBody(sash: PlacedSash, view: View, weight: Weight, pose: SashPose = {}): Body {
  const { under, over } = sashCorners(sash, pose);
  const sweep = view.turned({
    x: over[0]!.x - under[0]!.x,
    y: over[0]!.y - under[0]!.y,
    z: over[0]!.z - under[0]!.z,
  });
  const solid = prism(under.map(view.turned), sweep);
  const added = weight === 'added';
  const look: SolidLook = added
    ? { fill: { top: 'tint', front: 'paper', end: 'shade' }, edge: 'seen', outline: 'cut' }
    : { fill: {}, edge: 'thin', outline: 'seen' };
  return { solid, items: [...drawSolid(solid, view.camera, look), ...panes(sash, over, view, added)] };
}

/** Two panes with a bar between them, and the glint that says glass. */
function panes(sash: PlacedSash, over: readonly Spot[], view: View, added: boolean): readonly SceneItem[] {
  const rail = railMm(sash);
  const [across, down] = [rail / sash.widthMm, rail / sash.lengthMm];
  const spot = (share: number, up: number): Point => {
    const bottom = mix(over[0]!, over[1]!, share);
    const top = mix(over[3]!, over[2]!, share);
    const { x, y, z } = mix(bottom, top, up);
    return view.at(x, y, z);
  };
  const halves: readonly (readonly [number, number])[] = [
    [down, 0.5 - down / 4],
    [0.5 + down / 4, 1 - down],
  ];
  return halves.flatMap(([low, high]) => {
    const pane = [spot(across, low), spot(1 - across, low), spot(1 - across, high), spot(across, high)];
    return [
      path(polygon(pane), { fill: 'paper', stroke: added ? 'seen' : 'thin' }),
      ...(added ? [glint(pane)] : []),
    ];
  });
}

/** How wide the wood round the glass is, so that the glass has its share of the area. */
export function railMm({ widthMm, lengthMm, glassShare }: PlacedSash): number {
  const half = (widthMm + lengthMm) / 4;
  return half - Math.sqrt(half ** 2 - (widthMm * lengthMm * (1 - glassShare)) / 4);
}

/** Two short strokes across the upper corner of a pane. */
function glint(pane: readonly Point[]): SceneItem {
  const [bottomLeft, , topRight, topLeft] = pane as [Point, Point, Point, Point];
  const right = subtract(topRight, topLeft);
  const down = subtract(bottomLeft, topLeft);
  const inside = (across: number, below: number): Point => ({
    x: topLeft.x + right.x * across + down.x * below,
    y: topLeft.y + right.y * across + down.y * below,
  });
  return path(
    [...segment(inside(0.18, 0.72), inside(0.42, 0.2)), ...segment(inside(0.32, 0.72), inside(0.5, 0.32))],
    { stroke: 'thin' },
  );
}

/** A prop stick from the equator wall to the underside of a propped sash. */
export function propItems(
  sash: PlacedSash,
  geometry: FrameGeometry,
  view: View,
  propMm: number,
): readonly SceneItem[] {
  const x = sash.x + sash.widthMm / 2;
  const { under } = sashCorners(sash, { propMm });
  const foot = view.at(x, under[0]!.y + 10, geometry.equatorHeightMm);
  const head = view.at(x, under[0]!.y + 10, under[0]!.z + 5);
  const half = 0.6;
  const side = unit({ x: 1, y: 0 });
  const outline = [
    along(foot, side, -half),
    along(foot, side, half),
    along(head, side, half),
    along(head, side, -half),
  ];
  return [path(polygon(outline), { fill: 'shade', stroke: 'seen' })];
}

function mix(a: Spot, b: Spot, share: number): Spot {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share, z: a.z + (b.z - a.z) * share };
}
