import {
  hazardKinds,
  hazardMaps,
  profileMaps,
  strength,
  type CautionId,
  type HazardCatalogue,
  type ProfileKind,
} from './catalogue.ts';
import type { Circumstances } from './circumstances.ts';
import { combinationsIn } from './combinations.ts';
import { coveringIn } from './covering.ts';
import type { HazardProfile } from '../records/schemas/hazard.ts';

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

/** What brings cautions to a step. */
export interface HazardSource {
  readonly kind: ProfileKind | 'combination';
  readonly id: string;
  readonly cautions: readonly CautionId[];
  readonly protection: readonly string[];
}

/**
 * Places the cautions of a project. Each stands at the step where its hazard first arises and is not repeated
 * later, since a caution met at every step is soon read at none. A caution that another one covers is left out
 * where that one stands already, or arises at the same step.
 *
 * What the conditions bring arises at the first step; what a combination brings, at the step that makes it whole.
 *
 * A step never loses a caution: an id without a profile, or a caution that the catalogue does not hold, throws
 * an Error. Both are faults in records, which `hazardFaults` finds before anything is gathered.
 */
export function gatherCautions(
  steps: readonly StepHazards[],
  catalogue: HazardCatalogue,
  circumstances: Circumstances = {},
): GatheredCautions {
  const inOrder = cautionOrder(catalogue);
  const covers = coveringIn(catalogue);
  const seen = new Set<CautionId>();
  const protection = new Set<string>();
  const perStep = hazardSources(steps, catalogue, circumstances).map((sources) => {
    for (const item of sources.flatMap((source) => source.protection)) protection.add(item);
    const arising = new Set(sources.flatMap((source) => source.cautions).filter((id) => !seen.has(id)));
    const told = inOrder([...seen, ...arising]);
    const placed = inOrder(arising).filter((id) => !told.some((other) => covers(other, id)));
    for (const id of placed) seen.add(id);
    return placed;
  });
  return { perStep, all: inOrder(seen), protection: [...protection] };
}

/** For each step, everything that brings cautions to it, whether or not they were told before. */
export function hazardSources(
  steps: readonly StepHazards[],
  catalogue: HazardCatalogue,
  circumstances: Circumstances = {},
): readonly (readonly HazardSource[])[] {
  const combined = combinationsIn(steps, catalogue, circumstances);
  return steps.map((step, index) => [
    ...(index === 0
      ? (circumstances.conditions ?? []).map((id) => sourceOf('condition', id, catalogue))
      : []),
    ...hazardKinds.flatMap((kind) => step[hazardMaps[kind]].map((id) => sourceOf(kind, id, catalogue))),
    ...combined
      .filter(({ arisesAt }) => arisesAt === index)
      .map(({ combination }): HazardSource => ({
        kind: 'combination',
        id: combination.id,
        cautions: combination.brings,
        protection: [],
      })),
  ]);
}

/** The profile of an id; throws when the catalogue has none. */
export function profileOf(kind: ProfileKind, id: string, catalogue: HazardCatalogue): HazardProfile {
  const profile = catalogue[profileMaps[kind]].get(id);
  if (!profile) throw new Error(`The ${kind} "${id}" has no hazard profile.`);
  return profile;
}

function sourceOf(kind: ProfileKind, id: string, catalogue: HazardCatalogue): HazardSource {
  const { cautions, protection = [] } = profileOf(kind, id, catalogue);
  return { kind, id, cautions, protection };
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
