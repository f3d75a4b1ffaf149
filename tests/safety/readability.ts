/**
 * Flesch-Kincaid grade level (J. P. Kincaid and others, Navy report 8-75, 1975):
 * 0.39 words a sentence + 11.8 syllables a word - 15.59.
 */
export function gradeLevel(text: string): number {
  const sentences = text.split(/[.!?]+(?:\s|$)/).filter((part) => part.trim() !== '').length;
  const words = text.match(/[A-Za-z][A-Za-z'-]*/g) ?? [];
  const syllables = words.reduce((sum, word) => sum + syllablesIn(word), 0);
  return 0.39 * (words.length / sentences) + 11.8 * (syllables / words.length) - 15.59;
}

/** Counts groups of vowels; a silent e at the end is left out. Right to within one for nearly all words. */
function syllablesIn(word: string): number {
  const bare = word.toLowerCase().replace(/[^a-z]/g, '');
  const groups = bare.replace(/(?:[^laeiouy]es|[^td]ed|[^laeiouy]e)$/, '').match(/[aeiouy]+/g) ?? [];
  return Math.max(1, groups.length);
}
