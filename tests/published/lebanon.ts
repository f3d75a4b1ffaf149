/**
 * Published figures of Lebanon Municipal Airport, NH (43.6264 N).
 *
 * Source: NOAA National Centers for Environmental Information, U.S. Climate Normals 1991-2020 and 1981-2010, annual/seasonal
 * and monthly normals, station USW00094765.
 */
import { toHeld } from '../../scripts/quantities/units.ts';

const heldC = (degreesF: readonly number[]): readonly number[] => degreesF.map((value) => toHeld(value, 'F'));

/** MLY-TMIN-NORMAL and MLY-TMAX-NORMAL, 1991-2020, January first. */
export const monthlyMeans1991To2020 = {
  minimumC: heldC([9.3, 11, 20.7, 31.9, 43.7, 52.4, 57.8, 56.2, 48.6, 37.4, 27.7, 18.1]),
  maximumC: heldC([30.3, 33.9, 43, 56.6, 69.7, 77.9, 82.7, 81.1, 72.9, 59.8, 46.8, 35.5]),
  sources: ['noaa-monthly-normals-1991-2020'],
};

export interface FreezeRow {
  readonly thresholdF: number;
  /** ANN-TMIN-PRBLST and -PRBFST at 10 to 90 %. */
  readonly last: string;
  readonly first: string;
  /** ANN-TMIN-PRBGSL at 10 to 90 %. */
  readonly season: readonly number[];
}

// prettier-ignore
export const freeze1991To2020: readonly FreezeRow[] = [
  { thresholdF: 36, last: '06/06 06/02 05/29 05/26 05/22 05/20 05/16 05/12 05/07', first: '09/12 09/17 09/20 09/23 09/26 09/28 10/01 10/03 10/07', season: [144, 138, 133, 129, 125, 121, 117, 112, 106] },
  { thresholdF: 32, last: '05/24 05/20 05/16 05/12 05/09 05/06 05/04 05/01 04/27', first: '09/23 09/28 10/01 10/03 10/06 10/08 10/11 10/14 10/19', season: [167, 160, 155, 152, 148, 144, 141, 136, 128] },
  { thresholdF: 28, last: '05/11 05/07 05/03 04/30 04/29 04/26 04/24 04/21 04/17', first: '10/03 10/07 10/10 10/13 10/15 10/18 10/22 10/26 11/01', season: [190, 182, 177, 174, 170, 167, 163, 158, 152] },
  { thresholdF: 24, last: '04/30 04/25 04/22 04/20 04/17 04/14 04/11 04/08 04/04', first: '10/13 10/18 10/21 10/25 10/28 10/31 11/03 11/05 11/11', season: [212, 206, 202, 197, 193, 190, 185, 181, 174] },
  { thresholdF: 20, last: '04/18 04/14 04/10 04/08 04/05 04/03 04/02 03/30 03/23', first: '10/26 10/31 11/02 11/05 11/08 11/11 11/15 11/18 11/23', season: [234, 228, 223, 219, 216, 213, 208, 203, 197] },
  { thresholdF: 16, last: '04/08 04/04 04/02 03/31 03/29 03/26 03/22 03/18 03/14', first: '11/07 11/11 11/15 11/18 11/21 11/25 11/28 12/01 12/06', season: [257, 250, 245, 241, 237, 233, 228, 223, 216] },
];

// prettier-ignore
export const freeze1981To2010: readonly FreezeRow[] = [
  { thresholdF: 36, last: '06/04 05/31 05/28 05/25 05/21 05/18 05/15 05/12 05/07', first: '09/13 09/18 09/21 09/23 09/26 09/28 09/30 10/02 10/05', season: [143, 137, 132, 128, 125, 121, 118, 113, 107] },
  { thresholdF: 32, last: '05/24 05/19 05/15 05/12 05/09 05/06 05/03 04/30 04/26', first: '09/25 09/29 10/01 10/03 10/05 10/07 10/09 10/12 10/15', season: [165, 159, 154, 150, 147, 143, 140, 135, 129] },
  { thresholdF: 28, last: '05/13 05/07 05/03 05/01 04/28 04/25 04/22 04/18 04/11', first: '10/03 10/06 10/09 10/12 10/14 10/16 10/19 10/22 10/28', season: [188, 181, 176, 172, 168, 165, 161, 156, 150] },
  { thresholdF: 24, last: '04/30 04/25 04/21 04/18 04/14 04/10 04/07 04/04 04/01', first: '10/12 10/17 10/20 10/23 10/26 10/30 11/01 11/05 11/10', season: [214, 208, 202, 198, 194, 190, 185, 180, 173] },
  { thresholdF: 20, last: '04/17 04/12 04/08 04/06 04/03 04/01 03/31 03/27 03/21', first: '10/25 10/30 11/02 11/05 11/08 11/12 11/16 11/20 11/25', season: [239, 232, 227, 223, 218, 214, 210, 205, 198] },
  { thresholdF: 16, last: '04/08 04/04 04/01 03/30 03/27 03/24 03/21 03/18 03/14', first: '11/08 11/13 11/17 11/20 11/23 11/26 11/29 12/02 12/07', season: [260, 253, 248, 244, 241, 237, 233, 228, 221] },
];

/** The station's file in the form of 1981-2010: one column `_ATTRIBUTES` to a figure, shares in tenths of a percent. */
export function olderFile(rows: readonly FreezeRow[]): string {
  const chances = [10, 20, 30, 40, 50, 60, 70, 80, 90];
  const columns: [string, string][] = rows.flatMap(({ thresholdF, last, first, season }) => [
    ...figure(`PRBOCC-LSTH0${thresholdF}`, '1000'),
    ...chances.flatMap((chance, index) => [
      ...figure(`PRBLST-T${thresholdF}FP${chance}`, last.split(' ')[index]!),
      ...figure(`PRBFST-T${thresholdF}FP${chance}`, first.split(' ')[index]!),
      ...figure(`PRBGSL-T${thresholdF}FP${chance}`, String(season[index])),
    ]),
  ]);
  const all = [['STATION', 'USW00094765'], ['NAME', 'LEBANON MUNICIPAL AIRPORT, NH US'], ...columns];
  const line = (at: 0 | 1): string => all.map((column) => `"${column[at]}"`).join(',');
  return `${line(0)}\n${line(1)}\n`;
}

function figure(end: string, value: string): [string, string][] {
  return [
    [`ANN-TMIN-${end}`, value],
    [`ANN-TMIN-${end}_ATTRIBUTES`, 'R'],
  ];
}
