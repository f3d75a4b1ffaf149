/**
 * Growing degree days: the warmth of a day above the temperature at which a crop begins to grow. Computed and held in
 * degrees Celsius times days; a Fahrenheit degree day is 5/9 of one.
 *
 * A curve of average temperatures gives somewhat fewer degree days than the mean over real years, and most where the
 * average is near the base: real days lie above and below the average, and only those above count.
 */
import {
  count,
  date,
  none,
  quantity,
  type DateFinding,
  type DayNumber,
  type Finding,
  type FindingInput,
} from '../findings/finding.ts';
import { fromHeld } from '../quantities/units.ts';
import { daysInYear } from './calendar.ts';
import { maximumOn, minimumOn, type TemperatureYear } from './temperature-year.ts';

/**
 * How the degree days of a day follow from its minimum and maximum. All three cut off horizontally: warmth above the upper
 * temperature counts as the upper temperature, not as harm.
 *
 * - `average`: the mean of both, itself brought between the base and the upper temperature, less the base (method 1 of
 *   G. S. McMaster and W. W. Wilhelm, Growing Degree-Days: One Equation, Two Interpretations, Agricultural
 *   and Forest Meteorology 87, 1997). NOAA's normals of one base are made so.
 * - `clamped-average`: minimum and maximum are each brought between the base and the upper temperature before they
 *   are averaged (method 2 there, the corn growing degree day of 50 and 86 F). Never less than `average`.
 * - `single-sine`: the area between a sine through minimum and maximum and the base, less the area above the upper
 *   temperature (G. L. Baskerville and P. Emin, Ecology 50, 1969; the upper cut-off after J. C. Allen, Environmental
 *   Entomology 5, 1976).
 */
export type DegreeDayMethod = 'average' | 'clamped-average' | 'single-sine';

export interface DegreeDayOptions {
  readonly baseC: number;
  /** Growth is no faster above it. None when absent. Not above the base throws a RangeError. */
  readonly upperC?: number | undefined;
  /** `average` when absent. */
  readonly method?: DegreeDayMethod;
}

export interface DayRange {
  readonly minimumC: number;
  readonly maximumC: number;
}

/** The degree days (Celsius) of one day; never negative. A minimum above the maximum throws a RangeError. */
export function degreeDaysOfDay({ minimumC, maximumC }: DayRange, options: DegreeDayOptions): number {
  const { baseC, upperC = Infinity, method = 'average' } = options;
  if (!(minimumC <= maximumC)) throw new RangeError(`minimum ${minimumC} above maximum ${maximumC}`);
  if (!(baseC < upperC)) throw new RangeError(`base ${baseC} not below upper temperature ${upperC}`);
  const within = (temperatureC: number): number => Math.min(Math.max(temperatureC, baseC), upperC);
  switch (method) {
    case 'average':
      return within((minimumC + maximumC) / 2) - baseC;
    case 'clamped-average':
      return (within(minimumC) + within(maximumC)) / 2 - baseC;
    case 'single-sine':
      return sineAreaAbove(baseC, minimumC, maximumC) - sineAreaAbove(upperC, minimumC, maximumC);
  }
}

/** The mean excess over a temperature of a sine that swings once a day between minimum and maximum. */
function sineAreaAbove(thresholdC: number, minimumC: number, maximumC: number): number {
  const meanC = (minimumC + maximumC) / 2;
  if (maximumC <= thresholdC) return 0;
  if (minimumC >= thresholdC) return meanC - thresholdC;
  const swingC = (maximumC - minimumC) / 2;
  const crossing = Math.asin((thresholdC - meanC) / swingC);
  return ((meanC - thresholdC) * (Math.PI / 2 - crossing) + swingC * Math.cos(crossing)) / Math.PI;
}

/** The degree days (Celsius) from one day through another, both counted; 0 when `to` is before `from`. */
export function accumulate(
  year: TemperatureYear,
  from: DayNumber,
  to: DayNumber,
  options: DegreeDayOptions,
): number {
  let sum = 0;
  for (let day = Math.round(from); day <= Math.round(to); day += 1) sum += onDay(year, day, options);
  return sum;
}

/**
 * The day by whose end the wanted degree days (Celsius) have come together, from `from` on, which counts. Undefined when
 * a whole year does not bring them. Nothing wanted gives `from`.
 */
export function dayWhenAccumulated(
  year: TemperatureYear,
  from: DayNumber,
  wanted: number,
  options: DegreeDayOptions,
): DayNumber | undefined {
  const start = Math.round(from);
  let sum = 0;
  for (let day = start; day < start + daysInYear; day += 1) {
    sum += onDay(year, day, options);
    if (sum >= wanted) return day;
  }
  return undefined;
}

