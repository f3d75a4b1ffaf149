/** The drawings of a cold frame with their words: plan, section, one for each step, and the bed plan. */
import { bedPlan } from '../drawings/bed/bed-plan.ts';
import { framePlan } from '../drawings/frame/plan.ts';
import { frameSection } from '../drawings/frame/section.ts';
import { stepDrawing, type StepName } from '../drawings/frame/step-drawing.ts';
import type { FrameWords, PartLetters, SownRow } from '../drawings/frame/words.ts';
import type { Scene } from '../drawings/scene.ts';
import type { BedRow } from '../agronomy/bed-rows.ts';
import type { ProjectRecord } from '../records/guide.ts';
import type { BillCount } from '../records/schemas/project.ts';
import type { Frame } from '../structures/bale-cold-frame.ts';
import type { SheetContext } from './sheet-context.ts';

export interface FrameDrawings {
  readonly plan: Scene;
  readonly section: Scene;
  readonly bedPlan: Scene;
  /** The drawing of a step; `number` makes its id unique. */
  readonly step: (drawing: StepName, number: number) => Scene;
}

export function frameDrawings(options: {
  context: SheetContext;
  project: ProjectRecord;
  frame: Frame;
  rows: readonly BedRow[];
}): FrameDrawings {
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
      alternative: say('drawing.alternative.plan', sizes),
      words,
      letters,
    }),
    section: frameSection(geometry, {
      id: 'frame-section',
      alternative: say('drawing.alternative.section', sizes),
      words,
      letters,
      rows: sown,
    }),
    bedPlan: bedPlan({
      id: 'bed-plan',
      insideLengthMm: geometry.insideLengthMm,
      insideDepthMm: geometry.insideDepthMm,
      hemisphere: geometry.hemisphere,
      rows: rows.map((row, index) => ({
        ...sown[index]!,
        label: say('drawing.bed-row', { number: index + 1, crop: row.crop.name }),
      })),
      words,
      alternative: say('drawing.alternative.bed-plan', {
        ...sizes,
        rows: rows
          .map((row, index) =>
            say('drawing.bed-row-distance', {
              number: index + 1,
              crop: row.crop.name,
              distance: both(row.fromPolewardMm),
            }),
          )
          .join('; '),
      }),
    }),
    step: (drawing, number) =>
      stepDrawing(geometry, drawing, {
        id: `step-${number}-${drawing}`,
        alternative: say(`drawing.alternative.${drawing}`, sizes),
        words,
        letters,
        rows: sown,
      }),
  };
}

/** The letter of each kind of part in the record's list. */
function partLetters(project: ProjectRecord): PartLetters {
  const letterOf = (count: BillCount): string | undefined =>
    project.parts.find((part) => part.count === count)?.letter;
  const kinds = ['bales', 'stakes', 'sashes', 'props', 'loose-straw-bales', 'soil-litres'] as const;
  return Object.fromEntries(
    kinds.flatMap((kind) => (letterOf(kind) === undefined ? [] : [[kind, letterOf(kind)]])),
  );
}

function sownRow({ crop, fromPolewardMm, tall }: BedRow, project: ProjectRecord): SownRow {
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
