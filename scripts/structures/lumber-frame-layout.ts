/**
 * A box of boards with a sloped lid, as lengths.
 *
 * Front and back boards run the whole outside length, side boards stand between them. The tops of front and back are cut
 * square, so the underside of the lids lies on the outer edge of the front and on the inner edge of the back. The upper
 * end of a lid reaches past that edge by the thickness of the back, measured down the slope: it ends level with the back
 * face, to a hair. From its length follow the level distance between the two edges, the slope and the sloped pieces.
 */
import { middle } from '../quantities/quantity.ts';
import { toHeld } from '../quantities/units.ts';
import type { LumberColdFrame } from '../records/schemas/projects/lumber-cold-frame.ts';
import { usualKerfMm } from './cut-list.ts';
import { slopeOver } from './geometry.ts';
import { sizeOf } from './lumber.ts';
import { middlePosts, screwLengthMm, screwsPerJoint } from './lumber-practice.ts';
import { sashMassG } from './sash-findings.ts';
import { woodMassG } from './lumber.ts';

/** Lids lie this far apart, so that each opens by itself (common practice). */
export const lidGapMm = toHeld(0.25, 'in');

/** A lid wider than this between its stiles gets a bar in the middle (common practice). */
export const widestPaneMm = toHeld(24, 'in');

/** A lid wider than this hangs on three hinges instead of two (common practice). */
export const widestOnTwoHingesMm = toHeld(48, 'in');

/** Sheets are screwed down every foot, film is stapled every 4 in (common practice). */
export const fastenerSpacingMm = { polycarbonate: toHeld(12, 'in'), film: toHeld(4, 'in') } as const;

/** All lengths in millimetres. */
export interface LumberFrameLayout {
  readonly thicknessMm: number;
  /** Widths of the boards of a wall, from the ground up. */
  readonly back: readonly number[];
  readonly front: readonly number[];
  readonly sides: readonly number[];
  readonly backHeightMm: number;
  readonly frontHeightMm: number;
  readonly sideHeightMm: number;
  readonly outsideLengthMm: number;
  readonly outsideDepthMm: number;
  readonly insideLengthMm: number;
  /** Also the length of the side boards and of the sloped pieces. */
  readonly insideDepthMm: number;
  /** Level, from the outer edge of the front to the inner edge of the back. */
  readonly runMm: number;
  readonly slopeDeg: number;
  /** Heights of a sloped piece at its front and back end. */
  readonly slopeLowMm: number;
  readonly slopeHighMm: number;
  readonly slopeCutMm: number;
  /** 1 where both sloped pieces come out of one board, otherwise 2. */
  readonly slopeBoards: 1 | 2;
  readonly postMm: number;
  readonly backPostMm: number;
  readonly frontPostMm: number;
  /** Cleats between the corners, along the back and the front. */
  readonly middleCleats: number;
  readonly bars: number;
  readonly barMm: number;
  readonly lids: LidLayout;
  readonly joints: number;
  readonly screws: number;
  readonly screwLengthMm: number;
  readonly propOpensDeg: number;
  readonly soilDepthMm: number;
  readonly soilL: number;
}

export interface LidLayout {
  readonly number: number;
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly thicknessMm: number;
  readonly overhangMm: number;
  readonly hinges: number;
  readonly hingeInsetMm: number;
  readonly massG: { readonly low: number; readonly high: number };
  readonly built?: {
    /** How wide stiles and rails are, lying flat. */
    readonly faceMm: number;
    readonly railMm: number;
    readonly barMm: number;
    /** In one lid, down the slope. */
    readonly bars: number;
    readonly fasteners: number;
  };
}

/** The record must be one that lumberFrameFaults finds right; for others the result is without meaning. */
export function layLumberFrame(project: LumberColdFrame): LumberFrameLayout {
  const widthsOf = (nominals: readonly string[]): number[] => nominals.map((each) => sizeOf(each).widthMm);
  const { walls } = project;
  const [back, front, sides] = [widthsOf(walls.back), widthsOf(walls.front), widthsOf(walls.sides)];
  const thicknessMm = sizeOf(walls.back[0]!).thicknessMm;
  const [backHeightMm, frontHeightMm, sideHeightMm] = [total(back), total(front), total(sides)];
  const lids = layLids(project);
  const slope = slopeOf({
    thicknessMm,
    riseMm: backHeightMm - frontHeightMm,
    spanMm: lids.lengthMm - lids.overhangMm - thicknessMm,
  });
  const postMm = sizeOf(project.posts).thicknessMm;
  const outsideLengthMm = lids.number * lids.widthMm + (lids.number - 1) * lidGapMm;
  const insideLengthMm = outsideLengthMm - 2 * thicknessMm;
  const insideDepthMm = slope.runMm - thicknessMm;
  const slopeLowMm = frontHeightMm + thicknessMm * slope.tangent - sideHeightMm;
  const slopeHighMm = backHeightMm - sideHeightMm;
  const kerfMm = project.kerf ? middle(project.kerf) : usualKerfMm;
  const bothMm = slopeLowMm + slopeHighMm + kerfMm / slope.cosine;
  const middleCleats = middlePosts(outsideLengthMm, thicknessMm);
  const bars = lids.number - 1;
  const screws = screwsOf({ back, front, sides, slopeHighMm, middleCleats, bars, lids });
  const soilDepthMm = middle(project.soilDepth);
  return {
    thicknessMm,
    back,
    front,
    sides,
    backHeightMm,
    frontHeightMm,
    sideHeightMm,
    outsideLengthMm,
    outsideDepthMm: slope.runMm + thicknessMm,
    insideLengthMm,
    insideDepthMm,
    runMm: slope.runMm,
    slopeDeg: slope.slopeDeg,
    slopeLowMm,
    slopeHighMm,
    slopeCutMm: insideDepthMm / slope.cosine,
    slopeBoards: bothMm <= sizeOf(walls.slope).widthMm + 1e-6 ? 1 : 2,
    postMm,
    backPostMm: downToQuarter(backHeightMm - postMm * slope.tangent),
    frontPostMm: frontHeightMm,
    middleCleats,
    bars,
    barMm: insideDepthMm / slope.cosine - postMm * slope.tangent,
    lids,
    joints: screws.joints,
    screws: screws.screws,
    screwLengthMm: screwLengthMm(thicknessMm, postMm),
    propOpensDeg:
      (2 * Math.asin(middle(project.prop) / 2 / (lids.lengthMm - lids.overhangMm)) * 180) / Math.PI,
    soilDepthMm,
    soilL: (insideLengthMm * insideDepthMm * soilDepthMm) / 1e6,
  };
}

