import type { Guide, ProjectRecord, SheetRecord } from '../records/guide.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Block } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import { dateWords } from '../wording/dates.ts';
import { measuresFor } from '../wording/measures.ts';
import { phrasebook } from '../wording/phrases.ts';
import type { Structure } from '../structures/structure.ts';
import { structureOf } from '../structures/structures.ts';
import type { RegionFacts } from './facts.ts';
import type { Exhibit, NameScope } from './names.ts';
import { Printer, type Wording } from './printer.ts';

/** What a composer of one kind of sheet is given. */
export interface SheetContext {
  readonly guide: Guide;
  readonly sheet: SheetRecord;
  readonly facts: RegionFacts;
  readonly wording: Wording;
  readonly printer: Printer;
  /** The hint for a name that a sheet does not know, given the names that it does. */
  readonly suggest: (name: string, known: readonly string[]) => string;
}

/** What a kind of sheet adds to the prose of its record. */
export interface SheetParts {
  readonly exhibits: ReadonlyMap<string, Exhibit>;
  /** Findings beyond those of the region. */
  readonly findings?: ReadonlyMap<string, Finding>;
  /** The box of cautions, where it follows from more than the sheet's own record. */
  readonly cautions?: Block;
  /** What stands after the prose, which it is given, and before what every sheet ends with. */
  readonly closing?: (body: readonly Block[]) => readonly Block[];
  /** Faults met while the exhibits were made; asked for when the prose has been composed. */
  readonly faults?: () => readonly Diagnostic[];
}

export function wordingOf(guide: Guide): Wording {
  const { language, units } = guide.publisher;
  const say = phrasebook(guide.phrases, language);
  return { say, measures: measuresFor({ language, order: units, say }), dates: dateWords(language) };
}

export function contextFor(
  records: Pick<SheetContext, 'guide' | 'sheet' | 'facts' | 'wording' | 'suggest'>,
): SheetContext {
  return { ...records, printer: new Printer(records.wording, records.guide) };
}

/** Plain facts that any prose may name. */
export function plainFacts({ guide, facts, wording }: SheetContext): ReadonlyMap<string, string> {
  return new Map([
    ['region', facts.region.name],
    ['year', String(facts.year)],
    ['office', guide.publisher.office],
    ['crop-count', wording.measures.number(facts.crops.length)],
  ]);
}

/** What prose of a record may name on a sheet: plain facts, findings of the region, and those of the sheet itself. */
export function proseContext(
  context: SheetContext,
  own: ReadonlyMap<string, Finding>,
): { scope: NameScope; printer: Printer; suggest: SheetContext['suggest'] } {
  const { facts, printer, suggest } = context;
  const findings = new Map([...facts.findings, ...own]);
  return { scope: { facts: plainFacts(context), findings, exhibits: new Map() }, printer, suggest };
}

/** A project with what it comes to in a region. */
export interface BuiltProject {
  readonly project: ProjectRecord;
  readonly structure: Structure;
}

/** A project in a region; undefined where it does not add up, which the checks have told. */
export function builtProject(context: SheetContext, projectId: string): BuiltProject | undefined {
  const project = context.guide.projects.find(({ id }) => id === projectId);
  if (!project) return undefined;
  const built = structureOf(project, { hemisphere: context.facts.south ? 'south' : 'north' });
  return built.kind === 'structure' ? { project, structure: built.structure } : undefined;
}

/** First day of the twelve months that charts show: January 1, or July 1 where summer spans New Year. */
export function chartYear(facts: RegionFacts): { from: number; to: number } {
  return facts.south ? { from: 182, to: 546 } : { from: 1, to: 365 };
}
