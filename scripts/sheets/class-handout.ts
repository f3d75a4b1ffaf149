/** The class handout: a project step by step at the level of a class, with words, a worksheet and what the teacher needs. */
import { doer, figure, inline, keyNumbers, paragraph, steps, strong } from '../document/build.ts';
import type { Block, DoerKind, Inline, Step } from '../document/document.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { count, type Finding } from '../findings/finding.ts';
import type { ProseInline } from '../prose/prose.ts';
import type { ProjectRecord } from '../records/guide.ts';
import { adultAge } from '../safety/youth.ts';
import { billOfMaterials } from '../structures/bill-of-materials.ts';
import { sownBed } from './build-card.ts';
import { buildExtras, type BuildExtras } from './build-extras.ts';
import { sheetCautions, type SheetCautions } from './cautions.ts';
import {
  harderThanTheClass,
  notShown,
  otherTools,
  typedAnswers,
  withoutMeanwhile,
} from './class-handout-faults.ts';
import { gradeOfBlocks, gradeOfAge } from './class-handout-reading.ts';
import { teacherPages } from './class-handout-teacher.ts';
import { ageOf, classSteps, hazardName, whoCounts, type ClassStep } from './class-handout-who.ts';
import { answerKey, graphBlock, questionSheet, wordTable } from './class-handout-worksheet.ts';
import { circumstancesOf } from './circumstances.ts';
import { composeInline } from './compose-prose.ts';
import { kindParts, type KindParts } from './kind-parts.ts';
import type { Exhibit } from './names.ts';
import {
  builtProject,
  proseContext,
  type BuiltProject,
  type SheetContext,
  type SheetParts,
} from './sheet-context.ts';

export function classHandoutParts(context: SheetContext): SheetParts {
  const built =
    context.sheet.project === undefined ? undefined : builtProject(context, context.sheet.project);
  return built ? new ClassHandout(context, built).parts() : { exhibits: new Map() };
}

const doers: Readonly<Record<ClassStep['who'], DoerKind>> = {
  allowed: 'child',
  'with-adult': 'child-with-adult',
  'adult-only': 'adult',
};

class ClassHandout {
  readonly #context: SheetContext;
  readonly #project: ProjectRecord;
  readonly #extras: BuildExtras;
  readonly #kind: KindParts;
  readonly #bedExhibits: readonly (readonly [string, Exhibit])[];
  readonly #cautions: SheetCautions;
  readonly #steps: readonly ClassStep[];
  readonly #age: Finding;
  readonly #findings: ReadonlyMap<string, Finding>;
  readonly #shown = new Set<string>();
  readonly #faults: Diagnostic[] = [];

