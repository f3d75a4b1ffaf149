/**
 * A sheet as a typed document: a closed set of block kinds, plain data, the same for HTML and PDF.
 * Neither renderer knows what a carrot is; nothing here knows a file, a page or a tag.
 *
 * Reading order is the order of the data, depth first, and both renderers keep it. Make nodes with the
 * builders in build.ts, which check what types cannot.
 */
import type { Scene } from '../drawings/scene.ts';

export type Inline =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'strong'; readonly content: readonly Inline[] }
  | { readonly kind: 'emphasis'; readonly content: readonly Inline[] }
  /** `href` is an absolute web address. */
  | { readonly kind: 'link'; readonly href: string; readonly content: readonly Inline[] }
  /**
   * A printed finding: `content` is its words. `target` is the id of the entry in the sheet's `workings`
   * block that tells how it was worked out; the HTML links to it, the PDF prints the words alone.
   */
  | { readonly kind: 'finding'; readonly target: string; readonly content: readonly Inline[] }
  /** A short form, and what it stands for as a listener should hear it: "in" for "inches". */
  | { readonly kind: 'abbreviation'; readonly expansion: string; readonly content: readonly Inline[] }
  /**
   * A mark that points at a note under its table; `note` is the id of the note (see `noteId`), `meaning` tells in a few
   * words what the mark says of the value before it.
   */
  | {
      readonly kind: 'mark';
      readonly note: string;
      readonly meaning: string;
      readonly content: readonly Inline[];
    }
  /** Words in another language than the sheet (a Latin name), with its BCP 47 tag. */
  | { readonly kind: 'language'; readonly tag: string; readonly content: readonly Inline[] };

export interface TableColumn {
  readonly header: readonly Inline[];
  /** Unit of every number in the column, printed under the header. */
  readonly unit?: string;
  /** What `unit` is short for. */
  readonly unitWords?: string;
  /** `number` aligns right with tabular figures. */
  readonly align: 'text' | 'number' | 'centre';
  /** Share of the width, relative to the other columns. */
  readonly weight: number;
}

/** The first cell of every row is the row's header. */
export interface TableRow {
  readonly cells: readonly (readonly Inline[])[];
}

export interface TableGroup {
  /** A heading row across the whole table; absent for a table without groups. */
  readonly header?: readonly Inline[];
  readonly rows: readonly TableRow[];
}

export type SignalWord = 'danger' | 'warning' | 'caution' | 'notice';

export interface Caution {
  readonly signal: SignalWord;
  /** The signal word as printed, in the sheet's language. */
  readonly signalText: string;
  /** One sentence of hazard and consequence. */
  readonly hazard: readonly Inline[];
  /** One sentence of what to do. */
  readonly avoidance: readonly Inline[];
}

/** The cautions of one signal word, each in a sentence or two that name the hazard and say what to do. */
export interface CautionGroup {
  readonly signal: SignalWord;
  readonly signalText: string;
  readonly items: readonly (readonly Inline[])[];
}

export interface Step {
  readonly number: number;
  readonly title: readonly Inline[];
  /** Printed before the action, never after it. */
  readonly cautions: readonly Caution[];
  readonly body: readonly Block[];
  readonly drawing?: Scene;
}

