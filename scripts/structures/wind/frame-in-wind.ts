/**
 * What a wind does to a frame that stands on the ground by its weight alone, with lids on hinges at its back. The hinges
 * hold the lids to the frame, so that half of what lifts a lid lifts the frame: it tips up on its front edge, or on its
 * back edge, or is lifted whole.
 *
 * Wind on the walls, sliding, and what the soil inside or earth packed against the boards may hold are left out.
 */
import {
  forceCoefficients,
  gravity,
  lidTiltDeg,
  windSafetyFactor,
  type SashState,
  type WindSash,
} from './sash-in-wind.ts';
import { speedOfPressureMps } from './velocity-pressure.ts';

export interface StandingFrame {
  /** Of the frame without its lids: the lightest, where it is not known exactly. */
  readonly massKg: number;
  /** From its front edge to its back edge, where the hinges are. */
  readonly depthM: number;
  /** How many lids there are, all alike. */
  readonly lids: number;
  /** Straight down on the back edge of each lid, over the hinges, in newtons. */
  readonly backHoldDownN: number;
}

/**
 * The strongest gust, in metres per second, in which the frame keeps standing by the safety factor, with all of its lids
 * closed or all of them propped. A lid without hinges at its top, or one that does not open, throws a RangeError.
 */
export function frameStandsUpToMps(frame: StandingFrame, lid: WindSash, state: SashState): number {
  if (lid.hinged !== 'top') throw new RangeError('only lids hinged at their top pull on a frame by its back');
  const level = Math.cos((lidTiltDeg(lid, state) * Math.PI) / 180);
  const liftPerPascal = forceCoefficients[state] * lid.areaM2 * level * frame.lids;
  const pressures = turnings(frame, lid, level)
    .filter(({ armM }) => armM > 0)
    .map(({ armM, rightingNm }) => Math.max(0, rightingNm) / (windSafetyFactor * liftPerPascal * armM));
  return speedOfPressureMps(Math.min(...pressures));
}

/** The arm of the lift and what withstands it, about each edge; straight up, with an arm of one metre. */
function turnings(
  { massKg, depthM, lids, backHoldDownN }: StandingFrame,
  { lengthM, massKg: lidKg, holdDownN = 0 }: WindSash,
  level: number,
): readonly { readonly armM: number; readonly rightingNm: number }[] {
  const middleM = (lengthM * level) / 2;
  const [frameN, lidN] = [massKg * gravity, lidKg * gravity];
  const about = (distance: (fromBackM: number) => number): { armM: number; rightingNm: number } => ({
    armM: distance(middleM),
    rightingNm:
      frameN * distance(depthM / 2) +
      lids * (lidN * distance(middleM) + holdDownN * distance(2 * middleM) + backHoldDownN * distance(0)),
  });
  return [about((fromBackM) => depthM - fromBackM), about((fromBackM) => fromBackM), about(() => 1)];
}
