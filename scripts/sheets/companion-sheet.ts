/** The segment companion sheet: what is seen and said, with the cautions of what is shown, its cost and its facts. */
import { column, inline, keyNumbers, paragraph, plainText, steps, strong, table } from '../document/build.ts';
import type { Block, Inline, Step, TableRow } from '../document/document.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Finding } from '../findings/finding.ts';
import { namesInline } from '../prose/prose.ts';
import type { BeatProse } from '../records/guide.ts';
import { airtime, secondsOf, type SegmentBeat } from '../records/schemas/companion-sheet.ts';
import { billOfMaterials, type Bill } from '../structures/bill-of-materials.ts';
import { billExhibits } from './bill-exhibits.ts';
import { sownBed } from './build-card.ts';
import { buildExtras, type BuildExtras } from './build-extras.ts';
import { toolChecklist } from './cautions.ts';
import { circumstancesOf } from './circumstances.ts';
import { captionLimit, captionLines, longCaption } from './companion-captions.ts';
import { beforeItAirs, factsTable, type SaidNumbers } from './companion-facts.ts';
import { noSuchStep } from './companion-faults.ts';
import { segmentHazards, type SegmentHazards } from './companion-hazards.ts';
import { composeInline } from './compose-prose.ts';
import { factSheetParts } from './fact-sheet.ts';
import { findingName } from './finding-name.ts';
import { kindParts, type KindParts } from './kind-parts.ts';
import type { Exhibit } from './names.ts';
import {
  builtProject,
  proseContext,
  type BuiltProject,
  type SheetContext,
  type SheetParts,
} from './sheet-context.ts';

/** The parts of a segment about a project, about a crop, or about both; its findings are those of what it is about. */
export function companionSheetParts(context: SheetContext): SheetParts {
  const { project } = context.sheet;
  const built = project === undefined ? undefined : builtProject(context, project);
  if (project !== undefined && !built) return { exhibits: new Map() };
  return new CompanionSheet(context, built).parts();
}

/** A beat with when it starts, in seconds. */
interface TimedBeat {
  readonly beat: SegmentBeat;
  readonly prose: BeatProse;
  readonly start: number;
}

/** The project that a segment shows, with all that is told of it. */
interface ShownBuild {
  readonly built: BuiltProject;
  readonly bill: Bill;
  readonly extras: BuildExtras;
  readonly kind: KindParts;
}

class CompanionSheet {
  readonly #context: SheetContext;
  readonly #shown: ShownBuild | undefined;
  readonly #crop: SheetParts | undefined;
  readonly #hazards: SegmentHazards;
  readonly #findings: ReadonlyMap<string, Finding>;
  readonly #beats: readonly TimedBeat[];
  readonly #numbers: SaidNumbers;
  readonly #faults: Diagnostic[] = [];

