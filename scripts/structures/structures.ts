/** Which module works out which kind of build project. */
import type { Project } from '../records/schemas/project.ts';
import { baleStructure } from './bale-cold-frame.ts';
import { billFaults } from './bill-of-materials.ts';
import { stepFaults } from './check-steps.ts';
import type { BuildPlace, Built } from './structure.ts';

/** The structure of a project, or everything that does not add up in its record. */
export function structureOf(project: Project, place: BuildPlace): Built {
  const built = ofKind(project, place);
  const steps = stepFaults(project, otherLetters(project));
  if (built.kind === 'faults') return { kind: 'faults', faults: [...built.faults, ...steps] };
  const faults = [...billFaults(project, built.structure.pieces), ...steps];
  return faults.length > 0 ? { kind: 'faults', faults } : built;
}

function ofKind(project: Project, place: BuildPlace): Built {
  return baleStructure(project, place);
}

/** Letters that the drawings of a kind use beside those of the parts. */
function otherLetters(project: Project): readonly string[] {
  return project.sashes.map(({ id }) => id);
}
