/**
 * A PDF as someone hears it who has only its tags: the words in their order, short forms spoken out, each cell with the
 * headers that changed since the cell before, lists with their length, drawings by what is told of them.
 */
import {
  elementsOf,
  isElement,
  isWords,
  type PdfStructure,
  type StructureElement,
} from './read-structure.ts';

/** One line for each thing that is told. */
export function heard({ root }: PdfStructure): string {
  return `${blocks(root, new Headers(root)).join('\n')}\n`.replaceAll('\u00A0', ' ');
}

/** The words of an element as they are said. */
export function spoken(element: StructureElement): string {
  if (element.actualText !== undefined) return element.actualText;
  if (element.expansion !== undefined) return ` (${element.expansion})`;
  return element.kids
    .map((kid) => {
      if (isWords(kid)) return kid.expansion ?? kid.text;
      if (!isElement(kid)) return '';
      if (kid.standardRole === 'Figure') return `[drawing: ${kid.alternative ?? ''}]`;
      return kid.language === undefined ? inLine(kid) : `[${kid.language}: ${inLine(kid)}]`;
    })
    .join('');
}

const inLine = (element: StructureElement): string => {
  const words = spoken(element);
  return element.standardRole === 'Link'
    ? `[link: ${words.trimEnd()}]${words.endsWith(' ') ? ' ' : ''}`
    : words;
};

/** What the ids of header cells say. */
class Headers {
  readonly #words: ReadonlyMap<string, string>;

  constructor(root: StructureElement) {
    this.#words = new Map(
      elementsOf(root).flatMap((element) => (element.id === undefined ? [] : [[element.id, line(element)]])),
    );
  }

  of(cell: StructureElement): readonly string[] {
    return cell.headers.map((id) => this.#words.get(id) ?? `?${id}`);
  }
}

/** Blocks in one cell or item are said with a pause between them. */
function line(element: StructureElement): string {
  const inner = element.kids.filter(isElement).filter((kid) => !runsAlong.has(kid.standardRole));
  const words = inner.length > 0 ? inner.map(line).join(', ') : spoken(element);
  return words.replace(/ +/g, ' ').trim();
}

const runsAlong = new Set(['Link', 'Span', 'Reference']);

function blocks(element: StructureElement, headers: Headers): string[] {
  return element.kids.filter(isElement).flatMap((kid) => block(kid, headers));
}

function block(element: StructureElement, headers: Headers): string[] {
  const { standardRole } = element;
  if (/^H[1-6]$/.test(standardRole)) return [`heading ${standardRole.slice(1)}: ${line(element)}`];
  switch (standardRole) {
    case 'L':
      return listLines(element, headers);
    case 'Table':
      return tableLines(element, headers);
    case 'Figure':
      return [`drawing: ${element.alternative ?? ''}`];
    case 'Caption':
      return [`caption: ${line(element)}`];
    case 'Note':
      return [`note: ${line(element)}`];
    case 'Sect':
      return ['section', ...indented(blocks(element, headers)), 'end of section'];
    case 'Div':
    case 'LBody':
      return blocks(element, headers);
    default:
      return [line(element)];
  }
}

function listLines(list: StructureElement, headers: Headers): string[] {
  const items = list.kids.filter(isElement);
  return [
    `list of ${items.length}`,
    ...indented(
      items.flatMap((item) => {
        const [label, body] = ['Lbl', 'LBody'].map((role) =>
          item.kids.filter(isElement).find(({ standardRole }) => standardRole === role),
        );
        const [first = '', ...rest] = body ? blocks(body, headers) : [];
        const marker = label ? line(label) : '';
        return [/^[•–]?$/.test(marker) ? `- ${first}` : `- ${marker} ${first}`, ...indented(rest)];
      }),
    ),
  ];
}

/** A header is told again only when it changes, as programs that read aloud do it. */
function tableLines(table: StructureElement, headers: Headers): string[] {
  const rows = elementsOf(table).filter(({ standardRole }) => standardRole === 'TR');
  const cellsOf = (row: StructureElement): readonly StructureElement[] => row.kids.filter(isElement);
  const widest = Math.max(...rows.map((row) => cellsOf(row).reduce((sum, cell) => sum + cell.columns, 0)));
  const caption = table.kids.filter(isElement).find(({ standardRole }) => standardRole === 'Caption');
  let before: readonly string[] = [];
  const lines = rows.map((row) =>
    cellsOf(row)
      .map((cell) => {
        const told = headers.of(cell).filter((header) => !before.includes(header));
        const own = line(cell);
        before = [...headers.of(cell), ...(cell.standardRole === 'TH' ? [own] : [])];
        return [...told, own === '' ? '(empty)' : own].join(': ');
      })
      .join(' | '),
  );
  return [
    `table: ${caption ? line(caption) : '(without a caption)'}, ${widest} columns, ${rows.length} rows`,
    ...indented(lines),
  ];
}

const indented = (lines: readonly string[]): string[] => lines.map((each) => `  ${each}`);
