/** The fact sheet: prose about one crop, with the exhibits that its figures and the region's days allow. */
import { column, inline, table } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import { cropExhibits } from './crop-exhibits.ts';
import type { CropFacts } from './facts.ts';
import { freezeExhibits } from './freeze-exhibits.ts';
import type { Exhibit } from './names.ts';
import { bulbGlance, onionExhibits } from './onion-exhibits.ts';
import { atAGlance } from './planting-chart.ts';
import type { SheetContext, SheetParts } from './sheet-context.ts';
import { trellisExhibit } from './trellis-exhibit.ts';

export function factSheetParts(context: SheetContext): SheetParts {
  const known = context.facts.crops.find(({ crop }) => crop.id === context.sheet.crop);
  const ofAnyCrop = known && cropExhibits(context, known);
  const exhibits: [string, Exhibit][] = [
    ...freezeExhibits(context),
    ...(ofAnyCrop?.exhibits ?? []),
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
    ...(known ? onionExhibits(context, known) : []),
    ...(known ? trellisExhibit(context, known.crop) : []),
  ];
  return { exhibits: new Map(exhibits), ...(ofAnyCrop ? { findings: ofAnyCrop.findings } : {}) };
}

/** Each way of planting this crop with its dates here. */
function plantingDates({ printer, wording: { say } }: SheetContext, { crop, windows }: CropFacts): Block {
  const cell = (finding: Finding | undefined): readonly Inline[] =>
    finding ? [printer.print(finding, { style: 'cell' })] : inline('–');
  const rows = windows.map(({ method, season, startIndoors, plant, harvest }): TableRow => {
    const how = say(`dates-table.how-${method}`);
    return {
      cells: [
        inline(season === 'fall' || season === 'overwinter' ? say(`dates-table.${season}`, { how }) : how),
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
