import { describe, expect, it } from 'vitest';
import { sizeRuler, type SizeRulerOptions } from '../../../scripts/drawings/charts/size-ruler.ts';
import { boxOf, itemsOutside, pathsOf, touchingWords } from './scene-reading.ts';

const options: SizeRulerOptions = {
  id: 'sizes',
  widthMm: 115,
  marks: [
    { diameterMm: 7, label: 'A pencil: 7\u00a0mm' },
    { diameterMm: 19, label: 'Set, three quarters of an inch: 19\u00a0mm' },
    { diameterMm: 25.4, label: 'Too big for a set: 1\u00a0in' },
  ],
  bar: { lengthMm: 50, parts: 5, label: 'This bar must measure 50\u00a0mm.' },
  alternative: 'Circles at true size.',
};
const circlesOf = (
  scene: ReturnType<typeof sizeRuler>,
): readonly { radius: number; x: number; y: number }[] =>
  scene.items.filter((item) => item.kind === 'circle');

describe('size ruler', () => {
  it.each([175, 115, 56])('draws circles at their true size, %d mm wide', (widthMm) => {
    const diameters = circlesOf(sizeRuler({ ...options, widthMm })).map(({ radius }) => 2 * radius);
    expect(diameters).toEqual([7, 19, 25.4]);
  });

  it.each([
    ['millimetres', 50, 5],
    ['inches', 50.8, 4],
  ])('draws the bar as long as it says, in %s', (_, lengthMm, parts) => {
    const scene = sizeRuler({ ...options, bar: { lengthMm, parts, label: 'This bar' } });
    const solid = pathsOf(scene, { fill: 'ink' }).map(boxOf);
    expect(solid).toHaveLength(Math.ceil(parts / 2));
    expect(solid[0]!.right - solid[0]!.left).toBeCloseTo(lengthMm / parts, 9);
    const outline = pathsOf(scene, { stroke: 'thin' })
      .map(({ commands }) => commands)
      .find((commands) => commands.length === 5)!;
    const xs = outline.flatMap((command) => (command[0] === 'Z' ? [] : [command[1]]));
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(lengthMm, 9);
  });

  it('stands the circles of a row on one line', () => {
    const feet = circlesOf(sizeRuler(options)).map(({ y, radius }) => y + radius);
    expect(new Set(feet.map((foot) => foot.toFixed(6))).size).toBe(1);
  });

  it.each([
    ['one row', 175],
    ['a text column', 115],
    ['several rows', 56],
    ['a row for each', 52],
  ])('no words touch and nothing sticks out: %s', (_, widthMm) => {
    const scene = sizeRuler({ ...options, widthMm });
    expect(touchingWords(scene)).toEqual([]);
    expect(itemsOutside(scene)).toEqual([]);
  });

  it('refuses a bar that does not fit and a circle without size', () => {
    expect(() => sizeRuler({ ...options, widthMm: 40 })).toThrow(RangeError);
    expect(() => sizeRuler({ ...options, marks: [{ diameterMm: 0, label: 'Nothing' }] })).toThrow(RangeError);
  });
});
