import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readManifest } from '../../scripts/publish/manifest.ts';
import { publish, repairOutput } from '../../scripts/publish/publish.ts';
import { beside, snapshot } from './folders.ts';
import {
  afterSecondBuild,
  beforeSecondBuild,
  editedPages,
  foreignThings,
  killAt,
  options,
  pointsOfSecondBuild,
  secondBuild,
  setUp,
  textAt,
  withoutManifest,
} from './scenario.ts';
import { tempGuide } from './temp-guide.ts';

/** The output is the whole old tree or the whole new one, or (only in the middle of a swap) it is aside. */
async function expectWhole(out: string): Promise<'before' | 'after' | 'aside'> {
  const found = await withoutManifest(out).catch(() => undefined);
  if (found === undefined) {
    expect(await withoutManifest(join(out, '..', '.dist.old'))).toEqual(beforeSecondBuild);
    return 'aside';
  }
  const state = 'es/marlow/chart.html' in found ? 'after' : 'before';
  expect(found).toEqual(state === 'after' ? afterSecondBuild : beforeSecondBuild);
  const manifest = readManifest((await textAt(join(out, 'manifest.json'))) ?? '');
  expect(manifest.state).toBe('ours');
  return state;
}

describe('a build that is killed', { timeout: 60_000 }, () => {
  it('passes every point of the swap', async () => {
    const { guide } = await tempGuide();
    const points = await pointsOfSecondBuild(guide);
    for (const name of [
      'locked',
      'surveyed',
      'staging-made',
      'manifest-written',
      'moved-aside',
      'moved-in',
      'old-removed',
    ]) {
      expect(points).toContain(`${name} `);
    }
    expect(points).toContain('file-written es/marlow/chart.html');
    expect(points).toContain('foreign-carried en/marlow/photos/bed.jpg');
    expect(points).toContain('old-file-removed en/tarn/history.txt');
  });

  it('leaves a whole tree at every point, and the next build ends as if nothing had been', async () => {
    const { guide } = await tempGuide();
    const points = await pointsOfSecondBuild(guide);
    const states: string[] = [];
    for (const [number, point] of points.entries()) {
      const { guide: own, out } = await tempGuide();
      await setUp(own);
      expect(await killAt(number, options(own, secondBuild)), point).toBe(true);
      states.push(await expectWhole(out));
      const { diagnostics } = await publish(options(own, secondBuild));
      expect(
        diagnostics.filter(({ severity }) => severity === 'error'),
        point,
      ).toEqual([]);
      expect(await withoutManifest(out), point).toEqual(afterSecondBuild);
      expect(await beside(out), point).toEqual([]);
    }
    expect(new Set(states)).toEqual(new Set(['before', 'aside', 'after']));
    expect(states.filter((state) => state === 'aside')).toHaveLength(1);
  });

  it('is repaired without a build: the last whole tree is in its place, and nothing is left beside it', async () => {
    const { guide } = await tempGuide();
    const points = await pointsOfSecondBuild(guide);
    for (const [number, point] of points.entries()) {
      const { guide: own, out } = await tempGuide();
      await setUp(own);
      await killAt(number, options(own, secondBuild));
      const { diagnostics } = await repairOutput({ out, guide: own });
      expect(diagnostics, point).toEqual([]);
      expect(await expectWhole(out), point).not.toBe('aside');
      // With nothing to repair, the lock of the dead build stays until the next build takes it over.
      expect(
        (await beside(out)).filter((name) => name !== '.dist.lock'),
        point,
      ).toEqual([]);
    }
  });

  it('may be killed again while it repairs, and again', async () => {
    const { guide } = await tempGuide();
    const { length } = await pointsOfSecondBuild(guide);
    // Steps that share no factor with each other visit the pairs of points evenly.
    for (let pair = 0; pair < 40; pair += 1) {
      const { guide: own, out } = await tempGuide();
      await setUp(own);
      await killAt((pair * 7) % length, options(own, secondBuild));
      await killAt((pair * 3) % 11, options(own, secondBuild));
      await killAt(pair % 5, options(own, secondBuild));
      for (const [path, content] of Object.entries(foreignThings)) {
        if (content === '(folder)' || content.startsWith('-> ')) continue;
        const places = [join(out, path), join(own, '.dist.old', path)];
        expect(await Promise.all(places.map(textAt)), `${pair} ${path}`).toContain(content);
      }
      await publish(options(own, secondBuild));
      expect(await withoutManifest(out), `pair ${pair}`).toEqual(afterSecondBuild);
      expect(await beside(out)).toEqual([]);
    }
  });
});

describe('a build that fails', { timeout: 60_000 }, () => {
  it('at any point leaves a whole tree and nothing beside it', async () => {
    const { guide } = await tempGuide();
    const points = await pointsOfSecondBuild(guide);
    for (const [number, point] of points.entries()) {
      const { guide: own, out } = await tempGuide();
      await setUp(own);
      let count = 0;
      const failing = publish({
        ...options(own, secondBuild),
        writers: 8,
        checkpoint: () => {
          if (count++ === number) throw new Error('stopped');
        },
      });
      await expect(failing, point).rejects.toThrow('stopped');
      expect(await expectWhole(out), point).not.toBe('aside');
      expect(await beside(out), point).toEqual([]);
    }
  });

  it('before there ever was an output folder leaves none', async () => {
    const { guide, out } = await tempGuide();
    const stop = (name: string): void => {
      if (name === 'manifest-written') throw new Error('stopped');
    };
    await expect(publish({ ...options(guide, secondBuild), checkpoint: stop })).rejects.toThrow('stopped');
    expect(await snapshot(join(out, '..'))).toEqual({});
  });
});

describe('a process that is killed for real', () => {
  const script = fileURLToPath(new URL('killed-build.ts', import.meta.url));
  it.each([
    ['while it writes', 'file-written'],
    ['while it carries over', 'foreign-carried'],
    ['with the old tree aside', 'moved-aside'],
    ['with the new tree in', 'moved-in'],
    ['while the old tree is removed', 'old-file-removed'],
  ])('%s loses nothing, and its lock is taken over', { timeout: 30_000 }, async (_, point) => {
    const { guide, out } = await tempGuide();
    await setUp(guide);
    const { signal, stderr } = spawnSync(process.execPath, ['--import', 'tsx', script, guide, point], {
      encoding: 'utf8',
    });
    expect(signal, stderr).toBe('SIGKILL');
    expect(await beside(out)).toContain('.dist.lock');
    await expectWhole(out);
    const { diagnostics } = await publish(options(guide, secondBuild));
    expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(await withoutManifest(out)).toEqual(afterSecondBuild);
    expect(await beside(out)).toEqual([]);
    expect(Object.values(await snapshot(out))).toEqual(expect.arrayContaining(Object.values(editedPages)));
  });
});
