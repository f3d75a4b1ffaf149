import { assert, constantFrom, double, integer, property } from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayNumber } from '../../scripts/climate/calendar.ts';
import {
  dateDayLengthReaches,
  dayLengthHours,
  dayLengthReaches,
  longestDay,
  shortestDay,
} from '../../scripts/climate/day-length.ts';

const june21 = dayNumber({ month: 6, day: 21 });
const december21 = dayNumber({ month: 12, day: 21 });
const anyDay = integer({ min: 1, max: 365 });
const anyYear = integer({ min: 1950, max: 2080 });
const anyLatitude = double({ min: -65, max: 65, noNaN: true });

describe('through and past the range', () => {
  test.each([
    ['midnight sun', 70, june21, 24],
    ['polar night', 70, december21, 0],
    ['southern polar night', -70, june21, 0],
    ['north pole in summer', 90, june21, 24],
    ['south pole in northern summer', -90, june21, 0],
  ])('%s', (_, latitudeDeg, day, hours) => {
    expect(dayLengthHours({ latitudeDeg, year: 2025, day })).toBe(hours);
  });

  test('the equinox day is longer than twelve hours, by refraction and the width of the sun', () => {
    const minutesOver = (dayLengthHours({ latitudeDeg: 40, year: 2025, day: 79 }) - 12) * 60;
    expect(minutesOver).toBeGreaterThan(8);
    expect(minutesOver).toBeLessThan(12);
  });

  test.each([90.1, -91, NaN])('latitude %d is refused', (latitudeDeg) => {
    expect(() => dayLengthHours({ latitudeDeg, year: 2025, day: 1 })).toThrow(RangeError);
  });

  test('days before and after the year are those of its neighbours', () => {
    assert(
      property(anyLatitude, anyYear, anyDay, (latitudeDeg, year, day) => {
        const hours = dayLengthHours({ latitudeDeg, year, day });
        expect(dayLengthHours({ latitudeDeg, year: year + 1, day: day - 365 })).toBe(hours);
        expect(dayLengthHours({ latitudeDeg, year: year - 1, day: day + 365 })).toBe(hours);
      }),
    );
  });

  test('a date has nearly the same day length in a leap year and beside it', () => {
    assert(
      property(anyDay, (day) => {
        const at = (year: number) => dayLengthHours({ latitudeDeg: 45, year, day });
        // The calendar drifts by up to a day against the sun; at 45 degrees a day is worth 3.4 minutes at most.
        expect(Math.abs(at(2024) - at(2025))).toBeLessThan(3.5 / 60);
      }),
    );
  });
});

describe('over the globe', () => {
  test('June days grow longer toward the north, December days shorter', () => {
    assert(
      property(anyLatitude, (latitudeDeg) => {
        const at = (latitude: number, day: number) =>
          dayLengthHours({ latitudeDeg: latitude, year: 2025, day });
        expect(at(latitudeDeg + 1, june21)).toBeGreaterThan(at(latitudeDeg, june21));
        expect(at(latitudeDeg + 1, december21)).toBeLessThan(at(latitudeDeg, december21));
      }),
    );
  });

  test('day in the north and day in the south add up to 24 hours and what refraction gives both', () => {
    assert(
      property(double({ min: 0, max: 55, noNaN: true }), anyDay, (latitudeDeg, day) => {
        const north = dayLengthHours({ latitudeDeg, year: 2025, day });
        const south = dayLengthHours({ latitudeDeg: -latitudeDeg, year: 2025, day });
        const extraMinutes = (north + south - 24) * 60;
        expect(extraMinutes).toBeGreaterThan(13);
        expect(extraMinutes).toBeLessThan(40);
      }),
    );
  });
});

