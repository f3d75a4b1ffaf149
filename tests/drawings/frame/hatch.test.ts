import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dotsInside, hatchLines } from '../../../scripts/drawings/hatch.ts';
import { rectanglePoints, type Point } from '../../../scripts/drawings/path.ts';

const lengthOf = (commands: ReturnType<typeof hatchLines>): number => {
  let sum = 0;
  let at: Point = { x: 0, y: 0 };
  for (const command of commands) {
    if (command[0] !== 'M' && command[0] !== 'L') throw new Error('hatching is made of lines');
    const next = { x: command[1], y: command[2] };
    if (command[0] === 'L') sum += Math.hypot(next.x - at.x, next.y - at.y);
    at = next;
  }
  return sum;
};

describe('hatching', () => {
  test('level lines across a rectangle run from edge to edge', () => {
    const commands = hatchLines(rectanglePoints(10, 9.5, 20, 3), { angleDeg: 0, spacingMm: 1 });
    expect(commands).toHaveLength(6);
    expect(lengthOf(commands)).toBeCloseTo(60, 9);
  });

  test('a hollow of the shape stays empty', () => {
    // A U: 30 wide, the middle third open from above.
    const outline = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 10 },
      { x: 20, y: 10 },
      { x: 20, y: 0 },
      { x: 30, y: 0 },
      { x: 30, y: 20 },
      { x: 0, y: 20 },
    ];
    const commands = hatchLines(outline, { angleDeg: 0, spacingMm: 20, offsetMm: 5 });
    expect(commands).toEqual([
      ['M', 0, 5],
      ['L', 10, 5],
      ['M', 20, 5],
      ['L', 30, 5],
    ]);
  });

  test('lines of two shapes that touch run on without a step', () => {
    const options = { angleDeg: 45, spacingMm: 1.5 };
    const [left, right, both] = [
      hatchLines(rectanglePoints(0, 0, 10, 8), options),
      hatchLines(rectanglePoints(10, 0, 10, 8), options),
      hatchLines(rectanglePoints(0, 0, 20, 8), options),
    ];
    expect(lengthOf(left) + lengthOf(right)).toBeCloseTo(lengthOf(both), 6);
  });

  test('area is length of line times spacing, whatever the angle', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 179 }),
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        (angleDeg, spacingMm) => {
          const commands = hatchLines(rectanglePoints(3, 4, 60, 40), { angleDeg, spacingMm });
          // Off by up to one line at either side.
          expect(Math.abs(lengthOf(commands) * spacingMm - 2400)).toBeLessThanOrEqual(
            2 * spacingMm * Math.hypot(60, 40),
          );
          for (const command of commands) {
            if (command[0] === 'Z' || command[0] === 'C') continue;
            expect(command[1]).toBeGreaterThan(3 - 1e-6);
            expect(command[1]).toBeLessThan(63 + 1e-6);
            expect(command[2]).toBeGreaterThan(4 - 1e-6);
            expect(command[2]).toBeLessThan(44 + 1e-6);
          }
        },
      ),
    );
  });

  test('without a spacing it is refused', () => {
    expect(() => hatchLines(rectanglePoints(0, 0, 1, 1), { angleDeg: 0, spacingMm: 0 })).toThrow(RangeError);
  });
});

test('dots keep their distance from the edge and cover the shape evenly', () => {
  const dots = dotsInside(rectanglePoints(1, 1, 40, 20), 2, 0.7);
  for (const { x, y } of dots) {
    expect(Math.min(x - 1, 41 - x, y - 1, 21 - y)).toBeGreaterThanOrEqual(0.7 - 1e-9);
  }
  // One dot to 2 × 1.5 mm of the 38.6 × 18.6 mm that are left.
  expect(Math.abs(dots.length - (38.6 * 18.6) / 3)).toBeLessThan(30);
});
