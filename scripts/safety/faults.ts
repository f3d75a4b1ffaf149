import {
  hazardKinds,
  hazardMaps,
  profileKinds,
  profileMaps,
  strength,
  type HazardCatalogue,
  type HazardKind,
  type ProfileKind,
} from './catalogue.ts';
import type { StepHazards } from './gather.ts';
import { idleMentions, unlistedWords, type SpokenStep, type UnlistedWord } from './spoken.ts';
import { supervisions, type Combination } from '../records/schemas/hazard.ts';

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
  /** Nothing that a step lists brings a caution, and the step does not say that it is harmless. `step` from 1. */
  | (Fault<'silent-step', 'project'> & { readonly step: number })
  /** A step says that it is harmless, and yet something it lists brings a caution. */
  | (Fault<'harmless-step-with-cautions', 'project'> & { readonly step: number; readonly id: string })
  /** The words of a step speak of something that the step does not list. */
  | (Fault<'unlisted-word', 'project'> & Omit<UnlistedWord, 'pointer'> & { readonly step: number })
  /** A step allows for a mention that its words do not make. */
  | (Fault<'idle-mention', 'project'> & { readonly step: number; readonly id: string })
  /** A profile has no cautions and does not say why it is harmless. */
  | Fault<'silent-profile', ProfileKind>
  /** A profile says that it is harmless, and yet has cautions. */
  | Fault<'harmless-with-cautions', ProfileKind>
  /** A profile names a caution that the catalogue does not hold. */
  | (Fault<'unknown-caution', ProfileKind | 'combination'> & { readonly id: string })
  /** A caution says that it covers a stronger one. */
  | (Fault<'covers-stronger', 'caution'> & { readonly id: string })
  /** A caution says that it covers itself, at once or by way of others. */
  | Fault<'covers-itself', 'caution'>
  /** A group of a combination lists nothing, so that the combination can never come about. */
  | Fault<'empty-group', 'combination'>;

/** A guide's record tried to weaken a built-in one; the stronger of the two stands. */
export type WeakenedHazard =
  | Fault<'weaker-signal', 'caution'>
  /** It says that it covers a built-in caution. */
  | Fault<'covers-built-in', 'caution'>
  /** It says it is harmless, and the built-in profile has cautions. */
  | Fault<'said-harmless', ProfileKind>
  /** Its age is lower, or its supervision less near. */
  | Fault<'lower-age', ProfileKind | 'combination'>
  /** It has the id of a built-in combination, and holds at other times. */
  | Fault<'other-combination', 'combination'>;

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
  readonly steps: readonly ProjectStepHazards[];
}

/** A step; its words are looked through where it has any. */
export interface ProjectStepHazards extends StepHazards {
  readonly title?: string;
  readonly text?: string;
  readonly harmless?: string | undefined;
  readonly mentions?: readonly string[] | undefined;
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
  const spoken = { unlisted: unlistedWords(catalogue), idle: idleMentions(catalogue) };
  return [
    ...[...catalogue.cautions.keys()].flatMap((id) => coverFaults(id, catalogue)),
    ...profileKinds.flatMap((kind) => profileFaults(kind, catalogue)),
    ...[...catalogue.combinations.values()].flatMap((one) => combinationFaults(one, catalogue)),
    ...projects.flatMap((project) => [
      ...projectFaults(project, catalogue),
      ...project.steps.flatMap((step, index) => [
        ...silenceFaults(project.id, step, index, catalogue),
        ...wordFaults(project.id, step, index, spoken),
      ]),
    ]),
  ];
}

/** What the guide's own records tried to weaken, in the order of the records. */
export function weakenedHazards(builtIn: HazardCatalogue, own: HazardCatalogue): readonly WeakenedHazard[] {
  const cautions = [...own.cautions.values()].flatMap((caution): WeakenedHazard[] => {
    const base = builtIn.cautions.get(caution.id);
    if (!base || strength(caution) <= strength(base)) return [];
    return [{ fault: 'weaker-signal', record: { kind: 'caution', id: caution.id }, pointer: '/signal' }];
  });
  const covering = [...own.cautions.values()].flatMap(({ id, covers = [] }): WeakenedHazard[] => {
    const allowed = builtIn.cautions.get(id)?.covers ?? [];
    return covers.flatMap((covered, index) =>
      builtIn.cautions.has(covered) && !allowed.includes(covered)
        ? [
            {
              fault: 'covers-built-in',
              record: { kind: 'caution', id },
              pointer: `/covers/${index}`,
            } as const,
          ]
        : [],
    );
  });
  const profiles = profileKinds.flatMap((kind) =>
    [...own[profileMaps[kind]].values()].flatMap((profile): WeakenedHazard[] => {
      const base = builtIn[profileMaps[kind]].get(profile.id);
      if (!base) return [];
      const record = { kind, id: profile.id };
      return [
        ...(base.cautions.length > 0 && profile.harmless !== undefined
          ? [{ fault: 'said-harmless', record, pointer: '/harmless' } as const]
          : []),
        ...(isLower(profile.age, base.age) ? [{ fault: 'lower-age', record, pointer: '/age' } as const] : []),
      ];
    }),
  );
  const combinations = [...own.combinations.values()].flatMap((combination): WeakenedHazard[] => {
    const base = builtIn.combinations.get(combination.id);
    if (!base) return [];
    const record = { kind: 'combination', id: combination.id } as const;
    const same =
      JSON.stringify([base.when, base.inOneStep]) ===
      JSON.stringify([combination.when, combination.inOneStep]);
    return [
      ...(same ? [] : [{ fault: 'other-combination', record, pointer: '/when' } as const]),
      ...(isLower(combination.age, base.age)
        ? [{ fault: 'lower-age', record, pointer: '/age' } as const]
        : []),
    ];
  });
  return [...cautions, ...covering, ...profiles, ...combinations];
}

