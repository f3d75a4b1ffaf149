import { hazardKinds, hazardMaps, strength, type HazardCatalogue, type HazardKind } from './catalogue.ts';
import type { StepHazards } from './gather.ts';

/**
 * What keeps the cautions of a project from being complete. `record` names the record at fault and `pointer`
 * is the JSON pointer of the value in it, so that whoever read the file can point to line and column.
 */
export type HazardFault =
  /** A project uses an id that the catalogue does not know. `also` are later places of the same id. */
  | (Fault<'no-profile', 'project'> & {
      readonly kind: HazardKind;
      readonly id: string;
      readonly also: readonly string[];
    })
  /**
   * A tool or a part is in a project's list, but no step uses it: its cautions would stand nowhere.
   * `also` are further places, as when two parts are of one material.
   */
  | (Fault<'in-no-step', 'project'> & {
      readonly kind: HazardKind;
      readonly id: string;
      readonly also: readonly string[];
    })
  /** A profile has no cautions and does not say why it is harmless. */
  | Fault<'silent-profile', HazardKind>
  /** A profile says that it is harmless, and yet has cautions. */
  | Fault<'harmless-with-cautions', HazardKind>
  /** A profile names a caution that the catalogue does not hold. */
  | (Fault<'unknown-caution', HazardKind> & { readonly id: string });

/** A guide's record tried to weaken a built-in one; the stronger of the two stands. */
export type WeakenedHazard =
  | Fault<'weaker-signal', 'caution'>
  /** It says it is harmless, and the built-in profile has cautions. */
  | Fault<'said-harmless', HazardKind>;

interface Fault<F extends string, K extends string> {
  readonly fault: F;
  readonly record: { readonly kind: K; readonly id: string };
  readonly pointer: string;
}

/** The parts of a project that name hazards. A project record is of this shape. */
export interface ProjectHazards {
  readonly id: string;
  readonly tools: readonly string[];
  readonly parts: readonly { readonly material: string }[];
  readonly steps: readonly StepHazards[];
}

/**
 * Every fault of the profiles, then of the projects, in the order of the records. An id that is used in many
 * places gives one fault, since it has one cause.
 */
export function hazardFaults(options: {
  readonly catalogue: HazardCatalogue;
  readonly projects: readonly ProjectHazards[];
}): readonly HazardFault[] {
  const { catalogue, projects } = options;
  return [
    ...hazardKinds.flatMap((kind) => profileFaults(kind, catalogue)),
    ...projects.flatMap((project) => projectFaults(project, catalogue)),
  ];
}

/** What the guide's own records tried to weaken, in the order of the records. */
export function weakenedHazards(builtIn: HazardCatalogue, own: HazardCatalogue): readonly WeakenedHazard[] {
  const cautions = [...own.cautions.values()].flatMap((caution): WeakenedHazard[] => {
    const base = builtIn.cautions.get(caution.id);
    if (!base || strength(caution) <= strength(base)) return [];
    return [{ fault: 'weaker-signal', record: { kind: 'caution', id: caution.id }, pointer: '/signal' }];
  });
  const profiles = hazardKinds.flatMap((kind) =>
    [...own[hazardMaps[kind]].values()].flatMap((profile): WeakenedHazard[] => {
      const base = builtIn[hazardMaps[kind]].get(profile.id);
      if (!base || base.cautions.length === 0 || profile.harmless === undefined) return [];
      return [{ fault: 'said-harmless', record: { kind, id: profile.id }, pointer: '/harmless' }];
    }),
  );
  return [...cautions, ...profiles];
}

function profileFaults(kind: HazardKind, catalogue: HazardCatalogue): HazardFault[] {
  return [...catalogue[hazardMaps[kind]].values()].flatMap((profile): HazardFault[] => {
    const record = { kind, id: profile.id };
    if (profile.cautions.length === 0) {
      return profile.harmless === undefined
        ? [{ fault: 'silent-profile', record, pointer: '/cautions' }]
        : [];
    }
    const unknown = profile.cautions.flatMap((id, index): HazardFault[] =>
      catalogue.cautions.has(id)
        ? []
        : [{ fault: 'unknown-caution', record, pointer: `/cautions/${index}`, id }],
    );
    if (profile.harmless === undefined) return unknown;
    return [...unknown, { fault: 'harmless-with-cautions', record, pointer: '/harmless' }];
  });
}

function projectFaults(project: ProjectHazards, catalogue: HazardCatalogue): HazardFault[] {
  const record = { kind: 'project', id: project.id } as const;
  const lists = {
    tool: project.tools.map((id, index) => ({ id, pointer: `/tools/${index}` })),
    material: project.parts.map(({ material }, index) => ({
      id: material,
      pointer: `/parts/${index}/material`,
    })),
    action: [],
  };
  return hazardKinds.flatMap((kind) => {
    const profiles = catalogue[hazardMaps[kind]];
    const inSteps = project.steps.flatMap((step, index) =>
      step[hazardMaps[kind]].map((id, at) => ({ id, pointer: `/steps/${index}/${hazardMaps[kind]}/${at}` })),
    );
    const stepIds = new Set(inSteps.map(({ id }) => id));
    return [...placesById([...lists[kind], ...inSteps])].flatMap(
      ([id, [pointer, ...also]]): HazardFault[] => {
        if (!profiles.has(id)) return [{ fault: 'no-profile', record, pointer, kind, id, also }];
        if (!stepIds.has(id)) return [{ fault: 'in-no-step', record, pointer, kind, id, also }];
        return [];
      },
    );
  });
}

/** Where each id stands, the first place first; ids in the order of their first place. */
function placesById(
  uses: readonly { readonly id: string; readonly pointer: string }[],
): ReadonlyMap<string, readonly [string, ...string[]]> {
  const places = new Map<string, [string, ...string[]]>();
  for (const { id, pointer } of uses) {
    const known = places.get(id);
    if (known) known.push(pointer);
    else places.set(id, [pointer]);
  }
  return places;
}
