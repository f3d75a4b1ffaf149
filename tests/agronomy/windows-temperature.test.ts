/** Windows where the temperatures of the year are known: soil, heat, and the rule that set each edge. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plantingWindows, type WindowClimate } from '../../scripts/agronomy/windows.ts';
import { edgeRules } from '../../scripts/agronomy/window-parts.ts';
import { none } from '../../scripts/findings/finding.ts';
import { toHeld } from '../../scripts/quantities/units.ts';
import { hardinessGroups, type Crop } from '../../scripts/records/schemas/crop.ts';
import { cropLike, q } from './crop.ts';
import { airYear, given, meanC, soilYear, type Swing } from './years.ts';

const sources = ['a-source'];
/** Coldest 25 F on January 20, warmest 77 F on July 21 (day 202.5). */
const inland: Swing = { meanF: 51, halfRangeF: 26 };
const freezes: WindowClimate = {
  lastFreeze: given('freeze.last.32f.50', 120),
  firstFreeze: (thresholdC) => given('first', thresholdC > -1 ? 275 : thresholdC > -3 ? 285 : 295),
};
const soilNeeds = (minimum: string, practical?: string, maximum = '95 F'): Partial<Crop> => ({
  soilTemperature: {
    minimum: q(minimum, 'temperature'),
    optimum: q('75 F', 'temperature'),
    maximum: q(maximum, 'temperature'),
    ...(practical ? { practical: q(practical, 'temperature') } : {}),
    sources: ['soil-needs'],
  },
});
const heat = (limit: string): Partial<Crop> => ({
  heatLimit: { value: q(limit, 'temperature'), sources: ['heat-needs'] },
});
const spring = (crop: Crop, climate: WindowClimate) => plantingWindows(crop, climate)[0]!;
const fall = (crop: Crop, climate: WindowClimate) =>
  plantingWindows(crop, climate).find(({ season }) => season === 'fall')!;
const names = (windows: ReturnType<typeof spring>) => windows.plant.inputs.map(({ name }) => name);
/** The first day of spring on which the cosine reaches a temperature, by its inverse. */
const risesTo = (swing: Swing, f: number): number =>
  Math.ceil(20 + (365 / (2 * Math.PI)) * Math.acos((swing.meanF - f) / swing.halfRangeF) - 1e-9);
const fallsTo = (swing: Swing, f: number): number =>
  Math.ceil(20 + 365 - (365 / (2 * Math.PI)) * Math.acos((swing.meanF - f) / swing.halfRangeF) - 1e-9);

describe('without temperatures each edge is told all the same', () => {
  test('by the offset, and in fall by freeze and length', () => {
    expect(spring(cropLike(), freezes).edges).toEqual({ opens: 'offset', closes: 'offset' });
    expect(fall(cropLike(), freezes).edges).toEqual({ opens: 'window-length', closes: 'ending-freeze' });
  });
  test('fall right after spring', () => {
    const crop = cropLike({ maturity: { days: q('130 days', 'duration'), from: 'sowing', sources } });
    expect(fall(crop, freezes)).toMatchObject({
      plant: { value: { from: 121, to: 141 } },
      edges: { opens: 'after-spring', closes: 'ending-freeze' },
    });
  });
  test('a winter without that freeze', () => {
    const mild = { ...freezes, firstFreeze: () => given('first', undefined) };
    expect(fall(cropLike(), mild).edges.closes).toBe('year-end');
  });
  test('no last freeze, no window', () => {
    const never = { ...freezes, lastFreeze: given('last', undefined) };
    expect(spring(cropLike(), never).edges).toEqual({ opens: 'no-window', closes: 'no-window' });
  });
  test('the chance that dates are planned by stands among the inputs', () => {
    expect(names(spring(cropLike(), { ...freezes, planning: { chancePercent: 20 } }))).toContain(
      'chance-percent',
    );
    expect(names(spring(cropLike(), freezes))).not.toContain('chance-percent');
  });
});

