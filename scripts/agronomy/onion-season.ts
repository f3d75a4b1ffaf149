/**
 * An onion planting followed over its whole window: what a gardener may expect who plants on its first day, on its last,
 * or on any day between.
 */
import { degreeDaysOfDay } from '../climate/degree-days.ts';
import { maximumOn, minimumOn, type TemperatureYear } from '../climate/temperature-year.ts';
import {
  dateRange,
  type DateRangeFinding,
  type DayNumber,
  type Finding,
  type FindingValue,
} from '../findings/finding.ts';
import type { Crop, DayLengthClass } from '../records/schemas/crop.ts';
import { curingFinding, onionGrowth, type OnionGrowth } from './onion-growth.ts';
import type { OnionPlace } from './onion.ts';
import { overwinteredBulbs } from './overwinter.ts';
import { isWholeYear } from '../climate/calendar.ts';
import type { PlantingWindows } from './windows.ts';

/** All as `<crop>.<class>.<name>.<method>.<season>`. */
export interface OnionSeason {
  readonly dayLengthClass: DayLengthClass;
  readonly planting: PlantingWindows;
  /** `bulbing-after-planting`: from the first bulbs of the first planting to the last of the last. */
  readonly bulbing: DateRangeFinding;
  /** `leaves-first` and `leaves-last`: when bulbs start, for plants of the first and of the last day. */
  readonly leavesFirst: Finding;
  readonly leavesLast: Finding;
  /** `size-first` and `size-last`. */
  readonly sizeFirst: Finding;
  readonly sizeLast: Finding;
  /** `harvest`: from the first tops down to the last. */
  readonly harvest: DateRangeFinding;
  /** `curing`: from the first harvest to the end of the longest curing of the last. */
  readonly curing: DateRangeFinding;
}

/** How a class grows in a planting window; undefined where the window has no dates, or no first day since it is the whole year. */
export function onionSeason(
  crop: Crop,
  {
    dayLengthClass,
    planting,
    place,
    air,
  }: {
    readonly dayLengthClass: DayLengthClass;
    readonly planting: PlantingWindows;
    readonly place: OnionPlace;
    readonly air: TemperatureYear;
  },
): OnionSeason | undefined {
  const { value } = planting.plant;
  if (value.kind === 'none' || isWholeYear(value)) return undefined;
  // What is planted for the next year is followed as in the months before the year, and told a year later.
  const later = planting.season === 'overwinter' ? 365 : 0;
  const plantedOn = (day: DayNumber): OnionGrowth => {
    const growth = followedFrom(day - later);
    if (later === 0) return growth;
    const harvest = overwinteredBulbs(crop, planting.harvest, growth);
    return {
      ...growth,
      bulbing: shifted(growth.bulbing, later),
      harvest,
      curing: curingFinding(crop, harvest, growth.curing.id),
    };
  };
  const followedFrom = (plantDay: DayNumber): OnionGrowth =>
    onionGrowth({
      crop,
      dayLengthClass,
      place,
      method: planting.method,
      plantDay,
      degreeDaysOn: (day, baseC) =>
        degreeDaysOfDay({ minimumC: minimumOn(air, day), maximumC: maximumOn(air, day) }, { baseC }),
      temperatureSources: air.sources,
    });
  const [first, last] = [plantedOn(value.from), plantedOn(value.to)];
  const id = (name: string): string =>
    `${crop.id}.${dayLengthClass}.${name}.${planting.method}.${planting.season}`;
  return {
    dayLengthClass,
    planting,
    bulbing: spanning(id('bulbing-after-planting'), first.bulbing, last.bulbing),
    leavesFirst: { ...first.leaves, id: id('leaves-first') },
    leavesLast: { ...last.leaves, id: id('leaves-last') },
    sizeFirst: { ...first.size, id: id('size-first') },
    sizeLast: { ...last.size, id: id('size-last') },
    harvest: spanning(id('harvest'), first.harvest, last.harvest),
    curing: spanning(id('curing'), first.curing, last.curing),
  };
}

function shifted(finding: DateRangeFinding, days: number): DateRangeFinding {
  return finding.value.kind === 'none'
    ? finding
    : { ...finding, value: dateRange(finding.value.from + days, finding.value.to + days) };
}

/** From the beginning of the one to the end of the other; told with what went into the first. */
function spanning(id: string, first: DateRangeFinding, last: DateRangeFinding): DateRangeFinding {
  const value: FindingValue =
    first.value.kind === 'none'
      ? first.value
      : last.value.kind === 'none'
        ? last.value
        : dateRange(first.value.from, Math.max(first.value.to, last.value.to));
  return { ...first, id, value };
}
