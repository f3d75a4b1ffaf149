import { lstat, readFile, readdir, realpath } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';

/** A text file of the guide. */
export interface SourceText {
  /** Path relative to the guide folder, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

export interface TreeReading {
  /** In order of path. */
  readonly files: readonly SourceText[];
  /** Paths of files of other kinds, which nobody reads. */
  readonly others: readonly string[];
  readonly diagnostics: readonly Diagnostic[];
}

/** No honest record is larger; daily station files get their own limit. */
const recordLimitBytes = 1_000_000;
const tableLimitBytes = 40_000_000;
const readable = /\.(ya?ml|md|csv)$/i;

/**
 * Reads every record, prose and station file below the named folders of a guide. Nothing outside the guide
 * folder is read: a link that leads out of it is a fault, not a way in.
 */
export async function readTree(root: string, folders: readonly string[]): Promise<TreeReading> {
  const files: SourceText[] = [];
  const diagnostics: Diagnostic[] = [];
  const home = await realpath(root).catch(() => undefined);
  if (home === undefined) {
    return {
      files,
      others: [],
      diagnostics: [
        fileFault('folder-missing', root, `There is no folder ${root}.`, 'Check the name after --root.'),
      ],
    };
  }
  const others: string[] = [];
  const seen = new Set<string>();

  /** One that cannot be read is told and the others are read all the same. */
  const readOne = async (absolute: string): Promise<void> => {
    const path = toSlashes(relative(root, absolute));
    try {
      await readKnown(absolute, path);
    } catch (error) {
      const cause = (error as NodeJS.ErrnoException).code;
      if (cause === undefined) throw error;
      diagnostics.push(
        fileFault(
          'file-unreadable',
          path,
          `${path} cannot be read: ${cause}.`,
          'Check that you may read it, and every folder it lies in.',
        ),
      );
    }
  };
  const readKnown = async (absolute: string, path: string): Promise<void> => {
    const real = await realpath(absolute).catch(() => undefined);
    if (real === undefined) {
      diagnostics.push(
        fileFault(
          'file-unreadable',
          path,
          `${path} is a link to nothing.`,
          'Remove the link or mend where it points.',
        ),
      );
      return;
    }
    if (real !== home && !real.startsWith(home + sep)) {
      diagnostics.push(
        fileFault(
          'link-leaves-guide',
          path,
          `${path} is a link that leads out of the guide folder.`,
          'Copy the file into the guide folder instead of linking to it.',
        ),
      );
      return;
    }
    const status = await lstat(real);
    if (status.isDirectory()) {
      if (seen.has(real)) return;
      seen.add(real);
      const names = (await readdir(absolute)).filter((name) => !name.startsWith('.')).sort();
      for (const name of names) await readOne(join(absolute, name));
      return;
    }
    if (!status.isFile()) return;
    if (!readable.test(absolute)) {
      others.push(path);
      return;
    }
    const limit = /\.csv$/i.test(absolute) ? tableLimitBytes : recordLimitBytes;
    if (status.size > limit) {
      diagnostics.push(
        fileFault(
          'file-too-large',
          path,
          `${path} has ${status.size} bytes; a file of this kind may have ${limit}.`,
          'Split it, or look whether something was pasted by mistake.',
        ),
      );
      return;
    }
    const text = decode(await readFile(real));
    if (typeof text !== 'string') {
      diagnostics.push({
        ...fileFault(
          'file-not-utf8',
          path,
          `${path} is not UTF-8 text (byte ${text.byte + 1}).`,
          'Save it again as UTF-8; most editors offer the encoding in “Save as”.',
        ),
        place: { file: path, line: text.line, column: text.column },
      });
      return;
    }
    files.push({ path, text });
  };

  for (const folder of folders) {
    const absolute = join(root, folder);
    const there = await lstat(absolute).catch(() => undefined);
    if (!there) {
      diagnostics.push(
        fileFault(
          'folder-missing',
          folder,
          `The guide folder has no ${folder}/.`,
          `Make a folder ${folder}/ beside the others, or name the guide folder with --root.`,
        ),
      );
      continue;
    }
    await readOne(absolute);
  }
  return { files, others, diagnostics };
}

function fileFault(code: Diagnostic['code'], file: string, message: string, hint: string): Diagnostic {
  return { code, severity: 'error', message, hint, place: { file, line: 1, column: 1 } };
}

/** The text of UTF-8 bytes without a byte order mark, or where the first byte stands that is not UTF-8. */
function decode(bytes: Uint8Array): string | { byte: number; line: number; column: number } {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes).replaceAll('\r\n', '\n');
  } catch {
    const lenient = new TextDecoder('utf-8').decode(bytes);
    const before = lenient.slice(0, Math.max(0, lenient.indexOf('\uFFFD')));
    const lines = before.split('\n');
    return {
      byte: new TextEncoder().encode(before).length,
      line: lines.length,
      column: lines.at(-1)!.length + 1,
    };
  }
}

function toSlashes(path: string): string {
  return path.split(sep).join('/');
}
