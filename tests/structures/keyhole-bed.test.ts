import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawnMeasures } from '../../scripts/drawings/build/assembly-drawings.ts';
import type { Finding } from '../../scripts/findings/finding.ts';
import { fromHeld } from '../../scripts/quantities/units.ts';
import { keyholeStructure } from '../../scripts/structures/keyhole-bed.ts';
import type { KeyholeBed } from '../../scripts/records/schemas/projects/keyhole-bed.ts';
import { courseOutlines } from '../../scripts/structures/keyhole-courses.ts';
import { courseAt, layRing, ringSizes } from '../../scripts/structures/keyhole-layout.ts';
import type { Structure } from '../../scripts/structures/structure.ts';
import { keyholeWith, type KeyholeChoices } from './keyhole-project.ts';
import { quantityIn } from './project.ts';

const north = { hemisphere: 'north' } as const;

function bedOf(choices: KeyholeChoices = {}): Structure {
  const built = keyholeStructure(keyholeWith(choices), north);
  if (built.kind === 'faults') throw new Error(JSON.stringify(built.faults));
  return built.structure;
}

function valueOf({ findings }: Pick<Structure, 'findings'>, name: string): Finding['value'] {
  const finding = findings.find(({ id }) => id === `bed.${name}`);
  if (!finding) throw new Error(`no finding bed.${name}`);
  return finding.value;
}

function numberOf(bed: Pick<Structure, 'findings'>, name: string): number {
  const value = valueOf(bed, name);
  if (value.kind !== 'quantity' && value.kind !== 'count') throw new Error(`${name} is ${value.kind}`);
  return value.value;
}

const inchesOf = (bed: Structure, name: string): number => fromHeld(numberOf(bed, name), 'in');

/**
 * A ring 72 in across of blocks 8 in at the face, 6 at the back, 8 deep and 4 high, notch and basket 24 in; by hand, in inches:
 *
 * Faces are chords: from the middle to them √(36² − 4²) = 35.77709, to the backs 27.77709.
 * A block takes 2·asin(4/36) = 12.75873°. The notch opens asin(12/36) = 19.47122° to each side: 360 − 38.94244 = 321.05756°
 * is 25.16 blocks. Beside the walls of the notch another asin(8/27.77709) = 16.73846°: 287.58064° is 22.54 blocks.
 * Sides: behind the ring from 27.05 in to 12, two blocks of 7 on the average; from √(36² − 8²) = 35.1 to 12, three.
 * Five courses of 4 are 20, 2 of them in the ground: 25+22+25+22+25 = 119 in the ring, and 2·(2+3+2+3+2) = 24 along the notch.
 * Drainage, mix and rim: the mix at the wall is 18 − 1 = 17 in high, at the basket 22.
 */
