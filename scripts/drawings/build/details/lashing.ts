/** How poles are lashed, and how a string goes round them: three sketches. */
import { dimension, type LengthWords } from '../../dimension.ts';
import { arrow, circle, path, polygon, polyline, rectangle, segment, type Point } from '../../path.ts';
import type { Scene, SceneItem } from '../../scene.ts';
import { panelScene, type Panel } from './panels.ts';

export interface LashingOptions {
  readonly id: string;
  readonly alternative: string;
  /** 3 to 12. */
  readonly poles: number;
  /** Turns over and under all poles, there and back, and turns between each two poles. */
  readonly turns: number;
  readonly tightTurns: number;
  readonly words: {
    readonly weave: string;
    readonly tighten: string;
    readonly strings: string;
    /** From the upper ends to the lashing. */
    readonly tie: LengthWords;
  };
  readonly widthMm: number;
}

const panelMm = 39;
const heightMm = 56;
const endsMm = 3;
const firstRowMm = 24;
const rowMm = 2.1;

/** Weave, pull tight, and strings; not to scale. */
export function lashingDrawing(options: LashingOptions): Scene {
  const { id, alternative, words, widthMm } = options;
  const panel = (title: string, items: readonly SceneItem[]): Panel => ({
    title,
    widthMm: panelMm,
    heightMm,
    items,
  });
  const tie = dimension({
    from: { x: panelMm - 12, y: endsMm },
    to: { x: panelMm - 12, y: firstRowMm },
    corners: [
      { x: polesRightMm, y: endsMm },
      { x: polesRightMm, y: firstRowMm },
    ],
    toward: { x: 1, y: 0 },
    words: words.tie,
  });
  return panelScene({
    id,
    alternative,
    widthMm,
    panels: [
      panel(words.weave, [...woven(options), ...tie]),
      panel(words.tighten, [...woven(options), ...tightened(options)]),
      panel(words.strings, strings()),
    ],
  });
}

const polesRightMm = 24;

interface Pole {
  readonly middle: number;
  readonly half: number;
}

/** Upright, side by side, over the left of a panel. */
function polesOf(number: number): readonly Pole[] {
  const pitch = (polesRightMm - 3) / number;
  return Array.from({ length: number }, (_, index) => ({
    middle: 3 + pitch * (index + 0.5),
    half: pitch * 0.25,
  }));
}

function rowsOf(turns: number): readonly number[] {
  return Array.from({ length: turns * 2 }, (_, row) => firstRowMm + row * rowMm);
}

/** Twine over and under: each row passes in front of every second pole, the next row in front of the others. */
function woven({ poles: number, turns }: LashingOptions): readonly SceneItem[] {
  const poles = polesOf(number);
  const rows = rowsOf(turns);
  const [left, right] = [poles[0]!.middle, poles.at(-1)!.middle];
  const reach = poles[0]!.half + 1.2;
  return [
    ...poles.flatMap((pole) => standing(pole, endsMm, heightMm)),
    ...rows.slice(1).map((y, row) => loop(row % 2 === 0 ? right + reach : left - reach, y - rowMm, row)),
    ...rows.map((y) => band(left - reach, right + reach, y)),
    ...rows.flatMap((y, row) =>
      poles
        .filter((_, index) => (index + row) % 2 === 1)
        .flatMap(({ middle, half }) => [
          path(rectangle(middle - half, y - bandMm, 2 * half, 2 * bandMm), { fill: 'paper' }),
          path(
            [
              ...segment({ x: middle - half, y: y - bandMm }, { x: middle - half, y: y + bandMm }),
              ...segment({ x: middle + half, y: y - bandMm }, { x: middle + half, y: y + bandMm }),
            ],
            { stroke: 'seen' },
          ),
        ]),
    ),
  ];
}

const bandMm = 0.72;

/** Cut off below, as it goes on. */
function standing({ middle, half }: Pole, top: number, bottom: number): readonly SceneItem[] {
  const corner = (x: number, y: number): Point => ({ x: middle + x, y });
  return [
    path(polyline([corner(-half, bottom), corner(-half, top), corner(half, top), corner(half, bottom)]), {
      stroke: 'seen',
    }),
  ];
}

