/** Finds what does not add up in the record of a raised bed. */
import { middle } from '../quantities/quantity.ts';
import type { RaisedBed } from '../records/schemas/projects/raised-bed.ts';
import { sizeOf } from './lumber.ts';
import { middlePostInGroundMm, middlePosts, narrowestInsideMm } from './lumber-practice.ts';
import { countFaults, inInches, partFaults } from './part-faults.ts';
import type { StructureDiagnosis } from './structure.ts';

const slackMm = 1e-6;

/** Every fault of the record, one for each cause. */
export function raisedBedFaults(project: RaisedBed): readonly StructureDiagnosis[] {
  const tight = sizeFaults(project);
  return [
    ...tight,
    ...(tight.length > 0 ? [] : postFaults(project)),
    ...soilFaults(project),
    ...bottomFaults(project),
    ...stakeFaults(project),
    ...partFaults(project.parts),
  ];
}

function sizeFaults({ length, width, boards, posts }: RaisedBed): readonly StructureDiagnosis[] {
  const wallsMm = 2 * sizeOf(boards.nominal).thicknessMm;
  const neededMm = wallsMm + Math.max(narrowestInsideMm, 3 * sizeOf(posts.nominal).thicknessMm);
  return (['length', 'width'] as const).flatMap((side) => {
    const mm = middle({ length, width }[side]);
    return mm >= neededMm - slackMm
      ? []
      : [
          {
            path: [side],
            message: `A bed of ${inInches(mm)} outside leaves no room for rows between its boards and posts; it takes ${inInches(neededMm)}.`,
            hint: 'Make the bed larger.',
          },
        ];
  });
}

function postFaults({ length, width, boards, posts }: RaisedBed): readonly StructureDiagnosis[] {
  const { thicknessMm } = sizeOf(boards.nominal);
  const number = middlePosts(middle(length), thicknessMm) + middlePosts(middle(width), thicknessMm);
  const depthMm = middle(posts.inGround);
  if (number === 0 || depthMm >= middlePostInGroundMm - slackMm) return [];
  return [
    {
      path: ['posts', 'inGround'],
      message: `A side this long bows out, and a post in its middle only holds it when it stands ${inInches(middlePostInGroundMm)} in the ground; these stand ${inInches(depthMm)}.`,
      hint: 'Set the posts deeper, use thicker boards, or make the bed shorter.',
    },
  ];
}

function soilFaults({ boards, soil }: RaisedBed): readonly StructureDiagnosis[] {
  const heightMm = sizeOf(boards.nominal).widthMm * boards.courses;
  const fillMm = middle(soil.depth) * (1 + soil.settlesPercent / 100);
  if (fillMm <= heightMm + slackMm) return [];
  return [
    {
      path: ['soil', 'depth'],
      message: `Filled loose, the soil stands ${inInches(fillMm)} high, and the boards are ${inInches(heightMm)}.`,
      hint: 'Use less soil, or another course of boards.',
    },
  ];
}

function stakeFaults({ plantStakes, parts }: RaisedBed): readonly StructureDiagnosis[] {
  if (!plantStakes)
    return countFaults(
      parts,
      'plant-stakes',
      'Add plantStakes with their number and length, or remove the part.',
    );
  const [lengthMm, inGroundMm] = [middle(plantStakes.length), middle(plantStakes.inGround)];
  if (inGroundMm < lengthMm / 2) return [];
  return [
    {
      path: ['plantStakes', 'inGround'],
      message: `Of a stake of ${inInches(lengthMm)} no more than half goes into the ground, and this one stands ${inInches(inGroundMm)} in it.`,
      hint: 'Use longer stakes, or drive them less deep.',
    },
  ];
}

function bottomFaults({ bottom, parts }: RaisedBed): readonly StructureDiagnosis[] {
  if (!bottom)
    return countFaults(parts, 'cloth-feet', 'Add bottom with its sheet and roll width, or remove the part.');
  if (middle(bottom.overlap) < middle(bottom.rollWidth) - slackMm) return [];
  return [
    {
      path: ['bottom', 'overlap'],
      message: 'Strips that overlap by their whole width never cover the bed.',
      hint: 'Make the overlap smaller, such as 3 in.',
    },
  ];
}
