/** Day length and the sun's position against printed values. */
import { describe, expect, test } from 'vitest';
import { dayNumber } from '../../scripts/climate/calendar.ts';
import { dayLengthHours } from '../../scripts/climate/day-length.ts';
import { julianDay, sunPosition } from '../../scripts/climate/sun.ts';

const minute = 1 / 60;
const hoursOf = (clock: string): number => {
  const [hours, minutes] = clock.split(':').map(Number) as [number, number];
  return hours + minutes * minute;
};

describe('J. Meeus, Astronomical Algorithms, worked examples for 1992 October 13.0 TD (from memory, recomputed)', () => {
  const sun = sunPosition(2448908.5);

  test('example 25.a: apparent declination -7.78507 degrees', () => {
    // Tolerance: the last printed digit, twice.
    expect(Math.abs(sun.declinationDeg - -7.78507)).toBeLessThanOrEqual(0.00002);
  });

  test('example 28: equation of time by the short form, 13 min 42.7 s', () => {
    expect(Math.abs(sun.equationOfTimeMinutes * 60 - (13 * 60 + 42.7))).toBeLessThanOrEqual(0.2);
  });

  test('the Julian day of that instant, and of the 2000.0 epoch', () => {
    expect(julianDay({ year: 1992, month: 10, day: 13, hours: 0 })).toBe(2448908.5);
    expect(julianDay({ year: 2000, month: 1, day: 1, hours: 12 })).toBe(2451545);
  });
});

// prettier-ignore
describe('printed day lengths', () => {
  test.each<[place: string, latitudeDeg: number, year: number, month: number, day: number, printed: string]>([
    // lion-tales.blogspot.com, January 2011
    ['35 N, June solstice', 35, 2011, 6, 21, '14:31'],
    ['45 N, June solstice', 45, 2011, 6, 21, '15:37'],
    ['35 N, December solstice', 35, 2011, 12, 21, '9:48'],
    ['45 N, December solstice', 45, 2011, 12, 21, '8:46'],
    // US Naval Observatory, duration of daylight, quoted at coldcalculation.blogspot.com, 2007
    ['San Francisco, June', 37.8, 2007, 6, 18, '14:47'],
    ['San Francisco, June', 37.8, 2007, 6, 24, '14:47'],
    ['San Francisco, December', 37.8, 2007, 12, 18, '9:33'],
    ['San Francisco, December', 37.8, 2007, 12, 25, '9:33'],
    ['San Francisco, early spring', 37.8, 2007, 3, 5, '11:31'],
  ])('%s', (_, latitudeDeg, year, month, day, printed) => {
    // Two minutes: printed to the minute, for latitudes rounded to a tenth.
    const hours = dayLengthHours({ latitudeDeg, year, day: dayNumber({ month, day }) });
    expect(Math.abs(hours - hoursOf(printed))).toBeLessThanOrEqual(2 * minute);
  });
});

// prettier-ignore
describe('mean daylight at mid-month, Doorenbos and Pruitt, FAO Irrigation and Drainage Paper 24, 1977 (table from memory)', () => {
  test.each<[number, number[]]>([
    [50, [8.5, 10.1, 11.8, 13.8, 15.4, 16.3, 15.9, 14.5, 12.7, 10.8, 9.1, 8.1]],
    [44, [9.3, 10.5, 11.9, 13.4, 14.7, 15.4, 15.2, 14.0, 12.6, 11.0, 9.7, 8.9]],
    [40, [9.6, 10.7, 11.9, 13.3, 14.4, 15.0, 14.7, 13.7, 12.5, 11.2, 10.0, 9.3]],
    [35, [10.1, 11.0, 11.9, 13.1, 14.0, 14.5, 14.3, 13.5, 12.4, 11.3, 10.3, 9.8]],
    [30, [10.4, 11.1, 12.0, 12.9, 13.6, 14.0, 13.9, 13.2, 12.4, 11.5, 10.6, 10.2]],
    [25, [10.7, 11.3, 12.0, 12.7, 13.3, 13.7, 13.5, 13.0, 12.3, 11.6, 10.9, 10.6]],
  ])('%d N', (latitudeDeg, months) => {
    for (const [index, printed] of months.entries()) {
      const hours = dayLengthHours({ latitudeDeg, year: 2025, day: dayNumber({ month: index + 1, day: 15 }) });
      // 0.15 h: printed to a tenth, for a mean year.
      expect(Math.abs(hours - printed), `month ${index + 1}`).toBeLessThanOrEqual(0.15);
    }
  });
});

describe('local mean sunrise, January 1, 2002 (Astronomy Answers, aa.quae.nl, The Position of the Sun: Tables)', () => {
  test.each([
    [20, '6:35'],
    [30, '6:56'],
    [40, '7:22'],
  ])('%d N', (latitudeDeg, printed) => {
    const noon =
      12 - sunPosition(julianDay({ year: 2002, month: 1, day: 1, hours: 12 })).equationOfTimeMinutes * minute;
    const sunrise = noon - dayLengthHours({ latitudeDeg, year: 2002, day: 1 }) / 2;
    expect(Math.abs(sunrise - hoursOf(printed))).toBeLessThanOrEqual(minute);
  });
});

// prettier-ignore
describe('regression: NOAA equations at -0.833 degrees in 2025, computed once and printed nowhere', () => {
  const dates: [number, number][] = [[1, 15], [2, 15], [3, 20], [4, 15], [5, 15], [6, 21], [7, 15], [8, 15], [9, 22], [10, 15], [11, 15], [12, 21]];
  test.each<[number, string]>([
    [30, '10:26 11:10 12:08 12:55 13:40 14:05 13:53 13:13 12:08 11:27 10:38 10:13'],
    [40, '9:40 10:44 12:10 13:17 14:24 15:01 14:43 13:44 12:09 11:09 9:58 9:19'],
    [50, '8:35 10:09 12:12 13:48 15:27 16:22 15:55 14:27 12:10 10:46 9:02 8:04'],
  ])('%d N', (latitudeDeg, row) => {
    for (const [index, clock] of row.split(' ').entries()) {
      const [month, day] = dates[index]!;
      const hours = dayLengthHours({ latitudeDeg, year: 2025, day: dayNumber({ month, day }) });
      expect(Math.abs(hours - hoursOf(clock)), `${month}/${day}`).toBeLessThanOrEqual(minute);
    }
  });
});