function isLower(own: Combination['age'], base: Combination['age']): boolean {
  if (!own || !base) return false;
  return (
    own.from < base.from || supervisions.indexOf(own.supervision) > supervisions.indexOf(base.supervision)
  );
}

function coverFaults(id: string, catalogue: HazardCatalogue): HazardFault[] {
  const caution = catalogue.cautions.get(id)!;
  const record = { kind: 'caution', id } as const;
  const stronger = (caution.covers ?? []).flatMap((covered, index): HazardFault[] => {
    const general = catalogue.cautions.get(covered);
    if (!general || strength(general) >= strength(caution)) return [];
    return [{ fault: 'covers-stronger', record, pointer: `/covers/${index}`, id: covered }];
  });
  if (!leadsTo(id, id, catalogue)) return stronger;
  return [...stronger, { fault: 'covers-itself', record, pointer: '/covers' }];
}

/** True when one caution covers the other, at once or by way of others. */
function leadsTo(from: string, to: string, catalogue: HazardCatalogue): boolean {
  const met = new Set<string>();
  const open = [...(catalogue.cautions.get(from)?.covers ?? [])];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (id === to) return true;
    if (met.has(id)) continue;
    met.add(id);
    open.push(...(catalogue.cautions.get(id)?.covers ?? []));
  }
  return false;
}

function combinationFaults({ id, when, brings }: Combination, catalogue: HazardCatalogue): HazardFault[] {
  const record = { kind: 'combination', id } as const;
  return [
    ...when.flatMap((group, index): HazardFault[] =>
      Object.values(group).some((listed) => listed.length > 0)
        ? []
        : [{ fault: 'empty-group', record, pointer: `/when/${index}` }],
    ),
    ...brings.flatMap((caution, index): HazardFault[] =>
      catalogue.cautions.has(caution)
        ? []
        : [{ fault: 'unknown-caution', record, pointer: `/brings/${index}`, id: caution }],
    ),
  ];
}

function silenceFaults(
  project: string,
  step: ProjectStepHazards,
  index: number,
  catalogue: HazardCatalogue,
): HazardFault[] {
  const record = { kind: 'project', id: project } as const;
  const listed = hazardKinds.flatMap((kind) =>
    step[hazardMaps[kind]].map((id) => catalogue[hazardMaps[kind]].get(id) ?? id),
  );
  // What the catalogue does not know is told already, and may well be a hazard.
  if (listed.some((profile) => typeof profile === 'string')) return [];
  const hazard = listed.find((profile) => typeof profile !== 'string' && profile.cautions.length > 0);
  if (hazard === undefined && step.harmless === undefined)
    return [{ fault: 'silent-step', record, pointer: `/steps/${index}`, step: index + 1 }];
  if (hazard === undefined || typeof hazard === 'string' || step.harmless === undefined) return [];
  const pointer = `/steps/${index}/harmless`;
  return [{ fault: 'harmless-step-with-cautions', record, pointer, step: index + 1, id: hazard.id }];
}

function wordFaults(
  project: string,
  step: ProjectStepHazards,
  index: number,
  { unlisted, idle }: { unlisted: ReturnType<typeof unlistedWords>; idle: ReturnType<typeof idleMentions> },
): HazardFault[] {
  const record = { kind: 'project', id: project } as const;
  const spoken: SpokenStep = { ...step, title: step.title ?? '', text: step.text ?? '' };
  // One cause, one fault: a thing that is named again and again is told where it is first named.
  const told = new Set<string>();
  const words = unlisted(spoken).flatMap(({ pointer, ...word }): HazardFault[] => {
    const key = word.means.map(({ kind, id }) => `${kind} ${id}`).join();
    if (told.has(key)) return [];
    told.add(key);
    return [
      { fault: 'unlisted-word', record, pointer: `/steps/${index}${pointer}`, step: index + 1, ...word },
    ];
  });
  const mentions = idle(spoken).map((id): HazardFault => ({
    fault: 'idle-mention',
    record,
    pointer: `/steps/${index}/mentions/${step.mentions!.indexOf(id)}`,
    step: index + 1,
    id,
  }));
  return [...words, ...mentions];
}

function profileFaults(kind: ProfileKind, catalogue: HazardCatalogue): HazardFault[] {
  return [...catalogue[profileMaps[kind]].values()].flatMap((profile): HazardFault[] => {
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
