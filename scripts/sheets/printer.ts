/**
 * Puts findings into words and remembers which it printed, so that the sheet can end with how each was worked
 * out and where it comes from. One printer serves one sheet.
 */
import {
  findingWords,
  heading,
  inline,
  plainText,
  sources as sourcesBlock,
  strong,
  wide,
  workings as workingsBlock,
} from '../document/build.ts';
import { isWholeYear } from '../climate/calendar.ts';
import type { Block, Inline, SourceItem, WorkingsItem } from '../document/document.ts';
import type { Finding, FindingInput, FindingValue } from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import type { Source } from '../records/schemas/source.ts';
import type { DateWords } from '../wording/dates.ts';
import type { Measures, PrintedMeasure } from '../wording/measures.ts';
import type { Say } from '../wording/phrases.ts';
import { findingName } from './finding-name.ts';

export interface Wording {
  readonly say: Say;
  readonly measures: Measures;
  readonly dates: DateWords;
}

export interface PrintStyle {
  /** `text` in sentences (both systems, the first standing out), `cell` in tables and charts (first system, short dates). */
  readonly style?: 'text' | 'cell' | 'cell-both';
}

/** One finding told in full, in words. */
export interface Explanation {
  readonly id: string;
  readonly name: string;
  readonly value: string;
  readonly method: string;
  readonly inputs: readonly string[];
  readonly sources: readonly string[];
}

/** Reasons that a table has words of its own for. */
const shortReasons = new Set([
  'lift-out-of-reach',
  'freeze-never',
  'freeze-not-this-likely',
  'freeze-chance-not-given',
  'freeze-threshold-not-given',
  'not-given',
  'soil-always-warmer',
  'soil-always-cooler',
]);

/** More findings than this by one method share one entry, since the method is what there is to tell. */
const oneByOneUpTo = 2;

export class Printer {
  readonly wording: Wording;
  readonly #sources: ReadonlyMap<string, Source>;
  readonly #crops: readonly Crop[];
  readonly #printed = new Map<string, Finding>();
  readonly #cited: string[] = [];

  constructor(wording: Wording, records: { sources: ReadonlyMap<string, Source>; crops: readonly Crop[] }) {
    this.wording = wording;
    this.#sources = records.sources;
    this.#crops = records.crops;
  }

  /** The words of a finding, remembered as printed. */
  print(finding: Finding, { style = 'text' }: PrintStyle = {}): Inline {
    this.#remember(finding);
    const { first, second } =
      this.#liquid(finding.value, finding.id) ??
      (style === 'text' ? this.words(finding.value) : this.cellWords(finding.value));
    const tail = second === undefined || style === 'cell' ? [] : [` (${second})`];
    const head = style === 'text' ? strong(first) : first;
    return findingWords(finding.id, [head, ...tail]);
  }

  /** A finding in words of the caller's making, as where the unit stands in the head of a column. */
  printAs(finding: Finding, words: string): Inline {
    this.#remember(finding);
    return findingWords(finding.id, words);
  }

  /** Plain words of a value; nothing is remembered. */
  words(value: FindingValue): PrintedMeasure {
    const { say, measures, dates } = this.wording;
    switch (value.kind) {
      case 'quantity':
        return measures.measure(value.dimension, value.value);
      case 'range':
        return measures.measure(value.dimension, value.low, value.high);
      case 'count':
        return { first: measures.number(value.value, 1) };
      case 'count-range':
        return { first: `${measures.number(value.low, 1)}–${measures.number(value.high, 1)}` };
      case 'date':
        return { first: dates.long(value.day) };
      case 'date-range':
        return {
          first: isWholeYear(value) ? say('dates-table.any-month') : dates.longRange(value.from, value.to),
        };
      case 'choice':
        return { first: say(`choice.${value.value}`) };
      case 'none':
        return { first: say(`none.${value.reason}`) };
    }
  }

  cellWords(value: FindingValue): PrintedMeasure {
    const { dates } = this.wording;
    if (value.kind === 'date') return { first: dates.short(value.day) };
    if (value.kind === 'date-range')
      return {
        first: isWholeYear(value)
          ? this.wording.say('dates-table.any-month-cell')
          : dates.shortRange(value.from, value.to),
      };
    if (value.kind === 'none')
      return {
        first: this.wording.say(shortReasons.has(value.reason) ? `none.short-${value.reason}` : 'none.short'),
      };
    if (value.kind === 'choice') return { first: capitalized(this.words(value).first) };
    return this.words(value);
  }

