/** What is sown in a bed, of a build or plain: its tables, its plan, its row labels, its water and the findings behind them. */
import { layOutRows, type BedRow, type WantedRows } from '../agronomy/bed-rows.ts';
import { labels } from '../document/build.ts';
import type { Block } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import type { Irrigation, Sow } from '../records/schemas/projects/sow.ts';
import type { CoverWord, RingInside } from '../structures/structure.ts';
import { bedFigures } from './bed-drawings.ts';
import { bedTables } from './bed-tables.ts';
import { warningsOfBed } from './bed-warnings.ts';
import { waterOfBed } from './bed-water.ts';
import type { Exhibit } from './names.ts';
import { ringFigures, ringLengths } from './ring-drawings.ts';
import type { SheetContext } from './sheet-context.ts';
import { depthOf, numberedRows, sownBed, type SownBed } from './sown-bed.ts';

export type { Irrigation, Sow };

/** A rectangle of soil whose long side runs from east to west. */
export interface SowingBed {
  /** From east to west, inside. */
  readonly insideLengthMm: number;
  /** From the poleward to the equator side, inside. */
  readonly insideDepthMm: number;
  /** What the length was worked out as: every need is counted from it. */
  readonly lengthFinding: Finding;
  readonly hemisphere: 'north' | 'south';
  /** A bed that is a ring: rows go round it, the tallest innermost, and distances are from its inner edge. */
  readonly ring?: RingInside;
  /** What stands over the bed in the cool of the season: nothing, a glazed frame or an insect screen. */
  readonly cover: 'open' | 'frame' | 'screen';
  /** What people call that which closes a frame; a sash when absent. */
  readonly closedBy?: CoverWord;
  readonly soilDepthMm?: number;
  /** Room between the soil and the cover at its lowest place. */
  readonly clearHeightMm?: number;
  /** Drip lines, where the bed has them. */
  readonly irrigation?: Irrigation;
}

export interface BedParts {
  /** `sow-table`, `bed-plan`, `bed-water` and `row-labels`. */
  readonly exhibits: readonly (readonly [string, Exhibit])[];
  readonly findings: readonly Finding[];
  /** The rows from the poleward side, for drawings that show them in something else; empty where they do not fit. */
  readonly rows: readonly BedRow[];
  readonly faults: readonly SowingFault[];
}

/** What is wrong with a `sow` list in this bed, in words. */
export interface SowingFault {
  readonly message: string;
  readonly hint: string;
}

export function bedParts({
  context,
  bed,
  sow,
}: {
  readonly context: SheetContext;
  readonly bed: SowingBed;
  readonly sow: Sow;
}): BedParts {
  const sown = sownBed(context, bed, sow);
  const figures = bed.ring ? ringFigures : bedFigures;
  const tables = bedTables(context, sown);
  const warnings = warningsOfBed(context, sown);
  const water = waterOfBed(context, bed);
  const fault = sowingFault({ crops: context.guide.crops, ...bed, sow });
  const wide = (blocks: () => readonly Block[]): Exhibit => ({ wide: true, blocks });
  return {
    exhibits: [
      ['sow-table', wide(tables.blocks)],
      ['bed-plan', wide(() => [...figures(context, sown), ...warnings.blocks()])],
      ['bed-water', wide(water.blocks)],
      ['row-labels', wide(() => [rowLabels(context, sown)])],
    ],
    findings: [...ringLengths(sown), ...tables.findings, ...warnings.findings, ...water.findings],
    rows: sown.rows,
    faults: fault ? [fault] : [],
  };
}

interface SowingWanted {
  readonly crops: readonly Crop[];
  readonly insideDepthMm: number;
  readonly sow: Sow;
  readonly irrigation?: Irrigation;
}

/**
 * Why the rows of a record do not go into a bed, or undefined where they do. A crop that the guide does not have is told
 * where it is named, so its rows are not judged.
 */
export function sowingFault(wanted: SowingWanted): SowingFault | undefined {
  const known = cropsOf(wanted);
  if (known.length < wanted.sow.length || known.length === 0) return undefined;
  const { irrigation } = wanted;
  const lines = irrigation && { count: irrigation.lines, offsetMm: irrigation.clearance.low };
  const layout = layOutRows(known, wanted.insideDepthMm, { lines });
  if (layout.kind === 'rows') return undefined;
  const inches = (mm: number): string => `${Math.round(mm / 2.54) / 10} in`;
  return {
    message: `These rows need ${inches(layout.neededMm)} across the bed, which is ${inches(layout.depthMm)} deep inside.`,
    hint:
      layout.fits > 0
        ? `Sow fewer rows; ${layout.fits} in all fit.`
        : 'Sow a crop with narrower rows, or make the bed deeper.',
  };
}

/** True when every crop of a `sow` list is known and its rows go into the bed. */
export function canBeSown(wanted: SowingWanted): boolean {
  return cropsOf(wanted).length === wanted.sow.length && sowingFault(wanted) === undefined;
}

function cropsOf({ crops, sow }: SowingWanted): readonly WantedRows[] {
  return sow.flatMap(({ crop: id, ...rest }) => {
    const crop = crops.find((known) => known.id === id);
    return crop ? [{ ...rest, crop }] : [];
  });
}

/** The phrase of a label that says how deep: seed, a young plant, or a set or piece. */
function labelDepth({ seed, method }: SownBed['crops'][number]['needs']): string {
  if (seed) return 'build.label-depth';
  return method === 'transplant' ? 'build.label-set-out-depth' : 'build.label-plant-depth';
}

/** A label for each row, from the poleward side on. */
function rowLabels({ printer, wording: { say } }: SheetContext, sown: SownBed): Block {
  const words = (finding: Finding): string => printer.cellWords(finding.value).first;
  return labels(
    numberedRows(sown).map(({ number, of }) => {
      const { known, needs } = of;
      return {
        title: known.crop.name,
        lines: [
          say('build.row-label', { number }),
          say(labelDepth(needs), { depth: printer.words(depthOf(of).value).first }),
          say('build.label-spacing', { spacing: words(known.inRow) }),
          ...(needs.seed ? [say('build.label-emergence', { days: words(known.emergence) })] : []),
          say(needs.seed ? 'build.label-date' : 'build.label-plant-date'),
        ],
      };
    }),
  );
}
