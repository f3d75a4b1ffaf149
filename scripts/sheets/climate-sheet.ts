/** The climate sheet: what a region's freezes, temperatures, soil and days are like, with the record behind them. */
import { dayNumber } from '../climate/calendar.ts';
import { annualDegreeDays, accumulate, monthlyDegreeDays } from '../climate/degree-days.ts';
import { dayLengthOn } from '../climate/day-length.ts';
import { noonAltitude } from '../climate/noon-altitude.ts';
import { soilReaches } from '../climate/soil-temperature.ts';
import {
  maximumOn,
  minimumOn,
  type SoilTemperatureYear,
  type TemperatureYear,
} from '../climate/temperature-year.ts';
import { degreeDayChart } from '../drawings/charts/degree-day-chart.ts';
import { freezeCurve } from '../drawings/charts/freeze-curve.ts';
import { temperatureChart } from '../drawings/charts/temperature-chart.ts';
import { column, figure, inline, keyNumbers, table, together } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import { none, type DateFinding, type Finding } from '../findings/finding.ts';
import { fromHeld, toHeld } from '../quantities/units.ts';
import { freezeChances } from '../records/schemas/region.ts';
import { climateFreezes, type ClimateFreezes } from './climate-freezes.ts';
import { freezeExhibits } from './freeze-exhibits.ts';
import type { Exhibit } from './names.ts';
import { chartYear, type SheetContext, type SheetParts } from './sheet-context.ts';

/** Depth at which sheets tell the temperature of the soil: two inches, where most large seed lies or just below. */
const soilDepthMm = 50.8;
/** Bases that growers count from: cool-season crops, and corn and most warm-season crops. */
const basesF = [40, 50] as const;
/** Soil temperatures that common seed waits for. */
const soilStepsF = [40, 50, 60, 65] as const;

export function climateSheetParts(context: SheetContext): SheetParts {
  const { air, soil } = context.facts;
  const freezes = climateFreezes(context);
  const exhibits: (readonly [string, Exhibit])[] = [
    ...freezeExhibits(context),
    ...freezes.exhibits,
    ['at-a-glance', { wide: true, blocks: () => [glance(context, freezes)] }],
    ['freeze-curve', { wide: true, blocks: () => curve(context) }],
    ['months', { wide: true, blocks: () => [together([months(context)])] }],
    ['temperature-chart', { wide: true, blocks: () => (air ? [temperatures(context, air)] : []) }],
    ['degree-day-chart', { wide: true, blocks: () => (air ? [degreeDays(context, air)] : []) }],
    ['soil-dates', { wide: true, blocks: () => (soil ? [soilDates(context, soil)] : []) }],
  ];
  const findings = [...freezes.findings, ...warmth(context)];
  return {
    exhibits: new Map(exhibits),
    findings: new Map(findings.map((finding) => [finding.id, finding])),
  };
}

/** The year's degree days above each base, or that the record gives no temperatures: prose asks by them what to show. */
function warmth({ facts: { air } }: SheetContext): readonly Finding[] {
  return basesF.map((baseF) =>
    air
      ? annualDegreeDays(air, { baseC: toHeld(baseF, 'F') })
      : {
          id: `degree-days.annual.${baseF}f`,
          value: none('temperatures-not-given'),
          method: 'region.record',
          inputs: [],
          sources: [],
        },
  );
}

/** The same chart for a phone: as wide as its screen, with the words at their size. */
const narrow = (id: string): { id: string; widthMm: number } => ({ id: `${id}-narrow`, widthMm: 92 });

/** The freeze dates, or the days where none can be dated; how long the season lasts; how warm it is. */
function glance({ facts, printer, wording: { say } }: SheetContext, { usualSeason }: ClimateFreezes): Block {
  const at32 = facts.freeze.get(32)!;
  const [last, first] = [at32.last[50], at32.first[50]];
  const midsummer = noonAltitude({
    latitudeDeg: facts.latitudeDeg,
    year: facts.year,
    day: facts.south ? 355 : 172,
  });
  const dated = last?.value.kind === 'date' && first?.value.kind === 'date';
  const items: [Finding | undefined, string][] = [
    ...((dated
      ? [
          [last, 'glance.last-freeze'],
          [first, 'glance.first-freeze'],
          [usualSeason, 'climate.season'],
        ]
      : [
          [facts.longestDay, 'glance.longest-day'],
          [facts.shortestDay, 'climate.shortest-day'],
        ]) satisfies [Finding | undefined, string][]),
    [facts.air && annualDegreeDays(facts.air, { baseC: toHeld(50, 'F') }), 'climate.degree-days'],
    [facts.air && dated ? undefined : midsummer, 'climate.noon'],
  ];
  return keyNumbers(
    items.flatMap(([finding, label]) =>
      finding ? [{ value: printer.print(finding, { style: 'cell' }), label: say(label) }] : [],
    ),
  );
}

function isNotGiven({ value }: DateFinding): boolean {
  return (
    value.kind === 'none' && ['freeze-threshold-not-given', 'freeze-chance-not-given'].includes(value.reason)
  );
}

