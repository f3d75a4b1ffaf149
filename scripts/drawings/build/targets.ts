/** What the letters of a drawing can point at. */
import { distance, type Point } from '../path.ts';
import { areaOf, distanceToOutline } from './clearances.ts';
import type { Target } from './callouts.ts';
import type { RoleLetters } from './words.ts';

/** Something painted, as far as letters are concerned. Later ones cover earlier ones. */
export interface Lettered {
  readonly role: string;
  readonly outline: readonly Point[];
  readonly seeThrough: boolean;
  readonly spots: readonly Point[];
  /** Shown heavier than the others of its role, so that the letter points at it where it can. */
  readonly prominent?: boolean;
}

export interface TargetOptions {
  readonly letters: RoleLetters;
  /** Roles to point at, in this order; those without a letter or out of sight are left out. */
  readonly roles: readonly string[];
  /** Whether a balloon may stand on a part that is large enough. */
  readonly balloons: 'beside' | 'on-parts';
}

const mostSpots = 48;
const mostRooms = 4;

export function targetsOf(painted: readonly Lettered[], options: TargetOptions): readonly Target[] {
  const { letters, roles, balloons } = options;
  const lettered = roles.filter((role) => letters[role] !== undefined);
  // Beside a part every role has its balloon; where all of a build is shown, each letter has one.
  const groups =
    balloons === 'beside'
      ? lettered.map((role) => [role])
      : [...new Set(lettered.map((role) => letters[role]!))].map((letter) =>
          lettered.filter((role) => letters[role] === letter),
        );
  return groups.flatMap((group): readonly Target[] => {
    const all = painted.flatMap((part, index) =>
      group.includes(part.role) ? [{ ...part, over: painted.slice(index + 1) }] : [],
    );
    const inSight = all.filter((part) => isInSight(part, part.over));
    const prominent = inSight.filter((part) => part.prominent);
    const own = prominent.length > 0 ? prominent : inSight;
    const spots = own.flatMap((part) => part.spots.filter((spot) => isSeen(spot, part.over)));
    if (spots.length === 0) return [];
    const rooms = [...own]
      .sort((a, b) => areaOf(b.outline) - areaOf(a.outline))
      .slice(0, mostRooms)
      .map(({ outline, over }) => ({ outline, over: over.map((part) => part.outline) }));
    const letter = letters[group[0]!]!;
    return [{ letter, spots: thinned(spots), ...(balloons === 'on-parts' ? { rooms } : {}) }];
  });
}

/** Whether any of something painted is seen past what is painted after it. */
export function isInSight({ spots }: Lettered, over: readonly Lettered[]): boolean {
  return spots.some((spot) => isSeen(spot, over));
}

/** A dot of a leader needs this much of the part round it. */
const dotMm = 0.5;

function isSeen(spot: Point, over: readonly Lettered[]): boolean {
  return over.every(
    ({ seeThrough, outline }) =>
      seeThrough || outline.length === 0 || distanceToOutline(outline, spot) > dotMm,
  );
}

function thinned(spots: readonly Point[]): readonly Point[] {
  const apart = spots.filter(
    (spot, index) => !spots.slice(0, index).some((other) => distance(spot, other) < 0.5),
  );
  const pace = Math.max(1, Math.ceil(apart.length / mostSpots));
  return apart.filter((_, index) => index % pace === 0);
}
