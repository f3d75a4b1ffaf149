/**
 * Last and first freeze dates of a region at one threshold, for chances of 10 to 90 percent. Every chance is plain
 * risk: counted over all years, those without a freeze among them. For a last freeze it is the chance of
 * a later one, so the 10 % date is late; for a first freeze the chance of an earlier one, so the 10 % date
 * is early.
 */
import {
  count,
  date,
  inputOf,
  none,
  quantity,
  type DateFinding,
  type DayNumber,
  type Finding,
  type FindingInput,
} from '../findings/finding.ts';
import { fromHeld } from '../quantities/units.ts';
import { freezeChances, type FreezeChance } from '../records/schemas/region.ts';
import { growingSeason, placeInSeason } from './calendar.ts';
import type { ChanceDates, DailyStation, FreezeData, FreezeTableRow, NormalsFreeze } from './freeze-data.ts';
import {
  fewestSeasons,
  freezeDays,
  freezesAllYear,
  usableSeasons,
  type FreezeEdge,
} from './freeze-seasons.ts';
import { dayAtChance, fitMixedNormal } from './mixed-normal.ts';
import { normalQuantile } from './normal-distribution.ts';

export type ChanceFindings = Readonly<Partial<Record<FreezeChance, DateFinding>>>;

/**
 * Days are those of the year in which the growing season begins: a last freeze in December before it is a day
 * below 1, and the first freeze of a southern season or of a mild winter is a day above 365. Every last
 * freeze comes before every first one.
 */
export interface FreezeDates {
  readonly thresholdC: number;
  readonly last: ChanceFindings;
  readonly first: ChanceFindings;
}

/** The thresholds of the printed tables, warmest first, in whole degrees Fahrenheit. */
export const freezeThresholdsF = [36, 32, 28, 24, 20, 16] as const;

export interface FreezeOptions {
  readonly thresholdC: number;
  /** North positive; tells which half of the year is winter. */
  readonly latitudeDeg: number;
}

/**
 * The freeze dates at one threshold. A chance that the source leaves out is absent; one that has no date is a finding
 * of kind `none`, with one of these reasons:
 *
 * - `freeze-never`: the threshold was never reached in the years of record
 * - `freeze-not-this-likely`: it is reached in fewer years than the chance asks for
 * - `freeze-chance-not-given`: the normals give no dates around this chance
 * - `freeze-outside-season`: the fitted date falls outside the twelve months searched
 * - `freeze-all-year`: the source says that the risk lasts all year, or half of the years on record or more have no season
 *   between two freezes
 * - `freeze-threshold-not-given`: the table or the normals lack the threshold
 * - `too-few-seasons`: the daily record is too thin; see `freezeDataFault`
 *
 * Methods: `freeze.typed-table`, `freeze.mixed-normal`, `freeze.normals`.
 */
export function freezeDates(data: FreezeData, options: FreezeOptions): FreezeDates {
  return {
    thresholdC: options.thresholdC,
    last: edgeFindings(data, 'last', options),
    first: edgeFindings(data, 'first', options),
  };
}

/**
 * The days between the 50 % dates, as the difference of the two (method `freeze.difference-of-dates`). This is not
 * NOAA's season length, which is the median of the longest stretches above the threshold and differs by a few days.
 * Without one of the dates it is `none` with the reason of the missing date.
 */
export function freezeFreeSeason(dates: FreezeDates): Finding {
  const last = dates.last[50];
  const first = dates.first[50];
  const inputs = [
    ...(last ? [inputOf('last-freeze', last)] : []),
    ...(first ? [inputOf('first-freeze', first)] : []),
  ];
  return {
    id: `freeze.free-days.${thresholdName(dates.thresholdC)}`,
    value: differenceOfDates(last, first),
    method: 'freeze.difference-of-dates',
    inputs,
    sources: [...new Set([...(last?.sources ?? []), ...(first?.sources ?? [])])],
  };
}

export interface FreezeDataFault {
  readonly fault: 'too-few-seasons';
  readonly edge: FreezeEdge;
  readonly usable: number;
  readonly needed: number;
}

