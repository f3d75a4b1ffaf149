import { describe, expect, test } from 'vitest';
import { readNormalsCsv } from '../../scripts/records/normals-csv.ts';
import { normalsCsv, type ThresholdColumns } from './normals-file.ts';

const file = 'content/regions/normals.csv';
const freezing: ThresholdColumns = {
  thresholdF: 32,
  occurrence: '98.6',
  last: ['03/14', '03/07', '03/02', '02/25', '02/21', '02/17', '02/12', '02/07', '01/31'],
  first: ['11/16', '11/22', '11/27', '12/01', '12/05', '12/09', '12/13', '12/18', '12/25'],
};
const rare: ThresholdColumns = {
  thresholdF: 20,
  occurrence: '16.4',
  last: ['02/01', '01/26', '01/21', '01/17', '01/13', '01/09', '01/05', '12/31', '12/25'],
  first: ['12/19', '12/25', '12/30', '01/02', '01/06', '01/10', '01/13', '01/18', '01/24'],
};

const read = (text: string) => readNormalsCsv(file, text);
const told = (text: string): string[] =>
  read(text).diagnostics.map(({ severity, message }) => `${severity}: ${message}`);
const replaced = (dates: readonly string[], index: number, date: string): string[] => dates.with(index, date);

describe('a file without fault', () => {
  test('padded figures become day numbers and a share of years; dates may run over New Year', () => {
    const { normals, diagnostics } = read(normalsCsv([freezing, rare]));
    expect(diagnostics).toEqual([]);
    expect(normals).toMatchObject({
      station: 'TEST0000001',
      name: 'TEST STATION, NONE',
      period: '1991-2020',
    });
    expect(normals!.rows.map((row) => [row.thresholdC, row.occurrencePercent])).toEqual([
      [0, 98.6],
      [expect.closeTo(-6.667, 3), 16.4],
    ]);
    expect(normals!.rows[0]!.last).toEqual({
      10: 73,
      20: 66,
      30: 61,
      40: 56,
      50: 52,
      60: 48,
      70: 43,
      80: 38,
      90: 31,
    });
    expect([normals!.rows[1]!.last[90], normals!.rows[1]!.first[90]]).toEqual([359, 24]);
  });

  test('columns are found by name: the 2006-2020 order of flags is read, and told apart', () => {
    const { normals } = read(normalsCsv([freezing], { flagOrder: 'completeness-first' }));
    expect(normals!.period).toBe('2006-2020');
    expect(normals!.rows[0]!.occurrencePercent).toBe(98.6);
  });

  test('February 29 is taken as February 28', () => {
    const { normals } = read(normalsCsv([{ ...freezing, last: replaced(freezing.last, 3, '02/29') }]));
    expect(normals!.rows[0]!.last[40]).toBe(59);
  });
});

describe('figures that are not given', () => {
  const withFlag = (flag: string) =>
    normalsCsv([freezing, { ...rare, last: replaced(rare.last, 0, ''), flags: { 'PRBLST-T20FP10': flag } }]);

  test.each([
    ['M', 'the value is missing (flag M)'],
    ['W', 'the value is not used (flag W)'],
    ['Y', 'the threshold is reached in too few years (flag Y)'],
    ['V', 'the risk lasts all year (flag V)'],
    ['Z', 'NOAA found the value inconsistent with others (flag Z)'],
    [' ', 'the value is missing (flag M)'],
  ])('flag "%s"', (flag, why) => {
    const { normals } = read(withFlag(flag));
    expect(told(withFlag(flag))).toEqual([
      `warning: The last freeze at 20 F has no date at 10 percent: ${why}.`,
    ]);
    expect(normals!.rows[1]!.last[10]).toBeUndefined();
    expect(normals!.rows[1]!.last[20]).toBe(26);
  });

  test('a flagged value is not used, whatever stands in the field', () => {
    const { normals } = read(normalsCsv([freezing, { ...rare, flags: { 'PRBLST-T20FP10': 'Z' } }]));
    expect(normals!.rows[1]!.last[10]).toBeUndefined();
  });

  test.each([
    ['-9999', 'the value is missing (flag M)'],
    ['-8888', 'the date is not defined'],
    ['-6666', 'the threshold is reached in too few years (flag Y)'],
    ['-5555', 'NOAA found the value inconsistent with others (flag Z)'],
    ['-4444', 'the risk lasts all year (flag V)'],
    ['99/99', 'the date is not defined'],
  ])('special value %s', (value, why) => {
    const text = normalsCsv([freezing, { ...rare, first: replaced(rare.first, 4, value) }]);
    expect(told(text)).toEqual([`warning: The first freeze at 20 F has no date at 50 percent: ${why}.`]);
    expect(read(text).normals!.rows[1]!.first[50]).toBeUndefined();
  });

  test('a threshold reached in under 10 % of years needs no dates and no warning', () => {
    const none = Array.from({ length: 9 }, () => '');
    const { normals, diagnostics } = read(
      normalsCsv([freezing, { ...rare, occurrence: '3.1', last: none, first: none }]),
    );
    expect(diagnostics).toEqual([]);
    expect(normals!.rows[1]).toMatchObject({ occurrencePercent: 3.1, last: {}, first: {} });
  });

  test.each([
    ['flag X', '0.0', 'X'],
    ['-7777', '-7777', ' '],
  ])('an occurrence that rounds to zero is not zero (%s)', (_, occurrence, flag) => {
    const none = Array.from({ length: 9 }, () => '');
    const row = { ...rare, occurrence, last: none, first: none, flags: { 'PRBOCC-LSTH020': flag } };
    const percent = read(normalsCsv([freezing, row])).normals!.rows[1]!.occurrencePercent;
    expect(percent).toBeGreaterThan(0);
    expect(percent).toBeLessThan(0.05);
  });

  test('without its occurrence a threshold is left out, and without that of 32 F the file is refused', () => {
    const text = normalsCsv([freezing, { ...rare, occurrence: '', flags: { 'PRBOCC-LSTH020': 'M' } }]);
    expect(told(text)).toEqual([
      'warning: The share of years that reach 20 F is not given, so its dates cannot be turned into plain risk.',
    ]);
    expect(read(text).normals!.rows).toHaveLength(1);
    const refused = read(normalsCsv([{ ...freezing, occurrence: '' }]));
    expect(refused.normals).toBeUndefined();
    expect(refused.diagnostics.map(({ severity }) => severity)).toEqual(['error']);
  });

  test('without dates at 32 F the file is refused', () => {
    const refused = read(normalsCsv([{ ...freezing, last: Array.from({ length: 9 }, () => '-4444') }]));
    expect(refused.normals).toBeUndefined();
    expect(refused.diagnostics).toMatchObject([
      { severity: 'error', code: 'normals-csv', place: { file, line: 2 } },
    ]);
  });
});

