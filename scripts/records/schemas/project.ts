/** The record of a build project: one schema for each kind, chosen by what the record says of itself. */
import Type, { type TSchema } from 'typebox';
import { oneOf } from './kit.ts';
import { BaleColdFrameSchema, type BaleColdFrame } from './projects/bale-cold-frame.ts';
import { KeyholeBedSchema, type KeyholeBed } from './projects/keyhole-bed.ts';
import { LumberColdFrameSchema, type LumberColdFrame } from './projects/lumber-cold-frame.ts';
import { PoleTepeeSchema, type PoleTepee } from './projects/pole-tepee.ts';
import { RaisedBedSchema, type RaisedBed } from './projects/raised-bed.ts';

/** The schema of each kind; a kind is added here, in `structures/structures.ts` and in the drawings. */
export const projectSchemas = {
  'bale-cold-frame': BaleColdFrameSchema,
  'lumber-cold-frame': LumberColdFrameSchema,
  'raised-bed': RaisedBedSchema,
  'keyhole-bed': KeyholeBedSchema,
  'pole-tepee': PoleTepeeSchema,
} as const;

export type ProjectKind = keyof typeof projectSchemas;
export type Project = BaleColdFrame | LumberColdFrame | RaisedBed | KeyholeBed | PoleTepee;
export type ProjectStep = Project['steps'][number];
export type ProjectPart = Project['parts'][number];

export const projectKinds = Object.keys(projectSchemas) as readonly ProjectKind[];

/** For a record that does not say of which kind it is: everything else can only be judged once it does. */
const AnyKind = Type.Object({ kind: oneOf(projectKinds) }, { additionalProperties: true });

/** The schema that a value must be judged by. */
export function projectSchemaOf(value: unknown): TSchema {
  const kind = (value as { kind?: unknown } | null)?.kind;
  return projectKinds.includes(kind as ProjectKind) ? projectSchemas[kind as ProjectKind] : AnyKind;
}
