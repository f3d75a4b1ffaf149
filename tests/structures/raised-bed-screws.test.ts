import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromHeld, toHeld } from '../../scripts/quantities/units.ts';
import { screwPlan, screwsOf } from '../../scripts/structures/raised-bed-screws.ts';

const inch = (value: number): number => toHeld(value, 'in');

describe('screws of a corner, by hand', () => {
  test.each([
    // (5.5 − 1.5)/3 = 1.333, down to 1 1/4; 3.5/7 = 1/2.
    ['a 2x6 with two screws on a 4x4', 5.5, 2, 3.5, { edge: 0.75, step: 1.25, pitch: 2.5, aside: 0.5 }],
    // (9.25 − 1.5)/7 = 1.107, down to 1.
    ['a 2x10 with four screws on a 4x4', 9.25, 4, 3.5, { edge: 0.75, step: 1, pitch: 2, aside: 0.5 }],
    // (3.5 − 1.5)/3 = 0.667, down to 5/8; 1.5/7 = 0.214, down to 1/8.
    ['a 2x4 with two screws on a cleat', 3.5, 2, 1.5, { edge: 0.75, step: 0.625, pitch: 1.25, aside: 0.125 }],
  ])('%s', (_, board, number, post, wanted) => {
    const plan = screwPlan(inch(board), number, inch(post));
    expect(fromHeld(plan.edgeMm, 'in')).toBeCloseTo(wanted.edge, 9);
    expect(fromHeld(plan.stepMm, 'in')).toBeCloseTo(wanted.step, 9);
    expect(fromHeld(plan.pitchMm, 'in')).toBeCloseTo(wanted.pitch, 9);
    expect(fromHeld(plan.asideMm, 'in')).toBeCloseTo(wanted.aside, 9);
  });

  test('by turns to both sides of the middle of the post', () => {
    const places = screwsOf(screwPlan(inch(9.25), 4, inch(3.5)), 'end', 4);
    expect(places.map(({ asideMm }) => Math.sign(asideMm))).toEqual([-1, 1, -1, 1]);
  });
});

test('no two screws of the two faces meet, none is near an edge, and neighbours do not share a line of the grain', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(3.5, 5.5, 7.25, 9.25, 11.25),
      fc.constantFrom(1.5, 3.5, 5.5),
      (boardIn, postIn) => {
        const number = Math.max(2, Math.ceil(boardIn / 3));
        const plan = screwPlan(inch(boardIn), number, inch(postIn));
        const [ends, sides] = (['end', 'side'] as const).map((face) => screwsOf(plan, face, number)) as [
          ReturnType<typeof screwsOf>,
          ReturnType<typeof screwsOf>,
        ];
        for (const one of ends)
          for (const other of sides)
            expect(Math.abs(one.downMm - other.downMm)).toBeGreaterThanOrEqual(inch(0.5));
        for (const { downMm } of [...ends, ...sides]) {
          expect(downMm).toBeGreaterThanOrEqual(inch(0.75) - 1e-9);
          expect(downMm).toBeLessThanOrEqual(inch(boardIn - 0.75) + 1e-9);
        }
        for (const face of [ends, sides])
          face.slice(1).forEach((place, index) => {
            expect(place.asideMm).not.toBe(face[index]!.asideMm);
          });
      },
    ),
  );
});
