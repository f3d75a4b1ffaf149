import type { Static, TSchema } from 'typebox';
import type { Diagnostic, Place } from '../diagnostics/diagnostic.ts';
import { mostTold } from './most-told.ts';
import { decode, referencesIn, type Reference } from './decode.ts';
import type { SourceText } from './read-tree.ts';
import { shortened } from './shortened.ts';
import { validate } from './validate.ts';
import { parseYaml, type YamlFile } from './yaml-file.ts';

/** One record that its schema has found right, with the file and the pointer it stands at. */
export interface Loaded<T> {
  readonly value: T;
  readonly file: YamlFile;
  readonly pointer: string;
  readonly references: { readonly records: readonly Reference[]; readonly files: readonly Reference[] };
}

export interface Collected<T> {
  readonly records: readonly Loaded<T>[];
  /** Ids of records that were met but found wrong: a reference to one of them is no second fault. */
  readonly spoilt: ReadonlySet<string>;
  /** True when a whole file could not be read, so that nobody knows which records it holds. */
  readonly unreadable: boolean;
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads files that hold one record each. */
export function collectSingles<S extends TSchema>(
  schema: S,
  files: readonly SourceText[],
): Collected<Static<S>> {
  return collectKinds<Static<S>>(() => schema, files);
}

/** Reads files that hold one record each, of kinds that have a schema each. */
export function collectKinds<T>(
  schemaOf: (value: unknown) => TSchema,
  files: readonly SourceText[],
): Collected<T> {
  return collect<T>(schemaOf, files, (file) => [{ value: file.value, pointer: '' }]);
}

/** Reads files that hold a list of records each. */
export function collectLists<S extends TSchema>(
  schema: S,
  files: readonly SourceText[],
): Collected<Static<S>> {
  return collect<Static<S>>(
    () => schema,
    files,
    (file) =>
      Array.isArray(file.value)
        ? file.value.map((value: unknown, index) => ({ value, pointer: `/${index}` }))
        : 'This file is a list: start each record with a hyphen.',
  );
}

type Split = (file: YamlFile) => { value: unknown; pointer: string }[] | string;

function collect<T>(
  schemaOf: (value: unknown) => TSchema,
  files: readonly SourceText[],
  split: Split,
): Collected<T> {
  const records: Loaded<T>[] = [];
  const spoilt = new Set<string>();
  const diagnostics: Diagnostic[] = [];
  let unreadable = false;
  for (const source of files) {
    const parsed = parseYaml(source.path, source.text);
    diagnostics.push(...mostTold(parsed.diagnostics));
    if (!parsed.file) {
      spoilt.add(stem(source.path));
      unreadable = true;
      continue;
    }
    const file = parsed.file;
    const parts = split(file);
    if (typeof parts === 'string') {
      diagnostics.push({
        code: 'wrong-type',
        severity: 'error',
        message: `${source.path} is not a list of records.`,
        hint: parts,
        place: file.placeOf(''),
      });
      unreadable = true;
      continue;
    }
    const ofFile: Diagnostic[] = [];
    for (const { value, pointer } of parts) {
      const places = placesUnder(file, pointer);
      const schema = schemaOf(value);
      const faults = [...validate(schema, value, places), ...curlyQuotes(value, places)];
      if (faults.length > 0) {
        for (const fault of faults) ofFile.push(fault);
        spoilt.add(idIn(value) ?? stem(source.path));
        continue;
      }
      records.push({
        value: decode(schema, value) as T,
        file,
        pointer,
        references: referencesIn(schema, value),
      });
    }
    diagnostics.push(...mostTold(ofFile));
  }
  return { records, spoilt, unreadable, diagnostics };
}

/** Text that a word processor has put between curly quotation marks: they would be printed. */
function curlyQuotes(value: unknown, places: { placeOf(at: string): Place }, pointer = ''): Diagnostic[] {
  if (typeof value === 'string' && /^[“”„].*[“”]$/s.test(value)) {
    return [
      {
        code: 'wrong-value',
        severity: 'error',
        message: `${shortened(value)} stands between curly quotation marks, which would be printed.`,
        hint: 'Use straight quotation marks, or none.',
        place: places.placeOf(pointer),
      },
    ];
  }
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    curlyQuotes(inner, places, `${pointer}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`),
  );
}

/** The places of a record that stands at a pointer of its file. */
export function placesUnder(
  file: YamlFile,
  pointer: string,
): { placeOf(at: string): Place; placeOfKey(at: string): Place } {
  return {
    placeOf: (at) => file.placeOf(pointer + at),
    placeOfKey: (at) => file.placeOfKey(pointer + at),
  };
}

/** `carrot` for `crops/carrot.yaml`. */
export function stem(path: string): string {
  return path
    .split('/')
    .at(-1)!
    .replace(/\.[^.]+$/, '');
}

function idIn(value: unknown): string | undefined {
  const id = (value as { id?: unknown } | null)?.id;
  return typeof id === 'string' ? id : undefined;
}

/** Every record of a kind by its id; a second record with an id is a fault that names the first. */
export function byId<T extends { readonly id: string }>(
  kind: string,
  records: readonly Loaded<T>[],
): { map: Map<string, Loaded<T>>; diagnostics: readonly Diagnostic[] } {
  const map = new Map<string, Loaded<T>>();
  const diagnostics: Diagnostic[] = [];
  for (const record of records) {
    const first = map.get(record.value.id);
    if (first) {
      const at = first.file.placeOf(`${first.pointer}/id`);
      diagnostics.push({
        code: 'duplicate-id',
        severity: 'error',
        message: `Another ${kind} has the id “${record.value.id}” already (${at.file}:${at.line}).`,
        hint: 'Give one of the two another id, or remove it.',
        place: record.file.placeOf(`${record.pointer}/id`),
      });
    } else map.set(record.value.id, record);
  }
  return { map, diagnostics };
}

/** A record in a file of its own is called as the file is. */
export function idsAreFileNames(records: readonly Loaded<{ readonly id: string }>[]): Diagnostic[] {
  return records
    .filter(({ value, file }) => value.id !== stem(file.path))
    .map(({ value, file }) => ({
      code: 'id-not-file-name',
      severity: 'error',
      message: `The id is “${value.id}”, but the file is called ${file.path.split('/').at(-1)}.`,
      hint: `Rename the file to ${value.id}.yaml, or change the id to ${stem(file.path)}.`,
      place: file.placeOf('/id'),
    }));
}
