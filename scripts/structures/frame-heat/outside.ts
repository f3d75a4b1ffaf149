/**
 * What it is like outside the frame through the days it is reckoned for: the air hour by hour, how far nights stray from their
 * mean, and how cold the coldest of a month gets.
 */
import { monthLengths } from '../../climate/temperature-curve.ts';
import type { PlaceInYear } from '../../climate/day-length.ts';
import type { DailyStation } from '../../climate/freeze-data.ts';
import { normalQuantile } from '../../climate/normal-distribution.ts';
import type { SoilTemperatureYear, TemperatureYear } from '../../climate/temperature-year.ts';

export interface FrameClimate {
  readonly place: PlaceInYear;
  readonly air: TemperatureYear;
  /** Open ground of the region. */
  readonly soil: SoilTemperatureYear;
  /** How far the low of a day strays from the mean low, one standard deviation for each month; `usualSpreadC` when absent. */
  readonly spreadC?: readonly number[];
}

/** Least and greatest spread that the rule of thumb gives. */
const spreadLimitsC = { least: 1.5, most: 8 } as const;

/**
 * The standard deviation of daily lows about the mean low of the month, from the mean low itself: cold months vary more. From
 * memory of US normals: near 7 C in a Minnesota January (mean low -14 C), 6 C in Missouri (-5 C), 5 to 6 C on the Gulf coast
 * (5 C), 3 C in a northern July (18 C); a mild west coast has 2 C less. Give the spread of a station where there is one.
 */
export function usualSpreadC(meanLowC: number): number {
  return Math.min(spreadLimitsC.most, Math.max(spreadLimitsC.least, 5.6 - 0.13 * meanLowC));
}

/**
 * The same from a record of daily lows: the root mean square departure from the mean of each month over all years. Undefined
 * where a month has fewer than 100 days on record.
 */
export function stationSpreadC({ days }: DailyStation): readonly number[] | undefined {
  const spread = monthLengths.map((_, index) => {
    const lows = days.flatMap(({ month, minimumC }) =>
      month === index + 1 && minimumC !== null ? [minimumC] : [],
    );
    if (lows.length < 100) return NaN;
    const mean = lows.reduce((sum, low) => sum + low, 0) / lows.length;
    return Math.sqrt(lows.reduce((sum, low) => sum + (low - mean) ** 2, 0) / (lows.length - 1));
  });
  return spread.every(Number.isFinite) ? spread : undefined;
}

/**
 * Nights that follow each other are alike, so that a month of thirty is worth about fifteen independent ones (our own
 * judgement: cold spells of two nights).
 */
export const nightsInSpell = 2;

/**
 * How many standard deviations below the mean low the coldest night of a month lies, in a year than which the given share of
 * years (0 to 1) is colder: 1.7 for half of the years, 2.5 for one year in ten, when lows are normally distributed.
 */
export function coldestNightZ(chanceOfColder: number, nights = 30): number {
  return -normalQuantile(1 - (1 - chanceOfColder) ** (nightsInSpell / nights));
}

/**
 * Air temperature at an hour of true solar time: a half wave of cosine from the low at sunrise up to the high at 14 h and one
 * down to the next low (C. T. de Wit, Simulation of Assimilation, Respiration and Transpiration of Crops, 1978, as given by
 * D. C. Reicosky et al., Agricultural and Forest Meteorology 46, 1989; from memory). Sunrise is held between 3 and 9 h, so
 * that polar days have a low as well.
 */
export function airAt(
  solarHour: number,
  day: { readonly lowC: number; readonly highC: number; readonly dayLengthHours: number },
): number {
  const sunrise = Math.min(9, Math.max(3, 12 - day.dayLengthHours / 2));
  const middle = (day.lowC + day.highC) / 2;
  const half = (day.highC - day.lowC) / 2;
  if (solarHour >= sunrise && solarHour <= hottestHour)
    return middle - half * Math.cos((Math.PI * (solarHour - sunrise)) / (hottestHour - sunrise));
  const sinceHigh = (solarHour - hottestHour + 24) % 24;
  return middle + half * Math.cos((Math.PI * sinceHigh) / (sunrise + 24 - hottestHour));
}

const hottestHour = 14;
