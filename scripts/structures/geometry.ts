/**
 * The frame as bodies in space, in millimetres. The origin is the inside corner on the ground at the west end of the
 * equator wall; x runs east, y runs poleward (to the tall wall), z runs up. North of the equator poleward is north.
 *
 * The undersides of all sashes lie in one plane, through the inner top edges of the poleward and the equator wall. Past
 * the inner edge of the equator wall that plane dips below the top of the straw, which gives: the low end of a sash
 * presses in by its bearing times the sine of the slope, about a quarter inch for 3 in at 1 in per ft. More than straw gives
 * way leaves a gap under the sash at the inner edge of that wall.
 */
import {
  fillerBoards,
  restBoards,
  sideHingeBoards,
  topHingeBoards,
  type PlacedBoard,
} from './frame-boards.ts';
import { practice } from './practice.ts';
import type { SashPlan } from './sash-plan.ts';
import {
  baleAsLaid,
  longWallCourse,
  sideWallCourse,
  type BaleSize,
  type Course,
  type Lay,
} from './wall-layout.ts';

export type Hemisphere = 'north' | 'south';
export type WallName = 'poleward' | 'equator' | 'west' | 'east';

export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** An upright box: `from` is its west, equator-side, lower corner. */
export interface Box {
  readonly from: Spot;
  readonly to: Spot;
}

export interface PlacedBale {
  readonly wall: WallName;
  /** Counted from 0 at the ground. */
  readonly course: number;
  readonly kind: 'whole' | 'cut';
  readonly lay: Lay;
  readonly box: Box;
}

export interface PlacedSash {
  readonly id: string;
  /** Its west edge. */
  readonly x: number;
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly thicknessMm: number;
  readonly glassShare: number;
  /** How it is hinged, opened, held down and glazed. */
  readonly hinge: SashPlan['hinge'];
  readonly opens: SashPlan['opens'];
  readonly holdDown: SashPlan['holdDown'];
  readonly panes: SashPlan['panes'];
  /** Thickness of the insect screen that it lies on; 0 without one. */
  readonly screenMm: number;
  /** How far it ends short of the least bearing on the low wall, where a board carries it; 0 for any other. */
  readonly fillerMm: number;
  /** What is left open under it at the inner edge of the low wall when the straw has given way; loose straw fills it. */
  readonly gapMm: number;
  /** Underside of its upper (poleward) and lower edge. */
  readonly upper: { readonly y: number; readonly z: number };
  readonly lower: { readonly y: number; readonly z: number };
  readonly bearingPolewardMm: number;
  readonly bearingEquatorMm: number;
  /** How far it reaches past the outer face of the equator wall, down the slope; 0 when it ends on the wall. */
  readonly overhangMm: number;
  /** How deep its low end presses into the straw. */
  readonly pressMm: number;
}

export interface PlacedStake {
  readonly wall: WallName;
  readonly x: number;
  readonly y: number;
  readonly topMm: number;
  /** Below the ground: negative. */
  readonly bottomMm: number;
}

/** Loose straw tucked between the top of a side wall and the sashes: a triangle seen from the side. */
export interface Wedge {
  readonly wall: 'west' | 'east';
  readonly fromX: number;
  readonly toX: number;
  /** From y = 0, where it is nothing, to y = `depthMm`, where it is `riseMm` high. */
  readonly depthMm: number;
  readonly riseMm: number;
  readonly baseMm: number;
}

export interface FrameGeometry {
  readonly hemisphere: Hemisphere;
  readonly bales: readonly PlacedBale[];
  readonly sashes: readonly PlacedSash[];
  readonly stakes: readonly PlacedStake[];
  readonly wedges: readonly Wedge[];
  readonly insideLengthMm: number;
  readonly insideDepthMm: number;
  /** The whole frame from east to west: the long walls as laid, or the side walls where those reach further. */
  readonly outsideLengthMm: number;
  /** Both long walls and the bed between them. */
  readonly outsideDepthMm: number;
  readonly polewardHeightMm: number;
  readonly equatorHeightMm: number;
  readonly sideThicknessMm: number;
  readonly slopeDeg: number;
  /** From inner top edge to inner top edge, down the slope. */
  readonly slantMm: number;
  readonly bearingMm: number;
  readonly soilDepthMm: number;
  /** Openings that the side walls leave, in litres of loose straw. */
  readonly gapL: number;
  /** Boards that sashes are hinged to or lie on. */
  readonly boards: readonly PlacedBoard[];
  /** The ridge of packed straw that raises the upper ends, under its board. */
  readonly ridge: Ridge | undefined;
}

