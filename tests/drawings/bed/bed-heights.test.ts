import { describe, expect, test } from 'vitest';
import { bedHeights, type BedHeightsOptions } from '../../../scripts/drawings/bed/bed-heights.ts';
import { overlaps, textBox } from '../../../scripts/drawings/charts/text-width.ts';
import { crossedTexts } from '../frame/ink.ts';
import { pathsOf, pointsOf, textsOf } from '../frame/scenes.ts';
import { inch } from './beds.ts';

const height = { first: '24–72 in', second: '0.6–1.8 m' };
const block = (name: string, heightIn: number, at: readonly number[], first = 1) => ({
  name,
  heightMm: heightIn * inch,
  height,
  rows: at.map((place, index) => ({ number: first + index, distanceFromPolewardMm: place * inch })),
});
const frame: BedHeightsOptions = {
  id: 'heights',
  alternative: 'Heights.',
  insideDepthMm: 48 * inch,
  hemisphere: 'north',
  blocks: [block('Snap pea', 72, [4]), block('Carrot', 15, [20, 32, 44], 2)],
  cover: { heightMm: 6 * inch, name: 'glass', height: { first: '6″', second: '15 cm' } },
  words: { north: 'N', south: 'S' },
};
const uncovered = (blocks: BedHeightsOptions['blocks']): BedHeightsOptions => {
  const { cover, ...open } = frame;
  expect(cover).toBeDefined();
  return { ...open, blocks };
};
const drawings: readonly (readonly [string, BedHeightsOptions])[] = [
  ['a frame with glass', frame],
  [
    'three low crops of nearly one height',
    uncovered([
      block('Lettuce', 9, [8]),
      block('Beet', 8.5, [20], 2),
      block('Radish', 8, [32, 33, 34, 35], 3),
    ]),
  ],
  ['a tall crop on the sunny side', uncovered([block('Lettuce', 12, [8, 20]), block('Tomato', 72, [44], 3)])],
];
const cases = drawings.flatMap(([name, options]) =>
  (['north', 'south'] as const).flatMap((hemisphere) =>
    [165, 92].map(
      (widthMm) => [`${name}, ${hemisphere}, ${widthMm} mm`, { ...options, hemisphere, widthMm }] as const,
    ),
  ),
);

describe.each(cases)('%s', (_, options) => {
  const scene = bedHeights(options);
  test('no line runs through its words', async () => {
    expect(await crossedTexts(scene)).toEqual([]);
  });
  test('no words lie on others, and all are on the page', () => {
    const boxes = textsOf(scene).map(textBox);
    boxes.forEach((box, index) => {
      expect(boxes.slice(index + 1).some((other) => overlaps(box, other))).toBe(false);
      expect(box.left).toBeGreaterThanOrEqual(0);
      expect(box.right).toBeLessThanOrEqual(scene.widthMm);
      expect(box.bottom).toBeLessThanOrEqual(scene.heightMm + 0.5);
    });
  });
});

test('heights and depth are to one scale', () => {
  const stems = pathsOf(bedHeights(frame)).filter(
    (item) => item.stroke === 'seen' && pointsOf(item).length === 2,
  );
  const [pea, carrot] = stems.map((stem) => {
    const [foot, top] = pointsOf(stem);
    return { x: foot!.x, tall: foot!.y - top!.y };
  });
  expect(pea!.tall / carrot!.tall).toBeCloseTo(72 / 15, 9);
  expect((pea!.x - carrot!.x) / (16 * inch)).toBeCloseTo(pea!.tall / (72 * inch), 9);
});

test('north is on the right, seen toward the west, in both hemispheres', () => {
  const xOf = (hemisphere: 'north' | 'south', words: string): number =>
    textsOf(bedHeights({ ...frame, hemisphere })).find(({ text }) => text === words)!.x;
  for (const hemisphere of ['north', 'south'] as const)
    expect(xOf(hemisphere, 'N')).toBeGreaterThan(xOf(hemisphere, 'S'));
  expect(xOf('north', '1')).toBeGreaterThan(xOf('north', '4'));
  expect(xOf('south', '1')).toBeLessThan(xOf('south', '4'));
});
