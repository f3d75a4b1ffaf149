/** The planting chart: every crop of the region through the year, to look at and as a table of the same dates. */
import {
  plantingChart,
  plantingChartNarrow,
  type PlantingChartOptions,
  type PlantingRow,
} from '../drawings/charts/planting-chart.ts';
import type { PlantingAct } from '../drawings/charts/acts.ts';
import { column, figure, inline, keyNumbers, mark, paragraph, table } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import type { DateRangeFinding, Finding } from '../findings/finding.ts';
import { lateFreezePercent } from '../agronomy/window-cold.ts';
import { isFrostFree } from '../agronomy/window-frost-free.ts';
import type { PlantingWindows } from '../agronomy/windows.ts';
import { defaultPlanForChance } from '../climate/planning-freeze.ts';
import { rangeOf } from '../wording/measures.ts';
import { cropGroups, groupPhrase, type CropGroup } from './crop-groups.ts';
import type { CropFacts, RegionFacts } from './facts.ts';
import { chartFreezeDates, freezeExhibits } from './freeze-exhibits.ts';
import type { Exhibit } from './names.ts';
import { capitalized } from './printer.ts';
import { chartYear, type SheetContext, type SheetParts } from './sheet-context.ts';
import { edgeRuleWords, type WindowEdge } from './window-rules.ts';

export function plantingChartParts(context: SheetContext): SheetParts {
  const exhibits: [string, Exhibit][] = [
    ...freezeExhibits(context),
    ['at-a-glance', { wide: true, blocks: () => [atAGlance(context)] }],
    ['planting-chart', { wide: true, blocks: () => charts(context) }],
    ['planting-dates', { wide: true, blocks: () => datesTable(context) }],
    ['planting-rules', { wide: true, blocks: () => rulesTable(context) }],
    ['planning-line', { wide: false, blocks: () => [planningLine(context)] }],
    ['planting-measures', { wide: true, blocks: () => measuresTable(context) }],
    ['crop-notes', { wide: true, blocks: () => cropNotes(context) }],
  ];
  return { exhibits: new Map(exhibits) };
}

/** The dates that make the sheet true, large. */
export function atAGlance({ facts, printer, wording: { say } }: SheetContext): Block {
  const at32 = facts.freeze.get(32)!;
  if (isFrostFree(facts.windowClimate))
    return keyNumbers(
      [
        { finding: facts.shortestDay, label: 'glance.shortest-day' },
        { finding: facts.longestDay, label: 'glance.longest-day' },
        ...(at32.last[10]?.value.kind === 'date'
          ? [{ finding: at32.last[10], label: 'glance.late-freeze' }]
          : []),
      ].map(({ finding, label }) => ({
        value: printer.print(finding, { style: 'cell' }),
        label: say(label),
      })),
    );
  const items = [
    { finding: at32.last[50], label: 'glance.last-freeze' },
    { finding: at32.first[50], label: 'glance.first-freeze' },
    { finding: facts.freezeFree, label: 'glance.freeze-free' },
    { finding: at32.last[10], label: 'glance.late-freeze' },
  ];
  return keyNumbers(
    items.flatMap(({ finding, label }) =>
      finding ? [{ value: printer.print(finding, { style: 'cell' }), label: say(label) }] : [],
    ),
  );
}

interface Bar {
  readonly act: PlantingAct;
  readonly finding: DateRangeFinding;
}

/** The acts of one planting as bars; setting out, sets and seed pieces are one act. */
function barsOf(windows: PlantingWindows): readonly Bar[] {
  const plant: PlantingAct = windows.method === 'direct-sow' ? 'direct-sow' : 'set-out';
  return [
    ...(windows.startIndoors ? [{ act: 'start-indoors' as const, finding: windows.startIndoors }] : []),
    { act: plant, finding: windows.plant },
    { act: 'harvest', finding: windows.harvest },
  ];
}

/** Plantings that have a date here. */
function datedWindows(known: CropFacts): readonly PlantingWindows[] {
  return known.windows.filter(
    ({ plant, harvest }) => plant.value.kind !== 'none' && harvest.value.kind !== 'none',
  );
}

/** No chart is higher than this, so that each fits on a page of either paper under its heading. */
const highestChartMm = 205;