  constructor(context: SheetContext, built: BuiltProject | undefined) {
    this.#context = context;
    this.#shown = built && {
      built,
      bill: billOfMaterials(built.project, built.structure),
      extras: buildExtras(context, built),
      kind: kindParts(context, built, sownBed(context, built)?.rows ?? []),
    };
    this.#crop = context.sheet.crop === undefined ? undefined : factSheetParts(context);
    this.#hazards = segmentHazards(
      context,
      built?.project,
      circumstancesOf(context, this.#shown?.extras.conditions),
    );
    this.#findings = findingsOfSubject(context, built);
    this.#beats = timed(context);
    this.#numbers = {
      said: this.#said(),
      elsewhere: (there) => findingsOfSubject(there, built && builtProject(there, built.project.id)),
    };
    this.#faults.push(...noSuchStep(context, built?.project.steps.length ?? 0));
  }

  parts(): SheetParts {
    const exhibits: (readonly [string, Exhibit])[] = [
      ...(this.#crop?.exhibits ?? []),
      ...this.#buildExhibits(),
      ['at-a-glance', { wide: true, blocks: () => [this.#glance()] }],
      ['clipboard', { wide: true, blocks: () => [this.#clipboard()] }],
      ['rundown', { wide: true, blocks: () => [steps(this.#rundown())] }],
      ['captions', { wide: true, blocks: () => this.#captions() }],
      ['facts', { wide: true, blocks: () => factsTable(this.#context, this.#numbers) }],
    ];
    const { box } = this.#hazards.cautions;
    return {
      exhibits: new Map(exhibits),
      findings: this.#findings,
      ...(box ? { cautions: box } : {}),
      closing: () => [...this.#hazards.offCamera(), ...beforeItAirs(this.#context, this.#numbers)],
      faults: () => this.#faults,
    };
  }

  #buildExhibits(): readonly (readonly [string, Exhibit])[] {
    if (!this.#shown) return [];
    const { built, bill, extras } = this.#shown;
    return [
      ['tools', { wide: true, blocks: () => [toolChecklist(this.#context, built.project.tools)] }],
      ...billExhibits(this.#context, built.project, bill),
      ...extras.exhibits,
    ];
  }

  #say(key: string, values?: Record<string, string | number>): string {
    return this.#context.wording.say(key, values);
  }

  /** How long it runs; of a project also what it costs, how many people it takes and how long. */
  #glance(): Block {
    const shown = this.#shown;
    const ending = (what: string): Finding | undefined =>
      shown?.built.structure.findings.find(({ id }) => id.endsWith(`.${what}`));
    const ofBuild = [
      { finding: shown?.bill.total, label: 'glance.cost' },
      { finding: ending('people'), label: 'companion.glance.people' },
      { finding: ending('time'), label: 'companion.glance.time' },
    ];
    return keyNumbers([
      { value: this.#context.sheet.runs ?? '', label: this.#say('companion.glance.runs') },
      ...(shown ? [] : [{ value: String(this.#beats.length), label: this.#say('companion.glance.beats') }]),
      ...ofBuild.flatMap(({ finding, label }) =>
        finding
          ? [{ value: this.#context.printer.print(finding, { style: 'cell' }), label: this.#say(label) }]
          : [],
      ),
    ]);
  }

  /** The whole segment as one table, to hold in the hand: of each caution its name, to say or to show. */
  #clipboard(): Block {
    const rows = this.#beats.map(({ beat, prose, start }, index): TableRow => {
      const cautions = this.#hazards.titlesAt(index);
      return {
        cells: [
          inline(airtime(start)),
          inline(beat.length),
          inline(beat.picture),
          this.#words(prose.say),
          inline(cautions.length > 0 ? cautions.join('; ') : '–'),
        ],
      };
    });
    return table({
      id: 'clipboard',
      caption: this.#say('companion.clipboard-caption', { runs: this.#context.sheet.runs ?? '' }),
      columns: [
        column(this.#say('companion.at'), { weight: 0.6 }),
        column(this.#say('companion.length'), { weight: 0.7 }),
        column(this.#say('companion.seen-head'), { weight: 2 }),
        column(this.#say('companion.said-head'), { weight: 3.6 }),
        column(this.#say('companion.to-tell'), { weight: 2 }),
      ],
      groups: [{ rows }],
      notes: [this.#say('companion.to-tell-note')],
    });
  }

  /** A beat as an act: the cautions that first arise in it stand before what is said. */
  #rundown(): Step[] {
    return this.#beats.map(({ beat, prose, start }, index) => {
      const first = beat.steps?.[0];
      const step = first === undefined ? undefined : this.#shown?.built.project.steps[first - 1];
      return {
        number: index + 1,
        title: inline(
          this.#say('companion.beat', {
            start: airtime(start),
            end: airtime(start + secondsOf(beat.length)),
            length: beat.length,
          }),
        ),
        cautions: this.#hazards.cautions.perStep[index]!,
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
        ...(step ? { drawing: this.#shown!.kind.drawings.step(step.drawing, index + 1) } : {}),
      };
    });
  }

  /** Each caption as it stands on the screen, with when it is shown and the numbers that it rests on. */
  #captions(): readonly Block[] {
    const lineNumbers = Array.from({ length: captionLimit.lines }, (_, index) => index);
    const rows = this.#beats.flatMap(({ prose: { caption: words }, start }, index): TableRow[] => {
      if (!words) return [];
      const text = plainText(this.#words(words));
      this.#faults.push(...longCaption(this.#context, text, index));
      const lines = captionLines(text);
      return [
        {
          cells: [
            inline(airtime(start)),
            ...lineNumbers.map((line) => inline(lines[line] ?? '–')),
            this.#restsOn(words),
          ],
        },
      ];
    });
    if (rows.length === 0) return [paragraph(this.#say('companion.no-captions'))];
    return [
      table({
        id: 'captions',
        caption: this.#say('companion.captions-caption'),
        columns: [
          column(this.#say('companion.at'), { weight: 0.5 }),
          ...lineNumbers.map((line) =>
            column(this.#say('companion.line', { number: line + 1 }), { weight: 2 }),
          ),
          column(this.#say('companion.rests-on'), { weight: 2 }),
        ],
        groups: [{ rows }],
      }),
    ];
  }

  /** The names of the numbers in a caption, each leading to how it was worked out. */
  #restsOn(words: BeatProse['say']): readonly Inline[] {
    const { guide, printer, wording } = this.#context;
    const found = this.#namedIn([words]);
    if (found.length === 0) return inline(this.#say('companion.no-number'));
    return inline(
      found.flatMap((finding, index) => [
        ...(index > 0 ? ['; '] : []),
        printer.printAs(finding, findingName(finding, { ...wording, crops: guide.crops })),
      ]),
    );
  }

  #said(): readonly Finding[] {
    return this.#namedIn(this.#beats.flatMap(({ prose: { say, caption = [] } }) => [say, caption]));
  }

  /** The findings that some prose names, each once. */
  #namedIn(prose: readonly BeatProse['say'][]): readonly Finding[] {
    const names = new Set(prose.flatMap((words) => namesInline(words).map(({ name }) => name)));
    return [...names].flatMap((name) => {
      const finding = this.#findings.get(name) ?? this.#context.facts.findings.get(name);
      return finding ? [finding] : [];
    });
  }

  #words(prose: BeatProse['say']): readonly Inline[] {
    const { content, diagnostics } = composeInline(prose, proseContext(this.#context, this.#findings));
    this.#faults.push(...diagnostics.filter((next) => !this.#faults.some((told) => isSame(told, next))));
    return content;
  }
}

/** What is said is read several times, and its faults are told once. */
const isSame = (a: Diagnostic, b: Diagnostic): boolean => JSON.stringify(a) === JSON.stringify(b);

function timed({ sheet: { beats = [], beatProse = [] } }: SheetContext): readonly TimedBeat[] {
  let start = 0;
  return beats.map((beat, index) => {
    const one = { beat, prose: beatProse[index]!, start };
    start += secondsOf(beat.length);
    return one;
  });
}

/** What a segment's project and crop come to in the region of a context, beyond what is known of the region anyway. */
function findingsOfSubject(
  context: SheetContext,
  built: BuiltProject | undefined,
): ReadonlyMap<string, Finding> {
  const ofCrop = context.sheet.crop === undefined ? [] : (factSheetParts(context).findings?.values() ?? []);
  const ofBuild = built
    ? [
        ...built.structure.findings,
        ...billOfMaterials(built.project, built.structure).findings,
        ...(sownBed(context, built)?.findings ?? []),
        ...buildExtras(context, built).findings,
      ]
    : [];
  return new Map([...ofCrop, ...ofBuild].map((finding) => [finding.id, finding]));
}
