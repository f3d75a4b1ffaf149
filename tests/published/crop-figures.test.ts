/**
 * The crop records against the published figures they rest on. Each table stands with its citation, its
 * tolerance, and why the tolerance has that size. The records are read as they are written, so that a slip
 * in one is caught whatever the program does with it.
 *
 * Charts that come back in several tables:
 * - Olds: Olds Seed garden seed chart, reprinted by Huebner's Lawn and Garden, undated.
 * - Fedco: Vegetable Planting Guide, Fedco Seeds.
 * - Maine: Planting Chart for the Home Vegetable Garden, University of Maine Cooperative Extension.
 * - Missouri: Vegetable Planting Calendar (G6201), University of Missouri Extension, reprints of 2003 and 2019.
 * - Colorado: Vegetable Planting Guide (CMG GardenNotes 720), Colorado State University Extension; the groups
 *   read in the page itself, the table in a reprint.
 * - Illinois: Illinois Vegetable Garden Guide, University of Illinois Extension, the page of each vegetable.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../scripts/quantities/quantity.ts';
import { fromHeld, type Dimension } from '../../scripts/quantities/units.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const crops = readCrops();
const sourceIds = readSourceIds();

/** Two ends of a range in the unit of its table; equal for a single figure. */
type Range = readonly [low: number, high: number];

/** Crop, chart, and what the chart prints. */
type Row = readonly [crop: string, chart: string, low: number, high: number];

/** Printed decimals such as 0.25 survive the way to the held unit and back to about this much. */
const rounding = 1e-9;

test.each([...crops.keys()])('%s: every source that it names has a record', (id) => {
  const named = sourcesIn(crops.get(id));
  expect(named.length).toBeGreaterThan(0);
  expect(named.filter((source) => !sourceIds.has(source))).toEqual([]);
});

/**
 * Sperry: N. Sperry, How Many Seeds per Ounce, 2021. A record spans what is printed; it may not be wider than
 * a factor of 2 from any one chart, since lots and cultivars of one crop differ by that much and not by more.
 */
describe('seeds per ounce', () => {
  const rows: readonly Row[] = [
    ['snap-bean', 'Olds', 100, 100],
    ['snap-bean', 'Sperry, bush', 100, 100],
    ['snap-bean', 'Fedco, bush dry', 90, 90],
    ['beet', 'Olds, seed ball', 1500, 1500],
    ['beet', 'Fedco', 2200, 2200],
    ['broccoli', 'Olds', 9000, 9000],
    ['broccoli', 'Fedco', 5000, 8000],
    ['cabbage', 'Olds', 8500, 8500],
    ['cabbage', 'Fedco', 6000, 7000],
    ['carrot', 'Olds', 25_000, 25_000],
    ['carrot', 'Fedco', 18_000, 18_000],
    ['sweet-corn', 'Olds', 175, 175],
    ['sweet-corn', 'Fedco, hybrid', 155, 155],
    ['sweet-corn', 'Fedco, open pollinated', 100, 100],
    ['sweet-corn', 'Sperry', 200, 200],
    ['cucumber', 'Olds', 1000, 1000],
    ['kale', 'Olds', 8700, 8700],
    ['lettuce', 'Olds', 25_000, 25_000],
    ['onion', 'Olds', 8000, 8000],
    ['snap-pea', 'Olds', 120, 120],
    ['pepper', 'Olds', 4500, 4500],
    ['radish', 'Olds', 2500, 2500],
    ['spinach', 'Olds', 2800, 2800],
    ['summer-squash', 'Olds', 220, 220],
    ['swiss-chard', 'Olds', 1500, 1500],
    ['swiss-chard', 'Fedco', 800, 2000],
    ['tomato', 'Olds', 11_000, 11_000],
    ['tomato', 'Sperry', 8000, 12_000],
  ];

  test.each(rows)('%s: %s', (id, _chart, low, high) => {
    const { low: least, high: most } = seedsPerOunceOf(id);
    expectWithin([low, high], [least, most]);
    expectWithin([least, most], [low / 2, high * 2]);
  });
});

/**
 * Depth in inches. Parsons: J. Parsons, Onion Transplanting Time, Texas A&M Extension, 2002. Alabama: Planting
 * Guide for Home Gardening in Alabama (ANR-0063). Florida: Florida Vegetable Gardening Guide (SP 103). Chicago:
 * Potatoes, Chicago Botanic Garden. Left out: broccoli at 1 in in Olds, which its rows for the other cabbage
 * kinds show to be a misprint, and sets for green onions. Tolerance: a quarter inch either way, the step in
 * which the charts print.
 */
