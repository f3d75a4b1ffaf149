/**
 * Reads the tag tree of a PDF with everything that a listener is told: the words of each tag with what they are short
 * for, attributes, ids and header cells. Also what is drawn outside it.
 */
import {
  PdfName,
  PdfObjects,
  PdfReference,
  PdfText,
  Tokens,
  isDictionary,
  type PdfDictionary,
  type PdfValue,
} from './pdf-objects.ts';

export interface StructureElement {
  readonly role: string;
  /** The standard type, where the role is one of our own. */
  readonly standardRole: string;
  readonly alternative?: string;
  readonly actualText?: string;
  readonly expansion?: string;
  readonly language?: string;
  readonly id?: string;
  readonly scope?: string;
  readonly columns: number;
  readonly rows: number;
  /** Ids of header cells. */
  readonly headers: readonly string[];
  readonly hasBounds: boolean;
  readonly numbering?: string;
  /** Elements that it points at. */
  readonly refersTo: readonly (string | undefined)[];
  readonly kids: readonly (StructureElement | Words | LinkArea)[];
}

/** Words in one stretch of marked content; `expansion` is what they are short for. */
export interface Words {
  readonly text: string;
  readonly expansion?: string;
}

export interface LinkArea {
  readonly contents: string;
  readonly href: string;
}

export interface PdfStructure {
  readonly root: StructureElement;
  /** By id: what the tree of ids says. */
  readonly named: ReadonlySet<string>;
  /** Words that are artifacts, page by page. */
  readonly artifacts: readonly string[];
  /** What is wrong with how the tree and the pages are joined. */
  readonly faults: readonly string[];
}

export const isElement = (kid: StructureElement | Words | LinkArea): kid is StructureElement => 'kids' in kid;
export const isWords = (kid: StructureElement | Words | LinkArea): kid is Words => 'text' in kid;

export function readStructure(bytes: Uint8Array): PdfStructure {
  return new Reader(new PdfObjects(bytes)).read();
}

/** Every element in the order of the tree. */
export function elementsOf(element: StructureElement): readonly StructureElement[] {
  return [element, ...element.kids.filter(isElement).flatMap(elementsOf)];
}

interface PageContent {
  readonly words: ReadonlyMap<number, readonly Words[]>;
  readonly artifacts: string;
  readonly faults: readonly string[];
}

class Reader {
  readonly #objects: PdfObjects;
  readonly #roleMap: PdfDictionary;
  /** By number of the page object. */
  readonly #pages = new Map<number, PageContent>();
  readonly #met = new Map<number, Set<number>>();
  readonly #faults: string[] = [];

  constructor(objects: PdfObjects) {
    this.#objects = objects;
    const treeRoot = this.#treeRoot();
    this.#roleMap = objects.dictionary(treeRoot.get('RoleMap'));
  }

