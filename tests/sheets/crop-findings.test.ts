/** What sheets tell of any crop: cases of soils, rains and winters, each with what a gardener would say to it. */
import { describe, expect, test } from 'vitest';
import { plantingWindows } from '../../scripts/agronomy/windows.ts';
import type { Finding } from '../../scripts/findings/finding.ts';
import { fromHeld, toHeld } from '../../scripts/quantities/units.ts';
import type { Crop } from '../../scripts/records/schemas/crop.ts';
import type { Region } from '../../scripts/records/schemas/region.ts';
import { cropFindings, usualRowMm, type CropPlace } from '../../scripts/sheets/crop-findings.ts';
import { cropLike, q } from '../agronomy/crop.ts';
import { airYear, given, soilYear } from '../agronomy/years.ts';

const sources = ['a-source'];

const root = (changes: Partial<Crop> = {}): Crop =>
  cropLike({
    emergence: {
      points: [
        { at: q('41 F', 'temperature'), days: 51 },
        { at: q('50 F', 'temperature'), days: 17 },
        { at: q('68 F', 'temperature'), days: 7 },
        { at: q('86 F', 'temperature'), days: 6 },
      ],
      sources,
    },
    normalSeedlings: {
      points: [
        { at: q('32 F', 'temperature'), percent: 0 },
        { at: q('50 F', 'temperature'), percent: 90 },
        { at: q('86 F', 'temperature'), percent: 95 },
      ],
      sources,
    },
    degreeDays: { base: q('40 F', 'temperature'), sources },
    succession: { value: q('3 weeks', 'duration'), sources },
    seedsPerOunce: { low: 18_000, high: 25_000, sources },
    seedPer100Ft: { value: q('0.25 to 0.5 oz', 'mass'), sources },
    packet: { value: q('1 g', 'mass'), sources },
    germination: { percent: 50, sources },
    yieldPer100Ft: { low: 75, high: 100, unit: 'lb', sources },
    soil: { ph: { low: 6, high: 6.8 }, looseDepth: q('10 to 12 in', 'length'), sources },
    ...changes,
  });

/** The same root crop with a figure left out of its record. */
function without(figure: 'succession' | 'degreeDays' | 'packet' | 'seedPer100Ft' | 'yieldPer100Ft'): Crop {
  return Object.fromEntries(Object.entries(root()).filter(([key]) => key !== figure)) as Crop;
}

type Soil = NonNullable<Region['soil']>;
const loam: Soil = {
  texture: 'loam',
  moisture: 'moist',
  stones: 'none',
  depth: q('30 in', 'length'),
  ph: 6.5,
  source: 'a-source',
};

/** A year that swings evenly about a mean, its freezes and its rain by months; `loam` where no soil is named. */
function place(options: {
  meanF: number;
  swingF: number;
  lastFreeze?: number;
  firstFreeze?: number;
  rainIn?: readonly number[];
  soil?: Soil | undefined;
  crop?: Crop;
}): CropPlace {
  const swing = { meanF: options.meanF, halfRangeF: options.swingF };
  const air = airYear(swing);
  const soil = 'soil' in options ? options.soil : loam;
  const temperatures = { air, ...(soil ? { soil: soilYear(swing) } : {}) };
  return {
    region: {
      ...(soil ? { soil } : {}),
      temperatureData: {
        minimumC: [],
        maximumC: [],
        ...(options.rainIn ? { rainMm: options.rainIn.map((inches) => toHeld(inches, 'in')) } : {}),
        source: 'a-station',
      },
    },
    ...temperatures,
    windows: plantingWindows(options.crop ?? root(), {
      lastFreeze: given('freeze.last.32f.50', options.lastFreeze ?? 120),
      firstFreeze: () => given('freeze.first.28f.50', options.firstFreeze ?? 290),
      ...temperatures,
    }),
  };
}

const temperate = { meanF: 50, swingF: 22 };
const even = Array.from({ length: 12 }, () => 2);

const idsOf = (crop: Crop, where: CropPlace): readonly string[] =>
  cropFindings(crop, where).all.map(({ id }) => id);

describe('names', () => {
  test('every finding has an id of its own', () => {
    const ids = idsOf(root(), place({ ...temperate, rainIn: even }));
    expect(new Set(ids).size).toBe(ids.length);
  });

  test.each([
    'testcrop.depth-here',
    'testcrop.depth-rule',
    'testcrop.depth-rule-says',
    'testcrop.depth-why',
    'testcrop.soil-fit',
    'testcrop.seed-for-row',
    'testcrop.packets',
    'testcrop.plants-in-row',
    'testcrop.seeds-at-least',
    'testcrop.yield',
    'testcrop.weekly-need',
    'testcrop.weekly-water',
    'testcrop.drip-time',
    'testcrop.emergence-on',
    'testcrop.normal-seedlings',
    'testcrop.succession.spring.1',
  ])('prose can name %s', (id) => {
    expect(idsOf(root(), place({ ...temperate, rainIn: even }))).toContain(id);
  });
});

