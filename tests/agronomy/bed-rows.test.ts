import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { edgeMm, layOutRows } from '../../scripts/agronomy/bed-rows.ts';
import { plantsInRows, seedForRows } from '../../scripts/agronomy/spacing.ts';
import { quantity, type Finding } from '../../scripts/findings/finding.ts';
import { cropLike, q } from './crop.ts';

const sources = ['a-source'];
const pea = cropLike({
  id: 'pea',
  height: { value: q('4 to 6 ft', 'length'), sources },
  spacing: {
    inRow: { value: q('1-2 in', 'length'), sources },
    betweenRows: { value: q('18-36 in', 'length'), sources },
  },
});
const carrot = cropLike({ id: 'carrot' });
const rowLength: Finding = {
  id: 'bed.length',
  value: quantity('length', 2000),
  method: 'given',
  inputs: [],
  sources: [],
};

test('the tall crop stands at the poleward wall whatever the order of the record', () => {
  const layout = layOutRows(
    [
      { crop: carrot, rows: 2 },
      { crop: pea, rows: 1 },
    ],
    1200,
  );
  expect(layout.kind === 'rows' && layout.rows.map(({ crop, tall }) => [crop.id, tall])).toEqual([
    ['pea', true],
    ['carrot', false],
    ['carrot', false],
  ]);
});

test('by hand: one row of peas and two of carrots need 4 + 15 + 12 + 4 inches', () => {
  const wanted = [
    { crop: pea, rows: 1 },
    { crop: carrot, rows: 2 },
  ];
  expect(layOutRows(wanted, 35 * 25.4).kind).toBe('rows');
  expect(layOutRows(wanted, 34.9 * 25.4)).toMatchObject({ kind: 'too-narrow', neededMm: 35 * 25.4, fits: 2 });
});

describe('a bed too narrow', () => {
  test('for one row', () => {
    expect(layOutRows([{ crop: carrot, rows: 1 }], 2 * edgeMm - 1)).toMatchObject({
      kind: 'too-narrow',
      fits: 0,
    });
  });
  test('one row alone stands in the middle', () => {
    expect(layOutRows([{ crop: carrot, rows: 1 }], 600)).toMatchObject({
      rows: [{ fromPolewardMm: 300, tall: false }],
    });
  });
});

test('rows keep their spacing and their distance from the walls, and fill the bed evenly', () => {
  const arbitrary = fc.record({
    peas: fc.integer({ min: 0, max: 3 }),
    carrots: fc.integer({ min: 1, max: 8 }),
    depth: fc.integer({ min: 250, max: 4000 }),
  });
  fc.assert(
    fc.property(arbitrary, ({ peas, carrots, depth }) => {
      const wanted = [...(peas > 0 ? [{ crop: pea, rows: peas }] : []), { crop: carrot, rows: carrots }];
      const layout = layOutRows(wanted, depth);
      if (layout.kind === 'too-narrow') {
        expect(layout.fits).toBeLessThan(peas + carrots);
        return;
      }
      const at = layout.rows.map(({ fromPolewardMm }) => fromPolewardMm);
      expect(Math.min(...at)).toBeGreaterThanOrEqual(edgeMm - 1e-6);
      expect(Math.max(...at)).toBeLessThanOrEqual(depth - edgeMm + 1e-6);
      layout.rows.slice(1).forEach((row, index) => {
        const before = layout.rows[index]!;
        const least =
          (row.crop.spacing.betweenRows.value.low + before.crop.spacing.betweenRows.value.low) / 2;
        expect(row.fromPolewardMm - before.fromPolewardMm).toBeGreaterThanOrEqual(least - 1e-6);
      });
    }),
  );
});

test('plants times spacing never pass the end of the row', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 100, max: 20_000 }),
      fc.integer({ min: 1, max: 6 }),
      (rowLengthMm, rows) => {
        const plants = plantsInRows({ crop: carrot, rows, rowLengthMm, rowLength }).value;
        if (plants.kind !== 'count') throw new TypeError('not a count');
        expect((plants.value / rows) * carrot.spacing.inRow.value.high).toBeLessThanOrEqual(
          rowLengthMm + 1e-3,
        );
      },
    ),
  );
});

test('seed: 200 ft of row take twice the rate for 100 ft', () => {
  const crop = cropLike({ seedPer100Ft: { value: q('0.25 to 0.5 oz', 'mass'), sources } });
  const need = seedForRows({ crop, rows: 2, rowLengthMm: 100 * 304.8, rowLength });
  expect(need.value).toMatchObject({ kind: 'range', dimension: 'mass' });
  if (need.value.kind !== 'range') return;
  expect(need.value.low).toBeCloseTo(0.5 * 28.349523125, 6);
  expect(need.value.high).toBeCloseTo(28.349523125, 6);
});

test('no published rate: the finding says so', () => {
  expect(seedForRows({ crop: carrot, rows: 1, rowLengthMm: 1000, rowLength }).value).toEqual({
    kind: 'none',
    reason: 'no-seed-rate',
  });
});
