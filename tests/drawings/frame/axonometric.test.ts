import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  backToFront,
  boxSolid,
  cameraFor,
  project,
  visibleFaces,
  type Camera,
  type Spot,
} from '../../../scripts/drawings/axonometric.ts';

const camera: Camera = { turnDeg: 24, tiltDeg: 36, scale: 1, origin: { x: 0, y: 0 } };

describe('projection', () => {
  test('x runs right and down, y right and up, z up', () => {
    const origin = project(camera, { x: 0, y: 0, z: 0 });
    const [x, y, z] = [
      project(camera, { x: 1, y: 0, z: 0 }),
      project(camera, { x: 0, y: 1, z: 0 }),
      project(camera, { x: 0, y: 0, z: 1 }),
    ];
    expect(x.x > origin.x && x.y > origin.y).toBe(true);
    expect(y.x > origin.x && y.y < origin.y).toBe(true);
    expect(z.x).toBeCloseTo(origin.x, 12);
    expect(z.y).toBeCloseTo(-Math.cos((36 * Math.PI) / 180), 12);
  });

  test('looking straight down without a turn is a plan', () => {
    const plan: Camera = { turnDeg: 0, tiltDeg: 90, scale: 2, origin: { x: 10, y: 20 } };
    const spot = project(plan, { x: 3, y: 4, z: 5 });
    expect(spot.x).toBeCloseTo(16, 9);
    expect(spot.y).toBeCloseTo(12, 9);
  });

  test('a camera shows all spots inside its frame and touches it', () => {
    const coordinate = fc.integer({ min: -1000, max: 1000 });
    const spots = fc.array(fc.record({ x: coordinate, y: coordinate, z: coordinate }), {
      minLength: 3,
      maxLength: 12,
    });
    fc.assert(
      fc.property(spots, (list) => {
        const frame = { x: 5, y: 7, width: 60, height: 40 };
        const fitted = cameraFor(list, { turnDeg: 24, tiltDeg: 36 }, frame);
        fc.pre(Number.isFinite(fitted.scale));
        const points = list.map((spot) => project(fitted, spot));
        const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
        expect(Math.min(...xs)).toBeGreaterThan(5 - 1e-6);
        expect(Math.max(...xs)).toBeLessThan(65 + 1e-6);
        expect(Math.min(...ys)).toBeGreaterThan(7 - 1e-6);
        expect(Math.max(...ys)).toBeCloseTo(47, 6);
      }),
    );
  });
});

test('of a box the top, the front and the right end are seen', () => {
  const box = boxSolid({ x: 0, y: 0, z: 0 }, { x: 1, y: 1, z: 1 });
  expect(
    visibleFaces(box, camera)
      .map(({ side }) => side)
      .sort(),
  ).toEqual(['end', 'front', 'top']);
});

describe('painting from back to front', () => {
  interface Box {
    readonly from: Spot;
    readonly to: Spot;
  }

  /** Boxes in cells of a grid, so that no two share space; some touch. */
  const cell = fc.integer({ min: 0, max: 3 });
  const boxes = fc
    .uniqueArray(fc.record({ x: cell, y: cell, z: cell }), {
      minLength: 2,
      maxLength: 14,
      selector: ({ x, y, z }) => `${x},${y},${z}`,
    })
    .map((cells) =>
      cells.map(({ x, y, z }): Box => ({
        from: { x: x * 90, y: y * 50, z: z * 40 },
        to: { x: x * 90 + 90, y: y * 50 + 50, z: z * 40 + 40 },
      })),
    );

  test('whatever is nearer to the viewer at a point of the page is painted later', () => {
    fc.assert(
      fc.property(
        boxes,
        fc.array(fc.tuple(fc.nat(359), fc.integer({ min: -60, max: 240 })), { minLength: 30, maxLength: 30 }),
        (list, places) => {
          const order = backToFront(
            list.map((box) => ({ ...box, solid: boxSolid(box.from, box.to) })),
            camera,
          );
          for (const [x, z] of places) {
            // A point of the page, as the line of sight through a spot of space.
            const through = { x: x + 0.3, y: 100, z: z + 0.4 };
            const hits = order.flatMap((box, index) => {
              const reach = entry(box, through);
              return reach === undefined ? [] : [{ index, reach }];
            });
            const nearest = Math.max(...hits.map(({ reach }) => reach));
            const last = hits.at(-1);
            if (last) expect(last.reach).toBeCloseTo(nearest, 4);
          }
        },
      ),
    );
  });

  /** How near to the viewer the line of sight through a spot meets a box; undefined when it passes by or grazes it. */
  function entry({ from, to }: Box, through: Spot): number | undefined {
    const [turn, tilt] = [(camera.turnDeg * Math.PI) / 180, (camera.tiltDeg * Math.PI) / 180];
    const toward = {
      x: Math.sin(turn) * Math.cos(tilt),
      y: -Math.cos(turn) * Math.cos(tilt),
      z: Math.sin(tilt),
    };
    let [far, near] = [-Infinity, Infinity];
    for (const axis of ['x', 'y', 'z'] as const) {
      const [a, b] = [(from[axis] - through[axis]) / toward[axis], (to[axis] - through[axis]) / toward[axis]];
      far = Math.max(far, Math.min(a, b));
      near = Math.min(near, Math.max(a, b));
    }
    return near - far > 1e-3 ? near : undefined;
  }
});
