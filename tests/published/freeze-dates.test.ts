/**
 * Freeze dates against printed station tables.
 *
 * Source of the tables: NOAA freeze/frost tables in the layout of Climatography of the U.S. No. 20, Supplement No. 1,
 * as reprinted by station at victoryseeds.com/a/h/frost-dates/; the period is not stated there. Georgetown, DE:
 * W. J. Moyer, ESSA Weather Bureau and University of Maryland, 1970 (rec.udel.edu/misc/Frost%20dates.htm).
 */
import { describe, expect, test } from 'vitest';
import { dayNumber, growingSeason, monthDay, placeInSeason } from '../../scripts/climate/calendar.ts';
import { freezeDates } from '../../scripts/climate/freeze.ts';
import type { FreezeEdge } from '../../scripts/climate/freeze-seasons.ts';
import { dayAtChance } from '../../scripts/climate/mixed-normal.ts';
import { normalQuantile } from '../../scripts/climate/normal-distribution.ts';
import { toHeld } from '../../scripts/quantities/units.ts';
import { seasonsRecord } from '../climate/seasons-record.ts';

const chances = [10, 20, 30, 40, 50, 60, 70, 80, 90] as const;
const monthNames = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

// prettier-ignore
const printed: [station: string, edge: FreezeEdge, thresholdF: number, dates: string][] = [
  ['Milton-Freewater, OR', 'last', 36, 'May 10, May 5, May 1, Apr 27, Apr 24, Apr 20, Apr 17, Apr 13, Apr 7'],
  ['Milton-Freewater, OR', 'last', 32, 'Apr 22, Apr 15, Apr 10, Apr 6, Apr 2, Mar 30, Mar 25, Mar 21, Mar 14'],
  ['Milton-Freewater, OR', 'last', 28, 'Apr 8, Apr 1, Mar 26, Mar 21, Mar 16, Mar 12, Mar 7, Mar 1, Feb 21'],
  ['Deer Flat Dam, ID', 'last', 36, 'Jun 9, Jun 1, May 26, May 20, May 15, May 11, May 5, Apr 29, Apr 21'],
  ['Deer Flat Dam, ID', 'last', 32, 'May 25, May 16, May 9, May 3, Apr 28, Apr 22, Apr 16, Apr 9, Mar 31'],
  ['Deer Flat Dam, ID', 'last', 28, 'May 3, Apr 26, Apr 20, Apr 15, Apr 11, Apr 7, Apr 2, Mar 28, Mar 20'],
  ['Leaburg, OR', 'last', 36, 'Jun 1, May 25, May 20, May 16, May 12, May 9, May 4, Apr 30, Apr 23'],
  ['Leaburg, OR', 'last', 32, 'May 2, Apr 26, Apr 21, Apr 17, Apr 13, Apr 9, Apr 5, Mar 31, Mar 25'],
  ['Leaburg, OR', 'last', 28, 'Mar 25, Mar 12, Mar 3, Feb 23, Feb 15, Feb 8, Jan 31, Jan 21, Jan 8'],
  ['Harrison, NE', 'last', 36, 'Jun 24, Jun 18, Jun 13, Jun 10, Jun 6, Jun 2, May 30, May 25, May 19'],
  ['Harrison, NE', 'last', 32, 'Jun 16, Jun 8, Jun 3, May 30, May 25, May 21, May 17, May 11, May 4'],
  ['Harrison, NE', 'last', 28, 'May 28, May 22, May 18, May 15, May 12, May 9, May 5, May 1, Apr 26'],
  ['Nebraska City, NE', 'first', 36, 'Sep 15, Sep 20, Sep 24, Sep 28, Oct 1, Oct 4, Oct 8, Oct 12, Oct 17'],
  ['Nebraska City, NE', 'first', 32, 'Sep 27, Oct 3, Oct 7, Oct 11, Oct 14, Oct 17, Oct 21, Oct 25, Oct 30'],
  ['Nebraska City, NE', 'first', 28, 'Oct 10, Oct 16, Oct 20, Oct 24, Oct 27, Oct 31, Nov 3, Nov 7, Nov 13'],
  ['Weeping Water, NE', 'first', 36, 'Sep 13, Sep 17, Sep 20, Sep 23, Sep 25, Sep 27, Sep 30, Oct 3, Oct 7'],
  ['Weeping Water, NE', 'first', 32, 'Sep 20, Sep 25, Sep 29, Oct 2, Oct 5, Oct 8, Oct 11, Oct 15, Oct 20'],
  ['Weeping Water, NE', 'first', 28, 'Oct 2, Oct 7, Oct 11, Oct 14, Oct 16, Oct 19, Oct 22, Oct 26, Oct 31'],
];

