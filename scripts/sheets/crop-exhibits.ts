/**
 * Exhibits of a fact sheet that any crop can have: sowings one after another, depth, the need and yield of a row, soil,
 * water, and what sets the days of each planting window. Where the crop's record or the region's lacks what one
 * needs, a sentence in its place says what is lacking.
 */
import { fallWindowDays, springWindowDays } from '../agronomy/hardiness.ts';
import { soilFits, type SoilReason } from '../agronomy/soil-fit.ts';
import type { PlantingWindows } from '../agronomy/windows.ts';
import { isWholeYear } from '../climate/calendar.ts';
import { column, inline, keyNumbers, paragraph, strong, table } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import { choice, type Finding, type FindingInput, type FindingValue } from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import { cropFindings, usualDrip, type CropFindings, type SowingFindings } from './crop-findings.ts';
import type { CropFacts } from './facts.ts';
import type { Exhibit } from './names.ts';
import { capitalized } from './printer.ts';
import type { SheetContext } from './sheet-context.ts';
import { edgeRuleWords } from './window-rules.ts';

/** The crop of a fact sheet with what was found of it for the row of that sheet. */
interface Told extends SheetContext {
  readonly crop: Crop;
  readonly known: CropFacts;
  readonly found: CropFindings;
}

/** The exhibits of a crop's fact sheet, and its findings again where the sheet chose another length of row. */
export function cropExhibits(
  context: SheetContext,
  known: CropFacts,
): { exhibits: readonly [string, Exhibit][]; findings: ReadonlyMap<string, Finding> } {
  const { facts, sheet } = context;
  const found = cropFindings(known.crop, {
    ...facts,
    windows: known.windows,
    ...(sheet.rowLength ? { rowLengthMm: sheet.rowLength.low } : {}),
  });
  const told: Told = { ...context, crop: known.crop, known, found };
  const exhibit = (
    name: string,
    wide: boolean,
    blocks: (told: Told) => readonly Block[],
  ): [string, Exhibit] => [name, { wide, blocks: () => blocks(told) }];
  return {
    findings: new Map(found.all.map((finding) => [finding.id, finding])),
    exhibits: [
      exhibit('crop-glance', true, glance),
      exhibit('succession', true, succession),
      exhibit('depth-advice', true, depthAdvice),
      exhibit('seed-and-yield', false, seedAndYield),
      exhibit('soil-fit', true, soilFit),
      exhibit('water', false, water),
      exhibit('window-edges', true, windowEdges),
    ],
  };
}

/** When to sow or plant, how deep, how far apart, and when to harvest first. */
function glance({ crop, known, found, printer, wording: { say } }: Told): readonly Block[] {
  const window = known.windows.find(({ plant }) => plant.value.kind !== 'none') ?? known.windows[0]!;
  const items: [Finding, string][] = [
    [
      window.plant,
      `crop-sheet.glance-${window.method === 'direct-sow' ? 'sow' : 'plant'}-${window.season === 'spring' || window.season === 'year' ? window.season : 'fall'}`,
    ],
    [found.depth.printed, 'crop-sheet.glance-depth'],
    [known.inRow, 'crop-sheet.glance-in-row'],
    [window.harvest, 'crop-sheet.glance-harvest'],
  ];
  return [
    keyNumbers(
      items.map(([finding, label]) => ({
        value: printer.print(finding, { style: 'cell' }),
        label: say(label, { crop: crop.plural }),
      })),
    ),
  ];
}

