/**
 * The temperatures of an average year inside a frame, as planting windows use those of the open: the mean low and high of the
 * region, each raised by what the frame keeps on an average day of that month, half clear and half covered, opened at
 * the limit. Between the middles of months what it keeps runs on smoothly.
 */
import { dailyCurve } from '../../climate/temperature-curve.ts';
import type { TemperatureYear } from '../../climate/temperature-year.ts';
import { heatSources } from './heat-sources.ts';
import type { FrameMonths } from './months.ts';

/** A high never lies above the limit at which the frame is opened or, where that is more, the high outside. */
export function insideYear(heat: FrameMonths): TemperatureYear {
  const { months, climate, ventAtC } = heat;
  const raised = (outside: readonly number[], byMonth: readonly number[]): readonly number[] => {
    const lift = dailyCurve(byMonth);
    return outside.map((temperatureC, day) => temperatureC + lift[day]!);
  };
  const lows = raised(
    climate.air.minimumC,
    months.map(({ average, outsideLowC }) => average.lowC - outsideLowC),
  );
  const highs = raised(
    climate.air.maximumC,
    months.map(({ average, outsideHighC }) => average.highC - outsideHighC),
  );
  const maximumC = highs.map((high, day) => Math.min(high, Math.max(ventAtC, climate.air.maximumC[day]!)));
  return {
    minimumC: lows.map((low, day) => Math.min(low, maximumC[day]!)),
    maximumC,
    sources: heatSources(heat, 'day'),
  };
}
