/** Sandbags on both end rails of a sash, which hold it down in the wind. */
import type { PlacedSash, Spot } from '../../structures/geometry.ts';
import type { PlacedBoard } from '../../structures/frame-boards.ts';
import { path, polygon, unit, type Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import { sashCorners, type SashPose } from './bodies.ts';
import type { View } from './view.ts';

/** How long a bag lies along a rail, and how high it bulges on paper. */
const bagMm = 320;
const bulgeMm = 1.7;

/** A bag on the middle of each end rail, the far one first; on a sash with hinges on the edge that opens. */
export function sandbagItems(sash: PlacedSash, view: View, pose: SashPose = {}): readonly SceneItem[] {
  return endsWithBags(sash).map((end) => {
    const [west, east] = bagEnds(sash, view, pose, end);
    return path(polygon(cushion(west, east)), { fill: 'shade', stroke: 'seen' });
  });
}

/**
 * Bags side by side across a board, with their ends over its edges: as many as there are, the far ones first.
 */
export function bagsOnBoard(board: PlacedBoard, number: number, view: View): readonly SceneItem[] {
  return bagPlaces(number).map((share) => {
    const [low, high] = [onBoard(board, view, share, -0.3), onBoard(board, view, share, 1.3)];
    const half = (0.42 / number) * Math.hypot(...acrossPage(board, view));
    const side = unit({ x: acrossPage(board, view)[0], y: acrossPage(board, view)[1] });
    const corner = (spot: Point, out: number, up: number): Point => ({
      x: spot.x + side.x * out * half,
      y: spot.y + side.y * out * half - up,
    });
    return path(
      polygon([
        corner(low, -0.8, 0),
        corner(low, -1, bulgeMm * 0.4),
        corner(high, -1, bulgeMm * 0.7),
        corner(high, -0.6, bulgeMm),
        corner(high, 0.6, bulgeMm),
        corner(high, 1, bulgeMm * 0.7),
        corner(low, 1, bulgeMm * 0.4),
        corner(low, 0.8, 0),
      ]),
      { fill: 'shade', stroke: 'seen' },
    );
  });
}

/** The top of a bag near the end of a board that the viewer has at the left, for a letter to point at. */
export function bagOnBoardTop(board: PlacedBoard, number: number, view: View): Point {
  const shares = bagPlaces(number);
  const spots = shares.map((share) => onBoard(board, view, share, 0.5));
  const first = spots.reduce((a, b) => (b.x < a.x ? b : a));
  return { x: first.x, y: first.y - bulgeMm * 0.6 };
}

function bagPlaces(number: number): readonly number[] {
  return Array.from({ length: number }, (_, index) => (index + 0.5) / number);
}

/** A place on the upper side of a board: a share of its length from the west, and of its width from the low edge. */
function onBoard({ under, up }: PlacedBoard, view: View, along: number, across: number): Point {
  const mix = (a: number, b: number, share: number): number => a + (b - a) * share;
  const at = (axis: 'x' | 'y' | 'z'): number =>
    mix(mix(under[0][axis], under[1][axis], along), mix(under[3][axis], under[2][axis], along), across) +
    up[axis];
  return view.at(at('x'), at('y'), at('z'));
}

/** From the west end of a board to its east end, on the page. */
function acrossPage(board: PlacedBoard, view: View): readonly [number, number] {
  const [west, east] = [onBoard(board, view, 0, 0.5), onBoard(board, view, 1, 0.5)];
  return [east.x - west.x, east.y - west.y];
}

type End = 'upper' | 'lower' | 'west' | 'east';

function endsWithBags({ hinge }: PlacedSash): readonly End[] {
  const across = { none: ['upper', 'lower'], top: ['lower'], west: ['east'], east: ['west'] } as const;
  return across[hinge];
}

/** The top of the first bag that is seen well, for a letter to point at. */
export function bagTop(sash: PlacedSash, view: View, pose: SashPose = {}): Point {
  return sandbagTop(sash, view, endsWithBags(sash).at(-1)!, pose);
}

/** The top of the bag on one end rail, for a letter to point at. */
export function sandbagTop(sash: PlacedSash, view: View, end: End, pose: SashPose = {}): Point {
  const [west, east] = bagEnds(sash, view, pose, end);
  return { x: (west.x + east.x) / 2, y: (west.y + east.y) / 2 - bulgeMm / 2 };
}

function bagEnds(sash: PlacedSash, view: View, pose: SashPose, end: End): readonly [Point, Point] {
  const { over } = sashCorners(sash, pose);
  const [lowWest, lowEast, highEast, highWest] = over as [Spot, Spot, Spot, Spot];
  const sideways = end === 'west' || end === 'east';
  const edge = end === 'lower' || end === 'west' ? 0.04 : 0.96;
  const half = Math.min(0.42, bagMm / (sideways ? sash.lengthMm : sash.widthMm) / 2);
  const at = (along: number): Point => (sideways ? placeOn(edge, along) : placeOn(along, edge));
  const placeOn = (share: number, down: number): Point => {
    const mix = (a: number, b: number, part: number): number => a + (b - a) * part;
    const along = (axis: 'x' | 'y' | 'z'): number =>
      mix(mix(lowWest[axis], lowEast[axis], share), mix(highWest[axis], highEast[axis], share), down);
    return view.at(along('x'), along('y'), along('z'));
  };
  return [at(0.5 - half), at(0.5 + half)];
}

/** Flat below, bulging above. */
function cushion(west: Point, east: Point): readonly Point[] {
  const along = (share: number, up: number): Point => ({
    x: west.x + (east.x - west.x) * share,
    y: west.y + (east.y - west.y) * share - up,
  });
  const shares = Array.from({ length: 13 }, (_, index) => index / 12);
  const high = Math.min(bulgeMm, 0.3 * Math.hypot(east.x - west.x, east.y - west.y));
  const bulge = (share: number): number => high * Math.sqrt(Math.sin(Math.PI * share));
  return [
    ...shares.map((share) => along(share, bulge(share))),
    ...shares.toReversed().map((share) => along(share, -0.35 * bulge(share))),
  ];
}
