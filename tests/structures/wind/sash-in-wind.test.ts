/** Cases worked by hand and properties of a sash in the wind. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../scripts/findings/finding.ts';
import { fromHeld, toHeld } from '../../../scripts/quantities/units.ts';
import { sashWindFindings } from '../../../scripts/structures/wind/sash-wind-findings.ts';
import {
  gravity,
  leaveUpToMps,
  liftsAtMps,
  sashInWind,
  type SashState,
  type WindSash,
} from '../../../scripts/structures/wind/sash-in-wind.ts';
import {
  regionWind,
  speedOfPressureMps,
  velocityPressurePa,
} from '../../../scripts/structures/wind/velocity-pressure.ts';

const mph = (value: number): number => toHeld(value, 'mph');
const pounds = (newtons: number): number => fromHeld(newtons, 'lbf');

/** 10 ft² and 20 lb, so that the figures can be followed with a pencil. */
const sash: WindSash = {
  areaM2: toHeld(10, 'ft2'),
  massKg: toHeld(20, 'lb') / 1000,
  widthM: 0.6096,
  lengthM: 1.524,
  slopeDeg: 0,
  hinged: 'top',
};

describe('worked by hand: 10 ft² and 20 lb, lying level, in a gust of 50 mph', () => {
  // 0.00256 × 50² = 6.4 lb/ft², so the lift is 64 lb closed and 1.3 × 64 = 83.2 lb open.
  test('on hinges, closed: 1.5 × 64 − 20 = 76 lb in the middle, so 38 lb at the free edge', () => {
    const found = sashInWind(sash, 'closed', mph(50));
    expect(pounds(found.liftN)).toBeCloseTo(64, 9);
    expect(pounds(found.holdDownNeededN)).toBeCloseTo(38, 9);
    expect(found.held).toBe(false);
  });

  test('loose, closed: all of the 76 lb', () => {
    expect(pounds(sashInWind({ ...sash, hinged: 'none' }, 'closed', mph(50)).holdDownNeededN)).toBeCloseTo(
      76,
      9,
    );
  });

  test('moments about the top: 64 lb × 2.5 ft against 20 lb × 2.5 ft', () => {
    const { overturningNm, rightingNm } = sashInWind(sash, 'closed', mph(50));
    const footPound = toHeld(1, 'lbf') * 0.3048;
    expect(overturningNm / footPound).toBeCloseTo(160, 6);
    expect(rightingNm / footPound).toBeCloseTo(50, 6);
  });

  test('hinged at the side the lever is half of the width, 1 ft', () => {
    const { overturningNm, rightingNm } = sashInWind({ ...sash, hinged: 'side' }, 'closed', mph(50));
    const footPound = toHeld(1, 'lbf') * 0.3048;
    expect(overturningNm / footPound).toBeCloseTo(64, 6);
    expect(rightingNm / footPound).toBeCloseTo(20, 6);
  });

  test('a bag of 10 lb at the free edge turns back with its whole weight over 5 ft, on a loose sash with half', () => {
    const holdDownN = toHeld(10, 'lbf');
    const footPound = toHeld(1, 'lbf') * 0.3048;
    const righting = (hinged: WindSash['hinged']): number =>
      sashInWind({ ...sash, holdDownN, hinged }, 'closed', mph(50)).rightingNm / footPound;
    expect(righting('top')).toBeCloseTo(50 + 50, 6);
    expect(righting('none')).toBeCloseTo(50 + 25, 6);
  });

  test('open by 60 degrees a weight works with half of its lever: 1.5 × 83.2 / 0.5 − 20 = 229.6 lb, half at the edge', () => {
    const open = { ...sash, openAngleDeg: 60 };
    expect(pounds(sashInWind(open, 'open', mph(50)).liftN)).toBeCloseTo(83.2, 9);
    expect(pounds(sashInWind(open, 'open', mph(50)).holdDownNeededN)).toBeCloseTo(114.8, 9);
  });

  test('hinged at the top a sash that slopes by 5 degrees is level when it is open by 5; at the side it is not', () => {
    const open = { ...sash, slopeDeg: 5, openAngleDeg: 5 };
    expect(pounds(sashInWind(open, 'open', mph(50)).holdDownNeededN)).toBeCloseTo(52.4, 9);
    expect(pounds(sashInWind({ ...open, hinged: 'side' }, 'open', mph(50)).holdDownNeededN)).toBeCloseTo(
      (1.5 * 83.2) / Math.cos(Math.PI / 36) ** 2 / 2 - 10,
      9,
    );
  });

  test('it begins to lift where 0.00256 V² × 10 = 20: at 27.95 mph, and is safe up to that over the root of 1.5', () => {
    expect(fromHeld(liftsAtMps(sash, 'closed'), 'mph')).toBeCloseTo(27.951, 3);
    expect(fromHeld(leaveUpToMps(sash, 'closed'), 'mph')).toBeCloseTo(22.822, 3);
  });

  test('with panes missing the wind has less to act on', () => {
    const half = { ...sash, areaM2: sash.areaM2 / 2 };
    expect(pounds(sashInWind(half, 'closed', mph(50)).liftN)).toBeCloseTo(32, 9);
  });

  test.each<[string, WindSash, SashState]>([
    ['a sash that does not open', sash, 'open'],
    ['an opening of no degrees', { ...sash, openAngleDeg: 0 }, 'open'],
    ['an opening beyond 60 degrees', { ...sash, openAngleDeg: 61 }, 'open'],
    ['a slope beyond 45 degrees', { ...sash, slopeDeg: 46 }, 'closed'],
    ['more area than width times length', { ...sash, areaM2: 1 }, 'closed'],
  ])('%s is refused', (_, wrong, state) => {
    expect(() => sashInWind(wrong, state, 10)).toThrow(RangeError);
  });
});

