/** Boards, hinges, screens, straps and hooks of the sashes in the step drawings. */
import { strapPlaces, type PlacedBoard } from '../../structures/frame-boards.ts';
import type { FrameGeometry, PlacedSash, Spot } from '../../structures/geometry.ts';
import { drawSolid, prism } from '../axonometric.ts';
import { circle, path, polygon, polyline, segment, type Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import { onUpperSide, sashCorners, type Body, type SashPose, type Weight } from './bodies.ts';
import type { View } from './view.ts';

/** How wide a strap is drawn. */
const strapMm = 45;

export function boardBody({ under, up }: PlacedBoard, view: View, weight: Weight): Body {
  const solid = prism(under.map(view.turned), view.turned(up));
  const look =
    weight === 'added'
      ? ({ fill: { top: 'paper', front: 'tint', end: 'shade' }, edge: 'seen', outline: 'cut' } as const)
      : ({ fill: {}, edge: 'thin', outline: 'seen' } as const);
  return { solid, items: drawSolid(solid, view.camera, look) };
}

/** The ridge of packed straw along the top of the tall wall. */
export function ridgeBox({ ridge }: FrameGeometry): { readonly from: Spot; readonly to: Spot } | undefined {
  if (!ridge || ridge.heightMm < 1) return undefined;
  const { fromX, toX, fromY, toY, baseMm, heightMm } = ridge;
  return { from: { x: fromX, y: fromY, z: baseMm }, to: { x: toX, y: toY, z: baseMm + heightMm } };
}

/** The straps that hold a hinge board to its wall, seen on top of it. */
export function boardStraps(board: PlacedBoard, view: View): readonly SceneItem[] {
  return strapPlaces(board).map((place) => {
    const share = place / board.lengthMm;
    const half = strapMm / 2 / board.lengthMm;
    const across = (at: number): readonly [Spot, Spot] => acrossBoard(board, at);
    const [a, b] = across(share - half);
    const [d, c] = across(share + half);
    return path(polygon([a, b, c, d].map(({ x, y, z }) => view.at(x, y, z))), {
      fill: 'shade',
      stroke: 'seen',
    });
  });
}

/** The middle of the first of those straps. */
export function boardStrapSpot(board: PlacedBoard, view: View): Point {
  const [a, b] = acrossBoard(board, strapPlaces(board)[0]! / board.lengthMm);
  return view.at((a.x + b.x) / 2, (a.y + b.y) / 2, (a.z + b.z) / 2);
}

/** The two ends of a line across the upper side of a board, at a share of its length from the west or from its low end. */
function acrossBoard({ under, up, lengthMm }: PlacedBoard, share: number): readonly [Spot, Spot] {
  const [a, b, c, d] = under.map(({ x, y, z }) => ({ x: x + up.x, y: y + up.y, z: z + up.z })) as [
    Spot,
    Spot,
    Spot,
    Spot,
  ];
  const runsEast = Math.abs(b.x - a.x - lengthMm) < 1;
  return runsEast ? [mix(a, b, share), mix(d, c, share)] : [mix(a, d, share), mix(b, c, share)];
}

export function boardMiddle({ under, up }: PlacedBoard, view: View): Point {
  const sum = under.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z }));
  return view.at(sum.x / 4 + up.x, sum.y / 4 + up.y, sum.z / 4 + up.z);
}

/** Two hinges across the edge that they hold, as small plates. */
export function hingeItems(sash: PlacedSash, view: View, pose: SashPose): readonly SceneItem[] {
  return hingeSpots(sash, pose).map((spots) =>
    path(polygon(spots.map(({ x, y, z }) => view.at(x, y, z))), { fill: 'ink', stroke: 'thin' }),
  );
}

export function hingeSpot(sash: PlacedSash, view: View, pose: SashPose): Point | undefined {
  const spots = hingeSpots(sash, pose)[0];
  if (!spots) return undefined;
  const [a, , c] = spots as [Spot, Spot, Spot, Spot];
  return view.at((a.x + c.x) / 2, (a.y + c.y) / 2, (a.z + c.z) / 2);
}

