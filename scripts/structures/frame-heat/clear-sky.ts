/**
 * Where the sun stands over a place through a day, and how strong it is under a clear and under a covered sky.
 *
 * Clear sky: the A, B, C model of the ASHRAE Handbook of Fundamentals with the coefficients of 1985 to 2005, revised by
 * H. M. Machler and M. Iqbal (A Modification of the ASHRAE Clear Sky Irradiation Model, ASHRAE Transactions 91, 1985): direct
 * normal A / exp(B / sin altitude), diffuse on the level C times that. It stands for average clear air at low elevation; a
 * mountain or desert sky gives up to 15 % more, a hazy one up to 15 % less (the clearness numbers of the same handbook run
 * from 0.85 to 1.15).
 *
 * Covered sky: 25 % of the clear sky's sun on the level, all of it diffuse, the ratio of F. Kasten and G. Czeplak (Solar
 * Energy 24, 1980) for eight eighths of cloud, from memory. Thin cloud gives twice as much, a rain cloud half.
 */
import { monthDay, daysInYear } from '../../climate/calendar.ts';
import type { PlaceInYear } from '../../climate/day-length.ts';
import { noonDeclinationDeg } from '../../climate/sun.ts';
import type { DayNumber } from '../../findings/finding.ts';

/**
 * The direction to the sun as a vector of length 1: towards the equator (south in the northern hemisphere; the equator itself
 * counts as northern), west, and up. `up` is the sine of the altitude; negative when the sun is down.
 */
export interface SunDirection {
  readonly equatorward: number;
  readonly west: number;
  readonly up: number;
}

export interface Irradiance {
  /** Of the beam on a surface that faces it, in watts per square metre. */
  readonly directNormal: number;
  /** From the sky on level ground, in watts per square metre. */
  readonly diffuseLevel: number;
}

export type Sky = 'clear' | 'covered';

/**
 * The sun's direction at an hour of true solar time, 0 to 24, when 12 is the moment at which the sun is highest. Refraction is
 * left out. A latitude beyond 90 degrees throws a RangeError.
 */
export function sunDirection(
  when: PlaceInYear & { readonly day: DayNumber; readonly solarHour: number },
): SunDirection {
  if (!(Math.abs(when.latitudeDeg) <= 90)) throw new RangeError(`no such latitude: ${when.latitudeDeg}`);
  const latitude = when.latitudeDeg * radians;
  const declination = noonDeclinationDeg(when) * radians;
  const hourAngle = (when.solarHour - 12) * 15 * radians;
  const south =
    Math.sin(latitude) * Math.cos(declination) * Math.cos(hourAngle) -
    Math.cos(latitude) * Math.sin(declination);
  return {
    equatorward: when.latitudeDeg >= 0 ? south : -south,
    west: Math.cos(declination) * Math.sin(hourAngle),
    up:
      Math.sin(latitude) * Math.sin(declination) +
      Math.cos(latitude) * Math.cos(declination) * Math.cos(hourAngle),
  };
}

/** Altitude over the horizon and azimuth from the equator side, west positive, in degrees. */
export function sunAngles({ equatorward, west, up }: SunDirection): {
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
} {
  return {
    altitudeDeg: Math.asin(Math.max(-1, Math.min(1, up))) / radians,
    azimuthDeg: Math.atan2(west, equatorward) / radians,
  };
}

export interface SkyOfDay {
  readonly sky: Sky;
  readonly day: DayNumber;
  readonly latitudeDeg: number;
}

/** The sun's strength by its height; nothing when it is down. */
export function irradiance({ up }: SunDirection, { sky, day, latitudeDeg }: SkyOfDay): Irradiance {
  if (up <= 0) return { directNormal: 0, diffuseLevel: 0 };
  const { apparent, extinction, diffuse } = coefficients(day, latitudeDeg);
  const directNormal = apparent * Math.exp(-extinction / up);
  const diffuseLevel = diffuse * directNormal;
  return sky === 'clear'
    ? { directNormal, diffuseLevel }
    : { directNormal: 0, diffuseLevel: coveredShare * (directNormal * up + diffuseLevel) };
}

/** Share of the clear sky's sun on the level that reaches the ground under a covered sky. */
export const coveredShare = 0.25;

/** By month, for the 21st: A in watts per square metre, B and C without unit. */
const monthly = {
  apparent: [1202, 1187, 1164, 1130, 1106, 1092, 1093, 1107, 1136, 1166, 1190, 1204],
  extinction: [0.141, 0.142, 0.149, 0.164, 0.177, 0.185, 0.186, 0.182, 0.165, 0.152, 0.144, 0.141],
  diffuse: [0.103, 0.104, 0.109, 0.12, 0.13, 0.137, 0.138, 0.134, 0.121, 0.111, 0.106, 0.103],
} as const;

/**
 * The coefficients between the 21sts of two months. They were made for the north, where the air is moist in July. South of the
 * equator those of half a year later stand for the same season (our own judgement), and A is set to the sun's distance
 * of the true date, which makes the sun 3.4 % stronger in January than the mean.
 */
function coefficients(
  day: DayNumber,
  latitudeDeg: number,
): { readonly apparent: number; readonly extinction: number; readonly diffuse: number } {
  const seasonDay = latitudeDeg >= 0 ? day : day + daysInYear / 2;
  const at = (values: readonly number[]): number => betweenMonths(values, seasonDay);
  return {
    apparent: (at(monthly.apparent) * nearness(day)) / nearness(seasonDay),
    extinction: at(monthly.extinction),
    diffuse: at(monthly.diffuse),
  };
}

/** How much stronger the sun is than at its mean distance (J. A. Duffie and W. A. Beckman, Solar Engineering, equation 1.4.1). */
function nearness(day: DayNumber): number {
  return 1 + 0.033 * Math.cos((2 * Math.PI * day) / daysInYear);
}

function betweenMonths(values: readonly number[], day: DayNumber): number {
  const { month, day: dayOfMonth } = monthDay(day);
  const from = dayOfMonth >= 21 ? month - 1 : (month + 10) % 12;
  const share = (dayOfMonth >= 21 ? dayOfMonth - 21 : dayOfMonth + 9.4) / 30.4;
  return values[from]! + Math.min(1, share) * (values[(from + 1) % 12]! - values[from]!);
}

const radians = Math.PI / 180;
