/**
 * The freeze risk of a year as a band that hangs from the month axis in steps: the deeper, the likelier a freeze. Each
 * chance has a row of its own, shaded from its date in fall to its date in spring, and the date is written in that
 * row beside the edge it belongs to. So two dates share a line of text only if one is in spring and the other in fall.
 */
import type { SceneItem } from '../scene.ts';
import type { DayScale } from './day-scale.ts';
import { placeDates, type DatePlacement } from './freeze-dates.ts';
import { chanceRows, coveredOnce, type ChanceRow, type FreezeDates } from './freeze-rows.ts';
import { box, level, lines, upright } from './shapes.ts';
import { baselineDropMm, lineMm, textBox, type TextItem } from './text-width.ts';

export interface FreezeRiskDrawing {
  readonly items: readonly SceneItem[];
  readonly heightMm: number;
  /** Where the lines of the even chance (50 percent) come out of the steps. */
  readonly evenChance: readonly { readonly x: number; readonly y: number }[];
}

/** Nothing is drawn, and the height is 0, when no date is known. */
export function freezeRisk(options: {
  readonly dates: FreezeDates;
  readonly scale: DayScale;
  readonly topMm: number;
}): FreezeRiskDrawing {
  const { scale, topMm } = options;
  const rows = chanceRows(options.dates, scale);
  const placement = placeDates(rows, scale);
  const rowMm = lineMm * placement.linesPerRow + 0.5;
  const rowTop = (row: number): number => topMm + row * rowMm;
  const dates = placement.dates.map(({ row, line, item }) => ({
    ...item,
    y: rowTop(row) + (line + 0.5) * lineMm + 0.25 + baselineDropMm,
  }));
  return {
    heightMm: rows.length * rowMm,
    items: [...steps(rows, rowTop), ...backings(dates, placement, rows), ...dates],
    evenChance: evenChanceStarts(rows, dates, rowTop),
  };
}

/** The shade, then its treads (where a row is shaded and the one under it is not), then the edges at the dates. */
function steps(rows: readonly ChanceRow[], rowTop: (row: number) => number): readonly SceneItem[] {
  const shades = rows.flatMap(({ shaded }, row) =>
    shaded.map(([from, to]) => {
      const y = rowTop(row) - seamMm;
      return box({ x: from, y, width: to - from, height: rowTop(row + 1) - y }, { fill: 'shade' });
    }),
  );
  const treads = rows.flatMap(({ shaded }, row) =>
    coveredOnce(shaded, rows[row + 1]?.shaded ?? []).map(([from, to]) => level(rowTop(row + 1), from, to)),
  );
  const risers = rows.flatMap(({ edges }, row) =>
    edges.map(({ x }) => upright(x, rowTop(row), rowTop(row + 1))),
  );
  return [...shades, ...lines(treads, 'thin', 'clay'), ...lines(risers, 'cut', 'clay')];
}

/** Paper, or shade, behind a date that a rule or another edge would cross. */
function backings(
  dates: readonly TextItem[],
  placement: DatePlacement,
  rows: readonly ChanceRow[],
): readonly SceneItem[] {
  return dates.flatMap((item, index) => {
    const { left, right, top, bottom } = textBox(item);
    const { shaded, edges } = rows[placement.dates[index]!.row]!;
    const onShade = shaded.some(([from, to]) => from <= left && right <= to);
    if (onShade && !edges.some(({ x }) => x > left && x < right)) return [];
    const area = { x: left - 0.4, y: top, width: right - left + 0.8, height: bottom - top };
    return [box(area, { fill: onShade ? 'shade' : 'paper' })];
  });
}

/** Under its own row, or under the last date that stands in the way. */
function evenChanceStarts(
  rows: readonly ChanceRow[],
  dates: readonly TextItem[],
  rowTop: (row: number) => number,
): FreezeRiskDrawing['evenChance'] {
  const row = rows.findIndex(({ chance }) => chance === 50);
  if (row < 0) return [];
  const foot = rowTop(row + 1);
  return rows[row]!.edges.map(({ x }) => {
    const inTheWay = dates.map(textBox).filter(({ left, right }) => left - 0.6 < x && x < right + 0.6);
    return { x, y: Math.max(foot, ...inTheWay.map(({ bottom }) => bottom)) };
  });
}

/** Rows reach a little into the one above, so that no bright seam shows between two shades. */
const seamMm = 0.08;
