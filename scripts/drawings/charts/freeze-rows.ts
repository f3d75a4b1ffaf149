/** The freeze dates of a region as rows of chances on a day scale: which days are shaded, and where the edges stand. */
import type { DayNumber } from '../../findings/finding.ts';
import { dayInWindow, daysInYear, type DayScale } from './day-scale.ts';

export interface FreezeDate {
  /** Percent: of a later last freeze, or of an earlier first freeze. */
  readonly chance: number;
  readonly day: DayNumber;
  /** The date with its chance, ready to print: "Apr 14 · 50 %". */
  readonly label: string;
}

/** Both lists in any order, one date a chance; a chance may be known on one side only. */
export interface FreezeDates {
  /** Last freeze before the growing season. */
  readonly last: readonly FreezeDate[];
  /** First freeze after the growing season. */
  readonly first: readonly FreezeDate[];
}

/** From and to, in millimetres along the scale. */
export type Stretch = readonly [number, number];

/** A date that the scale shows. */
export interface Edge {
  readonly x: number;
  readonly label: string;
  readonly shadedSide: 'left' | 'right';
}

export interface ChanceRow {
  readonly chance: number;
  readonly shaded: readonly Stretch[];
  readonly edges: readonly Edge[];
}

/** One row a chance, the smallest first, since its risk lasts longest. */
export function chanceRows({ last, first }: FreezeDates, scale: DayScale): readonly ChanceRow[] {
  const chances = [...new Set([...last, ...first].map(({ chance }) => chance))].sort((a, b) => a - b);
  return chances.map((chance) => {
    const lastDate = last.find((date) => date.chance === chance);
    const firstDate = first.find((date) => date.chance === chance);
    return {
      chance,
      shaded: shadedStretches(lastDate?.day, firstDate?.day, scale),
      edges: [...edgesOf(lastDate, 'left', scale), ...edgesOf(firstDate, 'right', scale)],
    };
  });
}

/** The stretches that one list covers and the other does not. */
export function coveredOnce(a: readonly Stretch[], b: readonly Stretch[]): readonly Stretch[] {
  const covers = (list: readonly Stretch[], at: number): boolean =>
    list.some(([from, to]) => from < at && at < to);
  const ends = [...new Set([...a, ...b].flat())].sort((one, other) => one - other);
  return ends
    .slice(1)
    .map((to, index): Stretch => [ends[index]!, to])
    .filter(([from, to]) => covers(a, (from + to) / 2) !== covers(b, (from + to) / 2));
}

function edgesOf(
  date: FreezeDate | undefined,
  shadedSide: Edge['shadedSide'],
  scale: DayScale,
): readonly Edge[] {
  if (!date) return [];
  const day = dayInWindow(Math.round(date.day), scale);
  return day === undefined ? [] : [{ x: scale.x(day), label: date.label, shadedSide }];
}

/** From the first freeze to the last freeze that follows it; half a year where only one of the two is known. */
function shadedStretches(
  last: DayNumber | undefined,
  first: DayNumber | undefined,
  scale: DayScale,
): readonly Stretch[] {
  const start = Math.round(first ?? last! - halfYear);
  const end = nextAfter(start, Math.round(last ?? start + halfYear));
  const stretches: Stretch[] = [];
  const firstShift = Math.floor((scale.from - end) / daysInYear) * daysInYear;
  for (let shift = firstShift; start + shift <= scale.to; shift += daysInYear) {
    const from = Math.max(start + shift, scale.from);
    const to = Math.min(end + shift, scale.to + 1);
    if (from < to) stretches.push([scale.x(from), scale.x(to)]);
  }
  return stretches;
}

/** The same day of the year, in the year that begins the day after `start`. */
function nextAfter(start: DayNumber, day: DayNumber): DayNumber {
  return day + Math.ceil((start + 1 - day) / daysInYear) * daysInYear;
}

const halfYear = 182;
