import Type, { type Static } from 'typebox';
import { Id, Prose, Sources, Words, oneOf, record, ref } from './kit.ts';

/** Signal words as in ANSI Z535.6, strongest first. */
export const signalWords = ['danger', 'warning', 'caution', 'notice'] as const;

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
  sources: Sources,
});
export type CautionRecord = Static<typeof CautionSchema>;

/** A tool, material or action, with the cautions it always brings. Harmless ones say so, with the reason. */
export const HazardProfileSchema = record({
  id: Id,
  name: Words,
  cautions: Type.Array(ref('caution'), { maxItems: 8 }),
  /** Why an empty list of cautions is right. */
  harmless: Type.Optional(Prose),
  /** What to wear. */
  protection: Type.Optional(Type.Array(Words, { minItems: 1, maxItems: 6 })),
});
export type HazardProfile = Static<typeof HazardProfileSchema>;