describe('spring sowing waits for the soil', () => {
  const soil = soilYear(inland);
  test('to the minimum, which then rules, however high a practical temperature is published', () => {
    const crop = cropLike(soilNeeds('52 F', '60 F'));
    const windows = spring(crop, { ...freezes, soil });
    const warm = risesTo(inland, 52);
    expect(warm).toBeGreaterThan(106);
    expect(windows.plant.value).toEqual({ kind: 'date-range', from: warm, to: warm + 14 });
    expect(windows.edges).toEqual({ opens: 'soil-temperature', closes: 'window-length' });
    expect(windows.plant.method).toBe('window.spring-temperature');
    expect(names(windows)).toEqual(expect.arrayContaining(['soil-warm-enough', 'soil-sowing-temperature']));
    expect(windows.plant.sources).toEqual(expect.arrayContaining(['soil-needs', 'a-soil-model']));
  });
  test('to the minimum where no practical one is known; soil that is warm by then asks nothing', () => {
    const crop = cropLike(soilNeeds('45 F'));
    expect(risesTo(inland, 45)).toBeLessThan(106);
    expect(spring(crop, { ...freezes, soil })).toMatchObject({
      plant: { value: { from: 106, to: 120 }, method: 'window.spring-group' },
      edges: { opens: 'offset' },
    });
    expect(names(spring(crop, { ...freezes, soil }))).not.toContain('soil-warm-enough');
  });
  test('past the usual close: open for two weeks from then', () => {
    const warm = risesTo(inland, 60);
    expect(warm).toBeGreaterThan(120);
    expect(spring(cropLike(soilNeeds('60 F')), { ...freezes, soil })).toMatchObject({
      plant: { value: { from: warm, to: warm + 14 } },
      edges: { opens: 'soil-temperature', closes: 'window-length' },
    });
  });
  test('for ever: no window, and the reason', () => {
    expect(spring(cropLike(soilNeeds('80 F')), { ...freezes, soil }).plant.value).toEqual(
      none('soil-too-cold'),
    );
  });
  test('too late for the season that is left', () => {
    const crop = cropLike({
      ...soilNeeds('74 F'),
      maturity: { days: q('110 days', 'duration'), from: 'sowing', sources },
    });
    expect(spring(crop, { ...freezes, soil }).plant.value).toEqual(none('soil-warm-too-late'));
  });
  test('what is set out does not wait', () => {
    const crop = cropLike({ ...soilNeeds('60 F'), plantings: [{ method: 'sets', fall: false }] });
    expect(spring(crop, { ...freezes, soil }).edges.opens).toBe('offset');
  });
  test('in the south too, half a year on', () => {
    const swing = { ...inland, coldestDay: 202 };
    const south: WindowClimate = {
      lastFreeze: given('last', 302),
      firstFreeze: () => given('first', 470),
      soil: soilYear(swing),
    };
    const windows = spring(cropLike(soilNeeds('52 F')), south);
    const warm = risesTo(inland, 52) + 182;
    expect(windows.plant.value).toMatchObject({ from: warm, to: warm + 14 });
  });
});

describe('a cool-season crop is harvested outside the heat', () => {
  const air = airYear(inland);
  test('spring closes so that a middling cultivar comes in before it', () => {
    const begins = risesTo(inland, 75);
    const closes = begins - 65;
    expect(closes).toBeLessThan(120);
    expect(closes - 106).toBeGreaterThanOrEqual(7);
    const windows = spring(cropLike(heat('75 F')), { ...freezes, air });
    expect(windows.plant.value).toEqual({ kind: 'date-range', from: 106, to: closes });
    expect(windows.edges.closes).toBe('heat');
    expect(names(windows)).toEqual(expect.arrayContaining(['heat-begins', 'heat-limit']));
    expect(windows.plant.sources).toEqual(expect.arrayContaining(['heat-needs', 'a-station']));
  });
  test('heat before any harvest: no window', () => {
    expect(spring(cropLike(heat('62 F')), { ...freezes, air }).plant.value).toEqual(
      none('too-hot-before-harvest'),
    );
  });
  test('where only a quick cultivar comes in before it, the window closes by that', () => {
    const begins = risesTo(inland, 74);
    expect(begins - 65).toBeLessThan(106 + 7);
    expect(spring(cropLike(heat('74 F')), { ...freezes, air }).plant.value).toEqual({
      kind: 'date-range',
      from: 106,
      to: begins - 60,
    });
  });
  test('a few days that even a quick cultivar leaves are no window', () => {
    expect(risesTo(inland, 73) - 60 - 106).toBeLessThan(7);
    expect(spring(cropLike(heat('73 F')), { ...freezes, air }).plant.value).toEqual(
      none('too-hot-before-harvest'),
    );
  });
  test('a quick cultivar before the heat goes before any after it', () => {
    const own = { opens: q('-2 weeks', 'duration'), closes: q('9 weeks', 'duration'), sources };
    const crop = cropLike({
      ...heat('74 F'),
      plantings: [{ method: 'direct-sow', spring: own, fall: false }],
    });
    expect(fallsTo(inland, 74) - 65).toBeLessThan(120 + 63);
    expect(spring(crop, { ...freezes, air }).plant.value).toMatchObject({
      from: 106,
      to: risesTo(inland, 74) - 60,
    });
  });
  test('a slow crop grows through the summer and comes in after it', () => {
    const slow = cropLike({
      ...heat('72 F'),
      maturity: { days: q('120 to 131 days', 'duration'), from: 'sowing', sources },
    });
    const windows = spring(slow, { ...freezes, air });
    expect(windows.plant.value).toEqual({ kind: 'date-range', from: fallsTo(inland, 72) - 125, to: 120 });
    expect(windows.edges).toEqual({ opens: 'heat', closes: 'offset' });
    expect(names(windows)).toEqual(expect.arrayContaining(['heat-ends', 'days-to-maturity']));
  });
  test('heat that never comes asks nothing', () => {
    expect(spring(cropLike(heat('80 F')), { ...freezes, air }).edges.closes).toBe('offset');
  });
  test('a warm-season crop has no such limit', () => {
    const crop = cropLike({ ...heat('62 F'), season: 'warm' });
    expect(spring(crop, { ...freezes, air }).edges.closes).toBe('offset');
  });
  test('a place that is always too hot', () => {
    const tropics = { ...freezes, air: airYear({ meanF: 80, halfRangeF: 3 }) };
    expect(spring(cropLike(heat('75 F')), tropics).plant.value).toEqual(none('too-hot-all-year'));
    expect(fall(cropLike(heat('75 F')), tropics).plant.value).toEqual(none('too-hot-all-year'));
  });
  test('fall opens so that the first harvest falls after it', () => {
    const quick = cropLike({
      ...heat('74 F'),
      maturity: { days: q('30 to 40 days', 'duration'), from: 'sowing', sources },
    });
    const ends = fallsTo(inland, 74);
    const windows = fall(quick, { ...freezes, air });
    const plain = fall(quick, freezes);
    expect(plain.plant.value).toMatchObject({ from: 285 - 54 - 28, to: 285 - 54 });
    expect(ends - 44).toBeLessThan(285 - 54 - 28);
    expect(windows.edges.opens).toBe('window-length');
    const later = fall({ ...quick, ...heat('66 F') }, { ...freezes, air });
    expect(later.plant.value).toEqual({ kind: 'date-range', from: fallsTo(inland, 66) - 44, to: 231 });
    expect(later.edges).toEqual({ opens: 'heat', closes: 'ending-freeze' });
    expect(later.plant.method).toBe('window.fall-temperature');
    if (later.harvest.value.kind !== 'none')
      expect(meanC(inland, later.harvest.value.from)).toBeLessThanOrEqual(toHeld(66, 'F') + 1e-9);
  });
  test('heat until it is too late for fall', () => {
    expect(fall(cropLike(heat('52 F')), { ...freezes, air }).plant.value).toEqual(none('hot-until-too-late'));
  });
});

