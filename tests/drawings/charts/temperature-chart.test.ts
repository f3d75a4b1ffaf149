import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  temperatureChart,
  type TemperatureChartOptions,
} from '../../../scripts/drawings/charts/temperature-chart.ts';
import { textBox } from '../../../scripts/drawings/charts/text-width.ts';
import type { Scene } from '../../../scripts/drawings/scene.ts';
import { dateLabel, monthLabels } from './freeze-cases.ts';
import {
  boxOf,
  itemsOutside,
  pathsOf,
  textsOf,
  touchingWords,
  wordsOf,
  type PathItem,
} from './scene-reading.ts';

/** Plain cosines, as smooth as an average year; not of any place. */
const wave = (mean: number, swing: number, coldestDay: number) => (day: number) =>
  mean - swing * Math.cos(((day - coldestDay) / 365) * 2 * Math.PI);
const days = Array.from({ length: 365 }, (_, index) => index + 1);
const points = (at: (day: number) => number) => days.map((day) => ({ day, value: at(day) }));

interface Place {
  readonly mean: number;
  readonly swing: number;
  readonly coldestDay: number;
}
const middleLatitude: Place = { mean: 52, swing: 24, coldestDay: 20 };

const chartOf = (
  { mean, swing, coldestDay }: Place,
  more: Partial<TemperatureChartOptions> = {},
): TemperatureChartOptions => {
  const shallow = wave(mean + 3, swing * 0.9, coldestDay + 8);
  const deep = wave(mean + 3, swing * 0.65, coldestDay + 25);
  const marks = days
    .filter((day) => shallow(day) < 50 !== shallow(day + 1) < 50)
    .map((day) => ({ day, value: shallow(day), label: dateLabel(50, day) }));
  return {
    id: 'temperature',
    widthMm: 115,
    heightMm: 75,
    from: 1,
    to: 365,
    monthLabels,
    band: days.map((day) => ({
      day,
      low: wave(mean - 10, swing, coldestDay)(day),
      high: wave(mean + 10, swing, coldestDay)(day),
    })),
    bandLabels: { high: 'Average daily high', low: 'Average daily low' },
    lines: [
      { label: 'Soil at 2 in', style: 'heavy', points: points(shallow) },
      { label: 'Soil at 8 in', style: 'seen', points: points(deep) },
    ],
    marks,
    levels: [
      { value: 32, label: 'Freezing, 32\u00a0°F' },
      { value: 50, label: 'Beans can be sown, 50\u00a0°F' },
    ],
    tick: { every: 10, text: (value) => `${value}` },
    axisLabel: 'Temperature, °F',
    alternative: 'Invented temperatures.',
    ...more,
  };
};

const pointsOf = ({ commands }: PathItem): readonly { x: number; y: number }[] =>
  commands.flatMap((command) =>
    command[0] === 'M' || command[0] === 'L' ? [{ x: command[1], y: command[2] }] : [],
  );

/** Millimetres of the page for one degree, and the height of 0, read off two numbers of the axis. */
const axisOf = (scene: Scene) => {
  const height = (value: string): number => textsOf(scene).find(({ text }) => text === value)!.y - 1.05;
  const mmPerDegree = (height('20') - height('80')) / 60;
  return { y: (value: number) => height('20') - (value - 20) * mmPerDegree };
};

const curveItems = (scene: Scene): readonly PathItem[] => [
  ...pathsOf(scene, { stroke: 'cut' }),
  ...pathsOf(scene, { stroke: 'seen' }),
];

/** Names whose box a drawn curve runs through, the edges of the band included. */
const crossedNames = (scene: Scene, names: readonly string[]): readonly string[] => {
  const band = pathsOf(scene, { fill: 'tint' });
  const onCurves = [...curveItems(scene), ...band].flatMap(pointsOf);
  return textsOf(scene)
    .filter(({ text }) => names.includes(text))
    .filter((item) => {
      const { left, right, top, bottom } = textBox(item);
      return onCurves.some(({ x, y }) => left < x && x < right && top < y && y < bottom);
    })
    .map(({ text }) => text);
};

