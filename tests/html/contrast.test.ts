import { describe, expect, it } from 'vitest';
import type { ColourName } from '../../scripts/document/design.ts';
import { contrast } from './contrast.ts';
import { design } from './sample-site.ts';

/** Text reaches the enhanced ratio of WCAG 2.1 (1.4.6, AAA); lines and shapes the ratio of 1.4.11. */
const pairs: readonly { on: ColourName; of: ColourName; least: number; use: string }[] = [
  { of: 'ink', on: 'paper', least: 7, use: 'text' },
  { of: 'green', on: 'paper', least: 7, use: 'headings and links' },
  { of: 'clay', on: 'paper', least: 7, use: 'signal words' },
  { of: 'paper', on: 'clay', least: 7, use: 'the word danger' },
  { of: 'ink', on: 'tint', least: 7, use: 'the entry a link led to, words in drawings' },
  { of: 'green', on: 'tint', least: 7, use: 'words in drawings' },
  { of: 'clay', on: 'tint', least: 7, use: 'words in drawings' },
  { of: 'ink', on: 'shade', least: 7, use: 'words in drawings' },
  { of: 'rule', on: 'paper', least: 3, use: 'rules' },
];

describe.each(['light', 'dark'] as const)('on a %s screen', (scheme) => {
  it.each(pairs)('$of on $on, for $use, has a contrast of $least at least', ({ of, on, least }) => {
    const colours = design.colour[scheme];
    expect(contrast(colours[of], colours[on])).toBeGreaterThanOrEqual(least);
  });
});

describe('contrast', () => {
  // The ends of the scale by definition; the grey worked by hand: its luminance is 0.1845, so 1.05 / 0.2345.
  it.each([
    { one: '#000000', other: '#ffffff', ratio: 21 },
    { one: '#777777', other: '#777777', ratio: 1 },
    { one: '#777777', other: '#ffffff', ratio: 4.48 },
  ])('of $one and $other is $ratio', ({ one, other, ratio }) => {
    expect(contrast(one, other)).toBeCloseTo(ratio, 2);
  });
});
