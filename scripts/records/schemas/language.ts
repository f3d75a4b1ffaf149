import Type, { type Static } from 'typebox';
import { Words, record } from './kit.ts';

/**
 * Phrases of one language, nested as deep as is handy; `a: { b: "words" }` is the phrase `a.b`.
 * Words are in ICU message format: `{count, plural, one {# bale} other {# bales}}`.
 */
export const LanguageSchema = record({
  language: Type.String({ pattern: '^[a-z]{2}(-[A-Z]{2})?$' }),
  name: Words,
  phrases: Type.Unsafe<PhraseTree>({ type: 'object' }),
});

export interface PhraseTree {
  readonly [key: string]: string | number | boolean | null | PhraseTree;
}
export type Language = Static<typeof LanguageSchema>;
