/** Reads what the front matter of a segment companion sheet has to say. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { SheetRecord } from './guide.ts';
import { headerProse, lackingKeys } from './header-prose.ts';
import { airtime, secondsOf } from './schemas/companion-sheet.ts';
import type { SheetHeader } from './schemas/sheet.ts';
import type { YamlFile } from './yaml-file.ts';

/** The Markdown of its beats; nothing for a sheet that has none. */
export function readCompanionProse(
  { beats }: SheetHeader,
  file: YamlFile,
): { readonly prose: Pick<SheetRecord, 'beatProse'>; readonly diagnostics: readonly Diagnostic[] } {
  if (!beats) return { prose: {}, diagnostics: [] };
  const { read, diagnostics } = headerProse(file);
  const beatProse = beats.map(({ say, caption }, index) => ({
    say: read(say, `/beats/${index}/say`),
    ...(caption === undefined ? {} : { caption: read(caption, `/beats/${index}/caption`) }),
  }));
  return { prose: { beatProse }, diagnostics };
}

const needed = {
  runs: 'Add “runs:” with the length of the segment in minutes and seconds, such as “4:30”.',
  beats: 'Add “beats:”, a list with “length:”, “picture:” and “say:” for each.',
} as const;

/** What a companion sheet lacks, and beats that do not add up to the segment. */
export function needsOfCompanion(value: SheetHeader, file: YamlFile): Diagnostic[] {
  const lacking = lackingKeys(value, file, { called: 'A segment companion sheet', hints: needed });
  const { project, crop, runs, beats } = value;
  if (project === undefined && crop === undefined) {
    lacking.unshift({
      code: 'missing-key',
      severity: 'error',
      message: 'A segment companion sheet has neither “project” nor “crop”.',
      hint: 'Add “project:” or “crop:” with the id of what the segment is about.',
      place: file.placeOf('/kind'),
    });
  }
  if (runs === undefined || beats === undefined) return lacking;
  const sum = beats.reduce((seconds, { length }) => seconds + secondsOf(length), 0);
  if (sum === secondsOf(runs)) return lacking;
  return [
    ...lacking,
    {
      code: 'segment',
      severity: 'error',
      message: `The beats run for ${airtime(sum)} together, and the segment for ${runs}.`,
      hint: 'Change the length of a beat, or that of the segment.',
      place: file.placeOf('/runs'),
    },
  ];
}
