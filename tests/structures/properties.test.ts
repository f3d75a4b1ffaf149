import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toHeld } from '../../scripts/quantities/units.ts';
import { baleColdFrame, isFrame, type Frame } from '../../scripts/structures/bale-cold-frame.ts';
import type { Box } from '../../scripts/structures/geometry.ts';
import { demoProject, projectWith, type Choices } from './project.ts';
import { frameOf, numberOf } from './read-frame.ts';

const eighths = (low: number, high: number): fc.Arbitrary<number> =>
  fc.integer({ min: low * 8, max: high * 8 }).map((value) => value / 8);

const sashList = fc.array(fc.tuple(eighths(16, 48), eighths(36, 90)), { minLength: 1, maxLength: 8 });

/** Frames of one to three courses that have no fault; the tall wall stands on edge or one course higher. */
const buildable: fc.Arbitrary<Choices> = fc
  .record({
    sashes: sashList,
    bearing: eighths(1, 6),
    others: fc.record({
      courses: fc.integer({ min: 1, max: 2 }),
      lay: fc.constantFrom('flat' as const, 'on-edge' as const),
    }),
    more: fc.integer({ min: 0, max: 1 }),
    perBale: fc.integer({ min: 1, max: 3 }),
  })
  .map(({ sashes, bearing, others, more, perBale }) => ({
    sashes,
    bearing,
    others,
    poleward: { courses: others.courses + (others.lay === 'on-edge' ? 1 : more), lay: 'on-edge' as const },
    stakes: { perBale, length: 96 },
  }))
  .filter((choices) => isFrame(baleColdFrame(projectWith(choices), { hemisphere: 'north' })));

const frames = buildable.map((choices) => frameOf(projectWith(choices)));

