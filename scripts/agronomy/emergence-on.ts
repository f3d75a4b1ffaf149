/** When seed sown on a date comes up, and how much of it comes up well, by the soil's own temperatures. */
import type { SoilTemperatureYear } from '../climate/temperature-year.ts';
import {
  count,
  date,
  dateRange,
  none,
  quantity,
  type DateRangeFinding,
  type DayNumber,
  type Finding,
  type FindingInput,
} from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import { daysToEmergence, type EmergencePoint } from './emergence.ts';
import { merged } from './window-parts.ts';

export interface Sowing {
  readonly crop: Crop;
  readonly sowDay: DayNumber;
  readonly soil: SoilTemperatureYear;
  readonly depthMm: number;
}

/**
 * What emergence may differ from the table either way: 15 %, or one day where that is more. Common practice for a
 * table of whole days at steps of 9 F.
 */
export const emergenceScatter = { share: 0.15, leastDays: 1 } as const;

/**
 * The dates between which seedlings come up, as `<crop>.emergence-on`. Each day adds the part of emergence that its
 * soil temperature allows (one over the table's days), until the parts make a whole. `none('soil-too-cold')` or
 * `none('soil-too-warm')` as soon as a day's soil lies outside the tested temperatures; `none('not-sown')` for sets
 * and the like. A crop without a table has its published days counted from the sowing.
 */
export function emergenceOn(sowing: Sowing): DateRangeFinding {
  const { crop, sowDay } = sowing;
  const { emergence: record } = crop;
  const id = `${crop.id}.emergence-on`;
  const inputs = inputsOf(sowing);
  if ('notSown' in record)
    return {
      id,
      value: none('not-sown'),
      method: 'emergence.published',
      inputs,
      sources: crop.depth.sources,
    };
  if ('days' in record)
    return {
      id,
      value: dateRange(sowDay + record.days.low, sowDay + record.days.high),
      method: 'emergence.published',
      inputs,
      sources: record.sources,
    };
  const taken = daysFromSowing(emergencePoints(crop), (day) => soilOn(sowing, day), sowDay);
  return {
    id,
    value: typeof taken === 'string' ? none(taken) : around(sowDay, taken),
    method: 'emergence.day-by-day',
    inputs,
    sources: merged(record.sources, sowing.soil.sources),
  };
}

/** The published points of a crop by temperature, coldest first; empty where it has no table. */
export function emergencePoints(crop: Crop): readonly EmergencePoint[] {
  const { emergence: record } = crop;
  if (!('points' in record)) return [];
  return record.points
    .map((point) => ({ temperatureC: point.at.low, days: point.days }))
    .sort((a, b) => a.temperatureC - b.temperatureC);
}

/**
 * Days from sowing until the daily parts of emergence make a whole, with the last day's share; or why it cannot be
 * told. Seed that has not come up after 400 days has not come up: `soil-too-cold`.
 */
export function daysFromSowing(
  points: readonly EmergencePoint[],
  soilC: (day: DayNumber) => number,
  sowDay: DayNumber,
): number | 'soil-too-cold' | 'soil-too-warm' {
  let grown = 0;
  for (let passed = 0; passed < 400; passed += 1) {
    const temperatureC = soilC(sowDay + passed);
    const days = daysToEmergence(points, temperatureC);
    if (days === undefined)
      return temperatureC < (points[0]?.temperatureC ?? Infinity) ? 'soil-too-cold' : 'soil-too-warm';
    if (grown + 1 / days >= 1 - 1e-9) return passed + (1 - grown) * days;
    grown += 1 / days;
  }
  return 'soil-too-cold';
}

/**
 * Percent of good seed that grows into a normal seedling in the soil of the sowing day, as
 * `<crop>.normal-seedlings`; straight lines between the published temperatures, never beyond them.
 */
export function normalSeedlingsOn(sowing: Sowing): Finding {
  const { crop, sowDay, soil } = sowing;
  const record = crop.normalSeedlings;
  const id = `${crop.id}.normal-seedlings`;
  const inputs = inputsOf(sowing);
  const method = 'seedlings.by-temperature';
  if (!record) return { id, value: none('no-seedling-table'), method, inputs, sources: crop.depth.sources };
  const points = record.points.map(({ at, percent }) => ({ temperatureC: at.low, percent }));
  const percent = percentNormalSeedlings(points, soilOn(sowing, sowDay));
  return {
    id,
    value: typeof percent === 'string' ? none(percent) : count(Math.round(percent)),
    method,
    inputs,
    sources: merged(record.sources, soil.sources),
  };
}

export interface SeedlingPoint {
  readonly temperatureC: number;
  readonly percent: number;
}

/** Percent normal seedlings at a soil temperature, or on which side of the tested temperatures it lies. */
export function percentNormalSeedlings(
  points: readonly SeedlingPoint[],
  temperatureC: number,
): number | 'soil-too-cold' | 'soil-too-warm' {
  const sorted = [...points].sort((a, b) => a.temperatureC - b.temperatureC);
  const after = sorted.findIndex((point) => point.temperatureC >= temperatureC - 1e-9);
  const high = sorted[after];
  if (!high) return 'soil-too-warm';
  if (Math.abs(high.temperatureC - temperatureC) < 1e-9) return high.percent;
  const low = sorted[after - 1];
  if (!low) return 'soil-too-cold';
  const share = (temperatureC - low.temperatureC) / (high.temperatureC - low.temperatureC);
  return low.percent + share * (high.percent - low.percent);
}

function around(sowDay: DayNumber, days: number): DateRangeFinding['value'] {
  const scatter = Math.max(emergenceScatter.leastDays, days * emergenceScatter.share);
  return dateRange(sowDay + Math.round(Math.max(1, days - scatter)), sowDay + Math.round(days + scatter));
}

function soilOn({ soil, depthMm }: Sowing, day: DayNumber): number {
  return soil.at(day, depthMm);
}

function inputsOf(sowing: Sowing): FindingInput[] {
  return [
    { name: 'sowing', value: date(sowing.sowDay) },
    { name: 'depth', value: quantity('length', sowing.depthMm) },
    { name: 'soil-temperature', value: quantity('temperature', soilOn(sowing, sowing.sowDay)) },
    ...(sowing.soil.inputs ?? []),
  ];
}
