import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  audiences,
  cropTraits,
  type Audience,
  type CautionRecord,
  type CropTrait,
  type HazardProfile,
} from '../../scripts/records/schemas/hazard.ts';
import { catalogueOf, strength } from '../../scripts/safety/catalogue.ts';
import type { Circumstances } from '../../scripts/safety/circumstances.ts';
import { combinationsIn } from '../../scripts/safety/combinations.ts';
import { gatherCautions, type StepHazards } from '../../scripts/safety/gather.ts';
import { shippedCatalogue } from './shipped.ts';

function caution(id: string, signal: CautionRecord['signal']): CautionRecord {
  return {
    id,
    signal,
    title: 'Harm',
    hazard: 'It can hurt.',
    avoidance: 'Take care.',
    sources: ['practice'],
  };
}

function profile(id: string, cautions: string[], protection?: string[]): HazardProfile {
  return { id, name: id, cautions, ...(protection ? { protection } : {}) };
}

const catalogue = catalogueOf({
  cautions: [
    caution('wilting', 'notice'),
    caution('cut', 'caution'),
    caution('strain', 'caution'),
    caution('buried-line', 'warning'),
    caution('overhead-line', 'danger'),
  ],
  tools: [
    profile('knife', ['cut'], ['Gloves']),
    profile('ladder', ['overhead-line'], ['Shoes']),
    profile('spade', ['strain', 'buried-line'], ['Shoes', 'Gloves']),
    profile('tape', []),
  ],
  materials: [profile('seedlings', ['wilting']), profile('bag', ['strain'])],
  actions: [profile('dig', ['buried-line', 'strain']), profile('knife', ['wilting'])],
});

function step(hazards: Partial<StepHazards>): StepHazards {
  return { tools: [], materials: [], actions: [], ...hazards };
}

describe('placing cautions', () => {
  it.each<{ name: string; steps: StepHazards[]; perStep: string[][]; all: string[]; protection: string[] }>([
    { name: 'no steps', steps: [], perStep: [], all: [], protection: [] },
    { name: 'a harmless step', steps: [step({ tools: ['tape'] })], perStep: [[]], all: [], protection: [] },
    {
      name: 'the same hazard twice stands at the first step only',
      steps: [step({ tools: ['tape'] }), step({ actions: ['dig'] }), step({ tools: ['spade'] })],
      perStep: [[], ['buried-line', 'strain'], []],
      all: ['buried-line', 'strain'],
      protection: ['Shoes', 'Gloves'],
    },
    {
      name: 'one hazard from two things of one step stands once',
      steps: [step({ tools: ['spade'], materials: ['bag'], actions: ['dig'] })],
      perStep: [['buried-line', 'strain']],
      all: ['buried-line', 'strain'],
      protection: ['Shoes', 'Gloves'],
    },
    {
      name: 'a stronger hazard of a later step leads the whole list',
      steps: [step({ materials: ['seedlings'] }), step({ tools: ['knife'] }), step({ tools: ['ladder'] })],
      perStep: [['wilting'], ['cut'], ['overhead-line']],
      all: ['overhead-line', 'cut', 'wilting'],
      protection: ['Gloves', 'Shoes'],
    },
    {
      name: 'equal signal words keep the order of the catalogue, whatever the order of the step',
      steps: [step({ tools: ['spade', 'knife'] })],
      perStep: [['buried-line', 'cut', 'strain']],
      all: ['buried-line', 'cut', 'strain'],
      protection: ['Shoes', 'Gloves'],
    },
    {
      name: 'a tool and an action of one id are two things',
      steps: [step({ actions: ['knife'] }), step({ tools: ['knife'] })],
      perStep: [['wilting'], ['cut']],
      all: ['cut', 'wilting'],
      protection: ['Gloves'],
    },
  ])('$name', ({ steps, perStep, all, protection }) => {
    expect(gatherCautions(steps, catalogue)).toEqual({ perStep, all, protection });
  });

  it.each([
    ['a tool without a profile', step({ tools: ['chain-saw'] })],
    ['an action that is only known as a tool', step({ actions: ['spade'] })],
  ])('refuses %s rather than lose its cautions', (_, unknown) => {
    expect(() => gatherCautions([unknown], catalogue)).toThrow(/has no hazard profile/);
  });

  it('refuses a caution that the catalogue does not hold', () => {
    const broken = catalogueOf({
      cautions: [],
      tools: [profile('knife', ['cut'])],
      materials: [],
      actions: [],
    });
    expect(() => gatherCautions([step({ tools: ['knife'] })], broken)).toThrow(
      /"cut" is not in the catalogue/,
    );
  });
});

