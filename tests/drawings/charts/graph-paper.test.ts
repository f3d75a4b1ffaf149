import { describe, expect, test } from 'vitest';
import { graphPaper, tickDistance } from '../../../scripts/drawings/charts/graph-paper.ts';

const options = {
  id: 'graph',
  widthMm: 168,
  heightMm: 104,
  days: 10,
  dayLabel: 'Day',
  axisLabel: 'Temperature (°F)',
  lowest: 20,
  highest: 90,
  every: 10,
  tickText: (value: number) => String(value),
  lineLabels: ['inside', 'outside', 'in the soil'],
  alternative: 'A graph to fill in.',
};

describe('a graph to fill in', () => {
  const scene = graphPaper(options);
  const texts = scene.items.flatMap((item) => (item.kind === 'text' ? [item] : []));

  test('names every value and every day, the words of the axes, and each line', () => {
    expect(texts.map(({ text }) => text)).toEqual([
      'Temperature (°F)',
      'inside',
      'outside',
      'in the soil',
      ...['20', '30', '40', '50', '60', '70', '80', '90'],
      ...['1', '2', '3', '4', '5', '6', '7', '8', '9', '10'],
      'Day',
    ]);
  });

  test('has equal steps between values, and days from left to right', () => {
    const ticks = texts.slice(4, 12).map(({ y }) => y);
    const steps = ticks.slice(1).map((y, index) => ticks[index]! - y);
    steps.forEach((step) => {
      expect(step).toBeCloseTo(steps[0]!, 6);
    });
    const days = texts.slice(12, 22).map(({ x }) => x);
    expect(days).toEqual([...days].sort((a, b) => a - b));
  });

  test('keeps everything on its sheet', () => {
    const points = scene.items.flatMap((item) =>
      item.kind === 'path'
        ? item.commands.flatMap((command) => (command[0] === 'M' || command[0] === 'L' ? [command] : []))
        : [],
    );
    expect(points.every(([, x, y]) => x >= 0 && x <= 168 && y >= 0 && y <= 104)).toBe(true);
    expect(texts.every(({ x, y }) => x >= 0 && x <= 168 && y > 0 && y <= 104)).toBe(true);
  });

  test('draws each line in another way', () => {
    const samples = scene.items
      .filter((item) => item.kind === 'path' && item.commands.length === 2 && item.stroke !== 'thin')
      .map((item) => (item.kind === 'path' ? item.stroke : undefined));
    expect(samples.slice(0, 3)).toEqual(['seen', 'hidden', 'cut']);
  });
});

test.each([
  ['one day', { days: 1 }],
  ['no height', { highest: 20 }],
  ['no step', { every: 0 }],
])('%s is no graph', (_, change) => {
  expect(() => graphPaper({ ...options, ...change })).toThrow(RangeError);
});

test.each([
  ['20 to 90 °F', 20, 90, 10],
  ['-5 to 32 °C', -5, 32, 10],
  ['0 to 60 in', 0, 60, 10],
  ['0 to 152 cm', 0, 152, 50],
  ['0 to 1', 0, 1, 0.2],
])('%s is named in steps of 1, 2 or 5', (_, low, high, step) => {
  expect(tickDistance(low, high, 7)).toBeCloseTo(step, 10);
});
