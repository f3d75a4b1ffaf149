/** The heat index against the chart and the bands of the U.S. National Weather Service. */
import { describe, expect, test } from 'vitest';
import { heatBand, heatIndexC } from '../../scripts/climate/heat-index.ts';
import { humidityAtDewPoint, saturationKPa } from '../../scripts/climate/heat-of-months.ts';
import { fromHeld, toHeld } from '../../scripts/quantities/units.ts';

const indexF = (temperatureF: number, humidity: number): number =>
  fromHeld(heatIndexC(toHeld(temperatureF, 'F'), humidity), 'F');

describe('NWS heat index chart, from memory', () => {
  // Printed in whole degrees: equal after rounding, but for the two places where chart and formula are known to differ
  // by one (90 °F at 70 % and at 45 %, noted in a published reproduction of the chart).
  const temperatures = [80, 84, 88, 90, 92, 96, 100, 104];
  const chart: [number, readonly number[]][] = [
    [40, [80, 83, 88, 91, 94, 101, 109, 119]],
    [50, [81, 85, 91, 95, 99, 108, 118, 131]],
    [60, [82, 88, 95, 100, 105, 116, 129]],
    [70, [83, 90, 100, 106, 112, 126]],
    [80, [84, 94, 106, 113, 121]],
  ];
  for (const [humidity, row] of chart) {
    test.each(row.map((printed, index) => [temperatures[index]!, printed] as const))(
      `%d °F at ${humidity} %%: %d °F`,
      (temperatureF, printed) => {
        expect(Math.round(indexF(temperatureF, humidity))).toBe(printed);
      },
    );
  }

  test('90 °F at 70 %: the chart has 105, the formula one more', () => {
    expect(Math.abs(indexF(90, 70) - 105)).toBeLessThanOrEqual(1.1);
  });

  test('90 °F at 45 %: the chart has 93, the formula one less', () => {
    expect(Math.round(indexF(90, 45))).toBe(92);
  });

  test('96 °F at 65 % feels like 121 °F', () => {
    // The example that the Weather Service prints beside its chart, read in reprints.
    expect(Math.round(indexF(96, 65))).toBe(121);
  });

  test('80 °F at 100 %: the chart leaves out the addition for damp air and has 87, the whole procedure 89', () => {
    expect(Math.round(indexF(80, 100))).toBe(89);
  });
});

describe('the procedure, NWS Weather Prediction Center, Heat Index Equation, read', () => {
  // Worked apart from the program from the terms on the page; tolerance a thousandth of a degree.
  test.each([
    // 0.5 (76 + 61 + 1.2 × 8 + 0.094 × 50) = 75.65; with 76, half of the sum.
    ['cool: the simple formula averaged with the temperature', 76, 50, 75.825],
    // Regression 94.1843, less (13 − 5)/4 × √((17 − 5)/17) = 1.6803.
    ['dry: less than 13 percent', 100, 5, 92.504],
    // Regression 92.9722, and (95 − 85)/10 × (87 − 82)/5 = 1.
    ['damp: more than 85 percent', 82, 95, 93.9722],
  ])('%s', (_, temperatureF, humidity, expected) => {
    expect(Math.abs(indexF(temperatureF, humidity) - expected)).toBeLessThan(0.001);
  });

  test('a humidity that air cannot have is refused', () => {
    expect(() => heatIndexC(30, 101)).toThrow(RangeError);
    expect(() => heatIndexC(30, -1)).toThrow(RangeError);
  });
});

describe('bands of the Weather Service, read in a reprint', () => {
  // Caution 80 to 90, extreme caution 90 to 103, danger 103 to 124, extreme danger 125 and more; whole degrees.
  test.each([
    [79, 'none'],
    [80, 'caution'],
    [89, 'caution'],
    [90, 'extreme-caution'],
    [102, 'extreme-caution'],
    [103, 'danger'],
    [124, 'danger'],
    [125, 'extreme-danger'],
    [150, 'extreme-danger'],
  ])('%d °F: %s', (indexWhole, band) => {
    expect(heatBand(toHeld(indexWhole, 'F'))).toBe(band);
  });
});

describe('humidity from the dew point, FAO Irrigation and Drainage Paper 56', () => {
  // Annex 2, table 2.3, from memory: kilopascals to three decimals.
  test.each([
    [1, 0.657],
    [10, 1.228],
    [20, 2.338],
    [24.5, 3.075],
    [30, 4.243],
    [40, 7.376],
  ])('air of %d °C is saturated at %d kPa', (temperatureC, kPa) => {
    expect(Math.abs(saturationKPa(temperatureC) - kPa)).toBeLessThan(0.002);
  });

  test('an afternoon of 24.5 °C after a night of 15 °C has 55 percent', () => {
    // The two pressures of example 3 of the paper, 1.705 and 3.075 kPa.
    expect(humidityAtDewPoint(24.5, 15)).toBeCloseTo((100 * 1.705) / 3.075, 0);
  });

  test('air at its dew point is saturated, and no more', () => {
    expect(humidityAtDewPoint(10, 10)).toBe(100);
    expect(humidityAtDewPoint(10, 12)).toBe(100);
  });
});
