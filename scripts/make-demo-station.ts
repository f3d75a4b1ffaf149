/**
 * Makes the invented daily station file of the demonstration region at 45 degrees north, in the form of a NOAA
 * GHCN-Daily by-station file. Every number in it is made up here; the same seed gives the same file.
 *
 *     npx tsx scripts/make-demo-station.ts > content/regions/larkwether-daily.csv
 */
import { pathToFileURL } from 'node:url';
import { toHeld } from './quantities/units.ts';

/** The whole file as text. */
export function demoStationCsv(): string {
  const random = seededRandom(450_219);
  let departure = 0;
  let spell = 0;
  const rows = datesOf(1991, 2020).map((date) => {
    departure = nextDeparture(departure, dailyPersistence, random);
    spell = nextDeparture(spell, spellPersistence, random);
    const season = Math.cos((2 * Math.PI * (dayInYear(date) - coldestDay)) / 365.25);
    const spreadC = meanSpreadC + spreadRangeC * season;
    const minimumC = meanC - halfRangeC * season + spreadC * departure + spellSpreadC * spell;
    return row(date.toISOString().slice(0, 10), asObserved(minimumC), random());
  });
  return `${[header, ...rows].join('\n')}\n`;
}

/** A cold inland climate: coldest mean minimum in late January, daily departures wider in winter than in summer. */
const coldestDay = 20;
const meanC = 0.8;
const halfRangeC = 14.2;
const meanSpreadC = 3.9;
const spreadRangeC = 1.6;
/** How much of one day's departure is left on the next. */
const dailyPersistence = 0.62;
/** Early and late springs: a slow departure that lasts for weeks, on top of the daily one. */
const spellPersistence = 0.975;
const spellSpreadC = 2;

const header = '"STATION","DATE","NAME","TMIN","TMIN_ATTRIBUTES"';

/** Some days are missing, and a few carry a quality flag as values that failed a check do. */
function row(date: string, tenthsC: number, chance: number): string {
  const start = `"INVENTED045","${date}","LARKWETHER COUNTY, INVENTED"`;
  if (chance < 0.004) return `${start},"",""`;
  if (chance < 0.005) return `${start},"${tenthsC - 310}",",I,0"`;
  return `${start},"${tenthsC}",",,0"`;
}

/** Observers read whole degrees Fahrenheit; the archive keeps tenths of a degree Celsius. */
function asObserved(minimumC: number): number {
  const wholeF = Math.round((minimumC * 9) / 5 + 32);
  return Math.round(toHeld(wholeF, 'F') * 10);
}

/** The next step of a departure from the mean whose spread stays 1. */
function nextDeparture(departure: number, persistence: number, random: () => number): number {
  return persistence * departure + Math.sqrt(1 - persistence ** 2) * bellShaped(random);
}

function datesOf(firstYear: number, lastYear: number): Date[] {
  const day = 86_400_000;
  const start = Date.UTC(firstYear, 0, 1);
  const count = (Date.UTC(lastYear + 1, 0, 1) - start) / day;
  return Array.from({ length: count }, (_, index) => new Date(start + index * day));
}

function dayInYear(date: Date): number {
  return (date.getTime() - Date.UTC(date.getUTCFullYear(), 0, 0)) / 86_400_000;
}

/** A number from a nearly normal distribution of mean 0 and spread 1: the sum of twelve even ones. */
function bellShaped(random: () => number): number {
  return Array.from({ length: 12 }, random).reduce((sum, value) => sum + value, -6);
}

/** The mulberry32 generator: numbers from 0 up to 1, the same for the same seed on every machine. */
function seededRandom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) process.stdout.write(demoStationCsv());
