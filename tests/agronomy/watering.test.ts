import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dripTime, lineFlowLPerHour, waterVolume, weeklyWater } from '../../scripts/agronomy/watering.ts';
import { none } from '../../scripts/findings/finding.ts';

const inch = 25.4;
const week = (rain: number, mulch: 'none' | 'plastic' = 'none') =>
  weeklyWater({ rainMm: rain * inch, mulch }).value;

describe('a week of water', () => {
  test('1 to 1.5 in, less rain, never below nothing', () => {
    expect(week(0)).toMatchObject({ low: inch, high: 1.5 * inch });
    const part = week(0.75);
    if (part.kind !== 'range') throw new TypeError('not a range');
    expect(part.low / inch).toBeCloseTo(0.25, 9);
    expect(part.high / inch).toBeCloseTo(0.75, 9);
    expect(week(1.2)).toMatchObject({ kind: 'range', low: 0 });
    expect(week(1.5)).toEqual(none('rain-is-enough'));
  });
  test('plastic mulch keeps the rain off', () => {
    expect(week(2, 'plastic')).toMatchObject({ low: inch, high: 1.5 * inch });
  });
  test('rain below nothing is refused', () => {
    expect(() => weeklyWater({ rainMm: -1, mulch: 'none' })).toThrow(RangeError);
  });
});

test('two lines take half as long as one, and rain that is enough needs none', () => {
  const line = { emitterSpacingMm: 12 * inch, emitterLPerHour: 1 };
  const time = (lines: number, rain = 0) =>
    dripTime({ water: weeklyWater({ rainMm: rain, mulch: 'none' }), line, lines, bedWidthMm: 762 }).value;
  const [one, two] = [time(1), time(2)];
  if (one.kind !== 'range' || two.kind !== 'range') throw new TypeError('not hours');
  expect(one.low / two.low).toBeCloseTo(2, 9);
  expect(time(1, 40)).toEqual(none('rain-is-enough'));
});

test('the litres that run in the hours are the litres on the area', () => {
  const arbitrary = fc.record({
    rain: fc.double({ min: 0, max: 30, noNaN: true }),
    spacing: fc.integer({ min: 100, max: 600 }),
    flow: fc.double({ min: 0.3, max: 4, noNaN: true }),
    lines: fc.integer({ min: 1, max: 4 }),
    width: fc.integer({ min: 200, max: 1500 }),
  });
  fc.assert(
    fc.property(arbitrary, ({ rain, spacing, flow, lines, width }) => {
      const water = weeklyWater({ rainMm: rain, mulch: 'none' });
      const line = { emitterSpacingMm: spacing, emitterLPerHour: flow };
      const hours = dripTime({ water, line, lines, bedWidthMm: width }).value;
      const volume = waterVolume({ water, areaM2: (width / 1000) * 10 }).value;
      if (hours.kind !== 'range' || volume.kind !== 'range') throw new TypeError('not a range');
      expect(hours.high * lines * lineFlowLPerHour(line) * 10).toBeCloseTo(volume.high, 6);
    }),
  );
});

test('a line without flow is refused', () => {
  expect(() => lineFlowLPerHour({ emitterSpacingMm: 300, emitterLPerHour: 0 })).toThrow(RangeError);
});
