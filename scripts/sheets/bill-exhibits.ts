/** What to have and to buy for a build, and how its lumber is cut. */
import { column, figure, inline, strong, table } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import { cutLayout, type LaidBoard } from '../drawings/build/cut-layout.ts';
import type { Finding } from '../findings/finding.ts';
import type { ProjectRecord } from '../records/guide.ts';
import type { Bill, BillLine, PartCuts } from '../structures/bill-of-materials.ts';
import type { CutBoard } from '../structures/cut-list.ts';
import type { Exhibit } from './names.ts';
import { sayWith } from './say-with.ts';
import type { SheetContext } from './sheet-context.ts';

/** `parts`, and `cut-list` where something is cut from lumber. */
export function billExhibits(
  context: SheetContext,
  project: ProjectRecord,
  bill: Bill,
): readonly (readonly [string, Exhibit])[] {
  return [
    ['parts', { wide: true, blocks: () => [partsTable(context, bill)] }],
    ...(bill.cuts.length === 0
      ? []
      : [
          [
            'cut-list',
            { wide: true, blocks: () => bill.cuts.map((cuts) => cutFigure(context, project, cuts)) },
          ] as const,
        ]),
  ];
}

/** Every part by its letter: how many, how many of them are at hand, and what the rest costs. */
function partsTable(context: SheetContext, bill: Bill): Block {
  const { printer, wording } = context;
  const { say } = wording;
  const cell = (finding: Finding | undefined): readonly Inline[] =>
    finding ? [printer.print(finding, { style: 'cell' })] : inline('–');
  const counted = bill.lines.some(({ have }) => have !== undefined);
  const rows = bill.lines.map((line): TableRow => ({
    cells: [
      inline(line.letter),
      lineName(context, line),
      cell(line.quantity),
      ...(counted ? [cell(line.have), cell(line.toBuy)] : []),
      inline(line.unit),
      line.price ? cell(line.price) : inline(say('build.at-hand')),
      cell(line.cost),
    ],
  }));
  const empty: readonly (readonly Inline[])[] = counted ? [[], [], [], [], [], []] : [[], [], [], []];
  const total: TableRow = { cells: [[strong(say('build.total'))], ...empty, [strong(cell(bill.total))]] };
  return table({
    id: 'parts',
    caption: say('build.parts-caption'),
    columns: [
      column(say('build.letter'), { weight: 0.9 }),
      column(say('build.what'), { weight: 2.6 }),
      column(say('build.need'), { align: 'number', weight: 0.7 }),
      ...(counted
        ? [
            column(say('build.have'), { align: 'number', weight: 0.7 }),
            column(say('build.to-buy'), { align: 'number', weight: 0.7 }),
          ]
        : []),
      column(say('build.unit'), { weight: 1.5 }),
      column(say('build.price'), { align: 'number', weight: 0.9 }),
      column(say('build.cost'), { align: 'number', weight: 0.9 }),
    ],
    groups: [{ rows }, { rows: [total] }],
  });
}

/** The part, and for lumber the length of its boards, for a stake or pole its own. */
function lineName(
  { wording: { say, measures }, printer }: SheetContext,
  { name, stockMm, length }: BillLine,
): readonly Inline[] {
  if (length)
    return sayWith(say, 'build.board-of', { name, length: printer.print(length, { style: 'cell' }) });
  return inline(
    stockMm === undefined ? name : say('build.board-of', { name, length: measures.short('length', stockMm) }),
  );
}

/** Boards that are cut alike are drawn once. */
function cutFigure(context: SheetContext, project: ProjectRecord, cuts: PartCuts): Block {
  const {
    wording: { say, measures },
    printer,
  } = context;
  const boards = alike(cuts.list.boards).map(({ board, number }) =>
    laidBoard(context, project, board, number),
  );
  const options = {
    id: `cut-list-${cuts.letter.toLowerCase()}`,
    boards,
    alternative: say('build.cut-alternative', {
      letter: cuts.letter,
      boards: boards.map((board) => boardInWords(context, board)).join('; '),
    }),
  };
  const percent = cuts.offcut.value.kind === 'count' ? measures.number(cuts.offcut.value.value) : '';
  printer.print(cuts.offcut, { style: 'cell' });
  return figure(cutLayout(options), {
    caption: say('build.cut-caption', { letter: cuts.letter, name: cuts.name, percent }),
    narrow: cutLayout({ ...options, id: `${options.id}-narrow`, widthMm: 92 }),
  });
}

function boardInWords({ wording: { say } }: SheetContext, board: LaidBoard): string {
  const names = board.pieces.map(({ name, size }) => ({ name, size, both: `${name} ${size}` }));
  const pieces = names
    .filter(({ both }, index) => names.findIndex((other) => other.both === both) === index)
    .map(({ name, size, both }) =>
      say('build.cut-alternative-piece', {
        number: names.filter((other) => other.both === both).length,
        name,
        length: size,
      }),
    );
  return say('build.cut-alternative-board', {
    board: board.label,
    pieces: pieces.join(', '),
    left: board.offcut?.size ?? 'none',
  });
}

function alike(
  boards: readonly CutBoard[],
): readonly { readonly board: CutBoard; readonly number: number }[] {
  const key = ({ stockMm, from, cuts }: CutBoard): string =>
    [stockMm, from, ...cuts.map(({ role, lengthMm }) => `${role} ${lengthMm}`)].join('|');
  const keys = boards.map(key);
  return boards.flatMap((board, index) =>
    keys.indexOf(keys[index]!) === index
      ? [{ board, number: keys.filter((other) => other === keys[index]).length }]
      : [],
  );
}

/** An offcut shorter than this is sawdust and chips: it is not spoken of. */
const leastOffcutMm = 12;

function laidBoard(
  { wording: { say, measures } }: SheetContext,
  { kind }: ProjectRecord,
  { stockMm, from, cuts, kerfMm, offcutMm }: CutBoard,
  number: number,
): LaidBoard {
  const size = (mm: number): string => measures.short('length', mm);
  return {
    label: say(from === 'bought' ? 'build.cut-board' : 'build.cut-own', {
      count: number,
      length: size(stockMm),
    }),
    stockMm,
    kerfMm,
    pieces: cuts.map(({ role, lengthMm }) => ({
      lengthMm,
      name: say(`piece.${kind}.${role}`),
      size: size(lengthMm),
    })),
    ...(offcutMm < leastOffcutMm
      ? {}
      : {
          offcut: {
            lengthMm: offcutMm,
            size: size(offcutMm),
            label: say('build.cut-left', { length: size(offcutMm) }),
          },
        }),
  };
}
