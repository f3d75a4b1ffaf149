/** The freezes of a climate sheet: their chances, how often they come at all, and the record that the dates stand on. */
import { empiricalFreezeDates, freezeFitDifferences } from '../climate/freeze-empirical.ts';
import { freezeOccurrence, seasonLengths, type SeasonLengths } from '../climate/freeze-free-season.ts';
import { recordSeasons } from '../climate/freeze-record.ts';
import type { FreezeEdge } from '../climate/freeze-seasons.ts';
import type { FreezeDates } from '../climate/freeze.ts';
import { planningFreeze } from '../climate/planning-freeze.ts';
import { column, inline, paragraph, plainText, table } from '../document/build.ts';
import type { Block, Inline, TableGroup, TableRow } from '../document/document.ts';
import { count, type Finding } from '../findings/finding.ts';
import { toHeld } from '../quantities/units.ts';
import { freezeChances } from '../records/schemas/region.ts';
import type { RegionFacts } from './facts.ts';
import type { Exhibit } from './names.ts';
import type { SheetContext } from './sheet-context.ts';

const dash = '–';

/** The chances and thresholds at which the smoothed dates are set beside those of the record. */
const comparedChances = [10, 50, 90] as const;
const comparedThresholdsF = [32, 28, 24] as const;

export interface ClimateFreezes {
  readonly exhibits: readonly (readonly [string, Exhibit])[];
  /** Season lengths, how often it freezes, the record behind the dates and the dates to plan by, for prose to name. */
  readonly findings: readonly Finding[];
  /** The season between two freezes of 32 F that half of all years pass. */
  readonly usualSeason: Finding;
}

export function climateFreezes(context: SheetContext): ClimateFreezes {
  const { facts } = context;
  const { freeze, latitudeDeg } = { freeze: facts.region.freeze, latitudeDeg: facts.latitudeDeg };
  const options = (thresholdF: number): { thresholdC: number; latitudeDeg: number } => ({
    thresholdC: toHeld(thresholdF, 'F'),
    latitudeDeg,
  });
  const thresholdsF = [...facts.freeze.keys()];
  const lengths = new Map(
    thresholdsF.map((thresholdF) => [thresholdF, seasonLengths(freeze, options(thresholdF))]),
  );
  const occurrences = thresholdsF.map((thresholdF): [number, Finding] => [
    thresholdF,
    freezeOccurrence(freeze, options(thresholdF)),
  ]);
  return {
    exhibits: [
      [
        'freeze-probabilities',
        { wide: true, blocks: () => probabilities(context, { lengths, occurrences }) },
      ],
      ['freeze-comparison', { wide: true, blocks: () => comparison(context) }],
      ['freeze-occurrence', { wide: true, blocks: () => occurrenceTable(context, occurrences) }],
      ['freeze-record', { wide: false, blocks: () => freezeRecord(context) }],
    ],
    findings: [
      ...[...lengths.values()].flatMap((byChance) => Object.values(byChance)),
      ...occurrences.map(([, finding]) => finding),
      ...planFindings(facts),
      ...allRecordFindings(facts),
    ],
    usualSeason: lengths.get(32)![50],
  };
}

/** The chance that the region plans by, and its dates at 32 F. */
function planFindings({ region, freeze }: RegionFacts): readonly Finding[] {
  const { chance, last, first } = planningFreeze(freeze.get(32)!, region.planForChance);
  const chosen: Finding = {
    id: 'freeze.plan.chance',
    value: count(chance),
    method: 'freeze.plan',
    inputs: [],
    sources: [],
  };
  return [chosen, last, first];
}

function allRecordFindings(facts: RegionFacts): readonly Finding[] {
  const { seasons, empirical, differences } = recordFindings(facts);
  return [...seasons, ...empirical, ...differences];
}

interface RecordFindings {
  readonly seasons: readonly Finding[];
  readonly empirical: readonly Finding[];
  readonly differences: readonly Finding[];
}

/** What only daily lows can tell; nothing for a table or normals. */
function recordFindings({ region: { freeze: data }, freeze, latitudeDeg }: RegionFacts): RecordFindings {
  if (data.kind !== 'daily') return { seasons: [], empirical: [], differences: [] };
  const { last, first, notUsed } = recordSeasons(data, { latitudeDeg });
  const pairs = [...freeze.values()].map((fitted): [FreezeDates, FreezeDates] => [
    fitted,
    empiricalFreezeDates(data, { thresholdC: fitted.thresholdC, latitudeDeg }),
  ]);
  return {
    seasons: [last, first, notUsed],
    empirical: pairs.flatMap(([, seen]) => [...Object.values(seen.last), ...Object.values(seen.first)]),
    differences: pairs.flatMap(([fitted, seen]) => freezeFitDifferences(fitted, seen)),
  };
}

interface Chances {
  readonly lengths: ReadonlyMap<number, SeasonLengths>;
  readonly occurrences: Occurrences;
}

/** How often each threshold, in whole degrees Fahrenheit, is reached. */
type Occurrences = readonly (readonly [number, Finding])[];

