import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { baleColdFrame, isFrame } from '../../scripts/structures/bale-cold-frame.ts';
import { describeStructureFault, type StructureFault } from '../../scripts/structures/faults.ts';
import { withoutIdleParts } from '../../scripts/structures/bale-hardware-faults.ts';
import { smallerBaleFrames } from '../../scripts/structures/bale-versions.ts';
import { strapPlaces, strapsOver } from '../../scripts/structures/frame-boards.ts';
import { oddFrames, oddProject, partsFor } from './odd-frames.ts';
import { hingesOn2x6, inches, projectWith, quantityIn, thinScreen, type Choices } from './project.ts';
import { frameOf, numberOf, valueOf } from './read-frame.ts';

const holdDowns = { perEnd: 1, sources: ['weight-source'] };
const flat = { courses: 1, lay: 'flat' } as const;

describe('sashes on hinges', () => {
  test('at the top: a board as long as the sashes side by side, and straps that go round the tall wall', () => {
    // 3 × 28 = 84 in: straps a foot from either end and 60 in between them, more than 48: 3. Round the wall: 2 × (18 + 14 + 1.5) + 12.
    const frame = frameOf(
      projectWith({
        sashes: [
          [28, 54],
          [28, 54],
          [28, 54],
        ],
        special: { 0: { hinge: 'top' }, 1: { hinge: 'top' }, 2: { hinge: 'top' } },
        hinges: { ...hingesOn2x6, perSash: 3 },
        parts: partsFor('hinges', 'straps', 'cut'),
      }),
    );
    expect(numberOf(frame, 'frame.hinges')).toBe(9);
    expect(frame.pieces.map(({ role, nominal, lengthMm }) => [role, nominal, lengthMm / 25.4])).toEqual([
      ['hinge-board', '2x6', expect.closeTo(84, 6)],
    ]);
    expect(numberOf(frame, 'frame.straps')).toBe(3);
    expect(numberOf(frame, 'frame.board-strap', 'in')).toBeCloseTo(79, 6);
    expect(frame.covers?.map(({ sash }) => sash.hinged)).toEqual(['top', 'top', 'top']);
  });

  test('at the top, more than a plank is long: two boards that meet at a sash edge', () => {
    // 7 × 28 in: four are 112 in, five would be 140, more than 120.
    const { pieces } = frameOf(oddProject(oddFrames[7]!));
    expect(pieces.map(({ lengthMm }) => lengthMm / 25.4)).toEqual([
      expect.closeTo(112, 6),
      expect.closeTo(84, 6),
    ]);
  });

  test('at the outer sides: a board on each side wall as long as the sash, and they open toward the middle', () => {
    const frame = frameOf(oddProject(oddFrames[3]!));
    expect(frame.geometry.sashes.map(({ opens }) => opens)).toEqual(['east-edge', 'west-edge']);
    expect(frame.pieces.map(({ lengthMm }) => lengthMm / 25.4)).toEqual([
      expect.closeTo(54, 6),
      expect.closeTo(54, 6),
    ]);
    // Two over the sashes, two on each board.
    expect(numberOf(frame, 'frame.straps')).toBe(6);
    expect(frame.bed?.cover).toBe('screen');
  });

  test('on the sash between them: that one stays shut and takes no prop', () => {
    const frame = frameOf(oddProject(oddFrames[6]!));
    expect(frame.geometry.sashes.map(({ opens }) => opens)).toEqual(['west-edge', 'never', 'east-edge']);
    expect(numberOf(frame, 'frame.props')).toBe(2);
    expect(frame.pieces).toEqual([]);
    expect(frame.covers?.map(({ sash }) => sash.openAngleDeg === undefined)).toEqual([false, true, false]);
    // Weights at the edge that opens only: one on each of the two.
    expect(numberOf(frame, 'frame.hold-downs')).toBe(2);
  });
});

