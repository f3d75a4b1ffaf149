import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutList, type StockLength, type WantedPiece } from '../../scripts/structures/cut-list.ts';

const inch = 25.4;
const foot = 12 * inch;
const piece = (number: number, inches: number, role = 'board'): WantedPiece => ({
  role,
  number,
  lengthMm: inches * inch,
});
const stockOf = (...feet: readonly number[]): StockLength[] =>
  feet.map((length) => ({ lengthMm: length * foot, price: length * 1.5 }));

/** Each worked by hand with a saw cut of 1/8 in. */
const cases: readonly {
  readonly name: string;
  readonly pieces: readonly WantedPiece[];
  readonly stock: readonly StockLength[];
  readonly atHand?: readonly number[];
  /** Feet of each board, in order, and what is left of it in inches. */
  readonly boards: readonly (readonly [feet: number, offcutInches: number])[];
}[] = [
  {
    name: 'one piece as long as the board leaves nothing and takes no cut',
    pieces: [piece(1, 96)],
    stock: stockOf(8),
    boards: [[8, 0]],
  },
  {
    name: 'two halves do not come out of one board: the cut takes an eighth',
    pieces: [piece(2, 48)],
    stock: stockOf(8),
    boards: [
      [8, 47.875],
      [8, 47.875],
    ],
  },
  {
    name: 'two halves less the cut come out of one board',
    pieces: [piece(2, 47.9375)],
    stock: stockOf(8),
    boards: [[8, 0]],
  },
  {
    name: 'a bed of 4 by 8 ft: two long boards, and both ends of a third',
    pieces: [piece(2, 96), piece(2, 45)],
    stock: stockOf(8),
    boards: [
      [8, 0],
      [8, 0],
      [8, 5.75],
    ],
  },
  {
    name: 'the same bed where 12 ft boards are sold: two boards give a side and an end each',
    pieces: [piece(2, 96), piece(2, 45)],
    stock: stockOf(8, 12),
    boards: [
      [12, 2.75],
      [12, 2.75],
    ],
  },
  {
    name: 'longest first would take three boards; two are enough: 60+36, 40+30+25',
    pieces: [piece(1, 60), piece(1, 40), piece(1, 35.75), piece(1, 30), piece(1, 25)],
    stock: stockOf(8),
    boards: [
      [8, 0],
      [8, 0.625],
    ],
  },
  {
    name: 'one board is enough either way: the shorter is bought',
    pieces: [piece(3, 20)],
    stock: stockOf(6, 8, 12),
    boards: [[6, 11.625]],
  },
  {
    name: 'a board at hand is used first, and none is bought',
    pieces: [piece(2, 30)],
    stock: stockOf(8),
    atHand: [6],
    boards: [[6, 11.75]],
  },
  {
    name: 'a board at hand that is too short for anything stays where it is',
    pieces: [piece(1, 50)],
    stock: stockOf(8),
    atHand: [4],
    boards: [[8, 45.875]],
  },
];

describe('a cut list', () => {
  test.each(cases)('$name', ({ pieces, stock, atHand = [], boards }) => {
    const list = cutList({ pieces, stock, atHandMm: atHand.map((feet) => feet * foot) });
    expect(list.proven).toBe(true);
    expect(list.tooLong).toEqual([]);
    const found = list.boards.map(({ stockMm, offcutMm }) => [
      Math.round((stockMm / foot) * 1000) / 1000,
      Math.round((offcutMm / inch) * 1000) / 1000,
    ]);
    const sorted = (list: readonly (readonly number[])[]): readonly (readonly number[])[] =>
      [...list].sort((a, b) => a[0]! - b[0]! || a[1]! - b[1]!);
    expect(sorted(found)).toEqual(sorted(boards));
  });

  test('a piece longer than every board is told, and the rest is laid', () => {
    const list = cutList({ pieces: [piece(1, 130), piece(1, 20)], stock: stockOf(8, 10) });
    expect(list.tooLong.map(({ lengthMm }) => lengthMm / inch)).toEqual([130]);
    expect(list.boards).toHaveLength(1);
  });

  test('nothing to buy is no list', () => {
    expect(() => cutList({ pieces: [piece(1, 20)], stock: [] })).toThrow(RangeError);
  });

  test('many different lengths are laid without proof', () => {
    const pieces = Array.from({ length: 18 }, (_, index) => piece(3, 10 + index * 3));
    const list = cutList({ pieces, stock: stockOf(8) });
    expect(list.proven).toBe(false);
    expect(list.boards.flatMap(({ cuts }) => cuts)).toHaveLength(54);
  });
});

