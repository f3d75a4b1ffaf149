/** Finds what does not add up in how a record says that its sashes get their slope. */
import type { BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';
import type { StructureFault } from './faults.ts';
import { wallSize, type FrameSizes } from './geometry.ts';
import { practice } from './practice.ts';

/** Inches and millimetres do not convert without a remainder; less than this is none. */
const slackMm = 1e-6;

/** Nothing for a record that does not say: then the walls alone tell. */
export function slopeFaults(project: BaleColdFrame, sizes: FrameSizes): readonly StructureFault[] {
  const { slope, walls } = project;
  if (!slope) return [];
  const means = meansOf(walls);
  if (slope.by !== means) {
    const said = { by: spoken[slope.by], walls: described[means] };
    return [{ fault: 'slope-says-otherwise', path: ['slope', 'by'], ...said }];
  }
  if (slope.by !== 'wedge') {
    return slope.rise || slope.board ? [{ fault: 'rise-without-ridge', path: ['slope'] }] : [];
  }
  if (!slope.rise || !slope.board) return [{ fault: 'ridge-incomplete', path: ['slope'] }];
  return sizes.ridge ? ridgeFaults(sizes, sizes.ridge) : [];
}

/** What the walls themselves make of it: of one height, they leave it to a ridge of straw. */
function meansOf({ poleward, others }: BaleColdFrame['walls']): 'lay' | 'courses' | 'wedge' {
  if (poleward.courses !== others.courses) return 'courses';
  return poleward.lay === others.lay ? 'wedge' : 'lay';
}

const spoken = {
  lay: 'how the bales lie',
  courses: 'unequal courses',
  wedge: 'a wedge of straw',
} as const;

const described = {
  lay: 'of as many courses, laid differently',
  courses: 'of unequal courses',
  wedge: 'alike',
} as const;

function ridgeFaults(
  { bale, poleward, bearingMm }: FrameSizes,
  { riseMm, board }: NonNullable<FrameSizes['ridge']>,
): readonly StructureFault[] {
  const heightMm = riseMm - board.thicknessMm;
  const limitMm = wallSize(bale, poleward).thicknessMm * practice.ridgeShare;
  return [
    ...(heightMm < -slackMm
      ? [{ fault: 'ridge-below-board', path: ['slope', 'rise'], riseMm, boardMm: board.thicknessMm } as const]
      : []),
    ...(heightMm > limitMm + slackMm
      ? [{ fault: 'ridge-too-high', path: ['slope', 'rise'], heightMm, limitMm } as const]
      : []),
    ...(board.widthMm < bearingMm - slackMm
      ? [
          {
            fault: 'rest-board-too-narrow',
            path: ['slope', 'board'],
            boardMm: board.widthMm,
            bearingMm,
          } as const,
        ]
      : []),
  ];
}
