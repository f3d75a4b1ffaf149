/** The tables of a bed: how each crop is sown, and what to buy for it and expect of it. */
import { column, inline, table } from '../document/build.ts';
import type { Block, Inline, TableColumn, TableRow } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import type { SheetContext } from './sheet-context.ts';
import { depthOf, type SownBed, type SownCrop } from './sown-bed.ts';

export interface BedTables {
  readonly blocks: () => readonly Block[];
  readonly findings: readonly Finding[];
}

export function bedTables(context: SheetContext, sown: SownBed): BedTables {
  return {
    blocks: () => [sowTable(context, sown), buyTable(context, sown)],
    findings: sown.crops.flatMap((crop) => {
      const { needs, height } = crop;
      return [
        ...(needs.method === 'transplant' ? [depthOf(crop)] : []),
        needs.plants,
        needs.seedByRate,
        height,
        needs.rowLength,
        needs.yield,
        ...(needs.seed ? [needs.seed.seeds, needs.seed.mass, needs.seed.packets] : []),
        ...(needs.bought ? [needs.bought.number] : []),
        ...(needs.bought?.bundles ? [needs.bought.bundles] : []),
      ];
    }),
  };
}

function bothCell({ printer }: SheetContext, finding: Finding | undefined): readonly Inline[] {
  return finding === undefined || finding.value.kind === 'none'
    ? inline('–')
    : [printer.print(finding, { style: 'cell-both' })];
}

function sowTable(context: SheetContext, { crops }: SownBed): Block {
  const { say, measures } = context.wording;
  const rows = crops.map((crop): TableRow => {
    const { known, sown, height, needs } = crop;
    return {
      cells: [
        inline(known.crop.name),
        inline(measures.number(sown.rows)),
        bothCell(context, depthOf(crop)),
        bothCell(context, known.inRow),
        bothCell(context, height),
        bothCell(context, needs.plants),
      ],
    };
  });
  return table({
    id: 'sowing',
    caption: say('build.sow-caption'),
    columns: [
      column(say('build.crop'), { weight: 1.1 }),
      column(say('build.rows'), { align: 'number', weight: 0.6 }),
      column(say('build.depth'), { weight: 1.4 }),
      column(say('build.spacing'), { weight: 1.4 }),
      column(say('build.height'), { weight: 1.5 }),
      column(say('build.plants'), { align: 'number', weight: 0.7 }),
    ],
    groups: [{ rows }],
  });
}

interface BuyColumn {
  readonly column: TableColumn;
  readonly cell: (crop: SownCrop) => readonly Inline[];
  /** A column in which no crop has anything is left out. */
  readonly has: (crop: SownCrop) => boolean;
}

function buyTable(context: SheetContext, { crops }: SownBed): Block {
  const { say } = context.wording;
  const columns = buyColumns(context).filter(({ has }) => crops.some(has));
  const seeds = crops.some(({ needs }) => needs.seed !== undefined);
  return table({
    id: 'buying',
    caption: say('build.buy-caption'),
    columns: [column(say('build.crop'), { weight: 1.1 }), ...columns.map((each) => each.column)],
    groups: [
      {
        rows: crops.map((crop) => ({
          cells: [inline(crop.known.crop.name), ...columns.map(({ cell }) => cell(crop))],
        })),
      },
    ],
    notes: [...(seeds ? [say('build.buy-note')] : []), say('build.yield-note')],
  });
}

function buyColumns(context: SheetContext): readonly BuyColumn[] {
  const { say } = context.wording;
  const known = (finding: Finding | undefined): boolean =>
    finding !== undefined && finding.value.kind !== 'none';
  const packs = ({ needs }: SownCrop): Finding | undefined => needs.seed?.packets ?? needs.bought?.bundles;
  return [
    {
      column: column(say('build.buy'), { weight: 1.3 }),
      has: () => true,
      cell: ({ needs }) => buyCell(context, needs.seed?.seeds ?? needs.bought?.number, needs.method),
    },
    {
      column: column(say('build.seed-weight'), { weight: 1.4 }),
      has: ({ needs }) => known(needs.seed?.mass),
      cell: ({ needs }) => bothCell(context, needs.seed?.mass),
    },
    {
      column: column(say('build.packs'), { weight: 1 }),
      has: (crop) => known(packs(crop)),
      cell: (crop) => buyCell(context, packs(crop), crop.needs.seed ? 'packets' : 'bundles'),
    },
    {
      column: column(say('build.yield'), { weight: 1.8 }),
      has: ({ needs }) => known(needs.yield),
      cell: ({ needs }) => yieldCell(context, needs.yield),
    },
  ];
}

/** A number and what is counted: "72 seeds". */
function buyCell(context: SheetContext, finding: Finding | undefined, what: string): readonly Inline[] {
  const { printer, wording } = context;
  if (finding === undefined || finding.value.kind !== 'count') return inline('–');
  const unit = wording.say(`build.unit-${what}`, { count: finding.value.value });
  return inline([printer.print(finding, { style: 'cell' }), ` ${unit}`]);
}

/** A harvest with what it is counted as, where that is not the whole crop. */
function yieldCell(context: SheetContext, finding: Finding): readonly Inline[] {
  const unit = finding.inputs.find(({ name }) => name === 'yield-unit')?.value;
  const cell = bothCell(context, finding);
  if (finding.value.kind === 'none' || unit?.kind !== 'choice' || unit.value === 'yield-whole') return cell;
  return inline([...cell, ` ${context.wording.say(`choice.${unit.value}`)}`]);
}
