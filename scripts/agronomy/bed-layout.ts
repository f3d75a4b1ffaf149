/** Where rows and plants stand in a bed, clear of its edges and of the drip lines that lie in it. */
import {
  count,
  choice,
  inputOf,
  none,
  quantity,
  type Finding,
  type FindingInput,
} from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import type { BedLayoutKind } from '../records/schemas/projects/sow.ts';
import { edgeMm as usualEdgeMm, offsetRowShare } from './bed-rows.ts';
import { closestRows, linesAcross, spreadRows, type RowField } from './row-places.ts';
import { inRowSpacing, rowSpacing } from './spacing.ts';

export interface BedWidth {
  readonly bedWidthMm: number;
  /** Least distance from row to row. Above 0, or a RangeError. */
  readonly betweenRowsMm: number;
  /** Least distance of a row from the edge of the bed; 4 in where it is not given. */
  readonly edgeMm?: number;
  /** Lines lie evenly over the width; a row keeps at least `offsetMm` from each. */
  readonly irrigationLines?: { readonly count: number; readonly offsetMm: number };
}

export interface BedRowsAcross {
  /** Middle of each row, from one edge of the bed. Empty when not one row fits. */
  readonly rowsMm: readonly number[];
  readonly linesMm: readonly number[];
}

/**
 * As many rows as keep their spacing, their distance from the edges and their distance from the lines, then moved as
 * far apart as they will go. One row alone stands as near the middle as the lines let it.
 */
export function rowsAcrossBed(bed: BedWidth): BedRowsAcross {
  if (!(bed.betweenRowsMm > 0)) throw new RangeError(`no such row spacing: ${bed.betweenRowsMm} mm`);
  const lines = bed.irrigationLines ?? { count: 0, offsetMm: 0 };
  const linesMm = linesAcross(bed.bedWidthMm, lines.count);
  const edge = bed.edgeMm ?? usualEdgeMm;
  const field = { from: edge, to: bed.bedWidthMm - edge, linesMm, offsetMm: lines.offsetMm };
  const closest = placed(field, bed.betweenRowsMm);
  if (closest.length === 0) return { rowsMm: [], linesMm };
  if (closest.length === 1) return { rowsMm: [nearestTo(bed.bedWidthMm / 2, field)], linesMm };
  const gap = { leastMm: bed.betweenRowsMm, stretches: true };
  const gaps = Array.from({ length: closest.length - 1 }, () => gap);
  return { rowsMm: spreadRows(field, gaps) ?? closest, linesMm };
}

const hair = 1e-6;

/** As many rows as fit, each as near to the last as the spacing and the lines allow. */
function placed(field: RowField, spacingMm: number): readonly number[] {
  const most = Math.max(0, Math.floor((field.to - field.from) / spacingMm + hair)) + 1;
  const gaps = Array.from({ length: most - 1 }, () => ({ leastMm: spacingMm, stretches: true }));
  return closestRows(field, gaps).filter((at) => at <= field.to + hair);
}

function nearestTo(middle: number, field: RowField): number {
  const places = [middle, ...field.linesMm.flatMap((line) => [line - field.offsetMm, line + field.offsetMm])];
  return places
    .filter(
      (place) =>
        place >= field.from - hair &&
        place <= field.to + hair &&
        field.linesMm.every((line) => Math.abs(place - line) >= field.offsetMm - hair),
    )
    .concat(placed(field, Infinity))
    .reduce((best, place) => (Math.abs(place - middle) < Math.abs(best - middle) - hair ? place : best));
}

export interface PlantsInBed {
  readonly layout: BedLayoutKind;
  readonly bedLengthMm: number;
  readonly bed: BedWidth;
  /** Distance from plant to plant; in a square or offset layout to every neighbour. Above 0, or a RangeError. */
  readonly inRowMm: number;
}

export interface PlantPlace {
  readonly acrossMm: number;
  readonly alongMm: number;
}

/**
 * The middle of every plant. A plant has half its distance between it and each end of the bed, so none grows past the
 * edge. In an offset layout rows lie 0.866 of the distance apart and every second one is moved by half, so that each
 * plant has six neighbours at the full distance; a large bed then holds 15 % more than in squares (2 over the square
 * root of 3 is 1.155), a narrow one may hold fewer. Rows of these two kinds are moved off lines like others.
 */
export function plantPlaces({ layout, bedLengthMm, bed, inRowMm }: PlantsInBed): readonly PlantPlace[] {
  if (!(inRowMm > 0)) throw new RangeError(`no such plant spacing: ${inRowMm} mm`);
  const apartMm = layout === 'offset' ? inRowMm * offsetRowShare : inRowMm;
  const across = layout === 'rows' ? bed : { ...bed, edgeMm: inRowMm / 2, betweenRowsMm: apartMm };
  return rowsAcrossBed(across).rowsMm.flatMap((acrossMm, row) =>
    alongRow({
      lengthMm: bedLengthMm,
      spacingMm: inRowMm,
      moved: layout === 'offset' && row % 2 === 1,
      acrossMm,
    }),
  );
}

function alongRow(row: {
  lengthMm: number;
  spacingMm: number;
  moved: boolean;
  acrossMm: number;
}): PlantPlace[] {
  const { lengthMm, spacingMm, acrossMm } = row;
  const first = row.moved ? spacingMm : spacingMm / 2;
  const plants = Math.max(0, Math.floor((lengthMm - spacingMm / 2 - first) / spacingMm + 1e-6) + 1);
  return Array.from({ length: plants }, (_, index) => ({ acrossMm, alongMm: first + index * spacingMm }));
}

/** How many plants of a crop a bed holds, as `<crop>.plants-in-plan`, by its widest published in-row spacing. */
export function plantsInPlan(
  crop: Crop,
  wanted: Omit<PlantsInBed, 'inRowMm' | 'bed'> & { readonly bed: Omit<BedWidth, 'betweenRowsMm'> },
): Finding {
  const bed: BedWidth = { ...wanted.bed, betweenRowsMm: crop.spacing.betweenRows.value.low };
  const places = plantPlaces({ ...wanted, bed, inRowMm: crop.spacing.inRow.value.high });
  const lines = wanted.bed.irrigationLines;
  const inputs: FindingInput[] = [
    { name: 'bed-length', value: quantity('length', wanted.bedLengthMm) },
    { name: 'bed-width', value: quantity('length', wanted.bed.bedWidthMm) },
    { name: 'layout', value: choice(`layout-${wanted.layout}`) },
    inputOf('in-row-spacing', inRowSpacing(crop)),
    ...(wanted.layout === 'rows' ? [inputOf('row-spacing', rowSpacing(crop))] : []),
    ...(lines
      ? [
          { name: 'drip-lines', value: count(lines.count) },
          { name: 'off-the-line', value: quantity('length', lines.offsetMm) },
        ]
      : []),
  ];
  return {
    id: `${crop.id}.plants-in-plan`,
    value: places.length === 0 ? none('bed-too-small') : count(places.length),
    method: `plants.layout-${wanted.layout}`,
    inputs,
    sources: crop.spacing.inRow.sources,
  };
}
