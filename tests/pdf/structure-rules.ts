/**
 * What a listener needs of a tag tree beyond what a validator of the file can see. Each rule gives a sentence for each
 * place that breaks it; a sheet that can be followed gives none.
 */
import {
  elementsOf,
  isElement,
  isWords,
  type PdfStructure,
  type StructureElement,
} from './read-structure.ts';

export function structureFaults(pdf: PdfStructure): readonly string[] {
  const elements = elementsOf(pdf.root);
  return [
    ...pdf.faults,
    ...headingFaults(elements),
    ...elements.filter(is('Figure')).flatMap(figureFaults),
    ...elements.filter(is('Table')).flatMap((table) => tableFaults(table, pdf)),
    ...elements.filter(is('L')).flatMap(listFaults),
    ...elements.filter(is('Link')).flatMap(linkFaults),
    ...noteFaults(elements, pdf),
    ...cautionFaults(elements),
    ...elements.filter(isEmpty).map(({ role }) => `${role} has nothing in it`),
  ];
}

const is =
  (...roles: readonly string[]) =>
  ({ standardRole }: StructureElement): boolean =>
    roles.includes(standardRole);

const kidsOf = (element: StructureElement): readonly StructureElement[] => element.kids.filter(isElement);

const wordsOf = (element: StructureElement): string =>
  element.kids.map((kid) => (isWords(kid) ? kid.text : isElement(kid) ? wordsOf(kid) : '')).join('');

/** A cell may have nothing in it. */
const isEmpty = (element: StructureElement): boolean =>
  element.kids.length === 0 && !['TD', 'TH'].includes(element.standardRole);

function headingFaults(elements: readonly StructureElement[]): string[] {
  const levels = elements.flatMap(({ standardRole }) => /^H(\d)$/.exec(standardRole)?.[1] ?? []).map(Number);
  return [
    ...(levels.filter((level) => level === 1).length === 1 ? [] : ['there is not one title']),
    ...levels.flatMap((level, index) => {
      const above = levels[index - 1] ?? 0;
      return level > above + 1 ? [`a heading of level ${level} follows one of level ${above}`] : [];
    }),
  ];
}

function figureFaults(figure: StructureElement): string[] {
  return [
    ...((figure.alternative ?? '').length > 20 ? [] : ['a figure says hardly anything of what it shows']),
    ...(figure.hasBounds ? [] : ['a figure has no bounds']),
  ];
}

function tableFaults(table: StructureElement, pdf: PdfStructure): string[] {
  const [caption, head, ...bodies] = kidsOf(table);
  const name = caption ? wordsOf(caption) : '?';
  const faults = [
    ...(caption && is('Caption')(caption) ? [] : ['begins without a caption']),
    ...(head && is('THead')(head) ? [] : ['has no head under its caption']),
    ...(bodies.length > 0 && bodies.every(is('TBody'))
      ? []
      : ['has something else than bodies under its head']),
    ...(head ? gridFaults([head, ...bodies]) : []),
    ...headerFaults(table, head, bodies, pdf),
  ];
  return faults.map((fault) => `the table “${name}” ${fault}`);
}

/** Every row takes the same number of columns. */
function gridFaults(parts: readonly StructureElement[]): string[] {
  const rows = parts.flatMap(kidsOf);
  const widths = rows.map((row) => kidsOf(row).reduce((sum, cell) => sum + cell.columns, 0));
  return [
    ...(rows.every(is('TR')) ? [] : ['has a part with something else than rows']),
    ...(new Set(widths).size === 1 ? [] : [`has rows of ${[...new Set(widths)].join(' and ')} columns`]),
  ];
}