/**
 * All chances of a freeze at each temperature, for both ends of the season and for its length. A temperature that never
 * brings a date has no row; how often it comes is told elsewhere.
 */
function probabilities(context: SheetContext, { lengths, occurrences }: Chances): readonly Block[] {
  const {
    facts,
    printer,
    wording: { say, measures },
  } = context;
  // Between two freezes that can come in any month lies no season, only the months that were searched.
  const isAllYear = (thresholdF: number): boolean =>
    occurrences.some(
      ([known, { value }]) =>
        known === thresholdF && value.kind === 'choice' && value.value === 'freeze-all-year',
    );
  const groups = [
    chanceGroup(context, {
      header: say('climate.probabilities-last'),
      findings: (thresholdF) => facts.freeze.get(thresholdF)!.last,
      cell: (finding) => printer.print(finding, { style: 'cell' }),
    }),
    chanceGroup(context, {
      header: say('climate.probabilities-first'),
      findings: (thresholdF) => facts.freeze.get(thresholdF)!.first,
      cell: (finding) => printer.print(finding, { style: 'cell' }),
    }),
    ...(chancesKnown(lengths)
      ? [
          chanceGroup(context, {
            header: say('climate.season-lengths'),
            findings: (thresholdF) => (isAllYear(thresholdF) ? {} : lengths.get(thresholdF)!),
            cell: (finding) =>
              printer.printAs(
                finding,
                finding.value.kind === 'quantity' ? measures.number(finding.value.value) : dash,
              ),
          }),
        ]
      : []),
  ].filter(({ rows }) => rows.length > 0);
  if (groups.length === 0) return [];
  const dashes = groups.some(({ rows }) =>
    rows.some(({ cells }) => cells.some((content) => plainText(content) === dash)),
  );
  // One line stands for all of them, and all are told how they were worked out.
  const [always] = alwaysFreezes(occurrences)
    ? occurrences.map(([, finding]): readonly Inline[] => [
        ...inline(`${say('climate.occurrence-always')} `),
        printer.printAs(finding, say('climate.occurrence-freeze-every-year')),
        ...inline('.'),
      ])
    : [];
  return [
    table({
      id: 'freeze-chances',
      caption: say('climate.probabilities-caption'),
      columns: [
        column(say('climate.threshold'), { weight: 1.1 }),
        ...freezeChances.map((chance) => column(say('climate.percent', { chance }))),
      ],
      groups,
      notes: [...(dashes ? [say('climate.none-note')] : []), ...(always ? [always] : [])],
    }),
  ];
}

/** Whether lengths have chances at all: the difference of two average dates has none. */
function chancesKnown(lengths: ReadonlyMap<number, SeasonLengths>): boolean {
  return [...lengths.values()].some(
    (byChance) => Object.values(byChance).filter((finding) => hasValue(finding)).length > 1,
  );
}

interface ChanceGroup {
  readonly header: string;
  readonly findings: (thresholdF: number) => Readonly<Partial<Record<number, Finding>>>;
  readonly cell: (finding: Finding) => Inline;
}

function chanceGroup(
  { facts, wording: { measures } }: SheetContext,
  { header, findings, cell }: ChanceGroup,
): TableGroup {
  const rows = [...facts.freeze.keys()].flatMap((thresholdF): TableRow[] => {
    const byChance = freezeChances.map((chance) => findings(thresholdF)[chance]);
    if (!byChance.some(hasValue)) return [];
    const cells = byChance.map((finding): readonly Inline[] =>
      hasValue(finding) ? [cell(finding)] : inline(dash),
    );
    return [{ cells: [inline(measures.short('temperature', toHeld(thresholdF, 'F'))), ...cells] }];
  });
  return { header: inline(header), rows };
}

function hasValue(finding: Finding | undefined): finding is Finding {
  return finding !== undefined && finding.value.kind !== 'none';
}

function alwaysFreezes(occurrences: Occurrences): boolean {
  return occurrences.every(([, { value }]) => value.kind === 'choice' && value.value === 'freeze-every-year');
}

/**
 * In how many years each temperature is reached; nothing where the record does not say, nor where it is every year at each
 * temperature, which a line under the chances tells.
 */
function occurrenceTable(
  { printer, wording: { say, measures } }: SheetContext,
  occurrences: Occurrences,
): readonly Block[] {
  if (alwaysFreezes(occurrences)) return [];
  const known = occurrences.filter(([, { value }]) => value.kind === 'choice');
  if (known.length === 0) return [];
  const words = (finding: Finding): string => {
    const input = (name: string): number | undefined => {
      const value = finding.inputs.find((entry) => entry.name === name)?.value;
      return value?.kind === 'count' ? value.value : undefined;
    };
    const choice = finding.value.kind === 'choice' ? finding.value.value : '';
    if (choice !== 'freeze-some-years') return say(`climate.occurrence-${choice}`);
    const percent = input('occurrence-percent');
    return percent === undefined
      ? say('climate.occurrence-seasons', {
          frozen: input('seasons-with-freeze') ?? 0,
          seasons: input('seasons') ?? 0,
        })
      : say('climate.occurrence-percent', { percent: measures.number(percent, 1) });
  };
  return [
    table({
      id: 'freeze-occurrence',
      caption: say('climate.occurrence-caption'),
      columns: [
        column(say('climate.threshold'), { weight: 1.1 }),
        ...known.map(([thresholdF]) =>
          column(measures.short('temperature', toHeld(thresholdF, 'F')), { weight: 1.5 }),
        ),
      ],
      groups: [
        {
          rows: [
            {
              cells: [
                inline(say('climate.occurrence-row')),
                ...known.map(([, finding]) => [printer.printAs(finding, words(finding))]),
              ],
            },
          ],
        },
      ],
    }),
  ];
}

