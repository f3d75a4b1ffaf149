/** What a frame is to the heat: its cover, its walls and its ground. Any frame can be told so, whatever it is built of. */
import { thermalDiffusivity, type SoilMoisture } from '../../climate/soil-temperature.ts';
import type { SoilTexture } from '../../records/schemas/region.ts';
import type { GlazingKind } from './glazing.ts';

export interface FrameGlazing extends GlazingKind {
  /** Clear area through which sun gets in: panes without bars and rails, and not what lies over the walls. */
  readonly areaM2: number;
  /** 0 is level, 90 upright. */
  readonly slopeDeg: number;
  /** How far the low side is turned from the equator, west positive; 0 faces the noon sun. */
  readonly azimuthDeg: number;
}

/** A part that lets no sun in: a wall above the soil, or the wood of the sashes. */
export interface FramePart {
  readonly areaM2: number;
  /** Heat through it, air to air, in watts per square metre and kelvin. */
  readonly uWm2K: number;
}

export interface FrameGround {
  readonly areaM2: number;
  readonly perimeterM: number;
  /** Heat that goes through the ground under the wall to the outside, in watts per metre of wall and kelvin. */
  readonly edgeLossWPerMK: number;
  readonly texture: SoilTexture;
  readonly moisture: SoilMoisture;
}

/** The room over the soil, in metres. Heights are from the soil to the cover. */
export interface FrameInside {
  readonly lengthM: number;
  readonly depthM: number;
  readonly polewardHeightM: number;
  readonly equatorHeightM: number;
  readonly sideHeightM: number;
}

export interface FrameEnvelope {
  readonly glazing: FrameGlazing;
  readonly walls: readonly FramePart[];
  readonly ground: FrameGround;
  readonly inside: FrameInside;
  readonly innerVolumeM3: number;
  /** Outside air that leaks in, in volumes of the room an hour. */
  readonly airChangesPerHour: number;
  /** What lies on the cover while the sun is down. Heat resistance in square metres kelvin per watt. */
  readonly nightCover?: { readonly extraRm2KW: number };
}

/** A thing of the soil that heat is reckoned with. */
export interface SoilHeat {
  /** Watts per metre and kelvin. */
  readonly conductivityWmK: number;
  /** Joules per cubic metre and kelvin. */
  readonly heatCapacityJm3K: number;
  /** Joules that a cubic metre gives off while its water freezes. */
  readonly latentJm3: number;
}

/**
 * What a soil conducts and holds: diffusivity as the soil temperatures of the region have it, heat capacity by the sum of its
 * parts (D. A. de Vries, 1963): 60 % mineral of 1.92 and water of 4.18 MJ/m³K in none, half or all of the pores, which are
 * 40 %. Freezing water gives off 334 kJ/kg.
 */
export function soilHeat(soil: { readonly texture: SoilTexture; readonly moisture: SoilMoisture }): SoilHeat {
  const heatCapacityJm3K = 0.6 * 1.92e6 + 0.4 * waterInPores[soil.moisture] * 4.18e6;
  return {
    conductivityWmK: thermalDiffusivity(soil) * 1e-6 * heatCapacityJm3K,
    heatCapacityJm3K,
    latentJm3: 0.4 * waterInPores[soil.moisture] * 334e6,
  };
}

const waterInPores: Readonly<Record<SoilMoisture, number>> = { dry: 0, moist: 0.5, wet: 1 };

/**
 * Heat through the ground under a wall, in watts per metre of wall and kelvin. Heat runs in half circles round the middle of the
 * wall from the soil inside to the soil outside, and through the air on both surfaces (0.15 m²K/W together); summed over all
 * half circles that start in the near half of the bed. Source of the half circles: H. H. Macey, Heat Loss through a Solid
 * Floor, Journal of the Institute of Fuel 22, 1949, from memory. For a house it comes within 20 % of the 0.73 Btu/h ft F that the
 * Washington State Energy Code gives for the edge of a floor without insulation.
 */
export function groundEdgeLossWPerMK(edge: {
  readonly wallThicknessM: number;
  readonly bedDepthM: number;
  readonly conductivityWmK: number;
}): number {
  const shortestM = (Math.PI * edge.wallThicknessM) / 2 + surfacesRm2KW * edge.conductivityWmK;
  const longestM = shortestM + (Math.PI * edge.bedDepthM) / 2;
  return (edge.conductivityWmK / Math.PI) * Math.log(longestM / shortestM);
}

const surfacesRm2KW = 0.15;
