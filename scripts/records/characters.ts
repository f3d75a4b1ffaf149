/**
 * Characters that no font of the sheets has, found in the records and told at their place, before anything is set. All
 * words of a guide are looked at: records, headers, prose, phrases; remarks (`# …`) are not printed and may have any.
 */
import { LineCounter, isScalar, parseDocument, visit } from 'yaml';
import type { Diagnostic, Place } from '../diagnostics/diagnostic.ts';
import type { SourceText } from './read-tree.ts';

/** Whether the fonts have a character, by its code point. */
export type FontCoverage = (codePoint: number) => boolean;

/** Every such character of every file, in the order of the files. */
export function missingCharacterFaults(files: readonly SourceText[], has: FontCoverage): Diagnostic[] {
  return files.flatMap((file) => {
    if (/\.ya?ml$/i.test(file.path)) return yamlFaults(file, file.text, 0, has);
    return /\.md$/i.test(file.path) ? markdownFaults(file, has) : [];
  });
}

function markdownFaults(file: SourceText, has: FontCoverage): Diagnostic[] {
  const header = /^---\n([\s\S]*?\n)---[ \t]*(?:\n|$)/.exec(file.text);
  const bodyAt = header?.[0].length ?? 0;
  const lines = lineCounterOf(file.text);
  const body = [...missingIn(file.text.slice(bodyAt), has)].map(({ character, at }) =>
    faultOf(character, placeIn(file, lines, bodyAt + at), has),
  );
  return [...(header ? yamlFaults(file, header[1]!, 1, has) : []), ...body];
}

/** Values alone are words; a value that writes a character by its number (`"\u2612"`) is told at its start. */
function yamlFaults(file: SourceText, text: string, lineOffset: number, has: FontCoverage): Diagnostic[] {
  if (!isSuspect(text, has)) return [];
  const lines = new LineCounter();
  const document = parse(text, lines);
  if (!document) return [];
  const faults: Diagnostic[] = [];
  const tell = (character: string, at: number): void => {
    faults.push(faultOf(character, placeIn(file, lines, at, lineOffset), has));
  };
  visit(document, {
    Scalar: (_, node) => {
      if (!isScalar(node) || typeof node.value !== 'string' || !node.range) return;
      const [start, end] = node.range;
      const written = [...missingIn(text.slice(start, end), has)];
      for (const { character, at } of written) tell(character, start + at);
      const shown = new Set(written.map(({ character }) => character));
      for (const { character } of missingIn(node.value, has))
        if (!shown.has(character)) {
          shown.add(character);
          tell(character, start);
        }
    },
  });
  return faults;
}

/** Most files have no such character, and need not be parsed again to see it. */
const isSuspect = (text: string, has: FontCoverage): boolean =>
  /\\[uUx]/.test(text) || missingIn(text, has).next().done !== true;

/** Faults of the syntax are told where records are read. */
function parse(text: string, lineCounter: LineCounter): ReturnType<typeof parseDocument> | undefined {
  try {
    const document = parseDocument(text, { lineCounter, uniqueKeys: false, prettyErrors: false });
    return document.errors.length > 0 ? undefined : document;
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** A character with the marks that stand over it. */
const cluster = /\P{M}\p{M}*|\p{M}+/gu;

/**
 * What the PDF leaves out or sets in another way: white space, controls and marks without a width (those that do harm
 * are another fault), and ligatures.
 */
const notDrawn =
  /[\s\p{Cc}\p{Cs}\u00AD\u200B-\u200F\u202A-\u202E\u2060\u2066-\u2069\uFEFF\uFFFE\uFFFF\uFB00-\uFB06]/u;

/** Chooses how the character before it looks, and is none by itself. */
const variationSelector = /^[\uFE00-\uFE0F]$/u;

function* missingIn(text: string, has: FontCoverage): Generator<{ character: string; at: number }> {
  for (const { 0: written, index } of text.matchAll(cluster)) {
    const code = written.codePointAt(0)!;
    if (written.length === 1 && has(code)) continue;
    const missing = Array.from(written.normalize('NFC')).filter(
      (character) => !notDrawn.test(character) && !has(character.codePointAt(0)!),
    );
    const [character] = missing.filter((each) => !variationSelector.test(each)).concat(missing);
    if (character !== undefined) yield { character, at: index };
  }
}

function faultOf(character: string, place: Place, has: FontCoverage): Diagnostic {
  const code = character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
  const shown = /^[\p{M}\p{Co}\p{Cn}\p{Cf}]$/u.test(character) ? '' : `${character} `;
  return {
    code: 'missing-glyph',
    severity: 'error',
    message: `The character ${shown}(U+${code}) is in none of the fonts of the sheets, so it could not be printed.`,
    hint: hintFor(character, has),
    place,
  };
}

/** Characters that say nearly the same, for those that Unicode does not resolve by itself. */
const likenesses: readonly (readonly [characters: string, instead: string])[] = [
  ['☒⊠✖✘❌🗙', '✗'],
  ['✔🗸✅', '✓'],
  ['★⭐✱✳∗', '*'],
  ['‒﹘➖', '–'],
  ['―⸺', '—'],
  ['∕', '/'],
  ['ʹ´', '′'],
  ['˝', '″'],
  ['ʼ', '’'],
  ['➔➜➞➡⟶', '→'],
  ['⬅⟵', '←'],
  ['⬆', '↑'],
  ['⬇', '↓'],
  ['▪◾■⬛', '■'],
  ['▫◽⬜', '□'],
  ['●⬤⚫', '●'],
  ['∙⋅', '·'],
  ['⩽≦', '≤'],
  ['⩾≧', '≥'],
];

function hintFor(character: string, has: FontCoverage): string {
  if (variationSelector.test(character)) return 'Delete it: it cannot be seen.';
  const isPrintable = (text: string): boolean => Array.from(text).every((each) => has(each.codePointAt(0)!));
  const likeness = likenesses.find(([characters]) => characters.includes(character))?.[1];
  const resolved = character.normalize('NFKC').replace(/^\u0020+/, '');
  const bare = character.normalize('NFD').replace(/\p{M}/gu, '');
  const instead = [likeness, resolved, bare].find(
    (text) => text !== undefined && text !== '' && text !== character && isPrintable(text),
  );
  if (instead !== undefined) return `Write “${instead}” instead, or say it in words.`;
  if (/^\p{Extended_Pictographic}$/u.test(character)) return 'Say in words what the picture shows.';
  if (/^\p{L}$/u.test(character)) return 'Write the word in the Latin, Greek or Cyrillic alphabet.';
  return 'Say it in words.';
}

function lineCounterOf(text: string): LineCounter {
  const lines = new LineCounter();
  lines.addNewLine(0);
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lines.addNewLine(at + 1);
  return lines;
}

function placeIn({ path }: SourceText, lines: LineCounter, at: number, lineOffset = 0): Place {
  const { line, col } = lines.linePos(at);
  return { file: path, line: Math.max(1, line) + lineOffset, column: Math.max(1, col) };
}
