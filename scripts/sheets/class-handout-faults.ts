/** What keeps a class handout from being handed out, each at its place. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Finding } from '../findings/finding.ts';
import type { ProseInline } from '../prose/prose.ts';
import type { ProjectRecord } from '../records/guide.ts';
import { mostGradesAbove } from './class-handout-reading.ts';
import { profileOf } from '../safety/gather.ts';
import { firstWord, unlistedWords, type UnlistedWord } from '../safety/spoken.ts';
import { adultAge } from '../safety/youth.ts';
import type { ClassStep } from './class-handout-who.ts';
import { askedOf } from './class-handout-worksheet.ts';
import type { SheetContext } from './sheet-context.ts';

/** A step for adults of which nobody has said what the children do. */
export function withoutMeanwhile(
  { guide, sheet }: SheetContext,
  project: ProjectRecord,
  steps: readonly ClassStep[],
): Diagnostic[] {
  return steps.flatMap(({ who }, index): Diagnostic[] =>
    who !== 'adult-only' || project.classProse[index]!.meanwhile
      ? []
      : [
          {
            code: 'class-step',
            severity: 'error',
            message: `Step ${index + 1} is for adults only in “${sheet.id}” (age ${sheet.age}), and nothing says what the children do meanwhile.`,
            hint: 'Add “meanwhile:” to the step: something that they watch, count, measure or draw from a safe place.',
            place: guide.placeOf('project', project.id, `/steps/${index}`),
          },
        ],
  );
}

/**
 * What the words for the class speak of and the step does not list, so that its cautions would be missing; in what
 * children do meanwhile only what is for an older age than theirs.
 */
export function otherTools(
  { guide, sheet }: SheetContext,
  project: ProjectRecord,
  steps: readonly ClassStep[],
): Diagnostic[] {
  const unlisted = unlistedWords(guide.hazards);
  const { age = adultAge } = sheet;
  const forOlder = ({ means }: UnlistedWord): boolean =>
    means.every(({ kind, id }) => (profileOf(kind, id, guide.hazards).age?.from ?? adultAge) > age);
  return project.steps.flatMap((step, index) => {
    const fault = (key: 'class' | 'meanwhile', word: UnlistedWord, words: FaultWords): Diagnostic => ({
      code: 'unlisted-hazard',
      severity: 'error',
      ...words,
      place: guide.placeOfText('project', project.id, {
        pointer: `/steps/${index}/${key}`,
        piece: firstWord(word.word),
        occurrence: word.occurrence,
      }),
    });
    const spokenIn = (text = ''): readonly UnlistedWord[] => unlisted({ ...step, title: '', text });
    return [
      ...spokenIn(step.class).map((word) =>
        fault('class', word, {
          message: `Step ${index + 1} speaks of “${word.word}” to the class, and does not list it, so cautions may be missing.`,
          hint: `Add it to the ${word.means[0]!.kind}s of the step; if it is only spoken of, write “mentions: [${word.means[0]!.id}]”.`,
        }),
      ),
      ...(steps[index]!.who === 'adult-only' ? spokenIn(step.meanwhile).filter(forOlder) : []).map((word) =>
        fault('meanwhile', word, {
          message: `What the children do during step ${index + 1} speaks of “${word.word}”, which is not for age ${age}.`,
          hint: 'Let them watch, count, measure or draw without it.',
        }),
      ),
    ];
  });
}

interface FaultWords {
  readonly message: string;
  readonly hint: string;
}

/** Answers to what is counted or measured come from findings; a figure that is typed would be wrong elsewhere. */
export function typedAnswers({ guide, sheet }: SheetContext): Diagnostic[] {
  const { questions = [], askProse = [] } = sheet;
  return questions.flatMap(({ kind }, index): Diagnostic[] => {
    const { answer } = askProse[index]!;
    const place = guide.placeOf('sheet', sheet.id, `/questions/${index}/answer`);
    if ((kind === 'count' || kind === 'measure') && !hasName(answer))
      return [
        {
          code: 'bad-prose',
          severity: 'error',
          message: `The answer to question ${index + 1} is ${kind === 'count' ? 'counted' : 'measured'}, and yet it names no finding.`,
          hint: 'Name the finding between double braces, or make it a question to “predict” or to “tell”.',
          place,
        },
      ];
    if (!hasDigits(answer)) return [];
    return [
      {
        code: 'bad-prose',
        severity: 'warning',
        message: `The answer to question ${index + 1} has a figure that is typed, so it stays as it is where the build or the region changes.`,
        hint: 'Name the finding between double braces; where there is none, write the figure as a word.',
        place,
      },
    ];
  });
}

const hasName = (content: readonly ProseInline[]): boolean =>
  content.some((node) => node.kind === 'name' || (node.kind !== 'text' && hasName(node.content)));

const hasDigits = (content: readonly ProseInline[]): boolean =>
  content.some((node) =>
    node.kind === 'text' ? /\p{Nd}/u.test(node.text) : node.kind !== 'name' && hasDigits(node.content),
  );

/** Words, questions and a graph that the header has and the page does not show, and a class for which none are left. */
export function notShown({ guide, sheet }: SheetContext, shown: ReadonlySet<string>): Diagnostic[] {
  const place = (key: string): Diagnostic['place'] & object => guide.placeOf('sheet', sheet.id, `/${key}`);
  const needed = [
    { name: 'words', key: 'words' },
    { name: 'worksheet', key: 'questions' },
    ...(sheet.graph ? [{ name: 'graph', key: 'graph' }] : []),
  ];
  const hidden = needed
    .filter(({ name }) => !shown.has(name))
    .map(({ name, key }): Diagnostic => ({
      code: 'bad-prose',
      severity: 'error',
      message: `This class handout has “${key}” and does not show them.`,
      hint: `Put {{${name}}} on a line of its own.`,
      place: place(key),
    }));
  if (askedOf(sheet).length > 0) return hidden;
  return [
    ...hidden,
    {
      code: 'bad-prose',
      severity: 'error',
      message: `No question is left for a class of age ${sheet.age}.`,
      hint: 'Look at “fromAge:” and “toAge:” of the questions.',
      place: place('questions'),
    },
  ];
}

/** Pages that read more than two grades above the class. */
export function harderThanTheClass(
  { guide, sheet, wording: { measures } }: SheetContext,
  reading: Finding | undefined,
): Diagnostic[] {
  if (reading?.value.kind !== 'count' || sheet.age === undefined) return [];
  const grade = sheet.age - 5;
  if (reading.value.value <= grade + mostGradesAbove) return [];
  return [
    {
      code: 'hard-to-read',
      severity: 'warning',
      message: `The pages for the class read at about grade ${measures.number(reading.value.value)}; a class of age ${sheet.age} is about grade ${grade}.`,
      hint: 'Write shorter sentences and shorter words: in the sheet, and in “class:” and “meanwhile:” of the steps.',
      place: guide.placeOf('sheet', sheet.id, '/age'),
    },
  ];
}
