import { describe, expect, test } from 'vitest';
import type { LumberColdFrame } from '../../scripts/records/schemas/projects/lumber-cold-frame.ts';
import { smallerLumberFrames } from '../../scripts/structures/lumber-frame.ts';
import { fastenersOf } from '../../scripts/structures/lumber-frame-layout.ts';
import { structureOf } from '../../scripts/structures/structures.ts';
import { builtOf, demoFrame, soldAs } from './lumber-projects.ts';
import { inches } from './project.ts';

/** A traditional sash of 3 by 6 ft over one-inch boards. */
function sashFrame(): LumberColdFrame {
  const { lids, ...demo } = demoFrame();
  const { built: left, ...rest } = lids;
  if (!left) throw new Error('the demonstration frame has built lids');
  const frame: LumberColdFrame = {
    ...demo,
    walls: { back: ['1x12', '1x8'], front: ['1x12'], sides: ['1x10'], slope: '1x12' },
    lids: {
      ...rest,
      number: 1,
      width: inches(36),
      length: inches(72),
      overhang: inches(0),
      sash: { thickness: inches(1.375), glassShare: 0.7, glass: inches(0.125), painted: true },
    },
    parts: demo.parts.filter(
      ({ count }) => !['glazing-sheets', 'glazing-fasteners', 'lid-brackets'].includes(count),
    ),
  };
  return soldAs(frame, ['1x12', '1x10', '1x8', '2x2']);
}

/** Worked by hand in inches. */
const cases: readonly (readonly [
  name: string,
  frame: () => LumberColdFrame,
  lengths: Readonly<Record<string, number>>,
  counts: Readonly<Record<string, number>>,
  slopeDeg: number,
])[] = [
  [
    // Back 9.25 + 7.25, front 11.25: rise 5.25. The lid spans 48 - 1 - 1.5 = 45.5; level √(45.5² - 5.25²) = 45.196.
    // Slope asin(5.25 / 45.5) = 6.626, tangent 0.11616, cosine 0.99332. Inside 45.196 - 1.5, outside 45.196 + 1.5.
    // Sides 9.25: low end 11.25 + 1.5 × 0.11616 - 9.25, high end 16.5 - 9.25. Both and a cut are 9.55 of 11.25.
    // Long boards 2 × 36 + 1/4, a hair over 6 ft, so a cleat stands between. Back posts 16.5 - 0.174, down to a quarter.
    // Screws: 3 posts × (4 + 3 + 4) = 33, sides 4 × 4 = 16, slopes 2 × (2 + 3) = 10, bar 4, lids 2 × 6 joints × 2 = 24.
    'two lids of 36 by 48 in over two-inch boards',
    demoFrame,
    {
      'poleward-height': 16.5,
      'equator-height': 11.25,
      run: 45.1961,
      'inside-depth': 43.6961,
      'outside-depth': 46.6961,
      'outside-length': 72.25,
      'inside-length': 69.25,
      'slope-low': 2.1742,
      'slope-high': 7.25,
      'slope-cut': 43.99,
      'back-post': 16.25,
      'front-post': 11.25,
      bar: 43.8158,
      'lid-rail': 33,
      'lid-bar': 45,
      'hinge-inset': 6,
      'screw-length': 2.75,
      headroom: 7.25,
    },
    {
      'slope-boards': 1,
      'middle-cleats': 2,
      bars: 1,
      hinges: 4,
      screws: 87,
      'glazing-fasteners': 34,
      'glazing-sheets': 2,
      'lid-brackets': 8,
    },
    6.6263,
  ],
  [
    // Back 11.25 + 7.25, front 11.25: rise 7.25. The sash spans 72 - 0.75 = 71.25; level √(71.25² - 7.25²) = 70.880.
    // Low end 11.25 + 0.75 × 0.10228 - 9.25 = 2.0767, high end 9.25; with a cut 11.45, more than 11.25: two boards.
    // Screws: 2 posts × (4 + 3 + 4) = 22, sides 16, slopes 2 × (2 + 4) = 12.
    'one old sash of 3 by 6 ft over one-inch boards',
    sashFrame,
    {
      run: 70.8802,
      'inside-depth': 70.1302,
      'slope-low': 2.0767,
      'slope-high': 9.25,
      'back-post': 18.25,
      'outside-length': 36,
      'inside-length': 34.5,
      'screw-length': 2,
    },
    { 'slope-boards': 2, 'middle-cleats': 0, bars: 0, hinges: 2, screws: 50 },
    5.8402,
  ],
];

