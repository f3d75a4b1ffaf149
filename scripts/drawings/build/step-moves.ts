/** What moves in a step: what is lifted into its place, and what is poured in. */
import type { Solid } from '../../structures/assembly.ts';
import type { Spot } from '../../structures/geometry.ts';
import { project, type Camera } from '../axonometric.ts';
import { arrow, path, polygon, type Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import { isFilling } from './bodies.ts';
import { distanceToOutline } from './clearances.ts';
import { hullOf } from '../outline.ts';
import type { Body, Painted } from './painted.ts';
import { facesOf, mean } from './solids.ts';
import { mapped } from './view.ts';

export function raised(solid: Solid, byMm: number): Solid {
  return mapped(solid, (spot) => ({ ...spot, z: spot.z + byMm }));
}

/** A body as its own step shows it: held above its place where it is lifted in. */
export function lifted(body: Body): Body {
  const { member, solid, weight } = body;
  return weight === 'added' && member.liftMm !== undefined
    ? { ...body, solid: raised(solid, member.liftMm) }
    : body;
}

/** The arrow of something that moves; a short way has a small head. */
function motion(from: Point, to: Point): readonly SceneItem[] {
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  return long < 1.2 ? [] : arrow(from, to, { hue: 'clay', stroke: 'cut', headMm: Math.min(2.6, long * 0.6) });
}

/** Where what is held in the air will lie, and the arrows that it comes down along. */
export function landings(bodies: readonly Body[], camera: Camera): readonly SceneItem[] {
  const inAir = bodies.filter(({ weight, member }) => weight === 'added' && member.liftMm !== undefined);
  return groupsOf(inAir).flatMap((group) => {
    const liftMm = Math.max(...group.map(({ member }) => member.liftMm!));
    const spots = group.flatMap(({ solid, member }) =>
      solid.faces.flat().map((spot) => ({ ...spot, z: spot.z - member.liftMm! })),
    );
    const place = hullOf(spots.map((spot) => project(camera, spot)));
    return [
      ...(place.length < 3 ? [] : [path(polygon(place), { stroke: 'hidden' })]),
      ...downArrows(spots, liftMm, camera),
    ];
  });
}

/** From the near lower edge of what is lifted to where that edge will be: one arrow, or two where there is breadth. */
function downArrows(spots: readonly Spot[], liftMm: number, camera: Camera): readonly SceneItem[] {
  const nearest = Math.min(...spots.map(({ y }) => y));
  const deep = Math.max(...spots.map(({ y }) => y)) - nearest;
  const edge = spots.filter(({ y }) => y < nearest + deep * 0.1 + 1);
  const [left, right] = [Math.min(...edge.map(({ x }) => x)), Math.max(...edge.map(({ x }) => x))];
  const z = Math.min(...edge.map((spot) => spot.z));
  const shares = (right - left) * camera.scale > 16 ? [0.15, 0.85] : [0.5];
  return shares.flatMap((share) => {
    const spot = { x: left + (right - left) * share, y: nearest, z };
    return motion(
      project(camera, { ...spot, z: z + liftMm * 0.96 }),
      project(camera, { ...spot, z: z + liftMm * 0.04 }),
    );
  });
}

/** Bodies that touch, or nearly, are lifted as one. */
function groupsOf(bodies: readonly Body[]): readonly (readonly Body[])[] {
  const groups: Body[][] = [];
  for (const body of bodies) {
    const joined = groups.filter((group) => group.some((other) => touch(other.solid, body.solid)));
    const rest = groups.filter((group) => !joined.includes(group));
    groups.splice(0, groups.length, ...rest, [...joined.flat(), body]);
  }
  return groups;
}

function touch(a: Solid, b: Solid): boolean {
  const range = ({ faces }: Solid, axis: 'x' | 'y' | 'z'): readonly [number, number] => {
    const values = faces.flat().map((spot) => spot[axis]);
    return [Math.min(...values) - 10, Math.max(...values) + 10];
  };
  return (['x', 'y', 'z'] as const).every((axis) => {
    const [[lowA, highA], [lowB, highB]] = [range(a, axis), range(b, axis)];
    return lowA <= highB && lowB <= highA;
  });
}

const pourMm = 9;

/** What is poured in comes down along two arrows, on the places that are seen furthest from each other. */
export function pours(painted: readonly Painted[], camera: Camera): readonly SceneItem[] {
  const tops = painted.flatMap(({ body }, index) => {
    const { member, solid, weight } = body;
    if (weight !== 'added' || !isFilling(member) || member.liftMm !== undefined) return [];
    return facesOf(solid)
      .filter(({ normal }) => Math.abs(normal.z) > 0.5)
      .map(({ corners }) => mean(corners))
      .reduce<readonly Spot[]>((best, spot) => (best[0] && best[0].z >= spot.z ? best : [spot]), [])
      .flatMap((middle) => placesOn(solid, middle))
      .map((spot) => project(camera, spot))
      .filter((point) =>
        painted
          .slice(index + 1)
          .every(({ outline, seeThrough }) => seeThrough || distanceToOutline(outline, point) > 0.5),
      );
  });
  if (tops.length === 0) return [];
  const left = tops.reduce((best, point) => (point.x < best.x - 0.01 ? point : best));
  const right = tops.reduce((best, point) => (point.x > best.x + 0.01 ? point : best));
  const tips = right.x - left.x > 8 ? [left, right] : [left];
  return tips.flatMap((tip) => motion({ x: tip.x, y: tip.y - pourMm }, tip));
}

/** The middle of a top face and two places to its sides. */
function placesOn({ faces }: Solid, middle: Spot): readonly Spot[] {
  const xs = faces.flat().map(({ x }) => x);
  const half = (Math.max(...xs) - Math.min(...xs)) / 4;
  return [middle, { ...middle, x: middle.x - half }, { ...middle, x: middle.x + half }];
}
