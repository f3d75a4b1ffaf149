import type { SheetDocument } from '../document/document.ts';
import { piece, shifted, stacked, withBefore, type Item } from './items.ts';
import { colour, type Context, type Measured } from './measure.ts';
import { horizontalRule } from './rules.ts';
import { setText } from './text.ts';
import { tag } from './tags.ts';

/** The head of the first page: series and number, title, where and when it holds, and the notice if there is one. */
export function measureTitleBand(document: SheetDocument, context: Context): Measured {
  const words = (text: string): readonly [{ readonly kind: 'text'; readonly text: string }] => [
    { kind: 'text', text },
  ];
  const series = setText(words(`${document.series} · ${document.number}`), context, {
    style: 'small',
    owner: 'P',
    face: 'semibold',
    colour: colour(context, 'green'),
  });
  const title = setText(words(document.title), context, { style: 'title', owner: 'H1' });
  const datesFor = setText(words(document.datesFor), context, {
    style: 'lead',
    owner: 'P',
    face: 'semibold',
  });
  const notice =
    document.notice === undefined
      ? undefined
      : setText(words(document.notice), context, { style: 'small', owner: 'P' });

  const band = stacked([
    ...series.pieces,
    ...withBefore(title.pieces, 2),
    ...withBefore(datesFor.pieces, 4),
    rulePiece(context, 'green', 'cutPt', 8),
    ...(notice ? [...withBefore(notice.pieces, 4), rulePiece(context, 'rule', 'thinPt', 4)] : []),
  ]);
  return {
    items: [piece(band.height, band.marks)],
    tags: [
      tag('P', series.kids),
      tag('H1', title.kids),
      tag('P', datesFor.kids),
      ...(notice ? [tag('P', notice.kids)] : []),
    ],
  };
}

/** A rule over the whole width with space above it. */
function rulePiece(context: Context, hue: 'green' | 'rule', weight: 'cutPt' | 'thinPt', above: number): Item {
  return piece(
    above,
    shifted([horizontalRule(context.x, 0, context.width, context, { weight, hue })], above),
  );
}
