/** What keeps a segment companion sheet from going on air, each at its place. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { SheetContext } from './sheet-context.ts';

/** A beat that shows a step which the project does not have; `last` is 0 for a segment without a project. */
export function noSuchStep({ guide, sheet }: SheetContext, last: number): Diagnostic[] {
  return (sheet.beats ?? []).flatMap(({ steps = [] }, beat) =>
    steps.flatMap((number, index): Diagnostic[] => {
      if (number <= last) return [];
      const place = guide.placeOf('sheet', sheet.id, `/beats/${beat}/steps/${index}`);
      const said = `Beat ${beat + 1} shows step ${number}, and`;
      const fault = { code: 'segment', severity: 'error', place } as const;
      return [
        last === 0
          ? {
              ...fault,
              message: `${said} the segment has no project.`,
              hint: 'Name the project in the header, or list what the beat uses and does as “tools:”, “materials:” and “actions:”.',
            }
          : {
              ...fault,
              message: `${said} the project has ${last} steps.`,
              hint: `Write the number of a step, from 1 to ${last}.`,
            },
      ];
    }),
  );
}
