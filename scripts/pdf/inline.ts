import type { FaceName } from '../document/design.ts';
import type { Inline } from '../document/document.ts';
import { printable, type FontSet } from './fonts.ts';
import { lineStarts, type LastLine } from './line-breaks.ts';
import { leaf, tag, type Leaf, type Tag, type TagDetails, type TagType } from './tags.ts';

/** How inline content is set. */
export interface InlineStyle {
  readonly face: FaceName;
  readonly sizePt: number;
  /** Findings stand out by weight in running text, and only there. */
  readonly findings: 'semibold' | 'plain';
}

/** A stretch of one line in one face and of one place in the tag tree. */
export interface Fragment {
  /** From the left edge of the line. */
  readonly x: number;
  readonly width: number;
  readonly text: string;
  readonly face: FaceName;
  readonly leaf: Leaf;
  readonly link?: LinkTarget;
  readonly shortFor?: ShortForm;
}

/** What a stretch of text is short for; known by its identity, so that two that follow each other stay apart. */
export interface ShortForm {
  readonly expansion: string;
}

export interface LinkTarget {
  readonly tag: Tag;
  readonly href: string;
  readonly contents: string;
}

export interface Line {
  readonly fragments: readonly Fragment[];
  /** Without the space at its end. */
  readonly width: number;
}

export interface InlineText {
  readonly runs: readonly Run[];
  /** What the tag around the text holds, in reading order. */
  readonly kids: readonly (Tag | Leaf)[];
}

interface Run {
  readonly text: string;
  readonly face: FaceName;
  readonly leaf: Leaf;
  readonly link?: LinkTarget;
  readonly shortFor?: ShortForm;
}

/** Stands in for a character that no font has; the missing character is reported. */
const substitute = '□';

/** Turns inline content into runs of one face each, and into the tags and leaves that hold them. */
export function inlineText(
  content: readonly Inline[],
  style: InlineStyle,
  fonts: FontSet,
  owner: TagType,
): InlineText {
  const collector = new Collector(style, fonts);
  collector.addAll(content, style.face, { kids: [], owner });
  return collector.result();
}

/** Breaks runs into lines no wider than `width`, as even as can be, without hyphenation. */
export function breakLines(
  runs: readonly Run[],
  width: number,
  sizePt: number,
  fonts: FontSet,
  lastLine: LastLine = 'running',
): Line[] {
  const units = unitsOf(runs).flatMap((whole) => splitToFit(whole, width, sizePt, fonts));
  const full = units.map((unit) => widthOf(unit, sizePt, fonts));
  const bare = units.map((unit) => widthOf(withoutEndSpace(unit), sizePt, fonts));
  const starts = lineStarts({ full, bare }, width, lastLine);
  return starts.map((start, index) => setLine(units.slice(start, starts[index + 1]).flat(), sizePt, fonts));
}

/** Width of the widest stretch that cannot be broken. */
export function longestUnit(runs: readonly Run[], sizePt: number, fonts: FontSet): number {
  return Math.max(0, ...unitsOf(runs).map((unit) => widthOf(withoutEndSpace(unit), sizePt, fonts)));
}

/** Width of everything on one line. */
export function wholeWidth(runs: readonly Run[], sizePt: number, fonts: FontSet): number {
  return widthOf(withoutEndSpace(runs), sizePt, fonts);
}

interface Parent {
  readonly kids: (Tag | Leaf)[];
  readonly owner: TagType;
  readonly link?: LinkTarget;
  open?: Leaf | undefined;
}

class Collector {
  private readonly runs: Run[] = [];
  private shortFor: ShortForm | undefined;
  private top: Parent | undefined;

  constructor(
    private readonly style: InlineStyle,
    private readonly fonts: FontSet,
  ) {}

  result(): InlineText {
    return { runs: trimmed(this.runs), kids: this.top?.kids ?? [] };
  }

