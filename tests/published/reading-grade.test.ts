/**
 * The Flesch-Kincaid grade of J. P. Kincaid, R. P. Fishburne, R. L. Rogers and B. S. Chissom, Derivation of New Readability
 * Formulas for Navy Enlisted Personnel, Research Branch Report 8-75, 1975.
 */
import { expect, test } from 'vitest';
import { readingCounts, readingGrade } from '../../scripts/prose/reading-grade.ts';

/**
 * The example of encyclopedias on the formula: 13 words with 24 syllables, grade 11.3. The syllables of "Australian" and
 * "reptilian" are three or four each, by the ear; either way counts within two, and each is 0.9 of a grade here.
 */
test('the platypus, grade 11.3', () => {
  const text = 'The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.';
  const { sentences, words, syllables } = readingCounts(text);
  expect([sentences, words]).toEqual([1, 13]);
  expect(Math.abs(syllables - 24)).toBeLessThanOrEqual(2);
  expect(readingGrade(text)).toBeCloseTo(11.3 + (syllables - 24) * (11.8 / 13), 1);
});

/** The least that the formula can give, as published: one word of one syllable a sentence, -3.40. Exact. */
test('the shortest words in the shortest sentences, grade -3.40', () => {
  expect(readingGrade('Sow. Dig. Rake.')).toBeCloseTo(-3.4, 10);
});
