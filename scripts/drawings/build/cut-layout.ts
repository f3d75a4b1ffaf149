/** Boards to scale, one under another, with the pieces that are cut from each and what is left over. */
import { hatchLines } from '../hatch.ts';
import { estimateTextWidthMm } from '../charts/text-width.ts';
import { path, rectangle, rectanglePoints, text } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';

export interface LaidBoard {
  /** "8 ft (2.4 m)", with how many alike: "2 boards of 8 ft". */
  readonly label: string;
  readonly stockMm: number;
  readonly kerfMm: number;
  readonly pieces: readonly { readonly lengthMm: number; readonly name: string; readonly size: string }[];
  /** Left over, in words; absent for less than a cut. */
  readonly offcut?: { readonly lengthMm: number; readonly size: string; readonly label: string };
}

export interface CutLayoutOptions {
  readonly id: string;
  readonly alternative: string;
  readonly boards: readonly LaidBoard[];
  /** 80 to 175; default 165. */
  readonly widthMm?: number;
}

const barMm = 9;
const pitchMm = 19;
const topMm = 5.4;
const sideMm = 0.5;

export function cutLayout({ id, alternative, boards, widthMm = 165 }: CutLayoutOptions): Scene {
  const longestMm = Math.max(...boards.map(({ stockMm }) => stockMm));
  const scale = (widthMm - 2 * sideMm) / longestMm;
  const items = boards.flatMap((board, index) => drawBoard(board, { top: index * pitchMm, scale }));
  const heightMm = (boards.length - 1) * pitchMm + topMm + barMm + 1;
  return { id, widthMm, heightMm, alternative, items };
}

function drawBoard(board: LaidBoard, { top, scale }: { top: number; scale: number }): readonly SceneItem[] {
  const y = top + topMm;
  const boardWidth = board.stockMm * scale;
  const saw = board.pieces.length === 0 ? 0 : (board.kerfMm / board.pieces.length) * scale;
  let x = sideMm;
  const cuts = board.pieces.flatMap((piece): SceneItem[] => {
    const width = piece.lengthMm * scale;
    const middle = x + width / 2;
    const words = fitting([`${piece.name} ${piece.size}`, piece.size, piece.name], width - 1.6);
    const drawn: SceneItem[] = [
      path(rectangle(x, y, width, barMm), { stroke: 'seen', fill: 'tint' }),
      ...(words === undefined
        ? []
        : [text({ x: middle, y: y + barMm / 2 + 1.2 }, words, { anchor: 'middle', style: 'label' })]),
    ];
    x += width + saw;
    return drawn;
  });
  return [
    text({ x: sideMm, y: top + 3.6 }, board.label, { anchor: 'start', style: 'strong' }),
    path(rectangle(sideMm, y, boardWidth, barMm), { stroke: 'cut', fill: 'paper' }),
    ...cuts,
    ...(board.offcut ? leftOver(board.offcut.label, { x, y, width: sideMm + boardWidth - x }) : []),
    path(rectangle(sideMm, y, boardWidth, barMm), { stroke: 'cut' }),
  ];
}

/** What is left of a board: hatched, with its length where there is room. */
function leftOver(
  label: string,
  { x, y, width }: { x: number; y: number; width: number },
): readonly SceneItem[] {
  if (width < 0.4) return [];
  const lines = hatchLines(rectanglePoints(x, y, width, barMm), { spacingMm: 2, angleDeg: 45 });
  const hatching = lines.length === 0 ? [] : [path(lines, { stroke: 'thin' })];
  const words = fitting([label], width - 3);
  if (words === undefined) return hatching;
  const wordsWidth = estimateTextWidthMm(words, 'label') + 2;
  return [
    ...hatching,
    path(rectangle(x + (width - wordsWidth) / 2, y + 1.6, wordsWidth, barMm - 3.2), { fill: 'paper' }),
    text({ x: x + width / 2, y: y + barMm / 2 + 1.2 }, words, { anchor: 'middle', style: 'label' }),
  ];
}

/** The first of the wordings that is no wider than the room. */
function fitting(wordings: readonly string[], roomMm: number): string | undefined {
  return wordings.find((words) => estimateTextWidthMm(words, 'label') <= roomMm);
}
