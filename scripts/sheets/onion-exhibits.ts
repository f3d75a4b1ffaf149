/** The exhibits of an onion sheet: classes and daylight, a season from planting to curing, sizes to buy, and bolting. */
import type { BoltingRow } from '../agronomy/onion-buying.ts';
import type { OnionSeason } from '../agronomy/onion-season.ts';
import { dayLengthHours } from '../climate/day-length.ts';
import { dayLengthChart } from '../drawings/charts/day-length-chart.ts';
import { onionPlanting, type PlantedOnion } from '../drawings/charts/onion-planting.ts';
import { sizeRuler } from '../drawings/charts/size-ruler.ts';
import { column, figure, inline, keyNumbers, table } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import type { Finding, FindingValue } from '../findings/finding.ts';
import type { Crop, DayLengthClass } from '../records/schemas/crop.ts';
import type { PlantingWindows } from '../agronomy/windows.ts';
import type { CropFacts } from './facts.ts';
import type { Exhibit } from './names.ts';
import { onionFacts, type OnionFacts } from './onion-findings.ts';
import { capitalized } from './printer.ts';
import { chartYear, type SheetContext } from './sheet-context.ts';

/** Every exhibit that the record of this crop allows; none for a crop without day-length classes and sizes. */
export function onionExhibits(context: SheetContext, known: CropFacts): readonly [string, Exhibit][] {
  const { facts } = context;
  const onion = onionFacts(known.crop, known.windows, {
    place: { latitudeDeg: facts.latitudeDeg, year: facts.year },
    air: facts.air,
  });
  return [
    ...(onion ? dayLengthExhibits(context, known) : []),
    ...(onion ? seasonExhibits(context, known, onion) : []),
    ...sizeExhibits(context, known.crop),
  ];
}

/** What to plant, when it forms bulbs and when it goes in the ground. */
export function bulbGlance(
  { facts, printer, wording: { say } }: SheetContext,
  { crop, windows }: CropFacts,
): Block {
  const finding = (id: string): Finding => facts.findings.get(`${crop.id}.${id}`)!;
  return keyNumbers([
    { value: printer.print(finding('class'), { style: 'cell' }), label: say('glance.onion-class') },
    { value: printer.print(finding('bulbing'), { style: 'cell' }), label: say('glance.bulbing') },
    { value: printer.print(facts.longestDay, { style: 'cell' }), label: say('glance.longest-day') },
    { value: printer.print(windows[0]!.plant, { style: 'cell' }), label: say('glance.plant-onions') },
  ]);
}

function dayLengthExhibits(context: SheetContext, known: CropFacts): [string, Exhibit][] {
  return [
    ['day-length-classes', { wide: true, blocks: () => [classTable(context, known)] }],
    ['day-length-chart', { wide: true, blocks: () => [dayChart(context, known.crop)] }],
  ];
}

/** Every class: its hours, where it is grown, what the light here does for it after planting, and whether it fits. */
function classTable(context: SheetContext, { crop, windows }: CropFacts): Block {
  const {
    facts,
    printer,
    wording: { say, measures, dates },
  } = context;
  const dated = windows.find(({ plant }) => plant.value.kind === 'date-range')?.plant.value;
  const find = (id: string): Finding => facts.findings.get(id)!;
  const [main, also] = ['class', 'class-also'].map((name) => find(`${crop.id}.${name}`));
  const fits = (name: DayLengthClass): string => {
    if (main!.value.kind === 'choice' && main!.value.value === name) return say('onion.fits-best');
    if (also!.value.kind === 'choice' && also!.value.value === name) return say('onion.fits-also');
    return say('onion.fits-not');
  };
  const rows = (crop.dayLength ?? []).map((record): TableRow => {
    const starts = find(`${crop.id}.${record.class}.bulbing-starts`);
    return {
      cells: [
        inline(capitalized(say(`choice.${record.class}`))),
        [printer.print(find(`${crop.id}.${record.class}.bulbing`), { style: 'cell' })],
        inline(
          say('onion.latitude-range', {
            low: measures.number(record.latitudes.low),
            high: measures.number(record.latitudes.high),
          }),
        ),
        inline(
          starts.value.kind === 'none'
            ? say(`onion.${starts.value.reason}`)
            : printer.print(starts, { style: 'cell' }),
        ),
        ...(dated ? [lightCell(context, find(`${crop.id}.${record.class}.light`))] : []),
        inline(fits(record.class)),
      ],
    };
  });
  return table({
    id: `${crop.id}-classes`,
    caption: say('onion.classes-caption'),
    columns: [
      column(say('onion.class'), { weight: 0.95 }),
      column(say('onion.bulbing'), { weight: 0.65 }),
      column(say('onion.latitudes'), { weight: 0.7 }),
      column(say('onion.starts'), { weight: 0.8 }),
      ...(dated?.kind === 'date-range'
        ? [column(say('onion.planted-on', { date: dates.short(dated.from) }), { weight: 2.6 })]
        : []),
      column(say('onion.fits'), { weight: 0.9 }),
    ],
    groups: [{ rows }],
  });
}

