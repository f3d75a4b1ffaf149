/** The lumber frame as the heat sees it, and its lids in the wind: worked by hand in inches, pounds and miles per hour. */
import { describe, expect, test } from 'vitest';
import { toHeld } from '../../scripts/quantities/units.ts';
import type { LumberColdFrame } from '../../scripts/records/schemas/projects/lumber-cold-frame.ts';
import { filledEdgeLossWPerMK } from '../../scripts/structures/frame-heat/lumber-envelope.ts';
import { structureOf } from '../../scripts/structures/structures.ts';
import { frameStandsUpToMps } from '../../scripts/structures/wind/frame-in-wind.ts';
import { leaveUpToMps, liftsAtMps, sashInWind } from '../../scripts/structures/wind/sash-in-wind.ts';
import { builtOf, demoFrame, soldAs } from './lumber-projects.ts';
import { inches } from './project.ts';

const squareInch = 0.0254 ** 2;
const mph = 0.44704;
const newton = 4.448222;

function withoutWeights(): LumberColdFrame {
  const demo = demoFrame();
  const { holdDowns, ...lids } = demo.lids;
  if (!holdDowns) throw new Error('the demonstration frame has weights');
  return { ...demo, lids, parts: demo.parts.filter((part) => part.count !== 'hold-downs') };
}

/** One old sash of 36 by 72 in, 7 tenths of it glass, over one-inch boards. */
function sashFrame(): LumberColdFrame {
  const demo = demoFrame();
  const { built, holdDowns, ...lids } = demo.lids;
  if (!built || !holdDowns) throw new Error('the demonstration frame has built lids under weights');
  const unused = ['glazing-sheets', 'glazing-fasteners', 'lid-brackets', 'hold-downs'];
  return soldAs(
    {
      ...demo,
      walls: { back: ['1x12', '1x8'], front: ['1x12'], sides: ['1x10'], slope: '1x12' },
      lids: {
        ...lids,
        number: 1,
        length: inches(72),
        overhang: inches(0),
        sash: { thickness: inches(1.375), glassShare: 0.7, glass: inches(0.125), painted: true },
      },
      parts: demo.parts.filter(({ count }) => !unused.includes(count)),
    },
    ['1x12', '1x10', '1x8', '2x2'],
  );
}

describe('two lids of twin-wall sheet, 36 by 48 in, over two-inch boards', () => {
  const { envelope, vent } = builtOf(demoFrame()).structure.heat!;
  const [back, front, west, east, wood] = envelope.walls;

  test('inside it is 69 1/4 by 43.696 in under a slope of 6.63 degrees', () => {
    expect(envelope.inside.lengthM).toBeCloseTo(69.25 * 0.0254, 6);
    expect(envelope.inside.depthM).toBeCloseTo(43.6961 * 0.0254, 5);
    expect(envelope.glazing.slopeDeg).toBeCloseTo(6.626, 3);
    expect(envelope.glazing.azimuthDeg).toBe(0);
  });

  test('each lid is clear for 36 in less two sticks and a bar of 1 1/2 in, down all of the bed', () => {
    // The bed is 43.696 / cos 6.626° = 43.99 in down the slope; the rails lie over the walls.
    expect(envelope.glazing.areaM2 / squareInch).toBeCloseTo(2 * 31.5 * 43.99, 0);
    expect(envelope.glazing).toMatchObject({ uWm2K: 3.7, transmittanceNormal: 0.8, layers: 2 });
  });

  test('the rest of the cover is wood 1 1/2 in thick: 69 1/4 less 63 in wide', () => {
    expect(wood!.areaM2 / squareInch).toBeCloseTo(6.25 * 43.99, 0);
    // 0.0381 m of softwood at 0.12 W/mK and two surfaces: 1 / (0.16 + 0.3175).
    expect(wood!.uWm2K).toBeCloseTo(2.0942, 4);
  });

  test('boards above 4 in of mix: 16.5 - 4 in behind, 11.25 + 0.174 - 4 in front, between them at the sides', () => {
    expect(back!.areaM2 / squareInch).toBeCloseTo(69.25 * 12.5, 2);
    expect(front!.areaM2 / squareInch).toBeCloseTo(69.25 * 7.4242, 1);
    for (const side of [west, east]) {
      expect(side!.areaM2 / squareInch).toBeCloseTo(43.6961 * 9.9621, 1);
      expect(side!.uWm2K).toBeCloseTo(2.0942, 4);
    }
  });

  test('both lids open at the front, as far as the prop of a foot', () => {
    expect(vent).toEqual({ widthM: 72 * 0.0254, sashLengthM: 48 * 0.0254, highestM: 12 * 0.0254 });
  });
});

