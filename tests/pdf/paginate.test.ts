import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  columns,
  group,
  piece,
  tightened,
  withBefore,
  type ColumnText,
  type Item,
  type Piece,
} from '../../scripts/pdf/items.ts';
import { evenHeight, overrun, paginate, type Pagination } from '../../scripts/pdf/paginate.ts';

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

/** Text in two columns, the second 200 to the right of the first. */
const twoColumns = (items: readonly Item[], more: Partial<ColumnText> = {}): ColumnText => ({
  kind: 'column-text',
  before: 0,
  keepWithNext: false,
  items,
  shifts: [0, 200],
  height: evenHeight(items, 2),
  leastStart: 0,
  ...more,
});

/** Page, column and top of every piece, as `page/left:top`. */
const columnPlaces = ({ placements }: Pagination): readonly string[] =>
  placements.filter(({ repeated }) => !repeated).map(({ page, left, top }) => `${page}/${left}:${top}`);

describe('text in columns', () => {
  const cases: readonly { name: string; items: readonly Item[]; expected: readonly string[] }[] = [
    {
      name: 'has columns of one length where it ends',
      items: [twoColumns([line(10), line(10), line(10), line(10)])],
      expected: ['0/0:0', '0/0:10', '0/200:0', '0/200:10'],
    },
    {
      name: 'has its longer column first',
      items: [twoColumns([line(10), line(10), line(10)])],
      expected: ['0/0:0', '0/0:10', '0/200:0'],
    },
    {
      name: 'is followed by what stands below its longer column',
      items: [twoColumns([line(10), line(10), line(10)]), line(10)],
      expected: ['0/0:0', '0/0:10', '0/200:0', '0/0:20'],
    },
    {
      name: 'fills both columns of a page before it turns it',
      items: [line(60), twoColumns(Array.from({ length: 5 }, () => line(20)))],
      expected: ['0/0:0', '0/0:60', '0/0:80', '0/200:60', '0/200:80', '1/0:0'],
    },
    {
      name: 'drops the space above the first piece of a column',
      items: [twoColumns([line(10), spaced(10, 4), spaced(10, 4), spaced(10, 4)])],
      expected: ['0/0:0', '0/0:14', '0/200:0', '0/200:14'],
    },
    {
      name: 'takes a piece that its short columns have no room for to the next page',
      items: [line(60), twoColumns([line(30), line(50)])],
      expected: ['0/0:0', '0/0:60', '1/0:0'],
    },
    {
      name: 'does not begin in columns too short to read down',
      items: [
        line(60),
        twoColumns(
          Array.from({ length: 16 }, () => line(10)),
          { leastStart: 50 },
        ),
      ],
      expected: [
        '0/0:0',
        ...[0, 200].flatMap((left) => [0, 1, 2, 3, 4, 5, 6, 7].map((at) => `1/${left}:${at * 10}`)),
      ],
    },
    {
      name: 'takes the heading above it along',
      items: [line(75), line(15, true), twoColumns([line(20), line(20)])],
      expected: ['0/0:0', '1/0:0', '1/0:15', '1/200:15'],
    },
  ];
  it.each(cases)('$name', ({ items, expected }) => {
    const result = paginate(items, heights);
    expect(columnPlaces(result)).toEqual(expected);
    expect(result.overflowing).toEqual([]);
  });

  it('has its box behind it on every page, as high as its columns', () => {
    const backing = (): [] => [];
    const head = line(10);
    const box = group(
      [
        line(20, true),
        twoColumns(
          Array.from({ length: 12 }, () => line(20)),
          { backing },
        ),
      ],
      {
        repeatedHead: head,
      },
    );
    const { placements } = paginate([box], heights);
    const repeats = placements
      .filter(({ repeated }) => repeated)
      .map(({ page, top, piece: { height } }) => [page, top, height]);
    expect(repeats).toEqual([
      [0, 20, 80],
      [1, 0, 10],
      [1, 10, 40],
    ]);
  });
});