describe('planting depth', () => {
  const rows: readonly Row[] = [
    ['snap-bean', 'Maine', 1, 1],
    ['snap-bean', 'Alabama, about', 1, 1],
    ['snap-bean', 'Florida', 1, 1.5],
    ['beet', 'Maine', 0.5, 0.5],
    ['beet', 'Missouri', 0.5, 0.5],
    ['beet', 'Colorado', 0.75, 1],
    ['broccoli', 'Colorado', 0.5, 0.5],
    ['broccoli', 'Fedco', 0.25, 0.25],
    ['cabbage', 'Colorado', 0.5, 0.5],
    ['cabbage', 'Fedco', 0.25, 0.25],
    ['carrot', 'Maine', 0.5, 0.5],
    ['carrot', 'Missouri', 0.25, 0.25],
    ['carrot', 'Colorado', 0.25, 0.25],
    ['sweet-corn', 'Maine', 1, 1],
    ['cucumber', 'Maine', 0.75, 0.75],
    ['cucumber', 'Alabama, about', 1, 1],
    ['kale', 'Missouri', 0.25, 0.25],
    ['kale', 'Olds', 0.5, 0.5],
    ['lettuce', 'Missouri, leaf', 0.25, 0.25],
    ['lettuce', 'Colorado, leaf', 0.25, 0.25],
    ['lettuce', 'Olds', 0.5, 0.5],
    ['onion', 'Olds, seed', 0.5, 0.5],
    ['onion', 'Missouri, sets for bulbs', 1, 1],
    ['onion', 'Parsons, plants', 1, 1],
    ['snap-pea', 'Maine', 1, 1],
    ['snap-pea', 'Olds', 1, 2],
    ['pepper', 'Olds', 0.25, 0.25],
    ['potato', 'Maine', 4, 6],
    ['potato', 'Chicago', 2, 3],
    ['radish', 'Olds', 0.5, 0.5],
    ['radish', 'Illinois', 0.5, 0.5],
    ['spinach', 'Missouri', 0.25, 0.25],
    ['spinach', 'Maine', 0.5, 0.5],
    ['summer-squash', 'Maine', 1, 1],
    ['summer-squash', 'Florida', 1, 1.5],
    ['swiss-chard', 'Missouri', 0.5, 0.5],
    ['swiss-chard', 'Illinois', 0.5, 1],
    ['tomato', 'Olds', 0.25, 0.25],
  ];

  test.each(rows)('%s: %s', (id, _chart, low, high) => {
    expectWithin([low, high], widened(depthOf(id), 0.25));
  });

  test.each(cropsOf(rows))('%s: no depth that no chart prints', (id) => {
    expectWithin(depthOf(id), widened(spanOf(rows, id), 0.25));
  });
});

/**
 * “Sow at two to three times the thickness of the seed” is taught, but does not hold as an equation: published
 * depths are 3 to 8 times the diameter of a sphere of the seed's mass at 1.2 g/cm3. What does hold is the order
 * (rank correlation 0.92 in the published rows; 0.8 leaves room for one or two crops to change places) and
 * that no crop is sown shallower than two diameters.
 */
describe('depth and size of seed', () => {
  const sown = [
    'snap-bean',
    'snap-pea',
    'sweet-corn',
    'summer-squash',
    'cucumber',
    'beet',
    'radish',
    'spinach',
    'onion',
    'kale',
    'tomato',
    'carrot',
    'lettuce',
  ];

  test('larger seed is sown deeper', () => {
    const depths = sown.map((id) => middleOf(depthOf(id)));
    expect(rankCorrelation(depths, sown.map(seedDiameterIn))).toBeGreaterThan(0.8);
  });

  test.each(sown)('%s is not sown shallower than two diameters', (id) => {
    expect(depthOf(id)[0]).toBeGreaterThan(2 * seedDiameterIn(id));
  });

  test('a snap bean of 100 to the ounce has the diameter of 7.7 mm that the rule was worked out with', () => {
    expect(diameterMm(28.35 / 100)).toBeCloseTo(7.7, 1);
  });
});

/**
 * In-row distance in inches. Parsons as above. Left out: the Colorado figures for beet and lettuce, which are
 * for block planting (equal distance on all sides). Hills are kept apart, since they hold several plants.
 * Tolerance: the record lies inside the span of the charts, and meets each state chart.
 */
