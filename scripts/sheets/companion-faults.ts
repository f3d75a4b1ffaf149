/** What keeps a segment companion sheet from going on air, each at its place. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { SheetContext } from './sheet-context.ts';

/** Two lines of a screen, by common practice of subtitles some 32 characters each (from memory). */
export const captionLimit = { lines: 2, characters: 32 } as const;

/** A beat that shows a step which the project does not have. */
export function noSuchStep({ guide, sheet }: SheetContext, last: number): Diagnostic[] {
  return (sheet.beats ?? []).flatMap(({ steps = [] }, beat) =>
    steps.flatMap((number, index): Diagnostic[] =>
      number <= last
        ? []
        : [
            {
              code: 'segment',
              severity: 'error',
              message: `Beat ${beat + 1} shows step ${number}, and the project has ${last} steps.`,
              hint: `Write the number of a step, from 1 to ${last}.`,
              place: guide.placeOf('sheet', sheet.id, `/beats/${beat}/steps/${index}`),
            },
          ],
    ),
  );
}

/** Words over the picture that do not fit on the screen once their numbers are filled in. */
export function longCaption({ guide, sheet, facts }: SheetContext, text: string, beat: number): Diagnostic[] {
  const most = captionLimit.lines * captionLimit.characters;
  const over = text.length - most;
  if (over <= 0) return [];
  return [
    {
      code: 'segment',
      severity: 'error',
      message: `In ${facts.region.name} the caption of beat ${beat + 1} is ${over} characters too long for ${captionLimit.lines} lines of ${captionLimit.characters}: “${text}”.`,
      hint: 'Say it in fewer words.',
      place: guide.placeOf('sheet', sheet.id, `/beats/${beat}/caption`),
    },
  ];
}
