/** A frame of boards under hinged lids as the heat sees it. */
import type { SoilMoisture } from '../../climate/soil-temperature.ts';
import type { SoilTexture } from '../../records/schemas/region.ts';
import { lidGapMm, type LumberFrameLayout } from '../lumber-frame-layout.ts';
import { airChangesPerHour } from './bale-envelope.ts';
import { groundEdgeLossWPerMK, soilHeat, type FrameEnvelope, type FramePart } from './envelope.ts';
import type { GlazingKind } from './glazing.ts';
import { softwoodU } from './materials.ts';
import type { VentOpening } from './vent.ts';

export interface LumberFrameOptions {
  /** What the bed is filled with. */
  readonly soil: { readonly texture: SoilTexture; readonly moisture: SoilMoisture };
  readonly glazing: GlazingKind;
  /** Share of an old sash that is glass, 0 to 1; the panes of a built lid follow from its pieces. */
  readonly glassShare?: number;
  /** How high the low end of a lid can be propped. */
  readonly propMm: number;
  readonly nightCover?: { readonly extraRm2KW: number };
}

/**
 * The envelope of a laid-out lumber frame, and what of it opens: every lid at its low end. It leaks as much as a frame under loose
 * sashes does, since lids lie on one edge of a board each and have a gap between them (our own judgement).
 */
export function lumberFrameEnvelope(
  layout: LumberFrameLayout,
  { soil, glazing, glassShare, propMm, nightCover }: LumberFrameOptions,
): { readonly envelope: FrameEnvelope; readonly vent: VentOpening } {
  const metres = (mm: number): number => mm / 1000;
  const soilM = metres(layout.soilDepthMm);
  const [lengthM, depthM] = [metres(layout.insideLengthMm), metres(layout.insideDepthMm)];
  const thicknessM = metres(layout.thicknessMm);
  const slope = (layout.slopeDeg * Math.PI) / 180;
  const polewardHeightM = metres(layout.backHeightMm) - soilM;
  const equatorHeightM = metres(layout.frontHeightMm) + thicknessM * Math.tan(slope) - soilM;
  const sideHeightM = (polewardHeightM + equatorHeightM) / 2;
  const coverM2 = (lengthM * depthM) / Math.cos(slope);
  const clearM2 = glassShare === undefined ? clearArea(layout) : coverM2 * glassShare;
  const boards = (areaM2: number): FramePart => ({ areaM2, uWm2K: softwoodU(thicknessM) });
  return {
    envelope: {
      glazing: { ...glazing, areaM2: clearM2, slopeDeg: layout.slopeDeg, azimuthDeg: 0 },
      walls: [
        boards(lengthM * polewardHeightM),
        boards(lengthM * equatorHeightM),
        boards(depthM * sideHeightM),
        boards(depthM * sideHeightM),
        { areaM2: coverM2 - clearM2, uWm2K: softwoodU(metres(layout.lids.thicknessMm)) },
      ],
      ground: {
        ...soil,
        areaM2: lengthM * depthM,
        perimeterM: 2 * (lengthM + depthM),
        edgeLossWPerMK: filledEdgeLossWPerMK({
          wallThicknessM: thicknessM,
          fillM: soilM,
          bedDepthM: depthM,
          conductivityWmK: soilHeat(soil).conductivityWmK,
        }),
      },
      inside: { lengthM, depthM, polewardHeightM, equatorHeightM, sideHeightM },
      innerVolumeM3: lengthM * depthM * sideHeightM,
      airChangesPerHour,
      ...(nightCover ? { nightCover } : {}),
    },
    vent: {
      widthM: metres(layout.lids.number * layout.lids.widthMm),
      sashLengthM: metres(layout.lids.lengthMm),
      highestM: metres(propMm),
    },
  };
}

/** Panes between the sticks of the lids, in square metres, as far as they lie over the bed. */
function clearArea({
  lids,
  thicknessMm,
  outsideLengthMm,
  insideDepthMm,
  slopeDeg,
}: LumberFrameLayout): number {
  const { built, widthMm, lengthMm } = lids;
  if (!built) return 0;
  const { faceMm, bars } = built;
  const over = (from: number, to: number, least: number, most: number): number =>
    Math.max(0, Math.min(to, most) - Math.max(from, least));
  const acrossMm = Array.from({ length: lids.number }, (_, index) => index * (widthMm + lidGapMm)).reduce(
    (sum, x) => {
      const panes = over(x + faceMm, x + widthMm - faceMm, thicknessMm, outsideLengthMm - thicknessMm);
      return sum + panes - bars * faceMm;
    },
    0,
  );
  // Down the slope a lid begins the thickness of a board above the inside of the back.
  const slantMm = insideDepthMm / Math.cos((slopeDeg * Math.PI) / 180);
  const downMm = over(faceMm, lengthMm - faceMm, thicknessMm, thicknessMm + slantMm);
  return (acrossMm * downMm) / 1e6;
}

/**
 * Heat at the edge of a bed that is filled above the ground outside, in watts per metre of wall and kelvin. From soil nearer to the
 * board than it is filled, heat runs in quarter circles to the board and through it to the air; from soil farther in, in half
 * circles under the board, as under any wall. Both ways have the air on their surfaces.
 */
export function filledEdgeLossWPerMK(edge: {
  readonly wallThicknessM: number;
  /** How much higher the soil is inside; 0 leaves the half circles alone. */
  readonly fillM: number;
  readonly bedDepthM: number;
  readonly conductivityWmK: number;
}): number {
  const { wallThicknessM, fillM, bedDepthM, conductivityWmK: k } = edge;
  const boardRm2KW = 1 / softwoodU(wallThicknessM);
  const throughBoard = ((2 * k) / Math.PI) * Math.log(1 + (Math.PI * fillM) / (2 * k * boardRm2KW));
  const underBoard = groundEdgeLossWPerMK({
    wallThicknessM: wallThicknessM + 2 * fillM,
    bedDepthM: Math.max(0, bedDepthM - 2 * fillM),
    conductivityWmK: k,
  });
  return throughBoard + underBoard;
}
