import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plantingActs } from '../../../scripts/drawings/charts/acts.ts';
import { piecesIn } from '../../../scripts/drawings/charts/day-scale.ts';
import { inLanes, type PlantingBar } from '../../../scripts/drawings/charts/lanes.ts';

const year = { from: 1, to: 365 };
const bar = (act: PlantingBar['act'], from: number, to: number): PlantingBar => ({ act, from, to });

describe('bars of a row', () => {
  it.each([
    ['no bars', [], 1],
    [
      'acts one after the other',
      [bar('start-indoors', 60, 75), bar('set-out', 111, 140), bar('harvest', 190, 275)],
      1,
    ],
    ['harvest that starts while sowing goes on', [bar('direct-sow', 83, 190), bar('harvest', 150, 310)], 2],
    ['harvest on the last day of planting', [bar('set-out', 100, 120), bar('harvest', 120, 150)], 2],
    ['sowing and setting out at the same time', [bar('direct-sow', 76, 125), bar('set-out', 83, 118)], 2],
    [
      'both, while harvest has begun',
      [bar('direct-sow', 76, 125), bar('set-out', 83, 118), bar('harvest', 110, 165)],
      3,
    ],
    ['two sowings that overlap become one', [bar('direct-sow', 76, 125), bar('direct-sow', 110, 140)], 1],
    ['overlap only across New Year', [bar('set-out', 1, 20), bar('harvest', 300, 380)], 2],
  ] as const)('%s', (_, bars, count) => {
    expect(inLanes(bars, year).count).toBe(count);
  });

  it('keep harvest below planting', () => {
    const { bars } = inLanes(
      [bar('harvest', 100, 200), bar('direct-sow', 80, 120), bar('set-out', 90, 130)],
      year,
    );
    const lane = (act: PlantingBar['act']): number => bars.find((one) => one.act === act)!.lane;
    expect([lane('direct-sow'), lane('set-out'), lane('harvest')]).toEqual([0, 1, 2]);
  });

  it('never hide one another, and lose no day of any act', () => {
    const anyBar = fc
      .record({
        act: fc.constantFrom(...plantingActs),
        from: fc.integer({ min: -60, max: 420 }),
        days: fc.nat(200),
      })
      .map(({ act, from, days }) => bar(act, from, from + days));
    fc.assert(
      fc.property(fc.array(anyBar, { maxLength: 8 }), (bars) => {
        const lanes = inLanes(bars, year);
        lanes.bars.forEach((one, index) => {
          expect(one.lane).toBeLessThan(lanes.count);
          for (const other of lanes.bars.slice(index + 1)) {
            expect(one.lane === other.lane && one.from <= other.to && other.from <= one.to).toBe(false);
          }
        });
        for (const act of plantingActs) {
          const wanted = daysOf(bars.filter((one) => one.act === act).flatMap((one) => piecesIn(one, year)));
          expect(daysOf(lanes.bars.filter((one) => one.act === act))).toEqual(wanted);
        }
      }),
    );
  });
});

function daysOf(pieces: readonly { from: number; to: number }[]): readonly number[] {
  const days = new Set(
    pieces.flatMap(({ from, to }) => Array.from({ length: to - from + 1 }, (_, index) => from + index)),
  );
  return [...days].sort((a, b) => a - b);
}
