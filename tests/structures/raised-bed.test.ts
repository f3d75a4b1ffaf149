import { describe, expect, test } from 'vitest';
import { choice } from '../../scripts/findings/finding.ts';
import type { RaisedBed } from '../../scripts/records/schemas/projects/raised-bed.ts';
import { largestFromHand } from '../../scripts/structures/from-hand.ts';
import { shorterBeds } from '../../scripts/structures/raised-bed.ts';
import { reachOf } from '../../scripts/structures/raised-bed-reach.ts';
import { structureOf } from '../../scripts/structures/structures.ts';
import { builtOf, demoBed, soldAs } from './lumber-projects.ts';
import { inches } from './project.ts';

interface Sizes {
  readonly length: number;
  readonly width: number;
  readonly nominal: RaisedBed['boards']['nominal'];
  readonly courses: number;
  readonly posts: RaisedBed['posts']['nominal'];
  readonly inGround: number;
  readonly soil: number;
  readonly settles: number;
}

function withoutBottom(bed: RaisedBed): RaisedBed {
  const copy = { ...bed };
  delete copy.bottom;
  return copy;
}

function bedOf({ length, width, nominal, courses, posts, inGround, soil, settles }: Sizes): RaisedBed {
  const demo = withoutBottom(demoBed());
  const bed: RaisedBed = {
    ...demo,
    length: inches(length),
    width: inches(width),
    boards: { nominal, courses },
    posts: { nominal: posts, inGround: inches(inGround) },
    soil: { depth: inches(soil), settlesPercent: settles, sources: ['a-source'] },
    parts: demo.parts.filter(({ count }) => count !== 'cloth-feet'),
  };
  return soldAs(bed, [nominal, posts]);
}

/** Worked by hand in inches; volumes are cubic inches over 1728. */
const cases: readonly (readonly [
  name: string,
  sizes: Sizes,
  lengths: Readonly<Record<string, number>>,
  counts: Readonly<Record<string, number>>,
  cubicFeet: Readonly<Record<string, number>>,
])[] = [
  [
    // 2x6 is 1.5 by 5.5. Height 2 × 5.5. Ends 48 - 3. 96 over 72 takes one post more on each long side.
    // Joints: 2 courses × (4 boards × 2 ends + 2 middle posts). 5.5 in of board take 2 screws. Screw 1.5 + 1.5.
    // Soil: (93 × 45 - 6 × 3.5²) × 9.5 = 4111.5 × 9.5 = 39 059.25; loose a tenth and a half more.
    'four by eight of two-by-sixes, two courses, posts a foot in the ground',
    {
      length: 96,
      width: 48,
      nominal: '2x6',
      courses: 2,
      posts: '4x4',
      inGround: 12,
      soil: 9.5,
      settles: 15,
    },
    {
      height: 11,
      'inside-length': 93,
      'inside-width': 45,
      'side-board': 96,
      'end-board': 45,
      'post-length': 23,
      'post-spacing': 48,
      'screw-length': 3,
      'fill-depth': 10.925,
      diagonal: 107.331,
    },
    { 'middle-posts': 2, posts: 6, joints: 20, 'screws-per-joint': 2, screws: 40, 'bulk-yards': 1 },
    { 'soil-volume': 22.6037, 'fill-volume': 25.9943 },
  ],
  [
    // 1x8 is 0.75 by 7.25. 48 in is just what one-inch boards hold. 7.25 in take 3 screws. A cleat of 1.5 in lets a screw be
    // 0.75 + 1.5 - 0.25 = 2. Soil: (46.5² - 4 × 1.5²) × 6 = 2153.25 × 6 = 12 919.5.
    'four by four of one-by-eights on cleats',
    {
      length: 48,
      width: 48,
      nominal: '1x8',
      courses: 1,
      posts: '2x2',
      inGround: 0,
      soil: 6,
      settles: 10,
    },
    { height: 7.25, 'inside-length': 46.5, 'end-board': 46.5, 'post-length': 7.25, 'screw-length': 2 },
    { 'middle-posts': 0, posts: 4, joints: 8, 'screws-per-joint': 3, screws: 24, 'bulk-yards': 0.5 },
    { 'soil-volume': 7.4766, 'fill-volume': 8.2242 },
  ],
  [
    // 2x10 is 1.5 by 9.25. 144 over 72 is 2 spans: one post more on each long side. 9.25 in take 4 screws.
    // Soil: (141 × 33 - 6 × 12.25) × 16 = 4579.5 × 16 = 73 272; loose an eighth more, 47.70 over 27 is 1.77 yards.
    'three by twelve of two-by-tens, two courses',
    {
      length: 144,
      width: 36,
      nominal: '2x10',
      courses: 2,
      posts: '4x4',
      inGround: 18,
      soil: 16,
      settles: 12.5,
    },
    { height: 18.5, 'end-board': 33, 'post-length': 36.5, 'post-spacing': 72, 'fill-depth': 18 },
    { 'middle-posts': 2, joints: 20, 'screws-per-joint': 4, screws: 80, 'bulk-yards': 2 },
    { 'soil-volume': 42.4028, 'fill-volume': 47.7031 },
  ],
];

