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
import { innerBlocks } from '../document/outline.ts';
import type { Diagnostic, Place } from '../diagnostics/diagnostic.ts';
import { isVisible, type ProseBlock, type ProseInline } from '../prose/prose.ts';
import { conditionValue, conditionValues, knownNames, resolveName, type NameScope } from './names.ts';
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

/**
 * Composes the prose of a sheet. Its first paragraph is the lead. What comes to nothing is left out: the words of a
 * name that is not known, which is told as a fault, and a list of which a condition leaves no item.
 */
export function composeProse(prose: readonly ProseBlock[], context: ProseContext): ComposedProse {
  const composer = new Composer(context);
  const placed = composer.compose(prose);
  const lead = placed.findIndex(({ block }) => block.kind === 'paragraph');
  const first = placed[lead];
  if (lead === 0 && first?.block.kind === 'paragraph') {
    placed[0] = { ...first, block: { ...first.block, role: 'lead' } };
  }
  return { blocks: arrange(withHeadingIds(placed)), diagnostics: composer.diagnostics };
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
  /** Exhibits that stand on the sheet already, and the ids that they brought. */
  readonly #shown = new Set<string>();
  readonly #shownIds = new Set<string>();

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
          return this.#around(node.content, strong);
        case 'emphasis':
          return this.#around(node.content, emphasis);
        case 'link':
          return this.#around(node.content, (words) => link(node.href, words));
        case 'name':
          return this.#name(node.name, node.place);
      }
    });
  }

  /** Content within something, or nothing where the content comes to nothing. */
  #around(content: readonly ProseInline[], make: (words: readonly Inline[]) => Inline): readonly Inline[] {
    const words = this.inline(content);
    return isVisible(plainText(words)) ? [make(words)] : [];
  }

  #block(block: ProseBlock): Placed[] {
    switch (block.kind) {
      case 'heading':
        return this.#textBlock(block.content, (words) =>
          heading(block.level, headingStem(plainText(words)), words),
        );
      case 'paragraph':
        return this.#textBlock(block.content, (words) => paragraph(words));
      case 'list':
        return this.#list(block);
      case 'exhibit':
        return this.#exhibit(block.name, block.place);
      case 'when':
        return this.#when(block);
      case 'aside':
        return this.compose(block.blocks).map((placed) => ({ ...placed, where: 'aside' }));
    }
  }

  #textBlock(content: readonly ProseInline[], make: (words: readonly Inline[]) => Block): Placed[] {
    const words = this.inline(content);
    return isVisible(plainText(words)) ? [{ where: 'text', block: make(words) }] : [];
  }

  #list({ ordered, items }: Extract<ProseBlock, { kind: 'list' }>): Placed[] {
    const composed = items
      .map((item) => this.compose(item).map((placed) => placed.block))
      .filter((item) => item.length > 0);
    return composed.length > 0 ? [{ where: 'text', block: list(ordered, composed) }] : [];
  }

  #exhibit(name: string, place: Place): Placed[] {
    const resolved = resolveName(name, this.#context.scope, this.#context.printer);
    if (!resolved) return this.#unknown(name, place);
    if (resolved.kind === 'inline') {
      const { content } = resolved;
      return isVisible(plainText(content)) ? [{ where: 'text', block: paragraph(content) }] : [];
    }
    if (this.#shown.has(name)) return this.#again(name, place);
    this.#shown.add(name);
    const where = resolved.exhibit.wide ? 'wide' : 'text';
    const blocks = resolved.exhibit.blocks();
    const ids = blocks.flatMap(idsIn);
    if (ids.some((id) => this.#shownIds.has(id))) return this.#again(name, place);
    ids.forEach((id) => this.#shownIds.add(id));
    return blocks.map((block) => ({ where, block }));
  }

  /** A table or drawing has one place to which a reader can be sent. */
  #again(name: string, place: Place): [] {
    this.diagnostics.push({
      code: 'bad-prose',
      severity: 'error',
      message: `“${name}” shows what stands on this sheet already.`,
      hint: 'Keep it in one place only, and refer to it in words elsewhere.',
      place,
    });
    return [];
  }

  #when(block: Extract<ProseBlock, { kind: 'when' }>): Placed[] {
    const { scope, suggest } = this.#context;
    const value = conditionValue(block.name, scope);
    if (value === undefined) return this.#noCondition(block.name, block.place);
    const possible = conditionValues(block.name, scope);
    for (const wanted of block.values) {
      if (possible === undefined || possible.includes(wanted.value)) continue;
      this.diagnostics.push({
        code: 'bad-prose',
        severity: 'error',
        message: `“${block.name}” is never “${wanted.value}” in any region, so this text would be shown nowhere.`,
        hint: suggest(wanted.value, possible),
        place: wanted.place,
      });
    }
    return block.values.some((wanted) => wanted.value === value) ? this.compose(block.blocks) : [];
  }

  /** A condition on what is no finding. */
  #noCondition(name: string, place: Place): [] {
    const { scope, suggest } = this.#context;
    const known = scope.facts.has(name) || scope.exhibits.has(name);
    this.diagnostics.push({
      code: 'unresolved-name',
      severity: 'error',
      message: known
        ? `“${name}” is no finding, and a condition can only ask about a finding.`
        : `This sheet has no finding called “${name}”.`,
      hint: known
        ? 'Ask about what makes regions differ, like “::: when freeze.last.32f.50 is known”.'
        : suggest(name, [...scope.findings.keys()]),
      place,
    });
    return [];
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
}

/** Ids of sections and boxes that a sheet gets beside its prose. */
const takenIds = ['how-we-worked-this-out', 'sources', 'before-you-start'];

/** A heading's words as an id. The letters that begin the ids of other things are kept apart by a word before them. */
function headingStem(words: string): string {
  const stem = words
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  if (stem === '') return 'section';
  return /^[wsd]-/.test(stem) ? `section-${stem}` : stem;
}

/** The same blocks with the id of each heading its own: a number stands behind one that something else has. */
function withHeadingIds(placed: readonly Placed[]): readonly Placed[] {
  const taken = new Set([...takenIds, ...placed.flatMap(({ block }) => otherIdsIn(block))]);
  const own = (id: string): string => {
    let free = id;
    for (let number = 2; taken.has(free); number += 1) free = `${id}-${number}`;
    taken.add(free);
    return free;
  };
  const numbered = (block: Block): Block => {
    if (block.kind === 'heading') return { ...block, id: own(block.id) };
    if (block.kind === 'list') return { ...block, items: block.items.map((item) => item.map(numbered)) };
    return block;
  };
  return placed.map((next) => ({ ...next, block: numbered(next.block) }));
}

/** Every id within a block, headings left out, with those that a page makes of it. */
function otherIdsIn(block: Block): readonly string[] {
  return idsIn(block).flatMap((id) => [id, `${id}-caption`]);
}

/** The ids of tables and boxes within a block, and of drawings with the letter that pages set before theirs. */
function idsIn(block: Block): readonly string[] {
  const own =
    block.kind === 'table' || block.kind === 'caution-box'
      ? [block.id]
      : block.kind === 'figure'
        ? [`d-${block.scene.id}`]
        : block.kind === 'steps'
          ? block.items.flatMap(({ drawing }) => (drawing ? [`d-${drawing.id}`] : []))
          : [];
  return [...own, ...innerBlocks(block).flatMap(idsIn)];
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
