import {
  abbreviation,
  beside,
  caution,
  cautionBox,
  checklist,
  column,
  doer,
  emphasis,
  figure,
  findingWords,
  heading,
  inline,
  keyNumbers,
  labels,
  language,
  link,
  list,
  mark,
  pageBreak,
  paragraph,
  sources,
  steps,
  strong,
  table,
  together,
  wide,
  workings,
  worksheet,
} from '../../scripts/document/build.ts';
import type { Block, Caution, SheetDocument, TableRow } from '../../scripts/document/document.ts';
import type { PathCommand, Scene, SceneItem } from '../../scripts/drawings/scene.ts';

/** A document around some blocks, with everything else filled in from an invented publisher. */
export function makeDocument(
  blocks: readonly Block[],
  overrides: Partial<SheetDocument> = {},
): SheetDocument {
  return {
    id: 'showcase',
    kind: 'fact-sheet',
    language: 'en',
    paper: 'letter',
    series: 'Fact sheet',
    number: 'MX-000',
    title: 'Every part of a sheet',
    datesFor: 'Dates for Example County, 45.2° N, 2027',
    description: 'A sheet that holds every kind of block, for looking at and for testing.',
    office: 'Example County Office',
    issued: '2027-01-15',
    issuedText: 'Issued January 15, 2027',
    reviewText: 'Review by January 2029',
    address: 'guides.example.org/mx-000',
    notice: 'Demonstration data: this county and its figures are invented.',
    furniture: {
      pageOf: (page, pages) => `Page ${page} of ${pages}`,
      continued: 'continued',
      step: (number) => `Step ${number}`,
      workedOut: 'how this was worked out',
      skipToContent: 'Skip to content',
      allGuides: 'All guides',
      printVersion: 'Print version',
    },
    blocks,
    ...overrides,
  };
}

function rectangle(x: number, y: number, width: number, height: number): PathCommand[] {
  return [['M', x, y], ['L', x + width, y], ['L', x + width, y + height], ['L', x, y + height], ['Z']];
}

/** A bed from above with plants, a dimension, a curve, a hidden line and text in every style and anchor. */
const bedPlan: Scene = {
  id: 'bed-plan',
  widthMm: 104,
  heightMm: 52,
  alternative:
    'A bed from above, 8 feet by 4 feet, with two rows of six plants. North is up. A pipe runs under the path in front.',
  items: [
    { kind: 'path', commands: rectangle(8, 8, 80, 32), stroke: 'cut', fill: 'tint' },
    ...[0, 1].flatMap((row) =>
      [0, 1, 2, 3, 4, 5].map((place): SceneItem => ({
        kind: 'circle',
        x: 15 + place * 13,
        y: 17 + row * 14,
        radius: 3.2,
        stroke: 'seen',
        fill: row === 0 ? 'paper' : 'shade',
        hue: 'green',
      })),
    ),
    {
      kind: 'path',
      commands: [
        ['M', 8, 44],
        ['L', 88, 44],
      ],
      stroke: 'thin',
    },
    {
      kind: 'path',
      commands: [
        ['M', 8, 42],
        ['L', 8, 46],
      ],
      stroke: 'thin',
    },
    {
      kind: 'path',
      commands: [
        ['M', 88, 42],
        ['L', 88, 46],
      ],
      stroke: 'thin',
    },
    { kind: 'text', x: 48, y: 49.5, text: '8 ft (2.44 m)', anchor: 'middle', style: 'label' },
    {
      kind: 'path',
      commands: [
        ['M', 4, 41.5],
        ['C', 30, 40.5, 60, 42.5, 92, 41.5],
      ],
      stroke: 'hidden',
      hue: 'clay',
    },
    { kind: 'text', x: 8, y: 5.5, text: 'Bed A', anchor: 'start', style: 'large' },
    { kind: 'text', x: 88, y: 5.5, text: 'rows 14 in apart', anchor: 'end', style: 'strong', hue: 'green' },
    {
      kind: 'path',
      commands: [['M', 97, 22], ['L', 99.5, 12], ['L', 102, 22], ['L', 99.5, 20], ['Z']],
      fill: 'ink',
    },
    { kind: 'text', x: 99.5, y: 28, text: 'N', anchor: 'middle', style: 'strong' },
  ],
};

