import { describe, expect, test } from 'vitest';
import { ringPlan, type RingPlanOptions } from '../../../scripts/drawings/bed/ring-plan.ts';
import type { SceneItem } from '../../../scripts/drawings/scene.ts';
import { crossedTexts } from '../frame/ink.ts';

/** A keyhole ring: the wall of the notch takes more of the angle near the middle. */
const keyhole: RingPlanOptions = {
  id: 'ring-plan',
  alternative: 'A ring with a notch.',
  innerRadiusMm: 300,
  outerRadiusMm: 700,
  openAngleAt: (radiusMm) => 0.34 + Math.asin(200 / radiusMm),
  rows: [
    { number: 1, name: '1  Swiss chard', spacing: 'every 8 in', radiusMm: 400, plants: 9, tall: true },
    { number: 2, name: '2  Lettuce', spacing: 'every 6 in', radiusMm: 580, plants: 20, tall: false },
  ],
  hemisphere: 'north',
  words: { north: 'N' },
};
const closed: RingPlanOptions = {
  ...keyhole,
  openAngleAt: () => 0,
  poles: [
    { x: 0, y: 500 },
    { x: 400, y: -300 },
    { x: -400, y: -300 },
  ],
};

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Every corner of lines, and the ends of every circle across. */
function points(items: readonly SceneItem[]): readonly Spot[] {
  return items.flatMap((item): readonly Spot[] => {
    if (item.kind === 'text') return [item];
    if (item.kind === 'circle')
      return [-1, 1].flatMap((side) => [
        { x: item.x + side * item.radius, y: item.y },
        { x: item.x, y: item.y + side * item.radius },
      ]);
    return item.commands.flatMap((command) =>
      command[0] === 'Z' ? [] : [{ x: command.at(-2) as number, y: command.at(-1) as number }],
    );
  });
}

describe.each([
  ['with a notch', keyhole],
  ['closed, with poles', closed],
])('a ring %s', (_, options) => {
  test.each([150, 92])('stays on its page at a width of %d mm', (widthMm) => {
    const scene = ringPlan({ ...options, widthMm });
    const all = points(scene.items);
    expect(all.length).toBeGreaterThan(50);
    for (const { x, y } of all) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(scene.widthMm);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(scene.heightMm);
    }
  });

  test('has a mark for each plant and pole', () => {
    const circles = ringPlan(options).items.filter((item) => item.kind === 'circle');
    const poles = options.poles?.length ?? 0;
    // Lettuce is a dot; so is the end of the line at each of the two names. The ring without a notch is two circles.
    expect(circles.filter(({ fill }) => fill === 'ink')).toHaveLength(20 + 2);
    expect(circles.filter(({ fill, stroke }) => fill === 'paper' && stroke === 'seen')).toHaveLength(
      9 + poles,
    );
  });

  test.each([150, 92])('has no text that a line or another text crosses at %d mm', async (widthMm) => {
    expect(await crossedTexts(ringPlan({ ...options, widthMm }))).toEqual([]);
  });
});

test('the notch opens down the page in the north and up it in the south', () => {
  const middleY = 6 + 37;
  const soil = (hemisphere: 'north' | 'south') => {
    const [first] = ringPlan({ ...keyhole, hemisphere }).items;
    const all = points(first ? [first] : []);
    // Near the middle line the soil has points only on the side away from the notch.
    return all.filter(({ x }) => Math.abs(x - (6 + 37)) < 3).map(({ y }) => y - middleY);
  };
  expect(soil('north').every((y) => y < 0)).toBe(true);
  expect(soil('south').every((y) => y > 0)).toBe(true);
  expect(soil('north').length).toBeGreaterThan(2);
});
