/**
 * Hours of drip, weekly need and gallons.
 *
 * Source: Determining How Long to Run Drip Irrigation Systems for Vegetables, Penn State Extension, June 26, 2013: hours
 * to apply 1 in. to a band 30 in. wide, by flow in gallons an hour from 100 ft; 1 to 1.5 in. a week; 0.62 gallons make an
 * inch on a square foot. An acre-inch of 27,154 gallons: usual in irrigation tables.
 * Tolerance: 0.1 h, as printed; gallons to the digits printed.
 */
import { describe, expect, test } from 'vitest';
import {
  dripHours,
  dripTime,
  lineFlowLPerHour,
  waterVolume,
  weeklyNeedMm,
} from '../../scripts/agronomy/watering.ts';
import { quantity, type Finding } from '../../scripts/findings/finding.ts';
import { fromHeld, toHeld } from '../../scripts/quantities/units.ts';

const water: Finding = {
  id: 'water.inch',
  value: quantity('length', 25.4),
  method: 'given',
  inputs: [],
  sources: [],
};

/** Emitters every so many inches, gallons an hour from 100 ft, printed hours. */
const table: [string, number, number, number][] = [
  ['12 in, low flow', 12, 13.2, 11.8],
  ['8 in low flow, or 12 in medium flow', 8, 20.4, 7.6],
  ['12 in, high flow', 12, 27, 5.8],
];

describe('hours for 1 in. on a 30 in. band', () => {
  test.each(table)('%s', (_, spacingIn, gallonsPerHour, printed) => {
    const flowLPerHourPerM = toHeld(gallonsPerHour, 'gal') / (toHeld(100, 'ft') / 1000);
    const hours = dripHours({ depthMm: 25.4, bandWidthMm: 762, flowLPerHourPerM });
    expect(Math.abs(hours - printed)).toBeLessThanOrEqual(0.1);
    expect(Math.round(hours * 10) / 10).toBe(printed);
    const emitterLPerHour = toHeld((gallonsPerHour * spacingIn) / 1200, 'gal');
    const line = { emitterSpacingMm: spacingIn * 25.4, emitterLPerHour };
    expect(lineFlowLPerHour(line)).toBeCloseTo(flowLPerHourPerM, 9);
    const { value } = dripTime({ water, line, lines: 1, bedWidthMm: 762 });
    expect(value).toMatchObject({
      kind: 'quantity',
      dimension: 'day-length',
      value: expect.closeTo(hours, 6) as number,
    });
  });
  test('printed example: 0.45 gallons a minute from 100 ft take 5.8 h', () => {
    const flowLPerHourPerM = toHeld(0.45 * 60, 'gal') / 30.48;
    expect(
      Math.abs(dripHours({ depthMm: 25.4, bandWidthMm: 762, flowLPerHourPerM }) - 5.8),
    ).toBeLessThanOrEqual(0.1);
  });
});

test('vegetables want 1 to 1.5 in. a week', () => {
  expect(fromHeld(weeklyNeedMm.low, 'in')).toBeCloseTo(1, 9);
  expect(fromHeld(weeklyNeedMm.high, 'in')).toBeCloseTo(1.5, 9);
});

describe('gallons for one inch', () => {
  test.each([
    ['a square foot', 1, 0.623, 3],
    ['100 square feet', 100, 62.3, 1],
    ['an acre', 43_560, 27_154, 0],
  ])('on %s', (_, squareFeet, gallons, digits) => {
    const { value } = waterVolume({ water, areaM2: toHeld(squareFeet, 'ft2') });
    if (value.kind !== 'quantity') throw new TypeError('not one volume');
    expect(fromHeld(value.value, 'gal').toFixed(digits)).toBe(gallons.toFixed(digits));
  });
});
