/** Finds what does not add up in the record of a pole tepee. */
import { middle } from '../quantities/quantity.ts';
import { fromHeld } from '../quantities/units.ts';
import type { PoleTepee } from '../records/schemas/projects/pole-tepee.ts';
import { inInches, partFaults } from './part-faults.ts';
import type { StructureDiagnosis } from './structure.ts';
import { layTepee, tepeeInWind } from './tepee-layout.ts';
import { climbingCrops, leastTieMm } from './tepee-practice.ts';

/** Steeper than this from upright, a pole no longer stands but lies, and vines do not go up it. */
const mostLeanDeg = 45;

/** Every fault of a record; how it stands in the wind is only judged where it stands at all. */
export function tepeeFaults(project: PoleTepee): readonly StructureDiagnosis[] {
  const shape = shapeFaults(project);
  return [
    ...shape,
    ...(shape.length === 0 ? windFaults(project) : []),
    ...plantFaults(project),
    ...sowFaults(project),
    ...partFaults(project.parts),
  ];
}

function fault(path: StructureDiagnosis['path'], message: string, hint: string): StructureDiagnosis {
  return { path, message, hint };
}

function shapeFaults(project: PoleTepee): readonly StructureDiagnosis[] {
  const { poles, tie, spread } = project;
  const { legMm, radiusMm, leanRad, footSpacingMm, thicknessMm } = layTepee(project);
  const found: StructureDiagnosis[] = [];
  if (middle(tie) < leastTieMm - 1e-6)
    found.push(
      fault(
        ['tie'],
        `Twine ${inInches(middle(tie))} from the ends of the poles slips off; it takes ${inInches(leastTieMm)}.`,
        'Lash the poles further down.',
      ),
    );
  if (legMm <= 1e-6)
    found.push(
      fault(
        ['poles', 'length'],
        `Of a pole of ${inInches(middle(poles.length))} nothing is left between the ground and the lashing: ${inInches(middle(poles.buried))} stand in the ground and ${inInches(middle(tie))} above the lashing.`,
        'Use longer poles, or bury less of them.',
      ),
    );
  else if (legMm <= radiusMm || (leanRad * 180) / Math.PI > mostLeanDeg + 1e-6)
    found.push(
      fault(
        ['spread'],
        `Legs of ${inInches(legMm)} spread over ${inInches(middle(spread))} lie more than they stand.`,
        'Make the circle smaller, or use longer poles.',
      ),
    );
  if (footSpacingMm <= 2 * thicknessMm)
    found.push(
      fault(
        ['poles', 'number'],
        `The feet of ${poles.number} poles would stand only ${inInches(footSpacingMm)} apart.`,
        'Use fewer poles, or a wider circle.',
      ),
    );
  return found;
}

function windFaults(project: PoleTepee): readonly StructureDiagnosis[] {
  const { standsMps } = tepeeInWind(project, layTepee(project));
  const wantedMps = middle(project.gust.value);
  if (standsMps >= wantedMps - 1e-9) return [];
  const mph = (mps: number): string => `${Math.floor(fromHeld(mps, 'mph') + 1e-6)} mph`;
  return [
    fault(
      ['poles', 'buried'],
      `Full of leaves it stands a gust of ${mph(standsMps)}, and the record asks for ${mph(wantedMps)}: it would tip over.`,
      'Bury the poles deeper, spread them wider, or use more, thicker or shorter ones.',
    ),
  ];
}

function plantFaults(project: PoleTepee): readonly StructureDiagnosis[] {
  const { plants, circleMm } = layTepee(project);
  if (plants >= project.poles.number) return [];
  return [
    fault(
      ['spacing', 'value'],
      `Round the circle of ${inInches(circleMm)} stand ${plants} plants at this spacing, fewer than poles.`,
      'Sow closer, or use fewer poles.',
    ),
  ];
}

/** One ring of something that climbs. */
function sowFaults({ sow }: PoleTepee): readonly StructureDiagnosis[] {
  const known: readonly string[] = climbingCrops;
  const strangers = sow.flatMap(({ crop }, index) =>
    known.includes(crop)
      ? []
      : [
          fault(
            ['sow', index, 'crop'],
            `“${crop}” does not climb poles by itself.`,
            `Sow one of ${known.join(', ')}.`,
          ),
        ],
  );
  const rows = sow.reduce((sum, { rows: number }) => sum + number, 0);
  if (strangers.length > 0 || rows === 1) return strangers;
  return [
    fault(
      ['sow'],
      `Round the poles there is room for one ring of plants, and ${rows} rows are listed.`,
      'Sow one crop in one row.',
    ),
  ];
}
