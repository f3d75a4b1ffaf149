/**
 * Quantities in words for people: both systems, the publisher's first. This is the one place where held units
 * become inches and degrees Fahrenheit. A no-break space ties every number to its unit.
 */
import { fromHeld } from '../quantities/units.ts';
import type { Dimension } from '../quantities/units.ts';
import { mixedFraction } from './fractions.ts';
import type { Say } from './phrases.ts';

export type SystemOrder = 'customary-first' | 'metric-first';

/** A quantity as printed: the first system, which stands out, and the second, in parentheses, if it differs. */
export interface PrintedMeasure {
  readonly first: string;
  readonly second?: string;
}

export interface Measures {
  /** A value or range in held units. */
  measure(dimension: Dimension, low: number, high?: number): PrintedMeasure;
  /** Both systems in one line: `4 in (10 cm)`. */
  both(dimension: Dimension, low: number, high?: number): string;
  /** A length on a drawing, with primes: `7′ 4″ (224 cm)`. */
  onDrawing(lengthMm: number): string;
  /** The same as two pieces, for a drawing that sets one over the other. */
  lengthOnDrawing(lengthMm: number): PrintedMeasure;
  /** A volume of water, in gallons and litres however much it is. */
  liquid(lowL: number, highL?: number): PrintedMeasure;
  /** A quantity in the first system only. */
  short(dimension: Dimension, low: number, high?: number): string;
  /** A length as bare numbers of the unit that `tableUnit` names, for a column with its unit in the head. */
  bareLength(low: number, high?: number): string;
  /** `in` or `cm`, by the publisher's order. */
  readonly tableUnit: 'in' | 'cm';
  number(value: number, digits?: number): string;
  latitude(degrees: number): string;
}

const nb = '\u00A0';

export function measuresFor(options: { language: string; order: SystemOrder; say: Say }): Measures {
  const { language, order, say } = options;
  const formats = new Map<number, Intl.NumberFormat>();
  const formatOf = (digits: number): Intl.NumberFormat => {
    const known = formats.get(digits);
    if (known) return known;
    const made = new Intl.NumberFormat(language, {
      maximumFractionDigits: digits,
      minimumFractionDigits: 0,
      useGrouping: 'min2',
    });
    formats.set(digits, made);
    return made;
  };
  const number = (value: number, digits = 0): string => formatOf(digits).format(value).replace('-', '−');
  const system = systemWords(number, say);

  const measure = (dimension: Dimension, low: number, high: number = low): PrintedMeasure => {
    if (isShared(dimension)) return { first: sharedWords(dimension, [low, high], number, say) };
    const customary = system.customary(dimension, low, high);
    const metric = system.metric(dimension, low, high);
    return order === 'customary-first'
      ? { first: customary, second: metric }
      : { first: metric, second: customary };
  };
  const onDrawing = (lengthMm: number): Required<PrintedMeasure> => {
    const customary = primes(lengthMm);
    const metric = metricLength(lengthMm, lengthMm, number);
    return order === 'customary-first'
      ? { first: customary, second: metric }
      : { first: metric, second: customary };
  };
  return {
    measure,
    both: (dimension, low, high) => {
      const { first, second } = measure(dimension, low, high);
      return second === undefined ? first : `${first} (${second})`;
    },
    onDrawing: (lengthMm) => {
      const { first, second } = onDrawing(lengthMm);
      return `${first} (${second})`;
    },
    lengthOnDrawing: onDrawing,
    liquid: (lowL, highL = lowL) => {
      const [low, high] = atPrecision(fromHeld(lowL, 'gal'), fromHeld(highL, 'gal'), number);
      const customary = `${rangeOf(low, high)}${nb}${say('unit.gallons')}`;
      const metric = system.metric('volume', lowL, highL);
      return order === 'customary-first'
        ? { first: customary, second: metric }
        : { first: metric, second: customary };
    },
    bareLength: (low, high = low) =>
      order === 'customary-first'
        ? rangeOf(...([low, high].map((mm) => mixedFraction(fromHeld(mm, 'in'), 8)) as [string, string]))
        : rangeOf(...([low, high].map((mm) => number(mm / 10, high < 100 ? 1 : 0)) as [string, string])),
    tableUnit: order === 'customary-first' ? 'in' : 'cm',
    short: (dimension, low, high) => measure(dimension, low, high).first,
    number,
    latitude: (degrees) =>
      say(degrees < 0 ? 'measure.latitude-south' : 'measure.latitude-north', {
        degrees: number(Math.abs(degrees), 1),
      }),
  };
}

