/** What the heat of a frame is worked out from in a region. */
import { soilTemperatureYear } from '../climate/soil-temperature.ts';
import { stationSpreadC, type FrameClimate } from '../structures/frame-heat/outside.ts';
import type { RegionFacts } from './facts.ts';

/** Open ground where the region's record does not say what its soil is: moist loam, by our own judgement. */
const usualSoil = { texture: 'loam', moisture: 'moist', source: 'frame-heat-judgement' } as const;

/** Undefined where the region gives no temperatures. */
export function frameClimate({
  region,
  latitudeDeg,
  year,
  air,
  soil,
}: RegionFacts): FrameClimate | undefined {
  if (!air) return undefined;
  const spreadC = region.freeze.kind === 'daily' ? stationSpreadC(region.freeze.station) : undefined;
  return {
    place: { latitudeDeg, year },
    air,
    soil: soil ?? soilTemperatureYear(air, usualSoil),
    ...(spreadC ? { spreadC } : {}),
  };
}
