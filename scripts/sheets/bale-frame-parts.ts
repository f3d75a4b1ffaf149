/** What the build card of a bale frame has of its own. */
import type { BedRow } from '../agronomy/bed-rows.ts';
import { column, inline, table } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import type { BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';
import type { Frame } from '../structures/bale-cold-frame.ts';
import { frameDrawings } from './frame-drawings.ts';
import type { KindParts } from './kind-parts.ts';
import { sandbagBlocks } from './sandbag-parts.ts';
import { sashNotes } from './sash-notes.ts';
import type { SheetContext } from './sheet-context.ts';

export function baleFrameParts(
  context: SheetContext,
  { project, frame, rows }: { project: BaleColdFrame; frame: Frame; rows: readonly BedRow[] },
): KindParts {
  return {
    drawings: frameDrawings({ context, project, frame, rows }),
    exhibits: [
      [
        'sash-table',
        { wide: true, blocks: () => [sashTable(context, project, frame), ...sashNotes(context, frame)] },
      ],
      ...(frame.findings.some(({ id }) => id === 'frame.gust-limit-closed')
        ? ([['sandbags', { wide: true, blocks: () => sandbagBlocks(context, frame) }]] as const)
        : []),
    ],
  };
}

/** How each sash lies on the walls and what it weighs. */
function sashTable(context: SheetContext, project: BaleColdFrame, frame: Frame): Block {
  const {
    printer,
    wording: { say, measures },
  } = context;
  const cell = (finding: Finding): readonly Inline[] =>
    finding.value.kind === 'none' ? inline('–') : [printer.print(finding, { style: 'cell-both' })];
  const rows = project.sashes.map((sash): TableRow => {
    const of = (name: string): Finding =>
      frame.findings.find(({ id }) => id === `frame.sash-${sash.id.toLowerCase()}.${name}`)!;
    return {
      cells: [
        inline(sash.id),
        inline(
          say('glance.by', {
            length: measures.short('length', sash.width.low),
            depth: measures.short('length', sash.length.low),
          }),
        ),
        cell(of('bearing-poleward')),
        cell(of('bearing-equator')),
        cell(of('overhang')),
        cell(of('weight')),
      ],
    };
  });
  return table({
    id: 'sashes',
    caption: say('build.sashes-caption'),
    columns: [
      column(say('build.sash'), { weight: 0.6 }),
      column(say('build.sash-size'), { weight: 1.2 }),
      column(say('build.bearing-poleward'), { weight: 1.1 }),
      column(say('build.bearing-equator'), { weight: 1.1 }),
      column(say('build.overhang'), { weight: 1.1 }),
      column(say('build.weight'), { weight: 1.3 }),
    ],
    groups: [{ rows }],
  });
}
