/** What is known of an onion in one region beyond the figures of its record: light, bulbs, harvest, bolting, buying. */
import { boltingTable, buyingAdvice, type BoltingRow } from '../agronomy/onion-buying.ts';
import { onionMaturityOrder, sizeLeaves } from '../agronomy/onion-growth.ts';
import { onionSeason, type OnionSeason } from '../agronomy/onion-season.ts';
import { lightAfterPlanting, onionClasses, type OnionPlace } from '../agronomy/onion.ts';
import type { PlantingWindows } from '../agronomy/windows.ts';
import type { TemperatureYear } from '../climate/temperature-year.ts';
import { count, none, type Finding } from '../findings/finding.ts';
import { dayLengthClasses, type Crop, type DayLengthClass } from '../records/schemas/crop.ts';

export interface OnionFacts {
  /** The classes for this latitude in every dated planting, the best class first; empty without air temperatures. */
  readonly seasons: readonly OnionSeason[];
  /** Risks by size over the window of the first planting; empty without air temperatures. */
  readonly bolting: readonly BoltingRow[];
  /** Everything that prose can name, by name. */
  readonly named: readonly (readonly [string, Finding])[];
}

export interface OnionRegion {
  readonly place: OnionPlace;
  readonly air: TemperatureYear | undefined;
}

/** What a sheet of this crop can tell; undefined for a crop without day-length classes. */
export function onionFacts(
  crop: Crop,
  windows: readonly PlantingWindows[],
  { place, air }: OnionRegion,
): OnionFacts | undefined {
  if (!crop.dayLength) return undefined;
  const seasons = air ? seasonsHere(crop, windows, { place, air }) : [];
  const dated = windows.find(({ plant }) => plant.value.kind === 'date-range');
  return {
    seasons,
    bolting: air && dated ? boltingTable(crop, { planting: dated.plant, air }) : [],
    named: [
      ...lights(crop, dated, place),
      ...growthNames(crop, seasons, air ? 'no-window' : 'temperatures-not-given'),
      ...buyingNames(crop, windows, air),
      ...leafMarks(crop),
    ],
  };
}

/** The season of the best class in one planting; undefined where it has no dates or the air is not known. */
export function mainSeason(
  crop: Crop,
  planting: PlantingWindows,
  { place, air }: OnionRegion,
): OnionSeason | undefined {
  return air ? seasonsHere(crop, [planting], { place, air })[0] : undefined;
}

function seasonsHere(
  crop: Crop,
  windows: readonly PlantingWindows[],
  { place, air }: { readonly place: OnionPlace; readonly air: TemperatureYear },
): readonly OnionSeason[] {
  return classesHere(crop, place).flatMap((dayLengthClass) =>
    windows.flatMap((planting) => onionSeason(crop, { dayLengthClass, planting, place, air }) ?? []),
  );
}

function classesHere(crop: Crop, place: OnionPlace): readonly DayLengthClass[] {
  const { main, also } = onionClasses(crop, place);
  return [main, also].flatMap(
    ({ value }) => dayLengthClasses.find((name) => value.kind === 'choice' && value.value === name) ?? [],
  );
}

function lights(
  crop: Crop,
  dated: PlantingWindows | undefined,
  place: OnionPlace,
): readonly (readonly [string, Finding])[] {
  if (dated?.plant.value.kind !== 'date-range') return [];
  const plantDay = dated.plant.value.from;
  return (crop.dayLength ?? []).map(({ class: name }) => {
    const finding = lightAfterPlanting(crop, name, { place, plantDay });
    return [finding.id, finding] as const;
  });
}

/** The leaves that bound the sizes, for a gardener who counts. */
function leafMarks(crop: Crop): readonly (readonly [string, Finding])[] {
  const marks = { 'leaves-for-medium': sizeLeaves.medium, 'leaves-for-large': sizeLeaves.large };
  return Object.entries(marks).map(([name, leaves]) => {
    const id = `${crop.id}.${name}`;
    return [
      id,
      { id, value: count(leaves), method: 'published', inputs: [], sources: ['dixondale-harvest-2018'] },
    ] as const;
  });
}

/** The best class in the first planting, by short names; and the classes in the order in which they ripen. */
function growthNames(
  crop: Crop,
  seasons: readonly OnionSeason[],
  reason: string,
): readonly (readonly [string, Finding])[] {
  const first = seasons[0];
  const names: readonly (readonly [string, keyof OnionSeason, string])[] = [
    ['bulbs-start', 'bulbing', 'onion.bulbing-after-planting'],
    ['leaves-at-bulbing', 'leavesFirst', 'onion.leaves-by-degree-days'],
    ['leaves-late', 'leavesLast', 'onion.leaves-by-degree-days'],
    ['size', 'sizeFirst', 'onion.size-by-leaves'],
    ['size-late', 'sizeLast', 'onion.size-by-leaves'],
    ['tops-down', 'harvest', 'onion.harvest'],
    ['curing-dates', 'curing', 'onion.curing'],
  ];
  const sameWay = seasons.filter(({ planting }) => planting === first?.planting);
  const order = onionMaturityOrder(crop, sameWay);
  return [
    ...names.map(([name, key, method]) => {
      const id = `${crop.id}.${name}`;
      return [id, (first?.[key] as Finding | undefined) ?? missing(id, reason, method)] as const;
    }),
    ...[1, 2].map((place) => {
      const id = `${crop.id}.ripens.${place}`;
      return [
        id,
        order[place - 1] ?? missing(id, first ? 'one-class-only' : reason, 'onion.order-of-harvest'),
      ] as const;
    }),
    ...seasons.flatMap((season) =>
      [season.bulbing, season.leavesFirst, season.leavesLast, season.harvest, season.curing].map(
        (finding) => [finding.id, finding] as const,
      ),
    ),
  ];
}

function buyingNames(
  crop: Crop,
  windows: readonly PlantingWindows[],
  air: TemperatureYear | undefined,
): readonly (readonly [string, Finding])[] {
  const planting = windows.find(({ method }) => method === 'transplant') ?? windows[0];
  if (!planting) return [];
  const advice = buyingAdvice(crop, { planting: planting.plant, air });
  return Object.values(advice).map((finding: Finding) => [finding.id, finding] as const);
}

function missing(id: string, reason: string, method: string): Finding {
  return { id, value: none(reason), method, inputs: [], sources: [] };
}
