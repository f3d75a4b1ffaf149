/**
 * What the temperatures of an average year ask of a planting window: soil warm enough for the seed, soil not too
 * warm for it, and a harvest outside the heat. Each answer is the day and the figures it follows from.
 */
import { meanOn, type SoilTemperatureYear, type TemperatureYear } from '../climate/temperature-year.ts';
import { date, quantity, type DayNumber, type FindingInput } from '../findings/finding.ts';
import { middle } from '../quantities/quantity.ts';
import { toHeld } from '../quantities/units.ts';
import type { Crop } from '../records/schemas/crop.ts';
import { merged, type Planting } from './window-parts.ts';

export interface WindowTemperatures {
  readonly soil?: SoilTemperatureYear;
  readonly air?: TemperatureYear;
}

/**
 * `free`: the temperature asks nothing (it is not known, the crop gives no limit, or the limit is never crossed).
 * `never`: the year does not have such a day.
 */
export type TemperatureDay =
  | { readonly kind: 'free' }
  | {
      readonly kind: 'never';
      readonly inputs: readonly FindingInput[];
      readonly sources: readonly string[];
    }
  | {
      readonly kind: 'day';
      readonly day: DayNumber;
      readonly inputs: readonly FindingInput[];
      readonly sources: readonly string[];
    };

const free: TemperatureDay = { kind: 'free' };
const halfYear = 182;
const year = 365;

/**
 * How warm the soil at seed depth must be for what is sown in place: the published minimum of the seed, or its practical
 * temperature where that is lower. Practical temperatures of single sources run high (72 F for beans), and gardeners
 * sow sooner.
 */
export function soilNeed(
  crop: Crop,
  planting: Planting,
): { readonly limitC: number; readonly sources: readonly string[] } | undefined {
  const record = crop.soilTemperature;
  if (!record || planting.method !== 'direct-sow') return undefined;
  return {
    limitC: Math.min(record.minimum.low, record.practical?.low ?? Infinity),
    sources: record.sources,
  };
}

/**
 * The first day after the coldest of the year on which the soil at seed depth is as warm as the seed needs. `around` is a day within
 * half a year of the spring that is meant.
 */
export function soilWarmEnough(
  crop: Crop,
  planting: Planting,
  { soil }: WindowTemperatures,
  around: DayNumber,
): TemperatureDay {
  const need = soilNeed(crop, planting);
  if (!soil || !need) return free;
  const soilOn = (day: DayNumber): number => soil.at(day, middle(crop.depth.value));
  const coldest = extremeDay(soilOn, around, 'coldest');
  if (soilOn(coldest) >= need.limitC) return free;
  return found(
    firstDay(coldest, (day) => soilOn(day) >= need.limitC),
    { name: 'soil-warm-enough', limit: 'soil-sowing-temperature', limitC: need.limitC, more: soil.inputs },
    merged(need.sources, soil.sources),
  );
}

/** Where gardeners measure the soil for planting: four inches down. */
export const plantingSoilDepthMm = toHeld(4, 'in');

/** The record's own figure `planting-soil`: how warm the soil four inches down should be, however the crop is planted. */
export function plantingSoilOf(
  crop: Crop,
): { readonly limitC: number; readonly sources: readonly string[] } | undefined {
  const figure = crop.figures?.find(({ id }) => id === 'planting-soil');
  return figure && 'temperature' in figure
    ? { limitC: figure.temperature.low, sources: figure.sources }
    : undefined;
}

/**
 * The first day after the coldest of the year on which the soil is as warm as the record's figure `planting-soil`. It is
 * what planting had better wait for, not what it must: a year that never has it asks nothing.
 */
export function plantingSoilWarm(
  crop: Crop,
  { soil }: WindowTemperatures,
  around: DayNumber,
): TemperatureDay {
  const wish = plantingSoilOf(crop);
  if (!soil || !wish) return free;
  const soilOn = (day: DayNumber): number => soil.at(day, plantingSoilDepthMm);
  const coldest = extremeDay(soilOn, around, 'coldest');
  const day = firstDay(coldest, (each) => soilOn(each) >= wish.limitC);
  if (day === undefined || day === coldest) return free;
  return found(
    day,
    { name: 'planting-soil-warm', limit: 'planting-soil', limitC: wish.limitC, more: soil.inputs },
    merged(wish.sources, soil.sources),
  );
}

/**
 * Soil this warm has thawed and begun to dry, so that it can be worked, and what stands in it takes root. Sources: the
 * top few inches above 40 F for the hardiest seed (L. Reich, Associated Press, 2021); 40 F and more for onion sets
 * (Gardener Bible).
 */
export const workableSoilC = (40 - 32) / 1.8;
export const workableSources = ['reich-ap-2021', 'gardenerbible-onion-sets'] as const;

