/** The push of the wind, and the gust that a region's record says to build for. */
import { inputOf, none, quantity, type Finding } from '../../findings/finding.ts';
import { fromHeld, toHeld } from '../../quantities/units.ts';
import type { Region } from '../../records/schemas/region.ts';

/**
 * Pressure of a wind that is brought to rest, in pascals, for a speed in metres per second: 0.00256 times the square of
 * the speed in mph gives pounds per square foot, for standard air at sea level (at 5000 ft about a seventh less). The
 * speed is a 3-second gust or whatever the caller means by it; of no speed but the gust are the limits of this folder
 * true.
 *
 * Source: ASCE 7, velocity pressure (source record `wind-pressure-formula`), without its factors for height, exposure
 * and direction, which are 1 or less near the ground.
 */
export function velocityPressurePa(speedMps: number): number {
  return toHeld(0.00256 * fromHeld(speedMps, 'mph') ** 2, 'psf');
}

/** The speed in metres per second that has a velocity pressure in pascals; nothing below 0 has one. */
export function speedOfPressureMps(pressurePa: number): number {
  return toHeld(Math.sqrt(Math.max(0, fromHeld(pressurePa, 'psf')) / 0.00256), 'mph');
}

export const pressureSource = 'wind-pressure-formula';

export interface RegionWind {
  /** `wind.gust`: the 3-second gust to build for, or `none('wind-not-given')`. */
  readonly gust: Finding;
  /** `wind.pressure`: its velocity pressure. */
  readonly pressure: Finding;
}

/** The gust of a region's record and its pressure as findings. */
export function regionWind(wind: Region['wind']): RegionWind {
  const gust: Finding = {
    id: 'wind.gust',
    value: wind ? quantity('speed', wind.gust.low) : none('wind-not-given'),
    method: 'wind.gust',
    inputs: [],
    sources: wind ? [wind.source] : [],
  };
  const pressure: Finding = {
    id: 'wind.pressure',
    value: wind ? quantity('pressure', velocityPressurePa(wind.gust.low)) : none('wind-not-given'),
    method: 'wind.pressure',
    inputs: [inputOf('gust', gust)],
    sources: [pressureSource],
  };
  return { gust, pressure };
}
