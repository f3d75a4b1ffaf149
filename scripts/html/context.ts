import type { Block, Furniture } from '../document/document.ts';
import type { Markup } from './markup.ts';

/** What a handler needs to know besides its own block. */
export interface RenderContext {
  readonly furniture: Furniture;
  /** Ids of the workings that the document has: only these can be linked to. */
  readonly workings: ReadonlySet<string>;
  /** Level of the headings that a block makes (see document/outline.ts). */
  readonly levels: ReadonlyMap<Block, number>;
  /** Size of running text on paper, in points: drawings are as wide in em as they are there. */
  readonly textSizePt: number;
}

/** Renders blocks inside a block. Handed to the handlers, so that none of them imports the table it stands in. */
export type RenderAll = (blocks: readonly Block[], context: RenderContext) => Markup;
