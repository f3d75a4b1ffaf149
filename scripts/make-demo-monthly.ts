/**
 * Makes the invented monthly normals file of the demonstration region at 30 degrees north, in the form of a NOAA U.S. Climate
 * Normals 1991-2020 monthly by-station file, reduced to the columns that matter. Every number in it is made up here.
 *
 *     npx tsx scripts/make-demo-monthly.ts > content/regions/gullhammock-monthly.csv
 */
import { pathToFileURL } from 'node:url';

/** The whole file as text. */
export function demoMonthlyCsv(): string {
  const rows = minimumF.map((_, month) => columnsOf(month));
  const quoted = (texts: readonly string[]): string => texts.map((text) => `"${text}"`).join(',');
  const header = quoted(rows[0]!.map((column) => column.name));
  return [header, ...rows.map((row) => quoted(row.map((column) => column.value))), ''].join('\n');
}

interface Column {
  readonly name: string;
  readonly value: string;
}

/** A mild, wet coast: hot nights from June to September, most rain in summer. January first, degrees Fahrenheit and inches. */
const minimumF = [42.3, 45.6, 51.4, 58.1, 66.2, 72.3, 74.1, 73.9, 70.2, 60.1, 50.0, 44.6];
const maximumF = [60.4, 63.7, 69.5, 75.8, 82.7, 87.9, 89.6, 89.8, 86.7, 79.4, 70.1, 62.9];
const rainIn = [5.1, 4.7, 5.6, 5.0, 4.9, 6.2, 7.3, 6.8, 5.4, 3.6, 4.4, 5.0];

function columnsOf(month: number): Column[] {
  const number = String(month + 1).padStart(2, '0');
  const mean = (minimumF[month]! + maximumF[month]!) / 2;
  return [
    { name: 'STATION', value: 'INVENTED030' },
    { name: 'DATE', value: number },
    { name: 'LATITUDE', value: ' 30.3000' },
    { name: 'LONGITUDE', value: ' -88.2000' },
    { name: 'ELEVATION', value: '   11.0' },
    { name: 'NAME', value: 'GULLHAMMOCK COUNTY, INVENTED' },
    { name: 'month', value: number },
    { name: 'day', value: '99' },
    { name: 'hour', value: '99' },
    ...figure('MLY-TAVG-NORMAL', mean.toFixed(1)),
    ...figure('MLY-TMAX-NORMAL', maximumF[month]!.toFixed(1)),
    ...figure('MLY-TMIN-NORMAL', minimumF[month]!.toFixed(1)),
    ...figure('MLY-PRCP-NORMAL', rainIn[month]!.toFixed(2)),
  ];
}

function figure(name: string, value: string): Column[] {
  return [
    { name, value: value.padStart(8) },
    { name: `meas_flag_${name}`, value: ' ' },
    { name: `comp_flag_${name}`, value: 'S' },
    { name: `years_${name}`, value: '30' },
  ];
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) process.stdout.write(demoMonthlyCsv());
