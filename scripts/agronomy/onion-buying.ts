/**
 * Which onions to buy and plant: a thick plant, or a thick set, that goes through a cold spell after planting takes it
 * for its first winter and flowers instead of making a bulb.
 */
import { meanOn, type TemperatureYear } from '../climate/temperature-year.ts';
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
import { toHeld } from '../quantities/units.ts';
import type { Crop } from '../records/schemas/crop.ts';
import { merged } from './window-parts.ts';

export const boltingRisks = ['bolting-low', 'bolting-raised', 'bolting-high'] as const;
export type BoltingRisk = (typeof boltingRisks)[number];

/**
 * Daily means that count as cold. Source: Dixondale Farms, Bolting in Alliums: below 45 F sustained with five leaves,
 * below 50 F for two weeks or more with seven to ten.
 */
export const coldC = { cool: (50 - 32) / 1.8, cold: (45 - 32) / 1.8 } as const;

/** How long a spell is. Two weeks below 50 F is published; four weeks below 45 F for "sustained" is common practice. */
export const spellDays = { cool: 14, cold: 28 } as const;

/** How long after planting a spell counts: while the plant is young. Common practice. */
const watchedDays = 120;

/**
 * By how much a cold spring is colder than the average one, whose curve has no spells in it: 4 F. Ours, common practice
 * for want of daily records; gardeners are told of the cold that comes in one spring out of several.
 */
export const coldSpringC = 4 / 1.8;

/** How a plant or set compares with the size that is safe to plant. */
export type PlantingSize = 'thin' | 'middling' | 'thick';

export interface ColdSpell {
  /** Longest run of days with a mean below 50 F. */
  readonly coolDays: number;
  /** Longest run of days with a mean below 45 F. */
  readonly coldDays: number;
}

