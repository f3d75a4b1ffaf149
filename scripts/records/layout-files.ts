import { lstat, readFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { readTree } from './read-tree.ts';

/** What a guide has in its folder of layouts. */
export interface LayoutFiles {
  /** Every file, by its path in the folder, with forward slashes and in order. */
  readonly names: readonly string[];
  /** What stands in each layout and in the design, by the same path. */
  readonly texts: ReadonlyMap<string, string>;
  readonly diagnostics: readonly Diagnostic[];
}

/** The file with colours, sizes and paper. */
export const designName = 'design.json';

/** No honest layout is larger. */
const limitBytes = 1_000_000;

/**
 * Reads a folder of layouts, which need not exist. Nothing outside the folder that it stands in is read: a link that
 * leads out of there is a fault, and so is a file that is no UTF-8 text or is larger than any layout.
 */
export async function readLayoutFiles(folder: string): Promise<LayoutFiles> {
  const kind = await lstat(folder).catch(() => undefined);
  if (!kind) return { names: [], texts: new Map(), diagnostics: [] };
  const own = basename(folder);
  const tree = await readTree(dirname(folder), [own]);
  const diagnostics = tree.diagnostics.map((fault): Diagnostic =>
    fault.place ? { ...fault, place: { ...fault.place, file: placed(own, fault.place.file) } } : fault,
  );
  if (tree.others.includes(own))
    diagnostics.push(
      fault('file-unreadable', 'layouts', 'layouts is a file where a folder belongs.', 'Rename it.'),
    );
  const names = [...tree.others, ...tree.files.map(({ path }) => path)]
    .filter((path) => path !== own)
    .map((path) => path.slice(own.length + 1))
    .sort();
  const texts = new Map<string, string>();
  for (const name of names.filter((each) => each.endsWith('.njk') || each === designName)) {
    const text = await textOf(join(folder, name), `layouts/${name}`);
    if (typeof text === 'string') texts.set(name, text);
    else diagnostics.push(text);
  }
  if ((await lstat(join(folder, designName)).catch(() => undefined))?.isDirectory())
    diagnostics.push(
      fault(
        'file-unreadable',
        `layouts/${designName}`,
        `layouts/${designName} is a folder where a file belongs.`,
        'Move the file out of it, or remove it.',
      ),
    );
  return { names, texts, diagnostics };
}

/** The text of a layout, or what is wrong with it. */
async function textOf(file: string, path: string): Promise<string | Diagnostic> {
  let bytes: Uint8Array;
  try {
    bytes = await readFile(file);
  } catch (error) {
    const cause = (error as NodeJS.ErrnoException).code ?? 'unknown cause';
    return fault(
      'file-unreadable',
      path,
      `${path} cannot be read: ${cause}.`,
      'Check that you may read the file.',
    );
  }
  if (bytes.byteLength > limitBytes)
    return fault(
      'file-too-large',
      path,
      `${path} has ${bytes.byteLength} bytes; a layout may have ${limitBytes}.`,
      'Look whether something was pasted by mistake.',
    );
  const text = decoded(bytes);
  if (typeof text !== 'string')
    return {
      ...fault(
        'file-not-utf8',
        path,
        `${path} is not UTF-8 text.`,
        'Save it again as UTF-8; most editors offer the encoding in “Save as”.',
      ),
      place: { file: path, ...text },
    };
  return text;
}

/** Text without a byte order mark, or where the first byte stands that is not UTF-8. */
function decoded(bytes: Uint8Array): string | { readonly line: number; readonly column: number } {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const lenient = new TextDecoder('utf-8').decode(bytes);
    const lines = lenient.slice(0, Math.max(0, lenient.indexOf('\uFFFD'))).split('\n');
    return { line: lines.length, column: lines.at(-1)!.length + 1 };
  }
}

/** A path below the folder as a guide has it, whatever the folder is called here. */
function placed(own: string, path: string): string {
  return path === own || path.startsWith(`${own}/`) ? `layouts${path.slice(own.length)}` : path;
}

function fault(code: Diagnostic['code'], file: string, message: string, hint: string): Diagnostic {
  return { code, severity: 'error', message, hint, place: { file, line: 1, column: 1 } };
}
