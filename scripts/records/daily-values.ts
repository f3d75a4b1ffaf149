/** Daily temperatures as NOAA's files give them, whatever the form of the file. */
import type { DailyMinimum } from '../climate/freeze-data.ts';
import { toHeld } from '../quantities/units.ts';
import type { CsvFault, CsvRow } from './csv-table.ts';
import { isIsoDate } from './dates.ts';

/** Where one element of a row stands, and what its numbers are. */
export interface ValueColumn {
  /** As it is called in faults: `TMIN`. */
  readonly name: string;
  readonly field: number;
  /** `tenths`: whole tenths of a degree Celsius, as in the archive; `C` and `F`: degrees, decimals allowed. */
  readonly unit: 'tenths' | 'C' | 'F';
  /** The quality flag of a row: blank when the value passed every check. */
  readonly qualityFlag?: (row: CsvRow) => string | CsvFault;
}

/** Degrees Celsius that no thermometer on earth has gone beyond, with room to spare. */
const believable = { lowestC: -90, highestC: 60 };
/** The oldest series of daily minima begin in the eighteenth century; the last year is that of the latest sheets. */
const yearsOfRecords = { first: 1750, last: 2200 } as const;
/** The mark for a missing value in the fixed-width form of the data, which finds its way into CSV files. */
const missingMark = '-9999';

export const whereToGetIt =
  'Download the by-station file of GHCN-Daily from NOAA ("daily-summaries, access"); it has one row a day and a column TMIN_ATTRIBUTES.';

/** The value of a row in degrees Celsius; `null` when it is missing or failed a quality check. */
export function readValue(row: CsvRow, column: ValueColumn): number | null | CsvFault {
  const { name, field, unit } = column;
  const written = row.cells[field]!;
  if (written === '' || written === missingMark) return null;
  const form = unit === 'tenths' ? /^-?\d+$/ : /^-?\d+(\.\d+)?$/;
  if (!form.test(written)) {
    const wanted = unit === 'tenths' ? 'whole tenths of a degree Celsius' : `degrees ${scaleNames[unit]}`;
    return {
      kind: `value-form-${name}`,
      message:
        unit === 'tenths'
          ? `${name} is "${written}"; the by-station file gives ${wanted}.`
          : `${name} is "${written}", which is not a number of ${wanted}.`,
      hint:
        unit === 'tenths'
          ? `Was the file changed or made by an order form? ${whereToGetIt}`
          : 'Correct the value, or empty it.',
      line: row.line,
      field,
    };
  }
  const flag = column.qualityFlag?.(row) ?? '';
  if (typeof flag !== 'string') return flag;
  if (flag.trim() !== '') return null;
  const valueC = unit === 'tenths' ? Number(written) / 10 : toHeld(Number(written), unit);
  if (valueC < believable.lowestC || valueC > believable.highestC) {
    const rounded = Math.round(valueC * 10) / 10;
    return {
      kind: `value-absurd-${name}`,
      message: `${name} is ${written}, which in ${unit === 'tenths' ? 'tenths of a degree Celsius' : `degrees ${scaleNames[unit]}`} is ${rounded} C.`,
      hint:
        unit === 'tenths'
          ? 'Is the file in another unit? Tenths of a degree Celsius are expected. If only this value is wrong, empty it.'
          : 'Does the name of the column give the right unit? If only this value is wrong, empty it.',
      line: row.line,
      field,
    };
  }
  return valueC;
}

const scaleNames = { C: 'Celsius', F: 'Fahrenheit' } as const;

export interface CalendarDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** The date in a field, `1991-04-30` or `19910430` as the form of the file has it. */
export function readDate(
  row: CsvRow,
  field: number,
  form: '1991-04-30' | '19910430',
): CalendarDate | CsvFault {
  const written = row.cells[field]!;
  const pattern = form === '19910430' ? /^(\d{4})(\d{2})(\d{2})$/ : /^(\d{4})-(\d{2})-(\d{2})$/;
  const match = pattern.exec(written);
  if (!match) {
    return {
      kind: 'date-form',
      message: `"${written}" is not a date in the form ${form}.`,
      hint: 'Use the file as it was downloaded; spreadsheet programs rewrite dates when they save.',
      line: row.line,
      field,
    };
  }
  if (!isIsoDate(match.slice(1).join('-'))) {
    return {
      kind: 'date-impossible',
      message: `${written} is not in the calendar.`,
      hint: 'Correct the date, or delete the row.',
      line: row.line,
      field,
    };
  }
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  if (year < yearsOfRecords.first || year > yearsOfRecords.last) {
    return {
      kind: 'date-absurd',
      message: `${written} lies outside the years that a record can be of (${yearsOfRecords.first} to ${yearsOfRecords.last}).`,
      hint: 'Correct the date, or delete the row.',
      line: row.line,
      field,
    };
  }
  return { year, month, day };
}

/** One fault for each station after the first. */
export function otherStations(rows: readonly CsvRow[], field: number): CsvFault[] {
  const lines = new Map<string, number>();
  for (const row of rows) {
    const station = row.cells[field]!;
    if (!lines.has(station)) lines.set(station, row.line);
  }
  const [first, ...others] = [...lines];
  return others.map(([station, line]) => ({
    kind: 'stations',
    message: `The file has rows of station ${station} besides those of ${first![0]}.`,
    hint: 'Keep the rows of one station in the file.',
    line,
    field,
  }));
}

/**
 * Whole degrees read as tenths squeeze a year into a few degrees, and it would then never freeze. A true record with
 * so small a range exists only on warm islands, where it does not come near freezing.
 */
export function doubtfulUnit(
  days: readonly DailyMinimum[],
  place: { readonly line: number; readonly field: number },
): CsvFault[] {
  const minima = days.map((day) => day.minimumC).filter((minimum) => minimum !== null);
  if (minima.length < 365) return [];
  const lowest = minima.reduce((low, minimum) => Math.min(low, minimum), Infinity);
  const highest = minima.reduce((high, minimum) => Math.max(high, minimum), -Infinity);
  if (highest - lowest >= 15 || lowest >= 10) return [];
  return [
    {
      kind: 'unit-doubtful',
      severity: 'warning',
      message: `All daily minima lie between ${lowest} C and ${highest} C, a small range for a place so cool.`,
      hint: 'Is the file in whole degrees? Tenths of a degree Celsius are expected: 32 F is 0, 50 F is 100.',
      ...place,
    },
  ];
}

export function byDate(a: CalendarDate, b: CalendarDate): number {
  return dateKey(a) - dateKey(b);
}

/** One number for a date, in order of dates: 19910430. */
export function dateKey({ year, month, day }: CalendarDate): number {
  return (year * 100 + month) * 100 + day;
}