/** The longest spells in the 120 days after planting, in an average year or in one that is colder by some kelvins. */
export function coldSpell(
  air: TemperatureYear,
  plantDay: DayNumber,
  { colderByC = 0 }: { readonly colderByC?: number } = {},
): ColdSpell {
  return { coolDays: longestRun(coldC.cool + colderByC), coldDays: longestRun(coldC.cold + colderByC) };

  function longestRun(belowC: number): number {
    let [run, longest] = [0, 0];
    for (let day = plantDay; day < plantDay + watchedDays; day += 1) {
      run = meanOn(air, day) < belowC ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    return longest;
  }
}

/**
 * Thin is below, thick above the safe diameters of the record: for transplants its figure `transplant-diameter` (a
 * pencil, 1/4 to 3/8 in where the record has none), for sets `small-set-diameter` (half of the other where the record
 * has none) and `set-diameter` (3/4 in).
 */
export function plantingSize(crop: Crop, kind: 'transplant' | 'sets', diameterMm: number): PlantingSize {
  const { low, high } = safeDiameter(crop, kind);
  if (diameterMm > high + 1e-6) return 'thick';
  return diameterMm < low - 1e-6 ? 'thin' : 'middling';
}

/**
 * The ordinal risk that a planting flowers: low without a cold spell; else it rises with size and with the spell. It
 * never falls when either grows. Sets have had a winter in storage, so that a big one flowers without any cold in the
 * garden: W. Shoemaker of the University of Illinois writes that large sets always flower, and that at half an inch they
 * are big enough to. The steps are common practice; no published odds were found.
 */
export function boltingRiskOf(
  size: PlantingSize,
  spell: ColdSpell,
  kind: OnionPurchase['kind'] = 'transplant',
): BoltingRisk {
  const cold = spell.coldDays >= spellDays.cold ? 2 : spell.coolDays >= spellDays.cool ? 1 : 0;
  const bySize = { thin: 0, middling: 1, thick: 2 }[size];
  const grade = Math.max(cold === 0 ? 0 : cold + bySize, kind === 'sets' && bySize > 0 ? bySize + 1 : 0);
  return grade >= 3 ? 'bolting-high' : grade === 2 ? 'bolting-raised' : 'bolting-low';
}

export interface OnionPurchase {
  readonly crop: Crop;
  readonly kind: 'transplant' | 'sets';
  /** Thickness of the neck of a transplant, or the diameter of a set. */
  readonly diameterMm: number;
  readonly plantDay: DayNumber;
  readonly air: TemperatureYear;
}

/** The risk of one purchase in a cold spring, as `<crop>.bolting`: a choice of `boltingRisks`. */
export function boltingRisk({ crop, kind, diameterMm, plantDay, air }: OnionPurchase): Finding {
  const spell = coldSpell(air, plantDay, { colderByC: coldSpringC });
  const safe = safeDiameter(crop, kind);
  return {
    id: `${crop.id}.bolting`,
    value: choice(boltingRiskOf(plantingSize(crop, kind, diameterMm), spell, kind)),
    method: 'onion.bolting-risk',
    inputs: [
      { name: 'diameter', value: quantity('length', diameterMm) },
      { name: 'safe-diameter', value: quantity('length', safe.low, safe.high) },
      { name: 'planting-day', value: date(plantDay) },
      { name: 'longest-cool-spell', value: quantity('duration', spell.coolDays) },
      { name: 'longest-cold-spell', value: quantity('duration', spell.coldDays) },
    ],
    sources: merged(
      [
        'dixondale-bolting',
        ...(kind === 'sets' ? ['illinois-onion-sets-2010'] : []),
        'common-practice-gardening',
      ],
      safe.sources,
      air.sources,
    ),
  };
}

/** One row of the table of bolting risks: a size, by the middle of its thickness, on three days of a window. */
export interface BoltingRow {
  readonly kind: OnionPurchase['kind'];
  readonly size: PlantingSize;
  /** What is thinner or thicker than the safe sizes, or the safe sizes themselves, in millimetres. */
  readonly low?: number;
  readonly high?: number;
  /** `<crop>.bolting-<kind>-<size>.<early, mid or late>`. */
  readonly risks: readonly Finding[];
}

/** Planted on the first, the middle and the last day of a window; empty where it has no dates. */
export function boltingTable(
  crop: Crop,
  { planting, air }: { readonly planting: DateRangeFinding; readonly air: TemperatureYear },
): readonly BoltingRow[] {
  if (planting.value.kind === 'none') return [];
  const { from, to } = planting.value;
  const days = { early: from, mid: Math.round((from + to) / 2), late: to };
  return (['transplant', 'sets'] as const).flatMap((kind) => {
    const { low, high } = safeDiameter(crop, kind);
    const rows = [
      { size: 'thin', high: low, diameterMm: low * 0.9 },
      { size: 'middling', low, high, diameterMm: (low + high) / 2 },
      { size: 'thick', low: high, diameterMm: high * 1.1 },
    ] as const;
    return rows.map(({ diameterMm, ...row }) => ({
      kind,
      ...row,
      risks: Object.entries(days).map(([name, plantDay]) => ({
        ...boltingRisk({ crop, kind, diameterMm, plantDay, air }),
        id: `${crop.id}.bolting-${kind}-${row.size}.${name}`,
      })),
    }));
  });
}

export interface BuyingAdvice {
  /** `<crop>.buy-size`: `buy-any-size`, `buy-pencil-or-thinner` or `buy-thinner-than-pencil`. */
  readonly size: Finding;
  /** `<crop>.buy-when`: the two weeks before planting opens, while there is a choice. Common practice. */
  readonly when: DateRangeFinding;
  /** `<crop>.buy-bundle`: plants in a bundle, from the record's figure `bundle`. */
  readonly bundle: Finding;
  /** `<crop>.row-plants`: how many plants or sets stand in 10 ft of row. */
  readonly rowPlants: Finding;
  /** `<crop>.row-per-bundle`: the row that one bundle fills. */
  readonly rowPerBundle: Finding;
}

/** The row that gardeners reckon by: 10 ft. */
const rowMm = toHeld(10, 'ft');

const buyingDays = 14;

/**
 * What to look for when buying transplants for a planting window, by the cold that follows it here in a cold spring;
 * the size is none where the air is not known.
 */
export function buyingAdvice(
  crop: Crop,
  { planting, air }: { readonly planting: DateRangeFinding; readonly air: TemperatureYear | undefined },
): BuyingAdvice {
  const opens = planting.value.kind === 'date-range' ? planting.value.from : undefined;
  const safe = safeDiameter(crop, 'transplant');
  const figure = crop.figures?.find(({ id }) => id === 'bundle');
  const inBundle = figure && 'low' in figure ? figure : undefined;
  const spell = air && opens !== undefined ? coldSpell(air, opens, { colderByC: coldSpringC }) : undefined;
  const { value: inRow, sources: inRowSources } = crop.spacing.inRow;
  const inRowInput = { name: 'in-row-spacing', value: quantity('length', inRow.low, inRow.high) };
  return {
    size: {
      id: `${crop.id}.buy-size`,
      value:
        planting.value.kind === 'none'
          ? planting.value
          : spell
            ? choice(sizeAdvice(spell))
            : none('temperatures-not-given'),
      method: 'onion.buying-size',
      inputs: [
        inputOf('planting', planting),
        { name: 'safe-diameter', value: quantity('length', safe.low, safe.high) },
        ...(spell ? spellInputs(spell) : []),
      ],
      sources: merged(['dixondale-bolting', 'common-practice-gardening'], safe.sources, air?.sources ?? []),
    },
    when: {
      id: `${crop.id}.buy-when`,
      value:
        planting.value.kind === 'none'
          ? planting.value
          : dateRange(planting.value.from - buyingDays, planting.value.from),
      method: 'onion.buying-time',
      inputs: [inputOf('planting', planting)],
      sources: merged(['common-practice-gardening'], planting.sources),
    },
    bundle: {
      id: `${crop.id}.buy-bundle`,
      value: inBundle
        ? { kind: 'count-range', low: inBundle.low, high: inBundle.high }
        : none('no-bundle-figure'),
      method: 'published',
      inputs: [],
      sources: figure?.sources ?? crop.depth.sources,
    },
    rowPlants: {
      id: `${crop.id}.row-plants`,
      value: countRange(Math.floor(rowMm / inRow.high + 1e-9), Math.floor(rowMm / inRow.low + 1e-9)),
      method: 'onion.row-plants',
      inputs: [{ name: 'row-length', value: quantity('length', rowMm) }, inRowInput],
      sources: inRowSources,
    },
    rowPerBundle: {
      id: `${crop.id}.row-per-bundle`,
      value: inBundle
        ? quantity('length', inBundle.low * inRow.low, inBundle.high * inRow.high)
        : none('no-bundle-figure'),
      method: 'onion.row-per-bundle',
      inputs: [
        ...(inBundle ? [{ name: 'plants-in-bundle', value: countRange(inBundle.low, inBundle.high) }] : []),
        inRowInput,
      ],
      sources: merged(inBundle?.sources ?? [], inRowSources),
    },
  };
}

/** The thickest size whose risk is not above what it is without cold; else the one that keeps it from being high. */
function sizeAdvice(spell: ColdSpell): string {
  if (boltingRiskOf('thick', spell) === 'bolting-low') return 'buy-any-size';
  return boltingRiskOf('middling', spell) === 'bolting-high'
    ? 'buy-thinner-than-pencil'
    : 'buy-pencil-or-thinner';
}

function countRange(low: number, high: number): FindingValue {
  return low === high ? count(low) : { kind: 'count-range', low, high };
}

function spellInputs(spell: ColdSpell): FindingInput[] {
  return [
    { name: 'longest-cool-spell', value: quantity('duration', spell.coolDays) },
    { name: 'longest-cold-spell', value: quantity('duration', spell.coldDays) },
  ];
}

export interface SortedSets {
  /** Diameters in millimetres, in the order given. */
  readonly bulbs: readonly number[];
  readonly greens: readonly number[];
  /** `<crop>.sets-for-bulbs` and `<crop>.sets-for-greens`. */
  readonly findings: readonly [Finding, Finding];
}

/**
 * Sorts sets by diameter: up to the record's `set-diameter` (3/4 in where it has none) for bulbs, thicker ones for
 * green onions, which are pulled before they could flower. A diameter that is not above 0 throws a RangeError.
 */
export function sortSets(crop: Crop, diametersMm: readonly number[]): SortedSets {
  const wrong = diametersMm.find((diameter) => !(diameter > 0));
  if (wrong !== undefined) throw new RangeError(`no such set: ${wrong} mm`);
  const { high, sources } = safeDiameter(crop, 'sets');
  const bulbs = diametersMm.filter((diameter) => diameter <= high + 1e-6);
  const greens = diametersMm.filter((diameter) => diameter > high + 1e-6);
  const finding = (name: string, sets: readonly number[]): Finding => ({
    id: `${crop.id}.${name}`,
    value: count(sets.length),
    method: 'onion.sorted-sets',
    inputs: [
      { name: 'sets', value: count(diametersMm.length) },
      { name: 'set-diameter', value: quantity('length', high) },
    ],
    sources,
  });
  return { bulbs, greens, findings: [finding('sets-for-bulbs', bulbs), finding('sets-for-greens', greens)] };
}

interface SafeDiameter {
  readonly low: number;
  readonly high: number;
  readonly sources: readonly string[];
}

function safeDiameter(crop: Crop, kind: 'transplant' | 'sets'): SafeDiameter {
  const figure = crop.figures?.find(
    ({ id }) => id === (kind === 'sets' ? 'set-diameter' : 'transplant-diameter'),
  );
  const length = figure && 'length' in figure ? figure.length : undefined;
  const sources = length ? figure!.sources : ['handbook-from-memory'];
  if (kind === 'transplant')
    return { low: length?.low ?? toHeld(0.25, 'in'), high: length?.high ?? toHeld(0.375, 'in'), sources };
  const high = length?.high ?? toHeld(0.75, 'in');
  const small = crop.figures?.find(({ id }) => id === 'small-set-diameter');
  if (small && 'length' in small)
    return { low: Math.min(small.length.high, high), high, sources: merged(sources, small.sources) };
  return { low: high / 2, high, sources };
}