export type Block =
  | {
      readonly kind: 'heading';
      /** 2 for a section, 3 and 4 below it; the sheet's title is level 1. */
      readonly level: 2 | 3 | 4;
      readonly id: string;
      readonly content: readonly Inline[];
    }
  | {
      readonly kind: 'paragraph';
      readonly role: 'lead' | 'body' | 'small';
      readonly content: readonly Inline[];
    }
  | { readonly kind: 'list'; readonly ordered: boolean; readonly items: readonly (readonly Block[])[] }
  /** Things to tick off: each item has a box big enough for a pencil. */
  | { readonly kind: 'checklist'; readonly items: readonly (readonly Inline[])[] }
  | {
      readonly kind: 'table';
      readonly id: string;
      readonly caption: readonly Inline[];
      readonly columns: readonly TableColumn[];
      readonly groups: readonly TableGroup[];
      /** Small print under the table. */
      readonly notes: readonly (readonly Inline[])[];
    }
  | {
      readonly kind: 'figure';
      readonly scene: Scene;
      /** The same drawing for a narrow screen; the PDF and wide screens use `scene`. */
      readonly narrow?: Scene;
      readonly caption?: readonly Inline[];
    }
  | { readonly kind: 'caution'; readonly caution: Caution }
  | {
      readonly kind: 'caution-box';
      readonly id: string;
      readonly title: readonly Inline[];
      /** Strongest signal word first, each once. */
      readonly groups: readonly CautionGroup[];
      /** The deference to codes and licensed practice that ends the box. */
      readonly closing: readonly Inline[];
    }
  /** What the eye looks for first: big values, each with what it is. */
  | {
      readonly kind: 'key-numbers';
      readonly items: readonly { readonly value: readonly Inline[]; readonly label: readonly Inline[] }[];
    }
  | { readonly kind: 'steps'; readonly items: readonly Step[] }
  /**
   * Main text with something in the outer columns beside it. The aside is read first; on a narrow screen it
   * stands above the main text.
   */
  | { readonly kind: 'beside'; readonly aside: readonly Block[]; readonly main: readonly Block[] }
  /** Takes the full width of the type area (text otherwise takes four of the six columns). */
  | { readonly kind: 'wide'; readonly content: readonly Block[] }
  /** Kept on one page if it fits on a page at all. */
  | { readonly kind: 'together'; readonly content: readonly Block[] }
  /** Labels to cut out along the dashed line, one for each row of a bed. */
  | {
      readonly kind: 'labels';
      readonly items: readonly {
        readonly title: readonly Inline[];
        readonly lines: readonly (readonly Inline[])[];
      }[];
    }
  /** Who does something, told by words and by a shape before them. */
  | { readonly kind: 'doer'; readonly who: DoerKind; readonly content: readonly Inline[] }
  /** Numbered questions, each with room to answer it. */
  | {
      readonly kind: 'worksheet';
      /** Over the questions: where to write the name. */
      readonly opening?: readonly Inline[];
      readonly items: readonly WorksheetItem[];
    }
  /** How each number was worked out: one entry a finding, in the order of first mention. */
  | { readonly kind: 'workings'; readonly items: readonly WorkingsItem[] }
  /** Numbered sources. `href` is an absolute web address. */
  | { readonly kind: 'sources'; readonly items: readonly SourceItem[] }
  | { readonly kind: 'page-break' };

/** A child is a small round, an adult a tall square, so a child with an adult is both. */
export type DoerKind = 'child' | 'child-with-adult' | 'adult';

export interface WorksheetItem {
  readonly question: readonly Inline[];
  readonly room: AnswerRoom;
}

/** Ruled lines to write on, far apart for young children, or an empty box to draw in. Neither is told to a listener. */
export type AnswerRoom =
  | { readonly kind: 'lines'; readonly count: number; readonly ruling: 'wide' | 'narrow' }
  | { readonly kind: 'box'; readonly size: 'small' | 'medium' | 'large' };

export interface WorkingsItem {
  /** Anchor in the HTML page, and `target` of finding inlines. */
  readonly id: string;
  readonly term: readonly Inline[];
  readonly value: readonly Inline[];
  readonly explanation: readonly Inline[];
}

export interface SourceItem {
  readonly id: string;
  readonly content: readonly Inline[];
  readonly href?: string;
}

export type SheetKind =
  'planting-chart' | 'build-card' | 'fact-sheet' | 'climate-sheet' | 'class-handout' | 'companion-sheet';
export type PaperName = 'letter' | 'a4';

/** Fixed words that a renderer adds around the blocks, in the sheet's language. */
export interface Furniture {
  /** Given the numbers of a page: "Page 2 of 4". */
  readonly pageOf: (page: number, pages: number) => string;
  /** After a table caption on a later page: "continued". */
  readonly continued: string;
  readonly step: (number: number) => string;
  /** Role of the sources list and of the workings, for link texts that need words: "how this was worked out". */
  readonly workedOut: string;
  readonly skipToContent: string;
  readonly allGuides: string;
  readonly printVersion: string;
}

export interface SheetDocument {
  /** Lower-case words and hyphens: the file name of the sheet. */
  readonly id: string;
  readonly kind: SheetKind;
  /** BCP 47 tag. */
  readonly language: string;
  readonly paper: PaperName;
  /** Small, in the title band: "Planting chart". */
  readonly series: string;
  /** Publication number: "LV-101". */
  readonly number: string;
  readonly title: string;
  /** "Dates for Marlow County, 45.2° N, 2027": what makes the sheet true. */
  readonly datesFor: string;
  /** One sentence for search results and the PDF's subject. */
  readonly description: string;
  readonly office: string;
  /** Issue date as yyyy-mm-dd, and as words for the foot. */
  readonly issued: string;
  readonly issuedText: string;
  readonly reviewText: string;
  /** Short address printed in the foot, if the publisher has one. */
  readonly address?: string;
  /** A line that must stand on every sheet, such as "Demonstration data: this county is invented." */
  readonly notice?: string;
  /** Meant for one page: whoever makes it is told by how much it is too long. Nothing is made smaller for it. */
  readonly fit?: 'one-page';
  readonly furniture: Furniture;
  readonly blocks: readonly Block[];
}
