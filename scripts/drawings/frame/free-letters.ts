/** Letters for things that stand in a drawing anywhere: each balloon goes where there is room for it. */
import { placeCallouts, type Target } from '../build/callouts.ts';
import { hullOf } from '../outline.ts';
import { textBox } from '../charts/text-width.ts';
import type { Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';

export interface Lettered {
  readonly letter: string | undefined;
  readonly spots: readonly Point[];
}

/**
 * Callouts round what `items` show, in the page that is given. A letter that is there already is not set again.
 */
export function freeLetters(
  items: readonly SceneItem[],
  lettered: readonly Lettered[],
  page: { readonly widthMm: number; readonly heightMm: number },
): readonly SceneItem[] {
  const there = new Set(ringedLetters(items));
  const targets = lettered.flatMap(({ letter, spots }): Target[] =>
    letter === undefined || spots.length === 0 || there.has(letter) ? [] : [{ letter, spots }],
  );
  const first = targets.filter(
    ({ letter }, index) => targets.findIndex((other) => other.letter === letter) === index,
  );
  return placeCallouts(
    first,
    { left: 0, top: 0, right: page.widthMm, bottom: page.heightMm },
    {
      boxes: items.flatMap((item) => {
        if (item.kind === 'text') return [textBox(item)];
        if (item.kind !== 'circle' || item.radius < leastSignMm) return [];
        const { x, y, radius } = item;
        return [{ left: x - radius, right: x + radius, top: y - radius, bottom: y + radius }];
      }),
      lines: items.flatMap((item) => {
        const points = item.kind === 'path' && item.hue === undefined ? pointsOf(item) : [];
        return points.length === 2 ? [[points[0]!, points[1]!] as const] : [];
      }),
      shapes: items.flatMap((item) => (item.kind === 'path' ? outlineOf(item) : [])),
    },
  );
}

/** Letters that stand in a ring; that of the north arrow does not. */
function ringedLetters(items: readonly SceneItem[]): readonly string[] {
  return items.flatMap((item, index) => {
    const before = items[index - 1];
    const inRing = item.kind === 'text' && before?.kind === 'circle' && before.radius >= leastSignMm;
    return inRing && before.x === item.x ? [item.text] : [];
  });
}

/** Rings and dots smaller than this may be what a letter points at. */
const leastSignMm = 1;

type PathItem = Extract<SceneItem, { kind: 'path' }>;

function outlineOf(item: PathItem): readonly (readonly Point[])[] {
  if (item.fill === undefined) return [];
  const hull = hullOf(pointsOf(item));
  return hull.length > 2 ? [hull] : [];
}

function pointsOf({ commands }: PathItem): readonly Point[] {
  return commands.flatMap((command): Point[] => {
    if (command[0] === 'Z') return [];
    return command[0] === 'C' ? [{ x: command[5], y: command[6] }] : [{ x: command[1], y: command[2] }];
  });
}
