/** What every kind of build project comes to, once its record adds up: the contract between a kind and its build card. */
import type { Finding } from '../findings/finding.ts';
import type { Assembly } from './assembly.ts';
import type { Hemisphere } from './geometry.ts';

/** Where a project is built. */
export interface BuildPlace {
  readonly hemisphere: Hemisphere;
}

export interface Structure {
  /** Everything worked out, by ids that start with the kind's own word: `frame.`, `bed.`, `tepee.`. */
  readonly findings: readonly Finding[];
  /** What the counts of the record's parts follow from, by the names that its schema gives them. */
  readonly counts: Readonly<Record<string, Finding>>;
  /** Straight pieces that are cut from stock; none for a kind without lumber. */
  readonly pieces: readonly CutPiece[];
  /** Whatever a person lifts while building. */
  readonly lifts: readonly LiftedItem[];
  /** Where something is sown in it. */
  readonly bed?: BedInside;
  /** The four findings that a card shows large. */
  readonly glance: readonly string[];
  /** What the drawings are made from; a bale frame has drawings of its own. */
  readonly assembly?: Assembly;
}

/** A piece of wood of a nominal section such as `2x10`, as many times as it is needed. */
export interface CutPiece {
  /** What it becomes: a role of the assembly. */
  readonly role: string;
  readonly nominal: string;
  /** Id of the finding that gives its length. */
  readonly length: string;
  readonly lengthMm: number;
  readonly number: number;
}

export interface LiftedItem {
  /** What is lifted: `sash-x`, `bale`, `soil-bag`. */
  readonly item: string;
  /** Id of the finding of its mass. */
  readonly mass: string;
  readonly massG: number;
  /** The step drawing at which it is lifted first. */
  readonly stage: string;
  /** How deep it is from the chest outward, and how wide from hand to hand. */
  readonly depthMm: number;
  readonly widthMm: number;
  /** Heights of the hands where it is taken up and where it is put down. */
  readonly fromMm: number;
  readonly toMm: number;
  readonly grip: 'good' | 'fair' | 'poor';
}

/** The inside of a bed that something is sown in. */
export interface BedInside {
  readonly shape: 'rectangle' | 'ring';
  /** East to west; for a ring, the length of the ring that is sown. */
  readonly lengthMm: number;
  /** Id of the finding of that length. */
  readonly length: string;
  /** Poleward to equator; for a ring, how wide the sown strip is. */
  readonly depthMm: number;
  readonly soilDepthMm: number;
  /** What closes it above while plants are small. */
  readonly cover: 'open' | 'frame' | 'screen';
  /** Room over the soil at its lowest place, under a cover. */
  readonly clearMm?: number;
}

/** What does not add up in a record, said to the person who wrote it. */
export interface StructureDiagnosis {
  readonly path: readonly (string | number)[];
  readonly message: string;
  readonly hint: string;
}

/** A project either has a structure or faults. */
export type Built<S extends Structure = Structure> =
  | { readonly kind: 'structure'; readonly structure: S }
  | { readonly kind: 'faults'; readonly faults: readonly StructureDiagnosis[] };
