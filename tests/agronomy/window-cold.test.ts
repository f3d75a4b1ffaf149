/** What cold nights, thawed ground and the chance that is planned by do to the opening of a spring window. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coldLimitBounds, lateFreezeBounds } from '../../scripts/agronomy/window-cold.ts';
import { plantingWindows, type WindowClimate } from '../../scripts/agronomy/windows.ts';
import { none } from '../../scripts/findings/finding.ts';
import { hardinessGroups, type Crop, type PlantingMethod } from '../../scripts/records/schemas/crop.ts';
import { cropLike, q } from './crop.ts';
import { airYear, given, soilYear } from './years.ts';

const sources = ['a-source'];
/** Last freezes: 32 F on day 120, and ten days sooner for each four degrees. */
const lastOn = (thresholdC: number): number => 120 - ((32 - (thresholdC * 1.8 + 32)) / 4) * 10;
const climate: WindowClimate = {
  lastFreeze: given('freeze.last.32f.50', 120),
  firstFreeze: () => given('first', 290),
  lastFreezeAt: (thresholdC) => given('last', lastOn(thresholdC)),
  lateFreeze: given('freeze.last.32f.10', 137),
};
const limited = (limit: string, method: PlantingMethod = 'sets', changes: Partial<Crop> = {}): Crop =>
  cropLike({
    hardiness: { group: 'hardy', sources },
    plantings: [
      {
        method,
        fall: false,
        spring: { opens: q('-6 weeks', 'duration'), closes: q('-4 weeks', 'duration'), sources },
      },
    ],
    figures: [{ id: 'cold-limit', temperature: q(limit, 'temperature'), sources: ['cold-source'] }],
    ...changes,
  });
const spring = (crop: Crop, at: WindowClimate = climate) => plantingWindows(crop, at)[0]!;

describe('plants wait until nights colder than they stand are over', () => {
  test.each<[string, string, number]>([
    ['a limit that the table has', '20 F', 90],
    ['a limit between two thresholds', '26 F', 105],
    ['a limit above the coldest threshold', '17 F', 83],
    ['a limit below the coldest threshold waits for that one', '10 F', 80],
    ['a limit above the warmest threshold asks nothing', '40 F', 78],
  ])('%s', (_, limit, opens) => {
    // The crop's own weeks open on day 78.
    expect(spring(limited(limit)).plant.value).toMatchObject({ from: opens });
  });
  test('stays open for its usual length, and says which rule set it', () => {
    const { plant, edges } = spring(limited('20 F'));
    expect(plant.value).toEqual({ kind: 'date-range', from: 90, to: 104 });
    expect(edges).toEqual({ opens: 'cold-limit', closes: 'window-length' });
    expect(plant.inputs).toContainEqual({
      name: 'opens-by',
      value: { kind: 'choice', value: 'edge-cold-limit' },
    });
    expect(plant.sources).toContain('cold-source');
  });
  test.each<[string, PlantingMethod]>([
    ['seed lies under the soil', 'direct-sow'],
    ['so do seed pieces', 'seed-pieces'],
  ])('%s', (_, method) => {
    expect(coldLimitBounds(limited('26 F', method), limited('26 F', method).plantings[0]!, climate)).toEqual(
      [],
    );
  });
  test('a table that lacks the colder threshold: the warmer one rules', () => {
    const lacking: WindowClimate = {
      ...climate,
      lastFreezeAt: (thresholdC) =>
        thresholdC < -3
          ? { ...given('last', undefined), value: none('freeze-threshold-not-given') }
          : given('last', lastOn(thresholdC)),
    };
    expect(spring(limited('26 F'), lacking).plant.value).toMatchObject({ from: 110 });
    expect(spring(limited('20 F'), lacking).plant.value).toMatchObject({ from: 78 });
  });
  test('a crop without a limit on record, or a climate without dates, asks nothing', () => {
    expect(spring(limited('20 F', 'sets', { figures: [] })).edges.opens).toBe('offset');
    const { lastFreeze, firstFreeze } = climate;
    expect(spring(limited('20 F'), { lastFreeze, firstFreeze }).edges.opens).toBe('offset');
  });
  test('a colder limit never opens later', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 36 }), fc.integer({ min: 0, max: 20 }), (limit, colderBy) => {
        const opening = (limitF: number): number => {
          const { value } = spring(limited(`${limitF} F`)).plant;
          return value.kind === 'none' ? Infinity : value.from;
        };
        expect(opening(limit - colderBy)).toBeLessThanOrEqual(opening(limit));
      }),
    );
  });
});

describe('very tender crops wait until it freezes in one year of ten only', () => {
  const veryTender = cropLike({ hardiness: { group: 'very-tender', sources } });
  test('the 10 % date rules where it comes after the weeks of the group', () => {
    // Two weeks after the average last freeze is day 134.
    expect(spring(veryTender)).toMatchObject({
      plant: { value: { from: 137 }, method: 'window.spring-temperature' },
      edges: { opens: 'late-freeze' },
    });
  });
  test('where it comes before, the weeks rule', () => {
    expect(spring(veryTender, { ...climate, lateFreeze: given('late', 130) })).toMatchObject({
      plant: { value: { from: 134 } },
      edges: { opens: 'offset' },
    });
  });
  test.each(hardinessGroups.filter((group) => group !== 'very-tender'))('%s crops do not wait', (group) => {
    expect(lateFreezeBounds(cropLike({ hardiness: { group, sources } }), climate)).toEqual([]);
  });
  test('a late freeze that does not come asks nothing', () => {
    expect(lateFreezeBounds(veryTender, { lateFreeze: given('late', undefined) })).toEqual([]);
  });
});

