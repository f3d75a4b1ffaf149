/**
 * Lays pieces of lumber onto the lengths they are cut from: as few boards to buy as can be, of those the shortest in all,
 * of those the cheapest. Boards at hand are used before any is bought. Every cut takes the width of the saw blade (kerf).
 *
 * The search is exact: it goes through the pieces still to cut (how many of each length) and tries every full way to
 * fill one board. Lists too long for that are laid by the longest piece first, and the result says that it is not proved.
 */

/** Pieces of one length and use. Lengths in millimetres, greater than 0. */
export interface WantedPiece {
  readonly role: string;
  readonly lengthMm: number;
  readonly number: number;
}

export interface StockLength {
  readonly lengthMm: number;
  /** Currency units for one board. */
  readonly price: number;
}

export interface CutBoard {
  readonly stockMm: number;
  readonly from: 'bought' | 'at-hand';
  /** In the order of cutting, the longest first. */
  readonly cuts: readonly { readonly role: string; readonly lengthMm: number }[];
  /** What all saw cuts of this board take. */
  readonly kerfMm: number;
  /** What is left over: with cuts and kerf, the whole board. */
  readonly offcutMm: number;
}

export interface CutList {
  /** Boards at hand that are used, then those to buy, the longest first. */
  readonly boards: readonly CutBoard[];
  /** True when no other layout buys fewer boards, or as few and less length. */
  readonly proven: boolean;
  /** Pieces that no board is long enough for. */
  readonly tooLong: readonly WantedPiece[];
}

/** The width of cut of a usual saw blade, 1/8 in. Common practice. */
export const usualKerfMm = 3.175;

/** Kinds of states of the exact search; a list of lumber for a garden build has some hundreds. */
const mostStates = 60_000;

/** Throws a RangeError where nothing can be bought: a list of boards to buy needs at least one length. */
export function cutList({
  pieces,
  stock,
  atHandMm = [],
  kerfMm = usualKerfMm,
}: {
  readonly pieces: readonly WantedPiece[];
  readonly stock: readonly StockLength[];
  readonly atHandMm?: readonly number[];
  readonly kerfMm?: number;
}): CutList {
  if (stock.length === 0) throw new RangeError('no stock length to cut from');
  const longest = Math.max(0, ...stock.map(({ lengthMm }) => lengthMm), ...atHandMm);
  const tooLong = pieces.filter(({ lengthMm }) => lengthMm > longest + slackMm);
  const kinds = pieces
    .filter((piece) => !tooLong.includes(piece) && piece.number > 0)
    .sort((a, b) => b.lengthMm - a.lengthMm);
  const search = new Search({
    kinds,
    stock: [...stock].sort((a, b) => a.lengthMm - b.lengthMm),
    atHandMm: [...atHandMm].sort((a, b) => a - b),
    kerfMm,
  });
  return { ...search.best(), tooLong };
}

/** Inches do not convert without a remainder; a hair is no reason to buy a longer board. */
const slackMm = 0.01;

interface Problem {
  readonly kinds: readonly WantedPiece[];
  readonly stock: readonly StockLength[];
  readonly atHandMm: readonly number[];
  readonly kerfMm: number;
}

/** How many of each kind one board gives. */
type Pattern = readonly number[];

/** What a way of cutting costs, to be compared in this order. */
type Outlay = readonly [boards: number, lengthMm: number, price: number];

interface Choice {
  readonly outlay: Outlay;
  readonly board?: { readonly stockMm: number; readonly from: CutBoard['from']; readonly pattern: Pattern };
}

/** A board that pieces are still laid onto. */
interface OpenBoard {
  readonly stockMm: number;
  readonly from: CutBoard['from'];
  room: number;
  pattern: number[];
}

const nothing: Outlay = [0, 0, 0];
const impossible: Outlay = [Infinity, Infinity, Infinity];

class Search {
  readonly #problem: Problem;
  readonly #known = new Map<string, Choice>();

  constructor(problem: Problem) {
    this.#problem = problem;
  }

  best(): { boards: readonly CutBoard[]; proven: boolean } {
    const { kinds, atHandMm } = this.#problem;
    const states = kinds.reduce((product, { number }) => product * (number + 1), atHandMm.length + 1);
    const boards = states <= mostStates ? this.#exact() : this.#longestFirst();
    return {
      boards: boards.map((board) => this.#cut(board)),
      proven: states <= mostStates,
    };
  }

  #exact(): readonly NonNullable<Choice['board']>[] {
    const boards: NonNullable<Choice['board']>[] = [];
    let left: Pattern = this.#problem.kinds.map(({ number }) => number);
    let hand = 0;
    for (;;) {
      const { board } = this.#choose(left, hand);
      const atHand = hand < this.#problem.atHandMm.length;
      if (!board) {
        if (!atHand) return boards;
      } else {
        boards.push(board);
        left = less(left, board.pattern);
      }
      if (atHand) hand += 1;
    }
  }

