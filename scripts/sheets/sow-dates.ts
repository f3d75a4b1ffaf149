/** When each crop of a build's bed is planted, in the open garden and, in a cold frame, under the glass. */
import type { PlantingWindows } from '../agronomy/windows.ts';
import { column, inline, table } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import type { CropFacts } from './facts.ts';
import { capitalized } from './printer.ts';
import type { SheetContext } from './sheet-context.ts';

/**
 * A row for each planting of the crops that this place has, and for a crop that it has none of, a row with the reason.
 * `inFrame` finds the window of a crop under the glass by its id; absent for a bed without a frame.
 */
export function sowDates(
  context: SheetContext,
  crops: readonly string[],
  inFrame?: (id: string) => Finding | undefined,
): readonly Block[] {
  const {
    facts,
    wording: { say },
  } = context;
  const rows = crops.flatMap((id) => {
    const known = facts.crops.find(({ crop }) => crop.id === id);
    return known ? rowsOf(context, known, inFrame) : [];
  });
  if (rows.length === 0) return [];
  return [
    table({
      id: 'sow-dates',
      caption: say('sow-dates.caption', { region: facts.region.name }),
      columns: [
        column(say('dates-table.crop'), { weight: 1 }),
        column(say('dates-table.how'), { weight: 1.2 }),
        column(say('sow-dates.open'), { weight: 1.2 }),
        ...(inFrame ? [column(say('sow-dates.frame'), { weight: 1.2 })] : []),
      ],
      groups: [{ rows }],
    }),
  ];
}

function rowsOf(
  context: SheetContext,
  { crop, windows }: CropFacts,
  inFrame: ((id: string) => Finding | undefined) | undefined,
): readonly TableRow[] {
  const { say } = context.wording;
  const first = windows.filter(
    ({ method, season }) => method === crop.plantings[0]!.method && season !== 'overwinter',
  );
  const dated = first.filter(({ plant }) => plant.value.kind !== 'none');
  return (dated.length > 0 ? dated : first.slice(0, 1)).map((window): TableRow => {
    const how = say(`dates-table.how-${window.method}`);
    return {
      cells: [
        inline(crop.name),
        inline(window.season === 'fall' ? say('dates-table.fall', { how }) : how),
        cell(context, window.plant),
        ...(inFrame ? [cell(context, inFrame(frameId(window)))] : []),
      ],
    };
  });
}

/** `carrot.direct-sow.spring` under the glass is `carrot.frame-sow.spring`. */
function frameId({ plant: { id }, season }: PlantingWindows): string {
  const under = id.replace('.direct-sow.', '.frame-sow.').replace('.set-out.', '.frame-set-out.');
  return season === 'year' ? under.replace(/year$/, 'spring') : under;
}

function cell({ printer }: SheetContext, finding: Finding | undefined): readonly Inline[] {
  if (!finding) return inline('–');
  return finding.value.kind === 'none'
    ? [printer.printAs(finding, capitalized(printer.words(finding.value).first))]
    : [printer.print(finding, { style: 'cell' })];
}