/** Where the freeze dates come from, and for daily lows how far the smoothed dates lie from those of the record itself. */
function freezeRecord(context: SheetContext): readonly Block[] {
  const {
    facts,
    wording: { say },
  } = context;
  const data = facts.region.freeze;
  switch (data.kind) {
    case 'table':
      return [paragraph(say('climate.record-table'))];
    case 'normals': {
      const { name, period } = data.normals;
      return [paragraph(say('climate.record-normals', { station: name, period: period.replace('-', '–') }))];
    }
    case 'daily':
      return recordYears(context);
  }
}

function recordYears({ facts, printer, wording: { say, measures } }: SheetContext): readonly Block[] {
  const data = facts.region.freeze;
  if (data.kind !== 'daily') return [];
  const { days, name } = data.station;
  const { last, first, notUsed, leftOut } = recordSeasons(data, { latitudeDeg: facts.latitudeDeg });
  const counted = (finding: Finding, edge: FreezeEdge): Inline =>
    printer.printAs(
      finding,
      say(`climate.record-${edge}-seasons`, {
        count: finding.value.kind === 'count' ? finding.value.value : 0,
      }),
    );
  const limit = (wanted: string): string => {
    const value = last.inputs.find((input) => input.name === wanted)?.value;
    return value?.kind === 'count' ? measures.number(value.value) : '';
  };
  const years = (['last', 'first'] as const).flatMap((edge) =>
    leftOut[edge].length === 0
      ? []
      : [
          say(`climate.record-${edge}-left-out`, {
            count: leftOut[edge].length,
            years: leftOut[edge].join(', '),
          }),
        ],
  );
  const total = leftOut.last.length + leftOut.first.length;
  const from = String(days[0]?.year ?? '');
  const to = String(days.at(-1)?.year ?? '');
  return [
    paragraph([
      ...inline(`${say('climate.record-daily', { station: name, from, to })} `),
      counted(last, 'last'),
      ...inline(', '),
      counted(first, 'first'),
      ...inline(', '),
      printer.printAs(notUsed, say('climate.record-left-out', { count: total })),
      ...inline(total === 0 ? '.' : ` ${say('climate.record-left-out-years', { years: years.join('; ') })}`),
    ]),
    paragraph(
      say('climate.record-rule', { near: limit('missing-near-half'), far: limit('missing-far-half') }),
    ),
  ];
}

/** The date straight from the record, and by how many days the smoothed one lies after or before it. */
function comparison({ facts, printer, wording: { say, measures } }: SheetContext): readonly Block[] {
  const { empirical, differences } = recordFindings(facts);
  const byId = new Map([...empirical, ...differences].map((finding) => [finding.id, finding]));
  const cell = (id: string): readonly Inline[] => {
    const [seen, difference] = [byId.get(`${id}.empirical`), byId.get(`${id}.fit-difference`)];
    if (!hasValue(seen)) return inline(dash);
    const date = printer.print(seen, { style: 'cell' });
    if (difference?.value.kind !== 'quantity') return [date];
    const days = difference.value.value;
    const words = `${days > 0 ? '+' : days < 0 ? '−' : ''}${measures.number(Math.abs(days))}`;
    return [date, ...inline(' ('), printer.printAs(difference, words), ...inline(')')];
  };
  const edges = ['last', 'first'] as const;
  const idsAt = (thresholdF: number): string[] =>
    edges.flatMap((edge) => comparedChances.map((chance) => `freeze.${edge}.${thresholdF}f.${chance}`));
  const rows = comparedThresholdsF.flatMap((thresholdF): TableRow[] => {
    const ids = idsAt(thresholdF);
    if (!ids.some((id) => hasValue(byId.get(`${id}.empirical`)))) return [];
    const name = inline(measures.short('temperature', toHeld(thresholdF, 'F')));
    return [{ cells: [name, ...ids.map(cell)] }];
  });
  if (rows.length === 0) return [];
  return [
    table({
      id: 'freeze-record',
      caption: say('climate.record-caption'),
      columns: [
        column(say('climate.threshold'), { weight: 0.9 }),
        ...edges.flatMap((edge) =>
          comparedChances.map((chance) => column(say(`climate.record-column-${edge}`, { chance }))),
        ),
      ],
      groups: [{ rows }],
      notes: [say('climate.record-note')],
    }),
  ];
}