describe('spacing in the row', () => {
  const states: readonly Row[] = [
    ['snap-bean', 'Maine', 2, 4],
    ['beet', 'Maine', 2, 3],
    ['beet', 'Missouri', 3, 3],
    ['broccoli', 'Maine', 24, 30],
    ['broccoli', 'Missouri', 24, 24],
    ['broccoli', 'Colorado', 18, 18],
    ['cabbage', 'Maine', 12, 18],
    ['cabbage', 'Missouri', 12, 12],
    ['carrot', 'Maine', 2, 3],
    ['carrot', 'Missouri', 3, 3],
    ['carrot', 'Colorado', 2, 3],
    ['sweet-corn', 'Maine', 6, 8],
    ['kale', 'Missouri', 8, 8],
    ['lettuce', 'Missouri, leaf', 3, 3],
    ['lettuce', 'Missouri, head', 6, 6],
    ['onion', 'Maine, sets', 1, 3],
    ['onion', 'Missouri, dry', 3, 3],
    ['onion', 'Parsons, plants', 4, 4],
    ['snap-pea', 'Maine', 1, 2],
    ['pepper', 'Maine', 18, 18],
    ['pepper', 'Missouri', 18, 18],
    ['pepper', 'Illinois', 18, 24],
    ['potato', 'Maine', 8, 12],
    ['spinach', 'Maine', 3, 4],
    ['spinach', 'Missouri', 3, 3],
    ['swiss-chard', 'Missouri', 3, 3],
    ['swiss-chard', 'Illinois', 4, 8],
    ['tomato', 'Maine', 18, 36],
    ['tomato', 'Missouri, staked', 18, 18],
    ['tomato', 'Missouri, on the ground', 36, 36],
  ];
  const others: readonly Row[] = [
    ['snap-bean', 'Olds', 2, 3],
    ['beet', 'Illinois', 2, 4],
    ['broccoli', 'Olds', 18, 24],
    ['cucumber', 'Olds', 12, 12],
    ['cucumber', 'Illinois, single plants', 12, 12],
    ['kale', 'Olds', 12, 18],
    ['radish', 'Olds', 1, 1],
    ['snap-pea', 'Olds', 1, 3],
    ['spinach', 'Illinois', 2, 4],
    ['summer-squash', 'Olds', 16, 24],
    ['summer-squash', 'Illinois, single plants', 18, 24],
    ['sweet-corn', 'Fedco, thinned', 12, 12],
  ];
  const all = [...states, ...others];

  test.each(states)('%s: %s', (id, _chart, low, high) => {
    expectToMeet(inRowOf(id), [low, high], 0);
  });

  test.each(cropsOf(all))('%s: no distance that no chart prints', (id) => {
    expectWithin(inRowOf(id), spanOf(all, id));
  });

  test.each([
    ['cucumber', '36 to 48'],
    ['summer-squash', '48'],
  ])('%s: the distance of hills, %s inches in Maine and Illinois, stands in its note', (id, inches) => {
    expect(cropOf(id).note).toContain(`${inches} inches apart`);
  });
});

/** Distance between rows in inches; Missouri's for hand cultivation. Tolerance as in the row. */
describe('spacing between rows', () => {
  const rows: readonly Row[] = [
    ['snap-bean', 'Maine', 24, 24],
    ['snap-bean', 'Olds', 18, 24],
    ['beet', 'Maine', 12, 18],
    ['beet', 'Missouri', 18, 18],
    ['broccoli', 'Maine', 24, 36],
    ['broccoli', 'Missouri', 30, 30],
    ['cabbage', 'Maine', 24, 36],
    ['cabbage', 'Missouri', 24, 24],
    ['carrot', 'Maine', 12, 18],
    ['carrot', 'Missouri', 18, 18],
    ['sweet-corn', 'Maine', 24, 36],
    ['cucumber', 'Maine', 48, 72],
    ['kale', 'Missouri', 24, 24],
    ['kale', 'Olds', 18, 24],
    ['lettuce', 'Missouri', 18, 18],
    ['lettuce', 'Olds', 12, 18],
    ['onion', 'Maine', 12, 18],
    ['onion', 'Missouri', 18, 18],
    ['snap-pea', 'Maine', 18, 36],
    ['pepper', 'Maine', 18, 24],
    ['pepper', 'Missouri', 30, 30],
    ['potato', 'Maine', 30, 36],
    ['potato', 'Chicago Botanic Garden', 24, 36],
    ['radish', 'Illinois', 12, 18],
    ['spinach', 'Maine', 12, 18],
    ['spinach', 'Missouri', 18, 18],
    ['summer-squash', 'Maine', 36, 36],
    ['summer-squash', 'Olds', 36, 48],
    ['swiss-chard', 'Missouri', 18, 18],
    ['swiss-chard', 'Illinois', 18, 24],
    ['tomato', 'Maine', 24, 48],
    ['tomato', 'Missouri, staked', 42, 42],
    ['tomato', 'Missouri, on the ground', 48, 48],
  ];

  test.each(rows)('%s: %s', (id, _chart, low, high) => {
    expectToMeet(betweenRowsOf(id), [low, high], 0);
  });

  test.each(cropsOf(rows))('%s: no distance that no chart prints', (id) => {
    expectWithin(betweenRowsOf(id), spanOf(rows, id));
  });
});

