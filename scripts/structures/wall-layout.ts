/**
 * How bales fill a wall. Lengths run along the wall in millimetres; a course is one layer of bales, counted from 0
 * at the ground.
 */
import { practice } from './practice.ts';

export interface BaleSize {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

export type Lay = 'flat' | 'on-edge';

export interface WallPiece {
  readonly kind: 'whole' | 'cut';
  readonly lengthMm: number;
}

export interface Course {
  readonly pieces: readonly WallPiece[];
  /** What the pieces leave open; loose straw fills it. Never more than one flake. */
  readonly gapMm: number;
}

/** Height and thickness of a bale as it lies: flat it rests on its widest face, on edge it is higher and thinner. */
export function baleAsLaid(
  bale: BaleSize,
  lay: Lay,
): { readonly heightMm: number; readonly thicknessMm: number } {
  return lay === 'flat'
    ? { heightMm: bale.heightMm, thicknessMm: bale.widthMm }
    : { heightMm: bale.widthMm, thicknessMm: bale.heightMm };
}

/**
 * One course of a wall that runs the whole outside length. It is laid in whole bales and may run past the corners,
 * or end up to one flake short of them. Every other course starts and ends with half a bale, so that no joint
 * stands over a joint (running bond).
 */
export function longWallCourse(outsideMm: number, baleLengthMm: number, course: number): Course {
  const bales = Math.max(1, Math.ceil(roundOff((outsideMm - practice.flakeMm) / baleLengthMm)));
  const half: WallPiece = { kind: 'cut', lengthMm: baleLengthMm / 2 };
  const pieces =
    course % 2 === 0 || bales === 1
      ? wholeBales(bales, baleLengthMm)
      : [half, ...wholeBales(bales - 1, baleLengthMm), half];
  return { pieces, gapMm: 0 };
}

/**
 * One course of a wall that stands between the long walls, listed from its poleward end: whole bales, then one piece
 * cut to what is left, if that is more than a flake. For the bond every other course is turned round; where that would
 * bring joint near joint (within a quarter bale), it starts with half a bale instead.
 */
export function sideWallCourse(insideMm: number, baleLengthMm: number, course: number): Course {
  const plain = wholesAndRest(insideMm, baleLengthMm);
  if (course % 2 === 0 || plain.pieces.length === 1) return plain;
  const cutMm = plain.pieces.find(({ kind }) => kind === 'cut')?.lengthMm ?? 0;
  const shareOfBale = cutMm / baleLengthMm;
  if (shareOfBale >= 0.25 && shareOfBale <= 0.75) return { ...plain, pieces: plain.pieces.toReversed() };
  const halfMm = baleLengthMm / 2;
  const rest = wholesAndRest(insideMm - halfMm, baleLengthMm);
  return { ...rest, pieces: [{ kind: 'cut', lengthMm: halfMm }, ...rest.pieces] };
}

function wholesAndRest(runMm: number, baleLengthMm: number): Course {
  const bales = Math.floor(roundOff((runMm + practice.squeezeMm) / baleLengthMm));
  const rest = runMm - bales * baleLengthMm;
  if (bales > 0 && rest <= 0) return { pieces: wholeBales(bales, runMm / bales), gapMm: 0 };
  if (bales > 0 && rest <= practice.flakeMm) return { pieces: wholeBales(bales, baleLengthMm), gapMm: rest };
  return { pieces: [...wholeBales(bales, baleLengthMm), { kind: 'cut', lengthMm: rest }], gapMm: 0 };
}

/**
 * How many bales must be cut to yield the pieces: the longest piece first, each from the first bale that still has
 * enough. A piece is never longer than a bale.
 */
export function balesToCut(pieceLengthsMm: readonly number[], baleLengthMm: number): number {
  const rests: number[] = [];
  for (const piece of [...pieceLengthsMm].sort((a, b) => b - a)) {
    const place = rests.findIndex((rest) => rest >= piece - 1e-6);
    if (place < 0) rests.push(baleLengthMm - piece);
    else rests[place]! -= piece;
  }
  return rests.length;
}

function wholeBales(number: number, lengthMm: number): readonly WallPiece[] {
  return Array.from({ length: number }, () => ({ kind: 'whole', lengthMm }) as const);
}

/** Takes the last digits off, so that 3.0000000000000004 bales are three. */
function roundOff(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}
