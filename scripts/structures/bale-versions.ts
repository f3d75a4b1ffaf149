/** Smaller frames of the same record: those with some of its sashes left away. */
import { middle } from '../quantities/quantity.ts';
import type { BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';
import { withoutIdleParts } from './bale-hardware-faults.ts';

/**
 * The frames that fewer sashes than those of the record make, the longest first. With more than 10 sashes only the last ones
 * are left away, since all choices would be too many to look at.
 */
export function* smallerBaleFrames(project: BaleColdFrame): Iterable<BaleColdFrame> {
  const { sashes } = project;
  const choices =
    sashes.length > mostToChooseFrom
      ? sashes.map((_, left) => sashes.slice(0, sashes.length - 1 - left)).filter(({ length }) => length > 0)
      : choicesOf(sashes);
  for (const some of choices.toSorted((a, b) => widthOf(b) - widthOf(a)))
    yield withoutIdleParts({ ...project, sashes: some });
}

const mostToChooseFrom = 10;

type Sashes = BaleColdFrame['sashes'];

/** Every choice of at least one and not all of them, in their order. */
function choicesOf(sashes: Sashes): readonly Sashes[] {
  const all = 2 ** sashes.length - 1;
  return Array.from({ length: Math.max(0, all - 1) }, (_, index) =>
    sashes.filter((__, at) => ((index + 1) >> at) % 2 === 1),
  );
}

function widthOf(sashes: Sashes): number {
  return sashes.reduce((sum, { width }) => sum + middle(width), 0);
}
