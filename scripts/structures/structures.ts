/** Which module works out which kind of build project. */
import type { Project } from '../records/schemas/project.ts';
import { baleStructure } from './bale-cold-frame.ts';
import { billFaults } from './bill-of-materials.ts';
import { stepFaults } from './check-steps.ts';
import { keyholeStructure } from './keyhole-bed.ts';
import { lumberFrameStructure } from './lumber-frame.ts';
import { tepeeStructure } from './pole-tepee.ts';
import { raisedBedStructure } from './raised-bed.ts';
import type { BuildPlace, Built } from './structure.ts';

/** What was built already: a project comes to the same in every region of a hemisphere. */
const known = new WeakMap<Project, Map<BuildPlace['hemisphere'], Built>>();

/** The structure of a project, or everything that does not add up in its record. */
export function structureOf(project: Project, place: BuildPlace): Built {
  const ofProject = known.get(project) ?? new Map<BuildPlace['hemisphere'], Built>();
  known.set(project, ofProject);
  const built = ofProject.get(place.hemisphere) ?? checkedStructure(project, place);
  ofProject.set(place.hemisphere, built);
  return built;
}

function checkedStructure(project: Project, place: BuildPlace): Built {
  const built = ofKind(project, place);
  const steps = stepFaults(project, otherLetters(project));
  if (built.kind === 'faults') return { kind: 'faults', faults: [...built.faults, ...steps] };
  const faults = [...billFaults(project, built.structure.pieces), ...steps];
  return faults.length > 0 ? { kind: 'faults', faults } : built;
}

function ofKind(project: Project, place: BuildPlace): Built {
  switch (project.kind) {
    case 'bale-cold-frame':
      return baleStructure(project, place);
    case 'lumber-cold-frame':
      return lumberFrameStructure(project, place);
    case 'raised-bed':
      return raisedBedStructure(project, place);
    case 'keyhole-bed':
      return keyholeStructure(project, place);
    case 'pole-tepee':
      return tepeeStructure(project, place);
  }
}

/** Letters that the drawings of a kind use beside those of the parts. */
function otherLetters(project: Project): readonly string[] {
  return 'sashes' in project ? project.sashes.map(({ id }) => id) : [];
}
