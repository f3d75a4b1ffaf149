/** Bodies as they are painted in one view: what is behind first, each with its faces, edges, outline and texture. */
import type { Member, Solid, Surface } from '../../structures/assembly.ts';
import type { Spot } from '../../structures/geometry.ts';
import { project, type Camera } from '../axonometric.ts';
import { shoot } from '../frame/shoot.ts';
import {
  along,
  between,
  circle,
  distance,
  path,
  polygon,
  polyline,
  segment,
  subtract,
  unit,
  type Point,
} from '../path.ts';
import type { Fill, SceneItem, Stroke } from '../scene.ts';
import { areaOf, middleOf } from './clearances.ts';
import { boundsOf, hullOf } from '../outline.ts';
import { seamsOf, type EdgeOnPage } from './edges.ts';
import { paintingOrder } from './painting-order.ts';
import { axisOf, dot, facesOf, isSheet, mean, minus, times, type Face } from './solids.ts';
import type { Lettered } from './targets.ts';
import { texture, type Density } from './texture.ts';
import { axesOf } from './view.ts';

/**
 * `added` is what a step brings, `standing` what was there before, `at-rest` all of it in a step that brings nothing; `whole`
 * is a finished build in plan or elevation, and `beyond` what lies behind a section.
 */
export type Weight = 'added' | 'standing' | 'at-rest' | 'whole' | 'beyond';

export interface Body {
  readonly member: Member;
  /** Where it is drawn: the member's own solid, or that part of it which is seen, or lifted. */
  readonly solid: Solid;
  readonly weight: Weight;
}

export interface Painted {
  readonly body: Body;
  readonly outline: readonly Point[];
  /** What is behind it can be seen, as through mesh. */
  readonly seeThrough: boolean;
  /** Places on it that a letter can point at, the best first. */
  readonly spots: readonly Point[];
  readonly items: readonly SceneItem[];
}

/** A painted body as far as letters are concerned. */
export function asLettered({ body, outline, seeThrough, spots }: Painted): Lettered {
  return { role: body.member.role, outline, seeThrough, spots };
}

/** The outline of a body on the page. */
export function outlineOf(solid: Solid, camera: Camera): readonly Point[] {
  return hullOf(solid.faces.flat().map((spot) => project(camera, spot)));
}

export function paint(bodies: readonly Body[], camera: Camera): readonly Painted[] {
  const seams = seamsOf(bodies, camera);
  const middles = middleOfRoles(bodies);
  return paintingOrder(bodies, camera).map((body) =>
    paintBody(body, camera, { seams: seams(body), middle: middles.get(body.member.role)! }),
  );
}

interface Surroundings {
  readonly seams: readonly EdgeOnPage[];
  /** The middle of all bodies of the role. */
  readonly middle: Spot;
}

function middleOfRoles(bodies: readonly Body[]): ReadonlyMap<string, Spot> {
  const roles = [...new Set(bodies.map(({ member }) => member.role))];
  return new Map(
    roles.map((role) => [
      role,
      mean(bodies.filter(({ member }) => member.role === role).map(({ solid }) => mean(solid.faces.flat()))),
    ]),
  );
}

function paintBody(body: Body, camera: Camera, around: Surroundings): Painted {
  const corners = body.solid.faces.flat().map((spot) => project(camera, spot));
  const outline = hullOf(corners);
  const { surface } = body.member;
  const form = formOf(body, outline);
  const open = surface === 'mesh' || surface === 'cord' || (surface === 'glass' && camera.tiltDeg > 80);
  const base = { body, outline, seeThrough: open || form !== 'body' };
  switch (form) {
    case 'plant':
      return { ...base, ...plant(body, camera) };
    case 'line':
      return { ...base, ...line(body, camera) };
    case 'speck':
      return { ...base, ...speck(body, middleOf(corners)) };
    case 'rod':
      return { ...base, seeThrough: false, ...rod(body, outline) };
    case 'body':
      return { ...base, ...solidBody(body, camera, around) };
  }
}

/** Smaller than this on the page a thing is drawn as a mark in its place, and a rod a little stouter than it is. */
const speckMm = 1;
const rodMm = 0.9;

function formOf(
  { member, solid }: Body,
  outline: readonly Point[],
): 'plant' | 'line' | 'speck' | 'rod' | 'body' {
  const { left, right, top, bottom } = boundsOf(outline);
  const longest = Math.hypot(right - left, bottom - top);
  if (member.surface === 'plant') return 'plant';
  if (longest < speckMm) return 'speck';
  if (member.surface === 'cord' || outline.length < 3) return 'line';
  const breadth = breadthOf(outline);
  if (isSheet(solid) && breadth < 0.3) return 'line';
  return breadth < rodMm && longest > 4 * breadth ? 'rod' : 'body';
}

