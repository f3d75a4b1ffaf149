/** The demonstration guide built once for the tests of a file, into a temporary folder. */
import { mkdtemp, readFile, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, type BuildOptions, type BuildResult } from '../../scripts/pipeline.ts';

export const repository = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '');

export interface BuiltGuide {
  readonly out: string;
  readonly result: BuildResult;
  remove(): Promise<void>;
}

export async function buildGuide(options: Partial<BuildOptions> = {}): Promise<BuiltGuide> {
  const folder = await mkdtemp(join(tmpdir(), 'groundsheet-demo-'));
  const out = join(folder, 'dist');
  const result = await build({ root: repository, builtInRoot: repository, out, ...options });
  return { out, result, remove: () => rm(folder, { recursive: true, force: true }) };
}

/** Every file below a folder with its bytes, in order of path. */
export async function filesIn(folder: string): Promise<ReadonlyMap<string, Buffer>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const paths = entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
  return new Map(
    await Promise.all(paths.map(async (path) => [path, await readFile(join(folder, path))] as const)),
  );
}
