/** Reads what the front matter of a class handout has to say. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { SheetRecord } from './guide.ts';
import { headerProse, lackingKeys } from './header-prose.ts';
import type { SheetHeader } from './schemas/sheet.ts';
import type { YamlFile } from './yaml-file.ts';

type ClassProse = Pick<SheetRecord, 'askProse' | 'graphProse' | 'meaningProse'>;

/** The Markdown of its questions, its graph and its words; nothing for a sheet that has none of them. */
export function readClassProse(
  { questions, graph, words }: SheetHeader,
  file: YamlFile,
): { readonly prose: ClassProse; readonly diagnostics: readonly Diagnostic[] } {
  const { read, diagnostics } = headerProse(file);
  const askProse = questions?.map(({ ask, answer }, index) => ({
    ask: read(ask, `/questions/${index}/ask`),
    answer: read(answer, `/questions/${index}/answer`),
  }));
  const graphProse = graph && {
    ask: read(graph.ask, '/graph/ask'),
    answer: read(graph.answer, '/graph/answer'),
  };
  const meaningProse = words?.map(({ meaning }, index) => read(meaning, `/words/${index}/meaning`));
  return {
    prose: {
      ...(askProse ? { askProse } : {}),
      ...(graphProse ? { graphProse } : {}),
      ...(meaningProse ? { meaningProse } : {}),
    },
    diagnostics,
  };
}

const needed = {
  project: 'Add “project:” with the id of the project that the class builds.',
  age: 'Add “age:” with the age of the class in years: who may do which step follows from it.',
  minutes: 'Add “minutes:” with the length of the lesson.',
  words: 'Add “words:”, a list with “word:” and “meaning:” for each.',
  questions: 'Add “questions:”, a list with “kind:”, “ask:” and “answer:” for each.',
} as const;

/** What a class handout lacks, and a graph that goes up by nothing or by two things. */
export function needsOfClass(value: SheetHeader, file: YamlFile): Diagnostic[] {
  const lacking = lackingKeys(value, file, { called: 'A class handout', hints: needed });
  const { graph } = value;
  if (!graph || (graph.temperature === undefined) !== (graph.length === undefined)) return lacking;
  const none = graph.temperature === undefined;
  return [
    ...lacking,
    {
      code: none ? 'missing-key' : 'unknown-key',
      severity: 'error',
      message: none
        ? 'The graph does not say from what to what it goes.'
        : 'The graph goes up by a temperature and by a length.',
      hint: none
        ? 'Add “temperature:” or “length:” with the lowest and the highest value, such as “20-80 F”.'
        : 'Keep one of the two.',
      place: none ? file.placeOf('/graph') : file.placeOfKey('/graph/length'),
    },
  ];
}
