/**
 * A CSV file with a header, with the line and column of every field at hand for diagnostics. Columns are found by
 * name, and padding around names and values is taken off.
 */
import { CsvError, parse } from 'csv-parse/sync';
import type { DiagnosticCode } from '../diagnostics/catalogue.ts';
import type { Diagnostic, Place } from '../diagnostics/diagnostic.ts';

export interface CsvFile {
  /** Path relative to the guide folder. */
  readonly file: string;
  readonly text: string;
}

export interface CsvRow {
  /** Line of the file, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface CsvTable {
  /** Position of each column by its name; the first of two with one name. */
  readonly columns: ReadonlyMap<string, number>;
  readonly header: CsvRow;
  /** The rows that have as many fields as the header; there is at least one. */
  readonly rows: readonly CsvRow[];
}

/** A fault found in a table, before faults of one kind are counted together. */
export interface CsvFault {
  /** Faults of one kind say the same thing about different rows. */
  readonly kind: string;
  readonly message: string;
  readonly hint: string;
  readonly line: number;
  /** Position of the field in its row; left out, the fault concerns the whole line. */
  readonly field?: number | undefined;
  readonly severity?: 'warning';
}

export interface CsvReading {
  readonly table: CsvTable | undefined;
  readonly faults: readonly CsvFault[];
}

/** Reads the table. A file without a row, with unmatched quotes or with rows of another length has faults. */
export function readCsvTable({ text }: CsvFile): CsvReading {
  let records: { record: string[]; info: { lines: number } }[];
  try {
    const options = {
      info: true,
      bom: true,
      skip_empty_lines: true,
      relax_column_count: true,
      trim: true,
    } as const;
    records = parse(text, options) as unknown as typeof records;
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { table: undefined, faults: [quoteFault(error)] };
  }
  const [header, ...rows] = records.map(({ record, info }) => ({
    line: info.lines,
    // The parser leaves the padding inside quotation marks alone.
    cells: record.map((cell) => cell.trim()),
  }));
  if (!header || rows.length === 0) return { table: undefined, faults: [emptyFault(header !== undefined)] };
  const columns = new Map<string, number>();
  header.cells.forEach((name, index) => {
    if (!columns.has(name)) columns.set(name, index);
  });
  const isWhole = (row: CsvRow): boolean => row.cells.length === header.cells.length;
  const whole = rows.filter(isWhole);
  const faults = rows.filter((row) => !isWhole(row)).map(lengthFault(header));
  return { table: whole.length > 0 ? { columns, header, rows: whole } : undefined, faults };
}

/** How many faults of one kind are told one by one; the rest are counted. */
const toldOfOneKind = 5;

/** Turns faults into diagnostics: the first few of each kind, then one line that counts the others. */
export function csvDiagnostics(
  csv: CsvFile,
  code: DiagnosticCode,
  faults: readonly CsvFault[],
): Diagnostic[] {
  const lines = faults.length > 0 ? csv.text.split(/\r\n|\n|\r/) : [];
  const asDiagnostic = (fault: CsvFault): Diagnostic => ({
    code,
    severity: fault.severity ?? 'error',
    message: fault.message,
    hint: fault.hint,
    place: placeOf(csv.file, lines, fault),
  });
  const kinds = new Set(faults.map((fault) => fault.kind));
  return [...kinds].flatMap((kind) => {
    const alike = faults.filter((fault) => fault.kind === kind);
    const [next, ...others] = alike.slice(toldOfOneKind);
    const told = alike.slice(0, toldOfOneKind).map(asDiagnostic);
    if (!next) return told;
    if (others.length === 0) return [...told, asDiagnostic(next)];
    const message = `From here on the same fault as on line ${alike[0]!.line} occurs ${others.length + 1} more times.`;
    return [...told, { ...asDiagnostic(next), message }];
  });
}

function placeOf(file: string, lines: readonly string[], fault: CsvFault): Place {
  const line = lines[fault.line - 1] ?? '';
  return { file, line: fault.line, column: fault.field === undefined ? 1 : columnOfField(line, fault.field) };
}

/** The column, from 1, at which a field of a line begins, with quotes taken into account. */
function columnOfField(line: string, field: number): number {
  let position = 0;
  let quoted = false;
  for (let index = 0; index < line.length && position < field; index += 1) {
    if (line[index] === '"') quoted = !quoted;
    if (line[index] === ',' && !quoted) position += 1;
    if (position === field) return index + 2;
  }
  return 1;
}

function quoteFault(error: CsvError): CsvFault {
  const line = typeof error['lines'] === 'number' ? error['lines'] : 1;
  return {
    kind: 'quotes',
    message: 'The quotation marks do not match, so the fields cannot be told apart.',
    hint: 'Use the file as it was downloaded, or put both marks around every field of this line.',
    line,
  };
}

function emptyFault(hasHeader: boolean): CsvFault {
  return {
    kind: 'empty',
    message: hasHeader ? 'The file has a header and no rows.' : 'The file is empty.',
    hint: 'Download the file again.',
    line: 1,
  };
}

function lengthFault(header: CsvRow): (row: CsvRow) => CsvFault {
  return (row) => ({
    kind: 'row-length',
    message: `The row has ${row.cells.length} fields; the header has ${header.cells.length}.`,
    hint: 'Use the file as it was downloaded: a comma may be missing, or a field with a comma may have lost its quotation marks.',
    line: row.line,
  });
}