function onDay(year: TemperatureYear, day: DayNumber, options: DegreeDayOptions): number {
  const minimumC = minimumOn(year, day);
  // A spline through monthly means may cross by a hair where minimum and maximum are nearly equal.
  return degreeDaysOfDay({ minimumC, maximumC: Math.max(minimumC, maximumOn(year, day)) }, options);
}

/**
 * The degree days of the average year as finding `degree-days.annual.50f`, or `degree-days.annual.50f-86f` with an upper
 * temperature. The value is a count of whole Fahrenheit degree days, the unit that the name's base is in and that
 * American tables use.
 */
export function annualDegreeDays(year: TemperatureYear, options: DegreeDayOptions): Finding {
  return {
    id: `degree-days.annual.${basesName(options)}`,
    value: countF(accumulate(year, 1, daysInYear, options)),
    method: methodName(options),
    inputs: baseInputs(options),
    sources: findingSources(year, options),
  };
}

/** The degree days of each month, January first, in whole Fahrenheit degree days: `degree-days.month-1.50f`. */
export function monthlyDegreeDays(year: TemperatureYear, options: DegreeDayOptions): readonly Finding[] {
  return monthEnds.map((end, index) => ({
    id: `degree-days.month-${index + 1}.${basesName(options)}`,
    value: countF(accumulate(year, (monthEnds[index - 1] ?? 0) + 1, end, options)),
    method: methodName(options),
    inputs: baseInputs(options),
    sources: findingSources(year, options),
  }));
}

/**
 * The degree days of the freeze-free season, from the last freeze through the first, as finding `degree-days.season.50f`.
 * `none` with the reason of a freeze that has no date.
 */
export function seasonDegreeDays(
  year: TemperatureYear,
  season: { readonly last: DateFinding; readonly first: DateFinding },
  options: DegreeDayOptions,
): Finding {
  const { last, first } = season;
  const value =
    last.value.kind === 'none'
      ? last.value
      : first.value.kind === 'none'
        ? first.value
        : countF(accumulate(year, last.value.day, first.value.day, options));
  return {
    id: `degree-days.season.${basesName(options)}`,
    value,
    method: methodName(options),
    inputs: [
      { name: 'last-freeze', value: last.value, finding: last.id },
      { name: 'first-freeze', value: first.value, finding: first.id },
      ...baseInputs(options),
    ],
    sources: [...new Set([...findingSources(year, options), ...last.sources, ...first.sources])],
  };
}

/**
 * The date by which degree days (Celsius) have come together from a date on, as a finding whose id the caller gives.
 * `none('degree-days-never')` when a whole year does not bring them.
 */
export function degreeDaysReached(
  year: TemperatureYear,
  wanted: { readonly id: string; readonly from: DayNumber; readonly degreeDaysC: number },
  options: DegreeDayOptions,
): DateFinding {
  const day = dayWhenAccumulated(year, wanted.from, wanted.degreeDaysC, options);
  return {
    id: wanted.id,
    value: day === undefined ? none('degree-days-never') : date(day),
    method: methodName(options),
    inputs: [
      { name: 'from-date', value: date(wanted.from) },
      { name: 'degree-days-f', value: countF(wanted.degreeDaysC) },
      ...baseInputs(options),
    ],
    sources: findingSources(year, options),
  };
}

const monthEnds = [31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365];

const methodSources: Readonly<Record<DegreeDayMethod, readonly string[]>> = {
  average: ['mcmaster-wilhelm-1997'],
  'clamped-average': ['mcmaster-wilhelm-1997'],
  'single-sine': ['baskerville-emin-1969', 'allen-1976'],
};

function findingSources(year: TemperatureYear, options: DegreeDayOptions): readonly string[] {
  return [...year.sources, ...methodSources[options.method ?? 'average']];
}

/** `degree-days.average`, `degree-days.clamped-average`, `degree-days.single-sine` */
function methodName(options: DegreeDayOptions): string {
  return `degree-days.${options.method ?? 'average'}`;
}

function baseInputs({ baseC, upperC }: DegreeDayOptions): FindingInput[] {
  return [
    { name: 'base-temperature', value: quantity('temperature', baseC) },
    ...(upperC === undefined ? [] : [{ name: 'upper-temperature', value: quantity('temperature', upperC) }]),
  ];
}

function basesName({ baseC, upperC }: DegreeDayOptions): string {
  return [baseC, ...(upperC === undefined ? [] : [upperC])]
    .map((temperatureC) => `${Math.round(fromHeld(temperatureC, 'F'))}f`)
    .join('-');
}

/** Celsius degree days as a count of whole Fahrenheit ones. */
function countF(degreeDaysC: number): Finding['value'] {
  return count(Math.round(degreeDaysC * 1.8));
}
