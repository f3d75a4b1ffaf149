import type { CautionId, HazardCatalogue } from './catalogue.ts';
import type { Circumstances } from './circumstances.ts';
import { coveringIn } from './covering.ts';
import { gatherCautions, hazardSources, type HazardSource, type StepHazards } from './gather.ts';

/** Where the reader meets one caution that a hazard brings. Steps are counted from 1. */
export type CautionPlace =
  /** It stands at this step or an earlier one. */
  | { readonly caution: CautionId; readonly told: 'at-step'; readonly step: number }
  /** Another one, which says all that it says, stands there in its place. */
  | { readonly caution: CautionId; readonly told: 'covered'; readonly by: CautionId; readonly step: number };

export interface CoveredHazard {
  readonly kind: HazardSource['kind'];
  readonly id: string;
  readonly cautions: readonly CautionPlace[];
}

export interface StepCoverage {
  /** Counted from 1. */
  readonly step: number;
  readonly hazards: readonly CoveredHazard[];
  /** Why the step says that nothing in it can hurt. */
  readonly harmless?: string;
}

/** Which hazard of a project led to which caution at which step. */
export interface ProjectCoverage {
  readonly project: string;
  readonly steps: readonly StepCoverage[];
  /** How many things of all steps bring a caution, each counted at every step that has it. */
  readonly hazards: number;
  /** How many cautions the sheet tells. */
  readonly cautions: number;
}

/**
 * Proves that every caution of every hazard stands at its step or before it, or that one which covers it does.
 * Throws an Error if one stands nowhere: that would be a mistake of the program.
 */
export function coverageOf(
  project: {
    readonly id: string;
    readonly steps: readonly (StepHazards & { readonly harmless?: string | undefined })[];
  },
  catalogue: HazardCatalogue,
  circumstances: Circumstances = {},
): ProjectCoverage {
  const { perStep, all } = gatherCautions(project.steps, catalogue, circumstances);
  const covers = coveringIn(catalogue);
  const placeOf = (caution: CautionId, at: number): CautionPlace => {
    const told = perStep.slice(0, at + 1);
    const own = told.findIndex((ids) => ids.includes(caution));
    if (own >= 0) return { caution, told: 'at-step', step: own + 1 };
    const step = told.findIndex((ids) => ids.some((id) => covers(id, caution)));
    const by = told[step]?.find((id) => covers(id, caution));
    if (by === undefined) throw new Error(`The caution "${caution}" of step ${at + 1} stands nowhere.`);
    return { caution, told: 'covered', by, step: step + 1 };
  };
  const steps = hazardSources(project.steps, catalogue, circumstances).map((sources, at): StepCoverage => {
    const hazards = sources
      .filter(({ cautions }) => cautions.length > 0)
      .map(({ kind, id, cautions }) => ({ kind, id, cautions: cautions.map((one) => placeOf(one, at)) }));
    const { harmless } = project.steps[at]!;
    return { step: at + 1, hazards, ...(harmless === undefined ? {} : { harmless }) };
  });
  return {
    project: project.id,
    steps,
    hazards: steps.reduce((sum, step) => sum + step.hazards.length, 0),
    cautions: all.length,
  };
}
