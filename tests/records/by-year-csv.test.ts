/** Daily files in the by-year form, and ordered files whose columns say their unit. */
import { describe, expect, test } from 'vitest';
import { readStationCsv } from '../../scripts/records/station-csv.ts';

const read = (text: string) => readStationCsv('content/regions/x.csv', text);
const told = (text: string): string[] =>
  read(text).diagnostics.map(({ place, message }) => `${place!.line}:${place!.column} ${message}`);

const header = 'ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n';
const rows = [
  'TEST0000001,19910101,TMAX,56,,,7,0700',
  'TEST0000001,19910101,TMIN,-33,,,7,0700',
  'TEST0000001,19910101,PRCP,0,T,,7,0700',
  'TEST0000001,19910102,TMIN,-50,,I,7,',
  'TEST0000001,19910103,TMAX,100,,,7,',
];
const text = `${rows.join('\n')}\n`;
const days = [
  { year: 1991, month: 1, day: 1, minimumC: -3.3, maximumC: 5.6 },
  { year: 1991, month: 1, day: 2, minimumC: null, maximumC: null },
  { year: 1991, month: 1, day: 3, minimumC: null, maximumC: 10 },
];

describe('by-year files', () => {
  test.each([
    ['without a header', text],
    ['with a header', header + text],
    ['with a byte order mark and Windows line ends', `\uFEFF${text.replaceAll('\n', '\r\n')}`],
    ['out of order', `${rows.toReversed().join('\n')}\n`],
  ])('%s', (_, file) => {
    const { station, diagnostics } = read(file);
    expect(diagnostics).toEqual([]);
    expect(station).toEqual({ station: 'TEST0000001', name: 'TEST0000001', days });
  });

  test('without maxima the days have none', () => {
    expect(read(`${rows[1]}\n`).station!.days).toEqual([{ year: 1991, month: 1, day: 1, minimumC: -3.3 }]);
  });

  test.each([
    [
      'a second station',
      `${text}TEST0000002,19910104,TMIN,1,,,7,\n`,
      '6:1 The file has rows of station TEST0000002 besides those of TEST0000001.',
    ],
    ['a value given twice', `${text}${rows[1]}\n`, '6:13 TMIN of 19910101 stands on line 2 already.'],
    [
      'a date out of the calendar',
      `${text}TEST0000001,19910229,TMIN,1,,,7,\n`,
      '6:13 19910229 is not in the calendar.',
    ],
    [
      'a decimal',
      `${text}TEST0000001,19910104,TMIN,1.5,,,7,\n`,
      '6:27 TMIN is "1.5"; the by-station file gives whole tenths of a degree Celsius.',
    ],
    [
      'an absurd maximum',
      `${text}TEST0000001,19910104,TMAX,700,,,7,\n`,
      '6:27 TMAX is 700, which in tenths of a degree Celsius is 70 C.',
    ],
    ['a row cut short', `${text}TEST0000001,19910104,TMIN\n`, '6:1 The row has 3 fields; a row has 8.'],
    ['no minima', `${rows[0]}\n`, '1:1 The file has no row with the element TMIN.'],
    ['a column missing', header.replace('Q_FLAG', 'Q') + text, '1:1 The header has no column Q_FLAG.'],
  ])('%s', (_, file, message) => {
    expect(told(file)).toEqual([message]);
    expect(read(file).station).toBeUndefined();
  });

  test('with a header the lines are those of the file', () => {
    expect(told(`${header}${text}${rows[1]}\n`)).toEqual(['7:13 TMIN of 19910101 stands on line 3 already.']);
  });
});

describe('ordered files, in degrees and without flags', () => {
  const ordered = (columns: string, ...lines: string[]): string =>
    `STATION,NAME,DATE,${columns}\n${lines.map((line) => `TEST0000001,"TEST, NONE",${line}\n`).join('')}`;

  test.each([
    ['Fahrenheit', ordered('TAVG,TMAX_F,TMIN_F', '1991-01-01,,50,23'), -5, 10],
    ['Celsius', ordered('TAVG,TMAX_C,TMIN_C', '1991-01-01,,10.0,-5.0'), -5, 10],
  ])('%s', (_, file, minimumC, maximumC) => {
    const { station, diagnostics } = read(file);
    expect(diagnostics).toEqual([]);
    const [day] = station!.days;
    expect(day!.minimumC).toBeCloseTo(minimumC, 9);
    expect(day!.maximumC).toBeCloseTo(maximumC, 9);
  });

  test('a file that does not say its unit is asked for it', () => {
    const { station, diagnostics } = read(ordered('TAVG,TMAX,TMIN', '1991-01-01,,50,23'));
    expect(station).toBeUndefined();
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics[0]!.message).toContain('nor the unit of TMIN is known');
    expect(diagnostics[0]!.hint).toMatch(/Fahrenheit or Celsius\? .* TMIN_F or TMIN_C/);
  });

  test.each([
    ['a word', '1991-01-01,,50,cold', '2:41 TMIN_F is "cold", which is not a number of degrees Fahrenheit.'],
    [
      'a value in tenths of Celsius under a wrong name',
      '1991-01-01,,50,-330',
      '2:41 TMIN_F is -330, which in degrees Fahrenheit is -201.1 C.',
    ],
  ])('%s', (_, line, message) => {
    expect(told(ordered('TAVG,TMAX_F,TMIN_F', line))).toEqual([message]);
  });
});
