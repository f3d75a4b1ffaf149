/** Freeze dates that no place on earth can have: a season that does not fit its year, or the colder freeze the later one. */
import { growingSeason, placeInSeason } from '../climate/calendar.ts';
import type { DailyStation, FreezeTableRow, NormalsFreezeRow } from '../climate/freeze-data.ts';

export interface ImpossibleFreeze {
  /** Position of the row in its table. */
  readonly row: number;
  readonly edge: 'last' | 'first';
  readonly message: string;
  readonly hint: string;
}

/**
 * Days between the 50 % dates of a growing season that sheets can be made for. A shorter one ripens next to nothing; a
 * longer one comes of dates that are exchanged or of the other hemisphere. Our own judgement.
 */
const seasonDays = { fewest: 30, most: 340 } as const;

/** Dates are rounded to days, so that a colder freeze may seem a day outside the warmer one. */
const roundingDays = 1;

/** In fewer years than this the dates of a normals row are those of some winters only, and may stand further apart. */
const mostYearsPercent = 90;

const seasonHint =
  'Is the sign of the latitude right (south is negative), or are the last and the first freeze exchanged?';

/**
 * The first row whose dates cannot be, if any: one cause tends to spoil them all. Rows of normals where the freeze lasts
 * all year, or does not come in most years, are not asked for a season of usual length.
 */
export function impossibleFreeze(
  rows: readonly (FreezeTableRow | NormalsFreezeRow)[],
  { latitudeDeg }: { latitudeDeg: number },
): ImpossibleFreeze | undefined {
  const seasons = growingSeason(latitudeDeg);
  const placed = rows.map((row, index) => {
    const day = (edge: 'last' | 'first'): number | undefined => {
      const given = row[edge][50];
      return given === undefined ? undefined : placeInSeason(given, seasons[edge]);
    };
    return { row, index, last: day('last'), first: day('first'), usual: isUsual(row) };
  });
  for (const { index, last, first, usual } of placed) {
    if (last === undefined || first === undefined) continue;
    const days = first - last;
    if (days >= (usual ? seasonDays.fewest : 1) && days <= (usual ? seasonDays.most : 365)) continue;
    return {
      row: index,
      edge: 'last',
      message: `From the 50 % last freeze of this row to the first one it would be ${days} days; a growing season has ${seasonDays.fewest} to ${seasonDays.most}.`,
      hint: seasonHint,
    };
  }
  const warmestFirst = placed
    .filter(({ usual }) => usual)
    .sort((a, b) => b.row.thresholdC - a.row.thresholdC);
  for (const [at, colder] of warmestFirst.entries()) {
    for (const warmer of warmestFirst.slice(0, at)) {
      for (const edge of ['last', 'first'] as const) {
        const [inside, outside] = [colder[edge], warmer[edge]];
        if (inside === undefined || outside === undefined) continue;
        if ((edge === 'last' ? inside - outside : outside - inside) <= roundingDays) continue;
        return {
          row: colder.index,
          edge,
          message:
            edge === 'last'
              ? 'The last freeze of this row comes later than that of a warmer threshold.'
              : 'The first freeze of this row comes earlier than that of a warmer threshold.',
          hint: 'Each time it is this cold, the warmer threshold is reached, too. Compare the rows with their source.',
        };
      }
    }
  }
  return undefined;
}

function isUsual(row: FreezeTableRow | NormalsFreezeRow): boolean {
  if (!('occurrencePercent' in row)) return true;
  return !row.allYear && row.occurrencePercent >= mostYearsPercent;
}

/** Degrees by which June to August must differ from December to February before the hemisphere is judged. */
const plainDifferenceC = 5;

/** Whether the winter of a daily record falls into the other half of the year than the latitude puts it. */
export function winterOfOtherHemisphere(
  { days }: DailyStation,
  { latitudeDeg }: { latitudeDeg: number },
): boolean {
  const mean = (months: readonly number[]): number => {
    const values = days.flatMap(({ month, minimumC }) =>
      minimumC !== null && months.includes(month) ? [minimumC] : [],
    );
    return values.reduce((sum, value) => sum + value, 0) / values.length;
  };
  const northernSummerC = mean([6, 7, 8]) - mean([12, 1, 2]);
  return latitudeDeg < 0 ? northernSummerC > plainDifferenceC : northernSummerC < -plainDifferenceC;
}
