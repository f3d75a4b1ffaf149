/** How long the season between the last and the first freeze lasts, with its chances, and how often it freezes at all. */
import { choice, count, none, quantity, type Finding, type FindingInput } from '../findings/finding.ts';
import { freezeChances, type FreezeChance } from '../records/schemas/region.ts';
import { daysInYear } from './calendar.ts';
import type { DailyStation, FreezeData, NormalsFreeze } from './freeze-data.ts';
import { fewestSeasons, freezeDaysByYear, freezesAllYear, seasonLengthsOnRecord } from './freeze-seasons.ts';

import {
  dayBetweenChances,
  freezeDates,
  freezeFreeSeason,
  rowAt,
  thresholdName,
  type FreezeOptions,
} from './freeze.ts';
import { fitMixedNormal } from './mixed-normal.ts';
import { normalQuantile } from './normal-distribution.ts';

export { seasonLengthsOnRecord, shortestSeasonDays } from './freeze-seasons.ts';

export type SeasonLengths = Readonly<Record<FreezeChance, Finding>>;

/**
 * Days from the last freeze to the first one that a season passes with a chance of 10 to 90 percent, as findings
 * `freeze.free-days.32f.10`; the 10 % season is a long one. Years without a freeze count as longer than any.
 *
 * - daily minima: a normal curve through the lengths of the seasons whose both ends are on record (the form of
 *   Climatography of the U.S. No. 20, Supplement No. 1, on season lengths). Method `freeze.season-normal`.
 * - normals: NOAA's printed lengths, taken to hold, like its dates, for the years that reach the threshold. Method
 *   `freeze.season-normals`.
 * - a typed table, and normals without lengths: the difference of the dates at 50 %, method
 *   `freeze.difference-of-dates`; other chances are `none('season-length-not-given')`, since the two dates of one
 *   year do not go together.
 *
 * Other reasons: `season-whole-year` (a year or more), `freeze-never` and `season-not-this-short` (in so many years there is no freeze to end the season),
 * `freeze-all-year`, `too-few-seasons`, and those of the dates.
 */
export function seasonLengths(data: FreezeData, options: FreezeOptions): SeasonLengths {
  const answers = answersOf(data, options);
  const name = thresholdName(options.thresholdC);
  return Object.fromEntries(
    freezeChances.map((chance) => {
      const { value, method, inputs, sources } = answers(chance);
      return [chance, { id: `freeze.free-days.${name}.${chance}`, value, method, inputs, sources }];
    }),
  ) as unknown as SeasonLengths;
}

type Answer = Omit<Finding, 'id'>;

function answersOf(data: FreezeData, options: FreezeOptions): (chance: FreezeChance) => Answer {
  switch (data.kind) {
    case 'daily':
      return fromDailyMinima(data.station, data.source, options);
    case 'normals': {
      const row = rowAt(data.normals.rows, options.thresholdC);
      const { seasonDays } = row ?? {};
      return row && seasonDays && Object.keys(seasonDays).length > 0
        ? fromNormals({ ...row, seasonDays }, data.source, options)
        : fromDates(data, options);
    }
    case 'table':
      return fromDates(data, options);
  }
}

/** Published form of the normal fit to season lengths; the record's own source comes first. */
const seasonSource = 'koss-1988-cug20';

function fromDailyMinima(
  station: DailyStation,
  source: string,
  options: FreezeOptions,
): (chance: FreezeChance) => Answer {
  const lengths = seasonLengthsOnRecord(station, options);
  const fit = fitMixedNormal(lengths);
  const inputs: FindingInput[] = [
    { name: 'seasons', value: count(lengths.length) },
    { name: 'seasons-with-freeze', value: count(lengths.filter((length) => length !== null).length) },
    ...(fit
      ? [
          { name: 'mean-length', value: quantity('duration', fit.meanDay) },
          { name: 'standard-deviation', value: quantity('duration', fit.sdDays) },
        ]
      : []),
  ];
  const valueAt = (chance: number): Finding['value'] => {
    if (lengths.length < fewestSeasons) return none('too-few-seasons');
    if (!fit) return none('freeze-never');
    const longerAmongFrozen = chanceAmongFrozenYears(chance, fit.freezeShare);
    if (longerAmongFrozen === undefined) return none('season-not-this-short');
    return days(fit.meanDay - fit.sdDays * normalQuantile(longerAmongFrozen));
  };
  return (chance) => ({
    value: valueAt(chance / 100),
    method: 'freeze.season-normal',
    inputs: [...askedInputs(chance, options), ...inputs],
    sources: [source, seasonSource],
  });
}

