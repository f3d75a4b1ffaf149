/**
 * Where a region's freeze dates come from, as the record reader hands it on: numbers only, files already read.
 */
import type { DayNumber } from '../findings/finding.ts';

/** One daily minimum; `null` where it is missing or failed a quality check. */
export interface DailyMinimum {
  readonly year: number;
  /** 1 to 12 */
  readonly month: number;
  /** 1 to 31 */
  readonly day: number;
  readonly minimumC: number | null;
  /** The daily maximum where the file has one; absent where it has no maxima at all. */
  readonly maximumC?: number | null;
}

export interface DailyStation {
  readonly station: string;
  readonly name: string;
  /** In order of date; days absent from the file are absent here. */
  readonly days: readonly DailyMinimum[];
}

/** Chance in percent of a later last freeze, or an earlier first freeze, and the day of the year (1 to 365). */
export type ChanceDates = Readonly<Partial<Record<number, DayNumber>>>;

export interface FreezeTableRow {
  readonly thresholdC: number;
  readonly last: ChanceDates;
  readonly first: ChanceDates;
}

export interface NormalsFreezeRow extends FreezeTableRow {
  /** Percent of years with a minimum at or below the threshold, 0 to 100. */
  readonly occurrencePercent: number;
  /** Days of the freeze-free season by the chance in percent of a longer one, as printed. */
  readonly seasonDays?: Readonly<Partial<Record<number, number>>>;
  /** True where the source says that the risk lasts all year. */
  readonly allYear?: true;
}

export interface NormalsFreeze {
  readonly station: string;
  readonly name: string;
  /** `1991-2020` */
  readonly period: string;
  /** The dates are conditional: the chances hold for years in which the threshold is reached at all. */
  readonly rows: readonly NormalsFreezeRow[];
}

export type FreezeData =
  | { readonly kind: 'table'; readonly rows: readonly FreezeTableRow[]; readonly source: string }
  | { readonly kind: 'daily'; readonly station: DailyStation; readonly source: string }
  | { readonly kind: 'normals'; readonly normals: NormalsFreeze; readonly source: string };
