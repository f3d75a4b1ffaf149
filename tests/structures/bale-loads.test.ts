/** What is lifted at a frame of bales, what lies on its sashes, and what smaller frames come of it. */
import { describe, expect, test } from 'vitest';
import { toHeld } from '../../scripts/quantities/units.ts';
import type { BaleColdFrame } from '../../scripts/records/schemas/projects/bale-cold-frame.ts';
import { baleStructure } from '../../scripts/structures/bale-cold-frame.ts';
import { smallerBaleFrames } from '../../scripts/structures/bale-versions.ts';
import { largestFromHand } from '../../scripts/structures/from-hand.ts';
import { leaveUpToMps } from '../../scripts/structures/wind/sash-in-wind.ts';
import { partOf, projectWith, quantityIn } from './project.ts';
import { frameOf, numberOf } from './read-frame.ts';

const pound = (lb: number): number => toHeld(lb, 'lb');
const inch = (value: number): number => toHeld(value, 'in');

/** Two sashes of 27 by 54 in, with sandbags of 20 lb. */
function weighedDown(perEnd: number): BaleColdFrame {
  return {
    ...projectWith({
      sashes: [
        [27, 54],
        [27, 54],
      ],
      parts: [
        partOf({ letter: 'A', count: 'bales', price: 9 }),
        partOf({ letter: 'B', count: 'hold-downs', price: 4, mass: quantityIn('mass', 'lb', 20) }),
        partOf({
          letter: 'E',
          count: 'soil-litres',
          price: 14,
          pack: quantityIn('volume', 'ft3', 2),
          mass: quantityIn('mass', 'lb', 40),
        }),
      ],
    }),
    holdDowns: { perEnd, sources: ['hold-source'] },
  };
}

describe('weights on the sashes', () => {
  test.each([
    { name: 'one at each end of two sashes', perEnd: 1, bags: 4, onOneLb: 40 },
    { name: 'three at each end', perEnd: 3, bags: 12, onOneLb: 120 },
  ])('$name', ({ perEnd, bags, onOneLb }) => {
    const frame = frameOf(weighedDown(perEnd));
    expect(numberOf(frame, 'frame.hold-downs')).toBe(bags);
    expect(numberOf(frame, 'build.part-b.quantity')).toBe(bags);
    expect(numberOf(frame, 'frame.hold-down-per-sash', 'lb')).toBeCloseTo(onOneLb, 9);
    // A pound pulls with 4.448 N.
    expect(frame.covers![0]!.sash.holdDownN).toBeCloseTo(onOneLb * 4.4482, 1);
  });

  test('a record without weights has none, and its sashes are held by their own weight alone', () => {
    const frame = frameOf(projectWith());
    expect(numberOf(frame, 'frame.hold-downs')).toBe(0);
    expect(frame.covers![0]!.sash.holdDownN).toBe(0);
    expect(frame.lifts.map(({ item }) => item)).toEqual(['bale', 'sash']);
  });

  test('a loose sash of 27 by 54 in under 40 lb stands gusts of 40 mph closed and 35 mph open', () => {
    // 21 lb of sash and 40 lb of bags on 10.1 ft²: 6.05 lb/ft² = 0.00256 v², v = 48.6 mph; over the root of 1.5: 39.7 mph.
    const { sash } = frameOf(weighedDown(1)).covers![0]!;
    const mph = (mps: number): number => mps / 0.44704;
    expect(mph(leaveUpToMps(sash, 'closed'))).toBeCloseTo(39.6, 0);
    expect(mph(leaveUpToMps(sash, 'open'))).toBeCloseTo(39.6 / Math.sqrt(1.3), 0);
    // Propped by a foot on 54 in: the angle whose sine is 12/54.
    expect(sash.openAngleDeg).toBeCloseTo(12.84, 2);
    expect(sash.hinged).toBe('none');
  });
});