function succession(told: Told): readonly Block[] {
  const { crop, facts, found, known, wording } = told;
  const { say, measures } = wording;
  if (!crop.succession) return [paragraph(say('crop-sheet.no-interval', { crop: crop.plural }))];
  if (!facts.air) return [paragraph(say('crop-sheet.no-temperatures', { region: facts.region.name }))];
  if (known.windows.some(({ method, plant: { value } }) => method === 'direct-sow' && anyDay(value)))
    return [
      paragraph(
        say('crop-sheet.sow-all-year', { interval: measures.both('duration', crop.succession.value.low) }),
      ),
    ];
  if (found.sowings.length === 0) return [paragraph(say('crop-sheet.no-sowings', { crop: crop.plural }))];
  const withSoil = facts.soil !== undefined;
  const withSeedlings = withSoil && crop.normalSeedlings !== undefined;
  const columns = { withSoil, withSeedlings };
  const single = found.sowings.some(({ sowings }) => sowings.length === 1);
  return [
    table({
      id: `${crop.id}-sowings`,
      caption: say('crop-sheet.succession-caption'),
      columns: [
        column(say('crop-sheet.sowing'), { weight: 1.2 }),
        column(say('crop-sheet.sow')),
        ...(withSoil ? [column(say('crop-sheet.comes-up'), { weight: 1.5 })] : []),
        ...(withSeedlings ? [column(say('crop-sheet.seedlings'), { weight: 1.3 })] : []),
        column(say('crop-sheet.ready')),
      ],
      groups: found.sowings.map(({ season, sowings }) => ({
        rows: sowings.map((sowing, index) =>
          sowingRow(told, sowing, {
            ...columns,
            name: say(`crop-sheet.sowing-${season === 'fall' || season === 'year' ? season : 'spring'}`, {
              number: index + 1,
              sowings: sowings.length,
            }),
          }),
        ),
      })),
      notes: [
        say('crop-sheet.succession-note', {
          interval: measures.short('duration', crop.succession.value.low),
        }),
        ...(single ? [say('crop-sheet.succession-single')] : []),
        ...(withSeedlings ? [say('crop-sheet.seedlings-note')] : []),
      ],
    }),
  ];
}

function sowingRow(
  { printer, wording: { say, measures } }: Told,
  { sow, comesUp, seedlings, harvest }: SowingFindings,
  { name, withSoil, withSeedlings }: { name: string; withSoil: boolean; withSeedlings: boolean },
): TableRow {
  const cell = (finding: Finding): readonly Inline[] =>
    finding.value.kind === 'none'
      ? [printer.printAs(finding, capitalized(printer.words(finding.value).first))]
      : [printer.print(finding, { style: 'cell' })];
  const percent =
    seedlings.value.kind === 'count'
      ? [
          printer.printAs(
            seedlings,
            say('crop-sheet.percent', { percent: measures.number(seedlings.value.value) }),
          ),
        ]
      : cell(seedlings);
  return {
    cells: [
      inline(name),
      cell(sow),
      ...(withSoil ? [cell(comesUp)] : []),
      ...(withSeedlings ? [percent] : []),
      cell(harvest),
    ],
  };
}

/** The published depth, the rule of seed diameters beside it, and which is sown by here and why. */
function depthAdvice({ crop, facts, found, printer, wording: { say } }: Told): readonly Block[] {
  const { published, rule, printed, why, ruleSays } = found.depth;
  const { soil } = facts.region;
  const both = (finding: Finding): Inline => printer.print(finding, { style: 'cell-both' });
  const rows: TableRow[] = [
    {
      cells: [
        inline(say('crop-sheet.depth-published')),
        [both(published)],
        inline(say('crop-sheet.depth-is-published')),
      ],
    },
    ...(rule.value.kind === 'none'
      ? []
      : [
          {
            cells: [
              inline(say('crop-sheet.depth-rule')),
              [both(rule)],
              [printer.print(ruleSays, { style: 'cell' })],
            ],
          },
        ]),
    {
      cells: [
        [
          strong(
            soil ? say('crop-sheet.depth-here', soilWords(soil, say)) : say('crop-sheet.depth-here-unknown'),
          ),
        ],
        [strong([both(printed)])],
        [printer.print(why, { style: 'cell' })],
      ],
    },
  ];
  return [
    table({
      id: `${crop.id}-depth`,
      caption: say('crop-sheet.depth-caption'),
      columns: [
        column(say('crop-sheet.depth-how'), { weight: 1.7 }),
        column(say('crop-sheet.depth'), { weight: 1 }),
        column(say('crop-sheet.depth-why'), { weight: 1.8 }),
      ],
      groups: [{ rows }],
      notes: rule.value.kind === 'none' ? [] : [say('crop-sheet.depth-note')],
    }),
  ];
}

function soilWords(
  soil: { readonly texture: string; readonly moisture: string },
  say: SheetContext['wording']['say'],
): { texture: string; moisture: string } {
  return { texture: say(`choice.${soil.texture}`), moisture: say(`choice.${soil.moisture}`) };
}

