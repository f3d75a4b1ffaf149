import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readingCounts, readingGrade } from '../../scripts/prose/reading-grade.ts';

describe('what is counted', () => {
  const cases: readonly (readonly [string, string, [number, number, number]])[] = [
    ['plain words', 'Rake it flat.', [1, 3, 3]],
    ['a question and an exclamation', 'Who digs? You do!', [2, 4, 4]],
    ['a quotation that ends a sentence', 'He said “Stop.” Then he dug.', [2, 6, 6]],
    ['lines without full stops', 'Rake it flat\nSow it', [2, 5, 5]],
    ['an empty line', 'Rake it.\n\nSow it.', [2, 4, 4]],
    ['a decimal is no end of a sentence', 'It is 1.83 m wide.', [1, 5, 5]],
    ['a figure is one word of one syllable', 'Use 475 g.', [1, 3, 3]],
    ['a fraction is one word', 'It is 47¾ in wide.', [1, 5, 5]],
    ['a date', 'Sow on April 14.', [1, 4, 5]],
    ['what a hyphen joins is one word', 'A two-string bale.', [1, 3, 4]],
    ['an apostrophe', 'The sun’s heat isn’t lost.', [1, 5, 6]],
    ['a silent e', 'Take one stake.', [1, 3, 3]],
    ['long words', 'Temperature and thermometer.', [1, 3, 9]],
  ];
  test.each(cases)('%s', (_, text, [sentences, words, syllables]) => {
    expect(readingCounts(text)).toEqual({ sentences, words, syllables });
  });
});

test('the grade is the published formula on the counts', () => {
  const text = 'Push each stake into the straw by hand until it stands. Then drive it down.';
  const { sentences, words, syllables } = readingCounts(text);
  expect([sentences, words, syllables]).toEqual([2, 15, 17]);
  expect(readingGrade(text)).toBeCloseTo(0.39 * 7.5 + 11.8 * (17 / 15) - 15.59, 10);
});

test.each(['', '  \n ', '– … !'])('text without words has no grade: %j', (text) => {
  expect(() => readingGrade(text)).toThrow(RangeError);
});

test('said twice, a text is as hard as once', () => {
  const word = fc.constantFrom('sow', 'garden', 'temperature', 'it', '14', 'bale');
  const sentence = fc.array(word, { minLength: 1, maxLength: 12 }).map((words) => `${words.join(' ')}.`);
  fc.assert(
    fc.property(fc.array(sentence, { minLength: 1, maxLength: 6 }), (sentences) => {
      const text = sentences.join(' ');
      expect(readingGrade(`${text} ${text}`)).toBeCloseTo(readingGrade(text), 8);
    }),
  );
});

test('a long sentence cut in two is easier', () => {
  const joined = readingGrade('We rake the bed flat and then we sow the seed in rows.');
  expect(readingGrade('We rake the bed flat. And then we sow the seed in rows.')).toBeLessThan(joined);
});
