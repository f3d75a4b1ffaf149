import { strength, type CautionId, type HazardCatalogue } from './catalogue.ts';

/**
 * Whether one caution says all that another says, so that the other need not stand beside it: by its record, or by
 * the record of one that it covers. Never of a stronger signal word, and never where the two cover each other in a
 * ring: then both stand.
 */
export function coveringIn(catalogue: HazardCatalogue): (one: CautionId, other: CautionId) => boolean {
  const reached = new Map([...catalogue.cautions.keys()].map((id) => [id, reach(id, catalogue)] as const));
  const covers = (one: CautionId, other: CautionId): boolean => reached.get(one)?.has(other) ?? false;
  return (one, other) => one !== other && covers(one, other) && !covers(other, one);
}

/** Everything a caution covers, step by step; what is stronger than the caution that says so is not covered. */
function reach(from: CautionId, catalogue: HazardCatalogue): ReadonlySet<CautionId> {
  const found = new Set<CautionId>();
  const open = [from];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    const caution = catalogue.cautions.get(id);
    for (const next of caution?.covers ?? []) {
      const general = catalogue.cautions.get(next);
      if (!caution || !general || found.has(next) || strength(general) < strength(caution)) continue;
      found.add(next);
      open.push(next);
    }
  }
  return found;
}
