import type { Diagnostic } from '../diagnostics/diagnostic.ts';

/** Names of layouts, relative to the layouts folder, and what stands in them. */
export type Layouts = ReadonlyMap<string, string>;

/**
 * What went wrong in a layout, told with its file. Anything else, such as a mistake of the program, is `undefined`.
 *
 * The template engine names every file between the page and the fault, and takes what follows an include for a part
 * of the included file. So the place is looked for in the named files, innermost first.
 */
export function layoutFault(error: unknown, layouts: Layouts): Diagnostic | undefined {
  const told = messages(error).find((message) => fileName.test(message));
  if (told === undefined) return undefined;
  const named = [...told.matchAll(new RegExp(fileName, 'g'))].map((match) => match[1]!).reverse();
  const files = named.filter((name) => layouts.has(name));
  const reason = lastLine(told);
  const found = placeByPosition(told, files, layouts) ?? placeByName(reason, files, layouts);
  if (!found) return undefined;
  return {
    code: 'layout',
    severity: 'error',
    message: describe(reason, found.tag),
    hint: 'Compare the line with the built-in layout of the same name, which lists what a page has.',
    place: { file: `layouts/${found.file}`, line: found.line, column: found.column },
  };
}

/**
 * Layouts that start with a header between hyphens. The template engine would take it for settings, and even for a
 * program to run; a part of a page would print it.
 */
export function headerFaults(layouts: Layouts): readonly Diagnostic[] {
  return [...layouts]
    .filter(([, text]) => /^\uFEFF?---(?!-)/.test(text))
    .map(([name]) => ({
      code: 'layout',
      severity: 'error',
      message: `layouts/${name} starts with a header between hyphens, which a layout does not have.`,
      hint: 'Remove all from the first line of three hyphens to the second one.',
      place: { file: `layouts/${name}`, line: 1, column: 1 },
    }));
}

interface Found {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  /** The braces at the place, if any. */
  readonly tag?: string;
}

/** `(/somewhere/_includes/partials/head.njk)` */
const fileName = /_includes[\\/]([^()\n]+?\.njk)\)/;

/** The error itself, then what caused it. */
function messages(error: unknown): readonly string[] {
  if (!(error instanceof Error)) return [];
  const { originalError } = error as Error & { originalError?: unknown };
  return [error.message, ...messages(originalError)];
}

function lastLine(message: string): string {
  return message
    .trim()
    .split('\n')
    .at(-1)!
    .trim()
    .replace(/^(?:Eleventy)?[A-Za-z]*Error: (?!Maximum)/, '')
    .replace(/ \(\/[^()]*\)$/, '');
}

function placeByPosition(told: string, files: readonly string[], layouts: Layouts): Found | undefined {
  const [, line, column] = (/\[Line (\d+), Column (\d+)\]/.exec(told) ?? []).map(Number);
  if (line === undefined || column === undefined) return undefined;
  const places = files.map((file): Found => {
    const tag = /^\{[{%].*?[}%]\}/.exec(lineOf(layouts, file, line).slice(column - 1))?.[0];
    return { file, line, column, ...(tag === undefined ? {} : { tag }) };
  });
  const lineExists = (place: Found): boolean => lineOf(layouts, place.file, line) !== '';
  return places.find((place) => place.tag !== undefined) ?? places.find(lineExists) ?? places[0];
}

/** The engine gives no line for a filter or a file that it does not know, but it gives the name. */
function placeByName(reason: string, files: readonly string[], layouts: Layouts): Found | undefined {
  const name = /not found: (\S+)$/.exec(reason)?.[1];
  for (const file of name === undefined ? [] : files) {
    const lines = (layouts.get(file) ?? '').split('\n');
    const index = lines.findIndex((line) => line.includes(name!));
    if (index >= 0) return { file, line: index + 1, column: lines[index]!.indexOf(name!) + 1 };
  }
  return files[0] === undefined ? undefined : { file: files[0], line: 1, column: 1 };
}

function lineOf(layouts: Layouts, file: string, line: number): string {
  return (layouts.get(file) ?? '').split('\n')[line - 1] ?? '';
}

function describe(reason: string, tag: string | undefined): string {
  if (reason.includes('Maximum call stack size exceeded'))
    return 'The layout includes itself, directly or through a part that it includes.';
  if (!reason.startsWith('attempted to output null or undefined'))
    return `The layout cannot be read: ${reason}.`;
  return `The layout prints ${tag ?? 'a value'}, which the page does not have.`;
}
