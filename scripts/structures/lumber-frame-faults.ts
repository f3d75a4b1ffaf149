/** Finds what does not add up in the record of a cold frame of lumber. */
import { middle } from '../quantities/quantity.ts';
import { toHeld } from '../quantities/units.ts';
import type { LumberColdFrame } from '../records/schemas/projects/lumber-cold-frame.ts';
import { sizeOf } from './lumber.ts';
import { layLumberFrame, slopeOf } from './lumber-frame-layout.ts';
import { narrowestInsideMm } from './lumber-practice.ts';
import { countFaults, inInches, partFaults } from './part-faults.ts';
import { practice } from './practice.ts';
import type { StructureDiagnosis } from './structure.ts';

const slackMm = 1e-6;

/** The thin end of a sloped piece splits below this height (common practice). */
export const thinnestEndMm = toHeld(0.5, 'in');

/** A lid on hinges can lie steeper than a loose sash, but above this it shades the bed from the sides (common practice). */
export const steepestLidDeg = 45;

/** Every fault of the record, one for each cause. */
export function lumberFrameFaults(project: LumberColdFrame): readonly StructureDiagnosis[] {
  const others = [...lidFaults(project), ...partFaults(project.parts)];
  const walls = wallFaults(project);
  if (walls.length > 0) return [...walls, ...others];
  const sizes = sizeFaults(project);
  if (sizes.length > 0) return [...sizes, ...others];
  return [...slopeFaults(project), ...insideFaults(project), ...others];
}

const fault = (
  path: StructureDiagnosis['path'],
  message: string,
  hint: string,
): readonly StructureDiagnosis[] => [{ path, message, hint }];

function heightOf(nominals: readonly string[]): number {
  return nominals.reduce((sum, nominal) => sum + sizeOf(nominal).widthMm, 0);
}

function wallFaults({ walls }: LumberColdFrame): readonly StructureDiagnosis[] {
  const thickness = sizeOf(walls.back[0]!).thicknessMm;
  const mixed = (['back', 'front', 'sides'] as const).flatMap((wall) =>
    walls[wall].flatMap((nominal, index) =>
      sizeOf(nominal).thicknessMm === thickness
        ? []
        : fault(
            ['walls', wall, index],
            `A ${nominal} is not as thick as the ${walls.back[0]} at the bottom of the back, so the walls would not meet flush.`,
            'Use boards of one thickness for all walls.',
          ),
    ),
  );
  if (sizeOf(walls.slope).thicknessMm !== thickness)
    return [
      ...mixed,
      ...fault(
        ['walls', 'slope'],
        `A ${walls.slope} is not as thick as the boards under it.`,
        'Use boards of one thickness for all walls.',
      ),
    ];
  const [back, front] = [heightOf(walls.back), heightOf(walls.front)];
  if (back > front + slackMm) return mixed;
  return [
    ...mixed,
    ...fault(
      ['walls'],
      `The back is ${inInches(back)} high and the front ${inInches(front)}, so the lid does not slope toward the sun and sheds no rain.`,
      'Make the back higher, or the front lower.',
    ),
  ];
}

/** Whether the lids are large enough for a box at all. */
function sizeFaults({ walls, lids, posts }: LumberColdFrame): readonly StructureDiagnosis[] {
  const { thicknessMm } = sizeOf(walls.back[0]!);
  const riseMm = heightOf(walls.back) - heightOf(walls.front);
  const neededInsideMm = Math.max(narrowestInsideMm, 3 * sizeOf(posts).thicknessMm);
  const neededMm = Math.hypot(neededInsideMm + thicknessMm, riseMm) + middle(lids.overhang) + thicknessMm;
  const lengthMm = middle(lids.length);
  const widthMm = middle(lids.width) * lids.number;
  return [
    ...(lengthMm >= neededMm - slackMm
      ? []
      : fault(
          ['lids', 'length'],
          `A lid of ${inInches(lengthMm)} down the slope leaves no bed under it; with the walls it takes ${inInches(neededMm)}.`,
          'Use longer lids.',
        )),
    ...(widthMm >= neededInsideMm + 2 * thicknessMm - slackMm
      ? []
      : fault(
          ['lids', 'width'],
          `The lids together are ${inInches(widthMm)} wide; with both walls it takes ${inInches(neededInsideMm + 2 * thicknessMm)}.`,
          'Add a lid, or use wider ones.',
        )),
  ];
}

