import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverageOf } from '../../scripts/safety/coverage.ts';
import { gatherCautions } from '../../scripts/safety/gather.ts';
import { shippedCatalogue } from './shipped.ts';

const listed = { tools: [], materials: [], actions: [] };

describe('the proof that every hazard has its caution', () => {
  it('tells where each stands, and which one says it in its place', () => {
    const steps = [
      { ...listed, tools: ['tape-measure'], harmless: 'A tape is only laid down.' },
      { ...listed, actions: ['lift-bale'] },
      { ...listed, materials: ['straw-bale'] },
    ];
    const {
      steps: told,
      hazards,
      cautions,
    } = coverageOf({ id: 'x', steps }, shippedCatalogue, {
      conditions: ['heat-danger'],
      crops: ['broadleaf'],
    });
    expect(told[0]).toEqual({
      step: 1,
      harmless: 'A tape is only laid down.',
      hazards: [
        {
          kind: 'condition',
          id: 'heat-danger',
          cautions: [{ caution: 'heat-danger', told: 'at-step', step: 1 }],
        },
      ],
    });
    expect(told[1]!.hazards[0]!.cautions[0]).toEqual({
      caution: 'heat-illness',
      told: 'covered',
      by: 'heat-danger',
      step: 1,
    });
    expect(told[2]!.hazards.map(({ kind, id }) => `${kind} ${id}`)).toEqual([
      'material straw-bale',
      'combination weed-killer-and-broadleaf-crop',
    ]);
    expect(told[2]!.hazards[0]!.cautions[0]).toEqual({ caution: 'straw-dust', told: 'at-step', step: 2 });
    expect({ hazards, cautions }).toEqual({ hazards: 4, cautions: 6 });
  });

  it('holds for any steps of the catalogue under any conditions', () => {
    const some = (map: ReadonlyMap<string, unknown>) =>
      fc.array(fc.constantFrom(...map.keys()), { maxLength: 5 });
    const anyStep = fc.record({
      tools: some(shippedCatalogue.tools),
      materials: some(shippedCatalogue.materials),
      actions: some(shippedCatalogue.actions),
    });
    const anyConditions = fc.subarray([...shippedCatalogue.conditions.keys()]);
    fc.assert(
      fc.property(fc.array(anyStep, { maxLength: 6 }), anyConditions, (steps, conditions) => {
        const circumstances = { conditions, audience: 'class' } as const;
        const { steps: told } = coverageOf({ id: 'x', steps }, shippedCatalogue, circumstances);
        const { perStep } = gatherCautions(steps, shippedCatalogue, circumstances);
        for (const { step, hazards } of told)
          for (const place of hazards.flatMap(({ cautions }) => cautions)) {
            expect(place.step).toBeLessThanOrEqual(step);
            expect(perStep[place.step - 1]).toContain(place.told === 'covered' ? place.by : place.caution);
          }
      }),
    );
  });
});
