/**
 * Daily minima and maxima of one station from NOAA GHCN-Daily by-year files, cut down to the rows of that station and put
 * one after the other. One row holds one element of one day: ID, DATE (19910430), ELEMENT, DATA_VALUE in tenths
 * of a degree Celsius, M_FLAG, Q_FLAG, S_FLAG, OBS_TIME. The files have no header, except in some copies.
 */
import type { DailyMinimum, DailyStation } from '../climate/freeze-data.ts';
import { readCsvTable, type CsvFault, type CsvFile, type CsvRow, type CsvTable } from './csv-table.ts';
import {
  byDate,
  dateKey,
  doubtfulUnit,
  otherStations,
  readDate,
  readValue,
  type ValueColumn,
} from './daily-values.ts';

export interface ByYearReading {
  /** Undefined when any row has a fault. The station's name is its id, since the file holds no other. */
  readonly station: DailyStation | undefined;
  readonly faults: readonly CsvFault[];
}

/** True for the by-year form, by its header or, where it has none, by its first row. */
export function isByYearForm(text: string): boolean {
  const cells = firstCells(text);
  return isHeader(cells) || isHeaderless(cells);
}

/** Reads the rows of TMIN and TMAX; other elements are passed over. */
export function readByYearCsv(csv: CsvFile): ByYearReading {
  const { table, faults } = readTable(csv);
  if (!table) return { station: undefined, faults };
  const columns = findColumns(table);
  if (Array.isArray(columns)) {
    const message = `The header has no column ${columns.join(', ')}.`;
    const hint = `The columns of a by-year file are ${columnNames.join(', ')}.`;
    return { station: undefined, faults: [{ kind: 'columns', message, hint, line: 1 }, ...faults] };
  }
  const rows = table.rows.filter((row) => elementOf(row, columns) !== undefined);
  const read = rows.map((row) => readRow(row, columns));
  const days = joinDays(read);
  const found = [
    ...faults,
    ...read.flatMap((row) => row.faults),
    ...otherStations(table.rows, columns.id),
    ...repeated(read, columns),
    ...(rows.some((row) => elementOf(row, columns) === 'TMIN') ? [] : [noMinima(table)]),
    ...doubtfulUnit(days, { line: rows[0]?.line ?? 1, field: columns.value }),
  ];
  if (found.some((fault) => fault.severity === undefined)) return { station: undefined, faults: found };
  const id = table.rows[0]!.cells[columns.id]!;
  return { station: { station: id, name: id, days }, faults: found };
}

const columnNames = ['ID', 'DATE', 'ELEMENT', 'DATA_VALUE', 'M_FLAG', 'Q_FLAG', 'S_FLAG', 'OBS_TIME'];

interface Columns {
  readonly id: number;
  readonly date: number;
  readonly element: number;
  readonly value: number;
  readonly quality: number;
}

function firstCells(text: string): readonly string[] {
  const line = /[^\r\n]*/.exec(text.replace(/^\uFEFF?\s*/, ''))![0];
  return line.split(',').map((cell) => cell.replace(/^[\s"]+|[\s"]+$/g, ''));
}

function isHeader(cells: readonly string[]): boolean {
  return cells.includes('ELEMENT') && cells.includes('DATE');
}

function isHeaderless(cells: readonly string[]): boolean {
  const [id = '', date = '', element = ''] = cells;
  return (
    cells.length >= 7 && /^[A-Z0-9_-]{11}$/.test(id) && /^\d{8}$/.test(date) && /^[A-Z0-9]{4}$/.test(element)
  );
}

/** A header is put before a file without one, and its line counted off again. */
function readTable(csv: CsvFile): { table: CsvTable | undefined; faults: readonly CsvFault[] } {
  const cells = firstCells(csv.text);
  if (isHeader(cells)) return readCsvTable(csv);
  const header = columnNames.slice(0, cells.length).join(',');
  const { table, faults } = readCsvTable({ ...csv, text: `${header}\n${csv.text.replace(/^\uFEFF/, '')}` });
  const raised = <T extends { line: number }>(part: T): T => ({ ...part, line: part.line - 1 });
  return {
    table: table && { ...table, rows: table.rows.map(raised) },
    faults: faults.map((fault) => ({
      ...raised(fault),
      message: fault.message.replace('the header', 'a row'),
    })),
  };
}

