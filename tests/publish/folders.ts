import { lstat, mkdir, readFile, readdir, readlink, symlink, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** What a folder holds: text of files, `-> target` of links, `(folder)` for a folder with nothing in it. */
export type Snapshot = Record<string, string>;

export async function snapshot(root: string): Promise<Snapshot> {
  const found: Snapshot = {};
  const visit = async (under: string): Promise<void> => {
    const names = await readdir(join(root, under));
    if (names.length === 0 && under !== '') found[under] = '(folder)';
    for (const name of names) {
      const path = under === '' ? name : `${under}/${name}`;
      const stats = await lstat(join(root, path));
      if (stats.isDirectory()) await visit(path);
      else if (stats.isSymbolicLink()) found[path] = `-> ${await readlink(join(root, path))}`;
      else found[path] = await readFile(join(root, path), 'utf8');
    }
  };
  await visit('');
  return Object.fromEntries(Object.entries(found).sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** Puts files, links and empty folders into a folder, written as `snapshot` gives them. */
export async function put(root: string, things: Snapshot): Promise<void> {
  for (const [path, content] of Object.entries(things)) {
    const target = join(root, path);
    await mkdir(content === '(folder)' ? target : dirname(target), { recursive: true });
    if (content.startsWith('-> ')) await symlink(content.slice(3), target);
    else if (content !== '(folder)') await writeFile(target, content);
  }
}

/** Names that stand beside the output folder, itself left out. */
export async function beside(out: string): Promise<string[]> {
  const names = await readdir(dirname(out));
  return names.filter((name) => join(dirname(out), name) !== out).sort();
}

/** Makes the lock of a build look as the lock of a build that was killed: no process has this number. */
export async function markBuildDead(out: string): Promise<void> {
  const lock = join(dirname(out), '.dist.lock');
  const holder = JSON.parse(await readFile(lock, 'utf8')) as object;
  await writeFile(lock, JSON.stringify({ ...holder, pid: 2 ** 30 }));
}
