/** What all steps of a build share: one view, the north arrow where it touches nothing in any step, a boot for scale. */
import type { Assembly } from '../../structures/assembly.ts';
import type { Spot } from '../../structures/geometry.ts';
import { cameraFor, project, type Camera } from '../axonometric.ts';
import type { Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import { boot, northArrow } from '../symbols.ts';
import { grown, outlineMeetsBox } from './clearances.ts';
import { boundsOf, hullOf } from '../outline.ts';
import { extentOf } from './flat-drawing.ts';
import { raised } from './step-moves.ts';
import { directionOf, northOnPage } from './view.ts';

export const stepWidthMm = 74;
export const stepHeightMm = 54;

/** What all steps of an assembly share. */
export interface Setting {
  readonly camera: Camera;
  readonly north: readonly SceneItem[];
  /** Everything that any step shows, on the page. */
  readonly shapes: readonly (readonly Point[])[];
  readonly spots: readonly Spot[];
}

/** Room for the thing with all that is lifted above it; letters stand in the margin. */
const frames = {
  broad: { x: 8, y: 8, width: 58, height: 39 },
  tall: { x: 11, y: 3, width: 52, height: 46 },
} as const;

interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function settingOf(assembly: Assembly, north: string): Setting {
  const solids = assembly.members.flatMap(({ solid, liftMm }) =>
    liftMm === undefined ? [solid] : [solid, raised(solid, liftMm)],
  );
  const spots = solids.flatMap(({ faces }) => faces.flat());
  const size = (of: (spot: Spot) => number): number =>
    Math.max(...spots.map(of)) - Math.min(...spots.map(of));
  const tall =
    size(({ z }) => z) >
    1.1 *
      Math.max(
        size(({ x }) => x),
        size(({ y }) => y),
      );
  const direction = directionOf('step', assembly.hemisphere, tall);
  const setting = (room: Frame): Setting => {
    const camera = cameraFor(spots, direction, room);
    const shapes = solids.map(({ faces }) => hullOf(faces.flat().map((spot) => project(camera, spot))));
    return { camera, north: [], shapes, spots };
  };
  const frame = tall ? frames.tall : frames.broad;
  const wide = setting(frame);
  const corner = northCorner(wide, assembly, north);
  if (corner) return { ...wide, north: corner };
  const squeezed = setting({ ...frame, width: frame.width - 10 });
  return { ...squeezed, north: northAt({ x: stepWidthMm - 8, y: 9 }, squeezed.camera, assembly, north) };
}

function northAt(at: Point, camera: Camera, { hemisphere }: Assembly, letter: string): readonly SceneItem[] {
  return northArrow(at, northOnPage(camera, hemisphere), letter, 7);
}

/** The first corner of the page in which the arrow touches nothing in any step. */
function northCorner(
  { camera, shapes }: Setting,
  assembly: Assembly,
  letter: string,
): readonly SceneItem[] | undefined {
  const corners = [
    { x: stepWidthMm - 8, y: 9 },
    { x: 8, y: 9 },
    { x: 8, y: stepHeightMm - 8 },
    { x: stepWidthMm - 8, y: stepHeightMm - 8 },
  ];
  return corners
    .map((corner) => northAt(corner, camera, assembly, letter))
    .find((items) => shapes.every((shape) => !outlineMeetsBox(shape, grown(extentOf(items), 1))));
}

/** A boot for scale, on the ground beside the thing where it hides nothing. */
export function bootOnGround(
  { camera, spots, north, shapes }: Setting,
  drawn: Setting['shapes'],
): readonly SceneItem[] {
  const xs = spots.map(({ x }) => x);
  const ys = spots.map(({ y }) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [near, far] = [Math.min(...ys), Math.max(...ys)];
  const places = [
    { x: right + 220, y: near - 150 },
    { x: left + (right - left) * 0.2, y: near - 420 },
    { x: left - 420, y: near },
    { x: right + 200, y: (near + far) / 2 },
    { x: left - 420, y: (near + far) / 2 },
  ];
  const arrowBox = grown(extentOf(north), 1);
  const page = { left: 1, right: stepWidthMm - 1, top: 1, bottom: stepHeightMm - 1 };
  return (
    places
      .map(({ x, y }) => boot(project(camera, { x, y, z: 0 }), camera.scale))
      .find((items) => {
        const { left: a, right: b, top, bottom } = extentOf(items);
        const corners = [
          { x: a, y: top },
          { x: b, y: bottom },
        ];
        return (
          a > page.left &&
          b < page.right &&
          top > page.top &&
          bottom < page.bottom &&
          !outlineMeetsBox(corners, arrowBox) &&
          [...shapes, ...drawn].every((shape) => !outlineMeetsBox(shape, grown(boundsOf(corners), 0.8)))
        );
      }) ?? []
  );
}
