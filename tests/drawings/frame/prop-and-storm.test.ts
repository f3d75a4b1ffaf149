/** The drawings of the notched prop, of propped sashes with their cords, and of the sandbags before a storm. */
import { describe, expect, test } from 'vitest';
import { stepDrawing, type StepName } from '../../../scripts/drawings/frame/step-drawing.ts';
import type { Scene } from '../../../scripts/drawings/scene.ts';
import { propSizes } from '../../../scripts/structures/bale-props.ts';
import { demoProject } from '../../structures/project.ts';
import { frameOf } from '../../structures/read-frame.ts';
import { crossedTexts } from './ink.ts';
import { exactWords, letters, pathsOf, pointsOf, rows, textsOf, words } from './scenes.ts';

const all = { ...letters, twine: 'G', 'hold-downs': 'K', 'weight-boards': 'M' } as const;
const options = { alternative: 'What it shows.', words, letters: all, rows };
const hemispheres = ['north', 'south'] as const;

function sceneOf(step: StepName, hemisphere: 'north' | 'south', more = {}): Scene {
  const { geometry } = frameOf(demoProject(), hemisphere);
  return stepDrawing(geometry, step, { ...options, id: step, ...more });
}

const lettersIn = (scene: Scene): readonly string[] =>
  textsOf(scene)
    .map(({ text }) => text)
    .filter((text) => /^[A-M]$/.test(text))
    .toSorted();

describe.each(hemispheres)('%s of the equator', (hemisphere) => {
  test.each([
    { step: 'ground', called: ['B', 'G'] },
    { step: 'props', called: ['A', 'C', 'F', 'G'] },
    { step: 'vent', called: ['F', 'G'] },
    { step: 'storm', called: ['K', 'M'] },
  ] as const)(
    '$step calls each part by its letter, and no line runs through words',
    async ({ step, called }) => {
      const scene = sceneOf(step, hemisphere, { bagsInGust: 3 });
      expect(lettersIn(scene)).toEqual(called);
      expect(await crossedTexts(scene)).toEqual([]);
      for (const { x, y } of pathsOf(scene).flatMap(pointsOf)) {
        expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(scene.widthMm);
        expect(y).toBeLessThanOrEqual(scene.heightMm);
      }
    },
  );

  test('the bed is on the side of the north arrow only north of the equator', () => {
    const scene = sceneOf('props', hemisphere);
    const [sash] = textsOf(scene).filter(({ text }) => text === 'C');
    expect(sash!.x > scene.widthMm / 2).toBe(hemisphere === 'north');
  });
});

test('a storm: as many sandbags on each board as there are for each end of all sashes', () => {
  const bare = pathsOf(sceneOf('storm', 'north')).length;
  const drawn = (bagsInGust: number): number => pathsOf(sceneOf('storm', 'north', { bagsInGust })).length;
  // Three sashes, two boards: one more for each end is six more bags.
  expect(drawn(4) - drawn(3)).toBe(6);
  expect(drawn(1)).toBeGreaterThan(bare);
});

test('the prop is drawn with the notches that its numbers say', () => {
  const { geometry } = frameOf(demoProject());
  const { lengthMm, notchesMm } = propSizes(geometry)!;
  const scene = stepDrawing(geometry, 'props', { ...options, words: exactWords, id: 'props' });
  const said = textsOf(scene).flatMap(({ text }) => (/^\d+\.\d{4}$/.test(text) ? [Number(text)] : []));
  expect(said.toSorted((a, b) => a - b)).toEqual(
    [...notchesMm, lengthMm].map((mm) => expect.closeTo(mm, 3) as unknown),
  );
});
