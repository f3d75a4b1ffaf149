/**
 * What a sheet can tell of any crop in a region beyond its dates: how deep to sow and why, whether the soil suits it,
 * what a row needs and gives, how much to water, and sowings one after another with the days on which they come up.
 */
import { depthAdvice, type DepthAdvice, type SoilRecord } from '../agronomy/depth-advice.ts';
import { emergenceOn, emergencePoints, normalSeedlingsOn, type Sowing } from '../agronomy/emergence-on.ts';
import { shortDayAllowanceDays } from '../agronomy/hardiness.ts';
import { seedToBuy } from '../agronomy/seed-need.ts';
import { soilFit, type SoilFinding } from '../agronomy/soil-fit.ts';
import { inRowSpacing, seedForRows } from '../agronomy/spacing.ts';
import { successionSowings, sumOf } from '../agronomy/succession.ts';
import { dripTime, wateringSource, weeklyNeedMm, weeklyWater, type DripLine } from '../agronomy/watering.ts';
import { daysAfterPlanting, merged, type PlantingWindows, type WindowSeason } from '../agronomy/windows.ts';
import { expectedYield } from '../agronomy/yield.ts';
import { isWholeYear, monthDay } from '../climate/calendar.ts';
import { degreeDaysOfDay } from '../climate/degree-days.ts';
import {
  maximumOn,
  minimumOn,
  type SoilTemperatureYear,
  type TemperatureYear,
} from '../climate/temperature-year.ts';
import {
  count,
  date,
  inputOf,
  none,
  quantity,
  type DateFinding,
  type DateRangeFinding,
  type DayNumber,
  type Finding,
  type FindingValue,
} from '../findings/finding.ts';
import { toHeld } from '../quantities/units.ts';
import type { RegionRecord } from '../records/guide.ts';
import type { Crop } from '../records/schemas/crop.ts';

/** What is known of the place that the findings of a crop depend on. */
export interface CropPlace {
  readonly region: Pick<RegionRecord, 'soil' | 'temperatureData'>;
  readonly air?: TemperatureYear;
  readonly soil?: SoilTemperatureYear;
  readonly windows: readonly PlantingWindows[];
  /** Length of the row that seed and yield are told for; `usualRowMm` where no sheet says otherwise. */
  readonly rowLengthMm?: number;
}

export interface CropFindings {
  readonly depth: DepthAdvice;
  readonly soil: SoilFinding;
  readonly row: RowFindings;
  readonly water: WaterFindings;
  /** The sowings of each season that has any; a crop without a published interval has none. */
  readonly sowings: readonly SeasonOfSowings[];
  /** Every finding of these by its own id, for prose. */
  readonly all: readonly Finding[];
}

/** Ten feet: the row of a small bed. The choice of this guide; a sheet may make another. */
export const usualRowMm = toHeld(10, 'ft');

/**
 * One drip line down a band of 30 in with emitters every 12 in, 20.4 gallons an hour from 100 ft: the medium flow of the
 * Penn State table.
 */
export const usualDrip: { readonly line: DripLine; readonly bandMm: number } = {
  line: { emitterSpacingMm: toHeld(12, 'in'), emitterLPerHour: toHeld(0.204, 'gal') },
  bandMm: toHeld(30, 'in'),
};

export function cropFindings(crop: Crop, place: CropPlace): CropFindings {
  const soilRecord: SoilRecord | undefined = place.region.soil;
  const depth = depthAdvice(crop, soilRecord);
  const soil = soilFit(crop, soilRecord);
  const row = rowFindings(crop, place.rowLengthMm ?? usualRowMm);
  const water = waterFindings(crop, place);
  const sowings = seasonsOfSowings(crop, place);
  return {
    depth,
    soil,
    row,
    water,
    sowings,
    all: [
      depth.printed,
      depth.why,
      depth.rule,
      depth.ruleSays,
      soil.fit,
      row.length,
      row.seed,
      row.plants,
      row.seedsAtLeast,
      row.packets,
      row.yield,
      water.need,
      water.dripTime,
      water.weekly,
      ...water.months.flatMap(({ rain, water: give, drip }) => [rain, give, drip]),
      ...firstComesUp(crop, place),
      ...sowings.flatMap((season) =>
        season.sowings.flatMap(({ sow, comesUp, seedlings, harvest }) => [sow, comesUp, seedlings, harvest]),
      ),
    ],
  };
}

export interface RowFindings {
  /** `<crop>.row-length` */
  readonly length: Finding;
  /** `<crop>.seed-for-row`: by the published rate. */
  readonly seed: Finding;
  /** `<crop>.plants-in-row`: once thinned, at the widest and at the closest published spacing. */
  readonly plants: Finding;
  /** `<crop>.seeds-at-least`: placed one by one at the closest spacing, by what comes up and lives. */
  readonly seedsAtLeast: Finding;
  /** `<crop>.packets`: whole packets that hold the seed by the published rate. */
  readonly packets: Finding;
  /** `<crop>.yield` */
  readonly yield: Finding;
}

