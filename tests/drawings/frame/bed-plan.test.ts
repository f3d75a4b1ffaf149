import { describe, expect, test } from 'vitest';
import { bedPlan, plantPlaces, type BedPlanOptions } from '../../../scripts/drawings/bed/bed-plan.ts';
import { crossedTexts } from './ink.ts';
import { exactWords, textsOf, words } from './scenes.ts';

const inch = 25.4;
const options: BedPlanOptions = {
  id: 'bed',
  alternative: 'A bed.',
  insideLengthMm: 72 * inch,
  insideDepthMm: 48 * inch,
  hemisphere: 'north',
  rows: [
    { label: 'Snap pea', distanceFromPolewardMm: 6 * inch, plantSpacingMm: 3 * inch, tall: true },
    { label: 'Carrot', distanceFromPolewardMm: 22 * inch, plantSpacingMm: 2 * inch, tall: false },
    { label: 'Beet', distanceFromPolewardMm: 42 * inch, plantSpacingMm: 4 * inch, tall: false },
  ],
  words: { north: 'N', length: words.length },
};

const circlesOf = (given: BedPlanOptions) => bedPlan(given).items.filter((item) => item.kind === 'circle');

describe('a bed plan', () => {
  test.each(['north', 'south'] as const)('has no line through its words (%s)', async (hemisphere) => {
    expect(await crossedTexts(bedPlan({ ...options, hemisphere }))).toEqual([]);
    expect(await crossedTexts(bedPlan({ ...options, hemisphere, widthMm: 110 }))).toEqual([]);
  });

  test('says the distances from edge to row to row to edge, and the length', () => {
    const exact = bedPlan({ ...options, words: { north: 'N', length: exactWords.length } });
    const said = textsOf(exact).flatMap(({ text }) => (/^\d/.test(text) ? [Number(text) / inch] : []));
    expect(said.map((value) => Math.round(value * 100) / 100).sort((a, b) => a - b)).toEqual([
      6, 6, 16, 20, 72,
    ]);
  });

  test('draws rows and plants to one scale', () => {
    const peas = circlesOf(options).filter(({ fill }) => fill === 'paper');
    const carrots = circlesOf(options).filter(
      ({ fill, y }) => fill === 'ink' && y < bedPlan(options).heightMm / 2,
    );
    const scale = (peas[1]!.x - peas[0]!.x) / (3 * inch);
    expect((carrots[1]!.x - carrots[0]!.x) / (2 * inch)).toBeCloseTo(scale, 9);
    expect((carrots[0]!.y - peas[0]!.y) / (16 * inch)).toBeCloseTo(scale, 9);
  });

  test('has the tall row at the top in the north and at the bottom in the south', () => {
    const tallY = (hemisphere: 'north' | 'south'): number =>
      circlesOf({ ...options, hemisphere }).find(({ fill }) => fill === 'paper')!.y;
    const lowY = (hemisphere: 'north' | 'south'): number =>
      circlesOf({ ...options, hemisphere }).find(({ fill }) => fill === 'ink')!.y;
    expect(tallY('north')).toBeLessThan(lowY('north'));
    expect(tallY('south')).toBeGreaterThan(lowY('south'));
  });
});

describe('places of plants in a row', () => {
  test('stand at their spacing, as far from one end as from the other', () => {
    const places = plantPlaces(1000, 100);
    expect(places).toHaveLength(10);
    expect(places[1]! - places[0]!).toBeCloseTo(100, 9);
    expect(places[0]).toBeCloseTo(1000 - places.at(-1)!, 9);
  });

  test('are thinned evenly to a multiple of the spacing when there are many', () => {
    const places = plantPlaces(3000, 25);
    expect(places.length).toBeLessThanOrEqual(60);
    expect((places[1]! - places[0]!) % 25).toBeCloseTo(0, 9);
    expect(places[0]).toBeCloseTo(3000 - places.at(-1)!, 9);
  });

  test('one plant wider than the bed stands in the middle', () => {
    expect(plantPlaces(500, 900)).toEqual([250]);
  });
});