describe('faults', () => {
  test.each([
    [
      'last dates the wrong way round',
      { last: freezing.last.toReversed() },
      'The last freeze dates at 32 F do not follow each other in order of their chance.',
    ],
    [
      'first dates the wrong way round',
      { first: freezing.first.toReversed() },
      'The first freeze dates at 32 F do not follow each other in order of their chance.',
    ],
    [
      'a day that is not in the calendar',
      { last: replaced(freezing.last, 2, '02/30') },
      '"02/30" is not a date in the form 05/09, month before day.',
    ],
    [
      'day before month',
      { first: replaced(freezing.first, 0, '16/11') },
      '"16/11" is not a date in the form 05/09, month before day.',
    ],
    [
      'a spreadsheet date',
      { first: replaced(freezing.first, 0, '16-Nov') },
      '"16-Nov" is not a date in the form 05/09, month before day.',
    ],
    ['tenths of a percent', { occurrence: '986' }, '"986" is not a share of years from 0 to 100 percent.'],
    [
      'a share that is no number',
      { occurrence: 'most' },
      '"most" is not a share of years from 0 to 100 percent.',
    ],
  ])('%s', (_, change, message) => {
    const text = normalsCsv([{ ...freezing, ...change }]);
    expect(told(text)).toEqual([`error: ${message}`]);
    expect(read(text).normals).toBeUndefined();
  });

  test('the column of the field at fault is named', () => {
    const text = normalsCsv([{ ...freezing, last: replaced(freezing.last, 2, '02/30') }]);
    const { place } = read(text).diagnostics[0]!;
    expect(text.split('\n')[place!.line - 1]!.slice(place!.column - 1, place!.column + 9)).toBe('"   02/30"');
  });

  test('every unreadable figure is told in one run', () => {
    const text = normalsCsv([{ ...freezing, occurrence: 'x', last: replaced(freezing.last, 2, 'y') }]);
    expect(told(text)).toHaveLength(2);
  });

  test.each([
    ['an empty file', '', 'The file is empty.'],
    [
      'columns missing',
      normalsCsv([freezing], { without: ['ANN-TMIN-PRBFST-T32FP70', 'meas_flag_ANN-TMIN-PRBFST-T32FP80'] }),
      'The header has no column ANN-TMIN-PRBFST-T32FP70, meas_flag_ANN-TMIN-PRBFST-T32FP80.',
    ],
    [
      '32 F missing altogether',
      normalsCsv([rare]),
      /^The header has no column ANN-TMIN-PRBOCC-LSTH032.* and 34 others\.$/,
    ],
    [
      'several stations',
      normalsCsv([freezing], { rows: 3 }),
      'The file has 3 rows; an annual file of one station has one.',
    ],
    [
      'the form of 1981-2010 with columns missing',
      '"STATION","NAME","ANN-TMIN-PRBLST-T32FP50","ANN-TMIN-PRBLST-T32FP50_ATTRIBUTES"\n"S","N","05/09","R"\n',
      /^The header has no column ANN-TMIN-PRBOCC-LSTH032, .* and 14 others\.$/,
    ],
  ])('%s', (_, text, message) => {
    const { normals, diagnostics } = read(text);
    expect(normals).toBeUndefined();
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics[0]!.message).toEqual(
      typeof message === 'string' ? message : expect.stringMatching(message),
    );
  });
});