describe('a keyhole bed of six feet, by hand', () => {
  const bed = bedOf();

  test('blocks of each course', () => {
    expect(numberOf(bed, 'ring-first') + numberOf(bed, 'ring-first-halves') / 2).toBe(25);
    expect(numberOf(bed, 'ring-second') + numberOf(bed, 'ring-second-halves') / 2).toBe(22);
    expect(numberOf(bed, 'side-first')).toBe(2);
    expect(numberOf(bed, 'side-second')).toBe(3);
    expect(numberOf(bed, 'blocks')).toBe(119 + 24);
  });

  test('courses and heights', () => {
    expect(numberOf(bed, 'wall-courses')).toBe(5);
    expect(inchesOf(bed, 'wall-height')).toBeCloseTo(18, 9);
    expect(inchesOf(bed, 'surface-at-basket')).toBeCloseTo(22, 9);
    expect(inchesOf(bed, 'inside-diameter')).toBeCloseTo(2 * 27.77709, 4);
    expect(inchesOf(bed, 'ring-width')).toBeCloseTo(15.77709, 4);
  });

  // (180° − 19.47122°) = 2.801756 rad: 2.801756·(27.77709² − 12²) = 1758.31. A strip of 8 in beside a radius takes
  // (8·√(r² − 64) + r²·asin(8/r))/2: of 27.77709 219.106, of 12 88.316. 1758.31 − 2·(219.106 − 88.316) = 1496.73 in².
  test('the area of soil', () => {
    expect(fromHeld(numberOf(bed, 'soil-area'), 'ft2') * 144).toBeCloseTo(1496.73, 1);
  });

  // Mean depth 17 + 5·(27.77709 + 24)/(3·(27.77709 + 12)) = 19.16949 in; times 1496.73 in² is 28691.5 in³, 16.604 ft³.
  // Drainage 2 in is 1.7323 ft³, mix 7 in 6.0632 ft³; what is left, 8.8085 ft³, is browns and greens.
  test('the filling, settled and loose', () => {
    const cubicFeet = (name: string): number => fromHeld(numberOf(bed, name), 'ft3');
    expect(inchesOf(bed, 'mean-depth')).toBeCloseTo(19.16949, 4);
    expect(cubicFeet('fill')).toBeCloseTo(16.604, 2);
    expect(cubicFeet('layer-drainage')).toBeCloseTo((2 * 1496.73) / 1728, 3);
    expect(cubicFeet('layer-mix')).toBeCloseTo(6.0632, 3);
    expect(cubicFeet('layer-organic')).toBeCloseTo(8.8085, 2);
    expect(cubicFeet('mix-to-fill')).toBeCloseTo(6.0632 / 0.85, 3);
    expect(cubicFeet('browns')).toBeCloseTo((8.8085 / 0.6) * (2 / 3), 2);
    expect(cubicFeet('greens')).toBeCloseTo(8.8085 / 0.6 / 3, 2);
  });

  // π·24 + 4 = 79.398 in of mesh.
  test('mesh and reach', () => {
    expect(inchesOf(bed, 'mesh-length')).toBeCloseTo(79.398, 3);
    expect(inchesOf(bed, 'reach')).toBeCloseTo(24, 9);
    expect(valueOf(bed, 'ring-reach-adults')).toEqual({ kind: 'choice', value: 'ring-reach-from-one-side' });
    expect(valueOf(bed, 'ring-reach-children')).toEqual({ kind: 'choice', value: 'ring-reach-too-wide' });
  });

  // 7·8·4 = 224 in³. A solid block of 3 5/8 × 7 5/8 × 15 5/8 in weighs 32 lb: 16.6 lb; at 150 lb/ft³ 19.4 lb.
  test('the weight of a block', () => {
    const mass = valueOf(bed, 'block-mass');
    if (mass.kind !== 'range') throw new Error(mass.kind);
    expect(fromHeld(mass.low, 'lb')).toBeCloseTo((32 * 224) / (3.625 * 7.625 * 15.625), 6);
    expect(fromHeld(mass.high, 'lb')).toBeCloseTo((150 * 224) / 1728, 6);
  });

  test('what is drawn is what is computed', () => {
    const drawn = drawnMeasures(bed.assembly!);
    expect(drawn.length).toBeGreaterThan(6);
    for (const { finding, lengthMm } of drawn)
      expect(lengthMm, finding).toBeCloseTo(numberOf(bed, finding.replace('bed.', '')), 6);
  });

  test('every drawing has something that it adds', () => {
    const { stages, members } = bed.assembly!;
    for (const stage of stages)
      expect(members.filter((member) => member.stage === stage).length, stage).toBeGreaterThan(0);
  });

  test('as many blocks are drawn as are counted', () => {
    const drawn = bed.assembly!.members.filter(({ role }) => role === 'block').length;
    expect(drawn).toBe(numberOf(bed, 'blocks-whole') + numberOf(bed, 'half-blocks'));
  });
});

describe('of any size', () => {
  const inches = fc.integer({ min: 8 * 56, max: 8 * 82 }).map((eighths) => eighths / 8);

  test('a wider bed never takes fewer blocks', () => {
    fc.assert(
      fc.property(inches, inches, (a, b) => {
        const [small, large] = [Math.min(a, b), Math.max(a, b)];
        const at = (diameter: number) => keyholeStructure(keyholeWith({ diameter, basket: 18 }), north);
        const [less, more] = [at(small), at(large)];
        fc.pre(less.kind === 'structure' && more.kind === 'structure');
        expect(numberOf(more.structure, 'blocks')).toBeGreaterThanOrEqual(numberOf(less.structure, 'blocks'));
      }),
      { numRuns: 60, seed: 4 },
    );
  });

  test('layers sum to the whole', () => {
    fc.assert(
      fc.property(
        inches,
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 4, max: 9 }),
        (diameter, drainage, mix) => {
          const built = keyholeStructure(
            keyholeWith({ diameter, basket: 18, layers: [drainage, mix, 1, 5] }),
            north,
          );
          fc.pre(built.kind === 'structure');
          const of = (name: string): number => numberOf(built.structure, name);
          expect(of('layer-drainage') + of('layer-organic') + of('layer-mix')).toBeCloseTo(of('fill'), 6);
        },
      ),
      { numRuns: 40, seed: 4 },
    );
  });

  test('joints are broken by a quarter of a block, and no gap is wider than allowed', () => {
    fc.assert(
      fc.property(inches, (diameter) => {
        const ring = layRing(ringSizes(keyholeWith({ diameter, basket: 18 })));
        fc.pre(ring !== undefined);
        const joints = (index: number): readonly number[] =>
          courseAt(ring, index)
            .ring.slice(1)
            .map(({ from }) => from);
        for (const joint of joints(0))
          for (const other of joints(1))
            expect(Math.abs(joint - other) * ring.radiusMm).toBeGreaterThanOrEqual(
              0.25 * ring.block.faceMm - 1e-6,
            );
        for (const index of [0, 1]) {
          const { frontGapMm, backGapMm } = courseAt(ring, index);
          expect(Math.max(frontGapMm, backGapMm)).toBeLessThanOrEqual(12.7 + 1e-6);
        }
      }),
      { numRuns: 40, seed: 4 },
    );
  });

  test('smaller versions are smaller, and the same bed is not among them', () => {
    const bed = bedOf();
    const sizes = [...bed.versions!()].map((project) => {
      const built = keyholeStructure(project as ReturnType<typeof keyholeWith>, north);
      return built.kind === 'structure' ? numberOf(built.structure, 'blocks') : 0;
    });
    expect(sizes.length).toBeGreaterThan(5);
    for (const blocks of sizes) expect(blocks).toBeLessThan(numberOf(bed, 'blocks'));
  });
});

