/** How hard the pages for the class are to read. */
import { plainText } from '../document/build.ts';
import type { Block, Inline } from '../document/document.ts';
import { innerBlocks } from '../document/outline.ts';
import { count, inputOf, type Finding } from '../findings/finding.ts';
import { readingCounts, readingGrade } from '../prose/reading-grade.ts';

/** The grade that a US school has for an age: the age less five, kindergarten being 0. */
export function gradeOfAge(age: Finding): Finding {
  const years = age.value.kind === 'count' ? age.value.value : 0;
  return {
    id: 'class.grade',
    value: count(years - 5),
    method: 'class.grade',
    inputs: [inputOf('class-age', age)],
    sources: [],
  };
}

/** The grade of the running text of some blocks, to a tenth; undefined where there is none. */
export function gradeOfBlocks(blocks: readonly Block[]): Finding | undefined {
  const text = blocks.flatMap(proseIn).join('\n');
  const { sentences, words, syllables } = readingCounts(text);
  if (words === 0) return undefined;
  return {
    id: 'class.reading-grade',
    value: count(Math.round(readingGrade(text) * 10) / 10),
    method: 'class.reading-grade',
    inputs: [
      { name: 'sentences', value: count(sentences) },
      { name: 'words', value: count(words) },
      { name: 'syllables', value: count(syllables) },
    ],
    sources: ['kincaid-1975'],
  };
}

/** More than this above the grade of the class is too hard. */
export const mostGradesAbove = 2;

/** The sentences of blocks, a line each: what is told in running text, asked or explained, not titles and cautions. */
function proseIn(block: Block): readonly string[] {
  if (block.kind === 'paragraph') return [firstSystem(block.content)];
  // The word before each question, such as “Count.”, is a label: as a sentence it would make the pages too easy.
  if (block.kind === 'worksheet')
    return block.items.map(({ question: [label, ...question] }) =>
      firstSystem(label?.kind === 'strong' ? question : [...(label ? [label] : []), ...question]),
    );
  if (block.kind === 'table' && block.id === 'class-words')
    return block.groups.flatMap(({ rows }) => rows.map(({ cells }) => firstSystem(cells[1] ?? [])));
  return innerBlocks(block).flatMap(proseIn);
}

/** Words as a reader takes them in who skips the second system of units in brackets. */
function firstSystem(content: readonly Inline[]): string {
  return content
    .map((node) =>
      node.kind === 'text'
        ? node.text
        : node.kind === 'finding'
          ? plainText(node.content.slice(0, 1))
          : firstSystem(node.content),
    )
    .join('');
}