const narrowPlan: Scene = {
  id: 'bed-plan-narrow',
  widthMm: 60,
  heightMm: 40,
  alternative: bedPlan.alternative,
  items: [
    { kind: 'path', commands: rectangle(4, 8, 52, 26), stroke: 'cut', fill: 'tint' },
    { kind: 'text', x: 4, y: 5.5, text: 'Bed A', anchor: 'start', style: 'large' },
  ],
};

function boardDrawing(number: number, alternative: string): Scene {
  const boards = Array.from({ length: number }, (_, index): SceneItem => {
    const newest = index === number - 1;
    return {
      kind: 'path',
      commands: [
        ['M', 6, 34 - index * 8],
        ['L', 46, 26 - index * 8],
        ['L', 66, 34 - index * 8],
        ['L', 26, 42 - index * 8],
        ['Z'],
      ],
      stroke: newest ? 'cut' : 'thin',
      fill: newest ? 'shade' : 'paper',
    };
  });
  return {
    id: `board-${number}`,
    widthMm: 72,
    heightMm: 48,
    alternative,
    items: [
      ...boards,
      { kind: 'text', x: 68, y: 35 - (number - 1) * 8, text: 'A', anchor: 'start', style: 'strong' },
    ],
  };
}

const sawCaution: Caution = {
  signal: 'warning',
  signalText: 'Warning',
  hazard: inline('A circular saw can kick back and cut to the bone in an instant.'),
  avoidance: inline('Clamp the board, keep both hands on the saw and stand to one side of the cut.'),
};

const dustCaution: Caution = {
  signal: 'caution',
  signalText: 'Caution',
  hazard: inline('Dust from sawing irritates eyes and lungs.'),
  avoidance: inline(['Wear goggles and a dust mask, ', strong('also when sweeping'), '.']),
};

const callCaution: Caution = {
  signal: 'danger',
  signalText: 'Danger',
  hazard: inline('A buried power or gas line that is cut can kill.'),
  avoidance: inline('Have buried lines marked before digging, at any depth.'),
};

const groundNotice: Caution = {
  signal: 'notice',
  signalText: 'Notice',
  hazard: inline('Wet soil that is dug or walked on sets hard.'),
  avoidance: inline('Wait until a handful crumbles.'),
};

const crops: readonly (readonly [string, string, string, string, string])[] = [
  ['Carrot', 'Apr 14 – Jul 20', '¼ – ½', '2', '12 – 18'],
  ['Beet', 'Apr 10 – Jul 28', '½', '3', '12 – 18'],
  ['Radish', 'Apr 3 – Sep 4', '½', '1', '6 – 10'],
  ['Turnip', 'Apr 7 – Aug 12', '½', '4', '12 – 15'],
  ['Pea', 'Apr 1 – May 10', '1', '2', '18 – 24'],
  ['Spinach', 'Mar 28 – May 1', '½', '3', '12'],
  ['Lettuce, leaf', 'Apr 3 – Aug 20', '⅛', '6', '12'],
  ['Jalapeño pepper', 'May 30 – Jun 12', '–', '18', '24 – 30'],
];

/** Rows of invented figures; `times` makes a table long enough to run over several pages. */
function cropRows(times: number): TableRow[] {
  return Array.from({ length: times }, (_, round) =>
    crops.map(([name, dates, depth, spacing, rows]) => ({
      cells: [
        inline(round === 0 ? name : `${name}, sowing ${round + 1}`),
        inline(findingWords('carrot.sow-spring', dates)),
        inline(
          depth === '–' ? mark({ table: 'sowing-table', number: 2 }, 'set out, not sown', depth) : depth,
        ),
        inline(spacing),
        inline(rows),
      ],
    })),
  ).flat();
}

const cropColumns = [
  column('Crop', { weight: 3 }),
  column('Sow outdoors', { weight: 3 }),
  column('Depth', { align: 'number', unit: 'in', unitWords: 'inches' }),
  column('Thin to', { align: 'number', unit: 'in' }),
  column('Between rows', { align: 'number', weight: 1.4, unit: 'in' }),
];

