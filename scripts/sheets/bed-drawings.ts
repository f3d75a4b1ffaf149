/** The drawings of a bed with their words: from above with rows and plants, and from the side with heights. */
import { plantsOfRow } from '../agronomy/bed-rows.ts';
import { figure } from '../document/build.ts';
import type { Block } from '../document/document.ts';
import { bedHeights, type BedHeightsOptions } from '../drawings/bed/bed-heights.ts';
import { bedPlan, type BedPlanOptions } from '../drawings/bed/bed-plan.ts';
import type { SheetContext } from './sheet-context.ts';
import { blocksOf, numberedRows, type SownBed } from './sown-bed.ts';

/** The plan and the heights; nothing where the rows do not fit, which the checks have told. */
export function bedFigures(context: SheetContext, sown: SownBed): readonly Block[] {
  if (sown.rows.length === 0) return [];
  const { say } = context.wording;
  const plan = planOptions(context, sown);
  const heights = heightOptions(context, sown);
  return [
    figure(bedPlan(plan), {
      narrow: bedPlan({ ...plan, id: 'bed-plan-narrow', widthMm: narrowMm }),
      caption: say('build.bed-plan'),
    }),
    figure(bedHeights(heights), {
      narrow: bedHeights({ ...heights, id: 'bed-heights-narrow', widthMm: narrowMm }),
      caption: say('build.bed-heights'),
    }),
  ];
}

const narrowMm = 92;

function planOptions({ wording: { say, measures } }: SheetContext, sown: SownBed): BedPlanOptions {
  const { insideLengthMm, insideDepthMm, hemisphere } = sown.bed;
  const both = (mm: number): string => measures.both('length', mm);
  const rows = numberedRows(sown).map(({ number, row }) =>
    say('drawing.bed-row-distance', {
      number,
      crop: row.crop.name,
      distance: both(row.fromPolewardMm),
      side: say(`choice.${hemisphere}`),
    }),
  );
  return {
    id: 'bed-plan',
    insideLengthMm,
    insideDepthMm,
    hemisphere,
    linesMm: sown.linesMm,
    blocks: blocksOf(sown).map((block) => ({
      name: block[0].row.crop.name,
      spacing: say((block[0].of.needs.perPlace ?? 1) > 1 ? 'drawing.bed-thin' : 'drawing.bed-spacing', {
        spacing: both(block[0].row.crop.spacing.inRow.value.high),
      }),
      tall: block[0].row.tall,
      rows: block.map(({ number, row }) => ({
        number,
        distanceFromPolewardMm: row.fromPolewardMm,
        plantsMm: plantsOfRow(row, insideLengthMm),
      })),
    })),
    words: {
      north: say('drawing.north'),
      sunnySide: say('drawing.sunny-side', { side: sunnySide(hemisphere) }),
      dripLine: say('drawing.drip-line'),
      length: (mm) => measures.lengthOnDrawing(mm),
      times: (number, words) => ({
        ...words,
        first: say('drawing.bed-times', { number, length: words.first }),
      }),
      rows: (first, last, crop) =>
        first === last
          ? say('drawing.bed-row', { number: first, crop })
          : say('drawing.bed-rows', { first, last, crop }),
    },
    alternative: say('drawing.alternative.bed-plan', {
      length: both(insideLengthMm),
      depth: both(insideDepthMm),
      rows: rows.join('; '),
      lines: sown.linesMm.length,
    }),
  };

  function sunnySide(pole: 'north' | 'south'): string {
    return pole === 'north' ? 'south' : 'north';
  }
}

function heightOptions({ wording: { say, measures } }: SheetContext, sown: SownBed): BedHeightsOptions {
  const { insideDepthMm, hemisphere, cover, clearHeightMm } = sown.bed;
  const blocks = blocksOf(sown).map((block) => {
    const { crop } = block[0].row;
    const { low, high } = crop.height.value;
    return {
      name: crop.name,
      heightMm: high,
      height: measures.measure('length', low, high),
      rows: block.map(({ number, row }) => ({ number, distanceFromPolewardMm: row.fromPolewardMm })),
    };
  });
  const heights = blocks.map(({ name, height: { first, second } }) =>
    say('drawing.bed-height', { crop: name, height: second === undefined ? first : `${first} (${second})` }),
  );
  const covered = cover !== 'open' && clearHeightMm !== undefined;
  return {
    id: 'bed-heights',
    insideDepthMm,
    hemisphere,
    blocks,
    ...(covered
      ? {
          cover: {
            heightMm: clearHeightMm,
            name: say(`drawing.cover-${cover}`),
            height: measures.lengthOnDrawing(clearHeightMm),
          },
        }
      : {}),
    words: { north: say('drawing.north'), south: say('drawing.south') },
    alternative: say('drawing.alternative.bed-heights', {
      heights: [...new Set(heights)].join('; '),
      cover: covered ? measures.both('length', clearHeightMm) : '',
      covered: covered ? 'yes' : 'no',
    }),
  };
}