/** Nothing where not one date is known: a picture of empty rows would say less than the words beside it. */
function curve({ facts, wording: { say, measures, dates } }: SheetContext): readonly Block[] {
  const temperature = (thresholdF: number): string => measures.short('temperature', toHeld(thresholdF, 'F'));
  const days = (
    findings: Readonly<Partial<Record<number, DateFinding>>>,
  ): { chance: number; day: number }[] =>
    freezeChances.flatMap((chance) => {
      const value = findings[chance]?.value;
      return value?.kind === 'date' ? [{ chance, day: value.day }] : [];
    });
  const given = [...facts.freeze].filter(([, found]) =>
    Object.values(found.last).some((finding) => !isNotGiven(finding)),
  );
  const rows = given.map(([thresholdF, found]) => {
    const [last, first] = [days(found.last), days(found.first)];
    const note = last.length + first.length === 0 ? { note: say(curveNote(found.last[10])) } : {};
    return { threshold: temperature(thresholdF), last, first, ...note };
  });
  if (rows.every(({ last, first }) => last.length + first.length === 0)) return [];
  const thresholds = given.map(([thresholdF]) => thresholdF);
  const options = {
    id: 'freeze-curve',
    widthMm: 175,
    ...chartYear(facts),
    monthLabels: dates.months(),
    rows,
    lastHeading: say('climate.curve-last'),
    firstHeading: say('climate.curve-first'),
    chanceLabel: say('climate.curve-chance'),
    chanceText: (chance: number) => say('climate.percent', { chance }),
    dateText: (day: number) => dates.short(day),
    alternative: say('climate.curve-alternative', {
      warmest: temperature(Math.max(...thresholds)),
      coldest: temperature(Math.min(...thresholds)),
    }),
  };
  return [figure(freezeCurve(options), { narrow: freezeCurve({ ...options, ...narrow('freeze-curve') }) })];
}

/** What stands in a lane without dates. */
function curveNote(likeliest: DateFinding | undefined): string {
  const reason = likeliest?.value.kind === 'none' ? likeliest.value.reason : '';
  if (reason === 'freeze-all-year') return 'climate.curve-all-year';
  return reason === 'freeze-never' ? 'climate.curve-never' : 'climate.curve-none';
}

/** The degrees of the publisher's first system, bare, for an axis. */
function axisDegrees({ guide }: SheetContext, celsius: number): number {
  return guide.publisher.units === 'customary-first' ? fromHeld(celsius, 'F') : celsius;
}

function temperatures(context: SheetContext, air: TemperatureYear): Block {
  const {
    facts,
    wording: { say, measures, dates },
  } = context;
  const { from, to } = chartYear(facts);
  const days = Array.from({ length: to - from + 1 }, (_, index) => from + index);
  const degrees = (celsius: number): number => axisDegrees(context, celsius);
  const customary = context.guide.publisher.units === 'customary-first';
  const { soil } = facts;
  const lines = soil
    ? [
        {
          label: say('climate.soil', { depth: measures.short('length', soilDepthMm) }),
          style: 'heavy' as const,
          points: days.map((day) => ({ day, value: degrees(soil.at(day, soilDepthMm)) })),
        },
      ]
    : [];
  const options = {
    id: 'temperatures',
    widthMm: 175,
    heightMm: 57,
    from,
    to,
    monthLabels: dates.months(),
    band: days.map((day) => ({
      day,
      low: degrees(minimumOn(air, day)),
      high: degrees(maximumOn(air, day)),
    })),
    bandLabels: { high: say('climate.high'), low: say('climate.low') },
    lines,
    marks: [],
    levels: [{ value: degrees(0), label: say('climate.freezing') }],
    tick: { every: customary ? 20 : 10, text: (value: number) => `${measures.number(value)}°` },
    axisLabel: `${say('climate.temperature-axis')} (${customary ? '°F' : '°C'})`,
    alternative: say('climate.temperature-alternative', {
      region: facts.region.name,
      soil: soil ? 'yes' : 'no',
      coldest: measures.short('temperature', Math.min(...air.minimumC)),
      warmest: measures.short('temperature', Math.max(...air.maximumC)),
    }),
  };
  return figure(temperatureChart(options), {
    narrow: temperatureChart({ ...options, ...narrow('temperatures') }),
  });
}

