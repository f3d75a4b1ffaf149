/** Small signs that several drawings share: letter balloons, the north arrow, the sun and a boot for scale. */
import { baselineFor } from './dimension.ts';
import { along, circle, path, placed, polygon, segment, subtract, text, unit, type Point } from './path.ts';
import type { PathCommand, SceneItem } from './scene.ts';

const balloonRadiusMm = 2.35;

/** The letter of a part in a ring. */
export function balloon(centre: Point, letter: string): readonly SceneItem[] {
  return [
    circle(centre, balloonRadiusMm, { stroke: 'seen', fill: 'paper' }),
    text({ x: centre.x, y: baselineFor(centre.y) }, letter, { anchor: 'middle', style: 'strong' }),
  ];
}

/** A balloon with a line to the part, which a dot marks. */
export function callout(part: Point, offset: Point, letter: string): readonly SceneItem[] {
  const centre = { x: part.x + offset.x, y: part.y + offset.y };
  const edge = along(centre, unit(subtract(part, centre)), balloonRadiusMm);
  return [
    path(segment(edge, part), { stroke: 'thin' }),
    circle(part, 0.55, { fill: 'ink' }),
    ...balloon(centre, letter),
  ];
}

/** An arrow to the north with its letter past the tip. `direction` is north on the page, `centre` the middle of the arrow. */
export function northArrow(
  centre: Point,
  direction: Point,
  letter: string,
  lengthMm = 9,
): readonly SceneItem[] {
  const north = unit(direction);
  const side = { x: -north.y, y: north.x };
  const at = (ahead: number, aside = 0): Point => along(along(centre, north, ahead), side, aside);
  const [foot, notch, tip] = [at(-lengthMm / 2), at(lengthMm * 0.05), at(lengthMm / 2)];
  const wing = lengthMm * 0.17;
  const words = at(lengthMm / 2 + 2.6);
  return [
    path(segment(foot, notch), { stroke: 'seen' }),
    path(polygon([tip, at(-lengthMm * 0.05, -wing), notch]), { stroke: 'thin', fill: 'paper' }),
    path(polygon([tip, at(-lengthMm * 0.05, wing), notch]), { stroke: 'thin', fill: 'ink' }),
    text({ x: words.x, y: baselineFor(words.y) }, letter, { anchor: 'middle', style: 'strong' }),
  ];
}

/** A disc with rays. */
export function sun(centre: Point, radiusMm = 2.2): readonly SceneItem[] {
  const rays = Array.from({ length: 8 }, (_, index) => {
    const angle = (index * Math.PI) / 4;
    const out = { x: Math.cos(angle), y: Math.sin(angle) };
    return segment(along(centre, out, radiusMm * 1.4), along(centre, out, radiusMm * 2));
  });
  return [
    circle(centre, radiusMm, { stroke: 'seen', fill: 'paper', hue: 'clay' }),
    path(rays.flat(), { stroke: 'seen', hue: 'clay' }),
  ];
}

/** Height of the boot as worn, in millimetres of the real thing: a common rubber boot of about 14 in. */
export const bootHeightMm = 350;

/** A rubber boot seen from the side, toe to the right, standing on `ground`; `scale` as in the drawing around it. */
export function boot(ground: Point, scale: number): readonly SceneItem[] {
  const size = (bootHeightMm * scale) / 14;
  const draw = (commands: readonly PathCommand[]): readonly PathCommand[] =>
    placed(commands, ground, size, -size);
  return [
    path(draw(bootOutline), { stroke: 'thin', fill: 'shade' }),
    path(draw(bootSole), { fill: 'ink' }),
    path(
      draw([
        ['M', -2.6, 12.8],
        ['L', 2.55, 12.8],
      ]),
      { stroke: 'thin' },
    ),
  ];
}

/** In inches, y up, the middle of the ankle above the origin. */
const bootOutline: readonly PathCommand[] = [
  ['M', -2.6, 14],
  ['L', 2.6, 14],
  ['C', 2.5, 11, 2.1, 8, 2.3, 6],
  ['C', 2.5, 4.4, 4.6, 4, 6.6, 3.4],
  ['C', 8.4, 2.9, 8.9, 1.9, 8.8, 0.7],
  ['L', -2.5, 0.7],
  ['C', -3.1, 3, -2.5, 4.4, -2.3, 6.6],
  ['C', -2.2, 9, -2.5, 11.6, -2.6, 14],
  ['Z'],
];

const bootSole: readonly PathCommand[] = [
  ['M', -2.7, 0.9],
  ['L', 8.9, 0.9],
  ['C', 9, 0.4, 8.8, 0, 8.2, 0],
  ['L', 2.6, 0],
  ['L', 2.1, 0.4],
  ['L', 0.9, 0.4],
  ['L', 0.7, 0],
  ['L', -2.6, 0],
  ['Z'],
];