const blocks: readonly Block[] = [
  paragraph(
    'Sow the hardy crops as soon as the soil crumbles in the hand, and wait with the tender ones until the last freeze is behind you.',
    'lead',
  ),
  heading(2, 'when-to-sow', 'When to sow'),
  beside(
    [
      heading(3, 'at-a-glance', 'At a glance'),
      keyNumbers([
        { value: findingWords('freeze.last', 'April\u00a029'), label: 'last freeze in half of the years' },
        { value: ['152', ' days'], label: 'between last and first freeze' },
        { value: '2½\u00a0in', label: 'deepest sowing on this sheet' },
      ]),
    ],
    [
      paragraph([
        'Half of all years have their last freeze after ',
        findingWords('freeze.last', 'April\u00a029'),
        '. A ',
        strong('hardy'),
        ' crop such as ',
        language('la', emphasis('Daucus carota')),
        ' stands a light freeze; a ',
        emphasis('tender'),
        ' one does not. See the ',
        link('https://guides.example.org/freeze', 'table of freeze dates'),
        ' for other years, and go by the soil: 40\u00a0°F (4\u00a0°C) at 2\u00a0',
        abbreviation('inches', 'in'),
        ' is enough for peas.',
      ]),
      paragraph([
        'A board of 1\u00a015⁄16\u00a0in × 5½\u00a0in × 8\u00a0ft is sold as 2 × 6. Measure: 5′\u00a07⅜″ is 67⅜\u00a0in. ',
        'The ',
        language('es', 'señora'),
        '’s jalapeños, sown at −2\u00a0weeks, came up in 8–10\u00a0days.',
      ]),
      heading(3, 'soil', 'Soil'),
      paragraph('Rake in an inch of compost. Sandy soil dries first and can be sown first.'),
      heading(4, 'soil-test', 'Soil test'),
      paragraph('One sample every three years is enough for a kitchen garden.', 'small'),
    ],
  ),
  heading(2, 'before-you-start', 'Before you start'),
  list(false, [
    [paragraph('Walk the bed and mark what stays.')],
    [
      paragraph('Gather what you need:'),
      list(true, [
        [paragraph('string and two stakes;')],
        [
          paragraph('a rake, and one of'),
          list(false, [
            [paragraph('a hand hoe')],
            [paragraph('a wheel hoe with a 6-inch blade, which is quicker on long rows')],
          ]),
        ],
      ]),
    ],
    [
      paragraph('Water the evening before.'),
      paragraph('A dry bed takes an inch of water slowly, not all at once.'),
    ],
  ]),
  checklist([
    'Soil thermometer',
    ['Seed of this year or ', emphasis('tested'), ' seed'],
    'Row cover, 10 ft for each bed',
  ]),
  caution(groundNotice),
  figure(bedPlan, { narrow: narrowPlan, caption: 'Bed A with two rows of six. The dashed line is a pipe.' }),
  wide([
    table({
      id: 'sowing-table',
      caption: 'Sowing outdoors in Example County',
      columns: cropColumns,
      groups: [
        { header: inline('Sow in early spring'), rows: cropRows(2) },
        { header: inline('Sow again in summer'), rows: cropRows(2) },
      ],
      notes: [
        'Dates are for half of the years.',
        ['A dash means that the crop is ', strong('set out'), ', not sown.'],
      ],
    }),
  ]),
  together([
    heading(2, 'spacing', 'Spacing'),
    paragraph('Seed goes deeper in sand and shallower in clay.'),
    table({
      id: 'spacing-table',
      caption: 'Depth by soil',
      columns: [
        column('Soil', { weight: 2 }),
        column('Depth', { align: 'number', unit: 'in' }),
        column('Crusts', { align: 'centre' }),
      ],
      groups: [
        {
          rows: [
            { cells: [inline('Sand'), inline('½'), inline('no')] },
            { cells: [inline('Clay'), inline('¼'), inline('yes')] },
            { cells: [inline('Peat'), inline('⅜'), []] },
          ],
        },
      ],
    }),
  ]),
  pageBreak(),
  heading(2, 'build', 'Build the bed'),
  wide([
    cautionBox({
      id: 'safety',
      title: 'Read this first',
      groups: [callCaution, sawCaution, dustCaution].map(({ signal, signalText, hazard, avoidance }) => ({
        signal,
        signalText,
        items: [inline([strong([...hazard]), ' ', ...avoidance])],
      })),
      closing: 'Local codes and the advice of licensed tradespeople come before this sheet.',
    }),
    keyNumbers([
      { value: '3\u00a0h', label: 'for two people' },
      { value: '12', label: 'boards, 8 ft long' },
      { value: '$86', label: 'for everything' },
    ]),
  ]),
  steps([
    {
      number: 1,
      title: inline('Saw the boards'),
      cautions: [sawCaution, dustCaution],
      body: [
        paragraph('Saw two boards to 48\u00a0in. Mark each with its letter before you put it down.'),
        list(false, [[paragraph('A: 48\u00a0in, two pieces')], [paragraph('B: 96\u00a0in, two pieces')]]),
      ],
      drawing: boardDrawing(1, 'One board lies flat, marked A.'),
    },
    {
      number: 2,
      title: inline('Lay the second course'),
      cautions: [],
      body: [paragraph('Set the joints off by half a board and screw down every 16\u00a0in.')],
      drawing: boardDrawing(2, 'A second board lies over the first.'),
    },
    {
      number: 3,
      title: inline('Check that it is level'),
      cautions: [],
      body: [paragraph('Lay the level along and across. A fall of ⅛\u00a0in over 8\u00a0ft does no harm.')],
    },
    {
      number: 4,
      title: inline('Lay the cap'),
      cautions: [callCaution],
      body: [paragraph('The cap overhangs by 1\u00a0in all round.')],
      drawing: boardDrawing(3, 'A third board lies on top.'),
    },
  ]),
  wide([
    heading(2, 'row-labels', 'Row labels'),
    labels([
      { title: 'Carrot', lines: ['sown April\u00a014', 'thin to 2\u00a0in'] },
      { title: 'Jalapeño', lines: [['set out ', strong('May\u00a030')]] },
      { title: 'Pea', lines: [] },
    ]),
  ]),
  wide([
    heading(2, 'worked-out', 'How we worked this out'),
    workings([
      {
        id: 'freeze.last',
        term: inline('Last freeze, half of the years'),
        value: inline('April\u00a029'),
        explanation: inline([
          'The middle of 30 yearly last days at or below 32\u00a0°F, ',
          emphasis('from the table of the station'),
          '.',
        ]),
      },
      {
        id: 'carrot.sow-spring',
        term: inline('Carrot, sow outdoors'),
        value: inline('Apr 14 – Jul 20'),
        explanation: inline('From 2 weeks before the last freeze to 10 weeks before the first one.'),
      },
      {
        id: 'bed.boards',
        term: inline('Boards'),
        value: inline('12'),
        explanation: inline('Three courses of four.'),
      },
    ]),
    heading(2, 'sources', 'Sources'),
    sources([
      {
        id: 'freeze-table',
        content: inline(['Example Climate Office, ', emphasis('Freeze table'), ' (invented).']),
        href: 'https://climate.example.org/freeze-table',
      },
      { id: 'own-practice', content: inline('Common practice, not measured.') },
    ]),
  ]),
  heading(2, 'class', 'For a class'),
  doer('child', 'You do this.'),
  paragraph('Count the boards.'),
  doer('child-with-adult', 'You do this with an adult beside you.'),
  doer('adult', ['Adults only. ', strong('Circular saw'), ': for adults.']),
  wide([
    worksheet(
      [
        { question: 'How many boards are there?', room: { kind: 'lines', count: 1, ruling: 'wide' } },
        {
          question: ['Why is the bed ', strong('level'), '?'],
          room: { kind: 'lines', count: 3, ruling: 'narrow' },
        },
        { question: 'Draw the bed from above.', room: { kind: 'box', size: 'small' } },
      ],
      { opening: 'Name: ________' },
    ),
  ]),
];

/** Every kind of block and of inline content, with what makes each of them hard. */
export const showcase: SheetDocument = makeDocument(blocks);
