/** Which hazard of each project led to which caution at which step, as text for a terminal. */
import type { Guide } from './records/guide.ts';
import { coverageOf, type CautionPlace, type ProjectCoverage } from './safety/coverage.ts';
import { circumstancesOfProject } from './sheets/circumstances.ts';

/** The coverage of every project of a guide, in the heat of its hottest region. */
export function coverageOfGuide(guide: Guide): readonly ProjectCoverage[] {
  return guide.projects.map((project) =>
    coverageOf(project, guide.hazards, circumstancesOfProject(guide, project.id, guide.regions)),
  );
}

/** One line for all projects; empty where there is none. */
export function coverageLine(projects: readonly ProjectCoverage[]): string {
  if (projects.length === 0) return '';
  const sum = (of: (project: ProjectCoverage) => number): number =>
    projects.reduce((total, project) => total + of(project), 0);
  const cautions = sum((project) => project.cautions);
  return `Every hazard has its caution: ${sum((project) => project.hazards)} hazards in ${sum(({ steps }) => steps.length)} steps lead to ${cautions} cautions (check --coverage tells each).\n`;
}

/** Every project, step by step. */
export function coverageText(projects: readonly ProjectCoverage[]): string {
  return projects.map(projectText).join('\n');
}

function projectText({ project, steps }: ProjectCoverage): string {
  const lines = steps.flatMap(({ step, hazards, harmless }) => [
    `  step ${step}${harmless === undefined ? '' : `: harmless, for ${harmless}`}`,
    ...hazards.map(
      ({ kind, id, cautions }) =>
        `    ${kind} ${id}: ${cautions.map((caution) => placeText(caution, step)).join(', ')}`,
    ),
  ]);
  return `${project}\n${lines.join('\n')}\n`;
}

function placeText(place: CautionPlace, step: number): string {
  const where = place.step === step ? 'here' : `step ${place.step}`;
  return place.told === 'covered'
    ? `${place.caution} (said by ${place.by}, ${where})`
    : `${place.caution} (${where})`;
}