/** What a row takes and gives. A length that is not above 0 throws a RangeError. */
function rowFindings(crop: Crop, rowLengthMm: number): RowFindings {
  if (!(rowLengthMm > 0)) throw new RangeError(`no such row: ${rowLengthMm} mm`);
  const length: Finding = {
    id: `${crop.id}.row-length`,
    value: quantity('length', rowLengthMm),
    method: 'row.chosen',
    inputs: [],
    sources: [],
  };
  const seed = {
    ...seedForRows({ crop, rows: 1, rowLengthMm, rowLength: length }),
    id: `${crop.id}.seed-for-row`,
    method: 'seed.rate-of-row',
  };
  const spacing = crop.spacing.inRow.value;
  const fits = (spacingMm: number): number => Math.max(1, Math.floor(rowLengthMm / spacingMm + 1e-6));
  const [fewest, most] = [fits(spacing.high), fits(spacing.low)];
  const plants: Finding = {
    id: `${crop.id}.plants-in-row`,
    value: fewest === most ? count(most) : { kind: 'count-range', low: fewest, high: most },
    method: 'plants.in-row',
    inputs: [inputOf('row-length', length), inputOf('in-row-spacing', inRowSpacing(crop))],
    sources: crop.spacing.inRow.sources,
  };
  const { seeds } = seedToBuy({ crop, plants: { ...plants, value: count(most) } });
  return {
    length,
    seed,
    plants,
    seedsAtLeast: {
      ...seeds,
      id: `${crop.id}.seeds-at-least`,
      ...(isSown(crop) ? {} : { value: none('not-sown') }),
    },
    packets: packetsOf(crop, seed),
    yield: expectedYield(crop, { rowLength: length, rowLengthMm }),
  };
}

/** Whole packets that hold the heavier end of the seed for a row. */
function packetsOf(crop: Crop, seed: Finding): Finding {
  const { packet } = crop;
  const { value } = seed;
  const heaviestG = value.kind === 'range' ? value.high : value.kind === 'quantity' ? value.value : undefined;
  return {
    id: `${crop.id}.packets`,
    value:
      heaviestG === undefined
        ? value
        : packet
          ? count(Math.ceil(heaviestG / packet.value.low - 1e-9))
          : none('no-packet-size'),
    method: 'seed.packets-by-weight',
    inputs: [
      inputOf('seed-for-row', seed),
      ...(packet ? [{ name: 'packet-mass', value: quantity('mass', packet.value.low) }] : []),
    ],
    sources: merged(packet?.sources ?? [], seed.sources),
  };
}

function isSown(crop: Crop): boolean {
  return !('notSown' in crop.emergence);
}

export interface MonthOfWater {
  /** January is 0. */
  readonly month: number;
  /** `<crop>.rain.<month>`: the rain of an average week. */
  readonly rain: Finding;
  /** `<crop>.water.<month>` */
  readonly water: Finding;
  /** `<crop>.drip.<month>` */
  readonly drip: Finding;
}

export interface WaterFindings {
  /** `<crop>.weekly-need`: rain and watering together. */
  readonly need: Finding;
  /** `<crop>.drip-time`: the whole need by drip, for a week without rain. */
  readonly dripTime: Finding;
  /** `<crop>.weekly-water`: what to give in an average week of the driest month in which the crop stands. */
  readonly weekly: Finding;
  /** The months in which the crop stands, in order of planting; empty where the region gives no rain. */
  readonly months: readonly MonthOfWater[];
}

function waterFindings(crop: Crop, { region: { temperatureData }, windows }: CropPlace): WaterFindings {
  const need: Finding = {
    id: `${crop.id}.weekly-need`,
    value: quantity('length', weeklyNeedMm.low, weeklyNeedMm.high),
    method: 'published',
    inputs: [],
    sources: [wateringSource],
  };
  const drip = (water: Finding, name: string): Finding => ({
    ...dripTime({ water, line: usualDrip.line, lines: 1, bedWidthMm: usualDrip.bandMm }),
    id: `${crop.id}.${name}`,
  });
  const { rainMm, source } = temperatureData ?? {};
  const months = (rainMm && source ? monthsOfGrowth(windows) : []).map((month): MonthOfWater => {
    const weekMm = (7 * rainMm![month]!) / monthLengths[month]!;
    const rain: Finding = {
      id: `${crop.id}.rain.${month + 1}`,
      value: quantity('length', weekMm),
      method: 'rain.week-of-month',
      inputs: [],
      sources: [source!],
    };
    const water = weeklyWater({ rainMm: weekMm, mulch: 'none', rainSources: [source!] });
    const named = { ...water, id: `${crop.id}.water.${month + 1}` };
    return { month, rain, water: named, drip: drip(named, `drip.${month + 1}`) };
  });
  return { need, dripTime: drip(need, 'drip-time'), weekly: driest(crop, months, need), months };
}

