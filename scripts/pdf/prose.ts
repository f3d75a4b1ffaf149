import { plainText } from '../document/build.ts';
import type { Block } from '../document/document.ts';
import { keptWithNext, withMarksOnFirst, type Piece } from './items.ts';
import { colour, type Context, type Measured } from './measure.ts';
import { setText } from './text.ts';
import { headingTag, tag } from './tags.ts';

type BlockOf<K extends Block['kind']> = Extract<Block, { kind: K }>;

const headingStyles = { 2: 'heading2', 3: 'heading3', 4: 'heading4' } as const;
const paragraphStyles = { lead: 'lead', body: 'text', small: 'small' } as const;

/** A heading never stands last on a page, and leads to its place from the outline. */
export function measureHeading(block: BlockOf<'heading'>, context: Context): Measured {
  const level = context.levels.get(block) ?? block.level;
  const type = headingTag(level);
  const text = setText(block.content, context, {
    style: headingStyles[block.level],
    owner: type,
    ...(block.level === 4 ? {} : { colour: colour(context, 'green') }),
  });
  const lines = text.pieces.map((line) => ({ ...line, keepWithNext: true }));
  const title = plainText(block.content);
  return {
    items: withMarksOnFirst(lines, [{ kind: 'outline', level, title }]),
    tags: [tag(type, text.kids)],
  };
}

export function measureParagraph(block: BlockOf<'paragraph'>, context: Context): Measured {
  const text = setText(block.content, context, {
    style: paragraphStyles[block.role],
    owner: 'P',
    findings: block.role === 'small' ? 'plain' : 'semibold',
  });
  const announces = plainText(block.content).trimEnd().endsWith(':');
  const lines = text.pieces.map((line): Piece => ({ ...line, rises: true }));
  return { items: announces ? keptWithNext(lines) : lines, tags: [tag('P', text.kids)] };
}
