/** Turns prose into blocks of the document: names become findings and exhibits, conditions are decided. */
import {
  beside,
  emphasis,
  heading,
  inline,
  link,
  list,
  paragraph,
  plainText,
  strong,
  wide,
} from '../document/build.ts';
import type { Block, Inline } from '../document/document.ts';
import type { Diagnostic, Place } from '../diagnostics/diagnostic.ts';
import type { ProseBlock, ProseInline } from '../prose/prose.ts';
import { conditionValue, knownNames, resolveName, type NameScope } from './names.ts';
import type { Printer } from './printer.ts';

export interface ProseContext {
  readonly scope: NameScope;
  readonly printer: Printer;
  /** The hint for a name that is not known, given the names that are. */
  readonly suggest: (name: string, known: readonly string[]) => string;
}

export interface ComposedProse {
  readonly blocks: readonly Block[];
  readonly diagnostics: readonly Diagnostic[];
}

/** Composes the prose of a sheet. Its first paragraph is the lead. */
export function composeProse(prose: readonly ProseBlock[], context: ProseContext): ComposedProse {
  const composer = new Composer(context);
  const placed = composer.compose(prose);
  const lead = placed.findIndex(({ block }) => block.kind === 'paragraph');
  const first = placed[lead];
  if (lead === 0 && first?.block.kind === 'paragraph') {
    placed[0] = { ...first, block: { ...first.block, role: 'lead' } };
  }
  return { blocks: arrange(placed), diagnostics: composer.diagnostics };
}

/** Composes a line of prose, such as a title or the text of a step. */
export function composeInline(
  content: readonly ProseInline[],
  context: ProseContext,
): { content: readonly Inline[]; diagnostics: readonly Diagnostic[] } {
  const composer = new Composer(context);
  return { content: composer.inline(content), diagnostics: composer.diagnostics };
}

/** A block with where it stands on the page: in the text column, over the full width, or in the outer columns. */
interface Placed {
  readonly block: Block;
  readonly where: 'text' | 'wide' | 'aside';
}

class Composer {
  readonly diagnostics: Diagnostic[] = [];
  readonly #context: ProseContext;
  readonly #headingIds = new Map<string, number>();

  constructor(context: ProseContext) {
    this.#context = context;
  }

  compose(prose: readonly ProseBlock[]): Placed[] {
    return prose.flatMap((block) => this.#block(block));
  }

  inline(content: readonly ProseInline[]): readonly Inline[] {
    return content.flatMap((node): readonly Inline[] => {
      switch (node.kind) {
        case 'text':
          return inline(node.text);
        case 'strong':
          return [strong([...this.inline(node.content)])];
        case 'emphasis':
          return [emphasis([...this.inline(node.content)])];
        case 'link':
          return [link(node.href, [...this.inline(node.content)])];
        case 'name':
          return this.#name(node.name, node.place);
      }
    });
  }

  #block(block: ProseBlock): Placed[] {
    switch (block.kind) {
      case 'heading': {
        const content = this.inline(block.content);
        return [
          { where: 'text', block: heading(block.level, this.#headingId(plainText(content)), [...content]) },
        ];
      }
      case 'paragraph':
        return [{ where: 'text', block: paragraph([...this.inline(block.content)]) }];
      case 'list':
        return [
          {
            where: 'text',
            block: list(
              block.ordered,
              block.items.map((item) => this.compose(item).map((placed) => placed.block)),
            ),
          },
        ];
      case 'exhibit':
        return this.#exhibit(block.name, block.place);
      case 'when':
        return this.#when(block);
      case 'aside':
        return this.compose(block.blocks).map((placed) => ({ ...placed, where: 'aside' }));
    }
  }

  #exhibit(name: string, place: Place): Placed[] {
    const resolved = resolveName(name, this.#context.scope, this.#context.printer);
    if (!resolved) return this.#unknown(name, place);
    if (resolved.kind === 'inline') return [{ where: 'text', block: paragraph([...resolved.content]) }];
    const where = resolved.exhibit.wide ? 'wide' : 'text';
    return resolved.exhibit.blocks().map((block) => ({ where, block }));
  }

  #when(block: Extract<ProseBlock, { kind: 'when' }>): Placed[] {
    const value = conditionValue(block.name, this.#context.scope);
    if (value === undefined) return this.#unknown(block.name, block.place);
    return block.values.includes(value) ? this.compose(block.blocks) : [];
  }

  #name(name: string, place: Place): readonly Inline[] {
    const resolved = resolveName(name, this.#context.scope, this.#context.printer);
    if (resolved?.kind === 'inline') return resolved.content;
    if (resolved) {
      this.diagnostics.push({
        code: 'unresolved-name',
        severity: 'error',
        message: `“${name}” is a table or drawing and cannot stand within a sentence.`,
        hint: 'Put it on a line of its own, with an empty line before and after it.',
        place,
      });
      return [];
    }
    this.#unknown(name, place);
    return [];
  }

  #unknown(name: string, place: Place): [] {
    this.diagnostics.push({
      code: 'unresolved-name',
      severity: 'error',
      message: `This sheet has no finding or exhibit called “${name}”.`,
      hint: this.#context.suggest(name, knownNames(this.#context.scope)),
      place,
    });
    return [];
  }

  /** A heading's words as an id, with a number behind it when they come again. */
  #headingId(words: string): string {
    const stem =
      words
        .toLowerCase()
        .normalize('NFKD')
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-+|-+$/g, '') || 'section';
    const seen = this.#headingIds.get(stem) ?? 0;
    this.#headingIds.set(stem, seen + 1);
    return seen === 0 ? stem : `${stem}-${seen + 1}`;
  }
}

/**
 * Puts an aside beside the text that follows it, up to the next section, aside or full-width exhibit. Text that
 * has no aside stands in the text column; an aside with no text after it stands in the text column too.
 */
function arrange(placed: readonly Placed[]): Block[] {
  const blocks: Block[] = [];
  let at = 0;
  while (at < placed.length) {
    const { where, block } = placed[at]!;
    if (where !== 'aside') {
      blocks.push(where === 'wide' ? wide([block]) : block);
      at += 1;
      continue;
    }
    const asideEnd = runEnd(placed, at, (next) => next.where === 'aside');
    const mainEnd = runEnd(
      placed,
      asideEnd,
      (next) => next.where === 'text' && !(next.block.kind === 'heading' && next.block.level === 2),
    );
    const aside = placed.slice(at, asideEnd).map((next) => next.block);
    const main = placed.slice(asideEnd, mainEnd).map((next) => next.block);
    if (main.length > 0) blocks.push(beside(aside, main));
    else blocks.push(...aside);
    at = mainEnd;
  }
  return blocks;
}

function runEnd(placed: readonly Placed[], from: number, holds: (next: Placed) => boolean): number {
  const length = placed.slice(from).findIndex((next) => !holds(next));
  return length < 0 ? placed.length : from + length;
}
