/** Rows of any layout in any bed, and what they come to. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bedNeeds } from '../../scripts/agronomy/bed-needs.ts';
import { layOutRows, plantsAlongRow, plantsOfRow, type WantedRows } from '../../scripts/agronomy/bed-rows.ts';
import { lowestNoonSun, noonShadow } from '../../scripts/agronomy/bed-sun.ts';
import { heightWarnings } from '../../scripts/agronomy/bed-warnings.ts';
import { spreadRows } from '../../scripts/agronomy/row-places.ts';
import { waterVolume, wateringCans, weeklyWater } from '../../scripts/agronomy/watering.ts';
import { noonAltitudeDeg } from '../../scripts/climate/noon-altitude.ts';
import { none, quantity, type Finding } from '../../scripts/findings/finding.ts';
import type { Sow } from '../../scripts/records/schemas/projects/sow.ts';
import { cropLike, q } from './crop.ts';

const sources = ['a-source'];
const inch = 25.4;
const crop = (id: string, high: string, inRow: string, between: string) =>
  cropLike({
    id,
    height: { value: q(high, 'length'), sources },
    spacing: {
      inRow: { value: q(inRow, 'length'), sources },
      betweenRows: { value: q(between, 'length'), sources },
    },
  });
const corn = crop('corn', '5 to 8 ft', '8-12 in', '30-36 in');
const pea = crop('pea', '2 to 6 ft', '1-3 in', '18-36 in');
const lettuce = crop('lettuce', '6-12 in', '6-10 in', '12-18 in');
const radish = crop('radish', '6-8 in', '1-2 in', '6-12 in');
const kinds = [corn, pea, lettuce, radish];

const wantedRows = fc.uniqueArray(
  fc.record({
    crop: fc.constantFrom(...kinds),
    rows: fc.integer({ min: 1, max: 6 }),
    layout: fc.constantFrom('rows' as const, 'square' as const, 'offset' as const),
    side: fc.constantFrom(undefined, undefined, undefined, 'equator' as const),
  }),
  { minLength: 1, maxLength: 4, selector: ({ crop: { id } }) => id },
);
const beds = fc.record({
  wanted: wantedRows,
  depth: fc.integer({ min: 300, max: 6000 }),
  length: fc.integer({ min: 300, max: 6000 }),
  lines: fc.record({ count: fc.integer({ min: 0, max: 4 }), offsetMm: fc.integer({ min: 0, max: 60 }) }),
});
const asWanted = ({
  side,
  ...rest
}: Omit<WantedRows, 'side'> & { readonly side: 'equator' | undefined }): WantedRows =>
  side ? { ...rest, side } : rest;

describe('in every bed that holds its rows', () => {
  test('rows keep their distance from each other, from the edges and from drip lines', () => {
    let held = 0;
    fc.assert(
      fc.property(beds, ({ wanted, depth, lines }) => {
        const layout = layOutRows(wanted.map(asWanted), depth, { lines });
        if (layout.kind === 'too-narrow') {
          expect(layout.fits).toBeLessThan(wanted.reduce((sum, { rows }) => sum + rows, 0));
          return;
        }
        held += 1;
        layout.rows.forEach((row, index) => {
          const own = row.crop.spacing.inRow.value.high / 2;
          const edge = row.layout === 'rows' ? 101.6 : own;
          const isEnd = index === 0 || index === layout.rows.length - 1;
          expect(row.fromPolewardMm).toBeGreaterThanOrEqual((isEnd ? edge : 0) - 1e-5);
          expect(row.fromPolewardMm).toBeLessThanOrEqual(depth - (isEnd ? edge : 0) + 1e-5);
          for (let line = 0; line < lines.count; line += 1) {
            const at = ((line + 0.5) * depth) / lines.count;
            expect(Math.abs(row.fromPolewardMm - at)).toBeGreaterThanOrEqual(lines.offsetMm - 1e-5);
          }
          const next = layout.rows[index + 1];
          if (!next) return;
          const apart = [row, next].map(({ crop: { spacing }, layout: kind }) =>
            kind === 'rows'
              ? spacing.betweenRows.value.low
              : spacing.inRow.value.high * (kind === 'offset' ? Math.sqrt(3) / 2 : 1),
          );
          expect(next.fromPolewardMm - row.fromPolewardMm).toBeGreaterThanOrEqual(
            (apart[0]! + apart[1]!) / 2 - 1e-5,
          );
        });
      }),
    );
    expect(held).toBeGreaterThan(20);
  });

  test('no taller crop stands on the sunny side of a lower one, unless the record wants it there', () => {
    fc.assert(
      fc.property(beds, ({ wanted, depth }) => {
        const layout = layOutRows(wanted.map(asWanted), depth);
        if (layout.kind === 'too-narrow') return;
        const free = layout.rows.filter(
          (row) => wanted.find(({ crop: { id } }) => id === row.crop.id)!.side === undefined,
        );
        const heights = free.map((row) => row.crop.height.value.high);
        expect(heights).toEqual([...heights].sort((a, b) => b - a));
        expect(layout.rows.slice(0, free.length)).toEqual(free);
      }),
    );
  });

  test('all plants are inside by half their space and keep it from each other along the row', () => {
    fc.assert(
      fc.property(beds, ({ wanted, depth, length }) => {
        const layout = layOutRows(wanted.map(asWanted), depth);
        if (layout.kind === 'too-narrow') return;
        for (const row of layout.rows) {
          const spacing = row.crop.spacing.inRow.value.high;
          const places = plantsOfRow(row, length);
          expect(places.length).toBeGreaterThan(0);
          places.forEach((place, index) => {
            const most = Math.min(spacing, length) / 2;
            expect(place).toBeGreaterThanOrEqual(most - 1e-3);
            expect(place).toBeLessThanOrEqual(length - most + 1e-3);
            if (index > 0) expect(place - places[index - 1]!).toBeCloseTo(spacing, 6);
          });
        }
      }),
    );
  });
});

describe('by hand', () => {
  test('two rows 12 in apart in 40 in: of the 20 in left over, 10 go between them and 5 to either edge', () => {
    const layout = layOutRows([{ crop: lettuce, rows: 2 }], 40 * inch);
    expect(layout).toMatchObject({
      rows: [
        { fromPolewardMm: expect.closeTo(9 * inch, 3) as number },
        { fromPolewardMm: expect.closeTo(31 * inch, 3) as number },
      ],
    });
  });
  test('squares keep their distance and stand in the middle', () => {
    const layout = layOutRows([{ crop: radish, rows: 3, layout: 'square' }], 20 * inch);
    expect(layout.kind === 'rows' && layout.rows.map((row) => Math.round(row.fromPolewardMm / inch))).toEqual(
      [8, 10, 12],
    );
  });
  test('every second offset row is moved by half a space', () => {
    const row = { lengthMm: 40 * inch, spacingMm: 10 * inch };
    expect(plantsAlongRow(row).map((at) => at / inch)).toEqual([5, 15, 25, 35]);
    expect(plantsAlongRow({ ...row, moved: true }).map((at) => at / inch)).toEqual([10, 20, 30]);
    expect(() => plantsAlongRow({ lengthMm: 100, spacingMm: 0 })).toThrow(RangeError);
  });
  test('a crop wanted on the sunny side stands there', () => {
    const layout = layOutRows(
      [
        { crop: corn, rows: 1, side: 'equator' },
        { crop: lettuce, rows: 1 },
      ],
      1500,
    );
    expect(layout.kind === 'rows' && layout.rows.map((row) => row.crop.id)).toEqual(['lettuce', 'corn']);
  });
  test('rows that do not go in are not placed', () => {
    const field = { from: 0, to: 10, linesMm: [], offsetMm: 0 };
    expect(spreadRows(field, [{ leastMm: 11, stretches: true }])).toBeUndefined();
    expect(spreadRows(field, [{ leastMm: 4, stretches: false }])).toEqual([3, 7]);
  });
});

const bedLength: Finding = {
  id: 'bed.length',
  value: quantity('length', 100 * inch),
  method: 'given',
  inputs: [],
  sources: [],
};
const needsOf = (of: typeof corn, sown: Omit<Sow[number], 'crop'>) => {
  const layout = layOutRows(
    [{ crop: of, rows: sown.rows, ...(sown.layout ? { layout: sown.layout } : {}) }],
    3000,
  );
  return bedNeeds({
    crop: of,
    sown: { crop: of.id, ...sown },
    rows: layout.kind === 'rows' ? layout.rows : [],
    bedLengthMm: 100 * inch,
    bedLength,
  });
};

describe('what a crop of a bed comes to', () => {
  const seeded = (perOunce: number) =>
    cropLike({
      germination: { percent: 80, sources },
      seedsPerOunce: { low: perOunce, high: perOunce, sources },
      yieldPer100Ft: { low: 60, high: 120, unit: 'lb', sources },
    });
  test('coarse seed: one for each plant over the share that comes up and lives', () => {
    // 33 plants a row at 3 in; 66 / (0.8 × 0.8) = 103.1.
    const needs = needsOf(seeded(1000), { rows: 2, packet: { seeds: 50 } });
    expect(needs.plants.value).toEqual({ kind: 'count', value: 66 });
    expect(needs.seed?.seeds.value).toEqual({ kind: 'count', value: 104 });
    expect(needs.seed?.packets.value).toEqual({ kind: 'count', value: 3 });
    expect(needs.perPlace).toBe(1);
  });
  test('fine seed: eight for each plant', () => {
    expect(needsOf(seeded(20_000), { rows: 2 }).seed?.seeds.value).toEqual({ kind: 'count', value: 528 });
    expect(needsOf(seeded(20_000), { rows: 2, seedsPerPlace: 3 }).perPlace).toBe(3);
  });
  test('a packet by weight', () => {
    const needs = needsOf(seeded(1000), { rows: 2, packet: { mass: q('0.05 oz', 'mass') } });
    expect(needs.seed?.packets.value).toEqual({ kind: 'count', value: 3 });
  });
  test('a packet as the record of the crop gives it', () => {
    const packet = { value: q('0.03 oz', 'mass'), sources: ['a-catalogue'] };
    const { seed } = needsOf({ ...seeded(1000), packet }, { rows: 2 });
    expect(seed?.packets.value).toEqual({ kind: 'count', value: 4 });
    expect(seed?.packets.sources).toContain('a-catalogue');
    const own = needsOf({ ...seeded(1000), packet }, { rows: 2, packet: { seeds: 104 } });
    expect(own.seed?.packets.value).toEqual({ kind: 'count', value: 1 });
  });
  test('the harvest goes by the length of all rows: 200 in of 1200 in', () => {
    const { yield: harvest, rowLength } = needsOf(seeded(1000), { rows: 2 });
    expect(harvest).toMatchObject({
      id: 'testcrop.yield-in-bed',
      value: { kind: 'range', dimension: 'mass' },
    });
    if (harvest.value.kind !== 'range') return;
    expect(harvest.value.low / 453.59237).toBeCloseTo(10, 6);
    expect(harvest.value.high / 453.59237).toBeCloseTo(20, 6);
    expect(rowLength.value).toEqual(quantity('length', 200 * inch));
  });
  test('squares are counted as they stand, and their harvest by the row they would make', () => {
    const needs = needsOf(seeded(1000), { rows: 4, layout: 'square' });
    expect(needs.plants).toMatchObject({ method: 'plants.layout-square', value: { value: 4 * 33 } });
    expect(needs.rowLength.value).toMatchObject({ value: expect.closeTo(4 * 33 * 3 * inch, 6) as number });
  });
  test('offset rows of 33 and 32 by turns', () => {
    expect(needsOf(seeded(1000), { rows: 4, layout: 'offset' }).plants.value).toMatchObject({ value: 130 });
  });
  test('transplants: by the number, over the share that lives, and by the bundle where it is known', () => {
    const needs = needsOf(seeded(1000), { rows: 2, method: 'transplant' });
    expect(needs.seed).toBeUndefined();
    expect(needs.bought?.number.value).toEqual({ kind: 'count', value: 74 });
    expect(needs.bought?.bundles).toBeUndefined();
    const bundled = { ...seeded(1000), figures: [{ id: 'bundle', low: 60, high: 75, sources }] };
    expect(needsOf(bundled, { rows: 2, method: 'transplant' }).bought?.bundles?.value).toMatchObject({
      value: 2,
    });
    expect(needsOf(bundled, { rows: 2, method: 'sets' }).bought?.bundles).toBeUndefined();
  });
});

describe('the noon sun while a bed grows', () => {
  const place = { latitudeDeg: 45, year: 2027 };
  test('is lowest on the first or last day of a season around midsummer', () => {
    const days = { from: 100, to: 250 };
    const ends = [100, 250].map((day) => noonAltitudeDeg({ ...place, day }));
    expect(lowestNoonSun({ ...place, days }).value).toEqual(quantity('angle', Math.min(...ends)));
  });
  test('does not come up in polar night', () => {
    expect(lowestNoonSun({ latitudeDeg: 70, year: 2027, days: { from: 340, to: 360 } }).value).toEqual(
      none('sun-below-horizon'),
    );
    expect(() => lowestNoonSun({ ...place, days: { from: 2, to: 1 } })).toThrow(RangeError);
  });
  test('a crop 6 ft high over one of 1 ft throws 5 ft of shadow under a sun of 45 degrees', () => {
    const sun: Finding = { ...bedLength, id: 'sun.noon-lowest', value: quantity('angle', 45) };
    const shadow = noonShadow(pea, lettuce, sun);
    expect(shadow.id).toBe('pea.noon-shadow');
    expect(shadow.value).toMatchObject({ value: expect.closeTo(5 * 304.8, 6) as number });
    expect(noonShadow(pea, lettuce, { ...sun, value: none('sun-below-horizon') }).value).toEqual(
      none('sun-below-horizon'),
    );
  });
});

test.each([
  ['lower than the room', 305, []],
  ['higher than the room', 304, [{ kind: 'outgrows-cover', crop: 'lettuce' }]],
] as const)('a crop of 12 in under a cover: %s', (_, clearMm, warnings) => {
  expect(heightWarnings([{ crop: lettuce }], clearMm)).toEqual(warnings);
});

test('an inch to an inch and a half of water on 32 square feet: 20 to 30 gallons, 10 to 15 cans', () => {
  const water = weeklyWater({ rainMm: 0, mulch: 'none' });
  const volume = waterVolume({ water, areaM2: 32 * 0.09290304 });
  // 32 ft² × 1/12 ft × 7.4805 gal/ft³ = 19.95 gal.
  expect(wateringCans(volume).value).toEqual({ kind: 'count-range', low: 10, high: 15 });
  expect(wateringCans({ ...volume, value: none('rain-is-enough') }).value).toEqual(none('rain-is-enough'));
  expect(() => wateringCans(water)).toThrow(TypeError);
});
