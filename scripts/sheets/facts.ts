/**
 * Everything that is known of one region: its freeze dates, its days and every crop's figures and windows, as
 * findings by id. Sheets pick from here; nothing here has words.
 */
import { emergence } from '../agronomy/emergence.ts';
import { onionBaseC, onionGrowth, type OnionGrowth } from '../agronomy/onion-growth.ts';
import { bulbingDates, bulbingHours, onionClasses, type OnionPlace } from '../agronomy/onion.ts';
import { cropFigures, depth, inRowSpacing, maturity, rowSpacing } from '../agronomy/spacing.ts';
import { plantingWindows, type PlantingWindows, type WindowClimate } from '../agronomy/windows.ts';
import { longestDay, shortestDay } from '../climate/day-length.ts';
import { freezeDates, freezeFreeSeason, type FreezeDates } from '../climate/freeze.ts';
import { soilTemperatureYear } from '../climate/soil-temperature.ts';
import type { SoilTemperatureYear } from '../climate/temperature-year.ts';
import { temperatureYear } from '../climate/temperature-curve.ts';
import { maximumOn, minimumOn, type TemperatureYear } from '../climate/temperature-year.ts';
import { degreeDaysOfDay } from '../climate/degree-days.ts';
import { none, quantity, type DateFinding, type Finding } from '../findings/finding.ts';
import type { RegionRecord } from '../records/guide.ts';
import { dayLengthClasses, type Crop } from '../records/schemas/crop.ts';

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
  const climate = {
    lastFreeze: at32.last[50] ?? absent('freeze.last.32f.50'),
    firstFreeze: (thresholdC: number): DateFinding => endingFreeze(thresholdC, freeze, freezeAt),
  };
  const air = airOf(region);
  const soil = air && region.soil ? soilTemperatureYear(air, region.soil) : undefined;
  const withTemperatures = { ...climate, ...(air ? { air } : {}), ...(soil ? { soil } : {}) };
  const crops = options.crops.map((crop): CropFacts => ({
    crop,
    windows: ripened(crop, possibleWindows(crop, climate, withTemperatures), { place, air }),
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
    longestDay: longestDay(place),
    shortestDay: shortestDay(place),
    ...(air ? { air } : {}),
    ...(soil ? { soil } : {}),
    crops,
  };
  return { ...facts, findings: byId(facts, place) };
}

/**
 * The windows by freeze dates, soil and heat; where heat or cold soil would leave no window at all, the one by freeze
 * dates alone, since gardeners there do grow the crop, if less well.
 */
function possibleWindows(crop: Crop, freezes: WindowClimate, all: WindowClimate): readonly PlantingWindows[] {
  const byFreezes = plantingWindows(crop, freezes);
  return plantingWindows(crop, all).map((windows) => {
    const { value } = windows.plant;
    if (value.kind !== 'none' || !temperatureReasons.has(value.reason)) return windows;
    return (
      byFreezes.find(({ method, season }) => method === windows.method && season === windows.season) ??
      windows
    );
  });
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
    const growth = onionGrowthOf(crop, planting, { place, air });
    return growth ? { ...planting, harvest: { ...growth.harvest, id: planting.harvest.id } } : planting;
  });
}

/** How a planting of the class for this latitude grows, from the first day of its window. */
function onionGrowthOf(
  crop: Crop,
  { method, plant }: PlantingWindows,
  { place, air }: { place: OnionPlace; air: TemperatureYear },
): OnionGrowth | undefined {
  const { main } = onionClasses(crop, place);
  if (main.value.kind !== 'choice' || plant.value.kind === 'none') return undefined;
  const dayLengthClass = dayLengthClasses.find((name) => name === (main.value as { value: string }).value);
  if (!dayLengthClass) return undefined;
  return onionGrowth({
    crop,
    dayLengthClass,
    place,
    method,
    plantDay: plant.value.from,
    degreeDaysOn: (day) =>
      degreeDaysOfDay(
        { minimumC: minimumOn(air, day), maximumC: maximumOn(air, day) },
        { baseC: onionBaseC },
      ),
    temperatureSources: air.sources,
  });
}

const temperatureReasons = new Set([
  'too-hot-all-year',
  'too-hot-before-harvest',
  'hot-until-too-late',
  'soil-warm-too-late',
  'soil-too-cold',
  'soil-too-warm',
]);

/** The air temperatures of an average year, where the region's record gives monthly means. */
function airOf({ temperatureData: data }: RegionRecord): TemperatureYear | undefined {
  return (
    data && temperatureYear({ minimumC: data.minimumC, maximumC: data.maximumC, sources: [data.source] })
  );
}

/**
 * The average first freeze at a threshold. Where the region's table has no row for it, the freeze at the next warmer
 * threshold that the table has: fall crops are then planted too early rather than too late.
 */
function endingFreeze(
  thresholdC: number,
  freeze: ReadonlyMap<number, FreezeDates>,
  freezeAt: (thresholdC: number) => FreezeDates,
): DateFinding {
  const coldestF = Math.round(thresholdC * 1.8 + 32);
  const warmer = sheetThresholdsF.filter((thresholdF) => thresholdF >= coldestF && thresholdF <= 32);
  const found = [...warmer]
    .sort((a, b) => a - b)
    .map((thresholdF) => freeze.get(thresholdF)?.first[50])
    .find((finding) => finding !== undefined && !isUnknown(finding));
  return found ?? freezeAt(thresholdC).first[50] ?? absent(`freeze.first.${coldestF}f.50`);
}

/** True where the record says nothing, as opposed to a freeze that does not come. */
function isUnknown({ value }: DateFinding): boolean {
  return value.kind === 'none' && ['freeze-threshold-not-given', 'not-given'].includes(value.reason);
}

/** A threshold or chance that the region's record does not give. */
function absent(id: string): DateFinding {
  return { id, value: none('not-given'), method: 'freeze.typed-table', inputs: [], sources: [] };
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
    ]),
  ];
  const map = new Map(all.map((finding) => [finding.id, finding]));
  for (const { crop, windows } of facts.crops) {
    const growth =
      facts.air && windows[0] ? onionGrowthOf(crop, windows[0], { place, air: facts.air }) : undefined;
    if (growth) {
      const { leaves, size, curing } = growth;
      for (const [name, finding] of Object.entries({ 'leaves-at-bulbing': leaves, size, curing: curing })) {
        map.set(name === 'curing' ? `${crop.id}.curing-dates` : `${crop.id}.${name}`, finding);
      }
    }
    if (crop.dayLength) for (const [id, finding] of dayLengthFindings(crop, place)) map.set(id, finding);
  }
  return map;
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
