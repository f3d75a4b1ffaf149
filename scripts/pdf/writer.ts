import { createHash } from 'node:crypto';
import PDFDocument from 'pdfkit';
import type { FaceName } from '../document/design.ts';
import type { PathCommand } from '../drawings/scene.ts';
import { wordsAndSpaces, type FontSet, type RunCache } from './fonts.ts';
import type { Area, Ink, MarkPlace } from './items.ts';
import { isTag, roleMap, type Leaf, type Tag } from './tags.ts';

/**
 * Writes pages and a tag tree as PDF 1.7 with what PDF/UA-1 and PDF/A-2a ask for. This is the only module that knows
 * pdfkit, which gives objects, streams and font subsets; operators and structure are written here, because
 * pdfkit's own tagging of text, lists and tables does not survive a page break.
 *
 * All coordinates are points from the top left corner of the page, y down.
 */
export interface PdfWriter {
  startPage(): void;
  text(mark: {
    place: MarkPlace;
    x: number;
    y: number;
    text: string;
    face: FaceName;
    sizePt: number;
    colour: string;
    /** What the text is short for. */
    expansion?: string;
  }): void;
  path(mark: { place: MarkPlace; commands: readonly PathCommand[]; stroke?: Ink; fill?: string }): void;
  /** Ties an area of the page to a link tag; `contents` is what a listener is told. */
  link(target: { tag: Tag; href: string; contents: string; area: Area }): void;
  /** Notes the area that a figure covers. */
  bounds(tag: Tag, area: Area): void;
  /** Adds an entry to the outline that leads to a height of the page. */
  outline(level: number, title: string, y: number): void;
  /** Writes the tag tree and closes the file. */
  finish(root: Tag): Promise<Uint8Array>;
}

export interface PdfDetails {
  readonly id: string;
  readonly title: string;
  readonly author: string;
  readonly subject: string;
  /** BCP 47 tag. */
  readonly language: string;
  /** yyyy-mm-dd */
  readonly issued: string;
  readonly widthPt: number;
  readonly heightPt: number;
  readonly compression: 'deflate' | 'none';
}

export function createPdfWriter(details: PdfDetails, fonts: FontSet): PdfWriter {
  return new PdfkitWriter(details, fonts);
}

const producer = 'Groundsheet';

/** What is used of pdfkit, some of it without documentation; the exact version is pinned for that reason. */
interface Reference {
  readonly data: Record<string, unknown>;
  end(): void;
}
interface EmbeddedFont {
  readonly id: string;
  layoutCache: RunCache;
  ref(): Reference;
  encode(text: string): [string[], { xAdvance: number; xOffset: number; advanceWidth: number }[]];
}
interface OutlineItem {
  readonly outlineData: Record<string, unknown>;
  addItem(title: string, options: { expanded: boolean }): OutlineItem;
}
interface ParentTree {
  limits: boolean;
  add(key: number, value: unknown): void;
}
interface Pdfkit {
  readonly page: {
    readonly dictionary: Reference;
    readonly fonts: Record<string, Reference>;
    readonly annotations: Reference[];
    readonly structParentTreeKey: number;
  };
  readonly outline: OutlineItem;
  readonly info: Record<string, unknown>;
  readonly _root: Reference;
  readonly _font: EmbeddedFont;
  _id: Uint8Array;
  _addInfo: () => void;
  ref(data: Record<string, unknown>): Reference;
  addPage(options: { size: [number, number]; margin: number }): void;
  addContent(operators: string): void;
  appendXML(xml: string): void;
  registerFont(name: string, font: unknown): void;
  font(name: string): void;
  getStructTreeRoot(): Reference;
  getStructParentTree(): ParentTree;
  createStructParentTreeNextKey(): number;
  on(event: 'data', listener: (chunk: Uint8Array) => void): void;
  on(event: 'end', listener: () => void): void;
  on(event: 'error', listener: (error: Error) => void): void;
  end(): void;
}

/** One stretch of marked content on one page. */
interface MarkedContent {
  readonly page: Reference;
  readonly id: number;
}
interface Annotation {
  readonly page: Reference;
  readonly reference: Reference;
  readonly parentKey: number;
}

class PdfkitWriter implements PdfWriter {
  private readonly pdf: Pdfkit;
  private readonly embedded = new Map<FaceName, EmbeddedFont>();
  private readonly contents = new Map<Leaf, MarkedContent[]>();
  private readonly annotations = new Map<Tag, Annotation[]>();
  private readonly areas = new Map<Tag, readonly [number, number, number, number]>();
  /** For each page, which element holds each marked content. */
  private readonly parents: {
    readonly key: number;
    readonly owners: (Reference | null)[];
    readonly page: Reference;
  }[] = [];
  /** The names of the tags that others refer to, and the elements that were written for them. */
  private names: ReadonlyMap<Tag, string> = new Map();
  private readonly named = new Map<string, Reference>();
  private readonly ids = new Map<string, Reference>();
  private readonly unfinished: { readonly element: Reference; readonly refersTo: string }[] = [];
  private readonly outlinePath: { readonly level: number; readonly item: OutlineItem }[] = [];
  private open: MarkPlace | undefined;
  private fill = '';

