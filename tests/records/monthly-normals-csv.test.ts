import { describe, expect, test } from 'vitest';
import { readMonthlyNormalsCsv } from '../../scripts/records/monthly-normals-csv.ts';

const minimaF = [9.3, 11, 20.7, 31.9, 43.7, 52.4, 57.8, 56.2, 48.6, 37.4, 27.7, 18.1];
const names = ['MLY-TMAX-NORMAL', 'MLY-TMIN-NORMAL', 'MLY-PRCP-NORMAL'] as const;
type Name = (typeof names)[number];

interface FileOptions {
  /** By month (from 0) and column. */
  readonly values?: Readonly<Record<number, Partial<Record<Name, string>>>>;
  readonly flags?: Readonly<Record<number, Partial<Record<Name, string>>>>;
  readonly without?: readonly string[];
  readonly months?: readonly string[];
}

/** The form of NOAA's file: everything quoted and padded, flags beside each value. */
function file({ values = {}, flags = {}, without = [], months }: FileOptions = {}): string {
  const rows = minimaF.map((minimumF, month): [string, string][] => {
    const number = months?.[month] ?? String(month + 1).padStart(2, '0');
    const given: Record<Name, string> = {
      'MLY-TMAX-NORMAL': (minimumF + 20).toFixed(1),
      'MLY-TMIN-NORMAL': minimumF.toFixed(1),
      'MLY-PRCP-NORMAL': '2.50',
    };
    return [
      ['STATION', 'TEST0000001'],
      ['NAME', 'TEST STATION, NONE'],
      ['month', number],
      ...names.flatMap((name): [string, string][] => [
        [name, (values[month]?.[name] ?? given[name]).padStart(8)],
        [`meas_flag_${name}`, flags[month]?.[name] ?? ' '],
      ]),
    ];
  });
  const kept = rows.map((row) => row.filter(([name]) => !without.includes(name)));
  const line = (cells: string[]): string => cells.map((cell) => `"${cell}"`).join(',');
  return [
    line(kept[0]!.map(([name]) => name)),
    ...kept.map((row) => line(row.map(([, value]) => value))),
    '',
  ].join('\n');
}

const read = (text: string) => readMonthlyNormalsCsv('content/regions/m.csv', text);
const told = (text: string): string[] =>
  read(text).diagnostics.map(({ severity, place, message }) => `${severity} ${place!.line}: ${message}`);

describe('a file without fault', () => {
  test('has twelve months in Celsius and millimetres', () => {
    const { normals, diagnostics } = read(file());
    expect(diagnostics).toEqual([]);
    expect(normals).toMatchObject({ station: 'TEST0000001', name: 'TEST STATION, NONE' });
    expect(normals!.minimumC[3]).toBeCloseTo(-0.0556, 4);
    expect(normals!.maximumC[0]).toBeCloseTo(-1.5, 4);
    expect(normals!.rainMm).toEqual(Array.from({ length: 12 }, () => 63.5));
  });

  test('months are put in order by their number, however it is written', () => {
    const order = ['2010-12', '2010-11', '10', '09', '8', '7', '6', '5', '4', '3', '2', '201001'];
    expect(read(file({ months: order })).normals!.minimumC[0]).toBeCloseTo((18.1 - 32) / 1.8, 9);
  });

  test('rain may be absent, or be given for some months only, which is told', () => {
    const without = read(file({ without: ['MLY-PRCP-NORMAL'] }));
    expect(without.diagnostics).toEqual([]);
    expect(without.normals!.rainMm).toBeUndefined();
    const gap = file({ values: { 4: { 'MLY-PRCP-NORMAL': '-9999' } } });
    expect(told(gap)).toEqual(['warning 6: MLY-PRCP-NORMAL of month 5 is not given.']);
    expect(read(gap).normals!.rainMm).toBeUndefined();
  });

  test('rain that rounds to zero is zero', () => {
    const dry = file({
      flags: { 6: { 'MLY-PRCP-NORMAL': 'X' } },
      values: { 7: { 'MLY-PRCP-NORMAL': '-7777' } },
    });
    expect(read(dry).normals!.rainMm!.slice(6, 8)).toEqual([0, 0]);
  });

  test('the 1981-2010 form is in tenths of a degree and hundredths of an inch', () => {
    const rows = minimaF.map(
      (minimumF, month) =>
        `"S","N","${month + 1}","${Math.round(minimumF * 10) + 200}","R","${Math.round(minimumF * 10)}","R","250","R"`,
    );
    const columns = names.flatMap((name) => [`"${name}"`, `"${name}_ATTRIBUTES"`]).join(',');
    const { normals, diagnostics } = read(`"STATION","NAME","month",${columns}\n${rows.join('\n')}\n`);
    expect(diagnostics).toEqual([]);
    expect(normals!.minimumC[0]).toBeCloseTo((9.3 - 32) / 1.8, 9);
    expect(normals!.maximumC[0]).toBeCloseTo((29.3 - 32) / 1.8, 9);
    expect(normals!.rainMm![0]).toBeCloseTo(63.5, 9);
  });
});

describe('faults', () => {
  test.each([
    [
      'a month missing',
      file().split('\n').toSpliced(3, 1).join('\n'),
      'error 1: The file has no row for month 3.',
    ],
    [
      'a month twice',
      file({ months: ['01', '01', '03', '04', '05', '06', '07', '08', '09', '10', '11', '12'] }),
      'error 3: Month 1 stands on line 2 already.',
    ],
    [
      'a month that is none',
      file({ months: ['01', '02', '03', '04', '05', '06', '07', '08', '09', '10', '11', '13'] }),
      'error 13: "13" is not a month from 01 to 12.',
    ],
    [
      'a value missing by its flag',
      file({ flags: { 1: { 'MLY-TMIN-NORMAL': 'M' } } }),
      'error 3: MLY-TMIN-NORMAL of month 2 is not given.',
    ],
    [
      'a value that cannot be',
      file({ values: { 1: { 'MLY-TMIN-NORMAL': '437' } } }),
      'error 3: MLY-TMIN-NORMAL of month 2 is "437", which cannot be.',
    ],
    [
      'a maximum below its minimum',
      file({ values: { 1: { 'MLY-TMAX-NORMAL': '10.0' } } }),
      'error 3: The mean maximum of month 2 is below its mean minimum.',
    ],
    [
      'a column missing',
      file({ without: ['MLY-TMIN-NORMAL'] }),
      'error 1: The header has no column MLY-TMIN-NORMAL.',
    ],
    [
      'no month column',
      file({ without: ['month'] }),
      'error 1: The header has no column month or DATE, so the months cannot be told apart.',
    ],
    ['an empty file', '', 'error 1: The file is empty.'],
  ])('%s', (_, text, message) => {
    expect(told(text)).toEqual([message]);
    expect(read(text).normals).toBeUndefined();
  });

  test('the field at fault is pointed at', () => {
    const text = file({ values: { 1: { 'MLY-TMIN-NORMAL': 'warm' } } });
    const { place } = read(text).diagnostics[0]!;
    expect(text.split('\n')[place!.line - 1]!.slice(place!.column - 1)).toMatch(/^" *warm"/);
  });
});
