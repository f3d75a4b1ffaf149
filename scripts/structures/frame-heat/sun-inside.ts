/**
 * The sun that gets into a frame, and whether it falls on the soil, which stores it, or on the walls, which give it to the air
 * at once. The walls shade the soil; what they shade it of they take up themselves.
 */
import type { FrameEnvelope, FrameInside } from './envelope.ts';
import type { Irradiance, SunDirection } from './clear-sky.ts';
import { beamTransmittance, diffuseTransmittance } from './glazing.ts';

/** In watts, for the whole frame. */
export interface SunInside {
  /** Warms the soil. */
  readonly soilW: number;
  /** Warms the air, by way of the walls. */
  readonly airW: number;
}

/**
 * What of the light is kept. Dark moist soil and leaves take up 85 %, light straw or wood 70 % with what they throw back on the
 * soil counted in (from memory of tables of solar absorptance). Of what the soil takes up a quarter goes into vapour that
 * wets the panes and does not warm the frame: half of the 50 % that greenhouse engineers use for a house full of grown plants
 * (ASAE EP406, from memory), since a frame is young plants and bare soil. Closed in and dry it warms more than
 * reckoned, full of grown leaves less.
 */
export const lightKept = { soil: 0.85, walls: 0.7, evaporated: 0.25, groundReflects: 0.2 } as const;

export function sunInside(envelope: FrameEnvelope, sun: SunDirection, sky: Irradiance): SunInside {
  if (sun.up <= 0) return { soilW: 0, airW: 0 };
  const { glazing, inside } = envelope;
  const cosIncidence = cosineOfIncidence(glazing, sun);
  const passing = sky.directNormal * beamTransmittance(glazing, cosIncidence);
  const beamW = passing * Math.max(0, cosIncidence) * glazing.areaM2;
  const beamOnSoilW = Math.min(
    beamW,
    passing * sun.up * envelope.ground.areaM2 * clearShare(envelope) * sunlitShare(inside, sun),
  );
  const diffuseW = diffuseOn(glazing.slopeDeg, sun, sky) * diffuseTransmittance(glazing) * glazing.areaM2;
  const diffuseOnSoilW = diffuseW * soilSeenShare(inside);
  return {
    soilW: (beamOnSoilW + diffuseOnSoilW) * lightKept.soil * (1 - lightKept.evaporated),
    airW: (beamW - beamOnSoilW + diffuseW - diffuseOnSoilW) * lightKept.walls,
  };
}

/** Of the angle between the sun and the line square to the cover; negative when the sun is behind it. */
export function cosineOfIncidence(
  cover: { readonly slopeDeg: number; readonly azimuthDeg: number },
  sun: SunDirection,
): number {
  const slope = cover.slopeDeg * radians;
  const azimuth = cover.azimuthDeg * radians;
  return (
    sun.up * Math.cos(slope) +
    Math.sin(slope) * (sun.equatorward * Math.cos(azimuth) + sun.west * Math.sin(azimuth))
  );
}

/** Sky light spread evenly, and what level ground in front throws back, on a slope, in watts per square metre. */
function diffuseOn(slopeDeg: number, sun: SunDirection, sky: Irradiance): number {
  const cosine = Math.cos(slopeDeg * radians);
  const level = sky.directNormal * sun.up + sky.diffuseLevel;
  return (sky.diffuseLevel * (1 + cosine)) / 2 + (level * lightKept.groundReflects * (1 - cosine)) / 2;
}

/** The share of the soil that the walls do not shade, 0 to 1. */
export function sunlitShare(inside: FrameInside, sun: SunDirection): number {
  if (sun.up <= 0) return 0;
  const facing = sun.equatorward >= 0 ? inside.equatorHeightM : inside.polewardHeightM;
  const acrossM = (facing * Math.abs(sun.equatorward)) / sun.up;
  const alongM = (inside.sideHeightM * Math.abs(sun.west)) / sun.up;
  return Math.max(0, 1 - acrossM / inside.depthM) * Math.max(0, 1 - alongM / inside.lengthM);
}

/** Of the light that comes evenly through the cover, the share that meets the soil first (crossed strings, H. C. Hottel). */
function soilSeenShare({ lengthM, depthM, polewardHeightM, equatorHeightM }: FrameInside): number {
  const height = (polewardHeightM + equatorHeightM) / 2;
  const seen = (width: number): number => Math.hypot(1, height / width) - height / width;
  return seen(lengthM) * seen(depthM);
}

/** The clear part of the whole cover over the bed. */
function clearShare({ glazing, inside }: FrameEnvelope): number {
  const coverM2 = (inside.lengthM * inside.depthM) / Math.cos(glazing.slopeDeg * radians);
  return Math.min(1, glazing.areaM2 / coverM2);
}

const radians = Math.PI / 180;
