/** What several kinds of sheet ask of their front matter alike. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { parseInlineProse } from '../prose/parse.ts';
import type { ProseInline } from '../prose/prose.ts';
import type { SheetHeader } from './schemas/sheet.ts';
import type { YamlFile } from './yaml-file.ts';

export interface HeaderProse {
  /** The inline Markdown of a key, and what is wrong with it at its place. */
  readonly read: (text: string, pointer: string) => readonly ProseInline[];
  /** Faults of all that was read so far. */
  readonly diagnostics: readonly Diagnostic[];
}

export function headerProse(file: YamlFile): HeaderProse {
  const diagnostics: Diagnostic[] = [];
  const read = (text: string, pointer: string): readonly ProseInline[] => {
    const reading = parseInlineProse(text, (piece, _, occurrence) =>
      file.placeOfText(pointer, piece, occurrence),
    );
    diagnostics.push(...reading.diagnostics);
    return reading.content;
  };
  return { read, diagnostics };
}

/** A fault for each key that a kind of sheet needs and has not; `hints` has the keys and what to add. */
export function lackingKeys(
  value: SheetHeader,
  file: YamlFile,
  { called, hints }: { readonly called: string; readonly hints: Partial<Record<keyof SheetHeader, string>> },
): Diagnostic[] {
  return Object.entries(hints)
    .filter(([key]) => value[key as keyof SheetHeader] === undefined)
    .map(([key, hint]): Diagnostic => ({
      code: 'missing-key',
      severity: 'error',
      message: `${called} has no “${key}”.`,
      hint,
      place: file.placeOf('/kind'),
    }));
}
