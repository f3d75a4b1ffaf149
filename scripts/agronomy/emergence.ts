import { none, quantity, type Finding, type FindingInput } from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';

export interface EmergencePoint {
  readonly temperatureC: number;
  readonly days: number;
}

/**
 * Days from sowing to emergence at a soil temperature, from published points in order of temperature. Between
 * two points the rate (1/days) is taken as a straight line, since development is near linear in temperature
 * below the optimum. Outside the tested temperatures nothing is known: undefined, never extrapolated.
 */
export function daysToEmergence(points: readonly EmergencePoint[], temperatureC: number): number | undefined {
  const after = points.findIndex((point) => point.temperatureC >= temperatureC - 1e-9);
  const high = points[after];
  if (!high) return undefined;
  if (Math.abs(high.temperatureC - temperatureC) < 1e-9) return high.days;
  const low = points[after - 1];
  if (!low) return undefined;
  const share = (temperatureC - low.temperatureC) / (high.temperatureC - low.temperatureC);
  return 1 / (1 / low.days + share * (1 / high.days - 1 / low.days));
}

/** Below this soil temperature gardeners seldom sow, whatever the crop: 45 F. Common practice. */
const coldestSowingC = (45 - 32) / 1.8;

/**
 * Days to emergence as a range for people: from soil at the crop's optimum down to soil at its practical
 * sowing temperature (its minimum, but no colder than 45 F, where none is given).
 */
export function emergence(crop: Crop): Finding {
  const id = `${crop.id}.emergence`;
  const { emergence: record, soilTemperature: soil } = crop;
  if ('notSown' in record)
    return {
      id,
      value: none('not-sown'),
      method: 'emergence.published',
      inputs: [],
      sources: crop.depth.sources,
    };
  if ('days' in record) {
    return {
      id,
      value: quantity('duration', record.days.low, record.days.high),
      method: 'emergence.published',
      inputs: [],
      sources: record.sources,
    };
  }
  const points = record.points
    .map((point) => ({ temperatureC: point.at.low, days: point.days }))
    .sort((a, b) => a.temperatureC - b.temperatureC);
  const tested = { low: points[0]!.temperatureC, high: points.at(-1)!.temperatureC };
  const warm = clamp(soil?.optimum.high ?? tested.high, tested);
  const cool = clamp(soil?.practical?.low ?? Math.max(soil?.minimum.low ?? tested.low, coldestSowingC), {
    low: tested.low,
    high: warm,
  });
  const [fast, slow] = [daysToEmergence(points, warm)!, daysToEmergence(points, cool)!];
  const inputs: FindingInput[] = [
    { name: 'soil-from', value: quantity('temperature', cool) },
    { name: 'soil-to', value: quantity('temperature', warm) },
  ];
  return {
    id,
    value: quantity('duration', Math.round(Math.min(fast, slow)), Math.round(Math.max(fast, slow))),
    method: 'emergence.by-temperature',
    inputs,
    sources: [...new Set([...record.sources, ...(soil?.sources ?? [])])],
  };
}

function clamp(value: number, range: { low: number; high: number }): number {
  return Math.min(Math.max(value, range.low), range.high);
}