describe('longest and shortest day', () => {
  test.each([
    ['north', 40, [172, 355], [15.0, 9.3]],
    ['south', -40, [355, 172], [15.0, 9.3]],
  ] as const)('%s', (_, latitudeDeg, days, hours) => {
    const findings = [longestDay({ latitudeDeg, year: 2025 }), shortestDay({ latitudeDeg, year: 2025 })];
    expect(findings.map((finding) => finding.id)).toEqual(['day-length.longest', 'day-length.shortest']);
    for (const [index, { value, inputs, method, sources }] of findings.entries()) {
      expect(value.kind === 'quantity' && value.dimension === 'day-length' && value.value).toBeCloseTo(
        hours[index]!,
        1,
      );
      const date = inputs.find((input) => input.name === 'date')?.value;
      const distance = date?.kind === 'date' ? Math.abs(((date.day + 364) % 365) + 1 - days[index]!) : NaN;
      expect(distance).toBeLessThanOrEqual(1);
      expect([method, sources]).toEqual(['day-length.noaa', ['noaa-solar-calculations']]);
    }
  });

  test('no day of the year is longer or shorter', () => {
    // Closer to the equator the day length changes by seconds only, and its extremes are not at the solstices.
    const size = double({ min: 5, max: 65, noNaN: true });
    assert(
      property(size, constantFrom(1, -1), anyYear, anyDay, (degrees, side, year, day) => {
        const place = { latitudeDeg: degrees * side, year };
        const [longest, shortest] = [longestDay(place), shortestDay(place)].map(({ value }) =>
          value.kind === 'quantity' ? value.value : NaN,
        );
        const hours = dayLengthHours({ ...place, day });
        // A second: the turning day of a season may be one of the neighbouring year.
        expect(hours).toBeLessThanOrEqual(longest! + 1 / 3600);
        expect(hours).toBeGreaterThanOrEqual(shortest! - 1 / 3600);
      }),
    );
  });
});

describe('the date a day length is reached', () => {
  test('at 40 N the days pass 14 hours in early May and early August', () => {
    const place = { latitudeDeg: 40, year: 2025, hours: 14 };
    const rising = dateDayLengthReaches({ ...place, direction: 'rising' });
    const falling = dateDayLengthReaches({ ...place, direction: 'falling' });
    expect(rising).toEqual({ kind: 'date', day: dayNumber({ month: 5, day: 3 }) });
    expect(falling).toEqual({ kind: 'date', day: dayNumber({ month: 8, day: 9 }) });
  });

  test.each([
    ['16 hours at 30 N', 30, 16, 'day-never-that-long'],
    ['8 hours at 30 N', 30, 8, 'day-always-longer'],
    ['16 hours at 30 S', -30, 16, 'day-never-that-long'],
  ])('%s', (_, latitudeDeg, hours, reason) => {
    for (const direction of ['rising', 'falling'] as const) {
      expect(dateDayLengthReaches({ latitudeDeg, year: 2025, hours, direction })).toEqual({
        kind: 'none',
        reason,
      });
    }
  });

  test('the day before is on the other side, and rising comes before falling, in both hemispheres', () => {
    assert(
      property(
        double({ min: 25, max: 60, noNaN: true }),
        double({ min: 11, max: 13.5, noNaN: true }),
        anyYear,
        (size, hours, year) => {
          for (const latitudeDeg of [size, -size]) {
            const rising = dateDayLengthReaches({ latitudeDeg, year, hours, direction: 'rising' });
            const falling = dateDayLengthReaches({ latitudeDeg, year, hours, direction: 'falling' });
            if (rising.kind === 'none' || falling.kind === 'none')
              throw new Error('every such day length is reached');
            expect(rising.day).toBeLessThan(falling.day);
            expect(dayLengthHours({ latitudeDeg, year, day: rising.day })).toBeGreaterThanOrEqual(hours);
            expect(dayLengthHours({ latitudeDeg, year, day: rising.day - 1 })).toBeLessThan(hours);
            expect(dayLengthHours({ latitudeDeg, year, day: falling.day })).toBeLessThanOrEqual(hours);
            expect(dayLengthHours({ latitudeDeg, year, day: falling.day - 1 })).toBeGreaterThan(hours);
          }
        },
      ),
    );
  });

  test('as a finding', () => {
    expect(
      dayLengthReaches({ latitudeDeg: 40, year: 2025, hours: 13.5, direction: 'falling' }),
    ).toMatchObject({
      id: 'day-length.falling.13-5h',
      method: 'day-length.noaa',
      sources: ['noaa-solar-calculations'],
    });
  });
});
