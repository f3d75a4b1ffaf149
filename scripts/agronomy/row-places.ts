/** Where rows stand across a bed: their least distances kept, drip lines kept free, what is left over shared out. */

export interface RowField {
  /** Where the middle of the first row may stand at the least, and of the last at the most. */
  readonly from: number;
  readonly to: number;
  /** In order. Every row keeps at least `offsetMm` from each. */
  readonly linesMm: readonly number[];
  readonly offsetMm: number;
}

/** The least distance from one row to the next; whether it may be wider. */
export interface RowGap {
  readonly leastMm: number;
  readonly stretches: boolean;
}

const hair = 1e-6;

/** Lines that lie evenly over a width, as far from its edges as half their distance. */
export function linesAcross(widthMm: number, number: number): readonly number[] {
  return Array.from({ length: number }, (_, index) => ((index + 0.5) * widthMm) / number);
}

/**
 * Each row as near to the last as its distance and the lines allow: no placing needs less room. The rows may run on past
 * `to`, which tells how much more they would need.
 */
export function closestRows(field: RowField, gaps: readonly RowGap[], moreMm = 0): readonly number[] {
  let at = clearOfLines(field.from, field);
  return [
    at,
    ...gaps.map(({ leastMm, stretches }) => {
      at = clearOfLines(at + leastMm + (stretches ? moreMm : 0), field);
      return at;
    }),
  ];
}

/**
 * Rows with the room that is left over shared out evenly between those that may stand wider apart; where none may, all
 * together stand in the middle. `edgeShare` is how much of what each such distance gets goes to either edge as well.
 * Undefined when the rows do not go in.
 */
export function spreadRows(
  field: RowField,
  gaps: readonly RowGap[],
  { edgeShare = 0 }: { readonly edgeShare?: number } = {},
): readonly number[] | undefined {
  const fits = (rows: readonly number[], more = 0): boolean =>
    rows.at(-1)! <= field.to - more * edgeShare + hair;
  const rowsWith = (more: number): readonly number[] =>
    closestRows({ ...field, from: field.from + more * edgeShare }, gaps, more);
  if (!fits(rowsWith(0))) return undefined;
  const most = gaps.some(({ stretches }) => stretches)
    ? mostThat(field.to - field.from + 1, (more) => fits(rowsWith(more), more))
    : 0;
  const widest = Math.max(0, most - 2 * hair);
  const rows = rowsWith(widest);
  const left = field.to - widest * edgeShare - rows.at(-1)!;
  const centred = closestRows({ ...field, from: rows[0]! + left / 2 }, gaps, widest);
  return left > 1e3 * hair && fits(centred, widest) ? centred : rows;
}

/** The most of a measure between nothing and `limit` that fits, found by halving. */
function mostThat(limit: number, fits: (measure: number) => boolean): number {
  let [most, tooMuch] = [0, limit];
  for (let step = 0; step < 60; step += 1) {
    const tried = (most + tooMuch) / 2;
    if (fits(tried)) most = tried;
    else tooMuch = tried;
  }
  return most;
}

/** The first place at or after a point that is clear of every line. */
export function clearOfLines(point: number, { linesMm, offsetMm }: RowField): number {
  return linesMm.reduce(
    (at, line) => (at > line - offsetMm + hair && at < line + offsetMm - hair ? line + offsetMm : at),
    point,
  );
}