/** Seed, plants and yield of the sheet's length of row. */
function seedAndYield({ crop, found, printer, wording: { say, measures } }: Told): readonly Block[] {
  const { row } = found;
  const length = measures.both('length', (row.length.value as { value: number }).value);
  const unit = row.yield.inputs.find(({ name }) => name === 'yield-unit')?.value;
  const amounts: [Finding, string, string?][] = [
    [row.seed, say('crop-sheet.row-seed')],
    [row.packets, say('crop-sheet.row-packets', { packet: packetWords(crop, measures) })],
    [row.seedsAtLeast, say('crop-sheet.row-seeds')],
    [
      row.plants,
      say('crop-sheet.row-plants', {
        apart: measures.short('length', crop.spacing.inRow.value.low, crop.spacing.inRow.value.high),
      }),
    ],
    [row.yield, say('crop-sheet.row-yield'), unit && !isWhole(unit) ? printer.words(unit).first : ''],
  ];
  const rows = amounts.flatMap(([finding, what, tail = '']): TableRow[] =>
    finding.value.kind === 'none'
      ? []
      : [
          {
            cells: [
              inline(what),
              inline([printer.print(finding, { style: 'cell-both' }), tail === '' ? '' : ` ${tail}`]),
            ],
          },
        ],
  );
  const known = row.yield.value.kind !== 'none';
  const lacking = [
    ...(row.seed.value.kind === 'none' ? [say('crop-sheet.no-seed-rate')] : []),
    ...(known ? [] : [say('crop-sheet.no-yield')]),
  ];
  return [
    table({
      id: `${crop.id}-row`,
      caption: say('crop-sheet.row-caption', { length }),
      columns: [
        column(say('crop-sheet.row-what'), { weight: 1.7 }),
        column(say('crop-sheet.row-amount'), { weight: 1.5 }),
      ],
      groups: [{ rows }],
      notes: [say(known ? 'crop-sheet.row-note' : 'crop-sheet.row-note-short', { length }), ...lacking],
    }),
  ];
}

/** A weight of whole roots or leaves needs no word after it. */
function isWhole(unit: FindingValue): boolean {
  return unit.kind === 'choice' && unit.value === 'yield-whole';
}

function packetWords(crop: Crop, measures: SheetContext['wording']['measures']): string {
  return crop.packet ? measures.both('mass', crop.packet.value.low) : '';
}

/** Reasons against a soil that each line of the table answers to. */
const reasonsOf: Readonly<Record<'texture' | 'stones' | 'depth' | 'ph', readonly SoilReason[]>> = {
  texture: ['heavy-soil', 'clay-soil'],
  stones: ['some-stones', 'many-stones'],
  depth: ['too-shallow', 'few-inches-of-soil'],
  ph: ['ph-too-low', 'ph-too-high'],
};

/** True of a figure that a published range does not hold, although published ranges differ by more than it is outside. */
function isOutside(value: number, { low, high }: { readonly low: number; readonly high: number }): boolean {
  return value < low || value > high;
}

