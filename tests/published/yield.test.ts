/**
 * Yields of the crop records.
 *
 * Sources: C. Marr, Vegetable Garden Planting Guide (MF-315), Kansas State University (reprint): pounds, or dozens of ears,
 * from 100 ft; University of Maine planting chart, per 10 ft, times ten.
 * Tolerance: a factor of 2, by which the two charts differ from each other; each published figure must lie inside the
 * record's range widened so. English peas are told apart from pods: Kansas prints 20 lb, Maine five times that.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { expectedYield } from '../../scripts/agronomy/yield.ts';
import { quantity, type Finding } from '../../scripts/findings/finding.ts';
import { fromHeld, toHeld } from '../../scripts/quantities/units.ts';
import { decode } from '../../scripts/records/decode.ts';
import { CropSchema } from '../../scripts/records/schemas/crop.ts';

const rowLengthMm = toHeld(100, 'ft');
const rowLength: Finding = {
  id: 'row',
  value: quantity('length', rowLengthMm),
  method: 'given',
  inputs: [],
  sources: [],
};

/** Record, what Kansas and Maine print for 100 ft: pounds, or ears. */
const printed: [string, number[]][] = [
  ['snap-bean', [120, 80]],
  ['beet', [150, 100]],
  ['carrot', [100, 100]],
  ['onion', [100]],
  ['cucumber', [120]],
  ['summer-squash', [150]],
  ['spinach', [40, 50]],
  ['broccoli', [100]],
  ['sweet-corn', [120, 200, 240]],
];

describe.each(printed)('%s', (id, figures) => {
  const crop = decode(
    CropSchema,
    parse(readFileSync(new URL(`../../crops/${id}.yaml`, import.meta.url), 'utf8')),
  );
  const { value } = expectedYield(crop, { rowLength, rowLengthMm });
  test.each(figures)('%i from 100 ft', (figure) => {
    const [low, high] = endsOf(value);
    expect(figure).toBeGreaterThanOrEqual(low / 2);
    expect(figure).toBeLessThanOrEqual(high * 2);
  });
});

function endsOf(value: Finding['value']): [number, number] {
  if (value.kind === 'range') return [fromHeld(value.low, 'lb'), fromHeld(value.high, 'lb')];
  if (value.kind === 'quantity') return [fromHeld(value.value, 'lb'), fromHeld(value.value, 'lb')];
  if (value.kind === 'count-range') return [value.low, value.high];
  throw new TypeError(`a yield is not ${value.kind}`);
}