  addAll(content: readonly Inline[], face: FaceName, parent: Parent): void {
    this.top ??= parent;
    content.forEach((node) => {
      this.add(node, face, parent);
    });
  }

  private add(node: Inline, face: FaceName, parent: Parent): void {
    switch (node.kind) {
      case 'text':
        this.addText(node.text, face, parent);
        return;
      case 'strong':
        this.addAll(node.content, strongFace(face), parent);
        return;
      case 'emphasis':
        this.addAll(node.content, 'italic', parent);
        return;
      case 'finding':
        this.addAll(node.content, this.style.findings === 'semibold' ? strongFace(face) : face, parent);
        return;
      case 'link':
        this.addLink(node, face, parent);
        return;
      case 'language':
        this.addInside(
          'Span',
          { language: node.tag },
          node.content,
          face === 'regular' ? 'italic' : face,
          parent,
        );
        return;
      case 'abbreviation':
        this.addAbbreviation(node, face, parent);
        return;
      case 'mark': {
        const details = { expansion: node.meaning, refersTo: node.note };
        this.addInside('Reference', details, node.content, face, parent);
        return;
      }
    }
  }

  private addLink(node: Extract<Inline, { kind: 'link' }>, face: FaceName, parent: Parent): void {
    const kids: (Tag | Leaf)[] = [];
    const linkTag = tag('Link', kids);
    const link = { tag: linkTag, href: node.href, contents: `${wordsOf(node.content)} (${node.href})` };
    this.nest(linkTag, parent);
    this.addAll(node.content, face, { kids, owner: 'Link', link });
  }

  /** Content in a tag of its own that runs along with the text. */
  private addInside(
    type: 'Span' | 'Reference',
    details: TagDetails,
    content: readonly Inline[],
    face: FaceName,
    parent: Parent,
  ): void {
    const kids: (Tag | Leaf)[] = [];
    this.nest(tag(type, kids, details), parent);
    const { link } = parent;
    this.addAll(content, face, { kids, owner: type, ...(link ? { link } : {}) });
  }

  /** The words stay in the leaf of the text around them. */
  private addAbbreviation(
    { expansion, content }: Extract<Inline, { kind: 'abbreviation' }>,
    face: FaceName,
    parent: Parent,
  ): void {
    const outer = this.shortFor;
    this.shortFor = { expansion };
    this.addAll(content, face, parent);
    this.shortFor = outer;
  }

  private nest(child: Tag, parent: Parent): void {
    parent.kids.push(child);
    parent.open = undefined;
  }

  private addText(text: string, face: FaceName, parent: Parent): void {
    if (!parent.open) {
      parent.open = leaf(parent.owner);
      parent.kids.push(parent.open);
    }
    for (const part of byFace(printable(text), face, this.fonts)) {
      this.runs.push({
        ...part,
        leaf: parent.open,
        ...(parent.link ? { link: parent.link } : {}),
        ...(this.shortFor ? { shortFor: this.shortFor } : {}),
      });
    }
  }
}

/** There is no semibold italic and no heavier title: strong words in them keep their face. */
const strongFace = (face: FaceName): FaceName => (face === 'title' ? 'title' : 'semibold');

/** Cuts text where the face must change because the one asked for lacks a character. */
export function byFace(text: string, face: FaceName, fonts: FontSet): { text: string; face: FaceName }[] {
  const parts: { text: string; face: FaceName }[] = [];
  for (const character of text) {
    const found = fonts.faceFor(face, character);
    const shown = found === undefined ? substitute : character;
    const shownFace = found ?? fonts.faceFor(face, substitute) ?? 'regular';
    const last = parts.at(-1);
    if (last?.face === shownFace) last.text += shown;
    else parts.push({ text: shown, face: shownFace });
  }
  return parts;
}

const wordsOf = (content: readonly Inline[]): string =>
  content.map((node) => (node.kind === 'text' ? printable(node.text) : wordsOf(node.content))).join('');

