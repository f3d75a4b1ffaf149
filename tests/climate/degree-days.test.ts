import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  accumulate,
  annualDegreeDays,
  dayWhenAccumulated,
  degreeDaysOfDay,
  degreeDaysReached,
  monthlyDegreeDays,
  seasonDegreeDays,
  type DegreeDayMethod,
} from '../../scripts/climate/degree-days.ts';
import { date, none, type DateFinding } from '../../scripts/findings/finding.ts';
import { climate, inland, polar, southern, tropical } from './climates.ts';

const methods: readonly DegreeDayMethod[] = ['average', 'clamped-average', 'single-sine'];
const temperature = fc.double({ min: -30, max: 45, noNaN: true });
const day = fc
  .tuple(temperature, temperature)
  .map(([a, b]) => ({ minimumC: Math.min(a, b), maximumC: Math.max(a, b) }));
const bases = fc.record({
  baseC: fc.double({ min: 0, max: 15, noNaN: true }),
  upperC: fc.option(fc.double({ min: 20, max: 35, noNaN: true }), { nil: undefined }),
});

describe.each(methods)('%s, any day', (method) => {
  test('gives no negative degree days, and no more than lie between base and upper temperature', () => {
    fc.assert(
      fc.property(day, bases, (range, options) => {
        const degreeDays = degreeDaysOfDay(range, { ...options, method });
        expect(degreeDays).toBeGreaterThanOrEqual(-1e-9);
        expect(degreeDays).toBeLessThanOrEqual((options.upperC ?? 100) - options.baseC + 1e-9);
      }),
    );
  });

  test('warmer by some degrees never gives less, and a higher base never more', () => {
    fc.assert(
      fc.property(day, bases, fc.double({ min: 0, max: 10, noNaN: true }), (range, options, more) => {
        const degreeDays = degreeDaysOfDay(range, { ...options, method });
        const warmer = { minimumC: range.minimumC + more, maximumC: range.maximumC + more };
        expect(degreeDaysOfDay(warmer, { ...options, method })).toBeGreaterThanOrEqual(degreeDays - 1e-9);
        const baseC = options.baseC + more / 10;
        expect(degreeDaysOfDay(range, { ...options, baseC, method })).toBeLessThanOrEqual(degreeDays + 1e-9);
      }),
    );
  });

  test('a day wholly between base and upper temperature counts its mean less the base', () => {
    const between = fc.tuple(
      fc.double({ min: 11, max: 29, noNaN: true }),
      fc.double({ min: 11, max: 29, noNaN: true }),
    );
    fc.assert(
      fc.property(between, ([a, b]) => {
        const range = { minimumC: Math.min(a, b), maximumC: Math.max(a, b) };
        expect(degreeDaysOfDay(range, { baseC: 10, upperC: 30, method })).toBeCloseTo((a + b) / 2 - 10, 9);
      }),
    );
  });
});

test('without an upper temperature the sine lies between both averages', () => {
  fc.assert(
    fc.property(day, bases, (range, { baseC }) => {
      const [average, clamped, sine] = methods.map((method) => degreeDaysOfDay(range, { baseC, method }));
      expect(sine!).toBeGreaterThanOrEqual(average! - 1e-9);
      expect(sine!).toBeLessThanOrEqual(clamped! + 1e-9);
    }),
  );
});

test.each([
  ['a minimum above the maximum', { minimumC: 10, maximumC: 9 }, { baseC: 5 }],
  ['an upper temperature at the base', { minimumC: 1, maximumC: 9 }, { baseC: 5, upperC: 5 }],
  ['a temperature that is no number', { minimumC: NaN, maximumC: 9 }, { baseC: 5 }],
])('%s is refused', (_, range, options) => {
  expect(() => degreeDaysOfDay(range, options)).toThrow(RangeError);
});

