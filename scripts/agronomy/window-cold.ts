/**
 * What cold nights ask of a planting window: plants wait until nights colder than they stand are unlikely, and
 * what one cold night ruins waits until a freeze is.
 */
import {
  count,
  date,
  inputOf,
  quantity,
  type DateFinding,
  type DayNumber,
  type FindingInput,
} from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import type { Bound, Planting } from './window-parts.ts';

export interface WindowColdNights {
  /**
   * The last freeze at a threshold in degrees Celsius, by the chance that is planned by. One that does not come, or is
   * not told, is `none` and asks nothing.
   */
  readonly lastFreezeAt?: (thresholdC: number) => DateFinding;
  /** The last 32 F freeze that a later one follows in one year of ten. */
  readonly lateFreeze?: DateFinding;
}

/** The thresholds that freeze tables give, warmest first, in degrees Celsius. */
const thresholdsC = [36, 32, 28, 24, 20, 16].map((thresholdF) => (thresholdF - 32) / 1.8);

const sameC = 1e-6;

/**
 * The last day with a night colder than plants of the crop stand, read between the thresholds around its record's own
 * figure `cold-limit`. Only plants that stand above the ground when they are planted, and sets, which sprout at once,
 * wait for it: seed and seed pieces lie under the soil. Where a threshold around the limit has no date, the warmer one
 * rules; where that has none, nothing is asked.
 */
export function coldLimitBounds(
  crop: Crop,
  planting: Planting,
  { lastFreezeAt }: WindowColdNights,
): readonly Bound[] {
  const limit = coldLimitOf(crop);
  if (!limit || !lastFreezeAt || planting.method === 'direct-sow' || planting.method === 'seed-pieces')
    return [];
  const between = lastNightBelow(limit.limitC, lastFreezeAt);
  if (between === undefined) return [];
  const { day, freezes } = between;
  return [
    {
      day,
      rule: 'cold-limit',
      inputs: [
        { name: 'cold-limit', value: quantity('temperature', limit.limitC) },
        { name: 'cold-limit-passed', value: date(day) },
        ...freezes.map((freeze) => inputOf('last-freeze-near-limit', freeze)),
      ],
      sources: [...limit.sources, ...freezes.flatMap(({ sources }) => sources)],
    },
  ];
}

/** The coldest night that plants of the crop, hardened, stand; its record's figure `cold-limit`. */
export function coldLimitOf(crop: Crop): { limitC: number; sources: readonly string[] } | undefined {
  const figure = crop.figures?.find(({ id }) => id === 'cold-limit');
  return figure && 'temperature' in figure
    ? { limitC: figure.temperature.low, sources: figure.sources }
    : undefined;
}

function lastNightBelow(
  limitC: number,
  lastFreezeAt: (thresholdC: number) => DateFinding,
): { day: DayNumber; freezes: readonly DateFinding[] } | undefined {
  const warmerC = thresholdsC.findLast((thresholdC) => thresholdC >= limitC - sameC);
  if (warmerC === undefined) return undefined;
  const warmer = lastFreezeAt(warmerC);
  if (warmer.value.kind === 'none') return undefined;
  const colderC = thresholdsC.find((thresholdC) => thresholdC <= limitC + sameC);
  const colder = colderC === undefined || colderC === warmerC ? undefined : lastFreezeAt(colderC);
  if (colderC === undefined || !colder || colder.value.kind === 'none')
    return { day: warmer.value.day, freezes: [warmer] };
  const share = (limitC - colderC) / (warmerC - colderC);
  const day = colder.value.day + share * (warmer.value.day - colder.value.day);
  return { day: Math.round(day), freezes: [colder, warmer] };
}

/**
 * Very tender crops are not set out or sown while a freeze is likelier than one year in ten: one freeze ends them, and
 * cold days before it set them back. Source: a chance of 10 % is what one gardener takes with tomatoes, and a week or
 * two more with the more tender (Piedmont Home Vegetable Garden, 2012). For all of the group it is common practice.
 */
export function lateFreezeBounds(crop: Crop, { lateFreeze }: WindowColdNights): readonly Bound[] {
  if (crop.hardiness.group !== 'very-tender' || lateFreeze?.value.kind !== 'date') return [];
  const inputs: FindingInput[] = [
    inputOf('late-freeze', lateFreeze),
    { name: 'late-freeze-chance', value: count(lateFreezePercent) },
  ];
  return [
    {
      day: lateFreeze.value.day,
      rule: 'late-freeze',
      inputs,
      sources: ['piedmont-frost-risk-2012', 'common-practice-gardening', ...lateFreeze.sources],
    },
  ];
}

/** The chance of a later freeze that very tender crops wait for, in percent. */
export const lateFreezePercent = 10;
