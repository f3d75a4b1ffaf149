import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawnMeasures } from '../../scripts/drawings/build/assembly-drawings.ts';
import type { Finding } from '../../scripts/findings/finding.ts';
import { fromHeld } from '../../scripts/quantities/units.ts';
import { tepeeStructure } from '../../scripts/structures/pole-tepee.ts';
import type { Structure } from '../../scripts/structures/structure.ts';
import { holdArmMm } from '../../scripts/structures/tepee-layout.ts';
import { tepeeWith, type TepeeChoices } from './keyhole-project.ts';

const north = { hemisphere: 'north' } as const;

function tepeeOf(choices: TepeeChoices = {}): Structure {
  const built = tepeeStructure(tepeeWith(choices), north);
  if (built.kind === 'faults') throw new Error(JSON.stringify(built.faults));
  return built.structure;
}

function valueOf({ findings }: Pick<Structure, 'findings'>, name: string): Finding['value'] {
  const finding = findings.find(({ id }) => id === `tepee.${name}`);
  if (!finding) throw new Error(`no finding tepee.${name}`);
  return finding.value;
}

function numberOf(tepee: Pick<Structure, 'findings'>, name: string): number {
  const value = valueOf(tepee, name);
  if (value.kind !== 'quantity' && value.kind !== 'count') throw new Error(`${name} is ${value.kind}`);
  return value.value;
}

describe('six poles of eight feet, by hand', () => {
  const tepee = tepeeOf();
  const inches = (name: string): number => fromHeld(numberOf(tepee, name), 'in');

  // 96 − 12 − 8 = 76 in of leg over 24 in of level: √(5776 − 576) = 72.1110 in. The ends: 84/76 of that is 79.7017.
  test('height and spread', () => {
    expect(inches('leg')).toBeCloseTo(76, 9);
    expect(inches('height')).toBeCloseTo(72.111, 3);
    expect(inches('top')).toBeCloseTo(79.7017, 3);
    expect(inches('foot-spacing')).toBeCloseTo(24, 9);
    expect(inches('in-ground')).toBeCloseTo((12 * 72.111) / 76, 3);
  });

  // π·48 = 150.796 in, a plant every 5 in: 30, five at each pole.
  test('plants', () => {
    expect(numberOf(tepee, 'plants')).toBe(30);
    expect(valueOf(tepee, 'plants-per-pole')).toEqual({ kind: 'count', value: 5 });
    expect(valueOf(tepeeOf({ number: 7 }), 'plants-per-pole')).toEqual({
      kind: 'count-range',
      low: 4,
      high: 5,
    });
  });

  // Lashing: 6·6·π + 3·5·4 + 48 = 221.097 in. Strings at ¼, ½ and ¾: six sides of 18, 12 and 6 in, and 6·2·π in each for
  // the turns round the poles: 216 + 3·37.699 = 329.097 in. Together 550.19 in, 45.85 ft, of a ball of 200 ft.
  test('twine', () => {
    expect(inches('lashing-twine')).toBeCloseTo(221.097, 3);
    expect(inches('ring-twine')).toBeCloseTo(329.097, 3);
    expect(numberOf(tepee, 'balls')).toBe(1);
  });

  // The legs pull at 0, 20.785 and 41.569 in from the line of tipping, two of each: 2·(20.785² + 41.569²)/41.569 = 103.92 in.
  test('legs against tipping', () => {
    expect(holdArmMm(6, 24)).toBeCloseTo(103.923, 3);
    // Of four the two on the far side pull, at 33.941 in; of three only the one opposite, at 36 in.
    expect(holdArmMm(4, 24)).toBeCloseTo(67.882, 3);
    expect(holdArmMm(3, 24)).toBeCloseTo(36, 9);
  });

  // Its region's gust is judged in tepee-wind.test.ts.
  // Sail 24·72.111 = 1730.66 in², 12.0185 ft². At 45 mph 0.00256·2025 = 5.184 psf, times 1.2: 74.77 lb at 24.037 in: 1797.2 in lb.
  // A leg holds 250·(11.386/36)² = 25.008 lb: 2598.9 in lb, and 12 lb of poles at 20.785 in 249.4: 2848.3 in lb.
  // It tips at 45·√(2848.3/1797.2) = 56.65 mph and stands 56.65/√1.5 = 46.26 mph.
  test('the wind', () => {
    expect(fromHeld(numberOf(tepee, 'sail'), 'ft2')).toBeCloseTo(12.0185, 3);
    expect(fromHeld(numberOf(tepee, 'leg-hold'), 'lbf')).toBeCloseTo(25.008, 2);
    expect(fromHeld(numberOf(tepee, 'tips-at'), 'mph')).toBeCloseTo(56.65, 1);
    expect(fromHeld(numberOf(tepee, 'stands-to'), 'mph')).toBeCloseTo(46.26, 1);
    // 56.26 mph: 1797.2·(56.26/45)²·1.5 = 4213.6 in lb, less 2848.3, over 20.785 in: 65.7 lb.
    expect(fromHeld(numberOf(tepee, 'stronger-gust'), 'mph')).toBeCloseTo(56.26, 1);
    expect(fromHeld(numberOf(tepee, 'bags'), 'lb')).toBeCloseTo(65.7, 0);
  });

  // 8 ft of pole, 7 ft of reach, 10 ft to stay away.
  test('overhead lines', () => {
    expect(fromHeld(numberOf(tepee, 'line-distance'), 'ft')).toBeCloseTo(25, 9);
  });

  test('what is drawn is what is computed', () => {
    const drawn = drawnMeasures(tepee.assembly!);
    expect(drawn.length).toBeGreaterThan(4);
    for (const { finding, lengthMm } of drawn)
      expect(lengthMm, finding).toBeCloseTo(numberOf(tepee, finding.replace('tepee.', '')), 6);
    const members = tepee.assembly!.members;
    expect(members.filter(({ role, stage }) => role === 'pole' && stage === 'raise')).toHaveLength(6);
    expect(members.filter(({ role }) => role === 'plant')).toHaveLength(30);
  });
});