function hingeSpots(sash: PlacedSash, pose: SashPose): readonly (readonly Spot[])[] {
  const { over } = sashCorners(sash, pose);
  const [lowWest, lowEast, highEast, highWest] = over as [Spot, Spot, Spot, Spot];
  const edges = {
    top: { from: highWest, to: highEast, inward: lowWest, lengthMm: sash.widthMm },
    west: { from: lowWest, to: highWest, inward: lowEast, lengthMm: sash.lengthMm },
    east: { from: lowEast, to: highEast, inward: lowWest, lengthMm: sash.lengthMm },
  };
  if (sash.hinge === 'none') return [];
  const { from, to, inward, lengthMm } = edges[sash.hinge];
  const reach = Math.hypot(inward.x - from.x, inward.y - from.y, inward.z - from.z);
  const wide = 50 / reach;
  const half = Math.min(55 / lengthMm, 0.12);
  return [0.2, 0.8].map((at) => {
    const along = (share: number, deep: number): Spot => {
      const spot = mix(from, to, share);
      return {
        x: spot.x + (inward.x - from.x) * deep,
        y: spot.y + (inward.y - from.y) * deep,
        z: spot.z + (inward.z - from.z) * deep,
      };
    };
    return [
      along(at - half, -wide * 0.6),
      along(at + half, -wide * 0.6),
      along(at + half, wide),
      along(at - half, wide),
    ];
  });
}

/** The insect screen that a sash lies on: its frame, and the cloth as a fine grid. */
export function screenItems(sash: PlacedSash, view: View, weight: Weight): readonly SceneItem[] {
  const flat = { ...sash, ...screenPlace(sash), thicknessMm: sash.screenMm };
  const { under, over } = sashCorners(flat, {});
  const sweep = { x: 0, y: over[0]!.y - under[0]!.y, z: over[0]!.z - under[0]!.z };
  const solid = prism(under.map(view.turned), view.turned(sweep));
  const spot = onUpperSide(over, view);
  const [across, up] = [Math.min(0.2, 38 / sash.widthMm), Math.min(0.2, 38 / sash.lengthMm)];
  const cloth = [spot(across, up), spot(1 - across, up), spot(1 - across, 1 - up), spot(across, 1 - up)];
  const lines = (count: number, line: (share: number) => readonly [Point, Point]) =>
    Array.from({ length: count }, (_, index) => segment(...line((index + 1) / (count + 1)))).flat();
  const inside = (share: number, edge: number): number => edge + share * (1 - 2 * edge);
  const mesh = [
    ...lines(7, (share) => [spot(inside(share, across), up), spot(inside(share, across), 1 - up)]),
    ...lines(12, (share) => [spot(across, inside(share, up)), spot(1 - across, inside(share, up))]),
  ];
  return [
    ...drawSolid(solid, view.camera, {
      fill: weight === 'added' ? { top: 'tint', end: 'shade' } : {},
      edge: 'thin',
      outline: 'seen',
    }),
    path(polygon(cloth), { fill: 'paper', stroke: 'thin' }),
    path(mesh, { stroke: 'thin' }),
  ];
}

/** The ends of the screen: straight under those of the sash. */
export function screenPlace(sash: PlacedSash): Pick<PlacedSash, 'upper' | 'lower'> {
  const slope = Math.atan2(sash.upper.z - sash.lower.z, sash.upper.y - sash.lower.y);
  const under = ({ y, z }: PlacedSash['upper']): PlacedSash['upper'] => ({
    y: y + sash.screenMm * Math.sin(slope),
    z: z - sash.screenMm * Math.cos(slope),
  });
  return { upper: under(sash.upper), lower: under(sash.lower) };
}

/** A strap that lies on the ground before the walls are set up, from front to back under a sash to come. */
export function strapOnGround(
  sash: PlacedSash,
  { outsideDepthMm, sideThicknessMm }: FrameGeometry,
  view: View,
): readonly SceneItem[] {
  const [near, far] = [-sideThicknessMm - 260, outsideDepthMm - sideThicknessMm + 260];
  return [
    band(
      [
        { x: middleX(sash), y: near, z: 0 },
        { x: middleX(sash), y: far, z: 0 },
      ],
      view,
    ),
  ];
}

