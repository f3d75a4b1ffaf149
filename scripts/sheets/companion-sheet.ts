/** The segment companion sheet: what is seen and said, with the cautions of what is shown, its cost and its facts. */
import {
  caution,
  column,
  heading,
  inline,
  keyNumbers,
  list,
  paragraph,
  plainText,
  steps,
  strong,
  table,
  wide,
} from '../document/build.ts';
import type { Block, Inline, Step, TableRow } from '../document/document.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Finding } from '../findings/finding.ts';
import { namesInline } from '../prose/prose.ts';
import type { BeatProse, ProjectRecord, RegionRecord } from '../records/guide.ts';
import { airtime, secondsOf, type SegmentBeat } from '../records/schemas/companion-sheet.ts';
import type { StepHazards } from '../safety/gather.ts';
import { billOfMaterials, type Bill } from '../structures/bill-of-materials.ts';
import { billExhibits } from './bill-exhibits.ts';
import { sownBed } from './build-card.ts';
import { buildExtras, type BuildExtras } from './build-extras.ts';
import { sheetCautions, toolChecklist, type SheetCautions } from './cautions.ts';
import { circumstancesOf } from './circumstances.ts';
import { composeInline } from './compose-prose.ts';
import { longCaption, noSuchStep } from './companion-faults.ts';
import { regionFacts } from './facts.ts';
import { findingName } from './finding-name.ts';
import { kindParts, type KindParts } from './kind-parts.ts';
import type { Exhibit } from './names.ts';
import {
  builtProject,
  contextFor,
  plainFacts,
  type BuiltProject,
  type SheetContext,
  type SheetParts,
} from './sheet-context.ts';

export function companionSheetParts(context: SheetContext): SheetParts {
  const built =
    context.sheet.project === undefined ? undefined : builtProject(context, context.sheet.project);
  return built ? new CompanionSheet(context, built).parts() : { exhibits: new Map() };
}

type ProjectStep = ProjectRecord['steps'][number];

/** A beat with when it starts, in seconds. */
interface TimedBeat {
  readonly beat: SegmentBeat;
  readonly prose: BeatProse;
  readonly start: number;
}

class CompanionSheet {
  readonly #context: SheetContext;
  readonly #built: BuiltProject;
  readonly #bill: Bill;
  readonly #extras: BuildExtras;
  readonly #kind: KindParts;
  /** Of each beat, and then of each step that the segment leaves out. */
  readonly #cautions: SheetCautions;
  readonly #offCameraSteps: readonly ProjectStep[];
  readonly #findings: ReadonlyMap<string, Finding>;
  readonly #beats: readonly TimedBeat[];
  readonly #faults: Diagnostic[] = [];

