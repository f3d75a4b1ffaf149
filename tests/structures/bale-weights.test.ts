/** How many weights the gust of a record takes, the boards under them, and the props that hold sashes open. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toHeld } from '../../scripts/quantities/units.ts';
import type { BaleColdFrame } from '../../scripts/records/schemas/projects/bale-cold-frame.ts';
import { propSizes } from '../../scripts/structures/bale-props.ts';
import { baleColdFrame, isFrame } from '../../scripts/structures/bale-cold-frame.ts';
import { weightBoards } from '../../scripts/structures/frame-boards.ts';
import { leaveUpToMps } from '../../scripts/structures/wind/sash-in-wind.ts';
import { demoProject, partOf, projectWith, quantityIn, type Choices } from './project.ts';
import { frameOf, numberOf, valueOf } from './read-frame.ts';

const three = [
  [27, 54],
  [27, 54],
  [24, 57],
] as const;

const bags = partOf({ letter: 'B', count: 'hold-downs', price: 4, mass: quantityIn('mass', 'lb', 20) });
const boards = partOf({ letter: 'W', count: 'weight-boards', price: 7 });

function heldInGust(mph: number, choices: Choices = {}): BaleColdFrame {
  return projectWith({
    sashes: three,
    parts: [partOf({ letter: 'A', count: 'bales', price: 9 }), bags, boards],
    holdDowns: { perEnd: 1, forGust: quantityIn('speed', 'mph', mph), sources: ['hold-source'] },
    ...choices,
  });
}

describe('sandbags of 20 lb for a gust', () => {
  // 27 × 54 in = 10.125 ft². Needed: 1.5 × 0.00256 v² × 10.125 / cos 4.8° less the lightest sash, 21.05 lb; half of it at each end.
  test.each([
    { mph: 30, needLb: 14.1, perEnd: 1 },
    { mph: 50, needLb: 76.5, perEnd: 2 },
    { mph: 55, needLb: 97, perEnd: 3 },
    { mph: 60, needLb: 119.4, perEnd: 3 },
    { mph: 61, needLb: 124.1, perEnd: 4 },
  ])('$mph mph needs $needLb lb on a sash: $perEnd at each end', ({ mph, needLb, perEnd }) => {
    expect(Math.max(1, Math.ceil(needLb / 2 / 20))).toBe(perEnd);
    const frame = frameOf(heldInGust(mph));
    expect(numberOf(frame, 'frame.hold-downs-in-gust')).toBe(perEnd);
    expect(numberOf(frame, 'frame.hold-downs')).toBe(6 * perEnd);
    expect(numberOf(frame, 'build.part-b.quantity')).toBe(6 * perEnd);
    expect(numberOf(frame, 'frame.hold-down-per-sash', 'lb')).toBeCloseTo(40 * perEnd, 6);
  });

  test('fewer than every day are never enough', () => {
    const daily = { perEnd: 4, forGust: quantityIn('speed', 'mph', 30), sources: ['hold-source'] };
    expect(numberOf(frameOf(heldInGust(30, { holdDowns: daily })), 'frame.hold-downs-in-gust')).toBe(4);
  });

  test('every sash stands the gust with them, and with one fewer at each end some sash does not', () => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 90, noNaN: true }), (mph) => {
        const frame = frameOf(heldInGust(mph));
        const number = numberOf(frame, 'frame.hold-downs-in-gust');
        const gust = toHeld(mph, 'mph');
        const limit = (perEnd: number): number =>
          Math.min(
            ...frame.covers!.map(({ sash }) =>
              leaveUpToMps({ ...sash, holdDownN: 2 * perEnd * 20 * 4.4482216 }, 'closed'),
            ),
          );
        expect(limit(number)).toBeGreaterThan(gust * (1 - 1e-6));
        if (number > 1) expect(limit(number - 1)).toBeLessThan(gust * (1 + 1e-6));
        const said = valueOf(frame, 'frame.gust-limit-closed');
        expect(said.kind === 'quantity' && said.value).toBeCloseTo(limit(number), 5);
      }),
      { numRuns: 60 },
    );
  });

  test('those of every day are told beside them: 40 mph closed, 35 mph propped', () => {
    // (40 + 21.05) lb on 10.125 ft²: 6.01 lb/ft² = 0.00256 v², v = 48.5 mph; over √1.5: 39.6 mph; propped at 8.0° instead of 4.8°, over √1.3: 34.6.
    const frame = frameOf(heldInGust(60));
    expect(numberOf(frame, 'frame.daily-limit-closed', 'mph')).toBeCloseTo(39.6, 1);
    expect(numberOf(frame, 'frame.daily-limit-open', 'mph')).toBeCloseTo(34.6, 1);
  });
});

test('the demonstration holds its closed sashes in the gusts of all demonstration regions, the strongest 60 mph', () => {
  expect(numberOf(frameOf(demoProject()), 'frame.gust-limit-closed', 'mph')).toBeGreaterThanOrEqual(60);
});

describe('boards under the weights', () => {
  test.each([
    { name: 'three sashes that end nearly alike', sashes: three, lengthsIn: [78, 78] },
    {
      name: 'two that end 12 in apart: each its own in front',
      sashes: [
        [30, 54],
        [24, 66],
      ] as const,
      lengthsIn: [54, 30, 24],
    },
    {
      name: 'six of 30 in: four on a plank of 10 ft, two on another',
      sashes: Array.from({ length: 6 }, () => [30, 54] as const),
      lengthsIn: [120, 60, 120, 60],
    },
  ])('$name', ({ sashes, lengthsIn }) => {
    const frame = frameOf(heldInGust(55, { sashes }));
    expect(weightBoards(frame.geometry).map(({ lengthMm }) => Math.round(lengthMm / 25.4))).toEqual(
      lengthsIn,
    );
    expect(numberOf(frame, 'frame.weight-boards')).toBe(lengthsIn.length);
    expect(numberOf(frame, 'frame.weight-board', 'in')).toBeCloseTo(Math.max(...lengthsIn), 6);
  });

  test('each lies over the end rails of all its sashes', () => {
    const { geometry } = frameOf(heldInGust(55));
    const [upper, lower] = weightBoards(geometry);
    for (const sash of geometry.sashes) {
      expect(upper!.under[0].y).toBeLessThan(sash.upper.y - 50);
      expect(upper!.under[2].y).toBeGreaterThan(sash.upper.y - 20);
      expect(lower!.under[0].y).toBeLessThan(sash.lower.y + 50);
    }
  });

  test('a board lies on the glazed side, no lower than the sash is thick', () => {
    const { geometry } = frameOf(heldInGust(55));
    const plane = (y: number): number =>
      geometry.equatorHeightMm +
      (y * (geometry.polewardHeightMm - geometry.equatorHeightMm)) / geometry.insideDepthMm;
    for (const { under } of weightBoards(geometry))
      for (const { y, z } of under)
        expect(z - plane(y)).toBeCloseTo(34.925 / Math.cos((geometry.slopeDeg * Math.PI) / 180), 3);
  });
});

describe('props', () => {
  test.each([
    // 4 in in the straw, the opening, and 4 in above; notches at a third, two thirds and all of the opening.
    { name: 'sashes of 54 in open a foot', sashes: three, openIn: 12, lengthIn: 20, notchesIn: [8, 12, 16] },
    {
      name: 'a sash of 21 in opens by half of it',
      sashes: [[34, 21]] as const,
      openIn: 10.5,
      lengthIn: 18.5,
      notchesIn: [7.5, 11, 14.5],
    },
  ])('$name', ({ sashes, openIn, lengthIn, notchesIn }) => {
    const frame = frameOf(projectWith({ sashes, bearing: 2 }));
    expect(numberOf(frame, 'frame.prop-opening', 'in')).toBeCloseTo(openIn, 6);
    expect(numberOf(frame, 'frame.prop-length', 'in')).toBeCloseTo(lengthIn, 6);
    notchesIn.forEach((inches, index) => {
      expect(numberOf(frame, `frame.prop-notch-${index + 1}`, 'in')).toBeCloseTo(inches, 6);
    });
  });

  test('notches do not run into each other or out of the stick', () => {
    const { notchesMm, notchHighMm, lengthMm } = propSizes(frameOf(demoProject()).geometry)!;
    const tops = notchesMm.map((mm) => mm + notchHighMm);
    expect(notchesMm.slice(1).every((mm, index) => mm > tops[index]!)).toBe(true);
    expect(tops.at(-1)!).toBeLessThan(lengthMm);
  });

  test('stakes, props and boards are listed with their lengths', () => {
    const frame = frameOf(demoProject());
    const lengths = Object.fromEntries(
      Object.entries(frame.lengths ?? {}).map(([part, { value }]) => [
        part,
        value.kind === 'quantity' ? value.value / 25.4 : NaN,
      ]),
    );
    expect(lengths).toEqual({
      stakes: expect.closeTo(36, 6) as unknown,
      props: expect.closeTo(20, 6) as unknown,
      'weight-boards': expect.closeTo(78, 6) as unknown,
    });
  });
});

describe('a gust that does not go with the rest of the record', () => {
  const faultsOf = (project: BaleColdFrame): readonly string[] => {
    const result = baleColdFrame(project, { hemisphere: 'north' });
    return isFrame(result) ? [] : result.map(({ fault }) => fault);
  };

  const rows: readonly { readonly name: string; readonly choices: Choices; readonly fault: string }[] = [
    {
      name: 'a sash held by a strap',
      choices: { special: { 1: { holdDown: 'strap' } } },
      fault: 'gust-needs-weights',
    },
    {
      name: 'no weight for the sandbag',
      choices: { parts: [partOf({ letter: 'B', count: 'hold-downs' }), boards] },
      fault: 'gust-needs-mass',
    },
    { name: 'no boards in the list', choices: { parts: [bags] }, fault: 'part-missing' },
    {
      name: 'boards without a gust',
      choices: { holdDowns: { perEnd: 1, sources: ['hold-source'] } },
      fault: 'part-for-nothing',
    },
  ];

  test.each(rows)('$name', ({ choices, fault }) => {
    expect(faultsOf(heldInGust(60, choices))).toContain(fault);
  });
});
