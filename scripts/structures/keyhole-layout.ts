/**
 * The lay of a keyhole bed on the ground: which blocks stand where in the ring and along the notch, and what the bed holds.
 *
 * The origin lies in the middle of the ring, on the ground; the notch opens toward the equator. Angles run round the ring from
 * the middle of the notch. Fronts of blocks have their corners on the outside circle. The sides of the notch lie on lines
 * through the middle, so that the end of a ring block is flush with them.
 */
import { middle } from '../quantities/quantity.ts';
import type { KeyholeBed } from '../records/schemas/projects/keyhole-bed.ts';
import type { Spot } from './geometry.ts';
import { diameterStepMm, leastLapShare, mostSmallerMm } from './keyhole-practice.ts';

export interface BlockSize {
  readonly faceMm: number;
  readonly backMm: number;
  readonly depthMm: number;
  readonly heightMm: number;
}

/** What a ring is laid out from, in millimetres, all above 0. */
export interface RingSizes {
  readonly diameterMm: number;
  readonly block: BlockSize;
  /** The notch where it opens. */
  readonly notchMm: number;
  readonly basketMm: number;
  /** The widest gap between two blocks. */
  readonly jointMm: number;
}

export interface RingPiece {
  readonly kind: 'whole' | 'half';
  /** Where it begins and ends, in radians from the middle of the notch. */
  readonly from: number;
  readonly to: number;
}

export interface SidePiece {
  readonly kind: 'whole' | 'half';
  /** Distance from the middle of its outer and its inner end, along the side of the notch. */
  readonly outer: number;
  readonly inner: number;
}

/** The blocks of one course; both sides of the notch are alike. */
export interface RingCourse {
  readonly ring: readonly RingPiece[];
  readonly side: readonly SidePiece[];
  /** From block to block, outside and at the back. */
  readonly frontGapMm: number;
  readonly backGapMm: number;
}

export interface Ring {
  readonly block: BlockSize;
  readonly diameterMm: number;
  readonly radiusMm: number;
  /** From the middle to the backs of the blocks. */
  readonly insideMm: number;
  readonly basketRadiusMm: number;
  /** Half the opening of the notch, in radians. */
  readonly notchAngle: number;
  /** The course on the ground and every second one above it, and the courses between. */
  readonly odd: RingCourse;
  readonly even: RingCourse;
  /** The shortest way from a joint to the nearest one a course below. */
  readonly lapMm: number;
  /** The longest gap between the end of a side of the notch and the basket. */
  readonly sideGapMm: number;
}

/**
 * The largest ring no wider than wanted whose blocks come out whole (or as halves at the notch), with no gap wider than
 * allowed and with all joints broken; undefined where none is found that is up to 12 in smaller.
 */
export function layRing(sizes: RingSizes): Ring | undefined {
  const largest = Math.floor(sizes.diameterMm / diameterStepMm + 1e-6);
  const steps = Math.floor(mostSmallerMm / diameterStepMm);
  for (let step = 0; step <= steps; step += 1) {
    const ring = ringOf({ ...sizes, diameterMm: (largest - step) * diameterStepMm });
    if (ring) return ring;
  }
  return undefined;
}

/** The gap at the back of two blocks whose fronts touch (below 0: the backs touch first), for a circle of this size. */
export function tightGaps({ diameterMm, block }: RingSizes): {
  readonly frontMm: number;
  readonly backMm: number;
} {
  const circle = circleOf(diameterMm / 2, block);
  return gapsAt(circle, block, circle.half);
}

interface Circle {
  /** From the middle to the fronts of the blocks. */
  readonly frontMm: number;
  readonly insideMm: number;
  /** Half of what one block takes of the circle, laid tight, in radians. */
  readonly half: number;
}

function circleOf(radiusMm: number, { faceMm, backMm, depthMm }: BlockSize): Circle {
  const frontMm = Math.sqrt(Math.max(0, radiusMm ** 2 - faceMm ** 2 / 4));
  const insideMm = frontMm - depthMm;
  return {
    frontMm,
    insideMm,
    half: Math.max(Math.atan2(faceMm / 2, frontMm), Math.atan2(backMm / 2, insideMm)),
  };
}