function fromNormals(
  row: NormalsFreeze['rows'][number] & { readonly seasonDays: Readonly<Partial<Record<number, number>>> },
  source: string,
  options: FreezeOptions,
): (chance: FreezeChance) => Answer {
  const printed = freezeChances.flatMap((chance) => {
    const length = row.seasonDays[chance];
    return length === undefined ? [] : [{ chance, day: length }];
  });
  const valueAt = (chance: number): Finding['value'] => {
    if (row.allYear) return none('freeze-all-year');
    if (row.occurrencePercent <= 0) return none('freeze-never');
    const longerAmongFrozen = chanceAmongFrozenYears(chance, row.occurrencePercent / 100);
    if (longerAmongFrozen === undefined) return none('season-not-this-short');
    const length = dayBetweenChances(printed, longerAmongFrozen);
    return length === undefined ? none('season-length-not-given') : days(length);
  };
  return (chance) => ({
    value: valueAt(chance / 100),
    method: 'freeze.season-normals',
    inputs: [
      ...askedInputs(chance, options),
      { name: 'occurrence-percent', value: count(row.occurrencePercent) },
    ],
    sources: [source],
  });
}

function fromDates(data: FreezeData, options: FreezeOptions): (chance: FreezeChance) => Answer {
  const difference = freezeFreeSeason(freezeDates(data, options));
  return (chance) => (chance === 50 ? difference : { ...difference, value: none('season-length-not-given') });
}

/**
 * The chance of a longer season among the years that freeze, from that among all years, of which those without a freeze
 * are longer than any. Undefined where they alone are as many as the chance asks for.
 */
function chanceAmongFrozenYears(chance: number, freezeShare: number): number | undefined {
  const frozen = (chance - (1 - freezeShare)) / freezeShare;
  return frozen > 0 ? frozen : undefined;
}

/** A season lasts no less than no day; one of a year or more is no season between two winters, but says that none came between. */
function days(length: number): Finding['value'] {
  const whole = Math.max(0, Math.round(length));
  return whole >= daysInYear ? none('season-whole-year') : quantity('duration', whole);
}

function askedInputs(chance: FreezeChance, options: FreezeOptions): FindingInput[] {
  return [
    { name: 'freeze-threshold', value: quantity('temperature', options.thresholdC) },
    { name: 'chance-percent', value: count(chance) },
  ];
}

/** What `freezeOccurrence` can come to. */
export const freezeOccurrences = [
  'freeze-never',
  'freeze-some-years',
  'freeze-every-year',
  'freeze-all-year',
] as const;

/**
 * Whether a threshold is reached at all, as finding `freeze.occurrence.32f` with one of the choices
 *
 * - `freeze-never`: in no year on record
 * - `freeze-some-years`: in some years and not in others
 * - `freeze-every-year`: in every year, with a season between
 * - `freeze-all-year`: in half of the years or more fewer than `shortestSeasonDays` days lie between last and first
 *   freeze, or the source says that the risk lasts all year
 *
 * A typed table does not say: `none('freeze-occurrence-not-given')`. With too few seasons it is `none('too-few-seasons')`.
 */
export function freezeOccurrence(data: FreezeData, options: FreezeOptions): Finding {
  const answer = occurrenceOf(data, options);
  return { id: `freeze.occurrence.${thresholdName(options.thresholdC)}`, ...answer };
}

function occurrenceOf(data: FreezeData, options: FreezeOptions): Answer {
  const threshold: FindingInput = {
    name: 'freeze-threshold',
    value: quantity('temperature', options.thresholdC),
  };
  const answer = (value: Finding['value'], inputs: readonly FindingInput[]): Answer => ({
    value,
    method: 'freeze.occurrence',
    inputs: [threshold, ...inputs],
    sources: [data.source],
  });
  if (data.kind === 'table') return answer(none('freeze-occurrence-not-given'), []);
  if (data.kind === 'normals') {
    const row = rowAt(data.normals.rows, options.thresholdC);
    if (!row) return answer(none('freeze-threshold-not-given'), []);
    const named = row.allYear ? 'freeze-all-year' : shareName(row.occurrencePercent / 100);
    return answer(choice(named), [{ name: 'occurrence-percent', value: count(row.occurrencePercent) }]);
  }
  const winters = [...freezeDaysByYear(data.station, 'last', options).values()];
  const frozen = winters.filter((day) => day !== null).length;
  const inputs: FindingInput[] = [
    { name: 'seasons', value: count(winters.length) },
    { name: 'seasons-with-freeze', value: count(frozen) },
  ];
  if (winters.length < fewestSeasons) return answer(none('too-few-seasons'), inputs);
  return answer(
    choice(freezesAllYear(data.station, options) ? 'freeze-all-year' : shareName(frozen / winters.length)),
    inputs,
  );
}

function shareName(share: number): string {
  if (share <= 0) return 'freeze-never';
  return share >= 1 ? 'freeze-every-year' : 'freeze-some-years';
}
