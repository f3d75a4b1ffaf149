/**
 * The look in numbers: paper, grid, type scale, line weights and colours, from `layouts/design.json`.
 * The PDF renderer and the style sheet read the same values. Sizes are in points of 1/72 inch.
 */
export type FaceName = 'regular' | 'italic' | 'semibold' | 'title';

export interface TypeStyle {
  readonly sizePt: number;
  readonly leadingPt: number;
  readonly face: FaceName;
}

export type TypeStyleName =
  'text' | 'lead' | 'small' | 'heading4' | 'heading3' | 'heading2' | 'title' | 'keyNumber';

export type ColourName = 'ink' | 'paper' | 'green' | 'clay' | 'tint' | 'shade' | 'rule';

export interface Design {
  readonly paper: Readonly<Record<'letter' | 'a4', { readonly widthPt: number; readonly heightPt: number }>>;
  readonly margin: {
    readonly bindingPt: number;
    readonly outerPt: number;
    readonly topPt: number;
    readonly bottomPt: number;
  };
  readonly grid: {
    readonly columns: number;
    readonly gutterPt: number;
    readonly textColumns: number;
    readonly baselinePt: number;
  };
  readonly type: Readonly<Record<TypeStyleName, TypeStyle>>;
  readonly line: {
    readonly cutPt: number;
    readonly seenPt: number;
    readonly thinPt: number;
    readonly hiddenDashPt: readonly [number, number];
  };
  /** #rrggbb */
  readonly colour: Readonly<Record<'light' | 'dark', Readonly<Record<ColourName, string>>>>;
  readonly screen: { readonly textPx: number; readonly lineHeight: number; readonly measureCh: number };
}

/** Width of a span of grid columns, gutters between them included. */
export function spanWidthPt(design: Design, paper: 'letter' | 'a4', columns: number): number {
  const { grid, margin } = design;
  const total = design.paper[paper].widthPt - margin.bindingPt - margin.outerPt;
  const one = (total - grid.gutterPt * (grid.columns - 1)) / grid.columns;
  return one * columns + grid.gutterPt * (columns - 1);
}
