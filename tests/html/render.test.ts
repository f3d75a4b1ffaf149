import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  caution,
  column,
  figure,
  findingWords,
  heading,
  inline,
  language,
  link,
  list,
  paragraph,
  sources,
  steps,
  table,
  workings,
} from '../../scripts/document/build.ts';
import type { Block, Inline, SignalWord } from '../../scripts/document/document.ts';
import type { Scene } from '../../scripts/drawings/scene.ts';
import { renderBlocks } from '../../scripts/html/render.ts';
import { makeDocument, showcase } from '../document/showcase.ts';
import {
  attributes,
  decode,
  headingLevelsOf,
  scenesOf,
  tags,
  wordsOfDocument,
  wordsOfPage,
} from './reading.ts';

const render = (...blocks: readonly Block[]): string => renderBlocks(makeDocument(blocks));
const page = renderBlocks(showcase);

describe('the showcase as HTML', () => {
  it('has the words of the document in their order', () => {
    expect(wordsOfPage(page)).toEqual(wordsOfDocument(showcase));
  });

  it('tells every drawing by its alternative, in order, the narrow one after the wide one', () => {
    const alternatives = scenesOf(showcase.blocks).map((scene) => scene.alternative);
    expect(alternatives.length).toBeGreaterThan(3);
    expect(
      tags(page, 'svg')
        .filter((tag) => tag.includes('role="img"'))
        .flatMap((tag) => attributes(tag, 'aria-label')),
    ).toEqual(alternatives);
  });

  it('keeps the words inside a drawing in the page, and from being told twice', () => {
    const drawings = [...page.matchAll(/<svg class="drawing.*?<\/svg>/gs)].map((match) => match[0]);
    expect(drawings.join('')).toContain('>8 ft (2.44 m)</text>');
    for (const drawing of drawings)
      expect(drawing).toMatch(/^<svg[^>]*><g aria-hidden="true">.*<\/g><\/svg>$/s);
  });

  it('has ids that are unique', () => {
    const ids = attributes(page, 'id');
    expect(ids.length).toBeGreaterThan(10);
    expect(ids.filter((id, place) => ids.indexOf(id) !== place)).toEqual([]);
  });

  it('links every finding to its working', () => {
    const links = tags(page, 'a').filter((tag) => /class="finding( whole)?"/.test(tag));
    expect(links.length).toBeGreaterThan(10);
    const targets = links.flatMap((tag) => attributes(tag, 'href')).map((href) => href.slice(1));
    const ids = new Set(attributes(page, 'id'));
    expect(targets.filter((target) => !ids.has(target))).toEqual([]);
  });

  it('never skips a heading level on the way down', () => {
    const levels = [1, ...headingLevelsOf(page)];
    expect(levels.length).toBeGreaterThan(10);
    expect(levels.filter((level, place) => place > 0 && level > levels[place - 1]! + 1)).toEqual([]);
  });
});

describe('words', () => {
  it('come back as they went in, whatever characters they hold', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1 }), (words) => {
        fc.pre(words.trim() !== '');
        const html = render(paragraph({ kind: 'text', text: words }));
        expect(html).toMatch(/^<p>[^<>]*<\/p>$/s);
        expect(decode(html.slice(3, -4))).toBe(words);
      }),
    );
  });

  const scene: Scene = { id: 'a', widthMm: 10, heightMm: 10, alternative: '"5 < 6" & so on', items: [] };
  const cases: readonly { name: string; block: Block; html: string }[] = [
    { name: 'in an attribute', block: figure(scene), html: 'aria-label="&quot;5 &lt; 6&quot; &amp; so on"' },
    {
      name: 'in Latin',
      block: paragraph(language('la', 'Daucus carota')),
      html: '<i lang="la">Daucus carota</i>',
    },
    {
      name: 'of a link with a query',
      block: paragraph(link('https://example.org/?a=1&b="2"', 'here')),
      html: '<a href="https://example.org/?a=1&amp;b=&quot;2&quot;">here</a>',
    },
  ];
  it.each(cases)('$name', ({ block, html }) => {
    expect(render(block)).toContain(html);
  });

  it('refuse an address that would run a script', () => {
    const content = inline('here');
    expect(() =>
      render({ kind: 'sources', items: [{ id: 'a', href: 'javascript:alert(1)', content }] }),
    ).toThrow(TypeError);
    expect(() =>
      render({
        kind: 'paragraph',
        role: 'body',
        content: [{ kind: 'link', href: 'data:text/html,', content }],
      }),
    ).toThrow(TypeError);
  });
});

