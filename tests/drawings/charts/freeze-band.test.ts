import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freezeBand, type FreezeBandOptions } from '../../../scripts/drawings/charts/freeze-band.ts';
import { textBox } from '../../../scripts/drawings/charts/text-width.ts';
import { anyFreezeDates, freezeCases, monthLabels } from './freeze-cases.ts';
import { boxOf, itemsOutside, pathsOf, textsOf, touchingWords, wordsOf } from './scene-reading.ts';

const options: FreezeBandOptions = {
  id: 'freeze',
  widthMm: 115,
  from: 1,
  to: 365,
  monthLabels,
  lastHeading: 'Last freeze in spring',
  firstHeading: 'First freeze in fall',
  last: [],
  first: [],
  alternative: 'Invented freeze dates.',
};
const [, farApart] = freezeCases[0]!;

describe('freeze band', () => {
  it.each([56, 100, 115, 175])('writes each date at its own edge, %d mm wide', (widthMm) => {
    const scene = freezeBand({ ...options, ...farApart, widthMm });
    const risers = pathsOf(scene, { stroke: 'cut', hue: 'clay' }).flatMap(({ commands }) =>
      commands.flatMap((command) => (command[0] === 'M' ? [{ x: command[1], y: command[2] }] : [])),
    );
    expect(risers).toHaveLength(6);
    for (const item of textsOf(scene).filter(({ text }) => text.includes('·'))) {
      const { left, right, top, bottom } = textBox(item);
      const beside = risers.filter(
        ({ x, y }) => y < bottom && y + 4.9 > top && (Math.abs(x - left) < 2 || Math.abs(x - right) < 2),
      );
      expect(beside).toHaveLength(1);
    }
  });

  it('is deeper the likelier a freeze is: each row is shaded inside the one above', () => {
    const scene = freezeBand({ ...options, ...farApart });
    const spring = pathsOf(scene, { fill: 'shade' })
      .map(boxOf)
      .filter(({ left, bottom, top }) => left < 1 && bottom - top > 3);
    expect(spring).toHaveLength(3);
    expect(spring[0]!.right).toBeGreaterThan(spring[1]!.right);
    expect(spring[1]!.right).toBeGreaterThan(spring[2]!.right);
  });

  it('heads the season that comes first at the left', () => {
    const place = (scene: ReturnType<typeof freezeBand>, words: string): number =>
      textBox(textsOf(scene).find(({ text }) => text === words)!).left;
    const north = freezeBand({ ...options, ...farApart });
    expect(place(north, options.lastHeading)).toBeLessThan(place(north, options.firstHeading));
    const winter = freezeBand({ ...options, ...farApart, from: 182, to: 546 });
    expect(place(winter, options.firstHeading)).toBeLessThan(place(winter, options.lastHeading));
  });

  it('shows two seasons one over the other in a narrow column', () => {
    const scene = freezeBand({ ...options, ...farApart, widthMm: 56 });
    const words = wordsOf(scene);
    expect(words.indexOf(options.lastHeading)).toBeLessThan(words.indexOf(options.firstHeading));
    expect(scene.heightMm).toBeGreaterThan(freezeBand({ ...options, ...farApart }).heightMm);
  });

  it.each(freezeCases)('no words touch and nothing sticks out: %s', (_, dates) => {
    for (const widthMm of [56, 115, 175]) {
      const scene = freezeBand({ ...options, ...dates, widthMm });
      expect(touchingWords(scene)).toEqual([]);
      expect(itemsOutside(scene)).toEqual([]);
      for (const { label } of [...dates.last, ...dates.first]) expect(wordsOf(scene)).toContain(label);
    }
  });

  it('nor does it with any dates', () => {
    fc.assert(
      fc.property(
        anyFreezeDates,
        fc.constantFrom(56, 70, 115, 175),
        fc.constantFrom(1, 182),
        (dates, widthMm, from) => {
          const scene = freezeBand({ ...options, ...dates, widthMm, from, to: from + 364 });
          expect(touchingWords(scene)).toEqual([]);
          expect(itemsOutside(scene)).toEqual([]);
          expect(scene.heightMm).toBeGreaterThan(0);
        },
      ),
    );
  });
});
