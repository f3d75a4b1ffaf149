/**
 * The frame as bodies in space, in millimetres. The origin is the inside corner on the ground at the west end of the
 * equator wall; x runs east, y runs poleward (to the tall wall), z runs up. North of the equator poleward is north.
 *
 * The undersides of all sashes lie in one plane, through the inner top edges of the poleward and the equator wall. Past
 * the inner edge of the equator wall that plane dips below the top of the straw, which gives: the low end of a sash
 * presses in by its bearing times the sine of the slope, about a quarter inch for 3 in at 1 in per ft.
 */
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
}

/** The sizes a frame is laid out from, in millimetres. All are greater than 0. */
export interface FrameSizes {
  readonly bale: BaleSize;
  readonly poleward: { readonly courses: number; readonly lay: Lay };
  readonly others: { readonly courses: number; readonly lay: Lay };
  readonly sashes: readonly {
    readonly id: string;
    readonly widthMm: number;
    readonly lengthMm: number;
    readonly thicknessMm: number;
    readonly glassShare: number;
  }[];
  readonly bearingMm: number;
  readonly stakes: { readonly perBale: number; readonly lengthMm: number };
  readonly soilDepthMm: number;
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
 * Places every bale, sash and stake. The sizes must be ones that faultsOf (bale-cold-frame.ts) finds right; for others the
 * result is without meaning.
 */
export function layFrame(sizes: FrameSizes, hemisphere: Hemisphere): FrameGeometry {
  const poleward = wallSize(sizes.bale, sizes.poleward);
  const others = wallSize(sizes.bale, sizes.others);
  const riseMm = poleward.heightMm - others.heightMm;
  const shortestMm = Math.min(...sizes.sashes.map((sash) => sash.lengthMm));
  const insideDepthMm = runUnder(shortestMm - 2 * sizes.bearingMm, riseMm);
  const insideLengthMm = totalWidth(sizes) - 2 * sizes.bearingMm;
  const { slopeDeg, slantMm } = slopeOver(riseMm, insideDepthMm);
  const walls = layWalls(sizes, insideLengthMm, insideDepthMm);
  const wedge = { depthMm: insideDepthMm, riseMm, baseMm: others.heightMm };
  return {
    hemisphere,
    bales: walls.bales,
    sashes: laySashes(sizes, { insideDepthMm, slopeDeg, slantMm, riseMm, others }),
    stakes: driveStakes(sizes, walls.bales),
    wedges: [
      { wall: 'west', fromX: -others.thicknessMm, toX: 0, ...wedge },
      { wall: 'east', fromX: insideLengthMm, toX: insideLengthMm + others.thicknessMm, ...wedge },
    ],
    insideLengthMm,
    insideDepthMm,
    outsideLengthMm: Math.max(walls.longWallMm, insideLengthMm + 2 * others.thicknessMm),
    outsideDepthMm: others.thicknessMm + insideDepthMm + poleward.thicknessMm,
    polewardHeightMm: poleward.heightMm,
    equatorHeightMm: others.heightMm,
    sideThicknessMm: others.thicknessMm,
    slopeDeg,
    slantMm,
    bearingMm: sizes.bearingMm,
    soilDepthMm: sizes.soilDepthMm,
    gapL: walls.gapL,
  };
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
    const bearingEquatorMm = Math.min(pastEdgeMm, others.thicknessMm / cosine);
    return {
      ...sash,
      x: west,
      upper,
      lower: { y: upper.y - sash.lengthMm * cosine, z: upper.z - sash.lengthMm * sine },
      bearingPolewardMm: sizes.bearingMm,
      bearingEquatorMm,
      overhangMm: pastEdgeMm - bearingEquatorMm,
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