describe('nothing is planted in ground that cannot be worked', () => {
  /** 40 F at every depth is reached on day 105 at the latest of these swings. */
  const soil = soilYear({ meanF: 46, halfRangeF: 24 });
  test.each<[string, PlantingMethod]>([
    ['seed', 'direct-sow'],
    ['sets', 'sets'],
    ['plants', 'transplant'],
    ['seed pieces', 'seed-pieces'],
  ])('%s', (_, method) => {
    const windows = spring(limited('0 F', method), { ...climate, soil });
    if (windows.plant.value.kind === 'none') throw new TypeError('no window');
    expect(windows.edges.opens).toBe('soil-workable');
    expect(soil.at(windows.plant.value.from, 10)).toBeGreaterThanOrEqual(40 / 1.8 - 32 / 1.8);
    expect(soil.at(windows.plant.value.from - 1, 10)).toBeLessThan(40 / 1.8 - 32 / 1.8);
  });
  test('ground that never warms to 40 F', () => {
    const arctic = { ...climate, soil: soilYear({ meanF: 20, halfRangeF: 15 }) };
    expect(spring(limited('0 F'), arctic).plant.value).toEqual(none('soil-too-cold'));
  });
  test('ground that never cools to it asks nothing', () => {
    const mild = { ...climate, soil: soilYear({ meanF: 65, halfRangeF: 15 }) };
    expect(spring(limited('0 F'), mild).edges.opens).not.toBe('soil-workable');
  });
});

test('a later last freeze never opens a tender window earlier', () => {
  const arbitrary = fc.record({
    group: fc.constantFrom('tender' as const, 'very-tender' as const),
    last: fc.integer({ min: 60, max: 150 }),
    later: fc.integer({ min: 0, max: 30 }),
    lateBy: fc.integer({ min: 0, max: 30 }),
    meanF: fc.integer({ min: 40, max: 60 }),
  });
  fc.assert(
    fc.property(arbitrary, ({ group, last, later, lateBy, meanF }) => {
      const opening = (day: number): number => {
        const { value } = spring(cropLike({ season: 'warm', hardiness: { group, sources } }), {
          ...climate,
          soil: soilYear({ meanF, halfRangeF: 22 }),
          lastFreeze: given('last', day),
          lateFreeze: given('late', day + lateBy),
        }).plant;
        return value.kind === 'none' ? Infinity : value.from;
      };
      expect(opening(last + later)).toBeGreaterThanOrEqual(opening(last));
    }),
  );
});

describe('a season that leaves a few days only', () => {
  const slow = (days: string) =>
    cropLike({
      hardiness: { group: 'tender', sources },
      season: 'warm',
      maturity: { days: q(days, 'duration'), from: 'sowing', sources },
    });
  test('early kinds keep the window that the slow ones would cut short', () => {
    // 290 less 14 for short days and 14 to pick: slow kinds by day 122, early ones by day 152.
    expect(spring(slow('110 to 140 days')).plant.value).toEqual({ kind: 'date-range', from: 120, to: 134 });
  });
  test('too few days even for them: no window', () => {
    expect(spring(slow('138 to 160 days')).plant.value).toEqual(none('season-too-short'));
  });
  test('a crop that is lifted at once needs no two weeks to pick it', () => {
    const lifted = { ...slow('130 days'), harvestLasts: { value: q('1 week', 'duration'), sources } };
    expect(spring(slow('130 days')).plant.value).toMatchObject({ to: 132 });
    expect(spring(lifted).plant.value).toMatchObject({ to: 134 });
  });
});

describe('heat ends the harvest of what bolts', () => {
  /** Warmest 77 F on day 202; 70 F is passed in June. */
  const air = airYear({ meanF: 51, halfRangeF: 26 });
  const quick = (endsHarvest: boolean): Crop =>
    cropLike({
      maturity: { days: q('30 to 40 days', 'duration'), from: 'sowing', sources },
      harvestLasts: { value: q('8 weeks', 'duration'), sources },
      heatLimit: {
        value: q('72 F', 'temperature'),
        ...(endsHarvest ? { endsHarvest: true } : {}),
        sources: ['heat-source'],
      },
    });
  test('on the first day too warm for it', () => {
    const { harvest } = spring(quick(true), { ...climate, air });
    expect(harvest).toMatchObject({ value: { to: 166 }, method: 'window.harvest-until-heat' });
    expect(harvest.inputs.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['heat-begins', 'heat-limit']),
    );
  });
  test('not where the record does not say so, nor where no temperatures are known', () => {
    for (const { harvest } of [spring(quick(false), { ...climate, air }), spring(quick(true))])
      expect(harvest).toMatchObject({ value: { to: 120 + 40 + 56 } });
  });
});