/**
 * Plants to 100 ft, worked out as 1200 over the inches in the row. Southern States: Vegetable Seed Guide,
 * Southern States Cooperative; the others as above, Maine's ten-foot counts times ten. Tolerance: one plant,
 * since charts drop the fraction (18 in gives 66.7, printed as 66).
 */
describe('plants to 100 ft of row', () => {
  const rows: readonly Row[] = [
    ['tomato', 'Maine', 30, 60],
    ['tomato', 'Olds', 50, 50],
    ['pepper', 'Maine', 60, 70],
    ['pepper', 'Illinois', 50, 75],
    ['pepper', 'Southern States', 66, 66],
    ['broccoli', 'Southern States', 66, 66],
    ['cabbage', 'Southern States', 50, 66],
  ];

  test.each(rows)('%s: %s', (id, _chart, low, high) => {
    const [close, wide] = inRowOf(id);
    expectToMeet([1200 / wide, 1200 / close], [low, high], 1);
  });
});

/**
 * Seed for 100 ft of row, in ounces (Maine's ten-foot figures times ten). Tolerance: the record spans the
 * charts, and its middle is within a factor of 3 of each, which is how far the charts themselves differ.
 */
describe('seed for 100 ft of row', () => {
  const rows: readonly Row[] = [
    ['snap-bean', 'Olds', 8, 8],
    ['snap-bean', 'Maine', 10, 20],
    ['beet', 'Olds', 1, 1],
    ['beet', 'Maine', 1, 1],
    ['beet', 'Missouri', 2, 2],
    ['broccoli', 'Olds', 0.25, 0.25],
    ['broccoli', 'Missouri', 0.5, 0.5],
    ['cabbage', 'Olds', 0.25, 0.25],
    ['cabbage', 'Missouri', 0.25, 0.25],
    ['carrot', 'Olds', 0.5, 0.5],
    ['carrot', 'Maine', 0.5, 0.5],
    ['carrot', 'Missouri', 0.25, 0.25],
    ['sweet-corn', 'Olds', 4, 4],
    ['sweet-corn', 'Maine', 5, 5],
    ['sweet-corn', 'Illinois', 1, 2],
    ['cucumber', 'Olds', 0.5, 0.5],
    ['cucumber', 'Maine', 0.5, 0.5],
    ['kale', 'Olds', 0.25, 0.25],
    ['kale', 'Missouri', 0.5, 0.5],
    ['lettuce', 'Olds', 0.25, 0.25],
    ['lettuce', 'Missouri', 0.25, 0.25],
    ['onion', 'Olds', 1, 1],
    ['onion', 'Illinois', 0.25, 0.25],
    ['snap-pea', 'Olds', 16, 16],
    ['snap-pea', 'Maine', 16, 16],
    ['potato', 'Maine', 320, 320],
    ['potato', 'Illinois', 160, 192],
    ['radish', 'Olds', 1, 1],
    ['spinach', 'Olds', 1, 1],
    ['spinach', 'Maine', 1, 1],
    ['spinach', 'Missouri', 1, 1],
    ['summer-squash', 'Olds', 1, 1],
    ['summer-squash', 'Maine', 1, 1],
    ['swiss-chard', 'Olds', 1, 1],
    ['swiss-chard', 'Missouri', 2, 2],
  ];

  test.each(rows)('%s: %s', (id, _chart, low, high) => {
    const seed = rangeOf(cropOf(id).seedPer100Ft!.value, 'mass', 'oz');
    expectWithin([low, high], seed);
    const apart = Math.sqrt(seed[0] * seed[1]) / Math.sqrt(low * high);
    expectWithin([apart, apart], [1 / 3, 3]);
  });
});

