/**
 * The frame as it is looked at: always from the sun side, so the tall wall stands at the back. South of the equator that
 * is from the north, with west on the right; the x axis is turned round for it.
 */
import type { Box, FrameGeometry, Spot } from '../../structures/geometry.ts';
import { boxSolid, cameraFor, project, type Camera, type Solid } from '../axonometric.ts';
import type { Point } from '../path.ts';

export interface View {
  readonly camera: Camera;
  /** A place in the frame as it lands on the page. */
  readonly at: (x: number, y: number, z: number) => Point;
  /** A place in the frame in the viewer's space. */
  readonly turned: (spot: Spot) => Spot;
  readonly box: (box: Box) => Solid;
  /** North on the page, along the ground. */
  readonly north: Point;
  /** The x of the right and of the left end of a span, as the viewer has it. */
  readonly right: (fromX: number, toX: number) => number;
  readonly left: (fromX: number, toX: number) => number;
}

/** Room above a frame that stays there, in millimetres of the page. */
const keptAboveMm = 4;

/** A long frame leaves much room above it: it is moved up by half of that, so that words below it have room too. */
function lifted(camera: Camera, spots: readonly Spot[], topMm: number): Camera {
  const spareMm = Math.min(...spots.map((spot) => project(camera, spot).y)) - topMm - keptAboveMm;
  if (spareMm <= 0) return camera;
  return { ...camera, origin: { x: camera.origin.x, y: camera.origin.y - spareMm / 2 } };
}

export function viewOf(
  geometry: FrameGeometry,
  frame: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): View {
  const mirrored = geometry.hemisphere === 'south';
  const turned = ({ x, y, z }: Spot): Spot => ({ x: mirrored ? -x : x, y, z });
  const corners = geometry.bales.flatMap(({ box: { from, to } }) => [
    from,
    to,
    { x: from.x, y: to.y, z: to.z },
    { x: to.x, y: from.y, z: from.z },
    { x: from.x, y: to.y, z: from.z },
    { x: from.x, y: from.y, z: from.z },
    { x: to.x, y: to.y, z: from.z },
  ]);
  const camera = lifted(
    cameraFor(corners.map(turned), { turnDeg: 24, tiltDeg: 36 }, frame),
    corners.map(turned),
    frame.y,
  );
  const at = (x: number, y: number, z: number): Point => project(camera, turned({ x, y, z }));
  const step = mirrored ? -1 : 1;
  const [origin, ahead] = [at(0, 0, 0), at(0, step * 1000, 0)];
  return {
    camera,
    at,
    turned,
    box: ({ from, to }) => boxSolid(turned(from), turned(to)),
    north: { x: ahead.x - origin.x, y: ahead.y - origin.y },
    right: (fromX, toX) => (mirrored ? fromX : toX),
    left: (fromX, toX) => (mirrored ? toX : fromX),
  };
}
