/** Real fractions: the ready-made characters where they exist, digits around U+2044 otherwise. */
const readyMade: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
};

/**
 * A number as a whole and a fraction to the nearest 1/`parts`: 1.5 is `1½`, 0.3125 in sixteenths is `5⁄16`.
 * `parts` is a power of two; the fraction is reduced.
 */
export function mixedFraction(value: number, parts: number): string {
  const negative = value < 0;
  const count = Math.round(Math.abs(value) * parts);
  const whole = Math.floor(count / parts);
  let top = count % parts;
  let bottom = parts;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const sign = negative && count > 0 ? '−' : '';
  if (top === 0) return `${sign}${whole}`;
  const ready = readyMade[`${top}/${bottom}`];
  if (ready) return `${sign}${whole > 0 ? whole : ''}${ready}`;
  return `${sign}${whole > 0 ? `${whole}\u00A0` : ''}${top}\u2044${bottom}`;
}
