import { plainText } from '../document/build.ts';
import type { Block, Inline, SourceItem } from '../document/document.ts';
import { columnText, firstColumn } from './column-text.ts';
import { group, piece, stacked, withBefore, withMarksOnFirst, type Item } from './items.ts';
import { inside, isFullWidth, type Context, type Measured } from './measure.ts';
import { plainLine, plainWidth, setText } from './text.ts';
import { leaf, list, tag, type Tag } from './tags.ts';

type Sources = Extract<Block, { kind: 'sources' }>;

const labelGapPt = 5;
/** An entry of so many lines or fewer stays in one piece. */
const shortEntryLines = 12;

/** Numbered sources in small type, each with its address in print. Two columns of text where there is room for them. */
export function measureSources(block: Sources, context: Context): Measured {
  const across = isFullWidth(context) ? 2 : 1;
  const column = firstColumn(context, across);
  const widest = plainWidth(`${block.items.length}.`, context, context.design.type.small);
  const entries = block.items.map((source, index) => measureSource(source, index + 1, widest, column));
  const gap = context.design.grid.baselinePt / 4;
  const items = entries.flatMap(({ item }, index) => withBefore([item], index === 0 ? 0 : gap));
  return {
    items: items.length === 0 ? [] : [columnText(items, context, { across })],
    tags: [
      list(
        'Decimal',
        entries.map(({ li }) => li),
      ),
    ],
  };
}

/** The number hangs at the left of the text and ends where the widest of them ends. */
function measureSource(
  source: SourceItem,
  number: number,
  numberWidth: number,
  context: Context,
): { item: Item; li: Tag } {
  const indent = numberWidth + labelGapPt;
  const text = setText(withAddress(source), inside(context, context.x + indent, context.width - indent), {
    style: 'small',
    owner: 'P',
  });
  const place = leaf('Lbl');
  const at = { x: context.x, top: 0, width: numberWidth, align: 'right' } as const;
  const label = plainLine(`${number}.`, at, context, { style: 'small', place });
  const lines = withMarksOnFirst(text.pieces, label);
  const { height, marks } = stacked(lines);
  return {
    item: lines.length > shortEntryLines ? group(lines) : piece(height, marks),
    li: tag('LI', [tag('Lbl', [place]), tag('LBody', [tag('P', text.kids)])]),
  };
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
