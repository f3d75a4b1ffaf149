/** The build card of a cold frame: what to have, how it goes together, one act a step, and what to sow in it. */
import { layOutRows, type BedRow } from '../agronomy/bed-rows.ts';
import { plantsInRows, seedForRows } from '../agronomy/spacing.ts';
import {
  checklist,
  column,
  figure,
  inline,
  keyNumbers,
  labels,
  steps,
  strong,
  table,
  together,
} from '../document/build.ts';
import type { Block, Inline, Step, TableRow } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Guide, ProjectRecord } from '../records/guide.ts';
import { baleColdFrame, isFrame, type Frame } from '../structures/bale-cold-frame.ts';
import { sheetCautions, type SheetCautions } from './cautions.ts';
import { composeInline } from './compose-prose.ts';
import { frameDrawings, type FrameDrawings } from './frame-drawings.ts';
import type { CropFacts } from './facts.ts';
import { freezeExhibits } from './freeze-exhibits.ts';
import type { Exhibit, NameScope } from './names.ts';
import { frameOf, plainFacts, type SheetContext, type SheetParts } from './sheet-context.ts';

export function buildCardParts(context: SheetContext): SheetParts {
  const built = context.sheet.project === undefined ? undefined : frameOf(context, context.sheet.project);
  if (!built) return { exhibits: new Map() };
  const card = new BuildCard(context, built.project, built.frame);
  return card.parts();
}

/** One crop of the bed with what its rows come to. */
interface SownCrop {
  readonly known: CropFacts;
  readonly rows: number;
  readonly plants: Finding;
  readonly seed: Finding;
}

/** True when the project of a build card adds up, so that a card can be made; what does not is told by the checks. */
export function canBeBuilt(guide: Guide, projectId: string): boolean {
  const project = guide.projects.find(({ id }) => id === projectId);
  const frame = project && baleColdFrame(project, { hemisphere: 'north' });
  if (!project || !frame || !isFrame(frame)) return false;
  const wanted = project.sow.flatMap(({ crop: id, rows }) => {
    const crop = guide.crops.find((known) => known.id === id);
    return crop ? [{ crop, rows }] : [];
  });
  return (
    wanted.length === project.sow.length && layOutRows(wanted, frame.geometry.insideDepthMm).kind === 'rows'
  );
}

class BuildCard {
  readonly #context: SheetContext;
  readonly #project: ProjectRecord;
  readonly #frame: Frame;
  readonly #findings: ReadonlyMap<string, Finding>;
  readonly #cautions: SheetCautions;
  readonly #sown: readonly SownCrop[];
  readonly #rows: readonly BedRow[];
  readonly #drawings: FrameDrawings;
  readonly #faults: Diagnostic[] = [];

