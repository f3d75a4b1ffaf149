import { plainText } from '../document/build.ts';
import type { Block, Inline, SourceItem } from '../document/document.ts';
import { withBefore, withMarksOnFirst, type Item } from './items.ts';
import { inside, type Context, type Measured } from './measure.ts';
import { plainLine, plainWidth, setText } from './text.ts';
import { leaf, list, tag, type Tag } from './tags.ts';

type Sources = Extract<Block, { kind: 'sources' }>;

const labelGapPt = 6;

/** Numbered sources in small type, each with its address in print. */
export function measureSources(block: Sources, context: Context): Measured {
  const style = context.design.type.small;
  const indent = plainWidth(`${block.items.length}.`, context, style) + labelGapPt;
  const inner = inside(context, context.x + indent, context.width - indent);
  const items: Item[] = [];
  const tags: Tag[] = [];
  block.items.forEach((source, index) => {
    const text = setText(withAddress(source), inner, { style: 'small', owner: 'P' });
    const place = leaf('Lbl');
    const at = { x: context.x, top: 0, width: indent - labelGapPt, align: 'right' } as const;
    const label = plainLine(`${index + 1}.`, at, context, { style: 'small', place });
    items.push(
      ...withBefore(
        withMarksOnFirst(text.pieces, label),
        index === 0 ? 0 : context.design.grid.baselinePt / 5,
      ),
    );
    tags.push(tag('LI', [tag('Lbl', [place]), tag('LBody', [tag('P', text.kids)])]));
  });
  return { items, tags: [list('Decimal', tags)] };
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
