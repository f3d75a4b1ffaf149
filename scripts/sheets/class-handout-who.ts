/** Who does each step of a project in a class of an age, and from what age it may be done at all. */
import { count, none, type Finding } from '../findings/finding.ts';
import type { ProjectRecord } from '../records/guide.ts';
import { heatConditions, worstHeat, type Circumstances } from '../safety/circumstances.ts';
import { profileOf } from '../safety/gather.ts';
import { adultAge, youthSteps, type YouthReason, type YouthStep } from '../safety/youth.ts';
import { heatBandsOf } from './circumstances.ts';
import type { SheetContext } from './sheet-context.ts';

export interface ClassStep extends YouthStep {
  /** `class.lowest-age.step-3`: the age from which children may do it, `none('any-age')` where nothing sets one. */
  readonly lowestAge: Finding;
}

/** Who does each step, in the order of the steps. The heat that counts is that of the months in which the class works. */
export function classSteps(
  context: SheetContext,
  { steps }: ProjectRecord,
  circumstances: Circumstances,
): readonly ClassStep[] {
  const { hazards } = context.guide;
  const { age = adultAge } = context.sheet;
  const here = {
    conditions: inLessonMonths(context, circumstances.conditions ?? []),
    ...(circumstances.crops ? { crops: circumstances.crops } : {}),
  };
  const everyAge = youthSteps(steps, hazards, { ...here, age: 0 });
  return youthSteps(steps, hazards, { ...here, age }).map((step, index) => ({
    ...step,
    lowestAge: lowestAge(everyAge[index]!.reasons, index + 1),
  }));
}

/** The same conditions, with the worst heat of the lesson's months in place of the year's. */
function inLessonMonths({ sheet, facts }: SheetContext, conditions: readonly string[]): readonly string[] {
  const { months } = sheet;
  if (!months) return conditions;
  const bands = heatBandsOf(facts.region);
  const heat = worstHeat(months.flatMap((month) => bands[month - 1] ?? []));
  const others = conditions.filter((id) => !heatConditions.some((band) => band === id));
  return heat === undefined ? others : [heat, ...others];
}

/** The highest of the ages of all that a step uses and does. What nobody has judged is for adults. */
function lowestAge(reasons: readonly YouthReason[], step: number): Finding {
  const from = Math.max(0, ...reasons.map(ageOf));
  const strictest = reasons.filter((reason) => ageOf(reason) === from);
  return {
    id: `class.lowest-age.step-${step}`,
    value: from === 0 ? none('any-age') : count(from),
    method: 'class.lowest-age',
    inputs: [],
    sources: [...new Set(strictest.flatMap(({ sources }) => sources))],
  };
}

export const ageOf = ({ from }: YouthReason): number => from ?? adultAge;

/** What a reason is called: the name of its profile or combination. */
export function hazardName({ guide: { hazards } }: SheetContext, { kind, id }: YouthReason): string {
  return kind === 'combination' ? hazards.combinations.get(id)!.name : profileOf(kind, id, hazards).name;
}

/** How many steps children do alone, with an adult beside them, and not at all. */
export function whoCounts(steps: readonly ClassStep[], age: Finding): readonly Finding[] {
  return (['allowed', 'with-adult', 'adult-only'] as const).map((who) => ({
    id: `class.steps-${who}`,
    value: count(steps.filter((step) => step.who === who).length),
    method: 'class.who',
    inputs: [{ name: 'class-age', value: age.value, finding: age.id }],
    sources: [],
  }));
}
