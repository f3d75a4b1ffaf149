/** Which seasons of a daily record its freeze dates are worked out from. */
import { count, type Finding, type FindingInput } from '../findings/finding.ts';
import type { DailyStation } from './freeze-data.ts';
import { daysInYear, growingSeason } from './calendar.ts';
import {
  mostMissingDays,
  seasonsLeftOut,
  usableSeasons,
  type FreezeEdge,
  type UsableSeasons,
} from './freeze-seasons.ts';

export interface RecordSeasons {
  /** How many springs count: `freeze.record.last-seasons`. */
  readonly last: Finding;
  /** How many falls count: `freeze.record.first-seasons`. */
  readonly first: Finding;
  /** How many springs and falls do not count: `freeze.record.left-out`. */
  readonly notUsed: Finding;
  /** Calendar years of the springs, and of the falls, that have too many days missing to count. */
  readonly leftOut: Readonly<Record<FreezeEdge, readonly number[]>>;
}

/**
 * The seasons that count, with the rule for missing days and the years left out as what went in. Their method is
 * `freeze.record-seasons`.
 */
export function recordSeasons(
  data: { readonly station: DailyStation; readonly source: string },
  options: { latitudeDeg: number },
): RecordSeasons {
  const used = usableSeasons(data.station, options);
  const leftOut = calendarYears(seasonsLeftOut(data.station, options), options);
  const findingOf = (edge: FreezeEdge): Finding => ({
    id: `freeze.record.${edge}-seasons`,
    value: count(used[edge].length),
    method: 'freeze.record-seasons',
    inputs: [
      { name: 'missing-near-half', value: count(mostMissingDays.nearHalf) },
      { name: 'missing-far-half', value: count(mostMissingDays.farHalf) },
      ...leftOut[edge].map((year): FindingInput => ({ name: 'year-left-out', value: count(year) })),
    ],
    sources: [data.source],
  });
  const [last, first] = [findingOf('last'), findingOf('first')];
  const notUsed: Finding = {
    ...last,
    id: 'freeze.record.left-out',
    value: count(leftOut.last.length + leftOut.first.length),
    inputs: [...last.inputs, ...first.inputs.filter(({ name }) => name === 'year-left-out')],
  };
  return { last, first, notUsed, leftOut };
}

/** Seasons bear the year in which growing begins; the fall after a southern summer lies in the year after it. */
function calendarYears(seasons: UsableSeasons, { latitudeDeg }: { latitudeDeg: number }): UsableSeasons {
  const { from } = growingSeason(latitudeDeg).first;
  const yearsOn = Math.floor((from - 1) / daysInYear);
  return { last: seasons.last, first: seasons.first.map((year) => year + yearsOn) };
}
