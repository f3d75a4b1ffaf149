/** A bed with its rows laid out and what each crop comes to: what tables, drawings and warnings of a bed share. */
import { bedNeeds, type BedNeeds } from '../agronomy/bed-needs.ts';
import { layOutRows, type BedRow } from '../agronomy/bed-rows.ts';
import { linesAcross } from '../agronomy/row-places.ts';
import { cropHeight } from '../agronomy/spacing.ts';
import type { Finding } from '../findings/finding.ts';
import type { Sow } from '../records/schemas/projects/sow.ts';
import type { SowingBed } from './bed.ts';
import type { CropFacts } from './facts.ts';
import type { SheetContext } from './sheet-context.ts';

export interface SownBed {
  readonly bed: SowingBed;
  /** In the order of the record. */
  readonly crops: readonly SownCrop[];
  /** From the poleward side; empty where they do not fit. */
  readonly rows: readonly BedRow[];
  /** Drip lines, from the poleward side. */
  readonly linesMm: readonly number[];
}

/** One crop of the bed with what its rows come to. */
export interface SownCrop {
  readonly known: CropFacts;
  readonly sown: Sow[number];
  readonly height: Finding;
  readonly needs: BedNeeds;
}

export function sownBed({ facts }: SheetContext, bed: SowingBed, sow: Sow): SownBed {
  const known = sow.flatMap((sown) => {
    const of = facts.crops.find(({ crop }) => crop.id === sown.crop);
    return of ? [{ known: of, sown }] : [];
  });
  const { insideDepthMm, insideLengthMm, lengthFinding, irrigation } = bed;
  const lines = irrigation && { count: irrigation.lines, offsetMm: irrigation.clearance.low };
  const wanted = known.map(({ known: { crop }, sown }) => ({ ...sown, crop }));
  const layout = wanted.length > 0 ? layOutRows(wanted, insideDepthMm, { lines }) : undefined;
  const rows = layout?.kind === 'rows' ? layout.rows : [];
  const crops = known.map(({ known: of, sown }): SownCrop => {
    const { crop } = of;
    const needs = bedNeeds({
      crop,
      sown,
      rows: rows.filter((row) => row.crop === crop),
      bedLengthMm: insideLengthMm,
      bedLength: lengthFinding,
    });
    return { known: of, sown, height: cropHeight(crop), needs };
  });
  return { bed, crops, rows, linesMm: linesAcross(insideDepthMm, lines?.count ?? 0) };
}

export interface NumberedRow {
  readonly number: number;
  readonly row: BedRow;
  readonly of: SownCrop;
}

/** Rows with their numbers on the plan, counted from the poleward side. */
export function numberedRows({ rows, crops }: SownBed): readonly NumberedRow[] {
  return rows.map((row, index) => ({
    number: index + 1,
    row,
    of: crops.find(({ known }) => known.crop === row.crop)!,
  }));
}

/** Rows of one crop that stand side by side. */
export function blocksOf(sown: SownBed): readonly (readonly [NumberedRow, ...NumberedRow[]])[] {
  const blocks: [NumberedRow, ...NumberedRow[]][] = [];
  for (const row of numberedRows(sown)) {
    const last = blocks.at(-1);
    if (last?.[0].of === row.of) last.push(row);
    else blocks.push([row]);
  }
  return blocks;
}
