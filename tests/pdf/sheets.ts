import designFile from '../../layouts/design.json' with { type: 'json' };
import type { Design } from '../../scripts/document/design.ts';
import type { SheetDocument } from '../../scripts/document/document.ts';
import { openFonts } from '../../scripts/pdf/fonts.ts';
import { renderPdf, type RenderedPdf } from '../../scripts/pdf/render-pdf.ts';
import { readFontFiles } from '../../scripts/records/font-files.ts';

export const design = designFile as unknown as Design;
export const fontFiles = await readFontFiles();
/** Shared by all documents of one test file, as in a build. */
export const fonts = openFonts(fontFiles);

/** Streams are left readable, so that tests can look into the bytes. */
export function render(document: SheetDocument): Promise<RenderedPdf> {
  return renderPdf(document, { design, fonts, compression: 'none' });
}

/** The bytes as text: names and plain strings of the file can be searched in it. */
export const fileText = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');