describe('glazing by the record', () => {
  test('film lets more heat and light through than twin-wall sheet', () => {
    const demo = demoFrame();
    const lids = { ...demo.lids, built: { ...demo.lids.built!, sheet: 'film' as const } };
    expect(builtOf({ ...demo, lids }).structure.heat!.envelope.glazing).toMatchObject({
      uWm2K: 6.25,
      transmittanceNormal: 0.88,
      layers: 1,
    });
  });

  test('an old sash is single glass over the part of it that is glass, and wood 1 3/8 in thick', () => {
    const { envelope } = builtOf(sashFrame()).structure.heat!;
    const wood = envelope.walls.at(-1)!;
    expect(envelope.glazing.uWm2K).toBe(6.25);
    expect(envelope.glazing.areaM2 / (envelope.glazing.areaM2 + wood.areaM2)).toBeCloseTo(0.7, 9);
    // 0.034925 m: 1 / (0.16 + 0.29104).
    expect(wood.uWm2K).toBeCloseTo(2.2171, 3);
    // Boards 3/4 in thick: 1 / (0.16 + 0.15875).
    expect(envelope.walls[0]!.uWm2K).toBeCloseTo(3.1373, 4);
  });
});

describe('heat at the edge of a filled bed', () => {
  const edge = { wallThicknessM: 0.0381, bedDepthM: 1.10988, conductivityWmK: 1 };

  test('4 in above the ground: 0.1836 W/mK through the board and 0.4158 under it', () => {
    // 2/π ln(1 + π 0.1016 / (2 × 0.4775)), and 1/π ln(1.9533 / 0.5290).
    expect(filledEdgeLossWPerMK({ ...edge, fillM: 0.1016 })).toBeCloseTo(0.5993, 3);
  });

  test('level with the ground outside nothing goes through the board: 1/π ln((0.2098 + 1.7434) / 0.2098)', () => {
    expect(filledEdgeLossWPerMK({ ...edge, fillM: 0 })).toBeCloseTo(0.7102, 3);
  });
});

