import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  degreeDayChart,
  type DegreeDayChartOptions,
} from '../../../scripts/drawings/charts/degree-day-chart.ts';
import { monthLabels } from './freeze-cases.ts';
import { boxOf, itemsOutside, pathsOf, textsOf, touchingWords, wordsOf } from './scene-reading.ts';

/** So much a day from one day to another; not of any place. */
const steady = (from: number, to: number, aDay: number): DegreeDayChartOptions['lines'][number]['points'] =>
  Array.from({ length: to - from + 1 }, (_, index) => ({ day: from + index, sum: index * aDay }));

const options: DegreeDayChartOptions = {
  id: 'degree-days',
  widthMm: 115,
  heightMm: 60,
  from: 1,
  to: 365,
  monthLabels,
  lines: [
    { label: 'Base 40\u00a0°F: 4,880', points: steady(60, 304, 20) },
    { label: 'Base 50\u00a0°F: 2,440', points: steady(60, 304, 10) },
    { label: 'Base 60\u00a0°F: 1,220', points: steady(60, 304, 5) },
  ],
  tick: { every: 1000, text: (value) => value.toLocaleString('en') },
  axisLabel: 'Degree days, °F',
  alternative: 'Invented sums.',
};

describe('degree-day chart', () => {
  it('draws each sum at its height, over its days', () => {
    const scene = degreeDayChart(options);
    const height = (value: string): number => textsOf(scene).find(({ text }) => text === value)!.y - 1.05;
    const mmPerSum = (height('0') - height('4,000')) / 4000;
    const [heavy] = pathsOf(scene, { stroke: 'cut', hue: 'green' });
    const numbers = heavy!.commands.flatMap((command) => (command[0] === 'Z' ? [] : [command]));
    expect(numbers[0]![2]).toBeCloseTo(height('0'), 6);
    expect(numbers.at(-1)![2]).toBeCloseTo(height('0') - 4880 * mmPerSum, 6);
    const [jan, dec] = ['Jan', 'Nov'].map((name) => textsOf(scene).find(({ text }) => text === name)!.x);
    const mmPerDay = (dec! - jan!) / (305 + 15 - 16.5);
    expect(numbers.at(-1)![1] - numbers[0]![1]).toBeCloseTo(244 * mmPerDay, 0);
  });

  it('tells three lines apart without colour: heavy, plain, dashed', () => {
    const scene = degreeDayChart(options);
    const [plain, dashed] = pathsOf(scene, { stroke: 'seen' }).map(
      ({ commands }) => commands.filter(([letter]) => letter === 'M').length,
    );
    expect(pathsOf(scene, { stroke: 'cut' })).toHaveLength(1);
    expect(plain).toBe(1);
    expect(dashed).toBeGreaterThan(10);
  });

  it('writes each label at the height at which its line ends', () => {
    const scene = degreeDayChart(options);
    const label = textsOf(scene).find(({ text }) => text.startsWith('Base 40'))!;
    const [heavy] = pathsOf(scene, { stroke: 'cut' }).map(boxOf);
    expect(Math.abs(label.y - 1.05 - heavy!.top)).toBeLessThan(0.5);
  });

  it('starts again in a year that begins within the window', () => {
    const lines = [{ label: 'Since January', points: steady(1, 365, 10) }];
    const scene = degreeDayChart({ ...options, lines, from: 182, to: 546 });
    expect(pathsOf(scene, { stroke: 'cut' })).toHaveLength(2);
  });

  it('leaves out a line that the window does not show', () => {
    const lines = [...options.lines.slice(0, 1), { label: 'Winter', points: steady(1, 40, 1) }];
    const scene = degreeDayChart({ ...options, lines, from: 60, to: 304 });
    expect(wordsOf(scene)).not.toContain('Winter');
    expect(wordsOf(scene)).toContain('Base 40\u00a0°F: 4,880');
  });

  it.each([
    ['no line', []],
    ['four lines', [...options.lines, ...options.lines.slice(0, 1)]],
    ['a season of two years', [{ label: 'Long', points: steady(1, 730, 1) }]],
  ])('refuses %s', (_, lines) => {
    expect(() => degreeDayChart({ ...options, lines })).toThrow(RangeError);
  });

  it.each([
    [
      'all on top of each other',
      { lines: options.lines.map((line) => ({ ...line, points: steady(60, 304, 9) })) },
    ],
    ['nothing adds up', { lines: options.lines.map((line) => ({ ...line, points: steady(60, 304, 0) })) }],
    [
      'long labels in a narrow chart',
      {
        widthMm: 90,
        lines: options.lines.map((line) => ({ ...line, label: `${line.label} by the end of the season` })),
      },
    ],
    [
      'a season from July',
      {
        from: 182,
        to: 546,
        lines: options.lines.map((line) => ({ ...line, points: steady(244, 500, 12) })),
      },
    ],
    ['no words over the axis', { axisLabel: '' }],
  ])('no words touch and nothing sticks out: %s', (_, more) => {
    const scene = degreeDayChart({ ...options, ...more });
    expect(touchingWords(scene)).toEqual([]);
    expect(itemsOutside(scene)).toEqual([]);
  });

  it('nor with any sums', () => {
    const anyLine = fc.record({
      label: fc.constantFrom('Base 40\u00a0°F', 'Base 50\u00a0°F: a longer name', 'B'),
      points: fc
        .tuple(
          fc.integer({ min: 1, max: 300 }),
          fc.integer({ min: 2, max: 360 }),
          fc.integer({ min: 0, max: 40 }),
        )
        .map(([from, length, aDay]) => steady(from, from + length, aDay)),
    });
    fc.assert(
      fc.property(
        fc.array(anyLine, { minLength: 1, maxLength: 3 }),
        fc.constantFrom(90, 115, 175),
        fc.constantFrom(1, 182),
        (lines, widthMm, from) => {
          const scene = degreeDayChart({ ...options, lines, widthMm, from, to: from + 364 });
          expect(touchingWords(scene)).toEqual([]);
          expect(itemsOutside(scene)).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('is the same every time', () => {
    expect(degreeDayChart(options)).toEqual(degreeDayChart(options));
  });
});
