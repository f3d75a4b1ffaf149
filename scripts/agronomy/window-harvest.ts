/** What follows from a planting window: when to start indoors before it, and the harvest after it. */
import { daysInYear, isWholeYear } from '../climate/calendar.ts';
import { meanOn } from '../climate/temperature-year.ts';
import {
  date,
  dateRange,
  inputOf,
  none,
  quantity,
  type DateRangeFinding,
  type DayNumber,
  type FindingInput,
} from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import { fallLimit, shortDayAllowanceDays } from './hardiness.ts';
import type { WindowClimate } from './window-climate.ts';
import { daysAfterPlanting, merged, type Planting, type WindowSeason } from './window-parts.ts';
import { firstDay, heatBegins, type TemperatureDay } from './window-temperatures.ts';

/** A planting window of spring, fall or a year without freezes with the indoor start and the harvest that follow from it. */
export interface Completed {
  readonly startIndoors?: DateRangeFinding;
  readonly plant: DateRangeFinding;
  readonly harvest: DateRangeFinding;
}

export function completed(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  season: WindowSeason,
  plant: DateRangeFinding,
): Completed {
  const starts =
    planting.method === 'transplant' && planting.age
      ? indoorStart(crop, planting.age, season, plant)
      : undefined;
  return {
    ...(starts ? { startIndoors: starts } : {}),
    plant,
    harvest: harvest(crop, planting, climate, season, plant),
  };
}

function indoorStart(
  crop: Crop,
  age: NonNullable<Planting['age']>,
  season: WindowSeason,
  plant: DateRangeFinding,
): DateRangeFinding {
  return {
    id: `${crop.id}.start-indoors.${season}`,
    value:
      plant.value.kind === 'none'
        ? plant.value
        : yearAtMost(plant.value.from - age.value.high, plant.value.to - age.value.low),
    method: 'window.indoors',
    inputs: [
      inputOf('set-out', plant),
      { name: 'transplant-age', value: quantity('duration', age.value.low, age.value.high) },
    ],
    sources: merged(age.sources, plant.sources),
  };
}

function harvest(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  season: WindowSeason,
  plant: DateRangeFinding,
): DateRangeFinding {
  const days = daysAfterPlanting(crop, planting);
  const allowance = season === 'fall' ? shortDayAllowanceDays : 0;
  const ends = climate.firstFreeze(fallLimit[crop.hardiness.group].thresholdC);
  const ending = season !== 'year' && ends.value.kind === 'date' ? ends.value.day : undefined;
  const inputs: FindingInput[] = [
    inputOf('planting', plant),
    { name: 'days-to-maturity', value: quantity('duration', days.low, days.high) },
    {
      name: 'harvest-lasts',
      value: quantity('duration', crop.harvestLasts.value.low, crop.harvestLasts.value.high),
    },
    ...(allowance > 0 ? [{ name: 'short-day-allowance', value: quantity('duration', allowance) }] : []),
    ...(ending === undefined ? [] : [inputOf('ending-freeze', ends)]),
  ];
  const found: DateRangeFinding = {
    id: `${crop.id}.harvest${planting === crop.plantings[0] ? '' : `-${planting.method}`}.${season}`,
    value: harvestRange(plant.value, {
      first: days.low + allowance,
      last: days.high + allowance + crop.harvestLasts.value.high,
      ends: ending,
    }),
    method: ending === undefined ? 'window.harvest' : 'window.harvest-until-freeze',
    inputs,
    sources: merged(crop.maturity.sources, crop.harvestLasts.sources),
  };
  if (season === 'year') return untilHeat(crop, found, firstHeatIn(crop, climate, found));
  const { lastFreeze } = climate;
  if (season !== 'spring' || lastFreeze.value.kind === 'none') return found;
  return untilHeat(crop, found, heatBegins(crop, climate, lastFreeze.value.day));
}

/**
 * The same harvest, ended by the first day too warm for a crop that heat makes bitter, bolt or shed its buds. A harvest
 * that does not begin before it, as that of a crop which grows through the summer, is left as it is.
 */
export function untilHeat(crop: Crop, harvest: DateRangeFinding, heat: TemperatureDay): DateRangeFinding {
  const { value } = harvest;
  if (!crop.heatLimit?.endsHarvest || heat.kind !== 'day' || value.kind === 'none') return harvest;
  if (heat.day <= value.from || heat.day >= value.to) return harvest;
  return {
    ...harvest,
    value: dateRange(value.from, heat.day),
    method: 'window.harvest-until-heat',
    inputs: [...harvest.inputs, ...heat.inputs],
    sources: merged(harvest.sources, heat.sources),
  };
}

function harvestRange(
  plant: DateRangeFinding['value'],
  rule: { first: number; last: number; ends: DayNumber | undefined },
): DateRangeFinding['value'] {
  if (plant.kind === 'none') return plant;
  const from = plant.from + rule.first;
  const to = Math.min(plant.to + rule.last, rule.ends ?? Infinity);
  return to <= from ? none('season-too-short') : yearAtMost(from, to);
}

/** Runs that leave out no day of the year are days 1 to 365. */
function yearAtMost(from: DayNumber, to: DayNumber): DateRangeFinding['value'] {
  return isWholeYear({ from, to }) ? dateRange(1, daysInYear) : dateRange(from, to);
}

/** The day of a harvest on which it grows warmer than the crop bears, once it has been cool enough. */
function firstHeatIn(crop: Crop, { air }: WindowClimate, { value }: DateRangeFinding): TemperatureDay {
  if (!air || !crop.heatLimit || crop.season !== 'cool' || value.kind === 'none') return { kind: 'free' };
  const limitC = crop.heatLimit.value.low;
  const cool = firstDay(Math.round(value.from), (each) => meanOn(air, each) <= limitC);
  const day = cool === undefined ? undefined : firstDay(cool, (each) => meanOn(air, each) > limitC);
  if (day === undefined || day > value.to) return { kind: 'free' };
  return {
    kind: 'day',
    day,
    inputs: [
      { name: 'heat-begins', value: date(day) },
      { name: 'heat-limit', value: quantity('temperature', limitC) },
    ],
    sources: merged(crop.heatLimit.sources, air.sources),
  };
}