  constructor(
    private readonly details: PdfDetails,
    private readonly fonts: FontSet,
  ) {
    this.pdf = openPdfkit(details);
  }

  startPage(): void {
    this.closeMarkedContent();
    this.pdf.addPage({ size: [this.details.widthPt, this.details.heightPt], margin: 0 });
    this.fill = '';
    this.parents.push({ key: this.pdf.page.structParentTreeKey, owners: [], page: this.pdf.page.dictionary });
  }

  text(mark: Parameters<PdfWriter['text']>[0]): void {
    if (mark.text === '') return;
    this.openMarkedContent(mark.place);
    const font = this.face(mark.face);
    this.pdf.page.fonts[font.id] = font.ref();
    this.setFill(mark.colour);
    const operators = `BT /${font.id} ${n(mark.sizePt)} Tf 1 0 0 -1 ${n(mark.x)} ${n(mark.y)} Tm [${glyphs(font, mark.text)}] TJ ET`;
    // A stretch of marked content within the other costs no object of the file, as an element of its own would.
    this.pdf.addContent(
      mark.expansion === undefined
        ? operators
        : `/Span <</E ${contentString(mark.expansion)}>> BDC ${operators} EMC`,
    );
  }

  path(mark: Parameters<PdfWriter['path']>[0]): void {
    if (!mark.stroke && !mark.fill) return;
    this.openMarkedContent(mark.place);
    if (mark.fill) this.setFill(mark.fill);
    if (mark.stroke) {
      const dash = mark.stroke.dashPt ? `[${mark.stroke.dashPt.map(n).join(' ')}] 0 d` : '[] 0 d';
      this.pdf.addContent(`${rgb(mark.stroke.colour)} RG ${n(mark.stroke.widthPt)} w 1 j ${dash}`);
    }
    const paint = mark.stroke ? (mark.fill ? 'B' : 'S') : 'f';
    this.pdf.addContent(`${mark.commands.map(pathOperator).join(' ')} ${paint}`);
  }

  link({ tag, href, contents, area }: Parameters<PdfWriter['link']>[0]): void {
    const parentKey = this.pdf.createStructParentTreeNextKey();
    const reference = this.pdf.ref({
      Type: 'Annot',
      Subtype: 'Link',
      Rect: this.rectangle(area),
      Border: [0, 0, 0],
      F: 4,
      A: { S: 'URI', URI: pdfString(href) },
      Contents: pdfString(contents),
      StructParent: parentKey,
    });
    this.pdf.page.annotations.push(reference);
    reference.end();
    append(this.annotations, tag, { page: this.pdf.page.dictionary, reference, parentKey });
  }

  bounds(tag: Tag, area: Area): void {
    this.areas.set(tag, this.rectangle(area));
  }

  outline(level: number, title: string, y: number): void {
    while ((this.outlinePath.at(-1)?.level ?? 0) >= level) this.outlinePath.pop();
    const parent = this.outlinePath.at(-1)?.item ?? this.pdf.outline;
    const item = parent.addItem(title, { expanded: level < 3 });
    item.outlineData['Dest'] = [this.pdf.page.dictionary, 'XYZ', 0, round(this.details.heightPt - y), null];
    this.outlinePath.push({ level, item });
  }

  async finish(root: Tag): Promise<Uint8Array> {
    this.closeMarkedContent();
    const treeRoot = this.pdf.getStructTreeRoot();
    this.names = namesOfTags(root);
    treeRoot.data['K'] = [this.writeTag(root, treeRoot)];
    this.joinReferences();
    if (this.named.size > 0) treeRoot.data['IDTree'] = { Names: nameTree(this.named) };
    treeRoot.data['RoleMap'] = roleMap;
    const tree = this.pdf.getStructParentTree();
    tree.limits = false;
    for (const { key, owners } of this.parents) tree.add(key, owners);
    this.pdf._root.data['PageLabels'] = { Nums: [0, { S: 'D' }] };
    return collect(this.pdf);
  }

