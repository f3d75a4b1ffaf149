/** The blocks of a course of a keyhole bed as they lie, seen from above. */
import type { Spot } from './geometry.ts';
import { courseAt, type Ring, type RingPiece, type SidePiece } from './keyhole-layout.ts';

/** A block by its corners, in millimetres; all at height 0. */
export interface LaidBlock {
  readonly outline: readonly Spot[];
  readonly half: boolean;
}

/**
 * The blocks of a course, numbered from 0 at the ground, in the order of laying: in the first and every second one the ring from
 * one corner of the notch round to the other, then the two sides of the notch from outside in; in those between, the sides first.
 */
export function courseOutlines(ring: Ring, index: number): readonly LaidBlock[] {
  const course = courseAt(ring, index);
  const around = course.ring.map((piece): LaidBlock => ({
    outline: ringBlock(ring, piece),
    half: piece.kind === 'half',
  }));
  const sides = ([1, -1] as const).flatMap((side) => sideBlocks(ring, course.side, side));
  return index % 2 === 0 ? [...around, ...sides] : [...sides, ...around];
}

function ringBlock({ radiusMm, block }: Ring, { kind, from, to }: RingPiece): readonly Spot[] {
  const frontMm = Math.sqrt(radiusMm ** 2 - block.faceMm ** 2 / 4);
  const share = kind === 'whole' ? 0.5 : 0.25;
  const mid = (from + to) / 2;
  return (
    [
      [frontMm, -share * block.faceMm],
      [frontMm, share * block.faceMm],
      [frontMm - block.depthMm, share * block.backMm],
      [frontMm - block.depthMm, -share * block.backMm],
    ] as const
  ).map(([outward, across]) => ({
    x: outward * Math.sin(mid) + across * Math.cos(mid),
    y: -outward * Math.cos(mid) + across * Math.sin(mid),
    z: 0,
  }));
}

/** Blocks turned about one after the other, so that their tapers make a straight wall. */
function sideBlocks(
  { block, notchAngle }: Ring,
  pieces: readonly SidePiece[],
  side: 1 | -1,
): readonly LaidBlock[] {
  const lean = (block.faceMm - block.backMm) / 4;
  return pieces.map(({ outer, inner, kind }, place) => {
    const turned = place % 2 === 0 ? 1 : -1;
    const skew = kind === 'whole' ? lean * turned : (lean / 2) * turned;
    const [first, last] = [place === 0 ? 0 : skew, place === pieces.length - 1 ? 0 : skew];
    const outline = (
      [
        [outer + first, 0],
        [outer - first, block.depthMm],
        [inner + last, block.depthMm],
        [inner - last, 0],
      ] as const
    ).map(([alongMm, acrossMm]) => {
      const spot = besideNotch(notchAngle, alongMm, acrossMm, 0);
      return { ...spot, x: side * spot.x };
    });
    return { outline, half: kind === 'half' };
  });
}

/** On the east side: `alongMm` from the middle along the side of the notch, and `acrossMm` away from the notch. */
export function besideNotch(notchAngle: number, alongMm: number, acrossMm: number, z: number): Spot {
  return {
    x: alongMm * Math.sin(notchAngle) + acrossMm * Math.cos(notchAngle),
    y: -alongMm * Math.cos(notchAngle) + acrossMm * Math.sin(notchAngle),
    z,
  };
}
