/**
 * What a wind does to a sash: the force that lifts it, the turning about its hinge or resting edge, and what holds it
 * down.
 *
 * The wind's force acts square to the sash and evenly over it, so that it turns the sash about one edge with half of
 * the sash as lever, as the weight does the other way. Hinges hold the edge that they are on; a loose sash is held by
 * nothing but its weight and its hold-down, at both edges. Sliding and the strength of glass and hinges are left out;
 * the frame itself going with its lids is `frame-in-wind.ts`.
 */
import { speedOfPressureMps, velocityPressurePa } from './velocity-pressure.ts';

export interface WindSash {
  /** What the wind acts on: less than width times length where panes are missing. */
  readonly areaM2: number;
  /** Weight counts against the wind: the lightest, where it is not known exactly. */
  readonly massKg: number;
  /** Across the slope. */
  readonly widthM: number;
  /** Down the slope. */
  readonly lengthM: number;
  /** Of the closed sash against the level, 0 to 45. */
  readonly slopeDeg: number;
  /**
   * How far it is propped open, more than 0 and up to 60, from where it lies closed. Absent for a sash that is never
   * open.
   */
  readonly openAngleDeg?: number;
  /**
   * Straight down, in newtons: the weight of sandbags or the pull of straps. On hinges it acts at the edge that opens;
   * on a loose sash it is all of it, shared alike between the two edges. 0 when absent.
   */
  readonly holdDownN?: number;
  /** The edge that hinges hold. A loose sash (`none`) is propped up at its low end and rests on its upper edge. */
  readonly hinged: 'none' | 'top' | 'side';
}

export type SashState = 'closed' | 'open';

export interface SashInWind {
  /** Force of the wind, square to the sash. */
  readonly liftN: number;
  /** Moment of the wind about the hinge or resting edge, in newton metres. */
  readonly overturningNm: number;
  /** Moment of the weight and the hold-down about the same edge, in newton metres. */
  readonly rightingNm: number;
  /**
   * What must hold the sash down in this wind, where and how `WindSash.holdDownN` acts, so that it is safe; 0 where the
   * weight is enough.
   */
  readonly holdDownNeededN: number;
  /** True where weight and hold-down withstand this wind by the safety factor. */
  readonly held: boolean;
}

/** Standard gravity, in metres per second squared. */
export const gravity = 9.80665;

/**
 * What holds a sash must be half as much again as what lifts it: the overturning moment of wind may be two thirds of
 * the moment that withstands it. Source: Uniform Building Code 1997, section 1621.1 (source record
 * `ubc-1997-overturning`).
 */
export const windSafetyFactor = 1.5;

/**
 * Force over velocity pressure and area.
 *
 * Closed, a lid of low slope is sucked up: about 1.0, from memory. Edges and corners of low roofs are sucked up about
 * twice as hard (from memory); against that the gust is taken as 33 ft above open ground, and near the ground it pushes
 * half to nine tenths as hard.
 *
 * Open, 1.3: the wind comes in under the lid, stops in the box and pushes on the whole of it as on a plate square to
 * the wind, whatever the angle. A square plate has 1.17 (Aeronautical Engineer's Data Book, read), plates have 1.1 to
 * 1.3; the upper end is used.
 */
export const forceCoefficients: Readonly<Record<SashState, number>> = { closed: 1.0, open: 1.3 };

/**
 * How a sash fares in a gust. A state that the sash does not have, or an angle outside its range, throws a RangeError.
 */
export function sashInWind(sash: WindSash, state: SashState, gustMps: number): SashInWind {
  const { level, share, leverM, resistingN } = standing(sash, state);
  const liftN = forceCoefficients[state] * velocityPressurePa(gustMps) * sash.areaM2;
  const weightN = sash.massKg * gravity;
  const overturningNm = (liftN * leverM) / 2;
  const rightingNm = (resistingN * level * leverM) / 2;
  return {
    liftN,
    overturningNm,
    rightingNm,
    holdDownNeededN: share * Math.max(0, (windSafetyFactor * liftN) / level - weightN),
    held: rightingNm >= windSafetyFactor * overturningNm * (1 - 1e-9),
  };
}

/** The gust, in metres per second, at which the sash begins to lift. */
export function liftsAtMps(sash: WindSash, state: SashState): number {
  const { level, resistingN } = standing(sash, state);
  return speedOfPressureMps((resistingN * level) / (forceCoefficients[state] * sash.areaM2));
}

/**
 * The strongest gust, in metres per second, that the sash withstands by the safety factor: above it, do not leave it
 * so.
 */
export function leaveUpToMps(sash: WindSash, state: SashState): number {
  return liftsAtMps(sash, state) / Math.sqrt(windSafetyFactor);
}

interface Standing {
  /** The part of a vertical force that acts square to the sash: the cosine of its tilt. */
  readonly level: number;
  /** Hold-down needed for each newton of lift that the weight leaves over: half at the free edge of a hinged sash. */
  readonly share: number;
  /** From the hinge or resting edge to the edge that opens. */
  readonly leverM: number;
  /** Weight and hold-down as one force, evenly over the sash. */
  readonly resistingN: number;
}

function standing(sash: WindSash, state: SashState): Standing {
  const { massKg, areaM2, widthM, lengthM, hinged, holdDownN = 0 } = sash;
  within('slope', sash.slopeDeg, 0, 45);
  within('area', areaM2, Number.MIN_VALUE, widthM * lengthM * (1 + 1e-9));
  const share = hinged === 'none' ? 1 : 0.5;
  return {
    level: levelPart(sash, state),
    share,
    leverM: hinged === 'side' ? widthM : lengthM,
    resistingN: massKg * gravity + holdDownN / share,
  };
}

/** The part of a vertical force that acts square to the sash; hinged at its side, it tilts across its slope. */
function levelPart(sash: WindSash, state: SashState): number {
  if (state === 'open' && sash.hinged === 'side') return cosine(sash.slopeDeg) * cosine(openingOf(sash));
  return cosine(lidTiltDeg(sash, state));
}

/**
 * How far a sash leans from the level, in degrees, above 0 where its low edge stays the lower one. Hinged at its top (or
 * loose, resting on its top), one that opens comes up towards the level and past it. Throws a RangeError where it does not
 * open.
 */
export function lidTiltDeg(sash: WindSash, state: SashState): number {
  return state === 'closed' ? sash.slopeDeg : sash.slopeDeg - openingOf(sash);
}

function openingOf({ openAngleDeg }: WindSash): number {
  if (openAngleDeg === undefined) throw new RangeError('this sash does not open');
  within('opening', openAngleDeg, Number.MIN_VALUE, 60);
  return openAngleDeg;
}

function cosine(degrees: number): number {
  return Math.cos((degrees * Math.PI) / 180);
}

function within(what: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`no such ${what} of a sash: ${value}`);
}