describe('over days', () => {
  const options = { baseC: 10 };

  test('sums add up, and the months are the year', () => {
    const whole = accumulate(inland, 1, 365, options);
    expect(accumulate(inland, 1, 150, options) + accumulate(inland, 151, 365, options)).toBeCloseTo(whole, 6);
    const months = monthlyDegreeDays(inland, options).map(({ value }) =>
      value.kind === 'count' ? value.value : NaN,
    );
    const sum = months.reduce((total, month) => total + month, 0);
    expect(Math.abs(sum - whole * 1.8)).toBeLessThanOrEqual(6);
    expect(accumulate(inland, 200, 199, options)).toBe(0);
  });

  test('a warmer year never has fewer', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -10, max: 25, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (meanC, more) => {
          const [cool, warm] = [meanC, meanC + more].map((mean) =>
            accumulate(climate({ meanC: mean, halfC: 12 }), 1, 365, options),
          );
          expect(warm!).toBeGreaterThanOrEqual(cool! - 1e-6);
        },
      ),
      { numRuns: 25 },
    );
  });

  test('the day they have come together is the first whose sum is enough', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 700 }),
        fc.double({ min: 1, max: 900, noNaN: true }),
        (from, wanted) => {
          const reached = dayWhenAccumulated(inland, from, wanted, options)!;
          expect(accumulate(inland, from, reached, options)).toBeGreaterThanOrEqual(wanted - 1e-9);
          expect(accumulate(inland, from, reached - 1, options)).toBeLessThan(wanted);
        },
      ),
    );
  });

  test('the southern year is the northern one half a year later', () => {
    const [north, south] = [inland, southern].map((year) => accumulate(year, 1, 365, options)) as [
      number,
      number,
    ];
    // 3 %: the half years before and after July 1 are not of the same length.
    expect(Math.abs(south / north - 1)).toBeLessThan(0.03);
    const january = accumulate(southern, 1, 31, options);
    expect(Math.abs(january / accumulate(inland, 182, 212, options) - 1)).toBeLessThan(0.05);
  });

  test('a polar year never brings them, and says so; a tropical one counts every day', () => {
    const wanted = { id: 'x.ready', from: 100, degreeDaysC: 50 };
    expect(degreeDaysReached(polar, wanted, options).value).toEqual(none('degree-days-never'));
    expect(annualDegreeDays(polar, options).value).toEqual({ kind: 'count', value: 0 });
    const { value } = annualDegreeDays(tropical, options);
    expect(Math.abs((value.kind === 'count' ? value.value : NaN) / (365 * 17 * 1.8) - 1)).toBeLessThan(0.001);
    expect(degreeDaysReached(tropical, { ...wanted, degreeDaysC: 30 }, options).value).toEqual(date(101));
  });

  test('nothing wanted is there on the first day', () => {
    expect(dayWhenAccumulated(inland, 10, 0, options)).toBe(10);
  });
});

describe('the freeze-free season', () => {
  const freeze = (id: string, value: DateFinding['value']): DateFinding => ({
    id,
    value,
    method: 'freeze.typed-table',
    inputs: [],
    sources: ['table'],
  });
  const first = freeze('freeze.first.32f.50', date(280));

  test('counts from the last freeze through the first', () => {
    const season = seasonDegreeDays(
      inland,
      { last: freeze('freeze.last.32f.50', date(120)), first },
      { baseC: 10 },
    );
    const expected = Math.round(accumulate(inland, 120, 280, { baseC: 10 }) * 1.8);
    expect(season).toMatchObject({ id: 'degree-days.season.50f', value: { kind: 'count', value: expected } });
    expect(season.sources).toContain('table');
    expect(season.inputs.slice(0, 2).map(({ finding }) => finding)).toEqual([
      'freeze.last.32f.50',
      'freeze.first.32f.50',
    ]);
  });

  test('without a date it has none, for the same reason', () => {
    const last = freeze('freeze.last.32f.50', none('freeze-never'));
    expect(seasonDegreeDays(inland, { last, first }, { baseC: 10 }).value).toEqual(none('freeze-never'));
  });
});
