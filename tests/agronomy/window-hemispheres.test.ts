/** The windows of a southern place are those of its mirror image in the north, half a year on. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { plantingWindows, type WindowClimate } from '../../scripts/agronomy/windows.ts';
import type { Crop } from '../../scripts/records/schemas/crop.ts';
import { readGuide } from '../../scripts/records/read-guide.ts';
import { repository } from '../demo/demo-guide.ts';
import { airYear, given, soilYear } from './years.ts';

let crops: readonly Crop[];
beforeAll(async () => {
  crops = (await readGuide({ root: repository, builtInRoot: repository })).guide.crops;
});

/** From December 31 to June 30: the middle of winter here and there. */
const halfYear = 181;

const places = fc.record({
  last: fc.integer({ min: 20, max: 168 }),
  /** Absent where no freeze comes in fall. */
  season: fc.option(fc.integer({ min: 66, max: 300 }), { freq: 2, nil: undefined }),
  meanF: fc.integer({ min: 20, max: 74 }),
  halfRangeF: fc.integer({ min: 8, max: 32 }),
});

test('for every crop, in any climate', () => {
  expect(crops.length).toBeGreaterThanOrEqual(50);
  fc.assert(
    fc.property(places, ({ last, season, meanF, halfRangeF }) => {
      const climate = (shift: number): WindowClimate => {
        const swing = { meanF, halfRangeF, coldestDay: 20 + shift };
        return {
          lastFreeze: given('last', last + shift),
          firstFreeze: (thresholdC) =>
            given(
              'first',
              season === undefined
                ? undefined
                : last + season + shift + (thresholdC > -1 ? 0 : thresholdC > -3 ? 10 : 20),
            ),
          lateFreeze: given('late', last + 12 + shift),
          air: airYear(swing),
          soil: soilYear(swing),
        };
      };
      for (const crop of crops) {
        const north = plantingWindows(crop, climate(0));
        const south = plantingWindows(crop, climate(halfYear));
        expect(south.map(({ edges }) => edges)).toEqual(north.map(({ edges }) => edges));
        north.forEach(({ plant, harvest }, index) => {
          const turned = south[index]!;
          for (const [here, there] of [
            [plant.value, turned.plant.value],
            [harvest.value, turned.harvest.value],
          ] as const) {
            if (here.kind === 'none') expect(there).toEqual(here);
            else expect(there).toEqual({ ...here, from: here.from + halfYear, to: here.to + halfYear });
          }
        });
      }
    }),
    { numRuns: 15 },
  );
});

test('no fall window opens before the ground lets anything be planted in spring, whatever the crop, toward the pole', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 140, max: 172 }),
      fc.integer({ min: 50, max: 110 }),
      fc.integer({ min: 14, max: 30 }),
      (last, season, meanF) => {
        const swing = { meanF, halfRangeF: 32 };
        const soil = soilYear(swing);
        const climate: WindowClimate = {
          lastFreeze: given('last', last),
          firstFreeze: (thresholdC) =>
            given('first', last + season + (thresholdC > -1 ? 0 : thresholdC > -3 ? 11 : 24)),
          air: airYear(swing),
          soil,
        };
        for (const crop of crops) {
          const windows = plantingWindows(crop, climate);
          const spring = windows.find((one) => one.season === 'spring')!.plant.value;
          const fall = windows.find((one) => one.season === 'fall')?.plant.value;
          if (fall?.kind !== 'date-range') continue;
          if (spring.kind === 'date-range') expect(fall.from).toBeGreaterThan(spring.to);
          expect(soil.at(fall.from, 25)).toBeGreaterThanOrEqual((40 - 32) / 1.8 - 1e-9);
        }
      },
    ),
    { numRuns: 30 },
  );
});
