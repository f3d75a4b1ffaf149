/**
 * Which onions form bulbs at a latitude, and when. An onion starts its bulb when the day reaches the length of
 * its class; the class whose latitudes hold the place is the one to plant.
 */
import { dateDayLengthReaches, dayLengthSource } from '../climate/day-length.ts';
import {
  choice,
  date,
  inputOf,
  none,
  quantity,
  type DateFinding,
  type DayNumber,
  type Finding,
} from '../findings/finding.ts';
import type { Crop, DayLengthClass } from '../records/schemas/crop.ts';

export interface OnionPlace {
  readonly latitudeDeg: number;
  readonly year: number;
}

type ClassRecord = NonNullable<Crop['dayLength']>[number];

/**
 * The day-length class for a latitude, and the second one where two classes meet (their published latitudes
 * overlap): `onion.class` and `onion.class-also`. Beyond all published latitudes the nearest class is given.
 */
export function onionClasses(crop: Crop, place: OnionPlace): { main: Finding; also: Finding } {
  const latitude = Math.abs(place.latitudeDeg);
  const ranked = [...(crop.dayLength ?? [])]
    .map((record) => ({
      record,
      outside: outsideBy(record, latitude),
      fromMiddle: Math.abs(latitude - middleOf(record)),
    }))
    .sort((a, b) => a.outside - b.outside || a.fromMiddle - b.fromMiddle);
  const [first, second] = ranked;
  const base = {
    method: 'onion.class-by-latitude',
    inputs: [{ name: 'latitude', value: quantity('angle', place.latitudeDeg) }],
  };
  if (!first) {
    return {
      main: {
        id: `${crop.id}.class`,
        value: none('no-day-length-class'),
        ...base,
        sources: crop.hardiness.sources,
      },
      also: {
        id: `${crop.id}.class-also`,
        value: none('no-day-length-class'),
        ...base,
        sources: crop.hardiness.sources,
      },
    };
  }
  const shared = second?.outside === 0;
  return {
    main: {
      id: `${crop.id}.class`,
      value: choice(first.record.class),
      ...base,
      sources: first.record.sources,
    },
    also: {
      id: `${crop.id}.class-also`,
      value: shared ? choice(second.record.class) : none('one-class-only'),
      ...base,
      sources: (shared ? second : first).record.sources,
    },
  };
}

/** The hours of daylight at which a class forms its bulb. */
export function bulbingHours(crop: Crop, wanted: DayLengthClass): Finding {
  const record = recordOf(crop, wanted);
  return {
    id: `${crop.id}.${wanted}.bulbing`,
    value: quantity('day-length', record.bulbing.low, record.bulbing.high),
    method: 'published',
    inputs: [],
    sources: record.sources,
  };
}

/** When lengthening days reach the lower and the upper end of a class's bulbing hours. */
export function bulbingDates(
  crop: Crop,
  wanted: DayLengthClass,
  place: OnionPlace,
): { starts: DateFinding; full: DateFinding } {
  const record = recordOf(crop, wanted);
  const hours = bulbingHours(crop, wanted);
  const reaches = (name: string, value: number): DateFinding => ({
    id: `${crop.id}.${wanted}.${name}`,
    value: dateDayLengthReaches({ ...place, hours: value, direction: 'rising' }),
    method: 'day-length.reaches',
    inputs: [
      { name: 'latitude', value: quantity('angle', place.latitudeDeg) },
      { name: 'day-length', value: quantity('day-length', value) },
      inputOf('bulbing-hours', hours),
    ],
    sources: [dayLengthSource, ...record.sources],
  });
  return {
    starts: reaches('bulbing-starts', record.bulbing.low),
    full: reaches('bulbing-full', record.bulbing.high),
  };
}

/**
 * What the light does for a class that is planted on a day, the days being taken as they lengthen toward summer:
 * `light-at-planting`, it is long enough for every bulb of the class before the plant has rooted, so that bulbs start
 * with few leaves; `light-soon`, it is so for the earliest of the class; `light-in-season`, it comes later;
 * `light-barely`, it comes only in the month around the longest day and is never enough for all; `light-never`.
 */
export const lightsAfterPlanting = [
  'light-at-planting',
  'light-soon',
  'light-in-season',
  'light-barely',
  'light-never',
] as const;
export type LightAfterPlanting = (typeof lightsAfterPlanting)[number];

/** Two weeks to root, as in `onion-growth.ts`; a month around the longest day is ours. */
const lightMargins = { rootingDays: 14, aroundLongestDays: 30 } as const;

/** The light after planting for one class, as `<crop>.<class>.light`. */
export function lightAfterPlanting(
  crop: Crop,
  wanted: DayLengthClass,
  { place, plantDay }: { readonly place: OnionPlace; readonly plantDay: DayNumber },
): Finding {
  const { starts, full } = bulbingDates(crop, wanted, place);
  return {
    id: `${crop.id}.${wanted}.light`,
    value: choice(lightOf(starts, full, { place, plantDay })),
    method: 'onion.light-after-planting',
    inputs: [
      { name: 'planting-day', value: date(plantDay) },
      inputOf('bulbing-starts', starts),
      inputOf('bulbing-full', full),
    ],
    sources: starts.sources,
  };
}

function lightOf(
  starts: DateFinding,
  full: DateFinding,
  { place, plantDay }: { readonly place: OnionPlace; readonly plantDay: DayNumber },
): LightAfterPlanting {
  if (never(starts)) return 'light-never';
  const rooted = plantDay + lightMargins.rootingDays;
  const longest = place.latitudeDeg >= 0 ? 172 : 355;
  if (never(full) && dayOf(starts) > longest - lightMargins.aroundLongestDays) return 'light-barely';
  if (!never(full) && dayOf(full) <= rooted) return 'light-at-planting';
  return dayOf(starts) <= rooted ? 'light-soon' : 'light-in-season';
}

function never({ value }: DateFinding): boolean {
  return value.kind === 'none' && value.reason === 'day-never-that-long';
}

/** The day a length is reached; before every planting where every day is longer. */
function dayOf({ value }: DateFinding): DayNumber {
  return value.kind === 'date' ? value.day : -Infinity;
}

function recordOf(crop: Crop, wanted: DayLengthClass): ClassRecord {
  const record = crop.dayLength?.find(({ class: name }) => name === wanted);
  if (!record) throw new TypeError(`${crop.id} has no day-length class ${wanted}`);
  return record;
}

/** How many degrees a latitude lies outside a class's published range; 0 inside it. */
function outsideBy(record: ClassRecord, latitude: number): number {
  return Math.max(record.latitudes.low - latitude, latitude - record.latitudes.high, 0);
}

function middleOf(record: ClassRecord): number {
  return (record.latitudes.low + record.latitudes.high) / 2;
}
