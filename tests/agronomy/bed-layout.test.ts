import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  plantPlaces,
  plantsInPlan,
  rowsAcrossBed,
  type PlantPlace,
} from '../../scripts/agronomy/bed-layout.ts';
import { none } from '../../scripts/findings/finding.ts';
import { cropLike } from './crop.ts';

const inch = 25.4;
const inches = (values: readonly number[]): number[] =>
  values.map((value) => Math.round((value / inch) * 100) / 100);

describe('rows across a bed, by hand', () => {
  test('a 30 in bed holds two rows 12 in apart, 4 in from the edges, then three of 11 in', () => {
    const bed = { bedWidthMm: 30 * inch };
    expect(inches(rowsAcrossBed({ ...bed, betweenRowsMm: 12 * inch }).rowsMm)).toEqual([4, 26]);
    expect(inches(rowsAcrossBed({ ...bed, betweenRowsMm: 11 * inch }).rowsMm)).toEqual([4, 15, 26]);
  });
  test('a line in the middle pushes the middle row aside and may cost it', () => {
    const bed = { bedWidthMm: 30 * inch, irrigationLines: { count: 1, offsetMm: 3 * inch } };
    expect(inches(rowsAcrossBed({ ...bed, betweenRowsMm: 11 * inch }).rowsMm)).toEqual([4, 26]);
    // Held in the middle of the room that is left once they keep their distance, 4 to 20 in.
    expect(inches(rowsAcrossBed({ ...bed, betweenRowsMm: 8 * inch }).rowsMm)).toEqual([7, 18, 26]);
    expect(inches(rowsAcrossBed({ ...bed, betweenRowsMm: 8 * inch }).linesMm)).toEqual([15]);
  });
  test('one row stands in the middle, or beside the line that lies there', () => {
    expect(inches(rowsAcrossBed({ bedWidthMm: 20 * inch, betweenRowsMm: 30 * inch }).rowsMm)).toEqual([10]);
    const lined = {
      bedWidthMm: 20 * inch,
      betweenRowsMm: 30 * inch,
      irrigationLines: { count: 1, offsetMm: 2 * inch },
    };
    expect([8, 12]).toContain(inches(rowsAcrossBed(lined).rowsMm)[0]);
  });
  test('no room between the edges, or none off the lines', () => {
    expect(rowsAcrossBed({ bedWidthMm: 7 * inch, betweenRowsMm: inch }).rowsMm).toEqual([]);
    const flooded = {
      bedWidthMm: 20 * inch,
      betweenRowsMm: inch,
      irrigationLines: { count: 2, offsetMm: 10 * inch },
    };
    expect(rowsAcrossBed(flooded).rowsMm).toEqual([]);
  });
  test('a spacing of nothing is refused', () => {
    expect(() => rowsAcrossBed({ bedWidthMm: 500, betweenRowsMm: 0 })).toThrow(RangeError);
  });
});

test('rows keep spacing, edges and lines, and no narrower spacing holds fewer', () => {
  const arbitrary = fc.record({
    width: fc.integer({ min: 100, max: 2500 }),
    between: fc.integer({ min: 40, max: 900 }),
    edge: fc.integer({ min: 0, max: 150 }),
    lines: fc.integer({ min: 0, max: 4 }),
    offset: fc.integer({ min: 0, max: 90 }),
  });
  fc.assert(
    fc.property(arbitrary, ({ width, between, edge, lines, offset }) => {
      const bed = { bedWidthMm: width, edgeMm: edge, irrigationLines: { count: lines, offsetMm: offset } };
      const { rowsMm, linesMm } = rowsAcrossBed({ ...bed, betweenRowsMm: between });
      rowsMm.forEach((row, index) => {
        expect(row).toBeGreaterThanOrEqual(edge - 1e-5);
        expect(row).toBeLessThanOrEqual(width - edge + 1e-5);
        for (const line of linesMm) expect(Math.abs(row - line)).toBeGreaterThanOrEqual(offset - 1e-5);
        if (index > 0) expect(row - rowsMm[index - 1]!).toBeGreaterThanOrEqual(between - 1e-5);
      });
      expect(rowsAcrossBed({ ...bed, betweenRowsMm: between * 0.9 }).rowsMm.length).toBeGreaterThanOrEqual(
        rowsMm.length,
      );
      if (lines === 0 && width > 2 * edge)
        expect(rowsMm).toHaveLength(Math.floor((width - 2 * edge + 1e-6) / between) + 1);
    }),
  );
});

