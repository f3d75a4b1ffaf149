import type { TypeStyle, TypeStyleName } from '../document/design.ts';
import type { Inline } from '../document/document.ts';
import { breakLines, byFace, inlineText, type Fragment, type Line } from './inline.ts';
import { printable } from './fonts.ts';
import { piece, type Mark, type MarkPlace, type Piece } from './items.ts';
import { colour, type Context } from './measure.ts';
import type { Leaf, Tag, TagType } from './tags.ts';

export interface TextOptions {
  readonly style: TypeStyleName;
  /** The tag that will hold the text. */
  readonly owner: TagType;
  readonly face?: TypeStyle['face'];
  readonly align?: 'left' | 'right' | 'centre';
  readonly colour?: string;
  readonly findings?: 'semibold' | 'plain';
}

export interface SetText {
  readonly lines: readonly Line[];
  /** One piece a line; two lines at least stay together at either end. */
  readonly pieces: readonly Piece[];
  readonly kids: readonly (Tag | Leaf)[];
}

/** Their lines are of about one length. */
const headingStyles: ReadonlySet<TypeStyleName> = new Set([
  'title',
  'heading2',
  'heading3',
  'heading4',
  'keyNumber',
]);

/** Sets inline content in the column of the context. */
export function setText(content: readonly Inline[], context: Context, options: TextOptions): SetText {
  const style = typeStyle(context, options);
  const text = inlineText(
    content,
    { ...style, findings: options.findings ?? 'plain' },
    context.fonts,
    options.owner,
  );
  const lastLine = headingStyles.has(options.style) ? 'heading' : 'running';
  const lines = breakLines(text.runs, context.width, style.sizePt, context.fonts, lastLine);
  const pieces = lines.map((line, index) =>
    piece(style.leadingPt, lineMarks(line, context, options), {
      keepWithNext: lines.length > 1 && (index === 0 || index === lines.length - 2),
      baseline: baseline(context, style),
    }),
  );
  return { lines, pieces, kids: text.kids };
}

/** A line of plain words that are no content of the sheet: running head, foot, a repeated caption. */
export function plainLine(
  text: string,
  at: { x: number; top: number; width: number; align?: 'left' | 'right' },
  context: Context,
  options: { style: TypeStyleName; face?: TypeStyle['face']; place: MarkPlace },
): Mark[] {
  const style = typeStyle(context, options);
  const parts = byFace(printable(text), style.face, context.fonts);
  const widths = parts.map((part) => context.fonts.width(part.face, part.text, style.sizePt));
  const whole = widths.reduce((sum, width) => sum + width, 0);
  let x = at.align === 'right' ? at.x + at.width - whole : at.x;
  return parts.map((part, index): Mark => {
    const mark = textMark(
      part.text,
      part.face,
      x,
      at.top + baseline(context, style),
      style.sizePt,
      context,
      options.place,
    );
    x += widths[index]!;
    return mark;
  });
}

/** Baseline of a line from its top: capitals stand in the middle of the leading. */
export function baseline(context: Context, style: TypeStyle): number {
  return style.leadingPt / 2 + context.fonts.capHeight(style.face, style.sizePt) / 2;
}

/** A type style of the design with another face, if one is asked for. */
export function typeStyle(
  context: Context,
  options: { style: TypeStyleName; face?: TypeStyle['face'] },
): TypeStyle {
  const style = context.design.type[options.style];
  return options.face ? { ...style, face: options.face } : style;
}

/** Width in points of plain text in a type style. */
export function plainWidth(text: string, context: Context, style: TypeStyle): number {
  return byFace(printable(text), style.face, context.fonts).reduce(
    (sum, part) => sum + context.fonts.width(part.face, part.text, style.sizePt),
    0,
  );
}

/** As many words of a line as there is room for, with three dots for the others. */
export function shortened(text: string, room: number, context: Context, style: TypeStyle): string {
  if (plainWidth(text, context, style) <= room) return text;
  const words = text.split(' ');
  while (words.length > 1 && plainWidth(`${words.join(' ')}…`, context, style) > room) words.pop();
  return `${words.join(' ')}…`;
}

function lineMarks(line: Line, context: Context, options: TextOptions): Mark[] {
  const style = typeStyle(context, options);
  const free = context.width - line.width;
  const start = context.x + { left: 0, right: free, centre: free / 2 }[options.align ?? 'left'];
  const y = baseline(context, style);
  const underlines = line.fragments.flatMap((fragment) =>
    fragment.link ? [underline(fragment, start, y, style.sizePt, context)] : [],
  );
  const texts = line.fragments.map((fragment): Mark => {
    const ink = fragment.link ? colour(context, 'green') : (options.colour ?? colour(context, 'ink'));
    return {
      ...textMark(fragment.text, fragment.face, start + fragment.x, y, style.sizePt, context, fragment.leaf),
      colour: ink,
      ...(fragment.shortFor ? { expansion: fragment.shortFor.expansion } : {}),
    };
  });
  const links = line.fragments.flatMap((fragment): Mark[] => {
    if (!fragment.link) return [];
    const area = { x: start + fragment.x, y: 0, width: fragment.width, height: style.leadingPt };
    return [{ kind: 'link', ...fragment.link, area }];
  });
  return [...underlines, ...texts, ...links];
}

function textMark(
  text: string,
  face: TypeStyle['face'],
  x: number,
  y: number,
  sizePt: number,
  context: Context,
  place: MarkPlace,
): Extract<Mark, { kind: 'text' }> {
  return { kind: 'text', place, x, y, text, face, sizePt, colour: colour(context, 'ink') };
}

function underline(fragment: Fragment, start: number, y: number, sizePt: number, context: Context): Mark {
  const endSpace = fragment.text.endsWith(' ') ? context.fonts.width(fragment.face, ' ', sizePt) : 0;
  const width = fragment.width - endSpace;
  const left = start + fragment.x;
  return {
    kind: 'path',
    place: 'layout',
    commands: [
      ['M', left, y + 2],
      ['L', left + width, y + 2],
    ],
    stroke: { colour: colour(context, 'green'), widthPt: context.design.line.thinPt },
  };
}