/** Dimensions that both systems write alike. */
type SharedDimension = 'duration' | 'day-length' | 'angle' | 'money';
type SystemDimension = Exclude<Dimension, SharedDimension>;

function isShared(dimension: Dimension): dimension is SharedDimension {
  return ['duration', 'day-length', 'angle', 'money'].includes(dimension);
}

function sharedWords(
  dimension: SharedDimension,
  [low, high]: readonly [number, number],
  number: Numbers,
  say: Say,
): string {
  switch (dimension) {
    case 'duration':
      return duration(low, high, number, say);
    case 'day-length':
      return low === high
        ? hours(low, say)
        : `${rangeOf(number(low, 1), number(high, 1))}${nb}${say('unit.hours')}`;
    case 'angle':
      return `${rangeOf(number(low, 1), number(high, 1))}°`;
    case 'money':
      return rangeOf(dollars(low), dollars(high));
  }
}

type Numbers = (value: number, digits?: number) => string;

function systemWords(number: Numbers, say: Say) {
  return {
    customary(dimension: SystemDimension, low: number, high: number): string {
      switch (dimension) {
        case 'length':
          return customaryLength(low, high);
        case 'temperature':
          return `${rangeOf(number(fromHeld(low, 'F')), number(fromHeld(high, 'F')))}${nb}°F`;
        case 'mass':
          return customaryMass(low, high, { number, say });
        case 'area':
          return `${rangeOf(...atPrecision(fromHeld(low, 'ft2'), fromHeld(high, 'ft2'), number))}${nb}ft²`;
        case 'speed':
          return `${rangeOf(number(fromHeld(low, 'mph')), number(fromHeld(high, 'mph')))}${nb}mph`;
        case 'force':
          return `${rangeOf(...atPrecision(fromHeld(low, 'lbf'), fromHeld(high, 'lbf'), number))}${nb}${say('unit.pounds-force')}`;
        case 'pressure':
          return `${rangeOf(...atPrecision(fromHeld(low, 'psf'), fromHeld(high, 'psf'), number))}${nb}lb/ft²`;
        case 'volume':
          return fromHeld(high, 'ft3') >= 1
            ? `${rangeOf(...atPrecision(fromHeld(low, 'ft3'), fromHeld(high, 'ft3'), number))}${nb}ft³`
            : `${rangeOf(...atPrecision(fromHeld(low, 'gal'), fromHeld(high, 'gal'), number))}${nb}${say('unit.gallons')}`;
      }
    },
    metric(dimension: SystemDimension, low: number, high: number): string {
      switch (dimension) {
        case 'length':
          return metricLength(low, high, number);
        case 'temperature':
          return `${rangeOf(number(low), number(high))}${nb}°C`;
        case 'mass':
          return high >= 1000
            ? `${rangeOf(...atPrecision(low / 1000, high / 1000, number))}${nb}kg`
            : `${rangeOf(...atPrecision(low, high, number))}${nb}g`;
        case 'area':
          return `${rangeOf(...atPrecision(low, high, number))}${nb}m²`;
        case 'speed':
          return `${rangeOf(number(fromHeld(low, 'kmh')), number(fromHeld(high, 'kmh')))}${nb}km/h`;
        case 'force':
          return `${rangeOf(...atPrecision(low, high, number))}${nb}N`;
        case 'pressure':
          return `${rangeOf(...atPrecision(low, high, number))}${nb}Pa`;
        case 'volume':
          return `${rangeOf(...atPrecision(low, high, number))}${nb}L`;
      }
    },
  };
}

/** An en dash between the ends (a word where an end is negative), or one value when they print alike. */
export function rangeOf(low: string, high: string): string {
  if (low === high) return low;
  return high.startsWith('−') ? `${low} to ${high}` : `${low}–${high}`;
}

/** Two or three significant figures: what a gardener can measure. */
function atPrecision(low: number, high: number, number: Numbers): [string, string] {
  const digits = high >= 20 ? 0 : high >= 1 ? 1 : 2;
  return [number(low, digits), number(high, digits)];
}