/** The year of every crop; more crops than fit on a page go on in a second chart. */
function charts(context: SheetContext): readonly Block[] {
  const { facts, wording } = context;
  if (!facts.crops.some((known) => datedWindows(known).length > 0)) return noneDated(facts, wording);
  const pages: CropGroup[][] = [[]];
  for (const group of cropGroups(context.facts)) {
    for (const known of group.crops.filter((crop) => datedWindows(crop).length > 0)) {
      const page = pages.at(-1)!;
      const longer = withCrop(page, group.id, known);
      const fits =
        page.length === 0 || plantingChart(chartOptions(context, longer, 1)).heightMm <= highestChartMm;
      if (fits) pages[pages.length - 1] = longer;
      else pages.push(withCrop([], group.id, known));
    }
  }
  return pages
    .filter((groups) => groups.length > 0)
    .map((groups, index) => chart(context, groups, index + 1));
}

/** A sentence in place of a chart without a bar. */
function noneDated({ crops, region }: RegionFacts, { say }: SheetContext['wording']): readonly Block[] {
  const unknown = crops.some(({ windows }) =>
    windows.some(
      ({ plant: { value } }) => value.kind === 'none' && value.reason === 'no-freeze-no-temperatures',
    ),
  );
  return unknown ? [paragraph(say('dates-table.none-dated', { region: region.name }))] : [];
}

function withCrop(groups: readonly CropGroup[], id: CropGroup['id'], known: CropFacts): CropGroup[] {
  const last = groups.at(-1);
  if (last?.id !== id) return [...groups, { id, crops: [known] }];
  return [...groups.slice(0, -1), { id, crops: [...last.crops, known] }];
}

function chart(context: SheetContext, groups: readonly CropGroup[], number: number): Block {
  const options = chartOptions(context, groups, number);
  return figure(plantingChart(options), {
    narrow: plantingChartNarrow({ ...options, id: `${options.id}-narrow`, widthMm: 92 }),
  });
}

function chartOptions(
  context: SheetContext,
  groups: readonly CropGroup[],
  number: number,
): PlantingChartOptions {
  const {
    facts,
    wording: { say, dates },
  } = context;
  const freeze = chartFreezeDates(context);
  const key: Record<PlantingAct, string> = {
    'start-indoors': say('act.start-indoors'),
    'direct-sow': say('act.direct-sow'),
    'set-out': say('act.set-out'),
    harvest: say('act.harvest'),
  };
  return {
    id: number === 1 ? 'planting-chart' : `planting-chart-${number}`,
    widthMm: 175,
    ...chartYear(facts),
    monthLabels: dates.months(),
    groups: groups.map((group) => ({
      label: say(groupPhrase(group, facts)),
      rows: group.crops.flatMap((known) => rowsOf(known, say)),
    })),
    ...(freeze.last.length + freeze.first.length > 0
      ? { freeze: { ...freeze, label: say('chart.freeze-label') } }
      : {}),
    key,
    alternative: alternative(context, groups),
  };
}

/**
 * A crop's row, and a row of its own for what stands the winter: its harvest falls in the next year, so that in one row
 * with the others it would seem to come before its planting.
 */
function rowsOf({ crop, ...known }: CropFacts, say: SheetContext['wording']['say']): readonly PlantingRow[] {
  const dated = datedWindows({ crop, ...known });
  const barsIn = (windows: readonly PlantingWindows[]): PlantingRow['bars'] =>
    windows.flatMap(barsOf).flatMap(chartBar);
  const overwinter = dated.filter(({ season }) => season === 'overwinter');
  return [
    { label: crop.name, bars: barsIn(dated.filter(({ season }) => season !== 'overwinter')) },
    ...(overwinter.length > 0
      ? [{ label: say('chart.overwinter', { crop: crop.name }), bars: barsIn(overwinter) }]
      : []),
  ];
}

function chartBar({ act, finding }: Bar): { act: PlantingAct; from: number; to: number }[] {
  const { value } = finding;
  return value.kind === 'none' ? [] : [{ act, from: Math.round(value.from), to: Math.round(value.to) }];
}

/** What the chart shows; its dates are told by the table that follows, once. */
function alternative(
  { facts, wording: { say, measures }, printer }: SheetContext,
  groups: readonly CropGroup[],
): string {
  const at32 = facts.freeze.get(32)!;
  const dateOf = (finding: (typeof at32.last)[50]): string =>
    finding ? printer.words(finding.value).first : say('none.not-given');
  const names = groups.flatMap((group) => group.crops.map(({ crop }) => crop.name.toLowerCase()));
  return say(isFrostFree(facts.windowClimate) ? 'chart.alternative-frost-free' : 'chart.alternative', {
    region: facts.region.name,
    crops: say('chart.crops', { count: names.length, number: measures.number(names.length) }),
    firstCrop: names[0]!,
    lastCrop: names.at(-1)!,
    last: dateOf(at32.last[50]),
    first: dateOf(at32.first[50]),
  });
}