describe('findings', () => {
  const entry = (id: string): Block =>
    workings([{ id, term: inline('Term'), value: inline('1'), explanation: inline('So.') }]);

  it('link to an entry deep in the document', () => {
    const html = render(
      paragraph(findingWords('carrot.sow-spring', '1')),
      list(false, [[entry('carrot.sow-spring')]]),
    );
    expect(html).toContain('href="#w-carrot_sow-spring"');
    expect(html).toContain('<div id="w-carrot_sow-spring">');
  });

  it('are words with an id when the document does not tell how they were worked out', () => {
    const html = render(paragraph(findingWords('carrot.sow-spring', '1')), entry('beet.sow-spring'));
    expect(html).toContain('<span class="finding whole" data-finding="carrot.sow-spring">1</span>');
  });

  it('are no link inside a link', () => {
    const html = render(
      paragraph(link('https://example.org/', findingWords('a', '1'))),
      sources([{ id: 's', href: 'https://example.org/', content: [findingWords('a', '2')] }]),
      entry('a'),
    );
    expect(tags(html, 'a')).toEqual(['<a href="https://example.org/">', '<a href="https://example.org/">']);
    expect(tags(html, 'span')).toHaveLength(2);
  });
});

describe('headings', () => {
  const step = (...body: readonly Block[]): Block =>
    steps([{ number: 1, title: inline('Saw'), cautions: [], body }]);
  const cases: readonly { name: string; blocks: readonly Block[]; levels: readonly number[] }[] = [
    {
      name: 'as the document has them',
      blocks: [heading(2, 'a', 'A'), heading(3, 'b', 'B')],
      levels: [2, 3],
    },
    {
      name: 'an aside that starts with level 3',
      blocks: [heading(3, 'a', 'A'), heading(2, 'b', 'B')],
      levels: [2, 2],
    },
    { name: 'a jump from 2 to 4', blocks: [heading(2, 'a', 'A'), heading(4, 'b', 'B')], levels: [2, 3] },
    { name: 'steps at the top of the sheet', blocks: [step()], levels: [2] },
    { name: 'steps under a section', blocks: [heading(2, 'a', 'A'), step()], levels: [2, 3] },
    {
      name: 'a heading inside a step, and a section after it',
      blocks: [heading(2, 'a', 'A'), step(heading(4, 'b', 'B')), heading(3, 'c', 'C')],
      levels: [2, 3, 4, 3],
    },
  ];
  it.each(cases)('$name', ({ blocks, levels }) => {
    expect(headingLevelsOf(render(...blocks))).toEqual(levels);
  });
});

