import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columns, group, piece, withBefore, type Item, type Piece } from '../../scripts/pdf/items.ts';
import { paginate, type Pagination } from '../../scripts/pdf/paginate.ts';

const heights = { first: 100, later: 90 };
const line = (height: number, keepWithNext = false): Piece => piece(height, [], { keepWithNext });
const spaced = (height: number, before: number): Item => ({ ...line(height), before });

/** Page and top of every piece that is not a repeated head, as `page:top`. */
const places = ({ placements }: Pagination): readonly string[] =>
  placements.filter(({ repeated }) => !repeated).map(({ page, top }) => `${page}:${top}`);

describe('paginate', () => {
  const cases: readonly {
    name: string;
    items: readonly Item[];
    expected: readonly string[];
  }[] = [
    {
      name: 'pieces that fit follow each other',
      items: [line(40), line(40)],
      expected: ['0:0', '0:40'],
    },
    {
      name: 'a piece that ends exactly at the foot stays',
      items: [line(60), line(40)],
      expected: ['0:0', '0:60'],
    },
    {
      name: 'a piece that does not fit turns the page',
      items: [line(60), line(41)],
      expected: ['0:0', '1:0'],
    },
    {
      name: 'space above is dropped at the top of a page',
      items: [line(90), spaced(20, 15)],
      expected: ['0:0', '1:0'],
    },
    {
      name: 'space above counts elsewhere',
      items: [line(20), spaced(20, 15)],
      expected: ['0:0', '0:35'],
    },
    {
      name: 'a heading goes along with the text that does not fit under it',
      items: [line(70), line(15, true), line(20)],
      expected: ['0:0', '1:0', '1:15'],
    },
    {
      name: 'a chain longer than a page starts where it stands',
      items: [line(10), line(50, true), line(50, true), line(50)],
      expected: ['0:0', '0:10', '1:0', '2:0'],
    },
    {
      name: 'a group kept together moves as a whole',
      items: [line(50), group([line(30), line(30)], { together: true })],
      expected: ['0:0', '1:0', '1:30'],
    },
    {
      name: 'a group that fits on no page together with its heading is broken under the heading',
      items: [line(10), line(20, true), group([line(40), line(40)], { together: true })],
      expected: ['0:0', '0:10', '0:30', '1:0'],
    },
    {
      name: 'heading and group turn the page when not even the start of the group fits',
      items: [line(50), line(20, true), group([line(40), line(40)], { together: true })],
      expected: ['0:0', '1:0', '1:20', '2:0'],
    },
    {
      name: 'a group that is no group may be broken',
      items: [line(50), group([line(30), line(30)])],
      expected: ['0:0', '0:50', '1:0'],
    },
    {
      name: 'a group taller than a page is broken where it must',
      items: [line(50), group([line(40), line(40), line(40)], { together: true })],
      expected: ['0:0', '0:50', '1:0', '1:40'],
    },
    {
      name: 'what follows columns stands below the longer one',
      items: [columns([[line(50)], [line(20), line(10)]]), line(10)],
      expected: ['0:0', '0:0', '0:20', '0:50'],
    },
    {
      name: 'an aside that does not fit takes its main text along',
      items: [line(60), columns([[group([line(30), line(30)], { together: true })], [line(10), line(10)]])],
      expected: ['0:0', '1:0', '1:30', '1:0', '1:10'],
    },
    {
      name: 'main text beside an aside runs over to the next page',
      items: [line(60), columns([[line(30)], [line(30), line(30)]])],
      expected: ['0:0', '0:60', '0:60', '1:0'],
    },
    {
      name: 'what follows columns stands below the one that ends on the later page',
      items: [line(60), columns([[line(35)], [line(30), line(30)]]), line(10)],
      expected: ['0:0', '0:60', '0:60', '1:0', '1:30'],
    },
    {
      name: 'a page break turns the page',
      items: [line(10), { kind: 'break' }, line(10)],
      expected: ['0:0', '1:0'],
    },
    {
      name: 'a page break at the end makes no empty page',
      items: [line(10), { kind: 'break' }],
      expected: ['0:0'],
    },
    {
      name: 'a page break at the start makes no empty page',
      items: [{ kind: 'break' }, line(10)],
      expected: ['0:0'],
    },
  ];
  it.each(cases)('$name', ({ items, expected }) => {
    expect(places(paginate(items, heights))).toEqual(expected);
  });

  it('reports a piece taller than a page and gives it a page of its own', () => {
    const tall = line(120);
    const result = paginate([line(10), tall, line(10)], heights);
    expect(result.overflowing).toEqual([tall]);
    expect(places(result)).toEqual(['0:0', '1:0', '2:0']);
  });

  it('repeats the head of a table on every later page, but not above its notes', () => {
    const head = line(10, true);
    const rows = [head, ...Array.from({ length: 6 }, () => line(40))];
    const table = group([...rows, { ...line(30), withoutHead: true }], { repeatedHead: head });
    const result = paginate([table], heights);
    const repeats = result.placements.filter(({ repeated }) => repeated).map(({ page, top }) => [page, top]);
    expect(repeats).toEqual([
      [1, 0],
      [2, 0],
    ]);
    expect(places(result).at(-1)).toBe('3:0');
  });
});

