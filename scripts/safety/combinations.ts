import type { Combination, CombinationGroup } from '../records/schemas/hazard.ts';
import { hazardKinds, hazardMaps, type HazardCatalogue } from './catalogue.ts';
import type { Circumstances } from './circumstances.ts';
import type { StepHazards } from './gather.ts';

/** A combination at the steps of one project. */
export interface CombinationAtSteps {
  readonly combination: Combination;
  /** The step at which it first becomes whole, counted from 0. */
  readonly arisesAt: number;
  /** Every step from there on that has a part of it, the first one included. */
  readonly heldAt: readonly number[];
}

/**
 * The combinations that come together in some steps, in the order of the catalogue. What a step brings is taken to
 * be there at every later step: a sash that came in step 2 makes the sanding of step 5 a hazard, and so does sanding
 * in step 2 when the sash comes in step 5, since nobody knows that the tool was put away. Circumstances hold from
 * the first step on.
 */
export function combinationsIn(
  steps: readonly StepHazards[],
  catalogue: HazardCatalogue,
  circumstances: Circumstances = {},
): readonly CombinationAtSteps[] {
  return [...catalogue.combinations.values()].flatMap((combination): CombinationAtSteps[] => {
    const arisesAt = firstWhole(combination, steps, circumstances);
    if (arisesAt === undefined) return [];
    const heldAt = steps.flatMap((step, index) =>
      index > arisesAt && combination.when.some((group) => isMetBy(group, step)) ? [index] : [],
    );
    return [{ combination, arisesAt, heldAt: [arisesAt, ...heldAt] }];
  });
}

function firstWhole(
  { when, inOneStep = false }: Combination,
  steps: readonly StepHazards[],
  circumstances: Circumstances,
): number | undefined {
  const always = when.map((group) => holdsAnyway(group, circumstances));
  if (inOneStep) {
    const at = steps.findIndex((step) =>
      when.every((group, index) => always[index]! || isMetBy(group, step)),
    );
    return at < 0 ? undefined : at;
  }
  const firsts = when.map((group, index) =>
    always[index]! ? 0 : steps.findIndex((step) => isMetBy(group, step)),
  );
  if (steps.length === 0 || firsts.includes(-1)) return undefined;
  return Math.max(...firsts);
}

function isMetBy(group: CombinationGroup, step: StepHazards): boolean {
  return hazardKinds.some((kind) => {
    const wanted = group[hazardMaps[kind]] ?? [];
    return step[hazardMaps[kind]].some((id) => wanted.includes(id));
  });
}

function holdsAnyway(
  { conditions = [], crops = [], audience = [] }: CombinationGroup,
  holding: Circumstances,
): boolean {
  const sown = holding.crops;
  return (
    conditions.some((id) => holding.conditions?.includes(id) ?? false) ||
    audience.includes(holding.audience ?? 'adults') ||
    (crops.length > 0 && (sown === undefined || crops.some((trait) => sown.includes(trait))))
  );
}
