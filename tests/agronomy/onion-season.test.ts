import { describe, expect, test } from 'vitest';
import { onionSeason } from '../../scripts/agronomy/onion-season.ts';
import type { PlantingWindows } from '../../scripts/agronomy/windows.ts';
import { none, type DateRangeFinding } from '../../scripts/findings/finding.ts';
import { cropLike, q } from './crop.ts';
import { airYear, windowOf, type Swing } from './years.ts';

const sources = ['a-source'];
const onion = cropLike({
  id: 'onion',
  maturity: { days: q('90 to 120 days', 'duration'), from: 'planting-out', sources },
  dayLength: [
    {
      class: 'short-day',
      bulbing: q('10 to 12 hours', 'day-length'),
      latitudes: q('25 to 35 deg', 'angle'),
      sources,
    },
    {
      class: 'long-day',
      bulbing: q('14 to 16 hours', 'day-length'),
      latitudes: q('37 to 55 deg', 'angle'),
      sources,
    },
  ],
  figures: [{ id: 'curing', duration: q('2 to 4 weeks', 'duration'), sources }],
});
const north: Swing = { meanF: 44, halfRangeF: 29 };
const gulf: Swing = { meanF: 67, halfRangeF: 16 };

function planted(from: number, to: number, changes: Partial<PlantingWindows> = {}): PlantingWindows {
  return {
    method: 'sets',
    season: 'spring',
    plant: windowOf(from, to),
    harvest: windowOf(from + 90, to + 120),
    edges: { opens: 'offset', closes: 'offset' },
    ...changes,
  };
}
const dates = ({ value }: DateRangeFinding): { from: number; to: number } => {
  if (value.kind === 'none') throw new TypeError(value.reason);
  return value;
};
const seasonOf = (planting: PlantingWindows, where: 'north' | 'gulf' = 'north') =>
  onionSeason(onion, {
    dayLengthClass: where === 'north' ? 'long-day' : 'short-day',
    planting,
    place: { latitudeDeg: where === 'north' ? 45 : 30, year: 2026 },
    air: airYear(where === 'north' ? north : gulf),
  });

describe('a window of several weeks', () => {
  const [whole, first, last] = [
    [103, 120],
    [103, 103],
    [120, 120],
  ].map(([from, to]) => seasonOf(planted(from!, to!))!) as [
    NonNullable<ReturnType<typeof seasonOf>>,
    NonNullable<ReturnType<typeof seasonOf>>,
    NonNullable<ReturnType<typeof seasonOf>>,
  ];
  test('spans the dates of the first and of the last planting', () => {
    for (const name of ['bulbing', 'harvest', 'curing'] as const)
      expect(dates(whole[name])).toMatchObject({ from: dates(first[name]).from, to: dates(last[name]).to });
  });
  test('tells the leaves of both, and the first has no fewer', () => {
    expect(whole.leavesFirst.value).toEqual(first.leavesFirst.value);
    expect(whole.leavesLast.value).toEqual(last.leavesLast.value);
    const most = ({ value }: typeof whole.leavesFirst): number =>
      value.kind === 'count-range' ? value.high : value.kind === 'count' ? value.value : NaN;
    expect(most(whole.leavesFirst)).toBeGreaterThan(most(whole.leavesLast));
  });
  test('long-day sets of April start bulbs in June and are down from mid-July through August', () => {
    expect(dates(whole.bulbing).from).toBeGreaterThanOrEqual(152);
    expect(dates(whole.bulbing).to).toBeLessThanOrEqual(190);
    expect(dates(whole.harvest).from).toBeGreaterThanOrEqual(190);
    expect(dates(whole.harvest).to).toBeLessThanOrEqual(245);
  });
  test('and no size small is told of those that were planted first', () => {
    expect(whole.sizeFirst.value).not.toMatchObject({ value: expect.stringContaining('small') as string });
  });
});

test('seed sown in fall on the Gulf starts bulbs as the days lengthen, and is told in the next year', () => {
  const season = seasonOf(planted(276, 311, { method: 'direct-sow', season: 'overwinter' }), 'gulf')!;
  const [bulbing, harvest] = [dates(season.bulbing), dates(season.harvest)];
  expect(bulbing.from).toBeGreaterThan(365 + 30);
  expect(bulbing.to).toBeLessThan(365 + 90);
  expect(harvest.from).toBeGreaterThan(bulbing.to);
  expect(dates(season.curing).to).toBe(harvest.to + 28);
});

test('a window without dates has no season', () => {
  const plant = { ...windowOf(1, 2), value: none('season-too-short') };
  expect(seasonOf(planted(1, 2, { plant }))).toBeUndefined();
});
