/**
 * The heat index of the U.S. National Weather Service: how warm air of a temperature and humidity feels in the shade to
 * somebody who walks in a light wind. Full sun adds up to 15 °F, which is not counted here.
 */
import { fromHeld, toHeld } from '../quantities/units.ts';

/**
 * The heat index in degrees Celsius, by the whole procedure: a simple formula where it comes to less than 80 °F,
 * otherwise the regression with its adjustments for very dry and very damp air. Good to about 1.3 °F from 80 to 112 °F;
 * hotter than that it runs on beyond the tables it was fitted to, and says no more than that the heat is extreme.
 *
 * Source: National Weather Service, Weather Prediction Center, Heat Index Equation, after L. P. Rothfusz, NWS Southern
 * Region Technical Attachment SR 90-23, 1990 (source record `nws-heat-index`).
 *
 * @param humidityPercent relative humidity, 0 to 100; outside it a RangeError.
 */
export function heatIndexC(temperatureC: number, humidityPercent: number): number {
  if (!(humidityPercent >= 0 && humidityPercent <= 100)) {
    throw new RangeError(`no such relative humidity: ${humidityPercent}`);
  }
  return toHeld(heatIndexF(fromHeld(temperatureC, 'F'), humidityPercent), 'F');
}

function heatIndexF(t: number, r: number): number {
  const simple = 0.5 * (t + 61 + (t - 68) * 1.2 + r * 0.094);
  const blended = (simple + t) / 2;
  if (blended < 80) return blended;
  return rothfuszF(t, r) + adjustmentF(t, r);
}

function rothfuszF(t: number, r: number): number {
  return (
    -42.379 +
    2.04901523 * t +
    10.14333127 * r -
    0.22475541 * t * r -
    0.00683783 * t * t -
    0.05481717 * r * r +
    0.00122874 * t * t * r +
    0.00085282 * t * r * r -
    0.00000199 * t * t * r * r
  );
}

function adjustmentF(t: number, r: number): number {
  if (r < 13 && t >= 80 && t <= 112) return -((13 - r) / 4) * Math.sqrt((17 - Math.abs(t - 95)) / 17);
  if (r > 85 && t >= 80 && t <= 87) return ((r - 85) / 10) * ((87 - t) / 5);
  return 0;
}

export const heatBands = ['none', 'caution', 'extreme-caution', 'danger', 'extreme-danger'] as const;
export type HeatBand = (typeof heatBands)[number];

/** The heat index, in whole degrees Fahrenheit, from which on each band holds. Source record `nws-heat-bands`. */
const bandsFromF: Readonly<Record<HeatBand, number>> = {
  none: -Infinity,
  caution: 80,
  'extreme-caution': 90,
  danger: 103,
  'extreme-danger': 125,
};

/** The band of a heat index, rounded to the whole degree Fahrenheit as the published table is. */
export function heatBand(indexC: number): HeatBand {
  const whole = Math.round(fromHeld(indexC, 'F'));
  return heatBands.findLast((band) => whole >= bandsFromF[band]) ?? 'none';
}
