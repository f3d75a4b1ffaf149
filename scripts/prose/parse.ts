import MarkdownIt, { type Token } from 'markdown-it';
import container from 'markdown-it-container';
import type { Diagnostic, Place } from '../diagnostics/diagnostic.ts';
import { hasWords, type ProseBlock, type ProseInline } from './prose.ts';

/** Finds the place of a piece of text that starts on or after a line of the prose (counted from 0). */
export type Locate = (piece: string, fromLine: number, occurrence: number) => Place;

export interface ProseReading {
  readonly blocks: readonly ProseBlock[];
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Reads Markdown into prose. Whatever a sheet cannot show (raw HTML, images, code, tables) is a fault, not dropped, and
 * so is what has no words. Text beyond `mostProse` is a fault and gives no blocks.
 */
export function parseProse(text: string, locate: Locate): ProseReading {
  return new Reader(locate).read(text);
}

/** Reads a line or two of inline Markdown, as in the text of a step. */
export function parseInlineProse(
  text: string,
  locate: Locate,
): { content: readonly ProseInline[]; diagnostics: readonly Diagnostic[] } {
  const { blocks, diagnostics } = parseProse(text.trim(), locate);
  const content = blocks.flatMap((block): readonly ProseInline[] => {
    if (block.kind === 'paragraph') return block.content;
    if (block.kind === 'exhibit') return [{ kind: 'name', name: block.name, place: block.place }];
    return [];
  });
  const whole = blocks.every((block) => block.kind === 'paragraph' || block.kind === 'exhibit');
  if (whole && !hasWords(content) && diagnostics.length === 0) {
    const blank = fault('There are no words here.', 'Write what people are to read here.', locate('', 0, 0));
    return { content: [], diagnostics: [blank] };
  }
  if (whole) return { content, diagnostics };
  return {
    content,
    diagnostics: [
      ...diagnostics,
      fault(
        'Only running text can stand here, without headings or lists.',
        'Write it as one or two sentences.',
        locate(firstLine(text), 0, 0),
      ),
    ],
  };
}

/**
 * More than this is a slip of an editor or a file of another kind, not prose for a sheet: characters of the whole text,
 * pieces that the Markdown falls into, names in braces, and levels of blocks (a list and its item are two) or of
 * words (bold within a link is two).
 */
export const mostProse = {
  characters: 100_000,
  pieces: 10_000,
  names: 1000,
  blockLevels: 16,
  wordLevels: 8,
} as const;

/**
 * Real quotation marks, yes; but “(C)” is a part of a build, not a copyright sign, so nothing else is replaced. HTML
 * and every kind of link address are recognized, so that they can be told as faults instead of printed as they stand.
 */
const markdown = new MarkdownIt({ html: true, linkify: false, typographer: true })
  .disable('replacements')
  .use(container, 'when')
  .use(container, 'aside');
markdown.validateLink = () => true;

const nameInBraces = /\{\{\s*([A-Za-z0-9][A-Za-z0-9.-]*)\s*\}\}/g;
/** A line of colons with the word behind it, perhaps as the first line of a list item. */
const fence = /^\s*(?:(?:[-*+]|\d{1,9}[.)])\s+)*(:{3,})\s*(\S*)/;
const condition = /^when\s+([a-z0-9][a-z0-9.-]*)\s+is\s+([a-z0-9-]+(?:\s+or\s+[a-z0-9-]+)*)\s*$/;

class Reader {
  readonly #locate: Locate;
  readonly #diagnostics: Diagnostic[] = [];
  /** How often each piece of text was met, so that the next one is found behind it. */
  readonly #met = new Map<string, number>();
  #names = 0;
  #fencesAtFault = false;

  constructor(locate: Locate) {
    this.#locate = locate;
  }

