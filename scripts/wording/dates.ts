import type { DayNumber } from '../findings/finding.ts';

export interface DateWords {
  /** `April 14` */
  long(day: DayNumber): string;
  /** `Apr 14` */
  short(day: DayNumber): string;
  /** `April 14–28`, `April 14–May 3` */
  longRange(from: DayNumber, to: DayNumber): string;
  /** `Apr 14–28`, `Apr 14–May 3` */
  shortRange(from: DayNumber, to: DayNumber): string;
  /** `November 15, 2026`, from `2026-11-15`. */
  full(iso: string): string;
  /** Twelve short month names, January first. */
  months(): readonly string[];
  /** The same in full. */
  monthNames(): readonly string[];
}

/** A fixed year of 365 days, so that a day number is the same date every year. */
const anyCommonYear = 2026;

/** Puts days of the year into words of a language. Days outside 1 to 365 are dates of the year before or after. */
export function dateWords(language: string): DateWords {
  const form = (options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat =>
    new Intl.DateTimeFormat(language, { ...options, timeZone: 'UTC' });
  const long = form({ month: 'long', day: 'numeric' });
  const short = form({ month: 'short', day: 'numeric' });
  const full = form({ year: 'numeric', month: 'long', day: 'numeric' });
  const month = form({ month: 'short' });
  const monthName = form({ month: 'long' });
  const range = (format: Intl.DateTimeFormat, from: DayNumber, to: DayNumber): string => {
    const [a, b] = [dateOf(from), dateOf(to)];
    if (a.getTime() === b.getTime()) return tie(format.format(a));
    if (a.getUTCMonth() === b.getUTCMonth() && to - from < 31 && language.startsWith('en')) {
      return `${tie(format.format(a))}–${b.getUTCDate()}`;
    }
    return `${tie(format.format(a))}–${tie(format.format(b))}`;
  };
  return {
    long: (day) => tie(long.format(dateOf(day))),
    short: (day) => tie(short.format(dateOf(day))),
    longRange: (from, to) => range(long, from, to),
    shortRange: (from, to) => range(short, from, to),
    full: (iso) => tie(full.format(new Date(`${iso}T00:00:00Z`))),
    monthNames: () =>
      Array.from({ length: 12 }, (_, index) => monthName.format(new Date(Date.UTC(anyCommonYear, index, 1)))),
    months: () =>
      Array.from({ length: 12 }, (_, index) => month.format(new Date(Date.UTC(anyCommonYear, index, 1)))),
  };
}

function dateOf(day: DayNumber): Date {
  const inYear = ((((Math.round(day) - 1) % 365) + 365) % 365) + 1;
  return new Date(Date.UTC(anyCommonYear, 0, inYear));
}

/** A date does not break between month and day. */
function tie(text: string): string {
  return text.replaceAll(' ', '\u00A0');
}