function gapsAt(
  { frontMm, insideMm }: Circle,
  { faceMm, backMm }: BlockSize,
  half: number,
): { readonly frontMm: number; readonly backMm: number } {
  return {
    frontMm: 2 * (frontMm * Math.tan(half) - faceMm / 2) * Math.cos(half),
    backMm: 2 * (insideMm * Math.tan(half) - backMm / 2) * Math.cos(half),
  };
}

function ringOf({ diameterMm, block, notchMm, basketMm, jointMm }: RingSizes): Ring | undefined {
  const radiusMm = diameterMm / 2;
  const circle = circleOf(radiusMm, block);
  const { insideMm } = circle;
  if (insideMm <= basketMm / 2 || notchMm >= diameterMm || block.depthMm >= insideMm) return undefined;
  const notchAngle = Math.asin(notchMm / diameterMm);
  const besideWall = notchAngle + Math.asin(block.depthMm / insideMm);
  const ring = bestPair(
    coursesFrom(notchAngle, circle, block, jointMm),
    coursesFrom(besideWall, circle, block, jointMm),
    radiusMm,
  );
  if (!ring || ring.lap < leastLapShare * block.faceMm - 1e-6) return undefined;
  const side = sidesOf({ radiusMm, circle, block, basketMm, jointMm });
  return {
    block,
    diameterMm,
    radiusMm,
    insideMm,
    basketRadiusMm: basketMm / 2,
    notchAngle,
    odd: { ...ring.first, side: side.first.pieces },
    even: { ...ring.second, side: side.second.pieces },
    lapMm: Math.min(ring.lap, side.lap),
    sideGapMm: Math.max(side.first.leftMm, side.second.leftMm),
  };
}

type LaidRing = Omit<RingCourse, 'side'>;

/** The course from `start` round to the same on the other side: of whole blocks, or with half a block at either end. */
function coursesFrom(start: number, circle: Circle, block: BlockSize, jointMm: number): readonly LaidRing[] {
  const room = 2 * Math.PI - 2 * start;
  const step = 2 * circle.half;
  const blocks = Math.floor(room / step + 1e-9);
  if (blocks < 3) return [];
  const plans: readonly (readonly RingPiece['kind'][])[] = [
    Array.from({ length: blocks }, () => 'whole' as const),
    ['half', ...Array.from({ length: blocks - 1 }, () => 'whole' as const), 'half'],
  ];
  return plans.flatMap((kinds) => {
    const opening = (room - blocks * step) / kinds.length;
    const { frontMm, backMm } = gapsAt(circle, block, circle.half + opening / 2);
    if (Math.max(frontMm, backMm) > jointMm + 1e-6) return [];
    let at = start;
    const ring = kinds.map((kind): RingPiece => {
      const from = at;
      at += (kind === 'whole' ? step : step / 2) + opening;
      return { kind, from, to: at };
    });
    return [{ ring, frontGapMm: Math.max(0, frontMm), backGapMm: Math.max(0, backMm) }];
  });
}

/** The two courses whose joints lie furthest from each other; of equals those with fewer halves. */
function bestPair(
  firsts: readonly LaidRing[],
  seconds: readonly LaidRing[],
  radiusMm: number,
): { readonly first: LaidRing; readonly second: LaidRing; readonly lap: number } | undefined {
  let best: { first: LaidRing; second: LaidRing; lap: number } | undefined;
  for (const first of firsts) {
    for (const second of seconds) {
      const joints = first.ring.slice(1).map(({ from }) => from);
      const below = [...second.ring.map(({ from }) => from), second.ring.at(-1)!.to];
      const lap = radiusMm * nearest(joints, below);
      if (!best || lap > best.lap + 1e-6) best = { first, second, lap };
    }
  }
  return best;
}

/** The shortest distance from any of `some` to any of `others`; of none, without end. */
function nearest(some: readonly number[], others: readonly number[]): number {
  return Math.min(...some.flatMap((one) => others.map((other) => Math.abs(one - other))));
}

interface LaidSide {
  readonly pieces: readonly SidePiece[];
  readonly leftMm: number;
}