/** What makes the data too thin to compute from, for the record reader to report before anything is computed. */
export function freezeDataFault(
  data: FreezeData,
  options: { latitudeDeg: number },
): FreezeDataFault | undefined {
  if (data.kind !== 'daily') return undefined;
  const usable = usableSeasons(data.station, options);
  const edge = usable.last.length <= usable.first.length ? 'last' : 'first';
  if (usable[edge].length >= fewestSeasons) return undefined;
  return { fault: 'too-few-seasons', edge, usable: usable[edge].length, needed: fewestSeasons };
}

/** What one method found for one chance; the id is the same for all of them. */
type Answer = Omit<DateFinding, 'id'>;

function edgeFindings(data: FreezeData, edge: FreezeEdge, options: FreezeOptions): ChanceFindings {
  const answers = answersOf(data, edge, options);
  const name = thresholdName(options.thresholdC);
  return Object.fromEntries(
    [...answers].map(([chance, answer]) => [chance, { id: `freeze.${edge}.${name}.${chance}`, ...answer }]),
  );
}

function answersOf(data: FreezeData, edge: FreezeEdge, options: FreezeOptions): Map<FreezeChance, Answer> {
  switch (data.kind) {
    case 'table':
      return fromTable(data.rows, data.source, edge, options);
    case 'daily':
      return fromDailyMinima(data.station, data.source, edge, options);
    case 'normals':
      return fromNormals(data.normals, data.source, edge, options);
  }
}

/** The dates as printed; a chance between two printed ones is left out. */
function fromTable(
  rows: readonly FreezeTableRow[],
  source: string,
  edge: FreezeEdge,
  options: FreezeOptions,
): Map<FreezeChance, Answer> {
  const method = 'freeze.typed-table';
  const row = rowAt(rows, options.thresholdC);
  if (!row)
    return forEveryChance((chance) =>
      unanswered(method, 'freeze-threshold-not-given', chance, source, options),
    );
  return new Map(
    placedDates(row[edge], edge, options.latitudeDeg).map(({ chance, day }) => [
      chance,
      { value: date(day), method, inputs: askedInputs(chance, options), sources: [source] },
    ]),
  );
}

/** Published method of the mixed normal fit; the record's own source comes first. */
const mixedNormalSource = 'koss-1988-cug20';

function fromDailyMinima(
  station: DailyStation,
  source: string,
  edge: FreezeEdge,
  options: FreezeOptions,
): Map<FreezeChance, Answer> {
  const days = freezeDays(station, edge, options);
  const fit = fitMixedNormal(days);
  const allYear = freezesAllYear(station, options);
  const inFreezeYears = days.filter((day) => day !== null).length;
  const season = growingSeason(options.latitudeDeg)[edge];
  const fitInputs: FindingInput[] = [
    { name: 'seasons', value: count(days.length) },
    { name: 'seasons-with-freeze', value: count(inFreezeYears) },
    ...(fit
      ? [
          { name: 'mean-date', value: date(fit.meanDay) },
          { name: 'standard-deviation', value: quantity('duration', fit.sdDays) },
        ]
      : []),
  ];
  const valueAt = (chance: FreezeChance): DateFinding['value'] => {
    if (days.length < fewestSeasons) return none('too-few-seasons');
    if (inFreezeYears === 0) return none('freeze-never');
    if (allYear) return none('freeze-all-year');
    const day = fit && dayAtChance(fit, edge, chance / 100);
    if (day === undefined) return none('freeze-not-this-likely');
    return day < season.from || day > season.to ? none('freeze-outside-season') : date(Math.round(day));
  };
  return forEveryChance((chance) => ({
    value: valueAt(chance),
    method: 'freeze.mixed-normal',
    inputs: [...askedInputs(chance, options), ...fitInputs],
    sources: [source, mixedNormalSource],
  }));
}

/**
 * Turns the conditional dates of the 1981-2010 and later normals into plain risk. A printed chance holds for years in
 * which the threshold is reached; plain chance = printed chance × occurrence. The date at a plain chance is
 * therefore that at the higher printed chance, read between the printed ones along the normal quantile. Nothing is
 * read beyond the last printed chance.
 */
