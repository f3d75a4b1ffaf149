/**
 * The finished build cut through from south to north, seen toward the west, so that north is on the right. What is cut is
 * heavy and shows what it is made of; what lies beyond is thin.
 */
import type { Assembly, Member, Surface } from '../../structures/assembly.ts';
import { circle, between, distance, path, polygon, segment, text, type Point } from '../path.ts';
import type { Fill, PathCommand, Scene, SceneItem } from '../scene.ts';
import { sun } from '../symbols.ts';
import { bodiesOf, finished, isFilling } from './bodies.ts';
import { areaOf, middleOf } from './clearances.ts';
import { boundsOf } from '../outline.ts';
import { dashed } from './elevation.ts';
import { flatDrawing, type FlatOptions, type FlatPage, type Sign } from './flat-drawing.ts';
import { groundBand, groundEnds, groundLine, groundWord } from './ground.ts';
import { asLettered, outlineOf, paint } from './painted.ts';
import { cutOf, partBelow, type Plane } from './solids.ts';
import type { Lettered } from './targets.ts';
import { texture } from './texture.ts';

export function sectionDrawing(assembly: Assembly, options: FlatOptions): Scene {
  const north = assembly.hemisphere === 'north';
  const plane = planeOf(assembly);
  const members = finished(assembly);
  const beyond = bodiesOf(
    members.flatMap((member) => {
      const solid = partBelow(member.solid, plane);
      return solid && reaches(solid, plane)
        ? [{ member: { ...member, solid }, weight: 'beyond' as const }]
        : [];
    }),
  );
  const cut = members.filter(({ surface, solid }) => surface !== 'plant' && cutOf(solid, plane).length > 1);
  const { words } = options;
  return flatDrawing(
    assembly,
    {
      kind: 'section',
      spots: [
        ...[...beyond.above, ...beyond.buried].flatMap(({ solid }) => solid.faces.flat()),
        ...cut.flatMap(({ solid }) => cutOf(solid, plane)),
        { x: 0, y: 0, z: 0 },
      ],
      margin: { left: 9, right: 9, top: words.sun === undefined ? 9 : 20, bottom: 9 },
      content: (page) => {
        const ground = page.at({ x: 0, y: 0, z: 0 }).y;
        const outlines = cut.map(({ solid }) => cutOf(solid, plane).map(page.at));
        const bodies = [...beyond.above, ...beyond.buried];
        return {
          painted: () => {
            const behind = paint(beyond.above, page.camera);
            const faces = cutFaces(cut, plane, page);
            const items = [
              ...groundLine(ground, page.widthMm),
              ...paint(beyond.buried, page.camera).flatMap(dashed),
              ...behind.flatMap((part) => part.items),
              ...faces.flatMap((face) => face.items),
            ];
            return { items, lettered: [...behind.map(asLettered), ...faces] };
          },
          shapes: [...bodies.map(({ solid }) => outlineOf(solid, page.camera)), ...outlines],
          ground: [groundBand(ground, page.widthMm)],
          signs: sunSign(page, north ? 'left' : 'right', words.sun),
          loose: [
            ...groundEnds(ground, page.widthMm, [words.south, words.north]),
            ...groundWord(ground, page.widthMm, words.ground),
          ],
          roles: [...new Set([...cut, ...members].map(({ role }) => role))],
        };
      },
    },
    options,
  );
}

/** A hair off its place, so that a joint which lies right on it belongs to one side. */
function planeOf({ hemisphere, sectionAtX }: Assembly): Plane {
  const east = hemisphere === 'north' ? 1 : -1;
  return { normal: { x: east, y: 0, z: 0 }, level: east * sectionAtX - 0.25 };
}

/** Whether there is something of a body behind the plane, not only its cut. */
function reaches({ faces }: Member['solid'], { normal, level }: Plane): boolean {
  return faces.flat().some(({ x }) => normal.x * x < level - 0.5);
}

type CutFace = Lettered & { readonly items: readonly SceneItem[] };

/** Fillings first, then large before small, so that what stands in a filling is seen. */
function cutFaces(members: readonly Member[], plane: Plane, page: FlatPage): readonly CutFace[] {
  return members
    .map((member) => ({ member, outline: cutOf(member.solid, plane).map(page.at) }))
    .sort(
      (a, b) =>
        Number(isFilling(b.member)) - Number(isFilling(a.member)) || areaOf(b.outline) - areaOf(a.outline),
    )
    .map(({ member, outline }) => ({
      role: member.role,
      prominent: true,
      outline,
      seeThrough: false,
      spots: outline.length < 3 ? [between(outline[0]!, outline[1]!, 0.5)] : spotsOn(outline),
      items: cutFace(member.surface, outline),
    }));
}

function spotsOn(outline: readonly Point[]): readonly Point[] {
  const middle = middleOf(outline);
  return [middle, ...outline.map((corner) => between(middle, corner, 0.5))];
}

function cutFace(surface: Surface, outline: readonly Point[]): readonly SceneItem[] {
  if (outline.length < 3) return [cutSheet(surface, outline as readonly [Point, Point])];
  const { left, right, top, bottom } = boundsOf(outline);
  if (surface === 'cord' || Math.hypot(right - left, bottom - top) < 0.8)
    return [circle(middleOf(outline), 0.45, { fill: 'ink' })];
  const long = Math.max(...outline.map((a, index) => distance(a, outline[(index + 1) % outline.length]!)));
  const breadth = areaOf(outline) / long;
  const stroke = breadth < 0.7 ? 'thin' : breadth < 1.4 ? 'seen' : 'cut';
  return [path(polygon(outline), { stroke, fill: cutFills[surface] }), ...texture(surface, outline, 'cut')];
}

/** A sheet is cut in a line; mesh in a broken one. */
function cutSheet(surface: Surface, [from, to]: readonly [Point, Point]): SceneItem {
  if (surface !== 'mesh') return path(segment(from, to), { stroke: 'cut' });
  const number = Math.max(1, Math.floor(distance(from, to) / 2));
  const dashes = Array.from({ length: number }, (_, index): readonly PathCommand[] =>
    segment(between(from, to, index / number), between(from, to, (index + 0.62) / number)),
  );
  return path(dashes.flat(), { stroke: 'cut' });
}

const cutFills: Readonly<Record<Surface, Fill>> = {
  wood: 'paper',
  block: 'tint',
  straw: 'tint',
  soil: 'shade',
  gravel: 'paper',
  compost: 'tint',
  glass: 'paper',
  mesh: 'paper',
  cloth: 'tint',
  metal: 'ink',
  cord: 'ink',
  plant: 'paper',
};

/** The sun over the end that it shines from. */
function sunSign({ widthMm }: FlatPage, side: 'left' | 'right', word: string | undefined): readonly Sign[] {
  if (word === undefined) return [];
  const x = side === 'left' ? 8 : widthMm - 8;
  const items = [...sun({ x, y: 6 }), text({ x, y: 6 + 7.6 }, word, { anchor: 'middle' })];
  return [{ items, room: { left: x - 5.2, right: x + 5.2, top: 0.6, bottom: 11.2 } }];
}
