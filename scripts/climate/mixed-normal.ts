/**
 * Freeze dates as a mixed distribution: in a share of the seasons it freezes at all, and in those the date is
 * normally distributed.
 *
 * Source: W. J. Koss, J. R. Owenby, P. M. Steurer and D. S. Ezell, Freeze/Frost Data, Climatography of the
 * U.S. No. 20, Supplement No. 1, National Climatic Data Center, 1988.
 */
import type { DayNumber } from '../findings/finding.ts';
import type { FreezeEdge } from './freeze-seasons.ts';
import { normalQuantile } from './normal-distribution.ts';

export interface MixedNormal {
  /** Share of seasons with a freeze, 0 to 1. */
  readonly freezeShare: number;
  /** Mean day of the seasons with a freeze. */
  readonly meanDay: DayNumber;
  readonly sdDays: number;
}

/**
 * The day that a later last freeze, or an earlier first one, passes with the given chance (0 to 1, counted over all
 * seasons). Undefined where the chance is not below the share of seasons with a freeze: it never gets that likely.
 */
export function dayAtChance(
  distribution: MixedNormal,
  edge: FreezeEdge,
  chance: number,
): DayNumber | undefined {
  const { freezeShare, meanDay, sdDays } = distribution;
  if (chance >= freezeShare) return undefined;
  const chanceInFreezeSeasons = chance / freezeShare;
  const shareBefore = edge === 'last' ? 1 - chanceInFreezeSeasons : chanceInFreezeSeasons;
  return meanDay + sdDays * normalQuantile(shareBefore);
}

/** Fits the distribution to seasons; `null` is a season without a freeze. At least two dates are needed. */
export function fitMixedNormal(days: readonly (DayNumber | null)[]): MixedNormal | undefined {
  const dates = days.filter((day) => day !== null);
  if (dates.length < 2) return undefined;
  const meanDay = dates.reduce((sum, day) => sum + day, 0) / dates.length;
  const squares = dates.reduce((sum, day) => sum + (day - meanDay) ** 2, 0);
  return {
    freezeShare: dates.length / days.length,
    meanDay,
    sdDays: Math.sqrt(squares / (dates.length - 1)),
  };
}
