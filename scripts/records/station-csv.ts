/**
 * Daily minima of one station from a NOAA GHCN-Daily by-station access file: quoted fields, dates as 2020-04-30, TMIN
 * in tenths of a degree Celsius, and TMIN_ATTRIBUTES with the measurement, quality and source flags and
 * sometimes the time of observation.
 */
import type { DailyMinimum, DailyStation } from '../climate/freeze-data.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import {
  csvDiagnostics,
  readCsvTable,
  type CsvFault,
  type CsvFile,
  type CsvRow,
  type CsvTable,
} from './csv-table.ts';
import { isIsoDate } from './dates.ts';

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
  const { table, faults } = readCsvTable(csv);
  if (!table) return refused(csv, faults);
  const fields = findColumns(table);
  if ('missing' in fields) return refused(csv, [missingColumns(table, fields.missing), ...faults]);
  const read = table.rows.map((row) => readRow(row, fields));
  const days = read.map((row) => row.day).filter((day) => day !== undefined);
  const found = [
    ...faults,
    ...read.flatMap((row) => row.faults),
    ...otherStations(table.rows, fields),
    ...repeatedDates(read),
    ...doubtfulUnit(days, table.rows[0]!, fields),
  ];
  if (found.some((fault) => fault.severity === undefined)) return refused(csv, found);
  const [first] = table.rows;
  return {
    station: {
      station: first!.cells[fields.STATION]!,
      name: first!.cells[fields.NAME]!,
      days: days.sort(byDate),
    },
    diagnostics: csvDiagnostics(csv, code, found),
  };
}

const code = 'station-csv';
const neededColumns = ['STATION', 'NAME', 'DATE', 'TMIN', 'TMIN_ATTRIBUTES'] as const;
type Fields = Readonly<Record<(typeof neededColumns)[number], number>>;

interface RowReading {
  readonly line: number;
  readonly day: DailyMinimum | undefined;
  readonly faults: readonly CsvFault[];
  readonly dateField: number;
}

function refused(csv: CsvFile, faults: readonly CsvFault[]): StationReading {
  return { station: undefined, diagnostics: csvDiagnostics(csv, code, faults) };
}

function findColumns({ columns }: CsvTable): Fields | { missing: string[] } {
  const missing = neededColumns.filter((name) => !columns.has(name));
  if (missing.length > 0) return { missing };
  return Object.fromEntries(neededColumns.map((name) => [name, columns.get(name)!])) as Fields;
}

const whereToGetIt =
  'Download the by-station file of GHCN-Daily from NOAA ("daily-summaries, access"); it has one row a day and a column TMIN_ATTRIBUTES.';

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
    hint: whereToGetIt,
    line: table.header.line,
  };
}

function readRow(row: CsvRow, fields: Fields): RowReading {
  const date = readDate(row, fields.DATE);
  const minimum = readMinimum(row, fields);
  const faults = [date, minimum].filter((part) => 'kind' in part);
  const day = 'kind' in date || 'kind' in minimum ? undefined : { ...date, ...minimum };
  return { line: row.line, day, faults, dateField: fields.DATE };
}

function readDate(row: CsvRow, field: number): { year: number; month: number; day: number } | CsvFault {
  const written = row.cells[field]!;
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(written);
  if (!match) {
    return {
      kind: 'date-form',
      message: `"${written}" is not a date in the form 1991-04-30.`,
      hint: 'Use the file as it was downloaded; spreadsheet programs rewrite dates when they save.',
      line: row.line,
      field,
    };
  }
  if (!isIsoDate(written)) {
    return {
      kind: 'date-impossible',
      message: `${written} is not in the calendar.`,
      hint: 'Correct the date, or delete the row.',
      line: row.line,
      field,
    };
  }
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  return { year, month, day };
}

/** Tenths of a degree Celsius that no thermometer on earth has gone beyond, with room to spare. */
const believable = { lowest: -900, highest: 600 };
/** The mark for a missing value in the fixed-width form of the data, which finds its way into CSV files. */
const missingMark = '-9999';

function readMinimum(row: CsvRow, fields: Fields): { minimumC: number | null } | CsvFault {
  const written = row.cells[fields.TMIN]!;
  if (written === '' || written === missingMark) return { minimumC: null };
  if (!/^-?\d+$/.test(written)) {
    return {
      kind: 'value-form',
      message: `TMIN is "${written}"; the by-station file gives whole tenths of a degree Celsius.`,
      hint: `Was the file changed or made by an order form? ${whereToGetIt}`,
      line: row.line,
      field: fields.TMIN,
    };
  }
  const tenths = Number(written);
  const flags = row.cells[fields.TMIN_ATTRIBUTES]!.split(',');
  if (flags.length < 3) {
    return {
      kind: 'flags',
      message: `TMIN_ATTRIBUTES is "${flags.join(',')}" where the measurement, quality and source flags belong.`,
      hint: 'Use the file as it was downloaded: three flags with commas between them, inside quotation marks.',
      line: row.line,
      field: fields.TMIN_ATTRIBUTES,
    };
  }
  const failedQualityCheck = flags[1]!.trim() !== '';
  if (failedQualityCheck) return { minimumC: null };
  if (tenths < believable.lowest || tenths > believable.highest) {
    return {
      kind: 'value-absurd',
      message: `TMIN is ${written}, which in tenths of a degree Celsius is ${tenths / 10} C.`,
      hint: 'Is the file in another unit? Tenths of a degree Celsius are expected. If only this value is wrong, empty it.',
      line: row.line,
      field: fields.TMIN,
    };
  }
  return { minimumC: tenths / 10 };
}

function otherStations(rows: readonly CsvRow[], fields: Fields): CsvFault[] {
  const stations = [...new Set(rows.map((row) => row.cells[fields.STATION]!))];
  return stations.slice(1).map((station) => ({
    kind: 'stations',
    message: `The file has rows of station ${station} besides those of ${stations[0]}.`,
    hint: 'Keep the rows of one station in the file.',
    line: rows.find((row) => row.cells[fields.STATION] === station)!.line,
    field: fields.STATION,
  }));
}

function repeatedDates(read: readonly RowReading[]): CsvFault[] {
  const lineByDate = new Map<number, number>();
  return read.flatMap(({ day, line, dateField }) => {
    if (!day) return [];
    const earlier = lineByDate.get(sortKey(day));
    if (earlier === undefined) {
      lineByDate.set(sortKey(day), line);
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

/**
 * Whole degrees read as tenths squeeze a year into a few degrees, and it would then never freeze. A true record with
 * so small a range exists only on warm islands, where it does not come near freezing.
 */
function doubtfulUnit(days: readonly DailyMinimum[], firstRow: CsvRow, fields: Fields): CsvFault[] {
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
      line: firstRow.line,
      field: fields.TMIN,
    },
  ];
}

function byDate(a: DailyMinimum, b: DailyMinimum): number {
  return sortKey(a) - sortKey(b);
}

function sortKey({ year, month, day }: DailyMinimum): number {
  return (year * 100 + month) * 100 + day;
}

function twoDigits(number: number): string {
  return String(number).padStart(2, '0');
}
