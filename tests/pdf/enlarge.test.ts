import { describe, expect, it } from 'vitest';
import { inline, paragraph, steps, wide } from '../../scripts/document/build.ts';
import type { Block, Step } from '../../scripts/document/document.ts';
import { pointsPerMm, type Scene } from '../../scripts/drawings/scene.ts';
import { enlargedDrawings } from '../../scripts/pdf/enlarge.ts';
import { columns, group, piece, type Group } from '../../scripts/pdf/items.ts';
import { layOut } from '../../scripts/pdf/lay-out.ts';
import { paginate } from '../../scripts/pdf/paginate.ts';
import { makeDocument } from '../document/showcase.ts';
import { design, fonts } from './sheets.ts';

const scene = (id: string, widthMm = 60, heightMm = 40): Scene => ({
  id,
  widthMm,
  heightMm,
  alternative: 'A board.',
  items: [
    {
      kind: 'path',
      commands: [
        ['M', 0, 0],
        ['L', widthMm, heightMm],
      ],
      stroke: 'seen',
    },
  ],
});

const step = (number: number, drawing?: Scene): Step => ({
  number,
  title: inline(`Act ${number}`),
  cautions: [],
  body: [paragraph('Lay the board down.')],
  ...(drawing ? { drawing } : {}),
});

/** A step 100 pt high that is 40 pt of words, a gap of 10 pt and a drawing of 50 pt for each time its natural size. */
function group100(of: Step, most = 2): Group {
  const items = [columns([[piece(40, [])], [piece(100, [])]])];
  return group([group(items, { together: true })], {
    together: true,
    enlarging: { step: of, wordsHeight: () => 40, drawingHeight: 50, gap: 10, most },
  });
}

const heights = { first: 400, later: 400 };
const sizesOf = (items: readonly Group[]): ReadonlyMap<Step, number> =>
  new Map(
    enlargedDrawings(items, paginate(items, heights).placements, heights).flatMap((sizes) => [...sizes]),
  );

describe('drawings in the room that a page leaves', () => {
  const [a, b, c, d] = [step(1), step(2), step(3), step(4)] as const;
  // A page of 400 with n steps of 100 leaves 400 - 100 n; a step drawn s times under its words is 50 + 50 s high.
  const cases: readonly {
    name: string;
    items: readonly Group[];
    expected: readonly (number | undefined)[];
  }[] = [
    { name: 'one step alone: as large as it may be', items: [group100(a)], expected: [2] },
    { name: 'two steps with room for both', items: [group100(a), group100(b)], expected: [2, 2] },
    {
      name: 'three steps share what is left',
      items: [a, b, c].map((s) => group100(s)),
      expected: [1.66, 1.66, 1.66],
    },
    {
      name: 'a page that is full',
      items: [a, b, c, d].map((s) => group100(s)),
      expected: [undefined, undefined, undefined, undefined],
    },
    {
      name: 'a drawing that has no room to grow beside one that has',
      items: [group100(a, 1), group100(b)],
      expected: [undefined, 2],
    },
    {
      name: 'nothing that can be enlarged',
      items: [group([piece(100, [])], { together: true })],
      expected: [undefined],
    },
  ];

  it.each(cases)('$name', ({ items, expected }) => {
    const sizes = sizesOf(items);
    const all = [a, b, c, d].slice(0, expected.length).map((each) => sizes.get(each));
    all.forEach((size, index) => {
      if (expected[index] === undefined) expect(size).toBeUndefined();
      else expect(size).toBeCloseTo(expected[index], 1);
    });
  });

  it('leaves a step alone that costs more than the page has, and enlarges the other', () => {
    const costly = group([columns([[piece(60, [])], [piece(150, [])]])], {
      together: true,
      enlarging: { step: b, wordsHeight: () => 60, drawingHeight: 300, gap: 10, most: 2 },
    });
    const sizes = sizesOf([group100(a), costly]);
    expect(sizes.get(a)).toBe(2);
    expect(sizes.has(b)).toBe(false);
  });
});

describe('a sheet with steps', () => {
  const filler = (count: number): Block[] =>
    Array.from({ length: count }, (_, index) => paragraph(`Line ${index} of what stands above the steps.`));
  const heightsOfDrawings = (blocks: readonly Block[]): { pages: number; heights: number[] } => {
    const { pagination } = layOut(makeDocument(blocks), { design, fonts });
    const bounds = pagination.placements.flatMap(({ piece: { marks } }) =>
      marks.flatMap((mark) => (mark.kind === 'bounds' ? [mark.area.height / pointsPerMm] : [])),
    );
    return { pages: pagination.pages, heights: bounds };
  };

  it('draws the act large where the page has room', () => {
    const { pages, heights: drawn } = heightsOfDrawings([wide([steps([step(1, scene('one'))])])]);
    expect(pages).toBe(1);
    expect(drawn[0]).toBeCloseTo(76, 0);
  });

  it.each([
    { lines: 0, pages: 1, small: 4 },
    { lines: 4, pages: 2, small: 3 },
    { lines: 17, pages: 2, small: 1 },
  ])(
    'of $lines paragraphs and four steps has $pages pages, $small drawings small',
    ({ lines, pages, small }) => {
      const all = [1, 2, 3, 4].map((number) => step(number, scene(`act-${number}`)));
      const laid = heightsOfDrawings([...filler(lines), wide([steps(all)])]);
      expect(laid.pages).toBe(pages);
      expect(laid.heights).toHaveLength(4);
      expect(laid.heights.filter((height) => height < 40.1)).toHaveLength(small);
    },
  );
});
