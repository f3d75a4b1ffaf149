/** What a build card shows that only its kind of project has: its drawings, and exhibits of its own. */
import type { BedRow } from '../agronomy/bed-rows.ts';
import type { Scene } from '../drawings/scene.ts';
import type { BuiltProject, SheetContext } from './sheet-context.ts';
import { assemblyParts } from './assembly-parts.ts';
import { baleFrameParts } from './bale-frame-parts.ts';
import { lumberFrameParts } from './lumber-frame-parts.ts';
import type { Exhibit } from './names.ts';
import type { Frame } from '../structures/bale-cold-frame.ts';

export interface ProjectDrawings {
  readonly plan: Scene;
  readonly section: Scene;
  readonly elevation?: Scene;
  /** The same for a phone, where they would be too small. */
  readonly narrow?: Readonly<Record<'plan' | 'section' | 'elevation', Scene>>;
  /** The drawing of a step by its name in the record; `number` makes its id unique. */
  readonly step: (drawing: string, number: number) => Scene;
}

export interface KindParts {
  readonly drawings: ProjectDrawings;
  readonly exhibits: readonly (readonly [string, Exhibit])[];
}

export function kindParts(context: SheetContext, built: BuiltProject, rows: readonly BedRow[]): KindParts {
  const { project, structure } = built;
  switch (project.kind) {
    case 'bale-cold-frame':
      return baleFrameParts(context, { project, frame: structure as Frame, rows });
    case 'lumber-cold-frame':
      return lumberFrameParts(context, built);
    case 'raised-bed':
    case 'keyhole-bed':
    case 'pole-tepee':
      return assemblyParts(context, built);
  }
}