describe('of any size', () => {
  test('more poles never carry fewer plants, nor a deeper leg less wind', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 11 }),
        fc.integer({ min: 30, max: 60 }),
        fc.integer({ min: 12, max: 20 }),
        (number, spread, buried) => {
          const at = (choices: TepeeChoices): Structure =>
            tepeeOf({ spread, buried, gust: 10, spacing: 4, ...choices });
          const [some, more] = [at({ number }), at({ number: number + 1 })];
          expect(numberOf(more, 'plants')).toBeGreaterThanOrEqual(numberOf(some, 'plants'));
          const deeper = at({ number, buried: buried + 2, length: 98 });
          expect(numberOf(deeper, 'stands-to')).toBeGreaterThan(numberOf(some, 'stands-to'));
        },
      ),
      { numRuns: 40, seed: 4 },
    );
  });

  test('four poles come out of those at hand only when they are shorter', () => {
    const largest = [...tepeeOf().versions!()].find((project) => {
      const tepee = project as ReturnType<typeof tepeeWith>;
      return tepee.poles.number <= 4 && tepeeStructure(tepee, north).kind === 'structure';
    }) as ReturnType<typeof tepeeWith>;
    expect(largest.poles.number).toBe(4);
    expect(fromHeld(largest.poles.length.low, 'ft')).toBeLessThan(8);
  });
});

describe('what does not add up', () => {
  const rows: readonly (readonly [string, TepeeChoices, readonly (string | number)[]])[] = [
    ['a lashing at the very ends', { tie: 2 }, ['tie']],
    ['poles that are all in the ground', { length: 20 }, ['poles', 'length']],
    ['legs that lie more than they stand', { spread: 130 }, ['spread']],
    ['feet side by side', { number: 12, thickness: 3, spread: 20 }, ['poles', 'number']],
    ['a tepee that would tip over', { buried: 6 }, ['poles', 'buried']],
    ['fewer plants than poles', { spacing: 40 }, ['spacing', 'value']],
    ['a crop that does not climb', { sow: [{ crop: 'carrot', rows: 1 }] }, ['sow', 0, 'crop']],
    ['two rings of plants', { sow: [{ crop: 'pole-bean', rows: 2 }] }, ['sow']],
  ];
  test.each(rows)('%s', (_, choices, path) => {
    const built = tepeeStructure(tepeeWith(choices), north);
    expect(built.kind === 'faults' && built.faults.map((fault) => fault.path)).toContainEqual(path);
  });
});