function datesTable({ facts, wording: { say }, printer }: SheetContext): readonly Block[] {
  const cell = (finding: DateRangeFinding | undefined): readonly Inline[] =>
    finding ? [printer.print(finding, { style: 'cell' })] : inline('–');
  const nextYear = (finding: DateRangeFinding): readonly Inline[] => [
    printer.printAs(finding, say('dates-table.next-year', { dates: printer.cellWords(finding.value).first })),
  ];
  const rowsOf = (known: CropFacts): TableRow[] =>
    datedWindows(known).map((windows) => {
      const how = say(`dates-table.how-${windows.method}`);
      return {
        cells: [
          inline(known.crop.name),
          inline(windows.season === 'spring' ? how : say(`dates-table.${windows.season}`, { how })),
          cell(windows.startIndoors),
          cell(windows.plant),
          windows.season === 'overwinter' ? nextYear(windows.harvest) : cell(windows.harvest),
        ],
      };
    });
  const groups = cropGroups(facts)
    .map((group) => ({ header: inline(say(groupPhrase(group, facts))), rows: group.crops.flatMap(rowsOf) }))
    .filter(({ rows }) => rows.length > 0);
  if (groups.length === 0) return facts.crops.length > 0 ? [paragraph(say('dates-table.no-dates'))] : [];
  return [
    table({
      id: 'planting-dates',
      caption: say('dates-table.caption'),
      columns: [
        column(say('dates-table.crop'), { weight: 1.3 }),
        column(say('dates-table.how'), { weight: 1.7 }),
        column(say('dates-table.start-indoors'), { weight: 1.3 }),
        column(say('dates-table.plant'), { weight: 1.3 }),
        column(say('dates-table.harvest'), { weight: 1.3 }),
      ],
      groups,
      notes: [
        say(isFrostFree(facts.windowClimate) ? 'dates-table.note-frost-free' : 'dates-table.note'),
        ...(facts.crops.some(({ windows }) => windows.some(startsTheYearBefore))
          ? [say('dates-table.year-before', { year: String(facts.year - 1) })]
          : []),
        ...(facts.crops.some((known) => datedWindows(known).some(({ season }) => season === 'overwinter'))
          ? [say('dates-table.next-year-note', { year: String(facts.year + 1) })]
          : []),
        ...undatedNotes(facts, { say, printer }),
      ],
    }),
  ];
}

/** Crops without any date here, by the reason of their first planting. */
function undatedNotes(
  facts: RegionFacts,
  { say, printer }: { say: SheetContext['wording']['say']; printer: SheetContext['printer'] },
): readonly string[] {
  const byReason = new Map<string, string[]>();
  for (const known of facts.crops) {
    const first = known.windows[0]?.plant.value;
    if (datedWindows(known).length > 0 || first?.kind !== 'none') continue;
    const reason = printer.words(first).first;
    byReason.set(reason, [...(byReason.get(reason) ?? []), known.crop.plural]);
  }
  return [...byReason].map(([reason, crops]) =>
    say('dates-table.undated', { crops: crops.join(', '), reason }),
  );
}

/** Every rule that sets a first or a last day here, and the plantings that it sets, so that each date can be traced. */
function rulesTable({ facts, wording }: SheetContext): readonly Block[] {
  const { say } = wording;
  const rowsOf = (edge: WindowEdge): TableRow[] => {
    const byRule = new Map<string, string[]>();
    for (const known of cropGroups(facts).flatMap(({ crops }) => crops)) {
      for (const windows of datedWindows(known)) {
        const words = capitalized(edgeRuleWords(windows, edge, wording));
        byRule.set(words, [...(byRule.get(words) ?? []), plantingName(known, windows, say)]);
      }
    }
    return [...byRule]
      .sort(([, a], [, b]) => b.length - a.length)
      .map(([words, names]) => ({ cells: [inline(words), inline([...new Set(names)].join(', '))] }));
  };
  const groups = (['opens', 'closes'] as const)
    .map((edge) => ({ header: inline(say(`rules-table.${edge}`)), rows: rowsOf(edge) }))
    .filter(({ rows }) => rows.length > 0);
  if (groups.length === 0) return facts.crops.length > 0 ? [paragraph(say('dates-table.no-rules'))] : [];
  return [
    table({
      id: 'planting-rules',
      caption: say('rules-table.caption'),
      columns: [
        column(say('rules-table.rule'), { weight: 1.2 }),
        column(say('rules-table.plantings'), { weight: 3 }),
      ],
      groups,
      notes: [say('rules-table.note')],
    }),
  ];
}