/**
 * Days to harvest. Left out: green onions and head lettuce, which are another harvest than the record's.
 * Tolerance: the record spans the charts, and goes no more than 15 days beyond them (cultivars).
 */
describe('days to harvest', () => {
  const rows: readonly Row[] = [
    ['beet', 'Missouri', 55, 65],
    ['beet', 'Colorado', 60, 60],
    ['broccoli', 'Missouri, transplants', 70, 80],
    ['broccoli', 'Colorado, from transplanting', 65, 65],
    ['cabbage', 'Missouri, transplants', 70, 80],
    ['cabbage', 'Colorado, from transplanting', 85, 85],
    ['carrot', 'Missouri', 70, 85],
    ['carrot', 'Colorado', 70, 70],
    ['cucumber', 'Illinois', 50, 65],
    ['kale', 'Missouri', 50, 65],
    ['lettuce', 'Missouri, leaf', 35, 50],
    ['lettuce', 'Colorado, leaf', 60, 60],
    ['onion', 'Missouri, dry, sets or plants', 100, 120],
    ['pepper', 'Missouri, transplants', 70, 80],
    ['potato', 'Illinois', 100, 120],
    ['radish', 'Illinois, spring', 22, 28],
    ['snap-bean', 'Illinois, bush', 51, 58],
    ['snap-pea', 'Illinois, snap', 70, 80],
    ['spinach', 'Missouri', 40, 50],
    ['summer-squash', 'Illinois', 45, 55],
    ['swiss-chard', 'Missouri', 55, 65],
    ['tomato', 'Missouri, on the ground', 75, 90],
    ['tomato', 'Missouri, staked', 70, 75],
  ];

  test.each(rows)('%s: %s', (id, _chart, low, high) => {
    expectWithin([low, high], maturityOf(id));
  });

  test.each(cropsOf(rows))('%s: no time far from every chart', (id) => {
    expectWithin(maturityOf(id), widened(spanOf(rows, id), 15));
  });

  test.each([
    ['beet', 'sowing'],
    ['broccoli', 'planting-out'],
    ['cabbage', 'planting-out'],
    ['carrot', 'sowing'],
    ['lettuce', 'sowing'],
    ['onion', 'planting-out'],
    ['pepper', 'planting-out'],
    ['tomato', 'planting-out'],
  ])('%s: the days count from %s', (id, from) => {
    expect(cropOf(id).maturity.from).toBe(from);
  });
});

/**
 * Days to emergence, seed 1/2 in deep, at 32, 41, 50 ... 104 F. J. F. Harrington and P. A. Minges, Vegetable
 * Seed Germination, California Agricultural Extension Mimeo Leaflet, 1954, as reprinted in Teaching Organic
 * Farming and Gardening, University of California, Santa Cruz, Unit 1.3, Appendix 4. `null`: no germination,
 * or not tested. Exact at the temperatures of the table.
 */
describe('days to emergence', () => {
  const none = null;
  const rows: readonly (readonly [string, readonly (number | null)[]])[] = [
    // 95 F is left out: two reprints print 6 days, a third prints no germination.
    ['snap-bean', [none, none, none, 16, 11, 8, 6, none, none]],
    ['beet', [none, 42, 17, 10, 6, 5, 5, 5, none]],
    ['cabbage', [none, none, 15, 9, 6, 5, 4, none, none]],
    ['carrot', [none, 51, 17, 10, 7, 6, 6, 9, none]],
    ['sweet-corn', [none, none, 22, 12, 7, 4, 4, 3, none]],
    ['cucumber', [none, none, none, 13, 6, 4, 3, 3, none]],
    ['lettuce', [49, 15, 7, 4, 3, 2, 3, none, none]],
    ['onion', [136, 31, 13, 7, 5, 4, 4, 13, none]],
    ['snap-pea', [none, 36, 14, 9, 8, 6, 6, none, none]],
    ['pepper', [none, none, none, 25, 13, 8, 8, 9, none]],
    ['radish', [none, 29, 11, 6, 4, 4, 3, none, none]],
    ['spinach', [63, 23, 12, 7, 6, 5, 6, none, none]],
    ['tomato', [none, none, 43, 14, 8, 6, 6, 9, none]],
  ];

  test.each(rows)('%s', (id, days) => {
    const printed = days.flatMap((day, index) =>
      day === null ? [] : [{ at: `${32 + 9 * index} F`, days: day }],
    );
    expect(cropOf(id).emergence.points).toEqual(printed);
  });

  test.each([
    // The Colorado chart; the 1954 table has no broccoli.
    ['broccoli', '3 to 10 days'],
    // Vegetable Seed Sow Times, University of California Cooperative Extension blog, 2013.
    ['kale', '6 to 10 days'],
  ])('%s: %s', (id, days) => {
    expect(cropOf(id).emergence.days).toBe(days);
  });
});