function band(from: number, to: number, y: number): SceneItem {
  return path(rectangle(from, y - bandMm, to - from, 2 * bandMm), { stroke: 'thin', fill: 'tint' });
}

/** Where twine turns back round the last pole. */
function loop(x: number, y: number, row: number): SceneItem {
  const out = row % 2 === 0 ? 1.6 : -1.6;
  return path(
    [
      ['M', x, y],
      ['C', x + out, y, x + out, y + rowMm, x, y + rowMm],
    ],
    { stroke: 'seen' },
  );
}

/** Turns between the poles, round the woven rows, and the knot. */
function tightened({ poles: number, turns, tightTurns }: LashingOptions): readonly SceneItem[] {
  const poles = polesOf(number);
  const rows = rowsOf(turns);
  const [top, bottom] = [rows[0]! - 1.8, rows.at(-1)! + 1.8];
  const gaps = poles.slice(1).map((pole, index) => (pole.middle + poles[index]!.middle) / 2);
  const last = gaps.at(-1)!;
  const room = Math.max(0.8, poles[1]!.middle - poles[0]!.middle - 2 * poles[0]!.half - 0.3);
  return [
    ...gaps.flatMap((x) => [
      path(rectangle(x - room / 2, top, room, bottom - top), { stroke: 'thin', fill: 'paper' }),
      path(
        Array.from(
          { length: tightTurns - 1 },
          (_, turn) => x + ((turn + 1) / tightTurns - 0.5) * room,
        ).flatMap((at) => segment({ x: at, y: top }, { x: at, y: bottom })),
        { stroke: 'thin' },
      ),
    ]),
    circle({ x: last, y: bottom + 1 }, 1.1, { stroke: 'seen', fill: 'paper' }),
    path(
      [
        ['M', last + 0.8, bottom + 1.8],
        ['C', last + 2, bottom + 4, last + 4, bottom + 3, last + 4.6, bottom + 5.5],
      ],
      { stroke: 'seen' },
    ),
    ...arrow({ x: last + 6, y: bottom + 3 }, { x: last + 10.5, y: bottom + 3 }, { hue: 'clay', headMm: 2 }),
  ];
}

/** Three leaning poles and a string that goes twice round each. */
function strings(): readonly SceneItem[] {
  const leans = [-0.1, 0, 0.1];
  const poles = leans.map((lean, index) => ({ x: 5.5 + index * 14, lean }));
  const y = 28;
  const at = ({ x, lean }: { x: number; lean: number }, down: number): Point => ({
    x: x + lean * (down - y),
    y: down,
  });
  const half = 1.7;
  const pole = (of: { x: number; lean: number }): SceneItem =>
    path(
      polygon(
        [at(of, endsMm), at(of, heightMm)].flatMap(({ x, y: down }, end) =>
          end === 0
            ? [
                { x: x - half, y: down },
                { x: x + half, y: down },
              ]
            : [
                { x: x + half, y: down },
                { x: x - half, y: down },
              ],
        ),
      ),
      { stroke: 'seen', fill: 'paper' },
    );
  const turn = (of: { x: number; lean: number }, down: number): SceneItem =>
    path(
      polygon([
        { x: of.x - half - 0.5, y: down + 0.9 },
        { x: of.x + half + 0.5, y: down - 0.5 },
        { x: of.x + half + 0.5, y: down + 0.7 },
        { x: of.x - half - 0.5, y: down + 2.1 },
      ]),
      { stroke: 'thin', fill: 'shade' },
    );
  const cord = (from: number, to: number): readonly SceneItem[] => [
    path(rectangle(from, y - 0.5, to - from, 1.1), { stroke: 'thin', fill: 'shade' }),
  ];
  return [
    ...cord(1, panelMm - 1),
    ...poles.map(pole),
    ...poles.flatMap((of) => [turn(of, y - 1.7), turn(of, y + 0.3)]),
    ...arrow({ x: 10, y: y - 6 }, { x: 19, y: y - 6 }, { hue: 'clay', headMm: 2 }),
    ...arrow({ x: 25, y: y - 6 }, { x: 34, y: y - 6 }, { hue: 'clay', headMm: 2 }),
  ];
}
