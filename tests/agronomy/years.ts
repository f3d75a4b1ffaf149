import type { SoilTemperatureYear, TemperatureYear } from '../../scripts/climate/temperature-year.ts';
import {
  date,
  dateRange,
  none,
  type DateFinding,
  type DateRangeFinding,
} from '../../scripts/findings/finding.ts';
import { toHeld } from '../../scripts/quantities/units.ts';

/** A year whose daily mean swings as a cosine, in degrees Fahrenheit, coldest on January 20 unless told. */
export interface Swing {
  readonly meanF: number;
  readonly halfRangeF: number;
  readonly coldestDay?: number;
}

export function meanC({ meanF, halfRangeF, coldestDay = 20 }: Swing, day: number): number {
  return toHeld(meanF - halfRangeF * Math.cos((2 * Math.PI * (day - coldestDay)) / 365), 'F');
}

/** Minimum and maximum 10 F below and above the mean. */
export function airYear(swing: Swing): TemperatureYear {
  const days = Array.from({ length: 365 }, (_, index) => meanC(swing, index + 1));
  return {
    minimumC: days.map((value) => value - 10 / 1.8),
    maximumC: days.map((value) => value + 10 / 1.8),
    sources: ['a-station'],
  };
}

/** Soil that is as warm as the same swing at every depth. */
export function soilYear(swing: Swing): SoilTemperatureYear {
  return { at: (day) => meanC(swing, day), sources: ['a-soil-model'] };
}

/** Degree days of the daily mean above a base. */
export function degreeDaysOf(swing: Swing, baseF: number): (day: number) => number {
  return (day) => Math.max(0, meanC(swing, day) - toHeld(baseF, 'F'));
}

export function given(id: string, day: number | undefined): DateFinding {
  return {
    id,
    value: day === undefined ? none('freeze-never') : date(day),
    method: 'given',
    inputs: [],
    sources: ['a-table'],
  };
}

export function windowOf(from: number, to: number): DateRangeFinding {
  return {
    id: 'testcrop.direct-sow.spring',
    value: dateRange(from, to),
    method: 'given',
    inputs: [],
    sources: ['a-table'],
  };
}
