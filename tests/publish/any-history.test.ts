import { mkdtemp, rm } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { duplicate } from '../../scripts/publish/tree.ts';
import { publish } from '../../scripts/publish/publish.ts';
import { beside, put, snapshot, type Snapshot } from './folders.ts';
import { killAt, options, textAt, withoutManifest } from './scenario.ts';
import { tempGuide } from './temp-guide.ts';

const pages = ['index.html', 'en/a.html', 'en/b.html', 'en/deep/c.html', 'es/a.html'];
const others = ['notes.txt', 'en/notes.txt', 'en/deep/more/notes.txt', 'es/own/notes.txt', 'z/z'];

type Event =
  | { readonly does: 'build'; readonly pages: Snapshot }
  | { readonly does: 'killed-build'; readonly pages: Snapshot; readonly at: number }
  | { readonly does: 'foreign'; readonly path: string; readonly text: string }
  | { readonly does: 'edit'; readonly path: string };

const anyPages: fc.Arbitrary<Snapshot> = fc.dictionary(
  fc.constantFrom(...pages),
  fc.constantFrom('red', 'green', 'blue'),
);
const anyEvent: fc.Arbitrary<Event> = fc.oneof(
  fc.record({ does: fc.constant('build' as const), pages: anyPages }),
  fc.record({ does: fc.constant('killed-build' as const), pages: anyPages, at: fc.nat({ max: 30 }) }),
  fc.record({
    does: fc.constant('foreign' as const),
    path: fc.constantFrom(...others),
    text: fc.constantFrom('one', 'two'),
  }),
  fc.record({ does: fc.constant('edit' as const), path: fc.constantFrom(...pages) }),
);

describe('whatever happens between builds', { timeout: 120_000 }, () => {
  it('a build ends with its own pages, all that is foreign, and every change that was made by hand', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyEvent, { maxLength: 8 }), anyPages, async (events, last) => {
        const guide = await mkdtemp(join(tmpdir(), 'publish-'));
        const out = join(guide, 'dist');
        try {
          await publish(options(guide, { 'index.html': 'first' }));
          const foreign: Snapshot = {};
          const edits = new Set<string>();
          for (const [number, event] of events.entries()) {
            if (event.does === 'build') await publish(options(guide, event.pages));
            else if (event.does === 'killed-build') await killAt(event.at, options(guide, event.pages));
            else if (!existsSync(out)) continue;
            else if (event.does === 'foreign') {
              await put(out, { [event.path]: event.text });
              foreign[event.path] = event.text;
            } else {
              const found = await textAt(join(out, event.path));
              if (found === undefined) continue;
              // Who changes a page again gives up the change before.
              edits.delete(found);
              await put(out, { [event.path]: `edit ${number}` });
              edits.add(`edit ${number}`);
            }
          }
          const { diagnostics } = await publish(options(guide, last));
          expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
          const found = await withoutManifest(out);
          expect(found).toMatchObject({ ...last, ...foreign });
          expect(Object.values(found)).toEqual(expect.arrayContaining([...edits]));
          const surplus = Object.keys(found).filter((path) => !(path in last) && !(path in foreign));
          expect(surplus.filter((path) => !/\.yours-\d+\./.test(path))).toEqual([]);
          expect(await beside(out)).toEqual([]);
        } finally {
          await rm(guide, { recursive: true, force: true });
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe.skipIf(!existsSync('/dev/shm'))('where a file cannot be linked', () => {
  it('it is copied, and nothing is overwritten', async () => {
    const { guide, out } = await tempGuide();
    const elsewhere = await mkdtemp('/dev/shm/publish-');
    try {
      await put(elsewhere, { 'a.txt': 'a' });
      await put(dirname(out), { 'taken.txt': 'taken' });
      await duplicate(join(elsewhere, 'a.txt'), join(guide, 'copy.txt'));
      await expect(duplicate(join(elsewhere, 'a.txt'), join(guide, 'taken.txt'))).rejects.toThrow(/EEXIST/);
      expect(await snapshot(guide)).toEqual({ 'copy.txt': 'a', 'taken.txt': 'taken' });
    } finally {
      await rm(elsewhere, { recursive: true });
    }
  });
});
