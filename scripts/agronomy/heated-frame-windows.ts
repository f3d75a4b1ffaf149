/** Planting windows under one frame whose heat has been worked out: its own gain and its own soil set the dates. */
import type { SoilTemperatureYear } from '../climate/temperature-year.ts';
import {
  date,
  dateRange,
  inputOf,
  none,
  quantity,
  type DateFinding,
  type DateRangeFinding,
  type Finding,
  type FindingInput,
} from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import { coldFrameWindows, type FrameGain } from './frame-windows.ts';
import { springOffsetDays } from './hardiness.ts';
import { coldLimitBounds, lateFreezeBounds } from './window-cold.ts';
import type { WindowClimate } from './window-climate.ts';
import { bounded, latest, merged, type Planting } from './window-parts.ts';
import { soilWarmEnough, soilWorkable } from './window-temperatures.ts';
import type { PlantingWindows } from './windows.ts';

export interface HeatedFrame {
  /** Days gained, each a duration or none; where there is none the published gain stands. */
  readonly gain: { readonly spring: Finding; readonly fall: Finding };
  /** The soil inside. */
  readonly soil: SoilTemperatureYear;
  /** Freeze dates of the open. */
  readonly climate: WindowClimate;
  /** What is printed beside it, and stands where the heat gives no days. */
  readonly published: FrameGain;
}

/**
 * The windows that `coldFrameWindows` gives, by the same ids. In spring the crop's weeks are counted from the last freeze
 * moved by the frame's gain, and not before the soil inside can be worked and is warm enough and, for what stands above the
 * ground, nights colder than it stands are over inside; to the day before the garden's window. That this
 * comes to nothing is `none('no-gain-in-frame')`. In fall the garden's last day is moved by the gain.
 */
export function heatedFrameWindows(
  crop: Crop,
  windows: readonly PlantingWindows[],
  frame: HeatedFrame,
): readonly DateRangeFinding[] {
  return coldFrameWindows(crop, windows, frame.published).map((published) => {
    const window = windows.find(({ plant }) => published.inputs.some(({ finding }) => finding === plant.id));
    const planting = crop.plantings.find(({ method }) => method === window?.method);
    if (!window || !planting || window.season === 'year' || window.plant.value.kind === 'none')
      return published;
    const season = window.season === 'fall' ? 'fall' : 'spring';
    const days = daysOf(frame.gain[season]);
    if (days === undefined) return published;
    const more = { window, days, inputs: gainInputs(window.plant, frame, season) };
    return season === 'fall'
      ? { ...published, ...laterInFall(window.plant.value, frame, more) }
      : { ...published, ...soonerInSpring(crop, planting, frame, more) };
  });
}

type Worked = Pick<DateRangeFinding, 'value' | 'method' | 'inputs' | 'sources'>;

interface Gained {
  readonly window: PlantingWindows;
  readonly days: number;
  readonly inputs: readonly FindingInput[];
}

function laterInFall(
  garden: { readonly to: number },
  { gain }: HeatedFrame,
  { window, days, inputs }: Gained,
): Worked {
  return {
    value: days < 1 ? none('no-gain-in-frame') : dateRange(garden.to + 1, garden.to + days),
    method: 'window.frame-fall-heat',
    inputs,
    sources: merged(gain.fall.sources, window.plant.sources),
  };
}

function soonerInSpring(
  crop: Crop,
  planting: Planting,
  { gain, soil, climate }: HeatedFrame,
  { window, days, inputs }: Gained,
): Worked {
  const moved = (finding: DateFinding): DateFinding =>
    finding.value.kind === 'date' ? { ...finding, value: date(finding.value.day - days) } : finding;
  const { lastFreezeAt, lateFreeze } = climate;
  const inside: WindowClimate = {
    lastFreeze: moved(climate.lastFreeze),
    firstFreeze: climate.firstFreeze,
    soil,
    ...(lastFreezeAt ? { lastFreezeAt: (thresholdC) => moved(lastFreezeAt(thresholdC)) } : {}),
    ...(lateFreeze ? { lateFreeze: moved(lateFreeze) } : {}),
  };
  const garden = window.plant.value;
  const { value: freeze } = inside.lastFreeze;
  if (garden.kind === 'none' || freeze.kind === 'none')
    return { ...window.plant, value: none('no-gain-in-frame') };
  const offset = planting.spring?.opens.low ?? springOffsetDays[crop.hardiness.group].opens;
  const opens = latest([
    {
      day: freeze.day + offset,
      rule: 'offset',
      inputs: [
        { name: 'frame-last-freeze', value: freeze },
        { name: 'offset-from-last-freeze', value: quantity('duration', offset) },
      ],
      sources: climate.lastFreeze.sources,
    },
    ...bounded(soilWarmEnough(crop, planting, inside, freeze.day), 'soil-temperature', 0),
    ...bounded(soilWorkable(crop, inside, freeze.day), 'soil-workable', 0),
    ...coldLimitBounds(crop, planting, inside),
    ...lateFreezeBounds(crop, inside),
  ]);
  return {
    value: opens.day < garden.from ? dateRange(opens.day, garden.from - 1) : none('no-gain-in-frame'),
    method: 'window.frame-spring-heat',
    inputs: [...inputs, ...opens.inputs],
    sources: merged(gain.spring.sources, opens.sources, window.plant.sources),
  };
}

/** Whole days; undefined where the gain is none. */
function daysOf({ value }: Finding): number | undefined {
  return value.kind === 'quantity' ? Math.round(value.value) : undefined;
}

function gainInputs(
  garden: DateRangeFinding,
  { gain, published }: HeatedFrame,
  season: 'spring' | 'fall',
): readonly FindingInput[] {
  const days = season === 'spring' ? published.earlier : published.later;
  return [
    inputOf('garden-window', garden),
    inputOf('frame-gain', gain[season]),
    { name: 'frame-gain-published', value: quantity('duration', days.low, days.high) },
  ];
}
