import { expect, test } from 'vitest';
import { lettersIn, stepFaults } from '../../scripts/structures/check-steps.ts';
import { partOf, projectWith } from './project.ts';

test.each([
  { name: 'one', text: 'Lay the boards (A) down.', letters: 'A' },
  { name: 'two with a comma', text: 'Screw them (B, C) together.', letters: 'BC' },
  { name: 'two with and', text: 'Use posts and screws (B and C).', letters: 'BC' },
  { name: 'in the middle of a list', text: 'The mix (E), the peas (H) and the net (L).', letters: 'EHL' },
  {
    name: 'none: a word in brackets is no part',
    text: 'Rake it level (twice). (See the plan.)',
    letters: '',
  },
  { name: 'none: a letter without brackets', text: 'Plan A is best.', letters: '' },
])('the parts that a text calls: $name', ({ text, letters }) => {
  expect(lettersIn(text).join('')).toBe(letters);
});

const step = (text: string, materials: readonly string[]) => ({
  ...projectWith().steps[0]!,
  text,
  materials: [...materials],
});

const parts = [
  partOf({ letter: 'A', material: 'straw-bale' }),
  partOf({ letter: 'B', material: 'wooden-stake' }),
];

test.each([
  {
    name: 'every part called where its material is listed',
    steps: [step('Set (A), drive (B).', ['straw-bale', 'wooden-stake'])],
    faults: [],
  },
  {
    name: 'a letter that no part has',
    steps: [step('Set (A), drive (B), tie (Z).', ['straw-bale', 'wooden-stake'])],
    faults: [/calls part Z, which is not in the list/],
  },
  {
    name: 'a part that no step uses',
    steps: [step('Set (A).', ['straw-bale'])],
    faults: [/Part B \(.*\) is in the list, but no step says/],
  },
  {
    name: 'a part whose material the step leaves out, so that its cautions would be missing',
    steps: [step('Set (A), drive (B).', ['straw-bale'])],
    faults: [/uses part B, but does not list its material wooden-stake/],
  },
  {
    name: 'all of these in one run',
    steps: [step('Set (A), tie (Z).', [])],
    faults: [/calls part Z/, /Part B/, /uses part A/],
  },
])('steps and parts: $name', ({ steps, faults }) => {
  const found = stepFaults({ parts, steps }).map(({ message }) => message);
  expect(found).toHaveLength(faults.length);
  faults.forEach((fault, index) => {
    expect(found[index]).toMatch(fault);
  });
});

test('letters of sashes are no parts, and no fault', () => {
  const steps = [step('Set (A), drive (B), lay the sash (X).', ['straw-bale', 'wooden-stake'])];
  expect(stepFaults({ parts, steps }, ['X'])).toEqual([]);
});
