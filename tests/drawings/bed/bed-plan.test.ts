import { describe, expect, test } from 'vitest';
import { bedPlan, type BedPlanOptions } from '../../../scripts/drawings/bed/bed-plan.ts';
import { overlaps, textBox } from '../../../scripts/drawings/charts/text-width.ts';
import { crossedTexts } from '../frame/ink.ts';
import { exactWords, textsOf } from '../frame/scenes.ts';
import { beds, inch } from './beds.ts';

const looks = (['north', 'south'] as const).flatMap((hemisphere) =>
  [165, 92].map((widthMm) => ({ hemisphere, widthMm })),
);
const cases = beds.flatMap(([name, bed]) =>
  looks.map((look) => [`${name}, ${look.hemisphere}, ${look.widthMm} mm`, { ...bed, ...look }] as const),
);

describe.each(cases)('%s', (_, options) => {
  const scene = bedPlan(options);

  test('no line runs through its words', async () => {
    expect(await crossedTexts(scene)).toEqual([]);
  });

  test('no words lie on others, and all are on the page', () => {
    const boxes = textsOf(scene).map((item) => ({ ...textBox(item), text: item.text }));
    boxes.forEach((box, index) => {
      expect(boxes.slice(index + 1).filter((other) => overlaps(box, other))).toEqual([]);
      expect(box.left, box.text).toBeGreaterThanOrEqual(0);
      expect(box.right, box.text).toBeLessThanOrEqual(scene.widthMm);
      expect(box.top, box.text).toBeGreaterThanOrEqual(-0.5);
      expect(box.bottom, box.text).toBeLessThanOrEqual(scene.heightMm + 0.5);
    });
  });

  test('every crop is named', () => {
    const said = textsOf(scene).map(({ text }) => text);
    for (const { name } of options.blocks) expect(said.some((text) => text.endsWith(name))).toBe(true);
  });
});

const frame = beds[0]![1];
const circlesOf = (given: BedPlanOptions) => bedPlan(given).items.filter((item) => item.kind === 'circle');

describe('a bed plan', () => {
  test('says the distances from edge to row to row to edge, and the length', () => {
    const exact = bedPlan({ ...frame, words: { ...frame.words, length: exactWords.length } });
    const said = textsOf(exact).flatMap(({ text }) => (/^\d+\.\d+$/.test(text) ? [Number(text) / inch] : []));
    expect(said.map((value) => Math.round(value * 1000) / 1000).sort((a, b) => a - b)).toEqual([
      4.1, 4.125, 12.25, 12.25, 15.275, 72,
    ]);
  });

  test('draws rows and plants to one scale', () => {
    const circles = circlesOf(frame);
    const peas = circles.filter(({ fill, stroke }) => fill === 'paper' && stroke === 'seen');
    const carrots = circles.filter(({ fill }) => fill === 'ink');
    const scale = (peas[1]!.x - peas[0]!.x) / (3 * inch);
    expect((carrots[1]!.x - carrots[0]!.x) / (2 * inch)).toBeCloseTo(scale, 9);
    expect((carrots[0]!.y - peas[0]!.y) / ((19.4 - 4.125) * inch)).toBeCloseTo(scale, 9);
  });

  test('has the tall row at the top in the north and at the bottom in the south', () => {
    const tallY = (hemisphere: 'north' | 'south'): number =>
      circlesOf({ ...frame, hemisphere }).find(({ fill, hue }) => fill === 'paper' && hue === undefined)!.y;
    const lowY = (hemisphere: 'north' | 'south'): number =>
      circlesOf({ ...frame, hemisphere }).find(({ fill }) => fill === 'ink')!.y;
    expect(tallY('north')).toBeLessThan(lowY('north'));
    expect(tallY('south')).toBeGreaterThan(lowY('south'));
  });

  test('marks one plant for each that stands, until marks would run together', () => {
    expect(circlesOf(frame).filter(({ fill }) => fill === 'ink')).toHaveLength(3 * 36);
    const radishes = circlesOf(beds[1]![1]).filter(({ fill }) => fill === 'ink');
    const last = radishes.filter(({ y }) => y === radishes.at(-1)!.y);
    expect(last.length).toBeLessThan(96);
    expect(last[1]!.x - last[0]!.x).toBeGreaterThanOrEqual(1.5 - 1e-9);
  });

  test('a bed too long for the page is cut short and says its whole length', () => {
    const scene = bedPlan(beds[3]![1]);
    expect(textsOf(scene).map(({ text }) => text)).toContain('100′ 0 3⁄4″');
    const rows = [
      ...new Set(
        circlesOf(beds[3]![1])
          .filter(({ fill }) => fill === 'ink')
          .map(({ y }) => y),
      ),
    ];
    expect(rows).toHaveLength(4);
    expect(rows[1]! - rows[0]!).toBeGreaterThanOrEqual(2 - 1e-9);
  });

  test('equal steps of a block are told once, as so many times the step', () => {
    expect(textsOf(bedPlan(beds[2]![1])).map(({ text }) => text)).toContain('8 × 1 3⁄4″');
  });

  test('a dashed line for each drip line, named', () => {
    const scene = bedPlan(beds[1]![1]);
    expect(scene.items.filter((item) => item.kind === 'path' && item.stroke === 'hidden')).toHaveLength(2);
    expect(textsOf(scene).filter(({ text }) => text === 'drip line')).toHaveLength(2);
  });
});