/** What the light does for a class that is planted on the first day, in a few words. */
function lightCell(
  { facts, printer, wording: { say, dates } }: SheetContext,
  light: Finding,
): readonly Inline[] {
  if (light.value.kind !== 'choice') return [printer.print(light, { style: 'cell' })];
  const dateOf = (name: string): string => {
    const value = facts.findings.get(light.id.replace(/light$/, name))?.value;
    return value?.kind === 'date' ? dates.short(value.day) : '';
  };
  const [starts, full] = [dateOf('bulbing-starts'), dateOf('bulbing-full')];
  const choice =
    light.value.value === 'light-soon' && full === '' ? 'light-soon-for-some' : light.value.value;
  return [printer.printAs(light, say(`onion.${choice}`, { starts, full }))];
}

/** The year's day length with the hours at which each class starts its bulbs. */
function dayChart(context: SheetContext, crop: Crop): Block {
  const {
    facts,
    wording: { say, measures, dates },
    printer,
  } = context;
  const year = chartYear(facts);
  const hoursOn = (day: number): number =>
    dayLengthHours({ latitudeDeg: facts.latitudeDeg, year: facts.year, day });
  const points = Array.from({ length: year.to - year.from + 1 }, (_, index) => year.from + index).map(
    (day) => ({ day, hours: hoursOn(day) }),
  );
  const bands = (crop.dayLength ?? []).map((record) => {
    const [starts, full] = ['bulbing-starts', 'bulbing-full'].map(
      (name) => facts.findings.get(`${crop.id}.${record.class}.${name}`)!.value,
    );
    const when = bandDates(context, { starts, full, fullHours: record.bulbing.high });
    return { record, when, hours: measures.short('day-length', record.bulbing.low, record.bulbing.high) };
  });
  const main = facts.findings.get(`${crop.id}.bulbing-starts`)?.value;
  const marks =
    main?.kind === 'date' ? [{ day: main.day, hours: hoursOn(main.day), label: dates.short(main.day) }] : [];
  const options = {
    id: 'day-length',
    widthMm: 175,
    heightMm: 52,
    ...year,
    points,
    bands: bands.map(({ record, when, hours }) => ({
      fromHours: record.bulbing.low,
      toHours: record.bulbing.high,
      label: say('onion.band-label', { class: capitalized(say(`choice.${record.class}`)), hours }),
      dates: when,
    })),
    marks,
    monthLabels: dates.months(),
    hoursLabel: say('onion.chart-hours'),
    hourText: (hours: number) => measures.number(hours),
    alternative: say('onion.chart-alternative', {
      latitude: measures.latitude(facts.latitudeDeg),
      shortest: printer.words(facts.shortestDay.value).first,
      longest: printer.words(facts.longestDay.value).first,
      bands: bands
        .map(({ record, when, hours }) =>
          say('onion.chart-band', {
            class: capitalized(say(`choice.${record.class}`)),
            hours,
            dates: when,
          }),
        )
        .join(' '),
    }),
  };
  return figure(dayLengthChart(options), {
    narrow: dayLengthChart({ ...options, id: 'day-length-narrow', widthMm: 92 }),
  });
}

/** When the day is as long as a class needs, for its label in the chart. */
function bandDates(
  { wording: { say, dates, measures } }: SheetContext,
  {
    starts,
    full,
    fullHours,
  }: { starts: FindingValue | undefined; full: FindingValue | undefined; fullHours: number },
): string {
  const [from, to] = [starts, full].map((value) =>
    value?.kind === 'date' ? dates.short(value.day) : undefined,
  );
  if (from !== undefined) return to === undefined ? say('onion.band-from', { date: from }) : `${from}–${to}`;
  if (starts?.kind === 'none' && starts.reason === 'day-never-that-long') return say('onion.band-never');
  return to === undefined
    ? say('onion.day-always-longer')
    : say('onion.band-always', { date: to, hours: measures.short('day-length', fullHours) });
}

/** Drawings that stand beside the text are as wide as the outer columns of the narrower paper. */
const columnMm = 53;

