import { realpath } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { unwritable } from './reports.ts';
import { ignoring, kindAt } from './tree.ts';

/** Where the output goes, and the three helpers that stand beside it while a build writes. */
export interface OutputFolder {
  /** As the person gave it, for messages. */
  readonly shown: string;
  /** The real folder, behind any link. It need not exist. */
  readonly path: string;
  /** Holds the new tree while it is made, and the mark that a build made it: `.dist.new`. */
  readonly workshop: string;
  /** The new tree itself, `tree` in the workshop. */
  readonly staging: string;
  /** The old tree while it is being replaced: `.dist.old`. */
  readonly old: string;
  /** The lock file: `.dist.lock`. */
  readonly lock: string;
}

/** The name of the new tree in the workshop. */
export const stagingName = 'tree';

/** Folders of a guide that hold what a person wrote or installed; output never goes into one of them. */
const foldersOfTheGuide = ['content', 'crops', 'layouts', 'node_modules', '.git'];

/**
 * Finds the real output folder, or says why output cannot go there: it is the guide itself or holds it, it lies
 * among the guide's records, something that is no folder stands there, or the system cannot look there.
 */
export async function findOutputFolder(options: Wanted): Promise<OutputFolder | Diagnostic> {
  if (options.out.includes('\0'))
    return cannotGoThere(options.out.replaceAll('\0', '?'), 'has a character that cannot be in a name');
  try {
    return await locate(options);
  } catch (error) {
    const diagnostic = unwritable({ shown: options.out }, error);
    if (!diagnostic) throw error;
    return diagnostic;
  }
}

interface Wanted {
  readonly out: string;
  readonly guide: string;
}

async function locate(options: Wanted): Promise<OutputFolder | Diagnostic> {
  const written = resolve(options.out);
  const kind = await kindAt(written);
  const path = await realPathOf(written);
  if (path === undefined) return cannotGoThere(options.out, 'is a link that leads nowhere');
  const targetKind = await kindAt(path);
  if (targetKind !== undefined && targetKind !== 'folder') {
    return cannotGoThere(
      options.out,
      kind === 'link' ? 'leads to something that is no folder' : 'is no folder',
    );
  }
  const guide = (await realPathOf(resolve(options.guide))) ?? resolve(options.guide);
  for (const place of new Set([written, path])) {
    for (const root of new Set([resolve(options.guide), guide])) {
      if (isWithin(root, place)) return cannotGoThere(options.out, 'is the folder of the guide, or holds it');
      const among = foldersOfTheGuide.find((name) => isWithin(place, join(root, name)));
      if (among !== undefined) return cannotGoThere(options.out, `lies in the ${among} folder of the guide`);
    }
  }
  const beside = (suffix: string): string => join(dirname(path), `.${basename(path)}.${suffix}`);
  const workshop = beside('new');
  return {
    shown: options.out,
    path,
    workshop,
    staging: join(workshop, stagingName),
    old: beside('old'),
    lock: beside('lock'),
  };
}

/** The real path of a file or folder, or what it will be once it is made; undefined for a link to nothing. */
async function realPathOf(path: string): Promise<string | undefined> {
  const real = await realpath(path).catch(ignoring('ENOENT', 'ENOTDIR'));
  if (real !== undefined) return real;
  if ((await kindAt(path)) === 'link' || dirname(path) === path) return undefined;
  const above = await realPathOf(dirname(path));
  return above === undefined ? undefined : join(above, basename(path));
}

/** True when `inner` is `outer` or lies somewhere in it. */
function isWithin(inner: string, outer: string): boolean {
  const way = relative(outer, inner);
  return way === '' || (way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way));
}

function cannotGoThere(out: string, why: string): Diagnostic {
  return {
    code: 'output-not-ours',
    severity: 'error',
    message: `The sheets cannot go to ${out}, since it ${why}.`,
    hint: 'Name a folder of its own for the sheets, such as dist.',
  };
}
