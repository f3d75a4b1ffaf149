/** The small part of fontkit that measuring needs; the package ships no declarations. */
declare module 'fontkit' {
  export interface Glyph {
    readonly id: number;
    readonly advanceWidth: number;
    readonly codePoints: readonly number[];
  }
  export interface GlyphPosition {
    xAdvance: number;
    xOffset: number;
    /** Width of the glyph alone, without kerning; pdfkit adds it when it scales a run. */
    advanceWidth?: number;
  }
  export interface GlyphRun {
    readonly glyphs: readonly Glyph[];
    readonly positions: readonly GlyphPosition[];
    readonly advanceWidth: number;
  }
  export interface Font {
    readonly unitsPerEm: number;
    readonly capHeight: number;
    readonly characterSet: readonly number[];
    hasGlyphForCodePoint(codePoint: number): boolean;
    glyphForCodePoint(codePoint: number): Glyph;
    layout(text: string): GlyphRun;
  }
  export function create(bytes: Uint8Array): Font;
}
