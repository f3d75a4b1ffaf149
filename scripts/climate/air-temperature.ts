/** When the average year reaches a temperature: heat limits of cool-season crops, and days warm enough to work with. */
import { date, none, quantity, type DateFinding, type DayNumber } from '../findings/finding.ts';
import { fromHeld } from '../quantities/units.ts';
import { daysInYear } from './calendar.ts';
import { maximumOn, meanOn, minimumOn, type TemperatureYear } from './temperature-year.ts';

export type AirMeasure = 'minimum' | 'mean' | 'maximum';
export type Direction = 'rising' | 'falling';

export interface WantedTemperature {
  readonly temperatureC: number;
  /** The search begins on this day and runs for one year. */
  readonly from: DayNumber;
  readonly direction: Direction;
}

/**
 * The first day from `from` on that brings a yearly curve to a temperature: rising, the day that reaches it after one below
 * it; falling, the day that comes down to it after one above it. `always-above` or `always-below` when the curve does
 * not cross the temperature at all.
 */
export function crossingDay(
  temperatureOn: (day: DayNumber) => number,
  { temperatureC, from, direction }: WantedTemperature,
): DayNumber | 'always-above' | 'always-below' {
  const start = Math.round(from);
  const over = (day: DayNumber): boolean =>
    direction === 'rising' ? temperatureOn(day) >= temperatureC : temperatureOn(day) > temperatureC;
  for (let day = start; day < start + daysInYear; day += 1) {
    if (direction === 'rising' ? over(day) && !over(day - 1) : !over(day) && over(day - 1)) return day;
  }
  return over(start) ? 'always-above' : 'always-below';
}

/**
 * The date on which the average daily minimum, mean or maximum reaches a temperature, as finding
 * `air.maximum.rising.80f`. `none('air-always-warmer')` or `none('air-always-cooler')` when it does not cross it.
 */
export function airReaches(
  year: TemperatureYear,
  wanted: WantedTemperature & { readonly measure: AirMeasure },
): DateFinding {
  const temperatureOn = { minimum: minimumOn, mean: meanOn, maximum: maximumOn }[wanted.measure];
  const day = crossingDay((on) => temperatureOn(year, on), wanted);
  return {
    id: `air.${wanted.measure}.${wanted.direction}.${temperatureName(wanted.temperatureC)}`,
    value:
      typeof day === 'number'
        ? date(day)
        : none(day === 'always-above' ? 'air-always-warmer' : 'air-always-cooler'),
    method: `air.${wanted.direction}`,
    inputs: [{ name: `air-${wanted.measure}`, value: quantity('temperature', wanted.temperatureC) }],
    sources: year.sources,
  };
}

/** `80f`, or `62-6f` where a whole degree Fahrenheit does not hit the temperature. */
export function temperatureName(temperatureC: number): string {
  const tenths = Math.round(fromHeld(temperatureC, 'F') * 10) / 10;
  return `${String(tenths).replace('.', '-').replace(/^-/, 'minus-')}f`;
}
