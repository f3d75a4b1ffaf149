import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { utimes, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { removeStale, takeLock } from '../../scripts/publish/lock.ts';
import { publish } from '../../scripts/publish/publish.ts';
import { beside, snapshot } from './folders.ts';
import { firstBuild, options, secondBuild, textAt } from './scenario.ts';
import { tempGuide } from './temp-guide.ts';

describe('two builds on one output folder', () => {
  it('the second is told that the first is at work, and touches nothing', async () => {
    const { guide, out } = await tempGuide();
    await publish(options(guide, firstBuild));
    const before = await snapshot(out);
    let second: Awaited<ReturnType<typeof publish>> | undefined;
    await publish({
      ...options(guide, secondBuild),
      checkpoint: async (name) => {
        if (name === 'surveyed') second = await publish(options(guide, { 'index.html': 'second' }));
      },
    });
    expect(second?.diagnostics.map(({ code }) => code)).toEqual(['output-busy']);
    expect(second?.diagnostics[0]?.hint).toContain('.dist.lock');
    expect(before).not.toHaveProperty('es/marlow/chart.html');
    expect(await snapshot(out)).toMatchObject(secondBuild);
    expect(await beside(out)).toEqual([]);
  });

  it('may follow each other', async () => {
    const { guide } = await tempGuide();
    for (const files of [firstBuild, secondBuild, firstBuild]) {
      expect(await publish(options(guide, files))).toEqual({ diagnostics: [] });
    }
  });
});

describe('a lock', () => {
  const running = { pid: process.pid, host: hostname(), mark: '', token: 'held' };
  const noSuchProcess = 2 ** 30;
  const hour = 3_600_000;
  it.each<{ name: string; text: string; age: number; taken: boolean }>([
    { name: 'of a running build', text: JSON.stringify(running), age: 0, taken: false },
    {
      name: 'of a build that has run for very long',
      text: JSON.stringify(running),
      age: 5 * hour,
      taken: false,
    },
    {
      name: 'of a build that was killed',
      text: JSON.stringify({ ...running, pid: noSuchProcess }),
      age: 0,
      taken: true,
    },
    {
      name: 'of a build on another computer',
      text: JSON.stringify({ ...running, pid: noSuchProcess, host: 'elsewhere' }),
      age: 0,
      taken: false,
    },
    {
      name: 'that another computer left hours ago',
      text: JSON.stringify({ ...running, host: 'elsewhere' }),
      age: 2 * hour,
      taken: true,
    },
    { name: 'that is just being written', text: '', age: 0, taken: false },
    { name: 'whose writing was cut short', text: '{"pid":', age: 60_000, taken: true },
    { name: 'that is a file of somebody’s own', text: 'the code of my lock', age: 2 * hour, taken: false },
    { name: 'that holds no process', text: '{"pid":"1"}', age: 60_000, taken: true },
  ])('$name: taken over is $taken', async ({ text, age, taken }) => {
    const { guide } = await tempGuide();
    const path = join(guide, '.dist.lock');
    await writeFile(path, text);
    const date = new Date(Date.now() - age);
    await utimes(path, date, date);
    const lock = await takeLock(path);
    expect(lock !== undefined).toBe(taken);
    if (!lock) expect(await textAt(path)).toBe(text);
    await lock?.release();
    expect(await textAt(path)).toBe(taken ? undefined : text);
    expect(await beside(path)).toEqual([]);
  });

  it.skipIf(process.platform !== 'linux')(
    'of an earlier process that had the number of one that runs now',
    async () => {
      const { guide } = await tempGuide();
      const path = join(guide, '.dist.lock');
      await writeFile(path, JSON.stringify({ ...running, mark: 'an-earlier-boot/1' }));
      expect(await takeLock(path)).toBeDefined();
    },
  );

  it('of a process that ends is free', async () => {
    const { guide } = await tempGuide();
    const path = join(guide, '.dist.lock');
    const child = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)']);
    await writeFile(path, JSON.stringify({ ...running, pid: child.pid }));
    expect(await takeLock(path)).toBeUndefined();
    child.kill('SIGKILL');
    await once(child, 'exit');
    expect(await takeLock(path)).toBeDefined();
  });

  it('goes to one of many that find the same stale lock', { timeout: 60_000 }, async () => {
    for (let round = 0; round < 60; round += 1) {
      const { guide } = await tempGuide();
      const path = join(guide, '.dist.lock');
      await writeFile(path, JSON.stringify({ ...running, pid: noSuchProcess }));
      const locks = await Promise.all(Array.from({ length: 12 }, () => takeLock(path)));
      const held = await Promise.all(locks.map(async (lock) => (await lock?.stillHeld()) ?? false));
      expect(held.filter(Boolean)).toHaveLength(1);
      expect(await beside(path)).toEqual([]);
    }
  });

  it('that another build has just taken over is put back as it was', async () => {
    const { guide } = await tempGuide();
    const path = join(guide, '.dist.lock');
    await writeFile(path, 'the lock of a faster build');
    expect(await removeStale(path, 'the stale lock that both had found')).toBe(false);
    expect(await textAt(path)).toBe('the lock of a faster build');
    expect(await beside(path)).toEqual([]);
  });

  it('that was taken over is not removed by its first holder', async () => {
    const { guide } = await tempGuide();
    const path = join(guide, '.dist.lock');
    const lock = await takeLock(path);
    await writeFile(path, JSON.stringify({ ...running, token: 'another' }));
    expect(await lock!.stillHeld()).toBe(false);
    await lock!.release();
    expect(await textAt(path)).toContain('another');
  });
});
