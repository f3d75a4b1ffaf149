/** The water of a bed in a week without rain: how much, and how long its drip lines run or how many cans that is. */
import { dripTime, waterVolume, wateringCans, weeklyWater } from '../agronomy/watering.ts';
import { paragraph } from '../document/build.ts';
import type { Block } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import type { SowingBed } from './bed.ts';
import { sayWith } from './say-with.ts';
import type { SheetContext } from './sheet-context.ts';

export interface BedWater {
  readonly blocks: () => readonly Block[];
  readonly findings: readonly Finding[];
}

export function waterOfBed(context: SheetContext, bed: SowingBed): BedWater {
  const { insideLengthMm, insideDepthMm, irrigation, cover } = bed;
  const water = weeklyWater({ rainMm: 0, mulch: 'none' });
  const volume = waterVolume({ water, areaM2: (insideLengthMm * insideDepthMm) / 1e6 });
  const by = irrigation
    ? dripTime({
        water,
        line: {
          emitterSpacingMm: irrigation.emitterSpacing.low,
          emitterLPerHour: irrigation.emitterFlow.low,
        },
        lines: irrigation.lines,
        bedWidthMm: insideDepthMm,
      })
    : wateringCans(volume);
  return {
    findings: [water, volume, by],
    blocks: () => {
      const { printer, wording } = context;
      return [
        paragraph([
          ...sayWith(wording.say, 'bed-water.week', {
            water: printer.print(water),
            volume: printer.print(volume),
          }),
          ' ',
          ...sayWith(wording.say, irrigation ? 'bed-water.drip' : 'bed-water.cans', {
            by: printer.print(by),
            lines: irrigation?.lines ?? 0,
          }),
          ' ',
          wording.say(`bed-water.rain-${cover}`),
        ]),
      ];
    },
  };
}
