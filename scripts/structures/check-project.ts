/** Finds what does not add up in a build project, before anything is laid out. */
import { middle } from '../quantities/quantity.ts';
import type { BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';
import type { StructureFault } from './faults.ts';
import { hardwareFaults } from './bale-hardware-faults.ts';
import { dressedSize } from './lumber.ts';
import {
  reachingSashes,
  riseOf,
  runUnder,
  slopeOver,
  wallSize,
  type BoardSection,
  type FrameSizes,
} from './geometry.ts';
import { practice } from './practice.ts';
import { sashPlans } from './sash-plan.ts';
import { slopeFaults } from './slope-faults.ts';

/** Inches and millimetres do not convert without a remainder; less than this is none. */
const slackMm = 1e-6;

type Path = StructureFault['path'];

/** The sizes of a project in millimetres; of a range, its middle. */
export function sizesOf(project: BaleColdFrame): FrameSizes {
  const { bale, walls, stakes, slope } = project;
  const plans = sashPlans(project);
  return {
    bale: { lengthMm: middle(bale.length), widthMm: middle(bale.width), heightMm: middle(bale.height) },
    poleward: walls.poleward,
    others: walls.others,
    sashes: project.sashes.map((sash, index) => ({
      id: sash.id,
      widthMm: middle(sash.width),
      lengthMm: middle(sash.length),
      thicknessMm: middle(sash.thickness),
      glassShare: sash.glassShare,
      plan: plans[index]!,
    })),
    ridge:
      slope?.by === 'wedge' && slope.rise
        ? { riseMm: middle(slope.rise), board: boardOf(slope.board) ?? noBoard }
        : undefined,
    hingeBoard: boardOf(project.hinges?.board),
    bearingMm: middle(project.bearing.value),
    stakes: { perBale: stakes.perBale, lengthMm: middle(stakes.length) },
    soilDepthMm: middle(project.soilDepth),
  };
}

function boardOf(nominal: string | undefined): BoardSection | undefined {
  return nominal === undefined ? undefined : dressedSize(nominal);
}

/** A ridge without its board, of which the checks tell. */
const noBoard: BoardSection = { thicknessMm: 0, widthMm: 0 };

/**
 * Every fault of a project, one for each cause. Measures that are not positive are reported alone, since nothing
 * can be worked out from them.
 */
export function checkProject(project: BaleColdFrame): readonly StructureFault[] {
  const sizes = sizesOf(project);
  const letters = [...letterFaults(project), ...partFaults(project), ...hardwareFaults(project, sizes)];
  const impossible = positiveFaults(sizes);
  if (impossible.length > 0) return [...impossible, ...letters];
  const slope = slopeFaults(project, sizes);
  const walls = wallFaults(sizes);
  const sashes = slope.length + walls.length > 0 ? [] : [...widthFaults(sizes), ...lengthFaults(sizes)];
  return [...walls, ...slope, ...sashes, ...stakeAndSoilFaults(sizes), ...letters];
}

function positiveFaults(sizes: FrameSizes): readonly StructureFault[] {
  const measures: readonly (readonly [number, Path])[] = [
    [sizes.bale.lengthMm, ['bale', 'length']],
    [sizes.bale.widthMm, ['bale', 'width']],
    [sizes.bale.heightMm, ['bale', 'height']],
    ...sizes.sashes.flatMap((sash, index): (readonly [number, Path])[] => [
      [sash.widthMm, ['sashes', index, 'width']],
      [sash.lengthMm, ['sashes', index, 'length']],
      [sash.thicknessMm, ['sashes', index, 'thickness']],
    ]),
    [sizes.bearingMm, ['bearing', 'value']],
    [sizes.stakes.lengthMm, ['stakes', 'length']],
    [sizes.soilDepthMm, ['soilDepth']],
  ];
  return measures.filter(([mm]) => !(mm > 0)).map(([, path]) => ({ fault: 'not-positive', path }));
}

function wallFaults(sizes: FrameSizes): readonly StructureFault[] {
  const { bale, bearingMm } = sizes;
  if (bale.lengthMm < bale.widthMm || bale.widthMm < bale.heightMm)
    return [{ fault: 'bale-shape', path: ['bale'] }];
  const poleward = wallSize(bale, sizes.poleward);
  const others = wallSize(bale, sizes.others);
  const faults: StructureFault[] = [];
  if (riseOf(sizes) <= 0) {
    const heights = { polewardMm: poleward.heightMm, equatorMm: others.heightMm };
    faults.push({ fault: 'slope-not-positive', path: ['walls'], ...heights });
  }
  const wallMm = Math.min(poleward.thicknessMm, others.thicknessMm);
  if (bearingMm > wallMm + slackMm) {
    faults.push({ fault: 'bearing-wider-than-wall', path: ['bearing', 'value'], bearingMm, wallMm });
  }
  return faults;
}

function widthFaults({ sashes, bearingMm }: FrameSizes): readonly StructureFault[] {
  const neededMm = 2 * bearingMm;
  const narrow = [...new Set([0, sashes.length - 1])].filter((end) => sashes[end]!.widthMm <= neededMm);
  if (narrow.length > 0) {
    return narrow.map((end) => {
      const path = ['sashes', end, 'width'];
      return { fault: 'sash-too-narrow', path, widthMm: sashes[end]!.widthMm, neededMm };
    });
  }
  const widthMm = sashes.reduce((sum, sash) => sum + sash.widthMm, 0);
  if (widthMm - neededMm >= practice.narrowestBedMm - slackMm) return [];
  return [
    { fault: 'sashes-too-narrow', path: ['sashes'], widthMm, neededMm: neededMm + practice.narrowestBedMm },
  ];
}

/** Nothing is said of slope and length while the walls are wrong: that would be the same cause twice. */
function lengthFaults(sizes: FrameSizes): readonly StructureFault[] {
  const riseMm = riseOf(sizes);
  const reaching = reachingSashes(sizes);
  if (reaching.length === 0) return [{ fault: 'filler-alone', path: ['sashes'] }];
  const neededMm = slopeOver(riseMm, practice.narrowestBedMm).slantMm + 2 * sizes.bearingMm;
  const short = sizes.sashes.flatMap(({ lengthMm, plan }, index): StructureFault[] =>
    !plan.filler && lengthMm < neededMm - slackMm
      ? [{ fault: 'sash-too-short', path: ['sashes', index, 'length'], lengthMm, neededMm }]
      : [],
  );
  if (short.length > 0) return short;
  const shortestMm = Math.min(...reaching.map((sash) => sash.lengthMm));
  const runMm = runUnder(shortestMm - 2 * sizes.bearingMm, riseMm);
  const { slopeDeg } = slopeOver(riseMm, runMm);
  const path = sizes.ridge ? ['slope', 'rise'] : ['walls'];
  if (slopeDeg > practice.steepestSlopeDeg)
    return [{ fault: 'slope-too-steep', path, slopeDeg, limitDeg: practice.steepestSlopeDeg }];
  if (runMm > riseMm * practice.flattestRunOverRise + slackMm)
    return [{ fault: 'slope-too-flat', path, riseMm, runMm }];
  return fillerFaults(sizes, shortestMm);
}

/** A filler board is held by the wall it lies on: it sticks out over the bed by no more than a flake. */
function fillerFaults(sizes: FrameSizes, shortestMm: number): readonly StructureFault[] {
  return sizes.sashes.flatMap(({ lengthMm, plan }, index): StructureFault[] => {
    const gapMm = shortestMm - lengthMm;
    const limitMm = sizes.bearingMm + practice.flakeMm;
    if (!plan.filler || gapMm <= limitMm + slackMm) return [];
    return [{ fault: 'filler-too-far', path: ['sashes', index, 'length'], gapMm, limitMm }];
  });
}

/** A wall that is high for its thickness stands only when each bale is pinned twice, so that it cannot turn. */
function unsteadyFaults(sizes: FrameSizes): readonly StructureFault[] {
  if (sizes.stakes.perBale >= 2) return [];
  return (['poleward', 'others'] as const).flatMap((wall): StructureFault[] => {
    const { heightMm, thicknessMm } = wallSize(sizes.bale, sizes[wall]);
    const times = heightMm / thicknessMm;
    return times > practice.slenderWall ? [{ fault: 'wall-unsteady', path: ['walls', wall], times }] : [];
  });
}

function stakeAndSoilFaults(sizes: FrameSizes): readonly StructureFault[] {
  const heights = [sizes.poleward, sizes.others].map((wall) => wallSize(sizes.bale, wall).heightMm);
  const { lengthMm } = sizes.stakes;
  const neededMm = Math.max(...heights) + practice.stakeInGroundMm;
  const limitMm = Math.min(...heights) - practice.headroomMm;
  const depthMm = sizes.soilDepthMm;
  return [
    ...unsteadyFaults(sizes),
    ...(lengthMm < neededMm - slackMm
      ? [{ fault: 'stake-too-short', path: ['stakes', 'length'], lengthMm, neededMm } as const]
      : []),
    ...(depthMm > limitMm + slackMm
      ? [{ fault: 'soil-too-deep', path: ['soilDepth'], depthMm, limitMm } as const]
      : []),
  ];
}

/** Parts and sashes are called by letter on the same drawings, so no two of them may share one. */
function letterFaults(project: BaleColdFrame): readonly StructureFault[] {
  const named: readonly (readonly [string, Path])[] = [
    ...project.parts.map(({ letter }, index) => [letter, ['parts', index, 'letter']] as const),
    ...project.sashes.map(({ id }, index) => [id, ['sashes', index, 'id']] as const),
  ];
  return named
    .filter(([letter], index) => named.findIndex(([other]) => other === letter) < index)
    .map(([letter, path]) => ({ fault: 'letter-twice', path, letter }));
}

function partFaults(project: BaleColdFrame): readonly StructureFault[] {
  return project.parts.flatMap((part, index): StructureFault[] => {
    if (part.count === 'each' && part.number === undefined)
      return [{ fault: 'number-missing', path: ['parts', index] }];
    if (part.count === 'soil-litres' && !(part.pack && middle(part.pack) > 0)) {
      return [{ fault: 'pack-missing', path: ['parts', index] }];
    }
    return [];
  });
}