function driest(crop: Crop, months: readonly MonthOfWater[], need: Finding): Finding {
  const rainOf = ({ rain }: MonthOfWater): number => (rain.value as { value: number }).value;
  const [first, ...rest] = months;
  const id = `${crop.id}.weekly-water`;
  if (!first) return { ...need, id, value: none('no-rain-on-record') };
  return { ...rest.reduce((dry, next) => (rainOf(next) < rainOf(dry) ? next : dry), first).water, id };
}

const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** The months between a planting and the end of its harvest, of all windows together, in the order they come. */
function monthsOfGrowth(windows: readonly PlantingWindows[]): readonly number[] {
  const months = new Set<number>();
  for (const { plant, harvest } of windows) {
    if (plant.value.kind === 'none' || harvest.value.kind === 'none') continue;
    for (let day = plant.value.from; day <= harvest.value.to; day += 1) months.add(monthDay(day).month - 1);
  }
  return [...months];
}

/** One sowing of a season with what follows from its day. */
export interface SowingFindings {
  /** `<crop>.succession.<season>.<n>` */
  readonly sow: DateFinding;
  /** The same with `.comes-up`: none where the region's soil is not known. */
  readonly comesUp: DateRangeFinding;
  /** The same with `.seedlings`: percent of good seed. */
  readonly seedlings: Finding;
  /** The same with `.harvest`: about when it is ready. */
  readonly harvest: DateFinding;
}

export interface SeasonOfSowings {
  readonly season: WindowSeason;
  readonly sowings: readonly SowingFindings[];
}

/** Seasons whose windows are sown one after another: what stands the winter is sown once. */
const sownAgainIn: readonly WindowSeason[] = ['spring', 'fall', 'year'];

function seasonsOfSowings(crop: Crop, place: CropPlace): readonly SeasonOfSowings[] {
  return place.windows
    .filter(({ method, season }) => method === 'direct-sow' && sownAgainIn.includes(season))
    .map((window) => ({ season: window.season, sowings: sowingsOf(crop, place, window) }))
    .filter(({ sowings }) => sowings.length > 0);
}

function sowingsOf(crop: Crop, place: CropPlace, window: PlantingWindows): readonly SowingFindings[] {
  const { air } = place;
  const planting = crop.plantings.find(({ method }) => method === window.method);
  if (!crop.succession || !crop.degreeDays || !air || !planting || window.plant.value.kind === 'none')
    return [];
  // Where any day suits, no first sowing is there to count from.
  if (isWholeYear(window.plant.value)) return [];
  const { base, upper } = crop.degreeDays;
  const degreeDaysOn = (day: DayNumber): number => {
    const minimumC = minimumOn(air, day);
    const maximumC = Math.max(minimumC, maximumOn(air, day));
    return degreeDaysOfDay({ minimumC, maximumC }, { baseC: base.low, upperC: upper?.low });
  };
  const allowance = window.season === 'fall' ? shortDayAllowanceDays : 0;
  const days = daysAfterPlanting(crop, planting);
  const usualDays = Math.round((days.low + days.high) / 2) + allowance;
  const firstDays = daysOfFirstSowing(degreeDaysOn, window.plant.value, usualDays);
  const until = lastReady(window, days.high + allowance);
  return successionSowings({
    crop,
    window: window.plant,
    everyDays: crop.succession.value.low,
    days: { low: firstDays, high: firstDays },
    degreeDaysOn,
    temperatureSources: merged(crop.succession.sources, air.sources),
  }).flatMap((found, index) => {
    const ready = found.inputs.find(({ name }) => name === 'harvest-day')?.value;
    if (found.value.kind !== 'date' || ready?.kind !== 'date' || ready.day > until) return [];
    const sow = { ...found, id: `${crop.id}.succession.${window.season}.${index + 1}` };
    return [{ sow, ...growthOf(crop, place, { sow, sowDay: found.value.day, readyDay: ready.day }) }];
  });
}

/** A sowing for fall should be ready this long before what ends it, so that there is time to pick. Common practice. */
const daysToPick = 7;

/** The last day on which a sowing may become ready: the harvest's last, and in fall a week before what ends the crop. */
function lastReady({ season, plant, harvest }: PlantingWindows, longestDays: number): DayNumber {
  const last = harvest.value.kind === 'date-range' ? harvest.value.to : Infinity;
  if (season !== 'fall' || plant.value.kind === 'none') return last;
  return Math.min(last, plant.value.to + longestDays - daysToPick);
}

