/**
 * Water in a week, how long drip runs for it, and how much that is.
 *
 * Source: Determining How Long to Run Drip Irrigation Systems for Vegetables, Penn State Extension, 2013: vegetables
 * need 1 to 1.5 in a week, rain is subtracted unless plastic mulch keeps it off, and the hours follow from the flow
 * and the width that is watered. One millimetre on one square metre is one litre, exactly.
 */
import {
  choice,
  count,
  inputOf,
  none,
  quantity,
  type Finding,
  type FindingValue,
} from '../findings/finding.ts';
import { toHeld } from '../quantities/units.ts';
import { merged } from './window-parts.ts';

export const wateringSource = 'penn-state-drip-2013';

/** What vegetables need in a week, rain and watering together. */
export const weeklyNeedMm = { low: toHeld(1, 'in'), high: toHeld(1.5, 'in') } as const;

export interface WeekOfWater {
  /** Rain of the week; 0 or more. */
  readonly rainMm: number;
  /** `plastic` keeps rain off the soil, so that none counts. */
  readonly mulch: 'none' | 'plastic';
  /** Ids of the sources of the rain. */
  readonly rainSources?: readonly string[];
}

/** What is left to water in a week, as `water.weekly`; never below nothing, `none('rain-is-enough')` when it is that. */
export function weeklyWater({ rainMm, mulch, rainSources }: WeekOfWater): Finding {
  if (!(rainMm >= 0)) throw new RangeError(`no such rain: ${rainMm} mm`);
  const counted = mulch === 'plastic' ? 0 : rainMm;
  const [low, high] = [Math.max(0, weeklyNeedMm.low - counted), Math.max(0, weeklyNeedMm.high - counted)];
  return {
    id: 'water.weekly',
    value: high === 0 ? none('rain-is-enough') : quantity('length', low, high),
    method: 'water.need-less-rain',
    inputs: [
      { name: 'weekly-need', value: quantity('length', weeklyNeedMm.low, weeklyNeedMm.high) },
      { name: 'rain', value: quantity('length', rainMm) },
      { name: 'mulch', value: choice(`mulch-${mulch}`) },
    ],
    sources: merged([wateringSource], rainSources ?? []),
  };
}

export interface DripLine {
  readonly emitterSpacingMm: number;
  /** Litres an hour from one emitter. */
  readonly emitterLPerHour: number;
}

/** Litres an hour from each metre of a drip line. Values that are not above 0 throw a RangeError. */
export function lineFlowLPerHour({ emitterSpacingMm, emitterLPerHour }: DripLine): number {
  if (!(emitterSpacingMm > 0 && emitterLPerHour > 0))
    throw new RangeError('a drip line needs emitters that flow');
  return emitterLPerHour / (emitterSpacingMm / 1000);
}

/**
 * Hours to apply a depth of water to a band as wide as one or more lines water: depth times width is the litres each
 * metre of bed needs, over what its lines give in an hour.
 */
export function dripHours(wanted: {
  readonly depthMm: number;
  readonly bandWidthMm: number;
  readonly flowLPerHourPerM: number;
}): number {
  if (!(wanted.flowLPerHourPerM > 0)) throw new RangeError(`no such flow: ${wanted.flowLPerHourPerM}`);
  return (wanted.depthMm * (wanted.bandWidthMm / 1000)) / wanted.flowLPerHourPerM;
}

export interface DripBed {
  /** `water.weekly`, or another depth of water. */
  readonly water: Finding;
  readonly line: DripLine;
  readonly lines: number;
  readonly bedWidthMm: number;
}

/** How long drip runs in a week, in hours, as `water.drip-time`. */
export function dripTime({ water, line, lines, bedWidthMm }: DripBed): Finding {
  const flowLPerHourPerM = lines * lineFlowLPerHour(line);
  const hours = (depthMm: number): number =>
    dripHours({ depthMm, bandWidthMm: bedWidthMm, flowLPerHourPerM });
  return {
    id: 'water.drip-time',
    value: overDepth(water.value, (low, high) => quantity('day-length', hours(low), hours(high))),
    method: 'water.drip-hours',
    inputs: [
      inputOf('water', water),
      { name: 'emitter-spacing', value: quantity('length', line.emitterSpacingMm) },
      { name: 'emitter-hour', value: quantity('volume', line.emitterLPerHour) },
      { name: 'drip-lines', value: count(lines) },
      { name: 'bed-width', value: quantity('length', bedWidthMm) },
    ],
    sources: water.sources,
  };
}

/** How much a depth of water is on an area, as `water.volume`. */
export function waterVolume({
  water,
  areaM2,
}: {
  readonly water: Finding;
  readonly areaM2: number;
}): Finding {
  return {
    id: 'water.volume',
    value: overDepth(water.value, (low, high) => quantity('volume', low * areaM2, high * areaM2)),
    method: 'water.volume',
    inputs: [inputOf('water', water), { name: 'area', value: quantity('area', areaM2) }],
    sources: water.sources,
  };
}

/** What a watering can holds: 2 US gallons, a common size. */
export const canL = toHeld(2, 'gal');

/** Whole watering cans for a volume, as `water.cans`. */
export function wateringCans(volume: Finding): Finding {
  const cans = (litres: number): number => Math.ceil(litres / canL - 1e-9);
  const { value } = volume;
  if (value.kind !== 'none' && !('dimension' in value && value.dimension === 'volume'))
    throw new TypeError(`cans are counted from a volume, not from ${value.kind}`);
  return {
    id: 'water.cans',
    value:
      value.kind === 'range'
        ? { kind: 'count-range', low: cans(value.low), high: cans(value.high) }
        : value.kind === 'quantity'
          ? count(cans(value.value))
          : value,
    method: 'water.cans',
    inputs: [inputOf('water-volume', volume), { name: 'can', value: quantity('volume', canL) }],
    sources: merged(volume.sources, ['common-practice-gardening']),
  };
}

function overDepth(value: FindingValue, make: (low: number, high: number) => FindingValue): FindingValue {
  if (value.kind === 'none') return value;
  if (value.kind === 'quantity' && value.dimension === 'length') return make(value.value, value.value);
  if (value.kind === 'range' && value.dimension === 'length') return make(value.low, value.high);
  throw new TypeError(`water is told as a depth, not as ${value.kind}`);
}
