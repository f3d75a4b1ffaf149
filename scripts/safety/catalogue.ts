import { signalWords, type CautionRecord, type HazardProfile } from '../records/schemas/hazard.ts';

/** Id of a caution record. */
export type CautionId = string;

/**
 * Every caution, and what each tool, material and action brings. The order of `cautions` is the order in which
 * cautions of one signal word are printed.
 */
export interface HazardCatalogue {
  readonly cautions: ReadonlyMap<CautionId, CautionRecord>;
  readonly tools: ReadonlyMap<string, HazardProfile>;
  readonly materials: ReadonlyMap<string, HazardProfile>;
  readonly actions: ReadonlyMap<string, HazardProfile>;
}

/** The three kinds of hazard profile, each with the name of its map in the catalogue. */
export const hazardMaps = { tool: 'tools', material: 'materials', action: 'actions' } as const;
export type HazardKind = keyof typeof hazardMaps;
export const hazardKinds: readonly HazardKind[] = ['tool', 'material', 'action'];

export interface HazardRecords {
  readonly cautions: readonly CautionRecord[];
  readonly tools: readonly HazardProfile[];
  readonly materials: readonly HazardProfile[];
  readonly actions: readonly HazardProfile[];
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
  };
}

/**
 * The catalogue of a guide: what comes with Groundsheet, with the guide's own records on top. A guide may
 * reword a caution, add cautions and profiles, and make a signal word stronger. It cannot drop or weaken:
 * of two signal words the stronger one stands, and a profile brings the cautions of both. What a guide tried
 * to weaken is told by `weakenedHazards`.
 */
export function mergeCatalogues(builtIn: HazardCatalogue, own: HazardCatalogue): HazardCatalogue {
  return {
    cautions: mergeMaps(builtIn.cautions, own.cautions, mergeCautions),
    tools: mergeMaps(builtIn.tools, own.tools, mergeProfiles),
    materials: mergeMaps(builtIn.materials, own.materials, mergeProfiles),
    actions: mergeMaps(builtIn.actions, own.actions, mergeProfiles),
  };
}

/** Rank of a caution's signal word: 0 is danger, the strongest; 3 is notice. */
export function strength(caution: CautionRecord): number {
  return signalWords.indexOf(caution.signal);
}

/** The words of the second, the stronger signal word of the two, the sources of both. */
function mergeCautions(base: CautionRecord, own: CautionRecord): CautionRecord {
  return {
    ...own,
    signal: strength(base) < strength(own) ? base.signal : own.signal,
    ...(base.beforehand === true ? { beforehand: true } : {}),
    sources: union(own.sources, base.sources),
  };
}

/** The name of the second, the cautions and protection of both; harmless only if neither brings a caution. */
function mergeProfiles(base: HazardProfile, own: HazardProfile): HazardProfile {
  const cautions = union(base.cautions, own.cautions);
  const protection = union(base.protection ?? [], own.protection ?? []);
  const harmless = own.harmless ?? base.harmless;
  return {
    id: own.id,
    name: own.name,
    cautions,
    ...(cautions.length === 0 && harmless !== undefined ? { harmless } : {}),
    ...(protection.length > 0 ? { protection } : {}),
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
