import { describe, expect, test } from 'vitest';
import { pollinationWarnings, shadeWarnings, shadowOf } from '../../scripts/agronomy/bed-warnings.ts';
import { cropLike, q } from './crop.ts';

const sources = ['a-source'];
const tall = cropLike({ id: 'tall', height: { value: q('4 to 6 ft', 'length'), sources } });
const low = cropLike({ id: 'low' });
const row = (crop: typeof tall, fromPolewardMm: number) => ({ crop, fromPolewardMm });

describe('shade at noon', () => {
  test('a 6 ft row equatorward of a 1 ft row: five feet of shadow under a sun of 45 degrees', () => {
    expect(shadeWarnings([row(low, 100), row(tall, 1000)], 45)).toEqual([
      { kind: 'shades', tall: 'tall', low: 'low', shadowMm: expect.closeTo(5 * 304.8, 6) as number },
    ]);
  });
  test('poleward of it, it shades nothing', () => {
    expect(shadeWarnings([row(tall, 100), row(low, 1000)], 45)).toEqual([]);
  });
  test('beyond the reach of its shadow, or under a high sun', () => {
    expect(shadeWarnings([row(low, 0), row(tall, 1600)], 45)).toEqual([]);
    expect(shadeWarnings([row(low, 0), row(tall, 1000)], 80)).toEqual([]);
  });
  test('once for a pair, however many rows', () => {
    expect(shadeWarnings([row(low, 0), row(low, 200), row(tall, 400), row(tall, 600)], 45)).toHaveLength(1);
  });
  test('a sun that does not rise throws an endless shadow; equal heights none', () => {
    expect(shadowOf(100, 0)).toBe(Infinity);
    expect(shadowOf(0, 10)).toBe(0);
  });
});

describe('pollination', () => {
  const by = (kind: 'none' | 'self' | 'wind' | 'insects') => cropLike({ pollination: { by: kind, sources } });
  test.each([
    ['insects', 'closed', 4, 'needs-insects'],
    ['insects', 'open', 1, undefined],
    ['wind', 'open', 2, 'needs-block'],
    ['wind', 'open', 3, undefined],
    ['self', 'closed', 1, undefined],
    ['none', 'closed', 1, undefined],
  ] as const)('%s, %s cover, %i rows: %s', (kind, cover, rows, warning) => {
    expect(pollinationWarnings([{ crop: by(kind), rows }], cover).map((found) => found.kind)).toEqual(
      warning ? [warning] : [],
    );
  });
  test('a crop of which nothing is known brings no warning', () => {
    expect(pollinationWarnings([{ crop: cropLike(), rows: 1 }], 'closed')).toEqual([]);
  });
});