describe('a row', () => {
  const row = (crop: Crop, rowLengthMm?: number) =>
    cropFindings(crop, { ...place(temperate), ...(rowLengthMm ? { rowLengthMm } : {}) }).row;
  const ounces = (finding: Finding): readonly number[] =>
    finding.value.kind === 'range'
      ? [finding.value.low, finding.value.high].map((g) => fromHeld(g, 'oz'))
      : [];

  test('is ten feet long where nothing else is said', () => {
    expect(fromHeld(usualRowMm, 'ft')).toBeCloseTo(10, 9);
    expect(ounces(row(root()).seed)).toEqual([expect.closeTo(0.025, 6), expect.closeTo(0.05, 6)]);
  });

  test('of a hundred feet takes the published seed and gives the published yield', () => {
    const { seed, yield: harvest, packets } = row(root(), toHeld(100, 'ft'));
    expect(ounces(seed)).toEqual([expect.closeTo(0.25, 6), expect.closeTo(0.5, 6)]);
    expect(harvest.value).toMatchObject({ kind: 'range', dimension: 'mass' });
    expect(ounces(harvest).map((ounce) => ounce / 16)).toEqual([
      expect.closeTo(75, 6),
      expect.closeTo(100, 6),
    ]);
    // Half an ounce is 14.2 g.
    expect(packets.value).toEqual({ kind: 'count', value: 15 });
  });

  test('holds plants at the widest and at the closest spacing', () => {
    expect(row(root()).plants.value).toEqual({ kind: 'count-range', low: 40, high: 60 });
  });

  test('needs a seed for each plant over what comes up and lives', () => {
    // 60 plants, half come up, four in five live.
    expect(row(root()).seedsAtLeast.value).toEqual({ kind: 'count', value: 150 });
  });

  test.each([
    ['without a packet on record', without('packet'), 'packets', 'no-packet-size'],
    ['without a seed rate', without('seedPer100Ft'), 'packets', 'no-seed-rate'],
    ['planted as sets', root({ emergence: { notSown: true } }), 'seedsAtLeast', 'not-sown'],
    ['without a yield', without('yieldPer100Ft'), 'yield', 'no-yield-figure'],
  ] as const)('%s says so', (_, crop, part, reason) => {
    expect(row(crop)[part].value).toEqual({ kind: 'none', reason });
  });

  test('has a length', () => {
    expect(() => row(root(), -1)).toThrow(RangeError);
  });
});

describe('water', () => {
  const waterIn = (rainIn: readonly number[] | undefined) =>
    cropFindings(root(), place({ ...temperate, ...(rainIn ? { rainIn } : {}) })).water;

  test('is told for the months between sowing and the end of the harvest', () => {
    // Sown from April 16 on, picked until October 17: April to October.
    expect(waterIn(even).months.map(({ month }) => month)).toEqual([3, 4, 5, 6, 7, 8, 9]);
  });

  test('is what the week lacks', () => {
    // Two inches in thirty days of June are 0.467 in a week; the need is 1 to 1.5 in.
    const june = waterIn(even).months.find(({ month }) => month === 5)!;
    const { value } = june.water;
    expect(value.kind === 'range' && [fromHeld(value.low, 'in'), fromHeld(value.high, 'in')]).toEqual([
      expect.closeTo(0.533, 3),
      expect.closeTo(1.033, 3),
    ]);
  });

  test('a whole inch takes drip as long as the Penn State table says for its medium flow', () => {
    const { value } = waterIn(even).dripTime;
    expect(value.kind === 'range' && value.low).toBeCloseTo(7.6, 1);
  });

  test('a wet month needs none', () => {
    const wet = waterIn(Array.from({ length: 12 }, () => 8)).months[0]!;
    expect(wet.water.value).toEqual({ kind: 'none', reason: 'rain-is-enough' });
    expect(wet.drip.value).toEqual({ kind: 'none', reason: 'rain-is-enough' });
  });

  test('the driest month speaks for the season', () => {
    const rain = even.map((inches, month) => (month === 6 ? 0.5 : inches));
    const { weekly, months } = waterIn(rain);
    expect(weekly.value).toEqual(months.find(({ month }) => month === 6)!.water.value);
    expect(weekly.value).not.toEqual(months[0]!.water.value);
  });

  test('a region that gives no rain says so', () => {
    const { months, weekly } = waterIn(undefined);
    expect(months).toEqual([]);
    expect(weekly.value).toEqual({ kind: 'none', reason: 'no-rain-on-record' });
  });
});

