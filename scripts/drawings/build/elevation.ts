/** The finished build from the sun side, at eye level, standing on the ground. */
import type { Assembly } from '../../structures/assembly.ts';
import { path, polygon, segment } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';
import { boot, bootHeightMm } from '../symbols.ts';
import { bodiesOf, finished } from './bodies.ts';
import { extentOf, flatDrawing, type FlatOptions, type FlatPage, type Sign } from './flat-drawing.ts';
import { groundBand, groundLine, groundWord } from './ground.ts';
import { asLettered, outlineOf, paint, type Painted } from './painted.ts';

export function elevationDrawing(assembly: Assembly, options: FlatOptions): Scene {
  const members = finished(assembly).map((member) => ({ member, weight: 'whole' as const }));
  const { above, buried } = bodiesOf(members);
  const standing = above.filter(({ solid }) => solid.faces.flat().some(({ z }) => z > 1));
  return flatDrawing(
    assembly,
    {
      kind: 'elevation',
      spots: [...standing, ...buried].flatMap(({ solid }) => solid.faces.flat()),
      margin: { left: 9, right: 9, top: 9, bottom: 9 },
      content: (page) => {
        const ground = page.at({ x: 0, y: 0, z: 0 }).y;
        return {
          painted: () => {
            const painted = paint(standing, page.camera);
            const hidden = paint(buried, page.camera);
            const items = [
              ...groundLine(ground, page.widthMm),
              ...hidden.flatMap(dashed),
              ...painted.flatMap((part) => part.items),
            ];
            return { items, lettered: painted.map(asLettered) };
          },
          shapes: [...standing, ...buried].map(({ solid }) => outlineOf(solid, page.camera)),
          ground: [groundBand(ground, page.widthMm)],
          signs: bootBeside(assembly, page, ground),
          loose: groundWord(ground, page.widthMm, options.words.ground),
          roles: [...new Set(members.map(({ member }) => member.role))],
        };
      },
    },
    options,
  );
}

/** What stands in the ground. */
export function dashed({ outline }: Pick<Painted, 'outline'>): readonly SceneItem[] {
  if (outline.length < 2) return [];
  if (outline.length === 2) return [path(segment(outline[0]!, outline[1]!), { stroke: 'hidden' })];
  return [path(polygon(outline), { stroke: 'hidden' })];
}

/** A boot for scale, on a side where nothing is measured; none on a page for a phone. */
function bootBeside(assembly: Assembly, { camera, box, widthMm }: FlatPage, ground: number): readonly Sign[] {
  const measured = assembly.measures.filter((measure) => measure.in === 'elevation').map(({ side }) => side);
  const side = (['right', 'left'] as const).find((name) => !measured.includes(name));
  if (side === undefined || widthMm < 100) return [];
  const inch = (bootHeightMm * camera.scale) / 14;
  const x = side === 'right' ? box.right + 4 + 3.2 * inch : box.left - 4 - 9 * inch;
  const items = boot({ x, y: ground }, camera.scale);
  return [{ items, room: extentOf(items) }];
}