/** The least distance between two parallel lines that hold the figure between them. */
function breadthOf(outline: readonly Point[]): number {
  return Math.min(
    ...outline.map((corner, index) => {
      const ahead = unit(subtract(outline[(index + 1) % outline.length]!, corner));
      const across = outline.map(({ x, y }) => (x - corner.x) * -ahead.y + (y - corner.y) * ahead.x);
      return Math.max(...across) - Math.min(...across);
    }),
  );
}

type Drawn = Pick<Painted, 'items' | 'spots'>;

/** A sprout with its foot where the plant stands; from above a ring with a dot. */
function plant({ solid, weight }: Body, camera: Camera): Drawn {
  const spots = solid.faces.flat();
  const lowest = Math.min(...spots.map(({ z }) => z));
  const highest = Math.max(...spots.map(({ z }) => z));
  const foot = project(camera, mean(spots.filter(({ z }) => z < lowest + 1)));
  if (camera.tiltDeg > 80)
    return {
      items: [circle(foot, 1.1, { stroke: 'seen', fill: 'paper' }), circle(foot, 0.35, { fill: 'ink' })],
      spots: [foot],
    };
  const tall = (highest - lowest) * camera.scale * Math.cos((camera.tiltDeg * Math.PI) / 180);
  const high = Math.min(6, Math.max(2.6, tall));
  return {
    items: shoot(foot, weight === 'standing' ? Math.min(high, 2.6) : high),
    spots: [{ x: foot.x, y: foot.y - high * 0.5 }],
  };
}

function line({ member, solid, weight }: Body, camera: Camera): Drawn {
  const [from, to] = axisOf(solid).map((spot) => project(camera, spot)) as [Point, Point];
  const heavy = weight === 'added' || (weight === 'whole' && member.surface !== 'cord');
  return {
    items: [path(segment(from, to), { stroke: heavy ? 'seen' : 'thin' })],
    spots: [between(from, to, 0.5), between(from, to, 0.25), between(from, to, 0.75)],
  };
}

function speck({ weight }: Body, middle: Point): Drawn {
  const heavy = weight === 'added' || weight === 'whole';
  return {
    items: [circle(middle, heavy ? 0.45 : 0.35, heavy ? { fill: 'ink' } : { stroke: 'thin', fill: 'paper' })],
    spots: [middle],
  };
}

/** Something thin, such as a pole far off, as an outline a little stouter than it is. */
function rod({ weight }: Body, outline: readonly Point[]): Drawn {
  const { ahead, side, middle, half } = lengthwise(outline);
  const [from, to] = [along(middle, ahead, -half), along(middle, ahead, half)];
  const breadth = rodMm / 2;
  const corners = [
    along(from, side, -breadth),
    along(to, side, -breadth),
    along(to, side, breadth),
    along(from, side, breadth),
  ];
  return {
    items: [
      path(polygon(corners), {
        stroke: weight === 'added' ? 'seen' : 'thin',
        fill: weight === 'added' ? 'shade' : 'paper',
      }),
    ],
    spots: [0.5, 0.35, 0.65, 0.2, 0.8].map((share) => between(from, to, share)),
  };
}

/** The direction in which a figure is narrowest, square to it the one along it, and its middle. */
function lengthwise(outline: readonly Point[]): {
  readonly ahead: Point;
  readonly side: Point;
  readonly middle: Point;
  readonly half: number;
} {
  const options = outline.map((corner, index) => {
    const ahead = unit(subtract(outline[(index + 1) % outline.length]!, corner));
    const side = { x: -ahead.y, y: ahead.x };
    const reach = (axis: Point): readonly [number, number] => {
      const values = outline.map(({ x, y }) => x * axis.x + y * axis.y);
      return [Math.min(...values), Math.max(...values)];
    };
    return { ahead, side, forward: reach(ahead), across: reach(side) };
  });
  const breadth = ({ across: [low, high] }: (typeof options)[number]): number => high - low;
  const { ahead, side, forward, across } = options.reduce((best, option) =>
    breadth(option) < breadth(best) ? option : best,
  );
  const onto = along({ x: 0, y: 0 }, ahead, (forward[0] + forward[1]) / 2);
  return {
    ahead,
    side,
    middle: along(onto, side, (across[0] + across[1]) / 2),
    half: (forward[1] - forward[0]) / 2,
  };
}

interface Look {
  readonly outline: Stroke;
  readonly edge: Stroke;
  readonly density: Density | undefined;
}

const looks: Readonly<Record<Weight, Look>> = {
  added: { outline: 'cut', edge: 'seen', density: 'full' },
  whole: { outline: 'seen', edge: 'thin', density: 'full' },
  standing: { outline: 'thin', edge: 'thin', density: 'sparse' },
  'at-rest': { outline: 'seen', edge: 'thin', density: 'sparse' },
  beyond: { outline: 'thin', edge: 'thin', density: undefined },
};

