/** Windows of places where no freeze sets the dates, and how they follow from those of places where it hardly does. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plantingWindows, type PlantingWindows, type WindowClimate } from '../../scripts/agronomy/windows.ts';
import { endedByFreeze } from '../../scripts/agronomy/hardiness.ts';
import { isFrostFree } from '../../scripts/agronomy/window-frost-free.ts';
import { daysInYear, isWholeYear } from '../../scripts/climate/calendar.ts';
import { dayAtChance } from '../../scripts/climate/mixed-normal.ts';
import { date, none, type DateFinding } from '../../scripts/findings/finding.ts';
import { hardinessGroups, type Crop, type HardinessGroup } from '../../scripts/records/schemas/crop.ts';
import { cropLike, q } from './crop.ts';
import { airYear, given, meanC, soilYear, type Swing } from './years.ts';
import { toHeld } from '../../scripts/quantities/units.ts';

const sources = ['a-source'];
const never: WindowClimate = {
  lastFreeze: given('freeze.last.32f.50', undefined),
  firstFreeze: () => given('first', undefined),
};
const withYear = (swing: Swing): WindowClimate => ({ ...never, air: airYear(swing), soil: soilYear(swing) });
const only = (crop: Crop, climate: WindowClimate): PlantingWindows => {
  const windows = plantingWindows(crop, climate);
  expect(windows).toHaveLength(crop.plantings.length);
  return windows[0]!;
};
const tropics: Swing = { meanF: 80, halfRangeF: 2 };
/** A frost-free coast: days of 54 F in January, 70 F in July. */
const coast: Swing = { meanF: 62, halfRangeF: 8 };
const warm: Partial<Crop> = { season: 'warm', hardiness: { group: 'very-tender', sources } };
const figure = (id: string, limit: string): Partial<Crop> => ({
  figures: [{ id, temperature: q(limit, 'temperature'), sources: ['a-limit'] }],
});
const heat = (limit: string): Partial<Crop> => ({
  heatLimit: { value: q(limit, 'temperature'), sources: ['heat-needs'] },
});

