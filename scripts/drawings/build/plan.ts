/** The finished build from above, north up, with the place where the section is cut. */
import type { Assembly } from '../../structures/assembly.ts';
import { arrow, path, segment, text, type Point } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';
import { northArrow } from '../symbols.ts';
import { bodiesOf, finished } from './bodies.ts';
import { grown } from './clearances.ts';
import { extentOf, flatDrawing, type FlatOptions, type FlatPage, type Sign } from './flat-drawing.ts';
import { asLettered, outlineOf, paint } from './painted.ts';

export function planDrawing(assembly: Assembly, options: FlatOptions): Scene {
  const members = finished(assembly).map((member) => ({ member, weight: 'whole' as const }));
  const { above } = bodiesOf(members);
  return flatDrawing(
    assembly,
    {
      kind: 'plan',
      spots: above.flatMap(({ solid }) => solid.faces.flat()),
      margin: { left: 9, right: 13, top: 9, bottom: 9 },
      content: (page) => {
        const north = northArrow({ x: page.widthMm - 6, y: 10.5 }, { x: 0, y: -1 }, options.words.north, 10);
        return {
          painted: () => {
            const painted = paint(above, page.camera);
            return { items: painted.flatMap(({ items }) => items), lettered: painted.map(asLettered) };
          },
          shapes: above.map(({ solid }) => outlineOf(solid, page.camera)),
          signs: [{ items: north, room: grown(extentOf(north), 0.6) }, ...cutMarks(assembly, page)],
          loose: cutWord(assembly, page, options.words.cut),
          roles: [...new Set(members.map(({ member }) => member.role))],
        };
      },
    },
    options,
  );
}

/** A heavy stroke at either end of the plane of the section, with an arrow the way it is looked at. */
function cutMarks(assembly: Assembly, { box, at }: FlatPage): readonly Sign[] {
  const { x } = at({ x: assembly.sectionAtX, y: 0, z: 0 });
  const mark = (edge: number, way: 1 | -1): readonly SceneItem[] => {
    const far: Point = { x, y: edge + way * markMm };
    return [
      path(segment({ x, y: edge + way }, far), { stroke: 'cut' }),
      ...arrow(far, { x: x - markMm, y: far.y }, { stroke: 'seen', headMm: 2 }),
    ];
  };
  return [mark(box.top, -1), mark(box.bottom, 1)].map((items) => ({
    items,
    room: grown(extentOf(items), 0.5),
  }));
}

const markMm = 4.4;

/** What the marks are, beside one of them. */
function cutWord(
  assembly: Assembly,
  { box, at }: FlatPage,
  word: string | undefined,
): readonly (readonly Sign[])[] {
  if (word === undefined) return [];
  const { x } = at({ x: assembly.sectionAtX, y: 0, z: 0 });
  const beside = (y: number): readonly Sign[] => [
    { items: [text({ x: x + 1.8, y }, word)] },
    { items: [text({ x: x - markMm - 1, y }, word, { anchor: 'end' })] },
  ];
  return [[...beside(box.bottom + markMm + 0.4), ...beside(box.top - markMm + 2)]];
}
