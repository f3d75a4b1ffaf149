/**
 * How far an onion comes before its bulb starts: its leaves, and so its rings and size, and when it is ready. Leaves
 * come with warmth; the bulb starts when the day is long enough, however many leaves there are by then.
 */
import { dateDayLengthReaches, dayLengthHours, dayLengthSource } from '../climate/day-length.ts';
import {
  choice,
  count,
  date,
  dateRange,
  inputOf,
  none,
  quantity,
  type DateRangeFinding,
  type DayNumber,
  type Finding,
  type FindingInput,
  type FindingValue,
} from '../findings/finding.ts';
import type { Crop, DayLengthClass, PlantingMethod } from '../records/schemas/crop.ts';
import type { OnionPlace } from './onion.ts';
import { sumOf } from './succession.ts';
import { merged } from './window-parts.ts';

/** Growth is counted from this daily mean: 45 F. Source: Dixondale Farms, Heat Unit Accumulation in Onions. */
export const onionBaseC = (45 - 32) / 1.8;

/**
 * Degree days (kelvin days above 45 F) that one new leaf takes: 160 F units for short-day and 200 for long-day onions
 * by the same source; 180 for intermediate ones lies between them and is ours.
 */
export const degreeDaysPerLeaf: Readonly<Record<DayLengthClass, number>> = {
  'short-day': 160 / 1.8,
  intermediate: 180 / 1.8,
  'long-day': 200 / 1.8,
};

/** Days that a plant takes to root before it grows leaves. Same source: about two weeks. */
export const rootingDays = 14;

/**
 * Leaves with which growth begins. Transplants usually have four (Dixondale Farms, Bolting in Alliums). A set sprouts
 * with about three: common practice. Seed has none.
 */
export const leavesAtPlanting: Readonly<Partial<Record<PlantingMethod, number>>> = { transplant: 4, sets: 3 };

/**
 * Leaves that bound the sizes: thirteen are a perfect onion, and from seven on it may mature (Dixondale Farms,
 * Proper Time to Harvest). That fewer than seven are called small and thirteen large is common practice.
 */
export const sizeLeaves = { medium: 7, large: 13 } as const;
export type OnionSize = 'small' | 'medium' | 'large';

/** Days from the first swelling of the bulb to ripeness: 30 to 40. Source: growth stages of the onion, lcej.cn. */
export const bulbDays = { low: 30, high: 40 } as const;

/**
 * Days from planting to harvest of a plant whose class had light enough for a bulb before it had rooted: 75 for
 * short-day onions planted in the north in late spring. Source: Dixondale Farms, Onion Plant Daylength Guide.
 */
export const hurriedDays = 75;

const growthSource = 'dixondale-heat-units';
const maturitySource = 'dixondale-harvest-2018';
const bulbSource = 'lcej-onion-stages';

export interface OnionPlanting {
  readonly crop: Crop;
  readonly dayLengthClass: DayLengthClass;
  readonly place: OnionPlace;
  readonly method: PlantingMethod;
  /** The day of setting out, planting sets or sowing; in the year of `place`, or the months before it. */
  readonly plantDay: DayNumber;
  /** Degree days above `onionBaseC` that one day adds, in kelvin days; never negative. */
  readonly degreeDaysOn: (day: DayNumber) => number;
  /** Ids of the sources of the temperatures. */
  readonly temperatureSources?: readonly string[];
}

/** All as `<crop>.<class>.<name>`; none with the reason where days never get long enough for a bulb. */
export interface OnionGrowth {
  readonly dayLengthClass: DayLengthClass;
  /** `bulbing-after-planting`: between the first swelling and the day by which every bulb swells. */
  readonly bulbing: DateRangeFinding;
  /** `leaves`: when bulbs start, earliest to latest. One leaf makes one ring. */
  readonly leaves: Finding;
  /** `size`: the choice `onion-small`, `onion-medium` or `onion-large`, by the most of the leaves. */
  readonly size: Finding;
  /** `harvest`: tops down. */
  readonly harvest: DateRangeFinding;
  /** `curing`: from the first harvest to the end of the longest curing. */
  readonly curing: DateRangeFinding;
}

