import type { CropFacts, RegionFacts } from './facts.ts';
import { endedByFreeze } from '../agronomy/hardiness.ts';
import { isFrostFree } from '../agronomy/window-frost-free.ts';

/** Crops that a gardener treats alike, in the order of the year: what is done next comes before the alphabet. */
export interface CropGroup {
  readonly id: 'cool-sow' | 'cool-transplant' | 'warm-sow' | 'warm-transplant';
  readonly crops: readonly CropFacts[];
}

/** The key of a group's name; where no freeze sets the dates it speaks of none. */
export function groupPhrase({ id }: Pick<CropGroup, 'id'>, { windowClimate }: RegionFacts): string {
  return isFrostFree(windowClimate) ? `group.${id}-frost-free` : `group.${id}`;
}

const groupIds = ['cool-sow', 'cool-transplant', 'warm-sow', 'warm-transplant'] as const;

/** Groups by the first way of planting and by hardiness; within a group by the first date, then by name. */
export function cropGroups(facts: RegionFacts): readonly CropGroup[] {
  return groupIds
    .map((id) => ({ id, crops: facts.crops.filter((known) => groupOf(known) === id).sort(byDate) }))
    .filter((group) => group.crops.length > 0);
}

function groupOf({ crop }: CropFacts): CropGroup['id'] {
  const warm = endedByFreeze(crop.hardiness.group);
  const indoors = crop.plantings[0]!.method === 'transplant';
  return warm ? (indoors ? 'warm-transplant' : 'warm-sow') : indoors ? 'cool-transplant' : 'cool-sow';
}

function byDate(a: CropFacts, b: CropFacts): number {
  return firstDay(a) - firstDay(b) || (a.crop.name < b.crop.name ? -1 : 1);
}

function firstDay({ windows }: CropFacts): number {
  const starts = windows.flatMap(({ startIndoors, plant }) =>
    [startIndoors, plant].flatMap((finding) =>
      finding?.value.kind === 'date-range' ? [finding.value.from] : [],
    ),
  );
  return Math.min(...starts, 1000);
}
