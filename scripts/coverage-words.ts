/** Which hazard of each project led to which caution at which step, and who may do it, as text for a terminal. */
import type { Guide } from './records/guide.ts';
import { heatConditions } from './safety/circumstances.ts';
import { coverageOf, type CautionPlace, type ProjectCoverage } from './safety/coverage.ts';
import { adultAge, youthSteps, type YouthReason, type YouthStep } from './safety/youth.ts';
import { circumstancesOfProject } from './sheets/circumstances.ts';

/** The ages, in years, for which the steps that are for adults are told: three classes a school has. */
export const toldAges = [8, 12, 15] as const;

export interface GuideCoverage extends ProjectCoverage {
  /** What children of each told age may do, step by step, in the cool hours; heat is told apart. */
  readonly youth: readonly { readonly age: number; readonly steps: readonly YouthStep[] }[];
  /** The worst heat of the hottest region, with the age below which it keeps everyone from all of the work. */
  readonly heat?: { readonly id: string; readonly from: number };
}

/** The coverage of every project of a guide, in the heat of its hottest region. */
export function coverageOfGuide(guide: Guide): readonly GuideCoverage[] {
  return guide.projects.map((project) => {
    const circumstances = circumstancesOfProject(guide, project.id, guide.regions);
    const { conditions = [] } = circumstances;
    const heat = heatConditions.find((id) => conditions.includes(id));
    const cool = { ...circumstances, conditions: conditions.filter((id) => id !== heat) };
    return {
      ...coverageOf(project, guide.hazards, circumstances),
      youth: toldAges.map((age) => ({
        age,
        steps: youthSteps(project.steps, guide.hazards, { ...cool, age }),
      })),
      ...(heat === undefined
        ? {}
        : { heat: { id: heat, from: guide.hazards.conditions.get(heat)?.age?.from ?? adultAge } }),
    };
  });
}

/** One line for all projects; empty where there is none. */
export function coverageLine(projects: readonly ProjectCoverage[]): string {
  if (projects.length === 0) return '';
  const sum = (of: (project: ProjectCoverage) => number): number =>
    projects.reduce((total, project) => total + of(project), 0);
  const cautions = sum((project) => project.cautions);
  return `Every hazard has its caution: ${sum((project) => project.hazards)} hazards in ${sum(({ steps }) => steps.length)} steps lead to ${cautions} cautions (check --coverage tells each).\n`;
}

/** Every project, step by step, and then the steps that are for adults at each told age. */
export function coverageText(projects: readonly GuideCoverage[]): string {
  return projects.map(projectText).join('\n');
}

function projectText({ project, steps, youth, heat }: GuideCoverage): string {
  const lines = steps.flatMap(({ step, hazards, harmless }) => [
    `  step ${step}${harmless === undefined ? '' : `: harmless, for ${harmless}`}`,
    ...hazards.map(
      ({ kind, id, cautions }) =>
        `    ${kind} ${id}: ${cautions.map((caution) => placeText(caution, step)).join(', ')}`,
    ),
  ]);
  const ages = youth.map(({ age, steps: who }) => `  adult-only at ${age}: ${adultOnlyText(who)}`);
  const hot = heat ? [`  in the heat of the hottest month (${heat.id}): no one under ${heat.from}`] : [];
  return `${project}\n${[...lines, ...ages, ...hot].join('\n')}\n`;
}

/** `step 3 (sledge-hammer from 16), step 5 (old-painted-sash from 18)` */
function adultOnlyText(steps: readonly YouthStep[]): string {
  const told = steps.flatMap(({ who, reasons }, index) =>
    who === 'adult-only' ? [`step ${index + 1} (${reasons.map(reasonText).join(', ')})`] : [],
  );
  return told.length > 0 ? told.join(', ') : 'no step';
}

function reasonText({ id, from }: YouthReason): string {
  return `${id} ${from === undefined ? 'not judged' : `from ${from}`}`;
}

function placeText(place: CautionPlace, step: number): string {
  const where = place.step === step ? 'here' : `step ${place.step}`;
  return place.told === 'covered'
    ? `${place.caution} (said by ${place.by}, ${where})`
    : `${place.caution} (${where})`;
}
