/** What each beat of a segment uses and does, what it leaves out, and where each of its cautions is told. */
import { caution, heading, paragraph, wide } from '../document/build.ts';
import type { Block } from '../document/document.ts';
import type { ProjectRecord } from '../records/guide.ts';
import type { SegmentBeat } from '../records/schemas/companion-sheet.ts';
import type { Circumstances } from '../safety/circumstances.ts';
import { coverageOf, type StepCoverage } from '../safety/coverage.ts';
import type { StepHazards } from '../safety/gather.ts';
import { wordedFor } from '../safety/worded.ts';
import { sheetCautions, type SheetCautions } from './cautions.ts';
import type { SheetContext } from './sheet-context.ts';

type ProjectStep = ProjectRecord['steps'][number];

/** Something that viewers do and the segment does not show. */
interface LeftOut {
  readonly hazards: StepHazards;
  /** Of the step in its project, from 1; absent for what the header of the sheet lists. */
  readonly step?: { readonly number: number; readonly title: string };
}

export interface SegmentHazards {
  /** For each beat, then for each thing left out, what is told there first; and the box. */
  readonly cautions: SheetCautions;
  /** Titles of the cautions told at a beat, counted from 0. */
  readonly titlesAt: (beat: number) => readonly string[];
  /** What the segment leaves out, with its cautions; nothing where all that can hurt is shown. */
  readonly offCamera: () => readonly Block[];
}

/**
 * The cautions of a segment: each stands at the beat where its hazard first arises. What no beat shows is taken to be
 * done all the same, after the last beat, and keeps the number that it has in its project.
 */
export function segmentHazards(
  context: SheetContext,
  project: ProjectRecord | undefined,
  circumstances: Circumstances,
): SegmentHazards {
  const beats = context.sheet.beats ?? [];
  const left = leftOut(context, project);
  const places = [
    ...beats.map((beat) => hazardsOf(beat, project?.steps ?? [])),
    ...left.map((one) => one.hazards),
  ];
  const { say } = context.wording;
  const nameOf = (index: number): string => {
    const { step } = left[index - beats.length] ?? {};
    if (index < beats.length) return say('companion.at-beat', { number: index + 1 });
    return step ? say('companion.at-step-off', { number: step.number }) : say('companion.at-home');
  };
  const cautions = sheetCautions(context, places, circumstances, {
    lead: say('companion.at-beats'),
    nameOf,
  });
  const coverage = (): readonly StepCoverage[] =>
    coverageOf({ id: context.sheet.id, steps: places }, context.guide.hazards, circumstances).steps;
  const title = (id: string): string =>
    wordedFor(context.guide.hazards.cautions.get(id)!, circumstances.audience).title;
  return {
    cautions,
    titlesAt: (beat) => titlesFirstAt(coverage()[beat]!, title),
    offCamera: () => {
      const told = coverage();
      const blocks = left.flatMap(({ step }, index) => {
        const at = beats.length + index;
        if (told[at]!.hazards.length === 0) return [];
        const heard = toldBefore(told[at]!)
          .map(([id, place]) => say('cautions.named-at', { title: title(id), place: nameOf(place - 1) }))
          .join(', ');
        return [
          heading(
            3,
            `off-camera-${index + 1}`,
            step ? say('companion.off-camera-step', step) : say('companion.off-camera-home'),
          ),
          ...cautions.perStep[at]!.map(caution),
          ...(heard === '' ? [] : [paragraph(say('companion.told-before', { cautions: heard }))]),
        ];
      });
      if (blocks.length === 0) return [];
      return [
        heading(2, 'off-camera', say('companion.off-camera')),
        paragraph(say('companion.off-camera-lead')),
        wide(blocks),
      ];
    },
  };
}

/** What a beat uses and does: all that its steps do, and what it lists itself. */
function hazardsOf(beat: SegmentBeat, all: readonly ProjectStep[]): StepHazards {
  const { steps = [], tools = [], materials = [], actions = [] } = beat;
  const shown = steps.flatMap((number): readonly StepHazards[] => {
    const step = all[number - 1];
    return step ? [step] : [];
  });
  return {
    tools: [...shown.flatMap((step) => step.tools), ...tools],
    materials: [...shown.flatMap((step) => step.materials), ...materials],
    actions: [...shown.flatMap((step) => step.actions), ...actions],
  };
}

/** The steps of the project that no beat shows, in their order, and what the header of the sheet lists. */
function leftOut({ sheet }: SheetContext, project: ProjectRecord | undefined): readonly LeftOut[] {
  const shown = new Set((sheet.beats ?? []).flatMap(({ steps = [] }) => steps));
  const steps = (project?.steps ?? []).flatMap((step, index): LeftOut[] =>
    shown.has(index + 1) ? [] : [{ hazards: step, step: { number: index + 1, title: step.title } }],
  );
  const { tools = [], materials = [], actions = [] } = sheet;
  const own = tools.length + materials.length + actions.length === 0;
  return own ? steps : [...steps, { hazards: { tools, materials, actions } }];
}

/** Cautions of a place that stand at an earlier one, themselves or in one that says as much; each once. */
function toldBefore({ step, hazards }: StepCoverage): readonly (readonly [string, number])[] {
  const told = hazards
    .flatMap(({ cautions }) => cautions)
    .filter((place) => place.step < step)
    .map((place) => [place.told === 'covered' ? place.by : place.caution, place.step] as const);
  return [...new Map(told)];
}

function titlesFirstAt({ step, hazards }: StepCoverage, title: (id: string) => string): readonly string[] {
  const ids = hazards
    .flatMap(({ cautions }) => cautions)
    .filter((place) => place.step === step)
    .map((place) => (place.told === 'covered' ? place.by : place.caution));
  return [...new Set(ids)].map(title);
}
