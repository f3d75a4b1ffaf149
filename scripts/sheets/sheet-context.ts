import { baleColdFrame, isFrame, type Frame } from '../structures/bale-cold-frame.ts';
import type { Guide, SheetRecord } from '../records/guide.ts';
import type { Block } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import { dateWords } from '../wording/dates.ts';
import { measuresFor } from '../wording/measures.ts';
import { phrasebook } from '../wording/phrases.ts';
import type { RegionFacts } from './facts.ts';
import type { Exhibit } from './names.ts';
import { Printer, type Wording } from './printer.ts';

/** What a composer of one kind of sheet is given. */
export interface SheetContext {
  readonly guide: Guide;
  readonly sheet: SheetRecord;
  readonly facts: RegionFacts;
  readonly wording: Wording;
  readonly printer: Printer;
}

/** What a kind of sheet adds to the prose of its record. */
export interface SheetParts {
  readonly exhibits: ReadonlyMap<string, Exhibit>;
  /** Findings beyond those of the region. */
  readonly findings?: ReadonlyMap<string, Finding>;
  /** The box of cautions, where it follows from more than the sheet's own record. */
  readonly cautions?: Block;
}

export function wordingOf(guide: Guide): Wording {
  const { language, units } = guide.publisher;
  const say = phrasebook(guide.phrases, language);
  return { say, measures: measuresFor({ language, order: units, say }), dates: dateWords(language) };
}

export function contextFor(
  guide: Guide,
  sheet: SheetRecord,
  facts: RegionFacts,
  wording: Wording,
): SheetContext {
  return { guide, sheet, facts, wording, printer: new Printer(wording, guide) };
}

/** The frame of a project in a region; the project was checked before. */
export function frameOf(
  context: SheetContext,
  projectId: string,
): { project: Guide['projects'][number]; frame: Frame } | undefined {
  const project = context.guide.projects.find(({ id }) => id === projectId);
  if (!project) return undefined;
  const frame = baleColdFrame(project, { hemisphere: context.facts.south ? 'south' : 'north' });
  return isFrame(frame) ? { project, frame } : undefined;
}

/** First day of the twelve months that charts show: January 1, or July 1 where summer spans New Year. */
export function chartYear(facts: RegionFacts): { from: number; to: number } {
  return facts.south ? { from: 182, to: 546 } : { from: 1, to: 365 };
}
