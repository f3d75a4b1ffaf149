/** Which module works out which kind of build project. */
import type { Project } from '../records/schemas/project.ts';
import { baleStructure } from './bale-cold-frame.ts';
import type { BuildPlace, Built } from './structure.ts';

/** The structure of a project, or everything that does not add up in its record. */
export function structureOf(project: Project, place: BuildPlace): Built {
  return baleStructure(project, place);
}