/** Drawings from the figures of the crop: sizes at true scale, and how deep and how far apart. */
function sizeExhibits(context: SheetContext, crop: Crop): [string, Exhibit][] {
  const {
    facts,
    wording: { say, measures },
  } = context;
  const length = (id: string): number | undefined => {
    const value = facts.findings.get(`${crop.id}.${id}`)?.value;
    if (value?.kind === 'quantity' && value.dimension === 'length') return value.value;
    return value?.kind === 'range' && value.dimension === 'length' ? value.high : undefined;
  };
  const [set, transplant] = [length('set-diameter'), length('transplant-diameter')];
  if (set === undefined || transplant === undefined) return [];
  const barMm = 50.8;
  const bar = measures.both('length', barMm);
  const marks = [
    {
      diameterMm: transplant,
      label: say('onion.transplant-label', { size: measures.both('length', transplant) }),
    },
    { diameterMm: set, label: say('onion.set-label', { size: measures.both('length', set) }) },
  ];
  const ruler = sizeRuler({
    id: 'true-sizes',
    widthMm: columnMm,
    marks,
    bar: { lengthMm: barMm, parts: 4, label: say('onion.ruler-bar', { bar }) },
    alternative: say('onion.ruler-alternative', { labels: marks.map(({ label }) => label).join('; '), bar }),
  });
  const spacing = crop.spacing.inRow.value;
  const spacingLabel = measures.both('length', spacing.low, spacing.high);
  const planted = (caption: string, depthMm: number, thicknessMm: number): PlantedOnion => ({
    caption,
    depthMm,
    depthLabel: measures.both('length', depthMm),
    spacingMm: spacing.high,
    spacingLabel,
    thicknessMm,
  });
  const plantDepth = length('plant-depth') ?? crop.depth.value.high;
  const setDepth = length('set-depth') ?? crop.depth.value.high;
  const planting = onionPlanting({
    id: 'onion-planting',
    widthMm: columnMm,
    transplant: planted(say('onion.transplant'), plantDepth, transplant),
    set: planted(say('onion.set'), setDepth, set),
    alternative: say('onion.planting-alternative', {
      plantDepth: measures.both('length', plantDepth),
      setDepth: measures.both('length', setDepth),
      spacing: spacingLabel,
    }),
  });
  return [
    ['true-sizes', { wide: false, blocks: () => [figure(ruler)] }],
    ['planting-drawing', { wide: false, blocks: () => [figure(planting)] }],
  ];
}

function seasonExhibits(context: SheetContext, known: CropFacts, onion: OnionFacts): [string, Exhibit][] {
  const { bolting } = onion;
  return [
    ['onion-season', { wide: true, blocks: () => [seasonTable(context, known, onion)] }],
    [
      'bolting-risk',
      {
        wide: false,
        blocks: () => (bolting.length > 0 ? [boltingRisks(context, known.crop, bolting)] : []),
      },
    ],
    ['sorted-sets', { wide: false, blocks: () => setsTable(context, known.crop) }],
  ];
}

/** Each way of planting the classes that fit, from starting indoors to the end of curing. */
function seasonTable(context: SheetContext, { crop, windows }: CropFacts, { seasons }: OnionFacts): Block {
  const { say } = context.wording;
  const dated = windows.filter(({ plant }) => plant.value.kind === 'date-range');
  const shown = dated.length > 0 ? dated : windows;
  const classes = [...new Set(seasons.map(({ dayLengthClass }) => dayLengthClass))];
  const rowsOf = (dayLengthClass: DayLengthClass | undefined): TableRow[] =>
    shown.map((planting) =>
      seasonRow(
        context,
        planting,
        seasons.find((season) => season.dayLengthClass === dayLengthClass && season.planting === planting),
      ),
    );
  return table({
    id: `${crop.id}-season`,
    caption: say('onion.season-caption'),
    columns: [
      column(say('dates-table.how'), { weight: 1.35 }),
      column(say('dates-table.start-indoors'), { weight: 1.15 }),
      column(say('onion.plant'), { weight: 1.05 }),
      column(say('onion.bulbs-start'), { weight: 1.05 }),
      column(say('onion.leaves-first'), { weight: 0.7 }),
      column(say('onion.leaves-last'), { weight: 0.7 }),
      column(say('onion.tops-fall'), { weight: 1.05 }),
      column(say('onion.cured-by'), { weight: 0.7 }),
    ],
    groups:
      classes.length > 1
        ? classes.map((name) => ({
            header: inline(say('onion.class-onions', { class: capitalized(say(`choice.${name}`)) })),
            rows: rowsOf(name),
          }))
        : [{ rows: rowsOf(classes[0]) }],
  });
}

