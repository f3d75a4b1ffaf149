import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plantingWindows, type WindowClimate } from '../../scripts/agronomy/windows.ts';
import { date, none, type DateFinding } from '../../scripts/findings/finding.ts';
import { hardinessGroups, type Crop } from '../../scripts/records/schemas/crop.ts';
import { cropLike, q } from './crop.ts';

const on = (id: string, day: number | undefined): DateFinding => ({
  id,
  value: day === undefined ? none('freeze-never') : date(day),
  method: 'given',
  inputs: [],
  sources: ['a-table'],
});

/** Last freeze on day 120 (April 30); first freezes of 32, 28 and 24 F ten days apart from day 275 (October 2). */
const cold: WindowClimate = {
  lastFreeze: on('freeze.last.32f.50', 120),
  firstFreeze: (thresholdC) => on('first', thresholdC > -1 ? 275 : thresholdC > -3 ? 285 : 295),
};

const spring = (crop: Crop, climate = cold) =>
  plantingWindows(crop, climate).find(({ season }) => season === 'spring')!;
const fall = (crop: Crop, climate = cold) =>
  plantingWindows(crop, climate).find(({ season }) => season === 'fall');
const sources = ['a-source'];

describe('spring windows follow the hardiness group', () => {
  const cases: [(typeof hardinessGroups)[number], number, number][] = [
    ['hardy', 92, 106],
    ['semi-hardy', 106, 120],
    ['tender', 120, 134],
    ['very-tender', 134, 148],
  ];
  test.each(cases)('%s', (group, from, to) => {
    expect(spring(cropLike({ hardiness: { group, sources } })).plant.value).toEqual({
      kind: 'date-range',
      from,
      to,
    });
  });
});

test('a crop with weeks of its own keeps them', () => {
  const own = { opens: q('-6 weeks', 'duration'), closes: q('-4 weeks', 'duration'), sources };
  const { plant } = spring(cropLike({ plantings: [{ method: 'sets', fall: false, spring: own }] }));
  expect([plant.id, plant.value, plant.method]).toEqual([
    'testcrop.plant-sets.spring',
    { kind: 'date-range', from: 78, to: 92 },
    'window.spring-crop',
  ]);
});

test('a sowing that would not mature before its freeze is cut off', () => {
  const own = { opens: q('0 weeks', 'duration'), closes: q('30 weeks', 'duration'), sources };
  const { plant } = spring(cropLike({ plantings: [{ method: 'direct-sow', fall: false, spring: own }] }));
  // 285 (28 F) - 70 days - 14 for short days
  expect(plant.value).toEqual({ kind: 'date-range', from: 120, to: 201 });
});

test('transplants start indoors by their age before they are set out', () => {
  const crop = cropLike({
    plantings: [
      { method: 'transplant', age: { value: q('5 to 7 weeks', 'duration'), sources }, fall: false },
    ],
  });
  expect(spring(crop).startIndoors?.value).toEqual({ kind: 'date-range', from: 106 - 49, to: 120 - 35 });
});

describe('harvest', () => {
  test('from the first planting to the end of the last picking', () => {
    expect(spring(cropLike()).harvest.value).toEqual({
      kind: 'date-range',
      from: 106 + 60,
      to: 120 + 70 + 21,
    });
  });
  test('ends with the freeze that ends the crop', () => {
    const crop = cropLike({
      hardiness: { group: 'very-tender', sources },
      harvestLasts: { value: q('20 weeks', 'duration'), sources },
    });
    expect(spring(crop).harvest.value).toEqual({ kind: 'date-range', from: 194, to: 275 });
  });
  test('days from sowing are two weeks shorter for plants that are set out, however old', () => {
    const age = { value: q('5 to 7 weeks', 'duration'), sources };
    const crop = cropLike({ plantings: [{ method: 'transplant', age, fall: false }] });
    expect(spring(crop).harvest.value).toEqual({ kind: 'date-range', from: 106 + 46, to: 120 + 56 + 21 });
  });
  test('days from setting out are longer by the age of transplants for a crop sown in place', () => {
    const age = { value: q('4 to 6 weeks', 'duration'), sources };
    const crop = cropLike({
      maturity: { days: q('60 to 70 days', 'duration'), from: 'planting-out', sources },
      plantings: [
        { method: 'direct-sow', fall: false },
        { method: 'transplant', age, fall: false },
      ],
    });
    expect(spring(crop).harvest.value).toEqual({
      kind: 'date-range',
      from: 106 + 60 + 28,
      to: 120 + 70 + 42 + 21,
    });
  });
});