/**
 * The sides of the notch, from outside to the basket. Tapered blocks are turned about, so that two of them make a straight
 * length. In the course on the ground they begin behind the ring, in the next one outside, beside it.
 */
function sidesOf({
  radiusMm,
  circle,
  block,
  basketMm,
  jointMm,
}: {
  readonly radiusMm: number;
  readonly circle: Circle;
  readonly block: BlockSize;
  readonly basketMm: number;
  readonly jointMm: number;
}): { readonly first: LaidSide; readonly second: LaidSide; readonly lap: number } {
  const meanMm = (block.faceMm + block.backMm) / 2;
  const inner = basketMm / 2;
  const behindRing = (circle.insideMm - block.depthMm * Math.sin(circle.half)) / Math.cos(circle.half);
  const outside = Math.sqrt(radiusMm ** 2 - block.depthMm ** 2);
  const sides = (outer: number): readonly LaidSide[] =>
    [false, true].map((halfFirst) => laySide({ outer, inner, meanMm, jointMm, halfFirst }));
  let best: { first: LaidSide; second: LaidSide; lap: number } | undefined;
  for (const first of sides(behindRing)) {
    for (const second of sides(outside)) {
      const joints = ({ pieces }: LaidSide): readonly number[] => pieces.slice(1).map((piece) => piece.outer);
      const lap = Math.min(nearest(joints(first), joints(second)), meanMm / 2);
      if (!best || lap > best.lap + 1e-6) best = { first, second, lap };
    }
  }
  return best!;
}

function laySide(side: {
  readonly outer: number;
  readonly inner: number;
  readonly meanMm: number;
  readonly jointMm: number;
  readonly halfFirst: boolean;
}): LaidSide {
  const pieces: SidePiece[] = [];
  let at = side.outer;
  const put = (kind: SidePiece['kind']): boolean => {
    const lengthMm = kind === 'whole' ? side.meanMm : side.meanMm / 2;
    if (at - lengthMm < side.inner - side.jointMm) return false;
    pieces.push({ kind, outer: at, inner: at - lengthMm });
    at -= lengthMm;
    return true;
  };
  if (side.halfFirst) put('half');
  while (put('whole'));
  put('half');
  return { pieces, leftMm: Math.max(0, at - side.inner) };
}

/** How many whole blocks the courses take from the ground up, halves being two of a block. */
export function blocksOf(ring: Ring, courses: number): { readonly whole: number; readonly halves: number } {
  const of = (kind: 'whole' | 'half'): number =>
    Array.from({ length: courses }, (_, index) => courseAt(ring, index))
      .map((course) => course.ring.filter(isKind(kind)).length + 2 * course.side.filter(isKind(kind)).length)
      .reduce((sum, number) => sum + number, 0);
  return { whole: of('whole'), halves: of('half') };
}

const isKind =
  (kind: 'whole' | 'half') =>
  (piece: { readonly kind: 'whole' | 'half' }): boolean =>
    piece.kind === kind;

/** A course by its number from 0 at the ground. */
export function courseAt(ring: Ring, index: number): RingCourse {
  return index % 2 === 0 ? ring.odd : ring.even;
}

/** Of the ring between the basket and the backs of the blocks, what the notch and its walls leave, in square millimetres. */
export function soilAreaMm2({ insideMm, basketRadiusMm, notchAngle, block }: Ring): number {
  const sector = (Math.PI - notchAngle) * (insideMm ** 2 - basketRadiusMm ** 2);
  return sector - 2 * (stripMm2(insideMm, block.depthMm) - stripMm2(basketRadiusMm, block.depthMm));
}

/** What lies of a quarter circle within `depthMm` of one of its straight sides; all of it where the circle is no larger. */
function stripMm2(radiusMm: number, depthMm: number): number {
  if (depthMm >= radiusMm) return (Math.PI / 4) * radiusMm ** 2;
  const across = Math.sqrt(radiusMm ** 2 - depthMm ** 2);
  return (depthMm * across + radiusMm ** 2 * Math.asin(depthMm / radiusMm)) / 2;
}

