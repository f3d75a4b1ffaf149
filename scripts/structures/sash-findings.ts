/** How each sash lies on the frame and what it weighs. */
import { count, inputOf, none, quantity, type FindingValue } from '../findings/finding.ts';
import type { BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';
import { asValue, unique, type FindingList } from './finding-list.ts';
import type { PlacedSash } from './geometry.ts';
import {
  coverThicknessMm,
  glassDensityGPerMm3,
  plasticDensityGPerMm3,
  screenClothGPerMm2,
  structureSources,
  woodDensityGPerMm3,
} from './practice.ts';
import type { SashPanes, SashPlan } from './sash-plan.ts';

/** Findings of one sash, `placed` in the frame. Needs those of the bed. */
export function addSash(
  made: FindingList,
  project: BaleColdFrame,
  sash: BaleColdFrame['sashes'][number],
  placed: PlacedSash,
): void {
  const sources = [...project.bearing.sources, structureSources.practice].filter(unique);
  const size = { 'sash-length': sashId(sash.id, 'length') };
  const lies = {
    ...size,
    'inside-depth': 'frame.inside-depth',
    slope: 'frame.slope',
    bearing: 'frame.bearing',
  };
  const add = (what: string, value: FindingValue, method: string): void => {
    made.add(sashId(sash.id, what), value, { method, inputs: made.from(lies), sources });
  };
  add('bearing-poleward', quantity('length', placed.bearingPolewardMm), 'frame.bearing-poleward');
  add('bearing-equator', quantity('length', placed.bearingEquatorMm), 'frame.bearing-equator');
  add(
    'overhang',
    placed.overhangMm > 0.5 ? quantity('length', placed.overhangMm) : none('no-overhang'),
    'frame.overhang',
  );
  add('press', quantity('length', placed.pressMm), 'frame.press');
  const { low, high } = sashMassG({
    areaMm2: placed.widthMm * placed.lengthMm,
    thicknessMm: placed.thicknessMm,
    glassShare: sash.glassShare,
    glassMm: sash.glass.low,
    panes: placed.panes,
  });
  const ofGlass = placed.panes.kind === 'glass' && placed.panes.missing === 0;
  made.add(sashId(sash.id, 'weight'), quantity('mass', low, high), {
    method: ofGlass ? 'frame.sash-weight' : 'frame.sash-weight-plastic',
    inputs: [
      ...made.from({ 'sash-width': sashId(sash.id, 'width'), ...size }),
      { name: 'sash-thickness', value: asValue(sash.thickness) },
      { name: 'glass-thickness', value: asValue(sash.glass) },
      { name: 'glass-percent', value: count(Math.round(sash.glassShare * 1000) / 10) },
      ...(placed.panes.missing > 0 && placed.panes.number
        ? [
            { name: 'panes', value: count(placed.panes.number) },
            { name: 'panes-missing', value: count(placed.panes.missing) },
          ]
        : []),
    ],
    sources: [
      ...(placed.panes.kind === 'glass' ? [structureSources.glass] : []),
      structureSources.wood,
      ...(ofGlass ? [] : [structureSources.plastics]),
    ],
  });
}

/** The weight that whoever carries the sashes must reckon with. */
export function addHeaviestSash(made: FindingList, project: BaleColdFrame): void {
  const weights = project.sashes.map(({ id }) => made.get(sashId(id, 'weight')));
  const heaviest = weights.reduce((a, b) => (heaviestEnd(b.value) > heaviestEnd(a.value) ? b : a));
  made.add('frame.heaviest-sash', heaviest.value, {
    method: 'frame.heaviest-sash',
    inputs: weights.map((weight) => inputOf('sash-weight', weight)),
    sources: heaviest.sources,
  });
}

/**
 * Mass of a glazed wooden sash in grams, lightest to heaviest wood: panes by the density of float glass, the rest of the area
 * as solid softwood of the sash's full thickness. Putty, paint and hardware are left out; mouldings make up for them.
 */
export function sashMassG(sash: {
  readonly areaMm2: number;
  readonly thicknessMm: number;
  /** 0 to 1. */
  readonly glassShare: number;
  readonly glassMm: number;
  /** Whole panes of glass when absent. */
  readonly panes?: SashPanes;
}): { readonly low: number; readonly high: number } {
  const glassG = sash.areaMm2 * sash.glassShare * paneGPerMm2(sash.glassMm, sash.panes);
  const woodMm3 = sash.areaMm2 * (1 - sash.glassShare) * sash.thicknessMm;
  return { low: glassG + woodMm3 * woodDensityGPerMm3.low, high: glassG + woodMm3 * woodDensityGPerMm3.high };
}

/** What the panes weigh by their area, the covers of missing ones counted in. */
function paneGPerMm2(thicknessMm: number, panes: SashPanes | undefined): number {
  if (!panes) return thicknessMm * glassDensityGPerMm3;
  const densities = { glass: glassDensityGPerMm3, ...plasticDensityGPerMm3 };
  const missing = missingShare(panes);
  const cover = panes.cover ? coverThicknessMm[panes.cover] * plasticDensityGPerMm3[panes.cover] : 0;
  return (1 - missing) * thicknessMm * densities[panes.kind] + missing * cover;
}

/** Which part of the panes is missing, 0 to 1. */
export function missingShare({ number, missing }: SashPanes): number {
  return number === undefined ? 0 : missing / number;
}

/** Mass of an insect screen in its wooden frame, in grams, lightest to heaviest wood. */
export function screenMassG(
  sash: { readonly widthMm: number; readonly lengthMm: number },
  { railMm, thicknessMm }: NonNullable<SashPlan['screen']>,
): { readonly low: number; readonly high: number } {
  const clothMm2 = (sash.widthMm - 2 * railMm) * (sash.lengthMm - 2 * railMm);
  const woodMm3 = (sash.widthMm * sash.lengthMm - clothMm2) * thicknessMm;
  const clothG = clothMm2 * screenClothGPerMm2;
  return { low: clothG + woodMm3 * woodDensityGPerMm3.low, high: clothG + woodMm3 * woodDensityGPerMm3.high };
}

/** `frame.sash-a.width` */
export function sashId(letter: string, what: string): string {
  return `frame.sash-${letter.toLowerCase()}.${what}`;
}

function heaviestEnd(value: FindingValue): number {
  return value.kind === 'range' ? value.high : value.kind === 'quantity' ? value.value : 0;
}
