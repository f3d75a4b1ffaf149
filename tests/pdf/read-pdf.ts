/** Reads a PDF back with another parser: its tag tree with the words of each tag, links, outline, metadata. */
import { shortAddress } from '../../scripts/pdf/sources.ts';
import { getDocument, VerbosityLevel } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface ReadTag {
  readonly role: string;
  readonly alternative?: string;
  readonly language?: string;
  readonly kids: readonly (ReadTag | string)[];
}

export interface ReadPdf {
  /** The part of the tree that has content on each page. */
  readonly pages: readonly ReadTag[];
  readonly links: readonly { readonly url: string; readonly contents: string }[];
  readonly outline: readonly OutlineEntry[];
  readonly metadata: string;
  /** Text drawn outside any tag and outside any artifact. */
  readonly stray: readonly string[];
}

export interface OutlineEntry {
  readonly title: string;
  readonly items: readonly OutlineEntry[];
}

interface TreeNode {
  readonly role?: string;
  readonly alt?: string;
  readonly lang?: string;
  readonly type?: string;
  readonly id?: string;
  readonly children?: readonly TreeNode[];
}

interface TextItem {
  readonly type?: string;
  readonly id?: string;
  readonly tag?: string;
  readonly str?: string;
  readonly hasEOL?: boolean;
}

interface LinkAnnotation {
  readonly subtype: string;
  readonly url: string;
  readonly contentsObj: { readonly str: string };
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: bytes.slice(), verbosity: VerbosityLevel.ERRORS, useSystemFonts: false });
  const pdf = await task.promise;
  const pages: ReadTag[] = [];
  const links: { url: string; contents: string }[] = [];
  const stray: string[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const content = await page.getTextContent({ includeMarkedContent: true, disableNormalization: true });
    const words = wordsByContent(content.items, stray);
    pages.push(readTag(await page.getStructTree(), words));
    const annotations = (await page.getAnnotations()) as readonly LinkAnnotation[];
    links.push(...annotations.map(({ url, contentsObj }) => ({ url, contents: contentsObj.str })));
  }
  const outline = ((await pdf.getOutline()) as readonly OutlineEntry[] | null) ?? [];
  const { metadata } = await pdf.getMetadata();
  const raw = (metadata as { getRaw(): string } | null)?.getRaw() ?? '';
  await task.destroy();
  return { pages, links, outline, metadata: raw, stray };
}

/**
 * The words of the tags in the order of the tree, without drawings, without the dots between parts of a line, and
 * without the addresses that paper prints because it cannot be clicked. Tags that run along do not part words.
 */
export function wordsOfPdf(pdf: ReadPdf): readonly string[] {
  const addresses = new Set(pdf.links.map(({ url }) => shortAddress(url)));
  return pdf.pages
    .map((page) => textOf(page, addresses))
    .join(' ')
    .split(/\s+/)
    .filter((word) => word !== '' && word !== '·');
}

/** The tag tree as indented text, one page after the other. */
export function printTags(pdf: ReadPdf): string {
  return pdf.pages.map((root, index) => `page ${index + 1}\n${printKids(root.kids, '  ')}`).join('\n');
}

/** Every tag of a role, wherever it lies. */
export function tagsOf(pdf: ReadPdf, role: string): readonly ReadTag[] {
  const within = (tag: ReadTag): readonly ReadTag[] => [
    ...(tag.role === role ? [tag] : []),
    ...tag.kids.flatMap((kid) => (typeof kid === 'string' ? [] : within(kid))),
  ];
  return pdf.pages.flatMap(within);
}

/** Bullets and numbers that a renderer adds; the number of a step has no full stop and counts as a word. */
const marker = /^\s*(?:[•–]|\d+\.)\s*$/;

const runsAlong = new Set(['Link', 'Reference', 'Span']);

/** The words of one tag; `leftOut` are the texts of links that do not count, without their spaces. */
export function textOf(tag: ReadTag, leftOut: ReadonlySet<string> = new Set()): string {
  if (tag.role === 'Figure') return ' ';
  const inner = tag.kids.map((kid) => (typeof kid === 'string' ? kid : textOf(kid, leftOut))).join('');
  if (tag.role === 'Lbl' && marker.test(inner)) return ' ';
  if (tag.role === 'Link' && leftOut.has(inner.replace(/\s/g, ''))) return ' ';
  return runsAlong.has(tag.role) ? inner : ` ${inner} `;
}

function printKids(kids: ReadTag['kids'], indent: string): string {
  return kids
    .map((kid) => {
      if (typeof kid === 'string') return `${indent}"${kid.trim()}"\n`;
      const details = [
        kid.role,
        ...(kid.language === undefined ? [] : [`lang=${kid.language}`]),
        ...(kid.alternative === undefined ? [] : [`alt="${kid.alternative}"`]),
      ];
      return `${indent}${details.join(' ')}\n${printKids(kid.kids, `${indent}  `)}`;
    })
    .join('');
}

function readTag(node: TreeNode, words: ReadonlyMap<string, string>): ReadTag {
  return {
    role: node.role ?? '',
    ...(node.alt === undefined ? {} : { alternative: node.alt }),
    ...(node.lang === undefined ? {} : { language: node.lang }),
    kids: (node.children ?? []).flatMap((child): (ReadTag | string)[] => {
      if (child.type === 'content') return [words.get(child.id ?? '') ?? ''];
      const tag = child.role === undefined ? undefined : readTag(child, words);
      return tag && (tag.role === 'TD' || hasContent(tag)) ? [tag] : [];
    }),
  };
}

/** The parser gives the tags of a parent on every page of the parent; those without content are on another page. */
const hasContent = (tag: ReadTag): boolean =>
  tag.kids.some((kid) => typeof kid === 'string' || hasContent(kid));

/** The parser drops the space at the end of a line and says that the line ends; a divided compound has none. */
const lineEnd = ({ str = '', hasEOL }: TextItem): string =>
  hasEOL !== true || /\p{L}-$|\/$/u.test(str) ? '' : ' ';

function wordsByContent(items: readonly TextItem[], stray: string[]): ReadonlyMap<string, string> {
  const words = new Map<string, string>();
  const open: (string | undefined)[] = [];
  for (const item of items) {
    if (item.type === 'beginMarkedContentProps' || item.type === 'beginMarkedContent') {
      // What an abbreviation stands for is said in a stretch within the other, which has no name of its own.
      open.push(item.tag === 'Artifact' ? 'artifact' : (item.id ?? open.at(-1)));
    } else if (item.type === 'endMarkedContent') open.pop();
    else if (item.str !== undefined && (item.str !== '' || item.hasEOL === true)) {
      const id = open.at(-1);
      if (id === undefined) stray.push(item.str);
      else words.set(id, (words.get(id) ?? '') + item.str + lineEnd(item));
    }
  }
  return words;
}