  private writeTag(tag: Tag, parent: Reference): Reference {
    const attributes = this.attributesOf(tag);
    const name = this.names.get(tag);
    const element = this.pdf.ref({
      Type: 'StructElem',
      S: tag.type,
      P: parent,
      ...(tag.alternative === undefined ? {} : { Alt: pdfString(tag.alternative) }),
      ...(tag.actualText === undefined ? {} : { ActualText: pdfString(tag.actualText) }),
      ...(tag.expansion === undefined ? {} : { E: pdfString(tag.expansion) }),
      ...(tag.language === undefined ? {} : { Lang: pdfString(tag.language) }),
      ...(name === undefined ? {} : { ID: pdfString(name) }),
      ...(attributes === undefined ? {} : { A: attributes }),
    });
    const kids = tag.kids.flatMap((kid): unknown[] =>
      isTag(kid) ? [this.writeTag(kid, element)] : this.contentKids(kid, element),
    );
    for (const { page, reference, parentKey } of this.annotations.get(tag) ?? []) {
      kids.push({ Type: 'OBJR', Obj: reference, Pg: page });
      this.pdf.getStructParentTree().add(parentKey, element);
    }
    element.data['K'] = kids;
    if (name !== undefined) this.named.set(name, element);
    if (tag.id !== undefined) this.ids.set(tag.id, element);
    if (tag.refersTo === undefined) element.end();
    else this.unfinished.push({ element, refersTo: tag.refersTo });
    return element;
  }

  /** What a tag points at may come after it, so it is written when the tree is whole. */
  private joinReferences(): void {
    for (const { element, refersTo } of this.unfinished) {
      const target = this.ids.get(refersTo);
      if (!target) throw new TypeError(`nothing in the document has the id ${refersTo}`);
      element.data['Ref'] = [target];
      element.end();
    }
  }

  private contentKids(leaf: Leaf, element: Reference): unknown[] {
    return (this.contents.get(leaf) ?? []).map(({ page, id }) => {
      const owners = this.parents.find((entry) => entry.page === page)!.owners;
      owners[id] = element;
      return { Type: 'MCR', Pg: page, MCID: id };
    });
  }

  private attributesOf(tag: Tag): Record<string, unknown> | undefined {
    const area = this.areas.get(tag);
    if (area) return { O: 'Layout', Placement: 'Block', BBox: area };
    const { attributes } = tag;
    if (attributes?.O !== 'Table' || !attributes.Headers) return attributes && { ...attributes };
    return { ...attributes, Headers: attributes.Headers.map((header) => pdfString(this.names.get(header)!)) };
  }

  private openMarkedContent(place: MarkPlace): void {
    if (this.open === place) return;
    this.closeMarkedContent();
    this.open = place;
    if (typeof place === 'string') {
      this.pdf.addContent(`/Artifact <</Type /${place === 'layout' ? 'Layout' : 'Pagination'}>> BDC`);
      return;
    }
    const page = this.parents.at(-1)!;
    const id = page.owners.push(null) - 1;
    append(this.contents, place, { page: page.page, id });
    this.pdf.addContent(`/${place.owner} <</MCID ${id}>> BDC`);
  }

  private closeMarkedContent(): void {
    if (this.open !== undefined) this.pdf.addContent('EMC');
    this.open = undefined;
  }

  private setFill(colour: string): void {
    if (this.fill !== colour) this.pdf.addContent(`${rgb(colour)} rg`);
    this.fill = colour;
  }

  private face(face: FaceName): EmbeddedFont {
    const known = this.embedded.get(face);
    if (known) return known;
    this.pdf.registerFont(face, this.fonts.font(face));
    this.pdf.font(face);
    const font = this.pdf._font;
    font.layoutCache = this.fonts.runs(face);
    this.embedded.set(face, font);
    return font;
  }

  /** Left, bottom, right, top as PDF counts them. */
  private rectangle({ x, y, width, height }: Area): readonly [number, number, number, number] {
    const bottom = this.details.heightPt - y - height;
    return [round(x), round(bottom), round(x + width), round(bottom + height)];
  }
}

function openPdfkit(details: PdfDetails): Pdfkit {
  const pdf = new PDFDocument({
    pdfVersion: '1.7',
    subset: 'PDF/A-2a',
    tagged: true,
    lang: details.language,
    displayTitle: true,
    autoFirstPage: false,
    compress: details.compression === 'deflate',
    font: null as unknown as string,
    info: {
      Title: details.title,
      Author: details.author,
      Subject: details.subject,
      Creator: producer,
      Producer: producer,
      CreationDate: new Date(`${details.issued}T00:00:00Z`),
    },
  }) as unknown as Pdfkit;
  pdf._id = fileId(details);
  writeEscapedMetadata(pdf);
  return pdf;
}

/** Two files may share a title; they never share the id of their sheet in one language on one paper. */
function fileId({ id, language, issued, widthPt, heightPt }: PdfDetails): Uint8Array {
  return createHash('sha256')
    .update([id, language, issued, widthPt, heightPt].join('|'))
    .digest()
    .subarray(0, 16);
}

