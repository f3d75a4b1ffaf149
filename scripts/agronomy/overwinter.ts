/** Planting in fall for the next spring or summer, where the crop stands the winter. */
import { meanOn, minimumOn } from '../climate/temperature-year.ts';
import {
  dateRange,
  inputOf,
  none,
  quantity,
  type DateRangeFinding,
  type DayNumber,
  type FindingInput,
} from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import type { WindowClimate } from './window-climate.ts';
import type { PlantingWindows } from './windows.ts';
import { bulbDays, type OnionGrowth } from './onion-growth.ts';
import { untilHeat } from './window-harvest.ts';
import {
  daysAfterPlanting,
  edgeInputs,
  latest,
  merged,
  windowId,
  type Bound,
  type EdgeRule,
  type Planting,
} from './window-parts.ts';
import { extremeDay, firstDay, heatBegins, soilCoolEnough } from './window-temperatures.ts';

/** The thresholds that freeze tables give, in degrees Fahrenheit. */
const thresholdsF = [36, 32, 28, 24, 20, 16] as const;

/**
 * Hardy crops grow from a daytime temperature of 40 F. Source: Colorado State University Extension, CMG GardenNotes
 * 720; that the day's mean is taken for it is common practice.
 */
export const growingFromC = (40 - 32) / 1.8;

/** A crop that takes this long by its published days has its winter counted in them. */
const wintersInMaturityDays = 180;

/**
 * The overwinter window of a crop that has one in its record, by the method that the record names or else its first. It
 * needs a winter whose coldest threshold that half of the years reach is not below what the crop stands; a table that
 * does not give the colder thresholds cannot tell, and neither can this. What a crop stands below the coldest threshold
 * of all is held against the coldest average night instead, where temperatures are known.
 */
export function overwinterWindows(crop: Crop, climate: WindowClimate): PlantingWindows | undefined {
  const record = crop.overwinter;
  const planting = crop.plantings.find(({ method }) => method === record?.method) ?? crop.plantings[0];
  if (!record || !planting) return undefined;
  const average = { ...climate, firstFreeze: climate.averageFirstFreeze ?? climate.firstFreeze };
  const { value, opens, closes, inputs, sources } = plantingRange(crop, record, planting, average);
  const plant: DateRangeFinding = {
    id: windowId(crop, planting.method, 'overwinter'),
    value,
    method: opens === 'soil-heat' ? 'window.overwinter-temperature' : 'window.overwinter',
    inputs,
    sources,
  };
  return {
    method: planting.method,
    season: 'overwinter',
    plant,
    harvest: overwinterHarvest(crop, planting, climate, plant),
    edges: { opens, closes },
  };
}

interface Range {
  readonly value: DateRangeFinding['value'];
  readonly opens: EdgeRule;
  readonly closes: EdgeRule;
  readonly inputs: readonly FindingInput[];
  readonly sources: readonly string[];
}

function plantingRange(
  crop: Crop,
  record: NonNullable<Crop['overwinter']>,
  planting: Planting,
  climate: WindowClimate,
): Range {
  const freeze = climate.firstFreeze(0);
  const weeks = record.whereMild && isMild(climate) ? record.whereMild : record;
  const inputs: FindingInput[] = [
    inputOf('first-freeze', freeze),
    { name: 'stands-cold', value: quantity('temperature', record.stands.low) },
    {
      name: 'before-first-freeze',
      value: quantity('duration', weeks.closesBeforeFreeze.low, weeks.opensBeforeFreeze.low),
    },
  ];
  const sources = merged(weeks.sources, record.sources, freeze.sources);
  const refused = (reason: string, more: readonly FindingInput[] = []): Range => ({
    value: none(reason),
    opens: 'no-window',
    closes: 'no-window',
    inputs: [...inputs, ...more],
    sources,
  });
  const winter = winterFits(record.stands.low, climate);
  if (winter.kind === 'too-cold') return refused('winter-too-cold', [winter.reaches]);
  if (winter.kind === 'not-known') return refused('winter-cold-not-known');
  if (freeze.value.kind === 'none') return refused('no-first-freeze');
  const { day } = freeze.value;
  const cool = soilCoolEnough(crop, planting, climate, day - 365 / 2);
  if (cool.kind === 'never') return refused('soil-too-warm', cool.inputs);
  const bounds: [Bound, ...Bound[]] = [
    { day: day - weeks.opensBeforeFreeze.low, rule: 'first-freeze', inputs: [], sources: [] },
    ...(cool.kind === 'day' ? [{ ...cool, rule: 'soil-heat' as const }] : []),
  ];
  const opens = latest(bounds);
  const closes: Bound = {
    day: day - weeks.closesBeforeFreeze.low,
    rule: 'first-freeze',
    inputs: [],
    sources: [],
  };
  return {
    value: closes.day < opens.day ? none('soil-too-warm') : dateRange(opens.day, closes.day),
    opens: opens.rule,
    closes: closes.rule,
    inputs: [...inputs, ...opens.inputs, ...edgeInputs(opens, closes)],
    sources: merged(sources, opens.sources),
  };
}

type Winter =
  | { readonly kind: 'fits' }
  | { readonly kind: 'not-known' }
  | { readonly kind: 'too-cold'; readonly reaches: FindingInput };

/** A winter in which fewer than half of the years have a freeze of 24 F: a hard freeze, as the hardiness groups count it. */
function isMild({ firstFreeze }: WindowClimate): boolean {
  const hard = firstFreeze((24 - 32) / 1.8).value;
  return hard.kind === 'none' && !notTold.some((reason) => hard.reason === reason);
}