/** One space between words, none at either end. */
function trimmed(runs: readonly Run[]): Run[] {
  let spaceBefore = true;
  const single = runs.map((run) => {
    let text = '';
    for (const character of run.text) {
      const space = character === ' ';
      if (!space || !spaceBefore) text += character;
      spaceBefore = space;
    }
    return { ...run, text };
  });
  return [...withoutEndSpace(single)].filter((run) => run.text !== '');
}

/** A stretch that stays on one line, with the space that follows it. */
type Unit = readonly Run[];

function unitsOf(runs: readonly Run[]): Unit[] {
  const text = runs.map((run) => run.text).join('');
  const units: Unit[] = [];
  let start = 0;
  for (let end = 1; end <= text.length; end += 1) {
    if (end < text.length && !mayBreak(text, end)) continue;
    units.push(cut(runs, start, end));
    start = end;
  }
  return units.filter((unit) => unit.length > 0);
}

/** Whether a line may end before the character at `index`. */
function mayBreak(text: string, index: number): boolean {
  const before = text[index - 1]!;
  const after = text[index]!;
  if (before === ' ') return !'–×÷=·…'.includes(after) && text[index - 2] !== '×';
  if (before === '—') return after !== ' ';
  if (before === '-') return /\p{L}{2}-$/u.test(text.slice(0, index)) && /\p{L}/u.test(after);
  return before === '/' && after !== '/' && /[\p{L}\d]\.[\p{L}\d].*\/$/u.test(text.slice(0, index));
}

/** The part of the runs between two places in their joined text. */
function cut(runs: readonly Run[], start: number, end: number): Run[] {
  const parts: Run[] = [];
  let at = 0;
  for (const run of runs) {
    const text = run.text.slice(Math.max(0, start - at), Math.max(0, end - at));
    if (text !== '') parts.push({ ...run, text });
    at += run.text.length;
  }
  return parts;
}

/** A unit wider than the line is cut between characters as a last resort: a long address. */
function splitToFit(unit: Unit, width: number, sizePt: number, fonts: FontSet): Unit[] {
  if (widthOf(withoutEndSpace(unit), sizePt, fonts) <= width) return [unit];
  const length = unit.reduce((sum, run) => sum + run.text.length, 0);
  const parts: Unit[] = [];
  let start = 0;
  for (let end = 2; end <= length; end += 1) {
    if (end - start < 2 || widthOf(withoutEndSpace(cut(unit, start, end)), sizePt, fonts) <= width) continue;
    parts.push(cut(unit, start, end - 1));
    start = end - 1;
  }
  return [...parts, cut(unit, start, length)];
}

function withoutEndSpace(runs: readonly Run[]): readonly Run[] {
  const last = runs.at(-1);
  if (!last?.text.endsWith(' ')) return runs;
  return [...runs.slice(0, -1), { ...last, text: last.text.slice(0, -1) }];
}

function widthOf(runs: readonly Run[], sizePt: number, fonts: FontSet): number {
  return runs.reduce((sum, run) => sum + fonts.width(run.face, run.text, sizePt), 0);
}

function setLine(runs: readonly Run[], sizePt: number, fonts: FontSet): Line {
  let x = 0;
  const fragments = joined(runs).map((run): Fragment => {
    const fragment = { ...run, x, width: fonts.width(run.face, run.text, sizePt) };
    x += fragment.width;
    return fragment;
  });
  return { fragments, width: wholeWidth(joined(runs), sizePt, fonts) };
}

const isOneStretch = (a: Run, b: Run): boolean =>
  a.leaf === b.leaf && a.link === b.link && a.shortFor === b.shortFor;

function joined(runs: readonly Run[]): Run[] {
  const result: Run[] = [];
  for (const run of runs) {
    const last = result.at(-1);
    if (last && last.face === run.face && isOneStretch(last, run)) {
      result[result.length - 1] = { ...last, text: last.text + run.text };
    } else result.push(run);
  }
  return result;
}
