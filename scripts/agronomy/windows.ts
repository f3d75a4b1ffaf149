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
  count,
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
  springWindowDays,
} from './hardiness.ts';
import { overwinterWindows } from './overwinter.ts';
import {
  daysAfterPlanting,
  earliest,
  latest,
  merged,
  windowId,
  type Bound,
  type EdgeRule,
  type Planting,
  type WindowEdges,
  type WindowSeason,
} from './window-parts.ts';
import {
  heatBegins,
  heatEnds,
  soilCoolEnough,
  soilWarmEnough,
  type TemperatureDay,
  type WindowTemperatures,
} from './window-temperatures.ts';

export { daysAfterPlanting, merged, type EdgeRule, type WindowEdges, type WindowSeason };

export interface PlantingWindows {
  readonly method: PlantingMethod;
  readonly season: WindowSeason;
  /** Only for transplants. */
  readonly startIndoors?: DateRangeFinding;
  /** Sowing, setting out transplants, or planting sets and seed pieces. */
  readonly plant: DateRangeFinding;
  readonly harvest: DateRangeFinding;
  /** The rule that set each edge of `plant`. */
  readonly edges: WindowEdges;
}

/** Without temperatures windows follow freeze dates alone. */
export interface WindowClimate extends WindowTemperatures {
  /** The last 32 F freeze of spring that planting is counted from: the average (50 %) one unless `planning` says. */
  readonly lastFreeze: DateFinding;
  /** The first fall freeze at a threshold in degrees Celsius, or a finding that there is none. */
  readonly firstFreeze: (thresholdC: number) => DateFinding;
  /** The chance of a freeze outside the two dates, in percent, where the region does not plan by the average. */
  readonly planning?: { readonly chancePercent: number };
}

/** Every window of a crop, in the order of the record's plantings, spring before fall, and overwinter last. */
export function plantingWindows(crop: Crop, climate: WindowClimate): readonly PlantingWindows[] {
  const windows = crop.plantings.flatMap((planting, index) => {
    const spring = springWindows(crop, planting, climate);
    const main = index === 0 && planting.fall;
    return main ? [spring, fallWindows(crop, planting, climate, spring)] : [spring];
  });
  const overwinter = overwinterWindows(crop, climate);
  return overwinter ? [...windows, overwinter] : windows;
}

type Dated = Extract<DateRangeFinding['value'], { kind: 'date-range' }>;

function springWindows(crop: Crop, planting: Planting, climate: WindowClimate): PlantingWindows {
  const { plant, edges } = springPlanting(crop, planting, climate);
  return {
    method: planting.method,
    season: 'spring',
    ...completed(crop, planting, climate, 'spring', plant),
    edges,
  };
}

interface PlantingEdges {
  readonly plant: DateRangeFinding;
  readonly edges: WindowEdges;
}

type Never = Extract<TemperatureDay, { kind: 'never' }>;

const noEdges: WindowEdges = { opens: 'no-window', closes: 'no-window' };

function springPlanting(crop: Crop, planting: Planting, climate: WindowClimate): PlantingEdges {
  const { lastFreeze } = climate;
  const own = planting.spring;
  const offsets = own
    ? { opens: own.opens.low, closes: own.closes.high }
    : springOffsetDays[crop.hardiness.group];
  const id = windowId(crop, planting.method, 'spring');
  const inputs: FindingInput[] = [
    inputOf('last-freeze', lastFreeze),
    ...planningInputs(climate),
    { name: 'hardiness-group', value: choice(crop.hardiness.group) },
    { name: 'offset-from-last-freeze', value: quantity('duration', offsets.opens, offsets.closes) },
  ];
  const sources = merged(own ? own.sources : springOffsetSources, crop.hardiness.sources, lastFreeze.sources);
  const method = own ? 'window.spring-crop' : 'window.spring-group';
  if (lastFreeze.value.kind === 'none')
    return {
      plant: { id, value: none('no-last-freeze'), method, inputs, sources },
      edges: noEdges,
    };
  const { day } = lastFreeze.value;
  const warm = soilWarmEnough(crop, planting, climate, day);
  const heat = heatBegins(crop, climate, day);
  if (warm.kind === 'never' || heat.kind === 'never') {
    const [reason, { inputs: more, sources: theirs }] =
      warm.kind === 'never' ? ['soil-too-cold', warm] : ['too-hot-all-year', heat as typeof heat & Never];
    return {
      plant: {
        id,
        value: none(reason),
        method: 'window.spring-temperature',
        inputs: [...inputs, ...more],
        sources: merged(sources, theirs),
      },
      edges: noEdges,
    };
  }
  const earliestOpen = latest([
    { day: day + offsets.opens, rule: 'offset', inputs: [], sources: [] },
    ...bounded(warm, 'soil-temperature', 0),
  ]);
  const { opens, closes } = outsideHeat(crop, planting, {
    begins: heat,
    ends: heatEnds(crop, climate, day),
    opens: earliestOpen,
    closes: earliest([
      lastOpenDay(day + offsets.closes, earliestOpen),
      {
        ...lastSafeDay(crop, planting, climate, { lastFreezeDay: day, opens: earliestOpen.day }),
        inputs: [],
        sources: [],
      },
    ]),
  });
  return {
    plant: {
      id,
      value: closes.day < opens.day ? none(whyNone(opens, closes)) : dateRange(opens.day, closes.day),
      method: setByTemperature(opens, closes) ? 'window.spring-temperature' : method,
      inputs: [...inputs, ...opens.inputs, ...closes.inputs],
      sources: merged(sources, opens.sources, closes.sources),
    },
    edges: { opens: opens.rule, closes: closes.rule },
  };
}

