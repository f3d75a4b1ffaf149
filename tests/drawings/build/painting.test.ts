import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boxSolid, prism, project, type Camera } from '../../../scripts/drawings/axonometric.ts';
import { bodiesOf } from '../../../scripts/drawings/build/bodies.ts';
import { areaOf } from '../../../scripts/drawings/build/clearances.ts';
import { paintingOrder } from '../../../scripts/drawings/build/painting-order.ts';
import { cutOf, facesOf, partBelow } from '../../../scripts/drawings/build/solids.ts';
import { axesOf } from '../../../scripts/drawings/build/view.ts';
import type { Member, Solid } from '../../../scripts/structures/assembly.ts';
import type { Spot } from '../../../scripts/structures/geometry.ts';

const camera: Camera = { turnDeg: 24, tiltDeg: 34, scale: 0.1, origin: { x: 0, y: 0 } };
const spot = (x: number, y: number, z: number): Spot => ({ x, y, z });

describe('painting from back to front', () => {
  const order = (...solids: readonly Solid[]): readonly number[] =>
    paintingOrder(
      solids.map((solid, index) => ({ solid, index })),
      camera,
    ).map(({ index }) => index);

  test('two poles that cross, which no face of either parts: the nearer is painted last', () => {
    const pole = (from: Spot, to: Spot): Solid =>
      prism(
        [
          from,
          spot(from.x + 40, from.y, from.z),
          spot(from.x + 40, from.y + 40, from.z),
          spot(from.x, from.y + 40, from.z),
        ],
        {
          x: to.x - from.x,
          y: to.y - from.y,
          z: to.z - from.z,
        },
      );
    const near = pole(spot(-600, 0, 0), spot(600, 0, 2000));
    const far = pole(spot(600, 90, 0), spot(-600, 90, 2000));
    expect(order(near, far)).toEqual([1, 0]);
    expect(order(far, near)).toEqual([0, 1]);
  });

  test('a sheet on a box covers its top, one under it is covered', () => {
    const box = boxSolid(spot(0, 0, 0), spot(1000, 1000, 300));
    const sheet = (z: number): Solid => ({
      faces: [[spot(0, 0, z), spot(1000, 0, z), spot(1000, 1000, z), spot(0, 1000, z)]],
    });
    expect(order(sheet(300), box)).toEqual([1, 0]);
    expect(order(box, sheet(0))).toEqual([1, 0]);
  });

  test('a cord round a box lies over its near side and behind its far side', () => {
    const box = boxSolid(spot(0, 0, 0), spot(1000, 200, 600));
    const cord = (y: number): Solid => ({ faces: [[spot(0, y, 300), spot(1000, y, 300)]] });
    expect(order(cord(-2), box, cord(202))).toEqual([2, 1, 0]);
  });

  /** Boxes in cells of a grid, so that no two share space; some touch. */
  const cell = fc.integer({ min: 0, max: 3 });
  const boxes = fc
    .uniqueArray(fc.record({ x: cell, y: cell, z: cell }), {
      minLength: 2,
      maxLength: 14,
      selector: ({ x, y, z }) => `${x},${y},${z}`,
    })
    .map((cells) =>
      cells.map(({ x, y, z }) => ({
        from: spot(x * 90, y * 50, z * 40),
        to: spot(x * 90 + 90, y * 50 + 50, z * 40 + 40),
      })),
    );

  test('of boxes, whatever is nearer at a point of the page is painted later', () => {
    const { toward } = axesOf(camera);
    fc.assert(
      fc.property(
        boxes,
        fc.array(fc.tuple(fc.nat(359), fc.integer({ min: -60, max: 240 })), { minLength: 20, maxLength: 20 }),
        (list, places) => {
          const painted = paintingOrder(
            list.map((box) => ({ ...box, solid: boxSolid(box.from, box.to) })),
            camera,
          );
          for (const [x, z] of places) {
            const through = spot(x + 0.3, 100, z + 0.4);
            const hits = painted.flatMap(({ from, to }) => {
              const reach = entry(from, to, through, toward);
              return reach === undefined ? [] : [reach];
            });
            if (hits.length > 0) expect(hits.at(-1)).toBeCloseTo(Math.max(...hits), 4);
          }
        },
      ),
    );
  });

  /** How near to the viewer the line of sight through a spot meets a box; undefined when it passes by or grazes it. */
  function entry(from: Spot, to: Spot, through: Spot, toward: Spot): number | undefined {
    let [far, near] = [-Infinity, Infinity];
    for (const axis of ['x', 'y', 'z'] as const) {
      const [a, b] = [(from[axis] - through[axis]) / toward[axis], (to[axis] - through[axis]) / toward[axis]];
      far = Math.max(far, Math.min(a, b));
      near = Math.min(near, Math.max(a, b));
    }
    return near - far > 1 ? near : undefined;
  }
});

