/** When each crop of a build's bed is planted, in the open garden and, in a cold frame, under the glass. */
import type { PlantingWindows } from '../agronomy/windows.ts';
import { column, inline, table } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import type { CropFacts } from './facts.ts';
import { capitalized } from './printer.ts';
import type { SheetContext } from './sheet-context.ts';

/** A bed under glass. */
export interface SowingFrame {
  /** Finds the window of a crop under the glass by its id. */
  readonly inFrame: (id: string) => Finding | undefined;
  /**
   * Room over the soil where the glass is highest. A crop that never stays below that is sown there in spring, when the glass comes
   * off as it grows, but not for fall, when the glass would have to come on.
   */
  readonly mostClearMm: number;
}

/**
 * A row for each planting of the crops that this place has, and for a crop that it has none of, a row with the reason.
 * `frame` is absent for a bed without one.
 */
export function sowDates(
  context: SheetContext,
  crops: readonly string[],
  frame?: SowingFrame,
): readonly Block[] {
  const {
    facts,
    wording: { say },
  } = context;
  const rows = crops.flatMap((id) => {
    const known = facts.crops.find(({ crop }) => crop.id === id);
    return known ? rowsOf(context, known, frame) : [];
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
        ...(frame ? [column(say('sow-dates.frame'), { weight: 1.2 })] : []),
      ],
      groups: [{ rows }],
    }),
  ];
}

function rowsOf(
  context: SheetContext,
  { crop, windows }: CropFacts,
  frame: SowingFrame | undefined,
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
        ...(frame ? [inFrameCell(context, { crop, window, frame })] : []),
      ],
    };
  });
}

function inFrameCell(
  context: SheetContext,
  {
    crop,
    window,
    frame,
  }: { readonly crop: Crop; readonly window: PlantingWindows; readonly frame: SowingFrame },
): readonly Inline[] {
  const tooTall = window.season === 'fall' && crop.height.value.low > frame.mostClearMm;
  return tooTall
    ? inline(context.wording.say('sow-dates.too-tall'))
    : cell(context, frame.inFrame(frameId(window)));
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