/** A cell belongs to the heading of its column, of its row and of its group, and to no other. */
function headerFaults(
  table: StructureElement,
  head: StructureElement | undefined,
  bodies: readonly StructureElement[],
  pdf: PdfStructure,
): string[] {
  const columns = head ? kidsOf(head).flatMap(kidsOf) : [];
  const headers = elementsOf(table).filter(is('TH'));
  return [
    ...headers
      .filter(({ scope }) => scope === undefined)
      .map((th) => `has a header without a scope: ${wordsOf(th)}`),
    ...headers
      .filter(({ id }) => id !== undefined && !pdf.named.has(id))
      .map(({ id }) => `has a header whose id ${id} is not in the tree of ids`),
    ...bodies.flatMap((body) => {
      const group = kidsOf(body).flatMap((row) => kidsOf(row).filter(({ columns: width }) => width > 1))[0];
      return kidsOf(body).flatMap((row) => rowFaults(row, { columns, group }));
    }),
  ];
}

function rowFaults(
  row: StructureElement,
  above: { readonly columns: readonly StructureElement[]; readonly group: StructureElement | undefined },
): string[] {
  const cells = kidsOf(row);
  const [first] = cells;
  if (!first || first === above.group) return [];
  const row0 = is('TH')(first) ? [] : ['has a row without a header'];
  const faults = cells.flatMap((cell, index) => {
    const wanted = [above.group, index > 0 ? first : undefined, above.columns[index]].flatMap((header) =>
      header === undefined ? [] : [header.id],
    );
    return JSON.stringify(cell.headers) === JSON.stringify(wanted)
      ? []
      : [
          `has a cell “${wordsOf(cell)}” that belongs to ${cell.headers.join(', ')}, not to ${wanted.join(', ')}`,
        ];
  });
  return [...row0, ...faults];
}

function listFaults(list: StructureElement): string[] {
  const items = kidsOf(list);
  const numbered = list.numbering !== undefined && list.numbering !== 'None';
  return [
    ...(list.numbering === undefined ? ['a list does not say how it is numbered'] : []),
    ...(items.every(is('LI')) ? [] : ['a list has something else than items']),
    ...items.flatMap((item) => {
      const roles = kidsOf(item).map(({ standardRole }) => standardRole);
      return ['Lbl LBody', ...(numbered ? [] : ['LBody'])].includes(roles.join(' '))
        ? []
        : [`an item of a list is made of ${roles.join(', ')}`];
    }),
  ];
}

function linkFaults(link: StructureElement): string[] {
  const areas = link.kids.flatMap((kid) => ('href' in kid ? [kid] : []));
  const words = wordsOf(link).replace(/\s+/g, ' ').trim();
  return [
    ...(areas.length > 0 ? [] : [`the link “${words}” has no area`]),
    ...areas
      .filter(({ contents, href }) => !contents.startsWith(words) || !contents.includes(href))
      .map(({ contents }) => `the link “${words}” is announced as “${contents}”`),
  ];
}

function noteFaults(elements: readonly StructureElement[], pdf: PdfStructure): string[] {
  const notes = elements.filter(is('Note'));
  const ids = new Set(notes.map(({ id }) => id));
  return [
    ...notes.filter(({ id }) => id === undefined || !pdf.named.has(id)).map(() => 'a note has no id'),
    ...(ids.size === notes.length ? [] : ['two notes share an id']),
    ...elements
      .filter(is('Reference'))
      .filter(({ refersTo, expansion }) => !ids.has(refersTo[0]) || expansion === undefined)
      .map((mark) => `the mark “${wordsOf(mark)}” points at no note or does not say what it means`),
  ];
}

/** A caution is a section of its own that begins with its signal word. */
function cautionFaults(elements: readonly StructureElement[]): string[] {
  return elements
    .filter(({ role }) => role === 'Caution')
    .flatMap((caution) => {
      const [signal] = kidsOf(caution);
      const word = signal && is('P')(signal) ? wordsOf(signal) : '';
      return [
        ...(caution.standardRole === 'Sect' ? [] : ['a caution stands for no section']),
        ...(word !== '' && word === word.toUpperCase() ? [] : [`a caution begins with “${word}”`]),
      ];
    });
}