/** `Carrot`, or `carrot (plants), for fall` where a crop is planted in more ways than one. */
function plantingName(
  { crop }: CropFacts,
  { method, season }: PlantingWindows,
  say: SheetContext['wording']['say'],
): string {
  const name =
    crop.plantings.length > 1
      ? say('rules-table.by-method', { crop: crop.name, method: say(`rules-table.method-${method}`) })
      : crop.name;
  return season === 'spring' ? name : say(`rules-table.${season}`, { name });
}

/** The risk that the sheet plans by, and why. */
function planningLine({ facts, wording: { say, measures }, printer }: SheetContext): Block {
  const { chance, last, first } = facts.planning;
  const late = facts.freeze.get(32)!.last[lateFreezePercent];
  const dated = (finding: Finding): string => printer.words(finding.value).first;
  if (isFrostFree(facts.windowClimate))
    return paragraph(
      late?.value.kind === 'date'
        ? say('planning.frost-free-late', { late: dated(late) })
        : say('planning.frost-free'),
    );
  if (chance === defaultPlanForChance)
    return {
      kind: 'paragraph',
      role: 'body',
      content:
        late?.value.kind === 'date'
          ? inline(say('planning.average', { late: dated(late) }))
          : inline(say('planning.average-no-late')),
    };
  return {
    kind: 'paragraph',
    role: 'body',
    content: inline(
      say(chance < defaultPlanForChance ? 'planning.chosen' : 'planning.chosen-bolder', {
        last: dated(last),
        first: dated(first),
        region: facts.region.name,
        chance: say('planning.chance', { chance: measures.number(chance) }),
      }),
    ),
  };
}

function measuresTable({ facts, wording: { say, measures }, printer }: SheetContext): readonly Block[] {
  const bare = (finding: Finding): readonly Inline[] => {
    const { value } = finding;
    if (value.kind === 'none') return inline('–');
    if (value.kind !== 'quantity' && value.kind !== 'range')
      return [printer.print(finding, { style: 'cell' })];
    const [low, high] = value.kind === 'quantity' ? [value.value, value.value] : [value.low, value.high];
    const words =
      value.dimension === 'length'
        ? measures.bareLength(low, high)
        : rangeOf(measures.number(low), measures.number(high));
    return [printer.printAs(finding, words)];
  };
  const fromSettingOut = mark({ table: 'planting-measures', number: 1 }, say('measures-table.mark'), '*');
  const rowOf = (known: CropFacts): TableRow => ({
    cells: [
      inline(known.crop.name),
      bare(known.depth),
      bare(known.inRow),
      bare(known.betweenRows),
      bare(known.emergence),
      inline([
        ...bare(known.maturity),
        ...(known.crop.maturity.from === 'planting-out' ? [fromSettingOut] : []),
      ]),
    ],
  });
  const days = say('measures-table.days');
  const length = measures.tableUnit;
  if (facts.crops.length === 0) return [];
  return [
    table({
      id: 'planting-measures',
      caption: say('measures-table.caption'),
      columns: [
        column(say('dates-table.crop'), { weight: 1.4 }),
        column(say('measures-table.depth'), { unit: length }),
        column(say('measures-table.in-row'), { unit: length }),
        column(say('measures-table.between-rows'), { unit: length }),
        column(say('measures-table.emergence'), { unit: days }),
        column(say('measures-table.maturity'), { unit: days }),
      ],
      groups: cropGroups(facts).map((group) => ({
        header: inline(say(groupPhrase(group, facts))),
        rows: group.crops.map(rowOf),
      })),
      notes: [say('measures-table.note'), say(`measures-table.other-unit-${length}`)],
    }),
  ];
}

/** What the records say of single crops, each in a line. */
function cropNotes({ facts, wording: { say } }: SheetContext): readonly Block[] {
  const rows = facts.crops.flatMap(({ crop }): TableRow[] =>
    crop.note === undefined ? [] : [{ cells: [inline(crop.name), inline(crop.note)] }],
  );
  if (rows.length === 0) return [];
  return [
    table({
      id: 'crop-notes',
      caption: say('notes-table.caption'),
      columns: [
        column(say('dates-table.crop'), { weight: 1 }),
        column(say('notes-table.note'), { weight: 5 }),
      ],
      groups: [{ rows }],
    }),
  ];
}

/** True for a planting whose first act falls before January 1 of the season. */
function startsTheYearBefore({ season, startIndoors, plant }: PlantingWindows): boolean {
  if (season === 'year') return false;
  return [startIndoors, plant].some(
    (finding) => finding?.value.kind === 'date-range' && finding.value.from < 1,
  );
}