describe('sowings one after another', () => {
  const sowings = (where: CropPlace, crop = root()) => cropFindings(crop, where).sowings;
  const dayOf = ({ value }: Finding): number => (value.kind === 'date' ? value.day : NaN);

  test('stand farther apart in spring than their harvests', () => {
    const [spring] = sowings(
      place({ ...temperate, crop: root({ plantings: longSpring }) }),
      root({ plantings: longSpring }),
    );
    const days = spring!.sowings.map(({ sow, harvest }) => [dayOf(sow), dayOf(harvest)] as const);
    expect(days.length).toBeGreaterThan(2);
    expect(days[1]![0] - days[0]![0]).toBeGreaterThan(21);
    expect(days.map(([, harvest]) => harvest - days[0]![1])).toEqual(days.map((_, index) => 21 * index));
  });

  test('none takes fewer days than the quickest kind, on an ordinary day of spring', () => {
    const crop = root({ plantings: longSpring });
    for (const { sow, harvest } of sowings(place({ ...temperate, crop }), crop)[0]!.sowings)
      expect(dayOf(harvest) - dayOf(sow)).toBeGreaterThanOrEqual(60 - 5);
  });

  test('for fall end a week before the freeze that ends the crop, however close together', () => {
    const crop = root({ succession: { value: q('2 days', 'duration'), sources } });
    const where = place({ meanF: 55, swingF: 25, lastFreeze: 100, firstFreeze: 300, crop });
    const fall = sowings(where, crop).find(({ season }) => season === 'fall')!;
    const ready = fall.sowings.map(({ harvest }) => dayOf(harvest));
    expect(Math.max(...ready)).toBeLessThanOrEqual(300 - 7);
    expect(Math.max(...ready)).toBeGreaterThan(300 - 7 - 2 - 1);
  });

  test.each([
    ['no interval was published', without('succession')],
    ['its growth has no base temperature', without('degreeDays')],
    [
      'it is set out as plants',
      root({
        plantings: [{ method: 'transplant', age: { value: q('6 weeks', 'duration'), sources }, fall: false }],
      }),
    ],
  ])('are not told where %s', (_, crop) => {
    expect(sowings(place({ ...temperate, crop }), crop)).toEqual([]);
  });

  test('come up between two dates after each sowing, sooner in warm soil', () => {
    const crop = root({ plantings: longSpring });
    const waits = sowings(place({ ...temperate, crop }), crop)[0]!.sowings.map(({ sow, comesUp }) =>
      comesUp.value.kind === 'date-range' ? comesUp.value.from - dayOf(sow) : NaN,
    );
    expect(waits[0]).toBeGreaterThan(waits.at(-1)!);
    expect(waits.every((days) => days >= 5)).toBe(true);
  });

  test('without a soil on record the dates of coming up are not given', () => {
    const [spring] = sowings(place({ ...temperate, soil: undefined }));
    expect(spring!.sowings[0]!.comesUp.value).toEqual({ kind: 'none', reason: 'temperatures-not-given' });
  });
});

const longSpring: Crop['plantings'] = [
  {
    method: 'direct-sow',
    fall: false,
    spring: { opens: q('-2 weeks', 'duration'), closes: q('9 weeks', 'duration'), sources },
  },
];

describe('seed in soil colder than any that was tested', () => {
  const early = root({
    plantings: [
      {
        method: 'direct-sow',
        fall: false,
        spring: { opens: q('-8 weeks', 'duration'), closes: q('0 days', 'duration'), sources },
      },
    ],
  });
  const firstUp = (meanF: number) =>
    cropFindings(early, place({ meanF, swingF: 22, crop: early })).all.find(({ id }) =>
      id.endsWith('.emergence-on'),
    )!;

  test('waits until the soil is warm enough', () => {
    const found = firstUp(46);
    expect(found.method).toBe('emergence.after-waiting');
    const warm = found.inputs.find(({ name }) => name === 'soil-warm-enough')?.value;
    expect(warm?.kind === 'date' && found.value.kind === 'date-range' && found.value.from > warm.day).toBe(
      true,
    );
  });

  test('does not wait in soil that is warm enough', () => {
    expect(firstUp(60).method).toBe('emergence.day-by-day');
  });
});