function solidBody(body: Body, camera: Camera, { seams, middle }: Surroundings): Drawn {
  const { member, solid, weight } = body;
  const { toward } = axesOf(camera);
  const outline = outlineOf(solid, camera);
  const fromAbove = camera.tiltDeg > 80;
  const look = looks[weight];
  const breadth = breadthOf(outline);
  const stroke = strokeFor(look.outline, outline);
  const seen = facesOf(solid)
    .filter(({ normal }) => isSheet(solid) || dot(normal, toward) > 1e-6)
    .map((face) => ({ face, flat: face.corners.map((spot) => project(camera, spot)) }))
    .sort((a, b) => dot(b.face.normal, toward) - dot(a.face.normal, toward));
  const farSide = isSheet(solid) && facesAway(facesOf(solid)[0]!, middle, toward);
  return {
    items: [
      ...seen.flatMap(({ face, flat }) => {
        const side = sideOf(face, toward, isSheet(solid));
        // From above one looks through glass onto what grows; else the pane itself is shown.
        const open = fromAbove && member.surface === 'glass';
        const fill = open ? undefined : fillOf(member.surface, side, member.smooth === true, weight);
        return [
          ...(fill === undefined ? [] : [path(polygon(flat), { fill })]),
          ...(look.density === undefined || farSide || (member.surface === 'glass' && face.normal.z < 0.3)
            ? []
            : texture(member.surface, flat, look.density, member.smooth ? 0.25 : undefined)),
        ];
      }),
      ...edgePaths(seams, { inner: breadth < 1.3 ? 'thin' : look.edge, outer: stroke }),
      ...(member.smooth ? [] : [path(polygon(outline), { stroke })]),
    ],
    spots: seen.flatMap(({ flat }) => spotsOn(flat)),
  };
}

/** The outline of something small on the page is lighter, so that it does not fill up with ink. */
function strokeFor(outlineStroke: Stroke, outline: readonly Point[]): Stroke {
  const breadth = breadthOf(outline);
  if (breadth < 0.8 && outlineStroke !== 'cut') return 'thin';
  const isSmall = breadth < 1.3 || Math.sqrt(areaOf(outline)) < smallMm;
  return isSmall && outlineStroke === 'cut' ? 'seen' : outlineStroke;
}

/** The side of a square of the page below which a body counts as small. */
const smallMm = 5;

/** Whether a sheet that is part of something round lies on its far side. */
function facesAway({ corners, normal }: Face, middle: Spot, toward: Spot): boolean {
  const out = minus(mean(corners), middle);
  const away = dot(normal, out) < 0 ? times(normal, -1) : normal;
  return Math.hypot(out.x, out.y, out.z) > 1 && dot(away, toward) < -1e-6;
}

function sideOf({ normal }: Face, toward: Spot, sheet: boolean): 'top' | 'front' | 'end' {
  const up = sheet && dot(normal, toward) < 0 ? -normal.z : normal.z;
  return up > 0.7 ? 'top' : Math.abs(normal.y) >= Math.abs(normal.x) ? 'front' : 'end';
}

function fillOf(
  surface: Surface,
  side: 'top' | 'front' | 'end',
  smooth: boolean,
  weight: Weight,
): Fill | undefined {
  if (surface === 'mesh') return undefined;
  if (weight !== 'added' && weight !== 'whole') return 'paper';
  const sides: Fill = side === 'end' && !smooth ? 'shade' : 'tint';
  switch (surface) {
    case 'soil':
    case 'compost':
      return side === 'top' ? 'shade' : sides;
    case 'glass':
      return side === 'top' ? 'paper' : sides;
    case 'cloth':
      return 'tint';
    case 'metal':
      return 'shade';
    case 'wood':
    case 'block':
    case 'straw':
    case 'gravel':
    case 'cord':
    case 'plant':
      return side === 'top' ? 'paper' : sides;
  }
}

function edgePaths(
  edges: readonly EdgeOnPage[],
  strokes: { readonly inner: Stroke; readonly outer: Stroke },
): readonly SceneItem[] {
  return (['inner', 'outer'] as const).flatMap((kind) => {
    const commands = joined(edges.filter((edge) => edge.kind === kind)).flatMap(polyline);
    return commands.length === 0 ? [] : [path(commands, { stroke: strokes[kind] })];
  });
}

/** Edges strung together where one ends on the page as another begins. */
function joined(edges: readonly EdgeOnPage[]): readonly (readonly Point[])[] {
  const runs: Point[][] = [];
  const near = (a: Point, b: Point): boolean => distance(a, b) < 0.005;
  for (const { ends } of edges) {
    let [from, to] = ends;
    const run = runs.find((list) => [list[0]!, list.at(-1)!].some((end) => near(end, from) || near(end, to)));
    if (!run) {
      runs.push([from, to]);
      continue;
    }
    if (near(run[0]!, from) || near(run[0]!, to)) run.reverse();
    if (near(run.at(-1)!, to)) [from, to] = [to, from];
    run.push(to);
  }
  return runs;
}

/** The middle of a face and places about it. */
function spotsOn(flat: readonly Point[]): readonly Point[] {
  const middle = middleOf(flat);
  return [
    middle,
    ...flat.map((corner) => between(middle, corner, 0.45)),
    ...flat.map((corner) => between(middle, corner, 0.75)),
  ];
}