describe('one window for each way of planting', () => {
  test('a warm crop in the tropics: any day, held as days 1 to 365, and so the harvest', () => {
    const found = only(cropLike(warm), withYear(tropics));
    expect(found.plant).toMatchObject({
      id: 'testcrop.direct-sow.year',
      value: { kind: 'date-range', from: 1, to: 365 },
      method: 'window.frost-free',
    });
    expect(found.edges).toEqual({ opens: 'whole-year', closes: 'whole-year' });
    expect(found.harvest).toMatchObject({ id: 'testcrop.harvest.year', value: { from: 1, to: 365 } });
  });
  test('its transplants are started all year too', () => {
    const age = { value: q('5 to 7 weeks', 'duration'), sources };
    const crop = cropLike({ ...warm, plantings: [{ method: 'transplant', age, fall: true }] });
    expect(only(crop, withYear(tropics)).startIndoors?.value).toEqual({
      kind: 'date-range',
      from: 1,
      to: 365,
    });
  });
  test('a warm crop on a cool coast: while its days of growth are warm enough on average', () => {
    const { plant, edges } = only(
      cropLike({ ...warm, ...figure('growing-minimum', '65 F') }),
      withYear(coast),
    );
    expect(edges).toEqual({ opens: 'warmth', closes: 'warmth' });
    const average = (from: number): number =>
      Array.from({ length: 65 }, (_, day) => meanC(coast, from + day)).reduce((sum, c) => sum + c, 0) / 65;
    if (plant.value.kind === 'none') throw new TypeError('no dates');
    const limitC = toHeld(65, 'F');
    expect(average(plant.value.from)).toBeGreaterThanOrEqual(limitC);
    expect(average(plant.value.from - 1)).toBeLessThan(limitC);
    expect(average(plant.value.to)).toBeGreaterThanOrEqual(limitC);
    expect(average(plant.value.to + 1)).toBeLessThan(limitC);
    expect(plant.inputs.map(({ name }) => name)).toContain('growing-minimum');
  });
  test('a cool crop where the summer is hot: its harvest begins on days that are cool enough', () => {
    const swing: Swing = { meanF: 72, halfRangeF: 12 };
    const { plant, harvest, edges } = only(
      cropLike({ heatLimit: { ...heat('75 F').heatLimit!, endsHarvest: true } }),
      withYear(swing),
    );
    expect(edges).toEqual({ opens: 'heat', closes: 'heat' });
    if (plant.value.kind === 'none' || harvest.value.kind === 'none') throw new TypeError('no dates');
    const limitC = toHeld(75, 'F');
    for (let day = plant.value.from; day <= plant.value.to; day += 1)
      expect(meanC(swing, day + 65)).toBeLessThanOrEqual(limitC);
    expect(meanC(swing, plant.value.to + 66)).toBeGreaterThan(limitC);
    expect(harvest.value.to).toBeLessThan(plant.value.to + 70 + 21);
  });
  test.each<[string, Partial<Crop>, Swing, string]>([
    ['heat all year', heat('75 F'), tropics, 'too-hot-all-year'],
    [
      'soil too warm for the seed all year',
      {
        soilTemperature: {
          minimum: q('40 F', 'temperature'),
          optimum: q('65 F', 'temperature'),
          maximum: q('75 F', 'temperature'),
          sources,
        },
      },
      tropics,
      'soil-too-warm',
    ],
    [
      'a mountain never warm enough',
      { ...warm, ...figure('growing-minimum', '65 F') },
      { meanF: 50, halfRangeF: 5 },
      'too-cold-all-year',
    ],
    ['no winter for cloves', { part: 'bulb', ...figure('chill-below', '50 F') }, coast, 'winter-too-warm'],
  ])('none: %s', (_, changes, swing, reason) => {
    expect(only(cropLike(changes), withYear(swing)).plant.value).toEqual(none(reason));
  });
  test('without temperatures there is a plain reason', () => {
    expect(only(cropLike(), never).plant.value).toEqual(none('no-freeze-no-temperatures'));
    expect(only(cropLike(), never).harvest.value).toEqual(none('no-freeze-no-temperatures'));
  });
  test('bulbs are planted about the coolest day, from 15 weeks before it to 4 weeks after', () => {
    const { plant } = only(cropLike({ part: 'bulb', ...heat('85 F') }), withYear(tropics));
    expect(plant.value).toEqual({ kind: 'date-range', from: 20 - 105, to: 20 + 28 });
    const south = only(cropLike({ part: 'bulb' }), withYear({ ...tropics, coldestDay: 202 }));
    expect(south.plant.value).toEqual({ kind: 'date-range', from: 202 - 105, to: 202 + 28 });
  });
});

/** A place like the Gulf coast where a given share of winters has a freeze: last ones about January 25, first ones about December 28. */
function gulf(freezeShare: number, swing: Swing): WindowClimate {
  const at = (edge: 'last' | 'first', chance: number): DateFinding => {
    const day =
      freezeShare > 0
        ? dayAtChance({ freezeShare, meanDay: edge === 'last' ? 25 : 362, sdDays: 18 }, edge, chance)
        : undefined;
    return {
      ...given(`freeze.${edge}.32f`, undefined),
      value: day === undefined ? none('freeze-not-this-likely') : date(Math.round(day)),
    };
  };
  const seldom = given('first', undefined);
  return {
    lastFreeze: at('last', 0.5),
    firstFreeze: (thresholdC) => (thresholdC > -1 ? at('first', 0.5) : seldom),
    lastFreezeAt: (thresholdC) => (thresholdC > -1 ? at('last', 0.5) : seldom),
    lateFreeze: at('last', 0.1),
    air: airYear(swing),
    soil: soilYear(swing),
  };
}

