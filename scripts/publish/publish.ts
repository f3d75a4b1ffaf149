import { mkdir, readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { hasErrors, type Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Checkpoint, Reach } from './checkpoint.ts';
import { takeLock, type Lock } from './lock.ts';
import { makeManifest, manifestName, type ManifestEntry } from './manifest.ts';
import { findOutputFolder, type OutputFolder } from './output-folder.ts';
import { busy, editedFile, leftover, notOurs, unwritable } from './reports.ts';
import { stageTree, type YoursCopy } from './stage.ts';
import { isAsGoodAsEmpty, obstacles, placeForYours, surveyFolder, type Survey } from './survey.ts';
import { repairSwap, swapTrees } from './swap.ts';
import { assertTreePaths } from './tree-path.ts';
import { kindAt } from './tree.ts';

export type { ManifestEntry } from './manifest.ts';

export interface PublishOptions {
  /** The output folder. It is made if it is missing; a link to a folder stays a link. */
  readonly out: string;
  /** The folder of the guide, which output may neither replace nor mix with. The current folder if absent. */
  readonly guide?: string;
  /** Every output file but the manifest, by its path in the output folder. Text is written as UTF-8. */
  readonly files: ReadonlyMap<string, Uint8Array | string>;
  /** What the manifest says of files beyond path, bytes and checksum. */
  readonly entries: readonly ManifestEntry[];
  /** Told in a sentence what was done. */
  readonly say?: (line: string) => void;
  /** Called as the work goes on; see checkpoint.ts. What it throws ends the build as an error would. */
  readonly checkpoint?: (name: Checkpoint, path?: string) => void | Promise<void>;
  /** How many files are written at once. 8 if absent. */
  readonly writers?: number;
}

/**
 * Replaces what the last build wrote to the output folder, whole or not at all. When this returns an error or
 * throws, the sheets that were there are still there; when the process is killed, the next build puts them back.
 *
 * What Groundsheet did not make is never removed: it is carried over to the new tree, under its own name. A
 * file that Groundsheet made and someone changed is carried over as `name.yours-1.ext`, with a warning. A
 * folder that is not empty and holds no manifest of Groundsheet is refused, and so is a foreign file where
 * an output file has to go. If nothing has changed, nothing is written.
 *
 * Throws an Error for paths or entries that the program should not have made (see `assertTreePaths` and
 * `makeManifest`); every other fault is a diagnostic.
 */
export async function publish(
  options: PublishOptions,
): Promise<{ readonly diagnostics: readonly Diagnostic[] }> {
  const files = bytesOf(options.files);
  assertTreePaths([...files.keys(), manifestName]);
  const manifest = makeManifest(files, options.entries);
  return withOutputFolder(options, async (folder, lock, reach) => {
    const survey = await surveyFolder(folder.path);
    await reach('surveyed');
    const refusals = refuse(folder, survey, [...files.keys(), manifestName]);
    if (refusals.length > 0) return refusals;
    const yours = await yoursCopies(folder, survey, files);
    const warnings = yours.map(({ path, as }) => editedFile(folder, path, as));
    if (await isUpToDate(folder, survey, files, manifest)) {
      options.say?.(`Nothing has changed in ${folder.shown}.`);
      return warnings;
    }
    await stageTree(folder, { files, manifest, survey, yours, writers: options.writers ?? 8 }, reach);
    if (!(await lock.stillHeld())) return [busy(folder)];
    const cleared = await swapTrees(folder, reach).catch((error: unknown) => afterSwap(folder, error));
    options.say?.(summary(folder, survey, files));
    return [...warnings, ...cleared];
  });
}

/**
 * Puts right what a killed build left behind, without building. The first thing of every run, so that a run
 * that then finds a fault in the records still leaves the last good sheets in their place.
 */
export async function repairOutput(
  options: Pick<PublishOptions, 'out' | 'guide' | 'checkpoint'>,
): Promise<{ readonly diagnostics: readonly Diagnostic[] }> {
  const folder = await findOutputFolder({ out: options.out, guide: options.guide ?? process.cwd() });
  if ('code' in folder) return { diagnostics: [folder] };
  const helpers = await Promise.all([folder.workshop, folder.old].map(kindAt));
  if (helpers.every((kind) => kind === undefined)) return { diagnostics: [] };
  return withOutputFolder(options, () => Promise.resolve([]));
}

type Work = (folder: OutputFolder, lock: Lock, reach: Reach) => Promise<readonly Diagnostic[]>;

/** Finds, locks and repairs the output folder, does the work, and leaves no staging and no lock behind. */
async function withOutputFolder(
  options: Pick<PublishOptions, 'out' | 'guide' | 'checkpoint'>,
  work: Work,
): Promise<{ readonly diagnostics: readonly Diagnostic[] }> {
  const folder = await findOutputFolder({ out: options.out, guide: options.guide ?? process.cwd() });
  if ('code' in folder) return { diagnostics: [folder] };
  const reach: Reach = (name, path) => options.checkpoint?.(name, path);
  try {
    await mkdir(dirname(folder.path), { recursive: true });
    const lock = await takeLock(folder.lock);
    if (!lock) return { diagnostics: [busy(folder)] };
    try {
      return { diagnostics: await repairAndWork(folder, lock, reach, work) };
    } finally {
      await lock.release();
    }
  } catch (error) {
    const diagnostic = unwritable(folder, error);
    if (!diagnostic) throw error;
    return { diagnostics: [diagnostic] };
  }
}

async function repairAndWork(
  folder: OutputFolder,
  lock: Lock,
  reach: Reach,
  work: Work,
): Promise<readonly Diagnostic[]> {
  await reach('locked');
  const repaired = await repairSwap(folder, reach);
  await reach('repaired');
  if (hasErrors(repaired)) return repaired;
  try {
    return [...repaired, ...(await work(folder, lock, reach))];
  } finally {
    // A failed build is put right in the same way as a killed one; what failed is told, not this.
    if (await lock.stillHeld()) await repairSwap(folder, () => undefined).catch(() => []);
  }
}

function refuse(folder: OutputFolder, survey: Survey, wanted: readonly string[]): readonly Diagnostic[] {
  const state = survey.manifest?.state;
  if (state === 'other-format') return [notOurs.otherFormat(folder)];
  if (state !== 'ours' && !isAsGoodAsEmpty(survey)) return [notOurs.folder(folder)];
  const edited = survey.edited.map((path) => ({ path, kind: 'file', empty: false }) as const);
  const inTheWay = [
    ...obstacles(survey.foreign, wanted),
    // A changed file of ours may stand where a file goes, since it is then kept beside it; not where a folder goes.
    ...obstacles(
      edited,
      wanted.filter((path) => !survey.edited.includes(path)),
    ),
  ];
  return inTheWay.length > 0 ? [notOurs.inTheWay(folder, inTheWay)] : [];
}

/** Changed files of ours whose new bytes are not what the person made of them, and where each is kept. */
async function yoursCopies(
  folder: OutputFolder,
  survey: Survey,
  files: ReadonlyMap<string, Uint8Array>,
): Promise<readonly YoursCopy[]> {
  const copies: YoursCopy[] = [];
  for (const path of survey.edited) {
    const from = join(folder.path, path);
    const next = files.get(path);
    if (next && Buffer.compare(await readFile(from), next) === 0) continue;
    const place = await placeForYours(from, folder.path, path);
    if (!place.kept) copies.push({ path, as: place.path });
  }
  return copies;
}

async function isUpToDate(
  folder: OutputFolder,
  survey: Survey,
  files: ReadonlyMap<string, Uint8Array>,
  manifest: string,
): Promise<boolean> {
  if (survey.manifest?.state !== 'ours' || survey.edited.length > 0) return false;
  // Equal manifests have equal checksums, so that each unchanged file is the one to be written.
  if (survey.unchanged.size !== files.size) return false;
  return (await readFile(join(folder.path, manifestName), 'utf8')) === manifest;
}

/** Once the new tree is in, an error while the old one is cleared away is a warning: the sheets are good. */
async function afterSwap(folder: OutputFolder, error: unknown): Promise<readonly Diagnostic[]> {
  const isIn = (await kindAt(folder.staging)) === undefined;
  const warning = isIn ? leftover(folder, error) : undefined;
  if (!warning) throw error;
  return [warning];
}

function summary(folder: OutputFolder, survey: Survey, files: ReadonlyMap<string, Uint8Array>): string {
  const removed = [...survey.unchanged.keys(), ...survey.edited].filter((path) => !files.has(path)).length;
  const tail = removed > 0 ? `, ${removed} of the last build removed` : '';
  return `${files.size} files in ${folder.shown}${tail}.`;
}

function bytesOf(files: ReadonlyMap<string, Uint8Array | string>): ReadonlyMap<string, Uint8Array> {
  return new Map(
    [...files].map(([path, data]) => [path, typeof data === 'string' ? Buffer.from(data, 'utf8') : data]),
  );
}