describe('for any steps over the shipped catalogue', () => {
  const some = (map: ReadonlyMap<string, HazardProfile>) =>
    fc.array(fc.constantFrom(...map.keys()), { maxLength: 6 });
  const anyStep: fc.Arbitrary<StepHazards> = fc.record({
    tools: some(shippedCatalogue.tools),
    materials: some(shippedCatalogue.materials),
    actions: some(shippedCatalogue.actions),
  });
  const anySteps = fc.array(anyStep, { maxLength: 8 });
  const anyCircumstances: fc.Arbitrary<Circumstances> = fc.record({
    conditions: fc.subarray([...shippedCatalogue.conditions.keys()]),
    audience: fc.constantFrom(...audiences),
    crops: fc.subarray([...cropTraits]),
  });
  const cautionsOf = ({ tools, materials, actions }: StepHazards): string[] => [
    ...tools.flatMap((id) => shippedCatalogue.tools.get(id)!.cautions),
    ...materials.flatMap((id) => shippedCatalogue.materials.get(id)!.cautions),
    ...actions.flatMap((id) => shippedCatalogue.actions.get(id)!.cautions),
  ];
  /** The caution itself, or one whose record says that it covers it, at once or by way of another. */
  const told = (wanted: string, among: readonly string[]): boolean => {
    const covered = (id: string): string[] => {
      const next = shippedCatalogue.cautions.get(id)!.covers ?? [];
      return [...next, ...next.flatMap(covered)];
    };
    return among.some((id) => id === wanted || covered(id).includes(wanted));
  };

  it('every caution of every id, or one that covers it, stands at or before its step and in the list', () => {
    fc.assert(
      fc.property(anySteps, anyCircumstances, (steps, circumstances) => {
        const { perStep, all } = gatherCautions(steps, shippedCatalogue, circumstances);
        steps.forEach((one, index) => {
          const soFar = perStep.slice(0, index + 1).flat();
          for (const id of cautionsOf(one)) {
            expect(told(id, all), id).toBe(true);
            expect(told(id, soFar), id).toBe(true);
          }
        });
        if (steps.length === 0) return;
        for (const id of circumstances.conditions!.flatMap(
          (one) => shippedCatalogue.conditions.get(one)!.cautions,
        ))
          expect(told(id, perStep[0]!), id).toBe(true);
      }),
    );
  });

  it('every combination whose parts are all there has its cautions told', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...shippedCatalogue.combinations.values()),
        anySteps,
        fc.infiniteStream(fc.nat()),
        (combination, before, choice) => {
          const pick = <T>(list: readonly T[]): T => list[choice.next().value! % list.length]!;
          const conditions: string[] = [];
          const circumstances = { conditions, audience: 'adults' as Audience, crops: [] as CropTrait[] };
          const lists = { tools: [] as string[], materials: [] as string[], actions: [] as string[] };
          for (const group of combination.when) {
            const [key, ids] = pick(Object.entries(group) as [string, string[]][]);
            const id = pick(ids);
            if (key === 'conditions') conditions.push(id);
            else if (key === 'audience') circumstances.audience = id as Audience;
            else if (key === 'crops') circumstances.crops = [id as CropTrait];
            else lists[key as keyof typeof lists].push(id);
          }
          const { perStep, all } = gatherCautions([...before, lists], shippedCatalogue, circumstances);
          for (const id of combination.brings) {
            expect(told(id, all), `${combination.id}: ${id}`).toBe(true);
            expect(told(id, perStep.flat()), `${combination.id}: ${id}`).toBe(true);
          }
        },
      ),
    );
  });

  it('no caution stands twice, comes from nowhere, or comes before a stronger one', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        const { perStep, all } = gatherCautions(steps, shippedCatalogue, { crops: [] });
        expect([...perStep.flat()].sort()).toEqual([...all].sort());
        const brought = combinationsIn(steps, shippedCatalogue, { crops: [] });
        expect([
          ...steps.flatMap(cautionsOf),
          ...brought.flatMap(({ combination }) => combination.brings),
        ]).toEqual(expect.arrayContaining([...all]));
        expect(all.length).toBe(new Set(all).size);
        const order = [...shippedCatalogue.cautions.keys()];
        for (const list of [...perStep, all]) {
          const ranks = list.map(
            (id) => strength(shippedCatalogue.cautions.get(id)!) * 1000 + order.indexOf(id),
          );
          expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
        }
      }),
    );
  });

  it('what to wear holds all that any profile asks for', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        const { protection } = gatherCautions(steps, shippedCatalogue);
        for (const { tools } of steps) {
          for (const id of tools) {
            expect(protection).toEqual(
              expect.arrayContaining(shippedCatalogue.tools.get(id)!.protection ?? []),
            );
          }
        }
        expect(protection.length).toBe(new Set(protection).size);
      }),
    );
  });
});
