/**
 * Prose as its writer gave it: Markdown read into a small tree, with the place of everything that may yet
 * turn out wrong. Names between double braces (`{{freeze.last.32f.50}}`) stay names here; a sheet resolves
 * them to its findings and exhibits.
 *
 * Beyond plain Markdown, two fenced blocks: `::: when NAME is VALUE or VALUE` keeps its content for the
 * regions where that holds, and `::: aside` sets its content in the outer columns beside what follows.
 */
import type { Place } from '../diagnostics/diagnostic.ts';

export type ProseInline =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'strong'; readonly content: readonly ProseInline[] }
  | { readonly kind: 'emphasis'; readonly content: readonly ProseInline[] }
  | { readonly kind: 'link'; readonly href: string; readonly content: readonly ProseInline[] }
  | { readonly kind: 'name'; readonly name: string; readonly place: Place };

export type ProseBlock =
  | { readonly kind: 'heading'; readonly level: 2 | 3 | 4; readonly content: readonly ProseInline[] }
  | { readonly kind: 'paragraph'; readonly content: readonly ProseInline[] }
  | { readonly kind: 'list'; readonly ordered: boolean; readonly items: readonly (readonly ProseBlock[])[] }
  /** A name that stands alone in its paragraph: a table, a drawing or the like. */
  | { readonly kind: 'exhibit'; readonly name: string; readonly place: Place }
  | {
      readonly kind: 'when';
      readonly name: string;
      readonly values: readonly { readonly value: string; readonly place: Place }[];
      readonly place: Place;
      readonly blocks: readonly ProseBlock[];
    }
  | { readonly kind: 'aside'; readonly blocks: readonly ProseBlock[] };

/** True where something would be read: a name, or a character that is neither a space nor invisible. */
export function hasWords(content: readonly ProseInline[]): boolean {
  return content.some((node) => {
    if (node.kind === 'name') return true;
    return node.kind === 'text' ? isVisible(node.text) : hasWords(node.content);
  });
}

/** True for text with a character that is neither a space nor invisible, as a soft hyphen is. */
export function isVisible(text: string): boolean {
  return /[^\p{Z}\p{Cc}\p{Cf}]/u.test(text);
}

/** Every name that a piece of prose refers to, conditions included. */
export function namesIn(blocks: readonly ProseBlock[]): readonly { name: string; place: Place }[] {
  return blocks.flatMap((block): { name: string; place: Place }[] => {
    switch (block.kind) {
      case 'heading':
      case 'paragraph':
        return namesInline(block.content);
      case 'list':
        return block.items.flatMap((item) => namesIn(item));
      case 'exhibit':
        return [{ name: block.name, place: block.place }];
      case 'when':
        return [{ name: block.name, place: block.place }, ...namesIn(block.blocks)];
      case 'aside':
        return [...namesIn(block.blocks)];
    }
  });
}

export function namesInline(content: readonly ProseInline[]): { name: string; place: Place }[] {
  return content.flatMap((node) =>
    node.kind === 'name'
      ? [{ name: node.name, place: node.place }]
      : node.kind === 'text'
        ? []
        : namesInline(node.content),
  );
}
