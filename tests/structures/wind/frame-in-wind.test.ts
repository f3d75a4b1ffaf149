import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frameStandsUpToMps, type StandingFrame } from '../../../scripts/structures/wind/frame-in-wind.ts';
import type { SashState, WindSash } from '../../../scripts/structures/wind/sash-in-wind.ts';
import { sashWindFindings } from '../../../scripts/structures/wind/sash-wind-findings.ts';
import { regionWind } from '../../../scripts/structures/wind/velocity-pressure.ts';

const mph = 0.44704;
const pound = 0.45359237;
const poundForce = 4.4482216;
const foot = 0.3048;

/** Level, 3 by 4 ft, 10 lb, with 80 lb at its front; the frame is 80 lb, 4 ft deep, under two of them. */
const lid: WindSash = {
  areaM2: 12 * foot ** 2,
  massKg: 10 * pound,
  widthM: 3 * foot,
  lengthM: 4 * foot,
  slopeDeg: 0,
  openAngleDeg: 10,
  holdDownN: 80 * poundForce,
  hinged: 'top',
};
const frame: StandingFrame = { massKg: 80 * pound, depthM: 4 * foot, lids: 2, backHoldDownN: 0 };

describe('a frame of 80 lb, 4 ft deep, under two level lids of 12 square feet', () => {
  // Two lids lift by 0.00256 × 24 v² = 0.06144 v² lb, in the middle, 2 ft from either edge; 1.5 times that must be held.
  const cases: readonly {
    name: string;
    frame?: Partial<StandingFrame>;
    lid?: Partial<WindSash>;
    mph: number;
  }[] = [
    // About the front: (80 + 20) × 2 = 200 ft lb; 200 / (1.5 × 2 × 0.06144) = 1085.
    { name: 'tips up on its front edge, weights on the front holding nothing', mph: 32.94 },
    // 200 + 2 × 60 × 4 = 680 ft lb; 680 / 0.18432 = 3689.
    { name: 'with 60 lb on the back end of each lid', frame: { backHoldDownN: 60 * poundForce }, mph: 60.74 },
    // About the back: 200 ft lb, though 160 lb lie on the back edge: the same 1085.
    {
      name: 'tips up on its back edge where all weight lies there',
      frame: { backHoldDownN: 80 * poundForce },
      lid: { holdDownN: 0 },
      mph: 32.94,
    },
    // Front weights past the front edge of a frame 3 ft deep pull it over: 80 × 1.5 + 20 × 1 - 160 × 1 < 0.
    { name: 'stands nothing where weights hang far over its front', frame: { depthM: 3 * foot }, mph: 0 },
  ];
  test.each(cases)('$name: $mph mph', ({ frame: more, lid: other, mph: expected }) => {
    expect(frameStandsUpToMps({ ...frame, ...more }, { ...lid, ...other }, 'closed') / mph).toBeCloseTo(
      expected,
      1,
    );
  });

  test('is lifted whole where both edges are held alike', () => {
    // 80 + 20 + 160 + 160 = 420 lb; about either edge 200 + 160 × 4 = 840 ft lb over 2 ft is the same 420 lb: 4557.
    const held = { ...frame, backHoldDownN: 80 * poundForce };
    expect(frameStandsUpToMps(held, lid, 'closed') / mph).toBeCloseTo(67.51, 1);
  });

  test('stands less with its lids propped: 1.3 times the force', () => {
    const open = { ...lid, openAngleDeg: 1e-9 };
    const ratio = frameStandsUpToMps(frame, open, 'open') / frameStandsUpToMps(frame, open, 'closed');
    expect(ratio).toBeCloseTo(Math.sqrt(1 / 1.3), 4);
  });

  test.each(['none', 'side'] as const)('with a lid hinged at %s is no case of this', (hinged) => {
    expect(() => frameStandsUpToMps(frame, { ...lid, hinged }, 'closed')).toThrow(RangeError);
  });
});

test('more weight on the back, or a heavier frame, never stands less', () => {
  const states: readonly SashState[] = ['closed', 'open'];
  const amount = fc.double({ min: 0, max: 500, noNaN: true });
  fc.assert(
    fc.property(amount, amount, fc.constantFrom(...states), (back, more, state) => {
      const before = frameStandsUpToMps({ ...frame, backHoldDownN: back }, lid, state);
      expect(frameStandsUpToMps({ ...frame, backHoldDownN: back + more }, lid, state)).toBeGreaterThanOrEqual(
        before,
      );
      const heavier = { ...frame, backHoldDownN: back, massKg: frame.massKg + more };
      expect(frameStandsUpToMps(heavier, lid, state)).toBeGreaterThanOrEqual(before);
    }),
  );
});

test('a lid that holds is not held where its frame tips, and its limit is that of the frame', () => {
  const wind = regionWind({
    gust: { dimension: 'speed', low: 50 * mph, high: 50 * mph, written: '50 mph' },
    source: 'a-station',
  });
  const of = (on: { frame?: StandingFrame }, what: string) =>
    sashWindFindings(lid, { id: 'frame.lid', wind, ...on }).find(({ id }) => id === `frame.lid.wind-${what}`)
      ?.value;
  const held = (value: string) => ({ kind: 'choice', value });
  expect(of({}, 'held-closed')).toEqual(held('wind-held'));
  expect(of({ frame }, 'held-closed')).toEqual(held('wind-not-held'));
  expect(of({ frame: { ...frame, backHoldDownN: 60 * poundForce } }, 'held-closed')).toEqual(
    held('wind-held'),
  );
  expect(of({ frame }, 'limit-closed')).toEqual(of({ frame }, 'frame-closed'));
  expect(of({}, 'frame-closed')).toBeUndefined();
});
