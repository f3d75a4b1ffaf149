/** The heat of a frame shown: its coldest nights through the year, and month by month what to do. */
import { dayNumber } from '../climate/calendar.ts';
import { column, figure, inline, paragraph, table } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import { temperatureChart, type TemperatureLine } from '../drawings/charts/temperature-chart.ts';
import type { Finding } from '../findings/finding.ts';
import { fromHeld } from '../quantities/units.ts';
import type { FrameHeat } from '../structures/frame-heat/heat-findings.ts';
import type { CoverWord } from '../structures/structure.ts';
import type { FrameMonth } from '../structures/frame-heat/months.ts';
import type { PrintStyle } from './printer.ts';
import { chartYear, type SheetContext } from './sheet-context.ts';

const inchMm = 25.4;

const monthsOfYear = Array.from({ length: 12 }, (_, index) => index);

/** The coldest night of each month outside, inside, and inside under a cover, over the level of freezing. */
export function heatChart(
  { facts, guide, wording: { say, measures, dates } }: SheetContext,
  heat: FrameHeat,
): Block {
  const unit = guide.publisher.units === 'customary-first' ? 'F' : 'C';
  const shown = (celsius: number): number => fromHeld(celsius, unit);
  const line = (
    name: string,
    style: TemperatureLine['style'],
    nightOf: (month: FrameMonth) => number,
    months: readonly FrameMonth[],
  ): TemperatureLine => ({
    label: say(`frame-heat.line-${name}`),
    style,
    points: months.map((month) => ({
      day: dayNumber({ month: month.month, day: 15 }),
      value: shown(nightOf(month)),
    })),
  });
  const { bare, covered } = heat;
  const coldest = bare.months.reduce((a, b) => (b.coldest[50].outsideC < a.coldest[50].outsideC ? b : a));
  const coveredThen = covered?.months[coldest.month - 1];
  const options = {
    id: 'frame-heat',
    widthMm: 175,
    heightMm: 44,
    ...chartYear(facts),
    monthLabels: dates.months(),
    band: [],
    lines: [
      line('outside', 'seen', ({ coldest: night }) => night[50].outsideC, bare.months),
      line('bare', 'heavy', ({ coldest: night }) => night[50].insideC, bare.months),
      ...(covered
        ? [line('covered', 'dashed', ({ coldest: night }) => night[50].insideC, covered.months)]
        : []),
    ],
    marks: [],
    levels: [
      { value: shown(0), label: say('frame-heat.freezing', { limit: measures.short('temperature', 0) }) },
    ],
    tick: { every: unit === 'F' ? 20 : 10, text: (value: number) => measures.number(value) },
    axisLabel: say('frame-heat.axis', { unit: `°${unit}` }),
    alternative: say('frame-heat.alternative', {
      month: dates.monthNames()[coldest.month - 1]!,
      outside: measures.short('temperature', coldest.coldest[50].outsideC),
      bare: measures.short('temperature', coldest.coldest[50].insideC),
      covered: coveredThen ? measures.short('temperature', coveredThen.coldest[50].insideC) : 'none',
    }),
  };
  return figure(temperatureChart(options), {
    caption: say('frame-heat.chart-caption'),
    narrow: temperatureChart({
      ...options,
      id: 'frame-heat-narrow',
      widthMm: 92,
      monthLabels: dates.months(),
    }),
  });
}

/** The months in which it freezes outside or the frame can stay shut; in the others its sashes or lids are off. */
export function heatTable(
  { facts, printer, wording: { say, dates, measures } }: SheetContext,
  { bare, covered }: FrameHeat,
  { findings, cover }: { readonly findings: readonly Finding[]; readonly cover: CoverWord },
): Block {
  const byId = new Map(findings.map((finding) => [finding.id, finding]));
  const cell = (month: number, what: string, style: PrintStyle['style'] = 'cell'): readonly Inline[] => {
    const finding = byId.get(`frame-heat.month-${month}.${what}`);
    if (!finding) return inline('–');
    if (finding.value.kind === 'none')
      return [printer.printAs(finding, say(`frame-heat.${finding.value.reason}`, { cover }))];
    return [printer.print(finding, { style })];
  };
  /** How far to open is told to the inch: the thermometer settles the rest. */
  const opening = (month: number): readonly Inline[] => {
    const finding = byId.get(`frame-heat.month-${month}.open`);
    if (finding?.value.kind !== 'quantity') return cell(month, 'open');
    const height = measures.short('length', Math.max(1, Math.round(finding.value.value / inchMm)) * inchMm);
    return [printer.printAs(finding, say('frame-heat.prop', { height }))];
  };
  const names = dates.monthNames();
  const inOrder = facts.south ? [...monthsOfYear.slice(6), ...monthsOfYear.slice(0, 6)] : monthsOfYear;
  const shut = inOrder.filter((index) => inUse(bare.months[index]!, byId));
  if (shut.length === 0) return paragraph(say('frame-heat.never-shut', { cover }));
  const ending = covered ? ['', '-covered'] : [''];
  const rows = shut.map((index): TableRow => {
    const month = index + 1;
    return {
      cells: [
        inline(names[index]!),
        cell(month, 'outside-lowest'),
        ...ending.map((end) => cell(month, `lowest${end}`)),
        cell(month, 'outside-freezing-nights'),
        ...ending.map((end) => cell(month, `freezing-nights${end}`)),
        cell(month, 'vent-outside'),
        opening(month),
      ],
    };
  });
  const number = (key: string): ReturnType<typeof column> =>
    column(say(`frame-heat.${key}`), { align: 'number', weight: 1 });
  const kinds = covered ? ['outside', 'bare', 'covered'] : ['outside', 'bare'];
  return table({
    id: 'frame-heat',
    caption: say('frame-heat.caption'),
    columns: [
      column(say('frame-heat.month'), { weight: 1.3 }),
      ...kinds.map((kind) => number(`coldest-${kind}`)),
      ...kinds.map((kind) => number(`nights-${kind}`)),
      number('vent-outside'),
      column(say('frame-heat.open'), { weight: 1.5 }),
    ],
    groups: [{ rows }],
    notes: [say('frame-heat.note-night'), say('frame-heat.note-day', { cover })],
  });
}

/** A month in which it freezes outside, or in which the frame need not come off on a sunny day. */
function inUse({ month, opening }: FrameMonth, byId: ReadonlyMap<string, Finding>): boolean {
  const nights = byId.get(`frame-heat.month-${month}.outside-freezing-nights`)?.value;
  return opening.kind !== 'take-off' || (nights?.kind === 'count' && nights.value > 0);
}
