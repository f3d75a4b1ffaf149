/**
 * How far an onion comes before its bulb starts: its leaves, and so its rings and size, and when it is ready. Leaves
 * come with warmth. The bulb starts when two things are there: a day that is long enough, and a sum of warmth since
 * planting. Day length alone would start the bulbs of the north in April, weeks before they are seen to start.
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

/** Leaves are counted from this daily mean: 45 F. Source: Dixondale Farms, Heat Unit Accumulation in Onions. */
export const onionBaseC = (45 - 32) / 1.8;

/**
 * Warmth without which no bulb starts, however long the day: 600 degree days. Source: J. E. Lancaster et al., Bulbing in
 * Onions, Annals of Botany 78, 1996; that they are counted above 5 C is from memory, and base 6 C moves the date by
 * less than a week in spring. The paper counts from sowing. That sets and transplants, which begin anew when they are
 * planted, take the same sum from planting is ours, and so is the fifth by which they may need less or more; with it the
 * bulbs start when growers in Kentucky, Illinois and Minnesota say they do (see the tests).
 */
export const bulbingWarmth = { baseC: 5, low: 480, published: 600, high: 720 } as const;

/**
 * Degree days (kelvin days above 45 F) that one new leaf takes: 160 F units. The same source says 160 to 200 by the
 * kind. This is the pace of a Texas grower; a count of leaves in Minnesota shows it to be slow for the north, so the
 * quicker end of it is the slower of the two paces that are followed.
 */
export const degreeDaysPerLeaf = 160 / 1.8;

/**
 * Days that one new leaf takes in growing weather, by the other pace: seven. Source: Onion Leaves Tell Their Own Story,
 * Vegetable Freak (southeast Minnesota), June 2013: a pair of leaves every two weeks. Growing weather is a daily mean
 * above 45 F: ours.
 */
export const daysPerLeaf = 7;

/** Days to root by the quicker pace: a week. Source: Time to Plant Onions, Vegetable Freak, April 2013. */
export const quickRootingDays = 7;

/** Days that a plant takes to root before it grows leaves. Dixondale Farms, as above: about two weeks. */
export const rootingDays = 14;

/**
 * Leaves with which growth begins. Transplants usually have four (Dixondale Farms, Bolting in Alliums). A set sprouts
 * with about three: common practice. Leaves from seed, which comes up slowly, are not counted.
 */
export const leavesAtPlanting: Readonly<Partial<Record<PlantingMethod, number>>> = { transplant: 4, sets: 3 };

/**
 * Leaves that bound the sizes: thirteen are a perfect onion, and from seven on it may mature (Dixondale Farms,
 * Proper Time to Harvest). That fewer than seven are called small and thirteen large is common practice.
 */
export const sizeLeaves = { medium: 7, large: 13 } as const;
export type OnionSize = 'small' | 'medium' | 'large';

/** The choices of a size: one size, or the two ends where the leaves are not sure. */
export const onionSizes = [
  'onion-small',
  'onion-small-medium',
  'onion-small-large',
  'onion-medium',
  'onion-medium-large',
  'onion-large',
] as const;

/** Days from the first swelling of the bulb to ripeness: 30 to 40. Source: growth stages of the onion, lcej.cn. */
export const bulbDays = { low: 30, high: 40 } as const;

/**
 * Days from planting to harvest of a plant whose class had light enough for a bulb before it had rooted: 75 for
 * short-day onions planted in the north in late spring. Source: Dixondale Farms, Onion Plant Daylength Guide.
 */
export const hurriedDays = 75;

/**
 * The longest days from sowing to harvest: 150, from vegetable production handbooks, from memory. At the short end seed
 * is two weeks behind sets and plants, the time it takes to come up in spring: ours. The bulbs of a late sowing ripen
 * little later than those of an early one (R. C. Hutton and G. J. Wilson, New Zealand Journal of Experimental Agriculture
 * 14, 1986), so that the age of transplants is not added.
 */
export const seedDays = { laterBy: 14, longest: 150 } as const;

const growthSource = 'dixondale-heat-units';
const paceSource = 'vegetable-freak-2013';
const warmthSource = 'lancaster-bulbing-1996';
const maturitySource = 'dixondale-harvest-2018';
const bulbSource = 'lcej-onion-stages';