describe('fall windows count back from the freeze that ends the crop', () => {
  test('semi-hardy: 28 F less the longest days to maturity and two weeks', () => {
    expect(fall(cropLike())?.plant.value).toEqual({ kind: 'date-range', from: 201 - 28, to: 201 });
  });
  test('tender: 32 F, with two more weeks to pick', () => {
    expect(fall(cropLike({ hardiness: { group: 'tender', sources } }))?.plant.value).toMatchObject({
      to: 275 - 70 - 14 - 14,
    });
  });
  test('never before the spring window has closed', () => {
    const crop = cropLike({ maturity: { days: q('120 days', 'duration'), from: 'sowing', sources } });
    // last safe day 151, four weeks before it 123: the spring window closed on 120
    expect(fall(crop)?.plant.value).toEqual({ kind: 'date-range', from: 123, to: 151 });
  });
  test('a season too short for a second planting says so', () => {
    const crop = cropLike({ maturity: { days: q('145 days', 'duration'), from: 'sowing', sources } });
    expect(fall(crop)?.plant.value).toEqual(none('season-too-short-for-fall'));
  });
  test('a winter without that freeze: ready by the end of the year', () => {
    const mild: WindowClimate = { lastFreeze: on('last', 50), firstFreeze: () => on('first', undefined) };
    expect(fall(cropLike(), mild)?.plant).toMatchObject({
      method: 'window.fall-year-end',
      value: { to: 365 - 84 },
    });
  });
  test('a crop without a fall season has none', () => {
    expect(fall(cropLike({ plantings: [{ method: 'direct-sow', fall: false }] }))).toBeUndefined();
  });
});

test('a last freeze that is not known: a finding with its reason, not a date', () => {
  const unknown: WindowClimate = {
    lastFreeze: { ...on('last', undefined), value: none('not-given') },
    firstFreeze: () => on('first', undefined),
  };
  expect(spring(cropLike(), unknown).plant.value).toEqual(none('no-last-freeze'));
  expect(spring(cropLike(), unknown).harvest.value).toEqual(none('no-last-freeze'));
  const always: WindowClimate = {
    ...unknown,
    lastFreeze: { ...on('last', undefined), value: none('freeze-all-year') },
  };
  expect(spring(cropLike(), always).plant.value).toEqual(none('freezes-all-year'));
});

test('no fall window opens before the spring rules would let anything be planted', () => {
  // The season holds the longest days to maturity once, but counted back they would open before the spring does.
  const short: WindowClimate = {
    lastFreeze: on('last', 168),
    firstFreeze: (thresholdC) => on('first', thresholdC > -1 ? 234 : thresholdC > -3 ? 245 : 258),
  };
  const crop = cropLike({ maturity: { days: q('80 to 85 days', 'duration'), from: 'sowing', sources } });
  expect(spring(crop, short).plant.value).toEqual(none('season-too-short'));
  expect(fall(crop, short)?.plant.value).toEqual(none('season-too-short-for-fall'));
});

test('the southern year runs from spring in September to fall in the next April', () => {
  const south: WindowClimate = { lastFreeze: on('last', 263), firstFreeze: () => on('first', 475) };
  const { plant, harvest } = spring(cropLike(), south);
  expect(plant.value).toEqual({ kind: 'date-range', from: 249, to: 263 });
  expect(harvest.value).toMatchObject({ from: 309 });
  expect(fall(cropLike(), south)?.plant.value).toMatchObject({ to: 475 - 84 });
});

test('windows are in order: start indoors, then set out, then harvest, spring before fall', () => {
  const arbitrary = fc.record({
    group: fc.constantFrom(...hardinessGroups),
    last: fc.integer({ min: 1, max: 170 }),
    season: fc.integer({ min: 60, max: 330 }),
    days: fc.integer({ min: 20, max: 150 }),
    age: fc.integer({ min: 14, max: 84 }),
  });
  fc.assert(
    fc.property(arbitrary, ({ group, last, season, days, age }) => {
      const climate: WindowClimate = {
        lastFreeze: on('last', last),
        firstFreeze: () => on('first', last + season),
      };
      const crop = cropLike({
        hardiness: { group, sources },
        maturity: { days: q(`${days} to ${days + 10} days`, 'duration'), from: 'planting-out', sources },
        plantings: [
          {
            method: 'transplant',
            age: { value: q(`${age} to ${age + 7} days`, 'duration'), sources },
            fall: true,
          },
        ],
      });
      const [first, second] = plantingWindows(crop, climate);
      for (const windows of [first!, second!]) {
        if (windows.plant.value.kind === 'none') continue;
        const { from, to } = windows.plant.value;
        expect(to).toBeGreaterThanOrEqual(from);
        expect(to + days + 10).toBeLessThanOrEqual(last + season);
        expect(windows.startIndoors!.value).toMatchObject({ from: from - age - 7, to: to - age });
        if (windows.harvest.value.kind !== 'none') {
          expect(windows.harvest.value.from).toBeGreaterThan(from);
          expect(windows.harvest.value.to).toBeLessThanOrEqual(last + season);
        }
      }
      if (first!.plant.value.kind !== 'none' && second!.plant.value.kind !== 'none') {
        expect(second!.plant.value.from).toBeGreaterThan(first!.plant.value.to);
      }
    }),
  );
});
