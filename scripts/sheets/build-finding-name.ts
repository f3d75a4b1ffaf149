import { monthIds } from '../climate/heat-of-months.ts';
import type { DateWords } from '../wording/dates.ts';
import type { Say } from '../wording/phrases.ts';

interface Words {
  readonly say: Say;
  readonly dates: DateWords;
  /** What the finding would be called by another id. */
  readonly nameOf: (id: string) => string;
}

/** What a finding of heat, wind, lifting or of things at hand is called, from its id; undefined for any other. */
export function buildFindingName(id: string, words: Words): string | undefined {
  for (const [pattern, name] of names) {
    const match = pattern.exec(id);
    if (match) return name(match.slice(1), words);
  }
  return undefined;
}

const names: readonly (readonly [RegExp, (parts: readonly string[], words: Words) => string])[] = [
  [
    /^frame-heat\.month-(\d+)\.([a-z-]+)$/,
    ([month, what], { say, dates }) =>
      say(`finding.frame-heat.${what}`, { month: dates.monthNames()[Number(month) - 1]! }),
  ],
  [/^frame-heat\.gain\.([a-z-]+)$/, ([season], { say }) => say(`finding.frame-heat.gain-${season}`)],
  [
    /^heat\.(humidity|index|band)\.([a-z]+)$/,
    ([what, month], { say, dates }) =>
      say(`finding.heat.${what}`, {
        month: dates.monthNames()[monthIds.findIndex((name) => name === month)] ?? month!,
      }),
  ],
  [
    /^class\.lowest-age\.step-(\d+)$/,
    ([step], { say }) => say('finding.class.lowest-age', { step: Number(step) }),
  ],
  [/^class\.([a-z-]+)$/, ([what], { say }) => say(`finding.class.${what}`)],
  [/^wind\.(gust|pressure)$/, ([what], { say }) => say(`finding.wind.${what}`)],
  [
    /^lift\.([a-z-]+)\.(lift-[a-z-]+)$/,
    ([item, what], { say }) =>
      say('finding.lifted', { item: say(`lifted.${item}`), what: say(`finding.sash-what.${what}`) }),
  ],
  [/^at-hand\.(.+)$/, ([id], { say, nameOf }) => say('finding.at-hand', { name: nameOf(id!) })],
];
