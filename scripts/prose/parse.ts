import MarkdownIt, { type Token } from 'markdown-it';
import container from 'markdown-it-container';
import type { Diagnostic, Place } from '../diagnostics/diagnostic.ts';
import type { ProseBlock, ProseInline } from './prose.ts';

/** Finds the place of a piece of text that starts on or after a line of the prose (counted from 0). */
export type Locate = (piece: string, fromLine: number, occurrence: number) => Place;

export interface ProseReading {
  readonly blocks: readonly ProseBlock[];
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads Markdown into prose. Whatever a sheet cannot show (raw HTML, images, code, tables) is a fault, not dropped. */
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

/** Real quotation marks, yes; but “(C)” is a part of a build, not a copyright sign, so nothing else is replaced. */
const markdown = new MarkdownIt({ html: false, linkify: false, typographer: true })
  .disable('replacements')
  .use(container, 'when')
  .use(container, 'aside');

const nameInBraces = /\{\{\s*([A-Za-z0-9][A-Za-z0-9.-]*)\s*\}\}/g;
const condition = /^when\s+([a-z0-9][a-z0-9.-]*)\s+is\s+([a-z0-9-]+(?:\s+or\s+[a-z0-9-]+)*)\s*$/;

class Reader {
  readonly #locate: Locate;
  readonly #diagnostics: Diagnostic[] = [];
  /** How often each piece of text was met, so that the next one is found behind it. */
  readonly #met = new Map<string, number>();

  constructor(locate: Locate) {
    this.#locate = locate;
  }

  read(text: string): ProseReading {
    const tokens = markdown.parse(text, {});
    const blocks = this.#blocks(tokens, 0, tokens.length);
    if (/^:::/m.test(text)) this.#checkFences(text);
    return { blocks, diagnostics: this.#diagnostics };
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
        return {
          kind: 'list',
          ordered: token.type === 'ordered_list_open',
          items: this.#items(tokens, at + 1, end),
        };
      case 'container_when_open': {
        const match = condition.exec(token.info.trim());
        if (!match) {
          this.#report(
            'This condition cannot be read.',
            'Write it like “::: when onion.class is short-day or intermediate”.',
            ':::',
            line,
          );
          return undefined;
        }
        const place = this.#locate(match[1]!, line, 0);
        return {
          kind: 'when',
          name: match[1]!,
          values: match[2]!.split(/\s+or\s+/),
          place,
          blocks: this.#blocks(tokens, at + 1, end),
        };
      }
      case 'container_aside_open':
        return { kind: 'aside', blocks: this.#blocks(tokens, at + 1, end) };
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
    return { kind: 'heading', level: level as 2 | 3 | 4, content: this.#inline(inline.children ?? [], line) };
  }

  #paragraph(inline: Token, line: number): ProseBlock {
    const content = this.#inline(inline.children ?? [], line);
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
      items.push(this.#blocks(tokens, at + 1, end));
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
          nodes.push(...this.#link(token, inner(), line));
          break;
        default:
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

  #link(token: Token, content: ProseInline[], line: number): ProseInline[] {
    const href = String(token.attrGet('href') ?? '');
    if (/^(https?:\/\/|mailto:)/.test(href)) return [{ kind: 'link', href, content }];
    this.#report(
      `The link goes to “${href}”, which is no web address.`,
      'Write the whole address, with https:// at its start.',
      href,
      line,
    );
    return content;
  }

  #textAndNames(text: string, line: number): ProseInline[] {
    const nodes: ProseInline[] = [];
    const words = (piece: string): void => {
      if (piece === '') return;
      this.#checkBraces(piece, line);
      nodes.push({ kind: 'text', text: piece });
    };
    let last = 0;
    for (const match of text.matchAll(nameInBraces)) {
      words(text.slice(last, match.index));
      nodes.push({ kind: 'name', name: match[1]!, place: this.#placeOf(match[0], line) });
      last = match.index + match[0].length;
    }
    words(text.slice(last));
    return nodes;
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

  /** A fence of three colons that opens nothing known would otherwise be printed as words. */
  #checkFences(text: string): void {
    let open = 0;
    text.split('\n').forEach((row, line) => {
      const match = /^:::+\s*(\S*)/.exec(row);
      if (!match) return;
      if (match[1] === '') open -= 1;
      else if (match[1] === 'when' || match[1] === 'aside') open += 1;
      else
        this.#report(
          `“::: ${match[1]}” opens nothing that is known.`,
          'Use “::: when NAME is VALUE” or “::: aside”.',
          row,
          line,
        );
    });
    if (open !== 0)
      this.#report(
        'The ::: lines do not pair up.',
        'Close each ::: when and ::: aside with a line of :::.',
        ':::',
        0,
      );
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
