import { mkdir, readFile, readdir, rm, rmdir, unlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { stagingName, type OutputFolder } from './output-folder.ts';
import { notOurs } from './reports.ts';
import { ignoring, kindAt } from './tree.ts';

/** The file in the workshop that says whose it is, and so that a later build may clear it away. */
export const markName = 'made-by-groundsheet.txt';

const markText =
  'A build of Groundsheet makes its new sheets here. When no build is running, the next one removes this folder.\n';

/** Makes the workshop, marks it, and makes an empty folder in it for the new tree. Fails where anything stands. */
export async function openWorkshop({ workshop, staging }: OutputFolder): Promise<void> {
  await mkdir(workshop);
  await writeFile(join(workshop, markName), markText, { flag: 'wx' });
  await mkdir(staging);
}

/**
 * Removes the workshop of a build that is done, was killed or failed. What stands there under the same name but
 * without the mark, or beside the tree, is somebody else's: it is left alone and told. True means that nothing is
 * left there.
 */
export async function clearWorkshop(folder: OutputFolder): Promise<boolean> {
  const kind = await kindAt(folder.workshop);
  if (kind === undefined) return true;
  if (kind !== 'folder') return false;
  const names = await readdir(folder.workshop);
  if (names.some((name) => name !== markName && name !== stagingName)) return false;
  // The mark is made first and removed last, so that a kill in between leaves an empty folder at most.
  if (names.length > 0 && !(await isMarked(folder))) return false;
  await rm(folder.staging, { recursive: true, force: true });
  await unlink(join(folder.workshop, markName)).catch(ignoring('ENOENT'));
  await rmdir(folder.workshop);
  return true;
}

/** The refusal, if what stands at the place of the workshop cannot be cleared away. */
export async function settleWorkshop(folder: OutputFolder): Promise<readonly Diagnostic[]> {
  return (await clearWorkshop(folder)) ? [] : [notOurs.helper(folder, folder.workshop)];
}

/** A kill may cut the mark short. */
async function isMarked({ workshop }: OutputFolder): Promise<boolean> {
  const path = join(workshop, markName);
  return (await kindAt(path)) === 'file' && markText.startsWith(await readFile(path, 'utf8'));
}
