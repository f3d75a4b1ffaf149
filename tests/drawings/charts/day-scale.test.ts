import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dayInWindow,
  dayScale,
  monthEnd,
  monthsIn,
  monthStart,
  piecesIn,
} from '../../../scripts/drawings/charts/day-scale.ts';

const calendarYear = { from: 1, to: 365 };
const julyToJune = { from: 182, to: 546 };

describe('day scale', () => {
  it('begins at the left and ends where the day after the last would begin', () => {
    const scale = dayScale({ ...calendarYear, leftMm: 30, widthMm: 146 });
    expect(scale.x(1)).toBe(30);
    expect(scale.x(366)).toBe(176);
    expect(scale.x(183.5)).toBeCloseTo(103, 9);
  });

  it.each([
    ['less than a month', 1, 20],
    ['more than a year', 1, 366],
    ['half days', 1.5, 200],
    ['backwards', 200, 1],
  ])('refuses %s', (_, from, to) => {
    expect(() => dayScale({ from, to, leftMm: 0, widthMm: 100 })).toThrow(RangeError);
  });
});

describe('months', () => {
  it('of a calendar year are twelve, of 365 days', () => {
    const cells = monthsIn(calendarYear);
    expect(cells.map(({ month }) => month)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect(cells.map(({ from, to }) => to - from + 1)).toEqual([
      31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31,
    ]);
  });

  it('of a year that begins in July follow it', () => {
    expect(monthsIn(julyToJune).map(({ month }) => month)).toEqual([6, 7, 8, 9, 10, 11, 0, 1, 2, 3, 4, 5]);
  });

  it('at the ends of a window are cut off', () => {
    expect(monthsIn({ from: 15, to: 75 })).toEqual([
      { month: 0, from: 15, to: 31 },
      { month: 1, from: 32, to: 59 },
      { month: 2, from: 60, to: 75 },
    ]);
  });

  it.each([
    ['New Year', 1, 1, 31],
    ['April 14', 104, 91, 120],
    ['the last of December', 365, 335, 365],
    ['the day before the year', 0, -30, 0],
    ['February of the year after', 400, 397, 424],
  ])('that hold %s', (_, day, start, end) => {
    expect(monthStart(day)).toBe(start);
    expect(monthEnd(day)).toBe(end);
  });
});

describe('runs of days in a window', () => {
  it.each([
    ['inside the year', { from: 100, to: 120 }, [[100, 120, false, false]]],
    ['a single day', { from: 100, to: 100 }, [[100, 100, false, false]]],
    [
      'across New Year',
      { from: 320, to: 400 },
      [
        [1, 35, true, false],
        [320, 365, false, true],
      ],
    ],
    [
      'that began the year before',
      { from: -20, to: 30 },
      [
        [1, 30, true, false],
        [345, 365, false, true],
      ],
    ],
    ['that ends with the year', { from: 300, to: 365 }, [[300, 365, false, false]]],
    ['wholly in the year after', { from: 370, to: 380 }, [[5, 15, false, false]]],
    ['of a whole year', { from: 50, to: 414 }, [[1, 365, true, true]]],
    ['of half days, rounded as in words', { from: 99.6, to: 120.4 }, [[100, 120, false, false]]],
  ] as const)('%s', (_, run, expected) => {
    const pieces = piecesIn(run, calendarYear).map((piece) => [
      piece.from,
      piece.to,
      piece.openStart,
      piece.openEnd,
    ]);
    expect(pieces).toEqual(expected);
  });

  it('are refused when they end before they begin', () => {
    expect(() => piecesIn({ from: 200, to: 199 }, calendarYear)).toThrow(RangeError);
  });

  it('lose no day and gain none, in any window', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -400, max: 800 }),
        fc.integer({ min: 0, max: 420 }),
        fc.integer({ min: -200, max: 400 }),
        fc.integer({ min: 28, max: 365 }),
        (from, length, windowFrom, windowDays) => {
          const window = { from: windowFrom, to: windowFrom + windowDays - 1 };
          const wanted = new Set(
            Array.from({ length: length + 1 }, (_, index) => dayInWindow(from + index, window)).filter(
              (day) => day !== undefined,
            ),
          );
          const drawn = piecesIn({ from, to: from + length }, window).flatMap((piece) =>
            Array.from({ length: piece.to - piece.from + 1 }, (_, index) => piece.from + index),
          );
          expect(drawn.length).toBe(wanted.size);
          expect(new Set(drawn)).toEqual(wanted);
        },
      ),
    );
  });
});
