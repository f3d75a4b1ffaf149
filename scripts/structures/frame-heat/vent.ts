/**
 * How far a frame has to be propped open so that warm air carries off a given heat, without any wind.
 *
 * Air comes in at the lower and leaves at the upper half of the opening, driven by the difference in weight between warm and cold
 * air: velocity sqrt(2 g z (Ti - To) / Ti) at the height z from the middle, times a discharge coefficient of
 * 0.40 + 0.0045 (Ti - To) for openings that air passes both ways (ASHRAE Handbook of Fundamentals, 1997, chapter 25, equations
 * 37 and 38). Summed over an upright opening of height h and width w that makes Cd/3 · w h · sqrt(g h (Ti - To) / Ti). A
 * sash lifted at its low end by h opens w × h there and a triangle at each side, which together pass as much as a front
 * wider by 0.8 of the sash's length.
 *
 * Wind helps: in a light breeze half of the height is often enough. So the height is the most that is needed.
 */
import { airHeatCapacityJm3K } from './balance.ts';

export interface VentOpening {
  /** All sashes that are propped, along the low wall. */
  readonly widthM: number;
  /** From the low end of a sash to the end it turns on. */
  readonly sashLengthM: number;
  /** How high the low end can be propped, where the prop says so. */
  readonly highestM?: number;
}

export interface VentAir {
  readonly insideC: number;
  /** Below `insideC`; otherwise no height is enough. */
  readonly outsideC: number;
}

/** The height to prop the low end, in metres, that carries off `heatW`; Infinity when it is not warmer inside. */
export function propHeightM(heatW: number, air: VentAir, opening: VentOpening): number {
  if (heatW <= 0) return 0;
  if (air.insideC <= air.outsideC) return Infinity;
  return (heatW / heatAtOneMetreW(air, opening)) ** (2 / 3);
}

/** The heat that leaves through sashes propped by `heightM`, in watts. */
export function ventHeatW(heightM: number, air: VentAir, opening: VentOpening): number {
  return air.insideC <= air.outsideC ? 0 : heatAtOneMetreW(air, opening) * heightM ** 1.5;
}

function heatAtOneMetreW({ insideC, outsideC }: VentAir, { widthM, sashLengthM }: VentOpening): number {
  const differenceK = insideC - outsideC;
  const discharge = 0.4 + 0.0045 * differenceK;
  const drive = Math.sqrt((gravityMS2 * differenceK) / (insideC + 273.15));
  return airHeatCapacityJm3K * differenceK * (discharge / 3) * drive * (widthM + triangles * sashLengthM);
}

/** Two triangles of height h at one end, each strip passing air by its own height to the power 1.5: 2 / 2.5. */
const triangles = 0.8;
const gravityMS2 = 9.81;