const anySash = fc.record({
  areaM2: fc.double({ min: 0.1, max: 2, noNaN: true }),
  massKg: fc.double({ min: 1, max: 40, noNaN: true }),
  widthM: fc.constant(1),
  lengthM: fc.constant(2),
  slopeDeg: fc.double({ min: 0, max: 30, noNaN: true }),
  openAngleDeg: fc.double({ min: 1, max: 60, noNaN: true }),
  holdDownN: fc.double({ min: 0, max: 500, noNaN: true }),
  hinged: fc.constantFrom('none' as const, 'top' as const, 'side' as const),
});
const anyState = fc.constantFrom<SashState>('closed', 'open');
const anyGust = fc.double({ min: 0, max: 60, noNaN: true });

describe('whatever the sash', () => {
  test('a stronger gust never needs less hold-down', () => {
    fc.assert(
      fc.property(anySash, anyState, anyGust, anyGust, (given, state, a, b) => {
        const [weak, strong] = [Math.min(a, b), Math.max(a, b)].map(
          (gust) => sashInWind(given, state, gust).holdDownNeededN,
        );
        expect(strong).toBeGreaterThanOrEqual(weak!);
      }),
    );
  });

  test('a heavier sash never needs more hold-down and never lifts sooner', () => {
    fc.assert(
      fc.property(anySash, anyState, anyGust, (given, state, gust) => {
        const heavier = { ...given, massKg: given.massKg + 1 };
        expect(sashInWind(heavier, state, gust).holdDownNeededN).toBeLessThanOrEqual(
          sashInWind(given, state, gust).holdDownNeededN,
        );
        expect(liftsAtMps(heavier, state)).toBeGreaterThan(liftsAtMps(given, state));
      }),
    );
  });

  test('what is needed is enough, and less is not', () => {
    fc.assert(
      fc.property(anySash, anyState, anyGust, (given, state, gust) => {
        const { holdDownNeededN } = sashInWind(given, state, gust);
        const held = (holdDownN: number): boolean => sashInWind({ ...given, holdDownN }, state, gust).held;
        expect(held(holdDownNeededN)).toBe(true);
        if (holdDownNeededN > 1) expect(held(holdDownNeededN * 0.99)).toBe(false);
      }),
    );
  });

  test('it is held in the strongest gust it may be left in, not above, and never lifts below that', () => {
    fc.assert(
      fc.property(anySash, anyState, (given, state) => {
        const limit = leaveUpToMps(given, state);
        expect(sashInWind(given, state, limit).held).toBe(true);
        expect(sashInWind(given, state, limit * 1.01).held).toBe(false);
        expect(limit).toBeLessThan(liftsAtMps(given, state));
        const { overturningNm, rightingNm } = sashInWind(given, state, liftsAtMps(given, state));
        expect(overturningNm / rightingNm).toBeCloseTo(1, 9);
      }),
    );
  });

  test('a gust and the speed of its pressure are the same', () => {
    fc.assert(
      fc.property(anyGust, (gust) => {
        expect(speedOfPressureMps(velocityPressurePa(gust))).toBeCloseTo(gust, 9);
      }),
    );
  });
});

