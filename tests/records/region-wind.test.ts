/** What a region's record says of wind and humidity is held in metres per second and percent. */
import { expect, test } from 'vitest';
import { collectSingles } from '../../scripts/records/collect.ts';
import { RegionSchema } from '../../scripts/records/schemas/region.ts';

const region = `
id: north
name: North County
invented: true
latitude: 45 deg
longitude: -93 deg
elevation: 900 ft
freeze:
  source: a-table
  table:
    - threshold: 32 F
      last: { 10: May 20, 50: May 5 }
      first: { 10: Sep 20, 50: Oct 5 }
`;

function read(more: string) {
  const text = region + more;
  const { records, diagnostics } = collectSingles(RegionSchema, [
    { path: 'content/regions/north.yaml', text },
  ]);
  return { value: records[0]?.value, faults: diagnostics.map(({ code }) => code) };
}

test('a gust of 60 mph is 26.8 metres per second', () => {
  const { value, faults } = read('wind: { gust: 60 mph, source: a-map }\n');
  expect(faults).toEqual([]);
  expect(value!.wind!.gust.low).toBeCloseTo(26.8224, 9);
  expect(value!.wind!.source).toBe('a-map');
});

test('humidity is twelve percentages with a source', () => {
  const months = '[60, 58, 54, 50, 52, 54, 55, 56, 55, 52, 56, 60]';
  const { value, faults } = read(`humidity: { afternoon: ${months}, source: an-airport }\n`);
  expect(faults).toEqual([]);
  expect(value!.humidity!.afternoon).toHaveLength(12);
});

test('both may be left out', () => {
  const { value, faults } = read('');
  expect(faults).toEqual([]);
  expect(value!.wind).toBeUndefined();
  expect(value!.humidity).toBeUndefined();
});

test.each([
  ['a range of gusts', 'wind: { gust: 50 to 60 mph, source: a-map }'],
  ['a gust that is no wind', 'wind: { gust: 5 mph, source: a-map }'],
  ['a gust beyond any on record', 'wind: { gust: 300 mph, source: a-map }'],
  ['a gust without a source', 'wind: { gust: 60 mph }'],
  [
    'humidity of no percent',
    'humidity: { afternoon: [0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1], source: an-airport }',
  ],
])('%s is a fault', (_, more) => {
  expect(read(`${more}\n`).faults).toHaveLength(1);
});
