/** The drawing of a bed that is a ring, with its words. */
import { plantsOfRow } from '../agronomy/bed-rows.ts';
import { figure } from '../document/build.ts';
import type { Block } from '../document/document.ts';
import { ringPlan, type RingPlanOptions } from '../drawings/bed/ring-plan.ts';
import type { Finding } from '../findings/finding.ts';
import type { SheetContext } from './sheet-context.ts';
import { numberedRows, type SownBed } from './sown-bed.ts';

const narrowMm = 92;

/** The ring from above; nothing where the rows do not fit, which the checks have told. */
export function ringFigures(context: SheetContext, sown: SownBed): readonly Block[] {
  if (sown.rows.length === 0 || !sown.bed.ring) return [];
  const options = planOptions(context, sown, sown.bed.ring);
  return [
    figure(ringPlan(options), {
      narrow: ringPlan({ ...options, id: 'ring-plan-narrow', widthMm: narrowMm }),
      caption: context.wording.say('build.ring-plan'),
    }),
  ];
}

/** What the counts of rows in a ring come from. */
export function ringLengths({ crops }: SownBed): readonly Finding[] {
  return crops.flatMap(({ ringLength }) => (ringLength ? [ringLength] : []));
}

function planOptions(
  { wording: { say, measures } }: SheetContext,
  sown: SownBed,
  ring: NonNullable<SownBed['bed']['ring']>,
): RingPlanOptions {
  const { insideDepthMm, hemisphere } = sown.bed;
  const both = (mm: number): string => measures.both('length', mm);
  const rows = numberedRows(sown).map(({ number, row, of }) => {
    const { crop } = row;
    const lengthMm = of.ringLength?.value.kind === 'quantity' ? of.ringLength.value.value : 0;
    return {
      number,
      crop: crop.name,
      fromInnerMm: row.fromPolewardMm,
      name: say('drawing.bed-row', { number, crop: crop.name }),
      spacing: say((of.needs.perPlace ?? 1) > 1 ? 'drawing.bed-thin' : 'drawing.bed-spacing', {
        spacing: both(crop.spacing.inRow.value.high),
      }),
      radiusMm: ring.innerRadiusMm + row.fromPolewardMm,
      plants: plantsOfRow(row, lengthMm).length,
      tall: row.tall,
    };
  });
  return {
    id: 'ring-plan',
    innerRadiusMm: ring.innerRadiusMm,
    outerRadiusMm: ring.innerRadiusMm + insideDepthMm,
    openAngleAt: ring.openAngleAt,
    ...(ring.poles ? { poles: ring.poles } : {}),
    rows,
    hemisphere,
    words: { north: say('drawing.north') },
    alternative: say('drawing.alternative.ring-plan', {
      width: both(insideDepthMm),
      rows: rows
        .map(({ number, crop, plants, fromInnerMm }) =>
          say('drawing.alternative.ring-row', { number, crop, plants, distance: both(fromInnerMm) }),
        )
        .join('; '),
    }),
  };
}
