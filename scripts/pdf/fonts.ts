import { create, type Font, type GlyphRun } from 'fontkit';
import type { FaceName } from '../document/design.ts';

/** Runs of glyphs by the text they show. The writer and the measuring share it, so both see the same widths. */
export type RunCache = Record<string, GlyphRun>;

/** The faces of the sheets, opened once and shared by every document. */
export interface FontSet {
  font(face: FaceName): Font;
  /** The runs of one face that were shaped so far, with positions in thousandths of the type size. */
  runs(face: FaceName): RunCache;
  /** Width in points of text at a size in points, kerning within words included. */
  width(face: FaceName, text: string, sizePt: number): number;
  /** Height of capitals in points. */
  capHeight(face: FaceName, sizePt: number): number;
  /** The face that draws a character: the one asked for, or the next in line that has it. */
  faceFor(face: FaceName, character: string): FaceName | undefined;
  /** Characters of a text that the regular face, the last in line of every face, lacks; each once, in order. */
  missingCharacters(text: string): string[];
}

/**
 * Opens the four faces. Each font object is seeded: fontkit remembers a glyph with the first character that
 * asked for it, and some characters share a glyph (hyphen and soft hyphen, space and no-break space). Without
 * seeding a soft hyphen in one document would make every hyphen of later documents vanish.
 */
export function openFonts(bytes: Readonly<Record<FaceName, Uint8Array>>): FontSet {
  const fonts = mapFaces((face) => seeded(create(bytes[face])));
  const caches = mapFaces((face) => new BoundedRuns(fonts[face]));

  const faceFor = (face: FaceName, character: string): FaceName | undefined =>
    lineOfFaces[face].find((candidate) => fonts[candidate].hasGlyphForCodePoint(character.codePointAt(0)!));

  return {
    font: (face) => fonts[face],
    runs: (face) => caches[face].runs,
    width: (face, text, sizePt) =>
      (wordsAndSpaces(text).reduce((sum, part) => sum + caches[face].width(part), 0) * sizePt) / 1000,
    capHeight: (face, sizePt) => (fonts[face].capHeight / fonts[face].unitsPerEm) * sizePt,
    faceFor,
    missingCharacters: (text) =>
      [...new Set(printable(text))].filter((character) => faceFor('regular', character) === undefined),
  };
}

/**
 * Text as it can be shown: composed, without soft hyphens, controls and marks of direction; white space of any
 * width as a plain space, or as a no-break space where no line may end.
 */
export function printable(text: string): string {
  return text
    .normalize('NFC')
    .replace(ligatures, (character) => character.normalize('NFKC'))
    .replace(/[\t\n\r\u1680\u2000-\u2006\u2008-\u200a\u2028\u2029\u205f\u3000]/g, ' ')
    .replace(/[\u2007\u202f]/g, '\u00a0')
    .replace(/[\u00ad\u200b-\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff\u0000-\u001f\u007f-\u009f]/g, '');
}

/** Words and single spaces, the units that are shaped; a no-break space belongs to its word. */
export function wordsAndSpaces(text: string): string[] {
  return text.match(/ |[^ ]+/g) ?? [];
}

/**
 * Ligatures that have a character of their own. The fonts join letters by themselves; if such a character came
 * first, the joined letters of every document would be read and searched as that character.
 */
const ligature = /[\ufb00-\ufb06]/;
const ligatures = /[\ufb00-\ufb06]/g;

/** Which faces are tried for a character, in order. */
const lineOfFaces: Readonly<Record<FaceName, readonly FaceName[]>> = {
  regular: ['regular'],
  italic: ['italic', 'regular'],
  semibold: ['semibold', 'regular'],
  title: ['title', 'semibold', 'regular'],
};

const runLimit = 40_000;

/** Shaped runs of one face. When there are too many it starts anew, so that a long build keeps its memory. */
class BoundedRuns {
  runs: RunCache = emptyRuns();
  private count = 0;

  constructor(private readonly font: Font) {}

  width(text: string): number {
    return this.run(text).positions.reduce((sum, position) => sum + position.xAdvance, 0);
  }

  private run(text: string): GlyphRun {
    const known = this.runs[text];
    if (known) return known;
    if (this.count >= runLimit) {
      this.runs = emptyRuns();
      this.count = 0;
    }
    this.count += 1;
    return (this.runs[text] = scaled(this.font.layout(text), 1000 / this.font.unitsPerEm));
  }
}

const emptyRuns = (): RunCache => Object.create(null) as RunCache;

function scaled(run: GlyphRun, scale: number): GlyphRun {
  run.positions.forEach((position, index) => {
    position.xAdvance *= scale;
    position.xOffset *= scale;
    position.advanceWidth = run.glyphs[index]!.advanceWidth * scale;
  });
  return run;
}

function seeded(font: Font): Font {
  const characters = font.characterSet.filter((codePoint) => !ligature.test(String.fromCodePoint(codePoint)));
  for (const codePoint of characters.sort((a, b) => a - b)) font.glyphForCodePoint(codePoint);
  return font;
}

function mapFaces<T>(make: (face: FaceName) => T): Record<FaceName, T> {
  return {
    regular: make('regular'),
    italic: make('italic'),
    semibold: make('semibold'),
    title: make('title'),
  };
}