describe('what panes are of', () => {
  const weights = (special: Choices['special'], parts = partsFor()): number => {
    const value = valueOf(
      frameOf(projectWith({ sashes: [[36, 54]], special: special ?? {}, parts })),
      'frame.sash-k.weight',
    );
    return value.kind === 'range' ? value.low : NaN;
  };
  // 36 × 54 in = 1.2542 m2, 0.7 of it panes; the wood weighs 0.3 × 1.2542 × 34.925 mm × 432 kg/m3 = 5.677 kg.
  const [areaM2, woodKg] = [0.9144 * 1.3716, 0.3 * 0.9144 * 1.3716 * 0.034925 * 432];

  test.each([
    ['glass of 1/8 in', undefined, 0.7 * areaM2 * 0.003175 * 2530],
    [
      'film of 0.15 mm',
      { panes: { kind: 'plastic-film' }, glass: quantityIn('length', 'mm', 0.15) },
      0.7 * areaM2 * 0.00015 * 920,
    ],
    [
      'sheet of 6 mm',
      { panes: { kind: 'polycarbonate' }, glass: quantityIn('length', 'mm', 6) },
      0.7 * areaM2 * 0.006 * 200,
    ],
  ] as const)('%s', (_, extras, paneKg) => {
    expect(weights(extras ? { 0: extras } : {}) / 1000).toBeCloseTo(woodKg + paneKg, 6);
  });

  test('two of six missing and covered with film: two thirds of the glass are left', () => {
    const project = projectWith({
      sashes: [[36, 54]],
      special: { 0: { panes: { kind: 'glass', number: 6, missing: 2, cover: 'plastic-film' } } },
      parts: partsFor('pane-covers'),
    });
    const frame = frameOf(project);
    const glazedM2 = 0.7 * areaM2;
    expect(numberOf(frame, 'frame.pane-covers')).toBe(2);
    expect(numberOf(frame, 'frame.sash-k.pane-area', 'm2')).toBeCloseTo((glazedM2 * 2) / 3, 9);
    expect(numberOf(frame, 'frame.sash-k.cover-area', 'm2')).toBeCloseTo(glazedM2 / 3, 9);
    const value = valueOf(frame, 'frame.sash-k.weight');
    const paneKg = glazedM2 * ((2 / 3) * 0.003175 * 2530 + (1 / 3) * 0.00015 * 920);
    expect(value.kind === 'range' && value.low / 1000).toBeCloseTo(woodKg + paneKg, 6);
  });

  test('twin-wall sheet keeps more heat in than glass', () => {
    const uOf = (special: Choices['special']): number =>
      frameOf(projectWith({ special: special ?? {}, parts: partsFor() })).heat!.envelope.glazing.uWm2K;
    expect(uOf({})).toBe(6.25);
    expect(
      uOf({ 0: { panes: { kind: 'polycarbonate' }, glass: quantityIn('length', 'mm', 6) } }),
    ).toBeCloseTo(3.7, 9);
  });
});

describe('what lies under a sash', () => {
  test('a screen raises it by its thickness, and weighs wood and cloth', () => {
    const frame = frameOf(
      projectWith({ sashes: [[36, 54]], special: { 0: { screen: thinScreen } }, parts: partsFor('screens') }),
    );
    const bare = frameOf(projectWith({ sashes: [[36, 54]], parts: partsFor() }));
    const [raised, flatSash] = [frame.geometry.sashes[0]!, bare.geometry.sashes[0]!];
    expect(Math.hypot(raised.upper.y - flatSash.upper.y, raised.upper.z - flatSash.upper.z)).toBeCloseTo(
      19.05,
      6,
    );
    // Wood: (36 × 54 − 33 × 51) × 0.75 in3 = 195.75 in3; cloth: 33 × 51 in2 of 0.12 kg/m2.
    const kg = 195.75 * 0.0254 ** 3 * 432 + 33 * 51 * 0.0254 ** 2 * 0.12;
    const value = valueOf(frame, 'frame.sash-k.screen-weight');
    expect(value.kind === 'range' && value.low / 1000).toBeCloseTo(kg, 6);
  });

  test('a filler board: the short sash does not set the depth', () => {
    // Slant of the others 66 − 6 = 60. The short one is 63 long: 60 + 3 + 3 − 63 = 3 in are missing.
    const sashes = [
      [28, 66],
      [26, 63],
      [28, 66],
    ] as const;
    const filled = frameOf(
      projectWith({ sashes, special: { 1: { filler: 'board' } }, parts: partsFor('filler-boards') }),
    );
    expect(numberOf(filled, 'frame.inside-depth', 'in')).toBeCloseTo(Math.sqrt(60 ** 2 - 16), 4);
    expect(numberOf(filled, 'frame.sash-l.filler', 'in')).toBeCloseTo(3, 6);
    expect(numberOf(filled, 'frame.filler-boards')).toBe(1);
    expect(numberOf(frameOf(projectWith({ sashes })), 'frame.inside-depth', 'in')).toBeCloseTo(
      Math.sqrt(57 ** 2 - 16),
      4,
    );
  });

  test('a gap where a long sash lies across the low wall beside a short one', () => {
    // Slant 34, rise 4. 52 − 34 − 3 = 15 in on the wall: they press 15 × 4 / 34 = 1.765 in, of which an inch gives way.
    const frame = frameOf(
      projectWith({
        sashes: [
          [30, 52],
          [30, 40],
          [30, 52],
        ],
        parts: partsFor(),
      }),
    );
    expect(numberOf(frame, 'frame.sash-k.gap', 'in')).toBeCloseTo((15 * 4) / 34 - 1, 4);
    expect(frame.findings.some(({ id }) => id === 'frame.sash-l.gap')).toBe(false);
  });
});

