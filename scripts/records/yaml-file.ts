import { LineCounter, isAlias, isMap, isSeq, parseDocument, type Document, type Node, type Pair } from 'yaml';
import type { Diagnostic, Place } from '../diagnostics/diagnostic.ts';
import { shortened } from './shortened.ts';
import {
  deepestYaml,
  mostAliasedValues,
  readYamlTree,
  type YamlTree,
  type YamlTreeFault,
} from './yaml-tree.ts';

/** A YAML text with the place of every value and key in it. */
export interface YamlFile {
  readonly path: string;
  readonly value: unknown;
  /** Where the value at a JSON pointer stands; the nearest parent that exists, if it does not. */
  placeOf(pointer: string): Place;
  /** Where the key of the last part of a JSON pointer stands. */
  placeOfKey(pointer: string): Place;
  /** Where a piece of text stands within the scalar at a pointer; the scalar itself if it is not found. */
  placeOfText(pointer: string, piece: string, occurrence?: number): Place;
}

/**
 * Parses one YAML text. Lines are shifted by `lineOffset` for front matter that starts further down a file.
 * Every syntax fault is reported with its place; then `file` is absent.
 */
export function parseYaml(
  path: string,
  text: string,
  lineOffset = 0,
): { file?: YamlFile; diagnostics: readonly Diagnostic[] } {
  const lines = new LineCounter();
  // Doubled keys are looked for in the tree: the parser compares every key of a map with every other.
  const document = parsed(text, lines);
  const placeAt = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { file: path, line: Math.max(1, line) + lineOffset, column: Math.max(1, col) };
  };
  if (!document) {
    return { diagnostics: [treeDiagnostic({ fault: 'too-deep', offset: 0 }, placeAt(0))] };
  }
  // One slip in YAML brings many faults after it: the first two tell where to look.
  const faults = [...document.errors, ...document.warnings].slice(0, 2).map((error): Diagnostic => ({
    code: 'yaml-syntax',
    severity: 'error',
    message: `This is not well-formed YAML: ${error.message.replace(/\s+/g, ' ').replace(/\.$/, '')}.`,
    hint: yamlHint(error.code),
    place: placeAt(unclosedQuote(error, text) ?? error.pos[0]),
  }));
  if (faults.length > 0) return { diagnostics: faults };
  const tree = readYamlTree(document);
  if (Array.isArray(tree)) {
    return {
      diagnostics: tree.map((fault: YamlTreeFault) => treeDiagnostic(fault, placeAt(fault.offset))),
    };
  }
  return {
    file: new PositionedYaml(path, text, document, tree as YamlTree, placeAt),
    diagnostics: [],
  };
}

