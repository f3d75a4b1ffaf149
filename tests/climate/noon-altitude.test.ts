import { assert, double, integer, property } from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayLengthHours, dayLengthOn } from '../../scripts/climate/day-length.ts';
import { noonAltitude, noonAltitudeDeg } from '../../scripts/climate/noon-altitude.ts';

const anyDay = integer({ min: 1, max: 365 });
const june21 = 172;
const december21 = 355;

describe('over the globe', () => {
  test('away from the sun the noon sun stands lower by a degree for each degree of latitude', () => {
    assert(
      property(double({ min: 24, max: 88, noNaN: true }), anyDay, (latitudeDeg, day) => {
        for (const side of [1, -1]) {
          const at = (degrees: number): number =>
            noonAltitudeDeg({ latitudeDeg: side * degrees, year: 2025, day });
          expect(at(latitudeDeg) - at(latitudeDeg + 1)).toBeCloseTo(1, 9);
        }
      }),
    );
  });

  test('it is never beyond overhead, and north and south have the same sun half a year apart', () => {
    assert(
      property(double({ min: -90, max: 90, noNaN: true }), anyDay, (latitudeDeg, day) => {
        expect(noonAltitudeDeg({ latitudeDeg, year: 2025, day })).toBeLessThanOrEqual(90);
      }),
    );
    // Half a degree: the half years between the solstices differ by a few days.
    const north = noonAltitudeDeg({ latitudeDeg: 40, year: 2025, day: june21 });
    const south = noonAltitudeDeg({ latitudeDeg: -40, year: 2025, day: december21 });
    expect(Math.abs(north - south)).toBeLessThan(0.5);
  });

  test('where it is well above the horizon at noon the day has light, and where it is well below there is none', () => {
    assert(
      property(double({ min: -89, max: 89, noNaN: true }), anyDay, (latitudeDeg, day) => {
        const altitude = noonAltitudeDeg({ latitudeDeg, year: 2025, day });
        const hours = dayLengthHours({ latitudeDeg, year: 2025, day });
        if (altitude > 0) expect(hours).toBeGreaterThan(0);
        if (altitude < -1) expect(hours).toBe(0);
      }),
    );
  });
});

test.each([
  ['overhead on the northern tropic in June', 23.44, june21, 90],
  ['at the equator in June', 0, june21, 66.56],
  ['midnight sun at 70 N, low at noon', 70, june21, 43.44],
  ['the south pole in December', -90, december21, 23.44],
])('%s', (_, latitudeDeg, day, degrees) => {
  // 0.02: the obliquity is 23.44 degrees, and the solstice need not fall on noon.
  expect(Math.abs(noonAltitudeDeg({ latitudeDeg, year: 2025, day }) - degrees)).toBeLessThan(0.02);
});

test('in polar night the finding says that the sun does not come up', () => {
  expect(noonAltitude({ latitudeDeg: 72, year: 2025, day: december21 })).toMatchObject({
    id: 'sun.noon-altitude.12-21',
    value: { kind: 'none', reason: 'sun-below-horizon' },
  });
});

test('a leap year has the same noon sun to less than half a degree on every date', () => {
  assert(
    property(anyDay, (day) => {
      const at = (year: number): number => noonAltitudeDeg({ latitudeDeg: 45, year, day });
      // The declination moves by 0.4 degree a day at most, and the calendar drifts by less than a day.
      expect(Math.abs(at(2024) - at(2025))).toBeLessThan(0.4);
    }),
  );
});

test('the day length of a date is a finding named by it', () => {
  const place = { latitudeDeg: 40, year: 2025 };
  expect(dayLengthOn({ ...place, day: 166 })).toMatchObject({
    id: 'day-length.on.6-15',
    value: {
      kind: 'quantity',
      dimension: 'day-length',
      value: dayLengthHours({ ...place, day: 166 }),
    },
    method: 'day-length.noaa',
  });
});

test.each([91, -90.1, NaN])('latitude %d is refused', (latitudeDeg) => {
  expect(() => noonAltitudeDeg({ latitudeDeg, year: 2025, day: 1 })).toThrow(RangeError);
});
