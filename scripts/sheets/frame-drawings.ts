/** The drawings of a cold frame with their words: plan, section and one for each step. */
import { framePlan } from '../drawings/frame/plan.ts';
import { frameSection } from '../drawings/frame/section.ts';
import { stepDrawing, type StepName } from '../drawings/frame/step-drawing.ts';
import type { FrameWords, PartLetters, SownRow } from '../drawings/frame/words.ts';
import type { BedRow } from '../agronomy/bed-rows.ts';
import { baleCounts, type BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';
import type { Frame } from '../structures/bale-cold-frame.ts';
import type { FrameGeometry, PlacedSash } from '../structures/geometry.ts';
import { isHinged } from '../structures/sash-plan.ts';
import type { ProjectDrawings } from './kind-parts.ts';
import type { SheetContext } from './sheet-context.ts';

export function frameDrawings(options: {
  context: SheetContext;
  project: BaleColdFrame;
  frame: Frame;
  rows: readonly BedRow[];
}): ProjectDrawings {
  const {
    context,
    project,
    frame: { geometry },
    rows,
  } = options;
  const { say, measures } = context.wording;
  const both = (mm: number): string => measures.both('length', mm);
  const side = (id: string): string => {
    const value = options.frame.findings.find((finding) => finding.id === id)?.value;
    return value?.kind === 'choice' ? say(`choice.${value.value}`) : '';
  };
  const inGust = options.frame.findings.find(({ id }) => id === 'frame.hold-downs-in-gust');
  const sizes = {
    length: both(geometry.insideLengthMm),
    depth: both(geometry.insideDepthMm),
    outsideLength: both(geometry.outsideLengthMm),
    outsideDepth: both(geometry.outsideDepthMm),
    high: both(geometry.polewardHeightMm),
    low: both(geometry.equatorHeightMm),
    slope: measures.short('angle', geometry.slopeDeg),
    poleward: side('frame.poleward-side'),
    equator: side('frame.equator-side'),
    sashes: geometry.sashes.length,
    tallLay: project.walls.poleward.lay,
    lowLay: project.walls.others.lay,
    tallCourses: project.walls.poleward.courses,
    wall: both(geometry.ridge?.baseMm ?? geometry.polewardHeightMm),
    cut: geometry.bales.some(({ wall, kind }) => wall === 'west' && kind === 'cut') ? 'yes' : 'no',
    boards: inGust ? 'yes' : 'no',
    bags: geometry.sashes.every((sash) => sash.holdDown === 'weight' && !isHinged(sash)) ? 'yes' : 'no',
  };
  const alternative = (drawing: string): string => {
    const more = alsoShown(context, geometry, drawing, sizes);
    const own = drawing === 'vent' && !geometry.sashes.every(({ opens }) => opens === 'low-end');
    return [...(own ? [] : [say(`drawing.alternative.${drawing}`, sizes)]), ...more].join(' ');
  };
  const words: FrameWords = {
    north: say('drawing.north'),
    south: say('drawing.south'),
    sun: say('drawing.sun'),
    plantingMix: say('drawing.planting-mix'),
    ground: say('drawing.ground'),
    bearing: say('drawing.bearing'),
    angle: (degrees) => measures.short('angle', degrees),
    length: (mm) => measures.lengthOnDrawing(mm),
  };
  const letters = partLetters(project);
  const sown = rows.map((row) => sownRow(row, project));
  return {
    plan: framePlan(geometry, {
      id: 'frame-plan',
      alternative: alternative('plan'),
      words,
      letters,
    }),
    section: frameSection(geometry, {
      id: 'frame-section',
      alternative: alternative('section'),
      words,
      letters,
      rows: sown,
    }),
    step: (drawing, number) =>
      stepDrawing(geometry, drawing as StepName, {
        id: `step-${number}-${drawing}`,
        alternative: alternative(drawing),
        words,
        letters,
        rows: sown,
        ...(inGust?.value.kind === 'count' ? { bagsInGust: inGust.value.value } : {}),
      }),
  };
}

/** What a drawing shows of sashes that do not simply lie loose, a sentence for each. */
function alsoShown(
  { wording: { say } }: SheetContext,
  geometry: FrameGeometry,
  drawing: string,
  sizes: Readonly<Record<string, string | number>>,
): readonly string[] {
  const { sashes, ridge, boards } = geometry;
  const each = (
    belongs: (sash: PlacedSash) => boolean,
    name: string,
    values: (sash: PlacedSash) => Readonly<Record<string, string | number>> = () => ({}),
  ): readonly string[] =>
    sashes
      .filter(belongs)
      .map((sash) => say(`drawing.alternative.${name}`, { ...sizes, sash: sash.id, ...values(sash) }));
  const strapped = sashes.some(({ holdDown }) => holdDown === 'strap');
  const alike = sashes.every((sash) => sash.holdDown === 'weight' && !isHinged(sash));
  const hinged = each(isHinged, 'hinged', ({ hinge }) => ({ hinge }));
  const filled = each(({ fillerMm }) => fillerMm > 0, 'filled');
  switch (drawing) {
    case 'plan':
      return [...hinged, ...filled];
    case 'ground':
      return strapped || boards.some(({ role }) => role === 'hinge-board')
        ? [say('drawing.alternative.straps-on-ground')]
        : [];
    case 'gaps':
      return ridge ? [say('drawing.alternative.ridge', sizes)] : [];
    case 'sashes':
      return [
        ...hinged,
        ...each(({ screenMm }) => screenMm > 0, 'screened'),
        ...each(
          ({ panes }) => panes.missing > 0,
          'covered',
          ({ panes }) => ({ missing: panes.missing }),
        ),
        ...filled,
        ...each(({ holdDown }) => holdDown === 'strap', 'strapped'),
        ...each(({ holdDown }) => holdDown === 'hook', 'hooked'),
        ...(alike ? [] : each(({ holdDown }) => holdDown === 'weight', 'weighted')),
      ];
    case 'storm':
      return strapped ? each(({ holdDown }) => holdDown === 'strap', 'strapped') : [];
    case 'vent':
      if (sashes.every(({ opens }) => opens === 'low-end')) return [];
      return sashes.map(({ id, opens }) =>
        opens === 'never'
          ? say('drawing.alternative.vent-never', { sash: id })
          : say('drawing.alternative.vent-of', { ...sizes, sash: id, edge: say(`choice.${opens}`) }),
      );
    default:
      return [];
  }
}

/** The letter of each kind of part in the record's list. */
export function partLetters(project: BaleColdFrame): PartLetters {
  const letterOf = (count: string): string | undefined =>
    project.parts.find((part) => part.count === count)?.letter;
  const kinds = [...baleCounts, 'soil-litres'] as const;
  const ofBoard = (nominal: string | undefined): string | undefined =>
    project.parts.find((part) => part.count === 'cut' && part.nominal === nominal)?.letter;
  const letters = [
    ...kinds.map((kind) => [kind, letterOf(kind)] as const),
    ['twine', project.parts.find(({ material }) => material === 'baling-twine')?.letter] as const,
    ['hinge-board', project.hinges && ofBoard(project.hinges.board)] as const,
    ['rest-board', project.slope?.board && ofBoard(project.slope.board)] as const,
  ];
  return Object.fromEntries(letters.filter(([, letter]) => letter !== undefined));
}

function sownRow({ crop, fromPolewardMm, tall }: BedRow, project: BaleColdFrame): SownRow {
  const name = crop.name.toLowerCase();
  const letter = project.parts.find(
    (part) => part.material === 'vegetable-seed' && part.name.toLowerCase().startsWith(name),
  )?.letter;
  return {
    distanceFromPolewardMm: fromPolewardMm,
    plantSpacingMm: crop.spacing.inRow.value.high,
    tall,
    ...(letter === undefined ? {} : { letter }),
  };
}
