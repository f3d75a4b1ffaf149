/** What a region's planting windows are worked out from: its freeze dates by the chance it plans by, and its temperatures. */
import type { WindowClimate } from '../agronomy/windows.ts';
import { freezeThresholdsF, type FreezeDates } from '../climate/freeze.ts';
import { defaultPlanForChance, planningFreeze, type PlanningFreeze } from '../climate/planning-freeze.ts';
import type { SoilTemperatureYear, TemperatureYear } from '../climate/temperature-year.ts';
import { none, type DateFinding } from '../findings/finding.ts';
import type { FreezeChance } from '../records/schemas/region.ts';
import { lateFreezePercent } from '../agronomy/window-cold.ts';

export interface RegionClimate {
  /** The dates planting is counted from, and the chance they go by. */
  readonly planning: PlanningFreeze;
  /** By freeze dates alone, and with the temperatures, where they are known. */
  readonly byFreezes: WindowClimate;
  readonly whole: WindowClimate;
}

export function regionClimate(options: {
  readonly freeze: ReadonlyMap<number, FreezeDates>;
  readonly freezeAt: (thresholdC: number) => FreezeDates;
  readonly chance: FreezeChance | undefined;
  readonly air: TemperatureYear | undefined;
  readonly soil: SoilTemperatureYear | undefined;
}): RegionClimate {
  const { freeze, freezeAt, air, soil, chance = defaultPlanForChance } = options;
  const at32 = freeze.get(32)!;
  const planning = planningFreeze(at32, chance);
  const isAverage = chance === defaultPlanForChance;
  const average = (edge: 'last' | 'first', dates: FreezeDates, thresholdF: number): DateFinding =>
    dates[edge][defaultPlanForChance] ?? absent(`freeze.${edge}.${thresholdF}f.${defaultPlanForChance}`);
  const dateOf = (edge: 'last' | 'first', dates: FreezeDates, thresholdF: number): DateFinding =>
    isAverage ? average(edge, dates, thresholdF) : planningFreeze(dates, chance)[edge];
  const late = at32.last[lateFreezePercent];
  const byFreezes: WindowClimate = {
    lastFreeze: dateOf('last', at32, 32),
    firstFreeze: (thresholdC) => endingFreeze(thresholdC, { freeze, freezeAt, read: dateOf }),
    averageFirstFreeze: (thresholdC) => {
      const thresholdF = inF(thresholdC);
      return average('first', freeze.get(thresholdF) ?? freezeAt(thresholdC), thresholdF);
    },
    ...(isAverage ? {} : { planning: { chancePercent: chance } }),
    lastFreezeAt: (thresholdC) => {
      const thresholdF = inF(thresholdC);
      return dateOf('last', freeze.get(thresholdF) ?? freezeAt(thresholdC), thresholdF);
    },
    ...(late ? { lateFreeze: late } : {}),
  };
  return { planning, byFreezes, whole: { ...byFreezes, ...(air ? { air } : {}), ...(soil ? { soil } : {}) } };
}

/**
 * The first freeze at a threshold. Where the region's table has no row for it, the freeze at the next warmer
 * threshold that the table has: fall crops are then planted too early rather than too late.
 */
function endingFreeze(
  thresholdC: number,
  {
    freeze,
    freezeAt,
    read,
  }: {
    freeze: ReadonlyMap<number, FreezeDates>;
    freezeAt: (thresholdC: number) => FreezeDates;
    read: (edge: 'first', dates: FreezeDates, thresholdF: number) => DateFinding;
  },
): DateFinding {
  const coldestF = inF(thresholdC);
  const found = freezeThresholdsF
    .filter((thresholdF) => thresholdF >= coldestF && thresholdF <= 32)
    .toSorted((a, b) => a - b)
    .flatMap((thresholdF) => {
      const dates = freeze.get(thresholdF);
      return dates ? [read('first', dates, thresholdF)] : [];
    })
    .find((finding) => !isUnknown(finding));
  return found ?? read('first', freezeAt(thresholdC), coldestF);
}

function inF(thresholdC: number): number {
  return Math.round(thresholdC * 1.8 + 32);
}

/** True where the record says nothing, as opposed to a freeze that does not come. */
function isUnknown({ value }: DateFinding): boolean {
  return (
    value.kind === 'none' &&
    ['freeze-threshold-not-given', 'freeze-chance-not-given', 'not-given'].includes(value.reason)
  );
}

/** A threshold or chance that the region's record does not give. */
function absent(id: string): DateFinding {
  return { id, value: none('not-given'), method: 'freeze.typed-table', inputs: [], sources: [] };
}
