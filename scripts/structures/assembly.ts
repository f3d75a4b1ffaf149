/**
 * A built thing as bodies in space, in millimetres: x runs east, y runs poleward, z runs up, and the origin lies on the
 * ground. The drawings of a build (plan, elevation, section, one for each step) are all made from it, so that what is drawn
 * is what was computed.
 */
import type { Hemisphere, Spot } from './geometry.ts';

/**
 * A convex body by its faces, each a flat polygon of corners in order. A flat sheet, such as cloth, mesh or the surface of
 * soil, has one face.
 */
export interface Solid {
  readonly faces: readonly (readonly Spot[])[];
}

/** What a body is made of, which says how it is drawn. */
export const surfaces = [
  'wood',
  'block',
  'straw',
  'soil',
  'gravel',
  'compost',
  'glass',
  'mesh',
  'cloth',
  'metal',
  'cord',
  'plant',
] as const;
export type Surface = (typeof surfaces)[number];

export interface Member {
  /** What it is: `side-board`, `corner-post`. Members of one role go by one letter of the list of parts. */
  readonly role: string;
  readonly solid: Solid;
  readonly surface: Surface;
  /** The step drawing in which it first stands. */
  readonly stage: string;
  /** The step drawing from which on it is no longer there, such as a guide string. */
  readonly until?: string;
  /** Step drawings in which it is left out though it stands, since other things lie in its place there. */
  readonly leftOutAt?: readonly string[];
  /** In the drawing of its own stage it is shown this far above its place, with an arrow down. */
  readonly liftMm?: number;
  /**
   * Something round, whose faces only come near its shape: no edges are drawn between faces that turn little, nor where it
   * runs on into another smooth member of its role (which then has the same corners there).
   */
  readonly smooth?: true;
}

/** A measure that a drawing shows: between two spots, drawn `offsetMm` to the side of the line between them. */
export interface ShownMeasure {
  /** Id of the finding whose value it is. Drawn and computed must agree. */
  readonly finding: string;
  readonly from: Spot;
  readonly to: Spot;
  /** Which drawing shows it. */
  readonly in: 'plan' | 'elevation' | 'section';
  /** Where its line lies, seen on the drawing. */
  readonly side: 'above' | 'below' | 'left' | 'right';
}

export interface Assembly {
  readonly hemisphere: Hemisphere;
  readonly members: readonly Member[];
  /** Names of the step drawings in the order of building. */
  readonly stages: readonly string[];
  readonly measures: readonly ShownMeasure[];
  /** Where the section is cut: a plane across y-z at this x, seen from the east. */
  readonly sectionAtX: number;
}
