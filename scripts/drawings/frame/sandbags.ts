/** Sandbags on both end rails of a sash, which hold it down in the wind. */
import type { PlacedSash, Spot } from '../../structures/geometry.ts';
import { path, polygon, type Point } from '../path.ts';
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
