import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { concurrently } from './concurrently.ts';
import { manifestName, readManifest, sha256Of, type MadeFile, type ManifestReading } from './manifest.ts';
import { foldedPath, foldersAbove, yoursPath } from './tree-path.ts';
import { ignoring, kindAt, listTree, sameContent, type TreeItem } from './tree.ts';

/** What stands in the output folder before a build writes to it. Empty when there is no folder. */
export interface Survey {
  readonly manifest: ManifestReading | undefined;
  /** Files that an earlier build made and nobody changed, with what the manifest says of them. */
  readonly unchanged: ReadonlyMap<string, MadeFile>;
  /** Files that an earlier build made and somebody changed. One that was emptied counts as missing. */
  readonly edited: readonly string[];
  /** All that no build made: files, links, and folders that hold nothing. */
  readonly foreign: readonly TreeItem[];
}

/** Files that a system or a tool puts into any folder; a folder with only these counts as empty. */
const ignorableNames = new Set([
  '.ds_store',
  'thumbs.db',
  'desktop.ini',
  '.directory',
  '.localized',
  '.gitkeep',
  '.keep',
]);

export async function surveyFolder(root: string): Promise<Survey> {
  if ((await kindAt(root)) === undefined)
    return { manifest: undefined, unchanged: new Map(), edited: [], foreign: [] };
  const manifest = await manifestIn(root);
  const made = manifest?.state === 'ours' ? manifest.files : new Map<string, MadeFile>();
  const madeFolders = new Set([...made.keys()].flatMap(foldersAbove));
  const items = await listTree(root);
  const unchanged = new Map<string, MadeFile>();
  const edited: string[] = [];
  const ours = items.filter(({ path, kind }) => kind === 'file' && made.has(path));
  await concurrently(ours, 8, async ({ path }) => {
    const file = made.get(path)!;
    const bytes = await readFile(join(root, path));
    if (isAsMade(bytes, file)) unchanged.set(path, file);
    else if (bytes.byteLength > 0) edited.push(path);
  });
  const isOurs = ({ path, kind }: TreeItem): boolean => {
    if (kind === 'folder') return madeFolders.has(path);
    return kind === 'file' && (made.has(path) || (path === manifestName && manifest?.state === 'ours'));
  };
  const foreign = items.filter((item) => !isOurs(item) && (item.kind !== 'folder' || item.empty));
  return { manifest, unchanged, edited: edited.sort(), foreign };
}

/** The manifest that a folder holds; undefined when it holds none. */
export async function manifestIn(root: string): Promise<ManifestReading | undefined> {
  const path = join(root, manifestName);
  if ((await kindAt(path)) !== 'file') return undefined;
  return readManifest(await readFile(path, 'utf8'));
}

/**
 * True when a file of ours may hold a person's work: it has other bytes than the build gave it. A file that was
 * emptied holds none (a power failure can leave it so), and neither does one that is gone.
 */
export async function holdsWork(path: string, file: MadeFile): Promise<boolean> {
  const bytes = await readFile(path).catch(ignoring('ENOENT'));
  return bytes !== undefined && bytes.byteLength > 0 && !isAsMade(bytes, file);
}

function isAsMade(bytes: Uint8Array, file: MadeFile): boolean {
  return bytes.byteLength === file.bytes && sha256Of(bytes) === file.sha256;
}

/** True for a folder that nobody has put anything into. */
export function isAsGoodAsEmpty(survey: Survey): boolean {
  return survey.foreign.every(({ path, kind }) => kind === 'file' && ignorableNames.has(path.toLowerCase()));
}

/**
 * What stands in the way of files to be written: a thing of someone else at such a path, above it, or (a file
 * where a folder is) below it; and things that are neither file nor link nor folder, which cannot be carried over.
 */
export function obstacles(things: readonly TreeItem[], wanted: Iterable<string>): readonly string[] {
  const files = new Set([...wanted].map(foldedPath));
  const folders = new Set([...files].flatMap(foldersAbove));
  const stands = ({ path, kind }: TreeItem): boolean => {
    const key = foldedPath(path);
    if (kind === 'other' || files.has(key)) return true;
    if (kind !== 'folder' && folders.has(key)) return true;
    return foldersAbove(key).some((folder) => files.has(folder));
  };
  return things.filter(stands).map(({ path }) => path);
}

/**
 * The path at which a person's own copy of a file is kept in a folder: the first `name.yours-1.ext`,
 * `name.yours-2.ext` and so on that is free, or that holds the same bytes already (then `kept` is true).
 */
export async function placeForYours(
  from: string,
  root: string,
  path: string,
): Promise<{ readonly path: string; readonly kept: boolean }> {
  for (let number = 1; ; number += 1) {
    const candidate = yoursPath(path, number);
    const kind = await kindAt(join(root, candidate));
    if (kind === undefined) return { path: candidate, kept: false };
    if (await sameContent(from, join(root, candidate))) return { path: candidate, kept: true };
  }
}