describe('a raised bed worked by hand', () => {
  test.each(cases)('%s', (_, sizes, lengths, counts, cubicFeet) => {
    const { number } = builtOf(bedOf(sizes));
    for (const [name, expected] of Object.entries(lengths))
      expect(number(`bed.${name}`, 'in'), name).toBeCloseTo(expected, 3);
    for (const [name, expected] of Object.entries(counts))
      expect(number(`bed.${name}`), name).toBeCloseTo(expected, 9);
    for (const [name, expected] of Object.entries(cubicFeet))
      expect(number(`bed.${name}`, 'ft3'), name).toBeCloseTo(expected, 3);
  });

  test.each([
    ['soil-in-bags', 0],
    ['soil-in-bags', 1],
    ['soil-in-bulk', 2],
  ] as const)('%s for case %d, since a yard is 27 cubic feet', (how, index) => {
    expect(builtOf(bedOf(cases[index]![1])).value('bed.soil-how')).toEqual(choice(how));
  });

  test('the mesh of the demonstration bed: 45 + 3 in is one strip of a 4 ft roll, 93 + 3 in is 8 ft of it', () => {
    const { number } = builtOf(demoBed());
    expect(number('bed.cloth-strips')).toBe(1);
    expect(number('bed.cloth-strip', 'in')).toBeCloseTo(96, 6);
    expect(number('bed.cloth-feet')).toBe(8);
    expect(number('bed.cloth-area', 'ft2')).toBeCloseTo(32, 6);
  });

  test('a roll that is an inch too narrow takes a second strip', () => {
    const bed = demoBed();
    const { number } = builtOf({ ...bed, bottom: { ...bed.bottom!, rollWidth: inches(47) } });
    expect(number('bed.cloth-strips')).toBe(2);
    expect(number('bed.cloth-feet')).toBe(16);
  });

  test('a board of 1.5 by 5.5 by 96 in weighs 792 cubic inches of softwood: 12.4 to 15.6 lb', () => {
    const weight = builtOf(demoBed()).value('bed.side-board-weight');
    expect(weight.kind).toBe('range');
    if (weight.kind !== 'range') return;
    expect(weight.low / 453.59237).toBeCloseTo(12.36, 2);
    expect(weight.high / 453.59237).toBeCloseTo(15.59, 2);
  });

  test('pieces of the demonstration bed come out of the four boards at hand and two bought ones', () => {
    const { bill, number } = builtOf(demoBed());
    expect(bill.lines.find(({ letter }) => letter === 'A')?.have?.value).toEqual({ kind: 'count', value: 4 });
    expect(number('build.part-a.to-buy.2438mm')).toBe(2);
    expect(number('build.part-f.quantity')).toBe(13);
  });

  test('from four boards of 8 ft at hand comes a bed of 4 ft: side and end are 93 in of each', () => {
    const bed = demoBed();
    const hand = largestFromHand(bed, {
      versions: shorterBeds(bed),
      build: structureOf,
      place: { hemisphere: 'north' },
    });
    expect(hand?.project.kind === 'raised-bed' && hand.project.length.low / 25.4).toBeCloseTo(48, 6);
  });
});

describe('who reaches the middle of a bed', () => {
  test.each([
    ['adults', 48, 11, 'reach-from-both-sides'],
    ['adults', 48.1, 11, 'reach-too-wide'],
    ['adults', 24, 11, 'reach-from-one-side'],
    ['youth', 48, 24, 'reach-from-both-sides'],
    ['youth', 48, 30, 'reach-too-high'],
    ['children', 48, 11, 'reach-too-wide'],
    ['children', 36, 11, 'reach-from-both-sides'],
    ['children', 18, 11, 'reach-from-one-side'],
    ['wheelchair', 48, 11, 'reach-too-low'],
    ['wheelchair', 48, 24, 'reach-from-both-sides'],
    ['wheelchair', 24, 34, 'reach-from-one-side'],
    ['wheelchair', 48, 35, 'reach-too-high'],
    ['wheelchair', 60, 27, 'reach-too-wide'],
  ] as const)('%s at a bed %d in wide and %d in high: %s', (who, width, height, answer) => {
    expect(reachOf(who, { widthMm: width * 25.4, heightMm: height * 25.4 })).toBe(answer);
  });
});

describe('what does not add up in a raised bed', () => {
  const faults = (change: Partial<RaisedBed>): readonly string[] => {
    const built = structureOf({ ...demoBed(), ...change }, { hemisphere: 'north' });
    return built.kind === 'faults' ? built.faults.map(({ path }) => path.join('.')) : [];
  };

  test.each<readonly [string, Partial<RaisedBed>, readonly string[]]>([
    ['nothing', {}, []],
    ['a bed no wider than its posts', { width: inches(12) }, ['width']],
    [
      'a long side whose middle post stands on the ground',
      { posts: { nominal: '4x4', inGround: inches(6) } },
      ['posts.inGround'],
    ],
    [
      'loose soil over the rim',
      { soil: { depth: inches(10), settlesPercent: 15, sources: ['a-source'] } },
      ['soil.depth'],
    ],
    [
      'strips that overlap wholly',
      { bottom: { ...demoBed().bottom!, overlap: inches(48) } },
      ['bottom.overlap'],
    ],
    [
      'boards that no part is',
      { boards: { nominal: '2x8', courses: 1 }, soil: { ...demoBed().soil, depth: inches(6) } },
      ['parts'],
    ],
    [
      'several at once',
      {
        posts: { nominal: '4x4', inGround: inches(6) },
        soil: { depth: inches(10), settlesPercent: 15, sources: ['a-source'] },
      },
      ['posts.inGround', 'soil.depth'],
    ],
  ])('%s', (_, change, expected) => {
    expect(faults(change)).toEqual(expected);
  });

  test('mesh is counted that nothing says to lay', () => {
    const bed = withoutBottom(demoBed());
    const built = structureOf(bed, { hemisphere: 'north' });
    expect(built.kind === 'faults' && built.faults.map(({ path }) => path.join('.'))).toEqual([
      'parts.3.count',
    ]);
  });
});
