import { mkdir, rename, rmdir, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Reach } from './checkpoint.ts';
import { manifestName, type MadeFile } from './manifest.ts';
import type { OutputFolder } from './output-folder.ts';
import { editedFile, notOurs } from './reports.ts';
import { foldersAbove } from './tree-path.ts';
import { holdsWork, isAsGoodAsEmpty, manifestIn, placeForYours, surveyFolder } from './survey.ts';
import { errorCode, kindAt, listTree, moveToFree, sameContent, type TreeItem } from './tree.ts';
import { clearWorkshop, settleWorkshop } from './workshop.ts';

/**
 * Puts the new tree in the place of the old one: the old one is moved aside, the new one moved in, the old one
 * removed. Between the first two steps there is no output folder; a build that is killed right there leaves
 * the old tree aside, and `repairSwap` puts it back.
 */
export async function swapTrees(folder: OutputFolder, reach: Reach): Promise<readonly Diagnostic[]> {
  if ((await kindAt(folder.path)) !== undefined) {
    await renameFolder(folder.path, folder.old);
    await reach('moved-aside');
  }
  await renameFolder(folder.staging, folder.path);
  await reach('moved-in');
  await clearWorkshop(folder);
  return (await kindAt(folder.old)) === undefined ? [] : clearOld(folder, reach);
}

/**
 * Brings the output folder into order after a build that was killed or failed at any point.
 *
 * | what is there                      | what happened                  | what is done                          |
 * | ---------------------------------- | ------------------------------ | ------------------------------------- |
 * | the old tree aside, no output      | killed in the middle of a swap | the old tree is moved back            |
 * | the old tree aside, and a whole output | killed before the old tree was gone | the rest of the old tree is removed |
 * | the old tree aside, and an output that no build made | someone made a folder since | refused, unless it is empty |
 * | a new tree that was not moved in   | killed while it was made       | it is removed; all in it has its original |
 * | anything else at these two places  | someone put it there           | refused, and left as it is            |
 */
export async function repairSwap(folder: OutputFolder, reach: Reach): Promise<readonly Diagnostic[]> {
  const diagnostics: Diagnostic[] = [];
  if ((await kindAt(folder.old)) !== undefined) diagnostics.push(...(await settleOld(folder, reach)));
  if ((await kindAt(folder.workshop)) !== undefined) {
    diagnostics.push(...(await settleWorkshop(folder)));
    await reach('staging-removed');
  }
  return diagnostics;
}

/**
 * True when a build can have moved this tree aside. It moves only a folder that holds its manifest or that nobody
 * has put anything into, and clears the manifest away last.
 */
async function isMovedAside(path: string): Promise<boolean> {
  if ((await kindAt(path)) !== 'folder') return false;
  const survey = await surveyFolder(path);
  return survey.manifest?.state === 'ours' || isAsGoodAsEmpty(survey);
}

async function settleOld(folder: OutputFolder, reach: Reach): Promise<readonly Diagnostic[]> {
  if (!(await isMovedAside(folder.old))) return [notOurs.helper(folder, folder.old)];
  if ((await kindAt(folder.path)) !== undefined) {
    if ((await manifestIn(folder.path))?.state === 'ours') return clearOld(folder, reach);
    const survey = await surveyFolder(folder.path);
    if (!isAsGoodAsEmpty(survey)) return [notOurs.beforeRepair(folder)];
    for (const { path } of survey.foreign) {
      const moved = await moveToFree(join(folder.path, path), join(folder.old, path));
      if (!moved) await unlink(join(folder.path, path));
    }
    await rmdir(folder.path);
  }
  await renameFolder(folder.old, folder.path);
  await reach('moved-back');
  return [];
}

/**
 * Removes the old tree, thing by thing. A file goes only when it is known to be Groundsheet's own work or when
 * the new tree holds the same; anything else is moved into the new tree first, so a kill loses nothing.
 * The manifest goes last, since it tells whose the files are.
 */
async function clearOld(folder: OutputFolder, reach: Reach): Promise<readonly Diagnostic[]> {
  const manifest = await manifestIn(folder.old);
  const made = manifest?.state === 'ours' ? manifest.files : new Map<string, MadeFile>();
  const madeFolders = new Set([...made.keys()].flatMap(foldersAbove));
  const items = await listTree(folder.old);
  const diagnostics: Diagnostic[] = [];
  for (const item of items.filter(({ kind, path }) => kind !== 'folder' && path !== manifestName)) {
    diagnostics.push(...(await settleFile(folder, item, made.get(item.path))));
    await reach('old-file-removed', item.path);
  }
  const folders = items.filter(({ kind }) => kind === 'folder');
  for (const { path, empty } of folders.reverse()) {
    if (empty && !madeFolders.has(path)) await mkdir(join(folder.path, path), { recursive: true });
    await rmdir(join(folder.old, path));
  }
  await settleManifest(folder, manifest?.state === 'ours');
  await rmdir(folder.old);
  await reach('old-removed');
  return diagnostics;
}

async function settleManifest(folder: OutputFolder, ours: boolean): Promise<void> {
  const path = join(folder.old, manifestName);
  if ((await kindAt(path)) === undefined) return;
  if (ours) await unlink(path);
  else await settleFile(folder, { path: manifestName, kind: 'file', empty: false }, undefined);
}

async function settleFile(
  folder: OutputFolder,
  { path, kind }: TreeItem,
  made: MadeFile | undefined,
): Promise<readonly Diagnostic[]> {
  const from = join(folder.old, path);
  const to = join(folder.path, path);
  if ((await sameContent(from, to)) || (kind === 'file' && made && !(await holdsWork(from, made)))) {
    await unlink(from);
    return [];
  }
  if (!made && (await moveToFree(from, to))) return [];
  for (;;) {
    const yours = await placeForYours(from, folder.path, path);
    if (yours.kept) {
      await unlink(from);
      return [];
    }
    if (await moveToFree(from, join(folder.path, yours.path))) return [editedFile(folder, path, yours.path)];
  }
}

/** Some systems refuse to move a folder while another program looks into it; that passes. */
async function renameFolder(from: string, to: string): Promise<void> {
  for (const wait of [50, 100, 200, 400, 800]) {
    try {
      await rename(from, to);
      return;
    } catch (error) {
      const passes =
        process.platform === 'win32' && ['EPERM', 'EACCES', 'EBUSY'].includes(errorCode(error) ?? '');
      if (!passes) throw error;
      await pause(wait);
    }
  }
  await rename(from, to);
}