function whyNone(opens: Bound, closes: Bound): string {
  if (closes.rule === 'heat') return 'too-hot-before-harvest';
  return opens.rule === 'soil-temperature' ? 'soil-warm-too-late' : 'season-too-short';
}

/**
 * Narrows a spring window so that harvest does not begin in the heat. It closes so that a middling cultivar comes in
 * before the heat, or, where that leaves nothing, a quick one. A crop too slow for either, such as parsnip, grows
 * through the summer, and opens so that a middling one comes in after the heat. What is left otherwise is no window.
 */
function outsideHeat(
  crop: Crop,
  planting: Planting,
  at: { begins: TemperatureDay; ends: TemperatureDay; opens: Bound; closes: Bound },
): { opens: Bound; closes: Bound } {
  const { begins, ends, opens, closes } = at;
  if (begins.kind !== 'day') return { opens, closes };
  const days = daysAfterPlanting(crop, planting);
  const middling = Math.floor((days.low + days.high) / 2);
  for (const needed of [middling, days.low]) {
    const before = heatBound(begins, needed);
    if (before.day >= opens.day) return { opens, closes: earliest([closes, before]) };
  }
  const after = ends.kind === 'day' ? heatBound(ends, middling) : undefined;
  if (after && after.day <= closes.day) return { opens: latest([opens, after]), closes };
  return { opens, closes: heatBound(begins, days.low) };
}

/** The day to plant so that harvest begins with the day of a heat limit, and the days it was counted with. */
function heatBound(heat: Extract<TemperatureDay, { kind: 'day' }>, days: number): Bound {
  return {
    day: heat.day - days,
    rule: 'heat',
    inputs: [...heat.inputs, { name: 'days-to-maturity', value: quantity('duration', days) }],
    sources: heat.sources,
  };
}

/** The offset's close; where the soil warms only after it, the window stays open for its usual length instead. */
function lastOpenDay(offsetDay: DayNumber, opens: Bound): Bound {
  return opens.rule === 'soil-temperature' && opens.day > offsetDay
    ? { day: opens.day + springWindowDays, rule: 'window-length', inputs: [], sources: [] }
    : { day: offsetDay, rule: 'offset', inputs: [], sources: [] };
}

/** A temperature's day moved by some days, as the bound that it sets on an edge; none where it asks nothing. */
function bounded(found: TemperatureDay, rule: EdgeRule, shift: number): Bound[] {
  return found.kind === 'day'
    ? [{ day: found.day + shift, rule, inputs: found.inputs, sources: found.sources }]
    : [];
}

const temperatureRules: readonly EdgeRule[] = ['soil-temperature', 'soil-heat', 'heat'];

function setByTemperature(...bounds: readonly Bound[]): boolean {
  return bounds.some(({ rule }) => temperatureRules.includes(rule));
}

function planningInputs({ planning }: WindowClimate): FindingInput[] {
  return planning ? [{ name: 'chance-percent', value: count(planning.chancePercent) }] : [];
}

/**
 * The last day on which a planting still matures before the freeze that ends it, with the allowance for fall: by the
 * longest days to maturity, or where these leave no window by the shortest, which early kinds keep.
 */
function lastSafeDay(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  { lastFreezeDay, opens }: { lastFreezeDay: DayNumber; opens: DayNumber },
): { day: DayNumber; rule: EdgeRule } {
  const limit = fallLimit[crop.hardiness.group];
  const ends = climate.firstFreeze(limit.thresholdC);
  const end = ends.value.kind === 'date' ? ends.value.day : midWinter(lastFreezeDay);
  const days = daysAfterPlanting(crop, planting);
  const latest = end - shortDayAllowanceDays - limit.readyDaysBefore;
  return {
    day: latest - days.high >= opens ? latest - days.high : latest - days.low,
    rule: ends.value.kind === 'date' ? 'ending-freeze' : 'year-end',
  };
}