/** Packed straw along the top of the tall wall. */
export interface Ridge {
  readonly fromX: number;
  readonly toX: number;
  readonly fromY: number;
  readonly toY: number;
  readonly baseMm: number;
  /** Of the straw alone, without the board on it. */
  readonly heightMm: number;
}

/** The sizes a frame is laid out from, in millimetres. All are greater than 0. */
export interface FrameSizes {
  readonly bale: BaleSize;
  readonly poleward: { readonly courses: number; readonly lay: Lay };
  readonly others: { readonly courses: number; readonly lay: Lay };
  readonly sashes: readonly SashSize[];
  /** For a frame whose slope comes of a ridge of straw: how high it is with its board. */
  readonly ridge: { readonly riseMm: number; readonly board: BoardSection } | undefined;
  /** What hinges are screwed to. */
  readonly hingeBoard: BoardSection | undefined;
  readonly bearingMm: number;
  readonly stakes: { readonly perBale: number; readonly lengthMm: number };
  readonly soilDepthMm: number;
}

export interface SashSize {
  readonly id: string;
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly thicknessMm: number;
  readonly glassShare: number;
  readonly plan: SashPlan;
}

export interface BoardSection {
  readonly thicknessMm: number;
  readonly widthMm: number;
}

/** How much higher the upper ends of the sashes lie than the lower ones, from inner edge to inner edge. */
export function riseOf(sizes: FrameSizes): number {
  const heights = [sizes.poleward, sizes.others].map((wall) => wallSize(sizes.bale, wall).heightMm);
  return heights[0]! - heights[1]! + (sizes.ridge?.riseMm ?? 0);
}

/** The sashes that must reach from wall to wall, by which the shortest sets the depth of the bed. */
export function reachingSashes(sizes: FrameSizes): readonly SashSize[] {
  return sizes.sashes.filter(({ plan }) => !plan.filler);
}

/** Height and thickness of a wall as laid. */
export function wallSize(
  bale: BaleSize,
  wall: { courses: number; lay: Lay },
): { heightMm: number; thicknessMm: number } {
  const laid = baleAsLaid(bale, wall.lay);
  return { heightMm: laid.heightMm * wall.courses, thicknessMm: laid.thicknessMm };
}

/** Slope and slant length of a cover that rises `riseMm` over the level distance `runMm`. */
export function slopeOver(
  riseMm: number,
  runMm: number,
): { readonly slopeDeg: number; readonly slantMm: number } {
  return { slopeDeg: (Math.atan2(riseMm, runMm) * 180) / Math.PI, slantMm: Math.hypot(riseMm, runMm) };
}

/** The level distance that a cover of length `slantMm` spans while it rises `riseMm`; 0 when it is too short to. */
export function runUnder(slantMm: number, riseMm: number): number {
  return slantMm > riseMm ? Math.sqrt(slantMm ** 2 - riseMm ** 2) : 0;
}

/**
 * Places every bale, sash and stake. The sizes must be ones that checkProject finds right; for others the
 * result is without meaning.
 */
