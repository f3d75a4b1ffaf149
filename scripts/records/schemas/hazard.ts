import Type, { type Static } from 'typebox';
import { Id, Prose, Sources, Words, oneOf, record, ref } from './kit.ts';

/** Signal words as in ANSI Z535.6, strongest first. */
export const signalWords = ['danger', 'warning', 'caution', 'notice'] as const;

/** Who a sheet is for. */
export const audiences = ['adults', 'class', 'viewers'] as const;
export type Audience = (typeof audiences)[number];

/** The audiences for whom a caution can have words of its own; the words for adults are those of the caution itself. */
export const wordedAudiences = ['class', 'viewers'] as const;
export type WordedAudience = (typeof wordedAudiences)[number];

/**
 * The same caution in other words: the hazard with what it does, and what to do. Both are needed, so that neither is
 * lost on the way. Signal word, sources and what is covered are those of the caution, whoever it is told to.
 */
function wording({ hazard, avoidance }: { readonly hazard: number; readonly avoidance: number }) {
  const words = (maxLength: number) => Type.String({ minLength: 1, maxLength, printed: true });
  return record({ title: Type.Optional(Words), hazard: words(hazard), avoidance: words(avoidance) });
}

/** In characters. What viewers hear or read must fit three to six seconds: some 16 words of six characters. */
const CautionWordings = record({
  class: Type.Optional(wording({ hazard: 150, avoidance: 210 })),
  viewers: Type.Optional(wording({ hazard: 100, avoidance: 100 })),
});
export type CautionWordings = Static<typeof CautionWordings>;

export const CautionSchema = record({
  id: Id,
  /** The hazard in a word or two, for lists. */
  title: Words,
  signal: oneOf(signalWords),
  /** True where something must be done before the work begins, such as a call some days ahead. */
  beforehand: Type.Optional(Type.Boolean()),
  /** One sentence: the hazard and what it does. */
  hazard: Prose,
  /** One sentence: what to do. */
  avoidance: Prose,
  /** More general cautions that need not stand beside this one, since it says all that they say. */
  covers: Type.Optional(Type.Array(ref('caution'), { minItems: 1, maxItems: 8 })),
  /** Words for other audiences; where there are none, those above stand. */
  wordings: Type.Optional(CautionWordings),
  sources: Sources,
});
export type CautionRecord = Static<typeof CautionSchema>;

/** How near an adult is to a child who does it, the nearest first. */
export const supervisions = ['adult-beside', 'adult-near', 'alone'] as const;
export type Supervision = (typeof supervisions)[number];

/** The age in years from which it may be done, and under whose eyes. Where sources differ, the highest age. */
const Age = record({
  from: Type.Integer({ minimum: 3, maximum: 18 }),
  supervision: oneOf(supervisions),
  sources: Sources,
});
export type LowestAge = Static<typeof Age>;

/** A tool, material, action or condition, with the cautions it always brings. Harmless ones say so, with the reason. */
export const HazardProfileSchema = record({
  id: Id,
  name: Words,
  cautions: Type.Array(ref('caution'), { maxItems: 8 }),
  /** Why an empty list of cautions is right. */
  harmless: Type.Optional(Prose),
  /** What to wear. */
  protection: Type.Optional(Type.Array(Words, { minItems: 1, maxItems: 6 })),
  /** Absent where nobody has judged it; then it is for adults. */
  age: Type.Optional(Age),
  /**
   * What prose calls it, in the singular, when that is not its name: prose that says so speaks of it. For a tool or a
   * material these words stand in place of the name; an action is only looked for where it has words.
   */
  words: Type.Optional(Type.Array(Words, { minItems: 1, maxItems: 12 })),
});
export type HazardProfile = Static<typeof HazardProfileSchema>;

/** What a crop is, as far as hazards follow from it: `broadleaf` is every crop but grasses and onions. */
export const cropTraits = ['broadleaf'] as const;
export type CropTrait = (typeof cropTraits)[number];

const ids = (kind: 'tool' | 'material' | 'action' | 'condition') =>
  Type.Optional(Type.Array(ref(kind), { minItems: 1, maxItems: 40 }));

/** Met by any one of what it lists. */
const CombinationGroup = record({
  tools: ids('tool'),
  materials: ids('material'),
  actions: ids('action'),
  conditions: ids('condition'),
  crops: Type.Optional(Type.Array(oneOf(cropTraits), { minItems: 1 })),
  audience: Type.Optional(Type.Array(oneOf(audiences), { minItems: 1 })),
});
export type CombinationGroup = Static<typeof CombinationGroup>;

/** A hazard that follows from things taken together. It is whole when every group of `when` has been met. */
export const CombinationSchema = record({
  id: Id,
  name: Words,
  when: Type.Array(CombinationGroup, { minItems: 2, maxItems: 4 }),
  /** True where the groups must meet within one step; otherwise what one step brings is still there at a later one. */
  inOneStep: Type.Optional(Type.Boolean()),
  brings: Type.Array(ref('caution'), { minItems: 1, maxItems: 6 }),
  /** Where the combination is for older people than any part of it alone. */
  age: Type.Optional(Age),
  sources: Sources,
});
export type Combination = Static<typeof CombinationSchema>;

/** What a step of any project says of its own safety, besides the ids of what it uses and does. */
export const stepSafetyFields = {
  /** Why nothing in this step can hurt, where its tools, materials and actions bring no caution. */
  harmless: Type.Optional(Prose),
  /** Ids of tools and materials that the text speaks of, but that are not used in this step. */
  mentions: Type.Optional(Type.Array(Id, { minItems: 1, maxItems: 8 })),
  /** What children do while adults do this step. */
  meanwhile: Type.Optional(Prose),
};
