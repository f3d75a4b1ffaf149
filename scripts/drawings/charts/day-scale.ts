/** The time axis of every chart: days of a fixed 365-day year along a line, and the months they fall in. */
import type { DayNumber } from '../../findings/finding.ts';

/** The first and the last day that a chart shows, both included. July to June is 182 to 546. */
export interface DayWindow {
  readonly from: DayNumber;
  readonly to: DayNumber;
}

export interface DayScale extends DayWindow {
  readonly leftMm: number;
  readonly widthMm: number;
  /** Where the day begins. The last day of the window ends where the day after it begins, at the right edge. */
  readonly x: (day: DayNumber) => number;
}

/** A run of days inside a window. An open end is one that the window cuts off. */
export interface DayPiece extends DayWindow {
  readonly openStart: boolean;
  readonly openEnd: boolean;
}

export const daysInYear = 365;

/** Throws a `RangeError` unless the window has 28 to 365 whole days and the line a positive length. */
export function dayScale({
  from,
  to,
  leftMm,
  widthMm,
}: DayWindow & { leftMm: number; widthMm: number }): DayScale {
  const days = to - from + 1;
  if (!Number.isInteger(from) || !Number.isInteger(to) || days < 28 || days > daysInYear) {
    throw new RangeError(`a chart shows 28 to 365 whole days, not ${from} to ${to}`);
  }
  if (!(widthMm > 0)) throw new RangeError(`no room for the days: ${widthMm} mm`);
  return { from, to, leftMm, widthMm, x: (day) => leftMm + ((day - from) / days) * widthMm };
}

export interface MonthCell extends DayWindow {
  /** 0 is January. */
  readonly month: number;
}

/** The months of a window in order; the first and the last may be cut off by it. */
export function monthsIn({ from, to }: DayWindow): readonly MonthCell[] {
  const cells: MonthCell[] = [];
  for (let year = Math.floor((from - 1) / daysInYear); year * daysInYear < to; year += 1) {
    monthLengths.forEach((length, month) => {
      const start = year * daysInYear + firstDays[month]!;
      const cell = { month, from: Math.max(start, from), to: Math.min(start + length - 1, to) };
      if (cell.from <= cell.to) cells.push(cell);
    });
  }
  return cells;
}

/** First day of the month that holds the day. */
export function monthStart(day: DayNumber): DayNumber {
  const year = Math.floor((day - 1) / daysInYear) * daysInYear;
  return year + firstDays.findLast((first) => year + first <= day)!;
}

/** Last day of the month that holds the day. */
export function monthEnd(day: DayNumber): DayNumber {
  return monthStart(monthStart(day) + 31) - 1;
}

/** The day as it falls within the window, a whole number of years away; `undefined` when it is not shown. */
export function dayInWindow(day: DayNumber, { from, to }: DayWindow): DayNumber | undefined {
  const shifted = from + modulo(day - from, daysInYear);
  return shifted <= to ? shifted : undefined;
}

/**
 * The parts of a run of days that a window shows, wrapped around the year: a harvest from November to February gives
 * two pieces in a chart from January to December. Days are rounded to whole ones, as they are when put into words. A
 * run of a year or more fills the window. Throws a `RangeError` when the run ends before it begins.
 */
export function piecesIn(run: DayWindow, window: DayWindow): readonly DayPiece[] {
  const from = Math.round(run.from);
  const to = Math.round(run.to);
  if (!(to >= from)) throw new RangeError(`a run of days ends before it begins: ${run.from} to ${run.to}`);
  if (to - from + 1 >= daysInYear)
    return [{ from: window.from, to: window.to, openStart: true, openEnd: true }];
  const pieces: DayPiece[] = [];
  const firstShift = Math.floor((window.from - to) / daysInYear) * daysInYear;
  for (let shift = firstShift; from + shift <= window.to; shift += daysInYear) {
    const piece = {
      from: Math.max(from + shift, window.from),
      to: Math.min(to + shift, window.to),
      openStart: from + shift < window.from,
      openEnd: to + shift > window.to,
    };
    if (piece.from <= piece.to) pieces.push(piece);
  }
  return pieces;
}

/** The remainder from 0 up to `by`, for negative values too. */
export function modulo(value: number, by: number): number {
  return ((value % by) + by) % by;
}

const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
const firstDays = [1, 32, 60, 91, 121, 152, 182, 213, 244, 274, 305, 335] as const;