/** Below six feet a tape is read in inches. */
const inchesUpTo = 71.9;

/** Inches in eighths (sixteenths under half an inch, quarters from a yard on); feet and inches from six feet on. */
function customaryLength(low: number, high: number): string {
  const inches = [fromHeld(low, 'in'), fromHeld(high, 'in')] as const;
  if (inches[1] < inchesUpTo || low !== high) {
    const parts = inches[1] < 0.5 ? 16 : inches[1] < 36.01 ? 8 : 4;
    if (inches[0] >= 36 && inches.every((value) => Math.abs(value / 12 - Math.round(value / 12)) < 0.002)) {
      return `${rangeOf(String(Math.round(inches[0] / 12)), String(Math.round(inches[1] / 12)))}${nb}ft`;
    }
    return `${rangeOf(mixedFraction(inches[0], parts), mixedFraction(inches[1], parts))}${nb}in`;
  }
  const quarters = Math.round(inches[0] * 4) / 4;
  const feet = Math.floor(quarters / 12 + 1e-9);
  const rest = quarters - feet * 12;
  return rest < 0.1 ? `${feet}${nb}ft` : `${feet}${nb}ft${nb}${mixedFraction(rest, 4)}${nb}in`;
}

/** Feet and inches with real primes, to the quarter inch (eighths under a foot). */
function primes(lengthMm: number): string {
  const inches = fromHeld(lengthMm, 'in');
  if (inches < inchesUpTo) return `${mixedFraction(inches, inches < 12 ? 8 : 4)}″`;
  const quarters = Math.round(inches * 4) / 4;
  const feet = Math.floor(quarters / 12 + 1e-9);
  const rest = quarters - feet * 12;
  return rest < 0.1 ? `${feet}′` : `${feet}′${nb}${mixedFraction(rest, 4)}″`;
}

function metricLength(low: number, high: number, number: Numbers): string {
  if (high < 50) return `${rangeOf(number(low), number(high))}${nb}mm`;
  if (high < 1000) return `${rangeOf(number(low / 10), number(high / 10))}${nb}cm`;
  const digits = low === high ? 2 : 1;
  return `${rangeOf(number(low / 1000, digits), number(high / 1000, digits))}${nb}m`;
}

/** Lighter than this nobody weighs in ounces: a sixteenth. */
const leastOunces = 1 / 16;

/** Pounds, or ounces below one pound. Less than a sixteenth of an ounce is said to be that, since it would round to nothing. */
function customaryMass(
  low: number,
  high: number,
  { number, say }: { readonly number: Numbers; readonly say: Say },
): string {
  if (fromHeld(high, 'lb') >= 1)
    return `${rangeOf(...atPrecision(fromHeld(low, 'lb'), fromHeld(high, 'lb'), number))}${nb}lb`;
  const ounces = [fromHeld(low, 'oz'), fromHeld(high, 'oz')] as const;
  if (ounces[1] > 0 && ounces[1] < leastOunces)
    return say('measure.less-than', { limit: `${mixedFraction(leastOunces, 16)}${nb}oz` });
  const digits = ounces[1] >= 1 ? 1 : 2;
  return `${rangeOf(number(ounces[0], digits), number(ounces[1], digits))}${nb}oz`;
}

/** Whole weeks as weeks where either end is two weeks or more (and not more than three months), days otherwise. */
function duration(low: number, high: number, number: Numbers, say: Say): string {
  const whole = [low, high].every((days) => Math.abs(days / 7 - Math.round(days / 7)) < 1e-6);
  const longest = Math.max(Math.abs(low), Math.abs(high));
  const weeks = whole && longest >= 14 && longest <= 84;
  const [a, b] = weeks ? [low / 7, high / 7] : [low, high];
  return `${rangeOf(number(a), number(b))}${nb}${say(weeks ? 'unit.weeks' : 'unit.days', { count: Math.round(b) })}`;
}

/** `14 h 05 min` */
function hours(value: number, say: Say): string {
  const minutes = Math.round(value * 60);
  return say('measure.hours-minutes', {
    hours: Math.floor(minutes / 60),
    minutes: String(minutes % 60).padStart(2, '0'),
  });
}

function dollars(value: number): string {
  return `$${value.toFixed(2)}`;
}