export function layFrame(sizes: FrameSizes, hemisphere: Hemisphere): FrameGeometry {
  const poleward = wallSize(sizes.bale, sizes.poleward);
  const others = wallSize(sizes.bale, sizes.others);
  const riseMm = riseOf(sizes);
  const shortestMm = Math.min(...reachingSashes(sizes).map((sash) => sash.lengthMm));
  const insideDepthMm = runUnder(shortestMm - 2 * sizes.bearingMm, riseMm);
  const insideLengthMm = totalWidth(sizes) - 2 * sizes.bearingMm;
  const { slopeDeg, slantMm } = slopeOver(riseMm, insideDepthMm);
  const walls = layWalls(sizes, insideLengthMm, insideDepthMm);
  const wedge = { depthMm: insideDepthMm, riseMm, baseMm: others.heightMm };
  const sashes = laySashes(sizes, { insideDepthMm, slopeDeg, slantMm, riseMm, others });
  const polewardHeightMm = others.heightMm + riseMm;
  return {
    hemisphere,
    bales: walls.bales,
    sashes,
    stakes: driveStakes(sizes, walls.bales),
    wedges: [
      { wall: 'west', fromX: -others.thicknessMm, toX: 0, ...wedge },
      { wall: 'east', fromX: insideLengthMm, toX: insideLengthMm + others.thicknessMm, ...wedge },
    ],
    insideLengthMm,
    insideDepthMm,
    outsideLengthMm: Math.max(walls.longWallMm, insideLengthMm + 2 * others.thicknessMm),
    outsideDepthMm: others.thicknessMm + insideDepthMm + poleward.thicknessMm,
    polewardHeightMm,
    equatorHeightMm: others.heightMm,
    sideThicknessMm: others.thicknessMm,
    slopeDeg,
    slantMm,
    bearingMm: sizes.bearingMm,
    soilDepthMm: sizes.soilDepthMm,
    gapL: walls.gapL,
    boards: [
      ...boardsOf(sizes, { sashes, insideDepthMm, slopeDeg, polewardHeightMm }),
      ...fillerBoards(
        { sashes, insideDepthMm, slopeDeg },
        { thicknessMm: others.thicknessMm, bearingMm: sizes.bearingMm },
      ),
    ],
    ridge: sizes.ridge && {
      fromX: sashes[0]!.x,
      toX: sashes.at(-1)!.x + sashes.at(-1)!.widthMm,
      fromY: insideDepthMm,
      toY: insideDepthMm + poleward.thicknessMm,
      baseMm: poleward.heightMm,
      heightMm: sizes.ridge.riseMm - sizes.ridge.board.thicknessMm,
    },
  };
}

function boardsOf(
  { ridge, hingeBoard }: FrameSizes,
  cover: {
    readonly sashes: readonly PlacedSash[];
    readonly insideDepthMm: number;
    readonly slopeDeg: number;
    readonly polewardHeightMm: number;
  },
): readonly PlacedBoard[] {
  const wallTopMm = cover.polewardHeightMm;
  return [
    ...(ridge ? restBoards(cover, { board: ridge.board, topMm: wallTopMm }) : []),
    ...(hingeBoard
      ? [...topHingeBoards(cover, { board: hingeBoard, wallTopMm }), ...sideHingeBoards(cover, hingeBoard)]
      : []),
  ];
}

export function totalWidth(sizes: FrameSizes): number {
  return sizes.sashes.reduce((sum, sash) => sum + sash.widthMm, 0);
}

function layWalls(
  sizes: FrameSizes,
  insideLengthMm: number,
  insideDepthMm: number,
): { readonly bales: readonly PlacedBale[]; readonly longWallMm: number; readonly gapL: number } {
  const { bale, poleward, others } = sizes;
  const { thicknessMm } = baleAsLaid(bale, others.lay);
  const outsideMm = insideLengthMm + 2 * thicknessMm;
  const long = (course: number): Course => longWallCourse(outsideMm, bale.lengthMm, course);
  const side = (course: number): Course => sideWallCourse(insideDepthMm, bale.lengthMm, course);
  const longWallMm = lengthOf(long(0));
  const startX = (insideLengthMm - longWallMm) / 2;
  const bales = [
    ...stack('poleward', poleward, bale, long, { x: startX, y: insideDepthMm }),
    ...stack('west', others, bale, side, { x: -thicknessMm, y: insideDepthMm }),
    ...stack('east', others, bale, side, { x: insideLengthMm, y: insideDepthMm }),
    ...stack('equator', others, bale, long, { x: startX, y: -thicknessMm }),
  ];
  const { heightMm } = baleAsLaid(bale, others.lay);
  const gapsMm = Array.from({ length: others.courses }, (_, course) => side(course).gapMm).reduce(
    (a, b) => a + b,
    0,
  );
  const gapMm3 = 2 * gapsMm * thicknessMm * heightMm;
  return { bales, longWallMm, gapL: gapMm3 / 1e6 };
}