function findColumns({ columns }: CsvTable): Columns | string[] {
  const at = (...names: string[]): number | undefined =>
    names.map((name) => columns.get(name)).find((field) => field !== undefined);
  const found = {
    ID: at('ID', 'STATION'),
    DATE: at('DATE'),
    ELEMENT: at('ELEMENT'),
    DATA_VALUE: at('DATA_VALUE', 'VALUE'),
    Q_FLAG: at('Q_FLAG', 'QFLAG'),
  };
  const missing = Object.entries(found).flatMap(([name, field]) => (field === undefined ? [name] : []));
  if (missing.length > 0) return missing;
  const { ID: id, DATE: date, ELEMENT: element, DATA_VALUE: value, Q_FLAG: quality } = found;
  return { id: id!, date: date!, element: element!, value: value!, quality: quality! };
}

type Element = 'TMIN' | 'TMAX';

function elementOf(row: CsvRow, columns: Columns): Element | undefined {
  const element = row.cells[columns.element];
  return element === 'TMIN' || element === 'TMAX' ? element : undefined;
}

interface RowReading {
  readonly line: number;
  readonly element: Element;
  readonly value?: {
    readonly year: number;
    readonly month: number;
    readonly day: number;
    readonly valueC: number | null;
  };
  readonly faults: readonly CsvFault[];
}

function readRow(row: CsvRow, columns: Columns): RowReading {
  const element = elementOf(row, columns)!;
  const column: ValueColumn = {
    name: element,
    field: columns.value,
    unit: 'tenths',
    qualityFlag: ({ cells }) => cells[columns.quality]!,
  };
  const date = readDate(row, columns.date, '19910430');
  const valueC = readValue(row, column);
  const faults = [date, valueC].filter((part) => typeof part === 'object' && part !== null && 'kind' in part);
  if ('kind' in date || (typeof valueC === 'object' && valueC !== null)) {
    return { line: row.line, element, faults };
  }
  return { line: row.line, element, value: { ...date, valueC }, faults };
}

/** Brings the elements of one day together; a day without a minimum has a missing one. */
function joinDays(read: readonly RowReading[]): readonly DailyMinimum[] {
  const maxima = read.some(({ element }) => element === 'TMAX');
  const days = new Map<number, DailyMinimum>();
  for (const { element, value } of read) {
    if (!value) continue;
    const { valueC, ...date } = value;
    const day = days.get(dateKey(date)) ?? { ...date, minimumC: null, ...(maxima ? { maximumC: null } : {}) };
    days.set(dateKey(date), {
      ...day,
      ...(element === 'TMIN' ? { minimumC: valueC } : { maximumC: valueC }),
    });
  }
  return [...days.values()].sort(byDate);
}

function repeated(read: readonly RowReading[], columns: Columns): CsvFault[] {
  const lines = new Map<string, number>();
  return read.flatMap(({ element, value, line }) => {
    if (!value) return [];
    const key = `${element} ${dateKey(value)}`;
    const earlier = lines.get(key);
    if (earlier === undefined) {
      lines.set(key, line);
      return [];
    }
    return {
      kind: 'date-repeated',
      message: `${element} of ${dateKey(value)} stands on line ${earlier} already.`,
      hint: 'Delete one of the two rows.',
      line,
      field: columns.date,
    };
  });
}

function noMinima(table: CsvTable): CsvFault {
  return {
    kind: 'no-minima',
    message: 'The file has no row with the element TMIN.',
    hint: 'Keep the rows of TMIN, and of TMAX, when cutting the file down to one station; or choose another station.',
    line: table.rows[0]!.line,
  };
}
