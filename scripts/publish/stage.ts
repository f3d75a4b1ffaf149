import { chmod, lstat, mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Reach } from './checkpoint.ts';
import { concurrently } from './concurrently.ts';
import { manifestName, sha256Of } from './manifest.ts';
import type { OutputFolder } from './output-folder.ts';
import type { Survey } from './survey.ts';
import { duplicate, ignoring, kindAt } from './tree.ts';
import { openWorkshop } from './workshop.ts';

/** A person's own copy of a file of ours, and the name it is kept under in the new tree. */
export interface YoursCopy {
  readonly path: string;
  readonly as: string;
}

export interface StagingPlan {
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly manifest: string;
  readonly survey: Survey;
  readonly yours: readonly YoursCopy[];
  /** How many files are written at once. */
  readonly writers: number;
}

/**
 * Makes the whole new tree beside the output folder. A file that has not changed keeps its date, and what no
 * build made is given a second name here, so that the old tree stays whole until the new one is.
 */
export async function stageTree(folder: OutputFolder, plan: StagingPlan, reach: Reach): Promise<void> {
  const { files, manifest, survey, yours, writers } = plan;
  await openWorkshop(folder);
  await reach('staging-made');
  const foreignFolders = survey.foreign.filter(({ kind }) => kind === 'folder').map(({ path }) => path);
  const foreignFiles = survey.foreign.filter(({ kind }) => kind !== 'folder').map(({ path }) => path);
  const carried = [...foreignFiles.map((path) => ({ path, as: path })), ...yours];
  const everyPath = [manifestName, ...files.keys(), ...carried.map(({ as }) => as)];
  await makeFolders(folder, new Set([...everyPath.map((path) => dirname(path)), ...foreignFolders]));
  await concurrently(files, writers, async ([path, bytes]) => {
    await writeOne(folder, path, bytes, survey);
    await reach('file-written', path);
  });
  await concurrently(carried, writers, async ({ path, as }) => {
    await duplicate(join(folder.path, path), join(folder.staging, as));
    await reach('foreign-carried', path);
  });
  await writeFile(join(folder.staging, manifestName), manifest, { flag: 'wx' });
  await reach('manifest-written');
}

/** Folders that a person may have closed to others stay so. */
async function makeFolders(folder: OutputFolder, paths: ReadonlySet<string>): Promise<void> {
  for (const path of [...paths].sort()) {
    await mkdir(join(folder.staging, path), { recursive: true });
    await copyMode(join(folder.path, path), join(folder.staging, path));
  }
}

async function copyMode(from: string, to: string): Promise<void> {
  const stats = await lstat(from).catch(ignoring('ENOENT', 'ENOTDIR'));
  if (stats?.isDirectory()) await chmod(to, (stats.mode & 0o7777) | 0o700);
}

async function writeOne(
  folder: OutputFolder,
  path: string,
  bytes: Uint8Array,
  survey: Survey,
): Promise<void> {
  const target = join(folder.staging, path);
  if (survey.unchanged.get(path)?.sha256 === sha256Of(bytes)) {
    await duplicate(join(folder.path, path), target).catch(ignoring('ENOENT', 'EEXIST'));
    if ((await kindAt(target)) !== undefined) return;
  }
  await writeFile(target, bytes, { flag: 'wx' });
}