describe('what does not add up', () => {
  const rows: readonly (readonly [string, KeyholeChoices, readonly (string | number)[]])[] = [
    ['a block wider at the back', { block: [6, 8, 8, 4] }, ['block', 'back']],
    ['a wall higher than the block allows', { height: 30, basketHeight: 60, stakeLength: 60 }, ['height']],
    ['a course that is buried deeper than it is high', { buried: 5 }, ['buried']],
    ['a notch nobody can stand in', { notch: 10 }, ['notch', 'value']],
    ['a notch that takes half the bed', { notch: 40 }, ['notch', 'value']],
    ['blocks that do not taper in a narrow ring', { block: [12, 12, 8, 4] }, ['block']],
    ['blocks that taper too much for a wide ring', { diameter: 140 }, ['block']],
    ['a basket that fills the ring', { basket: 60 }, ['basket', 'diameter']],
    ['a ring too narrow for a row', { basket: 42 }, ['basket', 'diameter']],
    ['layers deeper than the wall', { layers: [10, 12, 1, 5] }, ['layers']],
    ['a basket that ends under the mix', { basketHeight: 20 }, ['basket', 'height']],
    ['stakes that do not reach the ground', { stakeLength: 20 }, ['basket', 'stakes', 'length']],
    ['a roll too short for the basket', { roll: 60 }, ['basket', 'roll']],
  ];
  test.each(rows)('%s', (_, choices, path) => {
    const built = keyholeStructure(keyholeWith(choices), north);
    expect(built.kind === 'faults' && built.faults.map((fault) => fault.path)).toContainEqual(path);
  });
});

describe('bags and courses', () => {
  const demo = (parts: KeyholeBed['parts']): Structure => {
    const built = keyholeStructure({ ...keyholeWith(), parts }, { hemisphere: 'north' });
    if (built.kind === 'faults') throw new Error(JSON.stringify(built.faults));
    return built.structure;
  };
  const bagOf = (extra: Partial<KeyholeBed['parts'][number]>): KeyholeBed['parts'] => [
    ...keyholeWith().parts.filter(({ count }) => count !== 'base-litres'),
    {
      letter: 'B',
      name: 'Gravel',
      material: 'gravel',
      count: 'base-litres',
      unit: 'bag',
      atHand: true,
      ...extra,
    },
  ];

  // 45 to 65 lb in half a cubic foot, so 90 to 130 lb in a whole one.
  test.each([
    ['half a cubic foot, by its volume', { pack: quantityIn('volume', 'ft3', 0.5) }, [45, 65]],
    ['a cubic foot, by its volume', { pack: quantityIn('volume', 'ft3', 1) }, [90, 130]],
    [
      'half a cubic foot that weighs 50 lb',
      { pack: quantityIn('volume', 'ft3', 0.5), mass: quantityIn('mass', 'lb', 50) },
      [50, 50],
    ],
  ])('a bag of gravel of %s is lifted first', (_, extra, [low, high]) => {
    const { lifts, findings } = demo(bagOf(extra));
    expect(lifts[0]!.item).toBe('gravel-bag');
    expect(lifts[0]!.stage).toBe('base');
    expect(fromHeld(lifts[0]!.massG, 'lb')).toBeCloseTo(high!, 6);
    const value = findings.find(({ id }) => id === 'bed.gravel-bag-weight')!.value;
    const ends =
      value.kind === 'range'
        ? [value.low, value.high]
        : value.kind === 'quantity'
          ? [value.value, value.value]
          : [];
    expect(ends.map((grams) => fromHeld(grams, 'lb'))).toEqual([
      expect.closeTo(low!, 6),
      expect.closeTo(high!, 6),
    ]);
  });

  test('a load of gravel comes on a truck and is not lifted', () => {
    const { lifts } = demo(bagOf({ pack: quantityIn('volume', 'ft3', 27) }));
    expect(lifts.map(({ item }) => item)).not.toContain('gravel-bag');
  });

  test('a course begins at one corner of the notch; the sides come last on the ground, and first above it', () => {
    const ring = layRing(ringSizes(keyholeWith()))!;
    const [first, second] = [courseOutlines(ring, 0), courseOutlines(ring, 1)];
    const reach = ({ outline }: (typeof first)[number]): number =>
      Math.max(...outline.map(({ x, y }) => Math.hypot(x, y)));
    // The first block on the ground touches the outside circle beside the notch, on the east.
    expect(reach(first[0]!)).toBeCloseTo(ring.radiusMm, 6);
    expect(Math.min(...first[0]!.outline.map(({ x }) => x))).toBeGreaterThan(0);
    expect(reach(first.at(-1)!)).toBeLessThan(ring.insideMm);
    expect(second[0]!.half).toBe(true);
    expect(second.slice(-22).every(({ half }) => !half)).toBe(true);
  });
});
