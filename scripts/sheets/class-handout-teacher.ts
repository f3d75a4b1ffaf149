/** What a class handout tells the teacher: who does which step and why, and how hard the pages are to read. */
import { column, heading, inline, pageBreak, paragraph, table, wide } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import type { ProjectRecord } from '../records/guide.ts';
import { adultAge } from '../safety/youth.ts';
import { ageOf, hazardName, type ClassStep } from './class-handout-who.ts';
import { sayWith } from './say-with.ts';
import type { SheetContext } from './sheet-context.ts';

export interface TeacherPagesOptions {
  readonly project: ProjectRecord;
  readonly steps: readonly ClassStep[];
  readonly finding: (id: string) => Finding;
  /** The grade of the pages for the class. */
  readonly reading: Finding | undefined;
}

export function teacherPages(context: SheetContext, options: TeacherPagesOptions): readonly Block[] {
  const { say } = context.wording;
  return [
    pageBreak(),
    heading(2, 'class.teacher', say('class.teacher')),
    paragraph(introduction(context, options)),
    ...readingWords(context, options),
    paragraph(say('class.teacher-care')),
    wide([whoTable(context, options)]),
  ];
}

function introduction(
  { sheet, printer, wording }: SheetContext,
  { finding }: TeacherPagesOptions,
): readonly Inline[] {
  const { say, dates } = wording;
  const { months } = sheet;
  return sayWith(say, months ? 'class.lesson-in-months' : 'class.lesson', {
    age: printer.print(finding('class.age')),
    minutes: printer.print(finding('class.minutes')),
    ...(months
      ? { months: new Intl.ListFormat('en').format(months.map((month) => dates.monthNames()[month - 1]!)) }
      : {}),
  });
}

function readingWords(
  { printer, wording: { say } }: SheetContext,
  { finding, reading }: TeacherPagesOptions,
): readonly Block[] {
  if (!reading) return [];
  const grade = finding('class.grade');
  return [
    paragraph(
      sayWith(say, 'class.reading', {
        reading: printer.print(reading),
        number: grade.value.kind === 'count' ? grade.value.value : 0,
        grade: printer.print(grade),
      }),
    ),
  ];
}

/** Every step with who does it, all that makes it so, the age that follows from it, and where the ages come from. */
function whoTable(context: SheetContext, { project, steps }: TeacherPagesOptions): Block {
  const { say } = context.wording;
  const rows = steps.map((step, index): TableRow => ({
    cells: [
      inline(`${index + 1}. ${project.steps[index]!.title}`),
      inline(say(`class.teacher-${step.who}`)),
      inline(reasonWords(context, step)),
      ageCell(context, step.lowestAge),
      inline(sourceNumbers(context, step)),
    ],
  }));
  return table({
    id: 'class-who',
    caption: say('class.who-caption'),
    columns: [
      column(say('class.step'), { weight: 1.6 }),
      column(say('class.who'), { weight: 1.1 }),
      column(say('class.why'), { weight: 2.6 }),
      column(say('class.lowest-age'), { align: 'number', weight: 0.7 }),
      column(say('class.sources'), { weight: 0.8 }),
    ],
    groups: [{ rows }],
    notes: [say('class.who-note')],
  });
}

/** `Sledge hammer (16), Driving stakes (14)`, the strictest first. */
function reasonWords(context: SheetContext, { who, reasons }: ClassStep): string {
  const { say } = context.wording;
  if (who === 'allowed') return say('class.why-nothing');
  const strictestFirst = [...reasons].sort((a, b) => ageOf(b) - ageOf(a));
  return strictestFirst
    .map((reason) => {
      const name = hazardName(context, reason);
      const age = ageOf(reason);
      if (who === 'with-adult') return name;
      return say(age >= adultAge ? 'class.reason-adults' : 'class.reason', { name, age });
    })
    .join(', ');
}

function ageCell({ printer, wording: { say } }: SheetContext, lowest: Finding): readonly Inline[] {
  const { value } = lowest;
  const adults = value.kind === 'count' && value.value >= adultAge;
  return [adults ? printer.printAs(lowest, say('class.adults')) : printer.print(lowest, { style: 'cell' })];
}

function sourceNumbers({ printer, wording: { say } }: SheetContext, step: ClassStep): string {
  const { sources } = step.lowestAge;
  const all = [...new Set([...sources, ...step.reasons.flatMap((reason) => reason.sources)])];
  return all.length === 0 ? say('class.no-source') : printer.cite(all);
}
