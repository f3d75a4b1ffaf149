/**
 * The sides from which a build is looked at. All of them are one projection turned and tilted: the plan from above, the
 * elevation from the sun side, the section from the east, a step from the sun side and above.
 *
 * In an assembly x runs east and y poleward, so south of the equator its space is left-handed. `asSeen` turns x round
 * there, once; after that nothing but the turn of a view depends on the hemisphere.
 */
import type { Assembly, Member, Solid } from '../../structures/assembly.ts';
import type { Hemisphere, Spot } from '../../structures/geometry.ts';
import { project, type Camera } from '../axonometric.ts';
import { subtract, type Point } from '../path.ts';

export type ViewKind = 'plan' | 'elevation' | 'section' | 'step';

export interface Direction {
  readonly turnDeg: number;
  readonly tiltDeg: number;
}

/** An assembly in the right-handed space of its drawings. */
export function asSeen(assembly: Assembly): Assembly {
  if (assembly.hemisphere === 'north') return assembly;
  const turned = (spot: Spot): Spot => ({ ...spot, x: -spot.x });
  return {
    ...assembly,
    members: assembly.members.map((member): Member => ({ ...member, solid: mapped(member.solid, turned) })),
    measures: assembly.measures.map((measure) => ({
      ...measure,
      from: turned(measure.from),
      to: turned(measure.to),
    })),
    sectionAtX: -assembly.sectionAtX,
  };
}

export function mapped({ faces }: Solid, move: (spot: Spot) => Spot): Solid {
  return { faces: faces.map((corners) => corners.map(move)) };
}

/** North is up on a plan and on the right of a section, whichever way the pole lies. */
export function directionOf(kind: ViewKind, hemisphere: Hemisphere, tall = false): Direction {
  const north = hemisphere === 'north';
  switch (kind) {
    case 'plan':
      return { turnDeg: north ? 0 : 180, tiltDeg: 90 };
    case 'elevation':
      return { turnDeg: 0, tiltDeg: 0 };
    case 'section':
      return { turnDeg: north ? 90 : -90, tiltDeg: 0 };
    case 'step':
      return { turnDeg: 24, tiltDeg: tall ? 24 : 34 };
  }
}

/** The three directions of a view in space, each of length 1: right and up on the page, and toward the viewer. */
export interface Axes {
  readonly right: Spot;
  readonly up: Spot;
  readonly toward: Spot;
}

export function axesOf({ turnDeg, tiltDeg }: Direction): Axes {
  const turn = (turnDeg * Math.PI) / 180;
  const tilt = (tiltDeg * Math.PI) / 180;
  const [cosTurn, sinTurn, cosTilt, sinTilt] = [
    Math.cos(turn),
    Math.sin(turn),
    Math.cos(tilt),
    Math.sin(tilt),
  ];
  return {
    right: { x: cosTurn, y: sinTurn, z: 0 },
    up: { x: -sinTurn * sinTilt, y: cosTurn * sinTilt, z: cosTilt },
    toward: { x: sinTurn * cosTilt, y: -cosTurn * cosTilt, z: sinTilt },
  };
}

/** North along the ground on the page, in the space of `asSeen`. */
export function northOnPage(camera: Camera, hemisphere: Hemisphere): Point {
  const ahead = { x: 0, y: hemisphere === 'north' ? 1000 : -1000, z: 0 };
  return subtract(project(camera, ahead), project(camera, { x: 0, y: 0, z: 0 }));
}
