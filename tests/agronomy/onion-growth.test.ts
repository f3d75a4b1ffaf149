import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  boltingRisks,
  boltingRiskOf,
  boltingRisk,
  buyingAdvice,
  coldSpell,
  plantingSize,
  sortSets,
} from '../../scripts/agronomy/onion-buying.ts';
import {
  onionBaseC,
  onionGrowth,
  onionMaturityOrder,
  onionSize,
  type OnionPlanting,
} from '../../scripts/agronomy/onion-growth.ts';
import { choice, count, none } from '../../scripts/findings/finding.ts';
import { dayLengthClasses, type DayLengthClass } from '../../scripts/records/schemas/crop.ts';
import { cropLike, q } from './crop.ts';
import { airYear, degreeDaysOf, meanC, windowOf, type Swing } from './years.ts';

const sources = ['a-source'];
const hours = { 'short-day': '10 to 12 hours', intermediate: '12 to 14 hours', 'long-day': '14 to 16 hours' };
const onion = cropLike({
  id: 'onion',
  part: 'bulb',
  maturity: { days: q('90 to 120 days', 'duration'), from: 'planting-out', sources },
  plantings: [
    { method: 'sets', fall: false },
    { method: 'transplant', fall: false },
  ],
  dayLength: dayLengthClasses.map((name) => ({
    class: name,
    bulbing: q(hours[name], 'day-length'),
    latitudes: q('25 to 55 deg', 'angle'),
    sources,
  })),
  figures: [
    { id: 'curing', duration: q('2 to 4 weeks', 'duration'), sources },
    { id: 'set-diameter', length: q('3/4 in', 'length'), sources },
    { id: 'transplant-diameter', length: q('1/4 to 3/8 in', 'length'), sources },
    { id: 'bundle', low: 60, high: 75, sources },
  ],
});
const midland: Swing = { meanF: 52, halfRangeF: 24 };
const grown = (dayLengthClass: DayLengthClass, changes: Partial<OnionPlanting> = {}) =>
  onionGrowth({
    crop: onion,
    dayLengthClass,
    place: { latitudeDeg: 42, year: 2026 },
    method: 'transplant',
    plantDay: 95,
    degreeDaysOn: degreeDaysOf(midland, 45),
    ...changes,
  });

describe('leaves, by hand', () => {
  const steady = (perDay: number) => ({ degreeDaysOn: (): number => perDay });
  test('four at planting, two weeks to root, then one for each 111 kelvin days', () => {
    const { bulbing, leaves } = grown('long-day', steady(10));
    if (bulbing.value.kind === 'none') throw new TypeError('no bulb');
    const grownBy = (day: number): number => 4 + Math.floor(((day - 95 - 14) * 10) / (200 / 1.8));
    expect(leaves.value).toEqual({
      kind: 'count-range',
      low: grownBy(bulbing.value.from),
      high: grownBy(bulbing.value.to),
    });
  });
  test('sets sprout with three', () => {
    const [sets, plants] = [
      grown('long-day', { method: 'sets', ...steady(0) }),
      grown('long-day', steady(0)),
    ];
    expect([sets.leaves.value, plants.leaves.value]).toEqual([count(3), count(4)]);
  });
  test('no warmth, no leaves, and a small onion', () => {
    expect(grown('long-day', steady(0)).size.value).toEqual(choice('onion-small'));
  });
});

