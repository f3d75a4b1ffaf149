import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { SheetDocument } from '../../scripts/document/document.ts';
import { showcase } from '../document/showcase.ts';
import { scenesOf, wordsOfDocument } from '../html/reading.ts';
import { printTags, readPdf, tagsOf, textOf, wordsOfPdf } from './read-pdf.ts';
import { fileText, render } from './sheets.ts';

const rendered = await render(showcase);
const pdf = await readPdf(rendered.bytes);
const file = fileText(rendered.bytes);

describe('the showcase as PDF', () => {
  it('has no fault and several pages', () => {
    expect(rendered.diagnostics).toEqual([]);
    expect(rendered.pages).toBe(pdf.pages.length);
    expect(rendered.pages).toBeGreaterThan(4);
  });

  it('has the tag tree that was looked at', async () => {
    await expect(printTags(pdf)).toMatchFileSnapshot('golden/showcase.tags.txt');
  });

  it('has the words of the document in their order', () => {
    expect(lowerCase(wordsOfPdf(pdf))).toEqual(lowerCase(printedWords(showcase)));
  });

  it('draws nothing outside the tag tree that is not an artifact', () => {
    expect(pdf.stray).toEqual([]);
  });

  it('closes every stretch of marked content before it opens the next, but for abbreviations within one', () => {
    const marks = [...file.matchAll(/\/Span <<\/E [^>]*>> BDC|\b(?:BDC|BMC|EMC)\b/g)].map(([mark]) => mark);
    expect(marks.length).toBeGreaterThan(200);
    let depth = 0;
    for (const mark of marks) {
      if (mark.startsWith('/Span')) expect(depth).toBe(1);
      else if (mark !== 'EMC') expect(depth).toBe(0);
      depth += mark === 'EMC' ? -1 : 1;
    }
    expect(depth).toBe(0);
  });

  it('tells every drawing by its alternative, in order', () => {
    const narrow = (id: string): boolean => id.endsWith('-narrow');
    const scenes = scenesOf(showcase.blocks).filter(({ id }) => !narrow(id));
    expect(tagsOf(pdf, 'Figure').map(({ alternative }) => alternative)).toEqual(
      scenes.map(({ alternative }) => alternative),
    );
    expect(file.match(/\/BBox \[/g)).toHaveLength(scenes.length);
  });

  it('says where every link leads', () => {
    expect(pdf.links.map(({ url }) => url)).toEqual([
      'https://guides.example.org/freeze',
      'https://climate.example.org/freeze-table',
    ]);
    expect(pdf.links[0]?.contents).toBe('table of freeze dates (https://guides.example.org/freeze)');
    expect(tagsOf(pdf, 'Link').map((link) => textOf(link).trim())).toEqual([
      'table of freeze dates',
      'climate.example.org/freeze-table',
    ]);
    expect(file.match(/\/Type \/OBJR/g)).toHaveLength(pdf.links.length);
  });

  it('claims PDF/A-2a, describes the claim of PDF/UA-1, and names the colours it means', () => {
    expect(pdf.metadata).toContain('<pdfaid:part>2</pdfaid:part>');
    expect(pdf.metadata).toContain('<pdfaid:conformance>A</pdfaid:conformance>');
    expect(pdf.metadata).toContain('<pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>');
    expect(file).toContain('/S /GTS_PDFA1');
    expect(file).not.toContain('/CIDSet');
  });

  it('claims PDF/UA-1, shows its title, and names its language', () => {
    expect(pdf.metadata).toContain('<pdfuaid:part>1</pdfuaid:part>');
    expect(file).toContain('/DisplayDocTitle true');
    expect(file).toContain('/Lang (en)');
    expect(file).toContain('/Marked true');
  });

  it('has the order of tabs follow the structure on every page', () => {
    expect(file.match(/\/Tabs \/S\b/g)).toHaveLength(rendered.pages);
  });

  it('has an outline of the headings, nested by level', () => {
    const titles = pdf.outline.map(({ title }) => title);
    expect(titles).toEqual([
      'When to sow',
      'Before you start',
      'Spacing',
      'Build the bed',
      'Row labels',
      'How we worked this out',
      'Sources',
      'For a class',
    ]);
    expect(pdf.outline[0]?.items.map(({ title }) => title)).toEqual(['At a glance', 'Soil']);
    expect(pdf.outline[0]?.items[1]?.items.map(({ title }) => title)).toEqual(['Soil test']);
    expect(pdf.outline[3]?.items.map(({ title }) => title)).toEqual([
      'Read this first',
      'Step 1: Saw the boards',
      'Step 2: Lay the second course',
      'Step 3: Check that it is level',
      'Step 4: Lay the cap',
    ]);
  });

  it('repeats the head of a long table as an artifact, so that it is told once', () => {
    const heads = tagsOf(pdf, 'THead').filter((head) => textOf(head).includes('Sow outdoors'));
    expect(heads).toHaveLength(1);
    expect(tagsOf(pdf, 'Table').filter((table) => textOf(table).includes('Jalapeño'))).toHaveLength(2);
  });

  it('gives every header cell its scope, group rows their span, and lists their numbering', () => {
    const count = (text: string): number => file.split(text).length - 1;
    const rows = 4 * 8 + 3;
    expect(count('/Scope /Row')).toBe(rows);
    expect(count('/Scope /Column')).toBe(5 + 3 + 2);
    expect(count('/ColSpan 5')).toBe(2);
    expect(count('/S /TH\n')).toBe(rows + 5 + 3 + 2);
    expect(count('/ListNumbering /Disc')).toBe(3);
    expect(count('/ListNumbering /Decimal')).toBe(4);
    expect(count('/S /L\n')).toBe(count('/ListNumbering '));
  });

  it('says "Step 3" for a lone 3', () => {
    expect(file).toContain('/ActualText (Step 3)');
  });

  it('escapes what XML would take for markup', async () => {
    const { bytes } = await render({ ...showcase, title: 'Peas & beans <2027>' });
    const { metadata } = await readPdf(bytes);
    expect(metadata).toContain('Peas &amp; beans &lt;2027&gt;');
  });

  it.skipIf(!hasQpdf())('is well-formed for qpdf (skipped where qpdf is not installed)', () => {
    const folder = mkdtempSync(join(tmpdir(), 'groundsheet-'));
    const path = join(folder, 'showcase.pdf');
    writeFileSync(path, rendered.bytes);
    const { status, stdout, stderr } = spawnSync('qpdf', ['--check', path], { encoding: 'utf8' });
    rmSync(folder, { recursive: true });
    expect(`${stdout}${stderr}`).toContain('No syntax or stream encoding errors found');
    expect(status).toBe(0);
  });
});

describe('the showcase on A4', () => {
  it('has the same words in the same order', async () => {
    const { bytes, diagnostics } = await render({ ...showcase, paper: 'a4' });
    expect(diagnostics).toEqual([]);
    expect(lowerCase(wordsOfPdf(await readPdf(bytes)))).toEqual(lowerCase(printedWords(showcase)));
    expect(fileText(bytes)).toContain('/MediaBox [0 0 595.28 841.89]');
  });
});

function hasQpdf(): boolean {
  return spawnSync('qpdf', ['--version']).status === 0;
}

/** Signal words are printed in capitals. */
const lowerCase = (words: readonly string[]): readonly string[] => words.map((word) => word.toLowerCase());

/** What paper adds to the words of the blocks: the band, and the foot once. */
function printedWords(document: SheetDocument): readonly string[] {
  const {
    series,
    number,
    title,
    datesFor,
    notice = '',
    office,
    issuedText,
    reviewText,
    address = '',
  } = document;
  const blocks = wordsOfDocument({ ...document, furniture: { ...document.furniture, step: String } });
  const foot = [office, number, issuedText, reviewText, address].join(' ');
  return [
    ...`${series} ${number} ${title} ${datesFor} ${notice}`.split(/\s+/),
    ...blocks,
    ...foot.split(/\s+/),
  ];
}
