/**
 * The revised NIOSH lifting equation: the weight that nearly all healthy adults can lift with two hands in a given way
 * without raising the risk of low-back pain. Not for children, one hand, kneeling or sitting, cramped or slippery
 * places, hot or cold days (outside 66 to 79 °F), shovels or wheelbarrows.
 *
 * Source: T. R. Waters, V. Putz-Anderson and A. Garg, Applications Manual for the Revised NIOSH Lifting Equation, DHHS
 * (NIOSH) 94-110, 1994, revised 2021 (source record `niosh-lifting-manual`), read in a transcription.
 */
import { frequencyMultiplier, type LiftingTime } from './frequency-table.ts';

/**
 * The equation is published twice, in inches and pounds and in centimetres and kilograms; the two differ by up to 2
 * percent.
 */
export type LiftingUnits = 'customary' | 'metric';

export type Grip = 'good' | 'fair' | 'poor';

/** One end of a lift, with lengths in inches or centimetres. Below its least a length counts as the least. */
export interface LiftTask {
  /**
   * Level distance from between the ankles to between the hands: counts as 10 in (25 cm) if less; beyond 25 in (63 cm)
   * nothing may be lifted.
   */
  readonly reach: number;
  /**
   * Height of the hands above the ground one stands on, at this end, 0 to 70 in (175 cm); outside it nothing may be
   * lifted.
   */
  readonly height: number;
  /** The same where the lift begins. */
  readonly beginsAt: number;
  /** How far up or down the hands go: counts as 10 in (25 cm) if less; beyond 70 in (175 cm) nothing may be lifted. */
  readonly travel: number;
  /** How far the load is to the side of straight ahead, 0 to 135; outside it nothing may be lifted. */
  readonly turnDeg: number;
  readonly perMinute: number;
  readonly time: LiftingTime;
  readonly grip: Grip;
}

/** Each 0 to 1, in the order of the equation. */
export interface LiftMultipliers {
  readonly reach: number;
  readonly height: number;
  readonly travel: number;
  readonly turn: number;
  readonly frequency: number;
  readonly grip: number;
}

interface Constants {
  /** The most that is recommended for the best of lifts. */
  readonly load: number;
  readonly reach: { readonly least: number; readonly most: number };
  readonly height: { readonly best: number; readonly slope: number; readonly most: number };
  readonly travel: { readonly least: number; readonly most: number; readonly over: number };
  /** Below this height of the hands the load must be held further out, to clear the knees. */
  readonly kneeHeight: number;
  readonly reachOverLoad: { readonly high: number; readonly low: number };
}

export const liftingConstants: Readonly<Record<LiftingUnits, Constants>> = {
  customary: {
    load: 51,
    reach: { least: 10, most: 25 },
    height: { best: 30, slope: 0.0075, most: 70 },
    travel: { least: 10, most: 70, over: 1.8 },
    kneeHeight: 10,
    reachOverLoad: { high: 8, low: 10 },
  },
  metric: {
    load: 23,
    reach: { least: 25, most: 63 },
    height: { best: 75, slope: 0.003, most: 175 },
    travel: { least: 25, most: 175, over: 4.5 },
    kneeHeight: 25,
    reachOverLoad: { high: 20, low: 25 },
  },
};

const mostTurnDeg = 135;

/** The six multipliers of one end of a lift. */
export function liftMultipliers(task: LiftTask, units: LiftingUnits): LiftMultipliers {
  const { reach, height, travel } = liftingConstants[units];
  const inReach = Math.max(task.reach, reach.least);
  const travelled = Math.max(task.travel, travel.least);
  return {
    reach: task.reach > reach.most ? 0 : reach.least / inReach,
    height:
      task.height < 0 || task.height > height.most
        ? 0
        : 1 - height.slope * Math.abs(task.height - height.best),
    travel: task.travel > travel.most ? 0 : 0.82 + travel.over / travelled,
    turn: task.turnDeg < 0 || task.turnDeg > mostTurnDeg ? 0 : 1 - 0.0032 * task.turnDeg,
    frequency: frequencyMultiplier({ ...task, beginsLow: task.beginsAt < height.best }),
    grip: gripMultipliers[task.grip][task.height < height.best ? 'low' : 'high'],
  };
}

/** The recommended weight limit, in pounds or kilograms: the load constant times every multiplier. */
export function recommendedWeight(multipliers: LiftMultipliers, units: LiftingUnits): number {
  const { reach, height, travel, turn, frequency, grip } = multipliers;
  return liftingConstants[units].load * reach * height * travel * turn * frequency * grip;
}

/**
 * The reach for a load of a depth, front to back, held against the body: half its depth and 8 in (20 cm), or 10 in (25
 * cm) where the hands are lower than that. Not less than 10 in (25 cm).
 */
export function estimatedReach(depth: number, height: number, units: LiftingUnits): number {
  const { kneeHeight, reachOverLoad, reach } = liftingConstants[units];
  return Math.max(reach.least, depth / 2 + (height >= kneeHeight ? reachOverLoad.high : reachOverLoad.low));
}

/**
 * By the height of the hands, below 30 in (75 cm) or not. Source: the same manual, table 7, from memory.
 */
const gripMultipliers: Readonly<Record<Grip, { readonly low: number; readonly high: number }>> = {
  good: { low: 1, high: 1 },
  fair: { low: 0.95, high: 1 },
  poor: { low: 0.9, high: 0.9 },
};
