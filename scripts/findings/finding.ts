/**
 * A finding is a number (or a choice, or a date) that can answer for itself: its value with its dimension,
 * the method that made it, what went in, and the source of each. Sheets print findings, never bare numbers.
 *
 * A finding carries no words for people: `method` is the key of a phrase (`method.<method>`), `sources` are
 * ids of source records, and values are in held units (see quantities/units.ts).
 */
import type { Dimension } from '../quantities/units.ts';

/**
 * A day of a fixed 365-day year: 1 is January 1, 365 is December 31. Days before or after the year keep
 * counting (0 is December 31 of the year before, 366 is January 1 of the year after), so that a season may
 * run across New Year and still be in order. Fractions are rounded when the day is put into words.
 */
export type DayNumber = number;

export type FindingValue =
  | { readonly kind: 'quantity'; readonly dimension: Dimension; readonly value: number }
  | { readonly kind: 'range'; readonly dimension: Dimension; readonly low: number; readonly high: number }
  | { readonly kind: 'count'; readonly value: number }
  | { readonly kind: 'count-range'; readonly low: number; readonly high: number }
  | { readonly kind: 'date'; readonly day: DayNumber }
  | { readonly kind: 'date-range'; readonly from: DayNumber; readonly to: DayNumber }
  /** One of a closed list of ids, such as `short-day`; its words are the phrase `choice.<value>`. */
  | { readonly kind: 'choice'; readonly value: string }
  /** It does not happen, or cannot be known: the reason is the phrase `none.<reason>`. */
  | { readonly kind: 'none'; readonly reason: string };

export interface FindingInput {
  /** What the input is: the phrase `input.<name>`. */
  readonly name: string;
  readonly value: FindingValue;
  /** The finding this input is, when it is itself a finding. */
  readonly finding?: string;
}

export interface Finding<V extends FindingValue = FindingValue> {
  /** Lower-case words joined by dots and hyphens, unique within a region: `freeze.last.32f.50`, `carrot.sow-spring`. */
  readonly id: string;
  readonly value: V;
  readonly method: string;
  readonly inputs: readonly FindingInput[];
  /** Ids of source records, in order of weight. */
  readonly sources: readonly string[];
}

export type DateFinding = Finding<Extract<FindingValue, { kind: 'date' | 'none' }>>;
export type DateRangeFinding = Finding<Extract<FindingValue, { kind: 'date-range' | 'none' }>>;

/** Uses a finding as the input of another. */
export function inputOf(name: string, finding: Finding): FindingInput {
  return { name, value: finding.value, finding: finding.id };
}

export const count = (value: number): FindingValue => ({ kind: 'count', value });
export const date = (day: DayNumber): Extract<FindingValue, { kind: 'date' }> => ({ kind: 'date', day });
export const dateRange = (from: DayNumber, to: DayNumber): Extract<FindingValue, { kind: 'date-range' }> => ({
  kind: 'date-range',
  from,
  to,
});
export const none = (reason: string): Extract<FindingValue, { kind: 'none' }> => ({ kind: 'none', reason });
export const choice = (value: string): Extract<FindingValue, { kind: 'choice' }> => ({
  kind: 'choice',
  value,
});

/** A quantity, or a range when the two ends differ. */
export function quantity(dimension: Dimension, low: number, high: number = low): FindingValue {
  return low === high ? { kind: 'quantity', dimension, value: low } : { kind: 'range', dimension, low, high };
}
