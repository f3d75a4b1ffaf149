/** The planting window for a second harvest in fall, counted back from the freeze that ends the crop. */
import {
  dateRange,
  inputOf,
  none,
  quantity,
  type DateFinding,
  type DateRangeFinding,
  type FindingInput,
} from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import {
  daysToPick,
  fallLimit,
  fallWindowDays,
  fewestWindowDays,
  shortDayAllowanceDays,
} from './hardiness.ts';
import type { WindowClimate } from './window-climate.ts';
import {
  bounded,
  daysAfterPlanting,
  edgeInputs,
  latest,
  merged,
  midWinter,
  noEdges,
  setByTemperature,
  windowId,
  type Bound,
  type Planting,
  type WindowEdges,
} from './window-parts.ts';
import { planningInputs, type PlantingEdges } from './window-spring.ts';
import { heatEnds, soilCoolEnough } from './window-temperatures.ts';

/**
 * Counting back from the freeze that ends the crop: days to maturity (the longest published, or where it stays hot too
 * long for these the shortest, which early kinds keep), the short-day
 * allowance, and for tender crops the days to pick. Never before the spring window has closed, nor before the first day
 * that spring's own rules would allow, whether or not spring has a window; for a cool-season
 * crop not while its harvest would begin in the heat (by the shortest published days), nor in soil too warm for it.
 */
export function fallPlanting(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  spring: SpringBefore,
): PlantingEdges {
  const ends = climate.firstFreeze(fallLimit[crop.hardiness.group].thresholdC);
  const days = daysAfterPlanting(crop, planting);
  const pick = daysToPick(crop);
  const rangeBy = (maturity: number): FallRange =>
    fallRange(crop, planting, climate, {
      ends,
      needed: maturity + shortDayAllowanceDays + pick,
      spring,
    });
  const usual = rangeBy(days.high);
  const quick = isTooHot(usual) ? rangeBy(days.low) : usual;
  const isQuick = quick !== usual && quick.value.kind !== 'none';
  const range = isQuick ? quick : usual;
  const maturity = isQuick ? days.low : days.high;
  const inputs: FindingInput[] = [
    inputOf('ending-freeze', ends),
    ...planningInputs(climate),
    { name: 'days-to-maturity', value: quantity('duration', maturity) },
    { name: 'short-day-allowance', value: quantity('duration', shortDayAllowanceDays) },
    ...(pick > 0 ? [{ name: 'ready-before-freeze', value: quantity('duration', pick) }] : []),
  ];
  return {
    plant: {
      id: windowId(crop, planting.method, 'fall'),
      value: range.value,
      method: range.byTemperature
        ? 'window.fall-temperature'
        : ends.value.kind === 'none'
          ? 'window.fall-year-end'
          : 'window.fall-count-back',
      inputs: [...inputs, ...range.inputs],
      sources: merged(crop.maturity.sources, ['common-practice-gardening'], ends.sources, range.sources),
    },
    edges: range.edges,
  };
}

/** The spring window of the same planting as it is told, and the first day that its opening rules allow. */
export interface SpringBefore {
  readonly plant: DateRangeFinding;
  readonly notBefore?: Bound | undefined;
}

/** Reasons for which spring has no window and a second planting can have none either. */
const noSeasonAtAll = ['season-too-short', 'soil-warm-too-late', 'soil-too-cold'];

function isTooHot({ value }: FallRange): boolean {
  return value.kind === 'none' && value.reason === 'hot-until-too-late';
}

interface FallRange {
  readonly value: DateRangeFinding['value'];
  readonly edges: WindowEdges;
  readonly byTemperature: boolean;
  readonly inputs: readonly FindingInput[];
  readonly sources: readonly string[];
}

function fallRange(
  crop: Crop,
  planting: Planting,
  climate: WindowClimate,
  { ends, needed, spring }: { ends: DateFinding; needed: number; spring: SpringBefore },
): FallRange {
  const refused = (reason: string): FallRange => ({
    value: none(reason),
    edges: noEdges,
    byTemperature: false,
    inputs: [],
    sources: [],
  });
  const { lastFreeze } = climate;
  if (lastFreeze.value.kind === 'none')
    return refused(lastFreeze.value.reason === 'freeze-all-year' ? 'freezes-all-year' : 'no-last-freeze');
  const before = spring.plant.value;
  if (before.kind === 'none' && noSeasonAtAll.includes(before.reason))
    return refused(before.reason === 'soil-too-cold' ? before.reason : 'season-too-short-for-fall');
  const cool = heatEnds(crop, climate, lastFreeze.value.day);
  const soil = soilCoolEnough(crop, planting, climate, lastFreeze.value.day);
  const never = [cool, soil].find(({ kind }) => kind === 'never');
  if (never?.kind === 'never')
    return {
      ...refused(never === cool ? 'too-hot-all-year' : 'soil-too-warm'),
      byTemperature: true,
      inputs: never.inputs,
      sources: never.sources,
    };
  const end = ends.value.kind === 'none' ? midWinter(lastFreeze.value.day) : ends.value.day;
  const closes: Bound = {
    day: end - needed,
    rule: ends.value.kind === 'none' ? 'year-end' : 'ending-freeze',
    inputs: [],
    sources: [],
  };
  const opens = latest([
    { day: closes.day - fallWindowDays, rule: 'window-length', inputs: [], sources: [] },
    ...(before.kind === 'date-range'
      ? [{ day: before.to + 1, rule: 'after-spring' as const, inputs: [], sources: [] }]
      : spring.notBefore
        ? [spring.notBefore]
        : []),
    ...bounded(cool, 'heat', -(daysAfterPlanting(crop, planting).low + shortDayAllowanceDays)),
    ...bounded(soil, 'soil-heat', 0),
  ]);
  const byTemperature = setByTemperature(opens);
  const tooShort = ['heat', 'soil-heat'].includes(opens.rule)
    ? 'hot-until-too-late'
    : 'season-too-short-for-fall';
  return {
    value: closes.day - opens.day < fewestWindowDays ? none(tooShort) : dateRange(opens.day, closes.day),
    edges: { opens: opens.rule, closes: closes.rule },
    byTemperature,
    inputs: [...opens.inputs, ...edgeInputs(opens, closes)],
    sources: opens.sources,
  };
}