  read(): PdfStructure {
    const catalog = this.#objects.dictionary(this.#objects.trailer.get('Root'));
    this.#readPages(catalog.get('Pages'));
    const [document] = this.#objects.array(this.#treeRoot().get('K'));
    const root = this.#element(document!);
    for (const [page, { words, faults }] of this.#pages) {
      this.#faults.push(...faults);
      for (const id of words.keys())
        if (!this.#met.get(page)?.has(id)) this.#faults.push(`content ${id} of a page is in no tag`);
    }
    const names = this.#objects.array(this.#objects.dictionary(this.#treeRoot().get('IDTree')).get('Names'));
    return {
      root,
      named: new Set(names.flatMap((name) => (name instanceof PdfText ? [name.text] : []))),
      artifacts: [...this.#pages.values()].map(({ artifacts }) => artifacts),
      faults: this.#faults,
    };
  }

  #treeRoot(): PdfDictionary {
    const catalog = this.#objects.dictionary(this.#objects.trailer.get('Root'));
    return this.#objects.dictionary(catalog.get('StructTreeRoot'));
  }

  #readPages(at: PdfValue | undefined): void {
    const node = this.#objects.dictionary(at);
    if (this.#objects.name(node.get('Type')) !== 'Page') {
      for (const kid of this.#objects.array(node.get('Kids'))) this.#readPages(kid);
      return;
    }
    if (!(at instanceof PdfReference)) throw new TypeError('a page without a number');
    this.#pages.set(at.number, new PageReader(this.#objects, node).read());
  }

  #element(at: PdfValue): StructureElement {
    const node = this.#objects.dictionary(at);
    const role = this.#objects.name(node.get('S')) ?? '';
    const texts = {
      alternative: this.#objects.text(node.get('Alt')),
      actualText: this.#objects.text(node.get('ActualText')),
      expansion: this.#objects.text(node.get('E')),
      language: this.#objects.text(node.get('Lang')),
      id: this.#objects.text(node.get('ID')),
    };
    const attributes = this.#objects.dictionary(node.get('A'));
    return {
      role,
      standardRole: this.#objects.name(this.#roleMap.get(role)) ?? role,
      ...(Object.fromEntries(Object.entries(texts).filter(([, text]) => text !== undefined)) as object),
      ...this.#named('scope', attributes.get('Scope')),
      ...this.#named('numbering', attributes.get('ListNumbering')),
      columns: this.#count(attributes.get('ColSpan')),
      rows: this.#count(attributes.get('RowSpan')),
      headers: this.#objects.array(attributes.get('Headers')).map((id) => this.#objects.text(id) ?? ''),
      hasBounds: this.#objects.array(attributes.get('BBox')).length === 4,
      refersTo: this.#objects
        .array(node.get('Ref'))
        .map((target) => this.#objects.text(this.#objects.dictionary(target).get('ID'))),
      kids: this.#objects.array(node.get('K')).flatMap((kid) => this.#kid(kid, at)),
    };
  }

  #named<K extends string>(key: K, value: PdfValue | undefined): Partial<Record<K, string>> {
    const name = this.#objects.name(value);
    return name === undefined ? {} : ({ [key]: name } as Record<K, string>);
  }

  #count(value: PdfValue | undefined): number {
    const resolved = this.#objects.resolve(value);
    return typeof resolved === 'number' ? resolved : 1;
  }

  #kid(kid: PdfValue, parent: PdfValue): readonly (StructureElement | Words | LinkArea)[] {
    const node = this.#objects.dictionary(kid);
    const type = this.#objects.name(node.get('Type'));
    if (type === 'MCR') return this.#content(node);
    if (type === 'OBJR') return [this.#link(node)];
    const above = node.get('P');
    if (above instanceof PdfReference && parent instanceof PdfReference && above.number !== parent.number)
      this.#faults.push('an element names another parent than the one that holds it');
    return [this.#element(kid)];
  }

  #content(node: PdfDictionary): readonly Words[] {
    const page = (node.get('Pg') as PdfReference).number;
    const id = node.get('MCID') as number;
    const words = this.#pages.get(page)?.words.get(id);
    const met = this.#met.get(page) ?? new Set();
    this.#met.set(page, met);
    if (!words) this.#faults.push(`a tag holds content ${id}, which its page does not have`);
    if (met.has(id)) this.#faults.push(`content ${id} of a page is in two tags`);
    met.add(id);
    return words ?? [];
  }

  #link(node: PdfDictionary): LinkArea {
    const annotation = this.#objects.dictionary(node.get('Obj'));
    const action = this.#objects.dictionary(annotation.get('A'));
    return {
      contents: this.#objects.text(annotation.get('Contents')) ?? '',
      href: this.#objects.text(action.get('URI')) ?? '',
    };
  }
}

/** A stretch of marked content that is open; one inside another belongs to the outer. */
interface Open {
  readonly kind: 'artifact' | 'content' | 'inner';
  readonly id?: number;
  readonly expansion?: string;
}

const painting = new Set(['TJ', 'Tj', 'f', 'f*', 'S', 's', 'B', 'b', 'B*', 'b*', 'Do', 'sh']);

class PageReader {
  readonly #objects: PdfObjects;
  readonly #page: PdfDictionary;
  readonly #fonts: ReadonlyMap<string, ReadonlyMap<number, string>>;
  readonly #words = new Map<number, Words[]>();
  readonly #open: Open[] = [];
  readonly #faults: string[] = [];
  #artifacts = '';
  #font = '';