describe('plants in a bed, by hand', () => {
  const bed = { bedWidthMm: 40 * inch, betweenRowsMm: 12 * inch };
  const count = (layout: 'rows' | 'square' | 'offset', inRow: number, width = 40, length = 80): number =>
    plantPlaces({
      layout,
      bedLengthMm: length * inch,
      bed: { ...bed, bedWidthMm: width * inch },
      inRowMm: inRow * inch,
    }).length;
  test('rows: three of 80 in at 4 in', () => {
    expect(count('rows', 4)).toBe(3 * 20);
  });
  test('squares: 10 by 20 at 4 in', () => {
    expect(count('square', 4)).toBe(200);
  });
  test('offset: eleven rows 3.46 in apart, of 20 and 19 by turns', () => {
    expect(count('offset', 4)).toBe(6 * 20 + 5 * 19);
  });
  test('a bed of a single row has no gain', () => {
    expect(count('offset', 10, 12)).toBe(count('square', 10, 12));
  });
  test('a plant wider than the bed does not fit', () => {
    expect(count('square', 50)).toBe(0);
  });
});

test('in a wide bed offset rows hold 2 over root 3 as many plants as squares: 15 % more', () => {
  const bed = { bedWidthMm: 60_000, betweenRowsMm: 300 };
  const places = (layout: 'square' | 'offset'): number =>
    plantPlaces({ layout, bedLengthMm: 60_000, bed, inRowMm: 200 }).length;
  expect(places('offset') / places('square')).toBeCloseTo(2 / Math.sqrt(3), 2);
});

test('in every layout plants stay inside by half their space and keep their distance from each other', () => {
  const arbitrary = fc.record({
    layout: fc.constantFrom('rows', 'square', 'offset' as const),
    width: fc.integer({ min: 200, max: 1300 }),
    length: fc.integer({ min: 200, max: 2000 }),
    inRow: fc.integer({ min: 60, max: 500 }),
    lines: fc.integer({ min: 0, max: 2 }),
  });
  fc.assert(
    fc.property(arbitrary, ({ layout, width, length, inRow, lines }) => {
      const bed = {
        bedWidthMm: width,
        betweenRowsMm: Math.max(inRow, 150),
        irrigationLines: { count: lines, offsetMm: 40 },
      };
      const places = plantPlaces({ layout, bedLengthMm: length, bed, inRowMm: inRow });
      for (const place of places) {
        expect(place.alongMm).toBeGreaterThanOrEqual(inRow / 2 - 1e-5);
        expect(place.alongMm).toBeLessThanOrEqual(length - inRow / 2 + 1e-3);
        if (layout !== 'rows') {
          expect(place.acrossMm).toBeGreaterThanOrEqual(inRow / 2 - 1e-5);
          expect(place.acrossMm).toBeLessThanOrEqual(width - inRow / 2 + 1e-5);
        }
      }
      expect(nearest(places)).toBeGreaterThanOrEqual(inRow - 1e-3);
    }),
    { numRuns: 60 },
  );
});

function nearest(places: readonly PlantPlace[]): number {
  let least = Infinity;
  places.forEach((a, index) => {
    for (const b of places.slice(index + 1))
      least = Math.min(least, Math.hypot(a.acrossMm - b.acrossMm, a.alongMm - b.alongMm));
  });
  return least;
}

test('the finding tells its layout, lines and spacing', () => {
  const crop = cropLike();
  const plan = (bedWidthMm: number) =>
    plantsInPlan(crop, {
      layout: 'rows',
      bedLengthMm: 2032,
      bed: { bedWidthMm, irrigationLines: { count: 2, offsetMm: 50 } },
    });
  expect(plan(800)).toMatchObject({
    id: 'testcrop.plants-in-plan',
    method: 'plants.layout-rows',
    value: { kind: 'count' },
  });
  expect(plan(800).inputs.map(({ name }) => name)).toEqual(
    expect.arrayContaining(['layout', 'drip-lines', 'off-the-line', 'row-spacing']),
  );
  expect(plan(100).value).toEqual(none('bed-too-small'));
});