describe('slope by a ridge of straw', () => {
  test('walls of one height, a rise of 5 in', () => {
    // Slant 54 − 6 = 48, rise 5: √(2304 − 25). Straw 5 − 1.5 = 3.5 in high, 18 wide, 66 long.
    const frame = frameOf(
      projectWith({
        sashes: [
          [33, 54],
          [33, 54],
        ],
        poleward: flat,
        slope: { by: 'wedge', rise: inches(5), board: '2x6' },
        parts: partsFor('cut'),
      }),
    );
    expect(numberOf(frame, 'frame.inside-depth', 'in')).toBeCloseTo(Math.sqrt(48 ** 2 - 25), 4);
    expect(numberOf(frame, 'frame.poleward-height', 'in')).toBeCloseTo(19, 6);
    expect(numberOf(frame, 'frame.ridge-straw', 'ft3')).toBeCloseTo((3.5 * 18 * 66) / 1728, 6);
    expect(frame.pieces.map(({ role, lengthMm }) => [role, lengthMm / 25.4])).toEqual([
      ['rest-board', expect.closeTo(66, 6)],
    ]);
  });
});

describe('held by a strap', () => {
  test('the strap goes once round the frame, and is not counted on to hold the sash shut', () => {
    const frame = frameOf(
      projectWith({ sashes: [[36, 54]], special: { 0: { holdDown: 'strap' } }, parts: partsFor('straps') }),
    );
    // Outside depth 47.833 + 18 + 14 = 79.833; 2 × that + 18 + 14 + 12.
    expect(numberOf(frame, 'frame.sash-strap', 'in')).toBeCloseTo(2 * 79.83304 + 44, 4);
    // It runs from the sash, 1 3/8 in thick, over 15 in of wall: it would have to pull 11 times as hard as it holds.
    expect(numberOf(frame, 'frame.sash-k.hold-down-per-sash', 'lb')).toBe(0);
    expect(frame.covers![0]!.sash.holdDownN).toBe(0);
  });

  test.each([
    [24, 2],
    [72, 2],
    [73, 3],
    [120, 3],
    [121, 4],
  ])('a board of %d in takes %d straps', (lengthIn, number) => {
    const board = { lengthMm: lengthIn * 25.4 };
    expect(strapsOver(board)).toBe(number);
    expect(strapPlaces(board)).toHaveLength(number);
  });
});

interface FaultRow {
  readonly name: string;
  readonly choices: Choices;
  readonly faults: readonly (readonly [StructureFault['fault'], ...(readonly (string | number)[])])[];
}

const pair = [
  [30, 54],
  [30, 54],
] as const;
const ridge = (rise: number, board: '1x4' | '2x4' | '2x6' = '2x6'): Choices => ({
  poleward: flat,
  slope: { by: 'wedge', rise: inches(rise), board },
});

