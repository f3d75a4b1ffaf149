/** Words over the picture: how they break into the lines of a screen, and what of them does not fit. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { SheetContext } from './sheet-context.ts';

/** Two lines of a screen, by common practice of subtitles some 32 characters each (from memory). */
export const captionLimit = { lines: 2, characters: 32 } as const;

/**
 * A caption as it stands on the screen. Lines end at spaces; a number stays with its unit, since a space that no line
 * ends at stands between them. A word longer than a line has a line of its own, and more lines than fit are all given.
 */
export function captionLines(text: string): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(/[ \n]+/).filter((each) => each !== '')) {
    const last = lines.at(-1);
    const longer = `${last} ${word}`;
    if (last !== undefined && longer.length <= captionLimit.characters) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** How many characters of a caption find no room: those past the last line, and those past the end of a line. */
export function charactersTooMany(text: string): number {
  const lines = captionLines(text);
  const past = lines.slice(captionLimit.lines).join(' ').length;
  const shown = lines.slice(0, captionLimit.lines);
  return shown.reduce((sum, line) => sum + Math.max(0, line.length - captionLimit.characters), past);
}

/** A caption that does not fit on the screen once its numbers are filled in. Beats are counted from 0. */
export function longCaption({ guide, sheet, facts }: SheetContext, text: string, beat: number): Diagnostic[] {
  const over = charactersTooMany(text);
  if (over === 0) return [];
  return [
    {
      code: 'segment',
      severity: 'error',
      message: `In ${facts.region.name} the caption of beat ${beat + 1} is ${over} ${over === 1 ? 'character' : 'characters'} too long for ${captionLimit.lines} lines of ${captionLimit.characters}: “${captionLines(text).join(' / ')}”.`,
      hint: 'Say it in fewer words. Lines end at the spaces between words.',
      place: guide.placeOf('sheet', sheet.id, `/beats/${beat}/caption`),
    },
  ];
}
