/**
 * Everything that is known of one region: its freeze dates, its days and every crop's figures and windows, as
 * findings by id. Sheets pick from here; nothing here has words.
 */
import { emergence } from '../agronomy/emergence.ts';
import { bulbingDates, bulbingHours, onionClasses, type OnionPlace } from '../agronomy/onion.ts';
import { cropFigures, depth, inRowSpacing, maturity, rowSpacing } from '../agronomy/spacing.ts';
import { coldFrameWindows, publishedFrameGain } from '../agronomy/frame-windows.ts';
import { plantingWindows, type PlantingWindows, type WindowClimate } from '../agronomy/windows.ts';
import { longestDay, shortestDay } from '../climate/day-length.ts';
import { freezeDates, freezeFreeSeason, type FreezeDates } from '../climate/freeze.ts';
import type { PlanningFreeze } from '../climate/planning-freeze.ts';
import { soilTemperatureYear } from '../climate/soil-temperature.ts';
import { temperatureYear } from '../climate/temperature-curve.ts';
import type { SoilTemperatureYear, TemperatureYear } from '../climate/temperature-year.ts';
import { quantity, type Finding } from '../findings/finding.ts';
import type { RegionRecord } from '../records/guide.ts';
import type { Crop } from '../records/schemas/crop.ts';
import { regionClimate, type RegionClimate } from './window-climate.ts';
import { cropFindings } from './crop-findings.ts';
import { mainSeason, onionFacts } from './onion-findings.ts';

/** The freeze thresholds that sheets speak of, warmest first, in whole degrees Fahrenheit. */
export const sheetThresholdsF = [36, 32, 28, 24, 20, 16] as const;

export interface CropFacts {
  readonly crop: Crop;
  readonly windows: readonly PlantingWindows[];
  readonly depth: Finding;
  readonly inRow: Finding;
  readonly betweenRows: Finding;
  readonly emergence: Finding;
  readonly maturity: Finding;
}

export interface RegionFacts {
  readonly region: RegionRecord;
  readonly latitudeDeg: number;
  readonly south: boolean;
  readonly year: number;
  readonly freeze: ReadonlyMap<number, FreezeDates>;
  readonly freezeFree: Finding;
  /** The freeze dates that planting is counted from, and the chance that they go by. */
  readonly planning: PlanningFreeze;
  /** All that planting windows are worked out from. */
  readonly windowClimate: WindowClimate;
  readonly longestDay: Finding;
  readonly shortestDay: Finding;
  /** Air of an average year, where the record gives monthly means; soil, where it also gives the soil. */
  readonly air?: TemperatureYear;
  readonly soil?: SoilTemperatureYear;
  readonly crops: readonly CropFacts[];
  /** Every finding by its id, aliases for the region's own onion class included. */
  readonly findings: ReadonlyMap<string, Finding>;
}

export function regionFacts(
  region: RegionRecord,
  options: { crops: readonly Crop[]; year: number },
): RegionFacts {
  const latitudeDeg = region.latitude.low;
  const place = { latitudeDeg, year: options.year };
  const freezeAt = (thresholdC: number): FreezeDates =>
    freezeDates(region.freeze, { thresholdC, latitudeDeg });
  const freeze = new Map(
    sheetThresholdsF.map((thresholdF) => [thresholdF as number, freezeAt((thresholdF - 32) / 1.8)]),
  );
  const at32 = freeze.get(32)!;
  const air = airOf(region);
  const soil = air && region.soil ? soilTemperatureYear(air, region.soil) : undefined;
  const climate = regionClimate({ freeze, freezeAt, chance: region.planForChance, air, soil });
  const crops = options.crops.map((crop): CropFacts => ({
    crop,
    windows: ripened(crop, possibleWindows(crop, climate), { place, air }),
    depth: depth(crop),
    inRow: inRowSpacing(crop),
    betweenRows: rowSpacing(crop),
    emergence: emergence(crop),
    maturity: maturity(crop),
  }));
  const facts = {
    region,
    latitudeDeg,
    south: latitudeDeg < 0,
    year: options.year,
    freeze,
    freezeFree: freezeFreeSeason(at32),
    planning: climate.planning,
    windowClimate: climate.whole,
    longestDay: longestDay(place),
    shortestDay: shortestDay(place),
    ...(air ? { air } : {}),
    ...(soil ? { soil } : {}),
    crops,
  };
  return { ...facts, findings: byId(facts, place) };
}

/**
 * The windows by freeze dates, soil and heat; where heat would leave the crop no window at all, those by
 * freeze dates alone, since gardeners there do grow it, if less well. Not where the soil is too cold: there it does not grow.
 */
function possibleWindows(crop: Crop, climate: RegionClimate): readonly PlantingWindows[] {
  const whole = plantingWindows(crop, climate.whole);
  const values = whole.map(({ plant }) => plant.value);
  const byTemperature = values.some((value) => value.kind === 'none' && temperatureReasons.has(value.reason));
  const hopeless = values.every((value) => value.kind === 'none') && byTemperature;
  if (!hopeless) return whole;
  const byFreezes = plantingWindows(crop, climate.byFreezes);
  return byFreezes.some(({ plant }) => plant.value.kind !== 'none') ? byFreezes : whole;
}

