/** What a gardener has to look out for in a bed, in words under its plan. */
import { lowestNoonSun, noonShadow, type GrowingDays } from '../agronomy/bed-sun.ts';
import {
  heightWarnings,
  pollinationWarnings,
  shadeWarnings,
  type BedWarning,
} from '../agronomy/bed-warnings.ts';
import { list, paragraph } from '../document/build.ts';
import type { Block, Inline } from '../document/document.ts';
import { quantity, type Finding } from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import type { SowingBed } from './bed.ts';
import { sayWith } from './say-with.ts';
import type { SheetContext } from './sheet-context.ts';
import type { SownBed, SownCrop } from './sown-bed.ts';

export interface BedWarnings {
  readonly blocks: () => readonly Block[];
  readonly findings: readonly Finding[];
}

export function warningsOfBed(context: SheetContext, sown: SownBed): BedWarnings {
  const found = new WarningsFound(context, sown);
  return {
    findings: found.findings,
    blocks: () => {
      const items = found.sentences();
      if (items.length === 0) return [];
      return [
        paragraph(context.wording.say('bed-warning.title')),
        list(
          false,
          items.map((item) => [paragraph(item)]),
        ),
      ];
    },
  };
}

class WarningsFound {
  readonly findings: readonly Finding[];
  readonly #context: SheetContext;
  readonly #sown: SownBed;
  readonly #noonSun: Finding | undefined;
  readonly #clear: Finding | undefined;
  readonly #warnings: readonly BedWarning[];

  constructor(context: SheetContext, sown: SownBed) {
    this.#context = context;
    this.#sown = sown;
    const { latitudeDeg, year } = context.facts;
    const days = growingDays(sown.crops);
    this.#noonSun = days && lowestNoonSun({ latitudeDeg, year, days });
    this.#clear = clearHeight(sown.bed);
    this.#warnings = warningsIn(sown, this.#noonSun);
    this.findings = [
      ...(this.#noonSun ? [this.#noonSun] : []),
      ...(this.#clear ? [this.#clear] : []),
      ...this.#warnings.flatMap((warning) => {
        const shadow = this.#shadow(warning);
        return shadow ? [shadow] : [];
      }),
    ];
  }

  /** Each warning as the words of one sentence or two. */
  sentences(): readonly (readonly Inline[])[] {
    return this.#warnings.map((warning) => this.#sentence(warning));
  }

  #sentence(warning: BedWarning): readonly Inline[] {
    const { printer, wording } = this.#context;
    const { hemisphere, cover, closedBy = 'sash' } = this.#sown.bed;
    const say = (key: string, values: Record<string, string | number | Inline>): readonly Inline[] =>
      sayWith(wording.say, `bed-warning.${key}`, values);
    switch (warning.kind) {
      case 'shades':
        return say('shades', {
          tall: this.#crop(warning.tall).name,
          low: this.#crop(warning.low).name.toLowerCase(),
          shadow: printer.print(this.#shadow(warning)!),
          sun: printer.print(this.#noonSun!),
          side: wording.say(`choice.${hemisphere}`),
        });
      case 'needs-insects':
        return say(`needs-insects-${cover}`, { crop: this.#crop(warning.crop).name });
      case 'needs-block':
        return say('needs-block', { crop: this.#crop(warning.crop).name, atLeast: warning.atLeast });
      case 'outgrows-cover': {
        const { known, height } = this.#of(warning.crop);
        return say(`outgrows-${cover}`, {
          crop: known.crop.name,
          height: printer.print(height),
          clear: printer.print(this.#clear!),
          closedBy,
        });
      }
    }
  }

  #shadow(warning: BedWarning): Finding | undefined {
    if (warning.kind !== 'shades' || !this.#noonSun) return undefined;
    return noonShadow(this.#crop(warning.tall), this.#crop(warning.low), this.#noonSun);
  }

  #of(id: string): SownCrop {
    return this.#sown.crops.find(({ known }) => known.crop.id === id)!;
  }

  #crop(id: string): Crop {
    return this.#of(id).known.crop;
  }
}

function warningsIn(sown: SownBed, noonSun: Finding | undefined): readonly BedWarning[] {
  const { cover, clearHeightMm } = sown.bed;
  const planted = sown.crops.map(({ known, sown: { rows } }) => ({ crop: known.crop, rows }));
  const sunDeg = noonSun?.value.kind === 'quantity' ? noonSun.value.value : undefined;
  return [
    ...(cover !== 'open' && clearHeightMm !== undefined ? heightWarnings(planted, clearHeightMm) : []),
    // Round a ring every row has a side toward the sun.
    ...(sunDeg === undefined || sown.bed.ring ? [] : shadeWarnings(sown.rows, sunDeg)),
    ...pollinationWarnings(planted, cover === 'open' ? 'open' : 'closed'),
  ];
}

/** From the first planting to the last harvest of the crops of a bed; undefined where no window is known. */
function growingDays(crops: readonly SownCrop[]): GrowingDays | undefined {
  const spans = crops.flatMap(({ known, needs }) => {
    const planted = known.windows.filter(({ method }) => method === needs.method);
    const first = (planted.length > 0 ? planted : known.windows).find(
      ({ plant, harvest }) => plant.value.kind === 'date-range' && harvest.value.kind === 'date-range',
    );
    if (first?.plant.value.kind !== 'date-range' || first.harvest.value.kind !== 'date-range') return [];
    return [{ from: first.plant.value.from, to: first.harvest.value.to }];
  });
  if (spans.length === 0) return undefined;
  return {
    from: Math.round(Math.min(...spans.map(({ from }) => from))),
    to: Math.round(Math.max(...spans.map(({ to }) => to))),
  };
}

/** Room under the cover, where it has one. */
function clearHeight({ cover, clearHeightMm }: SowingBed): Finding | undefined {
  if (cover === 'open' || clearHeightMm === undefined) return undefined;
  return {
    id: 'cover.clear-height',
    value: quantity('length', clearHeightMm),
    method: 'bed.clear-height',
    inputs: [],
    sources: [],
  };
}