  read(text: string): ProseReading {
    const blocks = this.#isTooLong(text.length, mostProse.characters) ? [] : this.#document(text);
    return { blocks, diagnostics: this.#diagnostics };
  }

  #document(text: string): ProseBlock[] {
    const tokens = markdown.parse(text, {});
    if (this.#isTooLong(tokens.length, mostProse.pieces)) return [];
    const deep = firstDeeperThan(mostProse.blockLevels, tokens);
    if (deep) {
      this.#reportDepth(deep.map?.[0] ?? 0);
      return [];
    }
    this.#checkFences(text);
    return this.#blocks(tokens, 0, tokens.length);
  }

  #isTooLong(size: number, most: number): boolean {
    if (size <= most) return false;
    this.#report(
      'The text is longer than any sheet can be.',
      'Divide it into several sheets, or take out what was pasted in by mistake.',
      '',
      0,
    );
    return true;
  }

  #reportDepth(line: number): void {
    this.#report(
      'Things stand within things deeper than a sheet can show.',
      'Write it flatter: a list within a list at most.',
      '',
      line,
    );
  }

  /** What `read` gives, and a fault where that is nothing and no other fault says why. */
  #orEmpty<T>(read: () => T, options: { isEmpty: (made: T) => boolean; what: string; line: number }): T {
    const told = this.#diagnostics.length;
    const made = read();
    if (options.isEmpty(made) && this.#diagnostics.length === told)
      this.#report(`${options.what} has no words.`, 'Write its words, or take it out.', '', options.line);
    return made;
  }

  #blocks(tokens: readonly Token[], from: number, to: number): ProseBlock[] {
    const blocks: ProseBlock[] = [];
    for (let at = from; at < to; at += 1) {
      const token = tokens[at]!;
      const end = token.nesting === 1 ? closing(tokens, at) : at;
      const block = this.#block(tokens, at, end);
      if (block) blocks.push(block);
      at = end;
    }
    return blocks;
  }

  #block(tokens: readonly Token[], at: number, end: number): ProseBlock | undefined {
    const token = tokens[at]!;
    const line = token.map?.[0] ?? 0;
    switch (token.type) {
      case 'heading_open':
        return this.#heading(Number(token.tag.slice(1)), tokens[at + 1]!, line);
      case 'paragraph_open':
        return this.#paragraph(tokens[at + 1]!, line);
      case 'bullet_list_open':
      case 'ordered_list_open':
        return this.#list(tokens, at, end);
      case 'container_when_open':
        return this.#when(token, () => this.#fenced(tokens, at, end));
      case 'container_aside_open':
        if (token.info.trim() !== 'aside')
          this.#report(
            'Words stand behind “::: aside”, where nothing would print them.',
            'Put them on the next line.',
            ':::',
            line,
          );
        return { kind: 'aside', blocks: this.#fenced(tokens, at, end) };
      default:
        this.#report(
          `A sheet cannot show ${kindWords(token.type)}.`,
          'Use headings (##), paragraphs, lists, bold, italics and links.',
          firstLine(token.content || token.markup || ''),
          line,
        );
        return undefined;
    }
  }

  #fenced(tokens: readonly Token[], at: number, end: number): ProseBlock[] {
    const line = tokens[at]!.map?.[0] ?? 0;
    return this.#orEmpty(() => this.#blocks(tokens, at + 1, end), {
      isEmpty: (blocks) => blocks.length === 0,
      what: 'This ::: block',
      line,
    });
  }

  #when(token: Token, read: () => ProseBlock[]): ProseBlock | undefined {
    const line = token.map?.[0] ?? 0;
    const info = token.info.trimEnd();
    const match = condition.exec(info.trimStart());
    if (!match) {
      this.#report(
        'This condition cannot be read.',
        'Write it like “::: when onion.class is short-day or intermediate”.',
        ':::',
        line,
      );
      return undefined;
    }
    const from = info.length - match[2]!.length;
    const values = [...match[2]!.matchAll(/\S+/g)]
      .filter((_, at) => at % 2 === 0)
      .map(({ 0: value, index }) => ({
        value,
        place: this.#locate(value, line, timesIn(info.slice(0, from + index), value)),
      }));
    return { kind: 'when', name: match[1]!, values, place: this.#locate(match[1]!, line, 0), blocks: read() };
  }

  #list(tokens: readonly Token[], at: number, end: number): ProseBlock | undefined {
    const token = tokens[at]!;
    const start = token.attrGet('start');
    if (start !== null)
      this.#report(
        `This list starts with ${start}, but the lists of a sheet count from 1.`,
        'Start it with 1. To keep words between two items within one list, indent them like the words of the item.',
        `${start}`,
        token.map?.[0] ?? 0,
      );
    const items = this.#items(tokens, at + 1, end);
    return items.length === 0
      ? undefined
      : { kind: 'list', ordered: token.type === 'ordered_list_open', items };
  }

  #heading(level: number, inline: Token, line: number): ProseBlock | undefined {
    if (level < 2 || level > 4) {
      this.#report(
        'A heading in prose has two, three or four hash signs.',
        'The sheet’s title comes from its header; start sections with ##.',
        inline.content,
        line,
      );
      return undefined;
    }
    const content = this.#words(inline, { what: 'This heading', line });
    return hasWords(content) ? { kind: 'heading', level: level as 2 | 3 | 4, content } : undefined;
  }

  /** The inline content of a block, flat enough to be shown. */
  #words(inline: Token, { what, line }: { what: string; line: number }): ProseInline[] {
    const children = inline.children ?? [];
    if (firstDeeperThan(mostProse.wordLevels, children)) {
      this.#reportDepth(line);
      return [];
    }
    return this.#orEmpty(() => this.#inline(children, line), {
      isEmpty: (content) => !hasWords(content),
      what,
      line,
    });
  }

  #paragraph(inline: Token, line: number): ProseBlock | undefined {
    const content = this.#words(inline, { what: 'This paragraph', line });
    if (!hasWords(content)) return undefined;
    const only = content.length === 1 ? content[0] : undefined;
    return only?.kind === 'name'
      ? { kind: 'exhibit', name: only.name, place: only.place }
      : { kind: 'paragraph', content };
  }

  #items(tokens: readonly Token[], from: number, to: number): ProseBlock[][] {
    const items: ProseBlock[][] = [];
    for (let at = from; at < to; at += 1) {
      if (tokens[at]!.type !== 'list_item_open') continue;
      const end = closing(tokens, at);
      const item = this.#orEmpty(() => this.#blocks(tokens, at + 1, end), {
        isEmpty: (blocks) => blocks.length === 0,
        what: 'This list item',
        line: tokens[at]!.map?.[0] ?? 0,
      });
      if (item.length > 0) items.push(item);
      at = end;
    }
    return items;
  }

  #inline(tokens: readonly Token[], line: number): ProseInline[] {
    const nodes: ProseInline[] = [];
    for (let at = 0; at < tokens.length; at += 1) {
      const token = tokens[at]!;
      const end = token.nesting === 1 ? closing(tokens, at) : at;
      const inner = (): ProseInline[] => this.#inline(tokens.slice(at + 1, end), line);
      switch (token.type) {
        case 'text':
        case 'text_special':
          nodes.push(...this.#textAndNames(token.content, line));
          break;
        case 'softbreak':
        case 'hardbreak':
          nodes.push({ kind: 'text', text: ' ' });
          break;
        case 'strong_open':
          nodes.push({ kind: 'strong', content: inner() });
          break;
        case 'em_open':
          nodes.push({ kind: 'emphasis', content: inner() });
          break;
        case 'link_open':
          nodes.push(...this.#link(token, inner, line));
          break;
        default:
          // The tag that closes an element is told with the one that opens it.
          if (token.content.startsWith('</') && tokens.slice(0, at).some(isHtml)) break;
          this.#report(
            `A sheet cannot show ${kindWords(token.type)}.`,
            'Use words, bold, italics and links.',
            token.content || token.markup || '',
            line,
          );
      }
      at = end;
    }
    return nodes;
  }

  #link(token: Token, inner: () => ProseInline[], line: number): ProseInline[] {
    const href = String(token.attrGet('href') ?? '');
    const shown = unescaped(href);
    const content = this.#orEmpty(inner, { isEmpty: (words) => !hasWords(words), what: 'This link', line });
    if (/\{\{|\}\}/.test(shown)) {
      this.#report(
        'A name in braces stands in the address of a link, where nothing is put in its place.',
        'Write the whole address as it is.',
        shown,
        line,
      );
      return content;
    }
    if (/^(https?:\/\/|mailto:)./.test(href))
      return hasWords(content) ? [{ kind: 'link', href, content }] : [];
    this.#report(
      `The link goes to “${shown}”, which is no web address.`,
      'Write the whole address, with https:// at its start.',
      shown,
      line,
    );
    return content;
  }

  #textAndNames(text: string, line: number): ProseInline[] {
    const nodes: ProseInline[] = [];
    const words = (piece: string): void => {
      if (piece === '') return;
      this.#checkBraces(piece, line);
      this.#checkMarks(piece, line);
      nodes.push({ kind: 'text', text: piece });
    };
    let last = 0;
    for (const match of text.matchAll(nameInBraces)) {
      words(text.slice(last, match.index));
      last = match.index + match[0].length;
      this.#names += 1;
      if (this.#names <= mostProse.names)
        nodes.push({ kind: 'name', name: match[1]!, place: this.#placeOf(match[0], line) });
      else if (this.#names === mostProse.names + 1)
        this.#report(
          `More than ${mostProse.names} names in braces stand in this text.`,
          'Let a table show so many numbers, or divide the text into several sheets.',
          match[0],
          line,
        );
    }
    words(text.slice(last));
    return nodes;
  }

  /** Marks of a link or of a fence that did not become one and would be printed as they stand. */
  #checkMarks(piece: string, line: number): void {
    if (piece.includes(']('))
      this.#report(
        'This link cannot be read.',
        'Write it like [its words](https://example.org/page), with nothing in braces and no space in the address.',
        '](',
        line,
      );
    if (piece.includes(':::') && !this.#fencesAtFault)
      this.#report(
        'Three colons stand here without opening or closing anything.',
        'Put “::: when NAME is VALUE”, “::: aside” or the ::: that closes it at the start of a line.',
        ':::',
        line,
      );
  }

  /** Braces that were meant for a name and would be printed as they stand. */
  #checkBraces(piece: string, line: number): void {
    const slip = /\{\{|\}\}|\{[a-z0-9][a-z0-9.-]*\.[a-z0-9.-]+\}?/.exec(piece)?.[0];
    if (slip === undefined) return;
    this.#report(
      'Braces stand here without a name between two of them on either side.',
      'Write the name of a finding between double braces, like {{freeze.last.32f.50}}.',
      slip,
      line,
    );
  }

  #placeOf(piece: string, line: number): Place {
    const key = `${line}\n${piece}`;
    const occurrence = this.#met.get(key) ?? 0;
    this.#met.set(key, occurrence + 1);
    return this.#locate(piece, line, occurrence);
  }

  /**
   * Lines of three or more colons, paired up. One that opens nothing known would be printed as words; one within
   * another needs fewer colons than the outer one, or the first line that closes would close both.
   */
  #checkFences(text: string): void {
    const open: { colons: number; row: string; line: number }[] = [];
    const told = this.#diagnostics.length;
    text.split('\n').forEach((row, line) => {
      const match = fence.exec(row);
      if (!match) return;
      const colons = match[1]!.length;
      const outer = open.at(-1);
      const mark = row.slice(row.indexOf(':::')).trim();
      if (match[2] === '') {
        if (outer === undefined)
          this.#report('This ::: closes nothing.', 'Take it out, or open something before it.', mark, line);
        open.pop();
        return;
      }
      if (match[2] !== 'when' && match[2] !== 'aside')
        this.#report(
          `“${mark.split(/\s+/).slice(0, 2).join(' ')}” opens nothing that is known.`,
          'Use “::: when NAME is VALUE” or “::: aside”.',
          mark,
          line,
        );
      else if (outer !== undefined && outer.colons <= colons)
        this.#report(
          'This opens within another ::: of as few colons, so the next ::: would close both.',
          'Give the outer one a colon more, where it opens and where it closes: “:::: when …” and “::::”.',
          mark,
          line,
        );
      open.push({ colons, row: mark, line });
    });
    for (const { row, line } of open)
      this.#report('This ::: is not closed.', 'Close it with a line of ::: where it ends.', row, line);
    this.#fencesAtFault = this.#diagnostics.length > told;
  }

  #report(message: string, hint: string, piece: string, line: number): void {
    this.#diagnostics.push(fault(message, hint, this.#locate(firstLine(piece), line, 0)));
  }
}