describe('as findings', () => {
  const gust = { dimension: 'speed', low: mph(40), high: mph(40), written: '40 mph' } as const;
  const windy = regionWind({ gust, source: 'a-station' });
  const open = { ...sash, openAngleDeg: 20, holdDownN: 25 * 0.45359237 * gravity };
  const valueOf = (findings: readonly Finding[], what: string): Finding['value'] =>
    findings.find(({ id }) => id === `frame.sash-a.wind-${what}`)!.value;

  test('gust and pressure of the region', () => {
    expect(windy.gust).toMatchObject({ id: 'wind.gust', sources: ['a-station'] });
    expect(windy.pressure.inputs).toEqual([{ name: 'gust', value: windy.gust.value, finding: 'wind.gust' }]);
    expect(fromHeld((windy.pressure.value as { value: number }).value, 'psf')).toBeCloseTo(4.096, 9);
  });

  test('closed and open, each with all six', () => {
    const ids = sashWindFindings(open, { id: 'frame.sash-a', wind: windy }).map(({ id }) => id);
    const six = ['lift', 'force', 'weight', 'held', 'lifts', 'limit'];
    expect(ids).toEqual(
      ['closed', 'open'].flatMap((state) => six.map((what) => `frame.sash-a.wind-${what}-${state}`)),
    );
  });

  test('25 lb at the free edge hold the closed sash in 40 mph, and not the open one', () => {
    const findings = sashWindFindings(open, { id: 'frame.sash-a', wind: windy });
    expect(valueOf(findings, 'held-closed')).toEqual({ kind: 'choice', value: 'wind-held' });
    expect(fromHeld((valueOf(findings, 'weight-closed') as { value: number }).value, 'lb')).toBeCloseTo(
      (1.5 * 40.96 - 20) / 2,
      6,
    );
    expect(valueOf(findings, 'held-open')).toEqual({ kind: 'choice', value: 'wind-not-held' });
  });

  test('a sash heavy enough needs nothing', () => {
    const findings = sashWindFindings({ ...sash, massKg: 100 }, { id: 'frame.sash-a', wind: windy });
    expect(findings).toHaveLength(6);
    expect(valueOf(findings, 'force-closed')).toEqual({ kind: 'none', reason: 'weight-holds-it' });
    expect(valueOf(findings, 'weight-closed')).toEqual({ kind: 'none', reason: 'weight-holds-it' });
    expect(valueOf(findings, 'held-closed')).toEqual({ kind: 'choice', value: 'wind-held' });
  });

  test('without a gust on record the speeds are known all the same', () => {
    const findings = sashWindFindings(open, { id: 'frame.sash-a', wind: regionWind(undefined) });
    const none = { kind: 'none', reason: 'wind-not-given' };
    for (const what of ['lift-open', 'force-open', 'weight-open', 'held-open'])
      expect(valueOf(findings, what)).toEqual(none);
    expect(valueOf(findings, 'limit-open').kind).toBe('quantity');
    expect(regionWind(undefined).pressure.value).toEqual(none);
  });
});