  constructor(objects: PdfObjects, page: PdfDictionary) {
    this.#objects = objects;
    this.#page = page;
    const fonts = objects.dictionary(objects.dictionary(page.get('Resources')).get('Font'));
    this.#fonts = new Map(
      [...fonts].map(([name, font]) => [
        name,
        charactersOf(objects.stream(objects.dictionary(font).get('ToUnicode')).toString('latin1')),
      ]),
    );
  }

  read(): PageContent {
    const contents = this.#page.get('Contents');
    const streams = contents instanceof PdfReference ? [contents] : this.#objects.array(contents);
    const tokens = new Tokens(Buffer.concat(streams.map((each) => this.#objects.stream(each))));
    let operands: PdfValue[] = [];
    for (let token = tokens.next(); token !== undefined; token = tokens.next()) {
      if (typeof token !== 'string') operands.push(token);
      else {
        this.#operator(token, operands);
        operands = [];
      }
    }
    if (this.#open.length > 0) this.#faults.push('marked content is not closed at the end of a page');
    return { words: this.#words, artifacts: this.#artifacts, faults: this.#faults };
  }

  #operator(operator: string, operands: readonly PdfValue[]): void {
    if (operator === 'BDC' || operator === 'BMC') this.#begin(operands);
    else if (operator === 'EMC' && !this.#open.pop()) this.#faults.push('marked content is closed twice');
    else if (operator === 'Tf') this.#font = (operands[0] as PdfName).name;
    else if (painting.has(operator)) {
      if (this.#open.length === 0)
        this.#faults.push(`something is drawn outside all marked content (${operator})`);
      if (operator === 'TJ' || operator === 'Tj') this.#show(operands[0]!);
    }
  }

  #begin([tag, properties = null]: readonly PdfValue[]): void {
    const details = isDictionary(properties) ? properties : new Map<string, PdfValue>();
    const id = details.get('MCID');
    const expansion = this.#objects.text(details.get('E'));
    const around = this.#open.at(-1);
    if (tag instanceof PdfName && tag.name === 'Artifact') this.#open.push({ kind: 'artifact' });
    else if (typeof id === 'number') {
      if (around) this.#faults.push('tagged content lies within other content');
      if (this.#words.has(id)) this.#faults.push(`content ${id} is there twice on a page`);
      this.#words.set(id, []);
      this.#open.push({ kind: 'content', id });
    } else this.#open.push({ kind: 'inner', ...(expansion === undefined ? {} : { expansion }) });
  }

  #show(shown: PdfValue): void {
    const strings = Array.isArray(shown) ? (shown as readonly PdfValue[]) : [shown];
    const characters = this.#fonts.get(this.#font);
    let text = '';
    for (const string of strings) {
      if (!(string instanceof PdfText)) continue;
      for (let at = 0; at < string.bytes.length; at += 2) {
        const code = string.bytes.readUInt16BE(at);
        const character = characters?.get(code);
        if (code === 0) this.#faults.push('a glyph is missing');
        if (character === undefined)
          this.#faults.push(`glyph ${code} of ${this.#font} stands for no character`);
        text += character ?? '';
      }
    }
    const outermost = this.#open[0];
    const expansion = this.#open.at(-1)?.expansion;
    if (outermost?.kind === 'artifact') this.#artifacts += text;
    const words = outermost?.id === undefined ? undefined : this.#words.get(outermost.id);
    words?.push({ text, ...(expansion === undefined ? {} : { expansion }) });
  }
}

/** What each glyph stands for, from the table that a font carries for copying and reading aloud. */
function charactersOf(table: string): ReadonlyMap<number, string> {
  const characters = new Map<number, string>();
  const text = (hex: string): string => Buffer.from(hex, 'hex').swap16().toString('utf16le');
  for (const [, block] of table.matchAll(/beginbfrange\s([\s\S]*?)endbfrange/g)) {
    for (const [, from, , list] of block!.matchAll(/<([\da-f]+)>\s*<([\da-f]+)>\s*\[([^\]]*)\]/gi)) {
      const entries = [...list!.matchAll(/<([\da-f\s]*)>/gi)].map(([, hex]) => hex!.replace(/\s/g, ''));
      entries.forEach((hex, index) => characters.set(Number.parseInt(from!, 16) + index, text(hex)));
    }
  }
  for (const [, block] of table.matchAll(/beginbfchar\s([\s\S]*?)endbfchar/g))
    for (const [, from, to] of block!.matchAll(/<([\da-f]+)>\s*<([\da-f]+)>/gi))
      characters.set(Number.parseInt(from!, 16), text(to!));
  return characters;
}
