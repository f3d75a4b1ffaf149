import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { onionPlanting, type OnionPlantingOptions } from '../../../scripts/drawings/charts/onion-planting.ts';
import type { Scene } from '../../../scripts/drawings/scene.ts';
import { boxOf, itemsOutside, pathsOf, textsOf, touchingWords } from './scene-reading.ts';

const options: OnionPlantingOptions = {
  id: 'onions',
  widthMm: 115,
  transplant: {
    caption: 'Transplants',
    depthMm: 25,
    depthLabel: '1 in (2.5 cm)',
    spacingMm: 100,
    spacingLabel: '4 in (10 cm) apart',
    thicknessMm: 7,
  },
  set: {
    caption: 'Sets, tip up',
    depthMm: 30,
    depthLabel: '1¼ in (3 cm)',
    spacingMm: 75,
    spacingLabel: '3 in (7.5 cm) apart',
    thicknessMm: 19,
  },
  alternative: 'Two transplants and two sets in soil, drawn from the side.',
};

/** Lengths of the dimension lines, which are the thin paths of one straight line. */
function measures(scene: Scene): readonly { x: number; y: number }[] {
  return pathsOf(scene, { stroke: 'thin', hue: 'ink' }).flatMap(({ commands }) => {
    const [from, to] = commands;
    if (commands.length !== 2 || from?.[0] !== 'M' || to?.[0] !== 'L') return [];
    return [{ x: Math.abs(to[1] - from[1]), y: Math.abs(to[2] - from[2]) }];
  });
}

describe('how onions are planted', () => {
  it.each([115, 175, 56])('keeps depth and spacing at one scale, %d mm wide', (widthMm) => {
    const scene = onionPlanting({ ...options, widthMm });
    const depths = measures(scene)
      .filter(({ x, y }) => x === 0 && y > 0)
      .map(({ y }) => y);
    const spacings = measures(scene)
      .filter(({ x, y }) => y === 0 && x > 12)
      .map(({ x }) => x);
    expect(depths).toHaveLength(2);
    expect(spacings).toHaveLength(2);
    const scale = spacings[0]! / 100;
    expect(spacings[1]! / scale).toBeCloseTo(75, 6);
    expect(depths[0]! / scale).toBeCloseTo(25, 6);
    expect(depths[1]! / scale).toBeCloseTo(30, 6);
  });

  it('covers a set with soil up to its tip', () => {
    const scene = onionPlanting(options);
    const surface = boxOf(pathsOf(scene, { stroke: 'cut' })[1]!).bottom;
    const bulbs = pathsOf(scene, { fill: 'paper', stroke: 'seen' }).slice(-2).map(boxOf);
    for (const bulb of bulbs) expect(bulb.top).toBeGreaterThan(surface);
  });

  it('uses the three weights: cut soil, seen plants, thin measures', () => {
    const scene = onionPlanting(options);
    expect(pathsOf(scene, { stroke: 'cut' })).toHaveLength(2);
    expect(pathsOf(scene, { stroke: 'seen' }).length).toBeGreaterThan(4);
    expect(pathsOf(scene, { stroke: 'thin' }).length).toBeGreaterThan(4);
  });

  it('crosses no words with a line of measure', () => {
    const scene = onionPlanting(options);
    const thin = pathsOf(scene, { stroke: 'thin', hue: 'ink' }).map(boxOf);
    for (const item of textsOf(scene)) {
      const { left, right, top, bottom } = boxOf(item);
      expect(
        thin.filter((one) => one.left < right && left < one.right && one.top < bottom && top < one.bottom),
      ).toEqual([]);
    }
  });

  it('no words touch and nothing sticks out, at any depth and spacing', () => {
    const plant = (caption: string) =>
      fc
        .record({
          depthMm: fc.integer({ min: 5, max: 100 }),
          spacingMm: fc.integer({ min: 25, max: 300 }),
          thicknessMm: fc.integer({ min: 5, max: 30 }),
        })
        .map((size) => ({
          ...size,
          caption,
          depthLabel: `${size.depthMm} mm`,
          spacingLabel: `${size.spacingMm} mm from plant to plant`,
        }));
    fc.assert(
      fc.property(
        plant('Transplants'),
        plant('Sets'),
        fc.constantFrom(56, 90, 115, 175),
        (transplant, set, widthMm) => {
          const scene = onionPlanting({ ...options, transplant, set, widthMm });
          expect(touchingWords(scene)).toEqual([]);
          expect(itemsOutside(scene)).toEqual([]);
        },
      ),
    );
  });
});
