import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  boltingRisks,
  boltingRiskOf,
  boltingRisk,
  boltingTable,
  buyingAdvice,
  coldSpell,
  plantingSize,
  sortSets,
} from '../../scripts/agronomy/onion-buying.ts';
import {
  onionBaseC,
  onionGrowth,
  onionMaturityOrder,
  leavesBy,
  onionSize,
  type OnionPlanting,
} from '../../scripts/agronomy/onion-growth.ts';
import { choice, count, none } from '../../scripts/findings/finding.ts';
import { dayLengthClasses, type DayLengthClass } from '../../scripts/records/schemas/crop.ts';
import { cropLike, q } from './crop.ts';
import { airYear, meanC, windowOf, type Swing } from './years.ts';

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
const warmthOf =
  (swing: Swing) =>
  (day: number, baseC: number): number =>
    Math.max(0, meanC(swing, day) - baseC);
/** Days of one mean temperature. */
const steady = (celsius: number) => ({
  degreeDaysOn: (_: number, baseC: number): number => Math.max(0, celsius - baseC),
});
const valueOf = (finding: { value: { kind: string } }): { from: number; to: number } => {
  if (finding.value.kind !== 'date-range') throw new TypeError(JSON.stringify(finding.value));
  return finding.value as unknown as { from: number; to: number };
};
const grown = (dayLengthClass: DayLengthClass, changes: Partial<OnionPlanting> = {}) =>
  onionGrowth({
    crop: onion,
    dayLengthClass,
    place: { latitudeDeg: 42, year: 2026 },
    method: 'transplant',
    plantDay: 95,
    degreeDaysOn: warmthOf(midland),
    ...changes,
  });

