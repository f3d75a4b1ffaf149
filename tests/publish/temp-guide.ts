import { mkdtemp, realpath, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A guide folder of its own, removed when the test is done. The output goes to `dist` in it. */
export async function tempGuide(): Promise<{ guide: string; out: string }> {
  const guide = await realpath(await mkdtemp(join(tmpdir(), 'publish-')));
  onTestFinished(() => rm(guide, { recursive: true, force: true }));
  return { guide, out: join(guide, 'dist') };
}
