/**
 * Daily minima of one station, and its maxima where the file has them, from a NOAA GHCN-Daily file. Three forms are read:
 *
 * - the by-station access file: quoted fields, dates as 2020-04-30, TMIN in tenths of a degree Celsius, and
 *   TMIN_ATTRIBUTES with the measurement, quality and source flags and sometimes the time of observation;
 * - the by-year file cut down to one station: see by-year-csv.ts;
 * - an ordered file without attributes, once its columns say the unit: TMIN_F or TMIN_C in place of TMIN. Its
 *   quality flags are gone; NOAA leaves failed values out of such orders.
 */
import type { DailyMinimum, DailyStation } from '../climate/freeze-data.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { isByYearForm, readByYearCsv } from './by-year-csv.ts';
import {
  csvDiagnostics,
  readCsvTable,
  type CsvFault,
  type CsvFile,
  type CsvRow,
  type CsvTable,
} from './csv-table.ts';
import {
  byDate,
  dateKey,
  doubtfulUnit,
  otherStations,
  readDate,
  readValue,
  whereToGetIt,
  type ValueColumn,
} from './daily-values.ts';

export interface StationReading {
  /** Undefined when any row has a fault: freeze dates from half a file would be wrong without a sign. */
  readonly station: DailyStation | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Reads the station. A value that failed one of NOAA's quality checks is kept as missing, as is an empty one. All
 * faults are reported in one run; of faults that repeat from row to row the first five are told and the rest
 * counted. Whether there are years enough is not asked here, since that depends on the region's latitude: see
 * `freezeDataFault` in climate/freeze.ts. `file` is the path relative to the guide folder.
 */
export function readStationCsv(file: string, text: string): StationReading {
  const csv = { file, text };
  if (isByYearForm(text)) {
    const { station, faults } = readByYearCsv(csv);
    return { station, diagnostics: csvDiagnostics(csv, code, faults) };
  }
  const { table, faults } = readCsvTable(csv);
  if (!table) return refused(csv, faults);
  const columns = findColumns(table);
  if ('missing' in columns) return refused(csv, [missingColumns(table, columns.missing), ...faults]);
  const read = table.rows.map((row) => readRow(row, columns));
  const days = read.map((row) => row.day).filter((day) => day !== undefined);
  const found = [
    ...faults,
    ...read.flatMap((row) => row.faults),
    ...otherStations(table.rows, columns.station),
    ...repeatedDates(read),
    ...(columns.minimum.unit === 'tenths'
      ? doubtfulUnit(days, { line: table.rows[0]!.line, field: columns.minimum.field })
      : []),
  ];
  if (found.some((fault) => fault.severity === undefined)) return refused(csv, found);
  const [first] = table.rows;
  return {
    station: {
      station: first!.cells[columns.station]!,
      name: first!.cells[columns.name]!,
      days: days.sort(byDate),
    },
    diagnostics: csvDiagnostics(csv, code, found),
  };
}

const code = 'station-csv';

interface Columns {
  readonly station: number;
  readonly name: number;
  readonly date: number;
  readonly minimum: ValueColumn;
  readonly maximum: ValueColumn | undefined;
}

interface RowReading {
  readonly line: number;
  readonly day: DailyMinimum | undefined;
  readonly faults: readonly CsvFault[];
  readonly dateField: number;
}

function refused(csv: CsvFile, faults: readonly CsvFault[]): StationReading {
  return { station: undefined, diagnostics: csvDiagnostics(csv, code, faults) };
}

function findColumns(table: CsvTable): Columns | { missing: string[] } {
  const at = (name: string): number | undefined => table.columns.get(name);
  const minimum = valueColumn(table, 'TMIN');
  const [station, name, date] = [at('STATION'), at('NAME'), at('DATE')];
  if (station === undefined || name === undefined || date === undefined || !minimum) {
    const needed = ['STATION', 'NAME', 'DATE', ...(minimum ? [] : ['TMIN', 'TMIN_ATTRIBUTES'])];
    return { missing: needed.filter((column) => !table.columns.has(column)) };
  }
  return { station, name, date, minimum, maximum: valueColumn(table, 'TMAX') };
}

/** The column of an element: with its attributes, or with its unit in its name; undefined when neither is there. */
function valueColumn(table: CsvTable, name: 'TMIN' | 'TMAX'): ValueColumn | undefined {
  const field = table.columns.get(name);
  const attributes = table.columns.get(`${name}_ATTRIBUTES`);
  if (field !== undefined && attributes !== undefined) {
    return { name, field, unit: 'tenths', qualityFlag: (row) => qualityFlag(row, name, attributes) };
  }
  for (const unit of ['F', 'C'] as const) {
    const named = table.columns.get(`${name}_${unit}`);
    if (named !== undefined) return { name: `${name}_${unit}`, field: named, unit };
  }
  return undefined;
}

function qualityFlag(row: CsvRow, name: string, field: number): string | CsvFault {
  const flags = row.cells[field]!.split(',');
  if (flags.length >= 3) return flags[1]!;
  return {
    kind: `flags-${name}`,
    message: `${name}_ATTRIBUTES is "${flags.join(',')}" where the measurement, quality and source flags belong.`,
    hint: 'Use the file as it was downloaded: three flags with commas between them, inside quotation marks.',
    line: row.line,
    field,
  };
}

function missingColumns(table: CsvTable, missing: readonly string[]): CsvFault {
  const separator =
    table.header.cells.length === 1 ? /[;\t]/.exec(table.header.cells[0] ?? '')?.[0] : undefined;
  const names = missing.join(', ');
  if (separator) {
    const word = separator === ';' ? 'semicolons' : 'tabs';
    return {
      kind: 'columns',
      message: `The fields are separated by ${word}, so no column is found.`,
      hint: 'Use the file as it was downloaded, with commas between the fields.',
      line: table.header.line,
    };
  }
  const unit = missing.includes('TMIN_ATTRIBUTES') && !missing.includes('TMIN');
  return {
    kind: 'columns',
    message: unit
      ? `The header has no column ${names}; without the flags neither the quality nor the unit of TMIN is known.`
      : `The header has no column ${names}.`,
    hint: unit
      ? `Was the file ordered in degrees Fahrenheit or Celsius? Say it by renaming TMIN to TMIN_F or TMIN_C, and TMAX likewise. Or: ${whereToGetIt}`
      : whereToGetIt,
    line: table.header.line,
  };
}

function readRow(row: CsvRow, columns: Columns): RowReading {
  const date = readDate(row, columns.date, '1991-04-30');
  const minimumC = readValue(row, columns.minimum);
  const maximumC = columns.maximum && readValue(row, columns.maximum);
  const faults = [date, minimumC, maximumC].filter((part) => isFault(part));
  const whole = !isFault(date) && !isFault(minimumC) && !isFault(maximumC);
  const maximum = whole && maximumC !== undefined ? { maximumC } : {};
  const day = whole ? { ...date, minimumC, ...maximum } : undefined;
  return { line: row.line, day, faults, dateField: columns.date };
}

function isFault(part: object | number | null | undefined): part is CsvFault {
  return typeof part === 'object' && part !== null && 'kind' in part;
}

function repeatedDates(read: readonly RowReading[]): CsvFault[] {
  const lineByDate = new Map<number, number>();
  return read.flatMap(({ day, line, dateField }) => {
    if (!day) return [];
    const earlier = lineByDate.get(dateKey(day));
    if (earlier === undefined) {
      lineByDate.set(dateKey(day), line);
      return [];
    }
    const written = `${day.year}-${twoDigits(day.month)}-${twoDigits(day.day)}`;
    return {
      kind: 'date-repeated',
      message: `${written} stands on line ${earlier} already.`,
      hint: 'Delete one of the two rows.',
      line,
      field: dateField,
    };
  });
}

function twoDigits(number: number): string {
  return String(number).padStart(2, '0');
}