function fault(message: string, hint: string, place: Place): Diagnostic {
  return { code: 'bad-prose', severity: 'error', message, hint, place };
}

function closing(tokens: readonly Token[], at: number): number {
  let depth = 0;
  for (let i = at; i < tokens.length; i += 1) {
    depth += tokens[i]!.nesting;
    if (depth === 0) return i;
  }
  return tokens.length;
}

/** The first piece that stands within more than so many levels of others. */
function firstDeeperThan(levels: number, tokens: readonly Token[]): Token | undefined {
  let depth = 0;
  return tokens.find((token) => {
    depth += token.nesting;
    return depth > levels;
  });
}

function isHtml({ type }: Token): boolean {
  return type === 'html_inline';
}

/** How often a piece stands in a text, overlapping ones included. */
function timesIn(text: string, piece: string): number {
  let times = 0;
  for (let at = text.indexOf(piece); at >= 0; at = text.indexOf(piece, at + 1)) times += 1;
  return times;
}

/** An address as its writer typed it, for as much of it as can be read back. */
function unescaped(href: string): string {
  try {
    return decodeURI(href);
  } catch {
    return href;
  }
}

function firstLine(text: string): string {
  return text.split('\n')[0] ?? '';
}

function kindWords(type: string): string {
  const names: Record<string, string> = {
    fence: 'a block of code',
    code_block: 'a block of code (a paragraph indented by four spaces)',
    code_inline: 'code between backquotes',
    image: 'a picture from prose',
    hr: 'a rule',
    blockquote_open: 'a quotation block',
    table_open: 'a table typed in prose',
    html_block: 'HTML',
    html_inline: 'HTML',
    s_open: 'struck-out words',
  };
  return names[type] ?? `“${type}”`;
}
