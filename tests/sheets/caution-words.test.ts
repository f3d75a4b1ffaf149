/** Whoever a sheet is for, and whatever its steps use and do: no caution of it is left out, and each is told whole. */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { plainText } from '../../scripts/document/build.ts';
import type { Block, Caution } from '../../scripts/document/document.ts';
import { check, type CheckResult } from '../../scripts/pipeline.ts';
import { audiences, cropTraits, type Audience } from '../../scripts/records/schemas/hazard.ts';
import { gatherCautions, type StepHazards } from '../../scripts/safety/gather.ts';
import { wordedFor } from '../../scripts/safety/worded.ts';
import { sheetCautions } from '../../scripts/sheets/cautions.ts';
import { contextFor, wordingOf, type SheetContext } from '../../scripts/sheets/sheet-context.ts';
import { repository } from '../demo/demo-guide.ts';
import { shippedCatalogue } from '../safety/shipped.ts';

let result: CheckResult;
let context: SheetContext;
beforeAll(async () => {
  result = await check({ root: repository, builtInRoot: repository });
  const { sheet, facts } = result.sheets.find((one) => one.sheet.id === 'straw-bale-cold-frame')!;
  const { guide } = result;
  context = contextFor({ guide, sheet, facts, wording: wordingOf(guide), suggest: () => '' });
});

const some = (map: ReadonlyMap<string, unknown>) =>
  fc.array(fc.constantFrom(...map.keys()), { maxLength: 5 });
const anyStep: fc.Arbitrary<StepHazards> = fc.record({
  tools: some(shippedCatalogue.tools),
  materials: some(shippedCatalogue.materials),
  actions: some(shippedCatalogue.actions),
});
const anySteps = fc.array(anyStep, { minLength: 1, maxLength: 6 });
const anyCircumstances = fc.record({
  conditions: fc.subarray([...shippedCatalogue.conditions.keys()]),
  audience: fc.constantFrom(...audiences),
  crops: fc.subarray([...cropTraits]),
});

/** Words with the apostrophes of the record: the typography of the sheet is not what is tested here. */
const typed = (words: string): string => words.replaceAll('’', "'");

const spoken = ({ signal, hazard, avoidance }: Caution): string =>
  typed(`${signal}: ${plainText(hazard)} ${plainText(avoidance)}`);

const expected = (id: string, audience: Audience): string => {
  const record = result.guide.hazards.cautions.get(id)!;
  const { hazard, avoidance } = wordedFor(record, audience);
  return `${record.signal}: ${hazard} ${avoidance}`;
};

/** The caution itself, or one whose record says that it covers it, at once or by way of another. */
function tellers(wanted: string): string[] {
  const { cautions } = result.guide.hazards;
  const direct = [...cautions.values()]
    .filter(({ covers = [] }) => covers.includes(wanted))
    .map(({ id }) => id);
  return [wanted, ...direct.flatMap(tellers)];
}

describe('for any steps, circumstances and audience', () => {
  it('every caution of every id is told at its step or before it, in the words for the audience', () => {
    fc.assert(
      fc.property(anySteps, anyCircumstances, (steps, circumstances) => {
        const { perStep } = sheetCautions(context, steps, circumstances);
        const { audience } = circumstances;
        const { hazards } = result.guide;
        const brought = (step: StepHazards): string[] => [
          ...step.tools.flatMap((id) => hazards.tools.get(id)!.cautions),
          ...step.materials.flatMap((id) => hazards.materials.get(id)!.cautions),
          ...step.actions.flatMap((id) => hazards.actions.get(id)!.cautions),
        ];
        steps.forEach((step, index) => {
          const told = perStep.slice(0, index + 1).flatMap((cautions) => cautions.map(spoken));
          const always = circumstances.conditions.flatMap((id) => hazards.conditions.get(id)!.cautions);
          for (const id of [...always, ...brought(step)])
            expect(
              told.filter((words) => tellers(id).some((one) => expected(one, audience) === words)),
              id,
            ).not.toEqual([]);
        });
      }),
    );
  });

  it('one audience is told of the same hazards with the same signal words as another', () => {
    fc.assert(
      fc.property(anySteps, anyCircumstances, (steps, circumstances) => {
        const idsFor = (audience: Audience): readonly string[] =>
          gatherCautions(steps, result.guide.hazards, { ...circumstances, audience }).all;
        const adults = idsFor('adults');
        expect(idsFor('viewers')).toEqual(adults);
        // A class is told of more: of what follows from children being there.
        const tellsClass = idsFor('class');
        for (const id of adults) expect(tellsClass.some((one) => tellers(id).includes(one))).toBe(true);
      }),
    );
  });

  it('the box names each caution of several steps, and tells those of one step whole', () => {
    const textOf = (box: Block | undefined): string =>
      box?.kind === 'caution-box'
        ? box.groups.flatMap(({ items }) => items.map((item) => plainText(item))).join('\n')
        : '';
    fc.assert(
      fc.property(anySteps, anyCircumstances, (steps, circumstances) => {
        const { box } = sheetCautions(context, steps, circumstances);
        const { all } = gatherCautions(steps, result.guide.hazards, circumstances);
        const text = typed(textOf(box)).toLowerCase();
        for (const id of all) {
          const { title, hazard, avoidance } = wordedFor(
            result.guide.hazards.cautions.get(id)!,
            circumstances.audience,
          );
          const parts = steps.length > 1 ? [title] : [hazard, avoidance];
          for (const part of parts) expect(text).toContain(part.toLowerCase());
        }
      }),
    );
  });
});