/** The slope of a lid that spans `spanMm` from edge to edge while it rises `riseMm`; no slope where it is too short. */
export function slopeOf({
  thicknessMm,
  riseMm,
  spanMm,
}: {
  readonly thicknessMm: number;
  readonly riseMm: number;
  readonly spanMm: number;
}) {
  const runMm = spanMm > riseMm ? Math.sqrt(spanMm ** 2 - riseMm ** 2) : 0;
  const { slopeDeg } = slopeOver(riseMm, runMm);
  return { thicknessMm, runMm, slopeDeg, tangent: riseMm / runMm, cosine: runMm / spanMm };
}

function layLids({ lids }: LumberColdFrame): LidLayout {
  const [widthMm, lengthMm] = [middle(lids.width), middle(lids.length)];
  const hinges = widthMm > widestOnTwoHingesMm ? 3 : 2;
  const shared = {
    number: lids.number,
    widthMm,
    lengthMm,
    overhangMm: middle(lids.overhang),
    hinges,
    hingeInsetMm: widthMm / 6,
  };
  const { sash, built } = lids;
  if (!built) {
    const thicknessMm = sash ? middle(sash.thickness) : 0;
    const massG = sash
      ? sashMassG({
          areaMm2: widthMm * lengthMm,
          thicknessMm,
          glassShare: sash.glassShare,
          glassMm: middle(sash.glass),
        })
      : { low: 0, high: 0 };
    return { ...shared, thicknessMm, massG };
  }
  const { thicknessMm, widthMm: faceMm } = sizeOf(built.nominal);
  const railMm = widthMm - 2 * faceMm;
  const barMm = lengthMm - 2 * faceMm;
  const bars = Math.max(0, Math.ceil(railMm / widestPaneMm - 1e-6) - 1);
  const wood = woodMassG(thicknessMm * faceMm * (2 * lengthMm + 2 * railMm + bars * barMm));
  const areaM2 = (widthMm * lengthMm) / 1e6;
  const { low, high } = built.sheetMass.value;
  return {
    ...shared,
    thicknessMm,
    massG: { low: wood.low + low * areaM2, high: wood.high + high * areaM2 },
    built: {
      faceMm,
      railMm,
      barMm,
      bars,
      fasteners: fastenersOf({ lengthMm, widthMm, bars, spacingMm: fastenerSpacingMm[built.sheet] }),
    },
  };
}

/** Along both stiles from end to end, between them along both rails, and along each bar between the rails. */
export function fastenersOf({
  lengthMm,
  widthMm,
  bars,
  spacingMm,
}: {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly bars: number;
  readonly spacingMm: number;
}): number {
  const spaces = (mm: number): number => Math.ceil(mm / spacingMm - 1e-6);
  return 2 * (spaces(lengthMm) + 1) + 2 * (spaces(widthMm) - 1) + bars * (spaces(lengthMm) - 1);
}

/** Every board meets a post at each of its ends, and front and back boards each cleat between; bars and lids take two an end. */
function screwsOf({
  back,
  front,
  sides,
  slopeHighMm,
  middleCleats,
  bars,
  lids,
}: {
  readonly back: readonly number[];
  readonly front: readonly number[];
  readonly sides: readonly number[];
  readonly slopeHighMm: number;
  readonly middleCleats: number;
  readonly bars: number;
  readonly lids: LidLayout;
}): { readonly joints: number; readonly screws: number } {
  const long = [...back, ...front].flatMap((width) =>
    Array.from({ length: 2 + middleCleats }, () => screwsPerJoint(width)),
  );
  const side = [...sides, ...sides].flatMap((width) => [screwsPerJoint(width), screwsPerJoint(width)]);
  const slopes = [2, screwsPerJoint(slopeHighMm)].flatMap((number) => [number, number]);
  const inLids = lids.built ? lids.number * (4 + 2 * lids.built.bars) : 0;
  const twos = Array.from({ length: 2 * bars + inLids }, () => 2);
  const all = [...long, ...side, ...slopes, ...twos];
  return { joints: all.length, screws: total(all) };
}

function downToQuarter(mm: number): number {
  const quarter = toHeld(0.25, 'in');
  return Math.floor(mm / quarter + 1e-6) * quarter;
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