describe('lifts', () => {
  const lifts = Object.fromEntries(frameOf(weighedDown(1)).lifts.map((lift) => [lift.item, lift]));

  test('a bale of up to 60 lb goes from its strings, 14 in up, to the top of the 18 in wall', () => {
    expect(lifts['bale']!.massG).toBeCloseTo(pound(60), 6);
    expect(lifts['bale']!.fromMm).toBeCloseTo(inch(14), 6);
    expect(lifts['bale']!.toMm).toBeCloseTo(inch(18), 6);
  });

  test('two people reach 15 in over the 18 in wall to lay a sash down, and 8 in before them', () => {
    expect(lifts['sash']!.reachOfTwoMm).toBeCloseTo(200 + inch(15), 6);
    expect(lifts['sash']!.depthMm).toBeCloseTo(inch(27), 6);
    expect(lifts['sash']!.fromMm).toBeCloseTo(inch(13.5), 6);
  });

  test('a bag of 2 ft³ is 7 in thick and 17 1/2 in wide', () => {
    expect(lifts['soil-bag']!.massG).toBeCloseTo(pound(40), 6);
    expect(lifts['soil-bag']!.depthMm / 25.4).toBeCloseTo(17.5, 0);
    expect((lifts['soil-bag']!.fromMm * 2) / 25.4).toBeCloseTo(7, 0);
  });

  test('each is lifted at a step that the record can have', () => {
    expect(Object.values(lifts).map(({ stage }) => stage)).toEqual([
      'poleward-wall',
      'sashes',
      'soil',
      'sashes',
    ]);
  });
});

test('the heat sees the glass over the bed, clear of bars and bearings', () => {
  const { heat, geometry } = frameOf(weighedDown(1));
  // 54 in of sashes less 3 in at each end is 48 in; 54 less 6 down the slope is 48 in; seven tenths of it is glass.
  expect(heat!.envelope.glazing.areaM2).toBeCloseTo(0.7 * (48 * 0.0254) ** 2, 6);
  expect(heat!.envelope.nightCover).toBeDefined();
  expect(heat!.vent.widthM).toBeCloseTo(54 * 0.0254, 9);
  expect(geometry.slopeDeg).toBeCloseTo(heat!.envelope.glazing.slopeDeg, 9);
});

describe('smaller frames', () => {
  const letters = (projects: Iterable<BaleColdFrame>): string[] =>
    [...projects].map(({ sashes }) => sashes.map(({ id }) => id).join(''));

  test('leave sashes away, the longest first', () => {
    const three = projectWith({
      sashes: [
        [20, 54],
        [30, 54],
        [40, 54],
      ],
    });
    // Widths: LM 70, KM 60, KL 50, then single ones 40, 30, 20.
    expect(letters(smallerBaleFrames(three))).toEqual(['LM', 'KM', 'KL', 'M', 'L', 'K']);
  });

  test('of one sash there is none', () => {
    expect(letters(smallerBaleFrames(projectWith()))).toEqual([]);
  });

  test('with eleven sashes only the last are left away', () => {
    const many = projectWith({ sashes: Array.from({ length: 11 }, () => [30, 54] as const) });
    expect(letters(smallerBaleFrames(many))).toHaveLength(10);
  });

  test('the largest for the bales at hand is the first that needs no more of them', () => {
    const wanted: BaleColdFrame = {
      ...projectWith({
        sashes: [
          [27, 54],
          [27, 54],
          [24, 57],
        ],
        parts: [{ ...partOf({ letter: 'A', count: 'bales', price: 9 }), have: 8 }],
      }),
    };
    const place = { hemisphere: 'north' } as const;
    const found = largestFromHand(wanted, {
      versions: smallerBaleFrames(wanted),
      build: (project, where) => baleStructure(project as BaleColdFrame, where),
      place,
    });
    const need = (project: BaleColdFrame): number => numberOf(frameOf(project), 'build.part-a.quantity');
    const larger = letters(smallerBaleFrames(wanted));
    const sashes = (found!.project as BaleColdFrame).sashes.map(({ id }) => id).join('');
    expect(need(found!.project as BaleColdFrame)).toBeLessThanOrEqual(8);
    const before = [...smallerBaleFrames(wanted)].slice(0, larger.indexOf(sashes));
    expect(before.every((project) => need(project) > 8)).toBe(true);
  });
});
