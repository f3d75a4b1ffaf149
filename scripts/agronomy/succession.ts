/**
 * Sowing again and again for a steady harvest. Growth follows warmth, so equal gaps between sowings give bunched
 * harvests: in spring the later sowing catches up. Sowings are placed so that each has had the same sum of degree
 * days when its harvest is due.
 */
import {
  count,
  date,
  inputOf,
  none,
  quantity,
  type DateFinding,
  type DateRangeFinding,
  type DayNumber,
} from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import { merged } from './window-parts.ts';

export interface Succession {
  readonly crop: Crop;
  /** The planting window whose first day is the first sowing and whose last day no sowing passes. */
  readonly window: DateRangeFinding;
  /** Degree days (kelvin days above the crop's base) that one day adds; never negative. */
  readonly degreeDaysOn: (day: DayNumber) => number;
  /** Days wished between two harvests; 1 to 180, anything else throws a RangeError. */
  readonly everyDays: number;
  /** Days from this sowing to its first harvest where they differ from the record's days to maturity. */
  readonly days?: { readonly low: number; readonly high: number };
  /** Ids of the sources of the temperatures. */
  readonly temperatureSources?: readonly string[];
}

/**
 * The sowing dates, `carrot.succession.1` and on, each with its harvest day among the inputs. The first is sown when
 * the window opens and takes the middle of the published days; the degree days of those days are what every later
 * sowing needs. Two harvests that would ask for the same sowing day are one. A window that is none, or a year without
 * growth in it, gives one finding that says so.
 */
export function successionSowings(wanted: Succession): readonly DateFinding[] {
  const { crop, window, everyDays } = wanted;
  if (!(everyDays >= 1 && everyDays <= 180)) throw new RangeError(`no such interval: ${everyDays} days`);
  if (window.value.kind === 'none') return [sowing(wanted, 1, { value: none(window.value.reason) })];
  const { from, to } = window.value;
  const days = wanted.days ?? crop.maturity.days;
  const firstHarvest = from + Math.round((days.low + days.high) / 2);
  const needed = sumOf(wanted.degreeDaysOn, from, firstHarvest);
  if (!(needed > 0)) return [sowing(wanted, 1, { value: none('no-growth-in-window') })];
  const found: DateFinding[] = [];
  let before = -Infinity;
  for (let harvest = firstHarvest; harvest < firstHarvest + 365; harvest += everyDays) {
    const day =
      harvest === firstHarvest ? from : sownBefore(wanted.degreeDaysOn, { harvest, needed, notBefore: from });
    if (day > to) break;
    if (day <= before) continue;
    before = day;
    found.push(sowing(wanted, found.length + 1, { value: date(day), harvest, needed }));
  }
  return found;
}

/** The last day from which the degree days up to a harvest are still enough. */
function sownBefore(
  degreeDaysOn: (day: DayNumber) => number,
  { harvest, needed, notBefore }: { harvest: DayNumber; needed: number; notBefore: DayNumber },
): DayNumber {
  let sum = 0;
  for (let day = harvest - 1; day > notBefore; day -= 1) {
    sum += Math.max(0, degreeDaysOn(day));
    if (sum >= needed - 1e-9) return day;
  }
  return notBefore;
}

/** Degree days from a day up to, and not with, another. */
export function sumOf(degreeDaysOn: (day: DayNumber) => number, from: DayNumber, until: DayNumber): number {
  let sum = 0;
  for (let day = from; day < until; day += 1) sum += Math.max(0, degreeDaysOn(day));
  return sum;
}

function sowing(
  { crop, window, everyDays, temperatureSources }: Succession,
  number: number,
  found: { value: DateFinding['value']; harvest?: DayNumber; needed?: number },
): DateFinding {
  return {
    id: `${crop.id}.succession.${number}`,
    value: found.value,
    method: 'succession.degree-days',
    inputs: [
      inputOf('planting', window),
      { name: 'harvest-every', value: quantity('duration', everyDays) },
      ...(found.needed === undefined
        ? []
        : [{ name: 'degree-days-needed', value: count(Math.round(found.needed)) }]),
      ...(found.harvest === undefined ? [] : [{ name: 'harvest-day', value: date(found.harvest) }]),
    ],
    sources: merged(crop.degreeDays?.sources ?? [], crop.maturity.sources, temperatureSources ?? []),
  };
}
