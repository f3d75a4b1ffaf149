/** What the windows of every season share: the rules that may set an edge, ids, sources and days to harvest. */
import { choice, type DayNumber, type FindingInput } from '../findings/finding.ts';
import type { Crop, PlantingMethod } from '../records/schemas/crop.ts';
import type { TemperatureDay } from './window-temperatures.ts';

/** `year`: the one planting time of a place without an average last freeze, where spring and fall set no dates. */
export type WindowSeason = 'spring' | 'fall' | 'overwinter' | 'year';

export const edgeRules = [
  /** Counted from the average last freeze, by hardiness group or by the crop's own record. */
  'offset',
  /** The soil at seed depth reaches the temperature in which the seed is sown. */
  'soil-temperature',
  /** The soil four inches down is as warm as planting of this crop had better wait for. */
  'planting-soil',
  /** The ground has thawed and can be worked. */
  'soil-workable',
  /** Nights colder than plants stand have passed, in half of the years or by the chance that is planned by. */
  'cold-limit',
  /** Only one year in ten still has a freeze. */
  'late-freeze',
  /** The soil at seed depth is no longer too warm for the seed. */
  'soil-heat',
  /** Harvest must begin before days are too warm for the crop, or not before they are cool again. */
  'heat',
  /** The crop must be ready before the freeze that ends it. */
  'ending-freeze',
  /** No freeze ends it: ready by mid-winter. */
  'year-end',
  /** Not before the spring window has closed. */
  'after-spring',
  /** So many days from the other edge. */
  'window-length',
  /** Counted from the average first freeze of fall. */
  'first-freeze',
  /** The days of growth are on average as warm as a warm-season crop needs; only where no freeze sets the dates. */
  'warmth',
  /** So many days about the coolest day of the year; only for bulbs where no freeze sets the dates. */
  'coolest',
  /** No rule: every day of the year suits. */
  'whole-year',
  /** There is no window, and no rule came so far as to set this edge. */
  'no-window',
] as const;

/** The rule that set an edge of a window: its words are the phrase `choice.edge-<rule>`. */
export type EdgeRule = (typeof edgeRules)[number];

export interface WindowEdges {
  readonly opens: EdgeRule;
  readonly closes: EdgeRule;
}

export const noEdges: WindowEdges = { opens: 'no-window', closes: 'no-window' };

/** One rule's demand on an edge, with what it was worked out from. */
export interface Bound {
  readonly day: DayNumber;
  readonly rule: EdgeRule;
  readonly inputs: readonly FindingInput[];
  readonly sources: readonly string[];
}

/** The bound that lets a window open last. Of equals the first rules. */
export function latest(bounds: readonly [Bound, ...Bound[]]): Bound {
  return bounds.reduce((ruling, bound) => (bound.day > ruling.day ? bound : ruling));
}

/** The bound that closes a window first. Of equals the first rules. */
export function earliest(bounds: readonly [Bound, ...Bound[]]): Bound {
  return bounds.reduce((ruling, bound) => (bound.day < ruling.day ? bound : ruling));
}

/** A temperature's day moved by some days, as the bound that it sets on an edge; none where it asks nothing. */
export function bounded(found: TemperatureDay, rule: EdgeRule, shift: number): Bound[] {
  return found.kind === 'day'
    ? [{ day: found.day + shift, rule, inputs: found.inputs, sources: found.sources }]
    : [];
}

/** The rules of both edges as inputs of a window, so that each window says what set it. */
export function edgeInputs(opens: Bound, closes: Bound): FindingInput[] {
  return [
    { name: 'opens-by', value: choice(`edge-${opens.rule}`) },
    { name: 'closes-by', value: choice(`edge-${closes.rule}`) },
  ];
}

const temperatureRules: readonly EdgeRule[] = [
  'soil-temperature',
  'planting-soil',
  'soil-workable',
  'cold-limit',
  'late-freeze',
  'soil-heat',
  'heat',
];

/** Whether more than weeks from a freeze and days to maturity set an edge. */
export function setByTemperature(...bounds: readonly Bound[]): boolean {
  return bounds.some(({ rule }) => temperatureRules.includes(rule));
}

/**
 * December 31 after a northern spring, June 30 after a southern one: a crop that no freeze ends should be ready by
 * mid-winter. A southern last freeze falls in the second half of the calendar year.
 */
export function midWinter(lastFreezeDay: DayNumber): DayNumber {
  return lastFreezeDay > 182 ? 365 + 181 : 365;
}

export type Planting = Crop['plantings'][number];

/**
 * What a transplant is ahead of seed sown in place on the day it is set out, at the most: small plants in cells grow
 * slowly and must root again. Common practice.
 */
const mostDaysSaved = 14;

/**
 * Days from planting as this method does it to the first harvest. A crop whose published days count from
 * setting out takes the age of its transplants longer when it is sown in place; one whose days count from
 * sowing takes up to two weeks less when it is set out.
 */
export function daysAfterPlanting(crop: Crop, planting: Planting): { low: number; high: number } {
  const { low, high } = crop.maturity.days;
  const setOut = planting.method !== 'direct-sow';
  const age = crop.plantings.find((other) => other.age)?.age?.value;
  if (!age || setOut === (crop.maturity.from === 'planting-out')) return { low, high };
  return setOut
    ? { low: low - Math.min(age.high, mostDaysSaved), high: high - Math.min(age.low, mostDaysSaved) }
    : { low: low + age.low, high: high + age.high };
}

const methodWord: Readonly<Record<PlantingMethod, string>> = {
  'direct-sow': 'direct-sow',
  transplant: 'set-out',
  sets: 'plant-sets',
  slips: 'plant-slips',
  'seed-pieces': 'plant-pieces',
};

/** The id of a planting window: `carrot.direct-sow.spring`. */
export function windowId(crop: Crop, method: PlantingMethod, season: WindowSeason): string {
  return `${crop.id}.${methodWord[method]}.${season}`;
}

/** Source ids in order, each once. */
export function merged(...lists: readonly (readonly string[])[]): readonly string[] {
  return [...new Set(lists.flat())];
}
