/**
 * Planting windows of a place without an average last freeze: no date counts from a freeze, so that each crop has the one
 * run of the year in which soil and air suit it, or the whole year.
 */
import { daysInYear, isWholeYear } from '../climate/calendar.ts';
import { meanOn, type SoilTemperatureYear } from '../climate/temperature-year.ts';
import {
  dateRange,
  inputOf,
  none,
  quantity,
  type DateRangeFinding,
  type DayNumber,
  type FindingInput,
} from '../findings/finding.ts';
import { middle } from '../quantities/quantity.ts';
import type { Crop } from '../records/schemas/crop.ts';
import { fewestWindowDays } from './hardiness.ts';
import type { WindowClimate } from './window-climate.ts';
import { lateFreezeBounds } from './window-cold.ts';
import {
  daysAfterPlanting,
  edgeInputs,
  merged,
  midWinter,
  noEdges,
  windowId,
  type Bound,
  type EdgeRule,
  type Planting,
} from './window-parts.ts';
import {
  extremeDay,
  plantingSoilDepthMm,
  plantingSoilOf,
  soilNeed,
  workableSoilC,
  workableSources,
} from './window-temperatures.ts';
import type { PlantingEdges } from './window-spring.ts';

/** Reasons of a last freeze that is none because it does not freeze often enough, not because nothing is known. */
const freezesTooSeldom = ['freeze-never', 'freeze-not-this-likely', 'freeze-outside-season'];

/** True where fewer years than are planned by have a freeze at all, so that nothing can count from one. */
export function isFrostFree({ lastFreeze: { value } }: WindowClimate): boolean {
  return value.kind === 'none' && freezesTooSeldom.includes(value.reason);
}

/**
 * The longest run of days that suit, of at least a week; a run over the whole year is days 1 to 365. `none` where no days
 * suit, with the reason, and where the region gives no temperatures. Where two runs are equally long, the one that
 * begins first in the calendar year. Its first day lies in 1 to 365, except that of bulbs, whose last day does.
 */
export function frostFreePlanting(crop: Crop, planting: Planting, climate: WindowClimate): PlantingEdges {
  const { soil, air, lastFreeze } = climate;
  const about = (
    value: DateRangeFinding['value'],
    inputs: readonly FindingInput[],
    sources: readonly string[],
  ): DateRangeFinding => ({
    id: windowId(crop, planting.method, 'year'),
    value,
    method: 'window.frost-free',
    inputs: [inputOf('last-freeze', lastFreeze), ...inputs],
    sources: merged(lastFreeze.sources, sources),
  });
  if (!air && !soil)
    return { plant: about(none('no-freeze-no-temperatures'), [], crop.hardiness.sources), edges: noEdges };
  const days = daysAfterPlanting(crop, planting);
  const middling = Math.floor((days.low + days.high) / 2);
  const byMiddling = suitable(crop, planting, climate, middling);
  const asked = byMiddling.run ? byMiddling : suitable(crop, planting, climate, days.low);
  const inputs = [
    ...asked.demands.flatMap((demand) => demand.inputs),
    { name: 'days-to-maturity', value: quantity('duration', byMiddling.run ? middling : days.low) },
  ];
  const sources = merged(crop.maturity.sources, ...asked.demands.map((demand) => demand.sources));
  const { run } = asked;
  if (!run) return { plant: about(none(whyNone(asked.demands)), inputs, sources), edges: noEdges };
  const opens = edgeBound(run.opens, run.from);
  const closes = edgeBound(run.closes, run.to);
  return {
    plant: about(
      dateRange(...placed(crop, run.from, run.to)),
      [...inputs, ...edgeInputs(opens, closes)],
      sources,
    ),
    edges: { opens: run.opens, closes: run.closes },
  };
}

/** Bulbs are followed from the months before the year of their harvest, as they are elsewhere. */
function placed(crop: Crop, from: DayNumber, to: DayNumber): [DayNumber, DayNumber] {
  const before = crop.part === 'bulb' && to > daysInYear && !isWholeYear({ from, to }) ? daysInYear : 0;
  return [from - before, to - before];
}

