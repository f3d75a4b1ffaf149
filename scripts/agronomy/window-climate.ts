import type { DateFinding } from '../findings/finding.ts';
import type { WindowColdNights } from './window-cold.ts';
import type { WindowTemperatures } from './window-temperatures.ts';

/** What planting windows are worked out from. Without temperatures they follow freeze dates alone. */
export interface WindowClimate extends WindowTemperatures, WindowColdNights {
  /** The last 32 F freeze of spring that planting is counted from: the average (50 %) one unless `planning` says. */
  readonly lastFreeze: DateFinding;
  /** The first fall freeze at a threshold in degrees Celsius, or a finding that there is none. */
  readonly firstFreeze: (thresholdC: number) => DateFinding;
  /**
   * The average (50 %) first fall freeze at just this threshold, `none` where that is not told; `firstFreeze` when absent.
   * What overwinters is counted from it and held against it, since it is no freeze to be ready before.
   */
  readonly averageFirstFreeze?: (thresholdC: number) => DateFinding;
  /** The chance of a freeze outside the two dates, in percent, where the region does not plan by the average. */
  readonly planning?: { readonly chancePercent: number };
}
