/** What goes wrong in a bed: one crop shades another, no insect or wind reaches a flower, or the cover is too low. */
import type { Crop } from '../records/schemas/crop.ts';

export interface PlannedRow {
  readonly crop: Crop;
  /** From the poleward edge of the bed to the middle of the row. */
  readonly fromPolewardMm: number;
}

export type BedWarning =
  /** `tall` stands between the noon sun and `low`, and its shadow reaches it. */
  | { readonly kind: 'shades'; readonly tall: string; readonly low: string; readonly shadowMm: number }
  /** The crop sets fruit by insects, and the cover keeps them out. */
  | { readonly kind: 'needs-insects'; readonly crop: string }
  /** The crop grows taller than the room under the cover. */
  | { readonly kind: 'outgrows-cover'; readonly crop: string }
  /** The crop is pollinated by wind and stands in too few rows side by side. */
  | { readonly kind: 'needs-block'; readonly crop: string; readonly rows: number; readonly atLeast: number };

/**
 * One warning for each pair of crops of which the taller (by its published greatest height) stands equatorward of the
 * lower and throws its noon shadow on it. `noonSunDeg` is the height of the noon sun, 90 straight above; a sun at or
 * below 0 throws an endless shadow.
 */
export function shadeWarnings(rows: readonly PlannedRow[], noonSunDeg: number): readonly BedWarning[] {
  const found = new Map<string, BedWarning>();
  for (const tall of rows)
    for (const low of rows) {
      const rise = heightMm(tall.crop) - heightMm(low.crop);
      const distance = tall.fromPolewardMm - low.fromPolewardMm;
      const shadowMm = shadowOf(rise, noonSunDeg);
      const key = `${tall.crop.id} ${low.crop.id}`;
      if (rise <= 0 || distance <= 0 || shadowMm < distance || found.has(key)) continue;
      found.set(key, { kind: 'shades', tall: tall.crop.id, low: low.crop.id, shadowMm });
    }
  return [...found.values()];
}

/** How far a shadow reaches at noon on the level at the height of the lower crop. */
export function shadowOf(riseMm: number, noonSunDeg: number): number {
  if (riseMm <= 0) return 0;
  return noonSunDeg <= 0 ? Infinity : riseMm / Math.tan((Math.min(noonSunDeg, 90) * Math.PI) / 180);
}

/** Rows of a wind-pollinated crop that make a block; published as "not one or two long rows". */
export const blockRows = 3;

/**
 * Crops whose harvest fails for want of pollination. `cover` is what stands over the bed while they flower: a closed
 * screen or frame keeps insects out.
 *
 * Source: Mississippi State University Extension, Pollination (Vegetable Gardening in Mississippi).
 */
export function pollinationWarnings(
  planted: readonly { readonly crop: Crop; readonly rows: number }[],
  cover: 'open' | 'closed',
): readonly BedWarning[] {
  return planted.flatMap(({ crop, rows }): BedWarning[] => {
    const by = crop.pollination?.by;
    if (by === 'insects' && cover === 'closed') return [{ kind: 'needs-insects', crop: crop.id }];
    if (by === 'wind' && rows < blockRows)
      return [{ kind: 'needs-block', crop: crop.id, rows, atLeast: blockRows }];
    return [];
  });
}

/** Crops whose greatest published height is more than the room between the soil and the cover. */
export function heightWarnings(
  planted: readonly { readonly crop: Crop }[],
  clearHeightMm: number,
): readonly BedWarning[] {
  return planted.flatMap(({ crop }): BedWarning[] =>
    heightMm(crop) > clearHeightMm ? [{ kind: 'outgrows-cover', crop: crop.id }] : [],
  );
}

function heightMm(crop: Crop): number {
  return crop.height.value.high;
}
