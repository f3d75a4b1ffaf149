/** Invented climates as yearly curves, for tests that run from the tropics to the poles. */
import { temperatureYear } from '../../scripts/climate/temperature-curve.ts';
import type { TemperatureYear } from '../../scripts/climate/temperature-year.ts';

export interface ClimateOptions {
  readonly meanC: number;
  /** Half of the difference between the warmest and the coldest month. */
  readonly halfC: number;
  readonly south?: boolean;
  /** Half of the difference between day and night. */
  readonly dailyC?: number;
}

export function climate({ meanC, halfC, south = false, dailyC = 6 }: ClimateOptions): TemperatureYear {
  const coldest = south ? 6.7 : 0.7;
  const means = Array.from(
    { length: 12 },
    (_, month) => meanC - halfC * Math.cos((2 * Math.PI * (month - coldest)) / 12),
  );
  return temperatureYear({
    minimumC: means.map((mean) => mean - dailyC),
    maximumC: means.map((mean) => mean + dailyC),
    sources: ['test'],
  });
}

export const inland = climate({ meanC: 8, halfC: 15 });
export const southern = climate({ meanC: 8, halfC: 15, south: true });
export const tropical = climate({ meanC: 27, halfC: 1 });
export const polar = climate({ meanC: -14, halfC: 12 });
