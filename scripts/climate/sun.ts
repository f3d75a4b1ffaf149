/**
 * Where the sun stands, by the low-precision equations of J. Meeus, Astronomical Algorithms, chapters 25 and
 * 28, in the form NOAA uses in its solar calculations. Good to about 0.01 degree between 1800 and 2100.
 */

import type { DayNumber } from '../findings/finding.ts';
import { daysInYear, monthDay } from './calendar.ts';

export interface SunPosition {
  /** Degrees north of the celestial equator. */
  readonly declinationDeg: number;
  /** Apparent minus mean solar time: positive when a sundial is ahead of the clock. */
  readonly equationOfTimeMinutes: number;
}

/** The sun at a Julian day (with fraction; 2451545.0 is noon of 2000 January 1). */
export function sunPosition(julianDay: number): SunPosition {
  const t = (julianDay - 2451545) / 36525;
  const meanLongitude = 280.46646 + 36000.76983 * t + 0.0003032 * t ** 2;
  const meanAnomaly = 357.52911 + 35999.05029 * t - 0.0001537 * t ** 2;
  const eccentricity = 0.016708634 - 0.000042037 * t - 0.0000001267 * t ** 2;
  const centre =
    (1.914602 - 0.004817 * t - 0.000014 * t ** 2) * sin(meanAnomaly) +
    (0.019993 - 0.000101 * t) * sin(2 * meanAnomaly) +
    0.000289 * sin(3 * meanAnomaly);
  const node = 125.04 - 1934.136 * t;
  const apparentLongitude = meanLongitude + centre - 0.00569 - 0.00478 * sin(node);
  const meanObliquity = 23 + (26 + (21.448 - 46.815 * t - 0.00059 * t ** 2 + 0.001813 * t ** 3) / 60) / 60;
  const obliquity = meanObliquity + 0.00256 * cos(node);
  const y = Math.tan((obliquity / 2) * radians) ** 2;
  const equationOfTime =
    y * sin(2 * meanLongitude) -
    2 * eccentricity * sin(meanAnomaly) +
    4 * eccentricity * y * sin(meanAnomaly) * cos(2 * meanLongitude) -
    0.5 * y ** 2 * sin(4 * meanLongitude) -
    1.25 * eccentricity ** 2 * sin(2 * meanAnomaly);
  return {
    declinationDeg: Math.asin(sin(obliquity) * sin(apparentLongitude)) / radians,
    equationOfTimeMinutes: (4 * equationOfTime) / radians,
  };
}

/** A day of a year, and where on earth its noon is asked for. */
export interface NoonOfDay {
  readonly year: number;
  /** Days outside 1 to 365 belong to the years around. */
  readonly day: DayNumber;
  /** East positive; 90 degrees west, in the middle of North America, when absent. */
  readonly longitudeDeg?: number | undefined;
}

/** The sun's declination at mean noon of a day, in degrees north of the celestial equator. */
export function noonDeclinationDeg({ year, day, longitudeDeg = -90 }: NoonOfDay): number {
  const whole = Math.round(day);
  const yearsOn = Math.floor((whole - 1) / daysInYear);
  const hours = 12 - longitudeDeg / 15;
  return sunPosition(julianDay({ year: year + yearsOn, ...monthDay(whole), hours })).declinationDeg;
}

/** The Julian day of an instant of the Gregorian calendar in universal time (Meeus, chapter 7). */
export function julianDay(instant: { year: number; month: number; day: number; hours: number }): number {
  const early = instant.month <= 2;
  const year = early ? instant.year - 1 : instant.year;
  const month = early ? instant.month + 12 : instant.month;
  const century = Math.floor(year / 100);
  const leapDays = 2 - century + Math.floor(century / 4);
  return (
    Math.floor(365.25 * (year + 4716)) +
    Math.floor(30.6001 * (month + 1)) +
    instant.day +
    leapDays -
    1524.5 +
    instant.hours / 24
  );
}

const radians = Math.PI / 180;
const sin = (degrees: number): number => Math.sin(degrees * radians);
const cos = (degrees: number): number => Math.cos(degrees * radians);