describe('bulbs', () => {
  test('days that never are long enough give none, and why', () => {
    const { bulbing, leaves, size, harvest, curing } = grown('long-day', {
      place: { latitudeDeg: 25, year: 2026 },
    });
    expect([bulbing, leaves, size, harvest, curing].map(({ value }) => value)).toEqual(
      Array(5).fill(none('day-never-that-long')),
    );
  });
  test('where the longest day is shorter than the upper hours it stands for them', () => {
    expect(grown('long-day').bulbing.value).toMatchObject({ to: expect.closeTo(172, -0.5) as number });
  });
  test('a class whose hours are over at planting swells once it has rooted: small', () => {
    const { bulbing, size } = grown('short-day');
    expect(bulbing.value).toMatchObject({ from: 95 + 14 });
    expect(size.value).toEqual(choice('onion-small'));
  });
  test('harvest is no sooner than the days to maturity, curing as long as the record says', () => {
    const { harvest, curing } = grown('long-day');
    if (harvest.value.kind === 'none' || curing.value.kind === 'none') throw new TypeError('no harvest');
    expect(harvest.value.from).toBe(95 + 90);
    expect(harvest.value.to).toBe(Math.max(95 + 120, 172 + 40));
    expect(curing.value).toMatchObject({ from: harvest.value.from, to: harvest.value.to + 28 });
  });
  test('a plant whose light is long enough before it roots is early', () => {
    const { harvest } = grown('short-day', { plantDay: 130 });
    expect(harvest.value).toEqual({ kind: 'date-range', from: 130 + 75, to: 130 + 90 });
  });
  test('shorter-day classes ripen first', () => {
    const order = onionMaturityOrder(
      onion,
      [...dayLengthClasses].reverse().map((name) => grown(name, { plantDay: 40 })),
    );
    expect(order.map(({ value }) => value)).toEqual(dayLengthClasses.map((name) => choice(name)));
    expect(order.map(({ id }) => id)).toEqual(['onion.ripens.1', 'onion.ripens.2', 'onion.ripens.3']);
  });
  test('a class that makes no bulb here is not in the order', () => {
    const place = { latitudeDeg: 25, year: 2026 };
    expect(
      onionMaturityOrder(
        onion,
        dayLengthClasses.map((name) => grown(name, { place })),
      ),
    ).toHaveLength(2);
  });
});

test.each([
  [0, 'small'],
  [6, 'small'],
  [7, 'medium'],
  [12, 'medium'],
  [13, 'large'],
  [20, 'large'],
] as const)('%i leaves: %s', (leaves, size) => {
  expect(onionSize(leaves)).toBe(size);
});

test('earlier planting and warmer springs never give fewer leaves', () => {
  const least = (plantDay: number, meanF: number): number => {
    const { value } = grown('long-day', {
      plantDay,
      degreeDaysOn: degreeDaysOf({ ...midland, meanF }, 45),
    }).leaves;
    return value.kind === 'count' ? value.value : value.kind === 'count-range' ? value.low : NaN;
  };
  fc.assert(
    fc.property(fc.integer({ min: 40, max: 130 }), fc.integer({ min: 35, max: 60 }), (day, meanF) => {
      expect(least(day, meanF)).toBeGreaterThanOrEqual(least(day + 5, meanF));
      expect(least(day, meanF + 2)).toBeGreaterThanOrEqual(least(day, meanF));
    }),
  );
});

