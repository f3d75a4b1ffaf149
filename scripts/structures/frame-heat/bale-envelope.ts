/** A frame of straw bales under sashes as the heat sees it. */
import type { SoilMoisture } from '../../climate/soil-temperature.ts';
import type { SoilTexture } from '../../records/schemas/region.ts';
import type { FrameGeometry, PlacedBale, WallName } from '../geometry.ts';
import { groundEdgeLossWPerMK, soilHeat, type FrameEnvelope, type FramePart } from './envelope.ts';
import { glazingKinds, type GlazingKind } from './glazing.ts';
import { softwoodU, strawU } from './materials.ts';
import type { VentOpening } from './vent.ts';

export interface BaleFrameOptions {
  /** What the bed is filled with. */
  readonly soil: { readonly texture: SoilTexture; readonly moisture: SoilMoisture };
  /** Single window glass when absent. */
  readonly glazing?: GlazingKind;
  readonly nightCover?: { readonly extraRm2KW: number };
  /** `airChangesPerHour` of this module when absent. */
  readonly airChangesPerHour?: number;
}

/**
 * Loose sashes on stuffed straw. Greenhouses of old glass in poor repair leak 2 to 4 volumes an hour (ASAE EP406, from memory);
 * a frame has more joint for its room, so the upper end (our own judgement).
 */
export const airChangesPerHour = 4;

/** The envelope of a laid-out bale frame, and what of it opens: a loose sash at its low end, a hinged one across from its hinges. */
export function baleFrameEnvelope(
  geometry: FrameGeometry,
  options: BaleFrameOptions,
): { readonly envelope: FrameEnvelope; readonly vent: VentOpening } {
  const metres = (mm: number): number => mm / 1000;
  const soilM = metres(geometry.soilDepthMm);
  const lengthM = metres(geometry.insideLengthMm);
  const depthM = metres(geometry.insideDepthMm);
  const polewardHeightM = metres(geometry.polewardHeightMm) - soilM;
  const equatorHeightM = metres(geometry.equatorHeightMm) - soilM;
  const sideHeightM = (polewardHeightM + equatorHeightM) / 2;
  const coverM2 = lengthM * metres(geometry.slantMm);
  const bedM2 = lengthM * depthM;
  const wall = (name: WallName, areaM2: number): FramePart => ({
    areaM2,
    uWm2K: strawU(wallBale(geometry, name).lay, thicknessM(wallBale(geometry, name))),
  });
  const sashes = geometry.sashes;
  const byWidth = (valueOf: (sash: (typeof sashes)[number]) => number): number =>
    sashes.reduce((sum, sash) => sum + valueOf(sash) * sash.widthMm, 0) /
    sashes.reduce((sum, sash) => sum + sash.widthMm, 0);
  // Along the edge that comes up, and from there to the edge that stays.
  const openings = sashes
    .filter(({ opens }) => opens !== 'never')
    .map(({ opens, widthMm, lengthMm }) =>
      opens === 'low-end'
        ? { alongMm: widthMm, acrossMm: lengthMm }
        : { alongMm: lengthMm, acrossMm: widthMm },
    );
  const glassShare = byWidth((sash) => sash.glassShare);
  const meanThicknessM =
    (thicknessM(wallBale(geometry, 'poleward')) + thicknessM(wallBale(geometry, 'equator'))) / 2;
  return {
    envelope: {
      glazing: {
        ...(options.glazing ?? glazingKinds['single-glass']),
        areaM2: coverM2 * glassShare,
        slopeDeg: geometry.slopeDeg,
        azimuthDeg: 0,
      },
      walls: [
        wall('poleward', lengthM * polewardHeightM),
        wall('equator', lengthM * equatorHeightM),
        wall('west', depthM * sideHeightM),
        wall('east', depthM * sideHeightM),
        {
          areaM2: coverM2 * (1 - glassShare),
          uWm2K: softwoodU(metres(byWidth((sash) => sash.thicknessMm))),
        },
      ],
      ground: {
        ...options.soil,
        areaM2: bedM2,
        perimeterM: 2 * (lengthM + depthM),
        // The bed is filled above the ground outside, so the way under the wall is longer by that on both sides.
        edgeLossWPerMK: groundEdgeLossWPerMK({
          wallThicknessM: meanThicknessM + 2 * soilM,
          bedDepthM: depthM,
          conductivityWmK: soilHeat(options.soil).conductivityWmK,
        }),
      },
      inside: { lengthM, depthM, polewardHeightM, equatorHeightM, sideHeightM },
      innerVolumeM3: bedM2 * sideHeightM,
      airChangesPerHour: options.airChangesPerHour ?? airChangesPerHour,
      ...(options.nightCover ? { nightCover: options.nightCover } : {}),
    },
    vent: {
      widthM: openings.reduce((sum, { alongMm }) => sum + metres(alongMm), 0),
      sashLengthM: Math.min(...openings.map(({ acrossMm }) => metres(acrossMm))),
    },
  };
}

function wallBale({ bales }: FrameGeometry, name: WallName): PlacedBale {
  const found =
    bales.find(({ wall, kind }) => wall === name && kind === 'whole') ??
    bales.find(({ wall }) => wall === name);
  if (!found) throw new TypeError(`no bale in the ${name} wall`);
  return found;
}

/** Across the wall. */
function thicknessM({ wall, box: { from, to } }: PlacedBale): number {
  return (wall === 'poleward' || wall === 'equator' ? to.y - from.y : to.x - from.x) / 1000;
}
