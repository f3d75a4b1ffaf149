import { describe, expect, test } from 'vitest';
import { readStationCsv } from '../../scripts/records/station-csv.ts';

const file = 'content/regions/station.csv';
/** The form of NOAA's by-station files: quoted, padded here and there, with other elements between. */
const header =
  '"STATION","DATE","LATITUDE","LONGITUDE","ELEVATION","NAME","TMAX","TMAX_ATTRIBUTES","TMIN","TMIN_ATTRIBUTES"';

interface Cells {
  station?: string;
  date?: string;
  tmin?: string;
  flags?: string;
}

function row({
  station = 'TEST0000001',
  date = '1991-01-01',
  tmin = '  -33',
  flags = ',,W,2400',
}: Cells): string {
  return `"${station}","${date}"," 45.1","-93.2"," 300.0","TEST STATION, NONE","  100",",,W","${tmin}","${flags}"`;
}

function csv(...rows: Cells[]): string {
  return [header, ...rows.map(row), ''].join('\n');
}

const read = (text: string) => readStationCsv(file, text);
const told = (text: string): string[] =>
  read(text).diagnostics.map(({ place, message }) => `${place!.line}:${place!.column} ${message}`);

describe('a file without fault', () => {
  test('values are tenths of a degree, padding and other columns do not matter', () => {
    const { station, diagnostics } = read(csv({ date: '1991-01-01' }, { date: '1991-01-02', tmin: '0' }));
    expect(diagnostics).toEqual([]);
    expect(station).toEqual({
      station: 'TEST0000001',
      name: 'TEST STATION, NONE',
      days: [
        { year: 1991, month: 1, day: 1, minimumC: -3.3, maximumC: 10 },
        { year: 1991, month: 1, day: 2, minimumC: 0, maximumC: 10 },
      ],
    });
  });

  test.each([
    ['a value without quality flag is kept', '-33', ',,W', -3.3],
    ['a blank quality flag is no flag', '-33', ', ,W,0700', -3.3],
    ['a measurement flag says nothing about quality', '-33', 'H,,S', -3.3],
    ['a value that failed a quality check is dropped', '-33', ',I,W', null],
    ['an absurd value that failed a quality check is dropped without a word', '-1733', ',X,W,2400', null],
    ['an empty value is missing', '', '', null],
    ['-9999 is missing', '-9999', ',,W', null],
  ])('%s', (_, tmin, flags, minimumC) => {
    const { station, diagnostics } = read(csv({ tmin, flags }));
    expect(diagnostics).toEqual([]);
    expect(station!.days).toEqual([{ year: 1991, month: 1, day: 1, minimumC, maximumC: 10 }]);
  });

  test('rows out of order are put in order', () => {
    const { station, diagnostics } = read(
      csv({ date: '1992-02-29' }, { date: '1991-12-31' }, { date: '1992-01-01' }),
    );
    expect(diagnostics).toEqual([]);
    expect(station!.days.map((day) => `${day.year}-${day.month}-${day.day}`)).toEqual([
      '1991-12-31',
      '1992-1-1',
      '1992-2-29',
    ]);
  });

  test.each([
    ['a byte order mark', (text: string) => `\uFEFF${text}`],
    ['Windows line ends', (text: string) => text.replaceAll('\n', '\r\n')],
    ['blank lines at the end', (text: string) => `${text}\n\n`],
  ])('%s makes no difference', (_, change) => {
    expect(read(change(csv({}))).station).toEqual(read(csv({})).station);
  });
});

