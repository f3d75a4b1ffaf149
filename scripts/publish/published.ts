import { readFile, realpath } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { manifestName, readEntries, sha256Of, type ManifestEntry } from './manifest.ts';
import { kindAt } from './tree.ts';

/** A file that an earlier build put into the output folder, as it still lies there. */
export interface PublishedFile {
  readonly bytes: Uint8Array;
  readonly entry: ManifestEntry;
}

/**
 * What an earlier build published in a folder, by path: for a build of only some sheets, which leaves the others as
 * they are. A file that is gone, was changed by hand since, or lies behind a link that leads out of the folder is left
 * out; so is everything of a folder without a whole manifest of ours.
 */
export async function publishedIn(out: string): Promise<ReadonlyMap<string, PublishedFile>> {
  const text = await readFile(join(out, manifestName), 'utf8').catch(() => undefined);
  const made = text === undefined ? [] : readEntries(text);
  const home = await realpath(out).catch(() => out);
  const files = await Promise.all(
    made.map(async ({ entry, sha256 }) => {
      const bytes = await readWithin(home, join(home, entry.path)).catch(() => undefined);
      if (!bytes || sha256Of(bytes) !== sha256) return [];
      return [[entry.path, { bytes, entry }] as const];
    }),
  );
  return new Map(files.flat());
}

/** A file, unless it is a link or lies behind one that leads out of the folder. */
async function readWithin(home: string, path: string): Promise<Uint8Array | undefined> {
  if ((await kindAt(path)) !== 'file') return undefined;
  return (await realpath(path)).startsWith(home + sep) ? readFile(path) : undefined;
}
