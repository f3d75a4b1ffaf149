/** Tools and materials that the words of a step speak of. */
import type { HazardProfile } from '../records/schemas/hazard.ts';
import { hazardKinds, hazardMaps, type HazardCatalogue, type HazardKind } from './catalogue.ts';
import type { StepHazards } from './gather.ts';

/** A step with its words, as its record has them. */
export interface SpokenStep extends StepHazards {
  readonly title: string;
  /** Inline Markdown. */
  readonly text: string;
  /** Ids that the words may speak of although the step does not use them. */
  readonly mentions?: readonly string[] | undefined;
}

/** A word of a step for something that the step does not list. */
export interface UnlistedWord {
  /** JSON pointer of the title or the text within the step. */
  readonly pointer: '/title' | '/text';
  /** As it is written. */
  readonly word: string;
  /** How often the letters of its first word stand before it; a line may break between its words. */
  readonly occurrence: number;
  /** What it can mean, in the order of the catalogue. */
  readonly means: readonly { readonly kind: HazardKind; readonly id: string }[];
}

interface Term {
  readonly pattern: RegExp;
  readonly letters: number;
  readonly means: readonly { readonly kind: HazardKind; readonly id: string }[];
}

/**
 * Finds words for tools and materials that a step does not list. Names of the catalogue and their `words` are looked
 * for as whole words, in the singular and the plural; of two that overlap the longer counts, so that "loose straw" is
 * not also "straw". A word that can mean several things is listed when one of them is.
 */
export function unlistedWords(catalogue: HazardCatalogue): (step: SpokenStep) => readonly UnlistedWord[] {
  const terms = termsOf(catalogue);
  return (step) => {
    const listed = new Set(
      hazardKinds.flatMap((kind) => step[hazardMaps[kind]].map((id) => `${kind} ${id}`)),
    );
    const allowed = new Set(step.mentions ?? []);
    return (['title', 'text'] as const).flatMap((field) =>
      spokenIn(step[field], terms)
        .filter(({ means }) => !means.some(({ kind, id }) => listed.has(`${kind} ${id}`) || allowed.has(id)))
        .map(({ means, at, word }): UnlistedWord => ({
          pointer: `/${field}`,
          word,
          occurrence: step[field].slice(0, at).split(firstWord(word)).length - 1,
          means,
        })),
    );
  };
}

/** `window` of `window sashes`. */
export function firstWord(words: string): string {
  return words.split(/\s/)[0]!;
}

/** The mentions of a step that its words do not make. */
export function idleMentions(catalogue: HazardCatalogue): (step: SpokenStep) => readonly string[] {
  const terms = termsOf(catalogue);
  return (step) => {
    const spoken = new Set(
      [step.title, step.text].flatMap((words) =>
        spokenIn(words, terms).flatMap(({ means }) => means.map(({ id }) => id)),
      ),
    );
    return (step.mentions ?? []).filter((id) => !spoken.has(id));
  };
}

/** The words that speak of a profile: its `words`, or its name if it is a thing. */
export function termsFor(kind: HazardKind, { words, name }: HazardProfile): readonly string[] {
  return words ?? (kind === 'action' ? [] : [name]);
}

/** Every term of the catalogue, the longest first. */
function termsOf(catalogue: HazardCatalogue): readonly Term[] {
  const means = new Map<string, { kind: HazardKind; id: string }[]>();
  for (const kind of hazardKinds)
    for (const profile of catalogue[hazardMaps[kind]].values())
      for (const term of termsFor(kind, profile)) {
        const key = term.toLowerCase();
        means.set(key, [...(means.get(key) ?? []), { kind, id: profile.id }]);
      }
  return [...means]
    .map(([term, ids]) => ({ pattern: patternOf(term), letters: term.length, means: ids }))
    .sort((a, b) => b.letters - a.letters);
}

interface Spoken {
  readonly at: number;
  readonly word: string;
  readonly means: Term['means'];
}

/** What a text speaks of, in the order of the text. Names in braces and addresses of links are not words. */
function spokenIn(text: string, terms: readonly Term[]): readonly Spoken[] {
  let left = text.replace(/\{\{[^}]*\}\}|\]\([^)]*\)/g, (piece) => '\u0000'.repeat(piece.length));
  const found: Spoken[] = [];
  for (const { pattern, means } of terms) {
    left = left.replace(pattern, (word: string, at: number) => {
      found.push({ at, word, means });
      return '\u0000'.repeat(word.length);
    });
  }
  return found.sort((a, b) => a.at - b.at);
}

/** A term as whole words, a space or a hyphen between them, the last one in the singular or the plural. */
function patternOf(term: string): RegExp {
  const parts = term.toLowerCase().split(/[\s-]+/);
  const last = parts.pop()!;
  const whole = [...parts.map(escaped), withPlural(last)].join('[\\s-]+');
  return new RegExp(`(?<![\\p{L}\\p{N}])${whole}(?![\\p{L}\\p{N}])`, 'giu');
}

/** `sash` also as `sashes`, `knife` as `knives`, `berry` as `berries`; `glass` stays, for glasses are worn. */
function withPlural(word: string): string {
  if (word.endsWith('ss')) return escaped(word);
  if (/[^aeiou]y$/.test(word)) return `${escaped(word.slice(0, -1))}(?:y|ies)`;
  if (/fe$/.test(word)) return `${escaped(word.slice(0, -2))}(?:fe|ves)`;
  return `${escaped(word)}(?:s|es)?`;
}

function escaped(word: string): string {
  return word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
