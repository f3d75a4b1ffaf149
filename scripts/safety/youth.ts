import type { LowestAge, Supervision } from '../records/schemas/hazard.ts';
import { hazardKinds, hazardMaps, type HazardCatalogue, type ProfileKind } from './catalogue.ts';
import type { Circumstances } from './circumstances.ts';
import { combinationsIn } from './combinations.ts';
import { profileOf, type StepHazards } from './gather.ts';

/** From this age on a person is an adult for every tool of the catalogue. */
export const adultAge = 18;

/** What keeps a child from doing a step alone, or at all. */
export interface YouthReason {
  readonly kind: ProfileKind | 'combination';
  readonly id: string;
  /** The lowest age, in years; absent where nobody has judged it, and then it is for adults. */
  readonly from?: number;
  readonly supervision: Supervision;
  /** Sources of the age; empty where there is none. */
  readonly sources: readonly string[];
}

export interface YouthStep {
  /**
   * `adult-only`: something in it is for older people. `with-adult`: something in it wants an adult beside the child.
   * `allowed`: an adult is near, as always.
   */
  readonly who: 'allowed' | 'with-adult' | 'adult-only';
  /** What makes it so, in the order of the step; empty when it is allowed. */
  readonly reasons: readonly YouthReason[];
}

/**
 * For each step, what children of an age may do. Whatever has cautions and no age is for adults, since nobody has
 * judged it; what is harmless is for everyone. Conditions that are for older people make every step adult-only.
 */
export function youthSteps(
  steps: readonly StepHazards[],
  catalogue: HazardCatalogue,
  { age, conditions = [], crops }: { readonly age: number } & Pick<Circumstances, 'conditions' | 'crops'>,
): readonly YouthStep[] {
  const combined = combinationsIn(steps, catalogue, {
    audience: 'class',
    conditions,
    ...(crops === undefined ? {} : { crops }),
  });
  return steps.map((step, index) => {
    const reasons = [
      ...conditions.flatMap((id) => reasonOf('condition', id, catalogue)),
      ...hazardKinds.flatMap((kind) => step[hazardMaps[kind]].flatMap((id) => reasonOf(kind, id, catalogue))),
      ...combined
        .filter(({ heldAt }) => heldAt.includes(index))
        .flatMap(({ combination: { id, age: lowest } }) =>
          lowest ? [reason('combination', id, lowest)] : [],
        ),
    ];
    const tooOld = reasons.filter(({ from = adultAge }) => from > age);
    if (tooOld.length > 0) return { who: 'adult-only', reasons: tooOld };
    const beside = age < adultAge ? reasons.filter(({ supervision }) => supervision === 'adult-beside') : [];
    return beside.length > 0 ? { who: 'with-adult', reasons: beside } : { who: 'allowed', reasons: [] };
  });
}

function reasonOf(kind: ProfileKind, id: string, catalogue: HazardCatalogue): YouthReason[] {
  const { age, cautions } = profileOf(kind, id, catalogue);
  if (age) return [reason(kind, id, age)];
  return cautions.length > 0 ? [{ kind, id, supervision: 'adult-beside', sources: [] }] : [];
}

function reason(
  kind: YouthReason['kind'],
  id: string,
  { from, supervision, sources }: LowestAge,
): YouthReason {
  return { kind, id, from, supervision, sources };
}
