/**
 * Freeze dates straight from the seasons on record, without a curve fitted through them, to set beside the fitted ones.
 *
 * Plotting position: of n seasons the one in place r, most at risk first, stands for a chance of r/(n + 1) (W. Weibull,
 * 1939, from memory; the usual one in hydrology). Seasons without a freeze take the last places. Dates between two
 * places are read along the line through both.
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
} from '../findings/finding.ts';
import { freezeChances, type FreezeChance } from '../records/schemas/region.ts';
import type { DailyStation } from './freeze-data.ts';
import { fewestSeasons, freezeDays, type FreezeEdge } from './freeze-seasons.ts';
import { thresholdName, type FreezeDates, type FreezeOptions } from './freeze.ts';

/**
 * The empirical dates as findings `freeze.last.32f.50.empirical`. `none` with `too-few-seasons`, `freeze-never` or
 * `freeze-not-this-likely`, as for the fitted dates.
 */
export function empiricalFreezeDates(
  data: { readonly station: DailyStation; readonly source: string },
  options: FreezeOptions,
): FreezeDates {
  const findingsOf = (edge: FreezeEdge): Partial<Record<FreezeChance, DateFinding>> => {
    const days = freezeDays(data.station, edge, options);
    const name = thresholdName(options.thresholdC);
    return Object.fromEntries(
      freezeChances.map((chance): [FreezeChance, DateFinding] => [
        chance,
        {
          id: `freeze.${edge}.${name}.${chance}.empirical`,
          value: empiricalDate(days, edge, chance / 100),
          method: 'freeze.empirical',
          inputs: [
            { name: 'freeze-threshold', value: quantity('temperature', options.thresholdC) },
            { name: 'chance-percent', value: count(chance) },
            { name: 'seasons', value: count(days.length) },
            { name: 'seasons-with-freeze', value: count(days.filter((day) => day !== null).length) },
          ],
          sources: [data.source, plottingSource],
        },
      ]),
    );
  };
  return { thresholdC: options.thresholdC, last: findingsOf('last'), first: findingsOf('first') };
}

const plottingSource = 'weibull-1939-plotting-position';

/** The date that a later last freeze, or an earlier first one, passes with a chance of 0.1 to 0.9, from the seasons alone. */
export function empiricalDate(
  days: readonly (DayNumber | null)[],
  edge: FreezeEdge,
  chance: number,
): DateFinding['value'] {
  if (days.length < fewestSeasons) return none('too-few-seasons');
  const dates = days.filter((day) => day !== null).sort((a, b) => (edge === 'last' ? b - a : a - b));
  if (dates.length === 0) return none('freeze-never');
  const hair = 1e-9;
  const place = (days.length + 1) * chance;
  const [above, below] = [dates[Math.floor(place + hair) - 1], dates[Math.ceil(place - hair) - 1]];
  if (above === undefined || below === undefined) return none('freeze-not-this-likely');
  return date(Math.round(above + (below - above) * (place - Math.floor(place + hair))));
}

/**
 * By how many days the fitted date lies after the empirical one (before it when negative), as findings
 * `freeze.last.32f.50.fit-difference`; `none` with the reason of the date that is missing. More than a few days
 * say that the dates on record do not follow a normal curve.
 */
export function freezeFitDifferences(fitted: FreezeDates, empirical: FreezeDates): readonly Finding[] {
  return (['last', 'first'] as const).flatMap((edge) =>
    freezeChances.flatMap((chance) => {
      const [fit, seen] = [fitted[edge][chance], empirical[edge][chance]];
      return fit && seen ? [differenceOf(fit, seen)] : [];
    }),
  );
}

function differenceOf(fit: DateFinding, seen: DateFinding): Finding {
  const missing = [fit.value, seen.value].find((value) => value.kind === 'none');
  return {
    id: `${fit.id}.fit-difference`,
    value:
      missing ??
      (fit.value.kind === 'date' && seen.value.kind === 'date'
        ? quantity('duration', fit.value.day - seen.value.day)
        : none('not-given')),
    method: 'freeze.fit-difference',
    inputs: [inputOf('fitted-date', fit), inputOf('empirical-date', seen)],
    sources: [...new Set([...fit.sources, ...seen.sources])],
  };
}
