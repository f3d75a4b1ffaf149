/** What a cold frame adds to the planting windows of the open garden: the days before and after them. */
import {
  dateRange,
  inputOf,
  none,
  quantity,
  type DateRangeFinding,
  type FindingInput,
} from '../findings/finding.ts';
import type { Crop, PlantingMethod } from '../records/schemas/crop.ts';
import { merged } from './window-parts.ts';
import type { PlantingWindows } from './windows.ts';

/** Days gained: `low` can be counted on, `high` is what a mild year or a well kept frame gives. */
export interface GainDays {
  readonly low: number;
  readonly high: number;
}

export interface FrameGain {
  /** In spring: planting opens sooner by these days. */
  readonly earlier: GainDays;
  /** In fall: planting closes later by these days. */
  readonly later: GainDays;
  readonly sources: readonly string[];
}

/**
 * Four to six weeks at each end of the season. Sources: hardy vegetables come up a month earlier than in the open
 * (Houseplants Guru, reprint of an older handbook); up to 45 days sooner in spring and later in fall (R. Gast, Cornell Ag
 * Connection, 2011); one to three months in all (B. Larson, University of Illinois Extension).
 */
export const publishedFrameGain: FrameGain = {
  earlier: { low: 28, high: 42 },
  later: { low: 28, high: 42 },
  sources: ['houseplants-guru-frame', 'cornell-frame-2011', 'illinois-season-extenders'],
};

/**
 * For each sowing in place and each setting out, the days that a frame adds, by the smaller gain: in spring from so many
 * days before the garden's window to the day before it, in fall from the day after it. Ids are `carrot.frame-sow.spring` and
 * `cabbage.frame-set-out.fall`. A window that the garden does not have is `none` with the garden's reason. Sets,
 * slips and pieces, and what overwinters, have none. Where no freeze sets the garden's dates, both are
 * `none('no-frame-needed')`. A gain of no days is an empty window, and left out.
 */
export function coldFrameWindows(
  crop: Crop,
  windows: readonly PlantingWindows[],
  gain: FrameGain,
): readonly DateRangeFinding[] {
  return windows.flatMap(({ method, season, plant }) => {
    const word = frameWord[method];
    if (word === undefined || season === 'overwinter') return [];
    if (season === 'year') {
      const fall = crop.plantings.find((planting) => planting.method === method)?.fall === true;
      return (fall ? (['spring', 'fall'] as const) : (['spring'] as const)).map((name) => ({
        ...frameWindow(`${crop.id}.${word}.${name}`, { season: name, plant, days: gain.earlier, gain }),
        value: none('no-frame-needed'),
      }));
    }
    const days = season === 'spring' ? gain.earlier : gain.later;
    return days.low < 1 ? [] : [frameWindow(`${crop.id}.${word}.${season}`, { season, plant, days, gain })];
  });
}

const frameWord: Readonly<Partial<Record<PlantingMethod, string>>> = {
  'direct-sow': 'frame-sow',
  transplant: 'frame-set-out',
};

function frameWindow(
  id: string,
  {
    season,
    plant,
    days,
    gain,
  }: { season: 'spring' | 'fall'; plant: DateRangeFinding; days: GainDays; gain: FrameGain },
): DateRangeFinding {
  const inputs: FindingInput[] = [
    inputOf('garden-window', plant),
    { name: 'frame-gain', value: quantity('duration', days.low, days.high) },
  ];
  return {
    id,
    value: framed(),
    method: `window.frame-${season}`,
    inputs,
    sources: merged(gain.sources, plant.sources),
  };

  function framed(): DateRangeFinding['value'] {
    if (plant.value.kind === 'none') return plant.value;
    const { from, to } = plant.value;
    const low = Math.round(days.low);
    return season === 'spring' ? dateRange(from - low, from - 1) : dateRange(to + 1, to + low);
  }
}
