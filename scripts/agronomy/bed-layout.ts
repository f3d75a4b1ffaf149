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
import { edgeMm as usualEdgeMm } from './bed-rows.ts';
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
  const linesMm = Array.from(
    { length: lines.count },
    (_, index) => ((index + 0.5) * bed.bedWidthMm) / lines.count,
  );
  const edge = bed.edgeMm ?? usualEdgeMm;
  const field = { from: edge, to: bed.bedWidthMm - edge, linesMm, offsetMm: lines.offsetMm };
  const closest = placed(field, bed.betweenRowsMm);
  if (closest.length === 0) return { rowsMm: [], linesMm };
  if (closest.length === 1) return { rowsMm: [nearestTo(bed.bedWidthMm / 2, field)], linesMm };
  return { rowsMm: placed(field, widestSpacing(field, bed.betweenRowsMm, closest.length)), linesMm };
}

interface Field {
  readonly from: number;
  readonly to: number;
  readonly linesMm: readonly number[];
  readonly offsetMm: number;
}

const hair = 1e-6;

/** Rows from one edge, each as near to the last as the spacing and the lines allow: no placing fits more. */
function placed(field: Field, spacingMm: number): number[] {
  const rows: number[] = [];
  let at = clearOfLines(field.from, field);
  while (at <= field.to + hair) {
    rows.push(at);
    at = clearOfLines(at + spacingMm, field);
  }
  return rows;
}

/** The first place at or after a point that is clear of every line. Lines are in order. */
function clearOfLines(point: number, { linesMm, offsetMm }: Field): number {
  return linesMm.reduce(
    (at, line) => (at > line - offsetMm + hair && at < line + offsetMm - hair ? line + offsetMm : at),
    point,
  );
}

/** The widest spacing at which as many rows still fit, found by halving. */
function widestSpacing(field: Field, leastMm: number, rows: number): number {
  let [fits, fails] = [leastMm, field.to - field.from + 1];
  for (let step = 0; step < 60; step += 1) {
    const tried = (fits + fails) / 2;
    if (placed(field, tried).length >= rows) fits = tried;
    else fails = tried;
  }
  return fits;
}

function nearestTo(middle: number, field: Field): number {
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

export const bedLayouts = ['rows', 'square', 'offset'] as const;
/** `rows`: lines of plants; `square`: the same distance both ways; `offset`: every second row moved half a space. */
export type BedLayoutKind = (typeof bedLayouts)[number];

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

/** How far apart the rows of an offset layout lie, by the distance of the plants: the height of a triangle. */
export const offsetRowShare = Math.sqrt(3) / 2;

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
