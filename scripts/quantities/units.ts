/**
 * Units of measure. Inside the program every quantity is held in one unit per dimension:
 *
 * | dimension              | held in            | names end in |
 * | ---------------------- | ------------------ | ------------ |
 * | length                 | millimetre         | `Mm`         |
 * | area                   | square metre       | `M2`         |
 * | volume                 | litre              | `L`          |
 * | mass                   | gram               | `G`          |
 * | temperature            | degree Celsius     | `C`          |
 * | temperature difference | kelvin             | `K`          |
 * | duration               | day                | `Days`       |
 * | time of day length     | hour               | `Hours`      |
 * | angle                  | degree             | `Deg`        |
 * | speed                  | metre per second   | `Mps`        |
 * | force                  | newton             | `N`          |
 * | pressure               | pascal             | `Pa`         |
 * | money                  | currency unit      | –            |
 *
 * Conversion happens twice only: when a record is read and when words for people are made.
 * Factors are exact by the international yard and pound agreement of 1959 (NIST SP 811, appendix B).
 */
export type Dimension =
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'temperature'
  | 'duration'
  | 'day-length'
  | 'angle'
  | 'speed'
  | 'force'
  | 'pressure'
  | 'money';

interface UnitDefinition {
  readonly dimension: Dimension;
  /** value in the held unit = value × scale + offset */
  readonly scale: number;
  readonly offset?: number;
}

const foot = 304.8;
const inch = 25.4;
const mile = 5280 * foot;
/** The pull of the earth on a pound, in newtons: 0.45359237 kg by standard gravity, 9.80665 m/s2. */
const poundForce = 0.45359237 * 9.80665;

/** Every spelling of a unit that a record may use. */
export const units: Readonly<Record<string, UnitDefinition>> = {
  mm: { dimension: 'length', scale: 1 },
  cm: { dimension: 'length', scale: 10 },
  m: { dimension: 'length', scale: 1000 },
  in: { dimension: 'length', scale: inch },
  ft: { dimension: 'length', scale: foot },
  yd: { dimension: 'length', scale: 3 * foot },
  m2: { dimension: 'area', scale: 1 },
  ft2: { dimension: 'area', scale: (foot / 1000) ** 2 },
  L: { dimension: 'volume', scale: 1 },
  gal: { dimension: 'volume', scale: 3.785411784 },
  ft3: { dimension: 'volume', scale: 28.316846592 },
  g: { dimension: 'mass', scale: 1 },
  kg: { dimension: 'mass', scale: 1000 },
  oz: { dimension: 'mass', scale: 28.349523125 },
  lb: { dimension: 'mass', scale: 453.59237 },
  C: { dimension: 'temperature', scale: 1 },
  F: { dimension: 'temperature', scale: 5 / 9, offset: (-32 * 5) / 9 },
  day: { dimension: 'duration', scale: 1 },
  days: { dimension: 'duration', scale: 1 },
  week: { dimension: 'duration', scale: 7 },
  weeks: { dimension: 'duration', scale: 7 },
  h: { dimension: 'day-length', scale: 1 },
  hours: { dimension: 'day-length', scale: 1 },
  deg: { dimension: 'angle', scale: 1 },
  mps: { dimension: 'speed', scale: 1 },
  mph: { dimension: 'speed', scale: mile / 1000 / 3600 },
  kmh: { dimension: 'speed', scale: 1 / 3.6 },
  N: { dimension: 'force', scale: 1 },
  lbf: { dimension: 'force', scale: poundForce },
  Pa: { dimension: 'pressure', scale: 1 },
  psf: { dimension: 'pressure', scale: poundForce / (foot / 1000) ** 2 },
  USD: { dimension: 'money', scale: 1 },
};

/** Converts a number in a named unit to the held unit of its dimension. */
export function toHeld(value: number, unit: keyof typeof units): number {
  const definition = units[unit];
  if (!definition) throw new RangeError(`unknown unit ${unit}`);
  return value * definition.scale + (definition.offset ?? 0);
}

/** Converts a number in the held unit of the dimension of `unit` to that unit. */
export function fromHeld(value: number, unit: keyof typeof units): number {
  const definition = units[unit];
  if (!definition) throw new RangeError(`unknown unit ${unit}`);
  return (value - (definition.offset ?? 0)) / definition.scale;
}
