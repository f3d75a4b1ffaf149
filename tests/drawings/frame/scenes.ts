import { stepDrawing, stepNames } from '../../../scripts/drawings/frame/step-drawing.ts';
import { framePlan } from '../../../scripts/drawings/frame/plan.ts';
import { frameSection } from '../../../scripts/drawings/frame/section.ts';
import type { FrameWords, PartLetters, SownRow } from '../../../scripts/drawings/frame/words.ts';
import type { Scene, SceneItem } from '../../../scripts/drawings/scene.ts';
import type { FrameGeometry } from '../../../scripts/structures/geometry.ts';

export const letters: PartLetters = {
  bales: 'A',
  stakes: 'B',
  sashes: 'C',
  'loose-straw-bales': 'D',
  'soil-litres': 'E',
  props: 'F',
};

export const rows: readonly SownRow[] = [
  { distanceFromPolewardMm: 150, plantSpacingMm: 50, tall: true, letter: 'H' },
  { distanceFromPolewardMm: 480, plantSpacingMm: 50, tall: false, letter: 'J' },
  { distanceFromPolewardMm: 790, plantSpacingMm: 50, tall: false, letter: 'J' },
  { distanceFromPolewardMm: 1090, plantSpacingMm: 50, tall: false, letter: 'J' },
];

/** Words as long as the longest that a sheet prints. */
export const words: FrameWords = {
  north: 'N',
  south: 'S',
  sun: 'Sun',
  plantingMix: 'planting mix',
  ground: 'ground',
  bearing: 'bearing',
  angle: (degrees) => `${degrees.toFixed(1)}°`,
  length: (mm) => {
    const inches = Math.round(mm / 25.4);
    const first = inches < 36 ? `${inches} 3⁄4″` : `${Math.floor(inches / 12)}′ ${inches % 12} 3⁄4″`;
    return { first, second: mm < 1000 ? `${Math.round(mm / 10)} cm` : `${(mm / 1000).toFixed(2)} m` };
  },
};

/** The same words with every length as its exact number of millimetres. */
export const exactWords: FrameWords = { ...words, length: (mm) => ({ first: mm.toFixed(4) }) };

/** Every drawing of a frame, by name. */
export function allScenes(
  geometry: FrameGeometry,
  spoken: FrameWords = words,
  lettered: PartLetters = letters,
): readonly (readonly [string, Scene])[] {
  const options = { alternative: 'What it shows.', words: spoken, letters: lettered, rows };
  return [
    ...stepNames.map((name) => [name, stepDrawing(geometry, name, { ...options, id: name })] as const),
    ['plan', framePlan(geometry, { ...options, id: 'plan' })],
    ['section', frameSection(geometry, { ...options, id: 'section' })],
  ];
}

export type PathItem = Extract<SceneItem, { kind: 'path' }>;
export type TextItem = Extract<SceneItem, { kind: 'text' }>;

export const pathsOf = ({ items }: Scene): readonly PathItem[] =>
  items.filter((item) => item.kind === 'path');
export const textsOf = ({ items }: Scene): readonly TextItem[] =>
  items.filter((item) => item.kind === 'text');

/** The corner points of a path, control points left out. */
export function pointsOf({ commands }: PathItem): readonly { readonly x: number; readonly y: number }[] {
  return commands.flatMap((command) => {
    switch (command[0]) {
      case 'M':
      case 'L':
        return [{ x: command[1], y: command[2] }];
      case 'C':
        return [{ x: command[5], y: command[6] }];
      case 'Z':
        return [];
    }
  });
}
