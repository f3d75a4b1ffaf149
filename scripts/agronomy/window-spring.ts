/** The spring planting window of one way to plant a crop, and the rule that sets each of its edges. */
import {
  choice,
  count,
  dateRange,
  inputOf,
  none,
  quantity,
  type DateRangeFinding,
  type DayNumber,
  type FindingInput,
} from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import {
  daysToPick,
  fallLimit,
  fewestWindowDays,
  shortDayAllowanceDays,
  springOffsetDays,
  springOffsetSources,
  springWindowDays,
} from './hardiness.ts';
import type { WindowClimate } from './window-climate.ts';
import { coldLimitBounds, lateFreezeBounds } from './window-cold.ts';
import {
  bounded,
  daysAfterPlanting,
  earliest,
  edgeInputs,
  latest,
  merged,
  midWinter,
  noEdges,
  setByTemperature,
  windowId,
  type Bound,
  type Planting,
  type WindowEdges,
} from './window-parts.ts';
import {
  heatBegins,
  heatEnds,
  plantingSoilWarm,
  soilWarmEnough,
  soilWorkable,
  type TemperatureDay,
} from './window-temperatures.ts';

export interface PlantingEdges {
  readonly plant: DateRangeFinding;
  readonly edges: WindowEdges;
  /** In spring, the first day that the opening rules allow, whether or not a window follows; absent where one never is met. */
  readonly notBefore?: Bound;
}

/**
 * Opens by the crop's weeks from the last freeze, but not before the ground can be worked, the soil is warm enough for
 * the seed, nights colder than plants stand have passed, and for very tender crops a freeze is unlikely. Where the season
 * leaves time for it, also not before the soil is as warm as the record wishes for. Closes by the
 * crop's weeks, or sooner where heat or the freeze that ends it would come before the harvest. Where it opens late, it
 * stays open for its usual length.
 */
export function springPlanting(crop: Crop, planting: Planting, climate: WindowClimate): PlantingEdges {
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
  const refused = (reason: string, method: string, why?: TemperatureDay): PlantingEdges => ({
    plant: {
      id,
      value: none(reason),
      method,
      inputs: [...inputs, ...(why && why.kind !== 'free' ? why.inputs : [])],
      sources: merged(sources, why && why.kind !== 'free' ? why.sources : []),
    },
    edges: noEdges,
  });
  const method = own ? 'window.spring-crop' : 'window.spring-group';
  if (lastFreeze.value.kind === 'none')
    return refused(
      lastFreeze.value.reason === 'freeze-all-year' ? 'freezes-all-year' : 'no-last-freeze',
      method,
    );
  const { day } = lastFreeze.value;
  const warm = soilWarmEnough(crop, planting, climate, day);
  const workable = soilWorkable(crop, climate, day);
  const heat = heatBegins(crop, climate, day);
  const cold = [warm, workable].find(({ kind }) => kind === 'never');
  if (cold) return refused('soil-too-cold', 'window.spring-temperature', cold);
  if (heat.kind === 'never') return refused('too-hot-all-year', 'window.spring-temperature', heat);
  const opening = latest([
    { day: day + offsets.opens, rule: 'offset', inputs: [], sources: [] },
    ...bounded(warm, 'soil-temperature', 0),
    ...bounded(workable, 'soil-workable', 0),
    ...plantingSoilBounds(crop, planting, climate, day),
    ...coldLimitBounds(crop, planting, climate),
    ...lateFreezeBounds(crop, climate),
  ]);
  const { opens, closes } = outsideHeat(crop, planting, {
    begins: heat,
    ends: heatEnds(crop, climate, day),
    opens: opening,
    closes: earliest([
      lastOpenDay(day + offsets.closes, opening),
      lastSafeDay(crop, planting, climate, { lastFreezeDay: day, opens: opening.day }),
    ]),
  });
  return {
    plant: {
      id,
      value: worthwhile(opens, closes) ? dateRange(opens.day, closes.day) : none(whyNone(opens, closes)),
      method: setByTemperature(opens, closes) ? 'window.spring-temperature' : method,
      inputs: [...inputs, ...opens.inputs, ...closes.inputs, ...edgeInputs(opens, closes)],
      sources: merged(sources, opens.sources, closes.sources),
    },
    edges: { opens: opens.rule, closes: closes.rule },
    notBefore: opening,
  };
}

