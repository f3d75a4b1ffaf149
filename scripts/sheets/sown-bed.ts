/** A bed with its rows laid out and what each crop comes to: what tables, drawings and warnings of a bed share. */
import { bedNeeds, type BedNeeds } from '../agronomy/bed-needs.ts';
import { layOutRows, type BedRow } from '../agronomy/bed-rows.ts';
import { linesAcross } from '../agronomy/row-places.ts';
import { cropHeight, setOutDepth } from '../agronomy/spacing.ts';
import { inputOf, quantity, type Finding } from '../findings/finding.ts';
import type { Sow } from '../records/schemas/projects/sow.ts';
import type { RingInside } from '../structures/structure.ts';
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
  /** In a ring: the mean length of its rows. */
  readonly ringLength?: Finding;
}

/** How deep it goes into this bed: as its seed, or as a young plant is set. */
export function depthOf({ known, needs }: SownCrop): Finding {
  return needs.method === 'transplant' ? setOutDepth(known.crop) : known.depth;
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
    const own = rows.filter((row) => row.crop === crop);
    const ring = bed.ring && own.length > 0 ? ringOf(crop.id, own, bed, bed.ring) : undefined;
    const needs = bedNeeds({
      crop,
      sown,
      rows: own,
      bedLengthMm: ring?.lengthMm ?? insideLengthMm,
      bedLength: ring?.length ?? lengthFinding,
    });
    return {
      known: of,
      sown,
      height: cropHeight(crop),
      needs,
      ...(ring ? { ringLength: ring.length } : {}),
    };
  });
  return { bed, crops, rows, linesMm: linesAcross(insideDepthMm, lines?.count ?? 0) };
}

/** How long the rows of a crop in a ring are: each goes round at its own distance from the middle. */
function ringOf(
  crop: string,
  rows: readonly BedRow[],
  bed: SowingBed,
  ring: RingInside,
): { readonly lengthMm: number; readonly length: Finding } {
  const lengths = rows.map(({ fromPolewardMm }) => ringLengthMm(ring, fromPolewardMm));
  const lengthMm = lengths.reduce((sum, mm) => sum + mm, 0) / lengths.length;
  const from = rows.map(({ fromPolewardMm }) => fromPolewardMm);
  return {
    lengthMm,
    length: {
      id: `${crop}.ring-row`,
      value: quantity('length', lengthMm),
      method: 'bed.ring-row',
      inputs: [
        inputOf('ring-length', bed.lengthFinding),
        { name: 'from-inner-edge', value: quantity('length', Math.min(...from), Math.max(...from)) },
      ],
      sources: bed.lengthFinding.sources,
    },
  };
}

/** The length of a row so far from the inner edge of a ring. */
function ringLengthMm({ innerRadiusMm, openAngleAt }: RingInside, fromInnerMm: number): number {
  const radiusMm = innerRadiusMm + fromInnerMm;
  return radiusMm * (2 * Math.PI - 2 * openAngleAt(radiusMm));
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
