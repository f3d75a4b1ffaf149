import { growingSeason, monthDay } from '../../scripts/climate/calendar.ts';
import type { DailyMinimum, DailyStation } from '../../scripts/climate/freeze-data.ts';

export interface SeasonsOptions {
  /** Day of the last freeze of each season, from 1991 on; `null` for a season without one. */
  readonly last?: readonly (number | null)[];
  /** Day of the first freeze of each season, from 1991 on. */
  readonly first?: readonly (number | null)[];
  readonly latitudeDeg?: number;
  /** The minimum on the days named, in C; all other days have 10 C. */
  readonly freezeC?: number;
}

/**
 * A daily record without a gap, from the season before 1991 on, in which it freezes on the named days only. Each
 * season has one freeze, so the same day would be both the last of one season and the first of
 * another: give `last` or `first`, not both.
 */
export function seasonsRecord(options: SeasonsOptions): DailyStation {
  const { latitudeDeg = 45, freezeC = -20 } = options;
  const edge = options.last ? 'last' : 'first';
  const season = growingSeason(latitudeDeg)[edge];
  const freezes = options.last ?? options.first ?? [];
  const days: DailyMinimum[] = freezes.flatMap((freeze, index) =>
    Array.from({ length: 365 }, (_, offset) => {
      const day = season.from + offset;
      const year = 1991 + index + Math.floor((day - 1) / 365);
      return { year, ...monthDay(day), minimumC: day === freeze ? freezeC : 10 };
    }),
  );
  return { station: 'INVENTED', name: 'Invented station', days };
}
