/** Where the screws of a corner post sit, so that those of its two faces do not meet and no two split one line of its grain. */
import { toHeld } from '../quantities/units.ts';

/** All in millimetres. */
export interface ScrewPlan {
  /** From the upper edge of an end board to its first screw. */
  readonly edgeMm: number;
  /** How much lower a side board has its first screw: screws of both faces take turns at this distance. */
  readonly stepMm: number;
  /** From one screw of a board to its next: two steps. */
  readonly pitchMm: number;
  /** How far screws stand off the middle line of the post, by turns to its two sides. */
  readonly asideMm: number;
}

/** No nearer to the edge of a board, where it splits (common practice, source `corner-screw-practice`). */
const leastEdgeMm = toHeld(0.75, 'in');
const eighthMm = toHeld(0.125, 'in');
/** Of the side of a post: a seventh is half an inch on a post of 3 1/2 (common practice). */
const asideShare = 1 / 7;

/** `number` screws in each board, 1 or more; lengths come down to the next eighth of an inch. */
export function screwPlan(boardWidthMm: number, number: number, postMm: number): ScrewPlan {
  const places = 2 * number - 1;
  const stepMm = eighths((boardWidthMm - 2 * leastEdgeMm) / Math.max(1, places));
  return { edgeMm: leastEdgeMm, stepMm, pitchMm: 2 * stepMm, asideMm: eighths(postMm * asideShare) };
}

/** Screws of one board, from its upper edge down and off the middle of the post. */
export function screwsOf(
  plan: ScrewPlan,
  face: 'end' | 'side',
  number: number,
): readonly { readonly downMm: number; readonly asideMm: number }[] {
  const first = plan.edgeMm + (face === 'side' ? plan.stepMm : 0);
  return Array.from({ length: number }, (_, index) => ({
    downMm: first + index * plan.pitchMm,
    asideMm: index % 2 === 0 ? -plan.asideMm : plan.asideMm,
  }));
}

function eighths(mm: number): number {
  return Math.max(0, Math.floor(mm / eighthMm + 1e-6)) * eighthMm;
}
