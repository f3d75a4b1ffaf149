/** What holds for every drawing: ink on the page, words clear of words, letters that can be read. */
import { overlaps } from '../../../scripts/drawings/charts/text-width.ts';
import type { Point } from '../../../scripts/drawings/path.ts';
import type { Scene, SceneItem } from '../../../scripts/drawings/scene.ts';
import { inkBox } from '../frame/ink.ts';
import { pathsOf, pointsOf, textsOf } from '../frame/scenes.ts';

export function wordsOnWords(scene: Scene): readonly string[] {
  const boxes = textsOf(scene).map((text) => ({ text: text.text, box: inkBox(text) }));
  return boxes.flatMap((one, index) =>
    boxes
      .slice(index + 1)
      .flatMap((other) => (overlaps(one.box, other.box) ? [`${one.text} on ${other.text}`] : [])),
  );
}

/** Points of ink that are not on the page, or nowhere. */
export function offPage(scene: Scene): readonly Point[] {
  const texts = textsOf(scene).map(inkBox);
  return [
    ...texts.flatMap(({ left, right, top, bottom }) => [
      { x: left, y: top },
      { x: right, y: bottom },
    ]),
    ...pathsOf(scene).flatMap(pointsOf),
    ...circlesOf(scene).flatMap(({ x, y, radius }) => [
      { x: x - radius, y: y - radius },
      { x: x + radius, y: y + radius },
    ]),
  ].filter(({ x, y }) => !(x >= 0 && x <= scene.widthMm && y >= 0 && y <= scene.heightMm));
}

type Circle = Extract<SceneItem, { kind: 'circle' }>;

export function circlesOf({ items }: Scene): readonly Circle[] {
  return items.filter((item) => item.kind === 'circle');
}

/** Rings with a letter in them. */
export function balloonsOf(scene: Scene): readonly Circle[] {
  return circlesOf(scene).filter(({ radius }) => radius > 2.3 && radius < 2.4);
}

export function lettersOf(scene: Scene): readonly string[] {
  return balloonsOf(scene).map(
    (ring) => textsOf(scene).find(({ x, y }) => Math.hypot(x - ring.x, y - ring.y) < 2)!.text,
  );
}