describe('bolting', () => {
  test('size by the figures of the record', () => {
    expect([4, 6.35, 9.5, 10].map((mm) => plantingSize(onion, 'transplant', mm))).toEqual([
      'thin',
      'middling',
      'middling',
      'thick',
    ]);
    expect([9, 12, 19.05, 20].map((mm) => plantingSize(onion, 'sets', mm))).toEqual([
      'thin',
      'middling',
      'middling',
      'thick',
    ]);
  });
  test.each([
    ['thick', 0, 0, 'bolting-low'],
    ['thin', 14, 0, 'bolting-low'],
    ['middling', 14, 0, 'bolting-raised'],
    ['thick', 14, 0, 'bolting-high'],
    ['thin', 40, 28, 'bolting-raised'],
    ['middling', 40, 28, 'bolting-high'],
    ['thick', 13, 13, 'bolting-low'],
  ] as const)('%s, %i days below 50 F, %i below 45 F: %s', (size, coolDays, coldDays, risk) => {
    expect(boltingRiskOf(size, { coolDays, coldDays })).toBe(risk);
  });
  test('spells are counted from planting on', () => {
    const spell = coldSpell(airYear(midland), 60);
    const days = (f: number): number =>
      Array.from({ length: 120 }, (_, index) => 60 + index).filter(
        (day) => meanC(midland, day) < (f - 32) / 1.8,
      ).length;
    expect(spell).toEqual({ coolDays: days(50), coldDays: days(45) });
    expect(coldSpell(airYear(midland), 170).coolDays).toBe(0);
  });
  test('a warm day breaks a spell in two', () => {
    const days = Array.from({ length: 365 }, (_, index) => (index === 109 || index > 120 ? 15 : 3));
    const air = { minimumC: days, maximumC: days, sources: [] };
    expect(coldSpell(air, 100)).toEqual({ coolDays: 11, coldDays: 11 });
  });
  test('the risk never falls with size or with cold', () => {
    const spell = fc.record({ coolDays: fc.nat(60), coldDays: fc.nat(60) });
    const rank = (...of: Parameters<typeof boltingRiskOf>): number =>
      boltingRisks.indexOf(boltingRiskOf(...of));
    fc.assert(
      fc.property(spell, fc.nat(30), fc.nat(30), ({ coolDays, coldDays }, more, colder) => {
        const now = { coolDays, coldDays: Math.min(coolDays, coldDays) };
        const worse = { coolDays: coolDays + more, coldDays: now.coldDays + Math.min(more, colder) };
        for (const size of ['thin', 'middling', 'thick'] as const)
          expect(rank(size, worse)).toBeGreaterThanOrEqual(rank(size, now));
        expect(rank('middling', now)).toBeGreaterThanOrEqual(rank('thin', now));
        expect(rank('thick', now)).toBeGreaterThanOrEqual(rank('middling', now));
      }),
    );
  });
  test('later planting, into warmth, lowers it', () => {
    const risk = (plantDay: number) =>
      boltingRisk({ crop: onion, kind: 'transplant', diameterMm: 12, plantDay, air: airYear(midland) }).value;
    expect([risk(70), risk(150)]).toEqual([choice('bolting-high'), choice('bolting-low')]);
  });
});

describe('buying', () => {
  const advice = (from: number) =>
    buyingAdvice(onion, { planting: windowOf(from, from + 14), air: airYear(midland) });
  test.each([
    [60, 'buy-thinner-than-pencil'],
    [85, 'buy-pencil-or-thinner'],
    [150, 'buy-any-size'],
  ])('planting from day %i: %s', (from, size) => {
    expect(advice(from).size.value).toEqual(choice(size));
  });
  test('in the two weeks before planting, by the bundle', () => {
    expect(advice(95).when.value).toEqual({ kind: 'date-range', from: 81, to: 95 });
    expect(advice(95).bundle.value).toEqual({ kind: 'count-range', low: 60, high: 75 });
  });
  test('no planting, no advice', () => {
    const planting = { ...windowOf(1, 2), value: none('no-last-freeze') };
    const found = buyingAdvice(onion, { planting, air: airYear(midland) });
    expect([found.size.value, found.when.value]).toEqual([none('no-last-freeze'), none('no-last-freeze')]);
  });
});

test('sets up to 3/4 in make bulbs, thicker ones green onions', () => {
  const sorted = sortSets(onion, [10, 25, 19.05, 19.2]);
  expect([sorted.bulbs, sorted.greens]).toEqual([
    [10, 19.05],
    [25, 19.2],
  ]);
  expect(sorted.findings.map(({ id, value }) => [id, value])).toEqual([
    ['onion.sets-for-bulbs', count(2)],
    ['onion.sets-for-greens', count(2)],
  ]);
  expect(() => sortSets(onion, [10, 0])).toThrow(RangeError);
});

test('growth is counted above 45 F', () => {
  expect(onionBaseC).toBeCloseTo(7.22, 2);
});