/**
 * pdfkit writes the document information into XML without escaping it. It adds the claim of PDF/A-2a itself, and knows
 * PDF/UA only alone and with a faulty CIDSet.
 */
function writeEscapedMetadata(pdf: Pdfkit): void {
  const write = pdf._addInfo.bind(pdf);
  const info = pdf.info;
  pdf._addInfo = () => {
    const plain = { ...info };
    for (const [key, value] of Object.entries(plain))
      if (typeof value === 'string') info[key] = escapeXml(value);
    pdf.appendXML(accessibilityClaim);
    write();
    Object.assign(info, plain);
  };
}

/** The claim of PDF/UA-1, and the description of its one property that PDF/A asks for in every file that has it. */
const accessibilityClaim = `
<rdf:Description rdf:about="" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"><pdfuaid:part>1</pdfuaid:part></rdf:Description>
<rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/" xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#" xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#"><pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource"><pdfaSchema:schema>PDF/UA identification schema</pdfaSchema:schema><pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI><pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix><pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource"><pdfaProperty:name>part</pdfaProperty:name><pdfaProperty:valueType>Integer</pdfaProperty:valueType><pdfaProperty:category>internal</pdfaProperty:category><pdfaProperty:description>Part of ISO 14289 that the file conforms to</pdfaProperty:description></rdf:li></rdf:Seq></pdfaSchema:property></rdf:li></rdf:Bag></pdfaExtension:schemas></rdf:Description>
`;

const escapeXml = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

function collect(pdf: Pdfkit): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    pdf.on('data', (chunk) => chunks.push(chunk));
    pdf.on('end', () => {
      resolve(new Uint8Array(Buffer.concat(chunks)));
    });
    pdf.on('error', reject);
    pdf.end();
  });
}

/** Glyphs of a text with kerning, word by word as it was measured. */
function glyphs(font: EmbeddedFont, text: string): string {
  const parts: string[] = [];
  let run = '';
  const flush = (): void => {
    if (run !== '') parts.push(`<${run}>`);
    run = '';
  };
  const move = (thousandths: number): void => {
    if (Math.abs(thousandths) < 0.01) return;
    flush();
    parts.push(n(-thousandths));
  };
  for (const word of wordsAndSpaces(text)) {
    const [ids, positions] = font.encode(word);
    ids.forEach((id, index) => {
      const { xAdvance, xOffset, advanceWidth } = positions[index]!;
      move(xOffset);
      run += id;
      move(xAdvance - advanceWidth - xOffset);
    });
  }
  flush();
  return parts.join(' ');
}

function pathOperator(command: PathCommand): string {
  switch (command[0]) {
    case 'M':
      return `${n(command[1])} ${n(command[2])} m`;
    case 'L':
      return `${n(command[1])} ${n(command[2])} l`;
    case 'C':
      return `${command
        .slice(1)
        .map((value) => n(value as number))
        .join(' ')} c`;
    case 'Z':
      return 'h';
  }
}

function rgb(colour: string): string {
  return [1, 3, 5].map((at) => n(Number.parseInt(colour.slice(at, at + 2), 16) / 255)).join(' ');
}

/** pdfkit takes a plain string for a name and a String object for text. */
const pdfString = (text: string): unknown => new String(text);

/** Text in a content stream, where no pdfkit writes it: plain where it is ASCII, UTF-16 otherwise. */
function contentString(text: string): string {
  if (/^[\x20-\x7e]*$/.test(text)) return `(${text.replace(/[\\()]/g, '\\$&')})`;
  return `<feff${Buffer.from(text, 'utf16le').swap16().toString('hex')}>`;
}

/** Short names for the tags that others refer to, and for notes, which must have one; in the order of the tree. */
function namesOfTags(root: Tag): ReadonlyMap<Tag, string> {
  const tags: Tag[] = [];
  const wanted = new Set<Tag>();
  const walk = (tag: Tag): void => {
    tags.push(tag);
    if (tag.type === 'Note') wanted.add(tag);
    if (tag.attributes?.O === 'Table') for (const header of tag.attributes.Headers ?? []) wanted.add(header);
    for (const kid of tag.kids) if (isTag(kid)) walk(kid);
  };
  walk(root);
  const named = tags.filter((tag) => wanted.has(tag));
  if (named.length < wanted.size) throw new TypeError('a cell has a header that is not in the document');
  return new Map(named.map((tag, index) => [tag, `${tag.type === 'Note' ? 'n' : 'h'}${index + 1}`]));
}

/** A name tree in one node, whose names stand in the order of their bytes. */
function nameTree(named: ReadonlyMap<string, Reference>): unknown[] {
  return [...named]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([name, element]) => [pdfString(name), element]);
}

const round = (value: number): number => Math.round(value * 1000) / 1000;
const n = (value: number): string => String(round(value) + 0);

function append<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}
