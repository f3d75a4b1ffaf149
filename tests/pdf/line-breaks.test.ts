import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineStarts, type LastLine } from '../../scripts/pdf/line-breaks.ts';

/** Words of so many points with spaces of 10 between them. */
const widths = (bare: readonly number[]): { full: readonly number[]; bare: readonly number[] } => ({
  full: bare.map((width) => width + 10),
  bare,
});

/** The words of each line. */
function linesOf(bare: readonly number[], width: number, lastLine: LastLine = 'running'): number[][] {
  const starts = lineStarts(widths(bare), width, lastLine);
  return starts.map((start, index) => bare.slice(start, starts[index + 1]));
}

const lineWidth = (words: readonly number[]): number => words.reduce((sum, word) => sum + word + 10, -10);

describe('line breaks', () => {
  const cases: readonly {
    name: string;
    words: number[];
    width: number;
    lastLine?: LastLine;
    expected: number[][];
  }[] = [
    {
      name: 'leave one line alone',
      words: [20, 20],
      width: 100,
      expected: [[20, 20]],
    },
    {
      name: 'take a word down where that evens the edge',
      words: [60, 30, 50, 90],
      width: 100,
      expected: [[60], [30, 50], [90]],
    },
    {
      name: 'leave no short word alone at the end',
      words: [40, 20, 20, 10],
      width: 100,
      expected: [
        [40, 20],
        [20, 10],
      ],
    },
    {
      name: 'make the lines of a heading about equal',
      words: [30, 30, 30, 30],
      width: 120,
      lastLine: 'heading',
      expected: [
        [30, 30],
        [30, 30],
      ],
    },
    {
      name: 'fill the lines of running text first',
      words: [30, 30, 30, 60],
      width: 110,
      expected: [[30, 30, 30], [60]],
    },
    {
      name: 'give a word wider than the measure a line of its own',
      words: [20, 150, 20],
      width: 100,
      expected: [[20], [150], [20]],
    },
  ];
  it.each(cases)('$name', ({ words, width, lastLine, expected }) => {
    expect(linesOf(words, width, lastLine)).toEqual(expected);
  });

  it('do not divide a compound where another break is as good', () => {
    // The second unit has no space after it: the third is the rest of its word. Both ways leave about a fifth free.
    expect(lineStarts({ full: [80, 3, 40], bare: [75, 3, 40] }, 100, 'running')).toEqual([0, 1]);
    expect(lineStarts({ full: [80, 3, 40], bare: [75, 2, 40] }, 100, 'running')).toEqual([0, 2]);
  });

  const arbitraryWords = fc.array(fc.integer({ min: 5, max: 80 }), { minLength: 1, maxLength: 30 });

  it('make as few lines as filling each of them does', () => {
    fc.assert(
      fc.property(arbitraryWords, fc.constantFrom<LastLine>('running', 'heading'), (words, lastLine) => {
        const lines = linesOf(words, 150, lastLine);
        expect(lines.flat()).toEqual(words);
        for (const line of lines) expect(lineWidth(line)).toBeLessThanOrEqual(150);
        expect(lines.length).toBe(greedyLines(words, 150));
      }),
    );
  });

  it('have a right edge as even as the best of all ways', () => {
    const few = fc.array(fc.integer({ min: 10, max: 70 }), { minLength: 2, maxLength: 9 });
    const unevenness = (lines: readonly (readonly number[])[]): number =>
      lines.reduce((sum, line) => sum + (1 - lineWidth(line) / 120) ** 2, 0);
    fc.assert(
      fc.property(few, (words) => {
        const lines = linesOf(words, 120, 'heading');
        const others = allWays(words, 120).filter((way) => way.length === lines.length);
        if (lines.length > 1) expect(unevenness(lines)).toBeCloseTo(Math.min(...others.map(unevenness)), 9);
      }),
    );
  });
});

function greedyLines(words: readonly number[], width: number): number {
  let lines = 1;
  let used = -10;
  for (const word of words) {
    if (used + 10 + word > width) [lines, used] = [lines + 1, -10];
    used += 10 + word;
  }
  return lines;
}

/** Every way to break the words into lines that fit. */
function allWays(words: readonly number[], width: number): number[][][] {
  if (words.length === 0) return [[]];
  return words.flatMap((_, index) => {
    const first = words.slice(0, index + 1);
    if (lineWidth(first) > width) return [];
    return allWays(words.slice(index + 1), width).map((rest) => [[...first], ...rest]);
  });
}
