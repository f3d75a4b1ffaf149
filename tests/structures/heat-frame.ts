/** Frames and climates that the tests of heat are made with. */
import { dailyCurve } from '../../scripts/climate/temperature-curve.ts';
import { soilTemperatureYear } from '../../scripts/climate/soil-temperature.ts';
import type { TemperatureYear } from '../../scripts/climate/temperature-year.ts';
import type { Surroundings } from '../../scripts/structures/frame-heat/balance.ts';
import {
  groundEdgeLossWPerMK,
  soilHeat,
  type FrameEnvelope,
} from '../../scripts/structures/frame-heat/envelope.ts';
import { glazingKinds } from '../../scripts/structures/frame-heat/glazing.ts';
import { softwoodU } from '../../scripts/structures/frame-heat/materials.ts';
import type { FrameClimate } from '../../scripts/structures/frame-heat/outside.ts';

const moistLoam = { texture: 'loam', moisture: 'moist' } as const;

/** A board frame of 3 by 6 ft, 18 in high behind and 12 in front, boards 38 mm thick, with one pane and few bars. */
export const boardFrame: FrameEnvelope = {
  glazing: { ...glazingKinds['single-glass'], areaM2: 1.45, slopeDeg: 9.5, azimuthDeg: 0 },
  walls: [
    { areaM2: 1.83 * (0.46 + 0.3) + 2 * 0.91 * 0.38, uWm2K: softwoodU(0.038) },
    { areaM2: 0.24, uWm2K: softwoodU(0.035) },
  ],
  ground: {
    ...moistLoam,
    areaM2: 1.67,
    perimeterM: 5.48,
    edgeLossWPerMK: groundEdgeLossWPerMK({
      wallThicknessM: 0.038,
      bedDepthM: 0.91,
      conductivityWmK: soilHeat(moistLoam).conductivityWmK,
    }),
  },
  inside: { lengthM: 1.83, depthM: 0.91, polewardHeightM: 0.46, equatorHeightM: 0.3, sideHeightM: 0.38 },
  innerVolumeM3: 0.63,
  airChangesPerHour: 4,
};

export const boardVent = { widthM: 1.83, sashLengthM: 0.93 } as const;

/** Monthly mean lows and highs on a wave of the year, in degrees Celsius. */
export function climateAt(
  latitudeDeg: number,
  {
    meanC = 9,
    halfC = 12,
    swingC = 12,
  }: { readonly meanC?: number; readonly halfC?: number; readonly swingC?: number } = {},
): FrameClimate {
  const coldest = latitudeDeg < 0 ? 6.5 : 0.5;
  const means = Array.from(
    { length: 12 },
    (_, month) => meanC - halfC * Math.cos((2 * Math.PI * (month - coldest)) / 12),
  );
  const air: TemperatureYear = {
    minimumC: dailyCurve(means.map((mean) => mean - swingC / 2)),
    maximumC: dailyCurve(means.map((mean) => mean + swingC / 2)),
    sources: ['test'],
  };
  return {
    place: { latitudeDeg, year: 2026 },
    air,
    soil: soilTemperatureYear(air, { ...moistLoam, source: 'test' }),
  };
}

/** A still, dark, dry time at one temperature, all round. */
export function dark(temperatureC: number, more: Partial<Surroundings> = {}): Surroundings {
  return {
    outsideC: temperatureC,
    skyCoolingK: 0,
    groundBesideC: temperatureC,
    groundBelowC: temperatureC,
    sun: { soilW: 0, airW: 0 },
    cover: 'off',
    ...more,
  };
}
