/** Round things of an assembly, made of flat faces: poles, tubes of mesh, rings of twine. */
import type { Member, Solid } from './assembly.ts';
import type { Spot } from './geometry.ts';
import { sheetBody } from './solids.ts';

/** A straight pole between two spots, eight-sided; `thicknessMm` across at the first, and at the second where it tapers. */
export function poleBody(from: Spot, to: Spot, thicknessMm: number, endThicknessMm = thicknessMm): Solid {
  const along = unit(minus(to, from));
  const across = Math.abs(along.z) < 0.9 ? { x: 0, y: 0, z: 1 } : { x: 1, y: 0, z: 0 };
  const side = unit(cross(along, across));
  const other = cross(along, side);
  const rim = (middle: Spot, radius: number): readonly Spot[] =>
    angles(8).map((angle) =>
      plus(plus(middle, times(side, radius * Math.cos(angle))), times(other, radius * Math.sin(angle))),
    );
  return between(rim(from, thicknessMm / 2), rim(to, endThicknessMm / 2));
}

/** An upright cylinder of so many sides, its corners on the circle. */
export function drumBody(middle: Spot, radiusMm: number, heightMm: number, sides = 20): Solid {
  const rim = (z: number): readonly Spot[] =>
    angles(sides).map((angle) => ({
      x: middle.x + radiusMm * Math.cos(angle),
      y: middle.y + radiusMm * Math.sin(angle),
      z,
    }));
  return between(rim(middle.z), rim(middle.z + heightMm));
}

/** An upright tube without ends, as flat sheets; a member each, since the whole of it is hollow. */
export function tubeSheets(middle: Spot, radiusMm: number, heightMm: number, sides = 20): readonly Solid[] {
  const corner = (angle: number, z: number): Spot => ({
    x: middle.x + radiusMm * Math.cos(angle),
    y: middle.y + radiusMm * Math.sin(angle),
    z,
  });
  const top = middle.z + heightMm;
  return angles(sides).map((angle) => {
    const next = angle + (2 * Math.PI) / sides;
    return sheetBody([
      corner(angle, middle.z),
      corner(next, middle.z),
      corner(next, top),
      corner(angle, top),
    ]);
  });
}

/** What lies between a lower and an upper outline of as many corners, in the same order; both convex. */
export function between(lower: readonly Spot[], upper: readonly Spot[]): Solid {
  const sides = lower.map((corner, index) => {
    const next = (index + 1) % lower.length;
    return [corner, lower[next]!, upper[next]!, upper[index]!];
  });
  return { faces: [lower, upper, ...sides] };
}

/** A young plant: a pyramid that stands on its point. */
export function plantBody(foot: Spot, heightMm: number): Solid {
  const half = heightMm * 0.35;
  const top = [
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
  ].map(([x, y]) => ({ x: foot.x + x!, y: foot.y + y!, z: foot.z + heightMm }));
  return { faces: [top, ...top.map((corner, index) => [corner, top[(index + 1) % 4]!, foot])] };
}

/** Bodies of one role and stage as members. */
export function membersOf(solids: readonly Solid[], member: Omit<Member, 'solid'>): readonly Member[] {
  return solids.map((solid) => ({ ...member, solid }));
}

/** So many angles of a full turn, in radians. */
export function angles(number: number): readonly number[] {
  return Array.from({ length: number }, (_, index) => (2 * Math.PI * index) / number);
}

export function along(from: Spot, to: Spot, share: number): Spot {
  return plus(from, times(minus(to, from), share));
}

function plus(a: Spot, b: Spot): Spot {
  return { x: a.x + b.x, y: a.y + b.y, z: a.z + b.z };
}

function minus(a: Spot, b: Spot): Spot {
  return { x: a.x - b.x, y: a.y - b.y, z: a.z - b.z };
}

function times({ x, y, z }: Spot, factor: number): Spot {
  return { x: x * factor, y: y * factor, z: z * factor };
}

function cross(a: Spot, b: Spot): Spot {
  return { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
}

function unit(spot: Spot): Spot {
  return times(spot, 1 / Math.hypot(spot.x, spot.y, spot.z));
}