describe('a lid in the wind', () => {
  const cover = builtOf(demoFrame()).structure.covers![0]!;

  test('it turns on its upper edge, weighs 10.46 lb at the least and bears four bags of 20 lb', () => {
    // 207 in of 2 by 2, 465.75 in³ at 432 g/L: 3.297 kg; 12 ft² of sheet at 1.3 kg/m²: 1.449 kg.
    expect(cover.sash.massKg).toBeCloseTo(4.746, 3);
    expect(cover.sash.holdDownN! / newton).toBeCloseTo(80, 3);
    expect(cover.sash).toMatchObject({ hinged: 'top' });
    expect(cover.sash.openAngleDeg).toBeCloseTo(14.668, 2);
    expect(cover.id).toBe('frame.lid');
    expect(cover.letter).toBeUndefined();
  });

  test('in a gust of 55 mph 92.9 lb at 2 ft overturn it, and 10.46 lb at 2 ft and 80 lb at 4 ft withstand', () => {
    const inGust = sashInWind(cover.sash, 'closed', 55 * mph);
    const footPound = newton * 0.3048;
    expect(inGust.overturningNm / footPound).toBeCloseTo(185.86, 1);
    expect(inGust.rightingNm / footPound).toBeCloseTo(338.65, 1);
    expect(inGust.held).toBe(true);
    // (1.5 × 92.93 / cos 6.626° - 10.46) / 2.
    expect(inGust.holdDownNeededN / newton).toBeCloseTo(64.93, 1);
  });

  test('it may be left closed up to 61 mph and open up to 53 mph', () => {
    expect(leaveUpToMps(cover.sash, 'closed') / mph).toBeCloseTo(60.62, 1);
    expect(leaveUpToMps(cover.sash, 'open') / mph).toBeCloseTo(53.1, 1);
  });

  test('the frame under it weighs 80 lb and tips up above 61 mph; without the bags at the back above 32 mph', () => {
    // 79.94 lb × 1.946 ft + 20.93 × 1.905 - 160 × 0.082 + 120 × 3.891 = 649 ft lb; / (1.5 × 0.06103 × 1.905) = 3722.
    expect(cover.frame!.massKg / 0.45359237).toBeCloseTo(79.94, 1);
    expect(frameStandsUpToMps(cover.frame!, cover.sash, 'closed') / mph).toBeCloseTo(61.0, 1);
    const bare = { ...cover.frame!, backHoldDownN: 0 };
    expect(frameStandsUpToMps(bare, cover.sash, 'closed') / mph).toBeCloseTo(32.3, 1);
  });

  test('without weights its hook is not counted on: it begins to lift at 18 mph', () => {
    const built = builtOf(withoutWeights());
    const { sash } = built.structure.covers![0]!;
    expect(sash.holdDownN).toBe(0);
    // 10.464 lb × 0.9933 on 12 ft²: 0.8662 lb/ft², and the root of that over 0.00256.
    expect(liftsAtMps(sash, 'closed') / mph).toBeCloseTo(18.39, 1);
    expect(built.number('frame.hold-downs')).toBe(0);
    expect(built.structure.lifts.map(({ item }) => item)).not.toContain('sandbag');
  });

  test('a prop as long as the lid opens it by no more than 60 degrees', () => {
    const { sash } = builtOf({ ...demoFrame(), prop: inches(47) }).structure.covers![0]!;
    expect(sash.openAngleDeg).toBeCloseTo(60, 6);
    expect(() => liftsAtMps(sash, 'open')).not.toThrow();
  });
});

describe('weights on the lids', () => {
  test('four in front and three behind to a lid are 14 in the bill, and one is lifted when the lids are hung', () => {
    const built = builtOf(demoFrame());
    expect(built.number('frame.hold-downs')).toBe(14);
    expect(built.number('build.part-t.quantity')).toBe(14);
    expect(built.number('frame.lid.hold-down-per-sash', 'lb')).toBeCloseTo(80, 9);
    const bag = built.structure.lifts.find(({ item }) => item === 'sandbag')!;
    expect(bag.massG).toBeCloseTo(toHeld(20, 'lb'), 6);
    expect(bag.stage).toBe('hang');
  });

  test('they lie on both ends in the drawings of the hung and of the propped lids', () => {
    const bags = builtOf(demoFrame()).structure.assembly!.members.filter(({ role }) => role === 'sandbag');
    const at = (name: string): number => bags.filter(({ stage }) => stage === name).length;
    expect([bags.length, at('hang'), at('vent')]).toEqual([28, 14, 14]);
  });

  test.each([
    {
      name: 'a part that nothing counts',
      frame: () => ({ ...withoutWeights(), parts: demoFrame().parts }),
      path: ['parts', 17, 'count'],
    },
    {
      name: 'weights without a part that says what one weighs',
      frame: () => ({ ...demoFrame(), parts: withoutWeights().parts }),
      path: ['lids', 'holdDowns'],
    },
  ])('$name is a fault', ({ frame, path }) => {
    const built = structureOf({ ...frame(), steps: [] }, { hemisphere: 'north' });
    const faults = built.kind === 'faults' ? built.faults : [];
    expect(faults.map((each) => each.path)).toContainEqual(path);
  });
});
