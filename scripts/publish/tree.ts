import { constants } from 'node:fs';
import {
  chmod,
  copyFile,
  link,
  lstat,
  mkdir,
  open,
  readFile,
  readdir,
  readlink,
  rename,
  symlink,
  unlink,
  utimes,
} from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** Something that stands in a folder. Links are never followed. */
export interface TreeItem {
  /** Relative, with forward slashes. */
  readonly path: string;
  readonly kind: 'file' | 'folder' | 'link' | 'other';
  /** True for a folder with nothing in it. */
  readonly empty: boolean;
}

/** Everything in a folder, however deep, in order of path; a folder before what it holds. */
export async function listTree(root: string): Promise<TreeItem[]> {
  const items: TreeItem[] = [];
  const visit = async (under: string): Promise<boolean> => {
    const entries = await readdir(join(root, under), { withFileTypes: true });
    for (const entry of entries) {
      const path = under === '' ? entry.name : `${under}/${entry.name}`;
      if (entry.isDirectory()) items.push({ path, kind: 'folder', empty: await visit(path) });
      else
        items.push({
          path,
          kind: entry.isFile() ? 'file' : entry.isSymbolicLink() ? 'link' : 'other',
          empty: false,
        });
    }
    return entries.length === 0;
  };
  await visit('');
  return items.sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** What stands at a path; undefined for nothing. */
export async function kindAt(path: string): Promise<TreeItem['kind'] | undefined> {
  const stats = await lstat(path).catch(ignoring('ENOENT', 'ENOTDIR'));
  if (!stats) return undefined;
  return stats.isFile() ? 'file' : stats.isDirectory() ? 'folder' : stats.isSymbolicLink() ? 'link' : 'other';
}

/** True when two paths hold files with equal bytes, links with equal targets, or one and the same thing. */
export async function sameContent(a: string, b: string): Promise<boolean> {
  const [one, two] = await Promise.all(
    [a, b].map((path) => lstat(path).catch(ignoring('ENOENT', 'ENOTDIR'))),
  );
  if (!one || !two) return false;
  if (one.ino !== 0 && one.ino === two.ino && one.dev === two.dev) return true;
  if (one.isSymbolicLink() && two.isSymbolicLink()) return (await readlink(a)) === (await readlink(b));
  if (!one.isFile() || !two.isFile() || one.size !== two.size) return false;
  const [left, right] = await Promise.all([readFile(a), readFile(b)]);
  return left.equals(right);
}

/**
 * Gives a file or link a second name; the first stays. A file is linked hard, so that not even a kill can lose
 * it; where the file system cannot, it is copied and pressed to disk. Nothing at `to` is ever overwritten.
 */
export async function duplicate(from: string, to: string): Promise<void> {
  if ((await kindAt(from)) === 'link') {
    await symlink(await readlink(from), to);
    return;
  }
  try {
    await link(from, to);
  } catch (error) {
    if (errorCode(error) === 'EEXIST' || errorCode(error) === 'ENOENT') throw error;
    await copyWhole(from, to);
  }
}

/** Moves something to a free path and makes the folders above it. False, and nothing done, if the path is taken. */
export async function moveToFree(from: string, to: string): Promise<boolean> {
  if ((await kindAt(to)) !== undefined) return false;
  await mkdir(dirname(to), { recursive: true });
  if ((await kindAt(from)) === 'file') {
    try {
      await link(from, to);
      await unlink(from);
      return true;
    } catch (error) {
      if (errorCode(error) === 'EEXIST') return false;
    }
  }
  await rename(from, to);
  return true;
}

/** Passes over the named errors: `await lstat(path).catch(ignoring('ENOENT'))` is undefined for no such file. */
export function ignoring(...codes: readonly string[]): (error: unknown) => undefined {
  return (error) => {
    const code = errorCode(error);
    if (code !== undefined && codes.includes(code)) return undefined;
    throw error;
  };
}

/** The code of an error of the operating system, such as ENOSPC; undefined for any other error. */
export function errorCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error) || !('syscall' in error)) return undefined;
  return typeof error.code === 'string' ? error.code : undefined;
}

async function copyWhole(from: string, to: string): Promise<void> {
  const { mode, atime, mtime } = await lstat(from);
  await copyFile(from, to, constants.COPYFILE_EXCL);
  await chmod(to, mode | 0o200);
  const file = await open(to, 'r+');
  await file.sync().finally(() => file.close());
  await utimes(to, atime, mtime);
  await chmod(to, mode);
}