const faultRows: readonly FaultRow[] = [
  { name: 'nearly level', choices: { sashes: [[36, 110]] }, faults: [['slope-too-flat', 'walls']] },
  {
    name: 'said to slope by courses on walls of one course',
    choices: { slope: { by: 'courses' } },
    faults: [['slope-says-otherwise', 'slope', 'by']],
  },
  {
    name: 'a rise for walls of unequal height',
    choices: { slope: { by: 'lay', rise: inches(4) } },
    faults: [['rise-without-ridge', 'slope']],
  },
  {
    name: 'a ridge without its board, in walls that alone give no slope',
    choices: { poleward: flat, slope: { by: 'wedge', rise: inches(4) } },
    faults: [['ridge-incomplete', 'slope']],
  },
  {
    name: 'a ridge lower than its board',
    choices: ridge(1),
    faults: [['ridge-below-board', 'slope', 'rise']],
  },
  { name: 'a ridge that rolls off', choices: ridge(11), faults: [['ridge-too-high', 'slope', 'rise']] },
  {
    name: 'a board narrower than the bearing',
    choices: { ...ridge(4, '2x4'), bearing: 4 },
    faults: [['rest-board-too-narrow', 'slope', 'board']],
  },
  {
    name: 'three courses on edge with one stake to a bale',
    choices: {
      sashes: [[36, 80]],
      poleward: { courses: 3, lay: 'on-edge' },
      others: { courses: 3, lay: 'flat' },
      stakes: { perBale: 1, length: 70 },
    },
    faults: [['wall-unsteady', 'walls', 'poleward']],
  },
  {
    name: 'hinges without a board',
    choices: { special: { 0: { hinge: 'top' } }, parts: partsFor('hinges', 'straps') },
    faults: [['hinges-missing', 'sashes', 0, 'hinge']],
  },
  {
    name: 'two sashes hinged to each other',
    choices: {
      sashes: pair,
      special: { 0: { hinge: 'east' }, 1: { hinge: 'west' } },
      hinges: hingesOn2x6,
      parts: partsFor('hinges'),
    },
    faults: [
      ['hinge-on-hinged', 'sashes', 0, 'hinge'],
      ['hinge-on-hinged', 'sashes', 1, 'hinge'],
    ],
  },
  {
    name: 'a sash hinged to one that nothing holds',
    choices: {
      sashes: pair,
      special: { 0: { hinge: 'east' } },
      hinges: hingesOn2x6,
      parts: partsFor('hinges'),
    },
    faults: [['hinge-on-loose', 'sashes', 0, 'hinge']],
  },
  {
    name: 'a hinge board wider than what is left of the wall',
    choices: {
      bearing: 5,
      special: { 0: { hinge: 'top' } },
      hinges: { ...hingesOn2x6, board: '2x10' },
      parts: partsFor('hinges', 'straps'),
    },
    faults: [['hinge-board-no-room', 'hinges', 'board']],
  },
  {
    name: 'missing panes that are not counted, all gone, or left open',
    choices: {
      sashes: [...pair, [30, 54]],
      special: {
        0: { panes: { kind: 'glass', missing: 2 } },
        1: { panes: { kind: 'glass', number: 4, missing: 4, cover: 'plastic-film' } },
        2: { panes: { kind: 'glass', number: 6, missing: 2 } },
      },
      parts: partsFor('pane-covers'),
    },
    faults: [
      ['panes-not-counted', 'sashes', 0, 'panes'],
      ['panes-all-missing', 'sashes', 1, 'panes', 'missing'],
      ['panes-open', 'sashes', 2, 'panes', 'missing'],
    ],
  },
  {
    name: 'a screen of nothing but wood',
    choices: {
      special: { 0: { screen: { rail: inches(5), thickness: inches(0.75) } } },
      sashes: [
        [9, 54],
        [30, 54],
      ],
      parts: partsFor('screens'),
    },
    faults: [['screen-rail-too-wide', 'sashes', 0, 'screen', 'rail']],
  },
  {
    name: 'weights that the record does not count',
    choices: { special: { 0: { holdDown: 'weight' } } },
    faults: [['weights-missing', 'sashes', 0, 'holdDown']],
  },
  {
    name: 'parts that are missing from the list, and one for nothing',
    choices: { special: { 0: { screen: thinScreen, holdDown: 'strap' } }, parts: partsFor('hooks') },
    faults: [
      ['part-missing', 'parts'],
      ['part-missing', 'parts'],
      ['part-for-nothing', 'parts', 6, 'count'],
    ],
  },
  {
    name: 'no sash that reaches, and one that ends far out',
    choices: { special: { 0: { filler: 'board' } }, parts: partsFor('filler-boards') },
    faults: [['filler-alone', 'sashes']],
  },
  {
    name: 'a filler board that would stick out too far',
    choices: {
      sashes: [
        [30, 66],
        [30, 56],
      ],
      special: { 1: { filler: 'board' } },
      parts: partsFor('filler-boards'),
    },
    faults: [['filler-too-far', 'sashes', 1, 'length']],
  },
];

