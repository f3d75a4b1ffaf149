/**
 * Figures that the frame is worked out with and that no project record gives, each with its source record
 * (content/sources-projects.yaml holds them).
 */
import { toHeld } from '../quantities/units.ts';

/** Ids of the source records that findings of this folder name besides those of the project record. */
export const structureSources = {
  practice: 'bale-frame-practice',
  fittings: 'frame-fittings-judgement',
  glass: 'float-glass-density',
  wood: 'softwood-density',
  plastics: 'plastic-glazing-weight',
  slope: 'frame-slope-practice',
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
  /**
   * Level run over rise. At less than half an inch of rise in a foot rain stands on the panes and runs in at the putty (our
   * own judgement). Source `frame-slope-practice` has about an inch, which is what the card asks for.
   */
  flattestRunOverRise: 24,
  usualRunOverRise: 12,
  /** A wall more than so many times as high as it is thick takes two stakes through each bale (our own judgement). */
  slenderWall: 3,
  /** A ridge of packed straw is at most half as high as it is wide, or it rolls off the wall (our own judgement). */
  ridgeShare: 0.5,
  /** No board on a wall is longer than a plank that one person carries (our own judgement). */
  longestPlankMm: toHeld(10, 'ft'),
  /** A board is strapped to its wall a foot from either end and at least every four feet (our own judgement). */
  boardStraps: { fromEndMm: toHeld(12, 'in'), apartMm: toHeld(48, 'in') },
  /** What a strap is longer than what it goes round, for its buckle or knot (our own judgement). */
  knotMm: toHeld(12, 'in'),
  /**
   * A notched prop (our own judgement): its lower end is pushed so far into the straw, so much of it stands above its highest
   * notch, and it has so many notches, each so deep and as high as the sash is thick twice over.
   */
  prop: {
    inStrawMm: toHeld(4, 'in'),
    aboveNotchMm: toHeld(4, 'in'),
    notches: 3,
    notchDeepMm: toHeld(1.25, 'in'),
    notchOverSash: 2,
  },
  /** A board under sandbags: a 2 by 6, whose edge lies over the end rail of the sash (our own judgement). */
  weightBoard: { thicknessMm: toHeld(1.5, 'in'), widthMm: toHeld(5.5, 'in'), railMm: toHeld(3, 'in') },
  /** Hooks at the edge that opens: one near either end of it (common practice). */
  hooksPerSash: 2,
} as const;

/** Soda-lime float glass: 2530 kg/m3, held as grams in a cubic millimetre. Source `float-glass-density`. */
export const glassDensityGPerMm3 = 2530e-6;

/**
 * Air-dry softwood of window sashes, from Engelmann spruce (432 kg/m3, about the same as the pines) to Douglas-fir
 * (545 kg/m3), held as grams in a cubic millimetre. Source `softwood-density`.
 */
export const woodDensityGPerMm3 = { low: 432e-6, high: 545e-6 } as const;

/**
 * Panes that are not of glass, in grams in a cubic millimetre: polyethylene film, and sheet of polycarbonate with two
 * walls as a whole (0.8 kg/m2 of 4 mm to 1.7 of 10 mm). Source `plastic-glazing-weight`.
 */
export const plasticDensityGPerMm3 = { 'plastic-film': 920e-6, polycarbonate: 200e-6 } as const;

/** What covers the place of a missing pane: greenhouse film of 6 mil, or twin-wall sheet of 6 mm. */
export const coverThicknessMm = { 'plastic-film': 0.15, polycarbonate: 6 } as const;

/** Insect screen of glass fibre, in grams in a square millimetre: 0.12 kg/m2. Source `plastic-glazing-weight`. */
export const screenClothGPerMm2 = 120e-6;
