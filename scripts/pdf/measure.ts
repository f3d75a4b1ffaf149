import { spanWidthPt, type ColourName, type Design } from '../document/design.ts';
import type { Block, Furniture, PaperName, Step } from '../document/document.ts';
import type { FontSet } from './fonts.ts';
import type { Item } from './items.ts';
import type { Tag } from './tags.ts';

/** Blocks turned into pieces to place and into their part of the tag tree, both in reading order. */
export interface Measured {
  readonly items: readonly Item[];
  readonly tags: readonly Tag[];
}

/** Where a block stands and what it needs to know. Handlers are functions of the block and of this alone. */
export interface Context {
  readonly design: Design;
  readonly fonts: FontSet;
  readonly paper: PaperName;
  readonly language: string;
  readonly furniture: Furniture;
  /** The level of the headings that each block makes. */
  readonly levels: ReadonlyMap<Block, number>;
  /** Left edge of the column, in points from the left edge of the page. */
  readonly x: number;
  readonly width: number;
  /** Width up to the outer margin; more than `width` where the outer columns are free. */
  readonly freeWidth: number;
  /** Height of a page for content, the upper bound of a drawing. */
  readonly pageHeight: number;
  /** How deep a list lies in other lists. */
  readonly listDepth: number;
  /**
   * Steps whose drawing stands under the act, and how many times its natural size it is drawn; that of the others stands
   * beside their words.
   */
  readonly drawnLarge: ReadonlyMap<Step, number>;
  /** What was measured before for other sizes of the drawings of steps. */
  readonly measuredBefore: MeasuredBefore;
  /** Something that the page cannot show as it was meant. */
  readonly report: (notice: FitNotice) => void;
  /** Measures the blocks inside a block. */
  readonly measure: (blocks: readonly Block[], context: Context) => Measured;
}

/** By what was measured, and then by the place it was measured for. */
export type MeasuredBefore = WeakMap<Block | Step, Map<string, unknown>>;

/** Measures something for a place once: when a sheet is laid out anew with larger drawings, the rest of it is the same. */
export function measuredOnce<T>(thing: Block | Step, context: Context, what: string, measure: () => T): T {
  const place = [
    what,
    context.x,
    context.width,
    context.freeWidth,
    context.pageHeight,
    context.listDepth,
  ].join(' ');
  const known = context.measuredBefore.get(thing) ?? new Map<string, unknown>();
  context.measuredBefore.set(thing, known);
  if (!known.has(place)) known.set(place, measure());
  return known.get(place) as T;
}

/** A drawing that is too large, or a table whose words are wider than its columns. */
export interface FitNotice {
  readonly what: string;
  readonly id: string;
  readonly detail: string;
}

/** Widths of a page: the whole type area, the text columns, and the outer columns. */
export interface PageGrid {
  readonly left: number;
  readonly fullWidth: number;
  readonly textWidth: number;
  readonly outerLeft: number;
  readonly outerWidth: number;
}

export function pageGrid(design: Design, paper: PaperName): PageGrid {
  const { columns, textColumns, gutterPt } = design.grid;
  const left = design.margin.bindingPt;
  const textWidth = spanWidthPt(design, paper, textColumns);
  return {
    left,
    fullWidth: spanWidthPt(design, paper, columns),
    textWidth,
    outerLeft: left + textWidth + gutterPt,
    outerWidth: spanWidthPt(design, paper, columns - textColumns),
  };
}

/** Whether a width reaches over the outer columns, where things can stand side by side. */
export const isFullWidth = (context: Context, width: number = context.width): boolean =>
  width > pageGrid(context.design, context.paper).textWidth + 1;

/** The same context in a narrower place that ends with its column. */
export const inside = (context: Context, x: number, width: number): Context => ({
  ...context,
  x,
  width,
  freeWidth: width,
});

/** Colours of paper; dark screens are no matter of print. */
export const colour = (context: Context, name: ColourName): string => context.design.colour.light[name];
