/** Reads a scene back: its words with the room they take, and everything that could stick out or touch. */
import { textBox, overlaps, type Box, type TextItem } from '../../../scripts/drawings/charts/text-width.ts';
import type { Scene, SceneItem } from '../../../scripts/drawings/scene.ts';

export type PathItem = Extract<SceneItem, { kind: 'path' }>;

export const textsOf = (scene: Scene): readonly TextItem[] =>
  scene.items.filter((item) => item.kind === 'text');

export const wordsOf = (scene: Scene): readonly string[] => textsOf(scene).map(({ text }) => text);

export const pathsOf = (scene: Scene, look: Partial<PathItem> = {}): readonly PathItem[] =>
  scene.items
    .filter((item) => item.kind === 'path')
    .filter(({ stroke, fill, hue = 'ink' }) =>
      Object.entries(look).every(
        ([key, value]) => ({ stroke, fill, hue })[key as keyof typeof look & 'fill'] === value,
      ),
    );

/** Pairs of words that share some room. */
export function touchingWords(scene: Scene): readonly string[] {
  const texts = textsOf(scene);
  return texts.flatMap((one, index) =>
    texts
      .slice(index + 1)
      .filter((other) => overlaps(textBox(one), textBox(other)))
      .map((other) => `${one.text} / ${other.text}`),
  );
}

/** Items that reach over the edge of the scene by more than a hair, lines with half their weight. */
export function itemsOutside(scene: Scene): readonly SceneItem[] {
  const hair = 0.02;
  return scene.items.filter((item) => {
    const { left, right, top, bottom } = boxOf(item);
    return left < -hair || top < -hair || right > scene.widthMm + hair || bottom > scene.heightMm + hair;
  });
}

export function boxOf(item: SceneItem): Box {
  if (item.kind === 'text') return textBox(item);
  const reach = item.stroke === undefined ? 0 : weightMm[item.stroke] / 2;
  if (item.kind === 'circle') return grown(item.x, item.x, item.y, item.y, item.radius + reach);
  const numbers = item.commands.map(([, ...values]) => values as readonly number[]);
  const xs = numbers.flatMap((values) => values.filter((_, index) => index % 2 === 0));
  const ys = numbers.flatMap((values) => values.filter((_, index) => index % 2 === 1));
  const isLevel = new Set(ys).size === 1;
  const isUpright = new Set(xs).size === 1;
  const box = grown(Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys), reach);
  if (isLevel) return { ...box, left: box.left + reach, right: box.right - reach };
  return isUpright ? { ...box, top: box.top + reach, bottom: box.bottom - reach } : box;
}

const grown = (left: number, right: number, top: number, bottom: number, by: number): Box => ({
  left: left - by,
  right: right + by,
  top: top - by,
  bottom: bottom + by,
});

const weightMm = { cut: 0.494, seen: 0.3175, thin: 0.1764, hidden: 0.1764 } as const;
