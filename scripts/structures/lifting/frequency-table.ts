/** How often and how long one lifts, and what it takes off the weight. */

/** How long the lifting goes on, rests between not counted: see `frequencyMultiplier`. */
export type LiftingTime = 'up-to-1-hour' | '1-to-2-hours' | '2-to-8-hours';

interface Row {
  readonly perMinute: number;
  /** Hands below 30 in (75 cm) where the lift begins, then at or above. */
  readonly low: readonly [number, number, number];
  readonly high: readonly [number, number, number];
}

const row = (
  perMinute: number,
  low: readonly [number, number, number],
  high: readonly [number, number, number] = low,
): Row => ({ perMinute, low, high });

/**
 * Columns: up to 1 hour with as much lighter work after it, 1 to 2 hours with 0.3 times as much, 2 to 8 hours.
 *
 * Source: T. R. Waters, V. Putz-Anderson and A. Garg, Applications Manual for the Revised NIOSH Lifting Equation, 1994,
 * table 5 (source record `niosh-lifting-manual`); the first column and the first of the second read in a reprint, the
 * rest from memory.
 */
const table: readonly Row[] = [
  row(0.2, [1.0, 0.95, 0.85]),
  row(0.5, [0.97, 0.92, 0.81]),
  row(1, [0.94, 0.88, 0.75]),
  row(2, [0.91, 0.84, 0.65]),
  row(3, [0.88, 0.79, 0.55]),
  row(4, [0.84, 0.72, 0.45]),
  row(5, [0.8, 0.6, 0.35]),
  row(6, [0.75, 0.5, 0.27]),
  row(7, [0.7, 0.42, 0.22]),
  row(8, [0.6, 0.35, 0.18]),
  row(9, [0.52, 0.3, 0], [0.52, 0.3, 0.15]),
  row(10, [0.45, 0.26, 0], [0.45, 0.26, 0.13]),
  row(11, [0.41, 0, 0], [0.41, 0.23, 0]),
  row(12, [0.37, 0, 0], [0.37, 0.21, 0]),
  row(13, [0, 0, 0], [0.34, 0, 0]),
  row(14, [0, 0, 0], [0.31, 0, 0]),
  row(15, [0, 0, 0], [0.28, 0, 0]),
];

const columns: Readonly<Record<LiftingTime, 0 | 1 | 2>> = {
  'up-to-1-hour': 0,
  '1-to-2-hours': 1,
  '2-to-8-hours': 2,
};

/**
 * The frequency multiplier, 0 to 1: exact at the frequencies of the table, on a straight line between them, and 0 as
 * soon as the next frequency of the table has 0. Fewer than 0.2 lifts a minute count as 0.2, more than 15 give 0.
 */
export function frequencyMultiplier(lifting: {
  readonly perMinute: number;
  readonly time: LiftingTime;
  /** Where the hands are when the lift begins: below 30 in (75 cm) or not. */
  readonly beginsLow: boolean;
}): number {
  const valueOf = (at: Row): number => at[lifting.beginsLow ? 'low' : 'high'][columns[lifting.time]];
  const perMinute = Math.max(lifting.perMinute, table[0]!.perMinute);
  const upper = table.findIndex((at) => at.perMinute >= perMinute);
  if (upper < 0) return 0;
  const above = table[upper]!;
  const below = table[Math.max(0, upper - 1)]!;
  if (above.perMinute === perMinute || valueOf(above) === 0) return valueOf(above);
  const part = (perMinute - below.perMinute) / (above.perMinute - below.perMinute);
  return valueOf(below) + part * (valueOf(above) - valueOf(below));
}