const lengths = fc.integer({ min: 6, max: 96 });
const fewPieces = fc.array(fc.record({ number: fc.integer({ min: 1, max: 2 }), inches: lengths }), {
  minLength: 1,
  maxLength: 4,
});

/** The fewest boards of one length, by trying to put every piece on every board. */
function fewestBoards(inches: readonly number[], boardInches: number): number {
  const kerf = 0.125;
  let best = inches.length;
  const place = (index: number, rooms: readonly number[]): void => {
    if (rooms.length >= best) return;
    if (index === inches.length) {
      best = rooms.length;
      return;
    }
    const length = inches[index]!;
    rooms.forEach((room, board) => {
      if (length <= room + 1e-9) {
        place(
          index + 1,
          rooms.map((other, at) => (at === board ? other - length - kerf : other)),
        );
      }
    });
    place(index + 1, [...rooms, boardInches - length - kerf]);
  };
  place(0, []);
  return best;
}

describe('every cut list', () => {
  test('gives every piece once, and cuts, kerf and offcut make the board', () => {
    fc.assert(
      fc.property(
        fewPieces,
        fc.array(fc.integer({ min: 2, max: 8 }), { maxLength: 3 }),
        (wanted, handFeet) => {
          const pieces = wanted.map(({ number, inches }, index) => piece(number, inches, `role-${index}`));
          const list = cutList({
            pieces,
            stock: stockOf(8, 12),
            atHandMm: handFeet.map((feet) => feet * foot),
          });
          const cut = list.boards.flatMap(({ cuts }) => cuts);
          for (const { role, number, lengthMm } of pieces) {
            expect(cut.filter((other) => other.role === role)).toHaveLength(number);
            expect(
              cut.filter((other) => other.role === role).every((other) => other.lengthMm === lengthMm),
            ).toBe(true);
          }
          for (const { stockMm, cuts, kerfMm, offcutMm } of list.boards) {
            const used = cuts.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
            expect(used + kerfMm + offcutMm).toBeCloseTo(stockMm, 6);
          }
          const atHand = list.boards.filter(({ from }) => from === 'at-hand');
          expect(atHand.length).toBeLessThanOrEqual(handFeet.length);
        },
      ),
      { numRuns: 100 },
    );
  });

  test('buys as few boards as trying every way does', () => {
    fc.assert(
      fc.property(fewPieces, (wanted) => {
        const pieces = wanted.map(({ number, inches }) => piece(number, inches));
        const all = wanted.flatMap(({ number, inches }) => Array.from({ length: number }, () => inches));
        expect(cutList({ pieces, stock: stockOf(8) }).boards).toHaveLength(fewestBoards(all, 96));
      }),
      { numRuns: 60 },
    );
  });

  test('never buys more for a board more at hand', () => {
    fc.assert(
      fc.property(fewPieces, fc.integer({ min: 1, max: 8 }), (wanted, feet) => {
        const pieces = wanted.map(({ number, inches }) => piece(number, inches));
        const bought = (atHandMm: readonly number[]): number =>
          cutList({ pieces, stock: stockOf(8), atHandMm }).boards.filter(({ from }) => from === 'bought')
            .length;
        expect(bought([feet * foot])).toBeLessThanOrEqual(bought([]));
      }),
      { numRuns: 60 },
    );
  });
});