function seasonRow(
  { printer, wording: { say, dates } }: SheetContext,
  { method, season, startIndoors, plant, harvest }: PlantingWindows,
  grown: OnionSeason | undefined,
): TableRow {
  const how = say(`dates-table.how-${method}`);
  const cell = (finding: Finding | undefined): readonly Inline[] =>
    !finding || (finding.value.kind === 'none' && finding.value.reason === 'leaves-of-seed')
      ? inline('–')
      : [printer.print(finding, { style: 'cell' })];
  const cured = grown?.curing;
  return {
    cells: [
      inline(
        season === 'overwinter'
          ? say('onion.overwinter', { how })
          : season === 'fall'
            ? say('dates-table.fall', { how })
            : how,
      ),
      cell(startIndoors),
      cell(plant),
      cell(grown?.bulbing),
      cell(grown?.leavesFirst),
      cell(grown?.leavesLast),
      cell(grown?.harvest ?? harvest),
      cured?.value.kind === 'date-range'
        ? [printer.printAs(cured, dates.short(cured.value.to))]
        : cell(cured),
    ],
  };
}

/** Risk by size, planted on the first, the middle and the last day of the window. */
function boltingRisks(
  { printer, wording: { say, dates, measures } }: SheetContext,
  crop: Crop,
  rows: readonly BoltingRow[],
): Block {
  const days = (rows[0]?.risks ?? []).map(({ inputs }) => {
    const day = inputs.find(({ name }) => name === 'planting-day')?.value;
    return day?.kind === 'date' ? dates.short(day.day) : '';
  });
  const size = ({ kind, size: name, low, high }: BoltingRow): string =>
    say(`onion.size-${kind}-${name}`, {
      low: low === undefined ? '' : measures.short('length', low),
      high: high === undefined ? '' : measures.short('length', high),
      range: low === undefined || high === undefined ? '' : measures.short('length', low, high),
    });
  const groupOf = (kind: BoltingRow['kind']) => ({
    header: inline(say(kind === 'sets' ? 'onion.set' : 'onion.transplant')),
    rows: rows
      .filter((row) => row.kind === kind)
      .map((row): TableRow => ({
        cells: [inline(size(row)), ...row.risks.map((risk) => [printer.print(risk, { style: 'cell' })])],
      })),
  });
  return table({
    id: `${crop.id}-bolting`,
    caption: say('onion.bolting-caption'),
    columns: [
      column(say('onion.thickness'), { weight: 2 }),
      ...(['early', 'mid', 'late'] as const).map((when, index) =>
        column(say(`onion.planted-${when}`, { date: days[index] ?? '' })),
      ),
    ],
    groups: [groupOf('transplant'), groupOf('sets')],
  });
}

/** What to do with sets of each size; nothing where the record has no sizes for them. */
function setsTable(
  { facts, printer, wording: { say, measures } }: SheetContext,
  crop: Crop,
): readonly Block[] {
  const finding = (id: string): Finding | undefined => facts.findings.get(`${crop.id}.${id}`);
  const [small, large] = [finding('small-set-diameter'), finding('set-diameter')];
  const [depth, green, greenDays] = [finding('set-depth'), finding('green-depth'), finding('green-days')];
  if (!small || !large || !depth || !green || !greenDays) return [];
  const lengthOf = ({ value }: Finding): number =>
    value.kind === 'quantity' ? value.value : value.kind === 'range' ? value.high : 0;
  const [low, high] = [lengthOf(small), lengthOf(large)];
  const [lowWords, highWords] = [measures.short('length', low), measures.short('length', high)];
  const row = (size: readonly Inline[], use: readonly Inline[], deep: Finding): TableRow => ({
    cells: [size, use, [printer.print(deep, { style: 'cell' })]],
  });
  const days = printer.cellWords(greenDays.value).first;
  return [
    table({
      id: `${crop.id}-sets`,
      caption: say('onion.sets-caption'),
      columns: [
        column(say('onion.thickness'), { weight: 1.1 }),
        column(say('onion.use'), { weight: 2.2 }),
        column(say('onion.depth'), { weight: 0.7 }),
      ],
      groups: [
        {
          rows: [
            row(
              [printer.printAs(small, say('onion.below', { high: lowWords }))],
              inline(say('onion.use-thin')),
              depth,
            ),
            row(inline(measures.short('length', low, high)), inline(say('onion.use-middling')), depth),
            row(
              [printer.printAs(large, say('onion.above', { low: highWords }))],
              [printer.printAs(greenDays, say('onion.use-thick', { days }))],
              green,
            ),
          ],
        },
      ],
    }),
  ];
}
