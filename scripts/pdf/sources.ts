import { plainText } from '../document/build.ts';
import type { Block, Inline, SourceItem } from '../document/document.ts';
import { stacked, withMarksOnFirst } from './items.ts';
import { inside, type Context, type Measured } from './measure.ts';
import { equalWidths, inRows, rowPieces } from './side-by-side.ts';
import { plainLine, plainWidth, setText } from './text.ts';
import { leaf, list, tag, type Tag } from './tags.ts';

type Sources = Extract<Block, { kind: 'sources' }>;

const labelGapPt = 6;

/** Numbered sources in small type, each with its address in print. One column over the whole width: most are one line. */
export function measureSources(block: Sources, context: Context): Measured {
  const style = context.design.type.small;
  const indent = plainWidth(`${block.items.length}.`, context, style) + labelGapPt;
  const tags: Tag[] = [];
  const numbered = block.items.map((source, index) => ({ source, number: index + 1 }));
  const rows = inRows(numbered, equalWidths(1, context), context, ({ source, number }, cell) => {
    const text = setText(withAddress(source), inside(cell, cell.x + indent, cell.width - indent), {
      style: 'small',
      owner: 'P',
    });
    const place = leaf('Lbl');
    const at = { x: cell.x, top: 0, width: indent - labelGapPt, align: 'right' } as const;
    const label = plainLine(`${number}.`, at, context, { style: 'small', place });
    tags.push(tag('LI', [tag('Lbl', [place]), tag('LBody', [tag('P', text.kids)])]));
    return stacked(withMarksOnFirst(text.pieces, label));
  });
  return { items: rowPieces(rows, context.design.grid.baselinePt / 4), tags: [list('Decimal', tags)] };
}

/** A printed page cannot be clicked, so the address stands after the words. */
function withAddress({ content, href }: SourceItem): readonly Inline[] {
  if (href === undefined) return content;
  const shown = shortAddress(href);
  if (plainText(content).includes(shown)) return [{ kind: 'link', href, content }];
  return [
    ...content,
    { kind: 'text', text: ' ' },
    { kind: 'link', href, content: [{ kind: 'text', text: shown }] },
  ];
}

/** An address as people write it: without the protocol and without a slash at the end. */
export const shortAddress = (href: string): string =>
  href.replace(/^(https?:\/\/|mailto:)/, '').replace(/\/$/, '');
