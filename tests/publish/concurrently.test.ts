import { describe, expect, it } from 'vitest';
import { concurrently } from '../../scripts/publish/concurrently.ts';

const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

describe('work at several things at once', () => {
  it.each([
    ['one at a time', 1, 1],
    ['three at once', 3, 3],
    ['more hands than things', 50, 10],
    ['no hand at all is one', 0, 1],
  ])('%s', async (_, limit, most) => {
    let under = 0;
    let highest = 0;
    const done: number[] = [];
    await concurrently([0, 1, 2, 3, 4, 5, 6, 7, 8, 9], limit, async (item) => {
      highest = Math.max(highest, ++under);
      await turn();
      under -= 1;
      done.push(item);
    });
    expect(highest).toBe(most);
    expect([...done].sort((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
  });

  it('begins nothing after a failure, and waits for what is under way', async () => {
    const begun: string[] = [];
    const ended: string[] = [];
    const work = concurrently(['slow', 'fails', 'late', 'later'], 2, async (item) => {
      begun.push(item);
      await turn();
      if (item === 'fails') throw new Error('no');
      await turn();
      await turn();
      ended.push(item);
    });
    await expect(work).rejects.toThrow('no');
    expect(begun).toEqual(['slow', 'fails']);
    expect(ended).toEqual(['slow']);
  });
});