/**
 * Follows one planting. The bulb starts between the days on which the light reaches the two ends of the class's
 * published hours, but not before the plant has rooted; where the longest day is shorter than the upper end, the
 * longest day stands for it. Harvest follows the bulb by its published days, and is not sooner after planting than
 * the published days to maturity; where the light was long enough before the plant had rooted, it comes between 75 days
 * and the shortest days to maturity.
 */
export function onionGrowth(planting: OnionPlanting): OnionGrowth {
  const { crop, dayLengthClass } = planting;
  const id = (name: string): string => `${crop.id}.${dayLengthClass}.${name}`;
  const bulbing = bulbingFinding(planting, id('bulbing-after-planting'));
  const leaves = leavesFinding(planting, bulbing, id('leaves'));
  const harvest = harvestFinding(planting, bulbing, id('harvest'));
  return {
    dayLengthClass,
    bulbing,
    leaves,
    size: {
      id: id('size'),
      value: sizeValue(leaves.value),
      method: 'onion.size-by-leaves',
      inputs: [inputOf('leaves', leaves)],
      sources: merged([maturitySource, 'common-practice-gardening'], leaves.sources),
    },
    harvest,
    curing: curingFinding(crop, harvest, id('curing')),
  };
}

/** The size by whole leaves at the start of the bulb. */
export function onionSize(leaves: number): OnionSize {
  if (leaves >= sizeLeaves.large) return 'large';
  return leaves >= sizeLeaves.medium ? 'medium' : 'small';
}

/**
 * The classes in the order in which their harvests begin, as `<crop>.ripens.1` and on. Classes that make no bulb here
 * are left out; of two on one day the shorter-day class comes first.
 */
export function onionMaturityOrder(crop: Crop, growths: readonly OnionGrowth[]): readonly Finding[] {
  const order: readonly DayLengthClass[] = ['short-day', 'intermediate', 'long-day'];
  return growths
    .flatMap(({ dayLengthClass, harvest }) =>
      harvest.value.kind === 'none' ? [] : [{ dayLengthClass, harvest, from: harvest.value.from }],
    )
    .sort((a, b) => a.from - b.from || order.indexOf(a.dayLengthClass) - order.indexOf(b.dayLengthClass))
    .map(({ dayLengthClass, harvest }, index) => ({
      id: `${crop.id}.ripens.${index + 1}`,
      value: choice(dayLengthClass),
      method: 'onion.order-of-harvest',
      inputs: [inputOf('harvest', harvest)],
      sources: harvest.sources,
    }));
}

function bulbingFinding(planting: OnionPlanting, id: string): DateRangeFinding {
  const record = recordOf(planting);
  const rooted = planting.plantDay + rootingDays;
  const starts = dayWhenLong(planting, record.bulbing.low, 'none');
  const full = dayWhenLong(planting, record.bulbing.high, 'longest-day');
  return {
    id,
    value:
      starts === undefined || full === undefined
        ? none('day-never-that-long')
        : dateRange(Math.max(starts, rooted), Math.max(full, rooted)),
    method: 'onion.bulbing-after-planting',
    inputs: [
      { name: 'planting-day', value: date(planting.plantDay) },
      { name: 'latitude', value: quantity('angle', planting.place.latitudeDeg) },
      { name: 'bulbing-hours', value: quantity('day-length', record.bulbing.low, record.bulbing.high) },
      { name: 'rooting', value: quantity('duration', rootingDays) },
    ],
    sources: merged([dayLengthSource], record.sources, [growthSource]),
  };
}

/** The day the light is long enough; the day of planting where it always is. */
function dayWhenLong(
  { place, plantDay }: OnionPlanting,
  hours: number,
  otherwise: 'none' | 'longest-day',
): DayNumber | undefined {
  const reached = dateDayLengthReaches({ ...place, hours, direction: 'rising' });
  if (reached.kind === 'date') return reached.day;
  if (reached.reason === 'day-always-longer') return plantDay;
  return otherwise === 'longest-day' ? longestDayOf(place) : undefined;
}

function longestDayOf(place: OnionPlace): DayNumber {
  const around = place.latitudeDeg >= 0 ? 172 : 355;
  return [-3, -2, -1, 0, 1, 2, 3]
    .map((shift) => around + shift)
    .reduce((best, day) =>
      dayLengthHours({ ...place, day }) > dayLengthHours({ ...place, day: best }) ? day : best,
    );
}

