import { assert, integer, property } from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  dayNumber,
  dayOfYear,
  growingSeason,
  monthDay,
  placeInSeason,
  type FreezeSeason,
} from '../../scripts/climate/calendar.ts';

describe('days of the fixed year', () => {
  test.each([
    ['January 1', 1, 1, 1],
    ['February 28', 2, 28, 59],
    ['March 1', 3, 1, 60],
    ['August 1', 8, 1, 213],
    ['December 31', 12, 31, 365],
  ])('%s', (_, month, day, number) => {
    expect(dayNumber({ month, day })).toBe(number);
    expect(monthDay(number)).toEqual({ month, day });
  });

  test('February 29 counts as February 28', () => {
    expect(dayNumber({ month: 2, day: 29 })).toBe(59);
  });

  test.each([
    ['February 30', 2, 30],
    ['April 31', 4, 31],
    ['day 0', 5, 0],
    ['month 0', 0, 5],
    ['month 13', 13, 1],
  ])('%s is refused', (_, month, day) => {
    expect(() => dayNumber({ month, day })).toThrow(RangeError);
  });

  test.each([
    ['the day before the year', 0, 365],
    ['December 27 before the year', -4, 361],
    ['the day after the year', 366, 1],
    ['two years on', 731, 1],
    ['a fraction just below the year', 0.4, 365],
    ['a fraction that rounds into the year', 0.6, 1],
  ])('%s is brought into the year', (_, number, day) => {
    expect(dayOfYear(number)).toBe(day);
  });

  test('every day number is the number of its own date', () => {
    assert(property(integer({ min: 1, max: 365 }), (day) => dayNumber(monthDay(day)) === day));
  });
});

describe('freeze seasons', () => {
  test.each([
    ['north, spring', 45, 'last', { from: [8, 1], to: [7, 31] }],
    ['north, fall', 45, 'first', { from: [8, 1], to: [7, 31] }],
    ['south, spring', -35, 'last', { from: [2, 1], to: [1, 31] }],
    ['south, fall', -35, 'first', { from: [2, 1], to: [1, 31] }],
    ['equator, as in the north', 0, 'last', { from: [8, 1], to: [7, 31] }],
  ] as const)('%s', (_, latitudeDeg, edge, dates) => {
    const season: FreezeSeason = growingSeason(latitudeDeg)[edge];
    expect(monthDay(season.from)).toEqual({ month: dates.from[0], day: dates.from[1] });
    expect(monthDay(season.to)).toEqual({ month: dates.to[0], day: dates.to[1] });
    expect(season.to - season.from).toBe(364);
    expect(monthDay(season.middle)).toEqual({ month: dates.from[0] === 8 ? 2 : 8, day: 1 });
  });

  test.each([
    ['a northern last freeze in May', 45, 'last', 129, 129],
    ['a northern last freeze on December 27', 45, 'last', 361, -4],
    ['a northern first freeze in October', 45, 'first', 279, 279],
    ['a northern first freeze in January', 30, 'first', 6, 371],
    ['a southern last freeze in September', -35, 'last', 263, 263],
    ['a southern first freeze in April', -35, 'first', 105, 470],
  ] as const)('%s', (_, latitudeDeg, edge, day, placed) => {
    expect(placeInSeason(day, growingSeason(latitudeDeg)[edge])).toBe(placed);
  });

  test('every last freeze comes before every first one, in both hemispheres', () => {
    const anyDay = integer({ min: 1, max: 365 });
    assert(
      property(anyDay, anyDay, integer({ min: -90, max: 90 }), (lastDay, firstDay, latitudeDeg) => {
        const { last, first } = growingSeason(latitudeDeg);
        return placeInSeason(lastDay, last) < placeInSeason(firstDay, first);
      }),
    );
  });
});