/**
 * Soil temperature for germination, F. Florida: minimum, optimum and maximum of a University of Florida IFAS
 * list, reprinted by Sundown Farms, which prints 106 for the usual 105. Tolerance: 5 F, the step of the list;
 * lists of other states differ by it. A record's own range may not be wider than 10 F.
 */
describe('soil temperature for germination', () => {
  const rows: readonly (readonly [string, number, number, number])[] = [
    ['snap-bean', 60, 85, 95],
    ['beet', 40, 85, 95],
    ['broccoli', 40, 85, 95],
    ['cabbage', 40, 85, 95],
    ['carrot', 40, 80, 95],
    ['sweet-corn', 50, 85, 105],
    ['cucumber', 60, 95, 105],
    ['lettuce', 32, 75, 75],
    ['onion', 32, 80, 95],
    ['snap-pea', 40, 75, 85],
    ['pepper', 60, 85, 95],
    ['radish', 40, 80, 95],
    ['spinach', 32, 70, 75],
    ['summer-squash', 65, 95, 105],
    ['swiss-chard', 40, 85, 95],
    ['tomato', 50, 80, 95],
  ];

  test.each(rows)('%s: Florida', (id, minimum, optimum, maximum) => {
    const soil = cropOf(id).soilTemperature!;
    for (const [written, printed] of [
      [soil.minimum, minimum],
      [soil.optimum, optimum],
      [soil.maximum, maximum],
    ] as const) {
      const range = rangeOf(written, 'temperature', 'F');
      expect(range[1] - range[0]).toBeLessThanOrEqual(10 + rounding);
      expectWithin([printed, printed], widened(range, 5));
    }
  });

  /** “Realistic” temperatures: Check Soil Temperature, Texas A&M University, Aggie Horticulture. Exact. */
  test.each([
    ['snap-bean', 72],
    ['beet', 45],
    ['carrot', 45],
    ['sweet-corn', 55],
    ['cucumber', 64],
    ['lettuce', 45],
    ['spinach', 45],
    ['summer-squash', 70],
    ['tomato', 55],
  ])('%s: sowing makes sense from %s F', (id, printed) => {
    const [low, high] = rangeOf(cropOf(id).soilTemperature!.practical!, 'temperature', 'F');
    expect(low).toBeCloseTo(printed, 9);
    expect(high).toBeCloseTo(printed, 9);
  });
});

/**
 * Hardiness groups and planting times of Colorado. Its very tender list was read only in part: tomato and
 * pepper are there from memory, and stand so in Utah (T. Beddes, Utah State University Extension, 2020).
 * Tolerance: the group exactly; a window must come within a week of Colorado's, since states differ by that.
 */
describe('hardiness and planting time', () => {
  const windows: Readonly<Record<string, Range>> = {
    hardy: [-4, -2],
    'semi-hardy': [-2, 0],
    tender: [0, 0],
    'very-tender': [2, Infinity],
  };
  const rows = [
    ['broccoli', 'hardy'],
    ['cabbage', 'hardy'],
    ['lettuce', 'hardy'],
    ['onion', 'hardy'],
    ['radish', 'hardy'],
    ['snap-pea', 'hardy'],
    ['spinach', 'hardy'],
    ['beet', 'semi-hardy'],
    ['carrot', 'semi-hardy'],
    ['potato', 'semi-hardy'],
    ['swiss-chard', 'semi-hardy'],
    ['cucumber', 'tender'],
    ['snap-bean', 'tender'],
    ['summer-squash', 'tender'],
    ['sweet-corn', 'tender'],
    ['pepper', 'very-tender'],
    ['tomato', 'very-tender'],
  ] as const;

  test.each(rows)('%s is %s', (id, group) => {
    expect(cropOf(id).hardiness.group).toBe(group);
  });

  test.each(rows)('%s: its first planting comes within a week of the window of the %s group', (id, group) => {
    const [first] = windowsOf(id);
    expectToMeet(first!, windows[group]!, 1);
  });

  test.each([...crops.keys()])('%s: each window opens before it closes', (id) => {
    for (const [opens, closes] of windowsOf(id)) expect(opens).toBeLessThan(closes);
  });

  test.each(rows.filter(([, group]) => group.endsWith('tender')))(
    '%s, %s, is never planted before the last freeze',
    (id) => {
      for (const [opens] of windowsOf(id)) expect(opens).toBeGreaterThanOrEqual(0);
    },
  );

  /** Texas A&M AgriLife Extension, Odessa American, 2021: 4 to 6 weeks before the average last freeze. */
  test('onion plants go out 6 to 4 weeks before the last freeze', () => {
    const planting = cropOf('onion').plantings.find(({ method }) => method === 'transplant');
    expect(planting?.spring).toMatchObject({ opens: '-6 weeks', closes: '-4 weeks' });
  });
});

