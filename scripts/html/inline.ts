import { plainText } from '../document/build.ts';
import type { Inline } from '../document/document.ts';
import type { RenderContext } from './context.ts';
import { anchor, element, inRow, text, type Markup } from './markup.ts';

/** The layout puts the words "how this was worked out" under this id, which no id of a document can be. */
const workedOutId = 'worked_out';

export interface InlineOptions {
  /** The words are a link already: a link never holds another. */
  readonly insideLink?: boolean;
  /**
   * The words stand in a cell. Outside tables, links of findings are described aloud as leading to how the number
   * was worked out; a table full of them would say so in every cell.
   */
  readonly insideTable?: boolean;
}

/** The words of a block. */
export function renderInline(
  content: readonly Inline[],
  context: RenderContext,
  options: InlineOptions = {},
): Markup {
  return inRow(content.map((node) => renderNode(node, context, options)));
}

/** Words that lead to a web address. Throws a `TypeError` for an address of any other sort. */
export function renderLink(href: string, content: readonly Inline[], context: RenderContext): Markup {
  if (!/^(https?:|mailto:)/i.test(href)) throw new TypeError(`link address is not absolute: ${href}`);
  return element('a', { href }, renderInline(content, context, { insideLink: true }));
}

function renderNode(node: Inline, context: RenderContext, options: InlineOptions): Markup {
  switch (node.kind) {
    case 'text':
      return text(node.text);
    case 'strong':
      return element('strong', {}, renderInline(node.content, context, options));
    case 'emphasis':
      return element('em', {}, renderInline(node.content, context, options));
    case 'language':
      return element('i', { lang: node.tag }, renderInline(node.content, context, options));
    case 'abbreviation':
      return element('abbr', { title: node.expansion }, renderInline(node.content, context, options));
    case 'mark':
      return renderMark(node, context, options);
    case 'link':
      return options.insideLink
        ? renderInline(node.content, context, options)
        : renderLink(node.href, node.content, context);
    case 'finding':
      return renderFinding(node, context, options);
  }
}

/** A mark leads to its note; what it means is told instead of the mark. */
function renderMark(
  { note, meaning, content }: Extract<Inline, { kind: 'mark' }>,
  context: RenderContext,
  options: InlineOptions,
): Markup {
  const words = renderInline(content, context, { ...options, insideLink: true });
  if (options.insideLink) return words;
  return element('a', { class: 'mark', href: `#${anchor(note)}`, 'aria-label': meaning }, words);
}

/** A value of so few characters stays on one line: a range does not break after its dash. */
const longestUnbroken = 24;

/** A finding links to how it was worked out, if the sheet tells it; its id is there either way. */
function renderFinding(
  { target, content }: Extract<Inline, { kind: 'finding' }>,
  context: RenderContext,
  options: InlineOptions,
): Markup {
  const short = plainText(content).length <= longestUnbroken;
  const attributes = { class: short ? 'finding whole' : 'finding', 'data-finding': target };
  const linked = !options.insideLink && context.workings.has(target);
  if (!linked) return element('span', attributes, renderInline(content, context, options));
  return element(
    'a',
    {
      ...attributes,
      href: `#${anchor(target, 'w-')}`,
      'aria-describedby': options.insideTable ? undefined : workedOutId,
    },
    renderInline(content, context, { ...options, insideLink: true }),
  );
}