  constructor(context: SheetContext, built: BuiltProject) {
    this.#context = context;
    this.#built = built;
    const { project, structure } = built;
    this.#bill = billOfMaterials(project, structure);
    this.#extras = buildExtras(context, built);
    this.#kind = kindParts(context, built, sownBed(context, built)?.rows ?? []);
    const known = circumstancesOf(context);
    this.#offCameraSteps = offCamera(context, project);
    const shown = (context.sheet.beats ?? []).map(({ steps: numbers = [] }) => together(project, numbers));
    this.#cautions = sheetCautions(context, [...shown, ...this.#offCameraSteps], {
      ...known,
      conditions: [...(known.conditions ?? []), ...this.#extras.conditions],
    });
    this.#findings = findingsOfBuild(context, built);
    let start = 0;
    this.#beats = (context.sheet.beats ?? []).map((beat, index) => {
      const timed = { beat, prose: context.sheet.beatProse![index]!, start };
      start += secondsOf(beat.length);
      return timed;
    });
    this.#faults.push(...noSuchStep(context, project.steps.length));
  }

  parts(): SheetParts {
    const exhibits: (readonly [string, Exhibit])[] = [
      ['at-a-glance', { wide: true, blocks: () => [this.#glance()] }],
      ['tools', { wide: true, blocks: () => [toolChecklist(this.#context, this.#built.project.tools)] }],
      ...billExhibits(this.#context, this.#built.project, this.#bill),
      ['rundown', { wide: true, blocks: () => [steps(this.#rundown())] }],
      ['captions', { wide: true, blocks: () => this.#captions() }],
      ['facts', { wide: true, blocks: () => this.#facts() }],
      ...this.#extras.exhibits,
    ];
    return {
      exhibits: new Map(exhibits),
      findings: this.#findings,
      ...(this.#cautions.box ? { cautions: this.#cautions.box } : {}),
      closing: () => [...this.#offCamera(), ...this.#beforeAirs()],
      faults: () => this.#faults,
    };
  }

  #say(key: string, values?: Record<string, string | number>): string {
    return this.#context.wording.say(key, values);
  }

  #glance(): Block {
    return keyNumbers([
      { value: this.#context.sheet.runs ?? '', label: this.#say('companion.glance.runs') },
      { value: String(this.#beats.length), label: this.#say('companion.glance.beats') },
      {
        value: this.#context.printer.print(this.#bill.total, { style: 'cell' }),
        label: this.#say('glance.cost'),
      },
    ]);
  }

  /** A beat as an act: the cautions that first arise in it stand before what is said. */
  #rundown(): Step[] {
    const { project } = this.#built;
    return this.#beats.map(({ beat, prose, start }, index) => {
      const first = beat.steps?.[0];
      const step = first === undefined ? undefined : project.steps[first - 1];
      return {
        number: index + 1,
        title: inline(
          this.#say('companion.beat', {
            start: airtime(start),
            end: airtime(start + secondsOf(beat.length)),
            length: beat.length,
          }),
        ),
        cautions: this.#cautions.perStep[index]!,
        body: [
          paragraph([strong(this.#say('companion.seen')), ' ', beat.picture]),
          {
            kind: 'paragraph',
            role: 'body',
            content: inline([strong(this.#say('companion.said')), ' ', ...this.#words(prose.say)]),
          },
          ...(prose.caption
            ? [paragraph([strong(this.#say('companion.caption')), ' ', ...this.#words(prose.caption)])]
            : []),
        ],
        ...(step ? { drawing: this.#kind.drawings.step(step.drawing, index + 1) } : {}),
      };
    });
  }

  /** Each caption as it stands on the screen, with when it is shown. */
  #captions(): readonly Block[] {
    const rows = this.#beats.flatMap(({ prose: { caption: words }, start }, index): TableRow[] => {
      if (!words) return [];
      const content = this.#words(words);
      this.#faults.push(...longCaption(this.#context, plainText(content), index));
      return [{ cells: [inline(airtime(start)), content] }];
    });
    if (rows.length === 0) return [paragraph(this.#say('companion.no-captions'))];
    return [
      table({
        id: 'captions',
        caption: this.#say('companion.captions-caption'),
        columns: [
          column(this.#say('companion.at'), { weight: 0.5 }),
          column(this.#say('companion.on-screen'), { weight: 4 }),
        ],
        groups: [{ rows }],
      }),
    ];
  }

  /** Every number that is said or shown, here and in each other region of the guide. */
  #facts(): readonly Block[] {
    const { guide, facts, printer, wording } = this.#context;
    const names = this.#beats.flatMap(({ prose }) =>
      [...namesInline(prose.say), ...namesInline(prose.caption ?? [])].map(({ name }) => name),
    );
    const here = new Map([...facts.findings, ...this.#findings]);
    const said = [...new Set(names)].filter((name) => here.has(name));
    if (said.length === 0) return [paragraph(this.#say('companion.no-facts'))];
    const others = guide.regions
      .filter(({ id }) => id !== facts.region.id)
      .map((region) => ({
        region,
        findings: findingsElsewhere(this.#context, region),
      }));
    const rows = said.map((name): TableRow => {
      const finding = here.get(name)!;
      const called = findingName(finding, { ...wording, crops: guide.crops });
      return {
        cells: [
          inline(called),
          [strong([printer.print(finding, { style: 'cell' })])],
          ...others.map(({ findings }) => {
            const other = findings.get(name);
            return inline(other ? printer.cellWords(other.value).first : '–');
          }),
        ],
      };
    });
    return [
      table({
        id: 'facts',
        caption: this.#say('companion.facts-caption', { region: facts.region.name }),
        columns: [
          column(this.#say('companion.fact'), { weight: 2 }),
          column(facts.region.name, { weight: 1.2 }),
          ...others.map(({ region }) => column(region.name, { weight: 1.2 })),
        ],
        groups: [{ rows }],
        notes: [this.#say('companion.facts-note', { region: facts.region.name })],
      }),
    ];
  }

  /** What the segment leaves out hurts all the same: whoever builds along is told. Numbers go on after the beats. */
  #offCamera(): readonly Block[] {
    const left = this.#offCameraSteps
      .map((step, index) => ({ step, number: this.#beats.length + index + 1 }))
      .filter(({ number }) => this.#cautions.perStep[number - 1]!.length > 0);
    if (left.length === 0) return [];
    return [
      heading(2, 'off-camera', this.#say('companion.off-camera')),
      paragraph(this.#say('companion.off-camera-lead')),
      wide(
        left.flatMap(({ step, number }) => [
          heading(
            3,
            `off-camera-${number}`,
            this.#say('companion.off-camera-step', { number, title: step.title }),
          ),
          ...this.#cautions.perStep[number - 1]!.map(caution),
        ]),
      ),
    ];
  }

  #beforeAirs(): readonly Block[] {
    const { region } = this.#context.facts;
    return [
      heading(2, 'before-it-airs-again', this.#say('companion.again')),
      list(
        false,
        ['again-dates', 'again-county', 'again-prices', 'again-cautions'].map((key) => [
          paragraph(this.#say(`companion.${key}`, { region: region.name })),
        ]),
      ),
    ];
  }

  #words(prose: BeatProse['say']): readonly Inline[] {
    const { facts, printer, suggest } = this.#context;
    const { content, diagnostics } = composeInline(prose, {
      scope: {
        facts: plainFacts(this.#context),
        findings: new Map([...facts.findings, ...this.#findings]),
        exhibits: new Map(),
      },
      printer,
      suggest,
    });
    this.#faults.push(...diagnostics.filter((next) => !this.#faults.some((told) => isSame(told, next))));
    return content;
  }
}

/** A caption is read twice, and its faults are told once. */
const isSame = (a: Diagnostic, b: Diagnostic): boolean => JSON.stringify(a) === JSON.stringify(b);

/** The steps of a project that no beat shows, in their order. */
function offCamera({ sheet }: SheetContext, { steps: all }: ProjectRecord): readonly ProjectStep[] {
  const shown = new Set((sheet.beats ?? []).flatMap(({ steps: numbers = [] }) => numbers));
  return all.flatMap((step, index) => (shown.has(index + 1) ? [] : [step]));
}

/** What a beat uses and does: all that its steps do. */
function together({ steps: all }: ProjectRecord, numbers: readonly number[]): StepHazards {
  const shown = numbers.flatMap((number) => all[number - 1] ?? []);
  return {
    tools: shown.flatMap(({ tools }) => tools),
    materials: shown.flatMap(({ materials }) => materials),
    actions: shown.flatMap(({ actions }) => actions),
  };
}

/** What a build comes to in the region of a context. */
function findingsOfBuild(context: SheetContext, built: BuiltProject): ReadonlyMap<string, Finding> {
  const findings = [
    ...built.structure.findings,
    ...billOfMaterials(built.project, built.structure).findings,
    ...(sownBed(context, built)?.findings ?? []),
    ...buildExtras(context, built).findings,
  ];
  return new Map(findings.map((finding) => [finding.id, finding]));
}

/** By region and project; worked out once for all sheets of a guide. */
const knownElsewhere = new WeakMap<SheetContext['guide'], Map<string, ReadonlyMap<string, Finding>>>();

/** The same names in another region; nothing is printed there. */
function findingsElsewhere(context: SheetContext, region: RegionRecord): ReadonlyMap<string, Finding> {
  const { guide, sheet } = context;
  const known = knownElsewhere.get(guide) ?? new Map<string, ReadonlyMap<string, Finding>>();
  knownElsewhere.set(guide, known);
  const key = `${region.id} ${sheet.project}`;
  const findings = known.get(key) ?? workedOutFor(context, region);
  known.set(key, findings);
  return findings;
}

function workedOutFor(context: SheetContext, region: RegionRecord): ReadonlyMap<string, Finding> {
  const { crops, publisher } = context.guide;
  const facts = regionFacts(region, { crops, year: publisher.year });
  const elsewhere = contextFor({ ...context, facts });
  const built = builtProject(elsewhere, context.sheet.project!);
  return new Map([...facts.findings, ...(built ? findingsOfBuild(elsewhere, built) : [])]);
}