export interface OnionPlanting {
  readonly crop: Crop;
  readonly dayLengthClass: DayLengthClass;
  readonly place: OnionPlace;
  readonly method: PlantingMethod;
  /** The day of setting out, planting sets or sowing; in the year of `place`, or the months before it. */
  readonly plantDay: DayNumber;
  /** Degree days above a base in degrees Celsius that one day adds, in kelvin days; never negative. */
  readonly degreeDaysOn: (day: DayNumber, baseC: number) => number;
  /** Ids of the sources of the temperatures. */
  readonly temperatureSources?: readonly string[];
}

/** All as `<crop>.<class>.<name>`; none with the reason where days never get long enough for a bulb. */
export interface OnionGrowth {
  readonly dayLengthClass: DayLengthClass;
  /** `bulbing-after-planting`: between the first swelling and the day by which every bulb swells. */
  readonly bulbing: DateRangeFinding;
  /** `leaves`: in the middle of the start of bulbs, by the slower and the faster pace. One leaf makes one ring. */
  readonly leaves: Finding;
  /** `size`: one of `onionSizes`, by the fewest and the most of the leaves. */
  readonly size: Finding;
  /** `harvest`: tops down. */
  readonly harvest: DateRangeFinding;
  /** `curing`: from the first harvest to the end of the longest curing. */
  readonly curing: DateRangeFinding;
}

/**
 * Follows one planting. The bulb starts when the light has reached the class's published hours, between the days of
 * the lower and of the upper end, but not before the plant has rooted and has had its sum of warmth. Where the longest
 * day is shorter than the upper end, the longest day stands for it; where the lower end is there all year, the shortest
 * day does, since onions planted in fall wait for the days to lengthen. Harvest follows the bulb by its published days, and is not sooner after planting than
 * the published days to maturity; where the light was long enough before the plant had rooted, not sooner than 75 days.
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
export function onionMaturityOrder(
  crop: Crop,
  growths: readonly Pick<OnionGrowth, 'dayLengthClass' | 'harvest'>[],
): readonly Finding[] {
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
  const light = lightDays(planting);
  return {
    id,
    value: bulbingValue(planting, light),
    method: 'onion.bulbing-after-planting',
    inputs: [
      { name: 'planting-day', value: date(planting.plantDay) },
      { name: 'latitude', value: quantity('angle', planting.place.latitudeDeg) },
      { name: 'bulbing-hours', value: quantity('day-length', record.bulbing.low, record.bulbing.high) },
      { name: 'rooting', value: quantity('duration', rootingDays) },
      {
        name: 'degree-days-for-bulbs',
        value: { kind: 'count-range', low: bulbingWarmth.low, high: bulbingWarmth.high },
      },
    ],
    sources: merged(
      [dayLengthSource],
      record.sources,
      [warmthSource, growthSource],
      planting.temperatureSources ?? [],
    ),
  };
}

function bulbingValue(
  planting: OnionPlanting,
  light: { starts: DayNumber; full: DayNumber } | undefined,
): DateRangeFinding['value'] {
  if (!light) return none('day-never-that-long');
  const rooted = planting.plantDay + rootingDays;
  const [warm, surelyWarm] = [bulbingWarmth.low, bulbingWarmth.high].map((needed) =>
    warmDay(planting, needed),
  );
  if (warm === undefined || surelyWarm === undefined) return none('too-cool-for-bulbs');
  return dateRange(Math.max(light.starts, rooted, warm), Math.max(light.full, rooted, surelyWarm));
}

/** The day by which the warmth since planting has come to a sum; undefined where a year does not bring it. */
function warmDay({ plantDay, degreeDaysOn }: OnionPlanting, needed: number): DayNumber | undefined {
  let sum = 0;
  for (let day = plantDay; day < plantDay + 365; day += 1) {
    sum += degreeDaysOn(day, bulbingWarmth.baseC);
    if (sum >= needed) return day;
  }
  return undefined;
}

