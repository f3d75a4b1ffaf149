/**
 * Planting windows of one crop in one region: when to start indoors, sow, set out and harvest, in spring, for
 * fall and over winter, from the crop's hardiness group, the region's freeze dates and its temperatures. Every
 * window is a finding; "no window here" is a finding with its reason.
 */
import { none, type DateRangeFinding } from '../findings/finding.ts';
import type { Crop, PlantingMethod } from '../records/schemas/crop.ts';
import { overwinterWindows } from './overwinter.ts';
import type { WindowClimate } from './window-climate.ts';
import { fallPlanting, type SpringBefore } from './window-fall.ts';
import { frostFreePlanting, isFrostFree } from './window-frost-free.ts';
import { completed } from './window-harvest.ts';
import {
  daysAfterPlanting,
  merged,
  noEdges,
  type EdgeRule,
  type Planting,
  type WindowEdges,
  type WindowSeason,
} from './window-parts.ts';
import { springPlanting, type PlantingEdges } from './window-spring.ts';

export { daysAfterPlanting, merged, type EdgeRule, type WindowClimate, type WindowEdges, type WindowSeason };

export interface PlantingWindows {
  readonly method: PlantingMethod;
  readonly season: WindowSeason;
  /** Only for transplants. */
  readonly startIndoors?: DateRangeFinding;
  /** Sowing, setting out transplants, or planting sets and seed pieces. */
  readonly plant: DateRangeFinding;
  readonly harvest: DateRangeFinding;
  /** The rule that set each edge of `plant`. */
  readonly edges: WindowEdges;
}

/**
 * Every window of a crop, in the order of the record's plantings, spring before fall, and overwinter last. A place
 * without an average last freeze has neither: there each planting has one window, of season `year`.
 */
export function plantingWindows(crop: Crop, climate: WindowClimate): readonly PlantingWindows[] {
  if (isFrostFree(climate)) return crop.plantings.map((planting) => yearWindows(crop, planting, climate));
  const overwinter = overwinterWindows(crop, climate);
  const windows = crop.plantings.flatMap((planting, index) => {
    const found = springPlanting(crop, planting, climate);
    const spring = springWindows(crop, planting, climate, { found, overwinter });
    const main = index === 0 && planting.fall;
    const before = { plant: spring.plant, notBefore: found.notBefore };
    return main ? [spring, fallWindows(crop, planting, climate, before)] : [spring];
  });
  return overwinter ? [...windows, overwinter] : windows;
}

function yearWindows(crop: Crop, planting: Planting, climate: WindowClimate): PlantingWindows {
  const { plant, edges } = frostFreePlanting(crop, planting, climate);
  return {
    method: planting.method,
    season: 'year',
    ...completed(crop, planting, climate, 'year', plant),
    edges,
  };
}

function springWindows(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  { found, overwinter }: { found: PlantingEdges; overwinter: PlantingWindows | undefined },
): PlantingWindows {
  const { plant, edges } = isReplaced(crop, planting, overwinter) ? replaced(found) : found;
  return {
    method: planting.method,
    season: 'spring',
    ...completed(crop, planting, climate, 'spring', plant),
    edges,
  };
}

/** Where winters let a crop be planted in fall, the same way of planting it in spring may come to too little. */
function isReplaced(crop: Crop, planting: Planting, overwinter: PlantingWindows | undefined): boolean {
  return (
    crop.overwinter?.replacesSpring === true &&
    overwinter?.method === planting.method &&
    overwinter.plant.value.kind === 'date-range'
  );
}

function replaced({ plant }: PlantingEdges): PlantingEdges {
  return { plant: { ...plant, value: none('planted-in-fall') }, edges: noEdges };
}

function fallWindows(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  spring: SpringBefore,
): PlantingWindows {
  const { plant, edges } = fallPlanting(crop, planting, climate, spring);
  return {
    method: planting.method,
    season: 'fall',
    ...completed(crop, planting, climate, 'fall', plant),
    edges,
  };
}