/** Whether half of the winters stay at or above the coldest threshold that the crop stands. */
function winterFits(standsC: number, climate: WindowClimate): Winter {
  const colder = thresholdsF
    .map((thresholdF) => (thresholdF - 32) / 1.8)
    .filter((thresholdC) => thresholdC < standsC - 1e-6);
  const answers = colder.map((thresholdC) => climate.firstFreeze(thresholdC));
  const reaches = answers.find(({ value }) => value.kind === 'date');
  if (reaches) return { kind: 'too-cold', reaches: inputOf('winter-reaches', reaches) };
  const coldestC = colder.length === 0 ? coldestNightC(climate) : undefined;
  if (coldestC !== undefined && coldestC < standsC)
    return {
      kind: 'too-cold',
      reaches: { name: 'coldest-average-night', value: quantity('temperature', coldestC) },
    };
  const told = answers.some(
    ({ value }) => value.kind === 'none' && !notTold.some((reason) => value.reason === reason),
  );
  return colder.length === 0 || told ? { kind: 'fits' } : { kind: 'not-known' };
}

/** The lowest of the average daily minima; half of the nights about that day are colder still. */
function coldestNightC({ air }: WindowClimate): number | undefined {
  if (!air) return undefined;
  const minimum = (day: DayNumber): number => minimumOn(air, day);
  return minimum(extremeDay(minimum, 1, 'coldest'));
}

const notTold = [
  'not-given',
  'freeze-threshold-not-given',
  'freeze-chance-not-given',
  'too-few-seasons',
] as const;

/**
 * Days to maturity count only on days whose mean is 40 F or more, and harvest does not begin before growth does in
 * spring, nor do sets and pieces grow above ground until then. A crop whose published days span the winter (180 or more) is counted by the calendar.
 */
function overwinterHarvest(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  plant: DateRangeFinding,
): DateRangeFinding {
  const days = daysAfterPlanting(crop, planting);
  const lasts = crop.harvestLasts.value;
  const byCalendar = days.low >= wintersInMaturityDays;
  const { air } = climate;
  /** What is planted as sets, slips or pieces roots before winter; its days to maturity are days of spring. */
  const rootsOnly = planting.method !== 'direct-sow' && planting.method !== 'transplant';
  const found: DateRangeFinding = {
    id: `${crop.id}.harvest.overwinter`,
    value: harvestRange(),
    method: byCalendar ? 'window.harvest' : 'window.harvest-growing-days',
    inputs: [
      inputOf('planting', plant),
      { name: 'days-to-maturity', value: quantity('duration', days.low, days.high) },
      { name: 'harvest-lasts', value: quantity('duration', lasts.low, lasts.high) },
      ...(byCalendar ? [] : [{ name: 'grows-from', value: quantity('temperature', growingFromC) }]),
    ],
    sources: merged(
      crop.maturity.sources,
      crop.harvestLasts.sources,
      byCalendar ? [] : ['colorado-gardennotes-720', ...(air?.sources ?? [])],
    ),
  };
  return plant.value.kind === 'none'
    ? found
    : untilHeat(crop, found, heatBegins(crop, climate, plant.value.from + 365 / 2));

  function harvestRange(): DateRangeFinding['value'] {
    if (plant.value.kind === 'none') return plant.value;
    const { from, to } = plant.value;
    if (byCalendar) return dateRange(from + days.low, to + days.high + lasts.high);
    if (!air) return none('temperatures-not-given');
    const means = (day: DayNumber): number => meanOn(air, day);
    const coldest = extremeDay(means, from + 365 / 2, 'coldest');
    const spring = firstDay(coldest, (day) => means(day) >= growingFromC);
    if (spring === undefined) return none('too-cold-all-year');
    const first = afterGrowingDays(means, rootsOnly ? spring : from, days.low);
    const last = afterGrowingDays(means, rootsOnly ? spring : to, days.high);
    if (first === undefined || last === undefined) return none('too-cold-all-year');
    const begins = Math.max(first, spring);
    return dateRange(begins, Math.max(begins, last) + lasts.high);
  }
}

/**
 * The harvest of an overwintered crop whose bulbs answer to the day: it follows the days of the next spring on which
 * every bulb swells, whatever the day was in the fall before. `growth` is that of a planting in the fall before the year
 * of its place; the harvest is that of the year after planting.
 */
export function overwinteredBulbs(
  crop: Crop,
  harvest: DateRangeFinding,
  { bulbing, harvest: ripe }: OnionGrowth,
): DateRangeFinding {
  if (harvest.value.kind === 'none' || bulbing.value.kind === 'none' || ripe.value.kind === 'none')
    return harvest;
  const from = bulbing.value.to + bulbDays.low + 365;
  return {
    ...ripe,
    id: harvest.id,
    value: dateRange(from, Math.max(from, ripe.value.to + 365) + crop.harvestLasts.value.high),
  };
}

/** The day by which so many days warm enough for growth have passed; undefined when two years are not enough. */
function afterGrowingDays(
  means: (day: DayNumber) => number,
  from: DayNumber,
  days: number,
): DayNumber | undefined {
  let grown = 0;
  for (let day = from; day < from + 2 * 365; day += 1) {
    if (grown >= days) return day;
    if (means(day) >= growingFromC) grown += 1;
  }
  return undefined;
}
