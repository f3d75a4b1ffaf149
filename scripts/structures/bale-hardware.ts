/**
 * What sashes need beyond bales: hinges and the boards they are screwed to, screens, straps, hooks, covers for missing
 * panes, filler boards. A sash that lies loose on whole panes of glass needs none of it, and then nothing is told of it.
 */
import { choice, count, none, quantity, type Finding, type FindingValue } from '../findings/finding.ts';
import type { BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';
import { ridgeVolumeL } from './bale-findings.ts';
import type { FindingList } from './finding-list.ts';
import { unique } from './finding-list.ts';
import { strapsOver, type PlacedBoard } from './frame-boards.ts';
import type { FrameGeometry, PlacedSash } from './geometry.ts';
import { practice, structureSources } from './practice.ts';
import { missingShare, sashId, screenMassG } from './sash-findings.ts';
import { isHinged, sashPlans } from './sash-plan.ts';
import type { CutPiece } from './structure.ts';

/** Findings of all that. Needs those of the bed, of the sashes and of the hold-downs. */
export function addHardware(made: FindingList, project: BaleColdFrame, geometry: FrameGeometry): void {
  const plans = sashPlans(project);
  geometry.sashes.forEach((sash, index) => {
    const add = adder(made, project, sash);
    if (isHinged(sash) || sash.opens === 'never') {
      add('opens', choice(sash.opens), 'frame.opens');
      add('hinged-to', choice(plans[index]!.hingedTo), 'frame.hinged-to');
    }
    addPanes(add, made, sash);
    const screen = plans[index]!.screen;
    if (screen) {
      const { low, high } = screenMassG(sash, screen);
      made.add(sashId(sash.id, 'screen-weight'), quantity('mass', low, high), {
        method: 'frame.screen-weight',
        inputs: [
          ...made.from({ 'sash-width': sashId(sash.id, 'width'), 'sash-length': sashId(sash.id, 'length') }),
          { name: 'rail', value: quantity('length', screen.railMm) },
          { name: 'screen-thickness', value: quantity('length', screen.thicknessMm) },
        ],
        sources: [structureSources.wood, structureSources.plastics],
      });
    }
    if (sash.gapMm > leastGapMm) add('gap', quantity('length', sash.gapMm), 'frame.low-wall-gap');
    if (sash.fillerMm > 0) add('filler', quantity('length', sash.fillerMm), 'frame.filler');
  });
  addCounts(made, project, geometry);
  addStraps(made, project, geometry);
  addSlope(made, project, geometry);
}

/** A gap thinner than this closes by itself when straw settles. */
const leastGapMm = 3;

type Add = (what: string, value: FindingValue, method: string) => void;

function adder(made: FindingList, project: BaleColdFrame, sash: PlacedSash): Add {
  const sources = [...project.bearing.sources, structureSources.practice].filter(unique);
  return (what, value, method) => {
    made.add(sashId(sash.id, what), value, {
      method,
      inputs: made.from({
        'sash-width': sashId(sash.id, 'width'),
        'sash-length': sashId(sash.id, 'length'),
        'inside-depth': 'frame.inside-depth',
        slope: 'frame.slope',
        bearing: 'frame.bearing',
      }),
      sources,
    });
  };
}

/** How many panes are missing, and the glazed area that is left of the sash's own panes. */
function addPanes(add: Add, made: FindingList, sash: PlacedSash): void {
  const { panes, widthMm, lengthMm, glassShare } = sash;
  if (panes.missing === 0) return;
  const glazedM2 = (widthMm * lengthMm * glassShare) / 1e6;
  const share = missingShare(panes);
  add('panes-missing', count(panes.missing), 'frame.given');
  add('pane-area', quantity('area', glazedM2 * (1 - share)), 'frame.pane-area');
  made.add(sashId(sash.id, 'cover-area'), quantity('area', glazedM2 * share), {
    method: 'frame.cover-area',
    inputs: made.from({
      'pane-area': sashId(sash.id, 'pane-area'),
      'panes-missing': sashId(sash.id, 'panes-missing'),
    }),
    sources: made.get(sashId(sash.id, 'pane-area')).sources,
  });
}

const counts = [
  ['hinges', 'frame.hinges'],
  ['screens', 'frame.screens'],
  ['hooks', 'frame.hooks'],
  ['pane-covers', 'frame.pane-covers'],
  ['filler-boards', 'frame.filler-boards'],
] as const;

function addCounts(made: FindingList, project: BaleColdFrame, geometry: FrameGeometry): void {
  const { sashes } = geometry;
  const hinged = sashes.filter(isHinged).length;
  const numbers: Readonly<Record<(typeof counts)[number][0], number>> = {
    hinges: hinged * (project.hinges?.perSash ?? 0),
    screens: sashes.filter(({ screenMm }) => screenMm > 0).length,
    hooks: sashes.filter(({ holdDown }) => holdDown === 'hook').length * practice.hooksPerSash,
    'pane-covers': sashes.reduce((sum, { panes }) => sum + panes.missing, 0),
    'filler-boards': geometry.boards.filter(({ role }) => role === 'filler-board').length,
  };
  for (const [name, method] of counts) {
    if (numbers[name] === 0) continue;
    made.add(`frame.${name}`, count(numbers[name]), {
      method,
      inputs: made.from({ sashes: 'frame.sashes' }),
      sources: name === 'hinges' && project.hinges ? project.hinges.sources : [structureSources.practice],
    });
  }
}

/**
 * A strap over a sash goes all the way round: over it, down outside both long walls, and under the bed, where it is laid
 * before the walls are. One over a hinge board goes round its wall and holds it by the weight of its bales. That over a
 * sash keeps it from flying off; it is not counted on to hold the sash shut.
 */
function addStraps(made: FindingList, project: BaleColdFrame, geometry: FrameGeometry): void {
  const strapped = geometry.sashes.filter(({ holdDown }) => holdDown === 'strap');
  const boards = hingeBoards(geometry);
  const number = strapped.length + boards.reduce((sum, board) => sum + strapsOver(board), 0);
  if (number === 0) return;
  const heights = { 'poleward-height': 'frame.poleward-height', 'equator-height': 'frame.equator-height' };
  made.add('frame.straps', count(number), {
    method: 'frame.straps',
    inputs: made.from({ sashes: 'frame.sashes' }),
    sources: [structureSources.practice],
  });
  if (strapped.length > 0) {
    const longest = Math.max(...strapped.map(({ lengthMm }) => lengthMm));
    const { outsideDepthMm, polewardHeightMm, equatorHeightMm } = geometry;
    const overMm = Math.max(longest, outsideDepthMm);
    const lengthMm = outsideDepthMm + polewardHeightMm + equatorHeightMm + overMm + practice.knotMm;
    made.add('frame.sash-strap', quantity('length', lengthMm), {
      method: 'frame.sash-strap',
      inputs: made.from({ 'outside-depth': 'frame.outside-depth', ...heights }),
      sources: [structureSources.practice],
    });
  }
  if (boards.length > 0) {
    made.add('frame.board-strap', quantity('length', boardStrapMm(project, geometry, boards)), {
      method: 'frame.board-strap',
      inputs: made.from(heights),
      sources: [structureSources.practice],
    });
  }
}

/** Round the wall that takes the longest: twice its height and thickness, the board, and the knot. */
function boardStrapMm(
  { walls }: BaleColdFrame,
  geometry: FrameGeometry,
  boards: readonly PlacedBoard[],
): number {
  const onTall = boards.some((board) => isOnTallWall(board, geometry));
  const wall = onTall ? 'poleward' : 'west';
  const bales = geometry.bales.filter((bale) => bale.wall === wall);
  const { from, to } = bales[0]!.box;
  const thicknessMm = onTall ? to.y - from.y : to.x - from.x;
  const heightMm = onTall ? geometry.polewardHeightMm : (to.z - from.z) * walls.others.courses;
  return 2 * (heightMm + thicknessMm + boards[0]!.thicknessMm) + practice.knotMm;
}

function isOnTallWall({ under }: PlacedBoard, { insideDepthMm }: FrameGeometry): boolean {
  return under.every(({ y }) => y > insideDepthMm);
}

function hingeBoards({ boards }: FrameGeometry): readonly PlacedBoard[] {
  return boards.filter(({ role }) => role === 'hinge-board');
}

/** The ridge of straw, and a slope that is less than the usual inch in a foot. */
function addSlope(made: FindingList, project: BaleColdFrame, geometry: FrameGeometry): void {
  const { insideDepthMm, polewardHeightMm, equatorHeightMm, ridge } = geometry;
  if (ridge) {
    const source = { inputs: [], sources: [project.priceSource] };
    made.add(
      'frame.ridge-rise',
      project.slope?.rise ? quantity('length', project.slope.rise.low) : none('no-ridge'),
      {
        method: 'frame.given',
        ...source,
      },
    );
    made.add('frame.ridge-straw', quantity('volume', ridgeVolumeL(geometry)), {
      method: 'frame.ridge-straw',
      inputs: made.from({ 'ridge-rise': 'frame.ridge-rise' }),
      sources: [structureSources.practice],
    });
  }
  const riseMm = polewardHeightMm - equatorHeightMm;
  if (insideDepthMm <= riseMm * practice.usualRunOverRise + 1) return;
  made.add('frame.rise-for-usual-slope', quantity('length', insideDepthMm / practice.usualRunOverRise), {
    method: 'frame.rise-for-usual-slope',
    inputs: made.from({ 'inside-depth': 'frame.inside-depth', slope: 'frame.slope' }),
    sources: [structureSources.slope],
  });
}

/** What the counts of parts follow from; nothing for what the frame has none of. */
export function hardwareCounts(made: FindingList): Readonly<Record<string, Finding>> {
  const names = ['hinges', 'screens', 'straps', 'hooks', 'pane-covers', 'filler-boards', 'weight-boards'];
  const known = new Map(made.all().map((finding) => [finding.id, finding]));
  return Object.fromEntries(
    names.flatMap((name) => {
      const finding = known.get(`frame.${name}`);
      return finding ? [[name, finding]] : [];
    }),
  );
}

/** Boards as pieces to cut: hinge boards and rest boards. Adds the findings that give their lengths. */
export function hardwarePieces(
  made: FindingList,
  project: BaleColdFrame,
  geometry: FrameGeometry,
): readonly CutPiece[] {
  const nominals = { 'hinge-board': project.hinges?.board, 'rest-board': project.slope?.board };
  return geometry.boards.flatMap((board): CutPiece[] => {
    if (board.role === 'filler-board' || board.role === 'weight-board') return [];
    const nominal = nominals[board.role];
    if (nominal === undefined) return [];
    const id = `frame.${board.role}-${board.sashes[0]!.toLowerCase()}`;
    made.add(id, quantity('length', board.lengthMm), {
      method: `frame.${board.role}`,
      inputs: made
        .from(Object.fromEntries(board.sashes.map((letter) => [`sash-${letter}`, sashId(letter, 'width')])))
        .map((input) => ({ ...input, name: 'sash-width' })),
      sources: [structureSources.practice],
    });
    return [{ role: board.role, nominal, length: id, lengthMm: board.lengthMm, number: 1 }];
  });
}