describe('leaves, by hand', () => {
  test('four at planting, then by warmth after two weeks, or by the week after one, to the middle of the start of bulbs', () => {
    const { bulbing, leaves } = grown('long-day', steady(12));
    const { from, to } = valueOf(bulbing);
    const days = Math.round((from + to) / 2) - 95;
    expect(leaves.value).toEqual({
      kind: 'count-range',
      low: 4 + Math.floor(((days - 14) * (12 - onionBaseC)) / (160 / 1.8)),
      high: 4 + Math.floor((days - 7) / 7),
    });
  });
  test('in weather too warm for the week to be the quicker pace, warmth is', () => {
    const { leaves } = grown('long-day', steady(27));
    expect(leaves.value).toMatchObject({ kind: 'count-range' });
    const { low, high } = leaves.value as { low: number; high: number };
    expect(high).toBeGreaterThan(low);
  });
  test('sets sprout with three, one behind transplants', () => {
    const [sets, plants] = [grown('long-day', { method: 'sets' }), grown('long-day')];
    const fewest = ({ leaves }: typeof sets): number => (leaves.value as { low: number }).low;
    expect(fewest(plants) - fewest(sets)).toBe(1);
  });
  test('leaves from seed are not counted', () => {
    const { leaves, size } = grown('long-day', { method: 'direct-sow' });
    expect([leaves.value, size.value]).toEqual([none('leaves-of-seed'), none('leaves-of-seed')]);
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
  test('a class whose hours are over at planting waits for its warmth alone', () => {
    const { bulbing } = grown('short-day', steady(15));
    expect(bulbing.value).toEqual({ kind: 'date-range', from: 95 + 48 - 1, to: 95 + 72 - 1 });
  });
  test('warm days do not start bulbs before the plant has rooted', () => {
    expect(valueOf(grown('short-day', steady(60)).bulbing).from).toBe(95 + 14);
  });
  test('light without warmth starts no bulb, and neither does warmth without light', () => {
    expect(grown('long-day', steady(5)).bulbing.value).toEqual(none('too-cool-for-bulbs'));
    expect(valueOf(grown('long-day', steady(30)).bulbing).from).toBeGreaterThanOrEqual(119);
  });
  test('planted in fall where the shortest day is long enough, bulbs wait for the days to lengthen', () => {
    const place = { latitudeDeg: 30, year: 2026 };
    expect(valueOf(grown('short-day', { place, plantDay: -80, ...steady(15) }).bulbing).from).toBeGreaterThan(
      30,
    );
  });
  test('harvest is no sooner than the days to maturity, curing as long as the record says', () => {
    const { bulbing, harvest, curing } = grown('long-day');
    const [ripe, start] = [valueOf(harvest), valueOf(bulbing)];
    expect(ripe.from).toBe(Math.max(95 + 90, start.from + 30));
    expect(ripe.to).toBe(Math.max(95 + 120, start.to + 40));
    expect(curing.value).toMatchObject({ from: ripe.from, to: ripe.to + 28 });
  });
  test('seed is two weeks later at the short end, and takes up to 150 days', () => {
    const early = { plantDay: 20, ...steady(25), place: { latitudeDeg: 37, year: 2026 } };
    const ripe = valueOf(grown('short-day', { ...early, method: 'direct-sow' }).harvest);
    expect(ripe).toMatchObject({ from: 20 + 90 + 14, to: 20 + 150 });
  });
  test('a plant whose light is long enough before it roots may be ready in 75 days', () => {
    const { harvest } = grown('short-day', { plantDay: 130, ...steady(20) });
    expect(valueOf(harvest)).toEqual({ kind: 'date-range', from: 130 + 75, to: 130 + 90 });
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

test('an earlier planting never has fewer leaves on a day', () => {
  const planting = (plantDay: number): OnionPlanting => ({
    crop: onion,
    dayLengthClass: 'long-day',
    place: { latitudeDeg: 42, year: 2026 },
    method: 'transplant',
    plantDay,
    degreeDaysOn: warmthOf(midland),
  });
  const ends = (plantDay: number, by: number): [number, number] => {
    const value = leavesBy(planting(plantDay), by);
    return value.kind === 'count'
      ? [value.value, value.value]
      : value.kind === 'count-range'
        ? [value.low, value.high]
        : [NaN, NaN];
  };
  fc.assert(
    fc.property(fc.integer({ min: 40, max: 130 }), fc.integer({ min: 0, max: 60 }), (day, later) => {
      const [early, late] = [ends(day, 190), ends(day + later, 190)];
      expect(early[0]).toBeGreaterThanOrEqual(late[0]);
      expect(early[1]).toBeGreaterThanOrEqual(late[1]);
    }),
  );
});

test('a warmer spring never starts bulbs later, and neither does an earlier planting', () => {
  const start = (plantDay: number, meanF: number): number =>
    valueOf(grown('long-day', { plantDay, degreeDaysOn: warmthOf({ ...midland, meanF }) }).bulbing).from;
  fc.assert(
    fc.property(fc.integer({ min: 40, max: 130 }), fc.integer({ min: 45, max: 60 }), (day, meanF) => {
      expect(start(day, meanF + 2)).toBeLessThanOrEqual(start(day, meanF));
      expect(start(day, meanF)).toBeLessThanOrEqual(start(day + 5, meanF));
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
  test.each([
    ['thin', 'bolting-low'],
    ['middling', 'bolting-raised'],
    ['thick', 'bolting-high'],
  ] as const)('a %s set in a spring without cold: %s, for it has had a winter in storage', (size, risk) => {
    expect(boltingRiskOf(size, { coolDays: 0, coldDays: 0 }, 'sets')).toBe(risk);
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
        for (const kind of ['transplant', 'sets'] as const) {
          for (const size of ['thin', 'middling', 'thick'] as const)
            expect(rank(size, worse, kind)).toBeGreaterThanOrEqual(rank(size, now, kind));
          expect(rank('middling', now, kind)).toBeGreaterThanOrEqual(rank('thin', now, kind));
          expect(rank('thick', now, kind)).toBeGreaterThanOrEqual(rank('middling', now, kind));
        }
      }),
    );
  });
  test('later planting, into warmth, lowers it', () => {
    const risk = (plantDay: number) =>
      boltingRisk({ crop: onion, kind: 'transplant', diameterMm: 12, plantDay, air: airYear(midland) }).value;
    expect([risk(70), risk(150)]).toEqual([choice('bolting-high'), choice('bolting-low')]);
  });
});

describe('the table of risks', () => {
  const rows = (swing: Swing, from = 70, to = 120) =>
    boltingTable(onion, { planting: windowOf(from, to), air: airYear(swing) });
  const ranks = (swing: Swing): number[][] =>
    rows(swing).map(({ risks }) =>
      risks.map(({ value }) =>
        boltingRisks.findIndex((risk) => value.kind === 'choice' && value.value === risk),
      ),
    );
  test('three sizes of plants and of sets, on the first, the middle and the last day', () => {
    const found = rows(midland);
    expect(found.map(({ kind, size }) => `${kind} ${size}`)).toEqual([
      'transplant thin',
      'transplant middling',
      'transplant thick',
      'sets thin',
      'sets middling',
      'sets thick',
    ]);
    const days = found[0]!.risks.map(
      ({ inputs }) => inputs.find(({ name }) => name === 'planting-day')?.value,
    );
    expect(days).toEqual([70, 95, 120].map((day) => ({ kind: 'date', day })));
    expect(new Set(found.flatMap(({ risks }) => risks.map(({ id }) => id))).size).toBe(18);
  });
  test('without a window there is none', () => {
    const planting = { ...windowOf(1, 2), value: none('no-last-freeze') };
    expect(boltingTable(onion, { planting, air: airYear(midland) })).toEqual([]);
  });
  test('a cold spring is 4 F colder than the average', () => {
    const day = 100;
    const air = airYear({ meanF: 52, halfRangeF: 0.5 });
    expect(coldSpell(air, day).coolDays).toBe(0);
    const found = boltingTable(onion, { planting: windowOf(day, day), air });
    expect(found.find(({ size }) => size === 'thick')!.risks[0]!.value).toEqual(choice('bolting-high'));
  });
  test('thicker never lowers a risk, a colder climate never does, and a later planting in spring never raises it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 38, max: 70 }), fc.integer({ min: 0, max: 15 }), (meanF, colder) => {
        const [now, worse] = [
          { ...midland, meanF },
          { ...midland, meanF: meanF - colder },
        ].map(ranks) as [number[][], number[][]];
        now.forEach((row, index) => {
          row.forEach((rank, column) => {
            expect(worse[index]![column]!).toBeGreaterThanOrEqual(rank);
            if (column > 0) expect(rank).toBeLessThanOrEqual(row[column - 1]!);
            if (index % 3 > 0) expect(rank).toBeGreaterThanOrEqual(now[index - 1]![column]!);
          });
        });
      }),
    );
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
  test('ten feet of row at 2 to 3 in, and what a bundle fills', () => {
    const { rowPlants, rowPerBundle } = advice(95);
    expect(rowPlants.value).toEqual({ kind: 'count-range', low: 40, high: 60 });
    expect(rowPerBundle.value).toMatchObject({
      low: expect.closeTo(60 * 2 * 25.4, 6) as number,
      high: expect.closeTo(75 * 3 * 25.4, 6) as number,
    });
  });
  test('without temperatures the size is not advised, the time is', () => {
    const found = buyingAdvice(onion, { planting: windowOf(95, 109), air: undefined });
    expect(found.size.value).toEqual(none('temperatures-not-given'));
    expect(found.when.value).toEqual({ kind: 'date-range', from: 81, to: 95 });
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
