/** How hard a text is to read, by the length of its sentences and words. */
import { syllable } from 'syllable';

export interface ReadingCounts {
  readonly sentences: number;
  readonly words: number;
  readonly syllables: number;
}

/**
 * The Flesch-Kincaid grade of English text: 0.39 words a sentence + 11.8 syllables a word - 15.59, the US school grade
 * whose pupils can be expected to read it (J. P. Kincaid and others, Research Branch Report 8-75, 1975). It runs from
 * -3.4, one short word a sentence, without an upper limit; below a hundred words it says little. Throws a `RangeError` for
 * text without words.
 */
export function readingGrade(text: string): number {
  const { sentences, words, syllables } = readingCounts(text);
  if (words === 0) throw new RangeError('text without words has no reading grade');
  return 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;
}

/**
 * What the grade is worked out from. A sentence ends with its full stop, question mark or exclamation mark, and at the
 * latest with its line. What a hyphen joins is one word. A figure is one word of one syllable, so that a measure does not
 * make a text hard. Syllables are those of the package, which is right to within one for nearly all words.
 */
export function readingCounts(text: string): ReadingCounts {
  const words = text.match(wordPattern) ?? [];
  const sentences = text
    .split(/\n|[.!?…]+["”’)]*(?=\s|$)/u)
    .filter((part) => part.match(wordPattern) !== null);
  return {
    sentences: sentences.length,
    words: words.length,
    syllables: words.reduce((sum, word) => sum + syllablesIn(word), 0),
  };
}

const wordPattern = /[\p{L}\p{N}]+(?:['’.,/⁄-][\p{L}\p{N}]+)*/gu;

function syllablesIn(word: string): number {
  return Math.max(1, /\p{L}/u.test(word) ? syllable(word) : 1);
}
