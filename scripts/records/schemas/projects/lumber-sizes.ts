/** The sizes of lumber that records name; PS 20 gives what they measure. */
import { oneOf } from '../kit.ts';

/** What walls are made of, thin boards first. */
export const boardSizes = ['1x4', '1x6', '1x8', '1x10', '1x12', '2x4', '2x6', '2x8', '2x10', '2x12'] as const;

export const BoardSize = oneOf(boardSizes);
