/** The freeze dates that a region's planting dates are counted from: those at the chance its record chooses. */
import { count, date, inputOf, none, type DateFinding } from '../findings/finding.ts';
import { freezeChances, type FreezeChance } from '../records/schemas/region.ts';
import {
  dayBetweenChances,
  thresholdName,
  type ChanceFindings,
  type FreezeDates,
  type PlacedDate,
} from './freeze.ts';

/**
 * The chance that planting dates are counted from when the record chooses none: even odds. The published offsets of the
 * hardiness groups are weeks from the average last freeze, and a later date would add a margin to them twice.
 */
export const defaultPlanForChance = 50 satisfies FreezeChance;

export interface PlanningFreeze {
  readonly chance: FreezeChance;
  /** The last freeze that a later one follows with the chance: `freeze.plan.last.32f`. */
  readonly last: DateFinding;
  /** The first freeze that an earlier one comes before with the chance: `freeze.plan.first.32f`. */
  readonly first: DateFinding;
}

/**
 * The dates to plan by. A chance that the source leaves out is read between the two given ones around it, along the normal
 * quantile; beyond the given ones it is `none('freeze-chance-not-given')`. A date that is `none` in the source stays
 * so, with its reason: a place that does not freeze that often has no such date to plan by.
 */
export function planningFreeze(
  dates: FreezeDates,
  chance: FreezeChance = defaultPlanForChance,
): PlanningFreeze {
  return { chance, last: planned(dates, 'last', chance), first: planned(dates, 'first', chance) };
}

function planned(dates: FreezeDates, edge: 'last' | 'first', chance: FreezeChance): DateFinding {
  const findings = dates[edge];
  const id = `freeze.plan.${edge}.${thresholdName(dates.thresholdC)}`;
  const asked = { name: 'chance-percent', value: count(chance) };
  const given = findings[chance];
  if (given) {
    const inputs = [asked, inputOf(`${edge}-freeze`, given)];
    return { id, value: given.value, method: 'freeze.plan', inputs, sources: given.sources };
  }
  const placed = placedFindings(findings);
  const day = dayBetweenChances(placed, chance / 100);
  const around = [
    placed.findLast((entry) => entry.chance < chance),
    placed.find((entry) => entry.chance > chance),
  ].flatMap((entry) => (entry ? [findings[entry.chance]!] : []));
  return {
    id,
    value: day === undefined ? none('freeze-chance-not-given') : date(Math.round(day)),
    method: 'freeze.plan-between',
    inputs: [asked, ...around.map((finding) => inputOf(`${edge}-freeze`, finding))],
    sources: [...new Set(around.flatMap((finding) => finding.sources))],
  };
}

function placedFindings(findings: ChanceFindings): PlacedDate[] {
  return freezeChances.flatMap((chance) => {
    const value = findings[chance]?.value;
    return value?.kind === 'date' ? [{ chance, day: value.day }] : [];
  });
}