function degreeDays({ facts, wording: { say, measures, dates } }: SheetContext, air: TemperatureYear): Block {
  const { from, to } = chartYear(facts);
  const lines = basesF.map((baseF) => {
    const options = { baseC: toHeld(baseF, 'F') };
    const sumTo = (day: number): number => accumulate(air, from, day, options) * 1.8;
    const base = measures.short('temperature', options.baseC);
    const points = Array.from({ length: Math.ceil((to - from + 1) / 7) }, (_, week) =>
      Math.min(to, from + week * 7),
    );
    return {
      base,
      label: say('climate.degree-line', { base }),
      total: sumTo(to),
      points: points.map((day) => ({ day, sum: sumTo(day) })),
    };
  });
  const options = {
    id: 'degree-days',
    widthMm: 175,
    heightMm: 42,
    from,
    to,
    monthLabels: dates.months(),
    lines: lines.map(({ label, points }) => ({ label, points })),
    tick: { every: 1000, text: (value: number) => measures.number(value) },
    axisLabel: say('climate.degree-axis'),
    alternative: say('climate.degree-alternative', {
      lines: lines
        .map(({ base, total }) => say('climate.degree-entry', { total: measures.number(total), base }))
        .join('; '),
    }),
  };
  return figure(degreeDayChart(options), {
    narrow: degreeDayChart({ ...options, ...narrow('degree-days') }),
  });
}

/** Monthly means of the record, with soil, rain and degree days where they are known, and day and sun beside them. */
function months({ facts, printer, wording: { say, measures, dates } }: SheetContext): Block {
  const { soil, air, latitudeDeg, year } = facts;
  const data = air && facts.region.temperatureData;
  const rainMm = data?.rainMm;
  const degreeDayMonths = air
    ? basesF.map((baseF) => monthlyDegreeDays(air, { baseC: toHeld(baseF, 'F') }))
    : [];
  const temperature = (celsius: number): readonly Inline[] => inline(measures.short('temperature', celsius));
  const rows = dates.months().map((name, month): TableRow => {
    const day = dayNumber({ month: month + 1, day: 15 });
    const noon = noonAltitude({ latitudeDeg, year, day });
    const dayLength = dayLengthOn({ latitudeDeg, year, day });
    return {
      cells: [
        inline(name),
        ...(data ? [temperature(data.minimumC[month]!), temperature(data.maximumC[month]!)] : []),
        ...(soil ? [temperature(soil.at(day, soilDepthMm))] : []),
        ...(rainMm ? [inline(measures.bareLength(rainMm[month]!))] : []),
        [printer.print(dayLength, { style: 'cell' })],
        [
          noon.value.kind === 'none'
            ? printer.printAs(noon, say('climate.no-sun'))
            : printer.print(noon, { style: 'cell' }),
        ],
        ...degreeDayMonths.map((perMonth) => [printer.print(perMonth[month]!, { style: 'cell' })]),
      ],
    };
  });
  const numbers = { align: 'number' } as const;
  return table({
    id: 'months',
    caption: say('climate.months-caption'),
    columns: [
      column(say('climate.month'), { weight: 0.8 }),
      ...(data
        ? [column(say('climate.average-low'), numbers), column(say('climate.average-high'), numbers)]
        : []),
      ...(soil ? [column(say('climate.soil-column'), numbers)] : []),
      ...(rainMm ? [column(say('climate.rain'), { ...numbers, unit: measures.tableUnit })] : []),
      column(say('climate.day-column'), { ...numbers, weight: 1.4 }),
      column(say('climate.noon-column'), numbers),
      ...(air
        ? basesF.map((baseF) =>
            column(
              say('climate.degree-column', { base: measures.short('temperature', toHeld(baseF, 'F')) }),
              {
                ...numbers,
                weight: 1.3,
              },
            ),
          )
        : []),
    ],
    groups: [{ rows }],
    notes: [
      soil
        ? say('climate.months-note-soil', { depth: measures.short('length', soilDepthMm) })
        : say('climate.months-note'),
      ...(air ? [say('climate.degree-note')] : []),
    ],
  });
}

/** When the soil reaches the temperatures that seed waits for, and for which crops that is enough. */
function soilDates(
  { facts, printer, wording: { say, measures } }: SheetContext,
  soil: SoilTemperatureYear,
): Block {
  const from = facts.south ? 200 : 20;
  const rows = soilStepsF.map((stepF): TableRow => {
    const temperatureC = toHeld(stepF, 'F');
    const reached = soilReaches({ soil, depthMm: soilDepthMm, temperatureC, from, direction: 'rising' });
    const below = soilStepsF[soilStepsF.indexOf(stepF) - 1] ?? 0;
    const crops = facts.crops
      .filter(({ crop }) => {
        const minimumF = crop.soilTemperature ? fromHeld(crop.soilTemperature.minimum.low, 'F') : undefined;
        return minimumF !== undefined && minimumF <= stepF + 0.5 && minimumF > below + 0.5;
      })
      .map(({ crop }) => crop.plural);
    return {
      cells: [
        inline(measures.both('temperature', temperatureC)),
        [printer.print(reached, { style: 'cell' })],
        inline(crops.length > 0 ? crops.slice(0, 6).join(', ') : '–'),
      ],
    };
  });
  return table({
    id: 'soil-dates',
    caption: say('climate.soil-caption', { depth: measures.short('length', soilDepthMm) }),
    columns: [
      column(say('climate.soil-crop'), { weight: 1.2 }),
      column(say('climate.soil-date'), { weight: 0.9 }),
      column(say('climate.soil-for'), { weight: 2.4 }),
    ],
    groups: [{ rows }],
  });
}
