/**
 * Figures that a pole tepee is worked out with and that no project record gives, each with its source record
 * (content/sources-projects.yaml holds them).
 */
import { toHeld } from '../quantities/units.ts';

export const tepeeSources = {
  practice: 'pole-tepee-practice',
  lashing: 'tripod-lashing',
  pullOut: 'stake-pull-out',
  plate: 'flat-plate-force',
  lines: 'osha-overhead-lines',
} as const;

/** Crops that climb poles and strings by themselves, with their seed sown at the foot (common practice). */
export const climbingCrops = ['pole-bean', 'snap-pea', 'shelling-pea'] as const;

/** Turns of twine over and under the poles, five to seven; source `tripod-lashing`. */
export const lashingTurns = 6;
/** Turns between two poles that pull the lashing tight, two or three; source `tripod-lashing`. */
export const frappingTurns = 3;
/** For the knots at both ends (common practice). */
export const lashingTailMm = toHeld(4, 'ft');

/** Lashed nearer to the ends than this, twine slips off them (common practice). */
export const leastTieMm = toHeld(4, 'in');

/**
 * Push over velocity pressure and the area seen from the side: as on a solid plate, 1.17, rounded up, since in late summer
 * the leaves close. Source `flat-plate-force`.
 */
export const fullOfLeavesCoefficient = 1.2;

/** A stake of 1 in that was driven into a lawn: its length, and what it held there and in soaked ground. Source `stake-pull-out`. */
export const testedStake = {
  lengthMm: toHeld(36, 'in'),
  holdN: toHeld(1000, 'lbf'),
  wetHoldN: toHeld(500, 'lbf'),
} as const;

/** How much stronger a gust the card tells the weight for: our own choice. */
export const strongerByMps = toHeld(10, 'mph');

/**
 * Pull that loose, wet ground holds a leg with, in newtons. A stake of 1 in driven 36 in into a lawn held about 1000 lb, half of
 * that when wet (source `stake-pull-out`). We take half again for dug soil, the pull to grow with the thickness, and with the
 * square of the depth, since soil near the surface holds least; both are our own and on the safe side.
 */
export function legHoldN(thicknessMm: number, depthMm: number): number {
  const depthShare = depthMm / testedStake.lengthMm;
  return (testedStake.holdN / 4) * (thicknessMm / toHeld(1, 'in')) * depthShare ** 2;
}

/** How high someone holds the end of a pole that is raised (from memory). */
export const raisedReachMm = toHeld(7, 'ft');
/** Least distance to a line of up to 50 kV; source `osha-overhead-lines`. */
export const lineClearanceMm = toHeld(10, 'ft');
