/**
 * Who reaches the middle of a bed, and from which sides.
 *
 * Adults: extension advice is a bed of 4 ft reached from both sides, so 24 in (source `kstate-raised-bed`). Youth: beds of
 * no more than 4 ft and no higher than 24 in (`sdsu-accessible-beds`). Children up to about eight: 18 in, as in beds 3 ft wide
 * (common practice, `child-reach-practice`). From a wheelchair at the side of the bed: 24 in over an edge of no more than
 * 34 in (`ada-side-reach`), and soil at 24 in or more to reach it at all from a seat (`sdsu-accessible-beds`).
 */
import { choice, inputOf, type Finding } from '../findings/finding.ts';
import { toHeld } from '../quantities/units.ts';

export const reachers = ['adults', 'youth', 'children', 'wheelchair'] as const;
export type Reacher = (typeof reachers)[number];

interface ReachLimit {
  readonly reachMm: number;
  readonly lowestMm?: number;
  readonly highestMm?: number;
  readonly sources: readonly string[];
}

const inch = (value: number): number => toHeld(value, 'in');

export const reachLimits: Readonly<Record<Reacher, ReachLimit>> = {
  adults: { reachMm: inch(24), sources: ['kstate-raised-bed'] },
  youth: { reachMm: inch(24), highestMm: inch(24), sources: ['sdsu-accessible-beds'] },
  children: {
    reachMm: inch(18),
    highestMm: inch(24),
    sources: ['child-reach-practice', 'sdsu-accessible-beds'],
  },
  wheelchair: {
    reachMm: inch(24),
    lowestMm: inch(24),
    highestMm: inch(34),
    sources: ['ada-side-reach', 'sdsu-accessible-beds'],
  },
};

export type ReachAnswer =
  'reach-from-one-side' | 'reach-from-both-sides' | 'reach-too-wide' | 'reach-too-low' | 'reach-too-high';

/** Whether someone reaches all of a bed that is `widthMm` from outer edge to outer edge and `heightMm` high. */
export function reachOf(
  who: Reacher,
  { widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number },
): ReachAnswer {
  const { reachMm, lowestMm = 0, highestMm = Infinity } = reachLimits[who];
  const hair = 0.01;
  if (heightMm < lowestMm - hair) return 'reach-too-low';
  if (heightMm > highestMm + hair) return 'reach-too-high';
  if (widthMm <= reachMm + hair) return 'reach-from-one-side';
  return widthMm <= 2 * reachMm + hair ? 'reach-from-both-sides' : 'reach-too-wide';
}

/** `bed.reach-adults` and so on, from the findings of the bed's width and height. */
export function reachFindings(width: Finding, height: Finding): readonly Finding[] {
  const mm = ({ value }: Finding): number => (value.kind === 'quantity' ? value.value : 0);
  return reachers.map((who) => ({
    id: `bed.reach-${who}`,
    value: choice(reachOf(who, { widthMm: mm(width), heightMm: mm(height) })),
    method: `raised-bed.reach-${who}`,
    inputs: [inputOf('outside-width', width), inputOf('board-height', height)],
    sources: reachLimits[who].sources,
  }));
}
