import { describe, expect, it } from 'vitest';
import { paragraph } from '../../scripts/document/build.ts';
import { openFonts } from '../../scripts/pdf/fonts.ts';
import { renderPdf } from '../../scripts/pdf/render-pdf.ts';
import { makeDocument, showcase } from '../document/showcase.ts';
import { readPdf, wordsOfPdf } from './read-pdf.ts';
import { design, fontFiles } from './sheets.ts';

/** Characters that share a glyph with the hyphen and the space, each before the plain one was ever drawn. */
const sharedGlyphs = makeDocument([paragraph('out\u00addoors\u00a0only well\u2011known')], {
  title: 'No\u2011break',
  datesFor: 'Dates\u00a0for\u00a0Example\u00a0County',
});
const hyphens = makeDocument([paragraph('well-drained soil, 6-8 weeks - and more')]);

describe('fonts shared between documents', () => {
  it('keep hyphens and spaces after a document with soft hyphens and no-break spaces', async () => {
    const fonts = openFonts(fontFiles);
    await renderPdf(sharedGlyphs, { design, fonts });
    const { bytes } = await renderPdf(hyphens, { design, fonts });
    const text = (await readPdf(bytes)).pages.map((page) => JSON.stringify(page)).join('');
    expect(text).toContain('well-drained soil, 6-8 weeks - and more');
  });

  it('leave soft hyphens out', async () => {
    const { bytes } = await renderPdf(sharedGlyphs, { design, fonts: openFonts(fontFiles) });
    expect(wordsOfPdf(await readPdf(bytes))).toContain('outdoors');
  });
});

describe('the bytes of a sheet', () => {
  const fonts = openFonts(fontFiles);
  const bytesOf = async (document = showcase): Promise<string> =>
    Buffer.from((await renderPdf(document, { design, fonts })).bytes).toString('latin1');

  it('are the same twice, after other documents, and with fonts opened anew', async () => {
    const first = await bytesOf();
    await bytesOf(sharedGlyphs);
    expect((await bytesOf()) === first).toBe(true);
    const anew = await renderPdf(showcase, { design, fonts: openFonts(fontFiles) });
    expect(Buffer.from(anew.bytes).toString('latin1') === first).toBe(true);
  });

  it('carry the issue date of the record as their date', async () => {
    expect(await bytesOf(hyphens)).toContain('(D:20270115000000Z)');
  });

  it('have another file id on other paper', async () => {
    const id = (text: string): string | undefined => /\/ID \[(<[0-9a-f]+>)/.exec(text)?.[1];
    const [letter, a4] = [id(await bytesOf(hyphens)), id(await bytesOf({ ...hyphens, paper: 'a4' }))];
    expect(letter).toBeDefined();
    expect(a4).not.toBe(letter);
  });
});
