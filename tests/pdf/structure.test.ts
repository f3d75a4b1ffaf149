/** The tag tree read by a second reader, what a listener hears of it, and that broken trees are noticed. */
import { describe, expect, it } from 'vitest';
import { column, inline, mark, paragraph, table } from '../../scripts/document/build.ts';
import { makeDocument, showcase } from '../document/showcase.ts';
import { heard } from './listen.ts';
import { PdfObjects, PdfReference } from './pdf-objects.ts';
import { elementsOf, readStructure } from './read-structure.ts';
import { structureFaults } from './structure-rules.ts';
import { fileText, render } from './sheets.ts';

const { bytes, pages } = await render(showcase);
const pdf = readStructure(bytes);

describe('the showcase as someone hears it', () => {
  it('can be followed', () => {
    expect(structureFaults(pdf)).toEqual([]);
  });

  it('is what was read from start to end', async () => {
    await expect(heard(pdf)).toMatchFileSnapshot('golden/showcase.heard.txt');
  });

  it('speaks short forms out, in words and in heads of columns', () => {
    const text = heard(pdf);
    expect(text).toContain('40 °F (4 °C) at 2 inches is enough');
    expect(text).toContain('Depth, inches: ¼ – ½');
  });

  it('says what a mark means, and where its note is', () => {
    const [reference] = elementsOf(pdf.root).filter(({ role }) => role === 'Reference');
    expect(reference?.expansion).toBe('set out, not sown');
    const note = elementsOf(pdf.root).find(({ id }) => id === reference?.refersTo[0]);
    expect(note?.role).toBe('Note');
  });

  it('tells the language of words that are not in the language of the sheet', () => {
    const languages = elementsOf(pdf.root).flatMap(({ language }) => language ?? []);
    expect(languages).toEqual(['la', 'es']);
  });

  it('repeats the heading of a group where its rows go on, for the eye alone', () => {
    const repeated =
      /Sowing outdoors in Example County \(continued\).*Between rowsin(?:Sow in early spring|Sow again in summer)/s;
    expect(pdf.artifacts.filter((text) => repeated.test(text)).length).toBeGreaterThan(0);
    for (const heading of ['Sow in early spring', 'Sow again in summer'])
      expect(heard(pdf).split(heading)).toHaveLength(2);
  });

  it('has pages with labels, and an outline as deep as its headings', () => {
    const objects = new PdfObjects(bytes);
    const catalog = objects.dictionary(objects.trailer.get('Root'));
    expect(objects.array(objects.dictionary(catalog.get('PageLabels')).get('Nums'))).toHaveLength(2);
    expect(catalog.get('Outlines')).toBeInstanceOf(PdfReference);
    expect(pdf.artifacts).toHaveLength(pages);
  });
});

describe('a broken tag tree', () => {
  /** Each change leaves every byte in its place, so that the file can be read; the fault must be told. */
  const controls: readonly { name: string; from: RegExp; to: string; fault: RegExp }[] = [
    {
      name: 'a header without a scope',
      from: /\/Scope \/Row/,
      to: '/Scopx /Row',
      fault: /header without a scope/,
    },
    {
      name: 'a cell of another column',
      from: /\(h2\)\]/,
      to: '(h3)]',
      fault: /that belongs to .*h3, not to .*h2/,
    },
    {
      name: 'a cell that names no header',
      from: /\/Headers \[/,
      to: '/Headexx [',
      fault: /belongs to , not/,
    },
    {
      name: 'an id that is not in the tree',
      from: /(\/Names \[)\(h1\)/,
      to: '$1(q1)',
      fault: /not in the tree of ids/,
    },
    {
      name: 'a heading of one column',
      from: /\/ColSpan 5/,
      to: '/ColSpan 1',
      fault: /rows of 5 and 1 columns/,
    },
    {
      name: 'a table without a head',
      from: /\/S \/THead/,
      to: '/S /TBody',
      fault: /no head under its caption/,
    },
    {
      name: 'a caption that is a paragraph',
      from: /\/S \/Caption\n/g,
      to: '/S /Capxion\n',
      fault: /without a caption/,
    },
    {
      name: 'a heading that skips a level',
      from: /\/S \/H3/,
      to: '/S /H5',
      fault: /level 5 follows one of level 2/,
    },
    { name: 'a second title', from: /\/S \/H2/, to: '/S /H1', fault: /not one title/ },
    { name: 'a drawing that says nothing', from: /\/Alt \(/, to: '/Alx (', fault: /hardly anything/ },
    { name: 'a drawing without bounds', from: /\/BBox \[/, to: '/BBxx [', fault: /no bounds/ },
    {
      name: 'a list item without a body',
      from: /\/S \/LBody/,
      to: '/S /LBxxx',
      fault: /item of a list is made of Lbl, LBxxx|made of LBxxx/,
    },
    {
      name: 'a list that is numbered no way',
      from: /\/ListNumbering/,
      to: '/ListNumberixx',
      fault: /made of|how it is numbered/,
    },
    {
      name: 'a link without words',
      from: /\/Contents \(table/,
      to: '/Contents (tabxx',
      fault: /is announced as/,
    },
    {
      name: 'a note without a name',
      from: /\/ID \(n/,
      to: '/IX (n',
      fault: /note has no id|points at no note/,
    },
    { name: 'a mark that leads nowhere', from: /\/Ref \[/, to: '/Rex [', fault: /points at no note/ },
    {
      name: 'a caution that is no section',
      from: /\/Caution \/Sect/,
      to: '/Caution /Sxxx',
      fault: /stands for no section/,
    },
    { name: 'words in no tag', from: /\/MCID 0>>/, to: '/MCXX 0>>', fault: /which its page does not have/ },
    {
      name: 'words that are taken for decoration',
      from: /\/P <<\/MCID 1>> BDC/,
      to: '/P <<\/MCID 9>> BDC',
      fault: /twice on a page|in no tag/,
    },
    {
      name: 'content that is not closed',
      from: /\nEMC\n/,
      to: '\nEM \n',
      fault: /lies within other content|not closed/,
    },
    {
      name: 'a glyph that stands for nothing',
      from: /beginbfrange/,
      to: 'beginbfxxxxx',
      fault: /stands for no character/,
    },
  ];
  it.each(controls)('is noticed: $name', ({ from, to, fault }) => {
    const text = fileText(bytes);
    const changed = text.replace(from, (found) => {
      const replaced = found.replace(from, to);
      return replaced.padEnd(found.length).slice(0, found.length);
    });
    expect(changed === text, `nothing in the file is like ${from.source}`).toBe(false);
    expect(structureFaults(readStructure(Buffer.from(changed, 'latin1'))).join('\n')).toMatch(fault);
  });
});

describe('a table with a mark', () => {
  const columns = [column('Crop'), column('Days')];
  const rows = [
    { cells: [inline('Leek'), inline([mark({ table: 'days', number: 2 }, 'from setting out', '*')])] },
  ];

  it('cannot be made without the note that the mark points at', () => {
    expect(() =>
      table({ id: 'days', caption: 'Days', columns, groups: [{ rows }], notes: ['One.'] }),
    ).toThrow(/mark without its note/);
  });

  it('says what the mark means after the value', async () => {
    const days = table({ id: 'days', caption: 'Days', columns, groups: [{ rows }], notes: ['One.', 'Two.'] });
    const set = await render(makeDocument([paragraph('Days to the harvest.'), days]));
    expect(heard(readStructure(set.bytes))).toContain('Days: (from setting out)');
  });
});