/** What the crop asks of the soil, what the soil is here, and what to do. */
function soilFit({ crop, facts, found, printer, wording: { say } }: Told): readonly Block[] {
  const { fit, reasons } = found.soil;
  const { region } = facts;
  if (!crop.soil) return [paragraph(say('crop-sheet.no-soil-needs', { crop: crop.plural }))];
  if (!region.soil) return [paragraph(say('crop-sheet.no-soil', { region: region.name }))];
  const input = (name: string): FindingValue => fit.inputs.find((found) => found.name === name)!.value;
  const words = (name: string): string => capitalized(bothWords(printer.words(input(name))));
  const row = (about: keyof typeof reasonsOf, wanted: string, here: string): TableRow => {
    const against = reasons.find(({ reason }) => reasonsOf[about].includes(reason));
    const good = about === 'ph' && isOutside(region.soil!.ph, crop.soil!.ph) ? 'soil-near' : 'soil-good';
    const verdict = say(`crop-sheet.${against ? `verdict-${against.reason}` : good}`);
    return {
      cells: [
        inline(say(`crop-sheet.soil-${about}`)),
        inline(wanted),
        [printer.printAs(fit, here)],
        inline(against ? [strong(verdict)] : verdict),
      ],
    };
  };
  const rows = [
    ...(crop.soil.looseDepth
      ? [
          row('texture', say('crop-sheet.soil-wants-texture'), words('soil-texture')),
          row('stones', say('crop-sheet.soil-wants-stones'), words('soil-stones')),
          row('depth', words('loose-depth-wanted'), words('soil-depth-here')),
        ]
      : []),
    row('ph', words('ph-wanted'), words('soil-ph')),
  ];
  const answer = soilFits.find((name) => fit.value.kind === 'choice' && fit.value.value === `soil-${name}`)!;
  const lime = reasons.find(({ reason }) => reasonsOf.ph.includes(reason))?.reason;
  return [
    table({
      id: `${crop.id}-soil`,
      caption: say('crop-sheet.soil-caption', { region: region.name }),
      columns: [
        column(say('crop-sheet.soil-what'), { weight: 1 }),
        column(say('crop-sheet.soil-wanted'), { weight: 1.3 }),
        column(say('crop-sheet.soil-here'), { weight: 1.2 }),
        column(say('crop-sheet.soil-verdict'), { weight: 1.1 }),
      ],
      groups: [{ rows }],
      notes: crop.soil.looseDepth ? [] : [say('crop-sheet.soil-ph-only', { crop: crop.plural })],
    }),
    paragraph([
      strong([printer.printAs(fit, capitalized(printer.words(choice(`soil-${answer}`)).first)), '.']),
      ` ${say(`crop-sheet.soil-do-${answer}`)}`,
      ...(lime ? [` ${say(`crop-sheet.${lime}-do`)}`] : []),
    ]),
  ];
}

function bothWords({ first, second }: { readonly first: string; readonly second?: string }): string {
  return second === undefined ? first : `${first} (${second})`;
}

/** Rain and the water to give in an average week of each month in which the crop stands. */
function water({ crop, facts, found, printer, wording: { say, measures, dates } }: Told): readonly Block[] {
  const { need, dripTime, months } = found.water;
  const line = {
    spacing: measures.both('length', usualDrip.line.emitterSpacingMm),
    flow: measures.both('volume', usualDrip.line.emitterLPerHour),
    band: measures.both('length', usualDrip.bandMm),
  };
  if (months.length === 0)
    return [
      paragraph([
        say('crop-sheet.no-rain', { region: facts.region.name }),
        ' ',
        say('crop-sheet.need-is'),
        ' ',
        printer.print(need),
        '. ',
        say('crop-sheet.drip-is', line),
        ' ',
        printer.print(dripTime),
        '.',
      ]),
    ];
  const cell = (finding: Finding): readonly Inline[] =>
    finding.value.kind === 'none'
      ? [printer.printAs(finding, capitalized(printer.words(finding.value).first))]
      : [printer.print(finding, { style: finding.id.includes('.drip.') ? 'cell' : 'cell-both' })];
  const names = dates.months();
  return [
    table({
      id: `${crop.id}-water`,
      caption: say('crop-sheet.water-caption'),
      columns: [
        column(say('crop-sheet.month'), { weight: 0.7 }),
        column(say('crop-sheet.rain-week'), { weight: 1.3 }),
        column(say('crop-sheet.water-week'), { weight: 1.5 }),
        column(say('crop-sheet.drip-week'), { weight: 1.1 }),
      ],
      groups: [
        {
          rows: months.map(({ month, rain, water: give, drip }): TableRow => ({
            cells: [
              inline(names[month]!),
              cell(rain),
              cell(give),
              drip.value.kind === 'none' ? inline('0') : cell(drip),
            ],
          })),
        },
        {
          rows: [
            {
              cells: [
                [strong(say('crop-sheet.no-rain-row'))],
                inline('0'),
                [strong([printer.print(need, { style: 'cell-both' })])],
                [strong([printer.print(dripTime, { style: 'cell' })])],
              ],
            },
          ],
        },
      ],
      notes: [say('crop-sheet.water-note'), say('crop-sheet.drip-note', line)],
    }),
  ];
}

