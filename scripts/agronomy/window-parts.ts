/** What the windows of every season share: the rules that may set an edge, ids, sources and days to harvest. */
import type { DayNumber, FindingInput } from '../findings/finding.ts';
import type { Crop, PlantingMethod } from '../records/schemas/crop.ts';

export type WindowSeason = 'spring' | 'fall' | 'overwinter';

export const edgeRules = [
  /** Counted from the average last freeze, by hardiness group or by the crop's own record. */
  'offset',
  /** The soil at seed depth reaches the temperature in which the seed is sown. */
  'soil-temperature',
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
  /** There is no window, and no rule came so far as to set this edge. */
  'no-window',
] as const;

/** The rule that set an edge of a window: its words are the phrase `choice.edge-<rule>`. */
export type EdgeRule = (typeof edgeRules)[number];

export interface WindowEdges {
  readonly opens: EdgeRule;
  readonly closes: EdgeRule;
}

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
