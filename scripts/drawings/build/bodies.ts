/** Which bodies a drawing shows, and what of each: nothing of what lies in the ground or in a filling. */
import type { Assembly, Member, Solid, Surface } from '../../structures/assembly.ts';
import type { Spot } from '../../structures/geometry.ts';
import { isInside, middleOf } from './clearances.ts';
import { hullOf } from '../outline.ts';
import type { Body, Weight } from './painted.ts';
import type { Point } from '../path.ts';
import { dot, facesOf, isSheet, mean, partBelow, times, type Plane } from './solids.ts';

/** The members that are there once the step of the index is done, each with whether that step adds it. */
export function membersAt(assembly: Assembly, step: number): readonly { member: Member; added: boolean }[] {
  const indexOf = (stage: string): number => assembly.stages.indexOf(stage);
  return assembly.members
    .filter(
      ({ stage, until, leftOutAt = [] }) =>
        indexOf(stage) <= step &&
        (until === undefined || step < indexOf(until)) &&
        !leftOutAt.includes(assembly.stages[step]!),
    )
    .map((member) => ({ member, added: indexOf(member.stage) === step }));
}

/** The members of the finished build. */
export function finished(assembly: Assembly): readonly Member[] {
  return membersAt(assembly, assembly.stages.length - 1).map(({ member }) => member);
}

export interface GroundedBodies {
  readonly above: readonly Body[];
  /** What of them stands in the ground. */
  readonly buried: readonly Body[];
}

/** Parts above the ground, where they do not stand in soil or another filling, and parts below the ground. */
export function bodiesOf(
  members: readonly { readonly member: Member; readonly weight: Weight }[],
): GroundedBodies {
  const fillings = members
    .map(({ member }) => member)
    .filter((member) => isFilling(member) && !isSheet(member.solid))
    .map(asFilling);
  const parts = members.map(({ member, weight }) => ({
    member,
    weight,
    above: aboveGround(member.solid),
    below: partBelow(member.solid, { normal: { x: 0, y: 0, z: 1 }, level: 0 }),
  }));
  return {
    above: parts.flatMap(({ member, weight, above }): readonly Body[] => {
      const solid = above && outOfFillings(member, above, fillings);
      return solid ? [{ member, weight, solid }] : [];
    }),
    buried: parts.flatMap(({ member, weight, below }): readonly Body[] =>
      below && lowestOf(below) < -buriedMm && !isFilling(member) ? [{ member, weight, solid: below }] : [],
    ),
  };
}

const buriedMm = 15;
const fillingSurfaces: ReadonlySet<Surface> = new Set(['soil', 'gravel', 'compost']);

export function isFilling({ surface }: Member): boolean {
  return fillingSurfaces.has(surface);
}

/** Of what lies wholly in the ground, such as gravel in a pit, the faces that are seen from above. */
function aboveGround(solid: Solid): Solid | undefined {
  const above = partBelow(solid, { normal: { x: 0, y: 0, z: -1 }, level: 0 });
  if (above && highestOf(above) > 1) return above;
  const tops = facesOf(solid).filter(({ normal }) => Math.abs(normal.z) > 0.5);
  const highest = tops.reduce<(typeof tops)[number] | undefined>(
    (best, face) => (best === undefined || mean(face.corners).z > mean(best.corners).z ? face : best),
    undefined,
  );
  return highest && { faces: [highest.corners] };
}

/** A filling as far as what stands in it is concerned. */
interface Filling {
  readonly plan: readonly Point[];
  readonly topMm: number;
  /** Its upper face, turned down: what is on the side that this points away from stands out. */
  readonly surface: Plane;
}

function asFilling({ solid }: Member): Filling {
  const { normal, corners } = facesOf(solid).reduce((best, face) =>
    face.normal.z > best.normal.z ? face : best,
  );
  const down = times(normal, -1);
  return {
    plan: hullOf(solid.faces.flat()),
    topMm: highestOf(solid),
    surface: { normal: down, level: dot(down, corners[0]!) },
  };
}

/** What of a body stands out of the fillings that it is stuck in; undefined when it is covered. */
function outOfFillings(member: Member, solid: Solid, list: readonly Filling[]): Solid | undefined {
  if (isFilling(member) || isSheet(solid)) return solid;
  const low = lowestOf(solid);
  const foot = middleOf(solid.faces.flat().filter(({ z }) => z < low + 1));
  return list
    .filter(({ plan, topMm }) => low < topMm - 5 && isInside(plan, foot))
    .reduce<Solid | undefined>((rest, { surface }) => rest && partBelow(rest, surface), solid);
}

function lowestOf(solid: Solid): number {
  return Math.min(...zs(solid));
}

function highestOf(solid: Solid): number {
  return Math.max(...zs(solid));
}

function zs({ faces }: Solid): readonly number[] {
  return faces.flat().map(({ z }: Spot) => z);
}
