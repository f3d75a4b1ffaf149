/** Cautions put into words, at the step where the hazard arises and in the box at the top. No sheet can leave them out. */
import { cautionBox, inline, strong } from '../document/build.ts';
import { signalWords, type CautionRecord } from '../records/schemas/hazard.ts';
import type { Block, Caution, CautionGroup, Inline } from '../document/document.ts';
import { gatherCautions, type GatheredCautions, type StepHazards } from '../safety/gather.ts';
import type { SheetContext } from './sheet-context.ts';

export interface SheetCautions {
  /** For each step, what is printed before its action. */
  readonly perStep: readonly (readonly Caution[])[];
  /** The box at the top; absent when nothing on the sheet can hurt. */
  readonly box?: Block;
}

export function sheetCautions(context: SheetContext, steps: readonly StepHazards[]): SheetCautions {
  const gathered = gatherCautions(steps, context.guide.hazards);
  if (gathered.all.length === 0) return { perStep: gathered.perStep.map(() => []) };
  const perStep = gathered.perStep.map((ids) => ids.map((id) => cautionInWords(context, id)));
  return { perStep, box: box(context, gathered) };
}

/**
 * The box at the top. Where the sheet has steps, each caution is told whole at its step, so the box names the hazard,
 * what to do, and the step; otherwise the box itself tells hazard and consequence.
 */
function box(context: SheetContext, gathered: GatheredCautions): Block {
  const { guide, wording: { say } } = context;
  const records = gathered.all.map((id) => guide.hazards.cautions.get(id)!);
  const inSteps = gathered.perStep.length > 1;
  const groups = signalWords.flatMap((signal): CautionGroup[] => {
    const ofSignal = records.filter((record) => record.signal === signal);
    if (ofSignal.length === 0) return [];
    const items = ofSignal.map((record) => (inSteps ? briefly(context, record, gathered) : inline([strong(record.hazard), ` ${record.avoidance}`])));
    return [{ signal, signalText: say(`cautions.${signal}`), items }];
  });
  records.forEach((record) => { context.printer.cite(record.sources); });
  const wear = new Intl.ListFormat(guide.publisher.language, { type: 'conjunction' }).format(
    gathered.protection.map((item) => uncapitalized(item)),
  );
  return cautionBox({
    id: 'before-you-start',
    title: say('cautions.title'),
    groups,
    closing: `${gathered.protection.length > 0 ? `${say('cautions.wear', { items: wear })} ` : ''}${say('cautions.closing')}`,
  });
}

function briefly({ wording: { say } }: SheetContext, record: CautionRecord, { perStep }: GatheredCautions): readonly Inline[] {
  const step = perStep.findIndex((ids) => ids.includes(record.id)) + 1;
  return inline([strong(`${record.title}.`), ` ${record.avoidance} ${say('cautions.at-step', { step })}`]);
}

/** `Work gloves` within a sentence; a name such as `N95 mask` keeps its capitals. */
function uncapitalized(words: string): string {
  return /^[A-Z][a-z]/.test(words) ? words.charAt(0).toLowerCase() + words.slice(1) : words;
}

function cautionInWords({ guide, printer, wording: { say } }: SheetContext, id: string): Caution {
  const record = guide.hazards.cautions.get(id);
  if (!record) throw new TypeError(`no caution “${id}”`);
  printer.cite(record.sources);
  return {
    signal: record.signal,
    signalText: say(`cautions.${record.signal}`),
    hazard: inline(record.hazard),
    avoidance: inline(record.avoidance),
  };
}
