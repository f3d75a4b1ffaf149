/** What every kind of build project comes to, once its record adds up: the contract between a kind and its build card. */
import type { Finding } from '../findings/finding.ts';
import type { Assembly } from './assembly.ts';
import type { FrameEnvelope } from './frame-heat/envelope.ts';
import type { VentOpening } from './frame-heat/vent.ts';
import type { Hemisphere } from './geometry.ts';
import type { Project } from '../records/schemas/project.ts';
import type { StandingFrame } from './wind/frame-in-wind.ts';
import type { WindSash } from './wind/sash-in-wind.ts';

/** Where a project is built. */
export interface BuildPlace {
  readonly hemisphere: Hemisphere;
}

export interface Structure {
  /** Everything worked out, by ids that start with the kind's own word: `frame.`, `bed.`, `tepee.`. */
  readonly findings: readonly Finding[];
  /** What the counts of the record's parts follow from, by the names that its schema gives them. */
  readonly counts: Readonly<Record<string, Finding>>;
  /** How long a part is that comes in one length, by the same names: the list of parts prints it. */
  readonly lengths?: Readonly<Record<string, Finding>>;
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
  /** A bed under glass, as the heat sees it: what it keeps, and what of it opens. */
  readonly heat?: { readonly envelope: FrameEnvelope; readonly vent: VentOpening };
  /** What the wind can lift off it. */
  readonly covers?: readonly WindCover[];
  /** What people call that which closes the bed; a sash when absent. */
  readonly closedBy?: CoverWord;
  /** Smaller builds of the same record, the largest first: what is built from when less is at hand. */
  readonly versions?: () => Iterable<Project>;
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

/** A loose or hinged window sash, or a lid. */
export type CoverWord = 'sash' | 'lid';

/** A sash or lid in the wind, as it is held down by what the bill has. */
export interface WindCover {
  /** What ids begin with: `frame.sash-x` gives `frame.sash-x.wind-lift-closed`. */
  readonly id: string;
  /** The letter that drawings and tables call it by; absent where one stands for all, since they are alike. */
  readonly letter?: string;
  /** Id of the finding of its weight. */
  readonly weight: string;
  readonly sash: WindSash;
  /** What its hinges hold it to, where that stands on the ground by its weight alone. */
  readonly frame?: StandingFrame;
}

export interface LiftedItem {
  /** What is lifted: `sash`, `bale`, `soil-bag`; its name for people is the phrase `lifted.` and this. */
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
  /** From between the ankles to between the hands of each of two people, where they must reach over something. */
  readonly reachOfTwoMm?: number;
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
  /** For a ring: where it lies, so that each row round it has a length of its own. */
  readonly ring?: RingInside;
  /** What closes it above while plants are small. */
  readonly cover: 'open' | 'frame' | 'screen';
  /** Room over the soil at its lowest place, under a cover. */
  readonly clearMm?: number;
  /** The same at its highest place: what is taller cannot stand under the cover at all. */
  readonly mostClearMm?: number;
}

/** A ring of soil; its first row is the innermost. */
export interface RingInside {
  readonly innerRadiusMm: number;
  /** Half the angle that is open toward the equator at this distance from the middle, in radians; 0 for a closed ring. */
  readonly openAngleAt: (radiusMm: number) => number;
  /** Poles that stand in it, in millimetres east and poleward of its middle. */
  readonly poles?: readonly { readonly x: number; readonly y: number }[];
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