describe('bodies cut by a plane', () => {
  const up = (level: number) => ({ normal: spot(0, 0, 1), level });

  test('the part of a box below a level is the lower box', () => {
    const part = partBelow(boxSolid(spot(0, 0, 0), spot(100, 200, 300)), up(120))!;
    const zs = part.faces.flat().map(({ z }) => z);
    expect([Math.min(...zs), Math.max(...zs)]).toEqual([0, 120]);
    expect(facesOf(part)).toHaveLength(6);
    expect(facesOf(part).filter(({ normal }) => normal.z > 0.99)).toHaveLength(1);
  });

  test.each([
    ['wholly below', 400, true],
    ['wholly above', -5, false],
  ] as const)('a box that is %s', (_, level, kept) => {
    expect(partBelow(boxSolid(spot(0, 0, 0), spot(100, 200, 300)), up(level)) !== undefined).toBe(kept);
  });

  test('the cut of a slanting plane through a box is flat and convex, with the area of its slope', () => {
    const box = boxSolid(spot(0, 0, 0), spot(100, 100, 1000));
    // Through the middle at 45 degrees: 100 wide and 100 times the root of 2 long.
    const half = Math.SQRT1_2;
    const cut = cutOf(box, { normal: spot(half, 0, half), level: half * 550 });
    expect(cut).toHaveLength(4);
    const side: Camera = { turnDeg: 0, tiltDeg: 90, scale: 1, origin: { x: 0, y: 0 } };
    expect(areaOf(cut.map((corner) => project(side, corner)))).toBeCloseTo(10_000, 6);
  });

  test('a sheet is cut in a line', () => {
    const sheet = { faces: [[spot(0, 0, 0), spot(100, 0, 0), spot(100, 0, 50), spot(0, 0, 50)]] };
    expect(cutOf(sheet, { normal: spot(1, 0, 0), level: 40 })).toHaveLength(2);
    expect(partBelow(sheet, { normal: spot(1, 0, 0), level: 40 })!.faces).toHaveLength(1);
  });
});

describe('what stands in something', () => {
  const soil: Member = {
    role: 'soil',
    surface: 'soil',
    stage: 'a',
    solid: boxSolid(spot(0, 0, 0), spot(900, 900, 250)),
  };
  const post = (from: number, to: number): Member => ({
    role: 'post',
    surface: 'wood',
    stage: 'a',
    solid: boxSolid(spot(100, 100, from), spot(190, 190, to)),
  });
  const lows = (member: Member): readonly (readonly [number, number])[] =>
    bodiesOf([soil, member].map((each) => ({ member: each, weight: 'whole' })))
      .above.filter((body) => body.member.role === 'post')
      .map(({ solid }) => {
        const zs = solid.faces.flat().map(({ z }) => z);
        return [Math.min(...zs), Math.max(...zs)];
      });

  test.each([
    ['a post that stands out of the soil is seen from the soil up', post(0, 400), [[250, 400]]],
    ['a post in the ground and in the soil, likewise', post(-300, 400), [[250, 400]]],
    ['what the soil covers is not seen', post(0, 200), []],
    ['what stands on the soil is seen whole', post(250, 400), [[250, 400]]],
  ] as const)('%s', (_, member, expected) => {
    expect(lows(member)).toEqual(expected);
  });

  test('what is in the ground is told apart from what stands on it', () => {
    const { above, buried } = bodiesOf([{ member: post(-300, 400), weight: 'whole' }]);
    const range = (solid: Solid): readonly number[] => {
      const zs = solid.faces.flat().map(({ z }) => z);
      return [Math.min(...zs), Math.max(...zs)];
    };
    expect(range(above[0]!.solid)).toEqual([0, 400]);
    expect(range(buried[0]!.solid)).toEqual([-300, 0]);
  });
});