  constructor(context: SheetContext, built: BuiltProject) {
    this.#context = context;
    const { project, structure } = built;
    this.#project = project;
    const bed = sownBed(context, built);
    this.#bedExhibits = bed?.exhibits ?? [];
    this.#extras = buildExtras(context, built);
    this.#kind = kindParts(context, built, bed?.rows ?? []);
    const circumstances = circumstancesOf(context, this.#extras.conditions);
    this.#cautions = sheetCautions(context, project.steps, circumstances);
    this.#steps = classSteps(context, project, circumstances);
    this.#age = ofRecord('class.age', context.sheet.age ?? adultAge);
    const findings = [
      ...structure.findings,
      ...billOfMaterials(project, structure).findings,
      ...(bed?.findings ?? []),
      ...this.#extras.findings,
      ...this.#steps.map(({ lowestAge }) => lowestAge),
      this.#age,
      ofRecord('class.minutes', context.sheet.minutes ?? 0),
      gradeOfAge(this.#age),
      ...whoCounts(this.#steps, this.#age),
    ];
    this.#findings = new Map(findings.map((finding) => [finding.id, finding]));
  }

  parts(): SheetParts {
    const exhibits: (readonly [string, Exhibit])[] = [
      ['at-a-glance', this.#exhibit('at-a-glance', () => [this.#glance()])],
      ['plan', this.#exhibit('plan', () => [this.#plan()])],
      ...this.#kind.exhibits,
      ...this.#bedExhibits,
      ['steps', this.#exhibit('steps', () => [steps(this.#classSteps())])],
      ['words', this.#exhibit('words', () => wordTable(this.#context, this.#inline))],
      ['worksheet', this.#exhibit('worksheet', () => questionSheet(this.#context, this.#inline))],
      ...(this.#context.sheet.graph
        ? [['graph', this.#exhibit('graph', () => [graphBlock(this.#context, this.#inline)])] as const]
        : []),
    ];
    return {
      exhibits: new Map(exhibits),
      findings: this.#findings,
      ...(this.#cautions.box ? { cautions: this.#cautions.box } : {}),
      closing: (body) => this.#closing(body),
      faults: () => this.#faults,
    };
  }

  /** What is for the teacher, each on a page of its own; what the sheet lacks shows itself by now. */
  #closing(body: readonly Block[]): readonly Block[] {
    const context = this.#context;
    const reading = gradeOfBlocks(body);
    this.#faults.push(
      ...withoutMeanwhile(context, this.#project, this.#steps),
      ...otherTools(context, this.#project, this.#steps),
      ...typedAnswers(context),
      ...notShown(context, this.#shown),
      ...harderThanTheClass(context, reading),
    );
    return [
      ...teacherPages(context, {
        project: this.#project,
        steps: this.#steps,
        finding: (id) => this.#finding(id),
        reading,
      }),
      ...answerKey(context, this.#inline),
    ];
  }

  /** Over the full width, and remembered as shown. */
  #exhibit(name: string, blocks: () => readonly Block[]): Exhibit {
    return {
      wide: true,
      blocks: () => {
        this.#shown.add(name);
        return blocks();
      },
    };
  }

  #say(key: string, values?: Record<string, string | number>): string {
    return this.#context.wording.say(key, values);
  }

  #finding(id: string): Finding {
    const finding = this.#findings.get(id);
    if (!finding) throw new TypeError(`the class handout has no finding ${id}`);
    return finding;
  }

  #glance(): Block {
    const all = ['age', 'minutes', 'steps-allowed', 'steps-with-adult', 'steps-adult-only'];
    const some = all
      .map((what) => ({ what, finding: this.#finding(`class.${what}`) }))
      .filter(({ finding: { value } }) => value.kind === 'count' && value.value > 0);
    return keyNumbers(
      some.map(({ what, finding }) => ({
        value: this.#context.printer.print(finding, { style: 'cell' }),
        label: this.#say(`class.glance.${what}`),
      })),
    );
  }

  #plan(): Block {
    const { plan, narrow } = this.#kind.drawings;
    return figure(plan, { caption: this.#say('build.plan'), ...(narrow ? { narrow: narrow.plan } : {}) });
  }

  #classSteps(): Step[] {
    return this.#project.steps.map((step, index) => {
      const { text, meanwhile } = this.#project.classProse[index]!;
      const who = this.#steps[index]!;
      return {
        number: index + 1,
        title: inline(step.title),
        cautions: this.#cautions.perStep[index]!,
        body: [
          doer(doers[who.who], this.#whoWords(who)),
          { kind: 'paragraph', role: 'body', content: this.#inline(text ?? this.#project.stepProse[index]!) },
          ...this.#extras.stepBlocks(step.drawing),
          ...(who.who === 'adult-only' && meanwhile
            ? [paragraph([strong(this.#say('class.meanwhile')), ' ', ...this.#inline(meanwhile)])]
            : []),
        ],
        drawing: this.#kind.drawings.step(step.drawing, index + 1),
      };
    });
  }

  /** `Adults only. Sledge hammer: age 16 and up.` The strictest reason stands for all; the teacher's table has every one. */
  #whoWords({ who, reasons }: ClassStep): string {
    const words = this.#say(`class.who-${who}`);
    const [first, ...others] = reasons;
    if (who !== 'adult-only' || !first) return words;
    const strictest = others.reduce((most, next) => (ageOf(next) > ageOf(most) ? next : most), first);
    const name = hazardName(this.#context, strictest);
    const age = ageOf(strictest);
    return `${words} ${this.#say(age >= adultAge ? 'class.for-adults' : 'class.for-age', { name, age })}`;
  }

  /** Words of a record with the findings that they name. Faults in them are kept for the end. */
  #inline = (prose: readonly ProseInline[]): readonly Inline[] => {
    const { content, diagnostics } = composeInline(prose, proseContext(this.#context, this.#findings));
    this.#faults.push(...diagnostics);
    return content;
  };
}

/** A figure of the sheet's own header. */
function ofRecord(id: string, value: number): Finding {
  return { id, value: count(value), method: 'class.of-record', inputs: [], sources: [] };
}