/** The document, or undefined where it nests deeper than the parser can follow. */
function parsed(text: string, lineCounter: LineCounter): Document | undefined {
  try {
    const document = parseDocument(text, { lineCounter, uniqueKeys: false, prettyErrors: false });
    // The parser tells an overrun of the stack as one more fault of syntax.
    return document.errors.some(({ message }) => message.includes('call stack')) ? undefined : document;
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

function treeDiagnostic(fault: YamlTreeFault, place: Place): Diagnostic {
  const make = (code: Diagnostic['code'], message: string, hint: string): Diagnostic => ({
    code,
    severity: 'error',
    message,
    hint,
    place,
  });
  switch (fault.fault) {
    case 'duplicate-key':
      return make(
        'duplicate-key',
        `The key “${shortened(fault.key)}” stands here twice.`,
        'Keep one of the two.',
      );
    case 'key-not-text':
      return make(
        'yaml-syntax',
        'A list or a group of keys stands where a key belongs.',
        'Write a word there.',
      );
    case 'no-such-anchor':
      return make(
        'yaml-syntax',
        `“*${shortened(fault.name)}” repeats a value marked “&${shortened(fault.name)}”, and none stands before it.`,
        'Put the text between "double quotes" if its star is meant as such.',
      );
    case 'alias-in-itself':
      return make(
        'yaml-alias-bomb',
        `“*${shortened(fault.name)}” repeats the value that it stands in, which would have no end.`,
        'Write the value out instead.',
      );
    case 'alias-bomb':
      return make(
        'yaml-alias-bomb',
        `The aliases (*name) in this file repeat more than ${mostAliasedValues} values.`,
        'Write the values out where they are used.',
      );
    case 'too-deep':
      return make(
        'yaml-syntax',
        `The values nest deeper than ${deepestYaml} levels.`,
        'Look for brackets or hyphens that were pasted by mistake.',
      );
  }
}

/** Where a quotation mark that is never closed was opened; the parser only notices at the end of the text. */
function unclosedQuote(error: { readonly message: string }, text: string): number | undefined {
  const mark = /Missing closing (["'])/.exec(error.message)?.[1];
  if (mark === undefined) return undefined;
  let offset = 0;
  for (const line of text.split('\n')) {
    const marks = line.split(mark).length - 1;
    if (marks % 2 === 1) return offset + line.indexOf(mark);
    offset += line.length + 1;
  }
  return undefined;
}

class PositionedYaml implements YamlFile {
  readonly path: string;
  readonly value: unknown;
  readonly #text: string;
  readonly #document: Document;
  readonly #tree: YamlTree;
  readonly #placeAt: (offset: number) => Place;

  constructor(
    path: string,
    text: string,
    document: Document,
    tree: YamlTree,
    placeAt: (offset: number) => Place,
  ) {
    this.path = path;
    this.value = tree.value;
    this.#tree = tree;
    this.#text = text;
    this.#document = document;
    this.#placeAt = placeAt;
  }

  placeOf(pointer: string): Place {
    const { node, pair } = this.#find(pointer);
    return this.#placeAt(node?.range?.[0] ?? keyOffset(pair) ?? 0);
  }

  placeOfKey(pointer: string): Place {
    const { node, pair } = this.#find(pointer);
    return this.#placeAt(keyOffset(pair) ?? node?.range?.[0] ?? 0);
  }

  placeOfText(pointer: string, piece: string, occurrence = 0): Place {
    const { node } = this.#find(pointer);
    const range = node?.range;
    if (!range) return this.placeOf(pointer);
    let at = range[0] - 1;
    for (let i = 0; i <= occurrence; i += 1) {
      const next = this.#text.indexOf(piece, at + 1);
      if (next < 0 || next >= range[1]) break;
      at = next;
    }
    return this.#placeAt(Math.max(at, range[0]));
  }

  #find(pointer: string): { node: Node | undefined; pair: Pair | undefined } {
    let node = this.#document.contents ?? undefined;
    let pair: Pair | undefined;
    for (const part of pointerParts(pointer)) {
      const inner: Node | undefined = isAlias(node) ? this.#tree.targetOf(node) : node;
      if (isMap(inner)) {
        const found = this.#tree.pairsOf(inner).get(part);
        if (!found) break;
        pair = found;
        node = (found.value ?? undefined) as Node | undefined;
      } else if (isSeq(inner)) {
        const found = inner.items[Number(part)] as Node | undefined;
        if (!found) break;
        pair = undefined;
        node = found;
      } else break;
    }
    return { node, pair };
  }
}

/** The parts of a JSON pointer (RFC 6901), unescaped. */
export function pointerParts(pointer: string): string[] {
  return pointer
    .split('/')
    .slice(1)
    .map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'));
}

function keyOffset(pair: Pair | undefined): number | undefined {
  return (pair?.key as Node | undefined)?.range?.[0];
}

function yamlHint(code: string): string {
  switch (code) {
    case 'TAB_AS_INDENT':
      return 'Indent with spaces, not with tabs.';
    case 'BAD_INDENT':
      return 'Line the keys of one group up under each other.';
    case 'MISSING_CHAR':
      return 'Look for a quote, bracket or colon that is not closed.';
    case 'BLOCK_AS_IMPLICIT_KEY':
    case 'MULTILINE_IMPLICIT_KEY':
    case 'UNEXPECTED_TOKEN':
      return 'Look at this line and the one before it: keys of one group line up, and text with a colon, a hash or a quote in it stands between "straight double quotes".';
    case 'MULTIPLE_DOCS':
      return 'Keep one record in the file; a line of --- starts another.';
    case 'TAG_RESOLVE_FAILED':
      return 'Leave out the tag (the word after the exclamation mark).';
    default:
      return 'Put text that has a colon, a hash or a quote in it between "double quotes".';
  }
}
