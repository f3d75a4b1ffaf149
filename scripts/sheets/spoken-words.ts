/**
 * What a listener should hear instead of a short form, and which words are of another language. The short forms are
 * phrases (`abbreviation.…`), so that each language has its own.
 */
import { abbreviation, language, plainText } from '../document/build.ts';
import type { Inline, SheetDocument } from '../document/document.ts';
import { mapWords } from '../document/map-words.ts';
import type { Guide } from '../records/guide.ts';
import type { Say } from '../wording/phrases.ts';

/** The document with every short form and every Latin name of a crop marked as such. */
export function withSpokenWords(document: SheetDocument, forms: ShortForms): SheetDocument {
  const running = (content: readonly Inline[]): readonly Inline[] =>
    content.flatMap((node) => markedNode(node, forms));
  return mapWords(document, {
    running,
    cell: (content) => {
      const whole = forms.alone(plainText(content));
      return whole === undefined ? running(content) : [abbreviation(whole, content)];
    },
    unit: (unit) => forms.unit(unit, 'several'),
    alternative: (text) => spelledOut(text, forms),
  });
}

export interface ShortForms {
  /** Finds a unit after its number, a month before its day, a line to write on, or the Latin name of a crop. */
  readonly pattern: RegExp;
  /** What a unit of measure stands for, of one or of several. */
  unit(unit: string, count: 'one' | 'several'): string | undefined;
  month(month: string): string | undefined;
  /** What a short form stands for that is all there is in a cell. */
  alone(words: string): string | undefined;
  readonly lineToWriteOn: string | undefined;
}

const prefix = 'abbreviation.';

/** The short forms of a guide's language, and the Latin names of its crops. */
export function shortFormsOf({ phrases, crops }: Pick<Guide, 'phrases' | 'crops'>, say: Say): ShortForms {
  const formsIn = (group: string): ReadonlyMap<string, string> => {
    const keys = [...phrases.keys()].filter((key) => key.startsWith(`${prefix}${group}.`));
    return new Map(keys.map((key) => [key.slice(prefix.length + group.length + 1), key]));
  };
  const said = (key: string | undefined, count = 2): string | undefined =>
    key === undefined ? undefined : say(key, { count });
  const [units, tied] = [formsIn('after-number'), formsIn('after-tied-number')];
  const [months, alone] = [formsIn('before-number'), formsIn('alone')];
  const lineKey = `${prefix}line-to-write-on`;
  const latin = crops.map((crop) => crop.latin);
  return {
    pattern: eitherOf([
      String.raw`(?<=[\d${fractions}])[ ${nb}](?<unit>${oneOf(units.keys())})${unitEnd}`,
      String.raw`(?<=[\d${fractions}])${nb}(?<tied>${oneOf(tied.keys())})${unitEnd}`,
      String.raw`(?<!\p{L})(?<month>${oneOf(months.keys())})(?=${nb}\d)`,
      String.raw`(?<!\p{L})(?<latin>${oneOf(latin)})(?!\p{L})`,
      String.raw`(?<line>_{3,})`,
    ]),
    unit: (unit, count) => said(units.get(unit) ?? tied.get(unit), count === 'one' ? 1 : 2),
    month: (month) => said(months.get(month)),
    alone: (words) => said(alone.get(words) ?? months.get(words)),
    lineToWriteOn: phrases.has(lineKey) ? say(lineKey) : undefined,
  };
}

/** A no-break space. */
const nb = '\u00A0';

/** Fractions that have a character of their own. */
const fractions = '½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞';

/** Not within a word or a longer unit. */
const unitEnd = String.raw`(?![\p{L}\p{N}²³/])`;

const eitherOf = (patterns: readonly string[]): RegExp => new RegExp(patterns.join('|'), 'gu');

/** The longest first, so that `ft²` is not taken for `ft`. Of no words at all, what matches nothing. */
function oneOf(words: Iterable<string>): string {
  const sorted = [...new Set(words)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  const escaped = sorted.map((word) =>
    word.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&').replaceAll(' ', `[ ${nb}]`),
  );
  return escaped.length === 0 ? '(?!)' : escaped.join('|');
}

/** `1 in` and `½ in` are of one inch, `1½ in` and `0 in` of several. */
function countBefore(text: string): 'one' | 'several' {
  const number = new RegExp(`(?:\\d+${nb})?[\\d.,/⁄${fractions}]+$`, 'u').exec(text)?.[0] ?? '';
  return new RegExp(`^(?:1|[${fractions}]|\\d+[/⁄]\\d+)$`, 'u').test(number) ? 'one' : 'several';
}

function markedNode(node: Inline, forms: ShortForms): readonly Inline[] {
  switch (node.kind) {
    case 'text':
      return markedText(node.text, forms);
    case 'abbreviation':
    case 'mark':
    case 'language':
      return [node];
    case 'strong':
    case 'emphasis':
    case 'link':
    case 'finding':
      return [{ ...node, content: node.content.flatMap((inner) => markedNode(inner, forms)) }];
  }
}

function markedText(text: string, forms: ShortForms): readonly Inline[] {
  return stretchesOf(text, forms).map((stretch): Inline => {
    if (stretch.expansion !== undefined) return abbreviation(stretch.expansion, stretch.text);
    return stretch.latin ? language('la', stretch.text) : { kind: 'text', text: stretch.text };
  });
}

/** The words of a drawing cannot be marked, so short forms are written out in them. */
const spelledOut = (text: string, forms: ShortForms): string =>
  stretchesOf(text, forms)
    .map((stretch) => stretch.expansion ?? stretch.text)
    .join('');

interface Stretch {
  readonly text: string;
  readonly expansion?: string;
  readonly latin?: true;
}

/** A text cut at what is marked in it. A space between a number and its unit becomes one that no line ends at. */
function stretchesOf(text: string, forms: ShortForms): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let end = 0;
  const plain = (words: string): void => {
    if (words !== '') stretches.push({ text: words });
  };
  for (const found of text.matchAll(forms.pattern)) {
    const { unit, tied, month, latin, line } = found.groups!;
    const before = text.slice(0, found.index);
    const short = unit ?? tied;
    plain(before.slice(end) + (short === undefined ? '' : nb));
    end = found.index + found[0].length;
    const words = short ?? found[0];
    const expansion =
      (short === undefined ? undefined : forms.unit(short, countBefore(before))) ??
      (month === undefined ? undefined : forms.month(month)) ??
      (line === undefined ? undefined : forms.lineToWriteOn);
    if (expansion !== undefined) stretches.push({ text: words, expansion });
    else if (latin === undefined) plain(words);
    else stretches.push({ text: words, latin: true });
  }
  plain(text.slice(end));
  return stretches;
}
