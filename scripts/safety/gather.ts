import { hazardKinds, hazardMaps, strength, type CautionId, type HazardCatalogue } from './catalogue.ts';

/** What one step uses and does: ids of hazard profiles. A project's steps are of this shape. */
export interface StepHazards {
  readonly tools: readonly string[];
  readonly materials: readonly string[];
  readonly actions: readonly string[];
}

export interface GatheredCautions {
  /** For each step, the cautions that first arise there; strongest signal word first, then catalogue order. */
  readonly perStep: readonly (readonly CautionId[])[];
  /** Every caution of every step once; strongest signal word first, then catalogue order. */
  readonly all: readonly CautionId[];
  /** What to wear, in the order it is first needed. */
  readonly protection: readonly string[];
}

/**
 * Places the cautions of a project. Each stands at the step where its hazard first arises and is not repeated
 * later, since a caution met at every step is soon read at none.
 *
 * A step never loses a caution: an id without a profile, or a caution that the catalogue does not hold, throws
 * an Error. Both are faults in records, which `hazardFaults` finds before anything is gathered.
 */
export function gatherCautions(steps: readonly StepHazards[], catalogue: HazardCatalogue): GatheredCautions {
  const inOrder = cautionOrder(catalogue);
  const seen = new Set<CautionId>();
  const protection = new Set<string>();
  const perStep = steps.map((step) => {
    const profiles = profilesOf(step, catalogue);
    for (const item of profiles.flatMap((profile) => profile.protection ?? [])) protection.add(item);
    const arising = new Set(profiles.flatMap((profile) => profile.cautions).filter((id) => !seen.has(id)));
    for (const id of arising) seen.add(id);
    return inOrder(arising);
  });
  return { perStep, all: inOrder(seen), protection: [...protection] };
}

function profilesOf(step: StepHazards, catalogue: HazardCatalogue) {
  return hazardKinds.flatMap((kind) =>
    step[hazardMaps[kind]].map((id) => {
      const profile = catalogue[hazardMaps[kind]].get(id);
      if (!profile) throw new Error(`The ${kind} "${id}" has no hazard profile.`);
      return profile;
    }),
  );
}

/** Sorts ids of cautions: strongest signal word first, then the order of the catalogue. */
function cautionOrder(catalogue: HazardCatalogue): (ids: Iterable<CautionId>) => CautionId[] {
  const sorted = [...catalogue.cautions.values()].sort((a, b) => strength(a) - strength(b));
  const rank = new Map(sorted.map((caution, index) => [caution.id, index]));
  const rankOf = (id: CautionId): number => {
    const found = rank.get(id);
    if (found === undefined) throw new Error(`The caution "${id}" is not in the catalogue.`);
    return found;
  };
  return (ids) => {
    const ranked = [...ids].map((id) => ({ id, rank: rankOf(id) }));
    return ranked.sort((a, b) => a.rank - b.rank).map(({ id }) => id);
  };
}
