import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { manifestName, sha256Of, type ManifestEntry } from './manifest.ts';

/** A file that an earlier build put into the output folder, as it still lies there. */
export interface PublishedFile {
  readonly bytes: Uint8Array;
  readonly entry: ManifestEntry;
}

/**
 * What an earlier build published in a folder, by path: for a build of only some sheets, which leaves the others as
 * they are. A file that is gone or was changed by hand since is left out; so is everything of a folder without a
 * manifest of ours.
 */
export async function publishedIn(out: string): Promise<ReadonlyMap<string, PublishedFile>> {
  const manifest = await readFile(join(out, manifestName), 'utf8').then(parse, () => undefined);
  const files = await Promise.all(
    (manifest?.files ?? []).map(
      async ({ path, kind, title, region, language, pages, findings = [], sha256 }) => {
        const bytes = await readFile(join(out, path)).catch(() => undefined);
        if (!bytes || sha256Of(bytes) !== sha256) return [];
        return [[path, { bytes, entry: { path, kind, title, region, language, pages, findings } }] as const];
      },
    ),
  );
  return new Map(files.flat());
}

interface WrittenManifest {
  readonly madeBy?: string;
  readonly files?: readonly WrittenEntry[];
}

/** An empty list of findings is not written. */
type WrittenEntry = Omit<ManifestEntry, 'findings'> & {
  readonly sha256: string;
  readonly findings?: readonly string[];
};

/** The manifest as makeManifest wrote it; undefined for any other file of that name. */
function parse(text: string): WrittenManifest | undefined {
  try {
    const value = JSON.parse(text) as WrittenManifest | null;
    return value?.madeBy === 'Groundsheet' && Array.isArray(value.files) ? value : undefined;
  } catch {
    return undefined;
  }
}
