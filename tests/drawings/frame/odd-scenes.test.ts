import { describe, expect, test } from 'vitest';
import { partLetters } from '../../../scripts/sheets/frame-drawings.ts';
import { overlaps } from '../../../scripts/drawings/charts/text-width.ts';
import { oddFrames, oddProject } from '../../structures/odd-frames.ts';
import { frameOf } from '../../structures/read-frame.ts';
import { crossedTexts, inkBox } from './ink.ts';
import { allScenes, textsOf, pathsOf, pointsOf, words } from './scenes.ts';

const cases = oddFrames.flatMap((frame) =>
  (['north', 'south'] as const).map((hemisphere) => ({ ...frame, hemisphere, frame })),
);

describe.each(cases)('$name ($hemisphere)', ({ frame, hemisphere }) => {
  const project = oddProject(frame);
  const scenes = allScenes(frameOf(project, hemisphere).geometry, words, partLetters(project));

  test('no line runs through words', async () => {
    for (const [name, scene] of scenes) expect(await crossedTexts(scene), name).toEqual([]);
  });

  test('no words overlap', () => {
    for (const [name, scene] of scenes) {
      const boxes = textsOf(scene).map((item) => ({ text: item.text, box: inkBox(item) }));
      boxes.forEach(({ text, box }, index) => {
        for (const other of boxes.slice(index + 1))
          expect(overlaps(box, other.box), `${name}: ${text} and ${other.text}`).toBe(false);
      });
    }
  });

  test('all of it is on the page', () => {
    for (const [name, scene] of scenes) {
      const spots = [
        ...pathsOf(scene).flatMap(pointsOf),
        ...textsOf(scene).flatMap((item) => {
          const { left, right, top, bottom } = inkBox(item);
          return [
            { x: left, y: top },
            { x: right, y: bottom },
          ];
        }),
      ];
      const where = `${name} of ${scene.widthMm} by ${scene.heightMm}`;
      expect(Math.min(...spots.flatMap(({ x, y }) => [x, y])), where).toBeGreaterThanOrEqual(0);
      expect(Math.max(...spots.map(({ x }) => x)), where).toBeLessThanOrEqual(scene.widthMm);
      expect(Math.max(...spots.map(({ y }) => y)), where).toBeLessThanOrEqual(scene.heightMm);
    }
  });
});
