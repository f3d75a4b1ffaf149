/**
 * Figures that walls of boards are worked out with and that no project record gives, each with its source record
 * (content/sources-projects.yaml holds them).
 */
import { toHeld } from '../quantities/units.ts';

export const lumberSources = {
  practice: 'board-wall-practice',
  thinBoards: 'uga-raised-bed-dimensions',
  bagWeight: 'potting-mix-weight',
  bulk: 'soil-in-bulk',
} as const;

/**
 * How far a wall of boards runs from post to post before the soil bows it. One-inch boards: 4 ft, source
 * `uga-raised-bed-dimensions`; two-inch boards: 6 ft, common practice.
 */
export function longestSpanMm(boardThicknessMm: number): number {
  return toHeld(boardThicknessMm < toHeld(1, 'in') ? 4 : 6, 'ft');
}

/** Source of that limit. */
export function spanSource(boardThicknessMm: number): string {
  return boardThicknessMm < toHeld(1, 'in') ? lumberSources.thinBoards : lumberSources.practice;
}

/** Posts between the two at the corners of a wall, evenly spaced, so that no span is longer than the limit. */
export function middlePosts(wallMm: number, boardThicknessMm: number): number {
  return Math.max(0, Math.ceil(wallMm / longestSpanMm(boardThicknessMm) - 1e-6) - 1);
}

/** A post that keeps a long side from bowing stands at least this deep in the ground (common practice). */
export const middlePostInGroundMm = toHeld(12, 'in');

/** Inside, a bed narrower than this holds no two rows and is not worth its boards (common practice). */
export const narrowestInsideMm = toHeld(12, 'in');

/**
 * Screws where a board crosses a post: one for each 3 in of its width or part of that, and never fewer than two, so that
 * it cannot turn (common practice).
 */
export function screwsPerJoint(boardWidthMm: number): number {
  return Math.max(2, Math.ceil(boardWidthMm / toHeld(3, 'in') - 1e-6));
}

/**
 * A screw goes through the board and another 1 1/2 in into the wood behind it, but ends a quarter inch before it would come
 * out of that (common practice); down to the next quarter inch.
 */
export function screwLengthMm(boardMm: number, behindMm: number): number {
  const longest = Math.min(boardMm + toHeld(1.5, 'in'), boardMm + behindMm - toHeld(0.25, 'in'));
  const quarter = toHeld(0.25, 'in');
  return Math.floor(longest / quarter + 1e-6) * quarter;
}

/** Bagged planting mix, dry to moist: 20 to 40 lb in 2 cubic feet, in grams a litre. Source `potting-mix-weight`. */
export const mixDensityGPerL = {
  low: toHeld(20, 'lb') / toHeld(2, 'ft3'),
  high: toHeld(40, 'lb') / toHeld(2, 'ft3'),
} as const;

/** A pack larger than this comes on a truck and is not lifted. */
export const largestBagL = toHeld(4, 'ft3');

/** From this much on, soil in bulk costs less than soil in bags (source `soil-in-bulk`). */
export const cubicYardL = 27 * toHeld(1, 'ft3');

/** From between the ankles to hands held at the body, as the lifting equation has it: 20 cm. */
export const handsAtBodyMm = 200;

/** The least height of a lifted item's grip above the ground: a load that lies on it is held by its lower edge. */
export const fromGroundMm = 0;

/** Where the hands are when a load is carried, elbows bent (common practice). */
export const carriedAtMm = toHeld(30, 'in');
