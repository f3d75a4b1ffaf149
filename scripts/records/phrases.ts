import { IntlMessageFormat } from 'intl-messageformat';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { controlCharacterName, hasControlCharacter, isBlank } from './printable.ts';
import { collectSingles, type Loaded } from './collect.ts';
import type { SourceText } from './read-tree.ts';
import { LanguageSchema, type Language, type PhraseTree } from './schemas/language.ts';
import { suggestion } from './suggest.ts';

/**
 * The phrases of the language that the sheets are written in: those that come with Groundsheet, reworded by those of the guide.
 * A guide may reword a phrase, never invent one, and it must use the same arguments. Records of other
 * languages are checked and then left aside.
 */
export function readPhrases(
  builtIn: readonly SourceText[],
  own: readonly SourceText[],
  { language }: { language: string },
): { phrases: ReadonlyMap<string, string>; diagnostics: readonly Diagnostic[] } {
  const base = collectSingles(LanguageSchema, builtIn);
  const mine = collectSingles(LanguageSchema, own);
  const diagnostics: Diagnostic[] = [...base.diagnostics, ...mine.diagnostics];
  const phrases = new Map<string, string>();
  const spoken = (record: Loaded<Language>): boolean => record.value.language === language;
  for (const record of base.records.filter(spoken))
    for (const { key, words } of leaves(record)) phrases.set(key, words);
  const known = builtIn.length > 0 ? new Map(phrases) : undefined;
  for (const record of mine.records) {
    if (!spoken(record)) {
      diagnostics.push(otherLanguage(record, language));
      continue;
    }
    for (const { key, words, pointer } of leaves(record)) {
      const faults = phraseFaults(record, key, words, pointer, known);
      diagnostics.push(...faults);
      if (faults.length === 0) phrases.set(key, words);
    }
  }
  return { phrases, diagnostics };
}

function otherLanguage({ value, file }: Loaded<Language>, language: string): Diagnostic {
  return {
    code: 'unread-file',
    severity: 'warning',
    message: `These phrases are of the language “${value.language}”; the sheets are written in “${language}”.`,
    hint: 'Correct the language if it is mistyped, or move the file out of the guide.',
    place: file.placeOf('/language'),
  };
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
          pointer: `/phrases/${inner
            .map((part) => part.replaceAll('~', '~0').replaceAll('/', '~1'))
            .join('/')}`,
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
  const original = known?.get(key);
  if (words === '' || (isBlank(words) && !isBlank(original ?? 'words')))
    return fault('bad-phrase', `The phrase “${key}” is empty.`, 'Write its words, or leave it out.');
  if (hasControlCharacter(words))
    return fault(
      'bad-phrase',
      `The phrase “${key}” has a character that cannot be printed (${controlCharacterName(words)}).`,
      'Write the words anew instead of pasting them.',
    );
  const given = argumentsOf(words);
  if (given === undefined)
    return fault(
      'bad-phrase',
      `The phrase “${key}” cannot be read.`,
      "Look for a brace that is not closed; a brace in the words is written in single quotes: '{'.",
    );
  const [format] = given.formats;
  if (format !== undefined)
    return fault(
      'bad-phrase',
      `The phrase “${key}” prints {${format}} in a format of its own; what it is given is in words already.`,
      `Write {${format}} alone.`,
    );
  if (!known) return [];
  if (original === undefined)
    return fault(
      'unknown-phrase',
      `There is no phrase “${key}”.`,
      suggestion(key, known.keys(), 'Leave it out.'),
    );
  const wanted = argumentsOf(original) ?? noArguments;
  const braces = (names: Iterable<string>): string => `{${[...names].join('}, {')}}`;
  const strange = [...given.names].filter((name) => !wanted.names.has(name));
  if (strange.length > 0)
    return fault(
      'bad-phrase',
      `The phrase “${key}” uses ${braces(strange)}, which is not given to it.`,
      wanted.names.size > 0 ? `It may use ${braces(wanted.names)}.` : 'It is given nothing in braces.',
    );
  const branch = [...given.branches].find((name) => !wanted.branches.has(name));
  if (branch !== undefined)
    return fault(
      'bad-phrase',
      `The phrase “${key}” chooses its words by {${branch.split(' ')[1]!}} (${branch.split(' ')[0]!}), as the one that comes with Groundsheet does not.`,
      `Write {${branch.split(' ')[1]!}} alone.`,
    );
  const dropped = [...wanted.names].filter((name) => !given.names.has(name));
  if (dropped.length === 0 || wanted.branches.size > 0) return [];
  return fault(
    'bad-phrase',
    `The phrase “${key}” leaves out ${braces(dropped)}, so that sheets would not say it.`,
    `Put ${braces(dropped)} where it belongs in the words.`,
  );
}

interface MessageArguments {
  /** Every name in braces. */
  readonly names: ReadonlySet<string>;
  /** `plural count`: the names that words are chosen by, and how. */
  readonly branches: ReadonlySet<string>;
  /** Names printed as a number, date or time of the message's own format. */
  readonly formats: ReadonlySet<string>;
}

const noArguments: MessageArguments = { names: new Set(), branches: new Set(), formats: new Set() };

/** What a message does with its arguments, or undefined when it cannot be parsed. */
function argumentsOf(words: string): MessageArguments | undefined {
  const [names, branches, formats] = [new Set<string>(), new Set<string>(), new Set<string>()];
  const walk = (nodes: readonly MessageNode[]): void => {
    for (const { type, value = '', options = {} } of nodes) {
      if (type === 7 || type === 0) continue;
      names.add(value);
      if (type === 5 || type === 6) branches.add(`${type === 5 ? 'select' : 'plural'} ${value}`);
      else if (type !== 1) formats.add(value);
      for (const option of Object.values(options)) walk(option.value);
    }
  };
  try {
    // As the phrases are said later: angle brackets are plain text.
    walk(new IntlMessageFormat(words, 'en', undefined, { ignoreTag: true }).getAst());
  } catch {
    return undefined;
  }
  return { names, branches, formats };
}

/**
 * The part of the message parser's tree that names arguments. Types: 0 words, 1 a plain argument, 2 to 4 a number, date
 * or time, 5 select, 6 plural, 7 the number sign of a plural.
 */
interface MessageNode {
  readonly type: number;
  readonly value?: string;
  readonly options?: Readonly<Record<string, { readonly value: readonly MessageNode[] }>>;
}
