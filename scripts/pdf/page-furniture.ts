import type { SheetDocument } from '../document/document.ts';
import type { Mark, MarkPlace } from './items.ts';
import { pageGrid, type Context } from './measure.ts';
import { horizontalRule } from './rules.ts';
import { plainLine, plainWidth, shortened } from './text.ts';
import type { Leaf } from './tags.ts';

/** Space for the running head of later pages, above the content. */
export const runningHeadPt = 22;

const footRuleDropPt = 14;
const footGapPt = 4;

/** A small line at the head of later pages: what this is and where it holds. */
export function runningHead(document: SheetDocument, context: Context): Mark[] {
  const { left, fullWidth } = pageGrid(context.design, context.paper);
  const style = context.design.type.small;
  const candidates = [`${document.title} — ${document.datesFor}`, document.title];
  const text =
    candidates.find((candidate) => plainWidth(candidate, context, style) <= fullWidth) ??
    shortened(document.title, fullWidth, context, style);
  return plainLine(text, { x: left, top: context.design.margin.topPt - 6, width: fullWidth }, context, {
    style: 'small',
    place: 'pagination',
  });
}

/**
 * The foot: who publishes this, its number, when it was issued and must be looked at again, where it is found,
 * and the page. `place` is the leaf that holds the words on the one page where they are content.
 */
export function foot(
  document: SheetDocument,
  page: { number: number; of: number },
  place: Leaf | undefined,
  context: Context,
): Mark[] {
  const { design, paper } = context;
  const { left, fullWidth } = pageGrid(design, paper);
  const ruleY = design.paper[paper].heightPt - design.margin.bottomPt + footRuleDropPt;
  const pageWords = document.furniture.pageOf(page.number, page.of);
  const pageWidth = plainWidth(pageWords, context, design.type.small);
  const room = fullWidth - pageWidth - design.grid.gutterPt * 2;
  const words: MarkPlace = place ?? 'pagination';
  const lines = footLines(document, room, context).flatMap((text, index) =>
    plainLine(
      text,
      { x: left, top: ruleY + footGapPt + index * design.type.small.leadingPt, width: room },
      context,
      { style: 'small', place: words },
    ),
  );
  return [
    horizontalRule(left, ruleY, fullWidth, context, { weight: 'thinPt', place: 'pagination' }),
    ...lines,
    ...plainLine(pageWords, { x: left, top: ruleY + footGapPt, width: fullWidth, align: 'right' }, context, {
      style: 'small',
      place: 'pagination',
    }),
  ];
}

/** What the foot says, in order. */
export function footParts(document: SheetDocument): string[] {
  return [
    document.office,
    document.number,
    document.issuedText,
    document.reviewText,
    ...(document.address === undefined ? [] : [document.address]),
  ];
}

/** As many parts in a line as fit; a part is never broken. */
function footLines(document: SheetDocument, room: number, context: Context): string[] {
  const lines: string[] = [];
  for (const part of footParts(document)) {
    const last = lines.at(-1);
    const longer = last === undefined ? part : `${last} · ${part}`;
    if (last !== undefined && plainWidth(longer, context, context.design.type.small) <= room)
      lines[lines.length - 1] = longer;
    else lines.push(part);
  }
  return lines.map((line, index) => (index < lines.length - 1 ? `${line} ` : line));
}
