import { describe, expect, it } from 'vitest';
import { levelAround, uprightAround } from '../../../scripts/drawings/charts/clear-rules.ts';
import { curvePieces, placeOfDay, type CurvePoint } from '../../../scripts/drawings/charts/curves.ts';
import { dayScale } from '../../../scripts/drawings/charts/day-scale.ts';

const year = { from: 1, to: 365 };
const southern = { from: 182, to: 546 };
const rising = (from: number, to: number, step: number): readonly CurvePoint[] =>
  Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, index) => ({
    day: from + index * step,
    value: index,
  }));
const ends = (pieces: ReturnType<typeof curvePieces>) =>
  pieces.map((piece) => [piece[0]!.day, piece.at(-1)!.day]);

describe('curve pieces', () => {
  const daily = rising(1, 365, 1);
  const monthly = rising(15, 345, 30);
  it.each([
    ['a year of days', daily, year, 'year', [[1, 366]]],
    ['a year of days from July', daily, southern, 'year', [[182, 547]]],
    ['twelve months, joined over New Year', monthly, year, 'year', [[1, 366]]],
    ['a gap of half a year stays open', rising(60, 180, 10), year, 'year', [[60, 180]]],
    ['the same gap from July', rising(60, 180, 10), southern, 'year', [[425, 545]]],
    ['a season ends where it ends', rising(60, 300, 10), year, 'season', [[60, 300]]],
    [
      'a calendar year of sums seen from July',
      daily,
      southern,
      'season',
      [
        [182, 365],
        [366, 547],
      ],
    ],
    [
      'a season over New Year seen from January',
      rising(300, 400, 10),
      year,
      'season',
      [
        [1, 35],
        [300, 366],
      ],
    ],
    ['one point', rising(60, 60, 10), year, 'season', []],
    ['no point', [], year, 'year', []],
  ] as const)('%s', (_, points, window, of, expected) => {
    expect(ends(curvePieces(points, window, { of, joinDays: 45 }))).toEqual(expected);
  });

  it('interpolates where the window cuts', () => {
    const points = [
      { day: 176, value: 10 },
      { day: 188, value: 22 },
    ];
    const [piece] = curvePieces(points, southern, { of: 'season', joinDays: 45 });
    expect(piece![0]).toEqual({ day: 182, value: 16 });
  });

  it('refuses a season of more than a year', () => {
    expect(() => curvePieces(rising(1, 401, 10), year, { of: 'season', joinDays: 45 })).toThrow(RangeError);
  });

  it('places a part of the last day too', () => {
    const scale = dayScale({ ...year, leftMm: 0, widthMm: 365 });
    expect(placeOfDay(scale, 365.5)).toBe(364.5);
    expect(placeOfDay(scale, 367)).toBe(1);
    expect(placeOfDay(dayScale({ from: 60, to: 240, leftMm: 0, widthMm: 90 }), 300)).toBeUndefined();
  });
});

describe('rules around boxes', () => {
  const boxes = [
    { left: 10, right: 20, top: 5, bottom: 8 },
    { left: 15, right: 30, top: 12, bottom: 25 },
  ];
  it.each([
    ['beside all', 5, [[0, 20]]],
    [
      'through one',
      12,
      [
        [0, 5],
        [8, 20],
      ],
    ],
    ['through one that reaches over the foot', 25, [[0, 12]]],
    [
      'through two',
      18,
      [
        [0, 5],
        [8, 12],
      ],
    ],
  ])('an upright line %s', (_, x, expected) => {
    expect(uprightAround(x, 0, 20, boxes).map((line) => line.map(({ y }) => y))).toEqual(expected);
  });

  it('a level line leaves a little more than the box', () => {
    expect(levelAround(6, 0, 40, boxes).map((line) => line.map(({ x }) => x))).toEqual([
      [0, 9.5],
      [20.5, 40],
    ]);
  });
});
