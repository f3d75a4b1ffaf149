import type { DayNumber } from '../findings/finding.ts';

const monthNames = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * `Apr 14`, `April 14`, `14 Apr` as a day of a 365-day year, 1 to 365; undefined when it is no such day.
 * February 29 is no day of that year: freeze tables use a 365-day year.
 */
export function calendarDayNumber(text: string): DayNumber | undefined {
  const match = /^\s*(?:([A-Za-z]{3,9})\.?\s+(\d{1,2})|(\d{1,2})\s+([A-Za-z]{3,9})\.?)\s*$/.exec(text);
  if (!match) return undefined;
  const name = (match[1] ?? match[4])!.toLowerCase();
  const day = Number(match[2] ?? match[3]);
  const month = monthNames.findIndex(
    (short) => name === short || (name.startsWith(short) && fullMonths.includes(name)),
  );
  if (month < 0 || day < 1 || day > monthLengths[month]!) return undefined;
  return monthLengths.slice(0, month).reduce((sum, length) => sum + length, 0) + day;
}

const fullMonths = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
  'sept',
];

/** True for a `yyyy-mm-dd` that is in the Gregorian calendar. */
export function isIsoDate(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return false;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}