/**
 * Where the air is known, bulbs that answer to the day ripen by it: their harvest follows the day length and the
 * warmth after planting, not days to maturity alone.
 */
function ripened(
  crop: Crop,
  windows: readonly PlantingWindows[],
  { place, air }: { place: OnionPlace; air: TemperatureYear | undefined },
): readonly PlantingWindows[] {
  if (!crop.dayLength || !air) return windows;
  return windows.map((planting) => {
    const season = mainSeason(crop, planting, { place, air });
    return season ? { ...planting, harvest: { ...season.harvest, id: planting.harvest.id } } : planting;
  });
}

const temperatureReasons = new Set([
  'too-hot-all-year',
  'too-hot-before-harvest',
  'hot-until-too-late',
  'soil-too-warm',
]);

/** The air temperatures of an average year, where the region's record gives monthly means. */
function airOf({ temperatureData: data }: RegionRecord): TemperatureYear | undefined {
  return (
    data && temperatureYear({ minimumC: data.minimumC, maximumC: data.maximumC, sources: [data.source] })
  );
}

function byId(
  facts: Omit<RegionFacts, 'findings'>,
  place: { latitudeDeg: number; year: number },
): Map<string, Finding> {
  const latitude: Finding = {
    id: 'latitude',
    value: quantity('angle', place.latitudeDeg),
    method: 'region.record',
    inputs: [],
    sources: [],
  };
  const all: Finding[] = [
    latitude,
    ...[...facts.freeze.values()].flatMap((dates) => [
      ...Object.values(dates.last),
      ...Object.values(dates.first),
    ]),
    facts.freezeFree,
    facts.planning.last,
    facts.planning.first,
    facts.longestDay,
    facts.shortestDay,
    ...facts.crops.flatMap((known) => [
      known.depth,
      known.inRow,
      known.betweenRows,
      known.emergence,
      known.maturity,
      ...cropFigures(known.crop),
      ...known.windows.flatMap(({ startIndoors, plant, harvest }) => [
        ...(startIndoors ? [startIndoors] : []),
        plant,
        harvest,
      ]),
      ...coldFrameWindows(known.crop, known.windows, facts.region.coldFrame ?? publishedFrameGain),
    ]),
  ];
  const beyondDates = facts.crops.flatMap(
    ({ crop, windows }) => cropFindings(crop, { ...facts, windows }).all,
  );
  const map = new Map([...beyondDates, ...all].map((finding) => [finding.id, finding]));
  for (const { crop, windows } of facts.crops) {
    const onion = onionFacts(crop, windows, { place, air: facts.air });
    for (const [id, finding] of onion?.named ?? []) map.set(id, finding);
    for (const [id, finding] of otherSeasons(crop, windows)) map.set(id, finding);
    if (crop.dayLength) for (const [id, finding] of dayLengthFindings(crop, place)) map.set(id, finding);
  }
  return map;
}

/**
 * Where no freeze sets the dates there is no spring and fall to plant in: the names that sheets know stand for the one
 * planting of the year, or for none beside it.
 */
function otherSeasons(crop: Crop, windows: readonly PlantingWindows[]): [string, Finding][] {
  return windows
    .filter(({ season }) => season === 'year')
    .flatMap(({ startIndoors, plant, harvest }) =>
      [plant, harvest, ...(startIndoors ? [startIndoors] : [])].flatMap((finding): [string, Finding][] => {
        const named = (season: string): string => finding.id.replace(/year$/, season);
        const none: Finding = { ...finding, value: { kind: 'none', reason: 'no-second-planting' } };
        return [
          [named('spring'), finding],
          ...(crop.plantings.some(({ fall }) => fall)
            ? [[named('fall'), { ...none, id: named('fall') }] as [string, Finding]]
            : []),
          ...(crop.overwinter
            ? [[named('overwinter'), { ...none, id: named('overwinter') }] as [string, Finding]]
            : []),
        ];
      }),
    );
}

/** The class for the region, each class's hours and dates, and the region's own class again without its name. */
function dayLengthFindings(crop: Crop, place: { latitudeDeg: number; year: number }): [string, Finding][] {
  const { main, also } = onionClasses(crop, place);
  const entries: [string, Finding][] = [
    [main.id, main],
    [also.id, also],
  ];
  for (const { class: name } of crop.dayLength ?? []) {
    const { starts, full } = bulbingDates(crop, name, place);
    const hours = bulbingHours(crop, name);
    for (const finding of [hours, starts, full]) entries.push([finding.id, finding]);
    if (main.value.kind === 'choice' && main.value.value === name) {
      entries.push(
        [`${crop.id}.bulbing`, hours],
        [`${crop.id}.bulbing-starts`, starts],
        [`${crop.id}.bulbing-full`, full],
      );
    }
  }
  return entries;
}
