import { readFileSync } from 'node:fs';
import { create } from 'fontkit';
import { describe, expect, it } from 'vitest';
import {
  estimateTextWidthMm,
  overlaps,
  textBox,
  wrapText,
} from '../../../scripts/drawings/charts/text-width.ts';

const face = (name: string): ReturnType<typeof create> =>
  create(readFileSync(`node_modules/source-sans/TTF/SourceSans3-${name}.ttf`));
const faces = { label: face('Regular'), strong: face('Semibold'), large: face('Semibold') };
const sizePt = { label: 9.5, strong: 9.5, large: 11 };

const inkWidthMm = (text: string, style: keyof typeof faces): number =>
  (faces[style].layout(text).advanceWidth / faces[style].unitsPerEm) * sizePt[style] * (25.4 / 72);

describe('estimated width of text', () => {
  const cases = [
    ['a date with its chance', 'Sep 29 · 90 %'],
    ['a crop', 'Onions, transplants'],
    ['wide letters', 'MWMW mwmw %%'],
    ['narrow letters', 'Illi, jill: fit!'],
    ['fractions and primes', '1¼ in (3 cm), 2′ 6″ × 4½'],
    ['capitals', 'START INDOORS'],
    ['Spanish', 'Después de la última helada: sandía, ñame, maíz'],
    ['an unbreakable space', '19\u00a0mm'],
  ] as const;
  it.each(cases)('%s is never wider in the face of the sheets, and not much narrower', (_, text) => {
    for (const style of ['label', 'strong', 'large'] as const) {
      const ink = inkWidthMm(text, style);
      expect(estimateTextWidthMm(text, style)).toBeGreaterThanOrEqual(ink);
      expect(estimateTextWidthMm(text, style)).toBeLessThan(ink * 1.3);
    }
  });

  it('takes a sign it does not know for a wide one', () => {
    expect(estimateTextWidthMm('☃', 'label')).toBeGreaterThan(estimateTextWidthMm('m', 'label') * 0.99);
  });

  it('is nothing for no text', () => {
    expect(estimateTextWidthMm('', 'label')).toBe(0);
  });
});

describe('room of a text', () => {
  const item = { kind: 'text', x: 50, y: 20, text: 'Harvest', style: 'label' } as const;
  it.each([
    ['start', 50],
    ['middle', 50 - estimateTextWidthMm('Harvest', 'label') / 2],
    ['end', 50 - estimateTextWidthMm('Harvest', 'label')],
  ] as const)('anchored at its %s', (anchor, left) => {
    const box = textBox({ ...item, anchor });
    expect(box.left).toBeCloseTo(left, 9);
    expect(box.top).toBeLessThan(20);
    expect(box.bottom).toBeGreaterThan(20);
  });

  it('does not overlap what it only touches', () => {
    const box = textBox({ ...item, anchor: 'start' });
    expect(overlaps(box, { ...box, left: box.right, right: box.right + 5 })).toBe(false);
    expect(overlaps(box, { ...box, left: box.right - 0.1, right: box.right + 5 })).toBe(true);
  });
});

describe('breaking text into lines', () => {
  it.each([
    ['short text', 'Peas', 30, ['Peas']],
    ['text of two lines', 'Start indoors, set out later', 25, ['Start indoors,', 'set out later']],
    ['a word that is too wide', 'a Krautstiele b', 10, ['a', 'Krautstiele', 'b']],
    ['number and unit', 'set of 19\u00a0mm', 14, ['set of', '19\u00a0mm']],
  ] as const)('%s', (_, text, room, expected) => {
    expect(wrapText(text, 'label', room)).toEqual(expected);
  });
});