const daysOf = (windows: readonly PlantingWindows[]): ReadonlySet<number> => {
  const days = new Set<number>();
  for (const { plant, season } of windows) {
    if (plant.value.kind === 'none' || season === 'overwinter') continue;
    for (let day = Math.round(plant.value.from); day <= plant.value.to; day += 1)
      days.add((((day - 1) % daysInYear) + daysInYear) % daysInYear);
  }
  return days;
};

const places = fc.record({
  kind: fc.constantFrom(
    ...hardinessGroups.map((group) => ({
      group,
      season: endedByFreeze(group) ? ('warm' as const) : ('cool' as const),
    })),
  ),
  meanF: fc.integer({ min: 58, max: 76 }),
  halfRangeF: fc.integer({ min: 4, max: 16 }),
  days: fc.integer({ min: 25, max: 110 }),
});
const cropOf = ({
  kind: { group, season },
  days,
}: {
  kind: { group: HardinessGroup; season: 'cool' | 'warm' };
  days: number;
}): Crop =>
  cropLike({
    season,
    hardiness: { group, sources },
    ...(season === 'cool' ? heat('75 F') : figure('growing-minimum', '50 F')),
    maturity: { days: q(`${days} to ${days + 20} days`, 'duration'), from: 'sowing', sources },
  });

describe('from even odds of a freeze down to none', () => {
  test('very tender crops wait for the freeze of one year in ten, and are ready by midwinter', () => {
    const climate = gulf(0.3, { meanF: 72, halfRangeF: 8 });
    const { plant, edges } = only(cropLike(warm), climate);
    const late = climate.lateFreeze!.value;
    if (late.kind === 'none') throw new TypeError('no late freeze');
    expect(plant.value).toEqual({ kind: 'date-range', from: late.day, to: 365 - 65 });
    expect(edges).toEqual({ opens: 'late-freeze', closes: 'late-freeze' });
    expect(only(cropLike(warm), gulf(0.05, { meanF: 72, halfRangeF: 8 })).edges.opens).toBe('whole-year');
  });
  test('fewer freezes never take a day away, and from 50 % to above 10 % the dates move by days only', () => {
    fc.assert(
      fc.property(places, (place) => {
        const crop = cropOf(place);
        const at = (share: number): ReadonlySet<number> => daysOf(plantingWindows(crop, gulf(share, place)));
        const shares = [0.5, 0.4, 0.3, 0.2, 0.15, 0.12, 0.1, 0.05, 0];
        const sets = shares.map(at);
        sets.slice(1).forEach((days, index) => {
          const before = sets[index]!;
          expect([...before].filter((day) => !days.has(day))).toEqual([]);
          const share = shares[index + 1]!;
          // Above 10 % only the date of the late freeze moves, by its own distribution.
          if (share > 0.1) expect(days.size - before.size).toBeLessThanOrEqual(25);
        });
      }),
      { numRuns: 60 },
    );
  });
  test('what is planted where it freezes in just over half of the winters may be planted where it does in just under half', () => {
    fc.assert(
      fc.property(places, (place) => {
        const crop = cropOf(place);
        const over = plantingWindows(crop, gulf(0.52, place));
        const under = plantingWindows(crop, gulf(0.5, place));
        expect(isFrostFree(gulf(0.52, place))).toBe(false);
        expect(isFrostFree(gulf(0.5, place))).toBe(true);
        const days = daysOf(under);
        // Fall sowing may begin two weeks sooner before the end of the heat, for the slower growth of fall days, and where
        // freezes rule a warm crop does not wait for days of growth that are warm enough: a month of difference at the most.
        const missing = [...daysOf(over)].filter((day) => !days.has(day));
        expect(missing.length).toBeLessThanOrEqual(31);
      }),
      { numRuns: 60 },
    );
  });
});

test('a whole year is a run of 365 days or more', () => {
  expect(isWholeYear({ from: 1, to: 365 })).toBe(true);
  expect(isWholeYear({ from: -10, to: 354 })).toBe(true);
  expect(isWholeYear({ from: 2, to: 365 })).toBe(false);
});