const inPlotNames = ({ lines, marks, band, bandLabels }: TemperatureChartOptions): readonly string[] => [
  ...lines.map(({ label }) => label),
  ...marks.map(({ label }) => label),
  ...(bandLabels && band.length > 0 ? [bandLabels.high, bandLabels.low] : []),
];

const expectSound = (options: TemperatureChartOptions): void => {
  const scene = temperatureChart(options);
  expect(touchingWords(scene)).toEqual([]);
  expect(itemsOutside(scene)).toEqual([]);
  const names = inPlotNames(options);
  expect(names.filter((name) => !wordsOf(scene).includes(name))).toEqual([]);
  expect(crossedNames(scene, names)).toEqual([]);
};

describe('temperature chart', () => {
  it('draws band and lines at their values', () => {
    const options = chartOf(middleLatitude);
    const scene = temperatureChart(options);
    const { y } = axisOf(scene);
    const [heavy] = pathsOf(scene, { stroke: 'cut', hue: 'green' }).map(pointsOf);
    const lowest = Math.max(...heavy!.map((point) => point.y));
    expect(lowest).toBeCloseTo(y(55 - 24 * 0.9), 1);
    const [band] = pathsOf(scene, { fill: 'tint' }).map(pointsOf);
    expect(Math.min(...band!.map((point) => point.y))).toBeCloseTo(y(86), 1);
    expect(Math.max(...band!.map((point) => point.y))).toBeCloseTo(y(18), 1);
  });

  it('draws its curves from edge to edge of the year, July to June too', () => {
    for (const from of [1, 182]) {
      const scene = temperatureChart(chartOf(middleLatitude, { from, to: from + 364 }));
      const [heavy] = pathsOf(scene, { stroke: 'cut', hue: 'green' }).map(pointsOf);
      const [band] = pathsOf(scene, { fill: 'tint' }).map(boxOf);
      expect(heavy![0]!.x).toBeCloseTo(band!.left, 6);
      expect(heavy!.at(-1)!.x).toBeCloseTo(band!.right, 6);
      expect(heavy![0]!.y).toBeCloseTo(heavy!.at(-1)!.y, 6);
    }
  });

  it('puts its marks on their curve and a level through them', () => {
    const scene = temperatureChart(chartOf(middleLatitude));
    const circles = scene.items
      .filter((item) => item.kind === 'circle')
      .filter(({ fill }) => fill === 'paper');
    expect(circles).toHaveLength(2);
    const [heavy] = pathsOf(scene, { stroke: 'cut', hue: 'green' }).map(pointsOf);
    for (const mark of circles) {
      expect(Math.min(...heavy!.map(({ x, y }) => Math.hypot(x - mark.x, y - mark.y)))).toBeLessThan(0.05);
      expect(Math.abs(mark.y - axisOf(scene).y(50))).toBeLessThan(0.3);
    }
  });

  it('writes a level at the height of its line', () => {
    const scene = temperatureChart(chartOf(middleLatitude, { marks: [] }));
    const label = textsOf(scene).find(({ text }) => text.startsWith('Freezing'))!;
    expect(label.y - 1.05).toBeCloseTo(axisOf(scene).y(32), 6);
    const levels = pathsOf(scene, { stroke: 'hidden' }).flatMap(pointsOf);
    expect(levels.some(({ y }) => Math.abs(y - axisOf(scene).y(32)) < 1e-6)).toBe(true);
  });

  it('makes room for a level that no temperature reaches', () => {
    const levels = [{ value: 114, label: 'Too hot' }];
    const scene = temperatureChart(chartOf(middleLatitude, { levels }));
    expect(wordsOf(scene)).toContain('120');
    expect(itemsOutside(scene)).toEqual([]);
  });

  it('draws the dashed line in dashes heavier than those of a level', () => {
    const line = { label: 'Under cover', style: 'dashed' as const, points: points(wave(55, 20, 20)) };
    const scene = temperatureChart(chartOf(middleLatitude, { lines: [line] }));
    const [dashed] = pathsOf(scene, { stroke: 'seen' });
    const strokes = dashed!.commands.filter(([letter]) => letter === 'M').length;
    expect(strokes).toBeGreaterThan(15);
    const onLine = dashed!.commands.reduce((sum, command, index) => {
      const before = dashed!.commands[index - 1];
      if (command[0] !== 'L' || !before || before[0] === 'Z') return sum;
      return sum + Math.hypot(command[1] - before[1], command[2] - before[2]);
    }, 0);
    expect(onLine / strokes).toBeCloseTo(2.4, 0);
    const { left, right } = boxOf(dashed!);
    expect(strokes * (2.4 + 1.5)).toBeGreaterThan(right - left - 4);
  });

  it('leaves a gap open where nothing is known', () => {
    const line = {
      label: 'Summer only',
      style: 'heavy' as const,
      points: points(wave(55, 20, 20)).slice(120, 270),
    };
    const options = chartOf(middleLatitude, { lines: [line], marks: [] });
    const [heavy] = pathsOf(temperatureChart(options), { stroke: 'cut', hue: 'green' }).map(boxOf);
    expect(heavy!.right - heavy!.left).toBeLessThan(45);
  });

  it.each([
    ['neither band nor line', { band: [], lines: [] }],
    ['a tick of nothing', { tick: { every: 0, text: String } }],
    ['a tick far too small', { tick: { every: 0.001, text: String } }],
  ])('refuses %s', (_, more) => {
    expect(() => temperatureChart(chartOf(middleLatitude, more))).toThrow(RangeError);
  });

  it('writes names that find no room in rows above the plot', () => {
    const marks = Array.from({ length: 24 }, (_, index) => ({
      day: 180 + index,
      value: 60,
      label: `A label that is long, ${index}`,
    }));
    const scene = temperatureChart(chartOf(middleLatitude, { marks, heightMm: 40 }));
    expect(marks.filter(({ label }) => !wordsOf(scene).includes(label))).toEqual([]);
    expect(touchingWords(scene)).toEqual([]);
    expect(itemsOutside(scene)).toEqual([]);
  });

  it.each([
    ['middle latitude', middleLatitude, {}],
    ['July to June', { ...middleLatitude, coldestDay: 202 }, { from: 182, to: 546 }],
    ['July to June in the north', middleLatitude, { from: 182, to: 546 }],
    ['across the page', middleLatitude, { widthMm: 175, heightMm: 90 }],
    ['narrow and low', middleLatitude, { widthMm: 90, heightMm: 50 }],
    ['tropical, hardly any seasons', { ...middleLatitude, mean: 78, swing: 3 }, {}],
    ['subarctic, below zero', { ...middleLatitude, mean: 20, swing: 42 }, {}],
    ['no band', middleLatitude, { band: [] }],
    ['no words over the axis, no levels', middleLatitude, { axisLabel: '', levels: [] }],
    [
      'levels close together',
      middleLatitude,
      {
        levels: [49, 50, 51].map((value) => ({ value, label: `At ${value}\u00a0°F something begins` })),
      },
    ],
  ] as const)('no words touch, nothing sticks out, no name lies on a curve: %s', (_, place, more) => {
    expectSound(chartOf(place, more));
  });

  it('nor in any place, at any width, in any half-year', () => {
    const anyPlace = fc.record({
      mean: fc.integer({ min: 10, max: 85 }),
      swing: fc.integer({ min: 0, max: 45 }),
      coldestDay: fc.integer({ min: 1, max: 365 }),
    });
    fc.assert(
      fc.property(
        anyPlace,
        fc.constantFrom(90, 115, 175),
        fc.constantFrom(1, 182),
        (place, widthMm, from) => {
          expectSound(chartOf(place, { widthMm, from, to: from + 364 }));
        },
      ),
      { numRuns: 25 },
    );
  });

  it('is the same every time', () => {
    expect(temperatureChart(chartOf(middleLatitude))).toEqual(temperatureChart(chartOf(middleLatitude)));
  });
});