describe('six columns of a printed row follow from the other three', () => {
  test.each(printed)('%s, %s freeze at %d F', (_, edge, __, dates) => {
    const days = dates.split(', ').map((text) => placedDay(text, edge));
    const fit = fitThroughEnds(edge, days[0]!, days[4]!, days[8]!);
    for (const [index, chance] of chances.entries()) {
      // One day: the printed dates are whole days, and so are the three that the fit is drawn through.
      expect(
        Math.abs(dayAtChance(fit, edge, chance / 100)! - days[index]!),
        `${chance} %`,
      ).toBeLessThanOrEqual(1);
    }
  });

  // prettier-ignore
  test.each<[string, FreezeEdge, string[]]>([
    ['last 32 F', 'last', ['May 10', 'Apr 30', 'Apr 25', 'Apr 20', 'Apr 10']],
    ['last 16 F', 'last', ['Mar 13', 'Mar 3', 'Feb 25', 'Feb 19', 'Feb 9']],
    ['first 32 F', 'first', ['Oct 2', 'Oct 11', 'Oct 16', 'Oct 21', 'Oct 30']],
    ['first 16 F', 'first', ['Nov 28', 'Dec 6', 'Dec 10', 'Dec 14', 'Dec 22']],
  ])('Georgetown, DE, %s, with columns at 33 and 67 %', (_, edge, dates) => {
    const [d10, d33, d50, d67, d90] = dates.map((text) => placedDay(text, edge)) as [number, number, number, number, number];
    const fit = fitThroughEnds(edge, d10, d50, d90);
    expect(Math.abs(dayAtChance(fit, edge, 0.33)! - d33)).toBeLessThanOrEqual(1);
    expect(Math.abs(dayAtChance(fit, edge, 0.67)! - d67)).toBeLessThanOrEqual(1);
  });
});

describe('Leaburg, OR, last 24 F: a row that stops at 70 % because some winters stay above', () => {
  const dates = 'Feb 19, Feb 8, Jan 31, Jan 23, Jan 16, Jan 7, Dec 27'
    .split(', ')
    .map((text) => placedDay(text, 'last'));

  test('the mixed distribution fitted to it gives back the dates, across New Year', () => {
    // Parameters from a least-squares fit to the printed row; they match it to 0.33 day, so half a day is asked for.
    const fit = { freezeShare: 0.794, meanDay: 23.4, sdDays: 23.3 };
    const computed = chances.map((chance) => dayAtChance(fit, 'last', chance / 100));
    expect(computed.slice(7)).toEqual([undefined, undefined]);
    for (const [index, day] of dates.entries()) {
      expect(Math.abs(computed[index]! - day), `${chances[index]} %`).toBeLessThanOrEqual(0.5);
    }
    expect(dates[6]).toBe(-4);
  });

  test('thirty winters of daily minima, twenty-four of them with 24 F, give the printed dates', () => {
    const days = Array.from({ length: 30 }, (_, index) =>
      index % 5 === 4
        ? null
        : Math.round(23.4 + 23.3 * normalQuantile((index - Math.floor(index / 5) + 0.5) / 24)),
    );
    const data = { kind: 'daily', station: seasonsRecord({ last: days }), source: 'test' } as const;
    const { last } = freezeDates(data, { thresholdC: toHeld(24, 'F'), latitudeDeg: 44 });
    for (const [index, day] of dates.entries()) {
      const { value } = last[chances[index]!]!;
      // Two days: twenty-four whole dates spread evenly have a slightly smaller deviation than the fitted one.
      expect(
        value.kind === 'date' ? Math.abs(value.day - day) : value.reason,
        `${chances[index]} %`,
      ).toBeOneOf([0, 1, 2]);
    }
    expect(last[80]!.value).toEqual({ kind: 'none', reason: 'freeze-not-this-likely' });
    expect(last[90]!.value).toEqual({ kind: 'none', reason: 'freeze-not-this-likely' });
  });
});

describe('which way the columns run', () => {
  const nebraskaCity = { thresholdC: 0, last: {}, first: chanceDates(printed[13]![3]) };
  const harrison = { thresholdC: 0, last: chanceDates(printed[10]![3]), first: {} };
  const options = { thresholdC: 0, latitudeDeg: 41 };

  test('Nebraska City: the 10 % date of the first freeze is the early one', () => {
    const { first } = freezeDates({ kind: 'table', rows: [nebraskaCity], source: 'test' }, options);
    expect(chances.map((chance) => written(first[chance]!.value))).toEqual(printed[13]![3].split(', '));
    expect(first[10]!.value).toEqual({ kind: 'date', day: 270 });
  });

  test('Harrison: the 10 % date of the last freeze is the late one', () => {
    const { last } = freezeDates({ kind: 'table', rows: [harrison], source: 'test' }, options);
    expect(last[10]!.value).toEqual({ kind: 'date', day: 167 });
    expect(last[90]!.value).toEqual({ kind: 'date', day: 124 });
  });
});

/** The mean and spread that the 10, 50 and 90 % columns stand for; 1.2816 is the normal quantile of 0.9. */
function fitThroughEnds(edge: FreezeEdge, d10: number, d50: number, d90: number) {
  const spread = edge === 'last' ? d10 - d90 : d90 - d10;
  return { freezeShare: 1, meanDay: d50, sdDays: spread / (2 * 1.2816) };
}

function placedDay(text: string, edge: FreezeEdge): number {
  return placeInSeason(dayOf(text), growingSeason(41)[edge]);
}

function chanceDates(dates: string): Record<number, number> {
  return Object.fromEntries(dates.split(', ').map((text, index) => [chances[index]!, dayOf(text)]));
}

function dayOf(text: string): number {
  const [month, day] = text.split(' ') as [string, string];
  return dayNumber({ month: monthNames.indexOf(month) + 1, day: Number(day) });
}

function written(value: { kind: string; day?: number }): string {
  const { month, day } = monthDay(value.day!);
  return `${monthNames[month - 1]} ${day}`;
}
