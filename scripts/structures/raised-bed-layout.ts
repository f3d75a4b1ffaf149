/**
 * A raised bed as lengths: the side boards run the whole outside length, the end boards stand between them, a post stands
 * in each inside corner, and more posts along a wall that is longer than its boards hold straight.
 */
import { middle } from '../quantities/quantity.ts';
import type { RaisedBed } from '../records/schemas/projects/raised-bed.ts';
import { sizeOf, type DressedSize } from './lumber.ts';
import { middlePosts, screwLengthMm, screwsPerJoint } from './lumber-practice.ts';
import { screwPlan, type ScrewPlan } from './raised-bed-screws.ts';

/** All lengths in millimetres. */
export interface RaisedBedLayout {
  readonly outsideLengthMm: number;
  readonly outsideWidthMm: number;
  readonly board: DressedSize;
  readonly courses: number;
  /** Side of the square posts. */
  readonly postMm: number;
  readonly inGroundMm: number;
  readonly heightMm: number;
  readonly insideLengthMm: number;
  readonly insideWidthMm: number;
  readonly postLengthMm: number;
  /** Posts along one long wall and along one short wall, between those of the corners. */
  readonly middleAlong: number;
  readonly middleAcross: number;
  /** From corner to post, or from post to post, along a long wall. */
  readonly spanMm: number;
  readonly joints: number;
  readonly screwsPerJoint: number;
  readonly screwLengthMm: number;
  readonly screwPlan: ScrewPlan;
  /** From the string, which marks the outside of the boards, to the middle of a post's hole. */
  readonly holeFromStringMm: number;
  readonly soilDepthMm: number;
  /** How deep the soil lies before it settles. */
  readonly fillDepthMm: number;
  /** The settled soil around the posts, in litres. */
  readonly soilL: number;
  readonly fillL: number;
  readonly bottom?: BottomLayout;
}

/** Strips of a roll that run the length of the bed. */
export interface BottomLayout {
  readonly strips: number;
  readonly stripMm: number;
  /** Of all strips together. */
  readonly lengthMm: number;
  readonly areaM2: number;
}

/** The record must be one that raisedBedFaults finds right; for others the result is without meaning. */
export function layRaisedBed(project: RaisedBed): RaisedBedLayout {
  const { boards, posts, soil } = project;
  const board = sizeOf(boards.nominal);
  const postMm = sizeOf(posts.nominal).thicknessMm;
  const [outsideLengthMm, outsideWidthMm] = [middle(project.length), middle(project.width)];
  const heightMm = board.widthMm * boards.courses;
  const insideLengthMm = outsideLengthMm - 2 * board.thicknessMm;
  const insideWidthMm = outsideWidthMm - 2 * board.thicknessMm;
  const middleAlong = middlePosts(outsideLengthMm, board.thicknessMm);
  const middleAcross = middlePosts(outsideWidthMm, board.thicknessMm);
  const inGroundMm = middle(posts.inGround);
  const numberOfPosts = 4 + 2 * (middleAlong + middleAcross);
  const soilDepthMm = middle(soil.depth);
  const fillDepthMm = soilDepthMm * (1 + soil.settlesPercent / 100);
  const soilMm2 = insideLengthMm * insideWidthMm - numberOfPosts * postMm ** 2;
  return {
    outsideLengthMm,
    outsideWidthMm,
    board,
    courses: boards.courses,
    postMm,
    inGroundMm,
    heightMm,
    insideLengthMm,
    insideWidthMm,
    postLengthMm: heightMm + inGroundMm,
    middleAlong,
    middleAcross,
    spanMm: outsideLengthMm / (middleAlong + 1),
    joints: boards.courses * (8 + 2 * (middleAlong + middleAcross)),
    screwsPerJoint: screwsPerJoint(board.widthMm),
    screwLengthMm: screwLengthMm(board.thicknessMm, postMm),
    screwPlan: screwPlan(board.widthMm, screwsPerJoint(board.widthMm), postMm),
    holeFromStringMm: board.thicknessMm + postMm / 2,
    soilDepthMm,
    fillDepthMm,
    soilL: (soilMm2 * soilDepthMm) / 1e6,
    fillL: (soilMm2 * fillDepthMm) / 1e6,
    ...(project.bottom ? { bottom: layBottom(project.bottom, { insideLengthMm, insideWidthMm }) } : {}),
  };
}

function layBottom(
  { rollWidth, turnUp, overlap }: NonNullable<RaisedBed['bottom']>,
  { insideLengthMm, insideWidthMm }: { readonly insideLengthMm: number; readonly insideWidthMm: number },
): BottomLayout {
  const acrossMm = insideWidthMm + 2 * middle(turnUp);
  const stripMm = insideLengthMm + 2 * middle(turnUp);
  const [rollMm, overlapMm] = [middle(rollWidth), middle(overlap)];
  const strips = Math.max(1, Math.ceil((acrossMm - overlapMm) / (rollMm - overlapMm) - 1e-6));
  const lengthMm = strips * stripMm;
  return { strips, stripMm, lengthMm, areaM2: (lengthMm * rollMm) / 1e6 };
}
