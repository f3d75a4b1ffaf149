/** Each thing that a cold frame is built of, as a body that knows how to draw itself. */
import type {
  Box,
  FrameGeometry,
  PlacedBale,
  PlacedSash,
  PlacedStake,
  Spot,
  Wedge,
} from '../../structures/geometry.ts';
import { practice } from '../../structures/practice.ts';
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
import { along, circle, path, polygon, polyline, segment, unit, type Point } from '../path.ts';
import type { PathCommand, SceneItem } from '../scene.ts';
import { paneItems, panesOf } from './panes.ts';
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

/** Packed straw as a box. */
export function strawBody(box: Box, view: View, weight: Weight): Body {
  const solid = view.box(box);
  return {
    solid,
    items: [
      ...drawSolid(solid, view.camera, looks[weight]),
      ...strawOn(solid, view, weight === 'added' ? 2.2 : 5),
    ],
  };
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

/** Where a sash is held: on the frame, lifted above it, or with the edge that opens propped up. */
export interface SashPose {
  readonly liftMm?: number;
  readonly propMm?: number;
}

/**
 * Corners of the underside of a sash, then the same for its upper side. A sash that carries the hinges of another stays shut.
 */
export function sashCorners(
  sash: PlacedSash,
  { liftMm = 0, propMm: wantedMm = 0 }: SashPose,
): { under: Spot[]; over: Spot[] } {
  if (wantedMm > 0 && (sash.opens === 'west-edge' || sash.opens === 'east-edge'))
    return sideCorners(sash, wantedMm);
  const propMm = sash.opens === 'never' ? 0 : Math.min(wantedMm, sash.lengthMm / 2);
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

/** Turned about the edge with the hinges, which is the other one than the edge that opens. */
function sideCorners(sash: PlacedSash, propMm: number): { under: Spot[]; over: Spot[] } {
  const raise = Math.min(propMm / sash.widthMm, 0.5);
  const level = Math.sqrt(1 - raise ** 2);
  const slope = Math.atan2(sash.upper.z - sash.lower.z, sash.upper.y - sash.lower.y);
  const [tilt, up] = [-Math.sin(slope), Math.cos(slope)];
  const hingesWest = sash.opens === 'east-edge';
  const hingeX = hingesWest ? sash.x : sash.x + sash.widthMm;
  const away = hingesWest ? 1 : -1;
  const free = {
    x: hingeX + away * sash.widthMm * level,
    y: tilt * sash.widthMm * raise,
    z: up * sash.widthMm * raise,
  };
  const corner = (edge: 'hinge' | 'free', end: PlacedSash['upper']): Spot =>
    edge === 'hinge' ? { x: hingeX, ...end } : { x: free.x, y: end.y + free.y, z: end.z + free.z };
  const [west, east] = hingesWest ? (['hinge', 'free'] as const) : (['free', 'hinge'] as const);
  const under = [
    corner(west, sash.lower),
    corner(east, sash.lower),
    corner(east, sash.upper),
    corner(west, sash.upper),
  ];
  const thick = {
    x: -away * raise * sash.thicknessMm,
    y: tilt * level * sash.thicknessMm,
    z: up * level * sash.thicknessMm,
  };
  return {
    under,
    over: under.map(({ x, y, z }) => ({ x: x + thick.x, y: y + thick.y, z: z + thick.z })),
  };
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

/** The panes on its upper side. */
function panes(sash: PlacedSash, over: readonly Spot[], view: View, added: boolean): readonly SceneItem[] {
  return paneItems(sash, panesOf(sash, onUpperSide(over, view)), added ? 'added' : 'standing');
}

/** Places a share of the width and of the length of a sash on the page, by the corners of its upper side. */
export function onUpperSide(over: readonly Spot[], view: View): (across: number, up: number) => Point {
  return (across, up) => {
    const bottom = mix(over[0]!, over[1]!, across);
    const top = mix(over[3]!, over[2]!, across);
    const { x, y, z } = mix(bottom, top, up);
    return view.at(x, y, z);
  };
}

/** A prop stands in the low wall: before the middle of the low end, or under the low corner of the edge that opens. */
export function propPlace(
  sash: PlacedSash,
  geometry: FrameGeometry,
  propMm: number,
): { readonly footAt: Spot; readonly headAt: Spot } {
  const { under } = sashCorners(sash, { propMm });
  const inset = Math.min(60, sash.widthMm / 8);
  const [west, east] = [under[0]!, under[1]!];
  const x =
    sash.opens === 'west-edge'
      ? west.x + inset
      : sash.opens === 'east-edge'
        ? east.x - inset
        : sash.x + sash.widthMm / 2;
  const z = sash.opens === 'east-edge' ? east.z : west.z;
  const before = sash.opens === 'low-end';
  const y = before ? west.y : Math.min(west.y + 10, -10);
  return {
    footAt: { x, y, z: geometry.equatorHeightMm },
    headAt: { x, y, z: before ? z + practice.prop.aboveNotchMm : z + 5 },
  };
}

/** How wide and thick a prop is: a 1 by 4. */
const prop = { wideMm: 89, thickMm: 19, inNotchMm: 20 } as const;

/** A prop stick from the equator wall to a propped sash, whose low end is in its notch. */
export function propItems(
  sash: PlacedSash,
  geometry: FrameGeometry,
  view: View,
  propMm: number,
): readonly SceneItem[] {
  if (sash.opens === 'never') return [];
  const { footAt, headAt } = propPlace(sash, geometry, propMm);
  if (sash.opens === 'low-end') {
    const solid = view.box({
      from: { x: footAt.x - prop.thickMm / 2, y: footAt.y + prop.inNotchMm - prop.wideMm, z: footAt.z },
      to: { x: headAt.x + prop.thickMm / 2, y: headAt.y + prop.inNotchMm, z: headAt.z },
    });
    return drawSolid(solid, view.camera, {
      fill: { top: 'paper', front: 'shade', end: 'shade' },
      edge: 'thin',
      outline: 'seen',
    });
  }
  const foot = view.at(footAt.x, footAt.y, footAt.z);
  const head = view.at(headAt.x, headAt.y, headAt.z);
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

/** The cord along a sash that opens at its low end, and from there down to the string of the bale below. */
export function cordItems(
  sash: PlacedSash,
  geometry: FrameGeometry,
  view: View,
  propMm: number,
): readonly SceneItem[] {
  if (sash.opens !== 'low-end') return [];
  const { over } = sashCorners(sash, { propMm });
  const onGlass = onUpperSide(over, view);
  return [
    path(segment(onGlass(cordShare, 0), onGlass(cordShare, 1)), { stroke: 'thin' }),
    path(segment(onGlass(cordShare, 0), cordFoot(sash, geometry, view)), { stroke: 'seen' }),
  ];
}

/** The cord lies beside the prop: at this share of the width of the sash. */
const cordShare = 0.7;

/** Where the cord is tied to the nearer string of the low wall. */
export function cordFoot(sash: PlacedSash, geometry: FrameGeometry, view: View): Point {
  const x = view.left(sash.x, sash.x + sash.widthMm);
  const across = view.right(sash.x, sash.x + sash.widthMm) - x;
  return view.at(x + across * cordShare, -geometry.sideThicknessMm / 4, geometry.equatorHeightMm);
}

function mix(a: Spot, b: Spot, share: number): Spot {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share, z: a.z + (b.z - a.z) * share };
}
