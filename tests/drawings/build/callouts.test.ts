import { describe, expect, test } from 'vitest';
import { placeCallouts, type Scenery } from '../../../scripts/drawings/build/callouts.ts';

const page = { left: 0, right: 80, top: 0, bottom: 60 };
/** A thing that leaves only a strip free along the top of the page. */
const thing = [
  { x: 0, y: 10 },
  { x: 80, y: 10 },
  { x: 80, y: 60 },
  { x: 0, y: 60 },
];
const scenery: Scenery = { boxes: [], lines: [], shapes: [thing] };
const first = { letter: 'A', spots: [{ x: 40, y: 40 }] };
const second = { letter: 'B', spots: [{ x: 41, y: 36 }] };

const lettersOf = (targets: readonly (typeof first)[], around: Scenery): readonly string[] =>
  placeCallouts(targets, page, around).flatMap((item) => (item.kind === 'text' ? [item.text] : []));

describe('letters beside a thing', () => {
  test('two parts side by side both get theirs', () => {
    expect(lettersOf([first, second], scenery)).toEqual(['A', 'B']);
  });

  test('one that could only be reached across the line of another is left out', () => {
    const words = { left: 42, right: 80, top: 0, bottom: 10 };
    expect(lettersOf([first, second], { ...scenery, boxes: [words] })).toEqual(['A']);
  });

  test('one that could only be reached through words is left out', () => {
    const words = { left: 0, right: 80, top: 20, bottom: 24 };
    expect(lettersOf([first], { ...scenery, boxes: [words] })).toEqual([]);
  });

  test('one without any free room is left out', () => {
    expect(lettersOf([first], { ...scenery, boxes: [{ left: 0, right: 80, top: 0, bottom: 10 }] })).toEqual(
      [],
    );
  });

  test('a balloon stands on its part where that is large and nothing lies over it', () => {
    const on = (over: readonly (typeof thing)[]) =>
      placeCallouts([{ ...first, rooms: [{ outline: thing, over }] }], page, scenery);
    const isLine = (items: ReturnType<typeof on>): boolean => items.some(({ kind }) => kind === 'path');
    expect(isLine(on([]))).toBe(false);
    expect(isLine(on([thing]))).toBe(true);
  });
});
