/** The build card: what to have, how it goes together, one act a step, and what to sow in it. */
import { figure, inline, keyNumbers, paragraph, steps, together } from '../document/build.ts';
import type { Block, Inline, Step } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Guide, ProjectRecord } from '../records/guide.ts';
import type { Scene } from '../drawings/scene.ts';
import { billOfMaterials, type Bill } from '../structures/bill-of-materials.ts';
import type { Structure } from '../structures/structure.ts';
import { structureOf } from '../structures/structures.ts';
import { billExhibits } from './bill-exhibits.ts';
import { bedParts, canBeSown, type BedParts } from './bed.ts';
import { buildExtras, type BuildExtras } from './build-extras.ts';
import { sheetCautions, toolChecklist, type SheetCautions } from './cautions.ts';
import { circumstancesOf } from './circumstances.ts';
import { composeInline } from './compose-prose.ts';
import { freezeExhibits } from './freeze-exhibits.ts';
import { kindParts, type KindParts } from './kind-parts.ts';
import type { Exhibit } from './names.ts';
import { sayWith } from './say-with.ts';
import { sowDates } from './sow-dates.ts';
import {
  builtProject,
  proseContext,
  type BuiltProject,
  type SheetContext,
  type SheetParts,
} from './sheet-context.ts';

export function buildCardParts(context: SheetContext): SheetParts {
  const built =
    context.sheet.project === undefined ? undefined : builtProject(context, context.sheet.project);
  return built ? new BuildCard(context, built).parts() : { exhibits: new Map() };
}

/** True when the project of a build card adds up, so that a card can be made; what does not is told by the checks. */
export function canBeBuilt(guide: Guide, projectId: string): boolean {
  const project = guide.projects.find(({ id }) => id === projectId);
  const built = project && structureOf(project, { hemisphere: 'north' });
  if (!project || built?.kind !== 'structure') return false;
  const { bed } = built.structure;
  return !bed || canBeSown({ crops: guide.crops, insideDepthMm: bed.depthMm, sow: project.sow });
}

class BuildCard {
  readonly #context: SheetContext;
  readonly #project: ProjectRecord;
  readonly #structure: Structure;
  readonly #bill: Bill;
  readonly #findings: ReadonlyMap<string, Finding>;
  readonly #cautions: SheetCautions;
  readonly #bed: BedParts | undefined;
  readonly #kind: KindParts;
  readonly #extras: BuildExtras;
  readonly #faults: Diagnostic[] = [];

  constructor(context: SheetContext, built: BuiltProject) {
    this.#context = context;
    const { project, structure } = built;
    this.#project = project;
    this.#structure = structure;
    this.#bill = billOfMaterials(project, structure);
    this.#bed = sownBed(context, built);
    this.#extras = buildExtras(context, built);
    this.#findings = new Map(
      [
        ...structure.findings,
        ...this.#bill.findings,
        ...(this.#bed?.findings ?? []),
        ...this.#extras.findings,
      ].map((finding) => [finding.id, finding]),
    );
    this.#cautions = sheetCautions(context, project.steps, circumstancesOf(context, this.#extras.conditions));
    this.#kind = kindParts(context, built, this.#bed?.rows ?? []);
  }

  parts(): SheetParts {
    const exhibits: (readonly [string, Exhibit])[] = [
      ...freezeExhibits(this.#context),
      ['at-a-glance', { wide: true, blocks: () => [this.#glance()] }],
      ['tools', { wide: true, blocks: () => [together([...this.#effort(), this.#tools()])] }],
      ...billExhibits(this.#context, this.#project, this.#bill),
      ...this.#views(),
      ...this.#kind.exhibits,
      ['steps', { wide: true, blocks: () => [steps(this.#steps())] }],
      ...(this.#bed?.exhibits ?? []),
      ['sow-dates', { wide: true, blocks: () => this.#sowDates() }],
      ...this.#extras.exhibits,
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

  /** Plan, section and, where the kind has one, elevation. */
  #views(): [string, Exhibit][] {
    const { plan, section, elevation, narrow } = this.#kind.drawings;
    const view = (name: 'plan' | 'section' | 'elevation', scene: Scene): [string, Exhibit] => {
      const options = { caption: this.#say(`build.${name}`), ...(narrow ? { narrow: narrow[name] } : {}) };
      return [name, { wide: true, blocks: () => [figure(scene, options)] }];
    };
    return [
      view('plan', plan),
      view('section', section),
      ...(elevation ? [view('elevation', elevation)] : []),
    ];
  }

  #glance(): Block {
    return keyNumbers([
      ...this.#structure.glance.map((id) => ({
        value: this.#cell(id),
        label: this.#say(`glance.${id.slice(id.indexOf('.') + 1)}`),
      })),
      { value: this.#cell('build.total-cost'), label: this.#say('glance.cost') },
    ]);
  }

  #tools(): Block {
    return toolChecklist(this.#context, this.#project.tools);
  }

  #sowDates(): readonly Block[] {
    const inFrame = (id: string): Finding | undefined =>
      this.#findings.get(id) ?? this.#context.facts.findings.get(id);
    const sown = this.#project.sow.map(({ crop }) => crop);
    const { bed } = this.#structure;
    return sowDates(
      this.#context,
      sown,
      bed?.cover === 'frame' ? { inFrame, mostClearMm: bed.mostClearMm ?? Infinity } : undefined,
    );
  }

  /** How many people it takes, and how long; nothing for a kind that does not say. */
  #effort(): Block[] {
    const ending = (what: string): Finding | undefined =>
      this.#structure.findings.find(({ id }) => id.endsWith(`.${what}`));
    const [people, time] = [ending('people'), ending('time')];
    if (people?.value.kind !== 'count' || !time) return [];
    return [
      paragraph(
        sayWith((key, values) => this.#say(key, values), 'build.effort', {
          count: people.value.value,
          people: this.#context.printer.print(people),
          time: this.#context.printer.print(time),
        }),
      ),
    ];
  }

  #steps(): Step[] {
    return this.#project.steps.map((step, index) => {
      const { content, diagnostics } = composeInline(
        this.#project.stepProse[index]!,
        proseContext(this.#context, this.#findings),
      );
      this.#faults.push(...diagnostics);
      return {
        number: index + 1,
        title: inline(step.title),
        cautions: this.#cautions.perStep[index]!,
        body: [{ kind: 'paragraph', role: 'body', content }, ...this.#extras.stepBlocks(step.drawing)],
        drawing: this.#kind.drawings.step(step.drawing, index + 1),
      };
    });
  }
}

/** The bed inside and what is sown in it; undefined for a build in which nothing is sown. */
export function sownBed(context: SheetContext, { project, structure }: BuiltProject): BedParts | undefined {
  const { bed } = structure;
  if (!bed) return undefined;
  return bedParts({
    context,
    bed: {
      insideLengthMm: bed.lengthMm,
      insideDepthMm: bed.depthMm,
      lengthFinding: structure.findings.find(({ id }) => id === bed.length)!,
      hemisphere: context.facts.south ? 'south' : 'north',
      soilDepthMm: bed.soilDepthMm,
      ...(bed.ring ? { ring: bed.ring } : {}),
      cover: bed.cover,
      ...(structure.closedBy ? { closedBy: structure.closedBy } : {}),
      ...(bed.clearMm === undefined ? {} : { clearHeightMm: bed.clearMm }),
    },
    sow: project.sow,
  });
}
