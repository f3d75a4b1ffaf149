/** Guide folders for invented places far from the demonstration regions: daily lows made by a seeded program. */
import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monthLengths } from '../../scripts/climate/temperature-curve.ts';
import { repository } from '../demo/demo-guide.ts';

export interface InventedPlace {
  readonly id: string;
  readonly latitudeDeg: number;
  /** Of the daily minimum over the year. */
  readonly meanC: number;
  /** Half of the difference between the minima of the warmest and the coldest day. */
  readonly halfC: number;
  /** Standard deviation of a day about the average. */
  readonly spreadC: number;
  /** How much warmer the day is than the night. */
  readonly dailyC: number;
}

/** Snow-free for some ten weeks, with the midnight sun. */
export const polarPlace: InventedPlace = {
  id: 'farnorth',
  latitudeDeg: 72,
  meanC: -12,
  halfC: 17,
  spreadC: 1.6,
  dailyC: 6,
};
/** Near the equator and near the sea: nights of 23 C all year. */
export const tropicalPlace: InventedPlace = {
  id: 'nearline',
  latitudeDeg: 5,
  meanC: 23,
  halfC: 0.8,
  spreadC: 0.8,
  dailyC: 8,
};
/** A southern inland climate with light freezes from fall to spring. */
export const southernPlace: InventedPlace = {
  id: 'southvale',
  latitudeDeg: -37.8,
  meanC: 7,
  halfC: 6,
  spreadC: 2.4,
  dailyC: 11,
};

export interface PlacesGuide {
  readonly root: string;
  remove(): Promise<void>;
}

/** A copy of the demonstration guide with the places as its only regions; what is in `bare` has freeze dates alone. */
export async function guideOfPlaces(
  places: readonly InventedPlace[],
  options: { readonly bare?: readonly InventedPlace[] } = {},
): Promise<PlacesGuide> {
  const root = await mkdtemp(join(tmpdir(), 'groundsheet-places-'));
  await cp(join(repository, 'content'), join(root, 'content'), { recursive: true });
  await cp(join(repository, 'crops'), join(root, 'crops'), { recursive: true });
  await rm(join(root, 'content/regions'), { recursive: true });
  await mkdir(join(root, 'content/regions'));
  const sources = await readFile(join(root, 'content/sources-regions.yaml'), 'utf8');
  await writeFile(join(root, 'content/sources-regions.yaml'), `${sources}\n${sourceYaml}`);
  const write = (name: string, text: string): Promise<void> =>
    writeFile(join(root, 'content/regions', name), text);
  for (const place of places) {
    await write(
      `${place.id}.yaml`,
      regionYaml(place, options.bare?.includes(place) ? '' : warmthYaml(place)),
    );
    await write(`${place.id}-daily.csv`, dailyCsv(place));
  }
  return { root, remove: () => rm(root, { recursive: true, force: true }) };
}

const sourceYaml = `- id: invented-place
  cite: Invented figures for a test. No such place exists.
  kind: invented
  seen: not-applicable
`;

const regionYaml = ({ id, latitudeDeg }: InventedPlace, more: string): string => `id: ${id}
name: ${id.charAt(0).toUpperCase()}${id.slice(1)} County
invented: true
latitude: ${latitudeDeg} deg
longitude: 20 deg
elevation: 100 m
freeze:
  daily: ${id}-daily.csv
  source: invented-place
${more}`;

function warmthYaml(place: InventedPlace): string {
  let before = 0;
  const means = monthLengths.map((length) => {
    const middle = before + length / 2;
    before += length;
    return averageMinimumC(place, middle);
  });
  const row = (values: readonly number[]): string => `[${values.map((c) => `${c.toFixed(1)} C`).join(', ')}]`;
  return `temperatures:
  minimum: ${row(means)}
  maximum: ${row(means.map((c) => c + place.dailyC))}
  source: invented-place
soil:
  texture: loam
  moisture: moist
  stones: none
  depth: 30 in
  ph: 6.5
  source: invented-place
`;
}

function averageMinimumC({ meanC, halfC, latitudeDeg }: InventedPlace, dayOfYear: number): number {
  const coldest = latitudeDeg < 0 ? 200 : 18;
  return meanC - halfC * Math.cos((2 * Math.PI * (dayOfYear - coldest)) / 365);
}

/** Fifteen years of lows in the form of a GHCN-Daily station file. */
function dailyCsv(place: InventedPlace): string {
  const random = seeded(Math.round(place.meanC * 100) + 7);
  const rows: string[] = [];
  const day = 86_400_000;
  for (let time = Date.UTC(2001, 0, 1); time < Date.UTC(2016, 0, 1); time += day) {
    const date = new Date(time);
    const inYear = (time - Date.UTC(date.getUTCFullYear(), 0, 0)) / day;
    const noise = Array.from({ length: 12 }, random).reduce((sum, value) => sum + value, -6);
    const tenths = Math.round((averageMinimumC(place, inYear) + place.spreadC * noise) * 10);
    rows.push(`"INVENTED","${date.toISOString().slice(0, 10)}","INVENTED PLACE","${tenths}",",,0"`);
  }
  return `${['"STATION","DATE","NAME","TMIN","TMIN_ATTRIBUTES"', ...rows].join('\n')}\n`;
}

/** Even numbers from 0 up to 1, the same for the same seed (mulberry32). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