  constructor(context: SheetContext, project: ProjectRecord, frame: Frame) {
    this.#context = context;
    this.#project = project;
    this.#frame = frame;
    this.#sown = sownCrops(context, project, frame);
    this.#findings = new Map(
      [...frame.findings, ...this.#sown.flatMap(({ plants, seed }) => [plants, seed])].map((finding) => [
        finding.id,
        finding,
      ]),
    );
    this.#cautions = sheetCautions(context, project.steps);
    const layout = layOutRows(
      this.#sown.map(({ known, rows }) => ({ crop: known.crop, rows })),
      frame.geometry.insideDepthMm,
    );
    this.#rows = layout.kind === 'rows' ? layout.rows : [];
    this.#drawings = frameDrawings({ context, project, frame, rows: this.#rows });
  }

  parts(): SheetParts {
    const exhibits: [string, Exhibit][] = [
      ...freezeExhibits(this.#context),
      ['at-a-glance', { wide: true, blocks: () => [this.#glance()] }],
      ['tools', { wide: true, blocks: () => [together([this.#tools()])] }],
      ['parts', { wide: true, blocks: () => [this.#parts()] }],
      [
        'plan',
        { wide: true, blocks: () => [figure(this.#drawings.plan, { caption: this.#say('build.plan') })] },
      ],
      [
        'section',
        {
          wide: true,
          blocks: () => [figure(this.#drawings.section, { caption: this.#say('build.section') })],
        },
      ],
      ['sash-table', { wide: true, blocks: () => [this.#sashes()] }],
      ['steps', { wide: true, blocks: () => [steps(this.#steps())] }],
      ['sow-table', { wide: true, blocks: () => [this.#sowTable()] }],
      [
        'bed-plan',
        {
          wide: true,
          blocks: () => [figure(this.#drawings.bedPlan, { caption: this.#say('build.bed-plan') })],
        },
      ],
      ['row-labels', { wide: true, blocks: () => [this.#rowLabels()] }],
    ];
    return {
      exhibits: new Map(exhibits),
      findings: this.#findings,
      ...(this.#cautions.box ? { cautions: this.#cautions.box } : {}),
      faults: () => this.#faults,
    };
  }

  #say(key: string, values?: Record<string, string | number>): string {
    return this.#context.wording.say(key, values);
  }

  #finding(id: string): Finding {
    const finding = this.#findings.get(id) ?? this.#context.facts.findings.get(id);
    if (!finding) throw new TypeError(`the build card has no finding ${id}`);
    return finding;
  }

  #cell(id: string): Inline {
    return this.#context.printer.print(this.#finding(id), { style: 'cell' });
  }

  #bothCell(finding: Finding): readonly Inline[] {
    return finding.value.kind === 'none'
      ? inline('–')
      : [this.#context.printer.print(finding, { style: 'cell-both' })];
  }

  #glance(): Block {
    return keyNumbers([
      { value: this.#cell('frame.inside-length'), label: this.#say('glance.inside-length') },
      { value: this.#cell('frame.inside-depth'), label: this.#say('glance.inside-depth') },
      { value: this.#cell('frame.bales'), label: this.#say('glance.bales') },
      { value: this.#cell('frame.total-cost'), label: this.#say('glance.cost') },
    ]);
  }

  #tools(): Block {
    const { hazards } = this.#context.guide;
    return checklist(this.#project.tools.map((id) => hazards.tools.get(id)?.name ?? id));
  }

  /** The bill: every part by its letter, how many, and what is still to buy. */
  #parts(): Block {
    const rows = this.#frame.bill.map((line): TableRow => {
      const need = [this.#context.printer.print(line.quantity, { style: 'cell' })];
      const price = line.price
        ? [this.#context.printer.print(line.price, { style: 'cell' })]
        : inline(this.#say('build.at-hand'));
      const cost = line.cost ? [this.#context.printer.print(line.cost, { style: 'cell' })] : inline('–');
      return { cells: [inline(line.letter), inline(line.name), need, inline(line.unit), price, cost] };
    });
    const total: TableRow = {
      cells: [[strong(this.#say('build.total'))], [], [], [], [], [strong([this.#cell('frame.total-cost')])]],
    };
    return table({
      id: 'parts',
      caption: this.#say('build.parts-caption'),
      columns: [
        column(this.#say('build.letter'), { weight: 0.9 }),
        column(this.#say('build.what'), { weight: 2.6 }),
        column(this.#say('build.need'), { align: 'number', weight: 0.7 }),
        column(this.#say('build.unit'), { weight: 1.5 }),
        column(this.#say('build.price'), { align: 'number', weight: 0.9 }),
        column(this.#say('build.cost'), { align: 'number', weight: 0.9 }),
      ],
      groups: [{ rows }, { rows: [total] }],
    });
  }

  /** How each sash lies on the walls and what it weighs. */
  #sashes(): Block {
    const rows = this.#project.sashes.map((sash): TableRow => {
      const { measures } = this.#context.wording;
      const of = (name: string): Finding => this.#finding(`frame.sash-${sash.id.toLowerCase()}.${name}`);
      return {
        cells: [
          inline(sash.id),
          inline(
            this.#say('glance.by', {
              length: measures.short('length', sash.width.low),
              depth: measures.short('length', sash.length.low),
            }),
          ),
          this.#bothCell(of('bearing-poleward')),
          this.#bothCell(of('bearing-equator')),
          this.#bothCell(of('overhang')),
          this.#bothCell(of('weight')),
        ],
      };
    });
    return table({
      id: 'sashes',
      caption: this.#say('build.sashes-caption'),
      columns: [
        column(this.#say('build.sash'), { weight: 0.6 }),
        column(this.#say('build.sash-size'), { weight: 1.2 }),
        column(this.#say('build.bearing-poleward'), { weight: 1.1 }),
        column(this.#say('build.bearing-equator'), { weight: 1.1 }),
        column(this.#say('build.overhang'), { weight: 1.1 }),
        column(this.#say('build.weight'), { weight: 1.3 }),
      ],
      groups: [{ rows }],
    });
  }

  #steps(): Step[] {
    return this.#project.steps.map((step, index) => {
      const { content, diagnostics } = composeInline(this.#project.stepProse[index]!, this.#proseContext());
      this.#faults.push(...diagnostics);
      return {
        number: index + 1,
        title: inline(step.title),
        cautions: this.#cautions.perStep[index]!,
        body: [{ kind: 'paragraph', role: 'body', content }],
        drawing: this.#drawings.step(step.drawing, index + 1),
      };
    });
  }

  /** Step text speaks of the findings of the build and of the region. */
  #proseContext() {
    const { facts, printer, suggest } = this.#context;
    const scope: NameScope = {
      facts: plainFacts(this.#context),
      findings: new Map([...facts.findings, ...this.#findings]),
      exhibits: new Map(),
    };
    return { scope, printer, suggest };
  }

  #sowTable(): Block {
    const rows = this.#sown.map(({ known, rows: count, plants, seed }): TableRow => ({
      cells: [
        inline(known.crop.name),
        inline(this.#context.wording.measures.number(count)),
        this.#bothCell(known.depth),
        this.#bothCell(known.inRow),
        this.#bothCell(plants),
        this.#bothCell(seed),
      ],
    }));
    return table({
      id: 'sowing',
      caption: this.#say('build.sow-caption'),
      columns: [
        column(this.#say('build.crop'), { weight: 1.1 }),
        column(this.#say('build.rows'), { align: 'number', weight: 0.6 }),
        column(this.#say('build.depth'), { weight: 1.3 }),
        column(this.#say('build.spacing'), { weight: 1.4 }),
        column(this.#say('build.plants'), { align: 'number', weight: 0.8 }),
        column(this.#say('build.seed'), { weight: 1.5 }),
      ],
      groups: [{ rows }],
    });
  }

  /** A label for each row, from the tall wall forward. */
  #rowLabels(): Block {
    const { printer } = this.#context;
    return labels(
      this.#rows.map(({ crop }, index) => {
        const known = this.#sown.find((sown) => sown.known.crop === crop)!.known;
        const words = (finding: Finding): string => printer.cellWords(finding.value).first;
        return {
          title: crop.name,
          lines: [
            this.#say('build.row-label', { number: index + 1 }),
            this.#say('build.label-depth', { depth: words(known.depth) }),
            this.#say('build.label-spacing', { spacing: words(known.inRow) }),
            this.#say('build.label-emergence', { days: words(known.emergence) }),
            this.#say('build.label-date'),
          ],
        };
      }),
    );
  }
}

function sownCrops({ facts }: SheetContext, project: ProjectRecord, frame: Frame): readonly SownCrop[] {
  const rowLength = frame.findings.find(({ id }) => id === 'frame.inside-length')!;
  return project.sow.flatMap(({ crop: id, rows }) => {
    const known = facts.crops.find(({ crop }) => crop.id === id);
    if (!known) return [];
    const sown = { crop: known.crop, rows, rowLengthMm: frame.geometry.insideLengthMm, rowLength };
    return [{ known, rows, plants: plantsInRows(sown), seed: seedForRows(sown) }];
  });
}
