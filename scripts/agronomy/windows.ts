/**
 * Planting windows of one crop in one region: when to start indoors, sow, set out and harvest, in spring and
 * for fall, from the crop's hardiness group and the region's freeze dates. Every window is a finding; "no
 * window here" is a finding with its reason.
 */
import {
  dateRange,
  inputOf,
  none,
  quantity,
  choice,
  type DateFinding,
  type DateRangeFinding,
  type DayNumber,
  type Finding,
  type FindingInput,
} from '../findings/finding.ts';
import type { Crop, PlantingMethod } from '../records/schemas/crop.ts';
import {
  fallLimit,
  fallWindowDays,
  shortDayAllowanceDays,
  springOffsetDays,
  springOffsetSources,
} from './hardiness.ts';

export type WindowSeason = 'spring' | 'fall';

export interface PlantingWindows {
  readonly method: PlantingMethod;
  readonly season: WindowSeason;
  /** Only for transplants. */
  readonly startIndoors?: DateRangeFinding;
  /** Sowing, setting out transplants, or planting sets and seed pieces. */
  readonly plant: DateRangeFinding;
  readonly harvest: DateRangeFinding;
}

export interface WindowClimate {
  /** The average (50 %) last 32 F freeze of spring. */
  readonly lastFreeze: DateFinding;
  /** The average first fall freeze at a threshold in degrees Celsius, or a finding that there is none. */
  readonly firstFreeze: (thresholdC: number) => DateFinding;
}

/** Every window of a crop, in the order of the record's plantings, spring before fall. */
export function plantingWindows(crop: Crop, climate: WindowClimate): readonly PlantingWindows[] {
  return crop.plantings.flatMap((planting, index) => {
    const spring = springWindows(crop, planting, climate);
    const main = index === 0 && planting.fall;
    return main ? [spring, fallWindows(crop, planting, climate, spring)] : [spring];
  });
}

type Planting = Crop['plantings'][number];
type Dated = Extract<DateRangeFinding['value'], { kind: 'date-range' }>;

function springWindows(crop: Crop, planting: Planting, climate: WindowClimate): PlantingWindows {
  return {
    method: planting.method,
    season: 'spring',
    ...completed(crop, planting, climate, 'spring', springPlanting(crop, planting, climate)),
  };
}

function springPlanting(crop: Crop, planting: Planting, climate: WindowClimate): DateRangeFinding {
  const { lastFreeze } = climate;
  const own = planting.spring;
  const offsets = own
    ? { opens: own.opens.low, closes: own.closes.high }
    : springOffsetDays[crop.hardiness.group];
  const id = idOf(crop, planting.method, 'spring');
  const inputs: FindingInput[] = [
    inputOf('last-freeze', lastFreeze),
    { name: 'hardiness-group', value: choice(crop.hardiness.group) },
    { name: 'offset-from-last-freeze', value: quantity('duration', offsets.opens, offsets.closes) },
  ];
  const sources = merged(own ? own.sources : springOffsetSources, crop.hardiness.sources, lastFreeze.sources);
  const method = own ? 'window.spring-crop' : 'window.spring-group';
  if (lastFreeze.value.kind === 'none') return { id, value: none('no-last-freeze'), method, inputs, sources };
  const { day } = lastFreeze.value;
  const safe = lastSafeDay(crop, planting, climate, day);
  const closes = Math.min(day + offsets.closes, safe);
  const opens = day + offsets.opens;
  return {
    id,
    value: closes < opens ? none('season-too-short') : dateRange(opens, closes),
    method,
    inputs,
    sources,
  };
}

/** The last day on which a planting still matures before the freeze that ends it, with the allowance for fall. */
function lastSafeDay(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  lastFreezeDay: DayNumber,
): DayNumber {
  const limit = fallLimit[crop.hardiness.group];
  const ends = climate.firstFreeze(limit.thresholdC);
  const end = ends.value.kind === 'date' ? ends.value.day : midWinter(lastFreezeDay);
  return end - daysAfterPlanting(crop, planting).high - shortDayAllowanceDays - limit.readyDaysBefore;
}

/**
 * Counting back from the freeze that ends the crop: days to maturity (the longest published), the short-day
 * allowance, and for tender crops two weeks to pick. Never before the spring window has closed.
 */
