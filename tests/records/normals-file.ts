/** A normals file in NOAA's by-station form, with the columns of the thresholds given and nothing else. */
export interface ThresholdColumns {
  readonly thresholdF: number;
  readonly occurrence: string;
  readonly last: readonly string[];
  readonly first: readonly string[];
  /** Measurement flags by the end of a column name: `PRBLST-T32FP10`. */
  readonly flags?: Readonly<Record<string, string>>;
}

export interface NormalsFileOptions {
  /** `measurement-first` as in the 1991-2020 files, `completeness-first` as in those of 2006-2020. */
  readonly flagOrder?: 'measurement-first' | 'completeness-first';
  /** Column names to leave out. */
  readonly without?: readonly string[];
  /** How often the row is repeated. */
  readonly rows?: number;
}

export function normalsCsv(
  thresholds: readonly ThresholdColumns[],
  options: NormalsFileOptions = {},
): string {
  const columns: [string, string][] = [
    ['STATION', 'TEST0000001'],
    ['LATITUDE', ' 43.6264'],
    ['LONGITUDE', ' -72.3047'],
    ['ELEVATION', ' 182.3'],
    ['NAME', 'TEST STATION, NONE'],
    ['month', '99'],
    ['day', '99'],
    ['hour', '99'],
    ...thresholds.flatMap((threshold) => thresholdColumns(threshold, options)),
  ];
  const kept = columns.filter(([name]) => !options.without?.includes(name));
  const line = (texts: string[]): string => texts.map((text) => `"${text}"`).join(',');
  const row = line(kept.map(([, value]) => value));
  return [line(kept.map(([name]) => name)), ...Array.from({ length: options.rows ?? 1 }, () => row), ''].join(
    '\n',
  );
}

function thresholdColumns(threshold: ThresholdColumns, options: NormalsFileOptions): [string, string][] {
  const { thresholdF, occurrence, last, first, flags = {} } = threshold;
  const figure = (end: string, value: string): [string, string][] => {
    const name = `ANN-TMIN-${end}`;
    const measurement: [string, string] = [`meas_flag_${name}`, flags[end] ?? ' '];
    const completeness: [string, string] = [`comp_flag_${name}`, 'S'];
    const both =
      options.flagOrder === 'completeness-first' ? [completeness, measurement] : [measurement, completeness];
    return [[name, value.padStart(8)], ...both, [`years_${name}`, '30']];
  };
  return [
    ...figure(`PRBOCC-LSTH0${thresholdF}`, occurrence),
    ...first.flatMap((date, index) => figure(`PRBFST-T${thresholdF}FP${(index + 1) * 10}`, date)),
    ...last.flatMap((date, index) => figure(`PRBLST-T${thresholdF}FP${(index + 1) * 10}`, date)),
  ];
}