/** All courses of one wall. Long walls start at their west end, side walls at their poleward end. */
function stack(
  wall: WallName,
  { courses, lay }: { readonly courses: number; readonly lay: Lay },
  bale: BaleSize,
  courseAt: (course: number) => Course,
  start: { readonly x: number; readonly y: number },
): readonly PlacedBale[] {
  const { heightMm, thicknessMm } = baleAsLaid(bale, lay);
  const runsEast = wall === 'poleward' || wall === 'equator';
  return Array.from({ length: courses }, (_, course) => {
    const from = course * heightMm;
    let done = 0;
    return courseAt(course).pieces.map(({ kind, lengthMm }): PlacedBale => {
      const [near, far] = [done, done + lengthMm];
      done = far;
      const box = runsEast
        ? {
            from: { x: start.x + near, y: start.y, z: from },
            to: { x: start.x + far, y: start.y + thicknessMm, z: from + heightMm },
          }
        : {
            from: { x: start.x, y: start.y - far, z: from },
            to: { x: start.x + thicknessMm, y: start.y - near, z: from + heightMm },
          };
      return { wall, course, kind, lay, box };
    });
  }).flat();
}

interface Slope {
  readonly insideDepthMm: number;
  readonly slopeDeg: number;
  readonly slantMm: number;
  readonly riseMm: number;
  readonly others: { readonly heightMm: number; readonly thicknessMm: number };
}

/** The upper ends of all sashes lie in one line, with the least bearing; a longer one reaches further down. */
function laySashes(sizes: FrameSizes, slope: Slope): readonly PlacedSash[] {
  const { insideDepthMm, slantMm, others } = slope;
  const cosine = insideDepthMm / slantMm;
  const sine = slope.riseMm / slantMm;
  const upper = {
    y: insideDepthMm + sizes.bearingMm * cosine,
    z: others.heightMm + slope.riseMm + sizes.bearingMm * sine,
  };
  let x = -sizes.bearingMm;
  return sizes.sashes.map((sash): PlacedSash => {
    const west = x;
    x += sash.widthMm;
    const pastEdgeMm = sash.lengthMm - slantMm - sizes.bearingMm;
    const bearingEquatorMm = Math.max(0, Math.min(pastEdgeMm, others.thicknessMm / cosine));
    const { plan, ...size } = sash;
    const { hinge, opens, holdDown, panes } = plan;
    const screenMm = plan.screen?.thicknessMm ?? 0;
    const end = { y: upper.y - screenMm * sine, z: upper.z + screenMm * cosine };
    return {
      ...size,
      hinge,
      opens,
      holdDown,
      panes,
      screenMm,
      fillerMm: plan.filler ? Math.max(0, sizes.bearingMm - pastEdgeMm) : 0,
      gapMm: Math.max(0, bearingEquatorMm * sine - practice.squeezeMm),
      x: west,
      upper: end,
      lower: { y: end.y - sash.lengthMm * cosine, z: end.z - sash.lengthMm * sine },
      bearingPolewardMm: sizes.bearingMm,
      bearingEquatorMm,
      overhangMm: Math.max(0, pastEdgeMm - bearingEquatorMm),
      pressMm: bearingEquatorMm * sine,
    };
  });
}

/** Stakes go down through every bale of the top course, level with its top; a cut piece takes one. */
function driveStakes({ stakes }: FrameSizes, bales: readonly PlacedBale[]): readonly PlacedStake[] {
  return bales
    .filter((bale) => !bales.some(({ wall, course }) => wall === bale.wall && course > bale.course))
    .flatMap(({ wall, kind, box: { from, to } }) => {
      const number = kind === 'whole' ? stakes.perBale : 1;
      const runsEast = wall === 'poleward' || wall === 'equator';
      return Array.from({ length: number }, (_, index): PlacedStake => {
        const share = (index + 0.5) / number;
        return {
          wall,
          x: from.x + (to.x - from.x) * (runsEast ? share : 0.5),
          y: from.y + (to.y - from.y) * (runsEast ? 0.5 : share),
          topMm: to.z,
          bottomMm: to.z - stakes.lengthMm,
        };
      });
    });
}

function lengthOf(course: Course): number {
  return course.pieces.reduce((sum, piece) => sum + piece.lengthMm, 0);
}
