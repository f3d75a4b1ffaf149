/** A net on stakes for climbing peas, from the side: a sketch, not to scale. */
import { dimension, type LengthWords } from '../../dimension.ts';
import { circle, path, polygon, rectangle, segment, type Point } from '../../path.ts';
import type { PathCommand, Scene, SceneItem } from '../../scene.ts';

export interface NetTrellisOptions {
  readonly id: string;
  readonly alternative: string;
  readonly words: {
    readonly height: LengthWords;
    readonly spacing: LengthWords;
    readonly inGround: LengthWords;
  };
  /** 80 to 175. */
  readonly widthMm: number;
}

const groundMm = 48;
const topMm = 8;
const footMm = 60;

/** Three stakes, cord along their tops and just above the ground, the net between, and vines that climb it. */
export function netTrellis({ id, alternative, words, widthMm }: NetTrellisOptions): Scene {
  const wide = Math.min(widthMm - 46, 84);
  const stakes = [0, 0.5, 1].map((share) => 26 + share * wide);
  const [first, middle, last] = stakes as [number, number, number];
  const items: readonly SceneItem[] = [
    path(rectangle(first - 10, groundMm, wide + 20, footMm + 4 - groundMm), { fill: 'tint' }),
    path(segment({ x: first - 10, y: groundMm }, { x: last + 10, y: groundMm }), { stroke: 'seen' }),
    ...net(first, last),
    ...[topMm + 1.5, groundMm - 3].map((y) =>
      path(segment({ x: first, y }, { x: last, y }), { stroke: 'cut', hue: 'green' }),
    ),
    ...stakes.map(stake),
    ...Array.from({ length: 13 }, (_, index) => first + 3 + ((wide - 6) * index) / 12).flatMap(vine),
    ...dimension({
      from: { x: first - 7, y: topMm },
      to: { x: first - 7, y: groundMm },
      corners: [
        { x: first, y: topMm },
        { x: first - 7, y: groundMm },
      ],
      toward: { x: -1, y: 0 },
      words: words.height,
    }),
    ...dimension({
      from: { x: first, y: topMm - 3 },
      to: { x: middle, y: topMm - 3 },
      toward: { x: 0, y: -1 },
      words: { first: oneLine(words.spacing) },
    }),
    ...dimension({
      from: { x: last + 6, y: groundMm },
      to: { x: last + 6, y: footMm },
      corners: [
        { x: last + 6, y: groundMm },
        { x: last, y: footMm },
      ],
      toward: { x: 1, y: 0 },
      words: words.inGround,
    }),
  ];
  return { id, alternative, widthMm, heightMm: footMm + 4, items };
}

function oneLine({ first, second }: LengthWords): string {
  return second === undefined ? first : `${first} (${second})`;
}

function net(left: number, right: number): readonly SceneItem[] {
  const [top, bottom] = [topMm + 1.5, groundMm - 3];
  const across = Math.round((right - left) / 4);
  const down = Math.round((bottom - top) / 4);
  const commands: PathCommand[] = [
    ...Array.from({ length: across + 1 }, (_, index) => left + ((right - left) * index) / across).flatMap(
      (x) => segment({ x, y: top }, { x, y: bottom }),
    ),
    ...Array.from({ length: down + 1 }, (_, index) => top + ((bottom - top) * index) / down).flatMap((y) =>
      segment({ x: left, y }, { x: right, y }),
    ),
  ];
  return [path(commands, { stroke: 'thin' })];
}

function stake(x: number): SceneItem {
  return path(
    polygon([
      { x: x - 1.1, y: topMm },
      { x: x + 1.1, y: topMm },
      { x: x + 1.1, y: footMm - 3 },
      { x, y: footMm },
      { x: x - 1.1, y: footMm - 3 },
    ]),
    { stroke: 'cut', fill: 'paper' },
  );
}

/** A vine with leaves by turns to both sides; each is as tall as its place says, so that the row looks grown. */
function vine(x: number, index: number): readonly SceneItem[] {
  const tip = groundMm - 14 - ((index * 7) % 12);
  const leaves = Math.floor((groundMm - tip) / 4);
  const at = (leaf: number): Point => ({ x: x + (leaf % 2 === 0 ? 1.1 : -1.1), y: groundMm - 3 - leaf * 4 });
  return [
    path(segment({ x, y: groundMm }, { x, y: tip }), { stroke: 'seen' }),
    ...Array.from({ length: leaves }, (_, leaf) => circle(at(leaf), 0.9, { stroke: 'thin', fill: 'shade' })),
  ];
}
