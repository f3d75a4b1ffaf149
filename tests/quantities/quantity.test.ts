import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../scripts/quantities/quantity.ts';
import { fromHeld, toHeld, units, type Dimension } from '../../scripts/quantities/units.ts';

describe('a quantity is read with its unit', () => {
  const cases: [string, string, Dimension, number, number][] = [
    ['whole inches', '4 in', 'length', 101.6, 101.6],
    ['a fraction of an inch', '1/2 in', 'length', 12.7, 12.7],
    ['a mixed fraction', '1 3/8 in', 'length', 34.925, 34.925],
    ['a range with a hyphen', '2-3 in', 'length', 50.8, 76.2],
    ['a range with an en dash', '2–3 cm', 'length', 20, 30],
    ['a range in words', '1/4 to 1/2 in', 'length', 6.35, 12.7],
    ['no space before the unit', '10cm', 'length', 100, 100],
    ['a fraction character', '½ in', 'length', 12.7, 12.7],
    ['a number with a fraction character', '1½-2¼ in', 'length', 38.1, 57.15],
    ['a real minus sign', '−4 weeks', 'duration', -28, -28],
    ['freezing point', '32 F', 'temperature', 0, 0],
    ['below zero', '-40 F', 'temperature', -40, -40],
    ['weeks before', '-4 weeks', 'duration', -28, -28],
    ['weeks before, a range', '-4 to -2 weeks', 'duration', -28, -14],
    ['a gust', '40 mph', 'speed', 17.8816, 17.8816],
    ['a gust in kilometres', '72 kmh', 'speed', 20, 20],
    ['a gust in metres', '20 mps', 'speed', 20, 20],
    ['a pull', '10 lbf', 'force', 44.482216152605, 44.482216152605],
    ['a push', '1 psf', 'pressure', 47.880258980336, 47.880258980336],
    ['a price', '6.50 USD', 'money', 6.5, 6.5],
  ];
  test.each(cases)('%s', (_, text, dimension, low, high) => {
    const quantity = parseQuantity(text, dimension);
    expect('fault' in quantity).toBe(false);
    if ('fault' in quantity) return;
    expect(quantity.low).toBeCloseTo(low, 9);
    expect(quantity.high).toBeCloseTo(high, 9);
  });
});

describe('what is no quantity is told apart', () => {
  const cases: [string, string, Dimension, string][] = [
    ['a bare number', '30', 'length', 'no-unit'],
    ['a bare range', '2-3', 'length', 'no-unit'],
    ['a unit nobody knows', '3 furlongs', 'length', 'unknown-unit'],
    ['a name every object has', '3 constructor', 'length', 'unknown-unit'],
    ['a temperature for a length', '3 F', 'length', 'other-dimension'],
    ['a range from high to low', '3-2 in', 'length', 'backwards'],
    ['words', 'a foot or so', 'length', 'unreadable'],
    ['nothing', '', 'length', 'unreadable'],
    ['more text than a quantity has', `1${' '.repeat(60_000)}!`, 'length', 'unreadable'],
    ['a quantity after a page of spaces', `${' '.repeat(200)}1 in`, 'length', 'unreadable'],
    ['a division by nothing', '1/0 in', 'length', 'unreadable'],
  ];
  test.each(cases)('%s', (_, text, dimension, fault) => {
    expect(parseQuantity(text, dimension)).toMatchObject({ fault });
  });
});

test('a unit and back is the same value', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...Object.keys(units)),
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      (unit, value) => {
        expect(fromHeld(toHeld(value, unit), unit)).toBeCloseTo(value, 6);
      },
    ),
  );
});

test('no text makes the reader throw', () => {
  fc.assert(fc.property(fc.string(), (text) => void parseQuantity(text, 'length')));
});
