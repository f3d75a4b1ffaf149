/** The planting chart: every crop of the region through the year, to look at and as a table of the same dates. */
import {
  plantingChart,
  plantingChartNarrow,
  type PlantingChartOptions,
} from '../drawings/charts/planting-chart.ts';
import { plantingActs, type PlantingAct } from '../drawings/charts/acts.ts';
import { column, figure, inline, keyNumbers, table } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import type { DateRangeFinding } from '../findings/finding.ts';
import type { PlantingWindows } from '../agronomy/windows.ts';
import { cropGroups } from './crop-groups.ts';
import type { CropFacts } from './facts.ts';
import { chartFreezeDates, freezeExhibits } from './freeze-exhibits.ts';
import type { Exhibit } from './names.ts';
import { chartYear, type SheetContext, type SheetParts } from './sheet-context.ts';

export function plantingChartParts(context: SheetContext): SheetParts {
  const exhibits: [string, Exhibit][] = [
    ...freezeExhibits(context),
    ['at-a-glance', { wide: true, blocks: () => [atAGlance(context)] }],
    ['planting-chart', { wide: true, blocks: () => [chart(context)] }],
    ['planting-dates', { wide: true, blocks: () => [datesTable(context)] }],
    ['planting-measures', { wide: true, blocks: () => [measuresTable(context)] }],
  ];
  return { exhibits: new Map(exhibits) };
}

/** The dates that make the sheet true, large. */
export function atAGlance({ facts, printer, wording: { say } }: SheetContext): Block {
  const at32 = facts.freeze.get(32)!;
  const items = [
    { finding: at32.last[50], label: 'glance.last-freeze' },
    { finding: at32.first[50], label: 'glance.first-freeze' },
    { finding: facts.freezeFree, label: 'glance.freeze-free' },
    { finding: facts.longestDay, label: 'glance.longest-day' },
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

function chart(context: SheetContext): Block {
  const {
    facts,
    wording: { say, dates },
  } = context;
  const groups = cropGroups(facts).map((group) => ({
    label: say(`group.${group.id}`),
    rows: group.crops.map((known) => ({
      label: known.crop.name,
      bars: datedWindows(known).flatMap(barsOf).flatMap(chartBar),
    })),
  }));
  const freeze = chartFreezeDates(context);
  const named = [
    ['start-indoors', say('act.start-indoors')],
    ['direct-sow', say('act.direct-sow')],
    ['set-out', say('act.set-out')],
    ['harvest', say('act.harvest')],
  ] as const;
  const options: PlantingChartOptions = {
    id: 'planting-chart',
    widthMm: 175,
    ...chartYear(facts),
    monthLabels: dates.months(),
    groups,
    ...(freeze.last.length + freeze.first.length > 0
      ? { freeze: { ...freeze, label: say('chart.freeze-label') } }
      : {}),
    key: Object.fromEntries(named) as Record<PlantingAct, string>,
    alternative: alternative(context),
  };
  return figure(plantingChart(options), {
    narrow: plantingChartNarrow({ ...options, id: 'planting-chart-narrow', widthMm: 92 }),
  });
}

function chartBar({ act, finding }: Bar): { act: PlantingAct; from: number; to: number }[] {
  const { value } = finding;
  return value.kind === 'none' ? [] : [{ act, from: Math.round(value.from), to: Math.round(value.to) }];
}

/** The chart in words: each crop's acts in order. The table has the same dates. */
function alternative({ facts, wording: { say, dates }, printer }: SheetContext): string {
  const at32 = facts.freeze.get(32)!;
  const first = (finding: (typeof at32.last)[50]): string =>
    finding ? printer.words(finding.value).first : say('none.not-given');
  const rows = cropGroups(facts).flatMap((group) =>
    group.crops.map((known) => {
      const bars = datedWindows(known).flatMap(barsOf);
      const acts = plantingActs
        .flatMap((act) => bars.filter((bar) => bar.act === act))
        .flatMap(({ act, finding }) =>
          finding.value.kind === 'none'
            ? []
            : [
                say('chart.act-alternative', {
                  act: say(`act.${act}`).toLowerCase(),
                  dates: dates.shortRange(finding.value.from, finding.value.to),
                }),
              ],
        );
      return say('chart.row-alternative', { crop: known.crop.name, acts: acts.join(', ') });
    }),
  );
  return say('chart.alternative', {
    region: facts.region.name,
    last: first(at32.last[50]),
    first: first(at32.first[50]),
    rows: rows.join(' '),
  });
}

function datesTable({ facts, wording: { say }, printer }: SheetContext): Block {
  const cell = (finding: DateRangeFinding | undefined): readonly Inline[] =>
    finding ? [printer.print(finding, { style: 'cell' })] : inline('–');
  const rowsOf = (known: CropFacts): TableRow[] =>
    datedWindows(known).map((windows) => {
      const how = say(`dates-table.how-${windows.method}`);
      return {
        cells: [
          inline(known.crop.name),
          inline(windows.season === 'fall' ? say('dates-table.fall', { how }) : how),
          cell(windows.startIndoors),
          cell(windows.plant),
          cell(windows.harvest),
        ],
      };
    });
  return table({
    id: 'planting-dates',
    caption: say('dates-table.caption'),
    columns: [
      column(say('dates-table.crop'), { weight: 1.3 }),
      column(say('dates-table.how'), { weight: 1.7 }),
      column(say('dates-table.start-indoors'), { weight: 1.3 }),
      column(say('dates-table.plant'), { weight: 1.3 }),
      column(say('dates-table.harvest'), { weight: 1.3 }),
    ],
    groups: cropGroups(facts).map((group) => ({
      header: inline(say(`group.${group.id}`)),
      rows: group.crops.flatMap(rowsOf),
    })),
    notes: [say('dates-table.note')],
  });
}

function measuresTable({ facts, wording: { say }, printer }: SheetContext): Block {
  const asterisk = (known: CropFacts): string => (known.crop.maturity.from === 'planting-out' ? '*' : '');
  const rowOf = (known: CropFacts): TableRow => ({
    cells: [
      inline(known.crop.name),
      [printer.print(known.depth, { style: 'cell-both' })],
      [printer.print(known.inRow, { style: 'cell-both' })],
      [printer.print(known.betweenRows, { style: 'cell-both' })],
      known.emergence.value.kind === 'none'
        ? inline('–')
        : [printer.print(known.emergence, { style: 'cell' })],
      inline([printer.print(known.maturity, { style: 'cell' }), asterisk(known)]),
    ],
  });
  return table({
    id: 'planting-measures',
    caption: say('measures-table.caption'),
    columns: [
      column(say('dates-table.crop'), { weight: 1.2 }),
      column(say('measures-table.depth'), { weight: 1.4 }),
      column(say('measures-table.in-row'), { weight: 1.4 }),
      column(say('measures-table.between-rows'), { weight: 1.4 }),
      column(say('measures-table.emergence'), { weight: 1 }),
      column(say('measures-table.maturity'), { weight: 1 }),
    ],
    groups: cropGroups(facts).map((group) => ({
      header: inline(say(`group.${group.id}`)),
      rows: group.crops.map(rowOf),
    })),
    notes: [say('measures-table.note')],
  });
}