describe('what does not add up', () => {
  test.each(faultRows)('$name', ({ choices, faults }) => {
    const result = baleColdFrame(projectWith(choices), { hemisphere: 'north' });
    if (isFrame(result)) throw new Error('a frame was made of it');
    expect(
      result.map(({ fault, path }) => [fault, ...path]).sort((a, b) => (a.join() < b.join() ? -1 : 1)),
    ).toEqual(faults.map((fault) => [...fault]).sort((a, b) => (a.join() < b.join() ? -1 : 1)));
    for (const fault of result) {
      const { message, hint } = describeStructureFault(fault);
      expect(message).toMatch(/^[A-Z0-9].*\.$/);
      expect(hint).toMatch(/^[A-Z].*\.$/);
      expect(message + hint).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  test('two stakes to a bale hold three courses on edge', () => {
    const result = baleColdFrame(
      projectWith({
        sashes: [[36, 80]],
        poleward: { courses: 3, lay: 'on-edge' },
        others: { courses: 3, lay: 'flat' },
        stakes: { perBale: 2, length: 70 },
      }),
      { hemisphere: 'north' },
    );
    expect(isFrame(result)).toBe(true);
  });
});

describe('every odd frame', () => {
  test.each(oddFrames)('$name: one sash more never needs fewer bales, straps or hinges', (frame) => {
    const project = oddProject(frame);
    const whole = frameOf(project);
    const ids = ['frame.bales', 'frame.bales-wall', 'frame.stakes'];
    for (const smaller of smallerBaleFrames(project)) {
      const built = baleColdFrame(smaller, { hemisphere: 'north' });
      if (!isFrame(built)) continue;
      // A frame without its shortest sash is deeper.
      if (built.geometry.insideDepthMm > whole.geometry.insideDepthMm + 1e-6) continue;
      for (const id of ids) {
        const value = built.findings.find((finding) => finding.id === id)?.value;
        expect(value?.kind === 'count' && value.value).toBeLessThanOrEqual(numberOf(whole, id));
      }
    }
  });

  test('any hinges, hold-downs, screens and panes give a frame or faults that say why, and never a crash', () => {
    const extras = fc.record(
      {
        hinge: fc.constantFrom(
          'none' as const,
          'none' as const,
          'top' as const,
          'west' as const,
          'east' as const,
        ),
        holdDown: fc.constantFrom('none' as const, 'weight' as const, 'strap' as const, 'hook' as const),
        screen: fc.constant(thinScreen),
        filler: fc.constant('board' as const),
        panes: fc.record({
          kind: fc.constantFrom('glass' as const, 'plastic-film' as const, 'polycarbonate' as const),
          number: fc.integer({ min: 4, max: 12 }),
          missing: fc.integer({ min: 1, max: 5 }),
          cover: fc.constant('plastic-film' as const),
        }),
      },
      { requiredKeys: [] },
    );
    const sash = fc.tuple(fc.integer({ min: 18, max: 44 }), fc.integer({ min: 52, max: 58 }));
    const list = fc.array(fc.tuple(sash, extras), { minLength: 1, maxLength: 6 });
    let built = 0;
    fc.assert(
      fc.property(list, (sashes) => {
        const project = projectWith({
          sashes: sashes.map(([size]) => size),
          special: Object.fromEntries(sashes.map(([, special], index) => [index, special])),
          hinges: hingesOn2x6,
          holdDowns,
          parts: partsFor(
            'hold-downs',
            'hinges',
            'screens',
            'straps',
            'hooks',
            'pane-covers',
            'filler-boards',
          ),
        });
        const result = baleColdFrame(withoutIdleParts(project), { hemisphere: 'north' });
        if (isFrame(result)) {
          built += 1;
          expect(result.covers).toHaveLength(sashes.length);
          for (const { value, id } of result.findings)
            if (value.kind === 'quantity') expect(Number.isFinite(value.value), id).toBe(true);
        } else {
          expect(result.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 200 },
    );
    expect(built).toBeGreaterThan(5);
  });
});