function fromNormals(
  normals: NormalsFreeze,
  source: string,
  edge: FreezeEdge,
  options: FreezeOptions,
): Map<FreezeChance, Answer> {
  const method = 'freeze.normals';
  const row = rowAt(normals.rows, options.thresholdC);
  if (!row)
    return forEveryChance((chance) =>
      unanswered(method, 'freeze-threshold-not-given', chance, source, options),
    );
  const printed = placedDates(row[edge], edge, options.latitudeDeg);
  const valueAt = (chance: FreezeChance): DateFinding['value'] => {
    if (row.allYear) return none('freeze-all-year');
    if (row.occurrencePercent <= 0) return none('freeze-never');
    if (chance >= row.occurrencePercent) return none('freeze-not-this-likely');
    const day = dayBetweenChances(printed, chance / row.occurrencePercent);
    return day === undefined ? none('freeze-chance-not-given') : date(Math.round(day));
  };
  return forEveryChance((chance) => ({
    value: valueAt(chance),
    method,
    inputs: [
      ...askedInputs(chance, options),
      { name: 'occurrence-percent', value: count(row.occurrencePercent) },
    ],
    sources: [source],
  }));
}

export interface PlacedDate {
  readonly chance: FreezeChance;
  /** A day, or a number of days. */
  readonly day: DayNumber;
}

/**
 * The day at a chance (0 to 1) on the line through its two neighbours in normal quantiles, given in order of chance;
 * undefined beyond the first and the last.
 */
export function dayBetweenChances(printed: readonly PlacedDate[], chance: number): DayNumber | undefined {
  const hair = 1e-9;
  const above = printed.find((entry) => entry.chance / 100 >= chance - hair);
  const below = printed.findLast((entry) => entry.chance / 100 <= chance + hair);
  if (!above || !below) return undefined;
  if (above.chance === below.chance) return above.day;
  const [low, high, wanted] = [below.chance / 100, above.chance / 100, chance].map(normalQuantile) as [
    number,
    number,
    number,
  ];
  return below.day + ((above.day - below.day) * (wanted - low)) / (high - low);
}

/** The given dates in order of chance, moved into the freeze season they belong to. */
function placedDates(dates: ChanceDates, edge: FreezeEdge, latitudeDeg: number): PlacedDate[] {
  const season = growingSeason(latitudeDeg)[edge];
  return freezeChances.flatMap((chance) => {
    const day = dates[chance];
    return day === undefined ? [] : [{ chance, day: placeInSeason(day, season) }];
  });
}

/** The row of a threshold; undefined when the table lacks it. */
export function rowAt<R extends FreezeTableRow>(rows: readonly R[], thresholdC: number): R | undefined {
  return rows.find((row) => Math.abs(row.thresholdC - thresholdC) < 0.05);
}

function forEveryChance(answer: (chance: FreezeChance) => Answer): Map<FreezeChance, Answer> {
  return new Map(freezeChances.map((chance) => [chance, answer(chance)]));
}

function unanswered(
  method: string,
  reason: string,
  chance: FreezeChance,
  source: string,
  options: FreezeOptions,
): Answer {
  return { value: none(reason), method, inputs: askedInputs(chance, options), sources: [source] };
}

function askedInputs(chance: FreezeChance, options: FreezeOptions): FindingInput[] {
  return [
    { name: 'freeze-threshold', value: quantity('temperature', options.thresholdC) },
    { name: 'chance-percent', value: count(chance) },
  ];
}

function differenceOfDates(last: DateFinding | undefined, first: DateFinding | undefined): Finding['value'] {
  if (!last || !first) return none('freeze-chance-not-given');
  if (last.value.kind === 'none') return last.value;
  if (first.value.kind === 'none') return first.value;
  return quantity('duration', first.value.day - last.value.day);
}

/** `32f`: thresholds are whole degrees Fahrenheit in every American table. */
export function thresholdName(thresholdC: number): string {
  return `${Math.round(fromHeld(thresholdC, 'F'))}f`;
}
