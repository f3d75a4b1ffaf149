/** What is sown in a bed, of a build or plain: its table, its plan, its row labels and the findings behind them. */
import { layOutRows, type BedRow } from '../agronomy/bed-rows.ts';
import { plantsInRows, seedForRows } from '../agronomy/spacing.ts';
import { column, figure, inline, labels, table } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import { bedPlan } from '../drawings/bed/bed-plan.ts';
import type { Scene } from '../drawings/scene.ts';
import type { Finding } from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import type { CropFacts } from './facts.ts';
import type { Exhibit } from './names.ts';
import type { SheetContext } from './sheet-context.ts';

/** A rectangle of soil whose long side runs from east to west. */
export interface SowingBed {
  /** From east to west, inside. */
  readonly insideLengthMm: number;
  /** From the poleward to the equator side, inside. */
  readonly insideDepthMm: number;
  /** What the length was worked out as: every need is counted from it. */
  readonly lengthFinding: Finding;
  readonly hemisphere: 'north' | 'south';
  /** What stands over the bed in the cool of the season: nothing, a glazed frame or an insect screen. */
  readonly cover: 'open' | 'frame' | 'screen';
  readonly soilDepthMm?: number;
}

/** What a record wants sown: rows run from east to west, the tallest on the poleward side. */
export type Sow = readonly { readonly crop: string; readonly rows: number }[];

export interface BedParts {
  /** `sow-table`, `bed-plan` and `row-labels`. */
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
  const sowing = new Sowing(context, bed, sow);
  const fault = sowingFault({
    crops: context.guide.crops,
    insideDepthMm: bed.insideDepthMm,
    sow,
  });
  return {
    exhibits: sowing.exhibits(),
    findings: sowing.findings(),
    rows: sowing.rows,
    faults: fault ? [fault] : [],
  };
}

/**
 * Why the rows of a record do not go into a bed, or undefined where they do. A crop that the guide does not have is told
 * where it is named, so its rows are not judged.
 */
export function sowingFault(wanted: {
  readonly crops: readonly Crop[];
  readonly insideDepthMm: number;
  readonly sow: Sow;
}): SowingFault | undefined {
  const known = cropsOf(wanted);
  if (known.length < wanted.sow.length) return undefined;
  const layout = layOutRows(known, wanted.insideDepthMm);
  if (layout.kind === 'rows') return undefined;
  const inches = (mm: number): string => `${Math.round(mm / 2.54) / 10} in`;
  return {
    message: `These rows need ${inches(layout.neededMm)} across the bed, which is ${inches(layout.depthMm)} deep inside.`,
    hint:
      layout.fits > 0
        ? `Sow fewer rows; ${layout.fits} in all fit.`
        : 'Sow a crop with narrower rows, or use longer sashes.',
  };
}

/** True when every crop of a `sow` list is known and its rows go into the bed. */
export function canBeSown(wanted: {
  readonly crops: readonly Crop[];
  readonly insideDepthMm: number;
  readonly sow: Sow;
}): boolean {
  return cropsOf(wanted).length === wanted.sow.length && sowingFault(wanted) === undefined;
}

function cropsOf({ crops, sow }: { readonly crops: readonly Crop[]; readonly sow: Sow }): {
  readonly crop: Crop;
  readonly rows: number;
}[] {
  return sow.flatMap(({ crop: id, rows }) => {
    const crop = crops.find((known) => known.id === id);
    return crop ? [{ crop, rows }] : [];
  });
}

/** One crop of the bed with what its rows come to. */
interface SownCrop {
  readonly known: CropFacts;
  readonly rows: number;
  readonly plants: Finding;
  readonly seed: Finding;
}

class Sowing {
  readonly rows: readonly BedRow[];
  readonly #context: SheetContext;
  readonly #bed: SowingBed;
  readonly #sown: readonly SownCrop[];

  constructor(context: SheetContext, bed: SowingBed, sow: Sow) {
    this.#context = context;
    this.#bed = bed;
    this.#sown = sownCrops(context, bed, sow);
    const layout = layOutRows(
      this.#sown.map(({ known, rows }) => ({ crop: known.crop, rows })),
      bed.insideDepthMm,
    );
    this.rows = layout.kind === 'rows' ? layout.rows : [];
  }