/**
 * The day that planting had better wait for, where a planting on it still has the longest published days to maturity and
 * the shortest time of picking before the season ends; where it has not, gardeners plant in cooler soil.
 */
function plantingSoilBounds(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  lastFreezeDay: DayNumber,
): Bound[] {
  const ends = climate.firstFreeze(fallLimit[crop.hardiness.group].thresholdC);
  const end = ends.value.kind === 'date' ? ends.value.day : midWinter(lastFreezeDay);
  const needed = daysAfterPlanting(crop, planting).high + shortDayAllowanceDays + crop.harvestLasts.value.low;
  return bounded(plantingSoilWarm(crop, climate, lastFreezeDay), 'planting-soil', 0).filter(
    ({ day }) => day + needed <= end,
  );
}

/** A window that heat or the end of the season leaves open for a few days only is not worth a date. */
function worthwhile(opens: Bound, closes: Bound): boolean {
  const cutShort = ['ending-freeze', 'year-end', 'heat'].includes(closes.rule);
  return closes.day - opens.day >= (cutShort ? fewestWindowDays : 0);
}

function whyNone(opens: Bound, closes: Bound): string {
  if (closes.rule === 'heat') return 'too-hot-before-harvest';
  return opens.rule === 'soil-temperature' ? 'soil-warm-too-late' : 'season-too-short';
}

/**
 * Narrows a spring window so that harvest does not begin in the heat. It closes so that a middling cultivar comes in
 * before the heat, or, where that leaves next to nothing, a quick one. A crop too slow for either, such as parsnip, grows
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
  const middling = heatBound(begins, Math.floor((days.low + days.high) / 2));
  const quick = heatBound(begins, days.low);
  if (middling.day >= opens.day + fewestWindowDays) return { opens, closes: earliest([closes, middling]) };
  if (quick.day >= opens.day + fewestWindowDays) return { opens, closes: earliest([closes, quick]) };
  const after = ends.kind === 'day' ? heatBound(ends, Math.floor((days.low + days.high) / 2)) : undefined;
  if (after && after.day <= closes.day) return { opens: latest([opens, after]), closes };
  return { opens, closes: quick };
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

/** The offset's close; what is held back from opening stays open for its usual length, if that is later. */
function lastOpenDay(offsetDay: DayNumber, opens: Bound): Bound {
  const byLength = opens.day + springWindowDays;
  return opens.rule !== 'offset' && byLength > offsetDay
    ? { day: byLength, rule: 'window-length', inputs: [], sources: [] }
    : { day: offsetDay, rule: 'offset', inputs: [], sources: [] };
}

export function planningInputs({ planning }: WindowClimate): FindingInput[] {
  return planning ? [{ name: 'chance-percent', value: count(planning.chancePercent) }] : [];
}

/**
 * The last day on which a planting still matures before the freeze that ends it, with the allowance for fall: by the
 * longest days to maturity, or where these leave next to no window by the shortest, which early kinds keep.
 */
function lastSafeDay(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  { lastFreezeDay, opens }: { lastFreezeDay: DayNumber; opens: DayNumber },
): Bound {
  const ends = climate.firstFreeze(fallLimit[crop.hardiness.group].thresholdC);
  const end = ends.value.kind === 'date' ? ends.value.day : midWinter(lastFreezeDay);
  const days = daysAfterPlanting(crop, planting);
  const latestReady = end - shortDayAllowanceDays - daysToPick(crop);
  const needed = latestReady - days.high >= opens + fewestWindowDays ? days.high : days.low;
  return {
    day: latestReady - needed,
    rule: ends.value.kind === 'date' ? 'ending-freeze' : 'year-end',
    inputs: [
      inputOf('ending-freeze', ends),
      { name: 'days-to-maturity', value: quantity('duration', needed) },
    ],
    sources: merged(ends.sources, crop.maturity.sources),
  };
}