describe('a drawing or table that has to wait for the next page', () => {
  const floating = (height: number): Item => group([line(height)], { together: true, floats: true });
  const text = (height: number, keepWithNext = false): Piece => ({
    ...line(height, keepWithNext),
    rises: true,
  });
  const cases: readonly { name: string; items: readonly Item[]; expected: readonly string[] }[] = [
    {
      name: 'lets the text after it fill the page',
      items: [line(50), floating(60), text(20), text(20), text(20)],
      expected: ['0:0', '0:50', '0:70', '1:0', '1:60'],
    },
    {
      name: 'lets a smaller drawing after it fill the page',
      items: [line(50), floating(60), floating(40), text(20)],
      expected: ['0:0', '0:50', '1:0', '1:60'],
    },
    {
      name: 'lets text and a smaller drawing after it fill the page, in their order',
      items: [line(40), floating(70), text(20), floating(30), floating(30)],
      expected: ['0:0', '0:40', '0:60', '1:0', '2:0'],
    },
    {
      name: 'lets no heading before it',
      items: [line(50), floating(60), line(10, true), text(20)],
      expected: ['0:0', '1:0', '1:60', '1:70'],
    },
    {
      name: 'lets lines before it only with those they are kept with',
      items: [line(60), floating(50), text(15), text(20, true), text(20)],
      expected: ['0:0', '0:60', '1:0', '1:50', '1:70'],
    },
    {
      name: 'stays with the heading above it',
      items: [line(50), line(10, true), floating(60), text(20)],
      expected: ['0:0', '1:0', '1:10', '1:70'],
    },
    {
      name: 'stays in its place where it fits',
      items: [line(20), floating(60), text(20)],
      expected: ['0:0', '0:20', '0:80'],
    },
  ];
  it.each(cases)('$name', ({ items, expected }) => {
    expect(places(paginate(items, heights))).toEqual(expected);
  });
});

describe('a group that belongs together and yields', () => {
  const table = (rows: number, yields: boolean): Item =>
    group(
      Array.from({ length: rows }, () => line(10)),
      { together: true, yields },
    );
  const cases: readonly { name: string; items: readonly Item[]; pages: readonly number[] }[] = [
    {
      name: 'is broken where more than a third of a page would stay empty',
      items: [line(60), table(6, true)],
      pages: [0, 0, 0, 0, 0, 1, 1],
    },
    {
      name: 'goes to the next page where less would',
      items: [line(75), table(6, true)],
      pages: [0, 1, 1, 1, 1, 1, 1],
    },
    {
      name: 'takes its heading along where less would',
      items: [line(75), line(5, true), table(6, true)],
      pages: [0, 1, 1, 1, 1, 1, 1, 1],
    },
    {
      name: 'is whole if it does not yield',
      items: [line(60), table(6, false)],
      pages: [0, 1, 1, 1, 1, 1, 1],
    },
  ];
  it.each(cases)('$name', ({ items, pages }) => {
    expect(paginate(items, heights).placements.map(({ page }) => page)).toEqual(pages);
  });
});

describe('too much for one page', () => {
  const cases: readonly { name: string; items: readonly Item[]; expected: number }[] = [
    { name: 'is nothing where one page is full', items: [line(60), line(40)], expected: 0 },
    { name: 'is what stands below its foot', items: [line(60), line(70)], expected: 30 },
    { name: 'counts the space that a turned page drops', items: [line(60), spaced(50, 15)], expected: 25 },
    {
      name: 'counts what a page break puts on another page',
      items: [line(60), { kind: 'break' }, line(50)],
      expected: 10,
    },
  ];
  it.each(cases)('$name', ({ items, expected }) => {
    expect(overrun(items, heights)).toBeCloseTo(expected, 6);
  });
});

describe('tightened items', () => {
  it('have less space between them, at every depth, and keep their own height', () => {
    const inner = [line(10), spaced(10, 20)];
    const given = [line(10), { ...group(inner), before: 10 }, columns([inner]), twoColumns(inner)];
    const height = (items: readonly Item[]): number =>
      Math.max(
        ...paginate(items, { first: 999, later: 999 }).placements.map(
          ({ top, piece: each }) => top + each.height,
        ),
      );
    expect(height(given)).toBeCloseTo(10 + 10 + 40 + 40 + 10, 0);
    expect(height(tightened(given, 0.5))).toBeCloseTo(10 + 5 + 30 + 30 + 10, 0);
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
    fc
      .array(arbitraryPiece, { minLength: 1, maxLength: 14 })
      .map((items): Item => twoColumns(withBefore(items, 0))),
    fc.constant<Item>({ kind: 'break' }),
  );
  const arbitraryItems = fc.array(arbitraryItem, { minLength: 1, maxLength: 14 });

  const allPieces = (items: readonly Item[]): Piece[] =>
    items.flatMap((item) => {
      if (item.kind === 'break') return [];
      if (item.kind === 'piece') return [item];
      return item.kind === 'columns' ? item.columns.flatMap(allPieces) : allPieces(item.items);
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
      arbitraryItem.filter(({ kind }) => kind !== 'columns' && kind !== 'column-text'),
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