/**
 * Counting back from the freeze that ends the crop: days to maturity (the longest published), the short-day
 * allowance, and for tender crops two weeks to pick. Never before the spring window has closed; for a cool-season
 * crop not while its harvest would begin in the heat (by the shortest published days), nor in soil too warm for it.
 */
function fallWindows(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  spring: PlantingWindows,
): PlantingWindows {
  const limit = fallLimit[crop.hardiness.group];
  const ends = climate.firstFreeze(limit.thresholdC);
  const days = daysAfterPlanting(crop, planting);
  const needed = days.high + shortDayAllowanceDays + limit.readyDaysBefore;
  const inputs: FindingInput[] = [
    inputOf('ending-freeze', ends),
    ...planningInputs(climate),
    { name: 'days-to-maturity', value: quantity('duration', days.high) },
    { name: 'short-day-allowance', value: quantity('duration', shortDayAllowanceDays) },
    ...(limit.readyDaysBefore > 0
      ? [{ name: 'ready-before-freeze', value: quantity('duration', limit.readyDaysBefore) }]
      : []),
  ];
  const range = fallRange(crop, planting, climate, { ends, needed, spring: spring.plant });
  const plant: DateRangeFinding = {
    id: windowId(crop, planting.method, 'fall'),
    value: range.value,
    method: range.byTemperature
      ? 'window.fall-temperature'
      : ends.value.kind === 'none'
        ? 'window.fall-year-end'
        : 'window.fall-count-back',
    inputs: [...inputs, ...range.inputs],
    sources: merged(crop.maturity.sources, ['common-practice-gardening'], ends.sources, range.sources),
  };
  return {
    method: planting.method,
    season: 'fall',
    ...completed(crop, planting, climate, 'fall', plant),
    edges: range.edges,
  };
}

interface FallRange {
  readonly value: DateRangeFinding['value'];
  readonly edges: WindowEdges;
  readonly byTemperature: boolean;
  readonly inputs: readonly FindingInput[];
  readonly sources: readonly string[];
}

/** A fall window shorter than this is not worth a date. Common practice. */
const shortestFallDays = 7;

function fallRange(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  { ends, needed, spring }: { ends: DateFinding; needed: number; spring: DateRangeFinding },
): FallRange {
  const refused = (reason: string): FallRange => ({
    value: none(reason),
    edges: noEdges,
    byTemperature: false,
    inputs: [],
    sources: [],
  });
  const { lastFreeze } = climate;
  if (lastFreeze.value.kind === 'none') return refused('no-last-freeze');
  if (spring.value.kind === 'none' && spring.value.reason === 'season-too-short')
    return refused('season-too-short-for-fall');
  const cool = heatEnds(crop, climate, lastFreeze.value.day);
  const soil = soilCoolEnough(crop, planting, climate, lastFreeze.value.day);
  const never = [cool, soil].find(({ kind }) => kind === 'never');
  if (never?.kind === 'never')
    return {
      ...refused(never === cool ? 'too-hot-all-year' : 'soil-too-warm'),
      byTemperature: true,
      inputs: never.inputs,
      sources: never.sources,
    };
  const end = ends.value.kind === 'none' ? midWinter(lastFreeze.value.day) : ends.value.day;
  const closes = end - needed;
  const plain: Bound[] = [{ day: closes - fallWindowDays, rule: 'window-length', inputs: [], sources: [] }];
  if (spring.value.kind === 'date-range')
    plain.push({ day: spring.value.to + 1, rule: 'after-spring', inputs: [], sources: [] });
  const opens = latest([
    plain[0]!,
    ...plain.slice(1),
    ...bounded(cool, 'heat', -(daysAfterPlanting(crop, planting).low + shortDayAllowanceDays)),
    ...bounded(soil, 'soil-heat', 0),
  ]);
  const byTemperature = setByTemperature(opens);
  const tooShort = byTemperature ? 'hot-until-too-late' : 'season-too-short-for-fall';
  return {
    value: closes - opens.day < shortestFallDays ? none(tooShort) : dateRange(opens.day, closes),
    edges: { opens: opens.rule, closes: ends.value.kind === 'none' ? 'year-end' : 'ending-freeze' },
    byTemperature,
    inputs: opens.inputs,
    sources: opens.sources,
  };
}

/**
 * December 31 after a northern spring, June 30 after a southern one: a crop that no freeze ends should be ready by
 * mid-winter. A southern last freeze falls in the second half of the calendar year.
 */
function midWinter(lastFreezeDay: DayNumber): DayNumber {
  return lastFreezeDay > 182 ? 365 + 181 : 365;
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

export function windowDays(finding: Finding): Dated | undefined {
  return finding.value.kind === 'date-range' ? finding.value : undefined;
}