describe('a lumber frame worked by hand', () => {
  test.each(cases)('%s', (_, frame, lengths, counts, slopeDeg) => {
    const { number } = builtOf(frame());
    for (const [name, expected] of Object.entries(lengths))
      expect(number(`frame.${name}`, 'in'), name).toBeCloseTo(expected, 3);
    for (const [name, expected] of Object.entries(counts))
      expect(number(`frame.${name}`), name).toBe(expected);
    expect(number('frame.slope', 'deg')).toBeCloseTo(slopeDeg, 3);
  });

  test('a prop of 12 in under a lid of 47 in opens it by twice the angle whose sine is 6/47', () => {
    expect(builtOf(demoFrame()).number('frame.prop-opens', 'deg')).toBeCloseTo(14.6687, 3);
  });

  test('4 in of mix inside 69.25 by 43.696 in are 7.00 cubic feet', () => {
    expect(builtOf(demoFrame()).number('frame.soil-volume', 'ft3')).toBeCloseTo(7.0045, 3);
  });

  test('a lid of 36 by 48 in: 5 screws along each stile, 2 between them on each rail, 3 along the bar', () => {
    const sizes = { lengthMm: 48 * 25.4, widthMm: 36 * 25.4, bars: 1, spacingMm: 12 * 25.4 };
    expect(fastenersOf(sizes)).toBe(17);
  });

  test('a lid of 2x2 and 6 mm sheet is 465.75 in³ of softwood and 12 ft² of sheet', () => {
    // (2 × 48 + 2 × 33 + 45) × 2.25 = 465.75 in³ = 7.632 L: 3.297 to 4.160 kg; 1.1148 m² × 1.3 = 1.449 kg.
    const weight = builtOf(demoFrame()).value('frame.lid-weight');
    if (weight.kind !== 'range') throw new Error(weight.kind);
    expect(weight.low / 1000).toBeCloseTo(4.746, 2);
    expect(weight.high / 1000).toBeCloseTo(5.609, 2);
  });

  test('each size of lumber is cut by the part of that size, slopes from one board', () => {
    const { structure } = builtOf(demoFrame());
    const wide = structure.pieces.filter(({ nominal }) => nominal === '2x12');
    expect(wide.map(({ role, number }) => [role, number])).toEqual([
      ['front-board', 1],
      ['slope-pair', 1],
    ]);
  });
});

describe('smaller frames', () => {
  test('run from the largest bed to the smallest and do not repeat the frame itself', () => {
    const areas = smallerLumberFrames(demoFrame()).map(({ lids }) => (lids.number * lids.length.low) / 25.4);
    expect(areas.map(Math.round)).toEqual([84, 72, 60, 48, 48, 42, 36, 30, 24]);
  });

  test('old sashes cannot be made shorter', () => {
    const frame = sashFrame();
    const two = { ...frame, lids: { ...frame.lids, number: 2 } };
    expect(smallerLumberFrames(two).map(({ lids }) => [lids.number, lids.length.low / 25.4])).toEqual([
      [1, 72],
    ]);
  });
});

describe('what does not add up in a lumber frame', () => {
  const faults = (change: Partial<LumberColdFrame>): readonly string[] => {
    const built = structureOf({ ...demoFrame(), ...change }, { hemisphere: 'north' });
    return built.kind === 'faults' ? built.faults.map(({ path }) => path.join('.')) : [];
  };
  const { walls, lids } = demoFrame();
  const { built, ...noLid } = lids;

  test.each<readonly [string, Partial<LumberColdFrame>, readonly string[]]>([
    ['nothing', {}, []],
    ['boards of two thicknesses', { walls: { ...walls, front: ['1x12'] } }, ['walls.front.0']],
    ['a slope of another thickness', { walls: { ...walls, slope: '1x12' } }, ['walls.slope']],
    ['a back no higher than the front', { walls: { ...walls, back: ['2x12'] } }, ['walls']],
    ['a thin end of nothing', { walls: { ...walls, sides: ['2x12'] } }, ['walls.sides']],
    ['a slope higher than its board', { walls: { ...walls, slope: '2x6' } }, ['walls.slope']],
    ['a lid shorter than its walls', { lids: { ...lids, length: inches(15) } }, ['lids.length']],
    ['lids narrower than their walls', { lids: { ...lids, number: 1, width: inches(12) } }, ['lids.width']],
    ['too much mix', { soilDepth: inches(8) }, ['soilDepth']],
    ['a prop longer than the lid', { prop: inches(50) }, ['prop']],
    ['no lid', { lids: noLid }, ['lids']],
    [
      'both kinds of lid, and too much mix',
      {
        lids: {
          ...lids,
          sash: { thickness: inches(1), glassShare: 0.7, glass: inches(0.125), painted: false },
        },
        soilDepth: inches(8),
      },
      ['soilDepth', 'lids'],
    ],
  ])('%s', (_, change, expected) => {
    expect(faults(change)).toEqual(expected);
  });

  test('a lid that stands like a wall', () => {
    const steep = { ...walls, back: ['2x12', '2x12', '2x12', '2x12'] as const, sides: ['2x10'] as const };
    expect(
      faults({
        walls: { ...steep, back: [...steep.back], sides: [...steep.sides], front: ['2x12'] },
        lids: { ...lids, length: inches(45) },
      }),
    ).toContain('walls');
    expect(built).toBeDefined();
  });
});
