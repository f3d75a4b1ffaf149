/** How hot the afternoons of invented climates feel. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { heatIndexC } from '../../scripts/climate/heat-index.ts';
import { heatOfMonths, type HeatClimate } from '../../scripts/climate/heat-of-months.ts';
import { fromHeld, toHeld } from '../../scripts/quantities/units.ts';

const fahrenheit = (...values: number[]): number[] => values.map((value) => toHeld(value, 'F'));

const climate: HeatClimate = {
  minimumC: fahrenheit(25, 29, 37, 45, 55, 63, 68, 66, 58, 46, 37, 29),
  maximumC: fahrenheit(43, 48, 58, 69, 77, 85, 90, 88, 81, 70, 57, 46),
  source: 'a-station',
};
const humidity = { afternoon: [60, 58, 54, 50, 52, 54, 55, 56, 55, 52, 56, 60], source: 'an-airport' };

describe('with the humidity of the afternoon on record', () => {
  const months = heatOfMonths({ ...climate, humidity });
  const july = months[6]!;

  test('July, 90 °F at 55 percent: 97 °F, extreme caution', () => {
    // NWS chart, from memory: 97.
    expect(july.month).toBe('july');
    expect(july.humidity).toMatchObject({
      value: { kind: 'count', value: 55 },
      method: 'heat.humidity-given',
    });
    expect(Math.round(fromHeld((july.index.value as { value: number }).value, 'F'))).toBe(97);
    expect(july.band.value).toEqual({ kind: 'choice', value: 'heat-extreme-caution' });
    expect(july.index.sources).toEqual(['nws-heat-index', 'a-station', 'an-airport']);
  });

  test('each month has its own days, through the year without a gap', () => {
    const days = months.map(({ index }) => index.inputs[0]!.value as { from: number; to: number });
    expect(days[0]!.from).toBe(1);
    expect(days[1]).toMatchObject({ from: 32, to: 59 });
    expect(days.at(-1)!.to).toBe(365);
    days.slice(1).forEach(({ from }, at) => {
      expect(from).toBe(days[at]!.to + 1);
    });
  });

  test('a cool month has no heat index and asks for no care', () => {
    expect(months[0]!.index.value).toEqual({ kind: 'none', reason: 'too-cool-for-heat' });
    expect(months[0]!.band.value).toEqual({ kind: 'choice', value: 'heat-none' });
  });
});

test('without it the air is reckoned to be at its dew point at the daily low', () => {
  // e(68 °F) = 2.338 kPa and e(90 °F) = 4.810 kPa: 48.6 percent, so about 94 °F (NWS formula at 90 °F, 48.6 %).
  const july = heatOfMonths(climate)[6]!;
  expect(july.humidity.method).toBe('heat.humidity-from-minimum');
  expect((july.humidity.value as { value: number }).value).toBeCloseTo(48.6, 1);
  expect(Math.round(fromHeld((july.index.value as { value: number }).value, 'F'))).toBe(94);
  expect(july.humidity.sources).toEqual(['fao-56-humidity', 'a-station']);
});

test('without temperatures nothing is known, and it says so', () => {
  for (const { humidity: damp, index, band } of heatOfMonths(undefined))
    for (const { value } of [damp, index, band])
      expect(value).toEqual({ kind: 'none', reason: 'temperatures-not-given' });
});

test('hotter air feels hotter, from 80 to 110 °F and from 40 percent on', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 80, max: 109, noNaN: true }),
      fc.double({ min: 40, max: 100, noNaN: true }),
      (temperatureF, percent) => {
        const at = (value: number): number => fromHeld(heatIndexC(toHeld(value, 'F'), percent), 'F');
        expect(at(temperatureF + 1)).toBeGreaterThan(at(temperatureF));
      },
    ),
  );
});
