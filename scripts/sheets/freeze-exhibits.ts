/** Tables and drawings of a region's freeze dates, which several kinds of sheet show. */
import { freezeBand } from '../drawings/charts/freeze-band.ts';
import type { FreezeDates as ChartFreezeDates } from '../drawings/charts/freeze-rows.ts';
import { column, figure, inline, table } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import type { DateFinding } from '../findings/finding.ts';
import { toHeld } from '../quantities/units.ts';
import type { Exhibit } from './names.ts';
import { chartYear, type SheetContext } from './sheet-context.ts';

/** The chances that sheets show. */
const chances = [10, 50, 90] as const;

export function freezeExhibits(context: SheetContext): [string, Exhibit][] {
  return [
    ['freeze-table', { wide: false, blocks: () => [freezeTable(context)] }],
    ['freeze-band', { wide: false, blocks: () => [figure(band(context))] }],
  ];
}

/** Last and first freeze at 32 F and 28 F, at 10, 50 and 90 %. */
function freezeTable({ facts, wording: { say, measures }, printer }: SheetContext): Block {
  const row = (edge: 'last' | 'first', thresholdF: number): TableRow => {
    const threshold = measures.short('temperature', toHeld(thresholdF, 'F'));
    const dates = facts.freeze.get(thresholdF)![edge];
    const cells = chances.map((chance): readonly Inline[] => {
      const finding = dates[chance];
      return finding ? [printer.print(finding, { style: 'cell' })] : inline(say('none.not-given'));
    });
    return { cells: [inline(say(`freeze-table.${edge}`, { threshold })), ...cells] };
  };
  return table({
    id: 'freeze-dates',
    caption: say('freeze-table.caption'),
    columns: [
      column(say('freeze-table.season'), { weight: 2.2 }),
      ...chances.map((chance) => column(say('freeze-table.chance', { chance }), { weight: 1 })),
    ],
    groups: [{ rows: [row('last', 32), row('last', 28), row('first', 32), row('first', 28)] }],
    notes: [say('freeze-table.note')],
  });
}

/** The dates at 32 F as a chart takes them, each with its label. */
export function chartFreezeDates({ facts, wording: { say, dates } }: SheetContext): ChartFreezeDates {
  const at32 = facts.freeze.get(32)!;
  const list = (edge: Readonly<Partial<Record<number, DateFinding>>>): ChartFreezeDates['last'] =>
    chances.flatMap((chance) => {
      const value = edge[chance]?.value;
      if (value?.kind !== 'date') return [];
      return [
        {
          chance,
          day: value.day,
          label: say('chart.freeze-later', { date: dates.short(value.day), chance }),
        },
      ];
    });
  return { last: list(at32.last), first: list(at32.first) };
}

function band(context: SheetContext): ReturnType<typeof freezeBand> {
  const {
    facts,
    wording: { say, dates },
  } = context;
  const { last, first } = chartFreezeDates(context);
  const tell = (list: ChartFreezeDates['last'], key: string): string =>
    list.length === 0
      ? say('none.freeze-never')
      : list.map(({ chance, day }) => say(key, { chance, date: dates.long(day) })).join(', ');
  return freezeBand({
    id: 'freeze-band',
    widthMm: 55,
    ...chartYear(facts),
    last,
    first,
    monthLabels: dates.months(),
    lastHeading: say('freeze-band.spring'),
    firstHeading: say('freeze-band.fall'),
    alternative: say('freeze-band.alternative', {
      last: tell(last, 'freeze-band.chance-later'),
      first: tell(first, 'freeze-band.chance-earlier'),
    }),
  });
}
