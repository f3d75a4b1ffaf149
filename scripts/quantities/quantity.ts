import { toHeld, units, type Dimension } from './units.ts';

/**
 * A quantity as a record gives it: a low and a high end in the held unit of its dimension (equal for a
 * single value), and the words of the record. `1/4 to 1/2 in` is low 6.35, high 12.7.
 */
export interface Quantity<D extends Dimension = Dimension> {
  readonly dimension: D;
  readonly low: number;
  readonly high: number;
  readonly written: string;
}

export type QuantityFault =
  | { readonly fault: 'no-unit'; readonly number: string }
  | { readonly fault: 'unknown-unit'; readonly unit: string }
  | { readonly fault: 'other-dimension'; readonly unit: string; readonly dimension: Dimension }
  | { readonly fault: 'backwards' }
  | { readonly fault: 'unreadable' };

const number = String.raw`-?(?:\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?)`;
const pattern = new RegExp(
  `^\\s*(${number})(?:\\s*(?:-|–|to)\\s*(${number}))?\\s*([A-Za-z][A-Za-z0-9]*)?\\s*$`,
);

/** What is longer is no quantity; the limit also keeps the pattern from being tried on whole pages. */
const longestQuantity = 100;

/**
 * Reads a quantity or a range of one dimension: `4 in`, `1/2 in`, `1 1/2 in`, `2-3 in`, `65 F`, `-4 weeks`,
 * `-4 to -2 weeks`. A bare number is refused, since its unit cannot be known, and so is text of
 * more than 100 characters.
 */
export function parseQuantity<D extends Dimension>(text: string, dimension: D): Quantity<D> | QuantityFault {
  if (text.length > longestQuantity) return { fault: 'unreadable' };
  const match = pattern.exec(plainDigits(text));
  if (!match) return { fault: 'unreadable' };
  const [, first, second, unit] = match;
  if (unit === undefined) return { fault: 'no-unit', number: text.trim() };
  const definition = Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (!definition) return { fault: 'unknown-unit', unit };
  if (definition.dimension !== dimension) {
    return { fault: 'other-dimension', unit, dimension: definition.dimension };
  }
  const low = toHeld(parseNumber(first!), unit);
  const high = second === undefined ? low : toHeld(parseNumber(second), unit);
  if (!Number.isFinite(low) || !Number.isFinite(high)) return { fault: 'unreadable' };
  if (high < low) return { fault: 'backwards' };
  return { dimension, low, high, written: text.trim() };
}

const fractionCharacters: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** Real minus signs, no-break spaces and fraction characters as the digits and signs they stand for. */
function plainDigits(text: string): string {
  return text
    .replaceAll('\u2212', '-')
    .replaceAll('\u00A0', ' ')
    .replace(
      /(\d?)([½⅓⅔¼¾⅛⅜⅝⅞])/g,
      (_, whole: string, fraction: string) =>
        `${whole}${whole === '' ? '' : ' '}${fractionCharacters[fraction]!}`,
    );
}

/** Reads `3`, `0.5`, `1/2` and `1 1/2`, with an optional minus sign. */
function parseNumber(text: string): number {
  const negative = text.startsWith('-');
  const parts = (negative ? text.slice(1) : text).split(' ');
  const value = parts.reduce((sum, part) => {
    const [top, bottom] = part.split('/');
    return sum + (bottom === undefined ? Number(top) : Number(top) / Number(bottom));
  }, 0);
  return negative ? -value : value;
}

/** The middle of a range; the value itself when it is single. */
export function middle(quantity: Quantity): number {
  return (quantity.low + quantity.high) / 2;
}
