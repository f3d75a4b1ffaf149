/** The rule that sets each edge of a planting window, in words short enough for a table. */
import type { PlantingWindows } from '../agronomy/windows.ts';
import { fallWindowDays, springWindowDays } from '../agronomy/hardiness.ts';
import type { DayNumber, FindingValue } from '../findings/finding.ts';
import type { Wording } from './printer.ts';

export type WindowEdge = 'opens' | 'closes';

/** What sets an edge, as in “Opens: soil at seed depth warm enough (45 °F)”, without the word before the colon. */
export function edgeRuleWords(
  windows: PlantingWindows,
  edge: WindowEdge,
  { say, measures, dates }: Wording,
): string {
  const rule = windows.edges[edge];
  const { inputs } = windows.plant;
  const valueOf = (name: string): FindingValue | undefined =>
    inputs.find((input) => input.name === name)?.value;
  const temperature = (name: string): string => {
    const value = valueOf(name);
    return value?.kind === 'quantity' ? measures.short('temperature', value.value) : '';
  };
  const day = (name: string): string => {
    const value = valueOf(name);
    return value?.kind === 'date' ? dates.short(value.day) : '';
  };
  switch (rule) {
    case 'offset':
      return fromFreeze('last', offsetDays(valueOf('offset-from-last-freeze'), edge));
    case 'first-freeze':
      return fromFreeze('first', daysFromFirst(valueOf('before-first-freeze'), edge));
    case 'soil-temperature':
      return say(closing('soil-temperature'), { limit: temperature('soil-sowing-temperature') });
    case 'planting-soil':
      return say(closing('planting-soil'), { limit: temperature('planting-soil') });
    case 'soil-workable':
      return say(closing('soil-workable'), { limit: temperature('soil-workable-from') });
    case 'cold-limit':
      return say('edge.cold-limit', { limit: temperature('cold-limit') });
    case 'late-freeze':
      return say(closing('late-freeze'), { date: day('late-freeze') });
    case 'soil-heat':
      return say(closing('soil-heat'), { limit: temperature('soil-maximum') });
    case 'heat':
      return say(`edge.heat-${edge}`, { limit: temperature('heat-limit') });
    case 'warmth':
      return say(`edge.warmth-${edge}`, { limit: temperature('growing-minimum') });
    case 'coolest':
      return say(`edge.coolest-${edge}`);
    case 'ending-freeze':
      return say('edge.ending-freeze', { date: day('ending-freeze') });
    case 'window-length':
      return say(`edge.window-length-${edge}`, {
        time: measures.short('duration', edge === 'opens' ? fallWindowDays : springWindowDays),
      });
    case 'after-spring':
    case 'year-end':
    case 'whole-year':
    case 'no-window':
      return say(`edge.${rule}`);
  }

  /** Soil and late freezes open a window, except where one time serves the whole year: there they close it too. */
  function closing(name: string): string {
    return edge === 'closes' ? `edge.${name}-closes` : `edge.${name}`;
  }

  function fromFreeze(which: 'last' | 'first', days: DayNumber | undefined): string {
    if (days === undefined) return say(`choice.edge-${rule}`);
    const time = measures.short('duration', Math.abs(days));
    return say(`edge.${which}-freeze-${days === 0 ? 'on' : days < 0 ? 'before' : 'after'}`, { time });
  }
}

function offsetDays(value: FindingValue | undefined, edge: WindowEdge): number | undefined {
  if (value?.kind === 'quantity') return value.value;
  if (value?.kind !== 'range') return undefined;
  return edge === 'opens' ? value.low : value.high;
}

/** The record counts weeks before the first freeze; here days after it are positive. */
function daysFromFirst(value: FindingValue | undefined, edge: WindowEdge): number | undefined {
  if (value?.kind === 'quantity') return -value.value;
  if (value?.kind !== 'range') return undefined;
  return edge === 'opens' ? -value.high : -value.low;
}
