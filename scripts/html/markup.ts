/**
 * HTML as a value: the one place where words become markup. `text` and attribute values are escaped here and
 * nowhere else, and only what came through here has the type `Markup`, so nothing is escaped twice or not at all.
 */
declare const escaped: unique symbol;

/** Finished HTML. */
export type Markup = string & { readonly [escaped]: true };

/** `true` writes the attribute without a value; `undefined` and `false` leave it out. */
export type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;

/** Elements of SVG that never hold anything here; HTML closes them with a slash. */
const emptyInSvg = new Set(['circle', 'path']);

export const nothing = '' as Markup;

export function element(
  name: string,
  attributes: Attributes,
  content: Markup | readonly Markup[] = nothing,
): Markup {
  const written = Object.entries(attributes)
    .map(([key, value]) => writeAttribute(key, value))
    .join('');
  if (emptyInSvg.has(name)) return `<${name}${written}/>` as Markup;
  const inner = typeof content === 'string' ? content : content.join('');
  return `<${name}${written}>${inner}</${name}>` as Markup;
}

/** Words, with every character that HTML would take for its own written as a reference. */
export function text(words: string): Markup {
  return words.replace(/[&<>"]/g, (character) => references[character] ?? character) as Markup;
}

/** Pieces on lines of their own, so that a person can read the page's source. */
export function onLines(pieces: readonly Markup[]): Markup {
  return pieces.filter((piece) => piece !== '').join('\n') as Markup;
}

/** Pieces in a row, without anything between them. */
export function inRow(pieces: readonly Markup[]): Markup {
  return pieces.join('') as Markup;
}

/** The class attribute for those names that are given. */
export function classes(...names: readonly (string | undefined)[]): string | undefined {
  return names.filter(Boolean).join(' ') || undefined;
}

/**
 * An id of the document as an id of the page. Dots become underscores, which no id of a document has, so that
 * different ids stay different and an address with `#` needs no escaping in a style sheet. The prefix keeps apart
 * kinds of ids that are only unique among themselves.
 */
export function anchor(id: string, prefix: '' | 'w-' | 's-' | 'd-' = ''): string {
  return prefix + id.replaceAll('.', '_');
}

const references: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

function writeAttribute(name: string, value: Attributes[string]): string {
  if (value === undefined || value === false) return '';
  return value === true ? ` ${name}` : ` ${name}="${text(String(value))}"`;
}
