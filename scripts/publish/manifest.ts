import { createHash } from 'node:crypto';
import { foldedPath, isTreePath } from './tree-path.ts';

/**
 * The manifest's own name in the output folder. It lists every file of a build but itself, is written anew by
 * each build, and is no place for notes: a change made to it by hand is not kept.
 */
export const manifestName = 'manifest.json';

/** What is known of an output file besides its bytes. */
export interface ManifestEntry {
  readonly path: string;
  /** `planting-chart`, `page-index` and the like; a file without an entry is listed as `asset`. */
  readonly kind: string;
  readonly title?: string | undefined;
  /** Id of the region it is made for. */
  readonly region?: string | undefined;
  /** BCP 47 tag. */
  readonly language?: string | undefined;
  /** Pages of a PDF. */
  readonly pages?: number | undefined;
  /** Ids of the findings it prints, in the order of first mention. */
  readonly findings: readonly string[];
}

/** What an earlier build says of a file it made. */
export interface MadeFile {
  readonly sha256: string;
  readonly bytes: number;
}

export type ManifestReading =
  | { readonly state: 'ours'; readonly files: ReadonlyMap<string, MadeFile> }
  /** Groundsheet made it, but in a form that this version cannot read. */
  | { readonly state: 'other-format' }
  | { readonly state: 'not-ours' };

const maker = 'Groundsheet';
const format = 1;

/**
 * The text of the manifest: one object for each file, in order of path, every key in order, so that equal
 * files and entries give equal bytes. Throws an Error for an entry without a file and for a second entry of one.
 */
export function makeManifest(
  files: ReadonlyMap<string, Uint8Array>,
  entries: readonly ManifestEntry[],
): string {
  const byPath = new Map<string, ManifestEntry>();
  for (const entry of entries) {
    if (!files.has(entry.path))
      throw new Error(`The manifest has an entry for "${entry.path}", but there is no such file.`);
    if (byPath.has(entry.path)) throw new Error(`The manifest has two entries for "${entry.path}".`);
    byPath.set(entry.path, entry);
  }
  const paths = [...files.keys()].sort();
  const list = paths.map((path) => describe(path, files.get(path)!, byPath.get(path)));
  return `${JSON.stringify({ files: list, format, madeBy: maker }, null, 2)}\n`;
}

/** Reads a manifest as an earlier build left it. Anything but a whole and honest manifest is not ours. */
export function readManifest(text: string): ManifestReading {
  const value = parsed(text);
  if (!isObject(value) || value['madeBy'] !== maker) return { state: 'not-ours' };
  const list = value['files'];
  if (value['format'] !== format || !Array.isArray(list)) return { state: 'other-format' };
  const files = new Map<string, MadeFile>();
  for (const item of list as readonly unknown[]) {
    const file = readFileItem(item);
    if (!file) return { state: 'other-format' };
    files.set(file.path, { sha256: file.sha256, bytes: file.bytes });
  }
  return { state: 'ours', files };
}

/**
 * All that a manifest says of each file, for a build that keeps the file. Empty for anything but a whole manifest of
 * this version, in which every value is of its type and every path lies in the output folder.
 */
export function readEntries(
  text: string,
): readonly { readonly entry: ManifestEntry; readonly sha256: string }[] {
  const reading = readManifest(text);
  const value = parsed(text);
  if (reading.state !== 'ours' || !isObject(value)) return [];
  const entries = (value['files'] as readonly unknown[]).map(readEntry);
  const paths = new Set(entries.map((entry) => entry && foldedPath(entry.path)));
  if (paths.has(undefined) || paths.has(manifestName) || paths.size !== entries.length) return [];
  return entries.map((entry) => ({ entry: entry!, sha256: reading.files.get(entry!.path)!.sha256 }));
}

export function sha256Of(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** Keys in order; those without a value are left out by JSON itself. */
function describe(path: string, bytes: Uint8Array, entry: ManifestEntry | undefined): object {
  return {
    bytes: bytes.byteLength,
    findings: entry && entry.findings.length > 0 ? entry.findings : undefined,
    kind: entry?.kind ?? 'asset',
    language: entry?.language,
    pages: entry?.pages,
    path,
    region: entry?.region,
    sha256: sha256Of(bytes),
    title: entry?.title,
  };
}

function readFileItem(item: unknown): (MadeFile & { readonly path: string }) | undefined {
  if (!isObject(item)) return undefined;
  const { path, sha256, bytes } = item;
  if (typeof path !== 'string' || !isTreePath(path)) return undefined;
  if (typeof sha256 !== 'string' || !/^[0-9a-f]{64}$/.test(sha256) || typeof bytes !== 'number')
    return undefined;
  return { path, sha256, bytes };
}

function readEntry(item: unknown): ManifestEntry | undefined {
  const file = readFileItem(item);
  if (!file || !isObject(item)) return undefined;
  const { kind, title, region, language, pages, findings = [] } = item;
  if (typeof kind !== 'string' || !Array.isArray(findings) || !findings.every(isText)) return undefined;
  if (!isTextOrAbsent(title) || !isTextOrAbsent(region) || !isTextOrAbsent(language)) return undefined;
  if (pages !== undefined && typeof pages !== 'number') return undefined;
  return { path: file.path, kind, title, region, language, pages, findings };
}

function isText(value: unknown): value is string {
  return typeof value === 'string';
}

function isTextOrAbsent(value: unknown): value is string | undefined {
  return value === undefined || isText(value);
}

/** The value of a JSON text; undefined for text that is no JSON. */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
