import { IntlMessageFormat } from 'intl-messageformat';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { collectSingles, type Loaded } from './collect.ts';
import type { SourceText } from './read-tree.ts';
import { LanguageSchema, type Language, type PhraseTree } from './schemas/language.ts';
import { suggestion } from './suggest.ts';

/**
 * The phrases of the guide's language: those that come with Groundsheet, reworded by those of the guide.
 * A guide may reword a phrase, never invent one, and it must use the same arguments.
 */
export function readPhrases(
  builtIn: readonly SourceText[],
  own: readonly SourceText[],
): { phrases: ReadonlyMap<string, string>; diagnostics: readonly Diagnostic[] } {
  const base = collectSingles(LanguageSchema, builtIn);
  const mine = collectSingles(LanguageSchema, own);
  const diagnostics: Diagnostic[] = [...base.diagnostics, ...mine.diagnostics];
  const phrases = new Map<string, string>();
  for (const record of base.records) for (const { key, words } of leaves(record)) phrases.set(key, words);
  const known = builtIn.length > 0 ? new Map(phrases) : undefined;
  for (const record of mine.records) {
    for (const { key, words, pointer } of leaves(record)) {
      const faults = phraseFaults(record, key, words, pointer, known);
      diagnostics.push(...faults);
      if (faults.length === 0) phrases.set(key, words);
    }
  }
  return { phrases, diagnostics };
}

interface Leaf {
  readonly key: string;
  readonly words: string;
  readonly pointer: string;
}

function leaves(record: Loaded<Language>): Leaf[] {
  const walk = (tree: PhraseTree, path: readonly string[]): Leaf[] =>
    Object.entries(tree).flatMap(([key, value]) => {
      const inner = [...path, key];
      if (typeof value === 'object' && value !== null) return walk(value, inner);
      return [
        {
          key: inner.join('.'),
          words: value === null ? '' : String(value),
          pointer: `/phrases/${inner.map((part) => part.replaceAll('/', '~1')).join('/')}`,
        },
      ];
    });
  return walk(record.value.phrases, []);
}

function phraseFaults(
  record: Loaded<Language>,
  key: string,
  words: string,
  pointer: string,
  known: ReadonlyMap<string, string> | undefined,
): Diagnostic[] {
  const place = record.file.placeOf(pointer);
  const fault = (code: Diagnostic['code'], message: string, hint: string): Diagnostic[] => [
    { code, severity: 'error', message, hint, place },
  ];
  if (words === '')
    return fault('bad-phrase', `The phrase “${key}” is empty.`, 'Write its words, or leave it out.');
  const given = argumentsOf(words);
  if (given === undefined)
    return fault(
      'bad-phrase',
      `The phrase “${key}” cannot be read.`,
      "Look for a brace that is not closed; a brace in the words is written in single quotes: '{'.",
    );
  if (!known) return [];
  const original = known.get(key);
  if (original === undefined)
    return fault(
      'unknown-phrase',
      `There is no phrase “${key}”.`,
      suggestion(key, known.keys(), 'Leave it out.'),
    );
  const wanted = argumentsOf(original) ?? new Set<string>();
  const strange = [...given].filter((name) => !wanted.has(name));
  if (strange.length === 0) return [];
  return fault(
    'bad-phrase',
    `The phrase “${key}” uses {${strange.join('}, {')}}, which is not given to it.`,
    wanted.size > 0 ? `It may use {${[...wanted].join('}, {')}}.` : 'It is given nothing in braces.',
  );
}

/** The names in braces of a message, or undefined when it cannot be parsed. */
function argumentsOf(words: string): Set<string> | undefined {
  try {
    const names = new Set<string>();
    const walk = (nodes: readonly MessageNode[]): void => {
      for (const node of nodes) {
        if (node.type >= 1 && node.type <= 6) names.add(node.value ?? '');
        for (const option of Object.values(node.options ?? {})) walk(option.value);
        if (node.children) walk(node.children);
      }
    };
    walk(new IntlMessageFormat(words, 'en').getAst());
    return names;
  } catch {
    return undefined;
  }
}

/** The part of the message parser's tree that names arguments: types 1 to 6 are those with a name. */
interface MessageNode {
  readonly type: number;
  readonly value?: string;
  readonly options?: Readonly<Record<string, { readonly value: readonly MessageNode[] }>>;
  readonly children?: readonly MessageNode[];
}
