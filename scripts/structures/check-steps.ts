/**
 * That the steps and the list of parts of a project belong together: every letter a step calls is in the list, every part of
 * the list is called in a step, and a step that calls a part lists its material, so that its cautions stand there.
 */
import type { Project } from '../records/schemas/project.ts';
import type { StructureDiagnosis } from './structure.ts';

/** A part called in a text: `(A)`, `(A, B)`, `(A and B)`. */
const calls = /\(([A-Z](?:(?:, | and | or )[A-Z])*)\)/g;

/** The letters of parts that a text calls, in order. */
export function lettersIn(text: string): readonly string[] {
  return [...text.matchAll(calls)].flatMap(([, letters]) => letters!.match(/[A-Z]/g) ?? []);
}

/** `otherLetters` are those that drawings use for something that is no part, such as the sashes of a frame. */
export function stepFaults(
  { parts, steps }: Pick<Project, 'parts' | 'steps'>,
  otherLetters: readonly string[] = [],
): readonly StructureDiagnosis[] {
  const called = steps.map(({ text }) => lettersIn(text));
  const known = [...parts.map(({ letter }) => letter), ...otherLetters];
  const unknown = called.flatMap((letters, index) =>
    [...new Set(letters)]
      .filter((letter) => !known.includes(letter))
      .map((letter) => ({
        path: ['steps', index, 'text'],
        message: `Step ${index + 1} calls part ${letter}, which is not in the list of parts.`,
        hint: `Add part ${letter} to parts, or correct the letter; there are ${known.join(', ')}.`,
      })),
  );
  const unused = parts.flatMap(({ letter, name }, index) =>
    called.some((letters) => letters.includes(letter))
      ? []
      : [
          {
            path: ['parts', index, 'letter'],
            message: `Part ${letter} (${name}) is in the list, but no step says what to do with it.`,
            hint: `Call it in the text of its step, as (${letter}), or remove it from parts.`,
          },
        ],
  );
  const withoutMaterial = steps.flatMap(({ materials }, index) =>
    [...new Set(called[index])].flatMap((letter) => {
      const part = parts.find((other) => other.letter === letter);
      if (!part || materials.includes(part.material)) return [];
      return [
        {
          path: ['steps', index, 'materials'],
          message: `Step ${index + 1} uses part ${letter}, but does not list its material ${part.material}, so its cautions would not stand there.`,
          hint: `Add ${part.material} to the materials of the step.`,
        },
      ];
    }),
  );
  return [...unknown, ...unused, ...withoutMaterial];
}