  /** The best way to go on: what to cut from the next board at hand, or from a bought one. */
  #choose(left: Pattern, hand: number): Choice {
    const key = `${hand}:${left.join()}`;
    const known = this.#known.get(key);
    if (known) return known;
    const choice = this.#weigh(left, hand);
    this.#known.set(key, choice);
    return choice;
  }

  #weigh(left: Pattern, hand: number): Choice {
    if (left.every((number) => number === 0)) return { outlay: nothing };
    const { atHandMm, stock } = this.#problem;
    const own = atHandMm[hand];
    if (own !== undefined) {
      const options = this.#patterns(left, own).map((pattern) => ({
        outlay: this.#choose(less(left, pattern), hand + 1).outlay,
        board: { stockMm: own, from: 'at-hand' as const, pattern },
      }));
      return cheapest([{ outlay: this.#choose(left, hand + 1).outlay }, ...options]);
    }
    const first = left.findIndex((number) => number > 0);
    return cheapest(
      stock.flatMap(({ lengthMm, price }) =>
        this.#patterns(left, lengthMm)
          .filter((pattern) => pattern[first]! > 0)
          .map((pattern): Choice => {
            const rest = this.#choose(less(left, pattern), hand).outlay;
            return {
              outlay: [rest[0] + 1, rest[1] + lengthMm, rest[2] + price],
              board: { stockMm: lengthMm, from: 'bought', pattern },
            };
          }),
      ),
    );
  }

  /** Every way to fill a board so that no piece still wanted would fit on what is left of it. */
  #patterns(left: Pattern, boardMm: number): readonly Pattern[] {
    const { kinds, kerfMm } = this.#problem;
    const found: Pattern[] = [];
    const fill = (kind: number, room: number, taken: readonly number[]): void => {
      if (kind === kinds.length) {
        const more = kinds.some(
          ({ lengthMm }, index) => taken[index]! < left[index]! && lengthMm <= room + slackMm,
        );
        if (!more && taken.some((number) => number > 0)) found.push(taken);
        return;
      }
      const { lengthMm } = kinds[kind]!;
      const most = Math.min(left[kind]!, Math.floor((room + kerfMm + slackMm) / (lengthMm + kerfMm)));
      for (let number = most; number >= 0; number -= 1) {
        fill(kind + 1, room - number * (lengthMm + kerfMm), [...taken, number]);
      }
    };
    fill(0, boardMm, []);
    return found;
  }

  /** The longest piece goes onto the first board it fits; a new board is as short as holds it, or holds the most. */
  #longestFirst(): readonly NonNullable<Choice['board']>[] {
    const { kinds, stock, atHandMm, kerfMm } = this.#problem;
    const open: OpenBoard[] = atHandMm.map((stockMm) => ({
      stockMm,
      from: 'at-hand',
      room: stockMm,
      pattern: kinds.map(() => 0),
    }));
    kinds.forEach(({ lengthMm, number }, kind) => {
      for (let index = 0; index < number; index += 1) {
        let board = open.find(({ room }) => lengthMm <= room + slackMm);
        if (!board) {
          const stockMm = stock.at(-1)!.lengthMm;
          board = { stockMm, from: 'bought', room: stockMm, pattern: kinds.map(() => 0) };
          open.push(board);
        }
        board.pattern[kind] = board.pattern[kind]! + 1;
        board.room -= lengthMm + kerfMm;
      }
    });
    return open.filter(({ pattern }) => pattern.some((number) => number > 0));
  }

  #cut({ stockMm, from, pattern }: NonNullable<Choice['board']>): CutBoard {
    const { kinds, kerfMm } = this.#problem;
    const cuts = kinds.flatMap(({ role, lengthMm }, kind) =>
      Array.from({ length: pattern[kind]! }, () => ({ role, lengthMm })),
    );
    const used = cuts.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
    const lost = Math.max(0, Math.min(cuts.length * kerfMm, stockMm - used));
    return { stockMm, from, cuts, kerfMm: lost, offcutMm: Math.max(0, stockMm - used - lost) };
  }
}

function less(left: Pattern, taken: Pattern): Pattern {
  return left.map((number, index) => number - taken[index]!);
}

function cheapest(choices: readonly Choice[]): Choice {
  return choices.reduce<Choice>((best, choice) => (before(choice.outlay, best.outlay) ? choice : best), {
    outlay: impossible,
  });
}

function before(a: Outlay, b: Outlay): boolean {
  for (const [index, value] of a.entries()) {
    if (Math.abs(value - b[index]!) > slackMm) return value < b[index]!;
  }
  return false;
}
