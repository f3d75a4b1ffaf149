/** Round things at their true size on paper, with a bar to check that the printer kept it. */
import { circle, text } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';
import { box, level, lines, upright } from './shapes.ts';
import { estimateTextWidthMm, lineMm, wrapText } from './text-width.ts';

export interface SizeRulerOptions {
  readonly id: string;
  /** Wide enough for the largest circle and for the bar. */
  readonly widthMm: number;
  /** In the order in which they stand, from the left. */
  readonly marks: readonly { readonly diameterMm: number; readonly label: string }[];
  /** A bar of a known length, cut into equal parts; its label tells how long it must measure. */
  readonly bar: { readonly lengthMm: number; readonly parts: number; readonly label: string };
  readonly alternative: string;
}

/** One millimetre of the scene is one millimetre of the thing. Circles stand on a common line, in rows if they must. */
export function sizeRuler({ id, widthMm, marks, bar, alternative }: SizeRulerOptions): Scene {
  const items: SceneItem[] = [];
  let y = edgeMm;
  for (const row of fittingRows(marks, widthMm)) {
    const drawn = drawRow(row, widthMm, y);
    items.push(...drawn.items);
    y = drawn.footMm + 4;
  }
  const check = drawBar(bar, widthMm, y);
  return { id, widthMm, heightMm: check.footMm, alternative, items: [...items, ...check.items] };
}

interface Cell {
  readonly diameterMm: number;
  readonly words: readonly string[];
  readonly widthMm: number;
}

interface Part {
  readonly items: readonly SceneItem[];
  readonly footMm: number;
}

/** One row if its labels can be broken short enough for that, else as few rows as their longer lines need. */
function fittingRows(marks: SizeRulerOptions['marks'], widthMm: number): readonly (readonly Cell[])[] {
  const tries = labelWidthsMm.map((labelMm) =>
    rowsOf(
      marks.map((mark) => cellOf(mark, labelMm)),
      widthMm,
    ),
  );
  return tries.find((rows) => rows.length <= 1) ?? tries[0]!;
}

function cellOf({ diameterMm, label }: SizeRulerOptions['marks'][number], labelMm: number): Cell {
  if (!(diameterMm > 0)) throw new RangeError(`a circle needs a diameter: ${diameterMm} mm`);
  const words = wrapText(label, 'label', Math.max(diameterMm, labelMm));
  const wordsMm = Math.max(...words.map((part) => estimateTextWidthMm(part, 'label')));
  return { diameterMm, words, widthMm: Math.max(diameterMm + 2 * edgeMm, wordsMm) };
}

function rowsOf(cells: readonly Cell[], widthMm: number): readonly (readonly Cell[])[] {
  const rows: Cell[][] = [];
  let used = Infinity;
  for (const cell of cells) {
    if (used + gapMm + cell.widthMm > widthMm) {
      rows.push([]);
      used = -gapMm;
    }
    rows.at(-1)!.push(cell);
    used += gapMm + cell.widthMm;
  }
  return rows;
}

/** Cells share the width of the row evenly when there is more than they need, up to a comfortable gap. */
function drawRow(cells: readonly Cell[], widthMm: number, topMm: number): Part {
  const used = cells.reduce((sum, cell) => sum + cell.widthMm, 0);
  const gap = Math.min(4 * gapMm, Math.max(gapMm, (widthMm - used) / Math.max(1, cells.length - 1)));
  const ground = topMm + Math.max(...cells.map(({ diameterMm }) => diameterMm));
  const items: SceneItem[] = [];
  let x = 0;
  for (const { diameterMm, words, widthMm: cellMm } of cells) {
    const middle = x + cellMm / 2;
    const centre = { x: middle, y: ground - diameterMm / 2 };
    items.push(circle(centre, diameterMm / 2, { fill: 'tint', stroke: 'seen', hue: 'green' }));
    words.forEach((part, index) => {
      items.push(text({ x: middle, y: ground + 4.4 + index * lineMm }, part, { anchor: 'middle' }));
    });
    x += cellMm + gap;
  }
  const lineCount = Math.max(...cells.map(({ words }) => words.length));
  return {
    items: [...lines([level(ground, 0, x - gap)], 'thin'), ...items],
    footMm: ground + 1.4 + lineCount * lineMm,
  };
}

function drawBar({ lengthMm, parts, label }: SizeRulerOptions['bar'], widthMm: number, topMm: number): Part {
  if (lengthMm + 2 * edgeMm > widthMm) throw new RangeError(`a bar of ${lengthMm} mm in ${widthMm} mm`);
  const partMm = lengthMm / parts;
  const area = { x: edgeMm, y: topMm + 1, width: lengthMm, height: 1.8 };
  const solid = Array.from({ length: Math.ceil(parts / 2) }, (_, index) =>
    box({ ...area, x: area.x + 2 * index * partMm, width: partMm }, { fill: 'ink' }),
  );
  const ends = [area.x, area.x + lengthMm].map((x) => upright(x, area.y - 1, area.y + area.height + 1));
  const words = wrapText(label, 'label', widthMm);
  const first = area.y + area.height + 4.6;
  return {
    items: [
      ...solid,
      box(area, { stroke: 'thin' }),
      ...lines(ends, 'thin'),
      ...words.map((part, index) => text({ x: 0, y: first + index * lineMm }, part)),
    ],
    footMm: first + (words.length - 1) * lineMm + 1.2,
  };
}

const edgeMm = 0.4;
const gapMm = 4;

/** Labels break into lines about this wide, the first for choice. */
const labelWidthsMm = [27, 22, 17] as const;