function leavesFinding(planting: OnionPlanting, bulbing: DateRangeFinding, id: string): Finding {
  const { dayLengthClass, plantDay, method, degreeDaysOn } = planting;
  const perLeaf = degreeDaysPerLeaf[dayLengthClass];
  const at = leavesAtPlanting[method] ?? 0;
  const by = (day: DayNumber): number =>
    at + Math.floor(sumOf(degreeDaysOn, plantDay + rootingDays, day) / perLeaf + 1e-9);
  return {
    id,
    value:
      bulbing.value.kind === 'none'
        ? bulbing.value
        : countRange(by(bulbing.value.from), by(bulbing.value.to)),
    method: 'onion.leaves-by-degree-days',
    inputs: [
      inputOf('bulbing', bulbing),
      { name: 'leaves-at-planting', value: count(at) },
      { name: 'rooting', value: quantity('duration', rootingDays) },
      { name: 'degree-days-a-leaf', value: count(Math.round(perLeaf)) },
    ],
    sources: merged([growthSource, 'dixondale-bolting'], planting.temperatureSources ?? []),
  };
}

/** A plant goes on putting out the leaves it has begun, so the size goes by the day on which every bulb swells. */
function sizeValue(leaves: FindingValue): FindingValue {
  if (leaves.kind === 'count') return choice(`onion-${onionSize(leaves.value)}`);
  if (leaves.kind === 'count-range') return choice(`onion-${onionSize(leaves.high)}`);
  return leaves;
}

function harvestFinding(planting: OnionPlanting, bulbing: DateRangeFinding, id: string): DateRangeFinding {
  const { crop, plantDay, method } = planting;
  const { days, from } = crop.maturity;
  const age = crop.plantings.find((other) => other.age)?.age?.value;
  const longer = method === 'direct-sow' && from === 'planting-out' && age ? age : { low: 0, high: 0 };
  const usual = { low: days.low + longer.low, high: days.high + longer.high };
  const hurried = bulbing.value.kind === 'date-range' && bulbing.value.to <= plantDay + rootingDays;
  const toMaturity = hurried ? { low: Math.min(hurriedDays, usual.low), high: usual.low } : usual;
  const inputs: FindingInput[] = [
    inputOf('bulbing', bulbing),
    { name: 'bulb-days', value: quantity('duration', bulbDays.low, bulbDays.high) },
    { name: 'planting-day', value: date(plantDay) },
    { name: 'days-to-maturity', value: quantity('duration', toMaturity.low, toMaturity.high) },
  ];
  return {
    id,
    value:
      bulbing.value.kind === 'none'
        ? bulbing.value
        : dateRange(
            Math.max(bulbing.value.from + bulbDays.low, plantDay + toMaturity.low),
            Math.max(bulbing.value.to + bulbDays.high, plantDay + toMaturity.high),
          ),
    method: 'onion.harvest',
    inputs,
    sources: merged(
      bulbing.sources,
      [bulbSource],
      hurried ? ['dixondale-daylength'] : [],
      crop.maturity.sources,
    ),
  };
}

/** Curing by the record's own figure `curing`; none where it has none. */
function curingFinding(crop: Crop, harvest: DateRangeFinding, id: string): DateRangeFinding {
  const figure = crop.figures?.find((one) => one.id === 'curing');
  const duration = figure && 'duration' in figure ? figure.duration : undefined;
  return {
    id,
    value:
      harvest.value.kind === 'none'
        ? harvest.value
        : duration
          ? dateRange(harvest.value.from, harvest.value.to + duration.high)
          : none('no-curing-figure'),
    method: 'onion.curing',
    inputs: [
      inputOf('harvest', harvest),
      ...(duration ? [{ name: 'curing', value: quantity('duration', duration.low, duration.high) }] : []),
    ],
    sources: merged(figure?.sources ?? [], harvest.sources),
  };
}

function countRange(low: number, high: number): FindingValue {
  return low === high ? count(low) : { kind: 'count-range', low, high };
}

function recordOf({ crop, dayLengthClass }: OnionPlanting): NonNullable<Crop['dayLength']>[number] {
  const record = crop.dayLength?.find(({ class: name }) => name === dayLengthClass);
  if (!record) throw new TypeError(`${crop.id} has no day-length class ${dayLengthClass}`);
  return record;
}
