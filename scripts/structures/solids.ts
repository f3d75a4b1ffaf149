/** Convex bodies for the assembly of a build. */
import type { Solid } from './assembly.ts';
import type { Spot } from './geometry.ts';

/** An upright box between two opposite corners. */
export function boxBody(from: Spot, to: Spot): Solid {
  const base = [
    { x: from.x, y: from.y, z: from.z },
    { x: to.x, y: from.y, z: from.z },
    { x: to.x, y: to.y, z: from.z },
    { x: from.x, y: to.y, z: from.z },
  ];
  return sweptBody(base, { x: 0, y: 0, z: to.z - from.z });
}

/** What a flat convex polygon goes over when it is moved along `by`. */
export function sweptBody(base: readonly Spot[], by: Spot): Solid {
  const far = base.map((spot) => plus(spot, by));
  const sides = base.map((spot, index) => {
    const next = (index + 1) % base.length;
    return [spot, base[next]!, far[next]!, far[index]!];
  });
  return { faces: [base, far, ...sides] };
}

/** A flat sheet, of one face. */
export function sheetBody(corners: readonly Spot[]): Solid {
  return { faces: [corners] };
}

/** A straight cord of square section between two spots; it must not stand upright. */
export function cordBody(from: Spot, to: Spot, thicknessMm = 6): Solid {
  const along = { x: to.x - from.x, y: to.y - from.y, z: to.z - from.z };
  const level = Math.hypot(along.x, along.y);
  const half = thicknessMm / 2;
  const side = { x: (-along.y / level) * half, y: (along.x / level) * half };
  const corner = (across: number, up: number): Spot => ({
    x: from.x + across * side.x,
    y: from.y + across * side.y,
    z: from.z + up * half,
  });
  return sweptBody([corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)], along);
}

/** A body whose outline seen from the west is `profile` (y, z), from x `fromX` to `toX`. */
export function profileBody(
  profile: readonly (readonly [y: number, z: number])[],
  fromX: number,
  toX: number,
): Solid {
  return sweptBody(
    profile.map(([y, z]) => ({ x: fromX, y, z })),
    { x: toX - fromX, y: 0, z: 0 },
  );
}

function plus(a: Spot, b: Spot): Spot {
  return { x: a.x + b.x, y: a.y + b.y, z: a.z + b.z };
}
