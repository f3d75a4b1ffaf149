/** Bodies that drawings of lumber builds share: cut pieces laid out side by side, and rows of young plants. */
import type { Member } from './assembly.ts';
import type { Spot } from './geometry.ts';
import { boxBody, cordBody } from './solids.ts';

/** A rectangle marked on the ground with a stake at each corner and twine around them, from the origin on. */
export function markedRectangle(
  lengthMm: number,
  widthMm: number,
): readonly Pick<Member, 'role' | 'solid' | 'surface'>[] {
  const [half, highMm, twineMm] = [15, 220, 60];
  const around = [
    { x: 0, y: 0 },
    { x: lengthMm, y: 0 },
    { x: lengthMm, y: widthMm },
    { x: 0, y: widthMm },
  ];
  return around.flatMap(({ x, y }, index) => {
    const next = around[(index + 1) % 4]!;
    return [
      {
        role: 'string',
        solid: cordBody({ x, y, z: twineMm }, { ...next, z: twineMm }),
        surface: 'cord' as const,
      },
      {
        role: 'marking-stake',
        solid: boxBody({ x: x - half, y: y - half, z: 0 }, { x: x + half, y: y + half, z: highMm }),
        surface: 'wood' as const,
      },
    ];
  });
}

export interface LoosePiece {
  readonly role: string;
  readonly lengthMm: number;
  /** Across, as it lies. */
  readonly widthMm: number;
  readonly heightMm: number;
  readonly number: number;
}

const gapMm = 30;

/** Pieces on the ground in lanes that run east, the longest first, each lane as long as `laneMm` allows. */
export function layOnGround(
  pieces: readonly LoosePiece[],
  laneMm: number,
): readonly Pick<Member, 'role' | 'solid' | 'surface'>[] {
  const single = pieces
    .flatMap((piece) => Array.from({ length: piece.number }, () => piece))
    .sort((a, b) => b.lengthMm - a.lengthMm);
  const lanes: { y: number; x: number; widthMm: number }[] = [];
  let nextY = 0;
  return single.map(({ role, lengthMm, widthMm, heightMm }) => {
    let lane = lanes.find((open) => open.x + lengthMm <= laneMm + 1 && open.widthMm >= widthMm - 1);
    if (!lane) {
      lane = { x: 0, y: nextY, widthMm };
      lanes.push(lane);
      nextY += widthMm + gapMm;
    }
    const { x, y } = lane;
    lane.x += lengthMm + gapMm;
    const solid = boxBody({ x, y, z: 0 }, { x: x + lengthMm, y: y + widthMm, z: heightMm });
    return { role, solid, surface: 'wood' as const };
  });
}

/** A row is a line with a plant every so often; how many there are is told by the bed plan. */
export function plantRows({
  rows,
  from,
  lengthMm,
  depthMm,
  heightMm,
}: {
  readonly rows: number;
  readonly from: Spot;
  readonly lengthMm: number;
  readonly depthMm: number;
  readonly heightMm: number;
}): readonly Pick<Member, 'role' | 'solid' | 'surface'>[] {
  return Array.from({ length: rows }, (_, index) => {
    const y = from.y + (depthMm * (rows - index - 0.5)) / rows;
    const edge = lengthMm * 0.05;
    const start = { x: from.x + edge, y, z: from.z + 3 };
    const end = { x: from.x + lengthMm - edge, y, z: from.z + 3 };
    const number = 8;
    const plants = Array.from({ length: number }, (_unused, plant) => {
      const x = start.x + ((end.x - start.x) * (plant + 0.5)) / number;
      return { role: 'plant', solid: youngPlant({ x, y, z: from.z }, heightMm), surface: 'plant' as const };
    });
    return [{ role: 'row', solid: cordBody(start, end), surface: 'cord' as const }, ...plants];
  }).flat();
}

/** A pyramid upside down. */
function youngPlant({ x, y, z }: Spot, heightMm: number): Member['solid'] {
  const half = heightMm * 0.35;
  const top = [
    { x: x - half, y: y - half, z: z + heightMm },
    { x: x + half, y: y - half, z: z + heightMm },
    { x: x + half, y: y + half, z: z + heightMm },
    { x: x - half, y: y + half, z: z + heightMm },
  ];
  const foot = { x, y, z };
  return { faces: [top, ...top.map((corner, index) => [corner, top[(index + 1) % 4]!, foot])] };
}
