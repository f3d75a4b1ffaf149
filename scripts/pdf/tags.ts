/**
 * The tag tree as plain data, made while measuring, in reading order. What is drawn points at a leaf; the
 * writer notes which marked content each leaf received and joins both when the document is finished.
 */
export type TagType =
  | 'Document'
  | HeadingTag
  | 'P'
  | 'L'
  | 'LI'
  | 'Lbl'
  | 'LBody'
  | 'Table'
  | 'Caption'
  | 'THead'
  | 'TBody'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'Figure'
  | 'Link'
  | 'Note'
  | 'Reference'
  | 'Span'
  | 'Div'
  | keyof typeof roleMap;

export type HeadingTag = `H${1 | 2 | 3 | 4 | 5 | 6}`;

export const headingTag = (level: number): HeadingTag =>
  `H${Math.min(6, Math.max(1, level)) as 1 | 2 | 3 | 4 | 5 | 6}`;

/** Our own types and the standard type that each stands for. */
export const roleMap = { Aside: 'Sect', Caution: 'Sect', Cautions: 'Sect' } as const;

/** The place of a stretch of drawn content in the tree; known by its identity. */
export interface Leaf {
  readonly owner: TagType;
}

export interface Tag {
  readonly type: TagType;
  readonly kids: readonly (Tag | Leaf)[];
  readonly alternative?: string;
  readonly language?: string;
  /** What is said instead of the drawn characters: "Step 3" for a lone 3. */
  readonly actualText?: string;
  /** What a short form or a mark stands for. */
  readonly expansion?: string;
  /** A name that other tags can refer to. */
  readonly id?: string;
  /** The id of the tag that this one points at: the note of a mark. */
  readonly refersTo?: string;
  readonly attributes?: TagAttributes;
}

export type TagAttributes =
  | { readonly O: 'List'; readonly ListNumbering: 'None' | 'Disc' | 'Decimal' }
  | {
      readonly O: 'Table';
      readonly Scope?: 'Row' | 'Column';
      /** How many columns, and how many rows, a cell takes; one where absent. */
      readonly ColSpan?: number;
      readonly RowSpan?: number;
      /** The header cells that a cell belongs to, in the order in which they are told. */
      readonly Headers?: readonly Tag[];
    };

export type TagDetails = Omit<Tag, 'type' | 'kids'>;

export const tag = (type: TagType, kids: readonly (Tag | Leaf)[], details: TagDetails = {}): Tag => ({
  type,
  kids,
  ...details,
});

export const leaf = (owner: TagType): Leaf => ({ owner });

export const isTag = (node: Tag | Leaf): node is Tag => 'kids' in node;

export const list = (numbering: 'None' | 'Disc' | 'Decimal', items: readonly Tag[]): Tag =>
  tag('L', items, { attributes: { O: 'List', ListNumbering: numbering } });
