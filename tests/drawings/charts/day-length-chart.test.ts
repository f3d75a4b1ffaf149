import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dayLengthChart,
  type DayLengthChartOptions,
} from '../../../scripts/drawings/charts/day-length-chart.ts';
import { textBox } from '../../../scripts/drawings/charts/text-width.ts';
import type { Scene } from '../../../scripts/drawings/scene.ts';
import { dateLabel, monthLabels } from './freeze-cases.ts';
import { itemsOutside, pathsOf, textsOf, touchingWords, wordsOf } from './scene-reading.ts';

/** A plain cosine around 12 hours, as smooth as a year of day lengths; not an astronomical one. */
const points = (swing: number, phase = 0): DayLengthChartOptions['points'] =>
  Array.from({ length: 365 }, (_, index) => ({
    day: index + 1,
    hours: 12 - swing * Math.cos(((index - 10 + phase) / 365) * 2 * Math.PI),
  }));

const bands: DayLengthChartOptions['bands'] = [
  { label: 'Short day, 10 to 12 h', fromHours: 10, toHours: 12, dates: 'from Feb 8' },
  { label: 'Intermediate, 12 to 14 h', fromHours: 12, toHours: 14, dates: 'from Mar 20' },
  { label: 'Long day, 14 h and more', fromHours: 14, toHours: 16, dates: 'from Apr 26' },
];

const crossings = (list: DayLengthChartOptions['points'], hours: number): DayLengthChartOptions['marks'] =>
  list
    .slice(1)
    .filter((point, index) => list[index]!.hours < hours !== point.hours < hours)
    .map(({ day }) => ({ day, hours, label: dateLabel(50, day) }));

const options: DayLengthChartOptions = {
  id: 'day-length',
  widthMm: 115,
  heightMm: 70,
  from: 1,
  to: 365,
  points: points(3.4),
  bands,
  marks: [10, 12, 14].flatMap((hours) => crossings(points(3.4), hours)),
  monthLabels,
  hoursLabel: 'Hours of daylight',
  hourText: (hours) => `${hours}`,
  alternative: 'Invented day lengths.',
};

const marksOf = (scene: Scene): readonly { x: number; y: number }[] =>
  scene.items.filter((item) => item.kind === 'circle').map(({ x, y }) => ({ x, y }));

describe('day-length chart', () => {
  it('puts its marks on the curve', () => {
    const scene = dayLengthChart(options);
    const [curve] = pathsOf(scene, { stroke: 'cut' });
    const line = curve!.commands.flatMap((command) =>
      command[0] === 'M' || command[0] === 'L' ? [command] : [],
    );
    expect(marksOf(scene)).toHaveLength(6);
    for (const mark of marksOf(scene)) {
      const nearest = Math.min(...line.map(([, x, y]) => Math.hypot(x - mark.x, y - mark.y)));
      expect(nearest).toBeLessThan(0.5);
    }
  });

  it('labels the axis in whole hours from the shortest to the longest shown', () => {
    const hours = wordsOf(dayLengthChart(options)).filter((word) => /^\d+$/.test(word));
    expect(hours).toEqual(['8', '9', '10', '11', '12', '13', '14', '15', '16']);
  });

  it('leaves out hours that have no room for their numbers', () => {
    const hours = wordsOf(dayLengthChart({ ...options, heightMm: 45, bands: [] })).filter((word) =>
      /^\d+$/.test(word),
    );
    expect(hours).toEqual(['8', '10', '12', '14', '16']);
  });

  it('wraps the same curve around a year from July', () => {
    const scene = dayLengthChart({ ...options, from: 182, to: 546 });
    const [curve] = pathsOf(scene, { stroke: 'cut' });
    const xs = curve!.commands.flatMap((command) => (command[0] === 'Z' ? [] : [command[1]]));
    expect(xs).toHaveLength(365);
    expect(xs).toEqual([...xs].sort((a, b) => a - b));
  });

  it('keeps the labels of thin bands apart and in order', () => {
    const thin = bands.map((band, index) => ({
      ...band,
      fromHours: 12 + index * 0.2,
      toHours: 12.2 + index * 0.2,
    }));
    const scene = dayLengthChart({ ...options, bands: thin, marks: [] });
    const heights = thin.map(({ dates }) => textsOf(scene).find(({ text }) => text === dates)!.y);
    expect(heights[0]).toBeGreaterThan(heights[1]!);
    expect(heights[1]).toBeGreaterThan(heights[2]!);
    expect(touchingWords(scene)).toEqual([]);
  });

  it('refuses a curve of one point', () => {
    expect(() => dayLengthChart({ ...options, points: [{ day: 1, hours: 12 }] })).toThrow(RangeError);
  });

  it('writes a mark that finds no room in a row above the plot, with a line to it', () => {
    const crowd = Array.from({ length: 12 }, (_, index) => ({
      day: 100 + index,
      hours: 12,
      label: `Label ${index}`,
    }));
    const scene = dayLengthChart({ ...options, marks: crowd });
    for (const { label } of crowd) expect(wordsOf(scene)).toContain(label);
    expect(touchingWords(scene)).toEqual([]);
    expect(itemsOutside(scene)).toEqual([]);
  });

  it.each([
    ['high latitude', 6, 0, 115],
    ['middle latitude', 3.4, 0, 115],
    ['low latitude, no crossing of 14 h', 1.5, 0, 115],
    ['southern hemisphere', 3.4, 182, 115],
    ['across the page', 3.4, 0, 175],
    ['narrow screen', 3.4, 0, 90],
  ])('no words touch and nothing sticks out: %s', (_, swing, phase, widthMm) => {
    const list = points(swing, phase);
    const marks = [10, 12, 13, 14, 15].flatMap((hours) => crossings(list, hours));
    for (const from of [1, 182]) {
      const scene = dayLengthChart({ ...options, widthMm, points: list, marks, from, to: from + 364 });
      expect(touchingWords(scene)).toEqual([]);
      expect(itemsOutside(scene)).toEqual([]);
      expect(marks.filter(({ label }) => !wordsOf(scene).includes(label))).toEqual([]);
    }
  });

  it('nor does it with any marks, and no label lies on the curve', () => {
    const anyMark = fc.integer({ min: 1, max: 365 }).map((day) => ({
      day,
      hours: options.points[day - 1]!.hours,
      label: dateLabel(50, day),
    }));
    fc.assert(
      fc.property(fc.array(anyMark, { maxLength: 8 }), fc.constantFrom(90, 115, 175), (marks, widthMm) => {
        const scene = dayLengthChart({ ...options, widthMm, marks });
        expect(touchingWords(scene)).toEqual([]);
        expect(itemsOutside(scene)).toEqual([]);
        const [curve] = pathsOf(scene, { stroke: 'cut' });
        const boxes = textsOf(scene)
          .filter(({ text }) => text.includes('·'))
          .map(textBox);
        expect(boxes).toHaveLength(marks.length);
        for (const command of curve!.commands) {
          if (command[0] === 'Z') continue;
          const [, x, y] = command;
          expect(
            boxes.some(({ left, right, top, bottom }) => left < x && x < right && top < y && y < bottom),
          ).toBe(false);
        }
      }),
      { numRuns: 60 },
    );
  });
});
