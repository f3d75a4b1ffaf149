import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StepHazards } from '../../scripts/safety/gather.ts';
import { youthSteps, type YouthStep } from '../../scripts/safety/youth.ts';
import { shippedCatalogue } from './shipped.ts';

const step = (hazards: Partial<StepHazards>): StepHazards => ({
  tools: [],
  materials: [],
  actions: [],
  ...hazards,
});

describe('what children may do', () => {
  it.each<{
    name: string;
    steps: StepHazards[];
    age: number;
    conditions?: string[];
    who: YouthStep['who'][];
    because: string[];
  }>([
    {
      name: 'a watering can at 6',
      steps: [step({ tools: ['watering-can'] })],
      age: 6,
      who: ['allowed'],
      because: [],
    },
    {
      name: 'a handsaw at 8',
      steps: [step({ tools: ['handsaw'] })],
      age: 8,
      who: ['adult-only'],
      because: ['handsaw'],
    },
    {
      name: 'a handsaw at 9',
      steps: [step({ tools: ['handsaw'] })],
      age: 9,
      who: ['with-adult'],
      because: ['handsaw'],
    },
    {
      name: 'a circular saw at 17',
      steps: [step({ tools: ['circular-saw'] })],
      age: 17,
      who: ['adult-only'],
      because: ['circular-saw'],
    },
    {
      name: 'a circular saw at 18',
      steps: [step({ tools: ['circular-saw'] })],
      age: 18,
      who: ['allowed'],
      because: [],
    },
    {
      name: 'a bale at 12, with what keeps the child from it only',
      steps: [step({ materials: ['straw-bale'], actions: ['lift-bale'] })],
      age: 12,
      who: ['adult-only'],
      because: ['lift-bale'],
    },
    {
      name: 'sandpaper at 10 after an old painted sash has come',
      steps: [
        step({ tools: ['sandpaper'] }),
        step({ materials: ['old-painted-sash'] }),
        step({ tools: ['sandpaper'] }),
      ],
      age: 10,
      who: ['allowed', 'adult-only', 'adult-only'],
      because: ['old-painted-sash', 'old-paint-made-dust', 'old-paint-made-dust'],
    },
    {
      name: 'anything at 12 in dangerous heat',
      steps: [step({ tools: ['watering-can'] })],
      age: 12,
      conditions: ['heat-danger'],
      who: ['adult-only'],
      because: ['heat-danger'],
    },
  ])('$name', ({ steps, age, conditions = [], who, because }) => {
    const found = youthSteps(steps, shippedCatalogue, { age, conditions });
    expect(found.map((one) => one.who)).toEqual(who);
    expect(found.flatMap(({ reasons }) => reasons.map(({ id }) => id))).toEqual(because);
  });

  it('is for adults where nobody has judged the age', () => {
    const tools = new Map(shippedCatalogue.tools);
    const { id, name, cautions } = tools.get('hoe')!;
    tools.set('hoe', { id, name, cautions });
    const [found] = youthSteps([step({ tools: ['hoe'] })], { ...shippedCatalogue, tools }, { age: 17 });
    expect(found).toEqual({
      who: 'adult-only',
      reasons: [{ kind: 'tool', id: 'hoe', supervision: 'adult-beside', sources: [] }],
    });
  });

  it('never lets a child do at a higher age less than at a lower one', () => {
    const rank = ['adult-only', 'with-adult', 'allowed'];
    const some = (map: ReadonlyMap<string, unknown>) =>
      fc.array(fc.constantFrom(...map.keys()), { maxLength: 3 });
    const anyStep = fc.record({
      tools: some(shippedCatalogue.tools),
      materials: some(shippedCatalogue.materials),
      actions: some(shippedCatalogue.actions),
    });
    fc.assert(
      fc.property(fc.array(anyStep, { maxLength: 4 }), fc.integer({ min: 3, max: 17 }), (steps, age) => {
        const younger = youthSteps(steps, shippedCatalogue, { age });
        const older = youthSteps(steps, shippedCatalogue, { age: age + 1 });
        younger.forEach(({ who }, index) => {
          expect(rank.indexOf(older[index]!.who)).toBeGreaterThanOrEqual(rank.indexOf(who));
        });
      }),
    );
  });
});