const edgeBound = (rule: EdgeRule, day: DayNumber): Bound => ({ day, rule, inputs: [], sources: [] });

/** One thing that a planting asks of a day, with what it is worked out from. */
interface Demand {
  readonly rule: EdgeRule;
  /** The reason where no day of the year meets it. */
  readonly never: string;
  readonly meets: (day: DayNumber) => boolean;
  readonly inputs: readonly FindingInput[];
  readonly sources: readonly string[];
}

interface Run {
  readonly from: DayNumber;
  readonly to: DayNumber;
  readonly opens: EdgeRule;
  readonly closes: EdgeRule;
}

function suitable(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  daysToHarvest: number,
): { readonly demands: readonly Demand[]; readonly run: Run | undefined } {
  const demands = [
    ...soilDemands(crop, planting, climate),
    ...warmthDemand(crop, climate, daysToHarvest),
    ...heatDemand(crop, climate, daysToHarvest),
    ...lateFreezeDemand(crop, climate, daysToHarvest),
    ...coolestDemand(crop, climate),
  ];
  return { demands, run: longestRun(demands) };
}

function longestRun(demands: readonly Demand[]): Run | undefined {
  const fails = Array.from({ length: daysInYear }, (_, index) =>
    demands.find(({ meets }) => !meets(index + 1)),
  );
  const failing = (day: DayNumber): Demand | undefined =>
    fails[(((day - 1) % daysInYear) + daysInYear) % daysInYear];
  if (fails.every((fail) => fail === undefined))
    return { from: 1, to: daysInYear, opens: 'whole-year', closes: 'whole-year' };
  let best: Run | undefined;
  for (let from = 1; from <= daysInYear; from += 1) {
    const before = failing(from - 1);
    if (failing(from) || !before) continue;
    let to = from;
    while (!failing(to + 1)) to += 1;
    if (!best || to - from > best.to - best.from)
      best = { from, to, opens: before.rule, closes: failing(to + 1)!.rule };
  }
  return best && best.to - best.from >= fewestWindowDays ? best : undefined;
}

const daysOfYear = Array.from({ length: daysInYear }, (_, index) => index + 1);

/** The demand that no day meets, or else that no month meets them all. */
function whyNone(demands: readonly Demand[]): string {
  return demands.find(({ meets }) => !daysOfYear.some(meets))?.never ?? 'no-month-suits';
}

/** Soil that can be worked, is warm enough for what is planted, and not too warm for seed. */
function soilDemands(crop: Crop, planting: Planting, { soil }: WindowClimate): readonly Demand[] {
  if (!soil) return [];
  const depthMm = middle(crop.depth.value);
  const need = soilNeed(crop, planting);
  const record = planting.method === 'direct-sow' ? crop.soilTemperature : undefined;
  return [
    {
      rule: 'soil-workable',
      never: 'soil-too-cold',
      meets: (day) => soil.at(day, depthMm) >= workableSoilC,
      inputs: [{ name: 'soil-workable-from', value: quantity('temperature', workableSoilC) }],
      sources: merged(workableSources, soil.sources),
    },
    ...(need
      ? [
          {
            rule: 'soil-temperature' as const,
            never: 'soil-too-cold',
            meets: (day: DayNumber): boolean => soil.at(day, depthMm) >= need.limitC,
            inputs: [{ name: 'soil-sowing-temperature', value: quantity('temperature', need.limitC) }],
            sources: merged(need.sources, soil.sources),
          },
        ]
      : []),
    ...plantingSoilDemand(crop, soil),
    ...(record
      ? [
          {
            rule: 'soil-heat' as const,
            never: 'soil-too-warm',
            meets: (day: DayNumber): boolean => soil.at(day, depthMm) <= record.maximum.high,
            inputs: [{ name: 'soil-maximum', value: quantity('temperature', record.maximum.high) }],
            sources: merged(record.sources, soil.sources),
          },
        ]
      : []),
  ];
}