describe('paginate, whatever the items', () => {
  const arbitraryPiece = fc
    .record({
      height: fc.integer({ min: 1, max: 60 }),
      before: fc.integer({ min: 0, max: 20 }),
      keep: fc.boolean(),
    })
    .map(({ height, before, keep }) => piece(height, [], { before, keepWithNext: keep }));
  const arbitraryRows = fc.record({
    rows: fc.array(arbitraryPiece, { minLength: 1, maxLength: 12 }),
    head: fc.integer({ min: 1, max: 20 }),
  });
  const arbitraryItem: fc.Arbitrary<Item> = fc.oneof(
    { weight: 5, arbitrary: arbitraryPiece },
    fc
      .tuple(fc.array(arbitraryPiece, { minLength: 1, maxLength: 6 }), fc.boolean())
      .map(([items, together]): Item => group(withBefore(items, 0), { together })),
    arbitraryRows.map(({ rows, head }): Item => {
      const headPiece = line(head, true);
      return group([headPiece, ...rows], { repeatedHead: headPiece });
    }),
    fc
      .tuple(fc.array(arbitraryPiece, { maxLength: 4 }), fc.array(arbitraryPiece, { maxLength: 8 }))
      .map(([aside, main]): Item => columns([[group(aside, { together: true })], main])),
    fc.constant<Item>({ kind: 'break' }),
  );
  const arbitraryItems = fc.array(arbitraryItem, { minLength: 1, maxLength: 14 });

  const allPieces = (items: readonly Item[]): Piece[] =>
    items.flatMap((item) => {
      if (item.kind === 'break') return [];
      if (item.kind === 'piece') return [item];
      return item.kind === 'group' ? allPieces(item.items) : item.columns.flatMap(allPieces);
    });

  it('loses nothing, adds nothing and keeps the order', () => {
    fc.assert(
      fc.property(arbitraryItems, (items) => {
        const placed = paginate(items, heights).placements.filter(({ repeated }) => !repeated);
        expect(placed.map(({ piece: each }) => each)).toEqual(allPieces(items));
      }),
    );
  });

  it('puts nothing past the foot that fits on a page under its repeated heads', () => {
    fc.assert(
      fc.property(arbitraryItems, (items) => {
        const { placements, overflowing } = paginate(items, heights);
        for (const { page, top, piece: each } of placements) {
          if (!overflowing.includes(each))
            expect(top + each.height).toBeLessThanOrEqual(page === 0 ? 100 : 90);
        }
        // A piece of at most 60 under a head of at most 20 always fits.
        expect(overflowing).toEqual([]);
      }),
    );
  });

  it('lays nothing over anything else in one column', () => {
    const single = fc.array(
      arbitraryItem.filter((item) => item.kind !== 'columns'),
      { minLength: 1, maxLength: 14 },
    );
    fc.assert(
      fc.property(single, (items) => {
        const { placements } = paginate(items, heights);
        placements.slice(1).forEach(({ page, top }, index) => {
          const above = placements[index]!;
          if (above.page === page) expect(top).toBeGreaterThanOrEqual(above.top + above.piece.height);
          else expect(page).toBe(above.page + 1);
        });
      }),
    );
  });

  it('ends no page with a heading when heading and text fit on a page', () => {
    const headings = fc.array(
      fc.record({
        heading: fc.integer({ min: 5, max: 30 }),
        text: fc.array(fc.integer({ min: 5, max: 50 }), { minLength: 1, maxLength: 5 }),
        together: fc.boolean(),
      }),
      { minLength: 1, maxLength: 10 },
    );
    fc.assert(
      fc.property(headings, (sections) => {
        const items = sections.flatMap(({ heading, text, together }) => [
          line(heading, true),
          group(
            text.map((height) => line(height)),
            { together },
          ),
        ]);
        const { placements } = paginate(items, heights);
        placements.forEach(({ page, piece: each }, index) => {
          if (each.keepWithNext) expect(placements[index + 1]?.page).toBe(page);
        });
      }),
    );
  });

  it('puts the head of a table at the top of every later page that has its rows', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 30 }),
        (rowHeights) => {
          const head = line(15, true);
          const rows = rowHeights.map((height) => line(height));
          const { placements, pages } = paginate([group([head, ...rows], { repeatedHead: head })], heights);
          for (let page = 1; page < pages; page += 1) {
            const first = placements.find((placement) => placement.page === page);
            expect([first?.piece, first?.repeated, first?.top]).toEqual([head, true, 0]);
          }
        },
      ),
    );
  });
});