/** Age of transplants in weeks. The record spans the charts. Know How: University of Illinois Extension. */
describe('age of transplants', () => {
  test.each([
    ['broccoli', 'Colorado', 5, 7],
    ['broccoli', 'Know How', 4, 6],
    ['cabbage', 'Colorado', 5, 7],
    ['cucumber', 'Illinois', 3, 4],
    ['pepper', 'Illinois', 8, 10],
  ] satisfies Row[])('%s: %s', (id, _chart, low, high) => {
    const planting = cropOf(id).plantings.find(({ method }) => method === 'transplant');
    expectWithin([low, high], rangeOf(planting!.age!.value, 'duration', 'weeks'));
  });
});

/**
 * Day length at which onions form bulbs: Onion Plant Daylength Guide, Dixondale Farms; tolerance half an hour.
 * The bands of latitude are those of seedsmen's maps, from memory; tolerance 2 degrees. The northern end of the
 * long-day band is not held to the maps, since they end with the United States.
 */
describe('onions and day length', () => {
  test.each([
    ['short-day', [10, 12], [25, 35]],
    ['intermediate', [12, 14], [32, 42]],
    ['long-day', [14, 16], [37, Infinity]],
  ] as const)('%s: bulbs at %s hours; grown at %s degrees, from memory', (name, hours, latitudes) => {
    const written = cropOf('onion').dayLength!.find((each) => each.class === name)!;
    const bulbing = rangeOf(written.bulbing, 'day-length', 'hours');
    expectWithin(bulbing, widened(hours, 0.5));
    expectWithin(hours, widened(bulbing, 0.5));
    const grown = rangeOf(written.latitudes, 'angle', 'deg');
    expectWithin(grown, widened(latitudes, 2));
    expect(Math.abs(grown[0] - latitudes[0])).toBeLessThanOrEqual(2);
  });
});

/** What the tables look at, as it is written in a crop record. */
interface WrittenCrop {
  readonly id: string;
  readonly hardiness: { readonly group: string };
  readonly plantings: readonly {
    readonly method: string;
    readonly age?: { readonly value: string };
    readonly spring?: { readonly opens: string; readonly closes: string };
  }[];
  readonly depth: { readonly value: string };
  readonly spacing: {
    readonly inRow: { readonly value: string };
    readonly betweenRows: { readonly value: string };
  };
  readonly seedsPerOunce?: { readonly low: number; readonly high: number };
  readonly seedPer100Ft?: { readonly value: string };
  readonly emergence: { readonly points?: readonly { at: string; days: number }[]; readonly days?: string };
  readonly soilTemperature?: {
    readonly minimum: string;
    readonly optimum: string;
    readonly maximum: string;
    readonly practical?: string;
  };
  readonly maturity: { readonly days: string; readonly from: string };
  readonly dayLength?: readonly {
    readonly class: string;
    readonly bulbing: string;
    readonly latitudes: string;
  }[];
  readonly note?: string;
}

function readCrops(): ReadonlyMap<string, WrittenCrop> {
  const names = readdirSync(`${root}crops`).filter((name) => name.endsWith('.yaml'));
  return new Map(
    names.sort().map((name) => {
      const crop = parse(readFileSync(`${root}crops/${name}`, 'utf8')) as WrittenCrop;
      return [crop.id, crop];
    }),
  );
}

