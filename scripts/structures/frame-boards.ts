/**
 * The boards of a bale frame: those that hinges are screwed to, the one on a ridge of straw that raises the sashes, and those
 * that carry the low end of a sash that is too short.
 */
import type { FrameGeometry, PlacedSash, Spot } from './geometry.ts';
import { practice } from './practice.ts';

export interface PlacedBoard {
  readonly role: 'hinge-board' | 'rest-board' | 'filler-board' | 'weight-board';
  /** Letters of the sashes that it holds or carries, from west to east. */
  readonly sashes: readonly string[];
  /** Along its longer side. */
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  /** Corners of its underside: west and east on the sun side, east and west on the other. */
  readonly under: readonly [Spot, Spot, Spot, Spot];
  /** From its underside to its upper side. */
  readonly up: Spot;
}

interface Cover {
  readonly sashes: readonly PlacedSash[];
  readonly insideDepthMm: number;
  readonly slopeDeg: number;
}

interface Dressed {
  readonly thicknessMm: number;
  readonly widthMm: number;
}

/** Flat on the tall wall behind the upper ends of sashes that lie side by side; none is longer than a plank of 10 ft. */
export function topHingeBoards(
  { sashes }: Cover,
  { board, wallTopMm }: { readonly board: Dressed; readonly wallTopMm: number },
): readonly PlacedBoard[] {
  return runsOf(sashes, (sash) => sash.hinge === 'top').map((run) => {
    const [fromX, toX] = [run[0]!.x, eastOf(run.at(-1)!)];
    const y = run[0]!.upper.y;
    return {
      role: 'hinge-board',
      sashes: run.map(({ id }) => id),
      lengthMm: toX - fromX,
      ...board,
      under: level(fromX, toX, y, y + board.widthMm, wallTopMm),
      up: { x: 0, y: 0, z: board.thicknessMm },
    };
  });
}

/** Along the outer edge of an end sash that opens sideways, on the side wall and in the plane of the sashes. */
export function sideHingeBoards({ sashes, slopeDeg }: Cover, board: Dressed): readonly PlacedBoard[] {
  const ends = [
    { sash: sashes[0], edge: 'west' },
    { sash: sashes.at(-1), edge: 'east' },
  ] as const;
  return ends.flatMap(({ sash, edge }): PlacedBoard[] => {
    if (sash?.hinge !== edge) return [];
    const fromX = edge === 'west' ? sash.x - board.widthMm : eastOf(sash);
    const corner = (x: number, end: PlacedSash['upper']): Spot => ({ x, y: end.y, z: end.z });
    return [
      {
        role: 'hinge-board',
        sashes: [sash.id],
        lengthMm: sash.lengthMm,
        ...board,
        under: [
          corner(fromX, sash.lower),
          corner(fromX + board.widthMm, sash.lower),
          corner(fromX + board.widthMm, sash.upper),
          corner(fromX, sash.upper),
        ],
        up: squareUp(slopeDeg, board.thicknessMm),
      },
    ];
  });
}

/** On the ridge of straw along the inner edge of the tall wall, under the upper ends of all sashes. */
export function restBoards(
  { sashes, insideDepthMm }: Cover,
  { board, topMm }: { readonly board: Dressed; readonly topMm: number },
): readonly PlacedBoard[] {
  return runsOf(sashes, () => true).map((run) => {
    const [fromX, toX] = [run[0]!.x, eastOf(run.at(-1)!)];
    return {
      role: 'rest-board',
      sashes: run.map(({ id }) => id),
      lengthMm: toX - fromX,
      ...board,
      under: level(fromX, toX, insideDepthMm, insideDepthMm + board.widthMm, topMm - board.thicknessMm),
      up: { x: 0, y: 0, z: board.thicknessMm },
    };
  });
}

/** On the low wall and out over the bed, as far as the sash is short and bears on it. */
export function fillerBoards(
  { sashes, slopeDeg }: Cover,
  wall: { readonly thicknessMm: number; readonly bearingMm: number },
): readonly PlacedBoard[] {
  const slope = (slopeDeg * Math.PI) / 180;
  return sashes
    .filter(({ fillerMm }) => fillerMm > 0)
    .map((sash) => {
      const { thicknessMm } = fillerBoard;
      const upperY = sash.lower.y + wall.bearingMm * Math.cos(slope);
      const plane = (y: number): number => sash.lower.z + (y - sash.lower.y) * Math.tan(slope);
      const corner = (x: number, y: number): Spot => ({ x, y, z: plane(y) - thicknessMm / Math.cos(slope) });
      const [fromX, toX] = [sash.x, eastOf(sash)];
      const depth = (upperY + wall.thicknessMm) / Math.cos(slope);
      return {
        role: 'filler-board',
        sashes: [sash.id],
        lengthMm: Math.max(depth, sash.widthMm),
        widthMm: Math.min(depth, sash.widthMm),
        thicknessMm,
        under: [
          corner(fromX, -wall.thicknessMm),
          corner(toX, -wall.thicknessMm),
          corner(toX, upperY),
          corner(fromX, upperY),
        ],
        up: squareUp(slopeDeg, thicknessMm),
      };
    });
}