test('fall sowing waits until the soil is below the maximum of the seed', () => {
  const quick = cropLike({
    ...soilNeeds('32 F', undefined, '76 F'),
    maturity: { days: q('30 to 40 days', 'duration'), from: 'sowing', sources },
  });
  const cools = fallsTo(inland, 76);
  expect(cools).toBeGreaterThan(285 - 54 - 28);
  expect(fall(quick, { ...freezes, soil: soilYear(inland) })).toMatchObject({
    plant: { value: { from: cools, to: 231 } },
    edges: { opens: 'soil-heat' },
  });
});

test('temperatures only ever narrow a window or move its opening later, whatever the place', () => {
  const arbitrary = fc.record({
    group: fc.constantFrom(...hardinessGroups),
    meanF: fc.integer({ min: 30, max: 80 }),
    halfRangeF: fc.integer({ min: 2, max: 35 }),
    limit: fc.integer({ min: 55, max: 85 }),
    needs: fc.integer({ min: 35, max: 65 }),
    days: fc.integer({ min: 25, max: 110 }),
  });
  fc.assert(
    fc.property(arbitrary, ({ group, meanF, halfRangeF, limit, needs, days }) => {
      const swing = { meanF, halfRangeF };
      const crop = cropLike({
        ...soilNeeds(`${needs} F`),
        ...heat(`${limit} F`),
        hardiness: { group, sources },
        maturity: { days: q(`${days} to ${days + 10} days`, 'duration'), from: 'sowing', sources },
      });
      const known = plantingWindows(crop, { ...freezes, air: airYear(swing), soil: soilYear(swing) });
      const plain = plantingWindows(crop, freezes);
      known.forEach((windows, index) => {
        expect(edgeRules).toContain(windows.edges.opens);
        const { value } = windows.plant;
        const before = plain[index]!.plant.value;
        if (value.kind === 'none' || before.kind === 'none') return;
        expect(value.from).toBeLessThanOrEqual(value.to);
        if (windows.season === 'spring') {
          expect(value.from).toBeGreaterThanOrEqual(before.from);
          expect(meanC(swing, value.from)).toBeGreaterThanOrEqual(toHeld(needs, 'F') - 1e-9);
        } else {
          // An early kind, sown later, where it stays hot too long for the others.
          expect([before.to, before.to + 10]).toContain(value.to);
          expect(meanC(swing, value.from + days + 14)).toBeLessThanOrEqual(toHeld(limit, 'F') + 1e-9);
        }
      });
    }),
  );
});