/**
 * Days that the first sowing takes, when a sowing in the middle of the window takes the usual ones: published days are
 * those of an ordinary sowing, and the first of spring, in the cold, takes longer. Half a year where it never gets there.
 */
function daysOfFirstSowing(
  degreeDaysOn: (day: DayNumber) => number,
  window: { readonly from: DayNumber; readonly to: DayNumber },
  usualDays: number,
): number {
  const middle = Math.round((window.from + window.to) / 2);
  const needed = sumOf(degreeDaysOn, middle, middle + usualDays);
  let sum = 0;
  for (let passed = 0; passed < 182; passed += 1) {
    if (sum >= needed - 1e-9 && passed > 0) return passed;
    sum += degreeDaysOn(window.from + passed);
  }
  return 182;
}

function growthOf(
  crop: Crop,
  { soil }: CropPlace,
  { sow, sowDay, readyDay }: { sow: DateFinding; sowDay: DayNumber; readyDay: DayNumber },
): Omit<SowingFindings, 'sow'> {
  return {
    comesUp: { ...comesUpOn(crop, soil, sowDay), id: `${sow.id}.comes-up` },
    seedlings: { ...seedlingsOn(crop, soil, sowDay), id: `${sow.id}.seedlings` },
    harvest: {
      id: `${sow.id}.harvest`,
      value: date(readyDay),
      method: 'succession.harvest',
      inputs: [inputOf('sowing', sow), ...sow.inputs.filter(({ name }) => name === 'degree-days-needed')],
      sources: sow.sources,
    },
  };
}

/** `<crop>.emergence-on` and `<crop>.normal-seedlings` for seed sown when the first window to sow in opens. */
function firstComesUp(crop: Crop, { soil, windows }: CropPlace): readonly Finding[] {
  const window = windows.find(({ method, plant }) => method === 'direct-sow' && plant.value.kind !== 'none');
  if (!window || window.plant.value.kind === 'none') return [];
  const { from } = window.plant.value;
  if (isWholeYear(window.plant.value)) {
    const none = { kind: 'none', reason: 'sown-any-month' } as const;
    return [
      { ...lacking(`${crop.id}.emergence-on`, 'emergence.day-by-day', crop), value: none },
      { ...lacking(`${crop.id}.normal-seedlings`, 'seedlings.by-temperature', crop), value: none },
    ];
  }
  return [comesUpOn(crop, soil, from), seedlingsOn(crop, soil, from)];
}

/** How long seed in soil colder than was ever tested is followed before it is given up. */
const longestWaitDays = 90;

/**
 * When seedlings come up. Soil colder than the table's coldest is no end of it in spring: the seed lies and waits, and
 * is counted from the first day that is warm enough, which is the latest it can come up.
 */
function comesUpOn(crop: Crop, soil: SoilTemperatureYear | undefined, sowDay: DayNumber): DateRangeFinding {
  if (!soil) return lacking(`${crop.id}.emergence-on`, 'emergence.day-by-day', crop);
  const sowing = sowingIn(crop, soil, sowDay);
  const found = emergenceOn(sowing);
  const coldest = emergencePoints(crop)[0]?.temperatureC;
  if (found.value.kind !== 'none' || found.value.reason !== 'soil-too-cold' || coldest === undefined)
    return found;
  for (let day = sowDay + 1; day <= sowDay + longestWaitDays; day += 1) {
    if (soil.at(day, sowing.depthMm) < coldest) continue;
    const later = emergenceOn({ ...sowing, sowDay: day });
    const rest = later.inputs.filter(({ name }) => name !== 'sowing');
    return {
      ...later,
      method: 'emergence.after-waiting',
      inputs: [
        { name: 'sowing', value: date(sowDay) },
        { name: 'soil-warm-enough', value: date(day) },
        ...rest,
      ],
    };
  }
  return found;
}

function seedlingsOn(crop: Crop, soil: SoilTemperatureYear | undefined, sowDay: DayNumber): Finding {
  return soil
    ? normalSeedlingsOn(sowingIn(crop, soil, sowDay))
    : lacking(`${crop.id}.normal-seedlings`, 'seedlings.by-temperature', crop);
}

function sowingIn(crop: Crop, soil: SoilTemperatureYear, sowDay: DayNumber): Sowing {
  return { crop, sowDay, soil, depthMm: (crop.depth.value.low + crop.depth.value.high) / 2 };
}

function lacking(id: string, method: string, crop: Crop): Finding<Extract<FindingValue, { kind: 'none' }>> {
  return { id, value: none('temperatures-not-given'), method, inputs: [], sources: crop.depth.sources };
}