/**
 * The boards on which the weights for a storm lie: across all sashes over their end rails, the upper one first. A plank is no
 * longer than 10 ft, and one on the low ends lies on the rails of all its sashes.
 */
export function weightBoards({
  sashes,
  slopeDeg,
}: Pick<FrameGeometry, 'sashes' | 'slopeDeg'>): readonly PlacedBoard[] {
  const slope = (slopeDeg * Math.PI) / 180;
  const { thicknessMm, widthMm, railMm } = practice.weightBoard;
  const board = (run: readonly PlacedSash[], fromUpperMm: number): PlacedBoard => {
    const [fromX, toX] = [run[0]!.x, eastOf(run.at(-1)!)];
    const overMm = Math.max(...run.map((sash) => sash.thicknessMm + sash.screenMm));
    const { upper, screenMm } = run[0]!;
    const corner = (x: number, downMm: number): Spot => ({
      x,
      y: upper.y - downMm * Math.cos(slope) - (overMm - screenMm) * Math.sin(slope),
      z: upper.z - downMm * Math.sin(slope) + (overMm - screenMm) * Math.cos(slope),
    });
    const [far, near] = [fromUpperMm, fromUpperMm + widthMm];
    return {
      role: 'weight-board',
      sashes: run.map(({ id }) => id),
      lengthMm: toX - fromX,
      widthMm,
      thicknessMm,
      under: [corner(fromX, near), corner(toX, near), corner(toX, far), corner(fromX, far)],
      up: squareUp(slopeDeg, thicknessMm),
    };
  };
  const low = (run: readonly PlacedSash[]): number =>
    Math.min(...run.map(({ lengthMm }) => lengthMm)) - railMm;
  const alike = (first: PlacedSash, next: PlacedSash): boolean =>
    Math.abs(first.lengthMm - next.lengthMm) < widthMm - railMm + 25.4;
  return [
    ...runsOf(sashes, () => true).map((run) => board(run, (railMm - widthMm) / 2)),
    ...runsOf(sashes, () => true, alike).map((run) => board(run, low(run))),
  ];
}

/** A panel of boards an inch thick. */
export const fillerBoard = { thicknessMm: 19.05 } as const;

/** Straps that hold a board to its wall: near either end, and no more than so far apart. */
export function strapsOver({ lengthMm }: { readonly lengthMm: number }): number {
  const { fromEndMm, apartMm } = practice.boardStraps;
  return Math.max(2, 1 + Math.ceil((lengthMm - 2 * fromEndMm) / apartMm - 1e-9));
}

/** Where those straps lie along a board, from its start. */
export function strapPlaces(board: { readonly lengthMm: number }): readonly number[] {
  const number = strapsOver(board);
  const fromEnd = Math.min(practice.boardStraps.fromEndMm, board.lengthMm / 4);
  return Array.from(
    { length: number },
    (_, index) => fromEnd + ((board.lengthMm - 2 * fromEnd) * index) / (number - 1),
  );
}

/** Sashes side by side that `belongs` picks, cut into runs that a plank is long enough for. */
function runsOf(
  sashes: FrameGeometry['sashes'],
  belongs: (sash: PlacedSash) => boolean,
  goTogether: (first: PlacedSash, next: PlacedSash) => boolean = () => true,
): readonly (readonly PlacedSash[])[] {
  const runs: PlacedSash[][] = [];
  sashes.forEach((sash, index) => {
    if (!belongs(sash)) return;
    const last = runs.at(-1);
    const follows = last !== undefined && last.at(-1) === sashes[index - 1];
    const fits = follows && last.every((other) => goTogether(other, sash));
    if (fits && eastOf(sash) - last[0]!.x <= practice.longestPlankMm) last.push(sash);
    else runs.push([sash]);
  });
  return runs;
}

function eastOf({ x, widthMm }: PlacedSash): number {
  return x + widthMm;
}

function level(
  fromX: number,
  toX: number,
  fromY: number,
  toY: number,
  z: number,
): readonly [Spot, Spot, Spot, Spot] {
  return [
    { x: fromX, y: fromY, z },
    { x: toX, y: fromY, z },
    { x: toX, y: toY, z },
    { x: fromX, y: toY, z },
  ];
}

function squareUp(slopeDeg: number, thicknessMm: number): Spot {
  const slope = (slopeDeg * Math.PI) / 180;
  return { x: 0, y: -Math.sin(slope) * thicknessMm, z: Math.cos(slope) * thicknessMm };
}