function readSourceIds(): ReadonlySet<string> {
  const names = readdirSync(`${root}content`).filter((name) => /^sources.*\.yaml$/.test(name));
  const records = names.flatMap(
    (name) => parse(readFileSync(`${root}content/${name}`, 'utf8')) as { id: string }[],
  );
  return new Set(records.map(({ id }) => id));
}

function cropOf(id: string): WrittenCrop {
  const crop = crops.get(id);
  if (!crop) throw new Error(`no crop record ${id}`);
  return crop;
}

/** Every id under a key `sources`, however deep. */
function sourcesIn(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === 'sources' ? (inner as string[]) : sourcesIn(inner),
  );
}

/** A written quantity in a unit of our choice; throws at one that cannot be read. */
function rangeOf(written: string, dimension: Dimension, unit: string): Range {
  const quantity = parseQuantity(written, dimension);
  if ('fault' in quantity) throw new Error(`“${written}”: ${quantity.fault}`);
  return [fromHeld(quantity.low, unit), fromHeld(quantity.high, unit)];
}

function depthOf(id: string): Range {
  return rangeOf(cropOf(id).depth.value, 'length', 'in');
}

function inRowOf(id: string): Range {
  return rangeOf(cropOf(id).spacing.inRow.value, 'length', 'in');
}

function betweenRowsOf(id: string): Range {
  return rangeOf(cropOf(id).spacing.betweenRows.value, 'length', 'in');
}

function maturityOf(id: string): Range {
  return rangeOf(cropOf(id).maturity.days, 'duration', 'days');
}

function seedsPerOunceOf(id: string): { readonly low: number; readonly high: number } {
  const written = cropOf(id).seedsPerOunce;
  if (!written) throw new Error(`${id} has no seed count`);
  return written;
}

/** Spring windows in weeks from the average last freeze, in the order of the record. */
function windowsOf(id: string): Range[] {
  return cropOf(id).plantings.flatMap(({ spring }) =>
    spring
      ? [
          [
            rangeOf(spring.opens, 'duration', 'weeks')[0],
            rangeOf(spring.closes, 'duration', 'weeks')[1],
          ] as const,
        ]
      : [],
  );
}

/** Diameter of a sphere of the seed's mass at the middle seed count, in inches. */
function seedDiameterIn(id: string): number {
  const { low, high } = seedsPerOunceOf(id);
  return diameterMm(28.349523125 / middleOf([low, high])) / 25.4;
}

/** Diameter of a sphere of a mass in grams at 1.2 g/cm3. */
function diameterMm(massG: number): number {
  return Math.cbrt((6 * massG) / (Math.PI * 0.0012));
}

function middleOf([low, high]: Range): number {
  return (low + high) / 2;
}

function widened([low, high]: Range, by: number): Range {
  return [low - by, high + by];
}

/** From the least to the greatest figure that the rows print for a crop. */
function spanOf(rows: readonly Row[], id: string): Range {
  const own = rows.filter(([crop]) => crop === id);
  return [Math.min(...own.map(([, , low]) => low)), Math.max(...own.map(([, , , high]) => high))];
}

function cropsOf(rows: readonly Row[]): string[] {
  return [...new Set(rows.map(([crop]) => crop))];
}

function expectWithin(inner: Range, outer: Range): void {
  expect(inner[0]).toBeGreaterThanOrEqual(outer[0] - rounding);
  expect(inner[1]).toBeLessThanOrEqual(outer[1] + rounding);
}

/** Two ranges meet when neither lies beyond the other by more than the tolerance. */
function expectToMeet(one: Range, other: Range, tolerance: number): void {
  expect(one[0]).toBeLessThanOrEqual(other[1] + tolerance + rounding);
  expect(one[1]).toBeGreaterThanOrEqual(other[0] - tolerance - rounding);
}

/** Spearman's coefficient: the correlation of the ranks, equal values sharing their mean rank. */
function rankCorrelation(one: readonly number[], other: readonly number[]): number {
  const [x, y] = [ranksOf(one), ranksOf(other)];
  const mean = (one.length + 1) / 2;
  const sumOf = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, index) => sum + (value - mean) * (b[index]! - mean), 0);
  return sumOf(x, y) / Math.sqrt(sumOf(x, x) * sumOf(y, y));
}

function ranksOf(values: readonly number[]): number[] {
  return values.map((value) => {
    const below = values.filter((other) => other < value).length;
    const equal = values.filter((other) => other === value).length;
    return below + (equal + 1) / 2;
  });
}
