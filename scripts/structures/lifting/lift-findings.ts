/** Whether one person or two can lift an item, or nobody should, as findings. */
import {
  choice,
  inputOf,
  none,
  quantity,
  type Finding,
  type FindingInput,
  type FindingValue,
} from '../../findings/finding.ts';
import type { LiftingTime } from './frequency-table.ts';
import { estimatedReach, liftMultipliers, recommendedWeight, type Grip } from './lifting-equation.ts';

export interface LiftedItem {
  /** The heavier end counts. */
  readonly massKg: { readonly low: number; readonly high: number };
  /** Front to back as it is held: the reach is estimated from it. */
  readonly depthM: number;
  /** Height of the hands above the ground where the lift begins, and where it ends; 0 to 1.75. */
  readonly fromM: number;
  readonly toM: number;
  /** How far the body turns, 0 to 135; 0 when absent. */
  readonly turnDeg?: number;
  readonly grip: Grip;
  /** At most 0.2 (one in five minutes) when absent. */
  readonly perMinute?: number;
  /** Up to 1 hour when absent. */
  readonly time?: LiftingTime;
  /** Where it was measured: level distance from between the ankles to between the hands, instead of the estimate. */
  readonly reachM?: number;
  /** The same for each of two people who take an end each; as for one person when absent. */
  readonly reachOfTwoM?: number;
}

export interface LiftOptions {
  /** What the ids begin with: `frame.sash-a` gives `frame.sash-a.lift-limit`. */
  readonly id: string;
  /** The finding that gives the weight of the item, where there is one. */
  readonly weight?: Finding;
  /** Sources of the item's sizes. */
  readonly sources?: readonly string[];
}

/**
 * Two people together lift two thirds of what both could lift alone. Source: guidance of the Health and Safety
 * Executive (United Kingdom), as given by Network Rail, Lifting and handling in teams (source record
 * `team-lift-two-thirds`); the lifting equation itself is for one person.
 */
export const teamShare = 2 / 3;

/** The recommended limits, in kilograms: the smaller of the two ends of the lift, since a load is set down with care. */
export function liftLimitsKg(item: LiftedItem): { readonly one: number; readonly two: number } {
  return {
    one: limitKg(item, item.reachM),
    two: teamShare * 2 * limitKg(item, item.reachOfTwoM ?? item.reachM),
  };
}

/**
 * Four findings: `lift-limit` and `lift-limit-two`, the weight recommended for one person and for two
 * (`none('lift-out-of-reach')` where the hands cannot get near enough); `lift-index`, the weight over the limit of one
 * person; and `lift-verdict`, `lift-one-person`, `lift-two-people` or `lift-not-by-hand`. The metric equation is used.
 */
export function liftFindings(
  item: LiftedItem,
  { id, weight, sources = [] }: LiftOptions,
): readonly Finding[] {
  const { one, two } = liftLimitsKg(item);
  const { low, high } = item.massKg;
  const limitOf = (kg: number): FindingValue =>
    kg > 0 ? quantity('mass', kg * 1000) : none('lift-out-of-reach');
  const make = (
    what: string,
    value: FindingValue,
    inputs: readonly FindingInput[],
    teamwork = false,
  ): Finding => ({
    id: `${id}.${what}`,
    value,
    method: `lift.${what.slice('lift-'.length)}`,
    inputs,
    sources: ['niosh-lifting-manual', ...(teamwork ? ['team-lift-two-thirds'] : []), ...sources],
  });
  const limit = make('lift-limit', limitOf(one), taskInputs(item, item.reachM));
  const limitOfTwo = make(
    'lift-limit-two',
    limitOf(two),
    taskInputs(item, item.reachOfTwoM ?? item.reachM),
    true,
  );
  const load = weight
    ? inputOf('load', weight)
    : { name: 'load', value: quantity('mass', low * 1000, high * 1000) };
  const inputs = [load, inputOf('lift-limit', limit)];
  return [
    limit,
    limitOfTwo,
    make('lift-index', one > 0 ? indexOf(low / one, high / one) : none('lift-out-of-reach'), inputs),
    make(
      'lift-verdict',
      choice(high <= one ? 'lift-one-person' : high <= two ? 'lift-two-people' : 'lift-not-by-hand'),
      [...inputs, inputOf('lift-limit-two', limitOfTwo)],
      true,
    ),
  ];
}

function limitKg(item: LiftedItem, reachM: number | undefined): number {
  const [fromCm, toCm] = [item.fromM * 100, item.toM * 100];
  const end = (heightCm: number): number =>
    recommendedWeight(
      liftMultipliers(
        {
          reach: reachM === undefined ? estimatedReach(item.depthM * 100, heightCm, 'metric') : reachM * 100,
          height: heightCm,
          beginsAt: fromCm,
          travel: Math.abs(toCm - fromCm),
          turnDeg: item.turnDeg ?? 0,
          perMinute: item.perMinute ?? 0.2,
          time: item.time ?? 'up-to-1-hour',
          grip: item.grip,
        },
        'metric',
      ),
      'metric',
    );
  return Math.min(end(fromCm), end(toCm));
}

function indexOf(low: number, high: number): FindingValue {
  return low === high ? { kind: 'count', value: high } : { kind: 'count-range', low, high };
}

function taskInputs(item: LiftedItem, reachM: number | undefined): readonly FindingInput[] {
  const lengthOf = (name: string, m: number): FindingInput => ({ name, value: quantity('length', m * 1000) });
  const reaches = [item.fromM, item.toM].map(
    (m) => estimatedReach(item.depthM * 100, m * 100, 'metric') / 100,
  );
  return [
    ...(reachM === undefined ? [lengthOf('load-depth', item.depthM)] : []),
    lengthOf('lift-reach', reachM ?? Math.max(...reaches)),
    lengthOf('lift-from', item.fromM),
    lengthOf('lift-to', item.toM),
    { name: 'lift-turn', value: quantity('angle', item.turnDeg ?? 0) },
    { name: 'grip', value: choice(`grip-${item.grip}`) },
    { name: 'lifts-a-minute', value: { kind: 'count', value: item.perMinute ?? 0.2 } },
    { name: 'lifting-time', value: choice(`lifting-${item.time ?? 'up-to-1-hour'}`) },
  ];
}
