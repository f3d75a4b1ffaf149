/** Puts the bars of one row side by side where they overlap in time, so that none hides another. */
import { piecesIn, type DayPiece, type DayWindow } from './day-scale.ts';
import { plantingActs, type PlantingAct } from './acts.ts';

export interface PlantingBar extends DayWindow {
  readonly act: PlantingAct;
}

export interface LaneBar extends DayPiece {
  readonly act: PlantingAct;
  /** 0 is the top lane. */
  readonly lane: number;
}

export interface Lanes {
  readonly count: number;
  readonly bars: readonly LaneBar[];
}

/**
 * One lane when no bars overlap. Otherwise planting acts take the upper lanes in the order of the acts, and harvest
 * the lowest. Bars of the same act that overlap become one.
 */
export function inLanes(bars: readonly PlantingBar[], window: DayWindow): Lanes {
  const planting = plantingActs
    .filter((act) => act !== 'harvest')
    .flatMap((act) => merged(bars, act, window).map((piece) => ({ ...piece, act })));
  const harvest = merged(bars, 'harvest', window).map((piece) => ({ ...piece, act: 'harvest' as const }));
  const placed: LaneBar[] = [];
  for (const bar of planting) placed.push({ ...bar, lane: lowestFreeLane(bar, placed) });
  const plantingLanes = Math.max(0, ...placed.map((bar) => bar.lane + 1));
  const lastLane = Math.max(0, plantingLanes - 1);
  const clash = placed.some(
    (bar) => bar.lane === lastLane && harvest.some((other) => inSameDays(bar, other)),
  );
  const harvestLane = clash ? plantingLanes : lastLane;
  placed.push(...harvest.map((bar) => ({ ...bar, lane: harvestLane })));
  return { count: Math.max(1, ...placed.map((bar) => bar.lane + 1)), bars: placed };
}

function lowestFreeLane(bar: DayPiece, placed: readonly LaneBar[]): number {
  let lane = 0;
  while (placed.some((other) => other.lane === lane && inSameDays(bar, other))) lane += 1;
  return lane;
}

/** The pieces of one act in order of time, those that share a day joined. */
function merged(bars: readonly PlantingBar[], act: PlantingAct, window: DayWindow): readonly DayPiece[] {
  const pieces = bars
    .filter((bar) => bar.act === act)
    .flatMap((bar) => piecesIn(bar, window))
    .sort((a, b) => a.from - b.from || a.to - b.to);
  const result: DayPiece[] = [];
  for (const piece of pieces) {
    const last = result.at(-1);
    if (last && inSameDays(last, piece)) result[result.length - 1] = joined(last, piece);
    else result.push(piece);
  }
  return result;
}

function joined(a: DayPiece, b: DayPiece): DayPiece {
  return {
    from: Math.min(a.from, b.from),
    to: Math.max(a.to, b.to),
    openStart: a.openStart || b.openStart,
    openEnd: a.openEnd || b.openEnd,
  };
}

function inSameDays(a: DayWindow, b: DayWindow): boolean {
  return a.from <= b.to && b.from <= a.to;
}
