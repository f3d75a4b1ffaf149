import {
  signalWords,
  supervisions,
  type CautionRecord,
  type Combination,
  type HazardProfile,
  type LowestAge,
} from '../records/schemas/hazard.ts';

/** Id of a caution record. */
export type CautionId = string;

/**
 * Every caution, and what each tool, material, action, condition and combination of these brings. The order of
 * `cautions` is the order in which cautions of one signal word are printed.
 */
export interface HazardCatalogue {
  readonly cautions: ReadonlyMap<CautionId, CautionRecord>;
  readonly tools: ReadonlyMap<string, HazardProfile>;
  readonly materials: ReadonlyMap<string, HazardProfile>;
  readonly actions: ReadonlyMap<string, HazardProfile>;
  readonly conditions: ReadonlyMap<string, HazardProfile>;
  readonly combinations: ReadonlyMap<string, Combination>;
}

/** The kinds of hazard profile that a step lists, each with the name of its map in the catalogue. */
export const hazardMaps = { tool: 'tools', material: 'materials', action: 'actions' } as const;
export type HazardKind = keyof typeof hazardMaps;
export const hazardKinds: readonly HazardKind[] = ['tool', 'material', 'action'];

/** Every kind of profile: a condition is not listed by a step, it holds for all of them. */
export const profileMaps = { ...hazardMaps, condition: 'conditions' } as const;
export type ProfileKind = keyof typeof profileMaps;
export const profileKinds: readonly ProfileKind[] = [...hazardKinds, 'condition'];

export interface HazardRecords {
  readonly cautions: readonly CautionRecord[];
  readonly tools: readonly HazardProfile[];
  readonly materials: readonly HazardProfile[];
  readonly actions: readonly HazardProfile[];
  readonly conditions?: readonly HazardProfile[];
  readonly combinations?: readonly Combination[];
}

/**
 * A catalogue of records in the order they are written. Two records with one id are merged as a guide's own
 * record is merged into a built-in one, so that a slip in a file can add cautions, never lose them.
 */
export function catalogueOf(records: HazardRecords): HazardCatalogue {
  return {
    cautions: mapOf(records.cautions, mergeCautions),
    tools: mapOf(records.tools, mergeProfiles),
    materials: mapOf(records.materials, mergeProfiles),
    actions: mapOf(records.actions, mergeProfiles),
    conditions: mapOf(records.conditions ?? [], mergeProfiles),
    combinations: mapOf(records.combinations ?? [], mergeCombinations),
  };
}

/**
 * The catalogue of a guide: what comes with Groundsheet, with the guide's own records on top. A guide may
 * reword a caution, for each audience, add cautions, profiles and combinations, make a signal word stronger and an age higher. It
 * cannot drop or weaken: of two signal words the stronger one stands, of two ages the higher one, a profile
 * brings the cautions of both, and no caution that comes with Groundsheet is covered by one of the guide's making.
 * What a guide tried to weaken is told by `weakenedHazards`.
 */
export function mergeCatalogues(builtIn: HazardCatalogue, own: HazardCatalogue): HazardCatalogue {
  const ownCautions = new Map(
    [...own.cautions].map(([id, caution]) => [id, withoutCovers(caution, builtIn.cautions)] as const),
  );
  return {
    cautions: mergeMaps(builtIn.cautions, ownCautions, mergeCautions),
    tools: mergeMaps(builtIn.tools, own.tools, mergeProfiles),
    materials: mergeMaps(builtIn.materials, own.materials, mergeProfiles),
    actions: mergeMaps(builtIn.actions, own.actions, mergeProfiles),
    conditions: mergeMaps(builtIn.conditions, own.conditions, mergeProfiles),
    combinations: mergeMaps(builtIn.combinations, own.combinations, mergeCombinations),
  };
}

/** Rank of a caution's signal word: 0 is danger, the strongest; 3 is notice. */
export function strength(caution: CautionRecord): number {
  return signalWords.indexOf(caution.signal);
}

/** The caution without the built-in ones among those that it says it covers, save what the built-in one covers too. */
function withoutCovers(
  caution: CautionRecord,
  builtIn: ReadonlyMap<CautionId, CautionRecord>,
): CautionRecord {
  const { covers, ...rest } = caution;
  const allowed = builtIn.get(caution.id)?.covers ?? [];
  const left = (covers ?? []).filter((id) => !builtIn.has(id) || allowed.includes(id));
  return left.length > 0 ? { ...rest, covers: left } : rest;
}

/**
 * The words of the second, the stronger signal word of the two, the sources of both. Words for an audience that the
 * second has none for are those of the first: a guide that rewords for adults does not lose the words for children.
 */
function mergeCautions(base: CautionRecord, own: CautionRecord): CautionRecord {
  const covers = union(base.covers ?? [], own.covers ?? []);
  return {
    ...own,
    signal: strength(base) < strength(own) ? base.signal : own.signal,
    ...(base.beforehand === true ? { beforehand: true } : {}),
    ...(covers.length > 0 ? { covers } : {}),
    ...(base.wordings || own.wordings ? { wordings: { ...base.wordings, ...own.wordings } } : {}),
    sources: union(own.sources, base.sources),
  };
}

/** The name of the second, the cautions and protection of both; harmless only if neither brings a caution. */
function mergeProfiles(base: HazardProfile, own: HazardProfile): HazardProfile {
  const cautions = union(base.cautions, own.cautions);
  const protection = union(base.protection ?? [], own.protection ?? []);
  const harmless = own.harmless ?? base.harmless;
  const age = stricterAge(base.age, own.age);
  const words = (base.words ?? own.words) ? union(base.words ?? [base.name], own.words ?? [own.name]) : [];
  return {
    id: own.id,
    name: own.name,
    cautions,
    ...(cautions.length === 0 && harmless !== undefined ? { harmless } : {}),
    ...(protection.length > 0 ? { protection } : {}),
    ...(age ? { age } : {}),
    ...(words.length > 0 ? { words } : {}),
  };
}

/** When the first one holds, what both bring, for the age of the stricter. */
function mergeCombinations(base: Combination, own: Combination): Combination {
  const age = stricterAge(base.age, own.age);
  return {
    ...base,
    name: own.name,
    brings: union(base.brings, own.brings),
    ...(age ? { age } : {}),
    sources: union(own.sources, base.sources),
  };
}

/** The higher age, the nearer supervision, the sources of both; where one gives none, that of the other. */
function stricterAge(base: LowestAge | undefined, own: LowestAge | undefined): LowestAge | undefined {
  if (!base || !own) return base ?? own;
  return {
    from: Math.max(base.from, own.from),
    supervision:
      supervisions[Math.min(supervisions.indexOf(base.supervision), supervisions.indexOf(own.supervision))]!,
    sources: union(own.sources, base.sources),
  };
}

function mapOf<T extends { readonly id: string }>(
  records: readonly T[],
  merge: (base: T, own: T) => T,
): Map<string, T> {
  const map = new Map<string, T>();
  for (const record of records) {
    const earlier = map.get(record.id);
    map.set(record.id, earlier ? merge(earlier, record) : record);
  }
  return map;
}

function mergeMaps<T extends { readonly id: string }>(
  base: ReadonlyMap<string, T>,
  own: ReadonlyMap<string, T>,
  merge: (base: T, own: T) => T,
): ReadonlyMap<string, T> {
  return mapOf([...base.values(), ...own.values()], merge);
}

function union<T>(first: readonly T[], second: readonly T[]): T[] {
  return [...new Set([...first, ...second])];
}