/** The wish of the record, where any day of the year grants it. */
function plantingSoilDemand(crop: Crop, soil: SoilTemperatureYear): readonly Demand[] {
  const wish = plantingSoilOf(crop);
  if (!wish) return [];
  const meets = (day: DayNumber): boolean => soil.at(day, plantingSoilDepthMm) >= wish.limitC;
  if (!daysOfYear.some(meets)) return [];
  const inputs = [{ name: 'planting-soil', value: quantity('temperature', wish.limitC) }];
  const sources = merged(wish.sources, soil.sources);
  return [{ rule: 'planting-soil', never: 'soil-too-cold', meets, inputs, sources }];
}

/**
 * The days from planting to the first harvest are on average as warm as the crop's figure `growing-minimum`, since no
 * freeze keeps it from a cool season in which it would only stand.
 */
function warmthDemand(crop: Crop, { air }: WindowClimate, daysToHarvest: number): readonly Demand[] {
  const figure = crop.figures?.find(({ id }) => id === 'growing-minimum');
  if (!air || !figure || !('temperature' in figure)) return [];
  const limitC = figure.temperature.low;
  const length = Math.max(1, Math.round(daysToHarvest));
  const average = (day: DayNumber): number =>
    Array.from({ length }, (_, passed) => meanOn(air, day + passed)).reduce((sum, value) => sum + value, 0) /
    length;
  return [
    {
      rule: 'warmth',
      never: 'too-cold-all-year',
      meets: (day) => average(day) >= limitC,
      inputs: [{ name: 'growing-minimum', value: quantity('temperature', limitC) }],
      sources: merged(figure.sources, air.sources),
    },
  ];
}

/** The harvest of a cool-season crop begins on a day that is not too warm for it. */
function heatDemand(crop: Crop, { air }: WindowClimate, daysToHarvest: number): readonly Demand[] {
  if (!air || !crop.heatLimit || crop.season !== 'cool') return [];
  const limitC = crop.heatLimit.value.low;
  return [
    {
      rule: 'heat',
      never: 'too-hot-all-year',
      meets: (day) => meanOn(air, day + daysToHarvest) <= limitC,
      inputs: [{ name: 'heat-limit', value: quantity('temperature', limitC) }],
      sources: merged(crop.heatLimit.sources, air.sources),
    },
  ];
}

/**
 * Where one year in ten or more still freezes, very tender crops wait until that is over, as elsewhere, and are ready by
 * mid-winter.
 */
function lateFreezeDemand(crop: Crop, climate: WindowClimate, daysToHarvest: number): readonly Demand[] {
  return lateFreezeBounds(crop, climate).map(({ day: opens, inputs, sources }) => {
    const closes = midWinter(opens) - daysToHarvest;
    const sinceOpening = (day: DayNumber): number => (((day - opens) % daysInYear) + daysInYear) % daysInYear;
    return {
      rule: 'late-freeze',
      never: 'no-month-suits',
      meets: (day) => sinceOpening(day) <= closes - opens,
      inputs,
      sources,
    };
  });
}

/** How long before and after the coolest day of the year bulbs are planted. Common practice. */
const bulbsAboutCoolest = { before: 105, after: 28 } as const;

/**
 * Bulbs grow their leaves in the cool and short days, whatever the heat allows. A crop whose record has the figure
 * `chill-below` also needs a winter with days that cold.
 */
function coolestDemand(crop: Crop, { air }: WindowClimate): readonly Demand[] {
  if (!air || crop.part !== 'bulb') return [];
  const coolest = extremeDay((day) => meanOn(air, day), daysInYear, 'coldest');
  const opens = coolest - bulbsAboutCoolest.before;
  const chill = crop.figures?.find(({ id }) => id === 'chill-below');
  const coldEnough = !chill || !('temperature' in chill) || meanOn(air, coolest) <= chill.temperature.high;
  return [
    {
      rule: 'coolest',
      never: coldEnough ? 'no-month-suits' : 'winter-too-warm',
      meets: (day) =>
        coldEnough &&
        (((day - opens) % daysInYear) + daysInYear) % daysInYear <=
          bulbsAboutCoolest.before + bulbsAboutCoolest.after,
      inputs: [],
      sources: merged(['common-practice-gardening'], chill?.sources ?? [], air.sources),
    },
  ];
}
