/**
 * Figures that the frame is worked out with and that no project record gives, each with its source record
 * (content/sources-projects.yaml holds them).
 */
import { toHeld } from '../quantities/units.ts';

/** Ids of the source records that findings of this folder name besides those of the project record. */
export const structureSources = {
  practice: 'bale-frame-practice',
  glass: 'float-glass-density',
  wood: 'softwood-density',
} as const;

export const practice = {
  /**
   * A bale comes apart in flakes about this thick (common practice). A gap of one flake or less is stuffed with
   * loose straw, and a wall may end that much short of the corner, since no shorter piece can be tied again.
   */
  flakeMm: toHeld(4, 'in'),
  /** A whole bale can be pressed this much shorter, so that a bale is not cut for less (common practice). */
  squeezeMm: toHeld(1, 'in'),
  /** A bed narrower than this, inside, holds no two rows and is not worth its walls (common practice). */
  narrowestBedMm: toHeld(12, 'in'),
  /** A stake stands at least this deep in the ground (common practice). */
  stakeInGroundMm: toHeld(12, 'in'),
  /** Least room from the soil to the glass at the low wall, for leaves (common practice). */
  headroomMm: toHeld(4, 'in'),
  /** A loose sash slides off straw on a steeper slope than this: friction of wood on straw about 0.4 (from memory). */
  steepestSlopeDeg: 20,
} as const;

/** Soda-lime float glass: 2530 kg/m3, held as grams in a cubic millimetre. Source `float-glass-density`. */
export const glassDensityGPerMm3 = 2530e-6;

/**
 * Air-dry softwood of window sashes, from Engelmann spruce (432 kg/m3, about the same as the pines) to Douglas-fir
 * (545 kg/m3), held as grams in a cubic millimetre. Source `softwood-density`.
 */
export const woodDensityGPerMm3 = { low: 432e-6, high: 545e-6 } as const;
