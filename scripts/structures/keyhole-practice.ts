/**
 * Figures that a keyhole bed is worked out with and that no project record gives, each with its source record
 * (content/sources-projects.yaml holds them).
 */
import { toHeld } from '../quantities/units.ts';

export const keyholeSources = {
  practice: 'keyhole-bed-practice',
  concrete: 'solid-block-weight',
  bond: 'running-bond-lap',
  gravelBag: 'gravel-bag-weight',
} as const;

/**
 * Solid concrete block, in grams in a cubic millimetre: 32 lb for a block sold as 4 by 8 by 16 in (that is 3 5/8 by 7 5/8
 * by 15 5/8), up to 150 lb in a cubic foot for dense concrete. Source `solid-block-weight`.
 */
export const blockDensityGPerMm3 = {
  low: toHeld(32, 'lb') / (toHeld(3.625, 'in') * toHeld(7.625, 'in') * toHeld(15.625, 'in')),
  high: toHeld(150, 'lb') / toHeld(1, 'ft') ** 3,
} as const;

/** Gravel in bags: 45 to 65 lb in half a cubic foot, in grams a litre. Source `gravel-bag-weight`. */
export const gravelDensityGPerL = {
  low: toHeld(45, 'lb') / toHeld(0.5, 'ft3'),
  high: toHeld(65, 'lb') / toHeld(0.5, 'ft3'),
} as const;

/**
 * In running bond each joint lies over a block, at least this share of its length from the joints below. Source
 * `running-bond-lap`.
 */
export const leastLapShare = 0.25;

/** The ring is made smaller in steps of this, until its blocks come out whole. */
export const diameterStepMm = toHeld(0.125, 'in');
/** By no more than this: a bed that is smaller still is not the one that was wanted. */
export const mostSmallerMm = toHeld(12, 'in');

/** A ring of soil narrower than this holds no row (common practice). */
export const narrowestRingMm = toHeld(8, 'in');

/** A notch narrower than this where one walks in is too narrow to stand in (common practice). */
export const narrowestNotchMm = toHeld(14, 'in');

/** A stake of the basket stands at least this deep in the ground (common practice). */
export const stakeInGroundMm = toHeld(6, 'in');

/** The mesh stands at least this far above the mix at the basket, so that none falls in (common practice). */
export const basketAboveMm = toHeld(4, 'in');
