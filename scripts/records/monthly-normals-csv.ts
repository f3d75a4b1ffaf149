/**
 * Monthly means of the daily minimum and maximum, and rain where the file has it, from a NOAA U.S. Climate Normals monthly
 * by-station file: twelve rows, one a month. The 1991-2020 form has degrees Fahrenheit and inches with a column
 * `meas_flag_` for each figure; the 1981-2010 form has tenths of a degree and hundredths of an inch, and columns
 * `_ATTRIBUTES`.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { toHeld } from '../quantities/units.ts';
import { csvDiagnostics, readCsvTable, type CsvFault, type CsvRow, type CsvTable } from './csv-table.ts';

export interface MonthlyNormals {
  readonly station: string;
  readonly name: string;
  /** January first, twelve of each. */
  readonly minimumC: readonly number[];
  readonly maximumC: readonly number[];
  /** Rain and melted snow; absent when the file does not give it for every month. */
  readonly rainMm?: readonly number[];
}

export interface MonthlyNormalsReading {
  /** Undefined when any of the figures of temperature is missing or unreadable. */
  readonly normals: MonthlyNormals | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads the twelve months, in whatever order they stand. `file` is the path relative to the guide folder. */
export function readMonthlyNormalsCsv(file: string, text: string): MonthlyNormalsReading {
  const csv = { file, text };
  const { table, faults } = readCsvTable(csv);
  const result = table ? readTable(table) : { faults: [] };
  const found = [...faults, ...result.faults];
  const spoilt = found.some((fault) => fault.severity === undefined);
  return {
    normals: spoilt || !('normals' in result) ? undefined : result.normals,
    diagnostics: csvDiagnostics(csv, 'normals-csv', found),
  };
}

const whereToGetIt =
  'Download the station\'s file of "U.S. Climate Normals 1991-2020, monthly, by station" from NOAA; it has twelve rows.';

type Form = 'newer' | 'older';

interface Element {
  readonly name: string;
  /** A figure as written, in the form of the file, in the held unit. */
  readonly held: (written: number, form: Form) => number;
  readonly inRange: (held: number) => boolean;
}

const temperature = (name: string): Element => ({
  name,
  held: (written, form) => toHeld(form === 'older' ? written / 10 : written, 'F'),
  inRange: (heldC) => heldC >= -70 && heldC <= 60,
});

const elements = {
  minimum: temperature('MLY-TMIN-NORMAL'),
  maximum: temperature('MLY-TMAX-NORMAL'),
  rain: {
    name: 'MLY-PRCP-NORMAL',
    held: (written: number, form: Form) => toHeld(form === 'older' ? written / 100 : written, 'in'),
    inRange: (heldMm: number) => heldMm >= 0 && heldMm <= 5000,
  },
} satisfies Record<string, Element>;

function readTable(table: CsvTable): { normals?: MonthlyNormals; faults: readonly CsvFault[] } {
  const missing = ['STATION', 'NAME', elements.minimum.name, elements.maximum.name].filter(
    (name) => !table.columns.has(name),
  );
  if (missing.length > 0) {
    const message = `The header has no column ${missing.join(', ')}.`;
    return { faults: [{ kind: 'columns', message, hint: whereToGetIt, line: table.header.line }] };
  }
  const { rows, faults } = rowsByMonth(table);
  if (!rows) return { faults };
  const minimum = readElement(table, rows, elements.minimum);
  const maximum = readElement(table, rows, elements.maximum);
  const rain = table.columns.has(elements.rain.name) ? readElement(table, rows, elements.rain) : undefined;
  const found = [
    ...minimum.faults,
    ...maximum.faults,
    ...(rain?.faults ?? []).map((fault) => ({ ...fault, severity: 'warning' as const })),
    ...crossed(table, rows, minimum.values, maximum.values),
  ];
  const [first] = rows;
  return {
    faults: found,
    normals: {
      station: first!.cells[table.columns.get('STATION')!]!,
      name: first!.cells[table.columns.get('NAME')!]!,
      minimumC: minimum.values,
      maximumC: maximum.values,
      ...(rain && rain.faults.length === 0 ? { rainMm: rain.values } : {}),
    },
  };
}

function rowsByMonth(table: CsvTable): { rows?: readonly CsvRow[]; faults: readonly CsvFault[] } {
  const field = table.columns.get('month') ?? table.columns.get('DATE');
  if (field === undefined) {
    const message = 'The header has no column month or DATE, so the months cannot be told apart.';
    return { faults: [{ kind: 'columns', message, hint: whereToGetIt, line: table.header.line }] };
  }
  const station = table.columns.get('STATION')!;
  const other = table.rows.find((row) => row.cells[station] !== table.rows[0]!.cells[station]);
  if (other) {
    const message = `The file has rows of station ${other.cells[station]} besides those of ${table.rows[0]!.cells[station]}.`;
    const hint = 'Keep the rows of one station in the file.';
    return { faults: [{ kind: 'stations', message, hint, line: other.line, field: station }] };
  }
  const faults: CsvFault[] = [];
  const months = new Map<number, CsvRow>();
  for (const row of table.rows) {
    // `01`, `2010-01` and `201001` are met in the wild.
    const month = Number(/^(?:\d{4}-?)?(\d{1,2})$/.exec(row.cells[field]!)?.[1] ?? NaN);
    const fault = (kind: string, message: string): CsvFault => ({
      kind,
      message,
      hint: whereToGetIt,
      line: row.line,
      field,
    });
    if (!(month >= 1 && month <= 12))
      faults.push(fault('month', `"${row.cells[field]}" is not a month from 01 to 12.`));
    else if (months.has(month)) {
      faults.push(
        fault('month-repeated', `Month ${month} stands on line ${months.get(month)!.line} already.`),
      );
    } else months.set(month, row);
  }
  if (faults.length > 0) return { faults };
  const rows = Array.from({ length: 12 }, (_, index) => months.get(index + 1));
  const absent = rows.flatMap((row, index) => (row ? [] : [index + 1]));
  if (absent.length > 0) {
    const message = `The file has no row for month ${absent.join(', ')}.`;
    return { faults: [{ kind: 'months', message, hint: whereToGetIt, line: table.header.line }] };
  }
  return { rows: rows as readonly CsvRow[], faults: [] };
}

/** NaN stands where a figure is missing, and a fault says so. */
function readElement(
  table: CsvTable,
  rows: readonly CsvRow[],
  element: Element,
): { values: readonly number[]; faults: readonly CsvFault[] } {
  const { name } = element;
  const field = table.columns.get(name)!;
  const form: Form = table.columns.has(`${name}_ATTRIBUTES`) ? 'older' : 'newer';
  const flagField = table.columns.get(`meas_flag_${name}`);
  const faults: CsvFault[] = [];
  const values = rows.map((row, index) => {
    const written = row.cells[field]!;
    const flag = flagField === undefined ? '' : row.cells[flagField]!;
    const fault = (kind: string, message: string, hint: string): number => {
      faults.push({ kind: `${name}-${kind}`, message, hint, line: row.line, field });
      return NaN;
    };
    // -7777 and flag X: a figure that rounds to zero.
    if (flag === 'X' || Number(written) === -7777) return element.held(0, form);
    if (written === '' || missingFlags.has(flag) || specialValues.has(Number(written))) {
      return fault('missing', `${name} of month ${index + 1} is not given.`, 'Choose another station.');
    }
    const held = /^-?\d+(\.\d+)?$/.test(written) ? element.held(Number(written), form) : NaN;
    if (element.inRange(held)) return held;
    return fault(
      'form',
      `${name} of month ${index + 1} is "${written}", which cannot be.`,
      'Use the file as it was downloaded: degrees Fahrenheit and inches.',
    );
  });
  return { values, faults };
}

const missingFlags = new Set(['M', 'V', 'W', 'Y', 'Z']);
const specialValues = new Set([-9999, -8888, -6666, -5555, -4444]);

function crossed(
  table: CsvTable,
  rows: readonly CsvRow[],
  minimumC: readonly number[],
  maximumC: readonly number[],
): CsvFault[] {
  return rows.flatMap((row, month) =>
    minimumC[month]! > maximumC[month]!
      ? [
          {
            kind: 'crossed',
            message: `The mean maximum of month ${month + 1} is below its mean minimum.`,
            hint: 'Use the file as it was downloaded.',
            line: row.line,
            field: table.columns.get(elements.maximum.name),
          },
        ]
      : [],
  );
}