function slopeFaults(project: LumberColdFrame): readonly StructureDiagnosis[] {
  const { walls, lids } = project;
  const { thicknessMm } = sizeOf(walls.back[0]!);
  const [back, front, sides] = [heightOf(walls.back), heightOf(walls.front), heightOf(walls.sides)];
  const slope = slopeOf({
    thicknessMm,
    riseMm: back - front,
    spanMm: middle(lids.length) - middle(lids.overhang) - thicknessMm,
  });
  if (slope.slopeDeg > steepestLidDeg)
    return fault(
      ['walls'],
      `The lid would lie at ${slope.slopeDeg.toFixed(0)} degrees; above ${steepestLidDeg} the box shades its own bed and the lid is hard to prop.`,
      'Bring the heights of back and front closer together, or use longer lids.',
    );
  const low = front + thicknessMm * slope.tangent - sides;
  const high = back - sides;
  const wide = sizeOf(walls.slope).widthMm;
  if (low < thinnestEndMm - slackMm)
    return fault(
      ['walls', 'sides'],
      `The sloped piece on the sides would be ${inInches(Math.max(0, low))} high at its front end and split; it needs ${inInches(thinnestEndMm)}.`,
      'Make the sides lower than the front, by a narrower board or one board less.',
    );
  if (high > wide + slackMm)
    return fault(
      ['walls', 'slope'],
      `The sloped piece is ${inInches(high)} high at the back, and a ${walls.slope} is ${inInches(wide)} wide.`,
      'Cut it from a wider board, or add a board to the sides.',
    );
  return [];
}

function insideFaults(project: LumberColdFrame): readonly StructureDiagnosis[] {
  const limitMm = heightOf(project.walls.front) - practice.headroomMm;
  const depthMm = middle(project.soilDepth);
  const layout = layLumberFrame(project);
  const propMm = middle(project.prop);
  const mostMm = layout.lids.lengthMm - layout.lids.overhangMm;
  return [
    ...(depthMm <= limitMm + slackMm
      ? []
      : fault(
          ['soilDepth'],
          `Planting mix ${inInches(depthMm)} deep leaves no room for leaves under the lid; the front allows ${inInches(limitMm)}.`,
          'Use less planting mix, or a higher front.',
        )),
    ...(propMm <= mostMm + slackMm
      ? []
      : fault(
          ['prop'],
          `A prop of ${inInches(propMm)} is longer than the lid and would throw it over.`,
          'Use a shorter prop, such as 12 in.',
        )),
  ];
}

function lidFaults({ lids, parts }: LumberColdFrame): readonly StructureDiagnosis[] {
  if (lids.sash && lids.built)
    return fault(
      ['lids'],
      'The lids are given twice, as old sashes and as built of lumber.',
      'Keep one of the two.',
    );
  if (!lids.sash && !lids.built)
    return fault(
      ['lids'],
      'The record does not say what the lids are.',
      'Add sash, with the size of an old window sash, or built, with its lumber and sheet.',
    );
  const weights = holdDownFaults({ lids, parts });
  const unused = lids.sash ? (['glazing-sheets', 'glazing-fasteners', 'lid-brackets'] as const) : [];
  return [
    ...weights,
    ...unused.flatMap((counted) =>
      countFaults(parts, counted, 'Old sashes come glazed: remove the part, or say built instead of sash.'),
    ),
  ];
}

/** Weights that nothing counts, or that no part gives the weight of. */
function holdDownFaults({
  lids,
  parts,
}: Pick<LumberColdFrame, 'lids' | 'parts'>): readonly StructureDiagnosis[] {
  if (!lids.holdDowns)
    return countFaults(parts, 'hold-downs', 'Add holdDowns to the lids, or remove the part.');
  if (parts.some((part) => part.count === 'hold-downs' && part.mass !== undefined)) return [];
  return fault(
    ['lids', 'holdDowns'],
    'The record does not say what one weight on the lids weighs.',
    'Add a part with count: hold-downs and a mass, such as 20 lb.',
  );
}