describe('every frame that can be built', () => {
  test('carries every sash on both long walls by at least the bearing', () => {
    fc.assert(
      fc.property(frames, ({ geometry }) => {
        for (const sash of geometry.sashes) {
          expect(sash.bearingPolewardMm).toBeGreaterThanOrEqual(geometry.bearingMm - 1e-6);
          expect(sash.bearingEquatorMm).toBeGreaterThanOrEqual(geometry.bearingMm - 1e-6);
          const run = sash.upper.y - sash.lower.y;
          const rise = sash.upper.z - sash.lower.z;
          expect(Math.hypot(run, rise)).toBeCloseTo(sash.lengthMm, 6);
          // The underside passes through the inner top edge of either wall.
          expect(sash.lower.z + (rise * (0 - sash.lower.y)) / run).toBeCloseTo(geometry.equatorHeightMm, 6);
          expect(sash.lower.z + (rise * (geometry.insideDepthMm - sash.lower.y)) / run).toBeCloseTo(
            geometry.polewardHeightMm,
            6,
          );
        }
      }),
    );
  });

  test('carries the end sashes on the side walls by the bearing, and lays the others edge to edge', () => {
    fc.assert(
      fc.property(frames, ({ geometry: { sashes, bearingMm, insideLengthMm } }) => {
        expect(sashes[0]!.x).toBeCloseTo(-bearingMm, 6);
        const last = sashes.at(-1)!;
        expect(last.x + last.widthMm).toBeCloseTo(insideLengthMm + bearingMm, 6);
        sashes.slice(1).forEach((sash, index) => {
          expect(sash.x).toBeCloseTo(sashes[index]!.x + sashes[index]!.widthMm, 6);
        });
      }),
    );
  });

  test('has no two bales in one place', () => {
    fc.assert(
      fc.property(frames, ({ geometry: { bales } }) => {
        bales.forEach((a, index) => {
          for (const b of bales.slice(index + 1)) expect(overlapMm(a.box, b.box)).toBeLessThan(1e-6);
        });
      }),
    );
  });

  test('has side walls without an opening wider than a flake', () => {
    fc.assert(
      fc.property(frames, ({ geometry: { bales, insideDepthMm } }) => {
        for (const wall of ['west', 'east']) {
          const course = bales.filter((bale) => bale.wall === wall && bale.course === 0);
          const covered = course.reduce((sum, { box }) => sum + box.to.y - box.from.y, 0);
          expect(covered).toBeLessThanOrEqual(insideDepthMm + 1e-6);
          expect(covered).toBeGreaterThanOrEqual(insideDepthMm - toHeld(4, 'in') - 1e-6);
        }
      }),
    );
  });

  test('has no joint over a joint: at least a fifth of a bale lies between them', () => {
    // A quarter of a bale by rule, less what bales are pressed together.
    const least = toHeld(36 / 5, 'in');
    fc.assert(
      fc.property(frames, ({ geometry: { bales } }) => {
        for (const wall of ['poleward', 'equator', 'west', 'east'] as const) {
          const axis = wall === 'poleward' || wall === 'equator' ? 'x' : 'y';
          const joints = (course: number): readonly number[] => {
            const row = bales
              .filter((bale) => bale.wall === wall && bale.course === course)
              .map(({ box }) => box.from[axis]);
            return row.sort((a, b) => a - b).slice(1);
          };
          for (const upper of joints(1)) {
            for (const lower of joints(0)) expect(Math.abs(upper - lower)).toBeGreaterThan(least);
          }
        }
      }),
    );
  });

  test('drives a stake through every bale of the top course, and never beside it', () => {
    fc.assert(
      fc.property(frames, ({ geometry: { bales, stakes } }) => {
        for (const { x, y, topMm } of stakes) {
          expect(
            bales.some(
              ({ box: { from, to } }) => x > from.x && x < to.x && y > from.y && y < to.y && to.z === topMm,
            ),
          ).toBe(true);
        }
        const top = bales.filter(
          ({ wall, course }) => !bales.some((other) => other.wall === wall && other.course > course),
        );
        for (const {
          box: { from, to },
        } of top) {
          expect(stakes.some(({ x, y }) => x > from.x && x < to.x && y > from.y && y < to.y)).toBe(true);
        }
      }),
    );
  });

  test('takes no fewer bales and stakes for one sash more', () => {
    fc.assert(
      fc.property(buildable, eighths(16, 48), eighths(0, 20), (choices, width, longer) => {
        // A sash shorter than all others would make the bed shallower, so the new one is at least as long as the shortest.
        const shortest = Math.min(...choices.sashes!.map(([, length]) => length));
        const more: Choices = { ...choices, sashes: [...choices.sashes!, [width, shortest + longer]] };
        const [before, after] = [frameOf(projectWith(choices)), frameOf(projectWith(more))];
        for (const id of ['frame.bales', 'frame.stakes', 'frame.bales-poleward']) {
          expect(numberOf(after, id)).toBeGreaterThanOrEqual(numberOf(before, id));
        }
      }),
    );
  });

  test('counts each bale once: whole ones, ones to cut and ones to open', () => {
    fc.assert(
      fc.property(frames, (frame) => {
        const whole = frame.geometry.bales.filter(({ kind }) => kind === 'whole').length;
        expect(numberOf(frame, 'frame.bales-whole')).toBe(whole);
        const parts = ['frame.bales-whole', 'frame.bales-cut', 'frame.bales-loose'].map((id) =>
          numberOf(frame, id),
        );
        expect(numberOf(frame, 'frame.bales')).toBe(parts.reduce((a, b) => a + b, 0));
      }),
    );
  });

  test('answers for every number: unique ids, sources, and inputs that are what they refer to', () => {
    fc.assert(fc.property(frames, expectSound), { numRuns: 30 });
    expectSound(frameOf(demoProject()));
  });
});

function expectSound({ findings }: Frame): void {
  const byId = new Map(findings.map((finding) => [finding.id, finding]));
  expect(byId.size).toBe(findings.length);
  for (const { id, value, sources, inputs } of findings) {
    expect(id).toMatch(/^(frame|build)\.[a-z0-9-]+(\.[a-z0-9-]+)?$/);
    expect(sources.length, id).toBeGreaterThan(0);
    if (value.kind === 'quantity') expect(Number.isFinite(value.value), id).toBe(true);
    for (const { finding, value: given } of inputs) {
      if (finding !== undefined) expect(byId.get(finding)?.value, `${id} takes ${finding}`).toEqual(given);
    }
  }
}

/** The smallest side of the space that two boxes share; 0 or less when they do not. */
function overlapMm(a: Box, b: Box): number {
  const shared = (['x', 'y', 'z'] as const).map(
    (axis) => Math.min(a.to[axis], b.to[axis]) - Math.max(a.from[axis], b.from[axis]),
  );
  return Math.min(...shared);
}