describe('tables', () => {
  const tableOf = (cells: readonly string[], group?: readonly Inline[]): Block =>
    table({
      id: 'depth.table',
      caption: 'Depth',
      columns: cells.map((_, place) =>
        place === 0 ? column('Soil') : column('Depth', { align: 'number', unit: 'in' }),
      ),
      groups: [{ ...(group ? { header: group } : {}), rows: [{ cells: cells.map((cell) => inline(cell)) }] }],
    });

  it('say which cells are heads of what', () => {
    const html = render(tableOf(['Sand', '½'], inline('Light')));
    expect(tags(html, 'th')).toEqual([
      '<th scope="col">',
      '<th scope="col" class="number">',
      '<th scope="rowgroup" colspan="2">',
      '<th scope="row">',
    ]);
    expect(html).toContain('Depth <span class="unit">in</span>');
  });

  it('keep a short cell in one piece, and let a long one break so that the table fits on paper', () => {
    const html = render(tableOf(['Sand', '10–12\u00a0h', 'Oct\u00a018–Nov\u00a029']));
    expect(tags(html, 'td')).toEqual(['<td class="number short">', '<td class="number">']);
  });

  const widths: readonly { name: string; cells: readonly string[]; stops: number }[] = [
    { name: 'fits a phone: no stop for the keyboard', cells: ['Sand', '½'], stops: 0 },
    { name: 'is too broad for a phone: a region to move in', cells: Array<string>(8).fill('Sand'), stops: 1 },
    {
      name: 'has one cell that cannot break: a region to move in',
      cells: ['Sand', 'from\u00a0April\u00a014\u00a0to\u00a0July\u00a020\u00a0at\u00a0most'],
      stops: 1,
    },
  ];
  it.each(widths)('$name', ({ cells, stops }) => {
    const regions = tags(render(tableOf(cells)), 'section');
    expect(regions.filter((tag) => tag.includes('tabindex="0"'))).toHaveLength(stops);
    expect(regions.flatMap((tag) => attributes(tag, 'aria-labelledby'))).toEqual(
      Array<string>(stops).fill('depth_table-caption'),
    );
  });
});

describe('cautions', () => {
  const cautionOf = (signal: SignalWord): Block =>
    caution({ signal, signalText: 'Word', hazard: inline('It cuts.'), avoidance: inline('Clamp it.') });

  it.each([
    { signal: 'danger', triangles: 1 },
    { signal: 'warning', triangles: 1 },
    { signal: 'caution', triangles: 1 },
    { signal: 'notice', triangles: 0 },
  ] as const)(
    '$signal is a note with its word in text and $triangles silent triangles',
    ({ signal, triangles }) => {
      const html = render(cautionOf(signal));
      expect(html).toContain('role="note"');
      expect(wordsOfPage(html)).toEqual(['Word', 'It', 'cuts.', 'Clamp', 'it.']);
      const silent = tags(html, 'svg').filter((tag) => tag.includes('aria-hidden="true"'));
      expect(silent).toHaveLength(triangles);
    },
  );
});

describe('drawings', () => {
  const scene = (widthMm: number, items: Scene['items'] = []): Scene => ({
    id: 'plan',
    widthMm,
    heightMm: 38.8,
    alternative: 'A bed from above.',
    items,
  });

  it('are as wide in em of the text as they are on paper', () => {
    // One em of 11 pt is 11 / 72 * 25.4 = 3.8806 mm, so 97 mm are 25 em.
    expect(render(figure(scene(97.014)))).toContain('viewBox="0 0 97.01 38.8" width="25em" height="10em"');
  });

  it('write geometry to a hundredth of a millimetre, and meaning as classes', () => {
    const html = render(
      figure(
        scene(50, [
          {
            kind: 'path',
            commands: [['M', -0.001, 1 / 3], ['C', 1, 2, 3, 4, 5, 6], ['L', 7, 8], ['Z']],
            stroke: 'cut',
            fill: 'tint',
            hue: 'clay',
          },
          { kind: 'circle', x: 1, y: 2, radius: 3, stroke: 'seen' },
          { kind: 'text', x: 1, y: 2, text: 'A & B', anchor: 'middle', style: 'strong' },
        ]),
      ),
    );
    expect(html).toContain('<path class="line-cut fill-tint hue-clay" d="M0 0.33C1 2 3 4 5 6L7 8Z"/>');
    expect(html).toContain('<circle class="line-seen fill-none" cx="1" cy="2" r="3"/>');
    expect(html).toContain('<text class="words-strong anchor-middle" x="1" y="2">A &amp; B</text>');
  });

  it.each([
    { name: 'a small one shrinks', block: figure(scene(60)), regions: 0 },
    { name: 'a broad one is moved sideways', block: figure(scene(160)), regions: 1 },
    {
      name: 'a broad one with a narrow version is exchanged for it',
      block: figure(scene(160), { narrow: scene(60) }),
      regions: 0,
    },
  ])('on a phone $name', ({ block, regions }) => {
    expect(tags(render(block), 'section')).toHaveLength(regions);
  });
});