  /** Ids of every finding printed so far, in order of first mention. */
  printed(): readonly string[] {
    return [...this.#printed.keys()];
  }

  /** Every finding printed so far, each with how it was worked out. */
  explanations(): readonly Explanation[] {
    return [...this.#printed.values()].map((finding) => ({
      id: finding.id,
      name: this.#nameOf(finding),
      value: this.#valueOf(finding.value, finding.id),
      method: this.wording.say(`method.${finding.method}.text`),
      inputs: this.#inputsOf(finding),
      sources: finding.sources.map((id) => plainText(this.#sourceItem(id).content)),
    }));
  }

  /** Notes sources that stand behind something other than a finding, such as a caution; their numbers: `1, 3–5`. */
  cite(ids: readonly string[]): string {
    return sourceNumbers(ids.map((id) => this.#number(id)));
  }

  /**
   * The whole sheet: the blocks given, then “How we worked this out” and the numbered sources. Findings that
   * share an entry are pointed to it.
   */
  finish(blocks: readonly Block[]): readonly Block[] {
    const { say } = this.wording;
    const entries = this.#entries();
    const home = new Map(entries.flatMap(({ item, covers }) => covers.map((id) => [id, item.id] as const)));
    const items = entries.map(({ item }) => item);
    const workings =
      items.length > 0
        ? [heading(2, 'how-we-worked-this-out', say('sheet.workings-title')), wide([workingsBlock(items)])]
        : [];
    const cited = this.#cited.map((id) => this.#sourceItem(id));
    const closing =
      cited.length > 0
        ? [heading(2, 'sources', say('sheet.sources-title')), wide([sourcesBlock(cited)])]
        : [];
    return [...retargeted(blocks, home), ...workings, ...closing];
  }

  #remember(finding: Finding): void {
    if (this.#printed.has(finding.id)) return;
    this.#printed.set(finding.id, finding);
  }

  #entries(): { item: WorkingsItem; covers: readonly string[] }[] {
    const byMethod = new Map<string, Finding[]>();
    for (const finding of this.#printed.values()) {
      byMethod.set(finding.method, [...(byMethod.get(finding.method) ?? []), finding]);
    }
    return [...byMethod].flatMap(([method, findings]) =>
      findings.length > oneByOneUpTo
        ? [{ item: this.#shared(method, findings), covers: findings.map(({ id }) => id) }]
        : findings.map((finding) => ({ item: this.#single(finding), covers: [finding.id] })),
    );
  }

  /** One entry for all the findings of a method. */
  #shared(method: string, findings: readonly Finding[]): WorkingsItem {
    const { say } = this.wording;
    const numbers = sourceNumbers(
      findings.flatMap((finding) => finding.sources).map((id) => this.#number(id)),
    );
    return {
      id: findings[0]!.id,
      term: inline(say(`method.${method}.title`)),
      value: inline(say('sheet.workings-shared', { count: findings.length })),
      explanation: inline([say(`method.${method}.text`), ...this.#sourceWords(numbers)]),
    };
  }

  #single(finding: Finding): WorkingsItem {
    const { say } = this.wording;
    const numbers = sourceNumbers(finding.sources.map((id) => this.#number(id)));
    const inputs = this.#inputsOf(finding);
    return {
      id: finding.id,
      term: inline(this.#nameOf(finding)),
      value: inline(this.#valueOf(finding.value, finding.id)),
      explanation: inline([
        say(`method.${finding.method}.text`),
        ...(inputs.length > 0 ? [` ${say('sheet.workings-from', { inputs: inputs.join('; ') })}`] : []),
        ...this.#sourceWords(numbers),
      ]),
    };
  }

  #nameOf(finding: Finding): string {
    return findingName(finding, { ...this.wording, crops: this.#crops });
  }

  #valueOf(value: FindingValue, id?: string): string {
    const { first, second } = this.#liquid(value, id) ?? this.words(value);
    return second === undefined ? first : `${first} (${second})`;
  }

  /** Volumes of water are told in gallons and litres, however much they are; soil goes by the cubic foot. */
  #liquid(value: FindingValue, id: string | undefined): PrintedMeasure | undefined {
    if (!id?.startsWith('water.')) return undefined;
    const { measures } = this.wording;
    if (value.kind === 'quantity' && value.dimension === 'volume') return measures.liquid(value.value);
    if (value.kind === 'range' && value.dimension === 'volume') return measures.liquid(value.low, value.high);
    return undefined;
  }

  /** What went in, each name once: `width: 27 in, 27 in, 24 in`. */
  #inputsOf(finding: Finding): string[] {
    const byName = new Map<string, FindingInput[]>();
    for (const input of finding.inputs) byName.set(input.name, [...(byName.get(input.name) ?? []), input]);
    return [...byName].map(([name, inputs]) =>
      this.wording.say('sheet.workings-input', {
        name: this.wording.say(`input.${name}`),
        value: inputs.map(({ value, finding: id }) => this.#valueOf(value, id)).join(', '),
      }),
    );
  }

  #sourceWords(numbers: string): string[] {
    return numbers === '' ? [] : [` ${this.wording.say('sheet.workings-sources', { numbers })}`];
  }

  #number(id: string): number {
    const at = this.#cited.indexOf(id);
    return at >= 0 ? at + 1 : this.#cited.push(id);
  }

  #sourceItem(id: string): SourceItem {
    const source = this.#sources.get(id);
    if (!source) throw new TypeError(`no source record “${id}”`);
    const mark =
      source.seen === 'not-applicable' || source.seen === 'source'
        ? ''
        : ` ${this.wording.say(`source.seen-${source.seen}`)}`;
    return {
      id,
      content: inline(`${source.cite.replace(/(?<=\b\d{4})-(?=\d{4}\b)/g, '–')}${mark}`),
      ...(source.url === undefined ? {} : { href: source.url }),
    };
  }
}

export function capitalized(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** `1, 3–5` */
function sourceNumbers(numbers: readonly number[]): string {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  const runs: [number, number][] = [];
  for (const number of sorted) {
    const run = runs.at(-1);
    if (run && number === run[1] + 1) run[1] = number;
    else runs.push([number, number]);
  }
  return runs.map(([a, b]) => (a === b ? `${a}` : b === a + 1 ? `${a}, ${b}` : `${a}–${b}`)).join(', ');
}

/** The same data with each finding pointed to the entry that tells about it. */
function retargeted<T>(data: T, home: ReadonlyMap<string, string>): T {
  if (Array.isArray(data)) return data.map((item: unknown) => retargeted(item, home)) as T;
  if (typeof data !== 'object' || data === null) return data;
  const node = data as Record<string, unknown>;
  if ('items' in node && 'widthMm' in node) return data;
  const copy = Object.fromEntries(Object.entries(node).map(([key, value]) => [key, retargeted(value, home)]));
  if (node['kind'] === 'finding') copy['target'] = home.get(String(node['target'])) ?? node['target'];
  return copy as T;
}
