/** Who lifts what: cases worked by hand and properties. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../scripts/findings/finding.ts';
import { fromHeld } from '../../../scripts/quantities/units.ts';
import {
  liftFindings,
  liftLimitsKg,
  type LiftedItem,
} from '../../../scripts/structures/lifting/lift-findings.ts';

const pound = 0.45359237;
const inch = 0.0254;

/** At arm's ease: 23 × 0.95 for a fair grip below 75 cm, so 21.85 kg. */
const easy: LiftedItem = {
  massKg: { low: 10, high: 10 },
  depthM: 0.1,
  fromM: 0.75 - 1e-9,
  toM: 0.75 - 1e-9,
  grip: 'fair',
};

const bale: LiftedItem = {
  massKg: { low: 40 * pound, high: 60 * pound },
  depthM: 18 * inch,
  fromM: 0,
  toM: 14 * inch,
  grip: 'fair',
};

function valueOf(findings: readonly Finding[], what: string): Finding['value'] {
  return findings.find(({ id }) => id === `frame.sash-a.${what}`)!.value;
}

const verdictOf = (item: LiftedItem): Finding['value'] =>
  valueOf(liftFindings(item, { id: 'frame.sash-a' }), 'lift-verdict');

describe('verdicts', () => {
  test.each([
    ['at the limit of one', 21.8, 'lift-one-person'],
    ['over it', 21.9, 'lift-two-people'],
    ['at four thirds of it', 29.1, 'lift-two-people'],
    ['over four thirds', 29.2, 'lift-not-by-hand'],
  ])('%s', (_, high, verdict) => {
    expect(verdictOf({ ...easy, massKg: { low: 5, high } })).toEqual({ kind: 'choice', value: verdict });
  });

  test('a bale from the ground: 23 × 25/47.86 × 0.775 × 0.9465 × 0.95 = 8.37 kg, so nobody lifts 40 to 60 lb so', () => {
    // Reach: half of 18 in (22.86 cm) and 25 cm. Up by 35.56 cm: 0.82 + 4.5/35.56. The end at 14 in is the better one.
    const findings = liftFindings(bale, { id: 'frame.sash-a' });
    expect((valueOf(findings, 'lift-limit') as { value: number }).value / 1000).toBeCloseTo(8.373, 3);
    const index = valueOf(findings, 'lift-index') as { low: number; high: number };
    expect(index.low).toBeCloseTo(2.167, 3);
    expect(index.high).toBeCloseTo(3.251, 3);
    expect(verdictOf(bale)).toEqual({ kind: 'choice', value: 'lift-not-by-hand' });
  });

  test('two people who take the cords at its ends lift one of 50 lb', () => {
    const byTheCords = {
      ...bale,
      massKg: { low: 50 * pound, high: 50 * pound },
      fromM: 14 * inch,
      toM: 28 * inch,
    };
    expect(verdictOf({ ...byTheCords, reachOfTwoM: 0.25 })).toEqual({
      kind: 'choice',
      value: 'lift-two-people',
    });
    expect(verdictOf(byTheCords)).toEqual({ kind: 'choice', value: 'lift-not-by-hand' });
  });

  test('a load too deep to come near is lifted by two who take its ends', () => {
    const deep: LiftedItem = { ...easy, depthM: 1.4, massKg: { low: 12, high: 12 } };
    const findings = liftFindings(deep, { id: 'frame.sash-a' });
    expect(valueOf(findings, 'lift-limit')).toEqual({ kind: 'none', reason: 'lift-out-of-reach' });
    expect(valueOf(findings, 'lift-index')).toEqual({ kind: 'none', reason: 'lift-out-of-reach' });
    expect(verdictOf(deep)).toEqual({ kind: 'choice', value: 'lift-not-by-hand' });
    expect(verdictOf({ ...deep, reachOfTwoM: 0.3 })).toEqual({ kind: 'choice', value: 'lift-two-people' });
  });

  test('the worse end counts', () => {
    const up = liftLimitsKg({ ...easy, fromM: 0.75, toM: 1.5 }).one;
    const down = liftLimitsKg({ ...easy, fromM: 1.5, toM: 0.75 }).one;
    expect(up).toBeCloseTo(23 * 0.775 * (0.82 + 4.5 / 75), 9);
    expect(down).toBeCloseTo(up, 9);
  });

  test('what was measured goes before what is estimated', () => {
    expect(liftLimitsKg({ ...easy, reachM: 0.5 }).one).toBeCloseTo(21.85 / 2, 6);
  });

  test('the inputs tell how it is lifted, and sources of the item stand last', () => {
    const [limit, limitOfTwo, index, verdict] = liftFindings(bale, {
      id: 'frame.bale',
      sources: ['a-baler'],
    });
    expect(limit!.inputs.map(({ name }) => name)).toContain('load-depth');
    expect(limit!.sources).toEqual(['niosh-lifting-manual', 'a-baler']);
    expect(limitOfTwo!.sources).toEqual(['niosh-lifting-manual', 'team-lift-two-thirds', 'a-baler']);
    expect(index!.inputs[1]).toMatchObject({ name: 'lift-limit', finding: 'frame.bale.lift-limit' });
    expect(verdict!.inputs[2]).toMatchObject({ finding: 'frame.bale.lift-limit-two' });
  });
});