describe('faults stand at their line and column', () => {
  test.each([
    [
      'a date in another form',
      { date: '1/31/1991' },
      '3:15 "1/31/1991" is not a date in the form 1991-04-30.',
    ],
    ['a date that is not in the calendar', { date: '1991-02-29' }, '3:15 1991-02-29 is not in the calendar.'],
    ['a month 13', { date: '1991-13-01' }, '3:15 1991-13-01 is not in the calendar.'],
    [
      'a year far ahead',
      { date: '9999-01-01' },
      '3:15 9999-01-01 lies outside the years that a record can be of (1750 to 2200).',
    ],
    ['a date given twice', { date: '1991-01-01' }, '3:15 1991-01-01 stands on line 2 already.'],
    [
      'a decimal value',
      { tmin: '31.5' },
      '3:88 TMIN is "31.5"; the by-station file gives whole tenths of a degree Celsius.',
    ],
    [
      'a value with a letter',
      { tmin: '-33a' },
      '3:88 TMIN is "-33a"; the by-station file gives whole tenths of a degree Celsius.',
    ],
    [
      'a value hotter than the earth',
      { tmin: '601' },
      '3:88 TMIN is 601, which in tenths of a degree Celsius is 60.1 C.',
    ],
    [
      'a value colder than the earth',
      { tmin: '-901' },
      '3:88 TMIN is -901, which in tenths of a degree Celsius is -90.1 C.',
    ],
    [
      'flags in another form',
      { flags: 'W' },
      '3:96 TMIN_ATTRIBUTES is "W" where the measurement, quality and source flags belong.',
    ],
    [
      'a second station',
      { station: 'TEST0000002' },
      '3:1 The file has rows of station TEST0000002 besides those of TEST0000001.',
    ],
  ])('%s', (_, cells, message) => {
    const text = csv({ date: '1991-01-01' }, { date: '1991-01-02', ...cells });
    expect(told(text)).toEqual([message]);
    expect(read(text).station).toBeUndefined();
  });

  test.each([
    ['an empty file', '', '1:1 The file is empty.'],
    ['a header alone', `${header}\n`, '1:1 The file has a header and no rows.'],
    ['a missing column', csv({}).replace('"DATE"', '"DAY"'), '1:1 The header has no column DATE.'],
    [
      'an order-form file whose unit is not known',
      'STATION,NAME,DATE,TMIN\nTEST0000001,"TEST, NONE",1991-01-01,31\n',
      '1:1 The header has no column TMIN_ATTRIBUTES; without the flags neither the quality nor the unit of TMIN is known.',
    ],
    [
      'semicolons between the fields',
      'STATION;NAME;DATE\nTEST0000001;TEST;1991-01-01\n',
      '1:1 The fields are separated by semicolons, so no column is found.',
    ],
    [
      'a row cut short',
      `${csv({})}"TEST0000001","1991-01-02"\n`,
      '3:1 The row has 2 fields; the header has 10.',
    ],
    [
      'a quotation mark too many',
      `${csv({})}"TEST"0000001","1991-01-02"\n`,
      '3:1 The quotation marks do not match, so the fields cannot be told apart.',
    ],
  ])('%s', (_, text, message) => {
    expect(told(text)).toEqual([message]);
    expect(read(text).station).toBeUndefined();
  });

  test('every fault has the code, the file and a hint', () => {
    for (const diagnostic of read(csv({ date: '1/31/1991' }, { tmin: 'x' })).diagnostics) {
      expect(diagnostic).toMatchObject({ code: 'station-csv', severity: 'error', place: { file } });
      expect(diagnostic.hint).toMatch(/\.$/);
    }
  });
});

describe('many faults in one run', () => {
  test('different faults are all told', () => {
    const text = csv(
      { date: '1/1/1991' },
      { date: '1991-01-02', tmin: '1.5' },
      { date: '1991-01-32', tmin: '700' },
    );
    expect(told(text).map((line) => line.slice(0, 4))).toEqual(['2:15', '3:88', '4:15', '4:88']);
  });

  test('a row cut short does not hide the faults of the other rows', () => {
    const text = `${csv({ date: '1991-02-30' })}"TEST0000001","1991-01-02"\n`;
    expect(told(text)).toEqual([
      '3:1 The row has 2 fields; the header has 10.',
      '2:15 1991-02-30 is not in the calendar.',
    ]);
  });

  test('of one kind five are told and the rest counted', () => {
    const text = csv(...Array.from({ length: 30 }, (_, index) => ({ date: `${index + 1}.1.1991` })));
    const lines = told(text);
    expect(lines).toHaveLength(6);
    expect(lines[4]).toBe('6:15 "5.1.1991" is not a date in the form 1991-04-30.');
    expect(lines[5]).toBe('7:15 From here on the same fault as on line 2 occurs 25 more times.');
  });

  test('six of one kind are all told, since a count would take as much room', () => {
    const text = csv(...Array.from({ length: 6 }, (_, index) => ({ date: `${index + 1}.1.1991` })));
    expect(told(text)[5]).toBe('7:15 "6.1.1991" is not a date in the form 1991-04-30.');
  });
});

describe('a file in whole degrees', () => {
  const year = (tminOf: (day: number) => number): Cells[] =>
    Array.from({ length: 365 }, (_, index) => ({
      date: new Date(Date.UTC(1991, 0, 1 + index)).toISOString().slice(0, 10),
      tmin: String(tminOf(index)),
    }));
  const wave = (index: number): number => -Math.cos((2 * Math.PI * index) / 365);

  test.each([
    ['whole degrees Fahrenheit, 10 to 70', (day: number) => Math.round(40 + 30 * wave(day)), 1],
    ['tenths of a degree Celsius, -12 to 21', (day: number) => Math.round(45 + 165 * wave(day)), 0],
    ['a warm island, 20 to 26 C', (day: number) => Math.round(230 + 30 * wave(day)), 0],
  ])('%s', (_, tminOf, warnings) => {
    const { station, diagnostics } = read(csv(...year(tminOf)));
    expect(station).toBeDefined();
    expect(diagnostics.map(({ severity }) => severity)).toEqual(
      Array.from({ length: warnings }, () => 'warning'),
    );
  });
});
