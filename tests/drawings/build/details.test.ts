/** The drawings of how one thing is done: of the demonstration builds, and of sizes far from them. */
import { describe, expect, test } from 'vitest';
import { cornerDrawing } from '../../../scripts/drawings/build/details/corner.ts';
import { coursePlan } from '../../../scripts/drawings/build/details/course-plan.ts';
import { lashingDrawing } from '../../../scripts/drawings/build/details/lashing.ts';
import { netTrellis } from '../../../scripts/drawings/build/details/net-trellis.ts';
import { setOutDrawing } from '../../../scripts/drawings/build/details/set-out.ts';
import type { Scene } from '../../../scripts/drawings/scene.ts';
import { courseOutlines } from '../../../scripts/structures/keyhole-courses.ts';
import { layRing, ringSizes } from '../../../scripts/structures/keyhole-layout.ts';
import { screwPlan, screwsOf } from '../../../scripts/structures/raised-bed-screws.ts';
import { crossedTexts } from '../frame/ink.ts';
import { textsOf } from '../frame/scenes.ts';
import { keyholeWith, type KeyholeChoices } from '../../structures/keyhole-project.ts';
import { circlesOf, offPage, wordsOnWords } from './checks.ts';

const words = (first: string, second: string) => ({ first, second });
const inch = 25.4;

function corner(widthMm: number, [board, number, post, thick]: readonly [number, number, number, number]) {
  const plan = screwPlan(board * inch, number, post * inch);
  return cornerDrawing({
    id: 'corner',
    alternative: 'A corner.',
    widthMm,
    boardThicknessMm: thick * inch,
    boardWidthMm: board * inch,
    postMm: post * inch,
    holeFromStringMm: (thick + post / 2) * inch,
    screws: { end: screwsOf(plan, 'end', number), side: screwsOf(plan, 'side', number) },
    letters: { board: 'A', post: 'B', string: 'H' },
    words: {
      end: 'On the ends',
      side: 'On the long sides',
      above: 'From above: string, boards, post and hole',
      first: { end: words('¾″', '19 mm'), side: words('2″', '5 cm') },
      pitch: words('2½″', '6 cm'),
      hole: words('3¼″', '8 cm'),
    },
  });
}

function lashing(widthMm: number, poles: number): Scene {
  return lashingDrawing({
    id: 'lashing',
    alternative: 'A lashing.',
    widthMm,
    poles,
    turns: 6,
    tightTurns: 3,
    words: {
      weave: '1 Weave 6 times there and back',
      tighten: '2 Wind 3 times in each gap, pull tight, knot',
      strings: '3 Strings: twice around each pole',
      tie: words('8″', '20 cm'),
    },
  });
}

function setOut(widthMm: number): Scene {
  return setOutDrawing({
    id: 'set-out',
    alternative: 'A plant.',
    widthMm,
    letters: { plant: 'J', stake: 'M', board: 'A' },
    words: {
      before: 'In its pot: keep the leaves above the line',
      after: 'Set out, with its stake outside the bed',
      inGround: words('12″', '30 cm'),
      stake: words('6′', '1.83 m'),
    },
  });
}

function trellis(widthMm: number): Scene {
  return netTrellis({
    id: 'trellis',
    alternative: 'A net.',
    widthMm,
    words: {
      height: words('4–6 ft', '1.2–1.8 m'),
      spacing: words('6 ft', '1.83 m'),
      inGround: words('12 in', '30 cm'),
    },
  });
}

function ringOf(choices: KeyholeChoices = {}) {
  const ring = layRing(ringSizes(keyholeWith(choices)));
  if (!ring) throw new Error('no ring');
  return ring;
}

function course(
  widthMm: number,
  index: 0 | 1,
  hemisphere: 'north' | 'south',
  choices: KeyholeChoices = {},
): Scene {
  const ring = ringOf(choices);
  return coursePlan({
    id: 'course',
    alternative: 'A course.',
    widthMm,
    blocks: courseOutlines(ring, index),
    below: index === 0 ? [] : courseOutlines(ring, 0),
    radiusMm: ring.radiusMm,
    basketRadiusMm: ring.basketRadiusMm,
    notchAngle: ring.notchAngle,
    hemisphere,
    words: {
      north: 'N',
      across: words('6′', '1.83 m'),
      notch: words('24″', '61 cm'),
      basket: { name: 'basket', ...words('24″', '61 cm') },
    },
  });
}

const scenes: readonly (readonly [string, (widthMm: number) => Scene])[] = [
  ['a corner of two-by-sixes on a 4x4', (mm) => corner(mm, [5.5, 2, 3.5, 1.5])],
  ['a corner of two-by-tens on a 4x4', (mm) => corner(mm, [9.25, 4, 3.5, 1.5])],
  ['a corner of two-by-fours on a 6x6', (mm) => corner(mm, [3.5, 2, 5.5, 1.5])],
  ['a corner of one-by-eights on a cleat', (mm) => corner(mm, [7.25, 3, 1.5, 0.75])],
  ['a lashing of three poles', (mm) => lashing(mm, 3)],
  ['a lashing of six poles', (mm) => lashing(mm, 6)],
  ['a lashing of twelve poles', (mm) => lashing(mm, 12)],
  ['a tomato', setOut],
  ['a net on stakes', trellis],
  ['the first course of a keyhole bed, north', (mm) => course(mm, 0, 'north')],
  ['the second course of a keyhole bed, north', (mm) => course(mm, 1, 'north')],
  ['the first course of a keyhole bed, south', (mm) => course(mm, 0, 'south')],
  ['the second course of a keyhole bed, south', (mm) => course(mm, 1, 'south')],
];

describe.each(scenes.flatMap(([name, draw]) => [150, 84].map((widthMm) => ({ name, widthMm, draw }))))(
  '$name, $widthMm mm wide',
  ({ draw, widthMm }) => {
    const scene = draw(widthMm);
    test('ink stays on the page', () => {
      expect(offPage(scene)).toEqual([]);
    });
    test('words stay clear of words', () => {
      expect(wordsOnWords(scene)).toEqual([]);
    });
    test('no line runs through words', async () => {
      expect(await crossedTexts(scene)).toEqual([]);
    });
  },
);

test('every screw of both faces is on the corner, and a thin ring for each of the other face', () => {
  const { items } = corner(150, [5.5, 2, 3.5, 1.5]);
  const rings = circlesOf({ items } as Scene);
  expect(rings.filter(({ stroke }) => stroke === 'cut')).toHaveLength(4);
  expect(rings.filter(({ stroke }) => stroke === 'thin')).toHaveLength(4);
});

test('blocks are numbered in the order of laying, as many as the course has', () => {
  const ring = ringOf();
  const count = courseOutlines(ring, 1).length;
  const numbers = textsOf(course(150, 1, 'north'))
    .map(({ text }) => Number(text))
    .filter((number) => number > 0);
  expect(numbers).toEqual(Array.from({ length: count }, (_, index) => index + 1));
  // The demonstration bed: 22 whole in the ring, and on each side of the notch two whole between two halves.
  expect(count).toBe(22 + 2 * 4);
  expect(courseOutlines(ring, 1).filter(({ half }) => half)).toHaveLength(4);
  expect(courseOutlines(ring, 0)).toHaveLength(25 + 2 * 2);
});

test('south of the equator the notch opens north, at the top of the page', () => {
  const notchText = (scene: Scene) => textsOf(scene).find(({ text }) => text.startsWith('24″ ('))!;
  expect(notchText(course(150, 0, 'north')).y).toBeGreaterThan(100);
  expect(notchText(course(150, 0, 'south')).y).toBeLessThan(12);
});