/** Straps under the tall wall for the boards that hinges will be screwed to. */
export function boardStrapsOnGround(
  board: PlacedBoard,
  { insideDepthMm, outsideDepthMm, sideThicknessMm }: FrameGeometry,
  view: View,
): readonly SceneItem[] {
  return strapPlaces(board).map((place) => {
    const [a] = acrossBoard(board, place / board.lengthMm);
    return isAlongTallWall(board)
      ? band(
          [
            { x: a.x, y: insideDepthMm - 200, z: 0 },
            { x: a.x, y: outsideDepthMm - sideThicknessMm + 200, z: 0 },
          ],
          view,
        )
      : band(
          [
            { x: a.x < 0 ? -sideThicknessMm - 200 : a.x - 400, y: a.y, z: 0 },
            { x: a.x < 0 ? 200 : a.x + sideThicknessMm + 200, y: a.y, z: 0 },
          ],
          view,
        );
  });
}

export function isAlongTallWall({ under }: PlacedBoard): boolean {
  return under[0].z === under[3].z;
}

/** Over the middle of a sash, and down the outside of the low wall. */
export function strapOver(sash: PlacedSash, geometry: FrameGeometry, view: View): readonly SceneItem[] {
  const { over } = sashCorners(sash, {});
  const x = middleX(sash);
  const top = (end: 'low' | 'high'): Spot => {
    const spot = end === 'low' ? over[0]! : over[3]!;
    return { x, y: spot.y, z: spot.z };
  };
  const outer = Math.min(-geometry.sideThicknessMm, sash.lower.y);
  const back = geometry.outsideDepthMm - geometry.sideThicknessMm;
  return [
    band(
      [
        { x, y: outer, z: 0 },
        { x, y: outer, z: Math.min(geometry.equatorHeightMm, sash.lower.z) },
        top('low'),
        top('high'),
        { x, y: back, z: geometry.polewardHeightMm },
      ],
      view,
    ),
  ];
}

export function strapSpot(sash: PlacedSash, geometry: FrameGeometry, view: View): Point {
  return view.at(
    middleX(sash),
    Math.min(-geometry.sideThicknessMm, sash.lower.y),
    geometry.equatorHeightMm * 0.6,
  );
}

function band(spots: readonly Spot[], view: View): SceneItem {
  const half = strapMm / 2;
  const side = (shift: number): readonly Point[] => spots.map(({ x, y, z }) => view.at(x + shift, y, z));
  return path(polygon([...side(-half), ...side(half).toReversed()]), { fill: 'shade', stroke: 'seen' });
}

/** Two hooks at the edge that opens: a ring on the sash and a short line down to the eye in the wall. */
export function hookItems(sash: PlacedSash, view: View, pose: SashPose): readonly SceneItem[] {
  return hookSpots(sash, view, pose).flatMap((spot) => [
    path(polyline([spot, { x: spot.x, y: spot.y + 2.6 }, { x: spot.x + 0.9, y: spot.y + 3.2 }]), {
      stroke: 'cut',
    }),
    circle(spot, 0.6, { fill: 'paper', stroke: 'seen' }),
  ]);
}

export function hookSpots(sash: PlacedSash, view: View, pose: SashPose): readonly Point[] {
  const { under } = sashCorners(sash, pose);
  const [lowWest, lowEast, highEast, highWest] = under as [Spot, Spot, Spot, Spot];
  const [from, to] =
    sash.opens === 'west-edge'
      ? [lowWest, highWest]
      : sash.opens === 'east-edge'
        ? [lowEast, highEast]
        : [lowWest, lowEast];
  return [0.2, 0.8].map((share) => {
    const { x, y, z } = mix(from, to, share);
    return view.at(x, y, z);
  });
}

function middleX({ x, widthMm }: PlacedSash): number {
  return x + widthMm / 2;
}

function mix(a: Spot, b: Spot, share: number): Spot {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share, z: a.z + (b.z - a.z) * share };
}