function fallWindows(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  spring: PlantingWindows,
): PlantingWindows {
  const limit = fallLimit[crop.hardiness.group];
  const ends = climate.firstFreeze(limit.thresholdC);
  const needed = daysAfterPlanting(crop, planting).high + shortDayAllowanceDays + limit.readyDaysBefore;
  const inputs: FindingInput[] = [
    inputOf('ending-freeze', ends),
    { name: 'days-to-maturity', value: quantity('duration', daysAfterPlanting(crop, planting).high) },
    { name: 'short-day-allowance', value: quantity('duration', shortDayAllowanceDays) },
    ...(limit.readyDaysBefore > 0
      ? [{ name: 'ready-before-freeze', value: quantity('duration', limit.readyDaysBefore) }]
      : []),
  ];
  const plant: DateRangeFinding = {
    id: idOf(crop, planting.method, 'fall'),
    value: fallRange(ends, needed, { spring: spring.plant, lastFreeze: climate.lastFreeze }),
    method: ends.value.kind === 'none' ? 'window.fall-year-end' : 'window.fall-count-back',
    inputs,
    sources: merged(crop.maturity.sources, ['common-practice-gardening'], ends.sources),
  };
  return { method: planting.method, season: 'fall', ...completed(crop, planting, climate, 'fall', plant) };
}

/**
 * December 31 after a northern spring, June 30 after a southern one: a crop that no freeze ends should be ready by
 * mid-winter. A southern last freeze falls in the second half of the calendar year.
 */
function midWinter(lastFreezeDay: DayNumber): DayNumber {
  return lastFreezeDay > 182 ? 365 + 181 : 365;
}

function fallRange(
  ends: DateFinding,
  needed: number,
  { spring, lastFreeze }: { spring: DateRangeFinding; lastFreeze: DateFinding },
): DateRangeFinding['value'] {
  if (spring.value.kind === 'none' || lastFreeze.value.kind === 'none') return none('no-last-freeze');
  const end = ends.value.kind === 'none' ? midWinter(lastFreeze.value.day) : ends.value.day;
  const closes = end - needed;
  const opens = Math.max(closes - fallWindowDays, spring.value.to + 1);
  return closes - opens < 7 ? none('season-too-short-for-fall') : dateRange(opens, closes);
}

/** Adds the indoor start and the harvest that follow from a planting window. */
function completed(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  season: WindowSeason,
  plant: DateRangeFinding,
): { startIndoors?: DateRangeFinding; plant: DateRangeFinding; harvest: DateRangeFinding } {
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
        : dateRange(plant.value.from - age.value.high, plant.value.to - age.value.low),
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
  const ending = ends.value.kind === 'date' ? ends.value.day : undefined;
  return {
    id: `${crop.id}.harvest${planting === crop.plantings[0] ? '' : `-${planting.method}`}.${season}`,
    value: harvestRange(plant.value, {
      first: days.low + allowance,
      last: days.high + allowance + crop.harvestLasts.value.high,
      ends: ending,
    }),
    method: ending === undefined ? 'window.harvest' : 'window.harvest-until-freeze',
    inputs: [
      inputOf('planting', plant),
      { name: 'days-to-maturity', value: quantity('duration', days.low, days.high) },
      {
        name: 'harvest-lasts',
        value: quantity('duration', crop.harvestLasts.value.low, crop.harvestLasts.value.high),
      },
      ...(allowance > 0 ? [{ name: 'short-day-allowance', value: quantity('duration', allowance) }] : []),
      ...(ending === undefined ? [] : [inputOf('ending-freeze', ends)]),
    ],
    sources: merged(crop.maturity.sources, crop.harvestLasts.sources),
  };
}

function harvestRange(
  plant: DateRangeFinding['value'],
  rule: { first: number; last: number; ends: DayNumber | undefined },
): DateRangeFinding['value'] {
  if (plant.kind === 'none') return plant;
  const from = plant.from + rule.first;
  const to = Math.min(plant.to + rule.last, rule.ends ?? Infinity);
  return to <= from ? none('season-too-short') : dateRange(from, to);
}

/**
 * Days from planting as this method does it to the first harvest. A crop whose published days count from
 * setting out takes the age of its transplants longer when it is sown in place; one whose days count from
 * sowing takes that much less when it is set out.
 */
export function daysAfterPlanting(crop: Crop, planting: Planting): { low: number; high: number } {
  const { low, high } = crop.maturity.days;
  const setOut = planting.method !== 'direct-sow';
  const age = crop.plantings.find((other) => other.age)?.age?.value;
  if (!age || setOut === (crop.maturity.from === 'planting-out')) return { low, high };
  return setOut
    ? { low: Math.max(1, low - age.high), high: Math.max(1, high - age.low) }
    : { low: low + age.low, high: high + age.high };
}

const methodWord: Readonly<Record<PlantingMethod, string>> = {
  'direct-sow': 'direct-sow',
  transplant: 'set-out',
  sets: 'plant-sets',
  slips: 'plant-slips',
  'seed-pieces': 'plant-pieces',
};

function idOf(crop: Crop, method: PlantingMethod, season: WindowSeason): string {
  return `${crop.id}.${methodWord[method]}.${season}`;
}

/** Source ids in order, each once. */
export function merged(...lists: readonly (readonly string[])[]): readonly string[] {
  return [...new Set(lists.flat())];
}

export function windowDays(finding: Finding): Dated | undefined {
  return finding.value.kind === 'date-range' ? finding.value : undefined;
}
