/**
 * Two readings of one sheet for the tests to compare: the words of a document in the order of its data, and the words
 * of a page in the order in which it is heard. Neither shares code with the renderer.
 */
import { plainText } from '../../scripts/document/build.ts';
import type { Block, Caution, Furniture, Inline, SheetDocument } from '../../scripts/document/document.ts';
import type { Scene } from '../../scripts/drawings/scene.ts';

export function wordsOfDocument(document: SheetDocument): readonly string[] {
  return splitWords(document.blocks.flatMap((block) => saidBy(block, document.furniture)).join('\n'));
}

/** The drawings in the order of the data; where one has a version for narrow screens, that comes second. */
export function scenesOf(blocks: readonly Block[]): readonly Scene[] {
  return blocks.flatMap((block): readonly Scene[] => {
    switch (block.kind) {
      case 'figure':
        return block.narrow ? [block.scene, block.narrow] : [block.scene];
      case 'steps':
        return block.items.flatMap(({ body, drawing }) => [...scenesOf(body), ...(drawing ? [drawing] : [])]);
      case 'beside':
        return [...scenesOf(block.aside), ...scenesOf(block.main)];
      case 'wide':
      case 'together':
        return scenesOf(block.content);
      case 'list':
        return scenesOf(block.items.flat());
      case 'heading':
      case 'paragraph':
      case 'checklist':
      case 'table':
      case 'caution':
      case 'caution-box':
      case 'key-numbers':
      case 'labels':
      case 'doer':
      case 'worksheet':
      case 'workings':
      case 'sources':
      case 'page-break':
        return [];
    }
  });
}

/** The words of HTML, drawings left out. Elements that run along with the text do not part words, all others do. */
export function wordsOfPage(html: string): readonly string[] {
  const heard = html
    .replace(/<svg[\s>].*?<\/svg>/gs, ' ')
    .replace(/<\/?(?:a|abbr|strong|em|i|span|time)(?:\s[^>]*)?>/g, '')
    .replace(/<[^>]*>/g, ' ');
  return splitWords(decode(heard));
}

/** Every value of an attribute, in the order of the page. */
export function attributes(html: string, name: string): readonly string[] {
  return [...html.matchAll(new RegExp(`<[^>]*?\\s${name}="([^"]*)"`, 'g'))].map((match) => decode(match[1]!));
}

/** The opening tags of an element, in the order of the page. */
export function tags(html: string, element: string): readonly string[] {
  return [...html.matchAll(new RegExp(`<${element}(?:\\s[^>]*)?>`, 'g'))].map((match) => match[0]);
}

export function headingLevelsOf(html: string): readonly number[] {
  return [...html.matchAll(/<h([1-6])[\s>]/g)].map((match) => Number(match[1]));
}

export function decode(html: string): string {
  const named: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"' };
  return html.replace(/&(amp|lt|gt|quot);/g, (_, name: string) => named[name]!);
}

function saidBy(block: Block, furniture: Furniture): readonly string[] {
  const said = (blocks: readonly Block[]): readonly string[] =>
    blocks.flatMap((each) => saidBy(each, furniture));
  const lines = (contents: readonly (readonly Inline[])[]): readonly string[] => contents.map(plainText);
  switch (block.kind) {
    case 'heading':
    case 'paragraph':
    case 'doer':
      return lines([block.content]);
    case 'list':
      return said(block.items.flat());
    case 'checklist':
      return lines(block.items);
    case 'table':
      return [
        plainText(block.caption),
        ...block.columns.flatMap(({ header, unit = '' }) => [plainText(header), unit]),
        ...block.groups.flatMap(({ header = [], rows }) =>
          lines([header, ...rows.flatMap((row) => row.cells)]),
        ),
        ...lines(block.notes),
      ];
    case 'figure':
      return lines([block.caption ?? []]);
    case 'caution':
      return cautionLines(block.caution);
    case 'caution-box':
      return [
        plainText(block.title),
        ...block.groups.flatMap(({ signalText, items }) => [signalText, ...lines(items)]),
        plainText(block.closing),
      ];
    case 'key-numbers':
      return block.items.flatMap(({ value, label }) => lines([value, label]));
    case 'steps':
      return block.items.flatMap(({ number, title, cautions, body }) => [
        furniture.step(number),
        plainText(title),
        ...cautions.flatMap(cautionLines),
        ...said(body),
      ]);
    case 'beside':
      return [...said(block.aside), ...said(block.main)];
    case 'wide':
    case 'together':
      return said(block.content);
    case 'labels':
      return block.items.flatMap(({ title, lines: rest }) => lines([title, ...rest]));
    case 'worksheet':
      return lines([block.opening ?? [], ...block.items.map(({ question }) => question)]);
    case 'workings':
      return block.items.flatMap(({ term, value, explanation }) => lines([term, value, explanation]));
    case 'sources':
      return block.items.map(({ content }) => plainText(content));
    case 'page-break':
      return [];
  }
}

function cautionLines({ signalText, hazard, avoidance }: Caution): readonly string[] {
  return [signalText, plainText(hazard), plainText(avoidance)];
}

function splitWords(words: string): readonly string[] {
  return words.split(/\s+/).filter(Boolean);
}
