/**
 * Percent normal seedlings by soil temperature.
 *
 * Source: J. F. Harrington and P. A. Minges, Vegetable Seed Germination, California Agricultural Extension Mimeo Leaflet,
 * 1954, as reprinted at highanddryfarm.com/germination-versus-temperature. Read from the crop records, so that these
 * values test the records and the computation together.
 * Tolerance: exact at the temperatures of the table; between two of them a value lies between theirs.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { normalSeedlingsOn } from '../../scripts/agronomy/emergence-on.ts';
import { toHeld } from '../../scripts/quantities/units.ts';
import { decode } from '../../scripts/records/decode.ts';
import { CropSchema, type Crop } from '../../scripts/records/schemas/crop.ts';

const temperaturesF = [32, 41, 50, 59, 68, 77, 86, 95, 104];
const table: [string, number[]][] = [
  ['snap-bean', [0, 0, 1, 97, 90, 97, 47, 39, 0]],
  ['carrot', [0, 48, 93, 95, 96, 96, 95, 74, 0]],
  ['lettuce', [98, 98, 98, 99, 99, 99, 12, 0, 0]],
  ['onion', [90, 98, 98, 98, 99, 97, 91, 73, 2]],
  ['spinach', [83, 96, 91, 82, 52, 28, 32, 0, 0]],
  ['tomato', [0, 0, 82, 98, 98, 97, 83, 46, 0]],
];

function percentAt(crop: Crop, temperatureF: number): number {
  const soil = { at: (): number => toHeld(temperatureF, 'F'), sources: [] };
  const { value } = normalSeedlingsOn({ crop, sowDay: 100, soil, depthMm: 12.7 });
  if (value.kind !== 'count') throw new TypeError(`${crop.id} at ${temperatureF} F: ${value.kind}`);
  return value.value;
}

describe.each(table)('%s', (id, percents) => {
  const crop = decode(
    CropSchema,
    parse(readFileSync(new URL(`../../crops/${id}.yaml`, import.meta.url), 'utf8')),
  );
  test.each(temperaturesF.map((f, index) => [f, percents[index]!]))('%i F: %i %%', (f, percent) => {
    expect(percentAt(crop, f)).toBe(percent);
  });
  test('between the temperatures', () => {
    temperaturesF.slice(1).forEach((f, index) => {
      const [before, after] = [percents[index]!, percents[index + 1]!];
      const between = percentAt(crop, f - 4.5);
      expect(between).toBeGreaterThanOrEqual(Math.min(before, after));
      expect(between).toBeLessThanOrEqual(Math.max(before, after));
    });
  });
});
