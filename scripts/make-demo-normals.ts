/**
 * Makes the invented normals file of the demonstration region at 30 degrees north, in the form of a NOAA U.S. Climate
 * Normals 1991-2020 annual/seasonal by-station file, reduced to the columns that matter and a few others. Every number
 * in it is made up here.
 *
 *     npx tsx scripts/make-demo-normals.ts > content/regions/gullhammock-normals.csv
 */
import { pathToFileURL } from 'node:url';
import { dayNumber, monthDay } from './climate/calendar.ts';
import { normalQuantile } from './climate/normal-distribution.ts';
import type { DayNumber } from './findings/finding.ts';
import { freezeChances } from './records/schemas/region.ts';

/** The whole file as text. */
export function demoNormalsCsv(): string {
  const columns = [...stationColumns, ...thresholds.flatMap(columnsOf), ...seasonLengthColumns()];
  const quoted = (texts: readonly string[]): string => texts.map((text) => `"${text}"`).join(',');
  return `${quoted(columns.map((column) => column.name))}\n${quoted(columns.map((column) => column.value))}\n`;
}

interface Column {
  readonly name: string;
  readonly value: string;
}

/** A mild coast: some winters pass without a freeze, and hard freezes come in few of them. */
interface Threshold {
  readonly thresholdF: number;
  readonly occurrencePercent: number;
  /** In the years that reach the threshold, as NOAA gives it. */
  readonly last: { readonly mean: DayNumber; readonly sdDays: number };
  readonly first: { readonly mean: DayNumber; readonly sdDays: number };
}

const at = (month: number, day: number): DayNumber => dayNumber({ month, day });
const nextYear = 365;

const thresholds: readonly Threshold[] = [
  {
    thresholdF: 36,
    occurrencePercent: 100,
    last: { mean: at(3, 11), sdDays: 13.4 },
    first: { mean: at(11, 21), sdDays: 12.8 },
  },
  {
    thresholdF: 32,
    occurrencePercent: 98.6,
    last: { mean: at(2, 21), sdDays: 16.6 },
    first: { mean: at(12, 5), sdDays: 15.2 },
  },
  {
    thresholdF: 28,
    occurrencePercent: 83.2,
    last: { mean: at(2, 2), sdDays: 19.1 },
    first: { mean: at(12, 20), sdDays: 17.3 },
  },
  {
    thresholdF: 24,
    occurrencePercent: 47.5,
    last: { mean: at(1, 20), sdDays: 17.8 },
    first: { mean: at(12, 31), sdDays: 16.5 },
  },
  {
    thresholdF: 20,
    occurrencePercent: 16.4,
    last: { mean: at(1, 13), sdDays: 14.9 },
    first: { mean: nextYear + at(1, 6), sdDays: 14.1 },
  },
  {
    thresholdF: 16,
    occurrencePercent: 3.1,
    last: { mean: at(1, 11), sdDays: 13 },
    first: { mean: nextYear + at(1, 8), sdDays: 13 },
  },
];

const stationColumns: readonly Column[] = [
  { name: 'STATION', value: 'INVENTED030' },
  { name: 'LATITUDE', value: ' 30.3000' },
  { name: 'LONGITUDE', value: ' -88.2000' },
  { name: 'ELEVATION', value: '   11.0' },
  { name: 'NAME', value: 'GULLHAMMOCK COUNTY, INVENTED' },
  { name: 'month', value: '99' },
  { name: 'day', value: '99' },
  { name: 'hour', value: '99' },
  ...figure('ANN-TMIN-NORMAL', '    59.4'),
];

function columnsOf(threshold: Threshold): Column[] {
  const { thresholdF, occurrencePercent, last, first } = threshold;
  const tooRare = occurrencePercent < 10;
  const dates = (name: string, dayAt: (chance: number) => DayNumber): Column[] =>
    freezeChances.flatMap((chance) =>
      figure(
        `ANN-TMIN-${name}-T${thresholdF}FP${chance}`,
        tooRare ? '        ' : `   ${slashed(dayAt(chance / 100))}`,
        tooRare ? 'Y' : ' ',
      ),
    );
  return [
    ...figure(`ANN-TMIN-PRBOCC-LSTH0${thresholdF}`, occurrencePercent.toFixed(1).padStart(8)),
    ...dates('PRBFST', (chance) => first.mean + first.sdDays * normalQuantile(chance)),
    ...dates('PRBLST', (chance) => last.mean - last.sdDays * normalQuantile(chance)),
  ];
}

function seasonLengthColumns(): Column[] {
  return freezeChances.flatMap((chance) => {
    const days = Math.round(289 - 22 * normalQuantile(chance / 100));
    return figure(`ANN-TMIN-PRBGSL-T32FP${chance}`, days.toFixed(1).padStart(8));
  });
}

function figure(name: string, value: string, flag = ' '): Column[] {
  return [
    { name, value },
    { name: `meas_flag_${name}`, value: flag },
    { name: `comp_flag_${name}`, value: 'S' },
    { name: `years_${name}`, value: '30' },
  ];
}

function slashed(day: DayNumber): string {
  const date = monthDay(day);
  return [date.month, date.day].map((part) => String(part).padStart(2, '0')).join('/');
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) process.stdout.write(demoNormalsCsv());
