import { mkdir, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { publish, repairOutput } from '../../scripts/publish/publish.ts';
import { beside, put, snapshot, type Snapshot } from './folders.ts';
import { firstBuild, options, secondBuild } from './scenario.ts';
import { tempGuide } from './temp-guide.ts';

/** What a person may have put at the places beside the output folder where a build keeps its unfinished work. */
const cases: readonly { name: string; things: Snapshot; told: string }[] = [
  { name: 'a folder where the new tree is made', things: { '.dist.new/mine': 'mine' }, told: '.dist.new' },
  {
    name: 'a folder with a folder named like the new tree',
    things: { '.dist.new/tree/mine': 'mine' },
    told: '.dist.new',
  },
  {
    name: 'a folder with a file named like the mark of a build',
    things: { '.dist.new/made-by-groundsheet.txt': 'a note', '.dist.new/tree/mine': 'mine' },
    told: '.dist.new',
  },
  { name: 'a file where the new tree is made', things: { '.dist.new': 'mine' }, told: '.dist.new' },
  { name: 'a link where the new tree is made', things: { '.dist.new': '-> precious' }, told: '.dist.new' },
  { name: 'a folder where the old tree is put', things: { '.dist.old/mine': 'mine' }, told: '.dist.old' },
  { name: 'a file where the old tree is put', things: { '.dist.old': 'mine' }, told: '.dist.old' },
  { name: 'a link where the old tree is put', things: { '.dist.old': '-> precious' }, told: '.dist.old' },
];

describe('something foreign beside the output folder', () => {
  describe.each(cases)('$name', ({ things, told }) => {
    it.each(['before the first build', 'after it'])('is refused and left as it is, %s', async (when) => {
      const { guide, out } = await tempGuide();
      await put(guide, { 'precious/letter': 'dear' });
      if (when === 'after it') await publish(options(guide, firstBuild));
      await put(guide, things);
      const all = await snapshot(guide);
      for (const run of [() => repairOutput({ out, guide }), () => publish(options(guide, secondBuild))]) {
        const { diagnostics } = await run();
        expect(diagnostics.map(({ code, severity }) => [code, severity])).toEqual([
          ['output-not-ours', 'error'],
        ]);
        expect(diagnostics[0]!.message).toContain(told);
        expect(diagnostics[0]!.hint).toContain(told);
        expect(await snapshot(guide)).toEqual(all);
      }
    });
  });

  it('beside the tree of a killed build is left as it is', async () => {
    const { guide } = await tempGuide();
    await publish(options(guide, firstBuild));
    await put(guide, { '.dist.new/tree/index.html': 'new', '.dist.new/notes.txt': 'mine' });
    const { diagnostics } = await publish(options(guide, secondBuild));
    expect(diagnostics.map(({ code }) => code)).toEqual(['output-not-ours']);
    expect(await snapshot(join(guide, '.dist.new'))).toMatchObject({ 'notes.txt': 'mine' });
  });

  it('is no refusal when there is nothing in it, as after a build that was killed as it began', async () => {
    const { guide, out } = await tempGuide();
    await mkdir(join(guide, '.dist.new'));
    expect(await publish(options(guide, firstBuild))).toEqual({ diagnostics: [] });
    expect(await snapshot(out)).toMatchObject(firstBuild);
    expect(await beside(out)).toEqual([]);
  });
});

describe('an output folder that cannot be reached', () => {
  it.each([
    ['has a name that is too long', (guide: string) => join(guide, 'd'.repeat(300)), /too long/],
    ['is a link that leads to itself', (guide: string) => join(guide, 'loop'), /link that leads to itself/],
    [
      'lies behind a link that leads to itself',
      (guide: string) => join(guide, 'loop/dist'),
      /leads to itself/,
    ],
    ['has a character that no name has', (guide: string) => join(guide, 'a\0b'), /cannot be/],
  ])('is told: one that %s', async (_, place, message) => {
    const { guide } = await tempGuide();
    await symlink('loop', join(guide, 'loop'));
    for (const run of [repairOutput, publish]) {
      const { diagnostics } = await run({ ...options(guide, firstBuild), out: place(guide) });
      expect(diagnostics.map(({ severity }) => severity)).toEqual(['error']);
      expect(diagnostics[0]!.message).toMatch(message);
    }
  });
});
