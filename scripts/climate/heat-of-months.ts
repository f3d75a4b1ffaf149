/** How hot a typical afternoon of each month feels, as findings. */
import {
  choice,
  dateRange,
  inputOf,
  none,
  quantity,
  type Finding,
  type FindingInput,
  type FindingValue,
} from '../findings/finding.ts';
import { dayNumber, daysInYear } from './calendar.ts';
import { heatBand, heatIndexC } from './heat-index.ts';

/** Monthly means, January first. */
export interface HeatClimate {
  readonly minimumC: readonly number[];
  readonly maximumC: readonly number[];
  readonly source: string;
  /** Mean relative humidity of the afternoon, in percent, where the region's record gives it. */
  readonly humidity?: { readonly afternoon: readonly number[]; readonly source: string };
}

export const monthIds = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
] as const;
export type MonthId = (typeof monthIds)[number];

export interface MonthHeat {
  readonly month: MonthId;
  /** `heat.humidity.july`: relative humidity of the afternoon in percent. */
  readonly humidity: Finding;
  /** `heat.index.july`, or `none('too-cool-for-heat')` below 80 °F. */
  readonly index: Finding;
  /**
   * `heat.band.july`: one of `heat-none`, `heat-caution`, `heat-extreme-caution`, `heat-danger`, `heat-extreme-danger`.
   */
  readonly band: Finding;
}

/**
 * The heat index at the mean maximum of each month with the humidity of the afternoon, and its band. Half of the days
 * are hotter. Without temperatures every finding is `none('temperatures-not-given')`. Without humidity it is reckoned
 * as if the air held as much water all day as saturates it at the daily minimum, which makes dry places feel damper
 * than they are, never the other way.
 */
export function heatOfMonths(climate: HeatClimate | undefined): readonly MonthHeat[] {
  return monthIds.map((month, index) => (climate ? heatOf(climate, month, index) : unknown(month)));
}

/**
 * Relative humidity in percent of air at a temperature that would be saturated at a dew point, 0 to 100; 100 where the
 * dew point is not below the temperature.
 *
 * Source: FAO Irrigation and Drainage Paper 56, 1998, equations 10 and 11 (source record `fao-56-humidity`).
 */
export function humidityAtDewPoint(temperatureC: number, dewPointC: number): number {
  return Math.min(100, (100 * saturationKPa(dewPointC)) / saturationKPa(temperatureC));
}

/** Vapour pressure of saturated air in kilopascals, FAO-56 equation 11. */
export function saturationKPa(temperatureC: number): number {
  return 0.6108 * Math.exp((17.27 * temperatureC) / (temperatureC + 237.3));
}

const indexSource = 'nws-heat-index';
const bandSource = 'nws-heat-bands';
const dewPointSource = 'fao-56-humidity';

function heatOf(climate: HeatClimate, month: MonthId, at: number): MonthHeat {
  const [minimumC, maximumC] = [climate.minimumC[at]!, climate.maximumC[at]!];
  const days: FindingInput = { name: 'month', value: daysOf(at) };
  const minimum: FindingInput = { name: 'air-minimum', value: quantity('temperature', minimumC) };
  const maximum: FindingInput = { name: 'air-maximum', value: quantity('temperature', maximumC) };
  const given = climate.humidity?.afternoon[at];
  const percent = given ?? humidityAtDewPoint(maximumC, minimumC);
  const humidity: Finding = {
    id: `heat.humidity.${month}`,
    value: { kind: 'count', value: percent },
    method: given === undefined ? 'heat.humidity-from-minimum' : 'heat.humidity-given',
    inputs: given === undefined ? [days, minimum, maximum] : [days],
    sources: given === undefined ? [dewPointSource, climate.source] : [climate.humidity!.source],
  };
  const indexC = heatIndexC(maximumC, percent);
  const band = heatBand(indexC);
  const index: Finding = {
    id: `heat.index.${month}`,
    value: band === 'none' ? none('too-cool-for-heat') : quantity('temperature', indexC),
    method: 'heat.index',
    inputs: [days, maximum, inputOf('humidity-percent', humidity)],
    sources: [...new Set([indexSource, climate.source, ...humidity.sources])],
  };
  return {
    month,
    humidity,
    index,
    band: {
      id: `heat.band.${month}`,
      value: choice(`heat-${band}`),
      method: 'heat.band',
      inputs: [days, inputOf('heat-index', index)],
      sources: [...new Set([bandSource, ...index.sources])],
    },
  };
}

/** The days of a month, counted from 0. */
function daysOf(month: number): FindingValue {
  const next = month === 11 ? daysInYear + 1 : dayNumber({ month: month + 2, day: 1 });
  return dateRange(dayNumber({ month: month + 1, day: 1 }), next - 1);
}

function unknown(month: MonthId): MonthHeat {
  const make = (what: string, method: string, sources: readonly string[]): Finding => ({
    id: `heat.${what}.${month}`,
    value: none('temperatures-not-given'),
    method: `heat.${method}`,
    inputs: [],
    sources,
  });
  return {
    month,
    humidity: make('humidity', 'humidity-from-minimum', [dewPointSource]),
    index: make('index', 'index', [indexSource]),
    band: make('band', 'band', [bandSource]),
  };
}