  findings(): readonly Finding[] {
    return this.#sown.flatMap(({ plants, seed }) => [plants, seed]);
  }

  exhibits(): readonly (readonly [string, Exhibit])[] {
    return [
      ['sow-table', { wide: true, blocks: () => [this.#sowTable()] }],
      [
        'bed-plan',
        { wide: true, blocks: () => [figure(this.#plan(), { caption: this.#say('build.bed-plan') })] },
      ],
      ['row-labels', { wide: true, blocks: () => [this.#rowLabels()] }],
    ];
  }

  #say(key: string, values?: Record<string, string | number>): string {
    return this.#context.wording.say(key, values);
  }

  #bothCell(finding: Finding): readonly Inline[] {
    return finding.value.kind === 'none'
      ? inline('–')
      : [this.#context.printer.print(finding, { style: 'cell-both' })];
  }

  #sowTable(): Block {
    const rows = this.#sown.map(({ known, rows: count, plants, seed }): TableRow => ({
      cells: [
        inline(known.crop.name),
        inline(this.#context.wording.measures.number(count)),
        this.#bothCell(known.depth),
        this.#bothCell(known.inRow),
        this.#bothCell(plants),
        this.#bothCell(seed),
      ],
    }));
    return table({
      id: 'sowing',
      caption: this.#say('build.sow-caption'),
      columns: [
        column(this.#say('build.crop'), { weight: 1.1 }),
        column(this.#say('build.rows'), { align: 'number', weight: 0.6 }),
        column(this.#say('build.depth'), { weight: 1.3 }),
        column(this.#say('build.spacing'), { weight: 1.4 }),
        column(this.#say('build.plants'), { align: 'number', weight: 0.8 }),
        column(this.#say('build.seed'), { weight: 1.5 }),
      ],
      groups: [{ rows }],
    });
  }

  #plan(): Scene {
    const { say, measures } = this.#context.wording;
    const { insideLengthMm, insideDepthMm, hemisphere } = this.#bed;
    const both = (mm: number): string => measures.both('length', mm);
    const rows = this.rows.map(({ crop, fromPolewardMm }, index) =>
      say('drawing.bed-row-distance', {
        number: index + 1,
        crop: crop.name,
        distance: both(fromPolewardMm),
      }),
    );
    return bedPlan({
      id: 'bed-plan',
      insideLengthMm,
      insideDepthMm,
      hemisphere,
      rows: this.rows.map(({ crop, fromPolewardMm, tall }, index) => ({
        label: say('drawing.bed-row', { number: index + 1, crop: crop.name }),
        distanceFromPolewardMm: fromPolewardMm,
        plantSpacingMm: crop.spacing.inRow.value.high,
        tall,
      })),
      words: { north: say('drawing.north'), length: (mm) => measures.lengthOnDrawing(mm) },
      alternative: say('drawing.alternative.bed-plan', {
        length: both(insideLengthMm),
        depth: both(insideDepthMm),
        rows: rows.join('; '),
      }),
    });
  }

  /** A label for each row, from the poleward side on. */
  #rowLabels(): Block {
    const { printer } = this.#context;
    return labels(
      this.rows.map(({ crop }, index) => {
        const known = this.#sown.find((sown) => sown.known.crop === crop)!.known;
        const words = (finding: Finding): string => printer.cellWords(finding.value).first;
        return {
          title: crop.name,
          lines: [
            this.#say('build.row-label', { number: index + 1 }),
            this.#say('build.label-depth', { depth: words(known.depth) }),
            this.#say('build.label-spacing', { spacing: words(known.inRow) }),
            this.#say('build.label-emergence', { days: words(known.emergence) }),
            this.#say('build.label-date'),
          ],
        };
      }),
    );
  }
}

function sownCrops({ facts }: SheetContext, bed: SowingBed, sow: Sow): readonly SownCrop[] {
  return sow.flatMap(({ crop: id, rows }) => {
    const known = facts.crops.find(({ crop }) => crop.id === id);
    if (!known) return [];
    const sown = {
      crop: known.crop,
      rows,
      rowLengthMm: bed.insideLengthMm,
      rowLength: bed.lengthFinding,
    };
    return [{ known, rows, plants: plantsInRows(sown), seed: seedForRows(sown) }];
  });
}
