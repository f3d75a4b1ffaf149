/**
 * Freeze dates of one station from a NOAA U.S. Climate Normals annual/seasonal by-station file, which has one row. In the
 * 1991-2020 form each figure has a column with its value and columns `meas_flag_`, `comp_flag_` and `years_` beside it,
 * and shares of years are in percent; in the 1981-2010 form one column `_ATTRIBUTES` holds the completeness flag, shares are
 * in tenths of a percent, and special values stand in the place of figures that are not given.
 */
import type { NormalsFreeze, NormalsFreezeRow } from '../climate/freeze-data.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { DayNumber } from '../findings/finding.ts';
import { toHeld } from '../quantities/units.ts';
import { csvDiagnostics, readCsvTable, type CsvFault, type CsvFile, type CsvTable } from './csv-table.ts';
import { isIsoDate } from './dates.ts';
import { freezeChances, type FreezeChance } from './schemas/region.ts';

export interface NormalsReading {
  /** Undefined when the file cannot be trusted or has nothing on 32 F. */
  readonly normals: NormalsFreeze | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/** The thresholds of the normals, in whole degrees Fahrenheit. */
const thresholdsF = [36, 32, 28, 24, 20, 16] as const;
type ThresholdF = (typeof thresholdsF)[number];

/** The threshold that every region needs. */
const freezingF = 32;

/**
 * Reads the freeze dates and how often each threshold is reached. Values that NOAA flags as missing, not used or too
 * few are left out; those flagged as inconsistent or as lasting all year are left out with a warning. Thresholds whose
 * columns are not in the file are skipped, except 32 F. `file` is the path relative to the guide folder.
 */
export function readNormalsCsv(file: string, text: string): NormalsReading {
  const csv = { file, text };
  const { table, faults } = readCsvTable(csv);
  if (!table) return refused(csv, faults);
  const form = formOf(table);
  const formFaults = otherForm(table, form);
  if (formFaults.length > 0) return refused(csv, [...formFaults, ...faults]);
  const readings = thresholdsF
    .filter((threshold) => hasThreshold(table, threshold))
    .map((threshold) => readThreshold({ table, form }, threshold));
  const found = [...faults, ...readings.flatMap((reading) => reading.faults)];
  if (found.some((fault) => fault.severity === undefined)) return refused(csv, found);
  const [row] = table.rows;
  return {
    normals: {
      station: row!.cells[table.columns.get('STATION')!]!,
      name: row!.cells[table.columns.get('NAME')!]!,
      period: form === 'older' ? '1981-2010' : periodOf(table),
      rows: readings.map((reading) => reading.row).filter((freezeRow) => freezeRow !== undefined),
    },
    diagnostics: csvDiagnostics(csv, code, found),
  };
}

const code = 'normals-csv';

const whereToGetIt =
  'Download the station\'s file of "U.S. Climate Normals 1991-2020, annual/seasonal, by station" from NOAA.';

/** `older` is the form of 1981-2010. */
type Form = 'newer' | 'older';

interface NormalsFile {
  readonly table: CsvTable;
  readonly form: Form;
}

function formOf(table: CsvTable): Form {
  return table.columns.has(`${dateColumn('last', freezingF, 50)}_ATTRIBUTES`) ? 'older' : 'newer';
}

function refused(csv: CsvFile, faults: readonly CsvFault[]): NormalsReading {
  return { normals: undefined, diagnostics: csvDiagnostics(csv, code, faults) };
}

const edgeNames = { last: 'PRBLST', first: 'PRBFST' } as const satisfies Record<Edge, string>;
const edges = ['last', 'first'] as const;
type Edge = (typeof edges)[number];

function dateColumn(edge: Edge, threshold: ThresholdF, chance: FreezeChance): string {
  return `ANN-TMIN-${edgeNames[edge]}-T${threshold}FP${chance}`;
}

function occurrenceColumn(threshold: ThresholdF): string {
  return `ANN-TMIN-PRBOCC-LSTH0${threshold}`;
}

function columnsOf(threshold: ThresholdF): string[] {
  const dates = edges.flatMap((edge) => freezeChances.map((chance) => dateColumn(edge, threshold, chance)));
  return [occurrenceColumn(threshold), ...dates];
}

function hasThreshold(table: CsvTable, threshold: ThresholdF): boolean {
  return columnsOf(threshold).some((name) => table.columns.has(name));
}

/** Faults of the file as a whole: missing columns, or another number of rows. */
function otherForm(table: CsvTable, form: Form): CsvFault[] {
  const { line } = table.header;
  const missing = missingColumns(table, form);
  if (missing.length > 0) {
    const others = missing.length > 4 ? ` and ${missing.length - 4} others` : '';
    return [
      {
        kind: 'columns',
        message: `The header has no column ${missing.slice(0, 4).join(', ')}${others}.`,
        hint: whereToGetIt,
        line,
      },
    ];
  }
  return table.rows.slice(1, 2).map((row) => ({
    kind: 'rows',
    message: `The file has ${table.rows.length} rows; an annual file of one station has one.`,
    hint: 'Keep the row of one station in the file.',
    line: row.line,
  }));
}

function missingColumns(table: CsvTable, form: Form): string[] {
  const thresholds = thresholdsF.filter(
    (threshold) => threshold === freezingF || hasThreshold(table, threshold),
  );
  const figures = thresholds.flatMap((threshold) =>
    columnsOf(threshold).flatMap((name) => (form === 'older' ? [name] : [name, `meas_flag_${name}`])),
  );
  return ['STATION', 'NAME', ...figures].filter((name) => !table.columns.has(name));
}

/** The 2006-2020 files have the same columns in another order: the completeness flag stands before the other. */
function periodOf(table: CsvTable): string {
  const name = occurrenceColumn(freezingF);
  const measurement = table.columns.get(`meas_flag_${name}`)!;
  const completeness = table.columns.get(`comp_flag_${name}`) ?? Infinity;
  return completeness < measurement ? '2006-2020' : '1991-2020';
}

interface ThresholdReading {
  readonly row: NormalsFreezeRow | undefined;
  readonly faults: readonly CsvFault[];
}

function readThreshold(file: NormalsFile, threshold: ThresholdF): ThresholdReading {
  const { table, form } = file;
  const occurrence = readCell(
    file,
    occurrenceColumn(threshold),
    form === 'older' ? readTenthsOfPercent : readPercent,
  );
  const last = readEdge(file, 'last', threshold);
  const first = readEdge(file, 'first', threshold);
  const season = readSeason(file, threshold);
  const allYear = [last, first].every(
    ({ dates, absent }) => dates.length === 0 && absent.every(({ why }) => why === 'all-year'),
  );
  const percent = 'value' in occurrence ? occurrence.value : undefined;
  const faults = [
    ...('fault' in occurrence ? [occurrence.fault] : []),
    ...('absent' in occurrence ? [noOccurrence(table, threshold)] : []),
    ...[last, first].flatMap((edge) => edge.faults),
    ...season.faults,
    ...(allYear ? [lastsAllYear(table, threshold)] : []),
    ...(percent !== undefined && percent >= freezeChances[0] && !allYear
      ? [last, first].flatMap((edge) => absentDates(table, threshold, edge))
      : []),
  ];
  if (percent === undefined) return { row: undefined, faults };
  const row = {
    thresholdC: toHeld(threshold, 'F'),
    occurrencePercent: percent,
    last: Object.fromEntries(last.dates),
    first: Object.fromEntries(first.dates),
    ...(season.days.length > 0 ? { seasonDays: Object.fromEntries(season.days) } : {}),
    ...(allYear ? { allYear: true as const } : {}),
  };
  return { row, faults };
}

/** Days that a season without the freeze lasts, by the chance of a longer one. Files without these columns have none. */
function readSeason(
  file: NormalsFile,
  threshold: ThresholdF,
): { readonly days: readonly (readonly [FreezeChance, number])[]; readonly faults: readonly CsvFault[] } {
  const { table, form } = file;
  const cells = freezeChances.flatMap((chance) => {
    const name = `ANN-TMIN-PRBGSL-T${threshold}FP${chance}`;
    const whole = table.columns.has(name) && (form === 'older' || table.columns.has(`meas_flag_${name}`));
    return whole ? [{ chance, ...readCell(file, name, readDays) }] : [];
  });
  return {
    days: cells.flatMap((cell) => ('value' in cell ? [[cell.chance, cell.value] as const] : [])),
    faults: cells.flatMap((cell) => ('fault' in cell ? [cell.fault] : [])),
  };
}

function lastsAllYear(table: CsvTable, threshold: ThresholdF): CsvFault {
  return {
    kind: `all-year-${threshold}`,
    severity: 'warning',
    message: `It can freeze to ${threshold} F in any month (${absences['all-year']}), so there are no dates.`,
    hint: 'Sheets will say so; choose another station if that is not the place meant.',
    line: table.rows[0]!.line,
    field: table.columns.get(dateColumn('last', threshold, 50)),
  };
}

interface EdgeReading {
  readonly edge: Edge;
  readonly dates: readonly (readonly [FreezeChance, DayNumber])[];
  readonly absent: readonly { readonly chance: FreezeChance; readonly why: Absence }[];
  readonly faults: readonly CsvFault[];
}

function readEdge(file: NormalsFile, edge: Edge, threshold: ThresholdF): EdgeReading {
  const { table } = file;
  const cells = freezeChances.map((chance) => ({
    chance,
    ...readCell(file, dateColumn(edge, threshold, chance), readDay),
  }));
  const dates = cells.flatMap((cell) => ('value' in cell ? [[cell.chance, cell.value] as const] : []));
  return {
    edge,
    dates,
    absent: cells.flatMap((cell) => ('absent' in cell ? [{ chance: cell.chance, why: cell.absent }] : [])),
    faults: [
      ...cells.flatMap((cell) => ('fault' in cell ? [cell.fault] : [])),
      ...outOfOrder(table, edge, threshold, dates),
    ],
  };
}

/** Why a figure is not given, each with the words for it. */
const absences = {
  missing: 'the value is missing (flag M)',
  'not-used': 'the value is not used (flag W)',
  'too-few': 'the threshold is reached in too few years (flag Y)',
  'all-year': 'the risk lasts all year (flag V)',
  inconsistent: 'NOAA found the value inconsistent with others (flag Z)',
  undefined: 'the date is not defined',
} as const;
type Absence = keyof typeof absences;

const absenceByFlag: Readonly<Record<string, Absence>> = {
  M: 'missing',
  V: 'all-year',
  W: 'not-used',
  Y: 'too-few',
  Z: 'inconsistent',
};

/** Special values that older NOAA files write in the place of a figure; -7777 is a figure that rounds to zero. */
const absenceByValue: Readonly<Record<number, Absence>> = {
  [-9999]: 'missing',
  [-8888]: 'undefined',
  [-6666]: 'too-few',
  [-5555]: 'inconsistent',
  [-4444]: 'all-year',
};

type CellReading<V> = { readonly value: V } | { readonly absent: Absence } | { readonly fault: CsvFault };

/** What a reader of one kind of figure answers: the figure, or what is wrong with it. */
type FigureReading<V> =
  { readonly value: V } | { readonly absent: Absence } | Pick<CsvFault, 'kind' | 'message' | 'hint'>;

function readCell<V>(
  { table, form }: NormalsFile,
  name: string,
  read: (written: string, flag: string) => FigureReading<V>,
): CellReading<V> {
  const row = table.rows[0]!;
  const field = table.columns.get(name)!;
  const written = row.cells[field]!;
  const flag = form === 'older' ? '' : row.cells[table.columns.get(`meas_flag_${name}`)!]!;
  const absent =
    absenceByFlag[flag] ?? absenceByValue[Number(written || NaN)] ?? (written === '' ? 'missing' : undefined);
  if (absent) return { absent };
  const figure = read(written, flag);
  return 'message' in figure ? { fault: { ...figure, line: row.line, field } } : figure;
}

/** Share of years in percent that rounds to zero and is not zero: the middle of what rounds so. */
const barelyEverPercent = 0.025;

function readPercent(written: string, flag: string): FigureReading<number> {
  if (flag === 'X' || Number(written) === -7777) return { value: barelyEverPercent };
  if (!/^\d+(\.\d+)?$/.test(written) || Number(written) > 100) {
    return {
      kind: 'percent-form',
      message: `"${written}" is not a share of years from 0 to 100 percent.`,
      hint: `Was the form of the file changed? In the 1981-2010 normals a column _ATTRIBUTES stands beside it. ${whereToGetIt}`,
    };
  }
  return { value: Number(written) };
}

/** The 1981-2010 files give 1000 for every year. */
function readTenthsOfPercent(written: string): FigureReading<number> {
  if (Number(written) === -7777) return { value: barelyEverPercent };
  if (!/^\d+$/.test(written) || Number(written) > 1000) {
    return {
      kind: 'percent-form',
      message: `"${written}" is not a share of years from 0 to 1000 tenths of a percent.`,
      hint: 'Use the file as it was downloaded.',
    };
  }
  return { value: Number(written) / 10 };
}

function readDays(written: string): FigureReading<number> {
  if (/^\d+(\.\d+)?$/.test(written) && Number(written) <= 366) return { value: Number(written) };
  return {
    kind: 'days-form',
    message: `"${written}" is not a number of days from 0 to 366.`,
    hint: 'Use the file as it was downloaded.',
  };
}

/** Dates are month/day of a 365-day year; February 29 is taken as February 28. */
function readDay(written: string): FigureReading<DayNumber> {
  if (written === '99/99') return { absent: 'undefined' };
  const match = /^(\d{2})\/(\d{2})$/.exec(written);
  if (!match || !isIsoDate(`2000-${match[1]}-${match[2]}`)) {
    return {
      kind: 'date-form',
      message: `"${written}" is not a date in the form 05/09, month before day.`,
      hint: 'Use the file as it was downloaded; spreadsheet programs rewrite dates when they save.',
    };
  }
  const [month, day] = written === '02/29' ? [2, 28] : [Number(match[1]), Number(match[2])];
  const [commonYear, dayMs] = [2001, 86_400_000];
  return { value: (Date.UTC(commonYear, month - 1, day) - Date.UTC(commonYear, 0, 0)) / dayMs };
}

/** Dates must go one way round the year as the chance rises: backward for the last freeze, forward for the first. */
function outOfOrder(
  table: CsvTable,
  edge: Edge,
  threshold: ThresholdF,
  dates: EdgeReading['dates'],
): readonly CsvFault[] {
  const wrong = dates.find(([, day], index) => {
    if (index === 0) return false;
    const before = dates[index - 1]![1];
    const step = edge === 'last' ? before - day : day - before;
    return (step + 365) % 365 > 182;
  });
  if (!wrong) return [];
  return [
    {
      kind: 'order',
      message: `The ${edge} freeze dates at ${threshold} F do not follow each other in order of their chance.`,
      hint:
        edge === 'last'
          ? 'The 10 % date (P10) of the last freeze must be the latest. Use the file as it was downloaded.'
          : 'The 10 % date (P10) of the first freeze must be the earliest. Use the file as it was downloaded.',
      line: table.rows[0]!.line,
      field: table.columns.get(dateColumn(edge, threshold, wrong[0])),
    },
  ];
}

function noOccurrence(table: CsvTable, threshold: ThresholdF): CsvFault {
  const name = occurrenceColumn(threshold);
  return {
    kind: name,
    message: `The share of years that reach ${threshold} F is not given, so its dates cannot be turned into plain risk.`,
    hint:
      threshold === freezingF
        ? 'Choose another station.'
        : `Nothing is said about ${threshold} F; choose another station if it matters.`,
    line: table.rows[0]!.line,
    field: table.columns.get(name),
    ...(threshold === freezingF ? {} : { severity: 'warning' }),
  };
}

/** One fault for each reason that dates are not given although the threshold is reached often enough to ask. */
function absentDates(
  table: CsvTable,
  threshold: ThresholdF,
  { edge, absent, dates }: EdgeReading,
): CsvFault[] {
  const reasons = [...new Set(absent.map(({ why }) => why))];
  const nothingLeft = threshold === freezingF && dates.length < 2;
  return reasons.map((why) => {
    const chances = absent.filter((entry) => entry.why === why).map((entry) => entry.chance);
    return {
      kind: `${edge}-${threshold}-${why}`,
      message: `The ${edge} freeze at ${threshold} F has no date at ${chances.join(', ')} percent: ${absences[why]}.`,
      hint: nothingLeft
        ? 'Choose another station: a region needs the dates at 32 F.'
        : 'Sheets leave these dates out; choose another station if they matter.',
      line: table.rows[0]!.line,
      field: table.columns.get(dateColumn(edge, threshold, chances[0]!)),
      ...(nothingLeft ? {} : { severity: 'warning' }),
    };
  });
}
