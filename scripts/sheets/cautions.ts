/** Cautions put into words, at the step where the hazard arises and in the box at the top. No sheet can leave them out. */
import { cautionBox, inline } from '../document/build.ts';
import type { Block, Caution } from '../document/document.ts';
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
  const inWords = (id: string): Caution => cautionInWords(context, id);
  if (gathered.all.length === 0) return { perStep: gathered.perStep.map(() => []) };
  return { perStep: gathered.perStep.map((ids) => ids.map(inWords)), box: box(context, gathered, inWords) };
}

function box({ wording: { say } }: SheetContext, gathered: GatheredCautions, inWords: (id: string) => Caution): Block {
  const wear = new Intl.ListFormat('en', { type: 'conjunction' }).format(gathered.protection.map((item) => item.toLowerCase()));
  return cautionBox({
    id: 'before-you-start',
    title: say('cautions.title'),
    cautions: gathered.all.map(inWords),
    closing: `${gathered.protection.length > 0 ? `${say('cautions.wear', { items: wear })} ` : ''}${say('cautions.closing')}`,
  });
}

function cautionInWords({ guide, printer, wording: { say } }: SheetContext, id: string): Caution {
  const record = guide.hazards.cautions.get(id);
  if (!record) throw new TypeError(`no caution “${id}”`);
  printer.cite(record.sources);
  return {
    signal: record.signal,
    signalText: say(`cautions.${record.signal}`),
    hazard: inline(record.hazard.trim()),
    avoidance: inline(record.avoidance.trim()),
  };
}