/**
 * The first day after the coldest of the year on which the soil at planting depth can be worked, for whatever is
 * sown, set out or planted.
 */
export function soilWorkable(crop: Crop, { soil }: WindowTemperatures, around: DayNumber): TemperatureDay {
  if (!soil) return free;
  const soilOn = (day: DayNumber): number => soil.at(day, middle(crop.depth.value));
  const coldest = extremeDay(soilOn, around, 'coldest');
  if (soilOn(coldest) >= workableSoilC) return free;
  return found(
    firstDay(coldest, (day) => soilOn(day) >= workableSoilC),
    { name: 'soil-workable', limit: 'soil-workable-from', limitC: workableSoilC, more: soil.inputs },
    merged(workableSources, soil.sources),
  );
}

/** The first day after the hottest of the year on which the soil at seed depth is below the seed's maximum. */
export function soilCoolEnough(
  crop: Crop,
  planting: Planting,
  { soil }: WindowTemperatures,
  around: DayNumber,
): TemperatureDay {
  const record = crop.soilTemperature;
  if (!soil || !record || crop.season !== 'cool' || planting.method !== 'direct-sow') return free;
  const maximumC = record.maximum.high;
  const soilOn = (day: DayNumber): number => soil.at(day, middle(crop.depth.value));
  const hottest = extremeDay(soilOn, extremeDay(soilOn, around, 'coldest') + halfYear, 'hottest');
  if (soilOn(hottest) <= maximumC) return free;
  return found(
    firstDay(hottest, (day) => soilOn(day) <= maximumC),
    { name: 'soil-cool-enough', limit: 'soil-maximum', limitC: maximumC, more: soil.inputs },
    merged(record.sources, soil.sources),
  );
}

/**
 * The first day after the coldest on which the day's mean is above what a cool-season crop bears. `never` where even
 * the coldest day is above it: the crop has no cool season here.
 */
export function heatBegins(crop: Crop, { air }: WindowTemperatures, around: DayNumber): TemperatureDay {
  if (!air || !crop.heatLimit || crop.season !== 'cool') return free;
  const limitC = crop.heatLimit.value.low;
  const means = (day: DayNumber): number => meanOn(air, day);
  const coldest = extremeDay(means, around, 'coldest');
  const crossing = firstDay(coldest, (day) => means(day) > limitC);
  const words = { name: 'heat-begins', limit: 'heat-limit', limitC };
  const sources = merged(crop.heatLimit.sources, air.sources);
  if (crossing === undefined) return free;
  return found(crossing === coldest ? undefined : crossing, words, sources);
}

/** The first day after the hottest on which the day's mean is back at what a cool-season crop bears. */
export function heatEnds(crop: Crop, { air }: WindowTemperatures, around: DayNumber): TemperatureDay {
  if (!air || !crop.heatLimit || crop.season !== 'cool') return free;
  const limitC = crop.heatLimit.value.low;
  const means = (day: DayNumber): number => meanOn(air, day);
  const hottest = extremeDay(means, extremeDay(means, around, 'coldest') + halfYear, 'hottest');
  if (means(hottest) <= limitC) return free;
  return found(
    firstDay(hottest, (day) => means(day) <= limitC),
    { name: 'heat-ends', limit: 'heat-limit', limitC },
    merged(crop.heatLimit.sources, air.sources),
  );
}

/** The coldest or hottest day within half a year of a day; the first of equals. */
export function extremeDay(
  valueOn: (day: DayNumber) => number,
  around: DayNumber,
  which: 'coldest' | 'hottest',
): DayNumber {
  const sign = which === 'coldest' ? -1 : 1;
  let best = Math.round(around) - halfYear;
  for (let day = best + 1; day < Math.round(around) - halfYear + year; day += 1) {
    if (sign * valueOn(day) > sign * valueOn(best)) best = day;
  }
  return best;
}

/** The first day of the year that begins with `from` on which something holds. */
export function firstDay(from: DayNumber, holds: (day: DayNumber) => boolean): DayNumber | undefined {
  for (let day = from; day < from + year; day += 1) if (holds(day)) return day;
  return undefined;
}

function found(
  day: DayNumber | undefined,
  words: { name: string; limit: string; limitC: number; more?: readonly FindingInput[] | undefined },
  sources: readonly string[],
): TemperatureDay {
  const limits: FindingInput[] = [
    { name: words.limit, value: quantity('temperature', words.limitC) },
    ...(words.more ?? []),
  ];
  return day === undefined
    ? { kind: 'never', inputs: limits, sources }
    : { kind: 'day', day, inputs: [{ name: words.name, value: date(day) }, ...limits], sources };
}
