import { toHeld } from '../quantities/units.ts';
import type { DateWords } from '../wording/dates.ts';
import type { Measures } from '../wording/measures.ts';
import type { Say } from '../wording/phrases.ts';

interface Words {
  readonly say: Say;
  readonly measures: Measures;
  readonly dates: DateWords;
}

/** What a finding of the climate is called, from its id; undefined for a finding of anything else. */
export function climateFindingName(id: string, words: Words): string | undefined {
  for (const [pattern, name] of names) {
    const match = pattern.exec(id);
    if (match) return name(match.slice(1), words);
  }
  return undefined;
}

type Name = (parts: readonly string[], words: Words) => string;

const degrees = (fahrenheit: string, { measures }: Words): string =>
  measures.short('temperature', toHeld(Number(fahrenheit.replace('-', '.').replace('minus.', '-')), 'F'));

/** Ids that are told apart by what stands in them; each is given the parts that its pattern catches. */
const names: readonly (readonly [RegExp, Name])[] = [
  [
    /^freeze\.(last|first)\.(\d+)f\.(\d+)(\.empirical|\.fit-difference)?$/,
    ([edge, threshold, chance, kind = ''], words) =>
      words.say(`finding.freeze-${edge}${kind.replace('.', '-')}`, {
        threshold: degrees(threshold!, words),
        chance: Number(chance),
      }),
  ],
  [
    /^freeze\.free-days\.(\d+)f\.(\d+)$/,
    ([threshold, chance], words) =>
      words.say('finding.freeze-free-chance', {
        threshold: degrees(threshold!, words),
        chance: Number(chance),
      }),
  ],
  [
    /^freeze\.occurrence\.(\d+)f$/,
    ([threshold], words) => words.say('finding.freeze-occurrence', { threshold: degrees(threshold!, words) }),
  ],
  [/^freeze\.plan\.(chance)$/, (_, { say }) => say('finding.freeze-plan-chance')],
  [/^freeze\.record\.(last|first|left-out)/, ([what], { say }) => say(`finding.freeze-record-${what}`)],
  [
    /^sun\.noon-altitude\.(\d+)-(\d+)$/,
    ([month, day], { say, dates }) =>
      say('finding.sun-noon', { date: dates.long(daysBefore(Number(month)) + Number(day)) }),
  ],
  [
    /^day-length\.on\.(\d+)-(\d+)$/,
    ([month, day], { say, dates }) =>
      say('finding.day-length-on', { date: dates.long(daysBefore(Number(month)) + Number(day)) }),
  ],
  [
    /^degree-days\.annual\.(\d+)f$/,
    ([base], words) => words.say('finding.degree-days-annual', { base: degrees(base!, words) }),
  ],
  [
    /^degree-days\.month-(\d+)\.(\d+)f$/,
    ([month, base], words) =>
      words.say('finding.degree-days-month', {
        month: words.dates.months()[Number(month) - 1]!,
        base: degrees(base!, words),
      }),
  ],
  [
    /^soil\.(rising|falling)\.([a-z0-9-]+)f\.(\d+)mm$/,
    ([direction, temperature, depth], words) =>
      words.say(`finding.soil-${direction}`, {
        temperature: degrees(temperature!, words),
        depth: words.measures.short('length', Number(depth)),
      }),
  ],
];

/** Days of the 365-day year before a month (1 to 12). */
function daysBefore(month: number): number {
  return [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334][month - 1]!;
}
