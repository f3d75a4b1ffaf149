/**
 * Day length against an astronomy library at a thousand random places and dates.
 *
 * Library: astronomy-engine 2 (D. Cross), whose sun follows the VSOP87 theory and which looks for the moments at which the
 * sun's upper limb rises and sets, with 34' of refraction, as sunrise is defined here.
 */
import { Body, MakeTime, Observer, SearchRiseSet } from 'astronomy-engine';
import { describe, expect, test } from 'vitest';
import { monthDay } from '../../scripts/climate/calendar.ts';
import { dayLengthHours } from '../../scripts/climate/day-length.ts';
import { noonAltitudeDeg } from '../../scripts/climate/noon-altitude.ts';
import { noonDeclinationDeg } from '../../scripts/climate/sun.ts';

interface PlaceAndDate {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly year: number;
  readonly day: number;
}

const cases = randomCases(1000);

/**
 * How far the sun stays from just grazing the horizon at noon or at midnight, in degrees. Within half a degree of it a few
 * hundredths of a degree of the sun's height decide between minutes and none, so those days are left out.
 */
function fromGrazingDeg({ latitudeDeg, ...when }: PlaceAndDate): number {
  const declination = noonDeclinationDeg(when);
  const noon = 90 - Math.abs(latitudeDeg - declination);
  const midnight = Math.abs(latitudeDeg + declination) - 90;
  return Math.min(Math.abs(noon + 0.833), Math.abs(midnight + 0.833));
}

describe('1,000 places from pole to pole, dates from 1990 to 2049', () => {
  const compared = cases.filter((when) => fromGrazingDeg(when) >= 0.5);

  test('few are left out, and all kinds of days are among the rest', () => {
    const lengths = compared.map(dayLengthHours);
    expect(compared.length).toBeGreaterThan(980);
    expect(lengths.filter((hours) => hours === 24).length).toBeGreaterThan(40);
    expect(lengths.filter((hours) => hours === 0).length).toBeGreaterThan(40);
  });

  test('day lengths agree to two minutes, polar day and night exactly', () => {
    // Two minutes: the declination here is that of noon, while it moves by up to 0.4 degree a day, which matters near the
    // poles (the largest difference is 1.2 minutes, at 83 degrees north in spring); and refraction is the mean one.
    for (const when of compared) {
      const theirs = libraryHours(when);
      const ours = dayLengthHours(when);
      const name = JSON.stringify(when);
      if (theirs === undefined) expect([0, 24], name).toContain(ours);
      else expect(Math.abs(ours - theirs) * 60, name).toBeLessThan(2);
    }
  });

  test('with noon of 90 degrees west for every place the error stays below three minutes up to 50 degrees', () => {
    const middle = compared.filter(({ latitudeDeg }) => Math.abs(latitudeDeg) <= 50);
    expect(middle.length).toBeGreaterThan(400);
    for (const { latitudeDeg, year, day, longitudeDeg } of middle) {
      const theirs = libraryHours({ latitudeDeg, longitudeDeg, year, day })!;
      expect(Math.abs(dayLengthHours({ latitudeDeg, year, day }) - theirs) * 60).toBeLessThan(3);
    }
  });
});

test('the noon sun of 40 degrees north stands at 73.4 degrees in June and 26.6 in December', () => {
  // 90 degrees less the latitude, give or take the obliquity of the ecliptic, 23.44 degrees; to 0.02 degree, since the
  // solstice does not fall on noon.
  expect(Math.abs(noonAltitudeDeg({ latitudeDeg: 40, year: 2025, day: 172 }) - 73.44)).toBeLessThan(0.02);
  expect(Math.abs(noonAltitudeDeg({ latitudeDeg: 40, year: 2025, day: 355 }) - 26.56)).toBeLessThan(0.02);
});

/** Undefined when the sun does not rise or does not set around noon of the day. */
function libraryHours({ latitudeDeg, longitudeDeg, year, day }: PlaceAndDate): number | undefined {
  const date = monthDay(day);
  const noon = MakeTime(new Date(Date.UTC(year, date.month - 1, date.day, 12) - longitudeDeg * 240_000));
  const observer = new Observer(latitudeDeg, longitudeDeg, 0);
  const halfADay = 0.53;
  const rise = SearchRiseSet(Body.Sun, observer, 1, noon, -halfADay);
  const set = SearchRiseSet(Body.Sun, observer, -1, noon, halfADay);
  return rise && set ? (set.ut - rise.ut) * 24 : undefined;
}

/** The minimal standard generator of Park and Miller, seeded: the same cases on every run. */
function randomCases(count: number): readonly PlaceAndDate[] {
  let state = 20_260_101;
  const random = (): number => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return Array.from({ length: count }, () => ({
    latitudeDeg: random() * 180 - 90,
    longitudeDeg: random() * 360 - 180,
    year: 1990 + Math.floor(random() * 60),
    day: 1 + Math.floor(random() * 365),
  }));
}