/** The length of the ring of soil round a circle of this radius, from one wall of the notch to the other. */
export function soilLengthMm({ notchAngle, block }: Ring, radiusMm: number): number {
  const wall = block.depthMm >= radiusMm ? Math.PI / 2 : Math.asin(block.depthMm / radiusMm);
  return radiusMm * (2 * Math.PI - 2 * (notchAngle + wall));
}

/** Of a slope from `rise` at the basket to nothing at the wall, the mean height over the whole ring. */
export function meanRiseShare({ insideMm, basketRadiusMm }: Ring): number {
  return (insideMm + 2 * basketRadiusMm) / (3 * (insideMm + basketRadiusMm));
}

/** A place by its distance from the middle and its angle from the middle of the notch. */
export function placeAt(radiusMm: number, angle: number, z: number): Spot {
  return { x: radiusMm * Math.sin(angle), y: -radiusMm * Math.cos(angle), z };
}

/** The sizes of a record that a ring is laid out from. */
export function ringSizes({ diameter, block, notch, basket, joint }: KeyholeBed): RingSizes {
  return {
    diameterMm: middle(diameter),
    block: {
      faceMm: middle(block.face),
      backMm: middle(block.back),
      depthMm: middle(block.depth),
      heightMm: middle(block.height),
    },
    notchMm: middle(notch.value),
    basketMm: middle(basket.diameter),
    jointMm: middle(joint.value),
  };
}

/** What lies on what, in millimetres above the ground, and what it comes to in litres. */
export interface KeyholeFill {
  readonly courses: number;
  readonly wallMm: number;
  /** The wall above the ground. */
  readonly aboveMm: number;
  readonly areaM2: number;
  /** Surface of the mix at the wall and at the basket. */
  readonly atWallMm: number;
  readonly atBasketMm: number;
  readonly drainageMm: number;
  readonly soilMm: number;
  /** Browns and greens between drainage and mix, at the wall. */
  readonly organicAtWallMm: number;
  /** In place, once all has settled. */
  readonly drainageL: number;
  readonly organicL: number;
  readonly soilL: number;
  readonly totalL: number;
  readonly baseL: number;
}

/** Courses that a wall of `heightMm` above the ground takes, with so much of the first one in the ground. */
export function coursesFor(heightMm: number, buriedMm: number, blockMm: number): number {
  return Math.max(1, Math.ceil((heightMm + buriedMm) / blockMm - 1e-6));
}

export function fillOf(project: KeyholeBed, ring: Ring): KeyholeFill {
  const { layers, base } = project;
  const buriedMm = middle(project.buried);
  const courses = coursesFor(middle(project.height), buriedMm, ring.block.heightMm);
  const wallMm = courses * ring.block.heightMm;
  const aboveMm = wallMm - buriedMm;
  const atWallMm = aboveMm - middle(layers.below);
  const riseMm = middle(layers.rise);
  const areaMm2 = soilAreaMm2(ring);
  const litres = (depthMm: number): number => (areaMm2 * depthMm) / 1e6;
  const [drainageMm, soilMm] = [middle(layers.drainage), middle(layers.soil)];
  const organicAtWallMm = atWallMm - drainageMm - soilMm;
  const moundMm = riseMm * meanRiseShare(ring);
  return {
    courses,
    wallMm,
    aboveMm,
    areaM2: areaMm2 / 1e6,
    atWallMm,
    atBasketMm: atWallMm + riseMm,
    drainageMm,
    soilMm,
    organicAtWallMm,
    drainageL: litres(drainageMm),
    organicL: litres(organicAtWallMm + moundMm),
    soilL: litres(soilMm),
    totalL: litres(atWallMm + moundMm),
    baseL: (baseLengthMm(ring) * middle(base.width) * middle(base.depth)) / 1e6,
  };
}

/** Along the middle of the wall: round the ring, and in from it on both sides of the notch. */
export function baseLengthMm({ radiusMm, insideMm, basketRadiusMm, notchAngle, block }: Ring): number {
  const round = (radiusMm - block.depthMm / 2) * (2 * Math.PI - 2 * notchAngle);
  return round + 2 * (insideMm - basketRadiusMm);
}
