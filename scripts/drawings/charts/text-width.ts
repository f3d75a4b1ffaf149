/**
 * Estimates of how much room words take in a chart, so that geometry can be worked out without opening a font.
 * The estimate errs on the wide side: labels that do not touch here do not touch on paper.
 */
import { textSizeMm, type TextStyle } from '../path.ts';
import type { SceneItem } from '../scene.ts';

export type { TextStyle };
export type TextItem = Extract<SceneItem, { kind: 'text' }>;

/** A rectangle in millimetres of the scene. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * Width of one line of text in millimetres: 0 for an empty string. Letters with accents count as the bare letter, and
 * signs that the table does not list count as the widest letter.
 */
export function estimateTextWidthMm(text: string, style: TextStyle): number {
  const bare = text.normalize('NFD').replace(/\p{Mark}/gu, '');
  let thousandths = 0;
  for (const sign of bare) thousandths += thousandthsOfEm.get(sign) ?? widest;
  return (thousandths / 1000) * textSizeMm[style] * safety;
}

/** The room a text item takes, ascenders and descenders included. */
export function textBox({ x, y, text, anchor, style }: TextItem): Box {
  const width = estimateTextWidthMm(text, style);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return {
    left,
    right: left + width,
    top: y - 0.75 * textSizeMm[style],
    bottom: y + 0.25 * textSizeMm[style],
  };
}

/** Two boxes share some area; boxes that only touch do not overlap. */
export function overlaps(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/**
 * Breaks text at its spaces into lines no wider than `maximumMm`, as few as possible. A single word that is wider
 * stays whole on a line of its own. Spaces that do not break (between number and unit) hold.
 */
export function wrapText(text: string, style: TextStyle, maximumMm: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    const joined = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && estimateTextWidthMm(joined, style) <= maximumMm)
      lines[lines.length - 1] = joined;
    else lines.push(word);
  }
  return lines;
}

/** Distance between the baselines of two lines of a label: 12.5 pt, the leading of small text. */
export const lineMm = 4.4;

/** How far under the middle of a row the baseline stands, for a text that looks centred in the row. */
export const baselineDropMm = 1.05;

/** Covers hinting and small differences between one reader's font and another's. */
const safety = 1.05;
const widest = 845;

/**
 * Advance widths in thousandths of an em, rounded up to the next class. Measured in the semibold of the text face
 * with tabular figures, which is wider than the regular.
 */
const classes: readonly (readonly [number, string])[] = [
  [205, ' \u00a0\u202f\u2009'],
  [285, "iIjl.,:;·'’‘!|′"],
  [330, 'f()[]-‐‑'],
  [375, 'rt°/*'],
  [435, 'sz“”'],
  [485, 'cvy"″–'],
  [515, 'JLFYaxek0123456789+−×=<>≤≥?_'],
  [560, 'CEgSTVXZBhnpqdbou#$€'],
  [600, 'KPRß'],
  [675, 'ADGHNOQU&'],
  [750, 'Mw'],
  [845, 'Wm%½¼¾⅓⅔⅛⅜⅝⅞—'],
];
const thousandthsOfEm: ReadonlyMap<string, number> = new Map(
  classes.flatMap(([width, signs]) => Array.from(signs).map((sign) => [sign, width] as const)),
);