/** For each window its first and its last day, with what sets it. */
function windowEdges(told: Told): readonly Block[] {
  const { crop, known, printer, wording } = told;
  const { say, dates } = wording;
  const rows = known.windows.map((window): TableRow => {
    const { plant } = window;
    if (plant.value.kind === 'none')
      return {
        cells: [
          inline(windowName(window, say)),
          [printer.printAs(plant, capitalized(printer.words(plant.value).first))],
          inline('–'),
          inline('–'),
        ],
      };
    if (isWholeYear(plant.value))
      return {
        cells: [
          inline(windowName(window, say)),
          [strong([printer.print(plant, { style: 'cell' })])],
          inline(capitalized(edgeWords(told, window, 'opens'))),
          [printer.print(window.harvest, { style: 'cell' })],
        ],
      };
    const { from, to } = plant.value;
    const cell = (day: number, edge: 'opens' | 'closes'): readonly Inline[] =>
      inline([strong([printer.printAs(plant, dates.short(day))]), `: ${edgeWords(told, window, edge)}`]);
    return {
      cells: [
        inline(windowName(window, say)),
        cell(from, 'opens'),
        cell(to, 'closes'),
        [printer.print(window.harvest, { style: 'cell' })],
      ],
    };
  });
  return [
    table({
      id: `${crop.id}-edges`,
      caption: say('crop-sheet.edges-caption'),
      columns: [
        column(say('crop-sheet.edges-window'), { weight: 1 }),
        column(say('crop-sheet.edges-opens'), { weight: 1.7 }),
        column(say('crop-sheet.edges-closes'), { weight: 2.2 }),
        column(say('crop-sheet.edges-harvest'), { weight: 1 }),
      ],
      groups: [{ rows }],
      // Only where the sowings one after another tell of a harvest by the warmth of the place.
      notes: crop.succession && crop.degreeDays ? [say('crop-sheet.edges-note')] : [],
    }),
  ];
}

function anyDay(value: PlantingWindows['plant']['value']): boolean {
  return value.kind === 'date-range' && isWholeYear(value);
}

function windowName({ method, season }: PlantingWindows, say: SheetContext['wording']['say']): string {
  return say(`crop-sheet.window-${season}`, { how: say(`dates-table.how-${method}`) });
}

/** Rules that have a sentence of their own, with the inputs it speaks of. */
const edgeSentences: Readonly<Record<string, readonly string[]>> = {
  'opens-soil-temperature': ['soil-sowing-temperature'],
  'opens-soil-heat': ['soil-maximum'],
  'opens-heat': ['heat-ends'],
  'closes-heat': ['heat-begins'],
  'opens-after-spring': [],
  'closes-ending-freeze': [],
  'closes-year-end': [],
};

/** What sets an edge of a window, in words: with the dates and temperatures that went in where they are known. */
function edgeWords({ wording, printer }: Told, window: PlantingWindows, edge: 'opens' | 'closes'): string {
  const { say, measures } = wording;
  const { plant, edges, season } = window;
  const rule = edges[edge];
  const input = (name: string): FindingInput | undefined => plant.inputs.find((found) => found.name === name);
  const plain = (): string => say(`choice.edge-${rule}`);
  if (rule === 'offset') {
    const [offset, freeze] = [input('offset-from-last-freeze')?.value, input('last-freeze')?.value];
    const days = offset?.kind === 'range' ? (edge === 'opens' ? offset.low : offset.high) : undefined;
    if (days === undefined || freeze?.kind !== 'date') return plain();
    return say(days === 0 ? 'crop-sheet.edge-on' : `crop-sheet.edge-${days < 0 ? 'before' : 'after'}`, {
      time: measures.short('duration', Math.abs(days)),
      freeze: printer.words(freeze).first,
    });
  }
  if (rule === 'window-length')
    return edge === 'opens'
      ? say('crop-sheet.edge-length-opens', { time: measures.short('duration', fallWindowDays) })
      : say('crop-sheet.edge-length-closes', { time: measures.short('duration', springWindowDays) });
  if (season === 'overwinter') return plain();
  if (season === 'year') return edgeRuleWords(window, edge, wording);
  const wanted = edgeSentences[`${edge}-${rule}`];
  const values = wanted?.map(input);
  if (!wanted || !values || values.includes(undefined)) return plain();
  const value = values[0] ? bothWords(printer.words(values[0].value)) : '';
  return say(`crop-sheet.edge-${edge}-${rule}`, { value });
}
