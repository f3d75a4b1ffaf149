/**
 * How much longer a season is inside a frame: the nights that freeze inside, and the date on which freezing nights are over, inside
 * and out, by the same reckoning. Nights stray from the mean low of their day as a normal distribution does.
 */
import { daysInYear, dayOfYear } from '../../climate/calendar.ts';
import { normalShareBelow } from '../../climate/normal-distribution.ts';
import { dailyCurve, monthLengths } from '../../climate/temperature-curve.ts';
import { none, quantity, type DayNumber, type Finding, type FindingInput } from '../../findings/finding.ts';
import { heatInputs, heatSources } from './heat-sources.ts';
import { outsideForInsideC, type FrameMonths } from './months.ts';
import { nightsInSpell, usualSpreadC } from './outside.ts';

/** Nights of each month (of 365 days a year) colder than a temperature, in the open and in the frame. */
export function nightsBelow(
  heat: FrameMonths,
  thresholdC: number,
): readonly { readonly outside: number; readonly inside: number }[] {
  const { outside, inside } = nightChances(heat, thresholdC);
  let before = 0;
  return monthLengths.map((length) => {
    const days = Array.from({ length }, (_, index) => before + index);
    before += length;
    const sum = (chances: readonly number[]): number => days.reduce((total, day) => total + chances[day]!, 0);
    return { outside: sum(outside), inside: sum(inside) };
  });
}

export interface FrameGain {
  /** Days that the last night below the threshold comes earlier inside. */
  readonly spring: Finding;
  /** Days that the first one comes later inside. */
  readonly fall: Finding;
}

export interface GainOptions {
  /** A night that ends or begins the season: 0 C when absent. */
  readonly thresholdC?: number;
  /** Share of years with a later last (earlier first) such night; half when absent. */
  readonly chance?: number;
}

/**
 * The days gained at either end of the season, as findings `frame-heat.gain.spring` and `.fall` (with `-covered` for a frame
 * covered at night). Both dates are those of this reckoning, so that its errors largely cancel; the region's own freeze
 * dates are the ones to move by them. None with the reason `freeze-never` (the open does not get that cold this often),
 * `frame-never-freezes` (the frame does not) or `freeze-all-year`.
 */
export function frameGain(heat: FrameMonths, options: GainOptions = {}): FrameGain {
  const thresholdC = options.thresholdC ?? 0;
  const chances = nightChances(heat, thresholdC);
  const edges = {
    outside: seasonEdges(chances.outside, heat, options.chance ?? 0.5),
    inside: seasonEdges(chances.inside, heat, options.chance ?? 0.5),
  };
  const finding = (season: 'spring' | 'fall'): Finding => ({
    id: `frame-heat.gain.${season}${heat.nightCover === 'on' ? '-covered' : ''}`,
    value: gained(edges, season),
    method: `frame.heat-gain-${season}`,
    inputs: [
      { name: 'freeze-threshold', value: quantity('temperature', thresholdC) },
      ...edgeInputs(edges, season),
      ...heatInputs(heat),
    ],
    sources: heatSources(heat, 'season'),
  });
  return { spring: finding('spring'), fall: finding('fall') };
}

/** The chance of every night of the year to be colder than a temperature, index 0 for January 1. */
function nightChances(
  heat: FrameMonths,
  thresholdC: number,
): { readonly outside: readonly number[]; readonly inside: readonly number[] } {
  const { air, spreadC } = heat.climate;
  const allowed = dailyCurve(heat.months.map((month) => outsideForInsideC(month, thresholdC)));
  const spread = spreadC ? dailyCurve(spreadC) : air.minimumC.map(usualSpreadC);
  const below = (limitC: number, day: number): number =>
    normalShareBelow((limitC - air.minimumC[day]!) / Math.max(0.1, spread[day]!));
  return {
    outside: air.minimumC.map((_, day) => below(thresholdC, day)),
    inside: air.minimumC.map((_, day) => below(allowed[day]!, day)),
  };
}

type Edges =
  | { readonly kind: 'dates'; readonly last: DayNumber; readonly first: DayNumber }
  | { readonly kind: 'never' }
  | { readonly kind: 'all-year' };

/**
 * The dates after the coldest and before the next coldest day of the year beyond which so few cold spells are left that the
 * given share of years has one: spells come by chance (Poisson), so that a share p has none more when -ln(1 - p) are left.
 */
function seasonEdges(chances: readonly number[], { climate }: FrameMonths, share: number): Edges {
  const left = -Math.log(1 - share) * nightsInSpell;
  const chanceOn = (day: DayNumber): number => chances[dayOfYear(day) - 1]!;
  const { coldest, warmest } = turningDays(climate.air);
  const sumOver = (from: DayNumber, to: DayNumber): number => {
    let sum = 0;
    for (let day = from; day <= to; day += 1) sum += chanceOn(day);
    return sum;
  };
  if (sumOver(coldest, warmest) <= left || sumOver(warmest, coldest + daysInYear) <= left)
    return { kind: 'never' };
  if (sumOver(warmest - 15, warmest + 15) > left) return { kind: 'all-year' };
  let last = warmest;
  for (let sum = 0; last > coldest; last -= 1) if ((sum += chanceOn(last)) > left) break;
  let first = warmest;
  for (let sum = 0; first < coldest + daysInYear; first += 1) if ((sum += chanceOn(first)) > left) break;
  return { kind: 'dates', last, first };
}

/** The coldest day by its mean low, and the warmest after it. */
function turningDays(air: FrameMonths['climate']['air']): { coldest: DayNumber; warmest: DayNumber } {
  const indexOf = (best: number): number => air.minimumC.indexOf(best) + 1;
  const coldest = indexOf(Math.min(...air.minimumC));
  const warmest = indexOf(Math.max(...air.minimumC));
  return { coldest, warmest: warmest < coldest ? warmest + daysInYear : warmest };
}

interface BothEdges {
  readonly outside: Edges;
  readonly inside: Edges;
}

function gained({ outside, inside }: BothEdges, season: 'spring' | 'fall'): Finding['value'] {
  if (outside.kind === 'never') return none('freeze-never');
  if (inside.kind === 'all-year') return none('freeze-all-year');
  if (inside.kind === 'never') return none('frame-never-freezes');
  // Where only the frame has a season between freezes, nothing outside can be counted from.
  if (outside.kind === 'all-year') return none('freeze-all-year');
  return quantity(
    'duration',
    season === 'spring' ? outside.last - inside.last : inside.first - outside.first,
  );
}

function edgeInputs({ outside, inside }: BothEdges, season: 'spring' | 'fall'): readonly FindingInput[] {
  return [
    ...dateInput('frame-outside-date', outside, season),
    ...dateInput('frame-inside-date', inside, season),
  ];
}

function dateInput(name: string, edges: Edges, season: 'spring' | 'fall'): readonly FindingInput[] {
  return edges.kind === 'dates'
    ? [{ name, value: { kind: 'date', day: season === 'spring' ? edges.last : edges.first } }]
    : [];
}
