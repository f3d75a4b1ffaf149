/**
 * Paths inside the output folder: relative, with forward slashes, and good on every file system a published
 * folder may be copied to.
 */

// Control characters, and what Windows does not allow in a name.
const forbidden = /[\u0000-\u001f<>:"|?*\\]/;
const reservedOnWindows = /^(?:con|prn|aux|nul|com[0-9]|lpt[0-9])(?:\.|$)/i;

/** True for `en/marlow/chart.html`; false for `/a`, `../a`, `a//b`, `a\\b`, `aux.html`, `a.` and an empty path. */
export function isTreePath(path: string): boolean {
  return path.length <= 1000 && path.split('/').every(isTreeName);
}

function isTreeName(name: string): boolean {
  if (name === '' || name.startsWith('..') || /[. ]$/.test(name)) return false;
  return !forbidden.test(name) && !reservedOnWindows.test(name);
}

/** One spelling for all paths that a file system without regard to case takes for the same. */
export function foldedPath(path: string): string {
  return path.normalize('NFC').toLowerCase();
}

/** `a`, `a/b` for `a/b/c.html`. */
export function foldersAbove(path: string): string[] {
  const parts = path.split('/');
  return parts.slice(1).map((_, index) => parts.slice(0, index + 1).join('/'));
}

/**
 * Throws an Error unless every path is a tree path, none is another's folder, and no two differ in case alone.
 * The program makes these paths itself, so a wrong one is a fault of the program, not of a record.
 */
export function assertTreePaths(paths: Iterable<string>): void {
  const files = new Map<string, string>();
  for (const path of paths) {
    if (!isTreePath(path)) throw new Error(`"${path}" cannot be a path in the output folder.`);
    const twin = files.get(foldedPath(path));
    if (twin !== undefined)
      throw new Error(`"${path}" and "${twin}" are one file where case does not count.`);
    files.set(foldedPath(path), path);
  }
  const folders = new Map<string, string>();
  for (const folder of [...files.values()].flatMap(foldersAbove)) {
    const key = foldedPath(folder);
    if (files.has(key)) throw new Error(`"${folder}" is both a file and a folder.`);
    const twin = folders.get(key) ?? folder;
    if (twin !== folder)
      throw new Error(`"${folder}" and "${twin}" are one folder where case does not count.`);
    folders.set(key, folder);
  }
}

/** Where a person's own copy of a file is kept: `chart.yours-1.html` beside `chart.html`. `number` counts from 1. */
export function yoursPath(path: string, number: number): string {
  const slash = path.lastIndexOf('/');
  const dot = path.lastIndexOf('.');
  const stemEnd = dot > slash + 1 ? dot : path.length;
  return `${path.slice(0, stemEnd)}.yours-${number}${path.slice(stemEnd)}`;
}
