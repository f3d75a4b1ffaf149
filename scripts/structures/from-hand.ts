/** The largest version of a project that needs nothing to be bought of what the builder has counted. */
import type { Project } from '../records/schemas/project.ts';
import { billOfMaterials, type Bill } from './bill-of-materials.ts';
import type { BuildPlace, Built, Structure } from './structure.ts';

export interface FromHand {
  readonly project: Project;
  readonly structure: Structure;
  readonly bill: Bill;
}

/**
 * The first of `versions`, which run from the largest to the smallest, that adds up and whose counted parts are all at hand:
 * those for which the record says how many the builder has. Undefined where the record counts none, where the project
 * itself needs nothing more of them, or where not even the smallest comes out.
 */
export function largestFromHand(
  project: Project,
  {
    versions,
    build,
    place,
  }: {
    readonly versions: Iterable<Project>;
    readonly build: (project: Project, place: BuildPlace) => Built;
    readonly place: BuildPlace;
  },
): FromHand | undefined {
  if (!project.parts.some(isCounted)) return undefined;
  for (const version of versions) {
    const built = build(version, place);
    if (built.kind === 'faults') continue;
    const bill = billOfMaterials(version, built.structure);
    if (nothingToBuy(version, bill)) return { project: version, structure: built.structure, bill };
  }
  return undefined;
}

/** True when all that the builder has counted is enough. */
export function nothingToBuy(project: Project, bill: Bill): boolean {
  const counted = new Set(project.parts.filter(isCounted).map(({ letter }) => letter));
  return bill.lines.every(
    ({ letter, toBuy }) =>
      !counted.has(letter) ||
      toBuy === undefined ||
      (toBuy.value.kind === 'count' && toBuy.value.value === 0),
  );
}

function isCounted({ have, haveLengths }: Project['parts'][number]): boolean {
  return have !== undefined || haveLengths !== undefined;
}
