/** What can be wrong with the parts of any build project, whatever its kind. */
import { middle } from '../quantities/quantity.ts';
import { fromHeld } from '../quantities/units.ts';
import type { ProjectPart } from '../records/schemas/project.ts';
import { describeStructureFault } from './faults.ts';
import type { CutPiece, StructureDiagnosis } from './structure.ts';

/** Parts that do not say how many they are or how much they hold. */
export function partFaults(parts: readonly ProjectPart[]): readonly StructureDiagnosis[] {
  return parts.flatMap((part, index): StructureDiagnosis[] => {
    const path = ['parts', index];
    if (part.count === 'each' && part.number === undefined)
      return [{ path, ...describeStructureFault({ fault: 'number-missing', path }) }];
    if (part.count === 'soil-litres' && !(part.pack && middle(part.pack) > 0))
      return [{ path, ...describeStructureFault({ fault: 'pack-missing', path }) }];
    return [];
  });
}

/** Lumber that the build is cut from, but that no part of the record is. */
export function lumberFaults(
  parts: readonly ProjectPart[],
  pieces: readonly CutPiece[],
): readonly StructureDiagnosis[] {
  const wanted = [...new Set(pieces.filter(({ number }) => number > 0).map(({ nominal }) => nominal))];
  return wanted
    .filter((nominal) => !parts.some((part) => part.count === 'cut' && part.nominal === nominal))
    .map((nominal) => ({
      path: ['parts'],
      message: `Pieces of this build are cut from ${nominal} lumber, and no part of the list is ${nominal} lumber.`,
      hint: `Add a part with count: cut and nominal: ${nominal}, and the lengths it is sold in.`,
    }));
}

/** Parts that are counted by something this build does not have. */
export function countFaults(
  parts: readonly ProjectPart[],
  counted: string,
  hint: string,
): readonly StructureDiagnosis[] {
  return parts.flatMap((part, index) =>
    part.count === counted
      ? [{ path: ['parts', index, 'count'], message: `This build has nothing to count as ${counted}.`, hint }]
      : [],
  );
}

/** Inches to the nearest tenth, for faults; records of this trade are written in inches. */
export function inInches(mm: number): string {
  return `${Math.round(fromHeld(mm, 'in') * 10) / 10} in`;
}
