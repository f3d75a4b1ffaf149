/** Finds what does not add up in how sashes are hinged, glazed, screened and held down. */
import type { BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';
import type { StructureFault } from './faults.ts';
import { wallSize, type FrameSizes } from './geometry.ts';
import { isHinged, sashPlans, type SashPlan } from './sash-plan.ts';

/** Inches and millimetres do not convert without a remainder; less than this is none. */
const slackMm = 1e-6;

export function hardwareFaults(project: BaleColdFrame, sizes: FrameSizes): readonly StructureFault[] {
  return [
    ...sizes.sashes.flatMap((_, index) => [
      ...hingeFaults(project, sizes, index),
      ...paneFaults(project, index),
      ...screenFaults(sizes, index),
      ...holdDownFaults(project, sizes, index),
    ]),
    ...boardFaults(sizes),
    ...gustFaults(project, sizes),
    ...missingParts(project),
    ...partsForNothing(project),
  ];
}

function hingeFaults(
  { hinges }: BaleColdFrame,
  { sashes }: FrameSizes,
  index: number,
): readonly StructureFault[] {
  const { plan } = sashes[index]!;
  if (!isHinged(plan)) return [];
  const path = ['sashes', index, 'hinge'];
  const missing: readonly StructureFault[] = hinges ? [] : [{ fault: 'hinges-missing', path }];
  if (plan.hingedTo !== 'sash-beside') return missing;
  const other = sashes[plan.hinge === 'west' ? index - 1 : index + 1]!;
  if (isHinged(other.plan)) return [...missing, { fault: 'hinge-on-hinged', path, beside: other.id }];
  if (other.plan.holdDown === 'none')
    return [...missing, { fault: 'hinge-on-loose', path, beside: other.id }];
  return missing;
}

/** What is left of a wall beside the sash that is hinged on it. */
function boardFaults({
  sashes,
  hingeBoard,
  bearingMm,
  bale,
  poleward,
  others,
}: FrameSizes): readonly StructureFault[] {
  if (!hingeBoard) return [];
  const room = (wall: typeof poleward): number => wallSize(bale, wall).thicknessMm - bearingMm;
  const needs = (to: string): boolean => sashes.some(({ plan }) => plan.hingedTo === to);
  const rooms = [
    ...(needs('board-on-tall-wall') ? [room(poleward)] : []),
    ...(needs('board-on-side-wall') ? [room(others)] : []),
  ];
  const roomMm = Math.min(...rooms);
  if (rooms.length === 0 || hingeBoard.widthMm <= roomMm + slackMm) return [];
  return [{ fault: 'hinge-board-no-room', path: ['hinges', 'board'], boardMm: hingeBoard.widthMm, roomMm }];
}

function paneFaults({ sashes }: BaleColdFrame, index: number): readonly StructureFault[] {
  const panes = sashes[index]?.panes;
  if (panes?.missing === undefined) return [];
  const { number, missing, cover } = panes;
  const path = ['sashes', index, 'panes'];
  if (number === undefined) return [{ fault: 'panes-not-counted', path }];
  if (missing >= number) return [{ fault: 'panes-all-missing', path: [...path, 'missing'], number, missing }];
  return cover === undefined ? [{ fault: 'panes-open', path: [...path, 'missing'], number, missing }] : [];
}

function screenFaults({ sashes }: FrameSizes, index: number): readonly StructureFault[] {
  const { widthMm, lengthMm, plan } = sashes[index]!;
  const least = Math.min(widthMm, lengthMm);
  if (!plan.screen || 2 * plan.screen.railMm < least) return [];
  return [
    {
      fault: 'screen-rail-too-wide',
      path: ['sashes', index, 'screen', 'rail'],
      railMm: plan.screen.railMm,
      widthMm: least,
    },
  ];
}

function holdDownFaults(
  { holdDowns }: BaleColdFrame,
  { sashes }: FrameSizes,
  index: number,
): readonly StructureFault[] {
  return sashes[index]!.plan.holdDown === 'weight' && !holdDowns
    ? [{ fault: 'weights-missing', path: ['sashes', index, 'holdDown'] }]
    : [];
}

/** A gust to hold sashes in asks for sashes that all lie loose under weights, and for what one weight weighs. */
function gustFaults({ holdDowns, parts }: BaleColdFrame, { sashes }: FrameSizes): readonly StructureFault[] {
  if (holdDowns?.forGust === undefined) return [];
  const path = ['holdDowns', 'forGust'];
  const other = sashes.find(({ plan }) => isHinged(plan) || plan.holdDown !== 'weight');
  const weighed = parts.some(({ count, mass }) => count === 'hold-downs' && mass !== undefined);
  return [
    ...(other ? [{ fault: 'gust-needs-weights', path, sash: other.id } as const] : []),
    ...(weighed ? [] : [{ fault: 'gust-needs-mass', path } as const]),
  ];
}

type Counted = 'hinges' | 'screens' | 'straps' | 'hooks' | 'pane-covers' | 'filler-boards' | 'weight-boards';

/** What each new count of parts is for, and whether these sashes have any of it. */
function wanted(project: BaleColdFrame): Readonly<Record<Counted, boolean>> {
  const plans = sashPlans(project);
  const some = (is: (plan: SashPlan) => boolean): boolean => plans.some(is);
  return {
    hinges: some(isHinged),
    screens: some(({ screen }) => screen !== undefined),
    straps: some(({ holdDown, hingedTo }) => holdDown === 'strap' || hingedTo.startsWith('board-on-')),
    hooks: some(({ holdDown }) => holdDown === 'hook'),
    'pane-covers': some(({ panes }) => panes.missing > 0 && panes.cover !== undefined),
    'filler-boards': some(({ filler }) => filler),
    'weight-boards': project.holdDowns?.forGust !== undefined,
  };
}

const spoken: Readonly<Record<Counted, string>> = {
  hinges: 'hinges',
  screens: 'insect screens',
  straps: 'straps',
  hooks: 'hooks with eyes',
  'pane-covers': 'covers for missing panes',
  'filler-boards': 'filler boards',
  'weight-boards': 'boards to lay under the weights',
};

function missingParts(project: BaleColdFrame): readonly StructureFault[] {
  return Object.entries(wanted(project)).flatMap(([count, needed]): StructureFault[] =>
    needed && !project.parts.some((part) => part.count === count)
      ? [{ fault: 'part-missing', path: ['parts'], count, what: spoken[count as Counted] }]
      : [],
  );
}

/** The same project without the parts that its sashes have no use for. */
export function withoutIdleParts(project: BaleColdFrame): BaleColdFrame {
  const needs: Readonly<Record<string, boolean>> = wanted(project);
  const parts = project.parts.filter(({ count }) => needs[count] !== false);
  return parts.length === project.parts.length ? project : { ...project, parts };
}

function partsForNothing(project: BaleColdFrame): readonly StructureFault[] {
  const needs: Readonly<Record<string, boolean>> = wanted(project);
  return project.parts.flatMap(({ count }, index): StructureFault[] =>
    needs[count] === false ? [{ fault: 'part-for-nothing', path: ['parts', index, 'count'], count }] : [],
  );
}
