/** Composes one sheet for one region: its record's prose, the parts of its kind, its cautions, and how it knows. */
import { plainText } from '../document/build.ts';
import type { Block, Furniture, SheetDocument } from '../document/document.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Guide, SheetRecord } from '../records/guide.ts';
import { buildCardParts } from './build-card.ts';
import { sheetCautions } from './cautions.ts';
import { classHandoutParts } from './class-handout.ts';
import { climateSheetParts } from './climate-sheet.ts';
import { companionSheetParts } from './companion-sheet.ts';
import { composeInline, composeProse, type ProseContext } from './compose-prose.ts';
import { deference } from './deference.ts';
import { factSheetParts } from './fact-sheet.ts';
import type { RegionFacts } from './facts.ts';
import type { NameScope } from './names.ts';
import { plantingChartParts } from './planting-chart.ts';
import type { Explanation, Wording } from './printer.ts';
import { contextFor, plainFacts, type SheetContext, type SheetParts } from './sheet-context.ts';
import { shortFormsOf, withSpokenWords } from './spoken-words.ts';

export interface ComposedSheet {
  readonly document: SheetDocument;
  /** Ids of every finding it prints, in order of first mention. */
  readonly findings: readonly string[];
  /** The same findings, each told in full. */
  readonly explanations: readonly Explanation[];
  readonly diagnostics: readonly Diagnostic[];
}

export interface ComposeOptions {
  readonly guide: Guide;
  readonly sheet: SheetRecord;
  readonly facts: RegionFacts;
  readonly wording: Wording;
  readonly suggest: ProseContext['suggest'];
}

const partsOf: Readonly<Record<SheetRecord['kind'], (context: SheetContext) => SheetParts>> = {
  'planting-chart': plantingChartParts,
  'build-card': buildCardParts,
  'fact-sheet': factSheetParts,
  'climate-sheet': climateSheetParts,
  'class-handout': classHandoutParts,
  'companion-sheet': companionSheetParts,
};

export function composeSheet(options: ComposeOptions): ComposedSheet {
  const { guide, sheet, facts, suggest } = options;
  const context = contextFor(options);
  const parts = partsOf[sheet.kind](context);
  const scope: NameScope = {
    facts: plainFacts(context),
    findings: new Map([...facts.findings, ...(parts.findings ?? [])]),
    exhibits: parts.exhibits,
  };
  const prose: ProseContext = { scope, printer: context.printer, suggest };
  const title = composeInline(sheet.titleProse, prose);
  const description = composeInline(sheet.descriptionProse, prose);
  const body = composeProse(sheet.prose, prose);
  const ending = parts.closing?.(body.blocks) ?? [];
  const faults = [
    ...title.diagnostics,
    ...description.diagnostics,
    ...body.diagnostics,
    ...(parts.faults?.() ?? []),
    ...missingSteps(context, body.blocks),
  ].filter((diagnostic) => !refersToSpoilt(diagnostic, guide));
  const cautions = parts.cautions ?? sheetCautions(context, [ownHazards(sheet)]).box;
  const closing = [...ending, ...(isBuilt(sheet) ? deference(context) : [])];
  const blocks = context.printer.finish([...withCautions(body.blocks, cautions), ...closing]);
  return {
    diagnostics: faults,
    findings: context.printer.printed(),
    explanations: context.printer.explanations(),
    document: withSpokenWords(
      {
        ...frontMatter(context),
        title: plainText(title.content),
        description: plainText(description.content),
        blocks,
      },
      shortFormsOf(guide, context.wording.say),
    ),
  };
}

/** Sheets on building something end with the deference, and tell sizes rather than dates. */
function isBuilt({ kind, project }: SheetRecord): boolean {
  if (kind === 'companion-sheet') return project !== undefined;
  return kind === 'build-card' || kind === 'class-handout';
}

/** A sheet that leaves its steps out would lose the cautions that stand at them. */
function missingSteps({ guide, sheet }: SheetContext, blocks: readonly Block[]): Diagnostic[] {
  const shown = blocks.some(
    (block) =>
      block.kind === 'steps' || (block.kind === 'wide' && block.content.some(({ kind }) => kind === 'steps')),
  );
  const segment = sheet.kind === 'companion-sheet';
  if ((!isBuilt(sheet) && !segment) || shown) return [];
  return [
    {
      code: 'bad-prose',
      severity: 'error',
      message: `This ${sheet.kind.replace('-', ' ')} does not show its steps, so the cautions that belong to them would stand nowhere.`,
      hint: `Put {{${segment ? 'rundown' : 'steps'}}} on a line of its own.`,
      place: guide.placeOf('sheet', sheet.id, '/kind'),
    },
  ];
}

function ownHazards({ tools = [], materials = [], actions = [] }: SheetRecord) {
  return { tools, materials, actions };
}

/** The box of cautions stands after the lead and what is seen at a glance, before anything is done. */
function withCautions(blocks: readonly Block[], box: Block | undefined): readonly Block[] {
  if (!box) return blocks;
  const at = blocks.findIndex((block) => block.kind === 'heading');
  const place = at < 0 ? blocks.length : at;
  return [...blocks.slice(0, place), { kind: 'wide', content: [box] }, ...blocks.slice(place)];
}

/** A name that belongs to a record which is at fault already is no second fault. */
function refersToSpoilt(diagnostic: Diagnostic, guide: Guide): boolean {
  const name = /“([a-z0-9-]+)\./.exec(diagnostic.message)?.[1];
  return diagnostic.code === 'unresolved-name' && name !== undefined && guide.spoilt.has(name);
}

function frontMatter({
  guide,
  sheet,
  facts,
  wording,
}: SheetContext): Omit<SheetDocument, 'title' | 'description' | 'blocks'> {
  const { publisher } = guide;
  const { say, measures, dates } = wording;
  const { region } = facts;
  const notices = [publisher.notice, region.invented ? say('sheet.invented') : undefined].filter(
    (line) => line !== undefined,
  );
  return {
    id: sheet.id,
    kind: sheet.kind,
    language: publisher.language,
    paper: publisher.paper,
    series: say(`kind.${sheet.kind}`),
    number: sheet.number,
    datesFor: say(isBuilt(sheet) ? 'sheet.sizes-for' : 'sheet.dates-for', {
      region: region.name,
      latitude: measures.latitude(facts.latitudeDeg),
      year: String(facts.year),
    }),
    office: publisher.office,
    issued: publisher.issued,
    issuedText: say('sheet.issued', { date: dates.full(publisher.issued) }),
    reviewText: say('sheet.review', { date: dates.full(publisher.review) }),
    ...(publisher.address === undefined ? {} : { address: publisher.address }),
    ...(notices.length > 0 ? { notice: notices.join(' ') } : {}),
    ...(sheet.fit === undefined ? {} : { fit: sheet.fit }),
    furniture: furniture(wording),
  };
}

export function furniture({ say }: Wording): Furniture {
  return {
    pageOf: (page, pages) => say('furniture.page-of', { page, pages }),
    continued: say('furniture.continued'),
    step: (number) => say('furniture.step', { number }),
    workedOut: say('furniture.worked-out'),
    skipToContent: say('furniture.skip'),
    allGuides: say('furniture.all-guides'),
    printVersion: say('furniture.print-version'),
  };
}
