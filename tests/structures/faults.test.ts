import { describe, expect, test } from 'vitest';
import { baleColdFrame, isFrame } from '../../scripts/structures/bale-cold-frame.ts';
import { describeStructureFault, type StructureFault } from '../../scripts/structures/faults.ts';
import { partOf, projectWith, quantityIn, type Choices } from './project.ts';

interface Row {
  readonly name: string;
  readonly choices: Choices;
  readonly faults: readonly {
    readonly fault: StructureFault['fault'];
    readonly path: StructureFault['path'];
  }[];
}

const flat = { courses: 1, lay: 'flat' } as const;

const rows: readonly Row[] = [
  {
    name: 'walls of one height',
    choices: { poleward: flat },
    faults: [{ fault: 'slope-not-positive', path: ['walls'] }],
  },
  {
    name: 'the lower wall at the back',
    choices: { poleward: flat, others: { courses: 1, lay: 'on-edge' } },
    faults: [{ fault: 'slope-not-positive', path: ['walls'] }],
  },
  {
    name: 'so steep that a sash slides off',
    choices: { poleward: { courses: 2, lay: 'on-edge' }, stakes: { perBale: 2, length: 60 } },
    faults: [{ fault: 'slope-too-steep', path: ['walls'] }],
  },
  {
    name: 'a sash that only just bears and leaves no bed',
    choices: {
      sashes: [
        [36, 54],
        [36, 18],
      ],
    },
    faults: [{ fault: 'sash-too-short', path: ['sashes', 1, 'length'] }],
  },
  {
    name: 'a sash shorter than the rise of the walls',
    choices: { sashes: [[36, 9]] },
    faults: [{ fault: 'sash-too-short', path: ['sashes', 0, 'length'] }],
  },
  {
    name: 'an end sash no wider than two bearings',
    choices: {
      sashes: [
        [30, 54],
        [6, 54],
      ],
    },
    faults: [{ fault: 'sash-too-narrow', path: ['sashes', 1, 'width'] }],
  },
  {
    name: 'sashes that together leave less than a foot of bed',
    choices: {
      sashes: [
        [8, 54],
        [9, 54],
      ],
    },
    faults: [{ fault: 'sashes-too-narrow', path: ['sashes'] }],
  },
  {
    name: 'a bearing wider than the tall wall is thick',
    choices: { bearing: 15, sashes: [[60, 80]] },
    faults: [{ fault: 'bearing-wider-than-wall', path: ['bearing', 'value'] }],
  },
  {
    name: 'no bearing at all',
    choices: { bearing: 0 },
    faults: [{ fault: 'not-positive', path: ['bearing', 'value'] }],
  },
  {
    name: 'a bale that is widest upright',
    choices: { bale: [36, 14, 18] },
    faults: [{ fault: 'bale-shape', path: ['bale'] }],
  },
  {
    name: 'stakes that end in the bale',
    choices: { stakes: { perBale: 2, length: 24 } },
    faults: [{ fault: 'stake-too-short', path: ['stakes', 'length'] }],
  },
  {
    name: 'planting mix up to the glass',
    choices: { soilDepth: 12 },
    faults: [{ fault: 'soil-too-deep', path: ['soilDepth'] }],
  },
  {
    name: 'a part and a sash of one letter',
    choices: { parts: [partOf({ letter: 'A' }), partOf({ letter: 'K' })] },
    faults: [{ fault: 'letter-twice', path: ['sashes', 0, 'id'] }],
  },
  {
    name: 'two parts of one letter',
    choices: { parts: [partOf({ letter: 'A' }), partOf({ letter: 'A' })] },
    faults: [{ fault: 'letter-twice', path: ['parts', 1, 'letter'] }],
  },
  {
    name: 'a part counted as each without a number',
    choices: { parts: [partOf({ count: 'each' })] },
    faults: [{ fault: 'number-missing', path: ['parts', 0] }],
  },
  {
    name: 'planting mix without the size of its bag',
    choices: { parts: [partOf({ count: 'soil-litres' })] },
    faults: [{ fault: 'pack-missing', path: ['parts', 0] }],
  },
  {
    name: 'several causes, each once',
    choices: { poleward: flat, stakes: { perBale: 2, length: 20 }, soilDepth: 13 },
    faults: [
      { fault: 'slope-not-positive', path: ['walls'] },
      { fault: 'stake-too-short', path: ['stakes', 'length'] },
      { fault: 'soil-too-deep', path: ['soilDepth'] },
    ],
  },
];

describe('a project that does not add up', () => {
  test.each(rows)('$name', ({ choices, faults }) => {
    const result = baleColdFrame(projectWith(choices), { hemisphere: 'north' });
    if (isFrame(result)) throw new Error('a frame was made of it');
    expect(result.map(({ fault, path }) => ({ fault, path }))).toEqual(faults);
  });

  test.each(rows)('$name: said in a message that the hint does not repeat', ({ choices }) => {
    const result = baleColdFrame(projectWith(choices), { hemisphere: 'north' });
    if (isFrame(result)) throw new Error('a frame was made of it');
    for (const fault of result) {
      const { message, hint } = describeStructureFault(fault);
      expect(message).toMatch(/^[A-Z].*\.$/);
      expect(hint).toMatch(/^[A-Z].*\.$/);
      expect(message).not.toMatch(/NaN|Infinity|undefined/);
      expect(message).not.toContain(hint);
    }
  });
});

describe('just inside the limits', () => {
  const limits: readonly { readonly name: string; readonly choices: Choices }[] = [
    { name: 'a bed of exactly a foot', choices: { sashes: [[18, Math.hypot(12, 4) + 6]] } },
    {
      name: 'a narrow sash between two wide ones',
      choices: {
        sashes: [
          [20, 54],
          [5, 54],
          [20, 54],
        ],
      },
    },
    { name: 'a stake a foot into the ground', choices: { stakes: { perBale: 1, length: 30 } } },
    { name: 'soil that leaves 4 in under the glass', choices: { soilDepth: 10 } },
    { name: 'a bearing as wide as the tall wall', choices: { bearing: 14, sashes: [[60, 80]] } },
    {
      name: 'a bag of mix by its volume',
      choices: { parts: [partOf({ count: 'soil-litres', pack: quantityIn('volume', 'ft3', 2) })] },
    },
  ];
  test.each(limits)('$name is a frame', ({ choices }) => {
    expect(isFrame(baleColdFrame(projectWith(choices), { hemisphere: 'north' }))).toBe(true);
  });
});