/** The days on which the light reaches the two ends of the class's hours; undefined where it never does. */
function lightDays(planting: OnionPlanting): { starts: DayNumber; full: DayNumber } | undefined {
  const { place } = planting;
  const { bulbing } = recordOf(planting);
  const reached = (hours: number): DayNumber | 'always' | undefined => {
    const found = dateDayLengthReaches({ ...place, hours, direction: 'rising' });
    if (found.kind === 'date') return found.day;
    return found.reason === 'day-always-longer' ? 'always' : undefined;
  };
  const low = reached(bulbing.low);
  const starts = low === 'always' ? reached((bulbing.low + bulbing.high) / 2) : low;
  const full = reached(bulbing.high) ?? longestDayOf(place);
  const atOnce = (day: DayNumber | 'always' | undefined): DayNumber | undefined =>
    day === 'always' ? planting.plantDay : day;
  return combined(atOnce(starts), atOnce(full));
}

function combined(
  starts: DayNumber | undefined,
  full: DayNumber | undefined,
): { starts: DayNumber; full: DayNumber } | undefined {
  return starts === undefined || full === undefined ? undefined : { starts, full };
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
  const { method } = planting;
  const at = leavesAtPlanting[method] ?? 0;
  return {
    id,
    value:
      bulbing.value.kind === 'none'
        ? bulbing.value
        : leavesAtPlanting[method] === undefined
          ? none('leaves-of-seed')
          : leavesBy(planting, middleOf(bulbing.value)),
    method: 'onion.leaves-by-degree-days',
    inputs: [
      inputOf('bulbing', bulbing),
      { name: 'leaves-at-planting', value: count(at) },
      { name: 'rooting', value: quantity('duration', quickRootingDays, rootingDays) },
      { name: 'degree-days-a-leaf', value: count(Math.round(degreeDaysPerLeaf)) },
      { name: 'days-a-leaf', value: quantity('duration', daysPerLeaf) },
    ],
    sources: merged([growthSource, paceSource, 'dixondale-bolting'], planting.temperatureSources ?? []),
  };
}

/** Whole leaves on a day, by the slower and by the faster of the two paces. */
export function leavesBy({ plantDay, method, degreeDaysOn }: OnionPlanting, day: DayNumber): FindingValue {
  const warmth = (on: DayNumber): number => degreeDaysOn(on, onionBaseC);
  const byWarmth = sumOf(warmth, plantDay + rootingDays, day) / degreeDaysPerLeaf;
  const byDays = sumOf((on) => (warmth(on) > 0 ? 1 : 0), plantDay + quickRootingDays, day) / daysPerLeaf;
  const [fewest, most] = [Math.min(byWarmth, byDays), Math.max(byWarmth, byDays)].map(
    (leaves) => (leavesAtPlanting[method] ?? 0) + Math.floor(leaves + 1e-9),
  ) as [number, number];
  return countRange(fewest, most);
}

function middleOf({ from, to }: { readonly from: DayNumber; readonly to: DayNumber }): DayNumber {
  return Math.round((from + to) / 2);
}

function sizeValue(leaves: FindingValue): FindingValue {
  if (leaves.kind === 'count') return choice(`onion-${onionSize(leaves.value)}`);
  if (leaves.kind !== 'count-range') return leaves;
  const [low, high] = [onionSize(leaves.low), onionSize(leaves.high)];
  return choice(low === high ? `onion-${low}` : `onion-${low}-${high}`);
}

function harvestFinding(planting: OnionPlanting, bulbing: DateRangeFinding, id: string): DateRangeFinding {
  const { crop, plantDay } = planting;
  const { days } = crop.maturity;
  const usual = fromSeed(planting)
    ? { low: days.low + seedDays.laterBy, high: Math.max(seedDays.longest, days.high) }
    : { low: days.low, high: days.high };
  const light = lightDays(planting);
  const hurried = light !== undefined && light.full <= plantDay + rootingDays;
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
      fromSeed(planting) ? ['hutton-wilson-1986', 'handbook-from-memory'] : [],
      crop.maturity.sources,
    ),
  };
}

/** Sown, where the record counts its days to maturity from planting out. */
function fromSeed({ crop, method }: OnionPlanting): boolean {
  return method === 'direct-sow' && crop.maturity.from === 'planting-out';
}

/** Curing after a harvest by the record's own figure `curing`; none where it has none. */
export function curingFinding(crop: Crop, harvest: DateRangeFinding, id: string): DateRangeFinding {
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
