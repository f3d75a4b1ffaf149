/** Every fault of publishing, in words. */
import { basename } from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { OutputFolder } from './output-folder.ts';
import { errorCode } from './tree.ts';

function refusal(message: string, hint: string): Diagnostic {
  return { code: 'output-not-ours', severity: 'error', message, hint };
}

export const notOurs = {
  folder: ({ shown }: OutputFolder): Diagnostic =>
    refusal(
      `The folder ${shown} holds files, and nothing shows that Groundsheet made it.`,
      'Name an empty or a new folder for the sheets, or move these files elsewhere.',
    ),
  otherFormat: ({ shown }: OutputFolder): Diagnostic =>
    refusal(
      `The manifest in ${shown} cannot be read by this version of Groundsheet, so it is not known which files are yours.`,
      'Move your own files out of the folder, remove the folder, and build again.',
    ),
  inTheWay: ({ shown }: OutputFolder, paths: readonly string[]): Diagnostic =>
    refusal(
      `In ${shown}, ${listed(paths)} ${paths.length === 1 ? 'stands' : 'stand'} where a sheet has to go, and Groundsheet did not make ${paths.length === 1 ? 'it' : 'them'}.`,
      'Move or rename what stands in the way, then build again.',
    ),
  /** Something of someone else at a place beside the output folder that a build needs. */
  helper: ({ shown }: OutputFolder, path: string): Diagnostic =>
    refusal(
      `${basename(path)} stands beside ${shown}, where a build keeps its unfinished work, and nothing shows that Groundsheet made it.`,
      `Move or rename ${basename(path)}, or name another folder for the sheets, then build again.`,
    ),
  beforeRepair: ({ shown, old }: OutputFolder): Diagnostic =>
    refusal(
      `An earlier build was cut short and left its sheets in ${basename(old)}, but ${shown} now holds other files.`,
      `Move the files out of ${shown}, then build again; the sheets are put back from ${basename(old)}.`,
    ),
};

export function busy({ shown, lock }: OutputFolder): Diagnostic {
  return {
    code: 'output-busy',
    severity: 'error',
    message: `Another build is writing to ${shown}.`,
    hint: `Wait until it is done. If no build is running, delete the file ${basename(lock)} beside the folder.`,
  };
}

export function editedFile({ shown }: OutputFolder, path: string, kept: string): Diagnostic {
  return {
    code: 'output-edited',
    severity: 'warning',
    message: `${path} in ${shown} was changed by hand; your copy is now ${kept}.`,
    hint: 'Make the change in the records, so that every build has it, and then delete your copy.',
  };
}

/** The diagnostic for an error of the operating system; undefined for any other error. */
export function unwritable({ shown }: Pick<OutputFolder, 'shown'>, error: unknown): Diagnostic | undefined {
  const code = errorCode(error);
  if (code === undefined) return undefined;
  return {
    code: 'output-unwritable',
    severity: 'error',
    message: `The sheets could not be written to ${shown}: ${reasons[code] ?? `the system says ${code}`}.`,
    hint: 'Mend the cause, or name another folder for the sheets. The sheets that were there are kept.',
  };
}

/** The new sheets are there, but the old ones could not be cleared away. */
export function leftover({ shown, old }: OutputFolder, error: unknown): Diagnostic | undefined {
  const code = errorCode(error);
  if (code === undefined) return undefined;
  return {
    code: 'output-unwritable',
    severity: 'warning',
    message: `The sheets in ${shown} are new, but the old ones in ${basename(old)} could not be removed: ${reasons[code] ?? `the system says ${code}`}.`,
    hint: 'Close programs that have these files open; the next build tries again.',
  };
}

const reasons: Readonly<Record<string, string>> = {
  EACCES: 'permission is denied',
  EPERM: 'permission is denied',
  EROFS: 'the disk can only be read',
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is full',
  EBUSY: 'another program holds the folder',
  EXDEV: 'the folder is on another disk than the folder it stands in',
  ENAMETOOLONG: 'a path is too long for the disk',
  ENOTDIR: 'a file stands where a folder has to be',
  EEXIST: 'a file stands where a folder has to be',
  ELOOP: 'a link on the way there is a link that leads to itself',
  EMFILE: 'too many files are open',
};

function listed(paths: readonly string[]): string {
  const shown = paths.slice(0, 3);
  const more = paths.length - shown.length;
  return more > 0 ? `${shown.join(', ')} and ${more} more` : shown.join(' and ');
}
