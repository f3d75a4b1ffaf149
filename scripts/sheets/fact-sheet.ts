/** The fact sheet: prose about one crop, with the exhibits that its figures and the region's days allow. */
import { dayLengthHours } from '../climate/day-length.ts';
import { dayLengthChart } from '../drawings/charts/day-length-chart.ts';
import { onionPlanting, type PlantedOnion } from '../drawings/charts/onion-planting.ts';
import { sizeRuler } from '../drawings/charts/size-ruler.ts';
import { column, figure, inline, keyNumbers, table } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import type { Finding, FindingValue } from '../findings/finding.ts';
import type { Crop, DayLengthClass } from '../records/schemas/crop.ts';
import type { CropFacts } from './facts.ts';
import { freezeExhibits } from './freeze-exhibits.ts';
import type { Exhibit } from './names.ts';
import { capitalized } from './printer.ts';
import { atAGlance } from './planting-chart.ts';
import { chartYear, type SheetContext, type SheetParts } from './sheet-context.ts';

export function factSheetParts(context: SheetContext): SheetParts {
  const known = context.facts.crops.find(({ crop }) => crop.id === context.sheet.crop);
  const exhibits: [string, Exhibit][] = [
    ...freezeExhibits(context),
    [
      'at-a-glance',
      { wide: true, blocks: () => [known?.crop.dayLength ? bulbGlance(context, known) : atAGlance(context)] },
    ],
    ...(known
      ? [
          ['planting-dates', { wide: false, blocks: () => [plantingDates(context, known)] }] as [
            string,
            Exhibit,
          ],
        ]
      : []),
    ...(known?.crop.dayLength ? dayLengthExhibits(context, known.crop) : []),
    ...(known ? sizeExhibits(context, known.crop) : []),
  ];
  return { exhibits: new Map(exhibits) };
}

/** What to plant, when it forms bulbs and when it goes in the ground. */
function bulbGlance({ facts, printer, wording: { say } }: SheetContext, { crop, windows }: CropFacts): Block {
  const finding = (id: string): Finding => facts.findings.get(`${crop.id}.${id}`)!;
  return keyNumbers([
    { value: printer.print(finding('class'), { style: 'cell' }), label: say('glance.onion-class') },
    { value: printer.print(finding('bulbing'), { style: 'cell' }), label: say('glance.bulbing') },
    { value: printer.print(facts.longestDay, { style: 'cell' }), label: say('glance.longest-day') },
    { value: printer.print(windows[0]!.plant, { style: 'cell' }), label: say('glance.plant-onions') },
  ]);
}

/** Each way of planting this crop with its dates here. */
function plantingDates({ printer, wording: { say } }: SheetContext, { crop, windows }: CropFacts): Block {
  const cell = (finding: Finding | undefined): readonly Inline[] =>
    finding ? [printer.print(finding, { style: 'cell' })] : inline('–');
  const rows = windows.map(({ method, season, startIndoors, plant, harvest }): TableRow => {
    const how = say(`dates-table.how-${method}`);
    return {
      cells: [
        inline(season === 'fall' ? say('dates-table.fall', { how }) : how),
        cell(startIndoors),
        cell(plant),
        cell(harvest),
      ],
    };
  });
  return table({
    id: `${crop.id}-dates`,
    caption: say('dates-table.caption'),
    columns: [
      column(say('dates-table.how'), { weight: 1.3 }),
      column(say('dates-table.start-indoors')),
      column(say('dates-table.plant')),
      column(say('dates-table.harvest')),
    ],
    groups: [{ rows }],
  });
}

function dayLengthExhibits(context: SheetContext, crop: Crop): [string, Exhibit][] {
  return [
    ['day-length-classes', { wide: false, blocks: () => [classTable(context, crop)] }],
    ['day-length-chart', { wide: true, blocks: () => [dayChart(context, crop)] }],
  ];
}

/** Every class: its hours, where it is grown, when the day here is long enough, and whether it fits. */
function classTable({ facts, printer, wording: { say, measures } }: SheetContext, crop: Crop): Block {
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
        inline(fits(record.class)),
      ],
    };
  });
  return table({
    id: `${crop.id}-classes`,
    caption: say('onion.classes-caption'),
    columns: [
      column(say('onion.class'), { weight: 1.2 }),
      column(say('onion.bulbing'), { weight: 0.9 }),
      column(say('onion.latitudes'), { weight: 0.9 }),
      column(say('onion.starts'), { weight: 1.2 }),
      column(say('onion.fits'), { weight: 1 }),
    ],
    groups: [{ rows }],
  });
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
    heightMm: 72,
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
    widthMm: 112,
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
    widthMm: 112,
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
