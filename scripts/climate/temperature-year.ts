/**
 * The temperatures of an average year at one place, one value for each day of a 365-day year (index 0 is January 1),
 * in degrees Celsius. What computes with them asks by day number, which may run on below 1 and above 365.
 */
import type { DayNumber, FindingInput } from '../findings/finding.ts';
import { dayOfYear } from './calendar.ts';

export interface TemperatureYear {
  readonly minimumC: readonly number[];
  readonly maximumC: readonly number[];
  /** Ids of the sources of the temperatures. */
  readonly sources: readonly string[];
}

/** The temperature of the soil at a depth below the surface on a day of the average year, in degrees Celsius. */
export interface SoilTemperatureYear {
  at(day: DayNumber, depthMm: number): number;
  readonly sources: readonly string[];
  /** What the temperatures were worked out from, for findings that use them. */
  readonly inputs?: readonly FindingInput[];
}

export function minimumOn(year: TemperatureYear, day: DayNumber): number {
  return year.minimumC[dayOfYear(day) - 1]!;
}

export function maximumOn(year: TemperatureYear, day: DayNumber): number {
  return year.maximumC[dayOfYear(day) - 1]!;
}

/** Half of minimum and maximum, as climate normals define the daily mean. */
export function meanOn(year: TemperatureYear, day: DayNumber): number {
  return (minimumOn(year, day) + maximumOn(year, day)) / 2;
}