const anyItem = fc.record({
  massKg: fc.double({ min: 0.5, max: 60, noNaN: true }).map((high) => ({ low: high / 2, high })),
  depthM: fc.double({ min: 0, max: 0.8, noNaN: true }),
  fromM: fc.double({ min: 0, max: 1.75, noNaN: true }),
  toM: fc.double({ min: 0, max: 1.75, noNaN: true }),
  turnDeg: fc.double({ min: 0, max: 135, noNaN: true }),
  grip: fc.constantFrom('good' as const, 'fair' as const, 'poor' as const),
  perMinute: fc.double({ min: 0, max: 15, noNaN: true }),
  time: fc.constantFrom('up-to-1-hour' as const, '1-to-2-hours' as const, '2-to-8-hours' as const),
});

describe('whatever the item', () => {
  test('nobody is told to lift more than 23 kg alone', () => {
    fc.assert(
      fc.property(anyItem, (item) => {
        const { one, two } = liftLimitsKg(item);
        expect(one).toBeGreaterThanOrEqual(0);
        expect(one).toBeLessThanOrEqual(23);
        expect(two).toBeLessThanOrEqual((4 / 3) * 23 + 1e-9);
        expect(two).toBeGreaterThanOrEqual(one);
      }),
    );
  });

  test('a heavier item never has a lower index nor an easier verdict', () => {
    const order = ['lift-one-person', 'lift-two-people', 'lift-not-by-hand'];
    const rank = (item: LiftedItem): number => order.indexOf((verdictOf(item) as { value: string }).value);
    const highest = (item: LiftedItem): number => {
      const index = valueOf(liftFindings(item, { id: 'frame.sash-a' }), 'lift-index');
      return index.kind === 'count-range' ? index.high : Infinity;
    };
    fc.assert(
      fc.property(anyItem, fc.double({ min: 0, max: 20, noNaN: true }), (item, more) => {
        const heavier = { ...item, massKg: { low: item.massKg.low + more, high: item.massKg.high + more } };
        expect(highest(heavier)).toBeGreaterThanOrEqual(highest(item));
        expect(rank(heavier)).toBeGreaterThanOrEqual(rank(item));
      }),
    );
  });

  test('a further reach, a bigger turn, a worse grip and more lifts never raise the limit', () => {
    fc.assert(
      fc.property(anyItem, (item) => {
        const limit = liftLimitsKg(item).one;
        const worse: Partial<LiftedItem>[] = [
          { depthM: item.depthM + 0.1 },
          { turnDeg: item.turnDeg + 10 },
          { grip: 'poor' },
          { perMinute: item.perMinute + 1 },
          { time: '2-to-8-hours' },
        ];
        for (const change of worse)
          expect(liftLimitsKg({ ...item, ...change }).one).toBeLessThanOrEqual(limit + 1e-9);
      }),
    );
  });
});

test('a limit in grams is the same in pounds', () => {
  const limit = valueOf(liftFindings(easy, { id: 'frame.sash-a' }), 'lift-limit') as { value: number };
  expect(fromHeld(limit.value, 'lb')).toBeCloseTo(21.85 / pound, 6);
});
